//! What was learned of other people's texts makes of the pieces, and how sure that is.

pub(crate) mod account;
pub(crate) mod clues;
pub(crate) mod course;
pub(crate) mod rows;
pub(crate) mod sure;
pub(crate) mod tellings;
pub(crate) mod trees;
pub(crate) mod uses;
pub(crate) mod verdict;
pub(crate) mod weights;
