//! Texts out that are not settled, by everything that they are looked up by.
//!
//! Answers and notices go before nudges: somebody waits for them. Deliberately absent: whether a
//! text may go, which is `outbox`.

use std::collections::{BTreeMap, BTreeSet, VecDeque};

use budwood_scheduler::{BlockId, MessageId, TaskKind};
use chrono::{DateTime, TimeDelta, Utc};

use crate::words::{
    limits,
    message::{Outbound, Purpose, SendState},
    traffic::Delivery,
};

/// Texts in the order in which they may be tried.
type Queue = BTreeSet<(DateTime<Utc>, MessageId)>;

/// Texts out that are not settled.
#[derive(Default)]
pub(crate) struct Waiting {
    texts: BTreeMap<MessageId, Outbound>,
    /// Answers and notices that are ready.
    answers: Queue,
    /// Nudges that are ready.
    nudges: Queue,
    /// The same by what they are about.
    nudged: BTreeSet<(BlockId, TaskKind, MessageId)>,
    /// Numbers to which a text is on its way to the gateway.
    sending_to: BTreeSet<String>,
    /// Texts that the gateway has or may have, by when they were made.
    handed_over: Queue,
    by_gateway_id: BTreeMap<String, MessageId>,
    /// Receipts that came before the answer to sending, oldest first.
    early: VecDeque<(String, Delivery)>,
}

impl Waiting {
    /// Keeps a text in mind, or forgets it once it is settled.
    pub(crate) fn put(&mut self, outbound: Outbound) {
        if let Some(old) = self.texts.remove(&outbound.id) {
            self.take_out(&old);
        }
        if outbound.state.is_final() {
            return;
        }
        if let Some(gateway_id) = &outbound.gateway_id {
            self.by_gateway_id.insert(gateway_id.clone(), outbound.id);
        }
        match outbound.state {
            SendState::Ready => {
                let place = (outbound.try_at, outbound.id);
                if let Purpose::Nudge { block, task, .. } = outbound.purpose {
                    self.nudges.insert(place);
                    self.nudged.insert((block, task, outbound.id));
                } else {
                    self.answers.insert(place);
                }
            }
            SendState::Sending => {
                self.sending_to.insert(outbound.to.clone());
            }
            SendState::Sent | SendState::Unknown => {
                self.handed_over.insert((outbound.at, outbound.id));
            }
            SendState::Delivered
            | SendState::Failed
            | SendState::Expired
            | SendState::Cancelled => {}
        }
        self.texts.insert(outbound.id, outbound);
    }

    fn take_out(&mut self, old: &Outbound) {
        let place = (old.try_at, old.id);
        self.answers.remove(&place);
        self.nudges.remove(&place);
        self.handed_over.remove(&(old.at, old.id));
        if let Purpose::Nudge { block, task, .. } = old.purpose {
            self.nudged.remove(&(block, task, old.id));
        }
        if old.state == SendState::Sending {
            self.sending_to.remove(&old.to);
        }
        if let Some(gateway_id) = &old.gateway_id {
            self.by_gateway_id.remove(gateway_id);
        }
    }

    /// Forgets texts whose receipts will not come any more. In the store they stay as they are.
    pub(crate) fn forget_before(&mut self, now: DateTime<Utc>) {
        let long_ago = now - TimeDelta::hours(limits::RECEIPT_HOURS);
        while let Some((made, id)) = self.handed_over.first().copied()
            && (made < long_ago || self.handed_over.len() > limits::RECENT_MESSAGES)
        {
            self.handed_over.pop_first();
            if let Some(old) = self.texts.remove(&id) {
                self.take_out(&old);
            }
        }
    }

    /// A text that is not settled.
    pub(crate) fn get(&self, id: MessageId) -> Option<&Outbound> {
        self.texts.get(&id)
    }

    /// The text to which a gateway gave this id.
    pub(crate) fn by_gateway_id(&self, gateway_id: &str) -> Option<MessageId> {
        self.by_gateway_id.get(gateway_id).copied()
    }

    /// Texts to this number that have not left.
    pub(crate) fn unsent_to(&self, number: &str) -> Vec<Outbound> {
        self.in_state(|outbound| {
            outbound.to == number && matches!(outbound.state, SendState::Ready | SendState::Sending)
        })
    }

    /// Texts that were being sent.
    pub(crate) fn sending(&self) -> Vec<Outbound> {
        self.in_state(|outbound| outbound.state == SendState::Sending)
    }

    fn in_state(&self, chosen: impl Fn(&Outbound) -> bool) -> Vec<Outbound> {
        self.texts
            .values()
            .filter(|outbound| chosen(outbound))
            .cloned()
            .collect()
    }

    /// How many texts have not left.
    pub(crate) fn unsent(&self) -> usize {
        self.answers.len() + self.nudges.len() + self.sending_to.len()
    }

    /// The next text that can be sent now: the one that waits longest. Two texts to one phone go
    /// one after the other, so that they arrive in order.
    pub(crate) fn next_ready(&self, now: DateTime<Utc>, with_nudges: bool) -> Option<&Outbound> {
        self.queues(with_nudges).find_map(|queue| {
            queue
                .iter()
                .take_while(|(try_at, _)| *try_at <= now)
                .take(limits::QUEUE_MAX)
                .filter_map(|(_, id)| self.texts.get(id))
                .find(|outbound| !self.sending_to.contains(&outbound.to))
        })
    }

    /// When the next text that waits can be sent.
    pub(crate) fn next_try(&self, with_nudges: bool) -> Option<DateTime<Utc>> {
        self.queues(with_nudges)
            .filter_map(|queue| queue.first())
            .map(|(try_at, _)| *try_at)
            .min()
    }

    fn queues(&self, with_nudges: bool) -> impl Iterator<Item = &Queue> {
        let nudges = with_nudges.then_some(&self.nudges);
        [Some(&self.answers), nudges].into_iter().flatten()
    }

    /// Whether a nudge for this job of this block waits to be sent.
    pub(crate) fn nudge_waits(&self, block: BlockId, task: TaskKind) -> bool {
        let all = (block, task, MessageId(0))..=(block, task, MessageId(u64::MAX));
        self.nudged.range(all).next().is_some()
    }

    /// Keeps a receipt for a text that no answer has named yet.
    pub(crate) fn keep_early(&mut self, gateway_id: String, delivery: Delivery) {
        if self.early.len() >= limits::QUEUE_MAX {
            self.early.pop_front();
        }
        self.early.push_back((gateway_id, delivery));
    }

    /// The last receipt that came before the answer which names this id.
    pub(crate) fn take_early(&mut self, gateway_id: &str) -> Option<Delivery> {
        let last = self
            .early
            .iter()
            .rev()
            .find(|(id, _)| id == gateway_id)
            .map(|(_, delivery)| *delivery);
        self.early.retain(|(id, _)| id != gateway_id);
        last
    }
}
