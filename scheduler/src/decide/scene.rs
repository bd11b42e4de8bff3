//! The scene that a text falls into: who texts, their blocks, what was said before.

use alloc::{string::String, vec::Vec};

use budwood_parser::{Ailment, Kind, Sender};
use chrono::NaiveDate;

use super::{Draft, Missing};
use crate::{
    jobs::nudge,
    land::block::{BlockState, Count},
};

/// All that the decision may look at.
#[derive(Clone, Copy, Debug)]
pub struct Scene<'a> {
    /// Who texts.
    pub sender: Sender,
    /// The civil day on which the text was sent, where the farmer is.
    pub today: NaiveDate,
    /// The farmer's blocks.
    pub plots: &'a [Plot],
    /// The facts of the phone's last recorded text, if it is not long ago.
    pub last: &'a [Last],
    /// What we asked and wait for.
    pub pending: Option<&'a Pending>,
    /// What the last nudge asked for: its own word needs no block, its number no word.
    pub nudged: Option<Nudged<'a>>,
}

/// What a nudge asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Nudged<'a> {
    /// On which block.
    pub block: &'a str,
    /// The report that proves the job.
    pub kind: Kind,
    /// For which sickness to look.
    pub ailment: Option<Ailment>,
}

impl Scene<'_> {
    /// Whether the last nudge is so old that a word alone does not answer it any more.
    pub(super) fn has_lapsed(&self) -> bool {
        match self.pending {
            Some(Pending::Nudge { on, .. }) => nudge::has_lapsed(*on, self.today),
            Some(Pending::Confirm(_) | Pending::Ask { .. } | Pending::Choose { .. }) | None => {
                false
            }
        }
    }

    /// The scene without a nudge that has lapsed.
    pub(super) fn without_lapsed(self) -> Self {
        if self.has_lapsed() {
            Self {
                pending: None,
                nudged: None,
                ..self
            }
        } else {
            self
        }
    }

    /// The block of this name, capitals or not.
    #[must_use]
    pub fn plot(&self, name: &str) -> Option<&Plot> {
        self.plots
            .iter()
            .find(|plot| plot.name.eq_ignore_ascii_case(name))
    }
}

/// One block, as far as a text can be checked against it.
#[derive(Clone, Debug, PartialEq)]
pub struct Plot {
    /// The farmer's name for it.
    pub name: String,
    /// Planting points that the area holds, if it is known.
    pub points: Option<u32>,
    /// How it stands.
    pub state: BlockState,
}

impl Plot {
    /// The last report of this kind.
    #[must_use]
    pub fn last(&self, kind: Kind) -> Option<Count> {
        self.state.last.get(&kind).copied()
    }
}

/// A fact of the phone's last recorded text.
#[derive(Clone, Debug, PartialEq)]
pub struct Last {
    /// The fact.
    pub draft: Draft,
}

/// What we asked and wait for.
#[derive(Clone, Debug, PartialEq)]
pub enum Pending {
    /// "Is this right? 1 yes, 2 no".
    Confirm(Vec<Draft>),
    /// One slot.
    Ask {
        /// What was understood.
        facts: Vec<Draft>,
        /// The slot.
        missing: Missing,
    },
    /// A list to choose from by number.
    Choose {
        /// How many there are.
        options: u32,
    },
    /// Nothing but the last nudge.
    Nudge {
        /// The civil day on which it went.
        on: NaiveDate,
        /// Nothing was read back since.
        is_last: bool,
    },
}
