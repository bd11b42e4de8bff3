//! News: who is quiet, and who told of sickness.

use alloc::vec::Vec;

use budwood_parser::Ailment;
use chrono::NaiveDate;

use super::{Figure, Name, Table, Window};
use crate::{
    group::health::Family,
    land::block::{BlockState, Count},
    words::{id::PersonId, job::TaskKind},
};

/// A farmer of whom nothing was heard for this long is quiet: two months of field rounds. An assumption.
pub const QUIET_DAYS: i64 = 60;

/// News of sickness is news for so long. An assumption.
pub const SICK_DAYS: i64 = 21;

/// Sickness that a farmer told of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sick {
    /// Who.
    pub person: PersonId,
    /// What.
    pub ailment: Ailment,
    /// On how many trees, if told.
    pub trees: Option<u32>,
}

impl Table<'_> {
    /// Farmers of whom nothing was heard for long, with the days; none for never. The longest silence
    /// first.
    #[must_use]
    pub fn quiet(&self) -> Figure<Vec<(PersonId, Option<i64>)>> {
        let mut quiet = Vec::new();
        for farmer in &self.farmers {
            let heard = farmer.heard_on();
            let days = heard.map(|day| farmer.today.signed_duration_since(day).num_days());
            if days.is_none_or(|days| days > QUIET_DAYS) && farmer.is_expected() {
                quiet.push((farmer.person.id, days));
            }
        }
        quiet.sort_by_key(|(_, days)| core::cmp::Reverse(days.unwrap_or(i64::MAX)));
        self.figure(Name::Quiet, Window::days(QUIET_DAYS), quiet)
    }

    /// Farmers who are left in peace.
    #[must_use]
    pub fn in_peace(&self) -> Figure<usize> {
        let left = self.farmers.iter().filter(|farmer| farmer.is_in_peace());
        self.figure(Name::InPeace, Window::ALL, left.count())
    }

    /// Farmers with sick trees, each with what most trees have.
    #[must_use]
    pub fn sick(&self) -> Figure<Vec<Sick>> {
        let mut found = Vec::new();
        for farmer in &self.farmers {
            let news = farmer.stands.iter().flat_map(|stand| {
                let sick = stand.state.sick.iter();
                sick.filter(|(ailment, count)| {
                    is_sick(stand.state, **ailment, **count, farmer.today, SICK_DAYS)
                })
            });
            if let Some((ailment, count)) = news.max_by_key(|(_, count)| count.trees) {
                found.push(Sick {
                    person: farmer.person.id,
                    ailment: *ailment,
                    trees: count.trees,
                });
            }
        }
        self.figure(Name::Sick, Window::days(SICK_DAYS), found)
    }
}

/// Whether this news of sickness still holds: it is not older than so many days, told of trees, and
/// no look since found the block clear.
#[must_use]
pub fn is_sick(
    state: &BlockState,
    ailment: Ailment,
    count: Count,
    today: NaiveDate,
    days: i64,
) -> bool {
    let looked = match Family::of(ailment) {
        Some(Family::Leaf) => Some(TaskKind::LeafCheck),
        Some(Family::Root) => Some(TaskKind::RootCheck),
        Some(Family::Shoot | Family::Termites) | None => None,
    };
    let looked_on = looked.and_then(|task| state.done.get(&task));
    let is_clear = looked_on.is_some_and(|on| *on > count.on);
    let age = today.signed_duration_since(count.on).num_days();
    let is_lost = state.planted() > 0 && state.alive() == 0;
    count.trees != Some(0) && age <= days && !is_clear && !is_lost
}
