//! Tall trees that do not branch: make them, then look whether they shoot.

use super::{
    Figures,
    case::{Case, Plan},
};
use crate::{handbook::calendar::Rounds, land::block::Count, sums::days, words::job::TaskKind};

/// A season later, trees have shot or have not, and another count of tall ones says which.
const LOOK_ENDS_DAYS: u32 = 84;
/// Induction can wait some weeks; the season cannot, and that is asked apart.
const INDUCE_LATE_DAYS: u32 = 28;

/// A count of tall trees is late after a month; branching is a matter of seasons.
const COUNT_LATE_DAYS: u32 = 30;

/// Counting the tall trees without branches, until all of the stand has them.
pub(super) fn count_tall(case: &Case<'_>) -> Option<Plan> {
    let rule = case.calendar.induction;
    let rounds = [Rounds {
        from_month: rule.from_month,
        until_month: rule.until_month,
        every_days: rule.count_every_days,
    }];
    let seen = case.state.branched.map(|count| count.on);
    let last = case.last_done(TaskKind::CountTall).max(seen);
    let (due, ends) = case.round(&rounds, last)?;
    Some(Plan {
        due,
        late_after: days::after(due, COUNT_LATE_DAYS)?,
        ends: Some(ends),
        figures: Figures {
            trees: Some(case.state.alive()),
            height_m: Some(rule.height_m),
            ..Figures::default()
        },
    })
}

/// After a count of tall trees without branches, within the age and outside the dry season.
pub(super) fn induce(case: &Case<'_>) -> Option<Plan> {
    let rule = case.calendar.induction;
    let planted_on = case.state.planted_on()?;
    let tall = case.state.tall?;
    let induced = case
        .state
        .induced
        .map(|count| count.on)
        .max(case.said_done(TaskKind::InduceBranching));
    if induced >= Some(tall.on) || have_branched(case, tall) {
        return None;
    }
    let opens = days::months_after(planted_on, rule.from_month)?;
    let due = case.season.wait_for_rain(tall.on.max(opens), case.today);
    Some(Plan {
        due,
        late_after: days::after(due, INDUCE_LATE_DAYS)?,
        ends: last_day(case),
        figures: Figures {
            trees: tall.trees,
            height_m: Some(rule.height_m),
            ..Figures::default()
        },
    })
}

/// All of the stand was seen with branches since the tall trees were counted.
fn have_branched(case: &Case<'_>, tall: Count) -> bool {
    case.state
        .branched
        .is_some_and(|seen| seen.on > tall.on && seen.trees >= Some(case.state.alive()))
}

/// Two to three weeks after induction, when shoots start and the tie must come off; any word on branches since then closes it.
pub(super) fn look(case: &Case<'_>) -> Option<Plan> {
    let rule = case.calendar.induction;
    let induced = case.state.induced?;
    let looked = [case.state.branched, case.state.tall]
        .into_iter()
        .flatten()
        .map(|count| count.on)
        .max()
        .max(case.said_done(TaskKind::LookAtInduced));
    if looked > Some(induced.on) {
        return None;
    }
    Some(Plan {
        due: days::after(induced.on, rule.look_from_days)?,
        late_after: days::after(induced.on, rule.look_until_days)?,
        ends: days::after(induced.on, LOOK_ENDS_DAYS),
        figures: Figures {
            trees: induced.trees,
            ..Figures::default()
        },
    })
}

/// The last day of the age at which branching is induced.
fn last_day(case: &Case<'_>) -> Option<chrono::NaiveDate> {
    let until_month = case.calendar.induction.until_month;
    let end = days::months_after(case.state.planted_on()?, until_month)?;
    days::before(end, 1)
}
