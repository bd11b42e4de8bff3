//! What passes between a gateway and the engine, in plain types: texts in and out, what became of
//! a try to send, and receipts.

use std::{fmt, time::Duration};

use budwood_scheduler::MessageId;
use chrono::{DateTime, Utc};

use super::sms::{self, Size};

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

/// A part of a text that came in several.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct InboundPart {
    /// The part, as if it were a text.
    pub text: Inbound,
    /// What the parts of one text have in common.
    pub reference: u16,
    /// How many there are.
    pub of: u8,
    /// Which one it is, from 1.
    pub number: u8,
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

impl Outgoing {
    /// How it is coded and how many parts it takes.
    #[must_use]
    pub fn size(&self) -> Size {
        sms::measure(&self.text)
    }

    /// Its parts in order, for a gateway that must cut a long text itself.
    #[must_use]
    pub fn parts(&self) -> Vec<String> {
        sms::split(&self.text)
    }
}

/// The code of a text that was not handed to a gateway because one to its number may cost any sum.
pub const COSTLY: &str = "costly";

/// What became of one try to send. No `why` names a number or quotes a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SendOutcome {
    /// The gateway has it. Of a text of which only some parts were taken nobody can say that:
    /// it is [`SendOutcome::Unknown`].
    Accepted {
        /// The gateway's ids, by which receipts may name it: none, one, or one for each part.
        ids: Vec<String>,
    },
    /// The gateway surely does not have it, and may take it later.
    Wait {
        /// Whether it is about this text or about all.
        whose: Whose,
        /// Not before this long, if the gateway says so.
        after: Option<Duration>,
        /// What happened.
        why: String,
    },
    /// The gateway will never take it.
    Refused {
        /// The network's or the provider's own word for the reason, if it has one.
        code: Option<String>,
        /// What happened.
        why: String,
    },
    /// The gateway may or may not have it: it was written, and no clear answer came.
    Unknown {
        /// What happened.
        why: String,
    },
}

/// Who has to wait.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Whose {
    /// This text. It has had one of its tries.
    Text,
    /// Every text of this gateway: it is throttled or away. Costs no try.
    Gateway,
    /// Every text of this gateway, until a person has mended its set-up: a password, an address, a
    /// bill that was not paid. Costs no try.
    SetUp,
}

/// Whether a gateway can be reached.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Link {
    /// As far as it knows.
    Up,
    /// Since this moment it cannot.
    Down {
        /// Since when.
        since: DateTime<Utc>,
        /// Why, in words for the person who mends it.
        why: String,
    },
}

/// What a gateway says of itself, beside whether it is up. Names no person.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Signs {
    /// How well it hears its network, in per cent of the scale.
    pub signal_pct: Option<u8>,
    /// What its network answered when it was asked what is left to spend.
    pub balance: Option<String>,
    /// What a person must see to, though texts go on.
    pub trouble: Option<String>,
}

/// What passed a gateway since the start.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Passed {
    /// Texts that it brought.
    pub texts_in: u64,
    /// Reports on texts that it brought.
    pub receipts: u64,
    /// Texts that it took.
    pub texts_out: u64,
    /// Texts that it refused for good, or of which nobody knows what became of them.
    pub failed: u64,
}

/// How a gateway is doing, for those who watch over the service. Names no person.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct GatewayHealth {
    /// Its name.
    pub name: String,
    /// Since when its line is down, as it says itself.
    pub down_since: Option<DateTime<Utc>>,
    /// When it last brought a text or a receipt.
    pub last_in: Option<DateTime<Utc>>,
    /// When it last brought a receipt.
    pub last_receipt: Option<DateTime<Utc>>,
    /// When it last took a text.
    pub last_out: Option<DateTime<Utc>>,
    /// When the text was made that has waited for it longest.
    pub oldest_waiting: Option<DateTime<Utc>>,
    /// Texts that it did not take since the last one that it took.
    pub refused_in_a_row: u32,
    /// What passed it.
    pub passed: Passed,
    /// How well it hears its network, in per cent of the scale.
    pub signal_pct: Option<u8>,
    /// What its network says is left to spend.
    pub balance: Option<String>,
    /// What a person must see to.
    pub trouble: Option<String>,
}

/// What a gateway tells about a text that we sent. It may come twice, late, out of order, before
/// the answer to sending, or never.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Receipt {
    /// The gateway that tells it. Another one's word about the text does not count.
    pub gateway: String,
    /// Which text.
    pub about: About,
    /// How far the text has come.
    pub delivery: Delivery,
    /// The network's own word for it, such as an error code.
    pub code: Option<String>,
}

/// How a receipt names a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum About {
    /// By our id, for the whole text.
    Ours(MessageId),
    /// By the gateway's own id. Two gateways may give the same.
    Theirs(String),
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
