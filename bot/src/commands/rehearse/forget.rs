//! A store that keeps facts and forgets texts: a rehearsal makes a million of them, and asks for
//! none.

use budwood_scheduler::{Event, EventId};
use chrono::{DateTime, Utc};

use crate::{
    store::{Change, Loaded, MemoryStore, Record, Store, StoreError},
    words::message::Received,
};

/// In front of a store in memory.
#[derive(Default)]
pub(super) struct Forgetful(MemoryStore);

impl Store for Forgetful {
    fn commit(&self, change: &Change) -> Result<(), StoreError> {
        let mut kept = change.clone();
        kept.received.clear();
        kept.outbound.clear();
        self.0.commit(&kept)
    }

    fn load(&self, messages: usize) -> Result<Loaded, StoreError> {
        self.0.load(messages)
    }

    fn event(&self, id: EventId) -> Result<Option<Event>, StoreError> {
        self.0.event(id)
    }

    fn each_event(&self, visit: &mut dyn FnMut(Event)) -> Result<(), StoreError> {
        self.0.each_event(visit)
    }

    fn each_received(&self, visit: &mut dyn FnMut(Received)) -> Result<(), StoreError> {
        self.0.each_received(visit)
    }

    fn received_since(
        &self,
        since: DateTime<Utc>,
        visit: &mut dyn FnMut(Received),
    ) -> Result<(), StoreError> {
        self.0.received_since(since, visit)
    }

    fn records(&self, after: Option<&[u8]>, at_most: usize) -> Result<Vec<Record>, StoreError> {
        self.0.records(after, at_most)
    }

    fn record(&self, key: &[u8]) -> Result<Option<Record>, StoreError> {
        self.0.record(key)
    }
}
