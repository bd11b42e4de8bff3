//! One step: changes memory, and collects what must be written for it.

use std::collections::BTreeSet;

use budwood_scheduler::{
    BlockId, BlockState, Body, Consent, Event, EventId, Group, MessageId, Person, PersonId, Source,
};
use chrono::{DateTime, NaiveDate, NaiveDateTime, TimeDelta, TimeZone, Utc};
use chrono_tz::Tz;

use super::{Input, Setup, Told, memory::world::World};
use crate::{
    store::{Change, Store},
    words::{
        limits,
        message::{Outbound, Purpose, SendState, Talk},
        sms,
    },
};

/// Who told a fact, how, and in which text.
#[derive(Clone, Copy, Debug)]
pub(super) struct Telling {
    pub(super) by: Option<PersonId>,
    pub(super) source: Source,
    pub(super) message: Option<MessageId>,
}

impl Telling {
    /// The bot itself.
    pub(super) const BOT: Self = Self {
        by: None,
        source: Source::Bot,
        message: None,
    };
}

/// One step over one input.
pub(super) struct Step<'a> {
    pub(super) world: &'a mut World,
    pub(super) setup: &'a Setup,
    pub(super) store: &'a dyn Store,
    pub(super) now: DateTime<Utc>,
    pub(super) change: Change,
    pub(super) told: Told,
    blocks: BTreeSet<BlockId>,
    talks: BTreeSet<String>,
}

impl<'a> Step<'a> {
    pub(super) fn new(
        world: &'a mut World,
        setup: &'a Setup,
        store: &'a dyn Store,
        now: DateTime<Utc>,
    ) -> Self {
        Self {
            world,
            setup,
            store,
            now,
            change: Change::default(),
            told: Told::default(),
            blocks: BTreeSet::new(),
            talks: BTreeSet::new(),
        }
    }

    /// Takes one input in. Everything that can happen is a line here.
    pub(super) fn input(&mut self, input: Input) {
        match input {
            Input::Text(inbound) => self.text(inbound),
            Input::Receipt(receipt) => self.receipt(receipt),
            Input::Wake => self.wake(),
            Input::ClaimNext { gateway } => self.claim_next(&gateway),
            Input::Link { gateway, link } => self.link(&gateway, &link),
            Input::Tried { id, outcome } => self.tried(id, outcome),
            Input::Roll(entries) => self.roll(*entries),
            Input::Sheet(sheet) => self.sheet(&sheet),
            Input::Release => self.release(),
            Input::Copy(step) => self.copy(step),
        }
    }

    /// What the step changes and tells.
    pub(super) fn finish(mut self) -> (Change, Told) {
        for block in self.blocks {
            if let Some(state) = self.world.states.get(&block) {
                self.change.states.push((block, state.clone()));
            }
        }
        for number in self.talks {
            if let Some(talk) = self.world.talks.get(&number) {
                self.change.talks.push((number, talk.clone()));
            }
        }
        (self.change, self.told)
    }

    /// The conversation with a phone, to be changed.
    pub(super) fn talk(&mut self, number: &str) -> &mut Talk {
        self.talks.insert(number.to_owned());
        self.world.talks.entry(number.to_owned()).or_default()
    }

    /// A fact of the log.
    pub(super) fn event(&self, id: EventId) -> Option<Event> {
        // `budwood check --records` finds a record that cannot be read; here it counts as unknown.
        self.world
            .recent_event(id)
            .cloned()
            .or_else(|| self.store.event(id).ok().flatten())
    }

    /// Appends a fact and lets it take effect.
    pub(super) fn record(
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
                self.world.states.entry(*block).or_default().apply(event);
                self.blocks.insert(*block);
                self.plan(*block);
            }
            Body::WindowOpened { group, on } => self.set_window(*group, Some(*on)),
            Body::PlantingHeld { group, .. } => self.set_window(*group, None),
            Body::ConsentGiven { person, how } => {
                let on = self.today_of(*person);
                self.consent(
                    *person,
                    Consent::Given {
                        on,
                        how: how.clone(),
                    },
                );
            }
            Body::ConsentWithdrawn { person, how } => {
                let on = self.today_of(*person);
                self.consent(
                    *person,
                    Consent::Withdrawn {
                        on,
                        how: how.clone(),
                    },
                );
            }
            Body::Erased { person } => self.erase(*person),
        }
    }

    /// Folds a block anew without one of its facts.
    fn unfold(&mut self, old: EventId) {
        let Some(block) = self.event(old).and_then(|event| event.body.block()) else {
            return;
        };
        let Some(state) = self.world.states.get(&block) else {
            return;
        };
        let kept: Vec<Event> = state
            .facts
            .iter()
            .filter(|fact| **fact != old)
            .filter_map(|fact| self.event(*fact))
            .collect();
        self.world.states.insert(block, BlockState::replay(&kept));
        self.blocks.insert(block);
        self.plan(block);
    }

    fn set_window(&mut self, group: budwood_scheduler::GroupId, opened: Option<NaiveDate>) {
        if let Some(mut group) = self.world.directory.group(group).cloned() {
            group.window_opened = opened;
            self.put_group(group);
        }
    }

    fn consent(&mut self, person: PersonId, consent: Consent) {
        // A list tells the day of consent with the person; it stands.
        let as_known = |person: &Person| consent.is_given() && person.consent.is_given();
        if let Some(mut person) = self.world.directory.person(person).cloned()
            && !as_known(&person)
        {
            person.consent = consent;
            self.put_person(person);
        }
    }

    /// Puts a person in, new or changed, and looks at their blocks again.
    pub(super) fn put_person(&mut self, person: Person) {
        let id = person.id;
        self.change.persons.push(person.clone());
        self.world.directory.put_person(person);
        let blocks: Vec<BlockId> = self
            .world
            .directory
            .blocks_of(id)
            .map(|block| block.id)
            .collect();
        for block in blocks {
            self.plan(block);
        }
    }

    /// Puts a group in, new or changed, and looks at its blocks again.
    pub(super) fn put_group(&mut self, group: Group) {
        let id = group.id;
        self.change.groups.push(group.clone());
        self.world.directory.put_group(group);
        let blocks: Vec<BlockId> = self
            .world
            .directory
            .members(id)
            .flat_map(|person| self.world.directory.blocks_of(person.id))
            .map(|block| block.id)
            .collect();
        for block in blocks {
            self.plan(block);
        }
    }

    /// Takes a person's name and numbers out. The code that stands for them says nothing.
    fn erase(&mut self, person: PersonId) {
        let numbers: Vec<String> = self
            .world
            .directory
            .numbers_of(person)
            .map(str::to_owned)
            .collect();
        for number in numbers {
            self.unlink(person, &number);
        }
        if let Some(mut person) = self.world.directory.person(person).cloned() {
            person.name = format!("P{}", person.id);
            person.erased = true;
            person.consent = Consent::Withdrawn {
                on: self.today_of(person.id),
                how: "erased".to_owned(),
            };
            self.put_person(person);
        }
    }

    fn unlink(&mut self, person: PersonId, number: &str) {
        let Some(mut phone) = self.world.directory.phone(number).cloned() else {
            return;
        };
        phone.links.retain(|link| link.person != person);
        if phone.links.is_empty() {
            self.world.directory.remove_phone(number);
            self.world.talks.remove(number);
            self.talks.remove(number);
            self.change.gone_phones.push(number.to_owned());
        } else {
            self.world.directory.put_phone(phone.clone());
            self.change.phones.push(phone);
        }
    }

    /// Puts a text into the outbox.
    pub(super) fn post(&mut self, to: &str, text: String, purpose: Purpose, hours: i64) {
        // Names and values bring along what no keyboard of a phone has.
        let text = sms::plain(&text).into_owned();
        let expires_at = self.now + TimeDelta::hours(hours);
        let id = self.world.message_id();
        let outbound = Outbound::new(id, self.now, to, text, purpose, expires_at);
        self.put_outbound(outbound);
    }

    /// Keeps a text out, new or moved on.
    pub(super) fn put_outbound(&mut self, mut outbound: Outbound) {
        if outbound.state.is_final() {
            outbound.settled_at.get_or_insert(self.now);
        }
        let lane = match outbound.state {
            SendState::Ready => self.lane(&outbound),
            _ => String::new(),
        };
        self.change.outbound.push(outbound.clone());
        self.world.outbox.put(outbound, &lane);
    }

    /// Answers a text, unless two machines seem to be talking.
    pub(super) fn answer(&mut self, to: &str, about: MessageId, text: String) {
        let now = self.now;
        let talk = self.talk(to);
        let lately = now - TimeDelta::minutes(limits::SAME_ANSWER_MINUTES);
        talk.answered_at.retain(|at| *at > lately);
        let same = match &talk.last_answer {
            Some((last, times)) if *last == text && !talk.answered_at.is_empty() => *times,
            _ => 0,
        };
        let recently = now - TimeDelta::minutes(limits::LOOP_MINUTES);
        let fast = talk.answered_at.iter().filter(|at| **at > recently).count();
        if fast >= limits::LOOP_ANSWERS || same >= limits::SAME_ANSWER_TIMES {
            return;
        }
        talk.answered_at.push(now);
        talk.last_answer = Some((text.clone(), same + 1));
        self.post(
            to,
            text,
            Purpose::Answer { to: about },
            limits::ANSWER_HOURS,
        );
    }

    /// The name that signs texts to a person.
    pub(super) fn adviser_name(&self, person: &Person) -> String {
        self.adviser_of(person).map_or_else(
            || "Budwood".to_owned(),
            |adviser| adviser.called().to_owned(),
        )
    }

    /// A person's adviser.
    pub(super) fn adviser_of(&self, person: &Person) -> Option<&Person> {
        let group = self.world.directory.group(person.group?)?;
        self.world.directory.person(group.adviser?)
    }

    /// The zone that a person lives in.
    pub(super) fn zone_of(&self, person: PersonId) -> Tz {
        self.world
            .directory
            .person(person)
            .and_then(|person| person.group)
            .and_then(|group| self.world.directory.group(group))
            .map_or(self.setup.zone, |group| zone(group, self.setup))
    }

    /// The civil day where a person lives.
    pub(super) fn today_of(&self, person: PersonId) -> NaiveDate {
        civil_day(self.now, self.zone_of(person))
    }
}

/// A group's zone; the roll lets only known names in.
pub(super) fn zone(group: &Group, setup: &Setup) -> Tz {
    group.zone.parse().unwrap_or(setup.zone)
}

/// The civil day of an instant in a zone.
pub(super) fn civil_day(at: DateTime<Utc>, zone: Tz) -> NaiveDate {
    at.with_timezone(&zone).date_naive()
}

/// The instant of a local time. A time that the clock skips is moved on to where it goes on; of
/// a time that comes twice the first is meant.
pub(super) fn instant(local: NaiveDateTime, zone: Tz) -> DateTime<Utc> {
    /// No clock is put forward by more than this.
    const GAP_HOURS_MAX: i64 = 3;
    (0..=GAP_HOURS_MAX * 4)
        .find_map(|quarter| {
            let moved = local + TimeDelta::minutes(quarter * 15);
            zone.from_local_datetime(&moved).earliest()
        })
        .map_or_else(
            || Utc.from_utc_datetime(&local),
            |at| at.with_timezone(&Utc),
        )
}
