//! What the engine keeps in memory. All of it can be rebuilt from the store.

use std::{
    cell::OnceCell,
    collections::{BTreeMap, BTreeSet, VecDeque},
    mem,
};

use budwood_scheduler::{
    Block, BlockId, BlockState, Directory, Event, EventId, GroupId, MessageId, Person,
};
use chrono::{DateTime, TimeDelta, Utc};

use super::{
    callers::Callers, duplicates::Heard, erasures::Erasures, links::Links, matters::Matters,
    names::Rolls, parts::Parts, rations::Rations, send_queue::Waiting, snapshot::Copying,
};
use crate::{
    engine::budget::{HeldBack, Spent, Strangers},
    store::{Hold, Loaded, Store, StoreError},
    words::{
        given::Given, ledger::Ledger, limits, load::Load, message::Talk, outline::TakenOutline,
        printed::Printed, promise::Promise,
    },
};

/// The engine's memory.
pub(crate) struct World {
    /// Who there is. People and blocks are put in by [`World::put_person`] and [`World::put_block`].
    pub(crate) directory: Directory,
    /// Their names, group by group, ready for the reader.
    pub(crate) rolls: Rolls,
    /// How blocks stand.
    pub(crate) states: BTreeMap<BlockId, BlockState>,
    /// Conversations by number.
    pub(crate) talks: BTreeMap<String, Talk>,
    /// Texts out that are not settled.
    pub(crate) outbox: Waiting,
    /// Parts of texts that wait for the others.
    pub(crate) parts: Parts,
    /// Texts that wait for a person.
    pub(crate) matters: Matters,
    /// What advisers owe, by the text that promised it.
    pub(crate) promises: BTreeMap<MessageId, Promise>,
    /// Sheets that were printed, by number.
    pub(crate) sheets: BTreeMap<u32, Printed>,
    /// The last list that was taken in, as far as it can be taken back.
    pub(crate) load: Option<Load>,
    /// What was given to partners, by number.
    pub(crate) givens: BTreeMap<u32, Given>,
    /// Outlines of blocks.
    pub(crate) outlines: BTreeMap<BlockId, TakenOutline>,
    /// When the last welcomes were made, oldest first.
    pub(crate) welcomed: VecDeque<DateTime<Utc>>,
    /// Who is being taken out of the records.
    pub(crate) erasures: Erasures,
    /// Which gateways can be reached.
    pub(crate) links: Links,
    /// When each block is to be looked at, soonest first. Ties go by block.
    pub(crate) due: BTreeSet<(DateTime<Utc>, BlockId)>,
    /// The same by block, to take an entry out.
    pub(crate) due_of: BTreeMap<BlockId, DateTime<Utc>>,
    /// Texts taken in lately, so that a second delivery is known.
    pub(crate) heard: Heard,
    /// Facts that may not be in the store yet, and some that are.
    recent: BTreeMap<EventId, Event>,
    /// What left by each gateway in this minute and on this day.
    pub(crate) rations: Rations,
    /// What left today.
    pub(crate) spent: Spent,
    /// What left in the month of the last text that did.
    pub(crate) ledger: Ledger,
    /// Who asked for a code to look at pages.
    pub(crate) callers: Callers,
    /// Whether the disk of the store has little room left.
    pub(crate) is_disk_low: bool,
    /// Numbers that are not on the list and were answered.
    pub(crate) strangers: Strangers,
    /// What was not said, since the start.
    pub(crate) held_back: HeldBack,
    /// Deeds that wrong codes locked, since the start.
    pub(crate) locked: u64,
    /// Why a fact could not be read, which ends the step.
    pub(crate) unread: OnceCell<StoreError>,
    /// A copy of the store that is being taken.
    pub(crate) copying: Option<Copying>,
    /// Since when nothing may be sent: the store was filled, and nobody released it yet.
    pub(crate) held_since: Option<DateTime<Utc>>,
    /// Whether nudges wait because the computer's clock cannot be believed.
    pub(crate) nudges_wait: bool,
    /// When the last fact or message came: time does not go back behind it.
    pub(crate) latest: DateTime<Utc>,
    next_event: u64,
    next_message: u64,
}

/// People, phones, groups and blocks, which move out of what was loaded.
fn directory(loaded: &mut Loaded) -> Directory {
    let mut directory = Directory::default();
    for person in mem::take(&mut loaded.persons) {
        directory.put_person(person);
    }
    for phone in mem::take(&mut loaded.phones) {
        directory.put_phone(phone);
    }
    for group in mem::take(&mut loaded.groups) {
        directory.put_group(group);
    }
    for block in mem::take(&mut loaded.blocks) {
        directory.put_block(block);
    }
    directory
}

/// Records by their key.
fn by<K: Ord, V>(records: Vec<V>, key: impl Fn(&V) -> K) -> BTreeMap<K, V> {
    let keyed = |record| (key(&record), record);
    records.into_iter().map(keyed).collect()
}

impl World {
    /// Memory from what the store holds.
    pub(crate) fn new(mut loaded: Loaded) -> Self {
        let next_message = next_message(loaded.last_message, loaded.hold);
        let held_since = match loaded.hold {
            Hold::Held { since } => Some(since),
            Hold::Free | Hold::Filling | Hold::Released { .. } => None,
        };
        let directory = directory(&mut loaded);
        let latest = loaded.latest.unwrap_or_default();
        let mut world = Self {
            directory,
            rolls: Rolls::default(),
            states: loaded.states.into_iter().collect(),
            talks: loaded.talks.into_iter().collect(),
            outbox: Waiting::default(),
            welcomed: VecDeque::new(),
            parts: Parts::default(),
            matters: Matters::default(),
            promises: by(loaded.promises, |promise| promise.message),
            sheets: by(loaded.sheets, |sheet| sheet.number),
            load: loaded.loads.pop(),
            givens: by(loaded.givens, |given| given.number),
            outlines: by(loaded.outlines, |outline| outline.block),
            erasures: Erasures::default(),
            links: Links::default(),
            due: BTreeSet::new(),
            due_of: BTreeMap::new(),
            heard: Heard::default(),
            recent: BTreeMap::new(),
            rations: Rations::default(),
            spent: Spent::default(),
            ledger: loaded.ledgers.pop().unwrap_or_else(|| Ledger::of(latest)),
            callers: Callers::default(),
            is_disk_low: false,
            strangers: Strangers::default(),
            held_back: HeldBack::default(),
            locked: 0,
            unread: OnceCell::new(),
            copying: None,
            held_since,
            nudges_wait: false,
            latest,
            next_event: loaded.last_event.map_or(1, |event| event.0 + 1),
            next_message,
        };
        world.recall_welcomes();
        for part in loaded.parts {
            let is_known = world.directory.phone(&part.from).is_some();
            world.heard.recall_part(&part, is_known);
            world.parts.put(part);
        }
        for matter in loaded.matters {
            world.matters.put(matter);
        }
        for outbound in loaded.outbound.into_iter().rev() {
            if let Some(sent_at) = outbound.sent_at {
                world.spent.add(outbound.parts, sent_at);
                if let Some(gateway) = &outbound.gateway {
                    world.links.took(gateway, sent_at);
                    world.rations.add(gateway, outbound.parts, sent_at);
                }
            }
            world.outbox.put(outbound, "");
        }
        for erasure in loaded.erasures {
            world.erasures.begin(erasure, world.outbox.all());
        }
        world.forget_strangers();
        world
    }

    /// Who is not on the list has no conversation.
    fn forget_strangers(&mut self) {
        let directory = &self.directory;
        self.talks
            .retain(|number, _| directory.phone(number).is_some());
    }

    fn recall_welcomes(&mut self) {
        let mut welcomed: Vec<DateTime<Utc>> = self
            .talks
            .values()
            .filter_map(|talk| talk.welcomed_at)
            .collect();
        welcomed.sort_unstable();
        for at in welcomed {
            self.keep_welcome(at);
        }
    }

    /// Keeps in mind which texts came before this start.
    pub(crate) fn recall(&mut self, store: &dyn Store) -> Result<(), StoreError> {
        let since = self.latest - TimeDelta::days(limits::HEARD_DAYS);
        store.received_since(since, &mut |received| {
            let is_known = self.directory.phone(&received.from).is_some();
            self.links.heard(&received.gateway, received.at);
            self.heard.recall(&received, is_known);
            if !is_known {
                self.strangers.recall(&received.from, received.at);
            }
        })
    }

    /// Puts a person in, new or changed.
    pub(crate) fn put_person(&mut self, person: Person) {
        let known = self.directory.person(person.id);
        let same_name =
            known.is_some_and(|known| known.group == person.group && known.name == person.name);
        if !same_name {
            self.rolls.forget(known.and_then(|known| known.group));
            self.rolls.forget(person.group);
        }
        self.directory.put_person(person);
    }

    /// Puts a block in, new or changed.
    pub(crate) fn put_block(&mut self, block: Block) {
        let group = |owner| self.directory.person(owner).and_then(|owner| owner.group);
        let before = self
            .directory
            .block(block.id)
            .and_then(|known| group(known.owner));
        let now = group(block.owner);
        self.rolls.forget(before);
        self.rolls.forget(now);
        self.directory.put_block(block);
    }

    /// Makes the names of a group ready for the reader.
    pub(crate) fn make_names_ready(&mut self, group: GroupId) {
        self.rolls.make_ready(&self.directory, group);
    }

    /// Keeps in mind when to look at a block next, if ever.
    pub(crate) fn look_at(&mut self, block: BlockId, at: Option<DateTime<Utc>>) {
        if let Some(old) = self.due_of.remove(&block) {
            self.due.remove(&(old, block));
        }
        if let Some(at) = at {
            self.due.insert((at, block));
            self.due_of.insert(block, at);
        }
    }

    /// Keeps a welcome in mind for as long as it can be one of today's.
    pub(crate) fn keep_welcome(&mut self, at: DateTime<Utc>) {
        self.welcomed.push_back(at);
        let two_days_ago = at - TimeDelta::days(2);
        while self.welcomed.front().is_some_and(|old| *old < two_days_ago) {
            self.welcomed.pop_front();
        }
    }

    /// A new name for a fact.
    pub(crate) fn event_id(&mut self) -> EventId {
        let id = EventId(self.next_event);
        self.next_event += 1;
        id
    }

    /// The name that the next fact will get.
    pub(crate) const fn next_event(&self) -> EventId {
        EventId(self.next_event)
    }

    /// A new name for a message.
    pub(crate) fn message_id(&mut self) -> MessageId {
        let id = MessageId(self.next_message);
        self.next_message += 1;
        id
    }

    /// The name that the next message will get.
    pub(crate) const fn next_message(&self) -> MessageId {
        MessageId(self.next_message)
    }

    /// Keeps a fact at hand until it is surely in the store.
    pub(crate) fn keep_event(&mut self, event: Event) {
        self.recent.insert(event.id, event);
        while self.recent.len() > limits::RECENT_EVENTS {
            self.recent.pop_first();
        }
    }

    /// A fact, if it is at hand.
    pub(crate) fn recent_event(&self, id: EventId) -> Option<&Event> {
        self.recent.get(&id)
    }
}

/// After a restore ids go on where no store before can have come to: at the time of the restore
/// in milliseconds. Fewer texts than that were ever sent, and the same backup restored twice gives
/// other ids the second time. Should the clock have been wrong, a gap must do.
fn next_message(last: Option<MessageId>, hold: Hold) -> u64 {
    let next = last.map_or(1, |last| last.0 + 1);
    match hold {
        Hold::Free | Hold::Filling => next,
        Hold::Released { next_message } => next.max(next_message.0),
        Hold::Held { since } => {
            let millis = u64::try_from(since.timestamp_millis()).unwrap_or_default();
            millis.max(next + limits::RESTORE_GAP)
        }
    }
}
