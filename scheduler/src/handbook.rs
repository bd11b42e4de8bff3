//! What the handbooks say, as data.

pub mod calendar;
pub mod lesson;
