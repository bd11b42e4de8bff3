//! The rounds of a growing stand: weeding, feeding, cutting side shoots, looking for root disease.

use budwood_parser::{Ailment, Kind};
use chrono::NaiveDate;

use super::{
    Figures,
    case::{Case, Plan},
    near,
};
use crate::{
    handbook::calendar::{FeedRound, Rounds},
    jobs::feed,
    sums::days,
    words::job::TaskKind,
};

/// After this many days the group's leader would ask.
const WEED_LATE_DAYS: u32 = 14;
/// Fertiliser that lies about for three weeks is seldom spread any more.
const FEED_LATE_DAYS: u32 = 21;
/// After three weeks more, shoots are wood and leave wounds.
const PRUNE_LATE_DAYS: u32 = 21;
/// Root disease spreads slowly.
const ROOT_CHECK_LATE_DAYS: u32 = 21;
/// The last round of a feeding table can be made up for so long.
const LAST_FEED_DAYS: u32 = 365;

pub(super) fn weed(case: &Case<'_>) -> Option<Plan> {
    let last = case.last_done(TaskKind::Weed);
    let (due, ends) = case.round(&case.calendar.weeding.rounds, last)?;
    Some(Plan {
        due,
        late_after: days::after(due, WEED_LATE_DAYS)?,
        ends: Some(ends),
        figures: Figures {
            round: Some(rounds_done(case, Kind::Weeded).saturating_add(1)),
            days_since: case.days_since(last),
            ..Figures::default()
        },
    })
}

/// The round whose month has come last is the present one: earlier ones that were missed are not
/// made up for. Held in the dry season, and from rains that have passed to the next.
pub(super) fn feed(case: &Case<'_>) -> Option<Plan> {
    let planted_on = case.state.planted_on()?;
    let last = case.last_done(TaskKind::Feed);
    let (number, asked, ends) = feed_round(case, planted_on, last)?;
    let due = case.wait_for_soil(case.season.wait_for_rain(asked, case.today))?;
    let main = feed::round_at(
        &case.calendar.feeding,
        days::months_between(planted_on, asked),
    )?;
    Some(Plan {
        due,
        late_after: days::after(due, FEED_LATE_DAYS)?,
        ends,
        figures: Figures {
            trees: Some(case.state.alive()),
            grams_per_tree: Some(feed::grams_per_tree(&main.doses)),
            kilograms: Some(kilograms(case, asked)),
            days_since: case.days_since(last),
            round: Some(number),
            ..Figures::default()
        },
    })
}

/// The number (from 1), the day and the end of the present or next round of feeding.
fn feed_round(
    case: &Case<'_>,
    planted_on: NaiveDate,
    last: Option<NaiveDate>,
) -> Option<(u32, NaiveDate, Option<NaiveDate>)> {
    let rounds = &case.calendar.feeding.rounds;
    let day = |round: &FeedRound| days::months_after(planted_on, round.month);
    let mut before = planted_on;
    let mut open = None;
    for (number, round) in (1..).zip(rounds) {
        let asked = day(round)?;
        // What was given in the second half of the time before a round counts for that round.
        let half = before + asked.signed_duration_since(before) / 2;
        before = asked;
        let still_open = last.is_none_or(|last| last < half);
        if asked > case.today {
            // A round to come is spoken of only when none that has come is open.
            if open.is_none() && still_open {
                open = Some((number, asked));
            }
            if open.is_some() {
                break;
            }
        } else {
            open = still_open.then_some((number, asked));
        }
    }
    let (number, asked) = open?;
    let is_last = rounds.last().and_then(day) == Some(asked);
    let ends = is_last
        .then(|| days::after(asked, LAST_FEED_DAYS))
        .flatten();
    Some((number, asked, ends))
}

/// Each cohort gets the dose of its own age.
fn kilograms(case: &Case<'_>, on: NaiveDate) -> f64 {
    case.state
        .cohorts
        .iter()
        .filter_map(|cohort| {
            let month = days::months_between(cohort.planted_on, on);
            let round = feed::round_at(&case.calendar.feeding, month)?;
            let grams = feed::grams_per_tree(&round.doses);
            Some(feed::kilograms(cohort.alive(), grams))
        })
        .sum()
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
            days_since: case.days_since(last),
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
            days_since: case.days_since(last),
            ..Figures::default()
        },
    })
}

fn rounds_done(case: &Case<'_>, kind: Kind) -> u32 {
    case.state.rounds.get(&kind).copied().unwrap_or(0)
}
