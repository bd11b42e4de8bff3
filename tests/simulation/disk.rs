//! A disk that can fail once, and remembers what was written to it.

use std::{
    io,
    sync::{Arc, Mutex, PoisonError},
};

use budwood::{
    message::Received,
    store::{Change, Loaded, MemoryStore, Record, Store, StoreError},
};
use budwood_scheduler::{Event, EventId};

/// A store that outlives its engine.
#[derive(Clone, Default)]
pub(super) struct Disk(Arc<Mutex<Inner>>);

#[derive(Default)]
struct Inner {
    store: MemoryStore,
    written: Vec<Change>,
    fails: bool,
}

impl Disk {
    /// The next write fails and leaves nothing, as when the power goes.
    pub(super) fn fail_once(&self) {
        self.with(|inner| inner.fails = true);
    }

    /// What was written since the last call. A failure that did not happen is called off.
    pub(super) fn take_written(&self) -> Vec<Change> {
        self.with(|inner| {
            inner.fails = false;
            std::mem::take(&mut inner.written)
        })
    }

    fn with<T>(&self, work: impl FnOnce(&mut Inner) -> T) -> T {
        work(&mut self.0.lock().unwrap_or_else(PoisonError::into_inner))
    }
}

impl Store for Disk {
    fn commit(&self, change: &Change) -> Result<(), StoreError> {
        self.with(|inner| {
            if std::mem::take(&mut inner.fails) {
                return Err(StoreError::Disk(io::Error::other("the power is gone")));
            }
            inner.written.push(change.clone());
            inner.store.commit(change)
        })
    }

    fn load(&self, messages: usize) -> Result<Loaded, StoreError> {
        self.with(|inner| inner.store.load(messages))
    }

    fn event(&self, id: EventId) -> Result<Option<Event>, StoreError> {
        self.with(|inner| inner.store.event(id))
    }

    fn each_event(&self, visit: &mut dyn FnMut(Event)) -> Result<(), StoreError> {
        self.with(|inner| inner.store.each_event(visit))
    }

    fn each_received(&self, visit: &mut dyn FnMut(Received)) -> Result<(), StoreError> {
        self.with(|inner| inner.store.each_received(visit))
    }

    fn records(&self, after: Option<&[u8]>, at_most: usize) -> Result<Vec<Record>, StoreError> {
        self.with(|inner| inner.store.records(after, at_most))
    }

    fn record(&self, key: &[u8]) -> Result<Option<Record>, StoreError> {
        self.with(|inner| inner.store.record(key))
    }
}
