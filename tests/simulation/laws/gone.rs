//! Who was taken out of the records: what was theirs until then is nowhere in the store.

use std::collections::BTreeSet;

use budwood::{
    store::{Change, Store},
    words::{
        erasure::{Erasure, code},
        message::{Outbound, Received, SendState},
    },
};
use budwood_scheduler::PersonId;

/// Those of whom it was written that they go.
#[derive(Clone, Default)]
pub(super) struct Gone {
    all: Vec<Erasure>,
    /// Those of whom it was written that they are gone.
    wholly: BTreeSet<PersonId>,
}

impl Gone {
    pub(super) fn take(&mut self, change: &Change) {
        self.all.extend(change.erasures.iter().cloned());
        self.wholly.extend(change.erased.iter().copied());
    }

    /// Whether a text in is written anew without what was theirs.
    pub(super) fn is_wiped(&self, received: &Received) -> bool {
        let all = self.all.iter();
        let before = all.filter(|what| received.id <= what.last);
        let is_of = |what: &Erasure| {
            let is_empty = received.from.is_empty() && received.text.is_empty();
            is_empty || received.text.contains(&code(what.person))
        };
        before.into_iter().any(is_of)
    }

    /// Whether a text out has left and lost its words.
    pub(super) fn is_wiped_out(&self, text: &Outbound) -> bool {
        let is_before = self.all.iter().any(|what| text.id <= what.last);
        let has_left = !matches!(text.state, SendState::Ready | SendState::Sending);
        is_before && has_left && text.text.is_empty()
    }

    /// The numbers that nobody else used are in no text of that time, and their names in none.
    pub(super) fn are_nowhere(&self, store: &dyn Store) {
        let whole = self.all.iter();
        for what in whole.filter(|what| self.wholly.contains(&what.person)) {
            store
                .each_received(&mut |text| {
                    if text.id <= what.last {
                        is_nowhere(what, &text.from);
                        is_nowhere(what, &text.text);
                    }
                })
                .expect("texts can be read");
            let loaded = store.load(usize::MAX).expect("a store that was written");
            for text in loaded.outbound.iter().filter(|text| text.id <= what.last) {
                is_nowhere(what, &text.to);
                is_nowhere(what, &text.text);
            }
            for person in loaded.persons {
                assert!(person.name != what.name, "a name is still there");
            }
        }
    }
}

fn is_nowhere(what: &Erasure, text: &str) {
    assert!(!text.contains(&what.name), "a name is still in {text:?}");
    let own = what.numbers.iter().filter(|used| used.since.is_none());
    for used in own {
        assert!(!text.contains(&used.number), "a number is still there");
    }
}
