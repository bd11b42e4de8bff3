//! What the engine keeps in memory. All of it can be rebuilt from the store.

use std::collections::{BTreeMap, BTreeSet, VecDeque};

use budwood_scheduler::{BlockId, BlockState, Directory, Event, EventId, MessageId, TaskKind};
use chrono::{DateTime, Utc};

use crate::{
    limits,
    message::{Outbound, SendState, Talk},
    store::Loaded,
};

/// A gateway and its id of a text.
type GatewayText = (String, String);

/// The engine's memory.
pub(super) struct World {
    /// Who there is.
    pub(super) directory: Directory,
    /// How blocks stand.
    pub(super) states: BTreeMap<BlockId, BlockState>,
    /// Conversations by number.
    pub(super) talks: BTreeMap<String, Talk>,
    /// Texts out that are not settled.
    pub(super) outbox: BTreeMap<MessageId, Outbound>,
    /// Texts that wait, by when they can be tried.
    ready: BTreeSet<(DateTime<Utc>, MessageId)>,
    /// Numbers to which a text is on its way to the gateway.
    sending_to: BTreeSet<String>,
    /// When each block is to be looked at, soonest first. Ties go by block.
    pub(super) due: BTreeSet<(DateTime<Utc>, BlockId)>,
    /// The same by block, to take an entry out.
    pub(super) due_of: BTreeMap<BlockId, DateTime<Utc>>,
    /// Texts taken in lately, so that a second delivery is known.
    pub(super) seen: BTreeSet<GatewayText>,
    /// The same, oldest first, to forget by.
    seen_order: VecDeque<GatewayText>,
    /// Facts that may not be in the store yet, and some that are.
    recent: BTreeMap<EventId, Event>,
    /// Which texts wait for which gateway id, for receipts.
    pub(super) by_gateway_id: BTreeMap<String, MessageId>,
    /// Receipts that came before the answer to sending.
    pub(super) early: BTreeMap<String, crate::gateway::Delivery>,
    next_event: u64,
    next_message: u64,
}

impl World {
    /// Memory from what the store holds.
    pub(super) fn new(loaded: Loaded) -> Self {
        let mut directory = Directory::default();
        loaded
            .persons
            .into_iter()
            .for_each(|person| directory.put_person(person));
        loaded
            .phones
            .into_iter()
            .for_each(|phone| directory.put_phone(phone));
        loaded
            .groups
            .into_iter()
            .for_each(|group| directory.put_group(group));
        loaded
            .blocks
            .into_iter()
            .for_each(|block| directory.put_block(block));
        let mut world = Self {
            directory,
            states: loaded.states.into_iter().collect(),
            talks: loaded.talks.into_iter().collect(),
            outbox: BTreeMap::new(),
            ready: BTreeSet::new(),
            sending_to: BTreeSet::new(),
            due: BTreeSet::new(),
            due_of: BTreeMap::new(),
            seen: BTreeSet::new(),
            seen_order: VecDeque::new(),
            recent: BTreeMap::new(),
            by_gateway_id: BTreeMap::new(),
            early: BTreeMap::new(),
            next_event: loaded.last_event.map_or(1, |event| event.0 + 1),
            next_message: loaded.last_message.map_or(1, |message| message.0 + 1),
        };
        for received in loaded.received.into_iter().rev() {
            if let Some(gateway_id) = received.gateway_id {
                world.remember((received.gateway, gateway_id));
            }
        }
        for outbound in loaded.outbound {
            world.put_outbound(outbound);
        }
        world
    }

    /// A new name for a fact.
    pub(super) fn event_id(&mut self) -> EventId {
        let id = EventId(self.next_event);
        self.next_event += 1;
        id
    }

    /// A new name for a message.
    pub(super) fn message_id(&mut self) -> MessageId {
        let id = MessageId(self.next_message);
        self.next_message += 1;
        id
    }

    /// Marks a text as taken in.
    pub(super) fn remember(&mut self, text: GatewayText) {
        if self.seen.insert(text.clone()) {
            self.seen_order.push_back(text);
        }
        if self.seen_order.len() > limits::RECENT_MESSAGES
            && let Some(oldest) = self.seen_order.pop_front()
        {
            self.seen.remove(&oldest);
        }
    }

    /// Keeps a fact at hand until it is surely in the store.
    pub(super) fn keep_event(&mut self, event: Event) {
        self.recent.insert(event.id, event);
        while self.recent.len() > limits::RECENT_EVENTS {
            self.recent.pop_first();
        }
    }

    /// A fact, if it is at hand.
    pub(super) fn recent_event(&self, id: EventId) -> Option<&Event> {
        self.recent.get(&id)
    }

    /// Keeps a text out in mind, or forgets it once it is settled.
    pub(super) fn put_outbound(&mut self, outbound: Outbound) {
        if let Some(old) = self.outbox.remove(&outbound.id) {
            self.ready.remove(&(old.try_at, old.id));
            if old.state == SendState::Sending {
                self.sending_to.remove(&old.to);
            }
        }
        if let Some(gateway_id) = &outbound.gateway_id {
            if outbound.state.is_final() {
                self.by_gateway_id.remove(gateway_id);
            } else {
                self.by_gateway_id.insert(gateway_id.clone(), outbound.id);
            }
        }
        if outbound.state == SendState::Ready {
            self.ready.insert((outbound.try_at, outbound.id));
        }
        if outbound.state == SendState::Sending {
            self.sending_to.insert(outbound.to.clone());
        }
        if !outbound.state.is_final() {
            self.outbox.insert(outbound.id, outbound);
        }
    }

    /// The next text that can be sent now: the one that waits longest. Two texts to one phone go
    /// one after the other, so that they arrive in order.
    pub(super) fn next_ready(&self, now: DateTime<Utc>) -> Option<&Outbound> {
        self.ready
            .iter()
            .take_while(|(try_at, _)| *try_at <= now)
            .take(limits::QUEUE_MAX)
            .filter_map(|(_, id)| self.outbox.get(id))
            .find(|outbound| !self.sending_to.contains(&outbound.to))
    }

    /// When the next text that waits can be sent.
    pub(super) fn next_try(&self) -> Option<DateTime<Utc>> {
        self.ready.first().map(|(try_at, _)| *try_at)
    }

    /// Whether a nudge for this job of this block waits to be sent.
    pub(super) fn nudge_waits(&self, wanted: BlockId, job: TaskKind) -> bool {
        self.outbox.values().any(|outbound| {
            matches!(
                outbound.purpose,
                crate::message::Purpose::Nudge { block, task, .. } if block == wanted && task == job
            ) && outbound.state == SendState::Ready
        })
    }
}
