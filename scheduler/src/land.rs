//! Who there is, their land, and how the trees on it stand.

pub mod block;
pub mod directory;
#[cfg(test)]
pub(crate) mod enrolment;
pub mod stand;
