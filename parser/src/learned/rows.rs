//! Weights of clues as they ship: a row for each clue, with a weight for each of its columns.
//!
//! One format for both tables that are learned, used in place. It is small, for most of the program is
//! these tables: rows share the sets of columns that are frequent, and a weight takes half a byte.
//!
//! The table: the frequent sets of columns (a bit for each column, little end first), where each bucket
//! of clues begins (three bytes), and the buckets. A bucket is the tags of its clues (two bytes each, the
//! highest bit says that another follows), then a row for each of them: its set, then its weights.
//! Deliberately absent: how a table is made (`teach`).

use crate::learned::clues::Clue;

/// Bits of a clue that say its bucket; and those, at its other end, that are its tag.
const BUCKET_BITS: u32 = 15;
const TAG_BITS: u32 = 15;
pub(crate) const BUCKETS: usize = 1 << BUCKET_BITS;
pub(crate) const MORE: u16 = 1 << TAG_BITS;
/// Bytes of the begin of a bucket.
pub(crate) const START: usize = 3;

/// Frequent sets; a row names one by its number, with the highest bit set.
pub(crate) const SETS: usize = 128;
pub(crate) const FREQUENT: u8 = 0x80;
/// Bytes of a set. Another set has one bit for each byte that is not zero, then these bytes.
pub(crate) const SET: usize = 7;
/// Columns that fit.
pub(crate) const COLUMNS_MAX: usize = SET * 8;

/// A weight is a sign and how much it is above the least one: so much fits half a byte, and what is
/// more goes on in the next halves, as long as they are full.
pub(crate) const NEGATIVE: u8 = 8;
pub(crate) const FIRST_FULL: u8 = 7;
pub(crate) const NEXT_FULL: u8 = 15;

const STARTS: usize = SETS * SET;
const ROWS: usize = STARTS + (BUCKETS + 1) * START;

/// The bucket of a clue.
pub(crate) const fn bucket(clue: Clue) -> usize {
    (clue >> (32 - BUCKET_BITS)) as usize
}

/// What of a clue is kept in its bucket.
pub(crate) const fn tag(clue: Clue) -> u16 {
    let [low, high, ..] = clue.to_le_bytes();
    u16::from_le_bytes([low, high]) & (MORE - 1)
}

/// Rows of a table whose weights are nothing below the least one.
pub(crate) struct Rows {
    bytes: &'static [u8],
    least: i32,
}

impl Rows {
    /// Rows that lie in these bytes.
    pub(crate) const fn new(bytes: &'static [u8], least: i32) -> Self {
        Self { bytes, least }
    }

    /// Adds the weights of a clue, from one column on.
    pub(crate) fn add(&self, sum: &mut [i32], clue: Clue, first: usize) {
        let Some((mut columns, mut halves)) = self.find(clue) else {
            return;
        };
        while columns != 0 {
            let column = columns.trailing_zeros() as usize;
            let weight = halves.weight(self.least);
            if let Some(place) = column.checked_sub(first).and_then(|at| sum.get_mut(at)) {
                *place += weight;
            }
            columns &= columns - 1;
        }
    }

    /// The columns of a clue, and its weights.
    fn find(&self, clue: Clue) -> Option<(u64, Halves)> {
        let bucket = STARTS + bucket(clue) * START;
        let (start, end) = (self.start(bucket)?, self.start(bucket + START)?);
        let mut rest = self.bytes.get(ROWS + start..ROWS + end)?;
        let (mut before, mut found) = (0, None);
        while let Some((&pair, more)) = rest.split_first_chunk() {
            rest = more;
            let word = u16::from_le_bytes(pair);
            if found.is_none() && word & (MORE - 1) == tag(clue) {
                found = Some(before);
            }
            before += 1;
            if word & MORE == 0 {
                break;
            }
        }
        for _ in 0..found? {
            let (columns, mut halves) = self.row(rest)?;
            for _ in 0..columns.count_ones() {
                halves.weight(self.least);
            }
            rest = halves.bytes;
        }
        self.row(rest)
    }

    /// The columns of the row that begins here, and where its weights do.
    fn row(&self, bytes: &'static [u8]) -> Option<(u64, Halves)> {
        let (&first, mut bytes) = bytes.split_first()?;
        let mut set = [0; 8];
        if first & FREQUENT == 0 {
            for (at, place) in set.iter_mut().enumerate() {
                if first >> at & 1 == 1 {
                    (*place, bytes) = bytes.split_first().map(|(byte, rest)| (*byte, rest))?;
                }
            }
        } else {
            let at = usize::from(first & !FREQUENT) * SET;
            for (place, byte) in set.iter_mut().zip(self.bytes.get(at..at + SET)?) {
                *place = *byte;
            }
        }
        let halves = Halves { bytes, high: None };
        Some((u64::from_le_bytes(set), halves))
    }

    fn start(&self, at: usize) -> Option<usize> {
        let &[low, middle, high] = self.bytes.get(at..)?.first_chunk()?;
        usize::try_from(u32::from_le_bytes([low, middle, high, 0])).ok()
    }
}

/// Bytes, half by half, the lower first.
struct Halves {
    bytes: &'static [u8],
    high: Option<u8>,
}

impl Halves {
    fn next(&mut self) -> u8 {
        if let Some(high) = self.high.take() {
            return high;
        }
        let Some((byte, rest)) = self.bytes.split_first() else {
            return 0;
        };
        self.bytes = rest;
        self.high = Some(byte >> 4);
        byte & 0x0f
    }

    fn weight(&mut self, least: i32) -> i32 {
        let first = self.next();
        let size = first & FIRST_FULL;
        let mut worth = least + i32::from(size);
        let mut is_full = size == FIRST_FULL;
        while is_full {
            let next = self.next();
            worth += i32::from(next);
            is_full = next == NEXT_FULL;
        }
        if first & NEGATIVE == 0 { worth } else { -worth }
    }
}
