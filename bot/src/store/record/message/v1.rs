//! A text out as version 1 stored it: there was one gateway, and nobody wrote down which.
//!
//! Only read. What it does not tell stays open; how long the text is follows from it.

use budwood_scheduler::MessageId;
use chrono::{DateTime, Utc};
use serde::Deserialize;

use super::{Fault, StoredPurpose, state};
use crate::words::message::Outbound;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(in super::super) struct StoredOutbound {
    id: u64,
    at: DateTime<Utc>,
    to: String,
    text: String,
    purpose: StoredPurpose,
    expires_at: DateTime<Utc>,
    state: String,
    tries: u32,
    try_at: DateTime<Utc>,
    #[serde(default)]
    gateway_id: Option<String>,
}

impl StoredOutbound {
    pub(in super::super) fn open(self) -> Result<Outbound, Fault> {
        let purpose = self.purpose.open()?;
        let id = MessageId(self.id);
        let new = Outbound::new(id, self.at, &self.to, self.text, purpose, self.expires_at);
        Ok(Outbound {
            state: state(&self.state)?,
            tries: self.tries,
            try_at: self.try_at,
            ids: self.gateway_id.into_iter().collect(),
            ..new
        })
    }
}
