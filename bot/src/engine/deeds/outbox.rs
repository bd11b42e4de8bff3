//! What waits to be sent: asked again at the moment of sending, tried again, settled.
//!
//! States move forward only. A text whose sending was cut off is unknown, not failed, and is
//! tried again only through a gateway that knows a second try of the same text. A text that the
//! gateway has and for which no receipt ever comes stays `sent`: nobody knows more.

use std::time::Duration;

use budwood_scheduler::{
    MessageId,
    jobs::nudge::{self, Withheld},
    land::hold::Whom,
};
use chrono::{DateTime, TimeDelta, Utc};

use crate::{
    engine::{
        local_time::{instant, zone},
        outcome::Outcome,
        step::Step,
    },
    store::Hold,
    words::{
        limits,
        message::{Outbound, Purpose, SendState},
        traffic::{Delivery, Outgoing, Receipt, SendOutcome},
    },
};

impl Step<'_> {
    /// At the start: a text that was being sent when the program stopped.
    pub(crate) fn settle_open_sends(&mut self) {
        let state = if self.setup.idempotent_gateway {
            SendState::Ready
        } else {
            SendState::Unknown
        };
        for cut_off in self.world.outbox.sending() {
            self.put_outbound(Outbound { state, ..cut_off });
        }
    }

    /// A person says that texts may leave again after the store was filled. What is too old by
    /// then is dropped when its turn comes.
    pub(crate) fn release(&mut self) {
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

    /// The outbox wants the next text. Each is asked again whether it may still go.
    pub(crate) fn claim_next(&mut self) {
        if self.world.held_since.is_some() {
            return;
        }
        let with_nudges = !self.world.nudges_wait;
        while let Some(outbound) = self.world.outbox.next_ready(self.now, with_nudges).cloned() {
            match self.verdict(&outbound) {
                Verdict::Go => return self.hand_over_to_gateway(outbound),
                Verdict::Wait(try_at) => self.put_outbound(Outbound { try_at, ..outbound }),
                Verdict::Drop(state) => self.put_outbound(Outbound { state, ..outbound }),
            }
        }
    }

    fn hand_over_to_gateway(&mut self, outbound: Outbound) {
        self.told.send = Some(Outgoing {
            id: outbound.id,
            to: outbound.to.clone(),
            text: outbound.text.clone(),
            expires_at: outbound.expires_at,
        });
        if matches!(outbound.purpose, Purpose::Nudge { .. }) {
            // The phone rests from the day on which the text may have come, not from the day on
            // which it was made.
            let now = self.now;
            self.talk(&outbound.to).routine_at = Some(now);
        }
        self.put_outbound(Outbound {
            state: SendState::Sending,
            tries: outbound.tries.saturating_add(1),
            ..outbound
        });
    }

    fn verdict(&self, outbound: &Outbound) -> Verdict {
        if outbound.expires_at <= self.now {
            return Verdict::Drop(SendState::Expired);
        }
        match outbound.purpose {
            Purpose::Answer { .. } | Purpose::Notice { .. } => Verdict::Go,
            Purpose::Nudge { block, task, due } => self
                .nudge_verdict(&outbound.to, block, task, due)
                .unwrap_or(Verdict::Drop(SendState::Cancelled)),
        }
    }

    /// None when nobody is to be told any more.
    fn nudge_verdict(
        &self,
        to: &str,
        block: budwood_scheduler::BlockId,
        task: budwood_scheduler::TaskKind,
        due: chrono::NaiveDate,
    ) -> Option<Verdict> {
        let record = self.world.directory.block(block)?;
        let owner = self.world.directory.person(record.owner)?;
        let group = self.world.directory.group_of_block(record)?;
        // The phone may have been given to somebody else meanwhile.
        let is_theirs = self
            .world
            .directory
            .numbers_of(owner.id)
            .any(|number| number == to);
        if !is_theirs {
            return None;
        }
        let zone = zone(group, self.setup);
        let local = self.now.with_timezone(&zone).naive_local();
        let whom = Whom {
            person: owner.id,
            group: Some(group.id),
            block,
        };
        let verdict = nudge::may_go(
            &self.setup.rules,
            (task, due),
            &self.view().tasks_of(block, local.date()),
            (&whom, &owner.consent, &[]),
            local,
            &group.quiet_days,
        );
        match verdict {
            Ok(()) => return Some(Verdict::Go),
            Err(Withheld::NoConsent | Withheld::Held(_) | Withheld::NotDue) => return None,
            Err(Withheld::Quiet) => {}
        }
        let slot = nudge::slot(&self.setup.rules, local, &group.quiet_days, None);
        // A moment later at least, or the text would be asked for again at once.
        let later = self.now + TimeDelta::seconds(1);
        Some(Verdict::Wait(instant(slot, zone).max(later)))
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
        // A receipt that came before the answer has settled what the answer could say.
        let is_open = outbound.state == SendState::Sending;
        let next = match outcome {
            SendOutcome::Accepted { gateway_id } => Outbound {
                state: outbound.state.max(SendState::Sent),
                gateway_id: gateway_id.or(outbound.gateway_id.clone()),
                ..outbound
            },
            SendOutcome::TryAgain { after, .. } if is_open => {
                self.again(outbound, after, SendState::Failed)
            }
            SendOutcome::Refused { .. } if is_open => Outbound {
                state: SendState::Failed,
                ..outbound
            },
            SendOutcome::Unknown { .. } if is_open && self.setup.idempotent_gateway => {
                self.again(outbound, None, SendState::Unknown)
            }
            SendOutcome::Unknown { .. } if is_open => Outbound {
                state: SendState::Unknown,
                ..outbound
            },
            SendOutcome::TryAgain { .. }
            | SendOutcome::Refused { .. }
            | SendOutcome::Unknown { .. } => return,
        };
        let early = next
            .gateway_id
            .as_ref()
            .and_then(|id| self.world.outbox.take_early(id));
        self.put_outbound(next);
        if let Some(delivery) = early {
            self.receipt(&Receipt {
                id: Some(id),
                gateway_id: None,
                delivery,
            });
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
        Outbound {
            state: SendState::Ready,
            try_at: self.now + pause(outbound.id, outbound.tries, after),
            ..outbound
        }
    }

    /// A gateway tells how far a text came: before its answer, twice, late or never.
    pub(crate) fn receipt(&mut self, receipt: &Receipt) {
        let by_gateway = || {
            let gateway_id = receipt.gateway_id.as_ref()?;
            self.world.outbox.by_gateway_id(gateway_id)
        };
        let Some(id) = receipt.id.or_else(by_gateway) else {
            if let Some(gateway_id) = &receipt.gateway_id {
                self.world
                    .outbox
                    .keep_early(gateway_id.clone(), receipt.delivery);
            }
            return;
        };
        let Some(outbound) = self.world.outbox.get(id).cloned() else {
            return;
        };
        // A receipt proves that the gateway has the text, whatever became of the answer.
        let state = match receipt.delivery {
            Delivery::Delivered => SendState::Delivered,
            Delivery::Failed => SendState::Failed,
            Delivery::Waiting | Delivery::Uncertain => SendState::Sent,
        };
        if outbound.state < state {
            self.put_outbound(Outbound { state, ..outbound });
        }
    }
}

/// Whether a text may go.
enum Verdict {
    Go,
    Wait(DateTime<Utc>),
    Drop(SendState),
}

/// The pause doubles with each try, up to a limit, and is never shorter than the gateway asks
/// for. Up to a quarter is added, so that texts that were refused together do not come back
/// together; how much follows from the text and the try.
fn pause(id: MessageId, tries: u32, after: Option<Duration>) -> TimeDelta {
    let doublings = tries.saturating_sub(1).min(16);
    let doubled = limits::RETRY_FIRST_SECS.saturating_mul(1 << doublings);
    let asked = after
        .and_then(|after| i64::try_from(after.as_secs()).ok())
        .unwrap_or_default();
    let seconds = doubled.min(limits::RETRY_MAX_SECS).max(asked);
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
