//! The kinds of fact that a text can report.

/// A kind of field event, named as the trade names it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Kind {
    /// Land cleared and de-stumped.
    Cleared,
    /// Rows lined and pegged.
    Lined,
    /// Planting holes dug.
    HolesDug,
    /// Plants, fertiliser received.
    Received,
    /// Trees planted.
    Planted,
    /// Trees found dead or missing.
    Dead,
    /// Gaps filled with new trees.
    Replaced,
    /// A weeding round done.
    Weeded,
    /// A feeding round done.
    Fertilised,
    /// Something sprayed.
    Sprayed,
    /// Side shoots cut.
    Pruned,
    /// Trees that have branched.
    Branched,
    /// Tall trees that have not branched.
    NotBranched,
    /// Branching induced.
    BranchInduction,
    /// Girths measured.
    Girth,
    /// Heights measured.
    Height,
    /// Sick trees seen.
    Disease,
    /// Trees harmed by wind, fire, animals and the like.
    Damage,
    /// Cover crop sown.
    CoverSown,
    /// Food crop sown between the rows.
    IntercropSown,
    /// Trees opened for tapping.
    TappingOpened,
    /// A job said not to be done.
    NotDone,
    /// Rain, or none.
    Rain,
}

impl Kind {
    /// Every kind, in the order of a block's life.
    pub const ALL: [Self; 23] = [
        Self::Cleared,
        Self::Lined,
        Self::HolesDug,
        Self::Received,
        Self::Planted,
        Self::Dead,
        Self::Replaced,
        Self::Weeded,
        Self::Fertilised,
        Self::Sprayed,
        Self::Pruned,
        Self::Branched,
        Self::NotBranched,
        Self::BranchInduction,
        Self::Girth,
        Self::Height,
        Self::Disease,
        Self::Damage,
        Self::CoverSown,
        Self::IntercropSown,
        Self::TappingOpened,
        Self::NotDone,
        Self::Rain,
    ];

    /// The name in records, language packs and `budwood read`.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Cleared => "cleared",
            Self::Lined => "lined",
            Self::HolesDug => "holes_dug",
            Self::Received => "received",
            Self::Planted => "planted",
            Self::Dead => "dead",
            Self::Replaced => "replaced",
            Self::Weeded => "weeded",
            Self::Fertilised => "fertilised",
            Self::Sprayed => "sprayed",
            Self::Pruned => "pruned",
            Self::Branched => "branched",
            Self::NotBranched => "not_branched",
            Self::BranchInduction => "branch_induction",
            Self::Girth => "girth",
            Self::Height => "height",
            Self::Disease => "disease",
            Self::Damage => "damage",
            Self::CoverSown => "cover_sown",
            Self::IntercropSown => "intercrop_sown",
            Self::TappingOpened => "tapping_opened",
            Self::NotDone => "not_done",
            Self::Rain => "rain",
        }
    }

    /// The kind with this name.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.name() == name)
    }

    /// Whether a report of this kind says nothing without a number of trees (or of holes).
    #[must_use]
    pub const fn needs_count(self) -> bool {
        matches!(
            self,
            Self::HolesDug | Self::Planted | Self::Dead | Self::Replaced | Self::TappingOpened
        )
    }

    /// Whether a job that a report of this kind proves asks for a number of trees (or of holes).
    #[must_use]
    pub const fn is_counted(self) -> bool {
        self.needs_count() || matches!(self, Self::Disease | Self::Branched | Self::NotBranched)
    }

    /// Whether a report of this kind says nothing without measured values.
    #[must_use]
    pub const fn needs_values(self) -> bool {
        matches!(self, Self::Girth | Self::Height)
    }

    /// Whether a number beside a report of this kind counts trees, said or not.
    #[must_use]
    pub const fn wants_count(self) -> bool {
        self.needs_count()
            || matches!(
                self,
                Self::Lined
                    | Self::Received
                    | Self::Branched
                    | Self::NotBranched
                    | Self::BranchInduction
                    | Self::Disease
                    | Self::Damage
            )
    }

    /// Whether a weight or a number of bags can belong to a report of this kind.
    #[must_use]
    pub const fn takes_amount(self) -> bool {
        matches!(
            self,
            Self::Fertilised
                | Self::Received
                | Self::Sprayed
                | Self::CoverSown
                | Self::IntercropSown
                | Self::Rain
        )
    }
}
