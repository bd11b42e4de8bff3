//! Feeding: which round of the table is asked for, what it takes, and which rounds were lost.

mod rounds;

use alloc::vec::Vec;

use chrono::NaiveDate;

use super::{
    Figures,
    case::{Case, Plan},
};
use crate::{
    jobs::feed::{self, Ration},
    sums::days,
};
pub(super) use rounds::placed;

use rounds::Placed;

/// Fertiliser that lies about for three weeks is seldom spread any more.
const FEED_LATE_DAYS: u32 = 21;

/// A round of the table that was not given and is asked for no more.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LostRound {
    /// Its number since planting, from 1.
    pub round: u32,
    /// The day on which the table has it.
    pub on: NaiveDate,
    /// The last day on which it could be given.
    pub until: NaiveDate,
    /// Why.
    pub why: Lost,
}

/// Why a round was lost.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lost {
    /// The rains leave no days for it.
    NoRoom,
    /// It was asked for, and no word of it came.
    NotGiven,
}

/// The present round, or the next one. Earlier ones that were missed are not made up for: they are
/// told as lost.
pub(super) fn feed(case: &Case<'_>) -> Option<Plan> {
    let rounds = placed(case)?;
    let round = present_or_next(&rounds, case.today)?;
    let due = case.wait_for_soil(round.from)?;
    let rations = rations(case, &round);
    let main = rations.first();
    let late_after = days::after(due, FEED_LATE_DAYS)?;
    Some(Plan {
        due,
        late_after: round.last.map_or(late_after, |last| late_after.min(last)),
        ends: round.last,
        figures: Figures {
            trees: main.map(|main| main.trees),
            grams_per_tree: main.map(Ration::grams_per_tree),
            kilograms: main.map(Ration::kilograms),
            round: Some(round.number),
            rations,
            lost: lost(case, &rounds),
            ..Figures::default()
        },
    })
}

/// The rounds that were not given and are asked for no more, oldest first. What lies before the
/// block was known is not known, so not lost.
pub(super) fn lost(case: &Case<'_>, rounds: &[Placed<'_>]) -> Vec<LostRound> {
    let listed_on = case.state.listed_on;
    let lost = rounds.iter().filter_map(|round| {
        let (until, why) = match round.days {
            None => (round.asked, Lost::NoRoom),
            Some(given) if given.fed_on.is_none() => (given.until?, Lost::NotGiven),
            Some(_) => return None,
        };
        let is_over = until < case.today && listed_on.is_none_or(|listed_on| until >= listed_on);
        is_over.then_some(LostRound {
            round: round.number,
            on: round.asked,
            until,
            why,
        })
    });
    lost.collect()
}

/// A round to be asked for.
struct Asked<'a> {
    number: u32,
    from: NaiveDate,
    last: Option<NaiveDate>,
    doses: &'a [crate::handbook::calendar::Dose],
}

/// The first round that is neither given nor over. Where none was given, the days of one end before
/// those of the next begin.
fn present_or_next<'a>(rounds: &[Placed<'a>], today: NaiveDate) -> Option<Asked<'a>> {
    rounds.iter().find_map(|round| {
        let days = round.days?;
        let is_open = days.fed_on.is_none() && days.until.is_none_or(|until| until >= today);
        is_open.then_some(Asked {
            number: round.number,
            from: days.from,
            last: days.until,
            doses: round.doses,
        })
    })
}

/// What the trees get: first those of the round itself, then those of other ages, each the dose of
/// its own.
fn rations(case: &Case<'_>, round: &Asked<'_>) -> Vec<Ration> {
    let mut rations = Vec::new();
    let planted_on = case.state.planted_on();
    let table = &case.calendar.feeding;
    let mut add = |trees: u32, doses: &[_]| {
        if trees > 0 && !doses.is_empty() {
            feed::add_ration(&mut rations, trees, doses);
        }
    };
    let is_first = |planted: NaiveDate| Some(planted) == planted_on;
    for cohort in &case.state.cohorts {
        if !cohort.backfill && is_first(cohort.planted_on) {
            add(cohort.alive(), round.doses);
        }
    }
    for cohort in &case.state.cohorts {
        if cohort.backfill || !is_first(cohort.planted_on) {
            let month = days::months_between(cohort.planted_on, round.from);
            if let Some(own) = feed::round_at(table, month) {
                add(cohort.alive(), &own.doses);
            }
        }
    }
    rations
}
