//! Placeholder.

pub mod number;
pub mod roll;
