//! Who there is, their land, and how the trees on it stand.

pub mod block;
pub mod book;
pub mod directory;
pub mod enrolment;
pub mod stand;
