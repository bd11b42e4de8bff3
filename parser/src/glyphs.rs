//! From bytes to tokens: scripts, one form of each letter and digit, numbers as written, names as spelt.

pub(crate) mod figure;
pub(crate) mod fold;
pub(crate) mod names;
pub(crate) mod script;
pub(crate) mod token;
