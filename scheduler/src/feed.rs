//! How much fertiliser one round takes.

use crate::calendar::{Dose, FeedRound, Feeding};

const GRAMS_A_KILOGRAM: f64 = 1_000.0;

/// The round that trees of this age get: the last whose month has come.
#[must_use]
pub fn round_at(feeding: &Feeding, month: u32) -> Option<&FeedRound> {
    feeding
        .rounds
        .iter()
        .take_while(|round| round.month <= month)
        .last()
}

/// Grams of all products together for one tree.
#[must_use]
pub fn grams_per_tree(doses: &[Dose]) -> f64 {
    doses.iter().map(|dose| dose.grams).sum()
}

/// Kilograms of one product, or of all, for so many live trees. Always for live trees, never for
/// an area.
#[must_use]
pub fn kilograms(live_trees: u32, grams_per_tree: f64) -> f64 {
    f64::from(live_trees) * grams_per_tree / GRAMS_A_KILOGRAM
}
