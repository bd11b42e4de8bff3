//! Who looks, and whose records they reach.

use budwood_scheduler::{Consent, Event, EventId, Group, Person, PersonId};

use crate::engine::{
    looks::Viewer,
    roles::{self, Reach, Verb},
    view::View,
};

impl<'a> View<'a> {
    /// Who looks, as long as they are who they were: their phone is theirs and not lost, and they did
    /// not say STOP.
    pub(crate) fn viewer(self, viewer: &Viewer) -> Option<&'a Person> {
        let person = self.person(viewer.person)?;
        let is_gone = person.erased || matches!(person.consent, Consent::Withdrawn { .. });
        let mut numbers = self.world.directory.numbers_that_reach(person.id);
        let is_theirs = numbers.any(|number| number == viewer.number);
        (!is_gone && is_theirs).then_some(person)
    }

    /// The groups that somebody reaches so.
    pub(super) fn groups_by(self, person: &Person, verb: Verb) -> Vec<&'a Group> {
        match roles::reach(person.role, verb) {
            Reach::Advised => self.world.directory.groups_of(person.id).collect(),
            Reach::OwnGroup => self.group_of(person).into_iter().collect(),
            Reach::Nobody => Vec::new(),
        }
    }

    /// A farmer whom somebody may look at.
    pub(crate) fn farmer_looked_at(self, viewer: &Person, person: PersonId) -> Option<&'a Person> {
        let person = self.person(person)?;
        let mut groups = self.groups_of(viewer);
        groups
            .any(|group| person.group == Some(group.id))
            .then_some(person)
    }

    /// A fact that somebody asks for by its number, if there is one.
    pub(crate) fn fact_asked(self, id: EventId) -> Option<Event> {
        let recent = self.world.recent_event(id).cloned();
        recent.or_else(|| self.store.event(id).ok().flatten())
    }
}
