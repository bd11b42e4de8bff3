//! What the engine keeps in memory.

pub(crate) mod callers;
pub(crate) mod duplicates;
pub(crate) mod erasures;
pub(crate) mod links;
pub(crate) mod matters;
pub(crate) mod names;
pub(crate) mod parts;
pub(crate) mod rations;
pub(crate) mod send_queue;
mod silence;
pub(crate) mod snapshot;
pub(crate) mod world;
