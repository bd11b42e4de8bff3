//! The port to the world of text messages, in plain types.
//!
//! Two directions: a [`Gateway`] sends texts out; an [`Intake`] takes in what a gateway brings
//! us. Both know nothing of HTTP, and a new kind of gateway is a new file beside [`handset`] and
//! [`http`]. Deliberately absent: who the people are, when a text may go and how often it is
//! tried; those are the engine's and the outbox's.

pub mod handset;
pub mod http;

use std::{fmt, future::Future, pin::Pin, time::Duration};

use budwood_scheduler::MessageId;
use chrono::{DateTime, Utc};

/// A text that came in, as the gateway told it.
#[derive(Clone, PartialEq, Eq)]
pub struct Inbound {
    /// Name of the gateway that brought it.
    pub gateway: String,
    /// The gateway's own id of the text. The same id again is the same text again.
    pub gateway_id: Option<String>,
    /// Who sent it: a number, a short code or a name, not yet read as E.164.
    pub from: String,
    /// The number of ours that it was sent to.
    pub to: String,
    /// What it says, as received.
    pub text: String,
    /// When the network took it, if the gateway says so.
    pub sent_at: Option<DateTime<Utc>>,
}

/// A text to send.
#[derive(Clone, PartialEq, Eq)]
pub struct Outgoing {
    /// Our id. A second try of the same text has the same id.
    pub id: MessageId,
    /// E.164 number, with the plus.
    pub to: String,
    /// What to say.
    pub text: String,
    /// After this it is of no use. A gateway whose protocol has a validity period hands it on, so
    /// that a phone which is switched on next week gets no stale text; the others cannot.
    pub expires_at: DateTime<Utc>,
}

// Both carry a number and a text, and neither may get into a log by way of `{:?}`.
impl fmt::Debug for Inbound {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Inbound")
            .field("gateway", &self.gateway)
            .field("gateway_id", &self.gateway_id)
            .field("chars", &self.text.chars().count())
            .finish_non_exhaustive()
    }
}

impl fmt::Debug for Outgoing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Outgoing")
            .field("id", &self.id)
            .field("chars", &self.text.chars().count())
            .finish_non_exhaustive()
    }
}

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

/// What became of one try to send. No `why` names a number or quotes a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SendOutcome {
    /// The gateway has it.
    Accepted {
        /// The gateway's id, by which a receipt may name it.
        gateway_id: Option<String>,
    },
    /// The gateway does not have it, and may take it later.
    TryAgain {
        /// Not before this long, if the gateway says so.
        after: Option<Duration>,
        /// What happened.
        why: String,
    },
    /// The gateway will never take it.
    Refused {
        /// What happened.
        why: String,
    },
    /// The gateway may or may not have it: it was written, and no clear answer came.
    Unknown {
        /// What happened.
        why: String,
    },
}

/// What a gateway tells about a text that we sent. It may come twice, late, out of order, before
/// the answer to sending, or never.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Receipt {
    /// Our id, if the receipt carries it.
    pub id: Option<MessageId>,
    /// The gateway's id, if the receipt carries it.
    pub gateway_id: Option<String>,
    /// How far the text has come.
    pub delivery: Delivery,
}

/// How far a text has come.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Delivery {
    /// It is on the phone.
    Delivered,
    /// It will never be.
    Failed,
    /// The network cannot say, and will not say more.
    Uncertain,
    /// The network has it and goes on trying.
    Waiting,
}

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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn debug_shows_neither_numbers_nor_texts() {
        let inbound = Inbound {
            gateway: "http".into(),
            gateway_id: Some("m-1".into()),
            from: "+447700900123".into(),
            to: "12345".into(),
            text: "planted 120".into(),
            sent_at: None,
        };
        let outgoing = Outgoing {
            id: MessageId(7),
            to: "+447700900123".into(),
            text: "planted 120".into(),
            expires_at: DateTime::UNIX_EPOCH,
        };
        let shown = format!("{inbound:?} {outgoing:?}");
        assert!(
            !shown.contains("900123") && !shown.contains("planted"),
            "{shown}"
        );
        assert!(shown.contains("m-1") && shown.contains('7'), "{shown}");
    }
}
