//! The clues that are learned of: those that several texts show.

use std::{collections::BTreeMap, vec::Vec};

use crate::learned::clues::Clue;

/// A clue that only so few pieces show is none.
const SHOWN_MIN: u32 = 2;

/// Each clue with its row.
pub(super) struct Features(BTreeMap<Clue, u32>);

impl Features {
    /// The clues of all texts that are learned of.
    pub(super) fn of(clues: impl Iterator<Item = Clue>) -> Self {
        let mut shown: BTreeMap<Clue, u32> = BTreeMap::new();
        for clue in clues {
            *shown.entry(clue).or_default() += 1;
        }
        shown.retain(|_, times| *times >= SHOWN_MIN);
        for (row, (_, place)) in shown.iter_mut().enumerate() {
            *place = row as u32;
        }
        Self(shown)
    }

    /// Number of rows.
    pub(super) fn len(&self) -> usize {
        self.0.len()
    }

    /// All of them, in order.
    pub(super) fn each(&self) -> impl Iterator<Item = (Clue, u32)> {
        self.0.iter().map(|(clue, row)| (*clue, *row))
    }

    /// The rows of clues; what has none is left out.
    pub(super) fn rows(&self, clues: &[Clue]) -> Vec<u32> {
        clues
            .iter()
            .filter_map(|clue| self.0.get(clue).copied())
            .collect()
    }
}
