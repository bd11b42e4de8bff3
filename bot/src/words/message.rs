//! Messages in and out, and the conversation with a phone, as plain values.

use budwood_scheduler::{
    BlockId, EventId, MessageId, PersonId, TaskKind, jobs::nudge::TextedWeeks,
};
use chrono::{DateTime, NaiveDate, Utc};

pub use super::question::{Audience, Deed, Open, Question, Told};
use super::sms::{self, Alphabet};

/// A text that came in, for ever as received.
#[derive(Clone, Debug, PartialEq)]
pub struct Received {
    /// Which.
    pub id: MessageId,
    /// When it came.
    pub at: DateTime<Utc>,
    /// Through which gateway.
    pub gateway: String,
    /// The gateway's own id, by which a second delivery is known.
    pub gateway_id: Option<String>,
    /// The gateway's ids of its parts, if it came in several.
    pub parts: Vec<String>,
    /// From which sender, E.164 if it is a number.
    pub from: String,
    /// To which of our numbers.
    pub to: String,
    /// The text as it came.
    pub text: String,
    /// When it was sent, if the gateway says.
    pub sent_at: Option<DateTime<Utc>>,
    /// What became of it, in one word for the log.
    pub outcome: String,
}

/// A part of a text that waits for the others.
#[derive(Clone, Debug, PartialEq)]
pub struct ReceivedPart {
    /// Which.
    pub id: MessageId,
    /// When it came.
    pub at: DateTime<Utc>,
    /// Through which gateway.
    pub gateway: String,
    /// By which a second delivery is known: the gateway's own id, or one made of what it says.
    pub gateway_id: String,
    /// From which sender, as it came.
    pub from: String,
    /// To which of our numbers.
    pub to: String,
    /// What it says.
    pub text: String,
    /// When it was sent, if the gateway says.
    pub sent_at: Option<DateTime<Utc>>,
    /// What the parts of one text have in common.
    pub reference: u16,
    /// How many there are.
    pub of: u8,
    /// Which one it is, from 1.
    pub number: u8,
}

/// A text that goes out.
#[derive(Clone, Debug, PartialEq)]
pub struct Outbound {
    /// Which.
    pub id: MessageId,
    /// When it was made.
    pub at: DateTime<Utc>,
    /// To which number.
    pub to: String,
    /// The text.
    pub text: String,
    /// Why it is sent.
    pub purpose: Purpose,
    /// After this it is of no use.
    pub expires_at: DateTime<Utc>,
    /// How far it is. Moves forward only.
    pub state: SendState,
    /// How often it was tried.
    pub tries: u32,
    /// Not before this.
    pub try_at: DateTime<Utc>,
    /// The gateway that has it or may have it. None while it is still open which one it leaves by.
    pub gateway: Option<String>,
    /// How it is coded.
    pub alphabet: Alphabet,
    /// Messages that it takes on the way.
    pub parts: u32,
    /// The gateway's own ids, for its receipts: none, one, or one for each part.
    pub ids: Vec<String>,
    /// Those of the ids of whose parts we know that they are on the phone, while others are not.
    pub arrived: Vec<String>,
    /// When the gateway took it, or may have taken it. From then on it leaves by no other one.
    pub sent_at: Option<DateTime<Utc>>,
    /// When nothing more could happen to it.
    pub settled_at: Option<DateTime<Utc>>,
    /// The network's own word for what became of it.
    pub code: Option<String>,
    /// What it cost, in millionths of the money that the gateway is paid in, if that is known.
    pub price_micro: Option<u64>,
}

impl Outbound {
    /// A text that waits to be sent from now on.
    #[must_use]
    pub fn new(
        id: MessageId,
        at: DateTime<Utc>,
        to: &str,
        text: String,
        purpose: Purpose,
        expires_at: DateTime<Utc>,
    ) -> Self {
        let size = sms::measure(&text);
        Self {
            id,
            at,
            to: to.to_owned(),
            text,
            purpose,
            expires_at,
            state: SendState::Ready,
            tries: 0,
            try_at: at,
            gateway: None,
            alphabet: size.alphabet,
            parts: u32::try_from(size.parts).unwrap_or(u32::MAX),
            ids: Vec::new(),
            arrived: Vec::new(),
            sent_at: None,
            settled_at: None,
            code: None,
            price_micro: None,
        }
    }
}

/// Why a text is sent.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Purpose {
    /// An answer to a text.
    Answer {
        /// Which text.
        to: MessageId,
    },
    /// A nudge.
    Nudge {
        /// About which block.
        block: BlockId,
        /// About which job.
        task: TaskKind,
        /// Due day of the job's round.
        due: NaiveDate,
    },
    /// Something that a person must see.
    Notice {
        /// About which text.
        about: MessageId,
    },
    /// The first text to a new phone.
    Welcome {
        /// To whom.
        person: PersonId,
    },
    /// An adviser's own words to their people.
    Announcement {
        /// To whom.
        person: PersonId,
        /// By which text they were sent.
        by: MessageId,
    },
    /// How the service is, for its operator.
    Service {
        /// On which day, in the operator's zone.
        on: NaiveDate,
    },
}

impl Purpose {
    /// Whether nobody waits for it: it goes at the hours of nudges, behind all else.
    #[must_use]
    pub const fn is_routine(&self) -> bool {
        matches!(
            self,
            Self::Nudge { .. } | Self::Welcome { .. } | Self::Announcement { .. }
        )
    }
}

/// How far an outgoing text is. Later values are never left for earlier ones, but for
/// `Sending`, which goes back to `Ready` when the gateway surely took nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum SendState {
    /// Waits to be sent.
    Ready,
    /// Handed to the gateway, no answer yet.
    Sending,
    /// The gateway has it.
    Sent,
    /// Nobody knows whether the gateway has it.
    Unknown,
    /// On the phone.
    Delivered,
    /// Not to be delivered.
    Failed,
    /// Too old before it could be sent.
    Expired,
    /// No longer wanted before it could be sent.
    Cancelled,
}

impl SendState {
    /// Every state.
    pub const ALL: [Self; 8] = [
        Self::Ready,
        Self::Sending,
        Self::Sent,
        Self::Unknown,
        Self::Delivered,
        Self::Failed,
        Self::Expired,
        Self::Cancelled,
    ];

    /// The name in records.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Ready => "ready",
            Self::Sending => "sending",
            Self::Sent => "sent",
            Self::Unknown => "unknown",
            Self::Delivered => "delivered",
            Self::Failed => "failed",
            Self::Expired => "expired",
            Self::Cancelled => "cancelled",
        }
    }

    /// The state with this name.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|state| state.name() == name)
    }

    /// Whether nothing more will happen to the text.
    #[must_use]
    pub const fn is_final(self) -> bool {
        matches!(
            self,
            Self::Delivered | Self::Failed | Self::Expired | Self::Cancelled
        )
    }
}

/// The conversation with one phone.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Talk {
    /// What we asked and wait for.
    pub open: Option<Open>,
    /// The last nudge, until it is answered or another one goes.
    pub nudge: Option<OpenNudge>,
    /// The facts of the last recorded text, and when.
    pub last: Vec<EventId>,
    /// When the last recorded text came.
    pub last_at: Option<DateTime<Utc>>,
    /// The last text and when it came: the same again is impatience, not news.
    pub last_text: Option<(String, DateTime<Utc>)>,
    /// When an example was last sent.
    pub helped_at: Option<DateTime<Utc>>,
    /// How many texts in a row were not understood.
    pub unclear: u32,
    /// When the answers of the last hour went out, newest last.
    pub answered_at: Vec<DateTime<Utc>>,
    /// The day of the last answer, and how many went out on it.
    pub answered_on: Option<(NaiveDate, u32)>,
    /// When the phone was told that it is not answered for a while.
    pub held_at: Option<DateTime<Utc>>,
    /// When the notices of the last hour went out, newest last.
    pub noticed_at: Vec<DateTime<Utc>>,
    /// The notices that wait to go together.
    pub digest: Option<Digest>,
    /// Until when the adviser on this phone may write for others: a code came back from it.
    pub visit_until: Option<DateTime<Utc>>,
    /// Codes that were asked for on this phone in the last day, and wrong ones that came.
    pub codes: Vec<CodeUse>,
    /// The last answer and how often in a row it was the same.
    pub last_answer: Option<(String, u32)>,
    /// When the last routine text went out.
    pub routine_at: Option<DateTime<Utc>>,
    /// The weeks of the last year in which one went out.
    pub texted: Option<TextedWeeks>,
    /// When the welcome was made, or left.
    pub welcomed_at: Option<DateTime<Utc>>,
    /// When the last text came in.
    pub heard_at: Option<DateTime<Utc>>,
    /// The gateway through which it came: people answer the number that they know.
    pub heard_by: Option<String>,
    /// Since when no text arrives on the phone, by what its network tells; nothing once one does, or
    /// the phone is heard from.
    pub fails_since: Option<DateTime<Utc>>,
    /// The last list that was asked for and did not end in one text.
    pub listed: Option<Listed>,
    /// The language that was asked for by text.
    pub language: Option<String>,
    /// The languages of the last texts that were stored, newest last.
    pub spoken: Vec<String>,
    /// Our last texts to the phone, as sums, newest last: what comes back is an echo.
    pub said: Vec<u32>,
    /// What it says again and again as soon as we speak.
    pub machine: Option<Machine>,
    /// On how many days in a row it was answered as often as a phone is.
    pub full_days: u32,
    /// When the operator was told last that it texts like a machine.
    pub machine_told_on: Option<NaiveDate>,
}

impl Talk {
    /// Whether neither side has said anything that the other could know it by.
    #[must_use]
    pub const fn is_new(&self) -> bool {
        self.heard_at.is_none() && self.routine_at.is_none() && self.welcomed_at.is_none()
    }
}

/// A text that came at once after one of ours: once that is chance, and again and again a machine.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Machine {
    /// The text, as a sum.
    pub text: u32,
    /// How often in a row.
    pub times: u32,
}

/// A list that is longer than one text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Listed {
    /// The question that it answers, as it was texted.
    pub text: String,
    /// How many items were shown.
    pub shown: u32,
}

/// Notices that wait to go together, in one text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Digest {
    /// The text.
    pub message: MessageId,
    /// How many notices it stands for.
    pub count: u32,
    /// Whom they are about.
    pub people: Vec<String>,
}

/// A code that was asked for, or a wrong one that came.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CodeUse {
    /// When.
    pub at: DateTime<Utc>,
    /// For which deed.
    pub deed: String,
    /// Whether it was a wrong one.
    pub was_wrong: bool,
}

/// A nudge that waits for its answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OpenNudge {
    /// When it was made.
    pub at: DateTime<Utc>,
    /// About which block.
    pub block: BlockId,
    /// About which job.
    pub task: TaskKind,
    /// Due day of the job's round.
    pub due: NaiveDate,
}
