//! The land itself: felling and clearing, pegging the rows, sowing the ground cover.

use chrono::NaiveDate;

use super::{
    Figures,
    case::{Case, Plan},
};
use crate::{land::stand, sums::days, words::job::TaskKind};

/// In the dry season before planting, and only when plants are sure: a cleared field without
/// plants is a lost year.
pub(super) fn clear(case: &Case<'_>) -> Option<Plan> {
    let planned_on = case.block.planned_on?;
    let rule = case.calendar.land;
    let late_after = days::before(planned_on, rule.clear_days_before)?;
    let opens = days::months_before(planned_on, rule.clear_months_before)?;
    // Felling waits for the end of the rains, unless these last until it must be done.
    let due = match case.season.rains(opens) {
        Some(rains) if rains.start <= opens && rains.end < late_after => days::after(rains.end, 1)?,
        Some(_) | None => opens,
    };
    Some(Plan {
        due,
        late_after,
        ends: Some(planned_on),
        figures: Figures::default(),
    })
}

pub(super) fn line(case: &Case<'_>) -> Option<Plan> {
    let planned_on = case.block.planned_on?;
    Some(Plan {
        due: days::months_before(planned_on, case.calendar.land.line_months_before)?,
        late_after: days::months_before(planned_on, case.calendar.pits.dig_months_before)?,
        ends: Some(planned_on),
        figures: Figures {
            trees: stand::points(case.block, case.calendar),
            ..Figures::default()
        },
    })
}

/// When the rains of the planting begin, on land that is clear, where the handbook asks for it.
/// Without the usual dates of the rains nothing is known of their beginning.
pub(super) fn sow_cover(case: &Case<'_>) -> Option<Plan> {
    let rule = case.calendar.cover;
    let planting = case.state.planted_on().or(case.block.planned_on)?;
    let rains = case.season.rains(planting)?;
    let ends = days::after(rains.start, rule.within_days)?.min(rains.end);
    let due = rains.start.max(clear_on(case).unwrap_or(rains.start));
    Some(Plan {
        due,
        late_after: days::after(due, rule.within_days / 2)?.min(ends),
        ends: Some(ends),
        figures: Figures::default(),
    })
}

/// The land is cleared, or pegs stand on it.
pub(super) fn is_clear(case: &Case<'_>) -> bool {
    case.last_done(TaskKind::Clear).is_some() || is_pegged(case)
}

/// The first day on which the land was told to be clear, if one is known.
fn clear_on(case: &Case<'_>) -> Option<NaiveDate> {
    let told = [TaskKind::Clear, TaskKind::Line, TaskKind::DigPits];
    let told = told.into_iter().filter_map(|kind| case.last_done(kind));
    told.chain(case.state.planted_on()).min()
}

/// Pegs stand, or what comes after them: holes, trees.
pub(super) fn is_pegged(case: &Case<'_>) -> bool {
    let dug = case.state.holes > 0 || case.said_done(TaskKind::DigPits).is_some();
    let pegged = case.last_done(TaskKind::Line).is_some();
    pegged || dug || !case.state.cohorts.is_empty()
}
