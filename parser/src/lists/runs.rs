//! Words run together: "blockb", "deadtrees", "blokbkmrn", and all of a Thai sentence.
//!
//! A run of Latin letters is parted only when all of it is listed words and block names, and at
//! least one of them is a word of the trade. A run of a script that has no spaces is always
//! parted: into the listed words and words of every day that leave the fewest letters over.
//! Deliberately absent: repair inside a run.

use alloc::vec::Vec;

use crate::{
    glyphs::script::{is_unspaced, may_begin, may_end},
    lists::{
        called::letter_named,
        lexicon::{Langs, Lexicon, Listed, SHARED},
        vocabulary::Found,
    },
    meaning::{Meaning, Plain, sort},
    reading::Known,
};

/// Shorter runs are words of their own.
const RUN_LEN_MIN: usize = 5;
/// Shorter runs are no phrase.
const PHRASE_LEN_MIN: usize = 4;
/// No listed word is longer; so the time for a run grows with its length alone.
const PART_CHARS_MAX: usize = 24;
/// Shorter parts are found in every word.
const PART_CHARS_MIN: usize = 3;
/// A listed word of so many letters is in a longer run by no chance.
const LONG_PART_LEN_MIN: usize = 5;
/// So many letters beside it may be a word of no list; fewer are an ending.
const STRANGER_LEN_MIN: usize = 3;
/// Shorter runs may be made of listed words by chance.
const SURE_RUN_CHARS_MIN: usize = 6;
/// Letters that are left over stand for unknown words of about so many letters.
const UNKNOWN_CHARS: usize = 6;
/// Names of blocks that stand inside a run are short.
const NAME_LEN_MAX: usize = 6;

/// What parting a run costs: fewer letters left over come first, then fewer parts.
const PART_COST: usize = 10;
const EVERYDAY_COST: usize = 12;
const LEFT_OVER_COST: usize = 20;

/// The words and names that a run may hold.
#[derive(Clone, Copy)]
pub(crate) struct Words<'l, 'k> {
    pub(crate) lexicon: &'l Lexicon,
    pub(crate) own: Langs,
    pub(crate) known: &'k Known<'k>,
}

/// The parts of a run, as places in it; empty when it cannot be parted. After a number it may
/// begin with the name of a block ("dead 8byesterday").
pub(crate) fn split_run<'w>(
    run: &str,
    words: Words<'_, '_>,
    after_number: bool,
    ways: &'w mut Ways,
) -> &'w [(usize, usize)] {
    ways.places.clear();
    if run.len() < RUN_LEN_MIN || words.lexicon.is_common(run) {
        return &[];
    }
    if run.starts_with(is_unspaced) {
        if split_unspaced(run, words, ways).is_some() {
            ways.join_left_over(run);
        }
    } else if fewest_parts(run, words, after_number, ways).is_some()
        && is_worth(run, words, after_number, &ways.parts)
    {
        let places = ways.parts.iter().map(|part| (part.start, part.end));
        ways.places.extend(places);
    }
    &ways.places
}

/// Whether the parts of a run are no chance.
fn is_worth(run: &str, words: Words<'_, '_>, after_number: bool, parts: &[Part]) -> bool {
    // "homqua", "yanglalu": all of it are words of the phone's language.
    if words.own != 0 && run.chars().count() >= SURE_RUN_CHARS_MIN && words.are_own(run, parts) {
        return true;
    }
    let names_block = parts.iter().any(|part| part.sort == Sort::Name);
    let listed = || {
        let words_of = parts.iter().filter(|part| part.sort != Sort::Name);
        words_of.filter_map(|part| words.listed(run.get(part.start..part.end)?))
    };
    let worth =
        listed().any(|part| is_trade(part) || ((names_block || after_number) && is_day(part)));
    // Nobody changes language inside a word.
    let in_common = listed().fold(Langs::MAX, |all, part| all & part.phrase.langs);
    worth && (in_common != 0 || listed().any(|part| part.phrase.langs & SHARED != 0))
}

/// Where the name begins in "blockb": a block word and one of the farmer's blocks, or one letter if
/// his blocks are not known; or in "weededA", work and one of his blocks in capitals. None when it
/// is something else. `written` is the run as it stands in the text.
pub(crate) fn split_block(run: &str, written: &str, words: Words<'_, '_>) -> Option<usize> {
    if run.starts_with(is_unspaced) {
        return None;
    }
    for (at, _) in run.char_indices().skip(PART_CHARS_MIN) {
        let (Some(word), Some(name)) = (run.get(..at), run.get(at..)) else {
            continue;
        };
        let named = words.is_own(name) || (words.known.blocks.is_empty() && name.len() == 1);
        if !named {
            continue;
        }
        let Some(word) = words.listed(word) else {
            continue;
        };
        let is_capital = written
            .get(at..)
            .is_some_and(|name| name.starts_with(char::is_uppercase));
        let is_place =
            word.is_plain(Plain::Block) || (word.is_plain(Plain::Land) && name.len() > 1);
        // "weededA", "sprayedc"
        let is_clear = is_capital || at >= LONG_PART_LEN_MIN;
        let ends_report = is_clear && words.is_own(name) && is_content(word);
        if is_place || ends_report {
            return Some(at);
        }
    }
    None
}

/// A run of a listed word and one of no list.
pub(crate) struct Joint {
    /// Where the second begins.
    pub(crate) border: usize,
    /// The listed word says something of the work, so that it may only be asked about.
    pub(crate) is_work: bool,
}

/// The border in "yesterdayabeg" and "abegyesterday": one long listed word that carries something,
/// and letters that may be a word of no list.
pub(crate) fn split_stranger(run: &str, words: Words<'_, '_>) -> Option<Joint> {
    if words.own == 0 || !run.is_ascii() {
        return None;
    }
    let longest = run.len().saturating_sub(STRANGER_LEN_MIN);
    let lens = (LONG_PART_LEN_MIN..=longest.min(PART_CHARS_MAX)).rev();
    lens.flat_map(|len| [(0, len), (run.len() - len, run.len())])
        .find_map(|(start, end)| {
            let part = words.listed(run.get(start..end)?)?;
            let is_own = part.phrase.langs & (words.own | SHARED) != 0;
            // "vingtetun": with more letters it is another number.
            let is_number = part.traits().has(sort::NUMERAL);
            (is_own && is_content(part) && !is_number).then(|| Joint {
                border: if start == 0 { end } else { start },
                is_work: part.traits().has(sort::WORK | sort::STANCE),
            })
        })
}

/// The border in "lamco", "onva": the two words of a phrase that says something. None when it can be
/// parted in two ways, or not so.
pub(crate) fn split_phrase(run: &str, words: Words<'_, '_>) -> Option<usize> {
    if !(PHRASE_LEN_MIN..=PART_CHARS_MAX).contains(&run.len()) {
        return None;
    }
    let is_phrase = |border: &usize| {
        let parts = run.split_at_checked(*border);
        parts.is_some_and(|(one, other)| {
            let ids = [words.lexicon.word(one), words.lexicon.word(other)];
            let found = words.lexicon.longest(ids.into_iter(), words.own);
            found.is_some_and(|(listed, used)| {
                let says = is_content(listed)
                    || listed.traits().has(sort::STANCE)
                    || listed.is_plain(Plain::Courtesy);
                used == ids.len() && says
            })
        })
    };
    let mut borders = run.char_indices().map(|(at, _)| at).filter(is_phrase);
    let border = borders.next()?;
    borders.next().is_none().then_some(border)
}

/// A word that a report is made of.
fn is_content(listed: Listed<'_>) -> bool {
    let small = [Plain::Trees, Plain::Negation, Plain::NotYet];
    is_trade(listed)
        || is_day(listed)
        || listed.traits().has(sort::UNIT | sort::AGO)
        || small.into_iter().any(|class| listed.is_plain(class))
}

impl<'l> Words<'l, '_> {
    fn listed(&self, word: &str) -> Option<Listed<'l>> {
        self.lexicon.single(self.lexicon.word(word)?, self.own)
    }

    /// Whether a word stands in some phrase of the phone's languages, as it is spelt.
    fn is_of_phrase(&self, word: &str) -> bool {
        let id = self.lexicon.words.find(word).and_then(Found::listed_id);
        self.own != 0 && id.is_some_and(|id| self.lexicon.may_be_meant(id, self.own))
    }

    fn are_own(&self, run: &str, parts: &[Part]) -> bool {
        parts.iter().all(|part| {
            let word = run.get(part.start..part.end);
            part.sort != Sort::Name && word.is_some_and(|word| self.is_of_phrase(word))
        })
    }

    /// One of the farmer's blocks, or a letter of his by its name.
    fn names_own(&self, part: &str) -> bool {
        self.is_own(part) || letter_named(part).is_some_and(|(letter, _)| self.is_own(letter))
    }

    fn is_own(&self, name: &str) -> bool {
        let mut blocks = self.known.blocks.iter();
        name.len() <= NAME_LEN_MAX && blocks.any(|own| own.eq_ignore_ascii_case(name))
    }

    fn own_at(&self, text: &str) -> bool {
        let starts = |own: &&str| {
            text.get(..own.len())
                .is_some_and(|start| start.eq_ignore_ascii_case(own))
        };
        self.known.blocks.iter().any(starts)
    }
}

/// One part of a run.
#[derive(Clone, Copy)]
struct Part {
    start: usize,
    end: usize,
    /// What this way to part the run has cost so far.
    cost: usize,
    sort: Sort,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Sort {
    Start,
    Word,
    BlockWord,
    Name,
    LeftOver,
}

impl Sort {
    fn of(listed: Listed<'_>) -> Self {
        if listed.is_plain(Plain::Block) {
            Self::BlockWord
        } else {
            Self::Word
        }
    }
}

/// Parts a run into the fewest parts, by the best way to each place in it.
fn fewest_parts(
    run: &str,
    words: Words<'_, '_>,
    after_number: bool,
    ways: &mut Ways,
) -> Option<()> {
    ways.begin(run);
    for (start, _) in run.char_indices() {
        let Some(before) = ways.at(start) else {
            continue;
        };
        let letters = run.get(start..)?.char_indices().take(PART_CHARS_MAX);
        for (count, (at, letter)) in letters.enumerate() {
            let end = start + at + letter.len_utf8();
            let may_be_name = before.sort == Sort::BlockWord
                || (after_number && before.sort == Sort::Start && end < run.len());
            let part = run.get(start..end)?;
            let sort = if may_be_name && words.is_own(part) {
                Some(Sort::Name)
            } else {
                latin_sort(part, count + 1, run.get(end..)?, words)
            };
            if let Some(sort) = sort {
                ways.lead(before, end, PART_COST, sort);
            }
        }
    }
    ways.note_parts()
}

fn latin_sort(part: &str, letters: usize, rest: &str, words: Words<'_, '_>) -> Option<Sort> {
    if letters + 1 < PART_CHARS_MIN {
        return None;
    }
    // Letters with accents are no chance, and a word without them is another.
    if !part.is_ascii() || !rest.is_ascii() {
        let exact = words.is_of_phrase(part);
        return exact.then(|| words.listed(part).map_or(Sort::Word, Sort::of));
    }
    let listed = words.listed(part);
    if listed.is_none() && letters >= PART_CHARS_MIN && words.is_of_phrase(part) {
        return Some(Sort::Word);
    }
    let listed = listed?;
    let is_block = listed.is_plain(Plain::Block);
    // Two letters are a part only as the word before a block.
    if letters < PART_CHARS_MIN && !(is_block && words.own_at(rest)) {
        return None;
    }
    Some(Sort::of(listed))
}

/// Parts a run of a script that has no spaces.
fn split_unspaced(run: &str, words: Words<'_, '_>, ways: &mut Ways) -> Option<()> {
    ways.begin(run);
    for (start, _) in run.char_indices() {
        let Some(before) = ways.at(start) else {
            continue;
        };
        let rest = run.get(start..)?;
        let mut left_over = true;
        for (at, letter) in rest.char_indices().take(PART_CHARS_MAX) {
            let end = start + at + letter.len_utf8();
            let next = run.get(end..)?.chars().next();
            if !may_end(letter) || !next.is_none_or(may_begin) {
                continue;
            }
            let part = run.get(start..end)?;
            let found = words.lexicon.words.find(part);
            let id = found.and_then(Found::listed_id);
            let listed = id.and_then(|id| words.lexicon.single(id, words.own));
            if before.sort == Sort::BlockWord && words.names_own(part) {
                ways.lead(before, end, PART_COST, Sort::Name);
            } else if let Some(listed) = listed {
                ways.lead(before, end, PART_COST, Sort::of(listed));
            } else if found.is_some_and(|found| found.common) {
                ways.lead(before, end, EVERYDAY_COST, Sort::Word);
            }
            // The shortest piece that can stand alone may be left over.
            if core::mem::take(&mut left_over) {
                let letters = part.chars().count();
                ways.lead(before, end, LEFT_OVER_COST * letters, Sort::LeftOver);
            }
        }
    }
    ways.note_parts()
}

/// The best way to each place of a run, by the part that leads there. Used again for each run of a
/// text.
#[derive(Default)]
pub(crate) struct Ways {
    at: Vec<Option<Part>>,
    /// The parts of the best way to the end.
    parts: Vec<Part>,
    /// What is made of them.
    places: Vec<(usize, usize)>,
}

impl Ways {
    fn begin(&mut self, run: &str) {
        self.at.clear();
        self.at.resize(run.len() + 1, None);
        if let Some(first) = self.at.first_mut() {
            *first = Some(Part {
                start: 0,
                end: 0,
                cost: 0,
                sort: Sort::Start,
            });
        }
    }

    fn at(&self, place: usize) -> Option<Part> {
        self.at.get(place).copied().flatten()
    }

    /// Notes one more part; kept if no cheaper way leads to its end.
    fn lead(&mut self, before: Part, end: usize, cost: usize, sort: Sort) {
        let cost = before.cost + cost;
        let is_better = self.at(end).is_none_or(|other| cost < other.cost);
        if is_better && let Some(way) = self.at.get_mut(end) {
            *way = Some(Part {
                start: before.end,
                end,
                cost,
                sort,
            });
        }
    }

    /// Follows the best way back from the end, if one leads there.
    fn note_parts(&mut self) -> Option<()> {
        self.parts.clear();
        let mut end = self.at.len().saturating_sub(1);
        while end > 0 {
            let part = self.at(end)?;
            self.parts.push(part);
            end = part.start;
        }
        self.parts.reverse();
        Some(())
    }

    /// What was left over in one place becomes words of an ordinary length.
    fn join_left_over(&mut self, run: &str) {
        let places = &mut self.places;
        let mut open = false;
        for part in &self.parts {
            let is_left_over = part.sort == Sort::LeftOver;
            match places.last_mut() {
                Some((start, end)) if open && is_left_over => *end = part.end.max(*start),
                _ => places.push((part.start, part.end)),
            }
            let letters = places
                .last()
                .and_then(|(start, end)| run.get(*start..*end))
                .map_or(0, |text| text.chars().count());
            open = is_left_over && letters < UNKNOWN_CHARS;
        }
    }
}

fn is_trade(listed: Listed<'_>) -> bool {
    listed.meanings().any(|meaning| {
        matches!(
            meaning,
            Meaning::Kind(_)
                | Meaning::Ailment(_)
                | Meaning::Cause(_)
                | Meaning::Fertiliser
                | Meaning::Numeral(_)
                | Meaning::Plain(Plain::Block | Plain::Trees)
        )
    })
}

fn is_day(listed: Listed<'_>) -> bool {
    listed.meanings().any(|meaning| {
        matches!(
            meaning,
            Meaning::DaysAgo(_) | Meaning::Weekday(_) | Meaning::Period(_)
        )
    })
}
