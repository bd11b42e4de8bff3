//! Finds the listed words that a misspelt word may stand for.
//!
//! Every listed word is filed under each spelling that loses one or two of its letters; a misspelt
//! word loses letters in the same way, and they meet. So the cost of one repair does not grow with
//! the number of words. What is found is then measured: first letter kept, one slip in a word of
//! three to seven letters, two in a longer one, cheap slips first.
//!
//! Deliberately absent: whether a repair may be used. A common word, or two kinds equally near,
//! is decided where the word stands.

use alloc::vec::Vec;
use core::hash::{BuildHasherDefault, Hasher};

use hashbrown::HashMap;

use crate::lists::vocabulary::{Vocabulary, WordId};

/// Shorter words are never guessed at.
const LETTERS_MIN: usize = 3;
/// Shorter listed words are never meant by another spelling.
const LISTED_LETTERS_MIN: usize = 4;
/// Of shorter words nearly all have a common word one letter away: what they may be is only a
/// guess.
pub(crate) const SURE_LETTERS_MIN: usize = 5;
/// From here two slips are forgiven.
const TWO_SLIPS_LETTERS_MIN: usize = 8;
/// Longer words are no listed word with a slip.
const REPAIR_LETTERS_MAX: usize = 20;
/// So many words at the same distance are looked at; more would only say that it is unclear.
const NEAREST_MAX: usize = 16;
/// No spelling is filed for more words than this.
const FILED_MAX: usize = 64;

/// Cost of a slip, in halves; a cheap one is one half.
const SLIP: u8 = 2;
const CHEAP_SLIP: u8 = 1;

/// The table of shortened spellings.
#[derive(Default)]
pub(crate) struct Repairs {
    /// The last word filed under the hash of each shortened spelling. A chance match is found out
    /// by measuring.
    by_short: HashMap<u64, u32, BuildHasherDefault<Direct>>,
    /// Words, each with the place of the one filed before it under the same spelling.
    filed: Vec<(WordId, u32)>,
}

/// No word was filed before.
const NONE: u32 = u32::MAX;

/// The nearest listed words, a few at most.
#[derive(Default)]
pub(crate) struct Nearest {
    ids: [WordId; NEAREST_MAX],
    len: usize,
    cost: u8,
}

impl Nearest {
    /// The words.
    pub(crate) fn iter(&self) -> impl Iterator<Item = WordId> + Clone {
        self.ids.iter().take(self.len).copied()
    }

    /// Whether they are one cheap slip away.
    pub(crate) const fn is_cheap(&self) -> bool {
        self.cost <= CHEAP_SLIP
    }

    fn push(&mut self, id: WordId) {
        if let Some(place) = self.ids.get_mut(self.len) {
            *place = id;
            self.len += 1;
        }
    }

    /// Whether a word is met for the first time, as far as is remembered.
    fn is_new(&mut self, id: WordId) -> bool {
        let is_new = !self.iter().any(|other| other == id);
        if is_new {
            self.push(id);
        }
        is_new
    }
}

impl Repairs {
    /// Files the words that may be meant.
    pub(crate) fn new(words: impl Iterator<Item = WordId>, vocabulary: &Vocabulary) -> Self {
        let mut repairs = Self::default();
        for id in words {
            let word = vocabulary.spelling(id).unwrap_or("");
            if word.len() >= LISTED_LETTERS_MIN && is_repairable(word) {
                let word = word.as_bytes();
                let sums = Sums::new(word);
                for_each_one_short(word, &sums, |short| repairs.file(short, id));
                if slips_allowed(word.len()) == 2 {
                    for_each_two_short(word, &sums, |short| repairs.file(short, id));
                }
            }
        }
        repairs
    }

    fn file(&mut self, short: u64, id: WordId) {
        let place = u32::try_from(self.filed.len()).unwrap_or(NONE);
        let before = self.by_short.insert(short, place).unwrap_or(NONE);
        self.filed.push((id, before));
    }

    /// The nearest listed words that `may_be_meant`; several when they are equally near.
    pub(crate) fn nearest(
        &self,
        written: &str,
        vocabulary: &Vocabulary,
        may_be_meant: impl Fn(WordId) -> bool,
    ) -> Nearest {
        let mut nearest = Nearest::default();
        if !is_repairable(written) {
            return nearest;
        }
        let mut best = FAR;
        // Most words meet in many of their shortened spellings.
        let mut measured = Nearest::default();
        let mut look = |short| {
            let mut place = self.by_short.get(&short).copied().unwrap_or(NONE);
            for _ in 0..FILED_MAX {
                let Some((id, before)) = self.filed.get(place as usize).copied() else {
                    break;
                };
                place = before;
                if !measured.is_new(id) {
                    continue;
                }
                let listed = vocabulary.spelling(id).unwrap_or("");
                let Some(cost) = cost(written.as_bytes(), listed.as_bytes()) else {
                    continue;
                };
                if cost <= best && may_be_meant(id) {
                    if cost < best {
                        best = cost;
                        nearest.len = 0;
                        nearest.cost = cost.1;
                    }
                    nearest.is_new(id);
                }
            }
            best.0
        };
        let word = written.as_bytes();
        let sums = Sums::new(word);
        let mut slips = u8::MAX;
        for_each_one_short(word, &sums, |short| slips = look(short));
        // Every word with a single slip has been met; it is nearer than any with two.
        if slips > 1 && slips_allowed(word.len()) == 2 {
            for_each_two_short(word, &sums, |short| slips = look(short));
        }
        nearest
    }
}

/// Takes a hash as it is.
#[derive(Default)]
pub(crate) struct Direct(u64);

impl Hasher for Direct {
    fn finish(&self) -> u64 {
        self.0
    }

    fn write(&mut self, bytes: &[u8]) {
        // Only whole numbers are hashed here.
        for byte in bytes {
            self.0 = self.0 << 8 | u64::from(*byte);
        }
    }

    fn write_u64(&mut self, hash: u64) {
        self.0 = hash;
    }
}

fn is_repairable(word: &str) -> bool {
    (LETTERS_MIN..=REPAIR_LETTERS_MAX).contains(&word.len())
        && word.bytes().all(|byte| byte.is_ascii_lowercase())
}

const fn slips_allowed(letters: usize) -> usize {
    if letters < TWO_SLIPS_LETTERS_MIN {
        1
    } else {
        2
    }
}

/// Calls with the hash of the word itself and of every spelling with one letter fewer. The first
/// letter is kept.
fn for_each_one_short(word: &[u8], sums: &Sums, mut each: impl FnMut(u64)) {
    each(mixed(sums.before(word.len())));
    for at in 1..word.len() {
        // In a row of the same letters it makes no difference which is lost.
        if word.get(at) != word.get(at - 1) {
            each(mixed(sums.without(at, word.len())));
        }
    }
}

/// Calls with the hash of every spelling with two letters fewer.
fn for_each_two_short(word: &[u8], sums: &Sums, mut each: impl FnMut(u64)) {
    for first in 1..word.len() {
        for second in first + 1..word.len() {
            each(mixed(sums.without_two(first, second, word.len())));
        }
    }
}

/// Sums over the letters of a word from which the hash of the word without some of them follows at
/// once: letter `n` counts times the `n`th power of a number that can be divided by.
struct Sums {
    before: [u64; REPAIR_LETTERS_MAX + 1],
}

impl Sums {
    /// An odd number, and the one that takes it back (their product is 1 in 64 bits).
    const BASE: u64 = 0x9e37_79b9_7f4a_7c15;
    const BACK: u64 = 0xf1de_83e1_9937_733d;

    fn new(word: &[u8]) -> Self {
        let mut before = [0; REPAIR_LETTERS_MAX + 1];
        let (mut sum, mut power) = (0_u64, 1_u64);
        for (place, letter) in before.iter_mut().skip(1).zip(word) {
            sum = sum.wrapping_add(u64::from(*letter).wrapping_mul(power));
            power = power.wrapping_mul(Self::BASE);
            *place = sum;
        }
        Self { before }
    }

    fn before(&self, at: usize) -> u64 {
        self.before.get(at).copied().unwrap_or(0)
    }

    fn between(&self, start: usize, end: usize) -> u64 {
        self.before(end).wrapping_sub(self.before(start))
    }

    fn without(&self, at: usize, end: usize) -> u64 {
        let rest = self.between(at + 1, end).wrapping_mul(Self::BACK);
        self.before(at).wrapping_add(rest)
    }

    fn without_two(&self, first: usize, second: usize, end: usize) -> u64 {
        let rest = self.between(second + 1, end).wrapping_mul(Self::BACK);
        let rest = self.between(first + 1, second).wrapping_add(rest);
        self.before(first)
            .wrapping_add(rest.wrapping_mul(Self::BACK))
    }
}

const fn mixed(sum: u64) -> u64 {
    let sum = (sum ^ (sum >> 32)).wrapping_mul(0xd6e8_feb8_6659_fd93);
    sum ^ (sum >> 32)
}

/// What the slips from one spelling to the other cost; none if they are too many.
fn cost(written: &[u8], listed: &[u8]) -> Option<Cell> {
    let slips = slips_allowed(written.len());
    if written.first() != listed.first() || written.len().abs_diff(listed.len()) > slips {
        return None;
    }
    let (slip_count, cost) = distance(written, listed);
    (slip_count as usize <= slips).then_some((slip_count, cost))
}

/// Whether one spelling is the other with a single slip. For words that stand where the place
/// already says what they may be.
pub(crate) fn is_one_slip(written: &str, listed: &str) -> bool {
    let (written, listed) = (written.as_bytes(), listed.as_bytes());
    let near = written.len().abs_diff(listed.len()) <= 1 && listed.len() <= REPAIR_LETTERS_MAX;
    near && written.first() == listed.first() && distance(written, listed).0 == 1
}

/// Whether the one spelling is the other without one of its vowels, which is how people shorten.
pub(crate) fn is_shortened(written: &str, listed: &str) -> bool {
    let (written, listed) = (written.as_bytes(), listed.as_bytes());
    let same = |(one, other): &(&u8, &u8)| one == other;
    let start = written.iter().zip(listed).take_while(same).count();
    let is_left_out = listed.get(start).is_some_and(|letter| is_vowel(*letter));
    start > 0 && is_left_out && written.get(start..) == listed.get(start + 1..)
}

/// How many slips, and what they cost.
type Cell = (u8, u8);
type Line = [Cell; REPAIR_LETTERS_MAX + 1];
/// Further away than anything that is asked about.
const FAR: Cell = (99, 99);

/// Damerau's distance (optimal string alignment). What both begin and end with costs nothing; one
/// letter of the beginning is kept, for it says whether the next is doubled.
fn distance(from: &[u8], to: &[u8]) -> Cell {
    let same = |(one, other): &(&u8, &u8)| one == other;
    let start = from.iter().zip(to).take_while(same).count();
    let start = start.saturating_sub(1);
    let (from, to) = (
        from.get(start..).unwrap_or_default(),
        to.get(start..).unwrap_or_default(),
    );
    let ends = from.iter().rev().zip(to.iter().rev());
    let most = from.len().min(to.len()).saturating_sub(1);
    let end = ends.take(most).take_while(same).count();
    distance_between(
        from.get(..from.len() - end).unwrap_or_default(),
        to.get(..to.len() - end).unwrap_or_default(),
    )
}

fn distance_between(from: &[u8], to: &[u8]) -> Cell {
    let mut above: Line = [FAR; REPAIR_LETTERS_MAX + 1];
    let mut start: Cell = (0, 0);
    for cell in &mut above {
        *cell = start;
        start = plus(start, SLIP);
    }
    let mut before = above;
    let mut letter_before = None;
    for letter in from {
        let mut line: Line = [FAR; REPAIR_LETTERS_MAX + 1];
        let mut left = plus(at(&above, 0), SLIP);
        if let Some(first) = line.first_mut() {
            *first = left;
        }
        let mut other_before = None;
        for (column, other) in to.iter().enumerate() {
            let put_in = plus(at(&above, column + 1), extra(*letter, letter_before));
            let left_out = plus(left, extra(*other, other_before));
            let swapped = plus(at(&above, column), swap(*letter, *other));
            let mut best = put_in.min(left_out).min(swapped);
            if letter_before == Some(*other) && other_before == Some(*letter) {
                best = best.min(plus(at(&before, column.saturating_sub(1)), SLIP));
            }
            if let Some(cell) = line.get_mut(column + 1) {
                *cell = best;
            }
            left = best;
            other_before = Some(*other);
        }
        before = above;
        above = line;
        letter_before = Some(*letter);
    }
    at(&above, to.len())
}

fn at(line: &Line, place: usize) -> Cell {
    line.get(place).copied().unwrap_or(FAR)
}

const fn plus((slips, cost): Cell, more: u8) -> Cell {
    (slips + (more > 0) as u8, cost + more)
}

/// A letter too many or too few: cheap when it is a vowel or doubles its neighbour.
fn extra(letter: u8, neighbour: Option<u8>) -> u8 {
    if is_vowel(letter) || neighbour == Some(letter) {
        CHEAP_SLIP
    } else {
        SLIP
    }
}

/// One letter for another: cheap on the same or the next key, and where it sounds the same.
fn swap(one: u8, other: u8) -> u8 {
    if one == other {
        0
    } else if same_key(one, other)
        || next_key(one, other)
        || (is_vowel(one) && is_vowel(other))
        || sounds_as_i(one, other)
    {
        CHEAP_SLIP
    } else {
        SLIP
    }
}

fn is_vowel(letter: u8) -> bool {
    matches!(letter, b'a' | b'e' | b'i' | b'o' | b'u')
}

/// "fyre": y is written for the sound of i.
fn sounds_as_i(one: u8, other: u8) -> bool {
    matches!((one, other), (b'i', b'y') | (b'y', b'i'))
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
