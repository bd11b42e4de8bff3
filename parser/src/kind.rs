//! The kinds of fact that a text can report: one row each, with everything about a kind that is
//! more than its words.
//!
//! A row says every column. Where the code asks what is so of a kind, it asks a column; where it
//! means this one kind and no other, it names it.

/// What a number without a unit is beside a report of this kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Number {
    /// Trees, or holes; without it the report says nothing.
    Needed,
    /// Trees. The job that such a report proves asks for it; a report is taken without.
    Asked,
    /// Trees.
    Taken,
    /// Trees or pegs; beside a word of no list it is doubted.
    Pegs,
    /// Trees, if it can be nothing else.
    Allowed,
    /// Trees, bags, rows or a slip; it is not guessed.
    Unclear,
    /// A length; without any the report says nothing.
    Values,
}

/// What a word of this kind needs beside it to be a report.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Nature {
    /// Work on the land, told by its word alone, with "done" or with a day: "fed", "cleared today".
    Upkeep,
    /// Something seen that is told with its number.
    CountedSight,
    /// Trees harmed or lost: never "done", and told without a doubt beside its cause.
    Harm,
    /// No more than others.
    Plain,
}

/// What a report of this kind says with "no" or "not" beside it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Denied {
    /// That the work was not done.
    NotDone,
    /// That there were no such trees.
    Zero,
}

/// What a report of this kind keeps of what is said beside it, apart from number, block and day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Slot {
    /// So much land.
    Area,
    /// A weight, or a number of bags.
    Amount,
    /// How much of the block, where trees are not counted.
    Extent,
    /// That only a part of the block was done: the rest stays to do.
    Part,
    Ailment,
    Cause,
    /// The name of a fertiliser, and whether for a tree or in all.
    Product,
    /// The name of what was sprayed, and whether for a tree or in all.
    Spray,
    /// The crop that was sown.
    Species,
    /// Budded stumps, plants in bags.
    Material,
    /// Rain or none.
    Wetness,
}

/// A thing that names a kind of work by itself, where no work beside it takes it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Thing {
    Ailment,
    Cause,
    Fertiliser,
    Spray,
    Crop,
    Cover,
}

/// What a report of this kind changes of how its block stands, apart from block and day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Effect {
    /// Nothing: it tells of no work.
    Nothing,
    /// Only when such work was last done, and how often.
    Round,
    /// Pegs that are set.
    Pegs,
    /// One more day of feeding.
    Fed,
    /// Holes that are dug.
    Holes,
    /// What has come.
    Arrival,
    /// Trees of a first planting.
    Planted,
    /// Trees in the place of dead ones.
    Replaced,
    /// Trees that live no more.
    Dead,
    /// The last count of tall trees without branches.
    Tall,
    /// The last count of trees with branches.
    Branched,
    /// The last count of trees that were made to branch.
    Induced,
    /// One more census of girths.
    Girth,
    /// One more census of heights.
    Height,
    /// The last count of sick trees, by sickness.
    Sick,
    /// The last count of harmed trees, by cause.
    Harmed,
    /// Trees that are tapped.
    Opened,
    /// One more day of rain, or without.
    Rain,
}

/// What there is to take care of after such a report, the gravest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Care {
    /// Sick trees: the adviser is told.
    Sick,
    /// Harmed trees: the adviser is told.
    Harmed,
    /// What was sprayed: its label is the law.
    Label,
}

/// A row of the table.
struct Row {
    /// The name in records, language packs and `budwood read`.
    name: &'static str,
    number: Number,
    nature: Nature,
    denied: Denied,
    /// One bit for each [`Slot`].
    keeps: u16,
    /// One bit for each [`Thing`] that is part of the same report when it stands beside the work.
    beside: u16,
    effect: Effect,
    needs_trees: bool,
    care: Option<Care>,
}

macro_rules! kinds {
    ($($(#[$doc:meta])* $kind:ident {
        name: $name:literal, number: $number:ident, nature: $nature:ident, denied: $denied:ident,
        keeps: [$($slot:ident),*], beside: [$($thing:ident),*],
        effect: $effect:ident, needs_trees: $trees:literal, care: $care:ident $(($which:ident))?,
    })+) => {
        /// A kind of field event, named as the trade names it.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Kind { $($(#[$doc])* $kind,)+ }

        impl Kind {
            /// Every kind, in the order of a block's life.
            pub const ALL: [Self; [$(Self::$kind),+].len()] = [$(Self::$kind),+];

            const fn row(self) -> Row {
                match self {
                    $(Self::$kind => Row {
                        name: $name,
                        number: Number::$number,
                        nature: Nature::$nature,
                        denied: Denied::$denied,
                        keeps: 0 $(| 1 << Slot::$slot as u16)*,
                        beside: 0 $(| 1 << Thing::$thing as u16)*,
                        effect: Effect::$effect,
                        needs_trees: $trees,
                        care: $care $((Care::$which))?,
                    },)+
                }
            }
        }
    };
}

kinds! {
    /// Land cleared and de-stumped.
    Cleared {
        name: "cleared", number: Unclear, nature: Upkeep, denied: NotDone,
        keeps: [Area, Part], beside: [],
        effect: Round, needs_trees: false, care: None,
    }
    /// Rows lined and pegged.
    Lined {
        name: "lined", number: Pegs, nature: Upkeep, denied: NotDone,
        keeps: [Area], beside: [],
        effect: Pegs, needs_trees: false, care: None,
    }
    /// Planting holes dug.
    HolesDug {
        name: "holes_dug", number: Needed, nature: Plain, denied: NotDone,
        keeps: [], beside: [Fertiliser],
        effect: Holes, needs_trees: false, care: None,
    }
    /// Plants, fertiliser received.
    Received {
        name: "received", number: Taken, nature: CountedSight, denied: NotDone,
        keeps: [Amount, Product, Material], beside: [Fertiliser],
        effect: Arrival, needs_trees: false, care: None,
    }
    /// Trees planted.
    Planted {
        name: "planted", number: Needed, nature: Plain, denied: NotDone,
        keeps: [Area, Material], beside: [Fertiliser, Crop, Cover],
        effect: Planted, needs_trees: false, care: None,
    }
    /// Trees found dead or missing.
    Dead {
        name: "dead", number: Needed, nature: Harm, denied: Zero,
        keeps: [Extent, Cause], beside: [Ailment, Cause],
        effect: Dead, needs_trees: true, care: None,
    }
    /// Gaps filled with new trees.
    Replaced {
        name: "replaced", number: Needed, nature: Plain, denied: NotDone,
        keeps: [Material], beside: [Ailment, Cause],
        effect: Replaced, needs_trees: true, care: None,
    }
    /// A weeding round done.
    Weeded {
        name: "weeded", number: Unclear, nature: Upkeep, denied: NotDone,
        keeps: [Area, Part], beside: [Spray],
        effect: Round, needs_trees: false, care: None,
    }
    /// A feeding round done.
    Fertilised {
        name: "fertilised", number: Unclear, nature: Upkeep, denied: NotDone,
        keeps: [Area, Part, Amount, Product], beside: [Fertiliser, Spray],
        effect: Fed, needs_trees: false, care: None,
    }
    /// Something sprayed.
    Sprayed {
        name: "sprayed", number: Unclear, nature: Upkeep, denied: NotDone,
        keeps: [Area, Part, Amount, Spray], beside: [Spray],
        effect: Round, needs_trees: false, care: Some(Label),
    }
    /// Side shoots cut.
    Pruned {
        name: "pruned", number: Allowed, nature: Upkeep, denied: NotDone,
        keeps: [Area, Part], beside: [],
        effect: Round, needs_trees: false, care: None,
    }
    /// Trees that have branched.
    Branched {
        name: "branched", number: Asked, nature: CountedSight, denied: NotDone,
        keeps: [], beside: [],
        effect: Branched, needs_trees: true, care: None,
    }
    /// Tall trees that have not branched.
    NotBranched {
        name: "not_branched", number: Asked, nature: CountedSight, denied: Zero,
        keeps: [], beside: [],
        effect: Tall, needs_trees: true, care: None,
    }
    /// Branching induced.
    BranchInduction {
        name: "branch_induction", number: Taken, nature: Plain, denied: NotDone,
        keeps: [], beside: [],
        effect: Induced, needs_trees: true, care: None,
    }
    /// Girths measured.
    Girth {
        name: "girth", number: Values, nature: Plain, denied: NotDone,
        keeps: [], beside: [],
        effect: Girth, needs_trees: true, care: None,
    }
    /// Heights measured.
    Height {
        name: "height", number: Values, nature: Plain, denied: NotDone,
        keeps: [], beside: [],
        effect: Height, needs_trees: true, care: None,
    }
    /// Sick trees seen.
    Disease {
        name: "disease", number: Asked, nature: Plain, denied: Zero,
        keeps: [Extent, Ailment], beside: [Ailment],
        effect: Sick, needs_trees: false, care: Some(Sick),
    }
    /// Trees harmed by wind, fire, animals and the like.
    Damage {
        name: "damage", number: Taken, nature: Harm, denied: Zero,
        keeps: [Extent, Cause], beside: [Cause],
        effect: Harmed, needs_trees: false, care: Some(Harmed),
    }
    /// Cover crop sown.
    CoverSown {
        name: "cover_sown", number: Allowed, nature: Upkeep, denied: NotDone,
        keeps: [Area, Part, Amount, Species], beside: [Crop, Cover],
        effect: Round, needs_trees: false, care: None,
    }
    /// Food crop sown between the rows.
    IntercropSown {
        name: "intercrop_sown", number: Allowed, nature: Plain, denied: NotDone,
        keeps: [Area, Amount, Species], beside: [Crop, Cover],
        effect: Round, needs_trees: false, care: None,
    }
    /// Trees opened for tapping.
    TappingOpened {
        name: "tapping_opened", number: Needed, nature: Plain, denied: NotDone,
        keeps: [], beside: [],
        effect: Opened, needs_trees: true, care: None,
    }
    /// A job said not to be done.
    NotDone {
        name: "not_done", number: Allowed, nature: Plain, denied: NotDone,
        keeps: [], beside: [],
        effect: Nothing, needs_trees: false, care: None,
    }
    /// Rain, or none.
    Rain {
        name: "rain", number: Allowed, nature: Plain, denied: NotDone,
        keeps: [Amount, Wetness], beside: [],
        effect: Rain, needs_trees: false, care: None,
    }
}

impl Kind {
    /// The name in records, language packs and `budwood read`.
    #[must_use]
    pub const fn name(self) -> &'static str {
        self.row().name
    }

    /// The kind with this name.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.name() == name)
    }

    /// Whether a report of this kind says nothing without a number of trees (or of holes).
    #[must_use]
    pub const fn needs_count(self) -> bool {
        matches!(self.row().number, Number::Needed)
    }

    /// Whether a job that a report of this kind proves asks for a number of trees (or of holes).
    #[must_use]
    pub const fn is_counted(self) -> bool {
        matches!(self.row().number, Number::Needed | Number::Asked)
    }

    /// Whether a number beside a report of this kind counts trees, said or not.
    #[must_use]
    pub const fn wants_count(self) -> bool {
        matches!(
            self.row().number,
            Number::Needed | Number::Asked | Number::Taken | Number::Pegs
        )
    }

    /// Whether a number alone is not taken for a count of trees.
    pub(crate) const fn leaves_number(self) -> bool {
        matches!(self.row().number, Number::Unclear)
    }

    /// Whether a count of trees is odd beside work of this kind.
    pub(crate) const fn counts_no_trees(self) -> bool {
        matches!(self.row().number, Number::Unclear | Number::Pegs)
    }

    /// Whether a report of this kind says nothing without measured values.
    #[must_use]
    pub const fn needs_values(self) -> bool {
        matches!(self.row().number, Number::Values)
    }

    /// Whether it is told without a block: rain falls on all of them, and what came is of none.
    #[must_use]
    pub const fn is_of_no_block(self) -> bool {
        matches!(self.effect(), Effect::Rain | Effect::Arrival)
    }

    /// Whether a weight or a number of bags can belong to a report of this kind.
    #[must_use]
    pub const fn takes_amount(self) -> bool {
        self.keeps(Slot::Amount)
    }

    /// Whether a report of this kind keeps what is said of this.
    pub(crate) const fn keeps(self, slot: Slot) -> bool {
        self.row().keeps & (1 << slot as u16) != 0
    }

    /// Whether a thing beside such work is part of the same report.
    pub(crate) const fn goes_with(self, thing: Thing) -> bool {
        self.row().beside & (1 << thing as u16) != 0
    }

    /// Whether this is work on the land that its word alone tells.
    pub(crate) const fn is_upkeep(self) -> bool {
        matches!(self.row().nature, Nature::Upkeep)
    }

    /// Whether this is something seen that is told with its number: "crown B" alone is nothing.
    pub(crate) const fn is_counted_sight(self) -> bool {
        matches!(self.row().nature, Nature::CountedSight)
    }

    /// Whether trees were harmed or lost.
    pub(crate) const fn is_harm(self) -> bool {
        matches!(self.row().nature, Nature::Harm)
    }

    /// Whether "no" beside a report of this kind says that there were no such trees.
    pub(crate) const fn is_denied_by_none(self) -> bool {
        matches!(self.row().denied, Denied::Zero)
    }

    /// What a report of this kind changes of how its block stands.
    #[must_use]
    pub const fn effect(self) -> Effect {
        self.row().effect
    }

    /// Whether a report of this kind changes how many trees stand.
    #[must_use]
    pub const fn counts_stand(self) -> bool {
        matches!(
            self.effect(),
            Effect::Planted | Effect::Replaced | Effect::Dead
        )
    }

    /// Whether a report of this kind can be true only where trees were planted.
    #[must_use]
    pub const fn needs_trees(self) -> bool {
        self.row().needs_trees
    }

    /// What there is to take care of after a report of this kind.
    #[must_use]
    pub const fn care(self) -> Option<Care> {
        self.row().care
    }
}
