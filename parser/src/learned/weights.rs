//! What each clue is worth: a table that a tool of the project learned.
//!
//! How it is made: `teach`, with the tests.
//!
//! The table: what the steps from one piece to the next are worth (two bytes each, little end first),
//! how sure signs make (`trees`), and the weights of the clues (`rows`).

use crate::learned::{
    clues::{Clue, Clues},
    course::{BORDERS, DENIAL, STEPS, USE_COUNT, USES},
    rows::{COLUMNS_MAX, Rows, Sizes},
    sure::Signs,
    trees::{self, TREE_BYTES, TREES},
};

/// Columns that say what a piece tells of.
pub(crate) const COLUMNS: usize = DENIAL + 1;
/// Columns that say which sickness, which cause, what a number is for; they stand behind the others.
pub(crate) const MORE_COLUMNS: usize = USES + USE_COUNT;
/// So many steps of a weight are one unit of log-odds.
pub(crate) const SCALE: i16 = 24;

static TABLE: &[u8] = include_bytes!("../../weights/tellings.bin");

/// The sizes of weights, in steps.
pub(crate) const SIZES: Sizes = [2, 3, 4, 5, 6, 8, 11, 16];

/// The table.
pub(crate) struct Weights {
    bytes: &'static [u8],
    rows: Rows,
}

pub(crate) const SURE: usize = BORDERS * STEPS * 2;
const ROWS: usize = SURE + TREES * TREE_BYTES;

const _: () = assert!(COLUMNS + MORE_COLUMNS <= COLUMNS_MAX, "all columns fit");

impl Weights {
    /// The table that ships.
    pub(crate) fn built_in() -> Self {
        Self::of(TABLE)
    }

    /// A table, as it ships or just learned.
    pub(crate) fn of(bytes: &'static [u8]) -> Self {
        let rows = bytes.get(ROWS..).unwrap_or_default();
        Self {
            bytes,
            rows: Rows::new(rows, SIZES),
        }
    }

    /// What the steps over a border are worth.
    pub(crate) fn steps(&self, border: usize) -> [i32; STEPS] {
        let mut steps = [0; STEPS];
        for (at, step) in steps.iter_mut().enumerate() {
            *step = self.two_bytes((border * STEPS + at) * 2);
        }
        steps
    }

    /// How sure a reading with these signs is, in hundredths of log-odds.
    pub(crate) fn sure(&self, signs: &Signs) -> i32 {
        trees::sum(self.bytes.get(SURE..ROWS).unwrap_or_default(), signs)
    }

    /// What the clues of a piece are worth together.
    pub(crate) fn sum(&self, clues: &Clues<'_, '_>, at: usize) -> [i32; COLUMNS] {
        let mut sum = [0; COLUMNS];
        clues.each(at, |clue| self.rows.add(&mut sum, clue, 0));
        sum
    }

    /// What they are worth for the further columns, on top of what is there.
    pub(crate) fn add_piece(
        &self,
        sum: &mut [i32; MORE_COLUMNS],
        clues: &Clues<'_, '_>,
        at: usize,
    ) {
        clues.each(at, |clue| self.add_clue(sum, clue));
    }

    /// One clue for the further columns, on top of what is there.
    pub(crate) fn add_clue(&self, sum: &mut [i32; MORE_COLUMNS], clue: Clue) {
        self.rows.add(sum, clue, COLUMNS);
    }

    fn two_bytes(&self, start: usize) -> i32 {
        match self.bytes.get(start..start + 2) {
            Some(&[low, high]) => i32::from(i16::from_le_bytes([low, high])),
            _ => 0,
        }
    }
}
