//! Facts, in the past tense. They are appended and never changed.
//!
//! A correction is a new event that says which event it supersedes.

use alloc::string::String;

use budwood_parser::{Ailment, Details, Kind};
use chrono::{DateTime, NaiveDate, Utc};

use crate::words::{
    entered::Entered,
    hold::Hold,
    id::{BlockId, EventId, GroupId, MessageId, PersonId},
    job::TaskKind,
    passed::Passed,
};

/// One fact.
#[derive(Clone, Debug, PartialEq)]
pub struct Event {
    /// Which; also the order in which facts became known.
    pub id: EventId,
    /// When the bot learned it.
    pub at: DateTime<Utc>,
    /// Who told it, if a person did.
    pub by: Option<PersonId>,
    /// How it is known.
    pub source: Source,
    /// The text that told it.
    pub message: Option<MessageId>,
    /// The event that this one corrects or takes back.
    pub supersedes: Option<EventId>,
    /// The fact.
    pub body: Body,
}

/// How a fact is known. Later ones are trusted more.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Source {
    /// The bot did it itself (a nudge sent).
    Bot,
    /// The farmer's own text.
    OwnText,
    /// A leader's text for a member.
    Leader,
    /// A sheet or list.
    Sheet,
    /// A visit of the adviser.
    Visit,
}

/// When something happened: a day, or some day between two.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Happened {
    /// The first possible day.
    pub from: NaiveDate,
    /// The last possible day.
    pub to: NaiveDate,
}

impl Happened {
    /// On this day.
    #[must_use]
    pub const fn on(day: NaiveDate) -> Self {
        Self { from: day, to: day }
    }

    /// The day to reckon from: the middle of the span.
    #[must_use]
    pub fn day(self) -> NaiveDate {
        self.from + (self.to - self.from) / 2
    }
}

/// What somebody agrees to, or does not: each by itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Purpose {
    /// To be texted about work.
    Reminders,
    /// That buyers are told their name and where their land lies.
    Buyers,
}

/// What happened.
#[derive(Clone, Debug, PartialEq)]
pub enum Body {
    /// Work or a sight was reported for a block.
    Reported {
        /// Where.
        block: BlockId,
        /// What kind.
        kind: Kind,
        /// When.
        on: Happened,
        /// The rest.
        details: Details,
    },
    /// A job that no report proves was said to be done.
    TaskDone {
        /// Where.
        block: BlockId,
        /// Which job.
        task: TaskKind,
        /// When.
        on: NaiveDate,
    },
    /// The farmer asked to be reminded later.
    Postponed {
        /// Where.
        block: BlockId,
        /// Which job.
        task: TaskKind,
        /// Not before this day.
        until: NaiveDate,
    },
    /// A nudge was given.
    Nudged {
        /// Where.
        block: BlockId,
        /// Which job.
        task: TaskKind,
        /// Local day on which it was put in the outbox.
        on: NaiveDate,
        /// The due day of the job nudged for: a new round starts the count of tries anew.
        due: NaiveDate,
    },
    /// The event named by `supersedes` was taken back.
    TakenBack {
        /// The block of that event.
        block: BlockId,
    },
    /// The adviser, who has looked, lets a neighbour of a cluster look too.
    Warned {
        /// Whose block lies near.
        block: BlockId,
        /// What was seen there.
        ailment: Ailment,
        /// When the adviser said so.
        on: NaiveDate,
    },
    /// The adviser opened the planting window of a group.
    WindowOpened {
        /// Which group.
        group: GroupId,
        /// From this day.
        on: NaiveDate,
    },
    /// The adviser held planting in a group again: what was opened is open no more.
    PlantingHeld {
        /// Which group.
        group: GroupId,
        /// From this day.
        on: NaiveDate,
    },
    /// A person agreed to something.
    ConsentGiven {
        /// Who.
        person: PersonId,
        /// To what.
        purpose: Purpose,
        /// How.
        how: String,
    },
    /// A person said no to it, or STOP.
    ConsentWithdrawn {
        /// Who.
        person: PersonId,
        /// To what.
        purpose: Purpose,
        /// How.
        how: String,
    },
    /// A person is left in peace.
    LeftAlone {
        /// Who.
        person: PersonId,
        /// Since when, until when, and why.
        hold: Hold,
    },
    /// A person is reminded again.
    GoneOn {
        /// Who.
        person: PersonId,
    },
    /// A person's phones are lost. Which numbers stands with the phones: facts stay for ever, and
    /// numbers do not.
    PhoneLost {
        /// Whose.
        person: PersonId,
    },
    /// They are found again.
    PhoneFound {
        /// Whose.
        person: PersonId,
    },
    /// A person has another number now.
    NumberMoved {
        /// Who.
        person: PersonId,
    },
    /// Something was entered in the books of a group.
    Entered {
        /// Which group.
        group: GroupId,
        /// What.
        entered: Entered,
    },
    /// Another adviser looks after a group.
    HandedOver {
        /// Which.
        group: GroupId,
        /// Who.
        to: PersonId,
    },
    /// Land or people passed from one to another.
    Passed(Passed),
    /// A person's name and numbers were erased at their wish.
    Erased {
        /// Who.
        person: PersonId,
    },
}

impl Body {
    /// The block that this is about, if it is about one.
    #[must_use]
    pub const fn block(&self) -> Option<BlockId> {
        match self {
            Self::Reported { block, .. }
            | Self::TaskDone { block, .. }
            | Self::Postponed { block, .. }
            | Self::Nudged { block, .. }
            | Self::Warned { block, .. }
            | Self::TakenBack { block } => Some(*block),
            Self::Passed(passed) => passed.block(),
            Self::WindowOpened { .. }
            | Self::PlantingHeld { .. }
            | Self::ConsentGiven { .. }
            | Self::ConsentWithdrawn { .. }
            | Self::LeftAlone { .. }
            | Self::GoneOn { .. }
            | Self::PhoneLost { .. }
            | Self::PhoneFound { .. }
            | Self::NumberMoved { .. }
            | Self::Entered { .. }
            | Self::HandedOver { .. }
            | Self::Erased { .. } => None,
        }
    }
}
