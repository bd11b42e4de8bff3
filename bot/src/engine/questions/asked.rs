//! A question about a group, or about all groups of an adviser, a line each.

use budwood_parser::Query;
use budwood_scheduler::{Group, Person, figures::Table};

use super::figures::Names;
use crate::{
    args,
    engine::view::View,
    wording::{Key, Phrase, Value},
};

/// A group with its figures and what its people are called.
pub(super) struct Asked<'a, 'n> {
    pub(super) group: &'a Group,
    pub(super) table: Table<'a>,
    pub(super) names: &'n Names<'a>,
}

impl<'a> View<'a> {
    /// The answer about the group that is named, or the only one; about several a line each.
    pub(super) fn of_groups(
        self,
        (speaker, query): (&Person, &Query),
        all: Key,
        whole: fn(Self, &Asked<'a, '_>) -> Phrase,
        line: fn(Self, &Asked<'a, '_>) -> Phrase,
    ) -> Phrase {
        if let Some(group) = self.group_asked(speaker, query) {
            let names = Names::of(self, [group]);
            return whole(self, &self.asked(group, &names));
        }
        let groups: Vec<&Group> = self.groups_of(speaker).collect();
        if query.group.is_some() || groups.is_empty() {
            return self.not_yours(speaker);
        }
        let names = Names::of_all(self, speaker);
        let lines = groups
            .into_iter()
            .map(|group| line(self, &self.asked(group, &names)).into());
        Phrase::new(all, args! { "groups" => Value::List(lines.collect()) })
    }

    /// The group that is named, or all of the adviser's; none when that one is not theirs.
    pub(super) fn groups_asked(self, speaker: &Person, query: &Query) -> Vec<&'a Group> {
        if let Some(group) = self.group_asked(speaker, query) {
            return vec![group];
        }
        if query.group.is_some() {
            return Vec::new();
        }
        self.groups_of(speaker).collect()
    }

    /// What is said of one group.
    pub(super) fn with_asked(
        self,
        group: &'a Group,
        say: impl Fn(&Asked<'a, '_>) -> Phrase,
    ) -> Phrase {
        let names = Names::of(self, [group]);
        say(&self.asked(group, &names))
    }

    fn asked<'n>(self, group: &'a Group, names: &'n Names<'a>) -> Asked<'a, 'n> {
        Asked {
            group,
            table: self.table(group),
            names,
        }
    }
}

/// "KOLO 12 (Tamo dig pits 20d)".
pub(super) fn line(group: &Group, count: impl Into<Value>, first: Option<Phrase>) -> Phrase {
    let count: Value = count.into();
    let mut args = args! { "group" => Value::name(&group.name), "count" => count };
    let Some(first) = first else {
        return Phrase::new(Key::GroupCount, args);
    };
    args.extend(args! { "first" => first });
    Phrase::new(Key::GroupFirst, args)
}
