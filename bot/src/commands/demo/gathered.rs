//! A store that writes many changes at once.
//!
//! The service groups what its clients wait for into one write; in the demo nobody waits, so a
//! fuller group is written. Whatever is not written yet, the engine still has at hand
//! ([`limits::RECENT_EVENTS`] is more than one group), so reading goes to the store behind.

use std::sync::{Mutex, MutexGuard, PoisonError};

use budwood_scheduler::{Event, EventId};
use chrono::{DateTime, Utc};

use crate::{
    store::{Change, Loaded, Record, Store, StoreError},
    words::{limits, message::Received},
};

/// A store and the changes that wait to be written.
pub(super) struct Gathered<S> {
    store: S,
    waiting: Mutex<Waiting>,
}

#[derive(Default)]
struct Waiting {
    change: Change,
    changes: usize,
}

impl<S: Store> Gathered<S> {
    /// In front of this store.
    pub(super) fn new(store: S) -> Self {
        Self {
            store,
            waiting: Mutex::default(),
        }
    }

    fn waiting(&self) -> MutexGuard<'_, Waiting> {
        self.waiting.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl<S: Store> Store for Gathered<S> {
    fn commit(&self, change: &Change) -> Result<(), StoreError> {
        let mut waiting = self.waiting();
        waiting.change.append(change.clone());
        waiting.changes += 1;
        if waiting.changes >= limits::BATCH_MAX {
            self.store.commit(&std::mem::take(&mut *waiting).change)?;
        }
        Ok(())
    }

    fn load(&self, messages: usize) -> Result<Loaded, StoreError> {
        self.store.load(messages)
    }

    fn event(&self, id: EventId) -> Result<Option<Event>, StoreError> {
        self.store.event(id)
    }

    fn each_event(&self, visit: &mut dyn FnMut(Event)) -> Result<(), StoreError> {
        self.store.each_event(visit)?;
        self.waiting().change.events.iter().cloned().for_each(visit);
        Ok(())
    }

    fn each_received(&self, visit: &mut dyn FnMut(Received)) -> Result<(), StoreError> {
        self.store.each_received(visit)?;
        self.waiting()
            .change
            .received
            .iter()
            .cloned()
            .for_each(visit);
        Ok(())
    }

    fn received_since(
        &self,
        since: DateTime<Utc>,
        visit: &mut dyn FnMut(Received),
    ) -> Result<(), StoreError> {
        self.waiting()
            .change
            .received
            .iter()
            .rev()
            .filter(|text| text.at >= since)
            .cloned()
            .for_each(&mut *visit);
        self.store.received_since(since, visit)
    }

    /// Only what is written: nobody copies the demo's store while it plays.
    fn records(&self, after: Option<&[u8]>, at_most: usize) -> Result<Vec<Record>, StoreError> {
        self.store.records(after, at_most)
    }

    fn record(&self, key: &[u8]) -> Result<Option<Record>, StoreError> {
        self.store.record(key)
    }
}
