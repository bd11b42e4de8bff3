//! The girth census, and whether the stand may be opened for tapping.

use budwood_parser::Kind;
use chrono::{Datelike, NaiveDate};

use super::{
    Figures,
    case::{Case, Plan},
};
use crate::{
    outlook::{
        census::{Walk, walk},
        forecast,
        readiness::{Verdict, in_season, judged, readiness},
    },
    sums::{days, rounding},
    words::job::TaskKind,
};

/// A census is late after a month; girths grow slowly.
const CENSUS_LATE_DAYS: u32 = 30;
/// Opening has no hurry, but tappers and cups wait.
const OPEN_LATE_DAYS: u32 = 60;

/// A year without another opening, and the first season of tapping is over.
const FIRST_SEASON_MONTHS: u32 = 12;
/// The text of it may wait so long for more urgent ones.
const HAND_OVER_DAYS: u32 = 60;
/// A text that was put out leaves within so many days, or never.
const SENT_WITHIN_DAYS: u32 = 3;

/// Who answers with a sample again after all trees were asked for is asked again at the next
/// census, not at once.
const ALL_AGAIN_DAYS: i64 = 28;

/// Whether so many trees are opened that the stand has left the years before tapping.
pub(super) fn is_opened(case: &Case<'_>) -> bool {
    let opened = f64::from(case.state.opened);
    let alive = f64::from(case.state.alive());
    case.state.opened > 0 && opened * 100.0 >= case.calendar.opening.share_pct * alive
}

pub(super) fn census(case: &Case<'_>) -> Option<Plan> {
    let rule = &case.calendar.census;
    let measured = case.state.girths.iter().map(|census| census.on).max();
    let last = measured.max(case.said_done(TaskKind::GirthCensus));
    let (round, ends) = case.round(&rule.rounds, last)?;
    let (due, trees) = match all_to_measure(case) {
        Some(day) if last == measured => (day, case.state.alive()),
        _ => (round, rule.sample_trees.min(case.state.alive())),
    };
    let opening = &case.calendar.opening;
    let walk = which_trees(case, trees, due);
    Some(Plan {
        due,
        late_after: days::after(due, CENSUS_LATE_DAYS)?,
        ends: Some(ends),
        figures: Figures {
            trees: Some(walk.map_or(trees, |walk| walk.trees)),
            walk,
            girth_cm: Some(opening.girth_cm),
            datum_cm: Some(opening.height_cm),
            datum: Some(opening.datum),
            ..Figures::default()
        },
    })
}

/// Each census of a block has a start of its own, so that over the years all trees have their turn.
/// None when every tree is measured.
fn which_trees(case: &Case<'_>, trees: u32, due: NaiveDate) -> Option<Walk> {
    let draw = (u64::from(case.block.id.0) << 32) | u64::from(due.year_ce().1 * 12 + due.month0());
    walk(case.state.alive(), trees, draw).filter(|walk| walk.every > 1)
}

/// The day from which all trees should be measured, if the last sample was good but too small.
fn all_to_measure(case: &Case<'_>) -> Option<NaiveDate> {
    let ready = readiness(case.state, case.calendar)?;
    let rule = &case.calendar.opening;
    let asked_lately = case.state.girths.iter().any(|census| {
        let days = ready.on.signed_duration_since(census.on).num_days();
        let was_close = || {
            judged(census, case.state, rule)
                .is_some_and(|ready| ready.verdict == Verdict::MeasureAll)
        };
        (1..=ALL_AGAIN_DAYS).contains(&days) && was_close()
    });
    if ready.verdict != Verdict::MeasureAll || asked_lately {
        return None;
    }
    Some(ready.on.max(old_enough_on(case)?))
}

/// Learning to tap, some months before the stand is likely ready. Asked for once.
pub(super) fn get_ready(case: &Case<'_>) -> Option<Plan> {
    if case.said_done(TaskKind::GetReady).is_some() {
        return None;
    }
    let (likely, census_on) = forecast::likely(case.state, case.calendar, case.season)?;
    let rule = &case.calendar.opening;
    let due = days::before(likely, rule.ready_days_before)?.max(census_on);
    Some(Plan {
        due,
        late_after: days::after(due, OPEN_LATE_DAYS)?,
        ends: None,
        figures: Figures {
            girth_cm: Some(rule.girth_cm),
            share_pct: Some(rule.share_pct),
            ..Figures::default()
        },
    })
}

pub(super) fn open(case: &Case<'_>) -> Option<Plan> {
    let ready = readiness(case.state, case.calendar)?;
    if case.said_done(TaskKind::Open) >= Some(ready.on) {
        return None;
    }
    let rule = &case.calendar.opening;
    let due = in_season(ready.on.max(old_enough_on(case)?), &rule.months)?;
    let share = ready.share_pct / 100.0;
    Some(Plan {
        due,
        late_after: days::after(due, OPEN_LATE_DAYS)?,
        ends: None,
        figures: Figures {
            trees: rounding::floor(f64::from(case.state.alive()) * share),
            girth_cm: Some(rule.girth_cm),
            datum_cm: Some(rule.height_cm),
            datum: Some(rule.datum),
            share_pct: Some(ready.share_pct),
            ..Figures::default()
        },
    })
}

/// So many days after each opening the trees that were too thin are looked at again, until the
/// stand is handed over.
pub(super) fn open_rest(case: &Case<'_>) -> Option<Plan> {
    let rule = &case.calendar.opening;
    let opened_on = case.state.last_of(Kind::TappingOpened);
    let last = opened_on.max(case.said_done(TaskKind::OpenRest))?;
    let measured = case.state.girths.iter().map(|census| census.on).max();
    let last = measured.map_or(last, |measured| measured.max(last));
    let due = in_season(days::after(last, rule.rest_every_days)?, &rule.months)?;
    let late_after = days::after(due, OPEN_LATE_DAYS)?;
    // A round that would not be over by then is not begun.
    let ends = days::before(handed_over_on(case)?, 1).filter(|ends| late_after <= *ends)?;
    Some(Plan {
        due,
        late_after,
        ends: Some(days::after(due, rule.rest_every_days)?.min(ends)),
        figures: Figures {
            trees: Some(left(case)),
            girth_cm: Some(rule.girth_cm),
            datum_cm: Some(rule.height_cm),
            datum: Some(rule.datum),
            ..Figures::default()
        },
    })
}

/// Living trees that are not opened.
pub(super) fn left(case: &Case<'_>) -> u32 {
    case.state.alive().saturating_sub(case.state.opened)
}

/// A stand is a tapping plot when all its trees are opened, or when a year has passed in which no
/// more were.
fn handed_over_on(case: &Case<'_>) -> Option<NaiveDate> {
    let opened_on = case.state.last_of(Kind::TappingOpened)?;
    if left(case) == 0 {
        return Some(opened_on);
    }
    days::months_after(opened_on, FIRST_SEASON_MONTHS)
}

/// One text that closes the years before tapping. Nothing is asked, so it goes once.
pub(super) fn hand_over(case: &Case<'_>) -> Option<Plan> {
    let due = handed_over_on(case)?;
    if case.said_done(TaskKind::HandOver) >= Some(due) {
        return None;
    }
    let told = case.state.nudges.get(&TaskKind::HandOver);
    let ends = match told.filter(|track| track.due == due) {
        Some(track) => days::after(track.first_on, SENT_WITHIN_DAYS)?,
        None => days::after(due, HAND_OVER_DAYS)?,
    };
    Some(Plan {
        due,
        late_after: ends,
        ends: Some(ends),
        figures: Figures::default(),
    })
}

fn old_enough_on(case: &Case<'_>) -> Option<NaiveDate> {
    days::months_after(
        case.state.planted_on()?,
        case.calendar.opening.minimum_months,
    )
}
