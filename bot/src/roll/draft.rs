//! The directory as it would be after the load, while the rows are taken in.
//!
//! Rows are put into a copy of the directory; at the end the copy is compared with the original,
//! so "new", "changed" and "same" cannot disagree with what would be stored.

use std::collections::{BTreeMap, BTreeSet};

use budwood_scheduler::{BlockId, Body, Directory, GroupId, PersonId};

use super::{
    Known, Plan, Tally,
    finding::{Fault, Finding},
};

/// A name as it is compared: capitals do not matter.
pub(super) fn key(name: &str) -> String {
    name.to_lowercase()
}

/// The load so far.
pub(super) struct Draft<'a> {
    /// What was known before.
    pub(super) known: Known<'a>,
    /// What would be known after.
    pub(super) directory: Directory,
    /// Groups by name.
    pub(super) groups: BTreeMap<String, GroupId>,
    /// People by group and name.
    pub(super) people: BTreeMap<(Option<GroupId>, String), PersonId>,
    /// Blocks by owner and name.
    pub(super) blocks: BTreeMap<(PersonId, String), BlockId>,
    /// Groups in the list, and on which line.
    pub(super) group_lines: BTreeMap<GroupId, usize>,
    /// People in the list, and on which line.
    pub(super) person_lines: BTreeMap<PersonId, usize>,
    /// Numbers in the list, and the last line of each.
    pub(super) phone_lines: BTreeMap<String, usize>,
    /// Blocks in the list, and on which line.
    pub(super) block_lines: BTreeMap<BlockId, usize>,
    /// Facts so far.
    pub(super) facts: Vec<Body>,
    findings: Vec<Finding>,
    refused: BTreeSet<String>,
    last_group: GroupId,
    last_person: PersonId,
    last_block: BlockId,
}

impl<'a> Draft<'a> {
    pub(super) fn new(known: Known<'a>, findings: Vec<Finding>) -> Self {
        let directory = known.directory.clone();
        let groups = directory.groups().map(|group| (key(&group.name), group.id));
        // The name of an erased person is a code, and nobody is found by it.
        let people = directory
            .persons()
            .filter(|person| !person.erased)
            .map(|person| ((person.group, key(&person.name)), person.id));
        let blocks = directory
            .blocks()
            .map(|block| ((block.owner, key(&block.name)), block.id));
        let last_group = directory.groups().map(|group| group.id).max();
        let last_person = directory.persons().map(|person| person.id).max();
        let last_block = directory.blocks().map(|block| block.id).max();
        Self {
            known,
            last_group: last_group.unwrap_or(GroupId(0)),
            last_person: last_person.unwrap_or(PersonId(0)),
            last_block: last_block.unwrap_or(BlockId(0)),
            groups: groups.collect(),
            people: people.collect(),
            blocks: blocks.collect(),
            directory,
            group_lines: BTreeMap::new(),
            person_lines: BTreeMap::new(),
            phone_lines: BTreeMap::new(),
            block_lines: BTreeMap::new(),
            facts: Vec::new(),
            findings,
            refused: BTreeSet::new(),
        }
    }

    /// Notes a fault, unless it only says that a row noted before was refused: one bad group row
    /// must not put five hundred farmers on the list of faults.
    pub(super) fn note(&mut self, line: usize, fault: Fault) {
        if !self.is_echo(&fault) {
            self.findings.push(Finding { line, fault });
        }
    }

    /// Remembers the name in a group or person row that was refused.
    pub(super) fn refuse(&mut self, name: Option<&str>) {
        self.refused.extend(name.map(key));
    }

    fn is_echo(&self, fault: &Fault) -> bool {
        let (Fault::GroupUnknown(name) | Fault::OwnerUnknown(name) | Fault::AdviserUnknown(name)) =
            fault
        else {
            return false;
        };
        self.refused.contains(&key(name))
    }

    /// The value, or none and its fault noted.
    pub(super) fn keep<T>(&mut self, line: usize, value: Result<T, Fault>) -> Option<T> {
        value.map_err(|fault| self.note(line, fault)).ok()
    }

    pub(super) const fn new_group(&mut self) -> GroupId {
        self.last_group.0 = self.last_group.0.saturating_add(1);
        self.last_group
    }

    pub(super) const fn new_person(&mut self) -> PersonId {
        self.last_person.0 = self.last_person.0.saturating_add(1);
        self.last_person
    }

    pub(super) const fn new_block(&mut self) -> BlockId {
        self.last_block.0 = self.last_block.0.saturating_add(1);
        self.last_block
    }

    /// Compares with what was known before.
    pub(super) fn into_plan(mut self) -> Plan {
        self.findings.sort_by_key(|finding| finding.line);
        let (old, new) = (self.known.directory, &self.directory);
        let mut plan = Plan {
            facts: self.facts,
            findings: self.findings,
            ..Plan::default()
        };
        (plan.groups, plan.group_tally) = compare(
            self.group_lines.keys(),
            |id| old.group(*id),
            |id| new.group(*id),
        );
        (plan.persons, plan.person_tally) = compare(
            self.person_lines.keys(),
            |id| old.person(*id),
            |id| new.person(*id),
        );
        (plan.phones, plan.phone_tally) = compare(
            self.phone_lines.keys(),
            |number| old.phone(number),
            |number| new.phone(number),
        );
        (plan.blocks, plan.block_tally) = compare(
            self.block_lines.keys(),
            |id| old.block(*id),
            |id| new.block(*id),
        );
        plan
    }
}

fn compare<'a, K: 'a, T: Clone + PartialEq + 'a>(
    keys: impl Iterator<Item = &'a K>,
    before: impl Fn(&K) -> Option<&'a T>,
    after: impl Fn(&K) -> Option<&'a T>,
) -> (Vec<T>, Tally) {
    let mut tally = Tally::default();
    let mut differing = Vec::new();
    for key in keys {
        let (old, new) = (before(key), after(key));
        match (old, new) {
            (_, None) => {}
            (None, Some(_)) => tally.new += 1,
            (Some(old), Some(new)) if old == new => tally.same += 1,
            (Some(_), Some(_)) => tally.changed += 1,
        }
        if old != new {
            differing.extend(new.cloned());
        }
    }
    (differing, tally)
}
