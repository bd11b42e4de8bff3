//! Ordering plants, digging holes and filling them, planting.

use chrono::NaiveDate;

use super::{
    Figures,
    case::{Case, Plan},
};
use crate::{
    jobs::orders,
    land::stand,
    sums::days,
    words::{job::TaskKind, season::is_one_season},
};

/// Filling the holes is spoken of so many days before it must be done.
const FILL_NOTICE_DAYS: u32 = 7;

pub(super) fn order_plants(case: &Case<'_>) -> Option<Plan> {
    let planned_on = case.block.planned_on?;
    let order = &case.calendar.order;
    let lead_days = orders::usual_lead_days(order)?;
    let last = orders::order_by(planned_on, lead_days, order.slack_days)?;
    let plants = |points| orders::plants_to_order(points, order.spares_pct, order.transit_loss_pct);
    Some(Plan {
        due: days::before(last, order.notice_days)?,
        late_after: last,
        ends: Some(planned_on),
        figures: Figures {
            trees: places(case).and_then(plants),
            ..Figures::default()
        },
    })
}

pub(super) fn dig_pits(case: &Case<'_>) -> Option<Plan> {
    let planned_on = case.block.planned_on?;
    let pits = case.calendar.pits;
    let holes = case.state.holes;
    Some(Plan {
        due: days::months_before(planned_on, pits.dig_months_before)?,
        late_after: days::before(planned_on, pits.refill_days_before)?,
        ends: None,
        figures: Figures {
            trees: pegged(case).map(|pegs| pegs.saturating_sub(holes)),
            pit_cm: Some(f64::from(pits.edge_cm)),
            round_deep_cm: pits.round_deep_cm.map(f64::from),
            ..Figures::default()
        },
    })
}

/// Once about all are dug, and in time for the earth to settle before the plants come.
pub(super) fn fill_pits(case: &Case<'_>) -> Option<Plan> {
    let planned_on = case.block.planned_on?;
    let last = days::before(planned_on, case.calendar.pits.refill_days_before)?;
    let dug_on = case.last_done(TaskKind::DigPits)?;
    // Who has dug late has some days too, and fills them also when the rains are late.
    let late_after = last.max(days::after(dug_on, FILL_NOTICE_DAYS)?);
    Some(Plan {
        due: days::before(last, FILL_NOTICE_DAYS)?.max(dug_on),
        late_after,
        ends: Some(planned_on.max(days::after(late_after, FILL_NOTICE_DAYS)?)),
        figures: Figures {
            trees: (case.state.holes > 0).then_some(case.state.holes),
            ..Figures::default()
        },
    })
}

pub(super) fn plant(case: &Case<'_>) -> Option<Plan> {
    let opened_on = case.season.window_opened?;
    if case.said_done(TaskKind::Plant) >= Some(opened_on) {
        return None;
    }
    let due = case.wait_for_soil(opened_on)?;
    let planted = case.state.planted();
    Some(Plan {
        due,
        late_after: days::after(opened_on, case.calendar.planting.late_days)?.max(due),
        ends: Some(days::after(opened_on, case.calendar.planting.window_days)?),
        figures: Figures {
            trees: places(case).map(|places| places.saturating_sub(planted)),
            ..Figures::default()
        },
    })
}

/// Plants are ordered, or came without a word of an order.
pub(super) fn is_ordered(case: &Case<'_>) -> bool {
    case.said_done(TaskKind::OrderPlants).is_some() || case.state.plants_received > 0
}

/// Only the adviser's word opens the planting window; a date in a file never does.
pub(super) fn is_open_for(case: &Case<'_>) -> bool {
    let opened = case.season.window_opened;
    opened.is_some_and(|opened_on| is_meant_for(case, opened_on))
}

/// Fewer trees than places, or nothing planted where the places are not known.
pub(super) fn are_places_left(case: &Case<'_>) -> bool {
    match places(case) {
        Some(places) => !stand::as_good_as_all(case.state.planted(), places),
        None => case.state.cohorts.is_empty(),
    }
}

/// Whether this block is to be planted in the season that was opened on this day.
fn is_meant_for(case: &Case<'_>, opened_on: NaiveDate) -> bool {
    let near = |day: NaiveDate| is_one_season(day, opened_on);
    match (case.state.planted_on(), case.block.planned_on) {
        (Some(planted_on), _) => near(planted_on),
        (None, Some(planned_on)) => {
            near(planned_on) && case.season.may_be_one(planned_on, opened_on)
        }
        (None, None) => case.state.holes > 0 || case.state.plants_received > 0,
    }
}

fn places(case: &Case<'_>) -> Option<u32> {
    stand::places(stand::points(case.block, case.calendar), case.state)
}

fn pegged(case: &Case<'_>) -> Option<u32> {
    stand::pegged(stand::points(case.block, case.calendar), case.state)
}

pub(super) fn is_dug(case: &Case<'_>) -> bool {
    let holes = case.state.holes;
    let counted = match pegged(case) {
        Some(pegs) => stand::as_good_as_all(holes, pegs),
        None => holes > 0,
    };
    counted || case.said_done(TaskKind::DigPits).is_some()
}
