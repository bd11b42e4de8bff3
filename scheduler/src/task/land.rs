//! Before the pits: felling and clearing, and pegging the rows.

use super::{
    Figures, TaskKind,
    case::{Case, Plan},
};
use crate::{days, stand};

/// In the dry season before planting, and only when plants are sure: a cleared field without
/// plants is a lost year.
pub(super) fn clear(case: &Case<'_>) -> Option<Plan> {
    let planned_on = case.block.planned_on?;
    let rule = case.calendar.land;
    let ordered = case.said_done(TaskKind::OrderPlants).is_some() || case.state.plants_received > 0;
    let is_clear = case.last_done(TaskKind::Clear).is_some() || is_pegged(case);
    if !ordered || is_clear {
        return None;
    }
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
    if is_pegged(case) {
        return None;
    }
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

/// Pegs stand, or what comes after them: holes, trees.
fn is_pegged(case: &Case<'_>) -> bool {
    let dug = case.state.holes > 0 || case.said_done(TaskKind::DigPits).is_some();
    let pegged = case.last_done(TaskKind::Line).is_some();
    pegged || dug || !case.state.cohorts.is_empty()
}
