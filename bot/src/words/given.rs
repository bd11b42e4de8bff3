//! What was given to partners: whom, for what, and how much. Kept for good, so that anybody can be
//! told who has their data.

use chrono::{DateTime, Utc};

/// What a partner can get.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ParcelKind {
    /// Names and places of the blocks of those who agreed that buyers are told.
    Plots,
    /// Facts, blocks, people, texts and figures without names, numbers and places.
    Programme,
    /// Days to come, of groups and without names.
    Calendar,
}

impl ParcelKind {
    /// Every one.
    pub const ALL: [Self; 3] = [Self::Plots, Self::Programme, Self::Calendar];

    /// Its name in commands and records.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Plots => "plots",
            Self::Programme => "programme",
            Self::Calendar => "calendar",
        }
    }

    /// The one with this name.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.name() == name)
    }
}

/// That something was given.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Given {
    /// Which, from 1.
    pub number: u32,
    /// When.
    pub at: DateTime<Utc>,
    /// What.
    pub kind: ParcelKind,
    /// To whom.
    pub to: String,
    /// What for.
    pub purpose: String,
    /// Of how many people.
    pub people: u32,
    /// Of how many blocks.
    pub blocks: u32,
    /// The sum (SHA-256) of the list of its files with their sums.
    pub sha256: String,
}
