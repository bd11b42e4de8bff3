//! The kinds of job: one row each, with everything about a kind that is more than its rule.
//!
//! A row says every column. The rule that gives a job its days is in `jobs/task.rs`, what must be so
//! before it in `jobs/task/condition.rs`.

use budwood_parser::Kind;

/// What a job's date hangs on. Each job hangs on exactly one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Clock {
    /// Days since planting, for each cohort.
    Planting,
    /// Rain and dry season.
    Season,
    /// The state of the trees.
    Trees,
    /// Dates of an office or a nursery.
    Office,
}

/// How often a text may speak of a job, and together with what.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum TextClass {
    /// The same day.
    Urgent,
    /// Once for each job, and a few times again.
    Decisive,
    /// With the other looks and rounds of the month, in one text.
    Round,
}

/// Until when a stand has this job.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Stand {
    /// Until its trees are opened for tapping, and only while some of them live.
    Growing,
    /// Until its trees are opened, also when every one is dead.
    Dead,
    /// Also when its trees are opened.
    Tapped,
}

/// A row of the table.
struct Row {
    name: &'static str,
    urgency: u8,
    clock: Clock,
    /// Whether the rains can set its days instead, so that it hangs on the season then.
    in_rains: bool,
    stand: Stand,
    class: TextClass,
    only_tells: bool,
    /// Whether a text speaks of it only to who was shown how it is done.
    only_shown: bool,
    /// None where no report tells of it; where one tells of a part, the job's own rule reads it.
    proven_by: Option<Kind>,
    /// Empty where no value of a calendar sets them.
    rests_on: &'static [&'static str],
}

macro_rules! tasks {
    ($($(#[$doc:meta])* $task:ident {
        name: $name:literal, urgency: $urgency:literal, clock: $clock:ident, in_rains: $rains:literal,
        stand: $stand:ident, class: $class:ident, only_tells: $tells:literal, only_shown: $shown:literal,
        proven_by: $proof:expr,
        rests_on: [$($path:literal),*],
    })+) => {
        /// A job that the bot can remind of.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum TaskKind { $($(#[$doc])* $task,)+ }

        impl TaskKind {
            /// Every job, in the order of a block's life.
            pub const ALL: [Self; [$(Self::$task),+].len()] = [$(Self::$task),+];

            const fn row(self) -> Row {
                match self {
                    $(Self::$task => Row {
                        name: $name,
                        urgency: $urgency,
                        clock: Clock::$clock,
                        in_rains: $rains,
                        stand: Stand::$stand,
                        class: TextClass::$class,
                        only_tells: $tells,
                        only_shown: $shown,
                        proven_by: $proof,
                        rests_on: &[$($path),*],
                    },)+
                }
            }
        }
    };
}

tasks! {
    /// Order budded plants.
    OrderPlants {
        name: "order_plants", urgency: 2, clock: Office, in_rains: false,
        stand: Growing, class: Decisive, only_tells: false, only_shown: false,
        proven_by: None,
        rests_on: ["order.spares_pct", "order.transit_loss_pct", "spacing"],
    }
    /// Fell the old stand and clear the land.
    Clear {
        name: "clear", urgency: 3, clock: Season, in_rains: false,
        stand: Growing, class: Decisive, only_tells: false, only_shown: false,
        proven_by: Some(Kind::Cleared),
        rests_on: ["land.clear_months_before"],
    }
    /// Peg the rows.
    Line {
        name: "line", urgency: 4, clock: Office, in_rains: false,
        stand: Growing, class: Decisive, only_tells: false, only_shown: false,
        proven_by: Some(Kind::Lined),
        rests_on: ["land.line_months_before", "spacing"],
    }
    /// Dig planting holes.
    DigPits {
        name: "dig_pits", urgency: 5, clock: Office, in_rains: false,
        stand: Growing, class: Decisive, only_tells: false, only_shown: false,
        proven_by: Some(Kind::HolesDug),
        rests_on: ["pits"],
    }
    /// Fill the planting holes again.
    FillPits {
        name: "fill_pits", urgency: 6, clock: Office, in_rains: false,
        stand: Growing, class: Decisive, only_tells: false, only_shown: false,
        proven_by: None,
        rests_on: ["pits.refill_days_before"],
    }
    /// Tell whether the rains have begun.
    RainWatch {
        name: "rain_watch", urgency: 15, clock: Season, in_rains: false,
        stand: Growing, class: Decisive, only_tells: true, only_shown: false,
        proven_by: Some(Kind::Rain),
        rests_on: [],
    }
    /// Plant.
    Plant {
        name: "plant", urgency: 0, clock: Season, in_rains: false,
        stand: Growing, class: Decisive, only_tells: false, only_shown: false,
        proven_by: Some(Kind::Planted),
        rests_on: ["planting.window_days", "spacing"],
    }
    /// Sow the ground cover.
    SowCover {
        name: "sow_cover", urgency: 16, clock: Season, in_rains: false,
        stand: Growing, class: Decisive, only_tells: false, only_shown: false,
        proven_by: Some(Kind::CoverSown),
        rests_on: ["cover"],
    }
    /// Count the dead after planting.
    SurvivalCheck {
        name: "survival_check", urgency: 7, clock: Planting, in_rains: false,
        stand: Growing, class: Decisive, only_tells: false, only_shown: false,
        proven_by: Some(Kind::Dead),
        rests_on: ["survival"],
    }
    /// Fill the gaps.
    Backfill {
        name: "backfill", urgency: 1, clock: Trees, in_rains: true,
        stand: Dead, class: Decisive, only_tells: false, only_shown: false,
        proven_by: Some(Kind::Replaced),
        rests_on: ["backfill"],
    }
    /// Weed.
    Weed {
        name: "weed", urgency: 14, clock: Planting, in_rains: false,
        stand: Growing, class: Round, only_tells: false, only_shown: false,
        proven_by: Some(Kind::Weeded),
        rests_on: ["weeding.rounds"],
    }
    /// Feed.
    Feed {
        name: "feed", urgency: 13, clock: Planting, in_rains: true,
        stand: Growing, class: Decisive, only_tells: false, only_shown: false,
        proven_by: Some(Kind::Fertilised),
        rests_on: ["feeding"],
    }
    /// Cut side shoots.
    Prune {
        name: "prune", urgency: 17, clock: Planting, in_rains: true,
        stand: Growing, class: Round, only_tells: false, only_shown: false,
        proven_by: Some(Kind::Pruned),
        rests_on: ["pruning"],
    }
    /// Mulch and shade before the dry season.
    Mulch {
        name: "mulch", urgency: 12, clock: Season, in_rains: false,
        stand: Growing, class: Decisive, only_tells: false, only_shown: false,
        proven_by: None,
        rests_on: ["dry_season.mulch_until_month", "dry_season.mulch_gap_cm"],
    }
    /// Clear a firebreak before the dry season.
    Firebreak {
        name: "firebreak", urgency: 8, clock: Season, in_rains: false,
        stand: Growing, class: Decisive, only_tells: false, only_shown: false,
        proven_by: None,
        rests_on: ["dry_season.firebreak_m"],
    }
    /// Count tall trees without branches.
    CountTall {
        name: "count_tall", urgency: 18, clock: Planting, in_rains: false,
        stand: Growing, class: Decisive, only_tells: false, only_shown: false,
        proven_by: Some(Kind::NotBranched),
        rests_on: ["induction"],
    }
    /// Make tall unbranched trees branch.
    InduceBranching {
        name: "induce_branching", urgency: 11, clock: Trees, in_rains: true,
        stand: Growing, class: Decisive, only_tells: false, only_shown: true,
        proven_by: Some(Kind::BranchInduction),
        rests_on: ["induction"],
    }
    /// Look whether induced trees shoot.
    LookAtInduced {
        name: "look_at_induced", urgency: 10, clock: Trees, in_rains: false,
        stand: Growing, class: Decisive, only_tells: false, only_shown: false,
        proven_by: Some(Kind::Branched),
        rests_on: ["induction"],
    }
    /// Look for root disease.
    RootCheck {
        name: "root_check", urgency: 9, clock: Planting, in_rains: false,
        stand: Growing, class: Round, only_tells: false, only_shown: false,
        proven_by: Some(Kind::Disease),
        rests_on: ["root_check"],
    }
    /// Look for sick leaves.
    LeafCheck {
        name: "leaf_check", urgency: 24, clock: Planting, in_rains: true,
        stand: Growing, class: Round, only_tells: true, only_shown: false,
        proven_by: None,
        rests_on: ["leaf_check"],
    }
    /// Say which food crops stand between the rows.
    Intercrop {
        name: "intercrop", urgency: 25, clock: Planting, in_rains: false,
        stand: Growing, class: Round, only_tells: true, only_shown: false,
        proven_by: None,
        rests_on: ["intercrop"],
    }
    /// Measure girths.
    GirthCensus {
        name: "girth_census", urgency: 21, clock: Planting, in_rains: false,
        stand: Growing, class: Decisive, only_tells: false, only_shown: false,
        proven_by: Some(Kind::Girth),
        rests_on: ["census", "opening.height_cm"],
    }
    /// Learn tapping before the stand is ready.
    GetReady {
        name: "get_ready", urgency: 20, clock: Trees, in_rains: false,
        stand: Growing, class: Decisive, only_tells: false, only_shown: false,
        proven_by: None,
        rests_on: ["opening.ready_days_before"],
    }
    /// Open for tapping.
    Open {
        name: "open", urgency: 19, clock: Trees, in_rains: false,
        stand: Growing, class: Decisive, only_tells: false, only_shown: false,
        proven_by: Some(Kind::TappingOpened),
        rests_on: ["opening.girth_cm", "opening.height_cm", "opening.datum", "opening.share_pct"],
    }
    /// Measure and open the trees that were left.
    OpenRest {
        name: "open_rest", urgency: 22, clock: Trees, in_rains: false,
        stand: Tapped, class: Decisive, only_tells: false, only_shown: false,
        proven_by: None,
        rests_on: ["opening.rest_every_days", "opening.girth_cm"],
    }
    /// Hear that the years before tapping are over.
    HandOver {
        name: "hand_over", urgency: 23, clock: Trees, in_rains: false,
        stand: Tapped, class: Decisive, only_tells: true, only_shown: false,
        proven_by: None,
        rests_on: [],
    }
}

impl TaskKind {
    /// The name in records and files.
    #[must_use]
    pub const fn name(self) -> &'static str {
        self.row().name
    }

    /// The job with this name.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|task| task.name() == name)
    }

    /// How urgent this job is beside others, 0 the most: first what a season closes on, then
    /// what kills trees, then what slows them, last what only tells.
    #[must_use]
    pub const fn urgency(self) -> u8 {
        self.row().urgency
    }

    /// What this job's date hangs on.
    #[must_use]
    pub const fn clock(self) -> Clock {
        self.row().clock
    }

    /// Whether it waits for the rains or must be done before they end.
    #[must_use]
    pub const fn is_bound_to_rains(self) -> bool {
        self.row().in_rains
    }

    /// Whether a stand has it whose trees are opened for tapping.
    pub(crate) const fn is_of_tapped_stand(self) -> bool {
        matches!(self.row().stand, Stand::Tapped)
    }

    /// Whether a stand has it whose trees are all dead.
    pub(crate) const fn is_of_dead_stand(self) -> bool {
        matches!(self.row().stand, Stand::Dead)
    }

    /// How often a text may speak of it, and together with what.
    #[must_use]
    pub const fn class(self) -> TextClass {
        self.row().class
    }

    /// Whether it only asks or tells something: who does not answer is nobody's worry.
    #[must_use]
    pub const fn only_tells(self) -> bool {
        self.row().only_tells
    }

    /// The work that its owner must have been shown before a text speaks of it, if they must.
    #[must_use]
    pub const fn shown_first(self) -> Option<Kind> {
        if self.row().only_shown {
            self.proven_by()
        } else {
            None
        }
    }

    /// The kind of report that proves this job done, if there is one.
    #[must_use]
    pub const fn proven_by(self) -> Option<Kind> {
        self.row().proven_by
    }

    /// The values of the calendar that the job's figures come from, by their paths.
    #[must_use]
    pub const fn rests_on(self) -> &'static [&'static str] {
        self.row().rests_on
    }
}
