//! Placeholder.

pub mod number;
