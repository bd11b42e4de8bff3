//! Which jobs follow, with what figures, and when to speak of them.

pub mod feed;
pub mod nudge;
pub mod nutrients;
pub mod orders;
pub mod task;
