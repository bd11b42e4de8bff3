//! What can be printed, and what a printed sheet's rows stand for.

use std::fmt;

use budwood_scheduler::{BlockId, GroupId};
use chrono::{DateTime, Utc};

/// A sheet that can be printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SheetKind {
    /// The blocks of a group, with room to write.
    Meeting,
    /// What each takes and pays of fertiliser that is bought together.
    Shares,
    /// Plants to be fetched.
    Pickup,
    /// Whom to visit, and why.
    Visits,
    /// Who is left in peace.
    Holds,
    /// Boxes for girths, and which trees.
    Census,
    /// A card for each farmer's pocket.
    Cards,
    /// The jobs of half a year, week by week.
    Season,
    /// What whoever takes a group over must know.
    Handover,
}

impl SheetKind {
    /// Every one.
    pub const ALL: [Self; 9] = [
        Self::Meeting,
        Self::Shares,
        Self::Pickup,
        Self::Visits,
        Self::Holds,
        Self::Census,
        Self::Cards,
        Self::Season,
        Self::Handover,
    ];

    /// Its name in commands, files and records.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Meeting => "meeting",
            Self::Shares => "shares",
            Self::Pickup => "pickup",
            Self::Visits => "visits",
            Self::Holds => "holds",
            Self::Census => "census",
            Self::Cards => "cards",
            Self::Season => "season",
            Self::Handover => "handover",
        }
    }

    /// The one with this name.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.name() == name)
    }
}

impl fmt::Display for SheetKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

/// A sheet that was printed: what its rows stand for, so that they can be texted back whenever.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Printed {
    /// The number on the paper.
    pub number: u32,
    /// Of whom.
    pub group: GroupId,
    /// When it was made.
    pub at: DateTime<Utc>,
    /// The block of each row, from the first.
    pub rows: Vec<BlockId>,
}
