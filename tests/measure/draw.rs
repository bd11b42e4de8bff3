//! Drawing by chance: from a list, by weight, by rate.

use crate::chance::Chance;

/// One of a list, all alike.
pub(crate) fn pick<'a, T>(chance: &mut Chance, from: &'a [T]) -> &'a T {
    let place = chance.place(from.len());
    from.get(place).expect("the list is not empty")
}

/// Whether something happens that happens so many times in ten thousand.
pub(crate) fn happens(chance: &mut Chance, in_ten_thousand: u64) -> bool {
    chance.below(10_000) < in_ten_thousand
}

/// One of a list, each as often as its weight says.
pub(crate) fn weighted<'a, T>(chance: &mut Chance, from: &'a [(T, u64)]) -> &'a T {
    let mut left = chance.below(from.iter().map(|(_, weight)| weight).sum());
    for (one, weight) in from {
        if left < *weight {
            return one;
        }
        left -= weight;
    }
    unreachable!("the number is below the sum of the weights")
}

/// A whole number from `low` to `high`, both included; `low` when the range is empty.
pub(crate) fn between(chance: &mut Chance, low: u32, high: u32) -> u32 {
    let width = u64::from(high.saturating_sub(low)) + 1;
    low + u32::try_from(chance.below(width)).expect("no wider than the range")
}
