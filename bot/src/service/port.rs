//! The port to the world of text messages, in plain types.
//!
//! Two directions: a [`Gateway`] sends texts out; an [`Intake`] takes in what a gateway brings
//! us. Both know nothing of HTTP. A kind of gateway is a file in `gateway/`, which reads its block
//! of the configuration into a [`Plan`], and a row in its table. Deliberately absent: who the
//! people are, which gateway a text leaves by, when and how often; those are the engine's and the
//! outbox's.

use std::{fmt, pin::Pin, sync::Arc};

use chrono::{DateTime, Utc};
use tokio::sync::watch;

use crate::{
    engine::HeldBack,
    service::{
        clock::Clock,
        door::{Door, Takes},
        signature::KeyError,
    },
    words::{
        secret::Secret,
        traffic::{
            GatewayHealth, Inbound, InboundPart, Link, Outgoing, Receipt, SendOutcome, Signs,
        },
    },
};

/// Carries texts.
pub trait Gateway: Send + Sync {
    /// Its name in the configuration: in records, logs, receipts and routes.
    fn name(&self) -> &str;

    /// What it can do.
    fn abilities(&self) -> Abilities;

    /// Sends one text, once; trying again is the outbox's business.
    fn send<'a>(&'a self, text: &'a Outgoing) -> SendFuture<'a>;

    /// Works until it is told to stop: connects, reads, connects again, and brings what arrives to
    /// the intake. What it brings may be forgotten only after the intake's answer. A kind that is
    /// called has nothing to do here.
    fn run<'a>(&'a self, intake: &'a dyn Intake, stop: Stop) -> RunFuture<'a> {
        let _ = intake;
        Box::pin(stopped(stop))
    }

    /// Whether it can be reached, as far as it knows. One that learns it only by sending says that
    /// it is up, and lets texts wait.
    fn link(&self) -> Link {
        Link::Up
    }

    /// What it says of itself beside that. Most kinds know nothing.
    fn signs(&self) -> Signs {
        Signs::default()
    }
}

/// What a gateway can do. Every kind has to think of each.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Abilities {
    /// It sends. One that does not only takes texts in.
    pub sends: bool,
    /// Sending the same id again is certain not to give a second text.
    pub idempotent: bool,
    /// It may be handed the numbers that are kept for fiction, because nothing that it takes
    /// reaches a network.
    pub demo_numbers: bool,
}

/// Becomes true when the service stops.
pub type Stop = watch::Receiver<bool>;

/// Waits until the service stops.
pub async fn stopped(mut stop: Stop) {
    // Whoever could tell may be gone, which is the end too.
    let _ = stop.wait_for(|stop| *stop).await;
}

/// The answer to [`Gateway::send`], to come.
pub type SendFuture<'a> = Pin<Box<dyn Future<Output = SendOutcome> + Send + 'a>>;

/// The work of [`Gateway::run`].
pub type RunFuture<'a> = Pin<Box<dyn Future<Output = ()> + Send + 'a>>;

/// A gateway as it stands in the configuration: checked, nothing opened, no secret read.
pub trait Plan: fmt::Debug + Send + Sync {
    /// What the gateway will be able to do.
    fn abilities(&self) -> Abilities;

    /// How what it brings over HTTP is read, if it does.
    fn takes(&self) -> Option<Takes> {
        None
    }

    /// Whether what it needs on this computer is there, in words; none where it needs nothing.
    fn on_this_computer(&self) -> Option<Result<String, String>> {
        None
    }

    /// Makes the gateway. Nothing is sent yet.
    ///
    /// # Errors
    ///
    /// When a secret is missing, or the gateway cannot be set up.
    fn open(&self, secrets: &Secrets<'_>, clock: &Clock) -> Result<Opened, OpenError>;
}

/// A gateway, ready to work.
pub struct Opened {
    /// Itself.
    pub gateway: Arc<dyn Gateway>,
    /// How it is called over HTTP, if it is.
    pub door: Option<Door>,
}

/// Looks up an environment variable. An argument, so that a test needs no environment.
pub type Environment<'a> = &'a (dyn Fn(&str) -> Option<String> + Sync);

/// The secrets of one gateway, from the environment.
pub struct Secrets<'a> {
    /// The gateway's name.
    pub gateway: &'a str,
    /// Where they are.
    pub environment: Environment<'a>,
}

impl Secrets<'_> {
    /// The name of a variable: `BUDWOOD_SECRET_`, the gateway's name, and what it is for.
    #[must_use]
    pub fn variable(&self, purpose: &str) -> String {
        format!("BUDWOOD_SECRET_{}{purpose}", self.gateway).to_ascii_uppercase()
    }

    /// The secret for sending.
    ///
    /// # Errors
    ///
    /// When it is missing or empty.
    pub fn outward(&self) -> Result<Secret, OpenError> {
        self.get(self.variable(""))
    }

    /// The secret by which those who call us prove themselves, and the name of its variable.
    ///
    /// # Errors
    ///
    /// When it is missing or empty.
    pub fn inward(&self) -> Result<(Secret, String), OpenError> {
        let variable = self.variable("_IN");
        Ok((self.get(variable.clone())?, variable))
    }

    fn get(&self, variable: String) -> Result<Secret, OpenError> {
        (self.environment)(&variable)
            .filter(|secret| !secret.trim().is_empty())
            .map(Secret::new)
            .ok_or(OpenError::NoSecret { variable })
    }
}

/// Why a gateway cannot be made.
#[derive(Debug, thiserror::Error)]
pub enum OpenError {
    /// A secret is missing.
    #[error("environment variable {variable} is missing or empty")]
    NoSecret {
        /// Its name.
        variable: String,
    },
    /// The signing keys cannot be read.
    #[error("environment variable {variable}")]
    SigningKeys {
        /// The variable that holds them.
        variable: String,
        /// What is wrong with them.
        source: KeyError,
    },
    /// What the gateway works with cannot be set up.
    #[error("cannot set up gateway {gateway}")]
    SetUp {
        /// The gateway.
        gateway: String,
        /// Why.
        source: Box<dyn std::error::Error + Send + Sync>,
    },
}

/// What a gateway brings. A new thing that may arrive is a new variant; the port stays.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Arrival {
    /// A text.
    Text(Inbound),
    /// A part of a text. It is put together with the others where it is kept.
    Part(InboundPart),
    /// A call that was not answered: a wish to be called.
    MissedCall {
        /// The gateway that was called.
        gateway: String,
        /// The number that called.
        from: String,
        /// When.
        at: DateTime<Utc>,
    },
    /// What became of a text of ours.
    Receipt(Receipt),
}

impl Arrival {
    /// A text, or a part of one: its reference, of how many, which. A part that is none of the parts
    /// is a text of its own.
    pub(crate) fn of(text: Inbound, part: Option<(u16, u8, u8)>) -> Self {
        let is_one = |(_, of, number): &(u16, u8, u8)| (1..=*of).contains(number);
        match part.filter(is_one) {
            None => Self::Text(text),
            Some((reference, of, number)) => Self::Part(InboundPart {
                text,
                reference,
                of,
                number,
            }),
        }
    }
}

/// Takes in what gateways bring. The engine is behind it.
///
/// Whatever is taken in is in the queue when the call returns, so calls made one after another
/// keep their order. The future answers only when it is durable: a gateway that was told
/// "received" never sends it again. Dropping the future, when a gateway hangs up, takes nothing
/// back.
pub trait Intake: Send + Sync {
    /// Takes in what arrived.
    fn take(&self, arrival: Arrival) -> IntakeFuture;

    /// How the engine is.
    fn health(&self) -> Health;
}

/// The answer to taking something in, to come.
pub type IntakeFuture = Pin<Box<dyn Future<Output = Result<(), Refused>> + Send>>;

/// Why nothing was taken in. Either way the gateway keeps it and sends it again.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Refused {
    /// The queue is full.
    #[error("too much is waiting")]
    Busy,
    /// The store failed or the disk is nearly full.
    #[error("the store cannot take more")]
    Unhealthy,
}

/// What left in this month (UTC).
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct MonthHealth {
    /// Parts, as providers count them.
    pub parts: u64,
    /// What they cost, in millionths; nothing where no price is known.
    pub micro: u64,
    /// What that is of the month's budget, in per cent; none where there is no bound.
    pub gone_pct: Option<u32>,
}

impl MonthHealth {
    /// What they cost, for people and monitors.
    #[must_use]
    #[expect(
        clippy::cast_precision_loss,
        reason = "a figure to look at; exact up to nine thousand million"
    )]
    pub const fn money(&self) -> f64 {
        self.micro as f64 / 1_000_000.0
    }
}

/// Ends of the spans of time in which steps and commits are counted.
pub const SPANS_MICROS: [u64; 8] = [100, 300, 1_000, 3_000, 10_000, 30_000, 100_000, 1_000_000];

/// How long something took, since the start.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Spans {
    /// How often it took so long that it lies in each of [`SPANS_MICROS`], and past the last.
    pub counts: [u64; SPANS_MICROS.len() + 1],
    /// All of it together.
    pub micros: u64,
}

/// How the engine is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Health {
    /// What a person must see to: why new work is refused, or why texts do not leave. Names no
    /// person.
    pub trouble: Option<String>,
    /// Inputs that wait for the engine.
    pub inbox_waiting: usize,
    /// Texts that wait to be sent.
    pub outbox_waiting: usize,
    /// Texts that wait for a person to read them.
    pub unclear_waiting: usize,
    /// Whether the computer's clock is believed.
    pub clock_trusted: bool,
    /// What the store takes of the disk; none where that cannot be known, as below.
    pub store_bytes: Option<u64>,
    /// What may still be written.
    pub disk_free_bytes: Option<u64>,
    /// How long a step took.
    pub steps: Spans,
    /// How long a commit took until it was on the disk.
    pub commits: Spans,
    /// What the budget did not let go since the start.
    pub held_back: HeldBack,
    /// What left in this month.
    pub month: MonthHealth,
    /// Deeds that wrong codes locked since the start: somebody may forge a number.
    pub locked: u64,
    /// How each gateway is doing.
    pub gateways: Vec<GatewayHealth>,
}
