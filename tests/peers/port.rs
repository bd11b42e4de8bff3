//! A gateway alone, without the engine behind it: what it says of each text, and what it brings.

use std::sync::{
    Arc, Mutex,
    atomic::{AtomicBool, Ordering},
};

use budwood::{
    service::{
        clock::Clock,
        config::Config,
        port::{Arrival, Gateway, Health, Intake, IntakeFuture, Refused},
    },
    words::traffic::{Link, Outgoing, Receipt, SendOutcome, Signs},
};
use budwood_scheduler::MessageId;
use chrono::TimeDelta;
use tokio::{sync::watch, task::JoinHandle};

use crate::office::{Office, until};

/// A text that is of use for three hours.
pub(crate) fn outgoing(id: u64, to: String, text: &str) -> Outgoing {
    Outgoing {
        id: MessageId(id),
        to,
        text: text.to_owned(),
        expires_at: Clock::System.now() + TimeDelta::hours(3),
    }
}

/// Opens the gateway of an office, with this secret for everything.
pub(crate) fn opened(office: &Office, secret: &'static str) -> Arc<dyn Gateway> {
    let file = office.path("budwood.toml");
    let config = Config::load(&file).expect("a configuration");
    let environment = move |_: &str| Some(secret.to_owned());
    let opened = config.open_gateways(&environment, &Clock::System);
    let opened = opened.expect("it opens").into_iter().next();
    opened.expect("a gateway").gateway
}

/// Keeps what it is given, and says that it did, unless told to refuse.
#[derive(Default)]
struct Taker {
    given: Mutex<Vec<Arrival>>,
    refuses: AtomicBool,
}

impl Intake for Taker {
    fn take(&self, arrival: Arrival) -> IntakeFuture {
        self.given.lock().expect("nobody panics").push(arrival);
        let refuses = self.refuses.load(Ordering::Relaxed);
        Box::pin(async move { if refuses { Err(Refused::Busy) } else { Ok(()) } })
    }

    fn health(&self) -> Health {
        panic!("nobody asks")
    }
}

/// A gateway at work.
pub(crate) struct Line {
    gateway: Arc<dyn Gateway>,
    taker: Arc<Taker>,
    stop: watch::Sender<bool>,
    running: JoinHandle<()>,
}

impl Line {
    /// Opens it and waits until its line is up.
    pub(crate) async fn open(office: &Office) -> Self {
        let line = Self::begin(office, "secret");
        until("the line is up", async || line.gateway.link() == Link::Up).await;
        line
    }

    pub(crate) fn begin(office: &Office, secret: &'static str) -> Self {
        let gateway = opened(office, secret);
        let taker = Arc::new(Taker::default());
        let (stop, stops) = watch::channel(false);
        let (working, intake) = (gateway.clone(), taker.clone());
        let running = tokio::spawn(async move { working.run(intake.as_ref(), stops).await });
        Self {
            gateway,
            taker,
            stop,
            running,
        }
    }

    pub(crate) fn signs(&self) -> Signs {
        self.gateway.signs()
    }

    pub(crate) fn link(&self) -> Link {
        self.gateway.link()
    }

    pub(crate) async fn send(&self, text: Outgoing) -> SendOutcome {
        self.gateway.send(&text).await
    }

    /// Sends a text that must be taken; gives the ids.
    pub(crate) async fn accepted(&self, text: Outgoing) -> Vec<String> {
        match self.send(text).await {
            SendOutcome::Accepted { ids } => ids,
            other => panic!("{other:?}"),
        }
    }

    pub(crate) fn arrivals(&self) -> Vec<Arrival> {
        self.taker.given.lock().expect("nobody panics").clone()
    }

    pub(crate) fn receipts(&self) -> Vec<Receipt> {
        let receipt = |arrival| match arrival {
            Arrival::Receipt(receipt) => Some(receipt),
            Arrival::Text(_) | Arrival::Part(_) | Arrival::MissedCall { .. } => None,
        };
        self.arrivals().into_iter().filter_map(receipt).collect()
    }

    pub(crate) async fn until_receipts(&self, number: usize) {
        until("receipts", async || self.receipts().len() >= number).await;
    }

    /// From now on nothing is taken in.
    pub(crate) fn refuse(&self) {
        self.taker.refuses.store(true, Ordering::Relaxed);
    }

    pub(crate) async fn stop(self) {
        self.stop.send_replace(true);
        until("the line ends", async || self.running.is_finished()).await;
        self.running.await.expect("it ends");
    }
}
