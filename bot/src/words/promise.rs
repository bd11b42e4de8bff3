//! What an adviser owes to somebody by a day: said in a text of theirs, until it is kept.

use budwood_scheduler::{MessageId, PersonId};
use chrono::{DateTime, NaiveDate, Utc};

use super::message::Audience;

/// A promise that is not kept yet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Promise {
    /// The text that made it.
    pub message: MessageId,
    /// By which the adviser closes it: no other open one of theirs has it.
    pub number: u32,
    /// When it was made.
    pub at: DateTime<Utc>,
    /// Whose it is.
    pub by: PersonId,
    /// To whom.
    pub to: Audience,
    /// The day by which it is to be kept.
    pub on: NaiveDate,
    /// Their own words.
    pub words: String,
}
