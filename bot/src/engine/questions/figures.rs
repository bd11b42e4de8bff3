//! Farmers as figures see them: gathered here, made into numbers by the scheduler.

use std::{
    collections::{BTreeMap, BTreeSet},
    sync::LazyLock,
};

use budwood_parser::Kind;
use budwood_scheduler::{
    Block, BlockState, Body, Group, Passed, Person, PersonId,
    figures::{Farmer, Known, Scope, Stand, Table, is_farmer},
};

use super::tasks::season_of;
use crate::engine::{local_time::civil_day, view::View};

/// A block of which nothing was told.
static NOTHING_KNOWN: LazyLock<BlockState> = LazyLock::new(BlockState::default);

impl<'a> View<'a> {
    /// The figures of a group.
    pub(crate) fn table(self, group: &Group) -> Table<'a> {
        let members = self.world.directory.members(group.id);
        let farmers = members.filter(|person| is_farmer(person));
        Table {
            scope: Scope::Group(group.id),
            rules: &self.setup.rules,
            farmers: farmers.map(|person| self.farmer(person)).collect(),
        }
    }

    /// The figures of all groups of an adviser.
    pub(crate) fn table_of(self, adviser: &Person) -> Table<'a> {
        let groups = self.groups_of(adviser);
        Table {
            scope: Scope::Adviser(adviser.id),
            rules: &self.setup.rules,
            farmers: groups.flat_map(|group| self.table(group).farmers).collect(),
        }
    }

    /// A farmer as figures see them.
    pub(crate) fn farmer(self, person: &'a Person) -> Farmer<'a> {
        let directory = &self.world.directory;
        let group = self.group_of(person);
        let blocks = directory.blocks_of(person.id);
        let stands = blocks.map(|block| {
            let state = self.state(block.id).unwrap_or(&NOTHING_KNOWN);
            Stand::new(block, state)
        });
        Farmer {
            person,
            today: self.today_of(person.id),
            season: group.map(season_of).unwrap_or_default(),
            calendar: group.and_then(|group| self.calendar_of(group)),
            texted_on: self.texted_on(person.id),
            has_phone: directory.numbers_that_reach(person.id).next().is_some(),
            fails_since: self.fails_since(person.id),
            stands: stands.collect(),
        }
    }

    /// The last day on which a person texted.
    fn texted_on(self, person: PersonId) -> Option<chrono::NaiveDate> {
        let zone = self.zone_of(person);
        let numbers = self.world.directory.numbers_of(person);
        let texted = numbers.filter_map(|number| self.talk(number)?.heard_at);
        texted.map(|at| civil_day(at, zone)).max()
    }

    /// Since when no text arrives on any phone of a person.
    fn fails_since(self, person: PersonId) -> Option<chrono::NaiveDate> {
        let zone = self.zone_of(person);
        let numbers = self.world.directory.numbers_of(person);
        let fails = numbers.map(|number| self.talk(number)?.fails_since);
        // One that works is enough; the last that failed tells since when none does.
        fails
            .reduce(|one, other| one.zip(other).map(|(one, other)| one.max(other)))
            .flatten()
            .map(|at| civil_day(at, zone))
    }

    /// What is known of a block, the latest `most` facts of it.
    pub(crate) fn known_of(self, block: &Block, most: usize) -> Vec<Known> {
        let facts = self.state(block.id).map(|state| &state.facts);
        let last = facts.into_iter().flat_map(|facts| facts.iter().rev());
        let told = last.take(most).filter_map(|fact| self.event(*fact));
        told.filter_map(|event| {
            // Trees that came from another block were counted when they came.
            if let Body::Passed(Passed::Got { trees, .. }) = &event.body {
                return Some(Known {
                    kind: Kind::Dead,
                    source: event.source,
                    on: civil_day(event.at, self.zone_of(block.owner)),
                    count: Some(trees.iter().map(|trees| trees.dead).sum()),
                    cause: None,
                });
            }
            let Body::Reported {
                kind, on, details, ..
            } = event.body
            else {
                return None;
            };
            Some(Known {
                kind,
                source: event.source,
                on: on.day(),
                count: details.count,
                cause: details.cause,
            })
        })
        .collect()
    }
}

/// What farmers are called in lists: the first name; the whole one where two share the first, and
/// with their group where two share that too.
pub(crate) struct Names<'a> {
    view: View<'a>,
    called: BTreeMap<&'a str, u32>,
    whole: BTreeMap<&'a str, u32>,
}

impl<'a> Names<'a> {
    /// Of the people of these groups.
    pub(crate) fn of<'g>(view: View<'a>, groups: impl IntoIterator<Item = &'g Group>) -> Self {
        let mut names = Self {
            view,
            called: BTreeMap::new(),
            whole: BTreeMap::new(),
        };
        let groups: BTreeSet<_> = groups.into_iter().map(|group| group.id).collect();
        for group in groups {
            for person in view.world.directory.members(group) {
                *names.called.entry(person.called()).or_default() += 1;
                *names.whole.entry(&person.name).or_default() += 1;
            }
        }
        names
    }

    /// Of the people of all groups of an adviser.
    pub(crate) fn of_all(view: View<'a>, adviser: &Person) -> Self {
        Self::of(view, view.groups_of(adviser))
    }

    pub(crate) fn shown(&self, person: PersonId) -> String {
        let Some(person) = self.view.person(person) else {
            return String::new();
        };
        let is_shared = |names: &BTreeMap<&str, u32>, name: &str| {
            names.get(name).is_some_and(|people| *people > 1)
        };
        if !is_shared(&self.called, person.called()) {
            person.called().to_owned()
        } else if is_shared(&self.whole, &person.name) {
            format!("{} ({})", person.name, self.view.group_name(person.group))
        } else {
            person.name.clone()
        }
    }
}
