//! Placeholder.

mod roll;
