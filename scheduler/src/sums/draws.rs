//! Repeatable draws for tests that make up many stands or lives.

use super::chance;

/// A linear congruential generator with the constants of Knuth's MMIX. The upper bits are used.
pub(crate) struct Draws(pub(crate) u64);

impl Draws {
    fn next(&mut self) -> u64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        self.0
    }

    /// A whole number below this one.
    pub(crate) fn below(&mut self, number: u64) -> u64 {
        (self.next() >> 33) % number
    }

    /// Between 0 and 1, without both.
    pub(crate) fn share(&mut self) -> f64 {
        ((self.next() >> 12) as f64 + 0.5) / (1_u64 << 52) as f64
    }

    /// Normal, about 0 with a standard deviation of 1.
    pub(crate) fn normal(&mut self) -> f64 {
        chance::quantile(self.share()).unwrap()
    }

    pub(crate) fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.share()
    }
}
