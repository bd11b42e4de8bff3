//! A modem with a SIM: texts over the air, with no contract but that of a phone.
//!
//! It is opened again with growing pauses whenever it is gone, so it may be unplugged. Deliberately
//! absent: whether a text may go, how many a minute, tries and pauses of texts.

mod errors;
mod line;
mod opening;
mod pdu;
mod plan;
mod session;
mod signs;

use std::{
    path::PathBuf,
    sync::{Mutex, PoisonError},
    time::Duration,
};

use chrono::{DateTime, TimeDelta, Utc};
use tokio::{
    sync::{Mutex as AsyncMutex, mpsc, oneshot},
    time::sleep,
};
use tracing::info;

pub(crate) use self::plan::{plugged_in, read};
use self::{
    line::Line,
    session::{Order, Session},
};
use crate::{
    service::{
        clock::Clock,
        port::{Abilities, Arrival, Gateway, Intake, RunFuture, SendFuture, Stop, stopped},
        telemetry,
    },
    words::{
        secret::Secret,
        traffic::{Link, Outgoing, SendOutcome, Signs, Whose},
    },
};

/// The longest pause before a modem is opened again.
const PAUSE_MAX_SECS: u64 = 30;

/// A line that was open so long is opened again without a pause that grew before.
const LASTED: TimeDelta = TimeDelta::minutes(1);

/// What a message becomes. For fuzzing, which has no use for a line.
pub(super) fn from_message(hex: &str) -> Option<Arrival> {
    session::arrival(hex, "modem")
}

/// A modem and what is wanted of it.
struct Settings {
    name: String,
    device: PathBuf,
    speed: u32,
    wants_receipts: bool,
    /// A call that nobody answers is a wish to be called.
    calls_count: bool,
    pin: Option<Secret>,
    /// Whether the PIN was given and not found right since.
    pin_is_doubted: Mutex<bool>,
    /// By which code the network is asked what is left.
    balance_code: Option<String>,
    /// When it was asked.
    balance_asked: Mutex<Option<DateTime<Utc>>>,
    signs: Mutex<Signs>,
}

impl Settings {
    fn new(name: String, device: PathBuf, speed: u32, pin: Option<Secret>) -> Self {
        Self {
            name,
            device,
            speed,
            wants_receipts: true,
            calls_count: true,
            pin,
            pin_is_doubted: Mutex::new(false),
            balance_code: None,
            balance_asked: Mutex::new(None),
            signs: Mutex::default(),
        }
    }

    /// The PIN, unless it was given in vain before.
    fn take_pin(&self) -> Option<&Secret> {
        let mut doubted = self
            .pin_is_doubted
            .lock()
            .unwrap_or_else(PoisonError::into_inner);
        let is_first = !std::mem::replace(&mut *doubted, true);
        self.pin.as_ref().filter(|_| is_first)
    }

    fn with_signs<T>(&self, look: impl FnOnce(&mut Signs) -> T) -> T {
        look(&mut self.signs.lock().unwrap_or_else(PoisonError::into_inner))
    }

    /// The code, if one is set and the network was not asked for so long.
    fn balance_due(&self, now: DateTime<Utc>, every: TimeDelta) -> Option<&str> {
        let code = self.balance_code.as_deref()?;
        let asked = self.balance_asked.lock();
        let mut asked = asked.unwrap_or_else(PoisonError::into_inner);
        if asked.is_some_and(|asked| now - asked < every) {
            return None;
        }
        *asked = Some(now);
        Some(code)
    }

    fn pin_was_right(&self) {
        *self
            .pin_is_doubted
            .lock()
            .unwrap_or_else(PoisonError::into_inner) = false;
    }
}

/// A modem.
struct Modem {
    settings: Settings,
    abilities: Abilities,
    clock: Clock,
    orders: mpsc::Sender<Order>,
    /// Taken by whoever runs the line.
    waiting: AsyncMutex<mpsc::Receiver<Order>>,
    link: Mutex<Link>,
}

impl Modem {
    fn new(settings: Settings, abilities: Abilities, clock: Clock) -> Self {
        let (orders, waiting) = mpsc::channel(1);
        let link = Mutex::new(Link::Down {
            since: clock.now(),
            why: "not opened yet".into(),
        });
        Self {
            settings,
            abilities,
            clock,
            orders,
            waiting: AsyncMutex::new(waiting),
            link,
        }
    }

    fn with_link<T>(&self, look: impl FnOnce(&mut Link) -> T) -> T {
        look(&mut self.link.lock().unwrap_or_else(PoisonError::into_inner))
    }

    fn note(&self, state: Result<(), String>) {
        let now = self.clock.now();
        self.with_link(|link| {
            *link = match (state, &*link) {
                (Ok(()), _) => Link::Up,
                // How long it has been down counts from the first reason.
                (Err(why), Link::Down { since, .. }) => Link::Down { since: *since, why },
                (Err(why), Link::Up) => Link::Down { since: now, why },
            };
        });
    }

    async fn send_once(&self, text: &Outgoing) -> SendOutcome {
        if let Link::Down { why, .. } = self.link() {
            return wait(why);
        }
        let [reference, ..] = text.id.0.to_le_bytes();
        let valid = text.expires_at - self.clock.now();
        let (told, outcome) = oneshot::channel();
        let order = Order {
            to: text.to.clone(),
            parts: pdu::submits(
                &text.to,
                &text.text,
                reference,
                valid,
                self.settings.wants_receipts,
            ),
            told,
        };
        if self.orders.send(order).await.is_err() {
            return wait("the modem has stopped".into());
        }
        let unclear = |_| SendOutcome::Unknown {
            why: "the modem was gone before it answered".into(),
        };
        outcome.await.unwrap_or_else(unclear)
    }

    async fn opened<'a>(
        &'a self,
        intake: &'a dyn Intake,
        now: &'a (dyn Fn() -> DateTime<Utc> + Sync),
    ) -> Result<Session<'a>, String> {
        let Settings { device, speed, .. } = &self.settings;
        let line = Line::open(device, *speed)
            .map_err(|error| format!("the device cannot be opened: {}", error.kind()))?;
        Session::open(line, &self.settings, intake, now).await
    }

    async fn keep(&self, intake: &dyn Intake, mut stop: Stop) {
        let mut orders = self.waiting.lock().await;
        let now = || self.clock.now();
        let mut failed = 0;
        while !*stop.borrow() {
            let opened = tokio::select! {
                opened = self.opened(intake, &now) => opened,
                () = stopped(stop.clone()) => break,
            };
            let opened_at = self.clock.now();
            let why = match opened {
                Ok(session) => {
                    info!({ telemetry::GATEWAY_NAME } = self.settings.name, "opened");
                    let note = |state| self.note(state);
                    session.drive(&mut orders, &mut stop, &note).await
                }
                Err(why) => why,
            };
            self.note(Err(why.clone()));
            // A line that only just came up may break each time.
            if now() - opened_at >= LASTED {
                failed = 0;
            }
            pause(failed, &why, &mut orders, &mut stop).await;
            failed += 1;
        }
        orders.close();
        while let Some(order) = orders.recv().await {
            order.tell(wait("the service stops".into()));
        }
    }
}

/// Waits before the next try, longer each time; what is to be sent meanwhile is told to wait.
async fn pause(failed: u32, why: &str, orders: &mut mpsc::Receiver<Order>, stop: &mut Stop) {
    if *stop.borrow() {
        return;
    }
    let seconds = (1_u64 << failed.min(16)).min(PAUSE_MAX_SECS);
    let waited = sleep(Duration::from_secs(seconds));
    tokio::pin!(waited);
    loop {
        tokio::select! {
            () = &mut waited => return,
            _ = stop.changed() => return,
            Some(order) = orders.recv() => order.tell(wait(why.to_owned())),
        }
    }
}

const fn wait(why: String) -> SendOutcome {
    SendOutcome::Wait {
        whose: Whose::Gateway,
        after: None,
        why,
    }
}

impl Gateway for Modem {
    fn name(&self) -> &str {
        &self.settings.name
    }

    fn abilities(&self) -> Abilities {
        self.abilities
    }

    fn send<'a>(&'a self, text: &'a Outgoing) -> SendFuture<'a> {
        Box::pin(self.send_once(text))
    }

    fn run<'a>(&'a self, intake: &'a dyn Intake, stop: Stop) -> RunFuture<'a> {
        Box::pin(self.keep(intake, stop))
    }

    fn link(&self) -> Link {
        self.with_link(|link| link.clone())
    }

    fn signs(&self) -> Signs {
        self.settings.with_signs(|signs| signs.clone())
    }
}
