//! What each clue of a question is worth: a table that a tool of the project learned (`teach`).
//!
//! The table: what each column is worth without a clue, then what each sign of a whole text adds to
//! each column (two bytes each, little end first), where each bucket of clues begins (four bytes each), and the clues: the lower half of the clue, how many
//! weights it has, and each weight with its column.

use crate::{
    learned::clues::Clue,
    spoken::{
        meant::COLUMNS,
        signals::{SIGNALS, Signals},
    },
};

/// So many steps of a weight are one unit of log-odds, for a text of one clue.
pub(crate) const SCALE: f64 = 8.0;
/// What stands for the whole text is finer.
pub(crate) const FINER: f64 = 8.0;
/// The upper bits of a clue are its bucket.
const BUCKET_BITS: u32 = 14;
pub(crate) const BUCKETS: usize = 1 << BUCKET_BITS;
const STARTS: usize = (SIGNALS + 1) * COLUMNS * 2;
const ROWS: usize = STARTS + (BUCKETS + 1) * 4;

static TABLE: &[u8] = include_bytes!("../../weights/askings.bin");

/// The table.
pub(crate) struct Askings {
    bytes: &'static [u8],
}

/// The bucket of a clue.
pub(crate) const fn bucket(clue: Clue) -> usize {
    (clue >> (32 - BUCKET_BITS)) as usize
}

impl Askings {
    /// The table that ships.
    pub(crate) const fn built_in() -> Self {
        Self { bytes: TABLE }
    }

    /// A table that was just learned.
    #[cfg(test)]
    pub(crate) const fn of(bytes: &'static [u8]) -> Self {
        Self { bytes }
    }

    /// Adds the weights of a clue.
    pub(crate) fn add(&self, sum: &mut [i32; COLUMNS], clue: Clue) {
        let Some(weights) = self.weights(clue) else {
            return;
        };
        for pair in weights.chunks_exact(2) {
            if let [column, weight] = pair
                && let Some(place) = sum.get_mut(usize::from(*column))
            {
                *place += i32::from(weight.cast_signed());
            }
        }
    }

    /// How likely each column is, of a text with so many clues: odds, the best of them one. Long texts
    /// have many clues that say little, so the root of their number is taken.
    pub(crate) fn odds(
        &self,
        sum: &[i32; COLUMNS],
        count: u32,
        signals: Signals,
    ) -> [f64; COLUMNS] {
        const FINE: u32 = 1 << 12;
        let root = f64::from(count.max(1).saturating_mul(FINE).isqrt());
        let root = root / f64::from(FINE.isqrt());
        let mut worth = [0.0; COLUMNS];
        for (at, (place, sum)) in worth.iter_mut().zip(sum).enumerate() {
            let mut whole = i32::from(self.two_bytes(at * 2));
            for sign in (0..SIGNALS).filter(|sign| signals >> sign & 1 == 1) {
                whole += i32::from(self.two_bytes(((sign + 1) * COLUMNS + at) * 2));
            }
            *place = (f64::from(*sum) / root + f64::from(whole) / FINER) / SCALE;
        }
        let best = worth.iter().copied().fold(f64::MIN, f64::max);
        worth.map(|worth| libm::exp(worth - best))
    }

    fn weights(&self, clue: Clue) -> Option<&'static [u8]> {
        let at = STARTS + bucket(clue) * 4;
        let (start, end) = (self.four_bytes(at)?, self.four_bytes(at + 4)?);
        let mut rows = self.bytes.get(ROWS + start..ROWS + end)?;
        let [low, high, ..] = clue.to_le_bytes();
        while let [first, second, count, rest @ ..] = rows {
            let (weights, rest) = rest.split_at_checked(usize::from(*count) * 2)?;
            if (*first, *second) == (low, high) {
                return Some(weights);
            }
            rows = rest;
        }
        None
    }

    fn two_bytes(&self, start: usize) -> i16 {
        match self.bytes.get(start..start + 2) {
            Some(&[low, high]) => i16::from_le_bytes([low, high]),
            _ => 0,
        }
    }

    fn four_bytes(&self, start: usize) -> Option<usize> {
        let bytes = self.bytes.get(start..)?.first_chunk::<4>()?;
        usize::try_from(u32::from_le_bytes(*bytes)).ok()
    }
}
