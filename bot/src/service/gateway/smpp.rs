//! An account at a message centre, by SMPP 3.4.
//!
//! A line that is bound, or a pair of lines, bound again with growing pauses whenever it ends.
//! Deliberately absent: whether a text may go, tries and pauses of texts, which are the engine's,
//! and every log line with a number or a text.

mod incoming;
mod lately;
mod pdu;
mod plan;
mod receipt;
mod session;
mod status;
pub(crate) mod text;
mod tls;

use std::{
    hash::{BuildHasher, RandomState},
    sync::{Mutex, PoisonError},
    time::Duration,
};

use chrono::TimeDelta;
use tokio::{
    net::TcpStream,
    sync::{Mutex as AsyncMutex, mpsc, oneshot},
    time::{sleep, timeout},
};
use tracing::info;

pub(crate) use self::plan::read;
use self::{
    lately::Lately,
    pdu::{Address, Message},
    receipt::ReceiptIds,
    session::{Order, Role, Session, Stream},
    text::{DefaultAlphabet, LongTexts},
    tls::Tls,
};
use crate::{
    service::{
        clock::Clock,
        port::{Abilities, Arrival, Gateway, Intake, RunFuture, SendFuture, Stop, stopped},
        telemetry,
    },
    words::{
        limits,
        secret::Secret,
        traffic::{Link, Outgoing, SendOutcome, Whose},
    },
};

/// The longest pause before a line is bound again.
const PAUSE_MAX_SECS: u64 = 60;

/// A line that was bound so long is bound again without a pause that grew before.
const LASTED: TimeDelta = TimeDelta::minutes(1);

/// What the body of a `deliver_sm` becomes, for a centre of each kind. For fuzzing, which has no use
/// for a line.
pub(super) fn arrivals(body: &[u8]) -> Vec<Arrival> {
    let alphabets = [
        DefaultAlphabet::Gsm7,
        DefaultAlphabet::Latin1,
        DefaultAlphabet::Ascii,
    ];
    let ids = [ReceiptIds::Same, ReceiptIds::Decimal, ReceiptIds::Hex];
    let kinds = alphabets
        .into_iter()
        .flat_map(|alphabet| ids.map(|ids| (alphabet, ids)));
    let read = kinds.map(|kind| incoming::arrival(body, "centre", kind));
    read.filter_map(|arrival| arrival.unwrap_or_else(|kept| Some(*kept)))
        .collect()
}

/// An account, ready to be used.
#[derive(Debug)]
pub(crate) struct Settings {
    name: String,
    abilities: Abilities,
    /// Host and port.
    address: String,
    tls: Option<Tls>,
    system_id: String,
    password: Secret,
    system_type: String,
    /// Two lines, for centres that offer no transceiver.
    is_pair: bool,
    source: Address,
    alphabet: DefaultAlphabet,
    long: LongTexts,
    receipt_ids: ReceiptIds,
    wants_receipts: bool,
    window: usize,
    enquire_secs: u32,
    timeout: Duration,
}

/// An account.
struct Smpp {
    settings: Settings,
    clock: Clock,
    orders: mpsc::Sender<Order>,
    /// Taken by whoever runs the line that sends.
    waiting: AsyncMutex<mpsc::Receiver<Order>>,
    /// Bodies that could not be read, the latest first.
    unreadable: Mutex<Vec<Vec<u8>>>,
    /// What came lately.
    lately: Lately,
    /// How the lines are, the sending one first.
    links: Mutex<[Link; 2]>,
}

impl Smpp {
    fn new(settings: Settings, clock: Clock) -> Self {
        let (orders, waiting) = mpsc::channel(1);
        let down = Link::Down {
            since: clock.now(),
            why: "not bound yet".into(),
        };
        let receiver = if settings.is_pair {
            down.clone()
        } else {
            Link::Up
        };
        Self {
            settings,
            lately: Lately::new(clock.clone()),
            clock,
            orders,
            waiting: AsyncMutex::new(waiting),
            unreadable: Mutex::default(),
            links: Mutex::new([down, receiver]),
        }
    }

    fn with_links<T>(&self, look: impl FnOnce(&mut [Link; 2]) -> T) -> T {
        look(&mut self.links.lock().unwrap_or_else(PoisonError::into_inner))
    }

    fn note(&self, role: Role, now: Link) {
        self.with_links(|[sending, receiving]| {
            let link = if role.sends() { sending } else { receiving };
            // How long it has been down counts from the first reason.
            *link = match (&*link, now) {
                (Link::Down { since, .. }, Link::Down { why, .. }) => {
                    Link::Down { since: *since, why }
                }
                (_, now) => now,
            };
        });
    }

    async fn send_once(&self, text: &Outgoing) -> SendOutcome {
        if let Link::Down { why, .. } = self.with_links(|[sending, _]| sending.clone()) {
            return wait(why);
        }
        let parts: Option<Vec<Vec<u8>>> = self.messages(text).iter().map(Message::body).collect();
        let Some(parts) = parts else {
            return SendOutcome::Refused {
                code: None,
                why: "the text is too long".into(),
            };
        };
        let (told, outcome) = oneshot::channel();
        let order = Order {
            parts,
            told,
            ids: Vec::new(),
            throttled: 0,
        };
        if self.orders.send(order).await.is_err() {
            return wait("the line has stopped".into());
        }
        let unclear = |_| SendOutcome::Unknown {
            why: "the line ended before the centre answered".into(),
        };
        outcome.await.unwrap_or_else(unclear)
    }

    fn messages(&self, text: &Outgoing) -> Vec<Message> {
        let Settings {
            source,
            alphabet,
            long,
            wants_receipts,
            ..
        } = &self.settings;
        let to = Address {
            // International, in the plan of telephones (SMPP 3.4, 5.2.5 and 5.2.6).
            ton: 1,
            npi: 1,
            digits: text.to.trim_start_matches('+').to_owned(),
        };
        let base = Message {
            from: source.clone(),
            to,
            validity: validity((text.expires_at - self.clock.now()).num_seconds()),
            registered: u8::from(*wants_receipts),
            ..Message::default()
        };
        let [reference, ..] = text.id.0.to_le_bytes();
        text::messages(&text.text, reference, *alphabet, *long, &base)
    }

    /// Keeps one line bound until told to stop.
    async fn keep(
        &self,
        role: Role,
        orders: &mut mpsc::Receiver<Order>,
        intake: &dyn Intake,
        mut stop: Stop,
    ) {
        let mut failed = 0;
        while !*stop.borrow() {
            let bound = tokio::select! {
                bound = self.bound(role, intake) => bound,
                () = stopped(stop.clone()) => break,
            };
            let bound_at = self.clock.now();
            let why = match bound {
                Ok(session) => {
                    self.note(role, Link::Up);
                    info!({ telemetry::GATEWAY_NAME } = self.settings.name, "bound");
                    session.drive(role, orders, &mut stop).await
                }
                Err(why) => why,
            };
            let since = self.clock.now();
            self.note(
                role,
                Link::Down {
                    since,
                    why: why.clone(),
                },
            );
            if *stop.borrow() {
                break;
            }
            // A line that only just came up may break each time.
            if since - bound_at >= LASTED {
                failed = 0;
            }
            pause(failed, &why, orders, &mut stop).await;
            failed += 1;
        }
        orders.close();
        while let Some(order) = orders.recv().await {
            order.cut_off(false, "the service stops");
        }
    }

    async fn bound<'a>(
        &'a self,
        role: Role,
        intake: &'a dyn Intake,
    ) -> Result<Session<'a>, String> {
        let stream = timeout(limits::CONNECT_TIMEOUT, self.connected()).await;
        let stream =
            stream.unwrap_or_else(|_| Err("the centre cannot be reached in time".into()))?;
        let known = (&self.unreadable, &self.lately);
        Session::bind(stream, role, &self.settings, intake, known).await
    }

    async fn connected(&self) -> Result<Box<dyn Stream>, String> {
        let stream = TcpStream::connect(&self.settings.address).await;
        let no_connection =
            |error: std::io::Error| format!("no connection to the centre: {}", error.kind());
        let stream = stream.map_err(no_connection)?;
        // Small messages that wait for each other's answers.
        stream.set_nodelay(true).map_err(no_connection)?;
        match &self.settings.tls {
            Some(tls) => Ok(Box::new(tls.over(stream).await?)),
            None => Ok(Box::new(stream)),
        }
    }
}

/// Waits before the next try, longer each time; what is to be sent meanwhile is told to wait.
async fn pause(failed: u32, why: &str, orders: &mut mpsc::Receiver<Order>, stop: &mut Stop) {
    let seconds = (1_u64 << failed.min(16)).min(PAUSE_MAX_SECS);
    // Up to a quarter more, so that many who lost their centre do not come back at once.
    let spread = RandomState::new().hash_one(failed) % 250;
    let waited = sleep(Duration::from_millis(seconds * (1_000 + spread)));
    tokio::pin!(waited);
    loop {
        tokio::select! {
            () = &mut waited => return,
            _ = stop.changed() => return,
            Some(order) = orders.recv() => order.cut_off(false, why),
        }
    }
}

/// How long the centre may try, from now (7.1.1): days, hours, minutes and seconds.
fn validity(seconds: i64) -> String {
    let seconds = seconds.clamp(60, 30 * 86_400);
    let (days, hours) = (seconds / 86_400, seconds / 3_600 % 24);
    let (minutes, seconds) = (seconds / 60 % 60, seconds % 60);
    format!("0000{days:02}{hours:02}{minutes:02}{seconds:02}000R")
}

const fn wait(why: String) -> SendOutcome {
    SendOutcome::Wait {
        whose: Whose::Gateway,
        after: None,
        why,
    }
}

impl Gateway for Smpp {
    fn name(&self) -> &str {
        &self.settings.name
    }

    fn abilities(&self) -> Abilities {
        self.settings.abilities
    }

    fn send<'a>(&'a self, text: &'a Outgoing) -> SendFuture<'a> {
        Box::pin(self.send_once(text))
    }

    fn run<'a>(&'a self, intake: &'a dyn Intake, stop: Stop) -> RunFuture<'a> {
        Box::pin(async move {
            let mut orders = self.waiting.lock().await;
            if self.settings.is_pair {
                // The line that receives has no orders; its own end of them stays open.
                let (_open, mut none) = mpsc::channel(1);
                let sending = self.keep(Role::Transmitter, &mut orders, intake, stop.clone());
                let receiving = self.keep(Role::Receiver, &mut none, intake, stop);
                tokio::join!(sending, receiving);
            } else {
                self.keep(Role::Transceiver, &mut orders, intake, stop)
                    .await;
            }
        })
    }

    fn link(&self) -> Link {
        self.with_links(|[sending, receiving]| match sending {
            Link::Up => receiving.clone(),
            Link::Down { .. } => sending.clone(),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // SMPP 3.4, 7.1.1.2: sixteen characters, a relative time ends with R.
    #[test]
    fn how_long_a_text_is_of_use_is_written_as_the_standard_says() {
        assert_eq!(validity(3_600), "000000010000000R");
        assert_eq!(
            validity(2 * 86_400 + 3 * 3_600 + 4 * 60 + 5),
            "000002030405000R"
        );
        assert_eq!(validity(-5), "000000000100000R");
        assert_eq!(validity(i64::MAX), "000030000000000R");
    }
}
