//! A text that waits for a person: what the bot could not do alone.

use budwood_scheduler::{MessageId, PersonId, decide::Concern};
use chrono::{DateTime, Utc};

/// A text that waits for a person.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Matter {
    /// The text.
    pub message: MessageId,
    /// When it came.
    pub at: DateTime<Utc>,
    /// Who sent it.
    pub person: PersonId,
    /// From which number.
    pub number: String,
    /// Why it waits.
    pub concern: Concern,
    /// What it says.
    pub text: String,
    /// When it was last read.
    pub read_at: Option<DateTime<Utc>>,
    /// By whom.
    pub read_by: Option<PersonId>,
    /// Who reads it instead of its sender's adviser.
    pub passed_to: Option<PersonId>,
    /// How often it was told that it is old.
    pub told: u32,
    /// When that is told next.
    pub tell_at: Option<DateTime<Utc>>,
}
