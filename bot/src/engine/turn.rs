//! One text of one person, being worked on, and who tells a fact by it.

use budwood_scheduler::{MessageId, PersonId, Source};
use chrono::{DateTime, Utc};

/// One text of one person, being worked on.
#[derive(Clone, Debug)]
pub(crate) struct Turn {
    /// The phone.
    pub(crate) number: String,
    /// The text's id.
    pub(crate) message: MessageId,
    /// Who texts.
    pub(crate) speaker: PersonId,
    /// Whose blocks it is about: the speaker's own, or a member's.
    pub(crate) target: PersonId,
    /// The text.
    pub(crate) text: String,
    /// When it was sent.
    pub(crate) sent_at: DateTime<Utc>,
}

/// Who told a fact, how, and in which text.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Telling {
    pub(crate) by: Option<PersonId>,
    pub(crate) source: Source,
    pub(crate) message: Option<MessageId>,
}

impl Telling {
    /// The bot itself.
    pub(crate) const BOT: Self = Self {
        by: None,
        source: Source::Bot,
        message: None,
    };
}
