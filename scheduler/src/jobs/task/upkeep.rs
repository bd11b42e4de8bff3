//! The rounds of a growing stand: weeding, cutting side shoots, looking for root disease.

use super::{
    Figures,
    case::{Case, Plan},
    near,
};
use crate::{handbook::calendar::Rounds, sums::days, words::job::TaskKind};
use budwood_parser::{Ailment, Kind};

/// After this many days the group's leader would ask.
const WEED_LATE_DAYS: u32 = 14;
/// After three weeks more, shoots are wood and leave wounds.
const PRUNE_LATE_DAYS: u32 = 21;
/// Root disease spreads slowly.
const ROOT_CHECK_LATE_DAYS: u32 = 21;

pub(super) fn weed(case: &Case<'_>) -> Option<Plan> {
    let last = case.last_done(TaskKind::Weed);
    let (due, ends) = case.round(&case.calendar.weeding.rounds, last)?;
    Some(Plan {
        due,
        late_after: days::after(due, WEED_LATE_DAYS)?,
        ends: Some(ends),
        figures: Figures {
            round: Some(rounds_done(case, Kind::Weeded).saturating_add(1)),
            ..Figures::default()
        },
    })
}

/// Until the trees have branched, or are past the age.
pub(super) fn prune(case: &Case<'_>) -> Option<Plan> {
    let rule = case.calendar.pruning;
    let rounds = [Rounds {
        from_month: rule.from_month,
        until_month: rule.until_month,
        every_days: rule.every_days,
    }];
    let last = case.last_done(TaskKind::Prune);
    let (round, ends) = case.round(&rounds, last)?;
    let due = if rule.waits_for_rain {
        case.season.wait_for_rain(round, case.today)
    } else {
        round
    };
    Some(Plan {
        due,
        late_after: days::after(due, PRUNE_LATE_DAYS)?,
        ends: Some(ends),
        figures: Figures {
            height_m: Some(rule.height_m),
            ..Figures::default()
        },
    })
}

pub(super) fn root_check(case: &Case<'_>) -> Option<Plan> {
    if let Some(near) = near::look(case, TaskKind::RootCheck) {
        return Some(near);
    }
    // Only a look at the roots counts, not a report of some other sickness.
    let seen = case.state.sick.get(&Ailment::WhiteRoot);
    let last = seen
        .map(|count| count.on)
        .max(case.said_done(TaskKind::RootCheck));
    let (due, ends) = case.round(&case.calendar.root_check, last)?;
    Some(Plan {
        due,
        late_after: days::after(due, ROOT_CHECK_LATE_DAYS)?,
        ends: Some(ends),
        figures: Figures {
            trees: Some(case.state.alive()),
            ..Figures::default()
        },
    })
}

fn rounds_done(case: &Case<'_>, kind: Kind) -> u32 {
    case.state.rounds.get(&kind).copied().unwrap_or(0)
}
