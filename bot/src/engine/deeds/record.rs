//! A fact is appended and takes effect: on the state of its block, on a group, on a person.

use budwood_scheduler::{
    BlockState, Body, Consent, Event, EventId, GroupId, Hold, Person, PersonId, Purpose,
};
use chrono::NaiveDate;

use crate::engine::{step::Step, turn::Telling};

impl Step<'_> {
    /// Appends a fact and lets it take effect.
    pub(crate) fn record(
        &mut self,
        telling: Telling,
        supersedes: Option<EventId>,
        body: Body,
    ) -> EventId {
        let event = Event {
            id: self.world.event_id(),
            at: self.now,
            by: telling.by,
            source: telling.source,
            message: telling.message,
            supersedes,
            body,
        };
        if let Some(old) = supersedes {
            self.unfold(old);
        }
        self.take_effect(&event);
        self.change.events.push(event.clone());
        let id = event.id;
        self.world.keep_event(event);
        id
    }

    fn take_effect(&mut self, event: &Event) {
        match &event.body {
            Body::Reported { block, .. }
            | Body::TaskDone { block, .. }
            | Body::Postponed { block, .. }
            | Body::Nudged { block, .. }
            | Body::Warned { block, .. }
            | Body::TakenBack { block } => {
                self.state(*block).apply(event);
                self.plan(*block);
            }
            Body::WindowOpened { group, on } => self.set_window(*group, Some(*on)),
            Body::PlantingHeld { group, .. } => self.set_window(*group, None),
            Body::ConsentGiven {
                person,
                purpose,
                how,
            } => {
                let (on, how) = (self.view().today_of(*person), how.clone());
                self.consent(*person, *purpose, Consent::Given { on, how });
            }
            Body::ConsentWithdrawn {
                person,
                purpose,
                how,
            } => {
                let (on, how) = (self.view().today_of(*person), how.clone());
                self.consent(*person, *purpose, Consent::Withdrawn { on, how });
            }
            Body::LeftAlone { person, hold } => self.hold(*person, Some(hold.clone())),
            Body::GoneOn { person } => self.hold(*person, None),
            // The phones themselves are put in by the deed: no fact holds a number.
            Body::PhoneLost { .. } | Body::PhoneFound { .. } | Body::NumberMoved { .. } => {}
            Body::Entered { group, entered } => {
                if let Some(mut group) = self.world.directory.group(*group).cloned() {
                    group.book.enter(entered);
                    self.put_group(group);
                }
            }
            Body::HandedOver { group, to } => {
                if let Some(mut group) = self.world.directory.group(*group).cloned() {
                    group.adviser = Some(*to);
                    self.put_group(group);
                }
            }
            Body::Passed(passed) => self.take_passed(passed, event),
            Body::Erased { person } => self.erase(*person),
        }
    }

    /// Folds a block anew without one of its facts.
    fn unfold(&mut self, old: EventId) {
        let Some(block) = self.view().event(old).and_then(|event| event.body.block()) else {
            return;
        };
        let Some(state) = self.world.states.get(&block) else {
            return;
        };
        let kept: Vec<Event> = state
            .facts
            .iter()
            .filter(|fact| **fact != old)
            .filter_map(|fact| self.view().event(*fact))
            .collect();
        *self.state(block) = BlockState::replay(&kept);
        self.plan(block);
    }

    fn set_window(&mut self, group: GroupId, opened: Option<NaiveDate>) {
        if let Some(mut group) = self.world.directory.group(group).cloned() {
            group.window_opened = opened;
            self.put_group(group);
        }
    }

    fn consent(&mut self, person: PersonId, purpose: Purpose, consent: Consent) {
        // A list tells the day of consent with the person; it stands.
        let is_known =
            |person: &Person| consent.is_given() && person.consent_to(purpose).is_given();
        if let Some(mut person) = self.world.directory.person(person).cloned()
            && !is_known(&person)
        {
            match purpose {
                Purpose::Reminders => person.consent = consent,
                Purpose::Buyers => person.sharing = consent,
            }
            self.put_person(person);
        }
    }

    fn hold(&mut self, person: PersonId, hold: Option<Hold>) {
        if let Some(person) = self.world.directory.person(person).cloned() {
            self.put_person(Person { hold, ..person });
        }
    }
}
