//! What the last list of people and blocks wrote, so that it can be taken back.

use budwood_scheduler::{Block, EventId, Group, Person, PersonId, Phone};
use chrono::{DateTime, Utc};

/// A list that was taken in.
#[derive(Clone, Debug, PartialEq)]
pub struct Load {
    /// When.
    pub at: DateTime<Utc>,
    /// The first fact after those of the list: from here on others may have built on them.
    pub next: EventId,
    /// The facts that it told.
    pub facts: Vec<EventId>,
    /// Groups that it made or changed.
    pub groups: Vec<Was<Group>>,
    /// People that it made or changed.
    pub persons: Vec<Was<Person>>,
    /// Phones that it made or changed.
    pub phones: Vec<Was<Phone>>,
    /// Blocks that it made or changed.
    pub blocks: Vec<Was<Block>>,
}

/// Something before and after the list.
#[derive(Clone, Debug, PartialEq)]
pub struct Was<T> {
    /// As it was; none when the list made it.
    pub before: Option<T>,
    /// As the list left it.
    pub after: T,
}

impl Load {
    /// Whether nothing of it can be taken back any more.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.facts.is_empty()
            && self.groups.is_empty()
            && self.persons.is_empty()
            && self.phones.is_empty()
            && self.blocks.is_empty()
    }

    /// Forgets what it holds; the moment stays.
    #[must_use]
    pub const fn emptied(&self) -> Self {
        Self {
            at: self.at,
            next: self.next,
            facts: Vec::new(),
            groups: Vec::new(),
            persons: Vec::new(),
            phones: Vec::new(),
            blocks: Vec::new(),
        }
    }

    /// Without the name and the numbers of somebody who is taken out of the records; none where
    /// it does not know them.
    #[must_use]
    pub fn without(&self, person: PersonId) -> Option<Self> {
        let is_theirs = |phone: &Was<Phone>| {
            let links = phone.before.iter().chain([&phone.after]);
            let mut links = links.flat_map(|phone| &phone.links);
            links.any(|link| link.person == person)
        };
        let mut kept = self.clone();
        // Why others are left in peace may name them.
        let is_told_of = |known: &Person| known.hold.is_some();
        kept.persons.retain(|was| {
            let mut known = was.before.iter().chain([&was.after]);
            was.after.id != person && !known.any(is_told_of)
        });
        kept.phones.retain(|was| !is_theirs(was));
        (kept != *self).then_some(kept)
    }
}
