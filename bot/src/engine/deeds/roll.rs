//! A list of people and blocks is compared with what is known, and taken in, all in one change.

use std::fmt;

use budwood_scheduler::{Block, BlockId, Body, EventId, Group, Person, Phone, Source};
use serde::{Deserialize, Serialize};

use crate::{
    engine::{step::Step, turn::Telling},
    roll,
    words::load::{Load, Was},
};

/// An office's list, and what to do with it.
#[derive(Clone)]
pub struct List {
    /// The file as it is.
    pub csv: Vec<u8>,
    /// What to do.
    pub deed: ListDeed,
}

// It is full of names and numbers, and none may get into a log by way of `{:?}`.
impl fmt::Debug for List {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("List")
            .field("bytes", &self.csv.len())
            .field("deed", &self.deed)
            .finish_non_exhaustive()
    }
}

/// What to do with a list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ListDeed {
    /// Say what is wrong with it and what loading would do.
    Check,
    /// The same, and take it in if nothing is refused.
    Load,
}

/// What was found in a list, and what became of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ListAnswer {
    /// What is wrong and what would change, as a person reads it.
    pub page: String,
    /// What became of it.
    pub fate: ListFate,
    /// What was found, line by line.
    pub findings: Vec<ListFinding>,
}

/// Something to look at in a list.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ListFinding {
    /// Line of the list, from 1.
    pub line: usize,
    /// Nothing is stored until it is put right.
    pub is_refused: bool,
    /// What it is.
    pub what: String,
}

/// What became of a list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ListFate {
    /// It has refused rows, and nothing was stored.
    Refused,
    /// It can be stored, but was only checked, or all of it is known.
    Good,
    /// It is stored.
    Stored,
}

/// What a list adds or changes. It was checked before; here nothing is refused.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Entries {
    /// Groups, new or changed.
    pub groups: Vec<Group>,
    /// People, new or changed.
    pub persons: Vec<Person>,
    /// Phones, new or changed.
    pub phones: Vec<Phone>,
    /// Blocks, new or changed.
    pub blocks: Vec<Block>,
    /// What the list tells of blocks and people: planted so many, agreed to be texted.
    pub facts: Vec<Body>,
}

impl From<&roll::Finding> for ListFinding {
    fn from(finding: &roll::Finding) -> Self {
        Self {
            line: finding.line,
            is_refused: finding.severity() == roll::Severity::Refused,
            what: finding.fault.to_string(),
        }
    }
}

impl From<roll::Plan> for Entries {
    fn from(plan: roll::Plan) -> Self {
        Self {
            groups: plan.groups,
            persons: plan.persons,
            phones: plan.phones,
            blocks: plan.blocks,
            facts: plan.facts,
        }
    }
}

impl Step<'_> {
    /// Looks at a list, and takes it in when that is wanted and nothing is refused.
    pub(crate) fn list(&mut self, list: &List) {
        let plan = self.view().plan_roll(&list.csv);
        let page = plan.to_string();
        let findings = plan.findings.iter().map(ListFinding::from).collect();
        let is_wanted = list.deed == ListDeed::Load && !plan.is_empty();
        let fate = match (plan.may_be_stored(), is_wanted) {
            (false, _) => ListFate::Refused,
            (true, false) => ListFate::Good,
            (true, true) => {
                let load = self.as_it_is(&plan);
                let facts = self.roll(plan.into());
                self.keep_load(load, facts);
                ListFate::Stored
            }
        };
        self.told.list = Some(ListAnswer {
            page,
            fate,
            findings,
        });
    }

    /// What a list will change, with how it is before.
    fn as_it_is(&self, plan: &roll::Plan) -> Load {
        let directory = &self.world.directory;
        Load {
            at: self.now,
            next: self.world.next_event(),
            facts: Vec::new(),
            groups: was(&plan.groups, |group| directory.group(group.id)),
            persons: was(&plan.persons, |person| directory.person(person.id)),
            phones: was(&plan.phones, |phone| directory.phone(&phone.number)),
            blocks: was(&plan.blocks, |block| directory.block(block.id)),
        }
    }

    /// Keeps what a list wrote, as it is after its facts, so that it can be taken back.
    fn keep_load(&mut self, mut load: Load, facts: Vec<EventId>) {
        let directory = &self.world.directory;
        for person in &mut load.persons {
            if let Some(now) = directory.person(person.after.id) {
                person.after = now.clone();
            }
        }
        load.next = self.world.next_event();
        load.facts = facts;
        self.put_load(load);
    }

    /// Takes a list in. Gives the facts that it told.
    pub(crate) fn roll(&mut self, entries: Entries) -> Vec<EventId> {
        for group in entries.groups {
            self.put_group(group);
        }
        for person in entries.persons {
            self.put_person(person);
        }
        for phone in entries.phones {
            self.change.phones.push(phone.clone());
            self.world.directory.put_phone(phone);
        }
        let blocks: Vec<BlockId> = entries.blocks.iter().map(|block| block.id).collect();
        for block in entries.blocks {
            self.change.blocks.push(block.clone());
            self.world.put_block(block);
        }
        let telling = Telling {
            source: Source::Sheet,
            ..Telling::BOT
        };
        let facts = entries.facts.into_iter();
        let facts = facts.map(|fact| self.record(telling, None, fact)).collect();
        // Phones came after people, and people's blocks after their phones: look once more.
        let people: Vec<BlockId> = self
            .world
            .directory
            .blocks()
            .map(|block| block.id)
            .collect();
        for block in blocks.into_iter().chain(people) {
            self.plan(block);
        }
        facts
    }
}

/// Things that a list changes, with how they are before.
fn was<'a, T: Clone + 'a>(after: &[T], before: impl Fn(&T) -> Option<&'a T>) -> Vec<Was<T>> {
    let one = |after: &T| Was {
        before: before(after).cloned(),
        after: after.clone(),
    };
    after.iter().map(one).collect()
}
