//! News: who is quiet, and who told of sickness.

use alloc::vec::Vec;

use budwood_parser::Ailment;
use chrono::NaiveDate;

use super::{Farmer, Figure, Name, Table, Window};
use crate::{
    group::health::Family,
    land::block::{BlockState, Count},
    words::{id::PersonId, job::TaskKind},
};

/// A farmer of whom nothing was heard for this long is quiet: two months of field rounds. An assumption.
pub const QUIET_DAYS: i64 = 60;

/// News of sickness is news for so long. An assumption.
pub const SICK_DAYS: i64 = 21;

/// Sick roots stay sick for longer: as long as reports of them make one cluster.
const ROOT_DAYS: i64 = 180;

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

/// A farmer of whom nothing was heard for long.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Silent {
    /// Who.
    pub person: PersonId,
    /// For how many days; none for never.
    pub days: Option<i64>,
    /// Why, as far as it is known.
    pub why: Why,
}

/// Why nothing is heard of a farmer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Why {
    /// They are not to be texted, or left in peace.
    AtRest,
    /// Nothing is asked of them.
    NothingDue,
    /// No text arrives on their phone.
    PhoneFails,
    /// Nobody knows.
    Unknown,
}

impl Table<'_> {
    /// Farmers of whom nothing was heard for long, the longest silence first.
    #[must_use]
    pub fn silent(&self) -> Figure<Vec<Silent>> {
        let mut silent = Vec::new();
        for farmer in &self.farmers {
            let heard = farmer.heard_on();
            let days = heard.map(|day| farmer.today.signed_duration_since(day).num_days());
            if days.is_none_or(|days| days > QUIET_DAYS) {
                silent.push(Silent {
                    person: farmer.person.id,
                    days,
                    why: why_silent(farmer),
                });
            }
        }
        silent.sort_by_key(|one| core::cmp::Reverse(one.days.unwrap_or(i64::MAX)));
        self.figure(Name::Silent, Window::days(QUIET_DAYS), silent)
    }

    /// Of these, those of whom something is expected, with the days; none for never.
    #[must_use]
    pub fn quiet(&self) -> Figure<Vec<(PersonId, Option<i64>)>> {
        let silent = self.silent().value.into_iter();
        let quiet = silent.filter(|one| matches!(one.why, Why::PhoneFails | Why::Unknown));
        let quiet = quiet.map(|one| (one.person, one.days)).collect();
        self.figure(Name::Quiet, Window::days(QUIET_DAYS), quiet)
    }

    /// Farmers who told of sick roots that are not known to be over, most trees first.
    #[must_use]
    pub fn sick_roots(&self) -> Figure<Vec<Sick>> {
        let mut found: Vec<Sick> = Vec::new();
        for farmer in &self.farmers {
            let news = farmer.stands.iter().filter_map(|stand| {
                let count = stand.state.sick.get(&Ailment::WhiteRoot)?;
                let (today, days) = (farmer.today, ROOT_DAYS);
                let holds = is_sick(stand.state, Ailment::WhiteRoot, *count, today, days);
                holds.then_some(count.trees)
            });
            let add = |sum: Option<u32>, one: Option<u32>| {
                sum.map_or(one, |sum| Some(sum.saturating_add(one.unwrap_or(0))))
            };
            if let Some(trees) = news.reduce(add) {
                found.push(Sick {
                    person: farmer.person.id,
                    ailment: Ailment::WhiteRoot,
                    trees,
                });
            }
        }
        found.sort_by_key(|one| core::cmp::Reverse(one.trees));
        self.figure(Name::SickRoots, Window::days(ROOT_DAYS), found)
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

fn why_silent(farmer: &Farmer<'_>) -> Why {
    if farmer.is_in_peace() || !farmer.person.consent.is_given() {
        Why::AtRest
    } else if !farmer.is_expected() {
        Why::NothingDue
    } else if farmer.fails_since.is_some() {
        Why::PhoneFails
    } else {
        Why::Unknown
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
