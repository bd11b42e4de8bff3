//! Before each dry season: mulch for young trees, a firebreak for all.
//!
//! Without the usual dates of the rains nothing is known of a dry season, and nothing is asked.

use chrono::NaiveDate;

use super::{
    Figures,
    case::{Case, Plan},
};
use crate::{sums::days, words::job::TaskKind};

/// So many days after the rains have ended it is still worth doing; later it is spoken of before
/// the next dry season.
const STILL_DAYS: u32 = 60;

pub(super) fn mulch(case: &Case<'_>) -> Option<Plan> {
    let rule = case.calendar.dry_season;
    let figures = Figures {
        gap_cm: Some(f64::from(rule.mulch_gap_cm)),
        ..Figures::default()
    };
    before_the_dry(case, TaskKind::Mulch, rule.mulch_until_month, figures)
}

pub(super) fn firebreak(case: &Case<'_>) -> Option<Plan> {
    let rule = case.calendar.dry_season;
    let figures = Figures {
        width_m: Some(rule.firebreak_m),
        ..Figures::default()
    };
    before_the_dry(
        case,
        TaskKind::Firebreak,
        rule.firebreak_until_month,
        figures,
    )
}

fn before_the_dry(
    case: &Case<'_>,
    kind: TaskKind,
    until_month: u32,
    figures: Figures,
) -> Option<Plan> {
    let planted_on = case.state.planted_on()?;
    let last_day = days::months_after(planted_on, until_month)?;
    let last = case.last_done(kind).filter(|day| *day >= planted_on);
    let first = days::before(case.today, STILL_DAYS)?.max(planted_on);
    let round = |day: NaiveDate| -> Option<(NaiveDate, NaiveDate)> {
        let end = case.season.rains(day)?.end;
        Some((
            days::before(end, case.calendar.dry_season.days_before)?,
            end,
        ))
    };
    let (mut due, mut end) = round(first)?;
    if last.is_some_and(|last| last >= due) {
        (due, end) = round(days::after(end, 1)?)?;
    }
    (end < last_day).then_some(())?;
    Some(Plan {
        due: due.max(planted_on),
        late_after: end,
        ends: days::after(end, STILL_DAYS),
        figures,
    })
}
