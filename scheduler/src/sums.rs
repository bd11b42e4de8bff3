//! Sums that know nothing of rubber: days, whole numbers, chances and their intervals.

pub mod chance;
pub(crate) mod days;
#[cfg(test)]
pub(crate) mod draws;
pub(crate) mod rounding;
pub mod shares;
pub mod wilson;
