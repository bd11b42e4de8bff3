//! The kinds of job: their names, what they hang on, how urgent they are, what proves them done.

use budwood_parser::Kind;

use super::Clock;

/// A job that the bot can remind of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum TaskKind {
    /// Order budded plants.
    OrderPlants,
    /// Dig planting holes.
    DigPits,
    /// Plant.
    Plant,
    /// Count the dead after planting.
    SurvivalCheck,
    /// Fill the gaps.
    Backfill,
    /// Weed.
    Weed,
    /// Feed.
    Feed,
    /// Cut side shoots.
    Prune,
    /// Make tall unbranched trees branch.
    InduceBranching,
    /// Look whether induced trees shoot.
    LookAtInduced,
    /// Look for root disease.
    RootCheck,
    /// Measure girths.
    GirthCensus,
    /// Open for tapping.
    Open,
}

impl TaskKind {
    /// Every job, in the order of a block's life.
    pub const ALL: [Self; 13] = [
        Self::OrderPlants,
        Self::DigPits,
        Self::Plant,
        Self::SurvivalCheck,
        Self::Backfill,
        Self::Weed,
        Self::Feed,
        Self::Prune,
        Self::InduceBranching,
        Self::LookAtInduced,
        Self::RootCheck,
        Self::GirthCensus,
        Self::Open,
    ];

    /// The name in records and files.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::OrderPlants => "order_plants",
            Self::DigPits => "dig_pits",
            Self::Plant => "plant",
            Self::SurvivalCheck => "survival_check",
            Self::Backfill => "backfill",
            Self::Weed => "weed",
            Self::Feed => "feed",
            Self::Prune => "prune",
            Self::InduceBranching => "induce_branching",
            Self::LookAtInduced => "look_at_induced",
            Self::RootCheck => "root_check",
            Self::GirthCensus => "girth_census",
            Self::Open => "open",
        }
    }

    /// The job with this name.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|task| task.name() == name)
    }

    /// What this job's date hangs on.
    #[must_use]
    pub const fn clock(self) -> Clock {
        match self {
            Self::OrderPlants | Self::DigPits => Clock::Office,
            Self::Plant => Clock::Season,
            Self::SurvivalCheck
            | Self::Weed
            | Self::Feed
            | Self::Prune
            | Self::RootCheck
            | Self::GirthCensus => Clock::Planting,
            Self::Backfill | Self::InduceBranching | Self::LookAtInduced | Self::Open => {
                Clock::Trees
            }
        }
    }

    /// How urgent this job is beside others, 0 the most: first what a season closes on, then
    /// what kills trees, then what slows them, last what only tells.
    #[must_use]
    pub const fn urgency(self) -> u8 {
        match self {
            Self::Plant => 0,
            Self::Backfill => 1,
            Self::OrderPlants => 2,
            Self::DigPits => 3,
            Self::SurvivalCheck => 4,
            Self::RootCheck => 5,
            Self::LookAtInduced => 6,
            Self::InduceBranching => 7,
            Self::Feed => 8,
            Self::Weed => 9,
            Self::Prune => 10,
            Self::Open => 11,
            Self::GirthCensus => 12,
        }
    }

    /// The kind of report that proves this job done, if there is one.
    #[must_use]
    pub const fn proven_by(self) -> Option<Kind> {
        match self {
            Self::OrderPlants => None,
            Self::DigPits => Some(Kind::HolesDug),
            Self::Plant => Some(Kind::Planted),
            Self::SurvivalCheck => Some(Kind::Dead),
            Self::Backfill => Some(Kind::Replaced),
            Self::Weed => Some(Kind::Weeded),
            Self::Feed => Some(Kind::Fertilised),
            Self::Prune => Some(Kind::Pruned),
            Self::InduceBranching => Some(Kind::BranchInduction),
            Self::LookAtInduced => Some(Kind::Branched),
            Self::RootCheck => Some(Kind::Disease),
            Self::GirthCensus => Some(Kind::Girth),
            Self::Open => Some(Kind::TappingOpened),
        }
    }
}
