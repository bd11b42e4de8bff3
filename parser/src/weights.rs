//! What each clue is worth: two tables that a tool of the project learned.
//!
//! One byte a weight, used in place. How they are made: `teach`, with the tests. The first table says
//! what a piece tells of; the second, of fewer rows, which sickness, which cause, what a number is for.

use crate::{
    clues::{Clue, Clues},
    course::{BORDERS, DENIAL, STEPS, USE_COUNT, USES},
    sure::{SIGNS, Sign},
};

/// Columns of a row of the first table.
pub(crate) const COLUMNS: usize = DENIAL + 1;
/// Its rows: one for each value of a clue.
pub(crate) const ROWS: usize = 1 << 16;
/// Columns of a row of the second.
pub(crate) const MORE_COLUMNS: usize = USES + USE_COUNT;
/// Its rows: several clues share one.
#[cfg(test)]
pub(crate) const MORE_ROWS: usize = ROWS >> SHARED_BITS;
const SHARED_BITS: u32 = 3;
/// So many steps of a weight are one unit of log-odds.
#[cfg(test)]
pub(crate) const SCALE: f32 = 24.0;

static TABLES: &[u8] = include_bytes!("../weights/tellings.bin");

/// Both tables, behind how sure each sign makes and what the steps from one piece to the next are worth (two bytes each, little
/// end first).
pub(crate) struct Weights {
    bytes: &'static [u8],
}

const SURE: usize = BORDERS * STEPS * 2;
const HEAD: usize = SURE + SIGNS * 2;
const MORE: usize = HEAD + ROWS * COLUMNS;

/// The row of the second table that a clue has.
pub(crate) const fn more_row(clue: Clue) -> usize {
    (clue as usize) >> SHARED_BITS
}

impl Weights {
    /// The tables that ship.
    pub(crate) const fn built_in() -> Self {
        Self { bytes: TABLES }
    }

    /// Tables that were just learned.
    #[cfg(test)]
    pub(crate) const fn of(bytes: &'static [u8]) -> Self {
        Self { bytes }
    }

    /// What the steps over a border are worth.
    pub(crate) fn steps(&self, border: usize) -> [i32; STEPS] {
        let mut steps = [0; STEPS];
        for (at, step) in steps.iter_mut().enumerate() {
            let start = (border * STEPS + at) * 2;
            let bytes = self.bytes.get(start..start + 2);
            if let Some(&[low, high]) = bytes {
                *step = i32::from(i16::from_le_bytes([low, high]));
            }
        }
        steps
    }

    /// How sure a reading with these signs is.
    pub(crate) fn sure(&self, signs: &[Sign]) -> i32 {
        let sign = |sign: &Sign| {
            let start = SURE + usize::from(*sign) * 2;
            match self.bytes.get(start..start + 2) {
                Some(&[low, high]) => i32::from(i16::from_le_bytes([low, high])),
                _ => 0,
            }
        };
        signs.iter().map(sign).sum()
    }

    /// What the clues of a piece are worth together.
    pub(crate) fn sum(&self, clues: &Clues<'_, '_>, at: usize) -> [i32; COLUMNS] {
        let mut sum = [0_i32; COLUMNS];
        let rows = self.bytes.get(HEAD..).unwrap_or_default();
        clues.each(at, |clue| add_row(&mut sum, rows, usize::from(clue)));
        sum
    }

    /// The same of the second table, on top of what is there.
    pub(crate) fn add_piece(
        &self,
        sum: &mut [i32; MORE_COLUMNS],
        clues: &Clues<'_, '_>,
        at: usize,
    ) {
        clues.each(at, |clue| self.add_clue(sum, clue));
    }

    /// One clue of the second table, on top of what is there.
    pub(crate) fn add_clue(&self, sum: &mut [i32; MORE_COLUMNS], clue: Clue) {
        let rows = self.bytes.get(MORE..).unwrap_or_default();
        add_row(sum, rows, more_row(clue));
    }
}

fn add_row<const N: usize>(sum: &mut [i32; N], rows: &[u8], row: usize) {
    let start = row * N;
    if let Some(row) = rows.get(start..start + N) {
        for (place, weight) in sum.iter_mut().zip(row) {
            *place += i32::from(weight.cast_signed());
        }
    }
}
