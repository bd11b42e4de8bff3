//! What a question may see: everything, and nothing that it could change.
//!
//! Figures and answers take a [`View`]; deeds have one through `Step::view`. Here is who is who;
//! what is asked is in `questions`.

use budwood_scheduler::{Block, BlockState, Event, EventId, Group, GroupId, Person, PersonId};
use chrono::{DateTime, NaiveDate, Utc};
use chrono_tz::Tz;

use super::{
    Setup,
    budget::Class,
    local_time::{civil_day, zone},
    memory::world::World,
    roles::{self, Reach, Verb},
};
use crate::{
    store::{Store, StoreError},
    words::{
        ledger::{Ledger, MonthBudget},
        message::Talk,
    },
};

/// The engine as it stands at a moment.
#[derive(Clone, Copy)]
pub(crate) struct View<'a> {
    pub(crate) world: &'a World,
    pub(crate) setup: &'a Setup,
    pub(crate) store: &'a dyn Store,
    pub(crate) now: DateTime<Utc>,
}

impl<'a> View<'a> {
    /// A fact of the log. Without one that should be there the step must not be committed: what
    /// follows from it would be wrong for good.
    pub(crate) fn event(self, id: EventId) -> Option<Event> {
        if let Some(event) = self.world.recent_event(id) {
            return Some(event.clone());
        }
        let read = self.store.event(id);
        match read.and_then(|event| event.ok_or(StoreError::FactGone(id))) {
            Ok(event) => Some(event),
            Err(error) => {
                // The first of them tells enough.
                let _ = self.world.unread.set(error);
                None
            }
        }
    }

    /// A person.
    pub(crate) fn person(self, id: PersonId) -> Option<&'a Person> {
        self.world.directory.person(id)
    }

    /// The conversation with a phone.
    pub(crate) fn talk(self, number: &str) -> Option<&'a Talk> {
        self.world.talks.get(number)
    }

    /// How a block stands, if anything is known of it.
    pub(crate) fn state(self, block: budwood_scheduler::BlockId) -> Option<&'a BlockState> {
        self.world.states.get(&block)
    }

    /// Everyone on a phone.
    pub(crate) fn everyone_on(self, number: &str) -> Vec<PersonId> {
        let phone = self.world.directory.phone(number);
        phone.map_or_else(Vec::new, |phone| phone.people().collect())
    }

    /// A person's group.
    pub(crate) fn group_of(self, person: &Person) -> Option<&'a Group> {
        self.world.directory.group(person.group?)
    }

    /// The blocks of a group's members.
    pub(crate) fn blocks_of_group(self, group: &Group) -> impl Iterator<Item = &'a Block> {
        let directory = &self.world.directory;
        let members = directory.members(group.id);
        members.flat_map(|person| directory.blocks_of(person.id))
    }

    /// The groups that a person may ask about.
    pub(crate) fn groups_of(self, person: &Person) -> impl Iterator<Item = &'a Group> + use<'a> {
        let directory = &self.world.directory;
        let reach = roles::reach(person.role, Verb::Look);
        let advised = (reach == Reach::Advised).then(|| directory.groups_of(person.id));
        let own = person.group.filter(|_| reach == Reach::OwnGroup);
        let own = own.and_then(|group| directory.group(group));
        advised.into_iter().flatten().chain(own)
    }

    /// What a group is called; nothing when there is none.
    pub(crate) fn group_name(self, group: Option<GroupId>) -> &'a str {
        let group = group.and_then(|group| self.world.directory.group(group));
        group.map_or("", |group| &group.name)
    }

    /// A person's adviser.
    pub(crate) fn adviser_of(self, person: &Person) -> Option<&'a Person> {
        self.person(self.group_of(person)?.adviser?)
    }

    /// The name that signs texts to a person.
    pub(crate) fn adviser_name(self, person: &Person) -> &'a str {
        self.adviser_of(person).map_or("Budwood", Person::called)
    }

    /// The zone that a person lives in.
    pub(crate) fn zone_of(self, person: PersonId) -> Tz {
        let group = self.person(person).and_then(|person| self.group_of(person));
        group.map_or(self.setup.zone, |group| zone(group, self.setup))
    }

    /// The civil day where a person lives.
    pub(crate) fn today_of(self, person: PersonId) -> NaiveDate {
        civil_day(self.now, self.zone_of(person))
    }

    /// The civil day where a group is.
    pub(crate) fn today_in(self, group: &Group) -> NaiveDate {
        civil_day(self.now, zone(group, self.setup))
    }

    /// What left in this month.
    pub(crate) fn ledger(self) -> Ledger {
        self.world.ledger.clone().at(self.now)
    }

    /// What that is of the month's budget, in per cent.
    pub(crate) fn gone_pct(self) -> Option<u32> {
        let month = self.setup.month;
        // Without a bound nothing is added up.
        (month != MonthBudget::default()).then(|| month.gone_pct(&self.ledger()))?
    }

    /// Whether day and month have money left for a text of this class.
    pub(crate) fn has_money_for(self, class: Class) -> bool {
        let spent = self.world.spent;
        spent.has_left(class, self.setup.parts_a_day, self.now)
            && class.is_in_month(self.gone_pct())
    }
}
