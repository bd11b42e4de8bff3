//! Finds the listed words that a misspelt word may stand for.
//!
//! Every listed word is filed under each spelling that loses one or two of its letters; a misspelt
//! word loses letters in the same way, and they meet. So the cost of one repair does not grow with
//! the number of words. What is found is then measured: first letter kept, one slip in a word of
//! five to seven letters, two in a longer one, cheap slips first.
//!
//! Deliberately absent: whether a repair may be used. A common word, or two kinds equally near,
//! is decided where the word stands.

use alloc::{boxed::Box, string::String, vec::Vec};

use hashbrown::HashMap;

use crate::lexicon::WordId;

/// Shorter words are never repaired: nearly all have a common word one letter away.
pub(crate) const REPAIR_LETTERS_MIN: usize = 5;
/// From here two slips are forgiven.
const TWO_SLIPS_LETTERS_MIN: usize = 8;
/// Longer words are no listed word with a slip.
const REPAIR_LETTERS_MAX: usize = 20;

/// Cost of a slip, in halves; a cheap one is one half.
const SLIP: u32 = 2;
const CHEAP_SLIP: u32 = 1;

/// The table of shortened spellings.
#[derive(Default)]
pub(crate) struct Repairs {
    /// Words by the hash of each shortened spelling. A chance match is found out by measuring.
    by_short: HashMap<u64, Vec<WordId>>,
    spellings: HashMap<WordId, Box<str>>,
}

impl Repairs {
    /// Files the words; the flag says which of them may be repaired to.
    pub(crate) fn new(words: Vec<(String, WordId, bool)>) -> Self {
        let mut repairs = Self::default();
        for (word, id, may_be_meant) in words {
            if may_be_meant && is_repairable(&word) {
                for_each_short(word.as_bytes(), |short| {
                    let ids = repairs.by_short.entry(short).or_default();
                    if ids.last() != Some(&id) {
                        ids.push(id);
                    }
                });
            }
            repairs.spellings.insert(id, word.into_boxed_str());
        }
        repairs
    }

    /// The letters of a word.
    pub(crate) fn spelling(&self, id: WordId) -> Option<&str> {
        self.spellings.get(&id).map(|word| &**word)
    }

    /// The nearest listed words; several when they are equally near.
    pub(crate) fn nearest(&self, written: &str) -> Vec<WordId> {
        let mut nearest = Vec::new();
        if !is_repairable(written) {
            return nearest;
        }
        let mut best = u32::MAX;
        let mut measured: Vec<WordId> = Vec::new();
        for_each_short(written.as_bytes(), |short| {
            for id in self.by_short.get(&short).into_iter().flatten() {
                if measured.contains(id) {
                    continue;
                }
                measured.push(*id);
                let listed = self.spelling(*id).unwrap_or("");
                let Some(cost) = cost(written.as_bytes(), listed.as_bytes()) else {
                    continue;
                };
                if cost < best {
                    best = cost;
                    nearest.clear();
                }
                if cost == best {
                    nearest.push(*id);
                }
            }
        });
        nearest
    }
}

fn is_repairable(word: &str) -> bool {
    (REPAIR_LETTERS_MIN..=REPAIR_LETTERS_MAX).contains(&word.len())
        && word.bytes().all(|byte| byte.is_ascii_lowercase())
}

fn slips_allowed(letters: usize) -> usize {
    if letters < TWO_SLIPS_LETTERS_MIN {
        1
    } else {
        2
    }
}

/// Calls with the hash of the word itself and of every spelling with one (or two) letters fewer.
/// The first letter is kept.
fn for_each_short(word: &[u8], mut each: impl FnMut(u64)) {
    each(hash_without(word, 0, 0));
    let two = slips_allowed(word.len()) == 2;
    for first in 1..word.len() {
        each(hash_without(word, first, first));
        for second in first + 1..word.len() {
            if two {
                each(hash_without(word, first, second));
            }
        }
    }
}

/// A hash of the letters apart from these two places; place 0 leaves nothing out.
fn hash_without(word: &[u8], first: usize, second: usize) -> u64 {
    // FNV-1a, 64 bits: constants of its published description.
    const OFFSET: u64 = 0xcbf2_9ce4_8422_2325;
    const PRIME: u64 = 0x0000_0100_0000_01b3;
    word.iter()
        .enumerate()
        .filter(|(at, _)| *at == 0 || (*at != first && *at != second))
        .fold(OFFSET, |hash, (_, letter)| {
            (hash ^ u64::from(*letter)).wrapping_mul(PRIME)
        })
}

/// What the slips from one spelling to the other cost; none if they are too many.
fn cost(written: &[u8], listed: &[u8]) -> Option<u32> {
    if written.first() != listed.first() {
        return None;
    }
    let slips = slips_allowed(written.len());
    let (slip_count, cost) = distance(written, listed);
    (slip_count <= slips).then_some(cost)
}

/// Damerau's distance (optimal string alignment): how many slips, and what they cost.
fn distance(from: &[u8], to: &[u8]) -> (usize, u32) {
    let width = to.len() + 1;
    let start: Vec<(usize, u32)> =
        core::iter::successors(Some((0, 0)), |(slips, cost)| Some((slips + 1, cost + SLIP)))
            .take(width)
            .collect();
    let mut before = start.clone();
    let mut above = start;
    for (row, letter) in from.iter().enumerate() {
        let mut line = Vec::with_capacity(width);
        line.push((row + 1, above.first().map_or(0, |cell| cell.1) + SLIP));
        for (column, other) in to.iter().enumerate() {
            let cell = |line: &[(usize, u32)], at: usize| line.get(at).copied().unwrap_or((99, 99));
            let previous =
                |text: &[u8], at: usize| at.checked_sub(1).and_then(|at| text.get(at).copied());
            let plus = |(slips, cost): (usize, u32), more: u32| {
                (slips + usize::from(more > 0), cost + more)
            };
            let put_in = plus(
                cell(&above, column + 1),
                extra(*letter, previous(from, row)),
            );
            let left_out = plus(cell(&line, column), extra(*other, previous(to, column)));
            let swapped = plus(cell(&above, column), swap(*letter, *other));
            let mut best = put_in.min(left_out).min(swapped);
            if row > 0
                && previous(from, row) == Some(*other)
                && previous(to, column) == Some(*letter)
            {
                best = best.min(plus(cell(&before, column.saturating_sub(1)), SLIP));
            }
            line.push(best);
        }
        before = core::mem::replace(&mut above, line);
    }
    above.last().copied().unwrap_or((99, 99))
}

/// A letter too many or too few: cheap when it is a vowel or doubles its neighbour.
fn extra(letter: u8, neighbour: Option<u8>) -> u32 {
    if is_vowel(letter) || neighbour == Some(letter) {
        CHEAP_SLIP
    } else {
        SLIP
    }
}

/// One letter for another: cheap on the same or the next key.
fn swap(one: u8, other: u8) -> u32 {
    if one == other {
        0
    } else if same_key(one, other) || next_key(one, other) || (is_vowel(one) && is_vowel(other)) {
        CHEAP_SLIP
    } else {
        SLIP
    }
}

fn is_vowel(letter: u8) -> bool {
    matches!(letter, b'a' | b'e' | b'i' | b'o' | b'u')
}

/// Letters of one key of a telephone keypad (ITU-T E.161).
fn same_key(one: u8, other: u8) -> bool {
    const KEYS: [&[u8]; 8] = [
        b"abc", b"def", b"ghi", b"jkl", b"mno", b"pqrs", b"tuv", b"wxyz",
    ];
    KEYS.iter()
        .any(|key| key.contains(&one) && key.contains(&other))
}

/// Neighbours in a row of a full keyboard.
fn next_key(one: u8, other: u8) -> bool {
    const ROWS: [&[u8]; 3] = [b"qwertyuiop", b"asdfghjkl", b"zxcvbnm"];
    ROWS.iter().any(|row| {
        row.windows(2)
            .any(|pair| pair == [one, other] || pair == [other, one])
    })
}
