//! The port to the disk.
//!
//! Synchronous, in plain types, with one writing verb: [`Store::commit`] takes one atomic change
//! and returns when it is on the disk. One thread commits; others may read meanwhile, and see a
//! change wholly or not at all. What must be atomic: the mark of a text in, its facts, the
//! changed states and the answers. Deliberately absent: anything that only one engine has, and
//! any format (that is `record`).

mod keyed;
mod line;
mod memory;
mod record;
mod sled;

use budwood_scheduler::{
    Block, BlockId, BlockState, Event, EventId, Group, MessageId, Person, PersonId, Phone,
};

use chrono::{DateTime, Utc};

pub use self::{
    line::{Record, read_line},
    memory::MemoryStore,
    sled::SledStore,
};
use crate::words::{
    erasure::Erasure,
    given::Given,
    ledger::Ledger,
    load::Load,
    matter::Matter,
    message::{Outbound, Received, ReceivedPart, Talk},
    outline::TakenOutline,
    printed::Printed,
    promise::Promise,
};

/// The newest version of records that is written. A program reads its own and all before.
pub const RECORD_VERSION: u32 = record::NEWEST;

/// Everything that one step changes.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Change {
    /// New facts.
    pub events: Vec<Event>,
    /// People, new or changed.
    pub persons: Vec<Person>,
    /// Phones, new or changed.
    pub phones: Vec<Phone>,
    /// Numbers taken out.
    pub gone_phones: Vec<String>,
    /// Groups, new or changed.
    pub groups: Vec<Group>,
    /// Blocks, new or changed.
    pub blocks: Vec<Block>,
    /// States of blocks after this step.
    pub states: Vec<(BlockId, BlockState)>,
    /// Conversations after this step, by number.
    pub talks: Vec<(String, Talk)>,
    /// Texts that came in.
    pub received: Vec<Received>,
    /// Parts of texts that wait for the others.
    pub parts: Vec<ReceivedPart>,
    /// Parts that wait no longer.
    pub gone_parts: Vec<MessageId>,
    /// Texts that go out, new or moved on.
    pub outbound: Vec<Outbound>,
    /// Texts that wait for a person, new or changed.
    pub matters: Vec<Matter>,
    /// Texts that wait no more.
    pub closed: Vec<MessageId>,
    /// Promises, new or changed.
    pub promises: Vec<Promise>,
    /// Promises that are owed no more.
    pub kept: Vec<MessageId>,
    /// Sheets that were printed.
    pub sheets: Vec<Printed>,
    /// The last list that was taken in, as far as it can be taken back; only the last of them is kept.
    pub loads: Vec<Load>,
    /// What was given to partners.
    pub givens: Vec<Given>,
    /// Outlines of blocks.
    pub outlines: Vec<TakenOutline>,
    /// People who are being taken out of the records.
    pub erasures: Vec<Erasure>,
    /// People who are wholly taken out.
    pub erased: Vec<PersonId>,
    /// What left in a month, new or changed.
    pub ledgers: Vec<Ledger>,
    /// What may be done with the store from now on.
    pub hold: Option<Hold>,
}

/// What may be done with a store. It belongs to this store alone, so that it is in no backup and
/// in no exported log.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Hold {
    /// Everything.
    #[default]
    Free,
    /// Everything but sending: it was filled from a backup or a log, and what waits in it may
    /// have been sent since. A person releases it.
    Held {
        /// When it was filled.
        since: DateTime<Utc>,
    },
    /// Nothing: records are still being put in.
    Filling,
    /// Everything again. Ids of messages go on from here, so that none is given out that was given
    /// out before the store was filled.
    Released {
        /// The next one.
        next_message: MessageId,
    },
}

impl Change {
    /// Whether nothing changes.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    /// Puts a later change behind this one. Numbers are taken out first and put in after that, so
    /// what the later change takes out must not be put in by this one.
    pub fn append(&mut self, mut later: Self) {
        if !later.gone_phones.is_empty() {
            let stays = |number: &String| !later.gone_phones.contains(number);
            self.phones.retain(|phone| stays(&phone.number));
            self.talks.retain(|(number, _)| stays(number));
        }
        self.events.append(&mut later.events);
        self.persons.append(&mut later.persons);
        self.phones.append(&mut later.phones);
        self.gone_phones.append(&mut later.gone_phones);
        self.groups.append(&mut later.groups);
        self.blocks.append(&mut later.blocks);
        self.states.append(&mut later.states);
        self.talks.append(&mut later.talks);
        self.received.append(&mut later.received);
        self.parts.append(&mut later.parts);
        self.parts
            .retain(|part| !later.gone_parts.contains(&part.id));
        self.gone_parts.append(&mut later.gone_parts);
        self.outbound.append(&mut later.outbound);
        self.matters
            .retain(|matter| !later.closed.contains(&matter.message));
        self.matters.append(&mut later.matters);
        self.closed.append(&mut later.closed);
        self.promises
            .retain(|promise| !later.kept.contains(&promise.message));
        self.promises.append(&mut later.promises);
        self.kept.append(&mut later.kept);
        self.sheets.append(&mut later.sheets);
        self.givens.append(&mut later.givens);
        self.outlines.append(&mut later.outlines);
        if !later.loads.is_empty() {
            self.loads = later.loads;
        }
        self.erasures
            .retain(|erasure| !later.erased.contains(&erasure.person));
        self.erasures.append(&mut later.erasures);
        self.erased.append(&mut later.erased);
        let is_old = |known: &Ledger| later.ledgers.iter().any(|new| new.month == known.month);
        self.ledgers.retain(|known| !is_old(known));
        self.ledgers.append(&mut later.ledgers);
        self.hold = later.hold.or(self.hold);
    }

    /// The keys of the records that it writes or takes out.
    ///
    /// # Errors
    ///
    /// When a record cannot be written.
    pub fn keys(&self) -> Result<Vec<Vec<u8>>, StoreError> {
        let rows = keyed::rows(self)?;
        Ok(rows
            .into_iter()
            .map(|(key, _)| key)
            .filter(|key| !key.starts_with(keyed::OWN))
            .collect())
    }
}

/// What the engine takes into memory when it starts.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Loaded {
    /// People.
    pub persons: Vec<Person>,
    /// Phones.
    pub phones: Vec<Phone>,
    /// Groups.
    pub groups: Vec<Group>,
    /// Blocks.
    pub blocks: Vec<Block>,
    /// States of blocks.
    pub states: Vec<(BlockId, BlockState)>,
    /// Conversations, by number.
    pub talks: Vec<(String, Talk)>,
    /// Parts of texts that wait for the others, oldest first.
    pub parts: Vec<ReceivedPart>,
    /// The last texts out, newest first.
    pub outbound: Vec<Outbound>,
    /// Texts that wait for a person.
    pub matters: Vec<Matter>,
    /// Promises that are not kept yet.
    pub promises: Vec<Promise>,
    /// Sheets that were printed.
    pub sheets: Vec<Printed>,
    /// The last list that was taken in.
    pub loads: Vec<Load>,
    /// What was given to partners.
    pub givens: Vec<Given>,
    /// Outlines of blocks.
    pub outlines: Vec<TakenOutline>,
    /// People who are being taken out of the records.
    pub erasures: Vec<Erasure>,
    /// What left, month by month, the latest last.
    pub ledgers: Vec<Ledger>,
    /// The last fact in the log.
    pub last_event: Option<EventId>,
    /// The last message in or out.
    pub last_message: Option<MessageId>,
    /// When the last fact or message came.
    pub latest: Option<DateTime<Utc>>,
    /// What may be done with the store.
    pub hold: Hold,
}

/// A store of everything that lasts.
pub trait Store: Send + Sync {
    /// Writes a change, whole or not at all, and returns when it is on the disk.
    ///
    /// # Errors
    ///
    /// When it could not be written. Then nothing more may be acknowledged.
    fn commit(&self, change: &Change) -> Result<(), StoreError>;

    /// Reads what the engine keeps in memory; of the texts out the newest `messages`, and all that
    /// may still wait or get a receipt.
    ///
    /// # Errors
    ///
    /// When a record cannot be read.
    fn load(&self, messages: usize) -> Result<Loaded, StoreError>;

    /// One fact.
    ///
    /// # Errors
    ///
    /// When the record cannot be read.
    fn event(&self, id: EventId) -> Result<Option<Event>, StoreError>;

    /// Calls `visit` with every fact, oldest first.
    ///
    /// # Errors
    ///
    /// When a record cannot be read.
    fn each_event(&self, visit: &mut dyn FnMut(Event)) -> Result<(), StoreError>;

    /// Calls `visit` with every text in, oldest first.
    ///
    /// # Errors
    ///
    /// When a record cannot be read.
    fn each_received(&self, visit: &mut dyn FnMut(Received)) -> Result<(), StoreError>;

    /// Calls `visit` with every text in since then, newest first. There may be older ones, as a clock
    /// may have jumped.
    ///
    /// # Errors
    ///
    /// When a record cannot be read.
    fn received_since(
        &self,
        since: DateTime<Utc>,
        visit: &mut dyn FnMut(Received),
    ) -> Result<(), StoreError>;

    /// The records after this key, in the order of keys, at most so many; the first ones without
    /// a key. What a store keeps about itself is left out.
    ///
    /// # Errors
    ///
    /// When the disk cannot be read.
    fn records(&self, after: Option<&[u8]>, at_most: usize) -> Result<Vec<Record>, StoreError>;

    /// The record under a key.
    ///
    /// # Errors
    ///
    /// When the disk cannot be read.
    fn record(&self, key: &[u8]) -> Result<Option<Record>, StoreError>;

    /// A text that came in, if it is there.
    ///
    /// # Errors
    ///
    /// When the record cannot be read.
    fn received(&self, id: MessageId) -> Result<Option<Received>, StoreError> {
        let key = keyed::received_key(id);
        let record = self.record(&key)?;
        record
            .map(|record| keyed::received(&key, &record.line))
            .transpose()
    }

    /// Reads everything, and counts whether as much is there as was written: damage in the middle
    /// of a store is seen by nothing else. A store that cannot lose its middle has nothing to do.
    ///
    /// # Errors
    ///
    /// When something is missing or cannot be read.
    fn verify(&self) -> Result<(), StoreError> {
        Ok(())
    }
}

/// Reads a record as it lies in a store, of whatever kind, and writes it again. Records of every
/// version ever written must come back unchanged in meaning; a test says so.
///
/// # Errors
///
/// When it is not a record, or one that this program does not know.
pub fn rewritten(record: &[u8]) -> Result<Vec<u8>, StoreError> {
    let mut change = Change::default();
    record::read_into(record, &mut change)?;
    Ok(keyed::only_row(&change)?.1)
}

/// Why the store did not do it.
#[derive(Debug, thiserror::Error)]
pub enum StoreError {
    /// Another process has it.
    #[error("the store in {0} is in use by another process: stop that one first")]
    InUse(String),
    /// It cannot be opened, or part of what was acknowledged is not in it.
    #[error(
        "the store in {0} is damaged: what was acknowledged is gone or cannot be read. Copy the \
         folder away as it is, then restore the last backup into an empty folder"
    )]
    Damaged(String),
    /// A restore or an import into it broke off.
    #[error(
        "the store is half filled: a restore or an import into it broke off. Remove its folder \
         and do it again"
    )]
    HalfFilled,
    /// There is no room to open it.
    #[error("the disk of the store in {0} is full: make room, then start again")]
    Full(String),
    /// It may not be written.
    #[error(
        "the store in {place} cannot be written: {source}. Let this program's user write there, \
         on a disk that is mounted for writing"
    )]
    NotWritable {
        /// Its folder.
        place: String,
        /// Why.
        source: std::io::Error,
    },
    /// It was written by a later version of this program.
    #[error("the store has layout {version}, which this program does not know: use the newer one")]
    Newer {
        /// The layout's version.
        version: String,
    },
    /// Disk and engine.
    #[error("the store cannot be read or written")]
    Engine(#[source] Box<dyn std::error::Error + Send + Sync>),
    /// Disk.
    #[error("the store's files cannot be read or written")]
    Disk(#[from] std::io::Error),
    /// A fact that a block's record names.
    #[error("fact {0} is gone from the store: restore the last backup into an empty folder")]
    FactGone(EventId),
    /// A record of a version or kind that this program does not know.
    #[error("record {key}: {what}; it was probably written by a newer version of this program")]
    Record {
        /// Its key, readable.
        key: String,
        /// What is wrong.
        what: String,
    },
}
