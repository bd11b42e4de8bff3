//! The kinds of job, and the clocks they hang on: their names, what they hang on, how urgent they are, what proves them done.

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

/// A job that the bot can remind of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum TaskKind {
    /// Order budded plants.
    OrderPlants,
    /// Fell the old stand and clear the land.
    Clear,
    /// Peg the rows.
    Line,
    /// Dig planting holes.
    DigPits,
    /// Fill the planting holes again.
    FillPits,
    /// Tell whether the rains have begun.
    RainWatch,
    /// Plant.
    Plant,
    /// Sow the ground cover.
    SowCover,
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
    /// Mulch and shade before the dry season.
    Mulch,
    /// Clear a firebreak before the dry season.
    Firebreak,
    /// Count tall trees without branches.
    CountTall,
    /// Make tall unbranched trees branch.
    InduceBranching,
    /// Look whether induced trees shoot.
    LookAtInduced,
    /// Look for root disease.
    RootCheck,
    /// Look for sick leaves.
    LeafCheck,
    /// Say which food crops stand between the rows.
    Intercrop,
    /// Measure girths.
    GirthCensus,
    /// Learn tapping before the stand is ready.
    GetReady,
    /// Open for tapping.
    Open,
    /// Measure and open the trees that were left.
    OpenRest,
    /// Hear that the years before tapping are over.
    HandOver,
}

impl TaskKind {
    /// Every job, in the order of a block's life.
    pub const ALL: [Self; 26] = [
        Self::OrderPlants,
        Self::Clear,
        Self::Line,
        Self::DigPits,
        Self::FillPits,
        Self::RainWatch,
        Self::Plant,
        Self::SowCover,
        Self::SurvivalCheck,
        Self::Backfill,
        Self::Weed,
        Self::Feed,
        Self::Prune,
        Self::Mulch,
        Self::Firebreak,
        Self::CountTall,
        Self::InduceBranching,
        Self::LookAtInduced,
        Self::RootCheck,
        Self::LeafCheck,
        Self::Intercrop,
        Self::GirthCensus,
        Self::GetReady,
        Self::Open,
        Self::OpenRest,
        Self::HandOver,
    ];

    /// The name in records and files.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::OrderPlants => "order_plants",
            Self::Clear => "clear",
            Self::Line => "line",
            Self::DigPits => "dig_pits",
            Self::FillPits => "fill_pits",
            Self::RainWatch => "rain_watch",
            Self::Plant => "plant",
            Self::SowCover => "sow_cover",
            Self::SurvivalCheck => "survival_check",
            Self::Backfill => "backfill",
            Self::Weed => "weed",
            Self::Feed => "feed",
            Self::Prune => "prune",
            Self::Mulch => "mulch",
            Self::Firebreak => "firebreak",
            Self::CountTall => "count_tall",
            Self::InduceBranching => "induce_branching",
            Self::LookAtInduced => "look_at_induced",
            Self::RootCheck => "root_check",
            Self::LeafCheck => "leaf_check",
            Self::Intercrop => "intercrop",
            Self::GirthCensus => "girth_census",
            Self::GetReady => "get_ready",
            Self::Open => "open",
            Self::OpenRest => "open_rest",
            Self::HandOver => "hand_over",
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
            Self::OrderPlants | Self::Line | Self::DigPits | Self::FillPits => Clock::Office,
            Self::Clear
            | Self::RainWatch
            | Self::Plant
            | Self::SowCover
            | Self::Mulch
            | Self::Firebreak => Clock::Season,
            Self::SurvivalCheck
            | Self::Weed
            | Self::Feed
            | Self::Prune
            | Self::CountTall
            | Self::RootCheck
            | Self::LeafCheck
            | Self::Intercrop
            | Self::GirthCensus => Clock::Planting,
            Self::Backfill
            | Self::InduceBranching
            | Self::LookAtInduced
            | Self::GetReady
            | Self::Open
            | Self::OpenRest
            | Self::HandOver => Clock::Trees,
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
            Self::Clear => 3,
            Self::Line => 4,
            Self::DigPits => 5,
            Self::FillPits => 6,
            Self::SurvivalCheck => 7,
            Self::Firebreak => 8,
            Self::RootCheck => 9,
            Self::LookAtInduced => 10,
            Self::InduceBranching => 11,
            Self::Mulch => 12,
            Self::Feed => 13,
            Self::Weed => 14,
            Self::RainWatch => 15,
            Self::SowCover => 16,
            Self::Prune => 17,
            Self::CountTall => 18,
            Self::Open => 19,
            Self::GetReady => 20,
            Self::GirthCensus => 21,
            Self::OpenRest => 22,
            Self::HandOver => 23,
            Self::LeafCheck => 24,
            Self::Intercrop => 25,
        }
    }

    /// The kind of report that proves this job done, if there is one.
    #[must_use]
    pub const fn proven_by(self) -> Option<Kind> {
        match self {
            // No report tells of these; where one tells of a part, the job's own rule reads it.
            Self::OrderPlants
            | Self::FillPits
            | Self::Mulch
            | Self::Firebreak
            | Self::LeafCheck
            | Self::Intercrop
            | Self::GetReady
            | Self::OpenRest
            | Self::HandOver => None,
            Self::SowCover => Some(Kind::CoverSown),
            Self::Clear => Some(Kind::Cleared),
            Self::Line => Some(Kind::Lined),
            Self::CountTall => Some(Kind::NotBranched),
            Self::DigPits => Some(Kind::HolesDug),
            Self::RainWatch => Some(Kind::Rain),
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

    /// The values of the calendar that the job's figures come from, by their paths.
    #[must_use]
    pub const fn rests_on(self) -> &'static [&'static str] {
        match self {
            Self::OrderPlants => &["order.spares_pct", "order.transit_loss_pct", "spacing"],
            Self::Clear => &["land.clear_months_before"],
            Self::Line => &["land.line_months_before", "spacing"],
            Self::DigPits => &["pits"],
            Self::FillPits => &["pits.refill_days_before"],
            Self::SowCover => &["cover"],
            // Its days come from the group's usual rains, not from a calendar.
            Self::RainWatch | Self::HandOver => &[],
            Self::Plant => &["planting.window_days", "spacing"],
            Self::SurvivalCheck => &["survival"],
            Self::Backfill => &["backfill"],
            Self::Weed => &["weeding.rounds"],
            Self::Feed => &["feeding"],
            Self::Prune => &["pruning"],
            Self::Mulch => &["dry_season.mulch_until_month", "dry_season.mulch_gap_cm"],
            Self::Firebreak => &["dry_season.firebreak_m"],
            Self::CountTall | Self::InduceBranching | Self::LookAtInduced => &["induction"],
            Self::RootCheck => &["root_check"],
            Self::LeafCheck => &["leaf_check"],
            Self::Intercrop => &["intercrop"],
            Self::GirthCensus => &["census", "opening.height_cm"],
            Self::GetReady => &["opening.ready_days_before"],
            Self::OpenRest => &["opening.rest_every_days", "opening.girth_cm"],
            Self::Open => &[
                "opening.girth_cm",
                "opening.height_cm",
                "opening.datum",
                "opening.share_pct",
            ],
        }
    }
}
