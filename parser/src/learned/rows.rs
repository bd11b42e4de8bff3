//! Weights of clues as they ship: a row for each clue, with a weight for each of its columns.
//!
//! One format for both tables that are learned, used in place. It is small, for most of the program is
//! these tables: rows share the sets of columns that are frequent, and a weight is half a byte, its sign
//! and one of eight sizes.
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

/// The half byte of a weight: its sign, and which size it has.
pub(crate) const NEGATIVE: u8 = 8;
/// The sizes that the weights of a table have, the least first; less is nothing.
pub(crate) type Sizes = [i8; 8];

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

/// Rows of a table.
pub(crate) struct Rows {
    bytes: &'static [u8],
    /// What each half byte is worth.
    worths: [i32; 16],
}

impl Rows {
    /// Rows that lie in these bytes.
    pub(crate) fn new(bytes: &'static [u8], sizes: Sizes) -> Self {
        let mut worths = [0; 16];
        for (at, size) in sizes.into_iter().enumerate() {
            let (plus, minus) = worths.split_at_mut(usize::from(NEGATIVE));
            for (place, worth) in [(plus.get_mut(at), size), (minus.get_mut(at), -size)] {
                if let Some(place) = place {
                    *place = i32::from(worth);
                }
            }
        }
        Self { bytes, worths }
    }

    /// Adds the weights of a clue, from one column on.
    pub(crate) fn add(&self, sum: &mut [i32], clue: Clue, first: usize) {
        let Some((all, weights)) = self.find(clue) else {
            return;
        };
        let mut columns = all >> first;
        let mut at = (all.count_ones() - columns.count_ones()) as usize;
        while columns != 0 {
            let pair = weights.get(at / 2).copied().unwrap_or(0);
            let half = usize::from(pair >> (at % 2 * 4) & 0x0f);
            if let Some(place) = sum.get_mut(columns.trailing_zeros() as usize) {
                *place += self.worths.get(half).copied().unwrap_or(0);
            }
            columns &= columns - 1;
            at += 1;
        }
    }

    /// The columns of a clue, and its weights.
    fn find(&self, clue: Clue) -> Option<(u64, &'static [u8])> {
        let bucket = STARTS + bucket(clue) * START;
        let (start, end) = (self.start(bucket)?, self.start(bucket + START)?);
        let bytes = self.bytes.get(ROWS + start..ROWS + end)?;
        let (count, place) = find_tag(bytes, tag(clue))?;
        let mut rest = bytes.get(count * 2..)?;
        for _ in 0..place {
            let (columns, weights) = self.row(rest)?;
            rest = weights.get(columns.count_ones().div_ceil(2) as usize..)?;
        }
        self.row(rest)
    }

    /// The columns of the row that begins here, and where its weights do.
    fn row(&self, bytes: &'static [u8]) -> Option<(u64, &'static [u8])> {
        let (&first, mut bytes) = bytes.split_first()?;
        if first & FREQUENT != 0 {
            let at = usize::from(first & !FREQUENT) * SET;
            // The byte behind a set is not of it.
            let set = self.bytes.get(at..)?.first_chunk::<8>()?;
            return Some((u64::from_le_bytes(*set) << 8 >> 8, bytes));
        }
        let (mut set, mut left) = (0, first);
        while left != 0 {
            let (&byte, rest) = bytes.split_first()?;
            set |= u64::from(byte) << (left.trailing_zeros() * 8);
            bytes = rest;
            left &= left - 1;
        }
        Some((set, bytes))
    }

    fn start(&self, at: usize) -> Option<usize> {
        let &[low, middle, high] = self.bytes.get(at..)?.first_chunk()?;
        usize::try_from(u32::from_le_bytes([low, middle, high, 0])).ok()
    }
}

/// How many tags begin a bucket, and which of them is this one.
fn find_tag(bytes: &[u8], tag: u16) -> Option<(usize, usize)> {
    let (mut count, mut found) = (0, None);
    for pair in bytes.chunks_exact(2) {
        let &[low, high] = pair else {
            break;
        };
        let word = u16::from_le_bytes([low, high]);
        if word & (MORE - 1) == tag {
            found = found.or(Some(count));
        }
        count += 1;
        if word & MORE == 0 {
            break;
        }
    }
    found.map(|found| (count, found))
}
