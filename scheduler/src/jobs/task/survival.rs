//! Counting the dead, and filling the gaps while that still makes sense.

use budwood_parser::Kind;

use super::{
    Figures,
    case::{Case, Plan},
};
use crate::{
    handbook::calendar::Survival, land::block::Cohort, outlook::filling::filling, sums::days,
    words::job::TaskKind,
};

/// A count of the dead is late after a fortnight: what died is still found, and its cause.
const CHECK_LATE_DAYS: u32 = 14;
/// Filling gaps is late after four weeks of the time that is left.
const FILL_LATE_DAYS: u32 = 28;

/// The count that comes first among those that the cohorts of the block ask for.
pub(super) fn check(case: &Case<'_>) -> Option<Plan> {
    case.state
        .cohorts
        .iter()
        .filter(|cohort| cohort.planted == 0 || cohort.alive() > 0)
        .filter_map(|cohort| check_cohort(case, cohort))
        .filter(|plan| plan.ends.is_none_or(|ends| ends >= case.today))
        .min_by_key(|plan| plan.due)
}

fn check_cohort(case: &Case<'_>, cohort: &Cohort) -> Option<Plan> {
    let Survival { first_days, again } = case.calendar.survival;
    let planted_on = cohort.planted_on;
    let counted = case.last_done(TaskKind::SurvivalCheck);
    // A count in the first half of the time says nothing yet: plants need weeks to die.
    let counts_from = days::after(planted_on, first_days.div_ceil(2))?;
    let (due, ends) = match (counted.filter(|day| *day >= counts_from), again) {
        (None, _) => (
            days::after(planted_on, first_days)?,
            days::months_after(planted_on, case.calendar.backfill.until_months)?,
        ),
        (Some(counted), Some(again)) => {
            let due = days::after(counted, again.every_days)?;
            let last = days::after(planted_on, again.until_days)?;
            if due > last {
                return None;
            }
            (due, days::after(last, again.every_days)?)
        }
        (Some(_), None) => return None,
    };
    Some(Plan {
        due,
        late_after: days::after(due, CHECK_LATE_DAYS)?,
        ends: Some(ends),
        figures: Figures {
            // Whichever planting asks for it, all trees of the block are walked and counted.
            trees: Some(case.state.alive()),
            living: Some(case.state.living()),
            ..Figures::default()
        },
    })
}

pub(super) fn backfill(case: &Case<'_>) -> Option<Plan> {
    let rule = &case.calendar.backfill;
    let planted_on = case.state.planted_on()?;
    let counted_on = case.state.last_of(Kind::Dead)?;
    let filled = case.said_done(TaskKind::Backfill) >= Some(counted_on);
    if filled {
        return None;
    }
    let window = filling(planted_on, counted_on.max(case.today), case.season, rule)?;
    let due = counted_on.max(window.from);
    Some(Plan {
        due,
        late_after: days::after(due, FILL_LATE_DAYS)?.min(window.last),
        ends: Some(window.last),
        figures: Figures {
            trees: Some(case.state.gaps()),
            living: Some(case.state.living()),
            ..Figures::default()
        },
    })
}

/// Gaps there are, and more than the handbook calls tolerable.
pub(super) fn needs_filling(case: &Case<'_>) -> bool {
    let rule = &case.calendar.backfill;
    let planted = f64::from(case.state.planted());
    let alive = f64::from(case.state.alive());
    case.state.gaps() > 0 && alive * 100.0 < rule.survival_target_pct * planted
}
