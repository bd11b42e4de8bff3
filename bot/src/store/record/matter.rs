//! Texts that wait for a person, as stored.

use budwood_scheduler::{MessageId, PersonId, decide::Concern};
use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};

use super::{Fault, instant, name_fault};
use crate::words::matter::Matter;

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredMatter {
    message: u64,
    #[serde(serialize_with = "instant::one")]
    at: DateTime<Utc>,
    person: u32,
    number: String,
    concern: String,
    text: String,
    #[serde(
        default,
        skip_serializing_if = "Option::is_none",
        serialize_with = "instant::maybe"
    )]
    read_at: Option<DateTime<Utc>>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    read_by: Option<u32>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    passed_to: Option<u32>,
    #[serde(default, skip_serializing_if = "is_zero")]
    told: u32,
    #[serde(
        default,
        skip_serializing_if = "Option::is_none",
        serialize_with = "instant::maybe"
    )]
    tell_at: Option<DateTime<Utc>>,
}

#[expect(
    clippy::trivially_copy_pass_by_ref,
    reason = "serde passes what it may skip by reference"
)]
const fn is_zero(count: &u32) -> bool {
    *count == 0
}

impl From<&Matter> for StoredMatter {
    fn from(matter: &Matter) -> Self {
        Self {
            message: matter.message.0,
            at: matter.at,
            person: matter.person.0,
            number: matter.number.clone(),
            concern: matter.concern.name().to_owned(),
            text: matter.text.clone(),
            read_at: matter.read_at,
            read_by: matter.read_by.map(|person| person.0),
            passed_to: matter.passed_to.map(|person| person.0),
            told: matter.told,
            tell_at: matter.tell_at,
        }
    }
}

impl TryFrom<StoredMatter> for Matter {
    type Error = Fault;

    fn try_from(stored: StoredMatter) -> Result<Self, Fault> {
        let concern = Concern::from_name(&stored.concern);
        Ok(Self {
            message: MessageId(stored.message),
            at: stored.at,
            person: PersonId(stored.person),
            number: stored.number,
            concern: concern.ok_or_else(|| name_fault("concern", &stored.concern))?,
            text: stored.text,
            read_at: stored.read_at,
            read_by: stored.read_by.map(PersonId),
            passed_to: stored.passed_to.map(PersonId),
            told: stored.told,
            tell_at: stored.tell_at,
        })
    }
}
