//! The store without a disk: for tests, the simulation and the demo's throw-away run.
//!
//! It keeps the same bytes as the store on disk, so every test also tests the records.

use std::{
    collections::BTreeMap,
    ops::Bound,
    sync::{PoisonError, RwLock, RwLockReadGuard},
};

use budwood_scheduler::{Event, EventId};
use chrono::{DateTime, Utc};

use super::{Change, Loaded, Record, Store, StoreError, keyed};
use crate::words::message::Received;

/// A store in memory.
#[derive(Debug, Default)]
pub struct MemoryStore {
    records: RwLock<Records>,
}

/// Records by key.
type Records = BTreeMap<Vec<u8>, Vec<u8>>;

impl MemoryStore {
    /// An empty store.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    fn read(&self) -> RwLockReadGuard<'_, Records> {
        self.records.read().unwrap_or_else(PoisonError::into_inner)
    }
}

fn under<'a>(
    records: &'a Records,
    prefix: &[u8],
) -> impl DoubleEndedIterator<Item = keyed::Row> + use<'a> {
    records
        .range(prefix.to_vec()..keyed::after(prefix))
        .map(|(key, value)| Ok((key.clone(), value.clone())))
}

impl Store for MemoryStore {
    fn commit(&self, change: &Change) -> Result<(), StoreError> {
        let rows = keyed::rows(change)?;
        let mut records = self.records.write().unwrap_or_else(PoisonError::into_inner);
        for (key, value) in rows {
            match value {
                Some(value) => records.insert(key, value),
                None => records.remove(&key),
            };
        }
        Ok(())
    }

    fn load(&self, messages: usize) -> Result<Loaded, StoreError> {
        let records = self.read();
        keyed::load(|prefix| Box::new(under(&records, prefix)), messages)
    }

    fn event(&self, id: EventId) -> Result<Option<Event>, StoreError> {
        let key = keyed::event_key(id);
        self.read()
            .get(&key)
            .map(|value| keyed::event(&key, value))
            .transpose()
    }

    fn each_event(&self, visit: &mut dyn FnMut(Event)) -> Result<(), StoreError> {
        keyed::each_event(under(&self.read(), keyed::EVENTS), visit)
    }

    fn each_received(&self, visit: &mut dyn FnMut(Received)) -> Result<(), StoreError> {
        keyed::each_received(under(&self.read(), keyed::RECEIVED), visit)
    }

    fn received_since(
        &self,
        since: DateTime<Utc>,
        visit: &mut dyn FnMut(Received),
    ) -> Result<(), StoreError> {
        keyed::received_since(under(&self.read(), keyed::RECEIVED), since, visit)
    }

    fn records(&self, after: Option<&[u8]>, at_most: usize) -> Result<Vec<Record>, StoreError> {
        let from = after.map_or(Bound::Unbounded, |key| Bound::Excluded(key.to_vec()));
        let records = self.read();
        let rows = records
            .range((from, Bound::Unbounded))
            .map(|(key, value)| Ok((key.clone(), value.clone())));
        keyed::records(rows, at_most)
    }

    fn record(&self, key: &[u8]) -> Result<Option<Record>, StoreError> {
        Ok(self.read().get(key).map(|line| Record {
            key: key.to_vec(),
            line: line.clone(),
        }))
    }
}
