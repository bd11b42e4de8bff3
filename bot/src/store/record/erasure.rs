//! Who is being taken out of the records, as stored.

use budwood_scheduler::{MessageId, PersonId};
use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

use super::Fault;
use crate::words::erasure::{Erasure, UsedNumber};

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredErasure {
    person: u32,
    name: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    called: Option<String>,
    numbers: Vec<StoredNumber>,
    last: u64,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct StoredNumber {
    number: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    since: Option<NaiveDate>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    until: Option<NaiveDate>,
}

impl From<&Erasure> for StoredErasure {
    fn from(erasure: &Erasure) -> Self {
        let numbers = erasure.numbers.iter().map(|used| StoredNumber {
            number: used.number.clone(),
            since: used.since,
            until: used.until,
        });
        Self {
            person: erasure.person.0,
            name: erasure.name.clone(),
            called: erasure.called.clone(),
            numbers: numbers.collect(),
            last: erasure.last.0,
        }
    }
}

impl TryFrom<StoredErasure> for Erasure {
    type Error = Fault;

    fn try_from(stored: StoredErasure) -> Result<Self, Fault> {
        let numbers = stored.numbers.into_iter().map(|used| UsedNumber {
            number: used.number,
            since: used.since,
            until: used.until,
        });
        Ok(Self {
            person: PersonId(stored.person),
            name: stored.name,
            called: stored.called,
            numbers: numbers.collect(),
            last: MessageId(stored.last),
        })
    }
}
