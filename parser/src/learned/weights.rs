//! What each clue is worth: a table that a tool of the project learned.
//!
//! One byte a weight, used in place; a clue has only the weights that are not nothing, and most clues
//! are not in the table at all. How it is made: `teach`, with the tests.
//!
//! The table: what the steps from one piece to the next are worth (two bytes each, little end first),
//! how sure signs make (`trees`), where each bucket of clues begins (four bytes each), and the clues: the
//! half of the clue that is not its bucket, a mask of its columns, and its weights.

use crate::learned::{
    clues::{Clue, Clues},
    course::{BORDERS, DENIAL, STEPS, USE_COUNT, USES},
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

/// The table.
pub(crate) struct Weights {
    bytes: &'static [u8],
}

pub(crate) const SURE: usize = BORDERS * STEPS * 2;
const STARTS: usize = SURE + TREES * TREE_BYTES;
/// The upper half of a clue is its bucket.
pub(crate) const BUCKETS: usize = 1 << 16;
const ROWS: usize = STARTS + (BUCKETS + 1) * 4;
/// The lower half of a clue, and the mask of its columns.
const TAG: usize = 2;
pub(crate) const MASK: usize = 7;

const _: () = assert!(
    COLUMNS + MORE_COLUMNS <= MASK * 8,
    "each column has a bit of the mask"
);

impl Weights {
    /// The table that ships.
    pub(crate) const fn built_in() -> Self {
        Self { bytes: TABLE }
    }

    /// A table that was just learned.
    #[cfg(test)]
    pub(crate) const fn of(bytes: &'static [u8]) -> Self {
        Self { bytes }
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
        trees::sum(self.bytes.get(SURE..STARTS).unwrap_or_default(), signs)
    }

    /// What the clues of a piece are worth together.
    pub(crate) fn sum(&self, clues: &Clues<'_, '_>, at: usize) -> [i32; COLUMNS] {
        let mut sum = [0; COLUMNS];
        clues.each(at, |clue| self.add(&mut sum, clue, 0));
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
        self.add(sum, clue, COLUMNS);
    }

    /// Adds the weights of a clue, from one column on.
    fn add(&self, sum: &mut [i32], clue: Clue, first: usize) {
        let Some((mut mask, mut weights)) = self.row(clue) else {
            return;
        };
        let before = mask & ((1 << first) - 1);
        weights = weights
            .get(before.count_ones() as usize..)
            .unwrap_or_default();
        mask >>= first;
        for weight in weights {
            if mask == 0 {
                return;
            }
            if let Some(place) = sum.get_mut(mask.trailing_zeros() as usize) {
                *place += i32::from(weight.cast_signed());
            }
            mask &= mask - 1;
        }
    }

    /// The columns of a clue, and its weights.
    fn row(&self, clue: Clue) -> Option<(u64, &'static [u8])> {
        let bucket = STARTS + (clue >> 16) as usize * 4;
        let start = self.four_bytes(bucket)?;
        let end = self.four_bytes(bucket + 4)?;
        let mut rows = self.bytes.get(ROWS + start..ROWS + end)?;
        let [tag, tag2, ..] = clue.to_le_bytes();
        while let Some((&[low, high], rest)) = rows.split_first_chunk::<TAG>() {
            let (bytes, rest) = rest.split_first_chunk::<MASK>()?;
            let mut whole = [0; 8];
            for (place, byte) in whole.iter_mut().zip(bytes) {
                *place = *byte;
            }
            let mask = u64::from_le_bytes(whole);
            let (weights, rest) = rest.split_at_checked(mask.count_ones() as usize)?;
            if (low, high) == (tag, tag2) {
                return Some((mask, weights));
            }
            rows = rest;
        }
        None
    }

    fn two_bytes(&self, start: usize) -> i32 {
        match self.bytes.get(start..start + 2) {
            Some(&[low, high]) => i32::from(i16::from_le_bytes([low, high])),
            _ => 0,
        }
    }

    fn four_bytes(&self, start: usize) -> Option<usize> {
        let bytes = self.bytes.get(start..)?.first_chunk::<4>()?;
        usize::try_from(u32::from_le_bytes(*bytes)).ok()
    }
}
