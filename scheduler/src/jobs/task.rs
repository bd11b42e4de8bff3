//! The jobs that follow from a block's state and the calendar.
//!
//! [`tasks`] asks one rule for each kind of job; a rule gives at most one round, the present or
//! the next one. Deliberately absent: when to speak of it ([`crate::jobs::nudge`]), and in what words.

mod branching;
mod case;
mod condition;
mod dry_season;
mod feeding;
mod land;
mod near;
mod planting;
mod survival;
mod tapping;
#[cfg(test)]
mod tests;
mod upkeep;
mod watch;

use alloc::vec::Vec;

use budwood_parser::Ailment;
use chrono::NaiveDate;

use crate::{
    handbook::calendar::{Calendar, Datum},
    jobs::feed::Ration,
    land::{
        block::{BlockState, Living},
        directory::Block,
    },
    outlook::census::Walk,
    words::{
        id::BlockId,
        job::{Clock, TaskKind, TextClass},
        season::Season,
    },
};
use case::{Case, Plan};

pub use condition::Condition;
pub use feeding::{Lost, LostRound};
pub use near::warning;

/// Every job of a block: for each kind the present or the next round, even when its day is still
/// to come, and none when the job cannot arise or is past its end.
#[must_use]
pub fn tasks(
    block: &Block,
    state: &BlockState,
    season: &Season,
    calendar: &Calendar,
    today: NaiveDate,
) -> Vec<Task> {
    let case = Case {
        block,
        state,
        season,
        calendar,
        today,
    };
    let is_opened = tapping::is_opened(&case);
    let is_lost = state.planted() > 0 && state.alive() == 0;
    TaskKind::ALL
        .into_iter()
        // A stand that is tapped has left these years; only the trees that were left are asked for,
        // until it is handed over.
        .filter(|kind| !is_opened || kind.is_of_tapped_stand())
        // Where every tree is dead, nobody wants to hear of weeding.
        .filter(|kind| !is_lost || kind.is_of_dead_stand())
        .filter_map(|kind| {
            let plan = plan(&case, kind)?;
            let clock = clock(&case, kind, &plan);
            Some(case.task(kind, plan, clock))
        })
        .filter(|task| task.ends.is_none_or(|ends| ends >= today.max(task.due)))
        .collect()
}

/// The task to speak of when several are due today: the most urgent, then the oldest.
#[must_use]
pub fn most_urgent(tasks: &[Task], today: NaiveDate) -> Option<&Task> {
    tasks
        .iter()
        .filter(|task| task.due <= today)
        .min_by_key(|task| (task.urgency(), task.due))
}

fn plan(case: &Case<'_>, kind: TaskKind) -> Option<Plan> {
    if !kind.conditions().iter().all(|one| one.holds(case)) {
        return None;
    }
    match kind {
        TaskKind::OrderPlants => planting::order_plants(case),
        TaskKind::Clear => land::clear(case),
        TaskKind::Line => land::line(case),
        TaskKind::DigPits => planting::dig_pits(case),
        TaskKind::FillPits => planting::fill_pits(case),
        TaskKind::RainWatch => watch::rain_watch(case),
        TaskKind::Plant => planting::plant(case),
        TaskKind::SowCover => land::sow_cover(case),
        TaskKind::SurvivalCheck => survival::check(case),
        TaskKind::Backfill => survival::backfill(case),
        TaskKind::Weed => upkeep::weed(case),
        TaskKind::Feed => feeding::feed(case),
        TaskKind::Prune => upkeep::prune(case),
        TaskKind::Mulch => dry_season::mulch(case),
        TaskKind::Firebreak => dry_season::firebreak(case),
        TaskKind::CountTall => branching::count_tall(case),
        TaskKind::InduceBranching => branching::induce(case),
        TaskKind::LookAtInduced => branching::look(case),
        TaskKind::RootCheck => upkeep::root_check(case),
        TaskKind::LeafCheck => watch::leaf_check(case),
        TaskKind::Intercrop => watch::intercrop(case),
        TaskKind::GirthCensus => tapping::census(case),
        TaskKind::GetReady => tapping::get_ready(case),
        TaskKind::Open => tapping::open(case),
        TaskKind::OpenRest => tapping::open_rest(case),
        TaskKind::HandOver => tapping::hand_over(case),
    }
}

/// A job that waits for the rains, or must be done before they end, hangs on the season as long as
/// that is what sets its days.
fn clock(case: &Case<'_>, kind: TaskKind, planned: &Plan) -> Clock {
    if !kind.is_bound_to_rains() {
        return kind.clock();
    }
    let season = Season::default();
    let always = Case {
        season: &season,
        ..*case
    };
    match plan(&always, kind) {
        Some(plan) if (plan.due, plan.ends) == (planned.due, planned.ends) => kind.clock(),
        Some(_) | None => Clock::Season,
    }
}

/// One job on one block.
#[derive(Clone, Debug, PartialEq)]
pub struct Task {
    /// Which job.
    pub kind: TaskKind,
    /// Where.
    pub block: BlockId,
    /// From this day it can be done, and a nudge may go.
    pub due: NaiveDate,
    /// After this day it is late.
    pub late_after: NaiveDate,
    /// After this day there is no point in it any more (a backfill past its limit).
    pub ends: Option<NaiveDate>,
    /// What the date hangs on.
    pub clock: Clock,
    /// The block's own figures for the text.
    pub figures: Figures,
}

impl Task {
    /// Which job to speak of first: the lower the more urgent. What spreads nearby is urgent.
    #[must_use]
    pub const fn urgency(&self) -> u8 {
        match self.figures.near {
            Some(_) => 0,
            None => self.kind.urgency(),
        }
    }
}

impl Task {
    /// Whether it only asks or tells something: who does not answer is nobody's worry. A look that
    /// the adviser asked for is one.
    #[must_use]
    pub const fn only_tells(&self) -> bool {
        self.kind.only_tells() && self.figures.near.is_none()
    }

    /// How often a text may speak of it, and together with what. What spreads nearby is urgent.
    #[must_use]
    pub const fn class(&self) -> TextClass {
        match self.figures.near {
            Some(_) => TextClass::Urgent,
            None => self.kind.class(),
        }
    }
}

/// Figures of a job: the farmer's own, so that the text need not be general.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Figures {
    /// Trees, plants or pits that the job is about. With grams, the trees that get them.
    pub trees: Option<u32>,
    /// Grams for each of these trees (feeding; all products of the round together).
    pub grams_per_tree: Option<f64>,
    /// Kilograms for these trees (feeding): trees times grams.
    pub kilograms: Option<f64>,
    /// What trees of each age get, product by product (feeding); the first are the trees above.
    pub rations: Vec<Ration>,
    /// Rounds before this one that were not given and are asked for no more (feeding): the adviser is
    /// to know of them.
    pub lost: Vec<LostRound>,
    /// The living trees of the block (counting the dead, filling): of them the dead are asked about.
    pub living: Option<Living>,
    /// Height in metres (pruning, induction).
    pub height_m: Option<f64>,
    /// Girth in centimetres (census, opening).
    pub girth_cm: Option<f64>,
    /// Height of measurement in centimetres (census, opening).
    pub datum_cm: Option<f64>,
    /// From where that height is measured.
    pub datum: Option<Datum>,
    /// Share of trees in per cent (opening).
    pub share_pct: Option<f64>,
    /// From this day on is asked about (rain).
    pub since: Option<NaiveDate>,
    /// Edge of a planting pit in centimetres; of a round one, how wide it is.
    pub pit_cm: Option<f64>,
    /// How deep a round pit is, in centimetres.
    pub round_deep_cm: Option<f64>,
    /// The number of this round since planting, from 1 (weeding, feeding).
    pub round: Option<u32>,
    /// Width in metres (firebreak).
    pub width_m: Option<f64>,
    /// Distance from the rows in metres (food crops).
    pub distance_m: Option<f64>,
    /// Whether the land is too steep for them (food crops).
    pub is_steep: bool,
    /// How far from the stems, in centimetres (mulch).
    pub gap_cm: Option<f64>,
    /// Whether a publication stands behind every value of the calendar in these figures. If not,
    /// they are never told as a rule.
    pub is_published: bool,
    /// Sickness that was seen nearby, for which to look (checks of roots and leaves).
    pub near: Option<Ailment>,
    /// Which trees to measure (census); none when it is every tree.
    pub walk: Option<Walk>,
}

impl Figures {
    /// All trees that are fed, whatever their age.
    #[must_use]
    pub fn trees_fed(&self) -> u32 {
        let trees = self.rations.iter().map(|ration| ration.trees);
        trees.fold(0, u32::saturating_add)
    }

    /// Kilograms for all of them.
    #[must_use]
    pub fn kilograms_in_all(&self) -> f64 {
        self.rations.iter().map(Ration::kilograms).sum()
    }
}
