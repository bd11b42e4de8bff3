//! What must hold after every step, whatever the valley and the faults do.
//!
//! The laws look at what was written and at what was handed to the gateway, and keep their own
//! account of consent, rest and reports; they do not ask the engine whether it was right.

use std::collections::{BTreeMap, BTreeSet};

use budwood::{
    engine::Engine,
    gateway::Outgoing,
    message::{Outbound, Purpose, Received, SendState},
    store::{Change, Store},
};
use budwood_parser::{Ailment, Details, Kind};
use budwood_scheduler::{
    BlockId, BlockState, Body, Event, EventId, Group, MessageId, PersonId, TaskKind, nudge,
};
use chrono::{DateTime, NaiveDateTime, Utc};
use chrono_tz::Tz;

use crate::sim;

/// Days between two routine texts to a phone.
const REST_DAYS: i64 = 7;
/// More messages than a run has.
const MANY: usize = 1_000_000;

/// The account that the laws keep.
#[derive(Default)]
pub(super) struct Laws {
    /// Who agreed to be texted: by the list, and by the texts STOP and START as they were taken.
    agreed: BTreeSet<PersonId>,
    texts: BTreeMap<String, Received>,
    outbound: BTreeMap<MessageId, Outbound>,
    /// What was handed over, and whether it may be handed over again.
    handed: BTreeMap<MessageId, (Outgoing, bool)>,
    nudged: BTreeMap<String, (MessageId, DateTime<Utc>)>,
    events: Vec<Event>,
    superseded: BTreeSet<EventId>,
    /// How often the laws had something to judge, so that an idle run is no success.
    pub(super) nudges: usize,
    pub(super) facts: usize,
}

impl Laws {
    /// What was written for one call of the engine.
    pub(super) fn written(&mut self, change: &Change, engine: &Engine, now: DateTime<Utc>) {
        for received in &change.received {
            self.text(received, engine);
        }
        for person in &change.persons {
            if person.consent.is_given() && self.texts.is_empty() {
                self.agreed.insert(person.id);
            }
        }
        for outbound in &change.outbound {
            self.outbound(outbound);
        }
        for event in &change.events {
            self.event(event, change);
        }
        for (block, _) in &change.states {
            self.block(*block, engine);
            let written = change.states.iter().rev().find(|(one, _)| one == block);
            let live = engine.state(*block);
            assert_eq!(written.map(|(_, state)| state), live, "written is not live");
        }
        assert!(
            now >= change
                .outbound
                .iter()
                .map(|one| one.at)
                .max()
                .unwrap_or(now)
        );
    }

    fn text(&mut self, received: &Received, engine: &Engine) {
        let id = received.gateway_id.clone().expect("this gateway has ids");
        let before = self.texts.insert(id, received.clone());
        assert!(before.is_none(), "a text is in the store twice");
        let people: Vec<PersonId> = engine
            .directory()
            .phone(&received.from)
            .map(|phone| phone.people().collect())
            .unwrap_or_default();
        match received.text.to_uppercase().as_str() {
            "STOP" => people.iter().for_each(|person| {
                self.agreed.remove(person);
            }),
            "START" => self.agreed.extend(people),
            _ => {}
        }
    }

    fn outbound(&mut self, new: &Outbound) {
        sim::assert_one_sms(&new.text);
        if let Some(old) = self.outbound.get(&new.id) {
            assert_eq!((&old.to, &old.text), (&new.to, &new.text), "changed later");
            // A late answer can bring the gateway's id of a text and leave its state.
            let learned = old.state == new.state && old.gateway_id.is_none();
            assert!(
                learned || may_follow(old.state, new.state),
                "{:?} after {:?}",
                new.state,
                old.state
            );
        }
        self.outbound.insert(new.id, new.clone());
    }

    fn event(&mut self, event: &Event, change: &Change) {
        // A fact belongs to the text that told it, in the same write: so it is stored once, and
        // its text with it.
        if let Some(message) = event.message {
            let known = change.received.iter().any(|text| text.id == message);
            assert!(known, "a fact without its text");
        }
        let last = self.events.last().map_or(EventId(0), |last| last.id);
        assert!(event.id > last, "facts out of order");
        self.superseded.extend(event.supersedes);
        self.events.push(event.clone());
        self.facts += 1;
    }

    /// The facts of a block that were not superseded.
    fn facts_of(&self, block: BlockId) -> impl Iterator<Item = &Event> {
        self.events
            .iter()
            .filter(move |event| event.body.block() == Some(block))
            .filter(|event| !self.superseded.contains(&event.id))
    }

    fn block(&self, block: BlockId, engine: &Engine) {
        let state = engine.state(block).expect("a state that was written");
        let replayed = BlockState::replay(self.facts_of(block));
        assert_eq!(&replayed, state, "the log of block {block} says otherwise");
        let trees = state.planted().saturating_add(state.replaced());
        assert!(state.alive() <= trees, "more trees alive than planted");
    }

    /// A text is handed to the gateway.
    pub(super) fn handed(&mut self, text: &Outgoing, engine: &Engine, now: DateTime<Utc>) {
        if let Some((before, again)) = self.handed.get(&text.id) {
            assert_eq!(before, text, "an id stands for two texts");
            assert!(again, "handed over twice");
        }
        let again = engine.setup().idempotent_gateway;
        self.handed.insert(text.id, (text.clone(), again));
        let outbound = self
            .outbound
            .get(&text.id)
            .expect("a text that was written");
        assert!(now < outbound.expires_at, "too old to be sent");
        if let Purpose::Nudge { block, task, due } = outbound.purpose {
            self.nudges += 1;
            self.nudge(text, (block, task, due), engine, now);
        }
    }

    /// The gateway surely did not take it, so it may be tried again.
    pub(super) fn was_not_taken(&mut self, id: MessageId) {
        if let Some((_, again)) = self.handed.get_mut(&id) {
            *again = true;
        }
    }

    fn nudge(
        &mut self,
        text: &Outgoing,
        (block, task, due): (BlockId, TaskKind, chrono::NaiveDate),
        engine: &Engine,
        now: DateTime<Utc>,
    ) {
        let directory = engine.directory();
        let record = directory.block(block).expect("a block");
        let owner = directory.person(record.owner).expect("an owner");
        let group = directory.group_of_block(record).expect("a group");
        let local = local(group, now);
        assert!(self.agreed.contains(&owner.id), "a nudge without consent");
        assert!(!owner.erased, "a nudge to someone who is erased");
        let own = directory
            .numbers_of(owner.id)
            .any(|number| number == text.to);
        assert!(own, "a nudge to a phone that is not the owner's");
        let rules = nudge::Rules::standard();
        let night = local.time() >= rules.quiet_from || local.time() < rules.quiet_until;
        assert!(!night, "a nudge in quiet hours: {local}");
        assert!(!group.quiet_days.contains(&local.date()), "on a quiet day");
        assert!(due <= local.date(), "a nudge before its day");
        let open = engine.tasks(block, local.date());
        assert!(
            open.iter().any(|open| open.kind == task && open.due == due),
            "a nudge to {} of {due} for a job that is not open on {local}: {open:?}",
            task.name()
        );
        assert!(
            !self.is_reported(block, task, due),
            "a nudge to {} of {due} for work done",
            task.name()
        );
        self.rest(text, now, group);
    }

    /// Whether work that one report proves was reported for this round.
    fn is_reported(&self, block: BlockId, task: TaskKind, due: chrono::NaiveDate) -> bool {
        let proves = |kind: Kind, details: &Details| match task {
            TaskKind::Weed => kind == Kind::Weeded,
            TaskKind::Feed => kind == Kind::Fertilised,
            TaskKind::Prune => kind == Kind::Pruned,
            TaskKind::GirthCensus => kind == Kind::Girth,
            TaskKind::RootCheck => {
                kind == Kind::Disease && details.ailment == Some(Ailment::WhiteRoot)
            }
            // Several reports may go into one of these, so one of them proves nothing.
            TaskKind::OrderPlants
            | TaskKind::DigPits
            | TaskKind::Plant
            | TaskKind::SurvivalCheck
            | TaskKind::Backfill
            | TaskKind::InduceBranching
            | TaskKind::LookAtInduced
            | TaskKind::Open => false,
        };
        self.facts_of(block).any(|event| {
            matches!(&event.body, Body::Reported { kind, on, details, .. }
                if proves(*kind, details) && on.day() >= due)
        })
    }

    fn rest(&mut self, text: &Outgoing, now: DateTime<Utc>, group: &Group) {
        if let Some((before, at)) = self.nudged.get(&text.to)
            && *before != text.id
        {
            let days = (local(group, now).date() - local(group, *at).date()).num_days();
            assert!(days >= REST_DAYS, "two nudges to a phone in {days} days");
        }
        self.nudged.insert(text.to.clone(), (text.id, now));
    }

    /// A text was acknowledged: from now on it must be there.
    pub(super) fn acknowledged(&self, gateway_id: &str, text: &str) {
        let kept = self
            .texts
            .get(gateway_id)
            .expect("an acknowledged text is lost");
        assert_eq!(kept.text, text, "a text was changed");
    }

    /// The whole store against the live engine and the account.
    pub(super) fn whole(&self, engine: &Engine, store: &dyn Store) {
        assert_eq!(sim::events(store), self.events, "the log");
        assert_eq!(sim::received(store).len(), self.texts.len(), "the texts");
        let loaded = store.load(MANY).expect("memory does not fail");
        for (block, state) in &loaded.states {
            assert_eq!(engine.state(*block), Some(state), "stored is not live");
            self.block(*block, engine);
        }
        let outbound: BTreeMap<MessageId, Outbound> = loaded
            .outbound
            .into_iter()
            .map(|outbound| (outbound.id, outbound))
            .collect();
        assert!(outbound == self.outbound, "the outbox");
    }
}

fn local(group: &Group, now: DateTime<Utc>) -> NaiveDateTime {
    let zone: Tz = group.zone.parse().expect("a zone");
    now.with_timezone(&zone).naive_local()
}

/// Forward only; but what surely was not taken, or can be tried again safely, waits again.
fn may_follow(old: SendState, new: SendState) -> bool {
    match old {
        SendState::Ready | SendState::Sending => true,
        SendState::Sent | SendState::Unknown => {
            matches!(
                new,
                SendState::Sent | SendState::Delivered | SendState::Failed
            )
        }
        SendState::Delivered | SendState::Failed | SendState::Expired | SendState::Cancelled => {
            false
        }
    }
}
