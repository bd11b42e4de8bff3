//! Which two words stand side by side in listed phrases.
//!
//! Beside "cỏ" a word of no list is hardly anything else than the "làm" that it is one letter away
//! from, however short. Deliberately absent: phrases of more words.

use alloc::vec::Vec;

use crate::vocabulary::WordId;

/// The phrases of two words.
#[derive(Default)]
pub(crate) struct Pairs {
    /// By the first word.
    after: Vec<(WordId, WordId)>,
    /// By the second word, which stands first here.
    before: Vec<(WordId, WordId)>,
}

impl Pairs {
    /// Files the pairs.
    pub(crate) fn new(mut pairs: Vec<(WordId, WordId)>) -> Self {
        let mut turned: Vec<_> = pairs.iter().map(|(one, other)| (*other, *one)).collect();
        pairs.sort_unstable();
        pairs.dedup();
        turned.sort_unstable();
        turned.dedup();
        Self {
            after: pairs,
            before: turned,
        }
    }

    /// The words that may follow this one.
    pub(crate) fn after(&self, word: WordId) -> impl Iterator<Item = WordId> {
        beside(&self.after, word)
    }

    /// The words that may stand before this one.
    pub(crate) fn before(&self, word: WordId) -> impl Iterator<Item = WordId> {
        beside(&self.before, word)
    }
}

fn beside(pairs: &[(WordId, WordId)], word: WordId) -> impl Iterator<Item = WordId> {
    let start = pairs.partition_point(|(key, _)| *key < word);
    let from = pairs.get(start..).unwrap_or_default().iter();
    from.take_while(move |(key, _)| *key == word)
        .map(|(_, other)| *other)
}
