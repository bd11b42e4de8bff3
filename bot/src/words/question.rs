//! A question of ours that waits for its answer, and the large deeds that a code lets happen.

use budwood_parser::{Ailment, Cause};
use budwood_scheduler::{
    MessageId, PersonId,
    decide::{Draft, Missing},
};
use chrono::{DateTime, NaiveDate, Utc};

use super::passing::Passing;

/// A question of ours that waits for its answer.
#[derive(Clone, Debug, PartialEq)]
pub struct Open {
    /// When it was asked; it lapses.
    pub at: DateTime<Utc>,
    /// The text that it is about.
    pub message: MessageId,
    /// For whom the facts are, when a phone is shared or a leader reports.
    pub person: Option<PersonId>,
    /// What the same text tells of others: looked at once this is answered.
    pub rest: Option<String>,
    /// What was asked.
    pub question: Question,
}

/// What a text tells of one of several people.
#[derive(Clone, Debug, PartialEq)]
pub struct Told {
    /// Whom.
    pub person: PersonId,
    /// What.
    pub facts: Vec<Draft>,
}

/// What was asked.
#[derive(Clone, Debug, PartialEq)]
pub enum Question {
    /// "Is this right?"
    Confirm(Vec<Draft>),
    /// "Is all of this right?", of several people.
    ConfirmMany(Vec<Told>),
    /// One slot.
    Ask {
        /// What was understood so far.
        facts: Vec<Draft>,
        /// The slot.
        missing: Missing,
    },
    /// "For whom?", with the text that waits for the answer.
    ForWhom {
        /// Those who share the phone, in the order of the list.
        people: Vec<PersonId>,
        /// The text.
        text: String,
        /// When it was sent.
        sent_at: DateTime<Utc>,
    },
    /// A code that must come back before something large is done.
    Code {
        /// The code.
        code: String,
        /// What is done then.
        deed: Deed,
    },
}

/// Something large that needs a code.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Deed {
    /// Open the planting window of a group.
    OpenWindow {
        /// Which group.
        group: budwood_scheduler::GroupId,
        /// From this day.
        on: NaiveDate,
    },
    /// Let the neighbours of a cluster look.
    Warn {
        /// Which group.
        group: budwood_scheduler::GroupId,
        /// What was seen there.
        ailment: Ailment,
    },
    /// Hold planting in a group again.
    HoldPlanting {
        /// Which group.
        group: budwood_scheduler::GroupId,
        /// From this day.
        on: NaiveDate,
    },
    /// Erase the sender's name and numbers.
    Erase {
        /// Who.
        person: PersonId,
    },
    /// No more texts to an adviser.
    Stop,
    /// A person's phones are lost, but for the one that says so.
    Lost {
        /// Whose.
        person: PersonId,
    },
    /// They are found again.
    Found {
        /// Whose.
        person: PersonId,
    },
    /// A person has another number now.
    Moved {
        /// Who.
        person: PersonId,
        /// The number, E.164.
        number: String,
    },
    /// Send the adviser's own words.
    Announce {
        /// To whom.
        to: Audience,
        /// The words.
        words: String,
    },
    /// Another adviser looks after groups.
    HandOver {
        /// Who.
        to: PersonId,
        /// Which.
        groups: Vec<budwood_scheduler::GroupId>,
    },
    /// Ask a group what a storm, a fire, a flood or a drought did.
    AskHarm {
        /// Which group.
        group: budwood_scheduler::GroupId,
        /// Which of these.
        cause: Cause,
    },
    /// Ask the leaders about who is silent in their groups.
    AskLeaders,
    /// Land or people pass from one to another.
    Pass {
        /// What does.
        passing: Passing,
    },
    /// Write for others until the evening, and begin with this text.
    Visit {
        /// The text.
        text: String,
        /// When it was sent.
        sent_at: DateTime<Utc>,
    },
}

impl Deed {
    /// The name in records.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        match self {
            Self::OpenWindow { .. } => "open_window",
            Self::Warn { .. } => "warn",
            Self::HoldPlanting { .. } => "hold_planting",
            Self::Erase { .. } => "erase",
            Self::Stop => "stop",
            Self::Lost { .. } => "lost",
            Self::Found { .. } => "found",
            Self::Moved { .. } => "moved",
            Self::Announce { .. } => "announce",
            Self::HandOver { .. } => "hand_over",
            Self::AskHarm { .. } => "ask_harm",
            Self::AskLeaders => "ask_leaders",
            Self::Pass { .. } => "pass",
            Self::Visit { .. } => "visit",
        }
    }
}

/// Whom an adviser speaks to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Audience {
    /// Everybody in a group.
    Group(budwood_scheduler::GroupId),
    /// One person.
    Person(PersonId),
}
