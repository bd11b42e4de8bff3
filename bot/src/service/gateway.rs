//! The port to the world of text messages, in plain types.
//!
//! Two directions: a [`Gateway`] sends texts out; an [`Intake`] takes in what a gateway brings
//! us. Both know nothing of HTTP, and a new kind of gateway is a new file beside [`handset`] and
//! [`http`]. Deliberately absent: who the people are, when a text may go and how often it is
//! tried; those are the engine's and the outbox's.

pub mod handset;
pub mod http;

use std::{future::Future, pin::Pin};

use crate::words::traffic::{Inbound, Outgoing, Receipt, SendOutcome};

/// Sends texts. It tries once; trying again is the outbox's business.
pub trait Gateway: Send + Sync {
    /// Sends one text.
    fn send<'a>(&'a self, text: &'a Outgoing) -> SendFuture<'a>;

    /// Whether sending the same id again is certain not to give a second text.
    fn is_idempotent(&self) -> bool;

    /// A short name for logs and records.
    fn name(&self) -> &str;
}

/// The answer to [`Gateway::send`], to come.
pub type SendFuture<'a> = Pin<Box<dyn Future<Output = SendOutcome> + Send + 'a>>;

/// Takes in what gateways bring. The engine is behind it.
///
/// Whatever is taken in is in the queue when the call returns, so calls made one after another
/// keep their order. The future answers only when it is durable: a gateway that was told
/// "received" never sends it again. Dropping the future, when a gateway hangs up, takes nothing
/// back.
pub trait Intake: Send + Sync {
    /// Takes in a text.
    fn text(&self, inbound: Inbound) -> IntakeFuture;

    /// Takes in a receipt.
    fn receipt(&self, receipt: Receipt) -> IntakeFuture;

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
}
