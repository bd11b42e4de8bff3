//! Messages in and out as stored.

pub(super) mod v1;

use budwood_scheduler::{BlockId, MessageId, PersonId};
use chrono::{DateTime, NaiveDate, Utc};
use serde::{Deserialize, Serialize};

use super::{Fault, event::task, instant, name_fault};
use crate::words::{
    message::{Outbound, Purpose, Received, ReceivedPart, SendState},
    sms::Alphabet,
};

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredReceived {
    id: u64,
    #[serde(serialize_with = "instant::one")]
    at: DateTime<Utc>,
    gateway: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    gateway_id: Option<String>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    parts: Vec<String>,
    from: String,
    to: String,
    text: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[serde(serialize_with = "instant::maybe")]
    sent_at: Option<DateTime<Utc>>,
    outcome: String,
}

impl From<&Received> for StoredReceived {
    fn from(received: &Received) -> Self {
        Self {
            id: received.id.0,
            at: received.at,
            gateway: received.gateway.clone(),
            gateway_id: received.gateway_id.clone(),
            parts: received.parts.clone(),
            from: received.from.clone(),
            to: received.to.clone(),
            text: received.text.clone(),
            sent_at: received.sent_at,
            outcome: received.outcome.clone(),
        }
    }
}

impl TryFrom<StoredReceived> for Received {
    type Error = Fault;

    fn try_from(stored: StoredReceived) -> Result<Self, Fault> {
        Ok(Self {
            id: MessageId(stored.id),
            at: stored.at,
            gateway: stored.gateway,
            gateway_id: stored.gateway_id,
            parts: stored.parts,
            from: stored.from,
            to: stored.to,
            text: stored.text,
            sent_at: stored.sent_at,
            outcome: stored.outcome,
        })
    }
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredPart {
    id: u64,
    #[serde(serialize_with = "instant::one")]
    at: DateTime<Utc>,
    gateway: String,
    gateway_id: String,
    from: String,
    to: String,
    text: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[serde(serialize_with = "instant::maybe")]
    sent_at: Option<DateTime<Utc>>,
    reference: u16,
    of: u8,
    number: u8,
}

impl From<&ReceivedPart> for StoredPart {
    fn from(part: &ReceivedPart) -> Self {
        Self {
            id: part.id.0,
            at: part.at,
            gateway: part.gateway.clone(),
            gateway_id: part.gateway_id.clone(),
            from: part.from.clone(),
            to: part.to.clone(),
            text: part.text.clone(),
            sent_at: part.sent_at,
            reference: part.reference,
            of: part.of,
            number: part.number,
        }
    }
}

impl TryFrom<StoredPart> for ReceivedPart {
    type Error = Fault;

    fn try_from(stored: StoredPart) -> Result<Self, Fault> {
        Ok(Self {
            id: MessageId(stored.id),
            at: stored.at,
            gateway: stored.gateway,
            gateway_id: stored.gateway_id,
            from: stored.from,
            to: stored.to,
            text: stored.text,
            sent_at: stored.sent_at,
            reference: stored.reference,
            of: stored.of,
            number: stored.number,
        })
    }
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredOutbound {
    id: u64,
    #[serde(serialize_with = "instant::one")]
    at: DateTime<Utc>,
    to: String,
    text: String,
    purpose: StoredPurpose,
    #[serde(serialize_with = "instant::one")]
    expires_at: DateTime<Utc>,
    state: String,
    tries: u32,
    #[serde(serialize_with = "instant::one")]
    try_at: DateTime<Utc>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    gateway: Option<String>,
    alphabet: String,
    parts: u32,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    ids: Vec<String>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    arrived: Vec<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[serde(serialize_with = "instant::maybe")]
    sent_at: Option<DateTime<Utc>>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[serde(serialize_with = "instant::maybe")]
    settled_at: Option<DateTime<Utc>>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    code: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    price_micro: Option<u64>,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
enum StoredPurpose {
    Answer {
        to: u64,
    },
    Nudge {
        block: u32,
        task: String,
        due: NaiveDate,
    },
    Notice {
        about: u64,
    },
    Welcome {
        person: u32,
    },
    Announcement {
        person: u32,
        by: u64,
    },
    Service {
        on: NaiveDate,
    },
}

impl StoredPurpose {
    fn new(purpose: &Purpose) -> Self {
        match purpose {
            Purpose::Answer { to } => Self::Answer { to: to.0 },
            Purpose::Nudge { block, task, due } => Self::Nudge {
                block: block.0,
                task: task.name().to_owned(),
                due: *due,
            },
            Purpose::Notice { about } => Self::Notice { about: about.0 },
            Purpose::Welcome { person } => Self::Welcome { person: person.0 },
            Purpose::Announcement { person, by } => Self::Announcement {
                person: person.0,
                by: by.0,
            },
            Purpose::Service { on } => Self::Service { on: *on },
        }
    }

    fn open(self) -> Result<Purpose, Fault> {
        Ok(match self {
            Self::Answer { to } => Purpose::Answer { to: MessageId(to) },
            Self::Nudge {
                block,
                task: name,
                due,
            } => Purpose::Nudge {
                block: BlockId(block),
                task: task(&name)?,
                due,
            },
            Self::Notice { about } => Purpose::Notice {
                about: MessageId(about),
            },
            Self::Welcome { person } => Purpose::Welcome {
                person: PersonId(person),
            },
            Self::Announcement { person, by } => Purpose::Announcement {
                person: PersonId(person),
                by: MessageId(by),
            },
            Self::Service { on } => Purpose::Service { on },
        })
    }
}

fn state(name: &str) -> Result<SendState, Fault> {
    SendState::from_name(name).ok_or_else(|| name_fault("state", name))
}

impl From<&Outbound> for StoredOutbound {
    fn from(outbound: &Outbound) -> Self {
        Self {
            id: outbound.id.0,
            at: outbound.at,
            to: outbound.to.clone(),
            text: outbound.text.clone(),
            purpose: StoredPurpose::new(&outbound.purpose),
            expires_at: outbound.expires_at,
            state: outbound.state.name().to_owned(),
            tries: outbound.tries,
            try_at: outbound.try_at,
            gateway: outbound.gateway.clone(),
            alphabet: outbound.alphabet.name().to_owned(),
            parts: outbound.parts,
            ids: outbound.ids.clone(),
            arrived: outbound.arrived.clone(),
            sent_at: outbound.sent_at,
            settled_at: outbound.settled_at,
            code: outbound.code.clone(),
            price_micro: outbound.price_micro,
        }
    }
}

impl StoredOutbound {
    pub(super) fn open(self) -> Result<Outbound, Fault> {
        Ok(Outbound {
            id: MessageId(self.id),
            at: self.at,
            to: self.to,
            text: self.text,
            purpose: self.purpose.open()?,
            expires_at: self.expires_at,
            state: state(&self.state)?,
            tries: self.tries,
            try_at: self.try_at,
            gateway: self.gateway,
            alphabet: Alphabet::from_name(&self.alphabet)
                .ok_or_else(|| name_fault("alphabet", &self.alphabet))?,
            parts: self.parts,
            ids: self.ids,
            arrived: self.arrived,
            sent_at: self.sent_at,
            settled_at: self.settled_at,
            code: self.code,
            price_micro: self.price_micro,
        })
    }
}
