//! Texts out that are not settled, by everything that they are looked up by.
//!
//! Each gateway has a lane of its own, so that one that takes nothing is in the way of no other.
//! Answers and notices go before nudges: somebody waits for them. Deliberately absent: whether a
//! text may go and by which gateway, which is `outbox`.

use std::collections::{BTreeMap, BTreeSet, VecDeque};

use budwood_scheduler::{BlockId, MessageId, TaskKind};
use chrono::{DateTime, TimeDelta, Utc};

use super::links::Links;
use crate::words::{
    limits,
    message::{Outbound, Purpose, SendState},
    traffic::{About, Receipt},
};

/// Texts in the order in which they may be tried.
type Queue = BTreeSet<(DateTime<Utc>, MessageId)>;

/// A gateway's name and its id of a text.
type GatewayText = (String, String);

/// Texts out that are not settled.
#[derive(Default)]
pub(crate) struct Waiting {
    texts: BTreeMap<MessageId, Kept>,
    /// Texts that are ready, by the gateway that they wait for; by none under the empty name.
    lanes: BTreeMap<String, Lane>,
    /// Nudges that are ready, by what they are about.
    nudged: BTreeSet<(BlockId, TaskKind, MessageId)>,
    /// Welcomes that have not left, by number.
    welcomes: BTreeSet<(String, MessageId)>,
    /// Numbers to which a text is on its way to the gateway.
    sending_to: BTreeSet<String>,
    /// Texts that the gateway has or may have, by when they were made.
    handed_over: Queue,
    /// The same by number.
    handed_to: BTreeMap<String, BTreeSet<MessageId>>,
    by_gateway_id: BTreeMap<GatewayText, MessageId>,
    /// Receipts that came before the answer to sending, oldest first, by gateway.
    early: BTreeMap<String, VecDeque<Receipt>>,
}

struct Kept {
    outbound: Outbound,
    lane: String,
}

/// What waits for one gateway.
#[derive(Default)]
struct Lane {
    answers: Queue,
    nudges: Queue,
    /// All of them, the oldest first.
    by_age: BTreeSet<MessageId>,
}

impl Lane {
    fn queues(&self, with_nudges: bool) -> impl Iterator<Item = &Queue> {
        let nudges = with_nudges.then_some(&self.nudges);
        [Some(&self.answers), nudges].into_iter().flatten()
    }
}

/// Texts of an old store name no gateway; their ids are kept under the empty name.
fn gateway_ids(outbound: &Outbound) -> impl Iterator<Item = GatewayText> {
    let gateway = outbound.gateway.as_deref().unwrap_or_default();
    let ids = outbound.ids.iter();
    ids.map(move |id| (gateway.to_owned(), id.clone()))
}

impl Waiting {
    /// Keeps a text in mind, or forgets it once it is settled. While it is ready it waits in this
    /// lane.
    pub(crate) fn put(&mut self, outbound: Outbound, lane: &str) {
        if let Some(old) = self.texts.remove(&outbound.id) {
            self.take_out(&old);
        }
        if outbound.state.is_final() {
            return;
        }
        for id in gateway_ids(&outbound) {
            self.by_gateway_id.insert(id, outbound.id);
        }
        let is_unsent = matches!(outbound.state, SendState::Ready | SendState::Sending);
        if matches!(outbound.purpose, Purpose::Welcome { .. }) && is_unsent {
            self.welcomes.insert((outbound.to.clone(), outbound.id));
        }
        match outbound.state {
            SendState::Ready => {
                let place = (outbound.try_at, outbound.id);
                let queues = self.lanes.entry(lane.to_owned()).or_default();
                queues.by_age.insert(outbound.id);
                if let Purpose::Nudge { block, task, .. } = outbound.purpose {
                    self.nudged.insert((block, task, outbound.id));
                }
                if outbound.purpose.is_routine() {
                    queues.nudges.insert(place);
                } else {
                    queues.answers.insert(place);
                }
            }
            SendState::Sending => {
                self.sending_to.insert(outbound.to.clone());
            }
            SendState::Sent | SendState::Unknown => {
                self.handed_over.insert((outbound.at, outbound.id));
                let to = self.handed_to.entry(outbound.to.clone()).or_default();
                to.insert(outbound.id);
            }
            SendState::Delivered
            | SendState::Failed
            | SendState::Expired
            | SendState::Cancelled => {}
        }
        let to = outbound.to.clone();
        let lane = lane.to_owned();
        self.texts.insert(outbound.id, Kept { outbound, lane });
        // Of one phone only so many, so that no phone's are forgotten for another's.
        if let Some(ids) = self.handed_to.get(&to)
            && ids.len() > limits::HANDED_OVER_OF_PHONE
            && let Some(oldest) = ids.first().copied()
        {
            self.forget(oldest);
        }
    }

    fn forget(&mut self, id: MessageId) {
        if let Some(old) = self.texts.remove(&id) {
            self.take_out(&old);
        }
    }

    fn take_out(&mut self, Kept { outbound, lane }: &Kept) {
        let place = (outbound.try_at, outbound.id);
        if let Some(queues) = self.lanes.get_mut(lane) {
            queues.answers.remove(&place);
            queues.nudges.remove(&place);
            queues.by_age.remove(&outbound.id);
        }
        self.handed_over.remove(&(outbound.at, outbound.id));
        if let Some(ids) = self.handed_to.get_mut(&outbound.to) {
            ids.remove(&outbound.id);
            if ids.is_empty() {
                self.handed_to.remove(&outbound.to);
            }
        }
        if let Purpose::Nudge { block, task, .. } = outbound.purpose {
            self.nudged.remove(&(block, task, outbound.id));
        }
        self.welcomes.remove(&(outbound.to.clone(), outbound.id));
        if outbound.state == SendState::Sending {
            self.sending_to.remove(&outbound.to);
        }
        for id in gateway_ids(outbound) {
            self.by_gateway_id.remove(&id);
        }
    }

    /// Forgets texts whose receipts will not come any more. In the store they stay as they are.
    pub(crate) fn forget_before(&mut self, now: DateTime<Utc>) {
        let long_ago = now - TimeDelta::hours(limits::RECEIPT_HOURS);
        while let Some((made, id)) = self.handed_over.first().copied()
            && made < long_ago
        {
            self.handed_over.pop_first();
            self.forget(id);
        }
    }

    /// The gateways that texts wait for; the empty name where they wait for none.
    pub(crate) fn lanes(&self) -> Vec<String> {
        self.lanes.keys().cloned().collect()
    }

    /// When the text was made that has waited longest for a gateway.
    pub(crate) fn oldest(&self, gateway: &str) -> Option<DateTime<Utc>> {
        let oldest = self.lanes.get(gateway)?.by_age.first()?;
        Some(self.get(*oldest)?.at)
    }

    /// When the answer or notice was made that has waited longest for any gateway. Reminders wait for
    /// their hour.
    pub(crate) fn oldest_answer(&self) -> Option<DateTime<Utc>> {
        let answers = self.lanes.values().flat_map(|lane| &lane.answers);
        answers.filter_map(|(_, id)| Some(self.get(*id)?.at)).min()
    }

    /// A text that is not settled.
    pub(crate) fn get(&self, id: MessageId) -> Option<&Outbound> {
        self.texts.get(&id).map(|kept| &kept.outbound)
    }

    /// The text that a receipt is about.
    pub(crate) fn named_by(&self, receipt: &Receipt) -> Option<&Outbound> {
        let id = match &receipt.about {
            About::Ours(id) => *id,
            About::Theirs(theirs) => {
                let of = |gateway: &str| {
                    let key = (gateway.to_owned(), theirs.clone());
                    self.by_gateway_id.get(&key).copied()
                };
                of(&receipt.gateway).or_else(|| of(""))?
            }
        };
        self.get(id)
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

    /// Texts that are ready and wait for this gateway.
    pub(crate) fn ready_for(&self, gateway: &str) -> Vec<Outbound> {
        let lane = self.lanes.get(gateway).into_iter();
        lane.flat_map(|lane| lane.queues(true))
            .flatten()
            .filter_map(|(_, id)| self.get(*id).cloned())
            .collect()
    }

    /// All of them.
    pub(crate) fn all(&self) -> impl Iterator<Item = &Outbound> {
        self.texts.values().map(|kept| &kept.outbound)
    }

    fn in_state(&self, chosen: impl Fn(&Outbound) -> bool) -> Vec<Outbound> {
        self.all()
            .filter(|outbound| chosen(outbound))
            .cloned()
            .collect()
    }

    /// How many texts have not left.
    pub(crate) fn unsent(&self) -> usize {
        let ready = self.lanes.values().flat_map(|lane| lane.queues(true));
        ready.map(BTreeSet::len).sum::<usize>() + self.sending_to.len()
    }

    /// The next text that can be sent by this gateway now: the one that waits longest. Two texts to
    /// one phone go one after the other, so that they arrive in order.
    pub(crate) fn next_ready(
        &self,
        gateway: &str,
        now: DateTime<Utc>,
        with_nudges: bool,
    ) -> Option<&Outbound> {
        self.lanes
            .get(gateway)?
            .queues(with_nudges)
            .find_map(|queue| {
                queue
                    .iter()
                    .take_while(|(try_at, _)| *try_at <= now)
                    .take(limits::QUEUE_MAX)
                    .filter_map(|(_, id)| self.get(*id))
                    .find(|outbound| !self.sending_to.contains(&outbound.to))
            })
    }

    /// When the next text that waits for a gateway can be sent.
    pub(crate) fn next_try(&self, links: &Links, with_nudges: bool) -> Option<DateTime<Utc>> {
        let of_lane = |(gateway, lane): (&String, &Lane)| {
            let first = lane.queues(with_nudges).filter_map(|queue| queue.first());
            let first = first.map(|(try_at, _)| *try_at).min()?;
            Some(
                links
                    .paused_until(gateway)
                    .map_or(first, |until| until.max(first)),
            )
        };
        let lanes = self.lanes.iter();
        lanes
            .filter(|(gateway, _)| !gateway.is_empty())
            .filter_map(of_lane)
            .min()
    }

    /// Whether a nudge for this job of this block waits to be sent.
    pub(crate) fn nudge_waits(&self, block: BlockId, task: TaskKind) -> bool {
        let all = (block, task, MessageId(0))..=(block, task, MessageId(u64::MAX));
        self.nudged.range(all).next().is_some()
    }

    /// Whether a welcome to this number has not left yet.
    pub(crate) fn welcome_waits(&self, number: &str) -> bool {
        let from = (number.to_owned(), MessageId(0));
        let first = self.welcomes.range(from..).next();
        first.is_some_and(|(to, _)| to == number)
    }

    /// Keeps a receipt by an id of the gateway that no answer has told yet, so many of each gateway.
    pub(crate) fn keep_early(&mut self, receipt: Receipt) {
        let early = self.early.entry(receipt.gateway.clone()).or_default();
        if early.len() >= limits::QUEUE_MAX {
            early.pop_front();
        }
        early.push_back(receipt);
    }

    /// The receipts that came before the answer which tells these ids, oldest first.
    pub(crate) fn take_early(&mut self, gateway: &str, ids: &[String]) -> Vec<Receipt> {
        let is_about = |receipt: &Receipt| {
            let About::Theirs(id) = &receipt.about else {
                return false;
            };
            ids.contains(id)
        };
        let early = self.early.remove(gateway).unwrap_or_default();
        let (about, others): (VecDeque<_>, VecDeque<_>) = early.into_iter().partition(is_about);
        if !others.is_empty() {
            self.early.insert(gateway.to_owned(), others);
        }
        Vec::from(about)
    }
}

#[cfg(test)]
mod tests;
