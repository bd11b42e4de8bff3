//! What waits to be sent: asked again at the moment of sending, tried again, settled.
//!
//! States move forward only. A text whose sending was cut off is unknown, not failed, and is
//! tried again only through the same gateway, and only if that knows a second try of the same
//! text. A text that no gateway has may leave by any. A text that the gateway has and for which no
//! receipt ever comes stays `sent`: nobody knows more.

use std::time::Duration;

use budwood_scheduler::MessageId;
use chrono::{DateTime, TimeDelta, Utc};

use super::may_leave::Verdict;
use crate::{
    engine::{outcome::Outcome, step::Step},
    store::Hold,
    words::{
        limits,
        message::{Outbound, Purpose, SendState, Talk},
        traffic::{About, COSTLY, Delivery, Link, Outgoing, Receipt, SendOutcome, Whose},
    },
};

impl Step<'_> {
    /// At the start: each text that is ready finds its way, and one that was being sent when the
    /// program stopped may have been.
    pub(crate) fn settle_open_sends(&mut self) {
        for cut_off in self.world.outbox.sending() {
            let unclear = self.after_no_answer(cut_off, |_, outbound| outbound);
            self.put_outbound(unclear);
        }
        for ready in self.world.outbox.ready_for("") {
            let left_by = ready.gateway.as_deref().filter(|_| ready.sent_at.is_some());
            if left_by.is_some_and(|gateway| self.setup.ways.get(gateway).is_none()) {
                // The gateway that may have it is no more, so nobody can try again.
                let state = SendState::Unknown;
                self.put_outbound(Outbound { state, ..ready });
            } else {
                self.find_way(ready);
            }
        }
    }

    /// Puts a text that is ready into the lane of a gateway. Nothing of it is stored.
    ///
    /// No text has to wait for longer than a day without being asked again, so a moment further
    /// ahead was written by a clock that was wrong: it counts as now.
    fn find_way(&mut self, ready: Outbound) {
        let is_far = ready.try_at > self.now + TimeDelta::hours(limits::NOT_BEFORE_HOURS);
        let try_at = if is_far { self.now } else { ready.try_at };
        let lane = self.lane(&ready);
        self.world.outbox.put(Outbound { try_at, ..ready }, &lane);
    }

    /// A gateway tells how its line is.
    pub(crate) fn link(&mut self, gateway: &str, link: &Link) {
        self.world.links.told(gateway, link);
        self.leave_by_others(gateway);
    }

    /// What waits for a gateway that is out goes by another one.
    fn leave_by_others(&mut self, gateway: &str) {
        if self.world.links.is_out(gateway, self.now) {
            for ready in self.world.outbox.ready_for(gateway) {
                self.find_way(ready);
            }
        }
    }

    /// A phone whose last text lies ahead got it by a clock that was wrong. It rests from now on,
    /// and not from then.
    pub(crate) fn no_rest_ahead(&mut self) {
        let now = self.now;
        let is_ahead = |talk: &Talk| talk.routine_at.is_some_and(|at| at > now);
        let talks = self.world.talks.iter();
        let ahead: Vec<String> = talks
            .filter(|(_, talk)| is_ahead(talk))
            .map(|(number, _)| number.clone())
            .collect();
        for number in ahead {
            self.talk(&number).routine_at = Some(now);
        }
    }

    /// A person says that texts may leave again after the store was filled. What is too old by
    /// then is dropped when its turn comes.
    pub(crate) fn release(&mut self) {
        // The clock may have been wrong until now, and everything planned by it.
        self.no_rest_ahead();
        for lane in self.world.outbox.lanes() {
            for ready in self.world.outbox.ready_for(&lane) {
                self.find_way(ready);
            }
        }
        self.plan_all();
        let was_held = self.world.held_since.take().is_some();
        if was_held {
            let next_message = self.world.next_message();
            self.change.hold = Some(Hold::Released { next_message });
        }
        self.told.outcome = Some(if was_held {
            Outcome::Released
        } else {
            Outcome::WasNotHeld
        });
    }

    /// A gateway wants its next text. Each is asked again whether it may still go.
    pub(crate) fn claim_next(&mut self, gateway: &str) {
        let is_paused = self.world.links.is_paused(gateway, self.now);
        if self.world.held_since.is_some() || is_paused {
            return;
        }
        let with_nudges = !self.world.nudges_wait;
        let next = |step: &Self| {
            let outbox = &step.world.outbox;
            outbox.next_ready(gateway, step.now, with_nudges).cloned()
        };
        while let Some(outbound) = next(self) {
            match self.verdict(&outbound) {
                Verdict::Go => return self.hand_if_within(outbound, gateway),
                Verdict::Wait(try_at) => self.put_outbound(Outbound { try_at, ..outbound }),
                Verdict::Drop(state) => {
                    if matches!(outbound.purpose, Purpose::Welcome { .. }) {
                        // It never left, so the phone is as new as before.
                        self.talk(&outbound.to).welcomed_at = None;
                    }
                    self.put_outbound(Outbound { state, ..outbound });
                }
            }
        }
    }

    /// Where a gateway has sent all that it may, the text waits or finds another.
    fn hand_if_within(&mut self, outbound: Outbound, gateway: &str) {
        let ration = self.setup.ways.get(gateway).map(|way| way.ration);
        let rations = &self.world.rations;
        match rations.over(
            gateway,
            ration.unwrap_or_default(),
            outbound.parts,
            self.now,
        ) {
            None => self.hand_to_gateway(outbound, gateway),
            Some(until) => {
                self.world.links.full(gateway, until);
                self.leave_by_others(gateway);
            }
        }
    }

    fn hand_to_gateway(&mut self, outbound: Outbound, gateway: &str) {
        self.told.send = Some(Outgoing {
            id: outbound.id,
            to: outbound.to.clone(),
            text: outbound.text.clone(),
            expires_at: outbound.expires_at,
        });
        // The phone rests from the day on which the text may have come, not from the day on which
        // it was made.
        let now = self.now;
        match outbound.purpose {
            Purpose::Nudge { .. } => self.talk(&outbound.to).routine_at = Some(now),
            Purpose::Welcome { .. } => self.talk(&outbound.to).welcomed_at = Some(now),
            Purpose::Answer { .. }
            | Purpose::Notice { .. }
            | Purpose::Announcement { .. }
            | Purpose::Service { .. } => {}
        }
        self.world.spent.add(outbound.parts, self.now);
        self.world.rations.add(gateway, outbound.parts, self.now);
        self.put_outbound(Outbound {
            state: SendState::Sending,
            gateway: Some(gateway.to_owned()),
            tries: outbound.tries.saturating_add(1),
            ..outbound
        });
    }

    /// Nothing that waits may leave for this number any more. What is on its way to the gateway
    /// cannot be called back, but it is not tried again.
    pub(crate) fn cancel_waiting(&mut self, number: &str) {
        for outbound in self.world.outbox.unsent_to(number) {
            let cancelled = if outbound.state == SendState::Sending {
                Outbound {
                    expires_at: self.now,
                    ..outbound
                }
            } else {
                Outbound {
                    state: SendState::Cancelled,
                    ..outbound
                }
            };
            self.put_outbound(cancelled);
        }
    }

    /// What became of a try.
    pub(crate) fn tried(&mut self, id: MessageId, outcome: SendOutcome) {
        let Some(outbound) = self.world.outbox.get(id).cloned() else {
            return;
        };
        let gateway = outbound.gateway.clone().unwrap_or_default();
        // A receipt that came before the answer has settled what the answer could say.
        let is_open = outbound.state == SendState::Sending;
        match outcome {
            SendOutcome::Accepted { ids } => {
                self.world.links.passed(&gateway).texts_out += 1;
                self.world.links.took(&gateway, self.now);
                self.accepted(outbound, &gateway, ids);
            }
            SendOutcome::Wait {
                whose: whose @ (Whose::Gateway | Whose::SetUp),
                after,
                why,
            } => {
                self.world.links.refused(&gateway, whose, why);
                let until = self.world.links.pause(&gateway, self.now, span(after));
                if is_open {
                    self.put_outbound(Outbound {
                        tries: outbound.tries.saturating_sub(1),
                        ..to_wait(outbound, until)
                    });
                }
                self.leave_by_others(&gateway);
            }
            SendOutcome::Wait { whose, after, why } => {
                self.world.links.works(&gateway);
                self.world.links.refused(&gateway, whose, why);
                if is_open {
                    let later = self.again(outbound, after, SendState::Failed);
                    self.put_outbound(later);
                }
            }
            SendOutcome::Refused { code, why } => {
                self.world.links.passed(&gateway).failed += 1;
                // What no gateway was asked says nothing of this one.
                if code.as_deref() == Some(COSTLY) {
                    self.world.held_back.costly += 1;
                } else {
                    self.world.links.works(&gateway);
                    self.world.links.refused(&gateway, Whose::Text, why);
                }
                if is_open {
                    self.put_outbound(Outbound {
                        state: SendState::Failed,
                        code,
                        ..outbound
                    });
                }
            }
            SendOutcome::Unknown { why } => {
                self.world.links.passed(&gateway).failed += 1;
                self.world.links.refused(&gateway, Whose::Text, why);
                if is_open {
                    let unclear = self.after_no_answer(outbound, |step, outbound| {
                        step.again(outbound, None, SendState::Unknown)
                    });
                    self.put_outbound(unclear);
                }
            }
        }
    }

    fn accepted(&mut self, outbound: Outbound, gateway: &str, ids: Vec<String>) {
        let ids = if ids.is_empty() {
            outbound.ids.clone()
        } else {
            ids
        };
        let outbound = self.counted(outbound);
        self.put_outbound(Outbound {
            state: outbound.state.max(SendState::Sent),
            ids: ids.clone(),
            ..outbound
        });
        for early in self.world.outbox.take_early(gateway, &ids) {
            self.receipt(early);
        }
    }

    /// The gateway may have the text or not, so it goes by no other one; by this one it is tried
    /// again, in the way of `again`, if that cannot double it.
    fn after_no_answer(
        &mut self,
        outbound: Outbound,
        again: impl Fn(&Self, Outbound) -> Outbound,
    ) -> Outbound {
        let unclear = self.counted(outbound);
        let gateway = unclear.gateway.as_deref().unwrap_or_default();
        let is_idempotent = self.setup.ways.is_idempotent(gateway);
        if is_idempotent {
            let ready = Outbound {
                state: SendState::Ready,
                ..unclear
            };
            again(self, ready)
        } else {
            Outbound {
                state: SendState::Unknown,
                ..unclear
            }
        }
    }

    /// To be tried again, or `at_last` after the last try.
    fn again(&self, outbound: Outbound, after: Option<Duration>, at_last: SendState) -> Outbound {
        if outbound.tries >= limits::TRIES_MAX {
            return Outbound {
                state: at_last,
                ..outbound
            };
        }
        let try_at = self.now + pause(outbound.id, outbound.tries, span(after));
        to_wait(outbound, try_at)
    }

    /// A gateway tells how far a text came: before its answer, twice, late or never.
    pub(crate) fn receipt(&mut self, receipt: Receipt) {
        self.world.links.heard_receipt(&receipt.gateway, self.now);
        let Some(outbound) = self.world.outbox.named_by(&receipt).cloned() else {
            if let About::Theirs(_) = receipt.about {
                self.world.outbox.keep_early(receipt);
            }
            return;
        };
        let by = outbound.gateway.as_ref();
        if by.is_some_and(|gateway| *gateway != receipt.gateway) {
            return;
        }
        let arrived = arrived(&outbound, &receipt);
        let all_arrived = arrived.len() == outbound.ids.len();
        // A receipt proves that the gateway has the text, whatever became of the answer.
        let state = match receipt.delivery {
            Delivery::Delivered if arrived.is_empty() || all_arrived => SendState::Delivered,
            Delivery::Failed => SendState::Failed,
            Delivery::Delivered | Delivery::Waiting | Delivery::Uncertain => SendState::Sent,
        };
        if outbound.state < state || outbound.arrived != arrived {
            self.reached(&outbound.to, state);
            let outbound = self.counted(Outbound {
                gateway: Some(receipt.gateway),
                ..outbound
            });
            self.put_outbound(Outbound {
                state: outbound.state.max(state),
                arrived,
                code: receipt.code.or(outbound.code),
                ..outbound
            });
        }
    }
}

/// The parts of which we know that they are on the phone. Of a text with one id, or none, nothing
/// has to be kept.
fn arrived(outbound: &Outbound, receipt: &Receipt) -> Vec<String> {
    let mut arrived = outbound.arrived.clone();
    if let (About::Theirs(id), Delivery::Delivered) = (&receipt.about, receipt.delivery)
        && outbound.ids.len() > 1
        && outbound.ids.contains(id)
        && !arrived.contains(id)
    {
        arrived.push(id.clone());
    }
    arrived
}

/// A text that waits again. Unless a try before this one may have been taken, it may leave by any
/// gateway.
fn to_wait(outbound: Outbound, try_at: DateTime<Utc>) -> Outbound {
    let gateway = outbound.gateway.filter(|_| outbound.sent_at.is_some());
    Outbound {
        state: SendState::Ready,
        try_at,
        gateway,
        ..outbound
    }
}

/// As long as a gateway asks for, which is not at all when it asks for nothing.
fn span(after: Option<Duration>) -> TimeDelta {
    let asked = after.and_then(|after| TimeDelta::from_std(after).ok());
    asked.unwrap_or_default()
}

/// The pause doubles with each try, up to a limit, and is never shorter than the gateway asks
/// for. Up to a quarter is added, so that texts that were refused together do not come back
/// together; how much follows from the text and the try.
fn pause(id: MessageId, tries: u32, asked: TimeDelta) -> TimeDelta {
    let doublings = tries.saturating_sub(1).min(16);
    let doubled = limits::RETRY_FIRST_SECS.saturating_mul(1 << doublings);
    let seconds = doubled.min(limits::RETRY_MAX_SECS).max(asked.num_seconds());
    let spread = u64::try_from(seconds / 4).unwrap_or_default() + 1;
    let more = spread_of(id, tries) % spread;
    TimeDelta::seconds(seconds.saturating_add_unsigned(more))
}

/// A number that looks random and is the same each time.
fn spread_of(id: MessageId, tries: u32) -> u64 {
    let mut hash = hmac_sha256::Hash::new();
    hash.update(id.0.to_be_bytes());
    hash.update(tries.to_be_bytes());
    let [a, b, c, d, ..] = hash.finalize();
    u64::from(u32::from_be_bytes([a, b, c, d]))
}
