//! Forms of what partners get beside tables: places on a map, days of a calendar, and how far two
//! pieces of land lie over each other.
//!
//! Deliberately absent: anything of rubber, and who may get what; that is the engine's
//! `questions::parcels`.

pub mod days;
pub mod overlap;
pub mod places;
