//! The word lists, compiled, and how a word of a text is found in them, slips included.

pub(crate) mod called;
pub(crate) mod compile;
pub(crate) mod lexicon;
pub(crate) mod pairs;
pub(crate) mod piece;
pub(crate) mod repair;
pub(crate) mod runs;
pub(crate) mod spelling;
pub(crate) mod vocabulary;
