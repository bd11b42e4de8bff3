//! Chance that can be repeated: the same seed gives the same valley, faults and all.

use chrono::TimeDelta;

/// The generator "split mix 64" (Steele, Lea and Flood, "Fast splittable pseudorandom number
/// generators", 2014): small, and good enough to choose with.
#[derive(Clone, Debug)]
pub(crate) struct Chance(u64);

impl Chance {
    pub(crate) const fn new(seed: u64) -> Self {
        Self(seed)
    }

    const fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// A number from 0 up to, and not including, this one.
    pub(crate) fn below(&mut self, end: u32) -> u32 {
        u32::try_from(self.next() % u64::from(end.max(1))).expect("less than a u32")
    }

    /// Whether something happens that happens once in so many times.
    pub(crate) fn once_in(&mut self, times: u32) -> bool {
        self.below(times) == 0
    }

    pub(crate) fn pick<'a, T>(&mut self, from: &'a [T]) -> &'a T {
        let index = self.below(u32::try_from(from.len()).expect("a short list"));
        &from[index as usize]
    }

    pub(super) fn minutes(&mut self, from: u32, to: u32) -> TimeDelta {
        TimeDelta::minutes(i64::from(from + self.below(to - from)))
    }
}
