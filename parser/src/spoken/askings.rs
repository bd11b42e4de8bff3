//! What each clue of a question is worth: a table that a tool of the project learned (`teach`).
//!
//! The table: what each column is worth without a clue, then what each sign of a whole text adds to
//! each column (two bytes each, little end first), and the weights of the clues (`rows`).

use crate::{
    learned::{
        clues::Clue,
        rows::{COLUMNS_MAX, Rows, Sizes},
    },
    spoken::{
        meant::COLUMNS,
        signals::{SIGNALS, Signals},
    },
};

/// So many steps of a weight are one unit of log-odds, for a text of one clue.
pub(crate) const SCALE: f64 = 8.0;
/// What stands for the whole text is finer.
pub(crate) const FINER: f64 = 8.0;
/// The sizes of weights, in steps.
pub(crate) const SIZES: Sizes = [4, 5, 6, 7, 9, 12, 16, 24];
const ROWS: usize = (SIGNALS + 1) * COLUMNS * 2;

const _: () = assert!(COLUMNS <= COLUMNS_MAX, "all columns fit");

static TABLE: &[u8] = include_bytes!("../../weights/askings.bin");

/// The table.
pub(crate) struct Askings {
    bytes: &'static [u8],
    rows: Rows,
}

impl Askings {
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

    /// Adds the weights of a clue.
    pub(crate) fn add(&self, sum: &mut [i32; COLUMNS], clue: Clue) {
        self.rows.add(sum, clue, 0);
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

    fn two_bytes(&self, start: usize) -> i16 {
        match self.bytes.get(start..start + 2) {
            Some(&[low, high]) => i16::from_le_bytes([low, high]),
            _ => 0,
        }
    }
}
