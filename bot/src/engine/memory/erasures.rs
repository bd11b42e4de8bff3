//! Who is being taken out of the records, and how far that has come.
//!
//! How far is not stored: whoever starts again begins at the first record, and what was done stays
//! done.

use std::collections::{BTreeMap, BTreeSet};

use budwood_scheduler::{MessageId, PersonId};

use crate::words::{
    erasure::Erasure,
    message::{Outbound, SendState},
};

/// All that are not done.
#[derive(Default)]
pub(crate) struct Erasures(BTreeMap<PersonId, Job>);

/// One of them.
pub(crate) struct Job {
    pub(crate) what: Erasure,
    /// The last key of the store that it came to.
    pub(crate) at: Option<Vec<u8>>,
    /// Whether there is no record behind it.
    pub(crate) is_through: bool,
    /// Texts that tell of them and have not left yet: they are wiped when they have.
    waits_for: BTreeSet<MessageId>,
}

impl Erasures {
    /// Begins one. These texts are not settled.
    pub(crate) fn begin<'a>(
        &mut self,
        what: Erasure,
        unsettled: impl Iterator<Item = &'a Outbound>,
    ) {
        let told = unsettled.filter(|text| tells_of(&what, text) && is_on_its_way(text));
        let waits_for = told.map(|text| text.id).collect();
        let job = Job {
            waits_for,
            at: None,
            is_through: false,
            what,
        };
        self.0.insert(job.what.person, job);
    }

    /// The first that is not through the store.
    pub(crate) fn unfinished(&mut self) -> Option<&mut Job> {
        self.0.values_mut().find(|job| !job.is_through)
    }

    /// Whether there is one that is not through the store.
    pub(crate) fn are_busy(&self) -> bool {
        self.0.values().any(|job| !job.is_through)
    }

    /// A text out as it may be kept: one that tells of somebody who is erased loses its words, and
    /// theirs the number too, as soon as it has left.
    pub(crate) fn wiped(&mut self, mut outbound: Outbound) -> Outbound {
        let is_on_its_way = is_on_its_way(&outbound);
        for job in self.0.values_mut() {
            if !tells_of(&job.what, &outbound) {
                continue;
            }
            if is_on_its_way {
                job.waits_for.insert(outbound.id);
            } else {
                job.waits_for.remove(&outbound.id);
                outbound = without_words(&job.what, outbound);
            }
        }
        outbound
    }

    /// Forgets those that are done, and tells of whom they were.
    pub(crate) fn take_done(&mut self) -> Vec<PersonId> {
        let is_done = |job: &Job| job.is_through && job.waits_for.is_empty();
        self.0
            .extract_if(.., |_, job| is_done(job))
            .map(|(person, _)| person)
            .collect()
    }
}

/// Whether a text out is to them, or names them.
pub(crate) fn tells_of(what: &Erasure, outbound: &Outbound) -> bool {
    let is_to_them = what.is_theirs(&outbound.to, outbound.at);
    outbound.id <= what.last && (is_to_them || what.is_named_in(&outbound.text))
}

/// Whether a text must still be known by whoever sends it.
pub(crate) const fn is_on_its_way(outbound: &Outbound) -> bool {
    matches!(outbound.state, SendState::Ready | SendState::Sending)
}

/// A text out that tells of them, without what it says. The number goes unless others use it.
pub(crate) fn without_words(what: &Erasure, outbound: Outbound) -> Outbound {
    let is_to_them = what.is_theirs(&outbound.to, outbound.at);
    Outbound {
        to: if is_to_them {
            String::new()
        } else {
            outbound.to
        },
        text: String::new(),
        ..outbound
    }
}
