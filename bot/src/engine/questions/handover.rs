//! HANDOVER: what another adviser would look after from then on, with what is open there.

use budwood_parser::{Query, Taken, Word};
use budwood_scheduler::{Group, GroupId, Person, PersonId};

use super::codes::Large;
use crate::{
    args,
    engine::{turn::Turn, view::View},
    wording::{Args, Key, Phrase, Value},
    words::{message::Audience, promise::Promise, question::Deed},
};

impl View<'_> {
    /// HANDOVER: all of the adviser's groups, or the one that is named, and what is open there.
    pub(crate) fn handing_over(
        self,
        turn: &Turn,
        adviser: &Person,
        query: &Query,
    ) -> Result<Large, Phrase> {
        let to = self.colleague(adviser, query)?;
        let named = query.group.as_deref().filter(|_| query.member.is_some());
        // A name that is none of theirs must not stand for all of theirs.
        let reading = self.read(turn, adviser.role);
        let is_strange = |word: &Word| word.taken == Taken::Unknown;
        if query.member.is_some() && reading.words.iter().any(is_strange) {
            return Err(self.not_yours(adviser));
        }
        let own = self.world.directory.groups_of(adviser.id);
        let groups: Vec<&Group> = own
            .filter(|group| named.is_none_or(|name| group.name.eq_ignore_ascii_case(name)))
            .collect();
        if groups.is_empty() {
            return Err(self.not_yours(adviser));
        }
        let groups: Vec<GroupId> = groups.into_iter().map(|group| group.id).collect();
        let mut args = self.open_in(adviser, &groups);
        args.extend(args! { "name" => Value::name(&to.name) });
        let to = to.id;
        Ok(Large {
            deed: Deed::HandOver { to, groups },
            phrase: Phrase::new(Key::HandAsk, args),
        })
    }

    /// What is open in these groups: people, texts that wait, promises, sickness.
    pub(crate) fn open_in(self, adviser: &Person, groups: &[GroupId]) -> Args {
        let directory = &self.world.directory;
        let tables = || {
            let groups = groups.iter().filter_map(|group| directory.group(*group));
            groups.map(|group| self.table(group))
        };
        let names = groups.iter().map(|group| self.group_name(Some(*group)));
        let waiting = self.waiting_for(adviser).into_iter().filter(|matter| {
            let group = self.person(matter.person).and_then(|one| one.group);
            group.is_some_and(|group| groups.contains(&group))
        });
        let owed = self.promises_of(adviser).into_iter();
        let owed = owed.filter(|promise| self.is_promised_in(promise, groups));
        args! {
            "groups" => Value::List(names.map(Value::name).collect()),
            "farmers" => tables().map(|table| table.farmers().value).sum::<usize>(),
            "waiting" => waiting.count(),
            "owed" => owed.count(),
            "sick" => tables().map(|table| table.sick().value.len()).sum::<usize>(),
        }
    }

    /// Whether a promise is to one of these groups or to somebody in them.
    pub(crate) fn is_promised_in(self, promise: &Promise, groups: &[GroupId]) -> bool {
        let of_person = |person: PersonId| self.person(person).and_then(|one| one.group);
        let group = match promise.to {
            Audience::Group(group) => Some(group),
            Audience::Person(person) => of_person(person),
        };
        group.is_some_and(|group| groups.contains(&group))
    }
}
