//! What a question is about, in the words that stand for it outside.

use alloc::{string::String, vec::Vec};

use crate::{
    kind::Kind,
    reading::{Alarm, Entry, Query, Topic},
};

impl Topic {
    /// Whether the bot is to do something, not only to answer.
    #[must_use]
    pub const fn is_deed(self) -> bool {
        matches!(
            self,
            Self::Window
                | Self::Warn
                | Self::Hold
                | Self::LeaveAlone
                | Self::GoOn
                | Self::Moved
                | Self::Tell
                | Self::Fix
                | Self::Pass
                | Self::Promise
                | Self::Kept
                | Self::HandOver
                | Self::Ask
                | Self::AskHarm
                | Self::Trained
                | Self::Stock
                | Self::Sent
                | Self::Buying
                | Self::PickUp
        ) || self.is_of_people()
    }

    /// Whether people and land pass from one to another by it.
    #[must_use]
    pub const fn is_of_people(self) -> bool {
        matches!(
            self,
            Self::Owner | Self::Divide | Self::Join | Self::Leave | Self::Contact
        )
    }

    /// Whether it is entered in a book, where names and numbers follow; what was paid is asked, too.
    #[must_use]
    pub const fn is_of_books(self) -> bool {
        matches!(
            self,
            Self::Trained | Self::Paid | Self::Stock | Self::Sent | Self::Buying | Self::PickUp
        )
    }

    /// Whether it is asked about a kind of work.
    pub(crate) const fn takes_kind(self) -> bool {
        matches!(
            self,
            Self::When
                | Self::MayI
                | Self::HowTo
                | Self::Job
                | Self::Count
                | Self::Last
                | Self::Train
                | Self::Late
                | Self::Warn
                | Self::Fix
                | Self::Trained
        )
    }
}

impl Alarm {
    /// Whether what it tells is often only asked about.
    pub(crate) const fn is_asked_about(self) -> bool {
        matches!(self, Self::Money)
    }
}

impl Query {
    /// A question about this, without any name in it.
    pub(crate) const fn of(topic: Topic, kind: Option<Kind>) -> Self {
        Self {
            topic,
            group: None,
            member: None,
            block: None,
            kind,
            area: None,
            period_days: None,
            number: None,
            yes: None,
            language: None,
            material: None,
            entry: Entry {
                lines: Vec::new(),
                amount: None,
                clone_name: None,
                when: None,
                words: String::new(),
            },
        }
    }

    /// What is asked or to be done, in the words of `budwood read`: one word for each answer, however
    /// the lists came to it.
    #[must_use]
    pub fn what(&self, by_adviser: bool) -> &'static str {
        match (self.topic, self.kind) {
            (Topic::Status | Topic::Member, Some(Kind::Girth)) => "girth",
            (Topic::Status | Topic::HowMuch, Some(Kind::Dead)) => "dead",
            (Topic::Status, Some(Kind::TappingOpened)) => "ready",
            (Topic::Status, Some(Kind::Disease)) => "sick",
            (Topic::Status, Some(Kind::Rain)) => "rain",
            (Topic::Status, Some(_)) if by_adviser => "job",
            (Topic::HowMuch, Some(Kind::Fertilised)) if by_adviser => "bags",
            (Topic::HowMuch, Some(Kind::Fertilised)) => "how_much_feed",
            (Topic::HowMuch, _) if by_adviser => "count",
            (Topic::HowMuch, _) => "how_many_plants",
            (Topic::Member, _) => "farmer",
            (Topic::Next, _) if !by_adviser => "now",
            (Topic::Hold | Topic::LeaveAlone, _) => "hold",
            (Topic::GoOn, _) => "go",
            (Topic::Moved, _) => "move",
            (Topic::Open, _) => "hand_over",
            (Topic::Whose, _) => "who",
            (Topic::Cause, _) => "dead",
            (Topic::Erase, _) => "my_data",
            (topic, _) => topic.name(),
        }
    }
}
