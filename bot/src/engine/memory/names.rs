//! Names of the people and blocks of a group, made ready for the reader once and kept until they
//! change: a text must not cost more each time because the group is large.

use std::collections::{BTreeMap, BTreeSet};

use budwood_parser::Names;
use budwood_scheduler::{Directory, GroupId, Person};

/// What the people of a group call themselves and their blocks.
pub(crate) struct GroupNames {
    /// The people.
    pub(crate) people: Names,
    /// Their blocks, each name once.
    pub(crate) blocks: Vec<String>,
}

impl GroupNames {
    fn of(directory: &Directory, group: GroupId) -> Self {
        let members = || directory.members(group);
        let blocks: BTreeSet<&str> = members()
            .flat_map(|person| directory.blocks_of(person.id))
            .map(|block| block.name.as_str())
            .collect();
        Self {
            people: Names::new(members().flat_map(names)),
            blocks: blocks.into_iter().map(str::to_owned).collect(),
        }
    }
}

/// What a person may be called in a text: the whole name, or the first of it.
pub(crate) fn names(person: &Person) -> [&str; 2] {
    [&person.name, person.called()]
}

/// The names of the groups that somebody asked about.
#[derive(Default)]
pub(crate) struct Rolls(BTreeMap<GroupId, GroupNames>);

impl Rolls {
    /// The names of a group, if they are ready.
    pub(crate) fn of(&self, group: GroupId) -> Option<&GroupNames> {
        self.0.get(&group)
    }

    /// Makes the names of a group ready, if they are not.
    pub(crate) fn make_ready(&mut self, directory: &Directory, group: GroupId) {
        let ready = self.0.entry(group);
        ready.or_insert_with(|| GroupNames::of(directory, group));
    }

    /// They have changed.
    pub(crate) fn forget(&mut self, group: Option<GroupId>) {
        if let Some(group) = group {
            self.0.remove(&group);
        }
    }
}
