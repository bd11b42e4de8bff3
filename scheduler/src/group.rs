//! What concerns more than one block: sickness that spreads, silence, trust, whom to visit.

pub mod health;
pub mod silence;
pub mod trust;
pub mod visit;
