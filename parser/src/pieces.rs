//! From tokens to pieces: names of blocks settled, numbers and days joined.

pub(crate) mod codes;
pub(crate) mod compose;
pub(crate) mod cutter;
pub(crate) mod dates;
pub(crate) mod endings;
pub(crate) mod known;
pub(crate) mod letters;
pub(crate) mod numerals;
pub(crate) mod tally;
pub(crate) mod text;
pub(crate) mod tongues;
pub(crate) mod used;
pub(crate) mod words;
