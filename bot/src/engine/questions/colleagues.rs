//! Who else could look after a text or a group: other advisers.
//!
//! Their names stand in no list of a group, so a text that names one is read with these names.

use budwood_parser::{Act, Known, Names, Query, Reading, Sender, Topic};
use budwood_scheduler::{Consent, Person, Role};

use crate::{
    args,
    engine::{
        memory::names::names,
        roles::{self, Verb},
        turn::Turn,
        view::View,
    },
    wording::{Key, Phrase, Value},
};

impl<'a> View<'a> {
    /// What the text hands to somebody of the same work, if it does.
    pub(crate) fn to_colleague(
        self,
        turn: &Turn,
        role: Role,
        languages: &[&str],
    ) -> Option<Reading> {
        let speaker = self
            .person(turn.speaker)
            .filter(|_| roles::may(role, Verb::ReadQueue))?;
        let text = turn.text.to_lowercase();
        let named = self.colleagues(speaker).into_iter();
        let named = named.filter(|one| text.contains(&one.called().to_lowercase()));
        let members: Vec<&str> = named.flat_map(names).collect();
        if members.is_empty() {
            return None;
        }
        let groups = self.groups_of(speaker);
        let groups: Vec<&str> = groups.map(|group| group.name.as_str()).collect();
        let none: &[&Names] = &[];
        let known = Known {
            languages,
            blocks: &[],
            groups: &groups,
            members: &members,
            rolls: none,
            sender: Sender::Adviser,
        };
        let reading = self.setup.reader.read(&turn.text, &known);
        let is_it = |act: &Act| {
            let Act::Query(query) = act else {
                return false;
            };
            matches!(query.topic, Topic::Pass | Topic::HandOver) && query.member.is_some()
        };
        reading.acts.iter().any(is_it).then_some(reading)
    }

    /// Other advisers, as far as they can be texted.
    pub(crate) fn colleagues(self, adviser: &Person) -> Vec<&'a Person> {
        let directory = &self.world.directory;
        let is_colleague =
            |person: &&Person| person.role == Role::Adviser && person.id != adviser.id;
        let can_read = |person: &&Person| {
            let is_gone = person.erased || matches!(person.consent, Consent::Withdrawn { .. });
            !is_gone && directory.numbers_that_reach(person.id).next().is_some()
        };
        let people = directory.persons();
        people.filter(is_colleague).filter(can_read).collect()
    }

    /// The colleague of this name, or who there is.
    pub(crate) fn colleague(self, adviser: &Person, query: &Query) -> Result<&'a Person, Phrase> {
        let all: Vec<&Person> = self.colleagues(adviser);
        let named = query.member.as_deref().or(query.group.as_deref());
        let is_meant = |one: &&&Person| named.is_some_and(|name| one.is_named(name));
        let found: Vec<&&Person> = all.iter().filter(is_meant).collect();
        if let [only] = found[..] {
            return Ok(only);
        }
        if all.is_empty() {
            return Err(Key::PassNobody.into());
        }
        let people = all.iter().map(|one| Value::name(&one.name));
        let args = args! { "people" => Value::List(people.collect()) };
        Err(Phrase::new(Key::PassWhom, args))
    }
}
