//! The store without a disk: for tests, the simulation and the demo's throw-away run.
//!
//! It keeps the same bytes as the store on disk, so every test also tests the records.

use std::{collections::BTreeMap, ops::Bound};

use budwood_scheduler::{Event, EventId};

use super::{Change, Loaded, Record, Store, StoreError, keyed};
use crate::message::Received;

/// A store in memory.
#[derive(Clone, Debug, Default)]
pub struct MemoryStore {
    records: BTreeMap<Vec<u8>, Vec<u8>>,
}

impl MemoryStore {
    /// An empty store.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    fn under<'a>(&'a self, prefix: &'a [u8]) -> impl DoubleEndedIterator<Item = keyed::Row> + 'a {
        let end = keyed::after(prefix);
        self.records
            .range(prefix.to_vec()..end)
            .map(|(key, value)| Ok((key.clone(), value.clone())))
    }
}

impl Store for MemoryStore {
    fn commit(&mut self, change: &Change) -> Result<(), StoreError> {
        for (key, value) in keyed::rows(change)? {
            match value {
                Some(value) => self.records.insert(key, value),
                None => self.records.remove(&key),
            };
        }
        Ok(())
    }

    fn load(&self, messages: usize) -> Result<Loaded, StoreError> {
        keyed::load(|prefix| Box::new(self.under(prefix)), messages)
    }

    fn event(&self, id: EventId) -> Result<Option<Event>, StoreError> {
        let key = keyed::event_key(id);
        self.records
            .get(&key)
            .map(|value| keyed::event(&key, value))
            .transpose()
    }

    fn each_event(&self, visit: &mut dyn FnMut(Event)) -> Result<(), StoreError> {
        keyed::each_event(self.under(keyed::EVENTS), visit)
    }

    fn each_received(&self, visit: &mut dyn FnMut(Received)) -> Result<(), StoreError> {
        keyed::each_received(self.under(keyed::RECEIVED), visit)
    }

    fn records(&self, after: Option<&[u8]>, at_most: usize) -> Result<Vec<Record>, StoreError> {
        let from = after.map_or(Bound::Unbounded, |key| Bound::Excluded(key.to_vec()));
        let rows = self
            .records
            .range((from, Bound::Unbounded))
            .map(|(key, value)| Ok((key.clone(), value.clone())));
        keyed::records(rows, at_most)
    }

    fn record(&self, key: &[u8]) -> Result<Option<Record>, StoreError> {
        Ok(self.records.get(key).map(|line| Record {
            key: key.to_vec(),
            line: line.clone(),
        }))
    }
}
