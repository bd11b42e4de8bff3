//! Looking only: sick leaves, and which food crops stand between the rows.
//!
//! Both come last of all jobs, so that they never take the week of weeding or feeding, and lapse
//! before they are late: no adviser is troubled with who did not look.

use budwood_parser::{Ailment, Kind};

use super::{
    Figures, TaskKind,
    case::{Case, Plan},
    near,
};
use crate::{calendar::Rounds, days};

/// Leaves that were sick three weeks ago have fallen, or new ones have come.
const LEAF_LATE_DAYS: u32 = 21;
/// What grows between the rows is asked for within a month.
const INTERCROP_LATE_DAYS: u32 = 30;
/// Diseases of leaves, by which they fall, are spotted or turn white.
const OF_LEAVES: [Ailment; 3] = [Ailment::LeafFall, Ailment::LeafSpot, Ailment::Mildew];

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
            days_since: case.days_since(last),
            ..Figures::default()
        },
    })
}

/// First soon after planting, when the distance from the rows can still be kept.
pub(super) fn intercrop(case: &Case<'_>) -> Option<Plan> {
    let rule = case.calendar.intercrop;
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
            days_since: case.days_since(last),
            ..Figures::default()
        },
    })
}
