//! One text of one person, being worked on.

use budwood_scheduler::{MessageId, PersonId};
use chrono::{DateTime, Utc};

/// One text of one person, being worked on.
#[derive(Clone, Debug)]
pub(super) struct Turn {
    /// The phone.
    pub(super) number: String,
    /// The text's id.
    pub(super) message: MessageId,
    /// Who texts.
    pub(super) speaker: PersonId,
    /// Whose blocks it is about: the speaker's own, or a member's.
    pub(super) target: PersonId,
    /// The text.
    pub(super) text: String,
    /// When it was sent.
    pub(super) sent_at: DateTime<Utc>,
}
