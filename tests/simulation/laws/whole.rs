//! The whole store against the live engine and the account, and a rebuilt engine against the one
//! whose memory was lost.

use std::collections::BTreeMap;

use budwood::{engine::Engine, store::Store, words::message::Outbound};
use budwood_scheduler::{BlockId, BlockState, Directory, Event, MessageId};
use chrono::{DateTime, TimeDelta, Utc};

use super::Laws;
use crate::fixture;

/// More messages than a run has.
const MANY: usize = 10_000_000;
/// Each block is looked at once in so many days at the latest.
const LOOK_AGAIN_DAYS: i64 = 7;

/// What can be seen of an engine's memory.
pub(in super::super) struct Picture {
    directory: Directory,
    states: BTreeMap<BlockId, BlockState>,
    held_since: Option<DateTime<Utc>>,
    next_wake: Option<DateTime<Utc>>,
}

impl Picture {
    pub(in super::super) fn of(engine: &Engine) -> Self {
        Self {
            directory: engine.directory().clone(),
            states: engine
                .directory()
                .blocks()
                .filter_map(|block| Some((block.id, engine.state(block.id)?.clone())))
                .collect(),
            held_since: engine.held_since(),
            next_wake: engine.next_wake(),
        }
    }

    /// An engine that was opened on the same store at the same moment knows the same.
    pub(in super::super) fn agrees_with(&self, rebuilt: &Engine) {
        assert!(
            self.directory == *rebuilt.directory(),
            "other people after opening again"
        );
        for (block, state) in &self.states {
            assert_eq!(
                Some(state),
                rebuilt.state(*block),
                "another state of block {block} after opening again"
            );
        }
        assert_eq!(self.held_since, rebuilt.held_since(), "the hold");
    }

    /// An engine may wake in vain, when a phone rests for longer than was planned. It must not
    /// sleep for much longer than one that has just looked at every block.
    pub(in super::super) fn wakes_with(&self, rebuilt: &Engine, now: DateTime<Utc>) {
        if let Some(rebuilt) = rebuilt.next_wake() {
            let latest = rebuilt.max(now) + TimeDelta::days(LOOK_AGAIN_DAYS);
            assert!(
                self.next_wake.is_some_and(|at| at <= latest),
                "sleeps until {:?}, and after opening again at {now} only until {rebuilt}",
                self.next_wake
            );
        }
    }
}

impl Laws {
    /// The whole store against the live engine and the account.
    pub(in super::super) fn whole(&self, engine: &Engine, store: &dyn Store) {
        let events: Vec<Event> = fixture::events(store);
        assert!(self.facts.all().eq(&events), "the log");
        self.gone.are_nowhere(store);
        let received = fixture::received(store);
        assert_eq!(received.len(), self.texts.len(), "the texts");
        for text in received {
            let id = text.gateway_id.clone().expect("this gateway has ids");
            assert_eq!(Some(&text), self.texts.get(&id), "a text");
        }
        let loaded = store.load(MANY).expect("a store that was written");
        for (block, state) in &loaded.states {
            assert_eq!(engine.state(*block), Some(state), "stored is not live");
            self.facts.agree_with(*block, state);
        }
        let outbound: BTreeMap<MessageId, Outbound> = loaded
            .outbound
            .into_iter()
            .map(|outbound| (outbound.id, outbound))
            .collect();
        assert!(outbound == self.outbound, "the outbox");
    }
}
