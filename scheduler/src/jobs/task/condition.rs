//! What must be so before a job is spoken of: each condition in words, beside what checks it.
//!
//! They are asked before a job's own rule, so what a person reads on a plan is what is checked.
//! Deliberately absent: the days, which are the rules' own.

use budwood_parser::Kind;

use super::{case::Case, land, planting, survival, tapping};
use crate::{
    outlook::readiness::{Verdict, readiness},
    words::job::TaskKind,
};

/// One thing that must be so.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Condition {
    /// A day of planting is planned.
    Planned,
    /// No plants are ordered or received.
    NothingOrdered,
    /// Plants are ordered or received.
    PlantsOrdered,
    /// The land is not cleared, nor further.
    NothingCleared,
    /// The land is cleared, or further.
    LandClear,
    /// No pegs stand, nor what comes after them.
    NothingPegged,
    /// Not about all planting holes are dug.
    HolesMissing,
    /// About all planting holes are dug.
    HolesDug,
    /// Some planting holes are dug.
    SomeHoles,
    /// The holes are not said to be filled.
    HolesOpen,
    /// Nothing is planted.
    NothingPlanted,
    /// The usual rains are known, and the adviser has not opened their window.
    WindowShut,
    /// The adviser opened a window in which this block is to be planted.
    WindowOpen,
    /// Fewer trees than places.
    PlacesLeft,
    /// The handbook asks for a ground cover.
    CoverAsked,
    /// No cover is sown.
    NoCover,
    /// Something is planted.
    Planted,
    /// The usual rains are known.
    RainsKnown,
    /// The dead were counted.
    DeadCounted,
    /// More gaps than the handbook calls tolerable.
    GapsTooMany,
    /// Not every tree was counted with branches.
    SomeUnbranched,
    /// Tall trees without branches were counted.
    TallCounted,
    /// Branching was induced.
    Induced,
    /// Enough trees are thick, in a sample that is sure.
    ThickEnough,
    /// So many trees are opened that the stand is tapped.
    Tapped,
    /// Some living trees are not opened.
    TreesLeft,
}

impl Condition {
    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Planned => "a day of planting is planned",
            Self::NothingOrdered => "nothing is ordered",
            Self::PlantsOrdered => "plants are ordered",
            Self::NothingCleared => "nothing is cleared or pegged",
            Self::LandClear => "the land is clear",
            Self::NothingPegged => "nothing is pegged or dug",
            Self::HolesMissing => "fewer pits than points",
            Self::HolesDug => "the pits are dug",
            Self::SomeHoles => "pits are dug",
            Self::HolesOpen => "they are not filled",
            Self::NothingPlanted => "nothing is planted",
            Self::WindowShut => "the usual rains are known and their window is not open",
            Self::WindowOpen => "the adviser opened the window for it",
            Self::PlacesLeft => "fewer trees than places",
            Self::CoverAsked => "the handbook asks for a cover",
            Self::NoCover => "no cover is sown",
            Self::Planted => "trees are planted",
            Self::RainsKnown => "the usual rains are known",
            Self::DeadCounted => "the dead were counted",
            Self::GapsTooMany => "more gaps than are tolerable",
            Self::SomeUnbranched => "not all trees have branched",
            Self::TallCounted => "tall trees without branches were counted",
            Self::Induced => "branching was induced",
            Self::ThickEnough => "enough trees reach the girth in a sample that is sure",
            Self::Tapped => "the stand is opened",
            Self::TreesLeft => "some trees are not",
        }
    }

    /// Whether it is so.
    pub(super) fn holds(self, case: &Case<'_>) -> bool {
        let state = case.state;
        match self {
            Self::Planned => case.block.planned_on.is_some(),
            Self::NothingOrdered => !planting::is_ordered(case),
            Self::PlantsOrdered => planting::is_ordered(case),
            Self::NothingCleared => !land::is_clear(case),
            Self::LandClear => land::is_clear(case),
            Self::NothingPegged => !land::is_pegged(case),
            Self::HolesMissing => !planting::is_dug(case),
            Self::HolesDug => planting::is_dug(case),
            Self::SomeHoles => state.holes > 0 || case.said_done(TaskKind::DigPits).is_some(),
            Self::HolesOpen => case.said_done(TaskKind::FillPits).is_none(),
            Self::NothingPlanted => state.cohorts.is_empty(),
            Self::WindowShut => {
                let watch = case.season.watch(case.today);
                watch.is_some_and(|watch| watch.opened_on.is_none())
            }
            Self::WindowOpen => planting::is_open_for(case),
            Self::PlacesLeft => planting::are_places_left(case),
            Self::CoverAsked => case.calendar.cover.is_asked,
            Self::NoCover => case.last_done(TaskKind::SowCover).is_none(),
            Self::Planted => state.planted_on().is_some(),
            Self::RainsKnown => case.season.rains(case.today).is_some(),
            Self::DeadCounted => state.last_of(Kind::Dead).is_some(),
            Self::GapsTooMany => survival::needs_filling(case),
            Self::SomeUnbranched => !case.all_branched(),
            Self::TallCounted => state.tall.is_some_and(|count| count.trees != Some(0)),
            Self::Induced => state.induced.is_some(),
            Self::ThickEnough => {
                readiness(state, case.calendar).is_some_and(|ready| ready.verdict == Verdict::Ready)
            }
            Self::Tapped => tapping::is_opened(case),
            Self::TreesLeft => tapping::left(case) > 0,
        }
    }
}

impl TaskKind {
    /// What must be so before this job is spoken of.
    #[must_use]
    pub const fn conditions(self) -> &'static [Condition] {
        use Condition as C;
        match self {
            Self::OrderPlants => &[C::Planned, C::NothingOrdered, C::NothingPlanted],
            Self::Clear => &[C::Planned, C::PlantsOrdered, C::NothingCleared],
            Self::Line => &[C::Planned, C::NothingPegged],
            Self::DigPits => &[C::Planned, C::HolesMissing, C::NothingPlanted],
            Self::FillPits => &[C::Planned, C::HolesDug, C::HolesOpen, C::NothingPlanted],
            Self::RainWatch => &[C::SomeHoles, C::NothingPlanted, C::WindowShut],
            Self::Plant => &[C::WindowOpen, C::PlacesLeft],
            Self::SowCover => &[C::CoverAsked, C::LandClear, C::NoCover],
            Self::Backfill => &[C::Planted, C::DeadCounted, C::GapsTooMany],
            Self::Prune | Self::CountTall => &[C::Planted, C::SomeUnbranched],
            Self::Mulch | Self::Firebreak => &[C::Planted, C::RainsKnown],
            Self::InduceBranching => &[C::Planted, C::TallCounted],
            Self::LookAtInduced => &[C::Planted, C::Induced],
            Self::Open => &[C::Planted, C::ThickEnough],
            Self::OpenRest => &[C::Planted, C::Tapped, C::TreesLeft],
            Self::HandOver => &[C::Planted, C::Tapped],
            Self::SurvivalCheck
            | Self::Weed
            | Self::Feed
            | Self::RootCheck
            | Self::LeafCheck
            | Self::Intercrop
            | Self::GirthCensus
            | Self::GetReady => &[C::Planted],
        }
    }
}
