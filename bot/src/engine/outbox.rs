//! What waits to be sent: asked again at the moment of sending, tried again, settled.
//!
//! States move forward only. A text whose sending was cut off is unknown, not failed, and is
//! tried again only through a gateway that knows a second try of the same text.

use budwood_scheduler::{MessageId, nudge};
use chrono::TimeDelta;

use super::{
    plan::tasks_of,
    step::{Step, instant, zone},
};
use crate::{
    gateway::{Delivery, Outgoing, Receipt, SendOutcome},
    limits,
    message::{Outbound, Purpose, SendState},
};

impl Step<'_> {
    /// At the start: a text that was being sent when the program stopped.
    pub(super) fn settle_open_sends(&mut self) {
        let cut_off: Vec<Outbound> = self
            .world
            .outbox
            .values()
            .filter(|outbound| outbound.state == SendState::Sending)
            .cloned()
            .collect();
        for outbound in cut_off {
            let state = if self.setup.idempotent_gateway {
                SendState::Ready
            } else {
                SendState::Unknown
            };
            self.put_outbound(Outbound { state, ..outbound });
        }
    }

    /// The outbox wants the next text. Each is asked again whether it may still go.
    pub(super) fn claim_next(&mut self) {
        while let Some(outbound) = self.world.next_ready(self.now).cloned() {
            match self.verdict(&outbound) {
                Verdict::Go => {
                    self.told.send = Some(Outgoing {
                        id: outbound.id,
                        to: outbound.to.clone(),
                        text: outbound.text.clone(),
                    });
                    if matches!(outbound.purpose, Purpose::Nudge { .. }) {
                        // The phone rests from the day on which the text may have come, not from
                        // the day on which it was made.
                        let now = self.now;
                        self.talk(&outbound.to).routine_at = Some(now);
                    }
                    let tries = outbound.tries.saturating_add(1);
                    self.put_outbound(Outbound {
                        state: SendState::Sending,
                        tries,
                        ..outbound
                    });
                    return;
                }
                Verdict::Wait(try_at) => self.put_outbound(Outbound { try_at, ..outbound }),
                Verdict::Drop(state) => self.put_outbound(Outbound { state, ..outbound }),
            }
        }
    }

    fn verdict(&self, outbound: &Outbound) -> Verdict {
        if outbound.expires_at <= self.now {
            return Verdict::Drop(SendState::Expired);
        }
        match outbound.purpose {
            Purpose::Answer { .. } | Purpose::Notice { .. } => Verdict::Go,
            Purpose::Nudge { block, task, due } => self
                .nudge_verdict(block, task, due)
                .unwrap_or(Verdict::Drop(SendState::Cancelled)),
        }
    }

    /// None when nobody is to be told any more.
    fn nudge_verdict(
        &self,
        block: budwood_scheduler::BlockId,
        task: budwood_scheduler::TaskKind,
        due: chrono::NaiveDate,
    ) -> Option<Verdict> {
        let record = self.world.directory.block(block)?;
        let owner = self.world.directory.person(record.owner)?;
        let group = self.world.directory.group_of_block(record)?;
        if !owner.consent.is_given() {
            return None;
        }
        let zone = zone(group, self.setup);
        let local = self.now.with_timezone(&zone).naive_local();
        tasks_of(self.world, self.setup, block, local.date())
            .iter()
            .find(|open| open.kind == task && open.due == due)?;
        if nudge::may_send(&self.setup.rules, local, &group.quiet_days) {
            return Some(Verdict::Go);
        }
        let slot = nudge::slot(&self.setup.rules, local, &group.quiet_days, None);
        // A moment later at least, or the text would be asked for again at once.
        let later = self.now + TimeDelta::seconds(1);
        Some(Verdict::Wait(instant(slot, zone).max(later)))
    }

    /// What became of a try.
    pub(super) fn tried(&mut self, id: MessageId, outcome: SendOutcome) {
        let Some(outbound) = self.world.outbox.get(&id).cloned() else {
            return;
        };
        if outbound.state != SendState::Sending {
            return;
        }
        let next = match outcome {
            SendOutcome::Accepted { gateway_id } => Outbound {
                state: SendState::Sent,
                gateway_id,
                ..outbound
            },
            SendOutcome::TryAgain { after, .. } => {
                let pause = after
                    .and_then(|after| TimeDelta::from_std(after).ok())
                    .unwrap_or_default()
                    .max(pause(outbound.tries));
                Outbound {
                    state: SendState::Ready,
                    try_at: self.now + pause,
                    ..outbound
                }
            }
            SendOutcome::Refused { .. } => Outbound {
                state: SendState::Failed,
                ..outbound
            },
            SendOutcome::Unknown { .. } if self.setup.idempotent_gateway => Outbound {
                state: SendState::Ready,
                try_at: self.now + pause(outbound.tries),
                ..outbound
            },
            SendOutcome::Unknown { .. } => Outbound {
                state: SendState::Unknown,
                ..outbound
            },
        };
        let early = next
            .gateway_id
            .as_ref()
            .and_then(|id| self.world.early.remove(id));
        self.put_outbound(next);
        if let Some(delivery) = early {
            self.receipt(&Receipt {
                id: Some(id),
                gateway_id: None,
                delivery,
            });
        }
    }

    /// A gateway tells how far a text came: before its answer, twice, late or never.
    pub(super) fn receipt(&mut self, receipt: &Receipt) {
        let by_gateway = receipt
            .gateway_id
            .as_ref()
            .and_then(|gateway_id| self.world.by_gateway_id.get(gateway_id))
            .copied();
        let Some(id) = receipt.id.or(by_gateway) else {
            self.keep_early(receipt);
            return;
        };
        let Some(outbound) = self.world.outbox.get(&id).cloned() else {
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

    fn keep_early(&mut self, receipt: &Receipt) {
        if let Some(gateway_id) = &receipt.gateway_id {
            while self.world.early.len() >= limits::QUEUE_MAX {
                self.world.early.pop_first();
            }
            self.world
                .early
                .insert(gateway_id.clone(), receipt.delivery);
        }
    }
}

/// Whether a text may go.
enum Verdict {
    Go,
    Wait(chrono::DateTime<chrono::Utc>),
    Drop(SendState),
}

/// The pause doubles with each try.
fn pause(tries: u32) -> TimeDelta {
    let factor = 1_i64
        .checked_shl(tries.saturating_sub(1).min(16))
        .unwrap_or(1);
    let seconds = limits::RETRY_FIRST_SECS.saturating_mul(factor);
    TimeDelta::seconds(seconds.min(limits::RETRY_MAX_SECS))
}
