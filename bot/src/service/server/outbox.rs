//! Sends what waits: claims a text, hands it to the gateway, tells the engine what became of it.
//!
//! Several at once, each a small loop. All rules (order to one phone, quiet hours, tries, expiry)
//! are the engine's; here is only the waiting.

use std::{sync::Arc, time::Duration};

use chrono::{DateTime, Utc};
use tokio::{sync::watch, task::JoinHandle};
use tracing::warn;

use super::{Running, handle::Handle};
use crate::{
    engine::Input,
    service::{
        clock::Clock,
        gateway::{Gateway, Refused},
        telemetry,
    },
    words::traffic::SendOutcome,
};

/// Without news the outbox is looked at this often: a text may wait for another to its phone.
const LOOK: Duration = Duration::from_secs(1);

/// Starts so many senders.
pub(crate) fn start(
    gateway: Arc<dyn Gateway>,
    running: &Running,
    parallel: usize,
    clock: &Clock,
    stop: &watch::Receiver<bool>,
) -> Vec<JoinHandle<()>> {
    (0..parallel)
        .map(|_| {
            let sender = Sender {
                gateway: gateway.clone(),
                handle: running.handle.clone(),
                next_try: running.next_try.clone(),
                clock: clock.clone(),
                stop: stop.clone(),
            };
            tokio::spawn(sender.run())
        })
        .collect()
}

struct Sender {
    gateway: Arc<dyn Gateway>,
    handle: Handle,
    next_try: watch::Receiver<Option<DateTime<Utc>>>,
    clock: Clock,
    stop: watch::Receiver<bool>,
}

impl Sender {
    /// Until told to stop, or until the engine is gone. A text that is on its way is ended first.
    async fn run(mut self) {
        while !*self.stop.borrow() {
            let due = self
                .next_try
                .borrow()
                .is_some_and(|at| at <= self.clock.now());
            let claimed = if due {
                self.handle.submit(Input::ClaimNext).await
            } else {
                Ok(<_>::default())
            };
            match claimed.map(|told| told.send) {
                Ok(Some(text)) => {
                    let outcome = self.gateway.send(&text).await;
                    self.report(text.id.0, &outcome);
                    let tried = Input::Tried {
                        id: text.id,
                        outcome,
                    };
                    self.note(text.id.0, tried).await;
                }
                Ok(None) => self.wait().await,
                Err(_) => tokio::time::sleep(LOOK).await,
            }
        }
    }

    /// Until it is noted what became of a text no other one goes to the same phone, so a full queue
    /// is waited for. If the engine is gone the next start settles it.
    async fn note(&self, id: u64, tried: Input) {
        loop {
            match self.handle.submit(tried.clone()).await {
                Ok(_) => return,
                Err(Refused::Busy) => tokio::time::sleep(LOOK).await,
                Err(Refused::Unhealthy) => {
                    return warn!({ telemetry::MESSAGE_ID } = id, "sent, but not noted");
                }
            }
        }
    }

    async fn wait(&mut self) {
        let until = self
            .next_try
            .borrow()
            .and_then(|at| (at - self.clock.now()).to_std().ok())
            .unwrap_or(LOOK)
            .clamp(Duration::from_millis(10), LOOK);
        tokio::select! {
            _ = self.next_try.changed() => {}
            _ = self.stop.changed() => {}
            () = tokio::time::sleep(until) => {}
        }
    }

    fn report(&self, id: u64, outcome: &SendOutcome) {
        let (SendOutcome::TryAgain { why, .. }
        | SendOutcome::Refused { why }
        | SendOutcome::Unknown { why }) = outcome
        else {
            return;
        };
        warn!(
            { telemetry::MESSAGE_ID } = id,
            { telemetry::GATEWAY_NAME } = self.gateway.name(),
            why,
            "a text was not taken"
        );
    }
}
