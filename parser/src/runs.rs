//! Words run together: "blockb", "deadtrees", "onehundred".
//!
//! A run is parted only when all of it is listed words, and at least one of them is a word of the
//! trade. Deliberately absent: repair inside a run.

use alloc::vec::Vec;

use crate::{
    lexicon::{Langs, Lexicon, Listed},
    meaning::{Meaning, Plain},
    reading::Known,
};

/// Shorter runs are words of their own.
const RUN_LEN_MIN: usize = 5;
/// No listed word is longer; so the time for a run grows with its length alone.
const PART_CHARS_MAX: usize = 24;
/// Shorter parts are found in every word.
const PART_CHARS_MIN: usize = 3;

/// The parts of a run, as places in it; empty when it cannot be parted.
pub(crate) fn split_run(run: &str, lexicon: &Lexicon, langs: Langs) -> Vec<(usize, usize)> {
    if run.len() < RUN_LEN_MIN || lexicon.is_common(run) {
        return Vec::new();
    }
    let Some(parts) = fewest_parts(run, |part| is_part(part, lexicon, langs)) else {
        return Vec::new();
    };
    let worth = parts
        .iter()
        .filter_map(|(start, end)| listed(run.get(*start..*end)?, lexicon, langs))
        .any(is_trade);
    if worth { parts } else { Vec::new() }
}

/// The parts of "blockb": a block word and one of the farmer's blocks, or one letter if his blocks
/// are not known; or of "weededA", work and one of his blocks in capitals. Empty when it is
/// something else. `written` is the run as it stands in the text.
pub(crate) fn split_block(
    run: &str,
    written: &str,
    lexicon: &Lexicon,
    langs: Langs,
    known: &Known<'_>,
) -> Vec<(usize, usize)> {
    let is_own = |name: &str| {
        known
            .blocks
            .iter()
            .any(|own| own.eq_ignore_ascii_case(name))
    };
    for (at, _) in run.char_indices().skip(PART_CHARS_MIN) {
        let (Some(word), Some(name)) = (run.get(..at), run.get(at..)) else {
            continue;
        };
        let Some(word) = listed(word, lexicon, langs) else {
            continue;
        };
        let is_capital = written
            .get(at..)
            .is_some_and(|name| name.starts_with(char::is_uppercase));
        let is_work = word.meanings().any(|meaning| meaning.kind().is_some());
        let named = is_own(name) || (known.blocks.is_empty() && name.len() == 1);
        if (word.is_plain(Plain::Block) && named) || (is_work && is_capital && is_own(name)) {
            return [(0, at), (at, run.len())].into();
        }
    }
    Vec::new()
}

/// Parts a run into the fewest parts, by the best way to each place in it.
fn fewest_parts(run: &str, is_part: impl Fn(&str) -> bool) -> Option<Vec<(usize, usize)>> {
    // For each place: how many parts lead to it, and where the last one starts.
    let mut ways: Vec<Option<(usize, usize)>> = alloc::vec![None; run.len() + 1];
    *ways.first_mut()? = Some((0, 0));
    for (start, _) in run.char_indices() {
        let Some((count, _)) = ways.get(start).copied().flatten() else {
            continue;
        };
        let letters = run.get(start..)?.char_indices().take(PART_CHARS_MAX);
        for end in letters.map(|(at, letter)| start + at + letter.len_utf8()) {
            let better = ways
                .get(end)
                .copied()
                .flatten()
                .is_none_or(|(other, _)| count + 1 < other);
            if better
                && is_part(run.get(start..end)?)
                && let Some(way) = ways.get_mut(end)
            {
                *way = Some((count + 1, start));
            }
        }
    }
    let mut parts = Vec::new();
    let mut end = run.len();
    while end > 0 {
        let (_, start) = ways.get(end).copied().flatten()?;
        parts.push((start, end));
        end = start;
    }
    parts.reverse();
    Some(parts)
}

fn is_part(part: &str, lexicon: &Lexicon, langs: Langs) -> bool {
    // Scripts without spaces have short words.
    let least = if part.is_ascii() { PART_CHARS_MIN } else { 2 };
    part.chars().nth(least - 1).is_some() && listed(part, lexicon, langs).is_some()
}

fn listed<'r>(word: &str, lexicon: &'r Lexicon, langs: Langs) -> Option<Listed<'r>> {
    lexicon.single(lexicon.word(word)?, langs)
}

fn is_trade(listed: Listed<'_>) -> bool {
    listed.meanings().any(|meaning| {
        matches!(
            meaning,
            Meaning::Kind(_) | Meaning::Numeral(_) | Meaning::Plain(Plain::Block | Plain::Trees)
        )
    })
}
