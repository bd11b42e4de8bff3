//! Promises, as stored.

use budwood_scheduler::{MessageId, PersonId};
use chrono::{DateTime, NaiveDate, Utc};
use serde::{Deserialize, Serialize};

use super::{Fault, instant, question::StoredAudience};
use crate::words::promise::Promise;

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredPromise {
    message: u64,
    number: u32,
    #[serde(serialize_with = "instant::one")]
    at: DateTime<Utc>,
    by: u32,
    to: StoredAudience,
    on: NaiveDate,
    words: String,
}

impl From<&Promise> for StoredPromise {
    fn from(promise: &Promise) -> Self {
        Self {
            message: promise.message.0,
            number: promise.number,
            at: promise.at,
            by: promise.by.0,
            to: promise.to.into(),
            on: promise.on,
            words: promise.words.clone(),
        }
    }
}

impl TryFrom<StoredPromise> for Promise {
    type Error = Fault;

    fn try_from(stored: StoredPromise) -> Result<Self, Fault> {
        Ok(Self {
            message: MessageId(stored.message),
            number: stored.number,
            at: stored.at,
            by: PersonId(stored.by),
            to: stored.to.into(),
            on: stored.on,
            words: stored.words,
        })
    }
}
