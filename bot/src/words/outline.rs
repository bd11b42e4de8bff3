//! The outline of a block as somebody took it.

use budwood_scheduler::BlockId;
use chrono::NaiveDate;

/// An outline, with how and when it was taken.
#[derive(Clone, Debug, PartialEq)]
pub struct TakenOutline {
    /// Of which block.
    pub block: BlockId,
    /// Latitude and longitude of the corners, in the order in which they were walked.
    pub corners: Vec<(f64, f64)>,
    /// How it was taken.
    pub how: HowTaken,
    /// On which day.
    pub on: NaiveDate,
}

/// How an outline was taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HowTaken {
    /// Somebody walked around with a positioning device.
    Walked,
    /// A surveyor measured it.
    Surveyed,
    /// It was drawn on a picture or a map.
    Drawn,
}

impl HowTaken {
    /// Every way.
    pub const ALL: [Self; 3] = [Self::Walked, Self::Surveyed, Self::Drawn];

    /// Its name in commands and records.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Walked => "walked",
            Self::Surveyed => "surveyed",
            Self::Drawn => "drawn",
        }
    }

    /// The one with this name.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|how| how.name() == name)
    }
}
