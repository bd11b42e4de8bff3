//! Looking only: whether the rains have begun, sick leaves, which food crops stand between the rows.
//!
//! They lapse before they are late: no adviser is troubled with who did not look. Leaves and food
//! crops come last of all jobs, so that they never take the week of weeding or feeding.

use budwood_parser::{Ailment, Kind};
use chrono::NaiveDate;

use super::{
    Figures,
    case::{Case, Plan},
    near,
};
use crate::{
    handbook::calendar::Rounds,
    sums::days,
    words::{
        job::TaskKind,
        season::{Season, Watch},
    },
};

/// Who told of rain is asked again after a week.
const RAIN_EVERY_DAYS: u32 = 7;
/// Who does not is asked three times, and not in these rains any more.
const RAIN_ENDS_DAYS: u32 = 27;
/// Leaves that were sick three weeks ago have fallen, or new ones have come.
const LEAF_LATE_DAYS: u32 = 21;
/// What grows between the rows is asked for within a month.
const INTERCROP_LATE_DAYS: u32 = 30;
/// Diseases of leaves, by which they fall, are spotted or turn white.
const OF_LEAVES: [Ailment; 3] = [Ailment::LeafFall, Ailment::LeafSpot, Ailment::Mildew];

/// Where the holes are dug and nothing is planted, about the usual beginning of the rains of the
/// planting, until the adviser opens the window.
pub(super) fn rain_watch(case: &Case<'_>) -> Option<Plan> {
    let watch = case.season.watch(case.today)?;
    if !is_of(watch, case.season, case.block.planned_on) {
        return None;
    }
    let told = case.state.rains.last().map(|rain| rain.on);
    let again = told.and_then(|day| days::after(day, RAIN_EVERY_DAYS));
    let dug_on = case.last_done(TaskKind::DigPits);
    let due = Some(watch.from).max(dug_on).max(again)?;
    let ends = days::after(due, RAIN_ENDS_DAYS)?.min(watch.until);
    Some(Plan {
        due,
        late_after: ends,
        ends: Some(ends),
        figures: Figures {
            since: told.or(days::before(due, RAIN_EVERY_DAYS)),
            ..Figures::default()
        },
    })
}

/// Whether a planting that is meant to begin on this day belongs to these rains.
fn is_of(watch: Watch, season: &Season, planned_on: Option<NaiveDate>) -> bool {
    let own = |day| season.watch(day).map(|own| own.from);
    planned_on.is_none_or(|day| own(day) == Some(watch.from))
}

/// While it rains: these diseases need wet leaves. A report of sick leaves is a look at them.
pub(super) fn leaf_check(case: &Case<'_>) -> Option<Plan> {
    if let Some(near) = near::look(case, TaskKind::LeafCheck) {
        return Some(near);
    }
    let seen = OF_LEAVES
        .iter()
        .filter_map(|ailment| case.state.sick.get(ailment))
        .map(|count| count.on)
        .max();
    let last = seen.max(case.said_done(TaskKind::LeafCheck));
    let (round, ends) = case.round(&case.calendar.leaf_check, last)?;
    let due = case.season.wait_for_rain(round, case.today);
    let late_after = days::after(due, LEAF_LATE_DAYS)?;
    Some(Plan {
        due,
        late_after,
        ends: Some(ends.min(late_after)),
        figures: Figures {
            trees: Some(case.state.alive()),
            ..Figures::default()
        },
    })
}

/// First soon after planting, when the distance from the rows can still be kept. On land that is too
/// steep for them they are asked about too: who has some is to hear of it.
pub(super) fn intercrop(case: &Case<'_>) -> Option<Plan> {
    let rule = case.calendar.intercrop;
    let slope_pct = case.block.slope_pct;
    let rounds = [Rounds {
        from_month: 1,
        until_month: rule.until_month,
        every_days: rule.every_days,
    }];
    let told = case.state.last_of(Kind::IntercropSown);
    let last = told.max(case.said_done(TaskKind::Intercrop));
    let (due, ends) = case.round(&rounds, last)?;
    let late_after = days::after(due, INTERCROP_LATE_DAYS)?;
    Some(Plan {
        due,
        late_after,
        ends: Some(ends.min(late_after)),
        figures: Figures {
            distance_m: Some(rule.distance_m),
            is_steep: slope_pct
                .zip(rule.most_pct)
                .is_some_and(|(slope, most)| slope > most),
            ..Figures::default()
        },
    })
}
