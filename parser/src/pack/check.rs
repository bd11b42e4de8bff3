//! What is wrong, or doubtful, in a pack that can be read.
//!
//! A fault makes a reader store something else than what was said, or hides a word for good: the
//! pack is refused. A doubt is told to the person who writes the pack. Deliberately absent: what
//! only shows beside other packs; there the phone's own language decides (`lexicon`).

use alloc::{
    collections::{BTreeMap, BTreeSet},
    string::{String, ToString},
    vec::Vec,
};

use crate::{
    glyphs::{
        fold::bare,
        token::{Shape, tokens},
    },
    kind::Kind,
    languages,
    meaning::{Meaning, Plain},
    pack::{Entry, PHRASE_WORDS_MAX, Pack, PackFault},
};

/// Words of work of fewer letters stand inside too much else.
const WORK_CHARS_MIN: usize = 3;

/// Something in a pack that its writer should look at.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum PackDoubt {
    /// Twice under one key.
    #[error("\"{0}\" is listed twice with one meaning")]
    Twice(String),
    /// Only the phrase "weak" knows it.
    #[error("\"{0}\" is called weak but is not listed")]
    WeakUnlisted(String),
    /// A twin of a word that is not listed.
    #[error("\"{twin}\" is called a twin of \"{of}\", which is not listed")]
    TwinOfNothing {
        /// The twin.
        twin: String,
        /// What it should stand for.
        of: String,
    },
    /// A word that ends all texts and is weak.
    #[error("\"{0}\" ends all texts and is called weak: phones of other languages are not heard")]
    WeakStop(String),
    /// Two words of work that differ by their accents alone.
    #[error(
        "without accents \"{phrase}\" is both {first} and {second}: list it as it should be read"
    )]
    BareKinds {
        /// The spelling without accents.
        phrase: String,
        /// The name of one kind.
        first: &'static str,
        /// The name of the other.
        second: &'static str,
    },
    /// A word of work of one or two letters.
    #[error("\"{0}\" is very short for a word of work: call it weak")]
    Short(String),
    /// An answer that also says something else to the bot.
    #[error("\"{phrase}\" is both \"{first}\" and \"{second}\"")]
    TwoAnswers {
        /// The word.
        phrase: String,
        /// One key of `words`.
        first: &'static str,
        /// The other.
        second: &'static str,
    },
}

/// What a pack is refused for; the first fault found.
pub(super) fn fault(pack: &Pack) -> Option<PackFault> {
    two_kinds(pack)
        .or_else(|| {
            pack.entries
                .iter()
                .find_map(|entry| unreachable(pack, entry))
        })
        .or_else(|| common_word(pack))
}

/// What the writer of a pack should look at.
pub(super) fn doubts(pack: &Pack) -> Vec<PackDoubt> {
    let mut doubts = twice(pack);
    doubts.extend(weak_unlisted(pack));
    doubts.extend(idle_twins(pack));
    doubts.extend(weak_stops(pack));
    doubts.extend(bare_kinds(pack));
    doubts.extend(short(pack));
    doubts.extend(two_answers(pack));
    doubts
}

fn two_kinds(pack: &Pack) -> Option<PackFault> {
    let mut kinds: BTreeMap<&str, Kind> = BTreeMap::new();
    pack.entries.iter().find_map(|entry| {
        let kind = entry.meaning.kind()?;
        let other = kinds.insert(&entry.phrase, kind)?;
        (other != kind).then(|| PackFault::TwoKinds {
            pack: pack.code.clone(),
            phrase: entry.phrase.clone(),
            first: other.min(kind).name(),
            second: other.max(kind).name(),
        })
    })
}

/// An entry that no text can ever match.
fn unreachable(pack: &Pack, entry: &Entry) -> Option<PackFault> {
    let tokens: Vec<_> = tokens(&entry.phrase, |_| true).collect();
    let words = tokens.iter().filter(|token| !joins_letters(&token.shape));
    let mark = words.clone().find_map(|token| match token.shape {
        Shape::Mark(mark) => Some(mark),
        Shape::Word | Shape::Figure(_) => None,
    });
    let count = words.clone().count();
    let is_number = count == 1
        && words
            .clone()
            .all(|token| matches!(token.shape, Shape::Figure(_)));
    let expanded = pack.expands.iter().any(|(word, _)| *word == entry.phrase);
    let why = if let Some(mark) = mark {
        alloc::format!("\"{mark}\" parts a text into words")
    } else if count > PHRASE_WORDS_MAX {
        alloc::format!("it has {count} words, and phrases have at most {PHRASE_WORDS_MAX}")
    } else if is_number {
        "a number is read as a number".to_string()
    } else if expanded {
        "[expands] puts other words in its place".to_string()
    } else {
        return None;
    };
    Some(PackFault::Unreachable {
        pack: pack.code.clone(),
        phrase: entry.phrase.clone(),
        why,
    })
}

/// "mal-das-folhas", "h.qua".
const fn joins_letters(shape: &Shape) -> bool {
    matches!(shape, Shape::Mark('-' | '.'))
}

/// A twin of a word that is not listed means nothing.
fn idle_twins(pack: &Pack) -> impl Iterator<Item = PackDoubt> {
    let listed: BTreeSet<&str> = pack.entries.iter().map(|entry| &*entry.phrase).collect();
    let idle = pack
        .twins
        .iter()
        .filter(move |(_, of)| !listed.contains(&**of));
    idle.map(|(twin, of)| PackDoubt::TwinOfNothing {
        twin: twin.clone(),
        of: of.clone(),
    })
}

/// A word of work that nearly every chat holds, and that is not called weak.
fn common_word(pack: &Pack) -> Option<PackFault> {
    let chat: BTreeSet<&str> = languages::chat_words().collect();
    let found = pack.entries.iter().find(|entry| {
        is_work(entry.meaning)
            && chat.contains(bare(&entry.phrase).as_str())
            && !is_weak(pack, &entry.phrase)
    })?;
    Some(PackFault::CommonWord {
        pack: pack.code.clone(),
        phrase: found.phrase.clone(),
    })
}

fn is_weak(pack: &Pack, phrase: &str) -> bool {
    let plain = bare(phrase);
    pack.weak
        .iter()
        .any(|weak| *weak == phrase || *weak == plain)
}

const fn is_work(meaning: Meaning) -> bool {
    matches!(
        meaning,
        Meaning::Kind(_)
            | Meaning::Ailment(_)
            | Meaning::Cause(_)
            | Meaning::Fertiliser
            | Meaning::Spray
            | Meaning::Crop
            | Meaning::Cover
    )
}

fn twice(pack: &Pack) -> Vec<PackDoubt> {
    let mut seen: Vec<(&str, Meaning)> = Vec::new();
    let mut entries: Vec<&Entry> = pack.entries.iter().collect();
    entries.sort_by(|one, other| one.phrase.cmp(&other.phrase));
    let mut doubts = Vec::new();
    for entry in entries {
        seen.retain(|(phrase, _)| *phrase == entry.phrase);
        let again = (entry.phrase.as_str(), entry.meaning);
        if seen.contains(&again) {
            doubts.push(PackDoubt::Twice(entry.phrase.clone()));
        }
        seen.push(again);
    }
    doubts
}

fn weak_unlisted(pack: &Pack) -> impl Iterator<Item = PackDoubt> {
    // What all languages share may be weak in one of them.
    let shared = Pack::parse(languages::TRADE).map_or_else(|_| Vec::new(), |trade| trade.entries);
    let listed: BTreeSet<String> = pack
        .entries
        .iter()
        .chain(&shared)
        .flat_map(|entry| [entry.phrase.clone(), bare(&entry.phrase)])
        .collect();
    pack.weak
        .iter()
        .filter(move |weak| !listed.contains(*weak))
        .map(|weak| PackDoubt::WeakUnlisted(weak.clone()))
}

fn weak_stops(pack: &Pack) -> impl Iterator<Item = PackDoubt> {
    pack.entries
        .iter()
        .filter(|entry| entry.meaning == Meaning::Plain(Plain::Stop))
        .filter(|entry| is_weak(pack, &entry.phrase))
        .map(|entry| PackDoubt::WeakStop(entry.phrase.clone()))
}

/// Spellings without accents that two kinds share and that are not listed as they stand.
fn bare_kinds(pack: &Pack) -> Vec<PackDoubt> {
    let listed: BTreeSet<&str> = pack.entries.iter().map(|entry| &*entry.phrase).collect();
    let mut kinds: BTreeMap<String, Kind> = BTreeMap::new();
    let mut doubts = Vec::new();
    for entry in &pack.entries {
        let Some(kind) = entry.meaning.kind() else {
            continue;
        };
        let plain = bare(&entry.phrase);
        if listed.contains(plain.as_str()) || !plain.is_ascii() {
            continue;
        }
        if let Some(other) = kinds
            .insert(plain.clone(), kind)
            .filter(|other| *other != kind)
        {
            doubts.push(PackDoubt::BareKinds {
                phrase: plain,
                first: other.name(),
                second: kind.name(),
            });
        }
    }
    doubts
}

fn short(pack: &Pack) -> impl Iterator<Item = PackDoubt> {
    pack.entries
        .iter()
        .filter(|entry| {
            is_work(entry.meaning)
                && entry.phrase.is_ascii()
                && entry.phrase.len() < WORK_CHARS_MIN
                && !is_weak(pack, &entry.phrase)
        })
        .map(|entry| PackDoubt::Short(entry.phrase.clone()))
}

/// Answers that exclude each other.
const OPPOSITES: [(Plain, &str, Plain, &str); 6] = [
    (Plain::Yes, "yes", Plain::No, "no"),
    (Plain::Yes, "yes", Plain::Stop, "stop"),
    (Plain::Done, "done", Plain::Later, "later"),
    (Plain::Start, "start", Plain::Stop, "stop"),
    (Plain::Undo, "undo", Plain::Stop, "stop"),
    (Plain::Help, "help", Plain::Stop, "stop"),
];

fn two_answers(pack: &Pack) -> Vec<PackDoubt> {
    let of = |class: Plain| -> BTreeSet<&str> {
        let meant = Meaning::Plain(class);
        let entries = pack.entries.iter().filter(|entry| entry.meaning == meant);
        entries.map(|entry| &*entry.phrase).collect()
    };
    let mut doubts = Vec::new();
    for (one, first, other, second) in OPPOSITES {
        let both = of(one);
        doubts.extend(
            both.intersection(&of(other))
                .map(|phrase| PackDoubt::TwoAnswers {
                    phrase: (*phrase).to_string(),
                    first,
                    second,
                }),
        );
    }
    doubts
}
