//! Sends what waits: claims a text, hands it to the gateway, tells the engine what became of it.
//!
//! Several at once for each gateway, each a small loop. The rules of texts (order to one phone,
//! quiet hours, tries, expiry, by which gateway) are the engine's; here is only the waiting, and
//! what no gateway may be handed at all, so that no new kind can forget it.

use std::{sync::Arc, time::Duration};

use chrono::{DateTime, Utc};
use tokio::{sync::watch, task::JoinSet};
use tracing::{info, warn};

use super::{Running, handle::Handle};
use crate::{
    engine::Input,
    service::{
        clock::Clock,
        port::{Gateway, Refused, Stop},
        telemetry,
    },
    words::{
        phone_number::{self, is_for_fiction},
        traffic::{COSTLY, Link, Outgoing, SendOutcome, Signs},
    },
};

/// Without news the outbox is looked at this often: a text may wait for another to its phone.
const LOOK: Duration = Duration::from_secs(1);

/// A line that stays down is told again after so many looks: the engine counts how long it lasts.
const LINK_LOOKS: u32 = 60;

/// Sets gateways to work.
pub(crate) struct Outbox<'a> {
    /// The engine.
    pub(crate) running: &'a Running,
    /// Our own numbers.
    pub(crate) own_numbers: Arc<[String]>,
    /// The time.
    pub(crate) clock: Clock,
    /// When to end.
    pub(crate) stop: Stop,
}

impl Outbox<'_> {
    /// Starts a gateway's own work, so many senders for it, and the watch over its line.
    pub(crate) fn start(
        &self,
        gateway: &Arc<dyn Gateway>,
        parallel: usize,
        tasks: &mut JoinSet<()>,
    ) {
        let handle = &self.running.handle;
        let (own, intake, stop) = (gateway.clone(), handle.clone(), self.stop.clone());
        tasks.spawn(async move { own.run(&intake, stop).await });
        let watched = watch_line(gateway.clone(), handle.clone(), self.stop.clone());
        tasks.spawn(watched);
        let senders = if gateway.abilities().sends {
            parallel
        } else {
            0
        };
        for _ in 0..senders {
            let sender = Sender {
                gateway: gateway.clone(),
                handle: handle.clone(),
                next_try: self.running.next_try.clone(),
                own_numbers: self.own_numbers.clone(),
                clock: self.clock.clone(),
                stop: self.stop.clone(),
            };
            tasks.spawn(sender.run());
        }
    }
}

/// Tells the engine and the log when a gateway's line goes down or comes up.
async fn watch_line(gateway: Arc<dyn Gateway>, handle: Handle, mut stop: Stop) {
    let name = gateway.name();
    let (mut told, mut looks, mut signs) = (Link::Up, 0, Signs::default());
    while !*stop.borrow() {
        // A line needs a moment to open; that it is not open yet is no news.
        tokio::select! {
            _ = stop.changed() => {}
            () = tokio::time::sleep(LOOK) => {}
        }
        if *stop.borrow() {
            return;
        }
        let link = gateway.link();
        looks += 1;
        let is_news = link != told;
        if is_news {
            match &link {
                Link::Down { why, .. } => {
                    warn!({ telemetry::GATEWAY_NAME } = name, why, "line down");
                }
                Link::Up => info!({ telemetry::GATEWAY_NAME } = name, "line up"),
            }
        }
        let is_due = matches!(link, Link::Down { .. }) && looks >= LINK_LOOKS;
        let new_signs = gateway.signs();
        if new_signs != signs {
            if let Some(why) = &new_signs.trouble
                && new_signs.trouble != signs.trouble
            {
                warn!(
                    { telemetry::GATEWAY_NAME } = name,
                    why, "a person must look"
                );
            }
            signs = new_signs.clone();
            let says = Input::Signs {
                gateway: name.to_owned(),
                signs: new_signs,
            };
            // What is not taken now comes with the next change.
            let _ = handle.submit(says).await;
        }
        if is_news || is_due {
            looks = 0;
            told = link.clone();
            let gateway = name.to_owned();
            // An engine that takes nothing now is told again.
            let _ = handle.submit(Input::Link { gateway, link }).await;
        }
    }
}

struct Sender {
    gateway: Arc<dyn Gateway>,
    handle: Handle,
    next_try: watch::Receiver<Option<DateTime<Utc>>>,
    own_numbers: Arc<[String]>,
    clock: Clock,
    stop: Stop,
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
                let gateway = self.gateway.name().to_owned();
                self.handle.submit(Input::ClaimNext { gateway }).await
            } else {
                Ok(<_>::default())
            };
            match claimed.map(|told| told.send) {
                Ok(Some(text)) => {
                    let outcome = match self.never(&text) {
                        Some(refused) => refused,
                        None => self.gateway.send(&text).await,
                    };
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

    /// Why a text is not handed to this gateway, whatever its kind.
    fn never(&self, text: &Outgoing) -> Option<SendOutcome> {
        let why = if self.own_numbers.contains(&text.to) {
            "the number is our own, and what is sent there would come back"
        } else if is_for_fiction(&text.to) && !self.gateway.abilities().demo_numbers {
            "the number is kept for fiction and is never sent to a provider"
        } else if phone_number::is_costly(&text.to) {
            return Some(SendOutcome::Refused {
                code: Some(COSTLY.to_owned()),
                why: "the number is of a service, a satellite or a ship, and may cost any sum"
                    .to_owned(),
            });
        } else {
            return None;
        };
        Some(SendOutcome::Refused {
            code: None,
            why: why.to_owned(),
        })
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
        let (SendOutcome::Wait { why, .. }
        | SendOutcome::Refused { why, .. }
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
