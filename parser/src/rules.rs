//! What the lists make of the pieces: reports with their slots, and what takes a report back.

pub(crate) mod anchors;
pub(crate) mod gate;
pub(crate) mod lengths;
pub(crate) mod plans;
pub(crate) mod proof;
pub(crate) mod reports;
pub(crate) mod roles;
pub(crate) mod row;
pub(crate) mod segment;
pub(crate) mod slots;
pub(crate) mod things;
pub(crate) mod unsure;
