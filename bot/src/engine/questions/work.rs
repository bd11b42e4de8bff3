//! Questions of the adviser about one kind of work at a group: feeding, and girths.

use budwood_parser::{Kind, Query, Topic};
use budwood_scheduler::{BlockId, Group, Person};

use super::asked::{Asked, line};
use crate::{
    args,
    engine::view::View,
    wording::{Key, MemberGirth, Phrase, Value, member_girth},
    words::limits,
};

impl<'a> View<'a> {
    /// The answer about one kind of work; none when another answer fits better.
    pub(crate) fn about_work(self, speaker: &Person, query: &Query) -> Option<Phrase> {
        let is_asked = |topics: &[Topic]| topics.contains(&query.topic);
        let kind = query.kind?;
        let group = || self.group_asked(speaker, query);
        if kind == Kind::Fertilised && is_asked(&[Topic::HowMuch, Topic::Status]) {
            return Some(self.with_asked(group()?, |asked| self.bags(asked)));
        }
        let girths = matches!(kind, Kind::Girth | Kind::TappingOpened);
        if !girths || !is_asked(&[Topic::Status, Topic::When, Topic::Member]) {
            return None;
        }
        match (group(), &query.group) {
            (Some(group), _) => Some(self.girths_of_group(group)),
            // "girth Pira" is about a person.
            (None, Some(name)) => Some(self.one_called(speaker, name, query)),
            (None, None) => None,
        }
    }

    /// GIRTH of a group.
    pub(super) fn girths(self, asked: &Asked<'a, '_>) -> Phrase {
        self.girths_of_group(asked.group)
    }

    /// Of how many stands girths are known.
    pub(super) fn girths_line(self, asked: &Asked<'a, '_>) -> Phrase {
        let directory = &self.world.directory;
        let members = directory.members(asked.group.id);
        let blocks = members.flat_map(|person| directory.blocks_of(person.id));
        let states = blocks.filter_map(|block| self.state(block.id));
        let measured = states.filter(|state| !state.girths.is_empty());
        line(asked.group, measured.count(), None)
    }

    /// The last girths of each farmer, those furthest behind first.
    fn girths_of_group(self, group: &Group) -> Phrase {
        let today = self.today_in(group);
        let neighbours = self.neighbours(group);
        let directory = &self.world.directory;
        let blocks = directory.members(group.id).flat_map(|person| {
            let blocks = directory.blocks_of(person.id);
            blocks.map(move |block| (person, block.id))
        });
        let mut girths: Vec<(&Person, BlockId, MemberGirth)> = blocks
            .filter_map(|(person, block)| {
                let girth = self.member_girth(neighbours.as_ref()?, block)?;
                Some((person, block, girth))
            })
            .collect();
        girths.sort_by_key(|(_, _, girth)| girth.months_ahead);
        if girths.is_empty() {
            let args = args! { "group" => group.name.as_str() };
            return Phrase::new(Key::GirthNone, args);
        }
        for (_, block, girth) in girths.iter_mut().take(limits::LIST_ITEMS_MAX) {
            girth.ready = neighbours
                .as_ref()
                .and_then(|neighbours| self.ready_between(neighbours, *block, today));
        }
        let people = girths.iter().map(|(person, _, girth)| {
            let called = Value::name(person.called());
            Value::Joined(vec![called, member_girth(girth).into()])
        });
        let args = args! {
            "group" => Value::brief(&group.name),
            "people" => Value::List(people.collect()),
        };
        Phrase::new(Key::GirthList, args)
    }
}
