//! Which two words stand side by side in listed phrases.
//!
//! Beside "cỏ" a word of no list is hardly anything else than the "làm" that it is one letter away
//! from, however short. Deliberately absent: phrases of more words.

use alloc::vec::Vec;

use crate::{
    glyphs::fold::{BareWord, bare},
    lists::{
        lexicon::{Langs, Lexicon},
        repair::is_one_slip,
        spelling::unaccented,
        vocabulary::WordId,
    },
    meaning::sort,
};

/// Shorter words are not mended, even beside the other word of a phrase.
const LETTERS_MIN: usize = 3;

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
    fn after(&self, word: WordId) -> impl Iterator<Item = WordId> {
        beside(&self.after, word)
    }

    /// The words that may stand before this one.
    fn before(&self, word: WordId) -> impl Iterator<Item = WordId> {
        beside(&self.before, word)
    }
}

fn beside(pairs: &[(WordId, WordId)], word: WordId) -> impl Iterator<Item = WordId> {
    let start = pairs.partition_point(|(key, _)| *key < word);
    let from = pairs.get(start..).unwrap_or_default().iter();
    from.take_while(move |(key, _)| *key == word)
        .map(|(_, other)| *other)
}

/// What a word of no list is beside a listed one.
pub(crate) enum Slip {
    /// A slip of this word.
    Of(WordId),
    /// It says something, but it is not sure what.
    Unsure,
}

/// "lma cỏ", "hôm quua": the only word that this one may be a slip of beside the word before it or
/// after it, with which it is a phrase.
pub(crate) fn slip(
    text: &str,
    (before, after): (Option<WordId>, Option<WordId>),
    lexicon: &Lexicon,
    own: Langs,
) -> Option<Slip> {
    let pairs = &lexicon.pairs;
    let follows = before
        .into_iter()
        .flat_map(|word| pairs.after(word).map(move |other| (other, [word, other])));
    let leads = after
        .into_iter()
        .flat_map(|word| pairs.before(word).map(move |other| (other, [other, word])));
    let near = follows.chain(leads).filter_map(|(other, pair)| {
        let sure = slip_of(text, other, pair, lexicon, own)?;
        Some((other, sure))
    });
    // "hôm" and "hom" are one word.
    let plain = |word: WordId| lexicon.words.spelling(word).map(bare);
    let mut found: Option<(WordId, bool)> = None;
    for (word, sure) in near {
        match found {
            Some((first, _)) if first != word && plain(first) != plain(word) => {
                return Some(Slip::Unsure);
            }
            Some((_, true)) => {}
            Some((_, false)) | None => found = Some((word, sure)),
        }
    }
    found.map(|(word, sure)| if sure { Slip::Of(word) } else { Slip::Unsure })
}

/// Whether a text is a slip of this word, which makes a phrase of a pair; and whether that is sure.
fn slip_of(
    text: &str,
    word: WordId,
    pair: [WordId; 2],
    lexicon: &Lexicon,
    own: Langs,
) -> Option<bool> {
    let listed = lexicon.words.spelling(word)?;
    let first = listed.bytes().next().filter(u8::is_ascii);
    if first.is_some() && first != text.bytes().next() {
        return None;
    }
    let plain = unaccented(listed);
    let listed = plain.as_ref().map_or(listed, BareWord::as_str);
    if listed.len() < LETTERS_MIN || !is_one_slip(text, listed) {
        return None;
    }
    let (phrase, used) = lexicon.longest(pair.into_iter().map(Some), own)?;
    if used < pair.len() {
        return None;
    }
    // Two short days are one letter apart.
    let is_last = pair.last() == Some(&word);
    let swaps = is_last && text.len() == listed.len() && !has_same_letters(text, listed);
    Some(!(swaps && phrase.traits().has(sort::DAY | sort::NUMERAL)))
}

/// Whether nothing but the order of the letters differs.
fn has_same_letters(one: &str, other: &str) -> bool {
    let sum = |word: &str| {
        word.bytes()
            .fold(0_u32, |sum, letter| sum + u32::from(letter))
    };
    sum(one) == sum(other)
}
