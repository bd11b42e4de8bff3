//! A look at the trees because sickness was seen nearby, on the adviser's word alone.

use budwood_parser::Ailment;
use chrono::NaiveDate;

use super::{
    Figures,
    case::{Case, Plan},
};
use crate::{group::health::Family, land::block::BlockState, sums::days, words::job::TaskKind};

/// Who has not looked within a week is on the adviser's list (a rule of our own).
const LATE_DAYS: u32 = 7;
/// After four weeks what was seen nearby is either here, and told, or has passed by (ours too; signs
/// of a leaf disease show 4 to 16 days after infection).
const ENDS_DAYS: u32 = 28;

/// The job by which one looks for this sickness.
const fn look_for(ailment: Ailment) -> TaskKind {
    match Family::of(ailment) {
        Some(Family::Root | Family::Termites) => TaskKind::RootCheck,
        Some(Family::Leaf | Family::Shoot) | None => TaskKind::LeafCheck,
    }
}

/// The last warning that this job would answer and nobody has answered yet: what was seen nearby,
/// and when the adviser said so.
#[must_use]
pub fn warning(state: &BlockState, kind: TaskKind) -> Option<(Ailment, NaiveDate)> {
    let is_open = |(ailment, on): &(Ailment, NaiveDate)| {
        let seen = state.sick.get(ailment).map(|count| count.on);
        let looked = seen.max(state.done.get(&kind).copied());
        look_for(*ailment) == kind && looked.is_none_or(|looked| looked < *on)
    };
    let warned = state.warned.iter().map(|(ailment, on)| (*ailment, *on));
    warned.filter(is_open).max_by_key(|(_, on)| *on)
}

/// Due at once, dry or wet, and whatever the age of the trees.
pub(super) fn look(case: &Case<'_>, kind: TaskKind) -> Option<Plan> {
    let (ailment, on) = warning(case.state, kind)?;
    let ends = days::after(on, ENDS_DAYS)?;
    (ends >= case.today).then_some(Plan {
        due: on,
        late_after: days::after(on, LATE_DAYS)?,
        ends: Some(ends),
        figures: Figures {
            trees: Some(case.state.alive()),
            near: Some(ailment),
            ..Figures::default()
        },
    })
}
