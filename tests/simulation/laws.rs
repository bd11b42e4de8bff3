//! What must hold after every step, whatever the valley and the faults do.
//!
//! The laws look at what was written and at what was handed to the gateway, and keep their own
//! account of texts, facts, consent, rest and tries; they do not ask the engine whether it was
//! right. Here is what a write must be; what may leave is in `sending`, what may be said in
//! `speaking`, what must not be forgotten in `owed`, and the whole store in `whole`.

mod facts;
mod gone;
mod owed;
mod sending;
mod speaking;
mod whole;

use std::collections::{BTreeMap, BTreeSet};

use budwood::{
    engine::Engine,
    store::Change,
    words::{
        message::{Outbound, Purpose, Received, SendState},
        traffic::Outgoing,
    },
};
use budwood_scheduler::{BlockState, Body, Entered, Event, Group, MessageId, PersonId};
use chrono::{DateTime, NaiveDateTime, Utc};
use chrono_tz::Tz;

pub(super) use self::whole::Picture;
use self::{facts::Facts, gone::Gone, owed::Owed, speaking::Said};
use super::figures::Figures;
use crate::fixture;

/// The moment of a step, as the valley knows it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Moment {
    /// The engine's time.
    pub(super) now: DateTime<Utc>,
    /// Whether nothing may leave: the store was filled, and nobody has released it.
    pub(super) held: bool,
    /// Whether the computer's clock is so wrong that no nudge may go.
    pub(super) wrong: bool,
}

/// The account that the laws keep.
#[derive(Clone, Default)]
pub(super) struct Laws {
    /// Whether the list of people was taken in: later consent comes by text alone.
    began: bool,
    /// Who agreed to be texted: by the list, and by the texts STOP and START as they were taken.
    agreed: BTreeSet<PersonId>,
    /// Who was shown how branches are made, by the list.
    shown: BTreeSet<PersonId>,
    /// Who is left in peace: by a text of a death, until the adviser says GO.
    held: BTreeSet<PersonId>,
    texts: BTreeMap<String, Received>,
    outbound: BTreeMap<MessageId, Outbound>,
    /// What was handed over, and whether it may be handed over again.
    handed: BTreeMap<MessageId, (Outgoing, bool)>,
    /// Phones that were welcomed or texted first.
    met: BTreeSet<String>,
    /// The last nudge that was handed over for each phone.
    nudged: BTreeMap<String, (MessageId, DateTime<Utc>)>,
    facts: Facts,
    said: Said,
    /// Who was taken out of the records.
    gone: Gone,
    owed: Owed,
    /// Every id that was ever given out, whatever was restored since: a gateway knows them.
    ever: BTreeMap<MessageId, (String, String)>,
    pub(super) figures: Figures,
}

impl Laws {
    /// What was written for one call of the engine.
    pub(super) fn written(&mut self, change: &Change, engine: &Engine, moment: Moment) {
        self.gone.take(change);
        for received in &change.received {
            self.met.insert(received.from.clone());
            self.text(received, change, engine);
        }
        for person in &change.persons {
            if person.consent.is_given() && !self.began {
                self.agreed.insert(person.id);
            }
        }
        for outbound in &change.outbound {
            self.meet(outbound);
            self.outbound(outbound, moment);
        }
        for event in &change.events {
            self.facts.take(event, change);
            self.figures.facts += 1;
            if let Body::LeftAlone { person, .. } = event.body {
                self.held.insert(person);
            } else if let Body::GoneOn { person } = event.body {
                self.held.remove(&person);
            } else if let Body::Entered {
                entered: Entered::Trained { came, .. },
                ..
            } = &event.body
            {
                self.shown.extend(came);
            }
            self.figures.warned += usize::from(matches!(event.body, Body::Warned { .. }));
            if let Body::Nudged { .. } = event.body {
                self.nudge_made(event, engine, moment);
            }
        }
        self.states(change);
        self.answers(change, engine, moment);
        self.began = true;
    }

    /// A fact is written with the state of its block, and that is what the facts come to.
    fn states(&self, change: &Change) {
        let written: BTreeMap<_, &BlockState> = change
            .states
            .iter()
            .map(|(block, state)| (*block, state))
            .collect();
        for event in &change.events {
            if let Some(block) = event.body.block() {
                assert!(written.contains_key(&block), "a fact without its state");
            }
        }
        for (block, state) in written {
            self.facts.agree_with(block, state);
        }
    }

    /// What was written last is what is in memory.
    pub(super) fn live(&self, written: &[Change], engine: &Engine) {
        let states = written.iter().flat_map(|change| &change.states);
        let last: BTreeMap<_, &BlockState> = states.map(|(block, state)| (*block, state)).collect();
        for (block, state) in last {
            assert_eq!(
                Some(state),
                engine.state(block),
                "what was written is not live"
            );
        }
    }

    fn text(&mut self, received: &Received, change: &Change, engine: &Engine) {
        let id = received.gateway_id.clone().expect("this gateway has ids");
        let before = self.texts.insert(id, received.clone());
        if self.gone.is_wiped(received) {
            assert!(before.is_some(), "a text came without a sender");
            return;
        }
        assert!(before.is_none(), "a text is in the store twice");
        self.figures.texts += 1;
        let phone = engine.directory().phone(&received.from);
        let people: Vec<PersonId> = phone.map_or_else(Vec::new, |phone| phone.people().collect());
        match received.text.to_uppercase().as_str() {
            // Whoever sends it, the phone is left in peace.
            "STOP" => people.iter().for_each(|person| {
                self.agreed.remove(person);
            }),
            // One of those who use the phone agrees, for themselves.
            "START" => {
                let told = |event: &&Event| event.message == Some(received.id);
                let given = change.events.iter().filter(told);
                self.agreed.extend(given.filter_map(|event| {
                    let Body::ConsentGiven { person, .. } = event.body else {
                        return None;
                    };
                    people.contains(&person).then_some(person)
                }));
            }
            _ => {}
        }
    }

    fn outbound(&mut self, new: &Outbound, moment: Moment) {
        if self.gone.is_wiped_out(new) {
            let old = self.outbound.get(&new.id);
            let old = old.expect("a text is wiped that never was");
            assert!(may_follow(old.state, new.state) || old.state == new.state);
            self.outbound.insert(new.id, new.clone());
            return;
        }
        fixture::assert_one_sms(&new.text);
        assert!(new.at <= moment.now, "a text from the future");
        let named = (new.to.clone(), new.text.clone());
        let first = self.ever.entry(new.id).or_insert_with(|| named.clone());
        assert_eq!(*first, named, "an id stands for two texts");
        if let Some(old) = self.outbound.get(&new.id) {
            // A late answer can bring the gateway's id of a text and leave its state.
            let learned = old.state == new.state && old.ids.is_empty();
            assert!(
                learned || may_follow(old.state, new.state),
                "{:?} after {:?}",
                new.state,
                old.state
            );
        } else if matches!(new.purpose, Purpose::Answer { .. }) {
            self.said.answer(new);
        }
        self.outbound.insert(new.id, new.clone());
    }

    /// A text was acknowledged: from now on it must be there.
    pub(super) fn acknowledged(&self, gateway_id: &str, text: &str) {
        let kept = self
            .texts
            .get(gateway_id)
            .expect("an acknowledged text is lost");
        let is_kept = kept.text == text || self.gone.is_wiped(kept);
        assert!(is_kept, "a text was changed");
    }

    /// The account as it was when a copy began; what the world outside has seen stays seen.
    pub(super) fn restored(&mut self, copied: &Self) {
        let seen = std::mem::take(&mut self.ever);
        let figures = std::mem::take(&mut self.figures);
        *self = Self {
            ever: seen,
            figures,
            ..copied.clone()
        };
    }
}

/// The local time of a group.
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
