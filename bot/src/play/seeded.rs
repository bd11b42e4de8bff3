//! Chance that falls the same way in every run.
//!
//! A small generator of its own (splitmix64, published by Steele, Lea and Flood, OOPSLA 2014), so
//! that no library's next version changes the demo. Good enough for a play, not for secrets.

/// The golden ratio as a fraction of 2^64, odd: the step of the generator.
const STEP: u64 = 0x9E37_79B9_7F4A_7C15;

/// A generator with its place in the sequence.
#[derive(Clone, Debug)]
pub(crate) struct Seeded(u64);

impl Seeded {
    /// Begins the sequence of this seed.
    pub(crate) const fn new(seed: u64) -> Self {
        Self(seed)
    }

    /// A number of this range, both ends included. An empty range gives its low end.
    pub(crate) fn between(&mut self, low: u32, high: u32) -> u32 {
        let span = u64::from(high.saturating_sub(low)) + 1;
        let offset = u32::try_from(self.next() % span).unwrap_or(0);
        low.saturating_add(offset)
    }

    /// True in so many of a hundred cases.
    pub(crate) fn in_a_hundred(&mut self, cases: u32) -> bool {
        self.between(1, 100) <= cases
    }

    /// One of these.
    pub(crate) fn one_of<'a, T>(&mut self, these: &'a [T]) -> Option<&'a T> {
        let last = u32::try_from(these.len().checked_sub(1)?).ok()?;
        these.get(usize::try_from(self.between(0, last)).ok()?)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(STEP);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^ (mixed >> 31)
    }
}

#[cfg(test)]
mod tests {
    use super::Seeded;

    /// First outputs for the seed 1234567, as published with the reference code of splitmix64
    /// (prng.di.unimi.it; values from memory of the many libraries that test against them).
    #[test]
    fn gives_the_published_sequence() {
        let mut seeded = Seeded::new(1_234_567);
        let first = [seeded.next(), seeded.next(), seeded.next()];
        assert_eq!(
            first,
            [
                6_457_827_717_110_365_317,
                3_203_168_211_198_807_973,
                9_817_491_932_198_370_423
            ]
        );
    }

    #[test]
    fn stays_in_its_range_and_reaches_both_ends() {
        let mut seeded = Seeded::new(7);
        let drawn: Vec<u32> = (0..200).map(|_| seeded.between(3, 5)).collect();
        assert_eq!(drawn.iter().min(), Some(&3));
        assert_eq!(drawn.iter().max(), Some(&5));
    }
}
