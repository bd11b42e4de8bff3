//! Texts that wait for a person, and when their age is told next.

use std::collections::{BTreeMap, BTreeSet};

use budwood_scheduler::MessageId;
use chrono::{DateTime, Utc};

use crate::words::matter::Matter;

/// Texts that wait, oldest first.
#[derive(Default)]
pub(crate) struct Matters {
    open: BTreeMap<MessageId, Matter>,
    due: BTreeSet<(DateTime<Utc>, MessageId)>,
}

impl Matters {
    /// Puts one in, new or changed.
    pub(crate) fn put(&mut self, matter: Matter) {
        self.close(matter.message);
        if let Some(at) = matter.tell_at {
            self.due.insert((at, matter.message));
        }
        self.open.insert(matter.message, matter);
    }

    /// It waits no more.
    pub(crate) fn close(&mut self, message: MessageId) -> Option<Matter> {
        let matter = self.open.remove(&message)?;
        if let Some(at) = matter.tell_at {
            self.due.remove(&(at, message));
        }
        Some(matter)
    }

    /// All of them.
    pub(crate) fn all(&self) -> impl Iterator<Item = &Matter> {
        self.open.values()
    }

    /// When the age of one is told next.
    pub(crate) fn next_due(&self) -> Option<DateTime<Utc>> {
        self.due.first().map(|(at, _)| *at)
    }

    /// Those whose age is to be told by now.
    pub(crate) fn due(&self, now: DateTime<Utc>) -> Vec<Matter> {
        self.due
            .iter()
            .take_while(|(at, _)| *at <= now)
            .filter_map(|(_, message)| self.open.get(message).cloned())
            .collect()
    }
}
