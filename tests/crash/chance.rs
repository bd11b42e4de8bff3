//! Random numbers that come again from the same seed.
//!
//! `SplitMix64` (Steele, Lea and Flood 2014, "Fast splittable pseudorandom number generators",
//! figure 17): a few lines, and no library to hold at a version for the sake of old seeds.

/// A row of numbers.
pub(crate) struct Chance(u64);

impl Chance {
    /// The row of a seed.
    pub(crate) const fn new(seed: u64) -> Self {
        Self(seed)
    }

    /// A number below `end`.
    pub(crate) fn below(&mut self, end: u64) -> u64 {
        self.next() % end
    }

    /// A place in a list of this length.
    pub(crate) fn place(&mut self, length: usize) -> usize {
        usize::try_from(self.below(length as u64)).unwrap()
    }

    /// The next number.
    pub(crate) fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }
}

/// The first number of the row of 1234567, as the algorithm's public reference code gives it
/// (from memory).
#[test]
fn the_row_is_the_published_one() {
    assert_eq!(Chance::new(1_234_567).next(), 6_457_827_717_110_365_317);
}
