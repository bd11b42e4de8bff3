//! Messages in and out as stored.

use budwood_scheduler::{BlockId, MessageId};
use chrono::{DateTime, NaiveDate, Utc};
use serde::{Deserialize, Serialize};

use super::{Fault, event::task, instant, name_fault};
use crate::words::message::{Outbound, Purpose, Received, SendState};

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredReceived {
    id: u64,
    #[serde(serialize_with = "instant::one")]
    at: DateTime<Utc>,
    gateway: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    gateway_id: Option<String>,
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
    gateway_id: Option<String>,
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
}

impl From<&Outbound> for StoredOutbound {
    fn from(outbound: &Outbound) -> Self {
        Self {
            id: outbound.id.0,
            at: outbound.at,
            to: outbound.to.clone(),
            text: outbound.text.clone(),
            purpose: match &outbound.purpose {
                Purpose::Answer { to } => StoredPurpose::Answer { to: to.0 },
                Purpose::Nudge { block, task, due } => StoredPurpose::Nudge {
                    block: block.0,
                    task: task.name().to_owned(),
                    due: *due,
                },
                Purpose::Notice { about } => StoredPurpose::Notice { about: about.0 },
            },
            expires_at: outbound.expires_at,
            state: outbound.state.name().to_owned(),
            tries: outbound.tries,
            try_at: outbound.try_at,
            gateway_id: outbound.gateway_id.clone(),
        }
    }
}

impl TryFrom<StoredOutbound> for Outbound {
    type Error = Fault;

    fn try_from(stored: StoredOutbound) -> Result<Self, Fault> {
        Ok(Self {
            id: MessageId(stored.id),
            at: stored.at,
            to: stored.to,
            text: stored.text,
            purpose: match stored.purpose {
                StoredPurpose::Answer { to } => Purpose::Answer { to: MessageId(to) },
                StoredPurpose::Nudge {
                    block,
                    task: name,
                    due,
                } => Purpose::Nudge {
                    block: BlockId(block),
                    task: task(&name)?,
                    due,
                },
                StoredPurpose::Notice { about } => Purpose::Notice {
                    about: MessageId(about),
                },
            },
            expires_at: stored.expires_at,
            state: SendState::from_name(&stored.state)
                .ok_or_else(|| name_fault("state", &stored.state))?,
            tries: stored.tries,
            try_at: stored.try_at,
            gateway_id: stored.gateway_id,
        })
    }
}
