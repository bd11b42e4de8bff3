//! Finds names that may be one person written twice.
//!
//! Two names look alike when they are the same after titles, order of words and common double
//! spellings are taken out, or when one letter more or less makes them so. Nobody is ever joined
//! by this: a person decides.
//!
//! Deliberately without comparing every name with every other: each name leaves its keys in a
//! map, so a list of 20,000 takes no longer per name than a list of 20.

use std::collections::{BTreeMap, BTreeSet};

/// Below this many letters one letter makes a different name ("Ali", "Adi").
const LETTERS_MIN: usize = 5;

/// Words before a name that are not part of it (common practice in rubber countries).
const TITLES: [&str; 22] = [
    "mr", "mrs", "ms", "miss", "dr", "haji", "hajah", "hj", "pak", "bapak", "bu", "ibu", "nai",
    "nang", "khun", "ong", "ba", "anh", "chi", "chief", "monsieur", "madame",
];

/// Spellings of one sound that change from sheet to sheet (common practice; the first four are
/// the old and the new spelling of Indonesian).
const SOUNDS: [(&str, &str); 12] = [
    ("oe", "u"),
    ("dj", "j"),
    ("tj", "c"),
    ("sj", "s"),
    ("ph", "f"),
    ("kh", "k"),
    ("dh", "d"),
    ("th", "t"),
    ("ck", "k"),
    ("ou", "u"),
    ("y", "i"),
    ("v", "w"),
];

/// Names seen so far.
#[derive(Debug, Default)]
pub(super) struct Alike {
    by_key: BTreeMap<String, String>,
    /// Short forms of names, and of which names: "t pell" of "Tor Pell".
    by_short: BTreeMap<String, Vec<Seen>>,
}

/// A name seen, and the numbers beside it.
#[derive(Clone, Debug)]
struct Seen {
    name: String,
    numbers: Vec<String>,
    /// The name itself is that short.
    is_short: bool,
}

impl Alike {
    /// Takes a name in; gives an earlier one that looks like it. A short form ("T. Pell", "Tor")
    /// is like a whole name where the number is the same, or where the last name is.
    pub(super) fn add(&mut self, name: &str, numbers: &[String]) -> Option<String> {
        let mut like = None;
        for short in shorts(name) {
            let seen = Seen {
                name: name.to_string(),
                numbers: numbers.to_vec(),
                is_short: short.is_whole,
            };
            let known = self.by_short.entry(short.form).or_default();
            let found = known.iter().find(|other| {
                let one_is_short = seen.is_short != other.is_short;
                let same_number = other.numbers.iter().any(|one| numbers.contains(one));
                one_is_short && (same_number || !short.needs_number)
            });
            like = like.or_else(|| found.map(|other| other.name.clone()));
            known.push(seen);
        }
        // What a short form says with its number says more than the same letters.
        let mut earlier = like;
        for key in keys(name) {
            match self.by_key.get(&key) {
                Some(other) => earlier = earlier.or_else(|| Some(other.clone())),
                None => {
                    self.by_key.insert(key, name.to_string());
                }
            }
        }
        earlier
    }
}

/// A short form of a name.
struct Short {
    form: String,
    /// The name is nothing else.
    is_whole: bool,
    /// Many have it, so the number must be the same too.
    needs_number: bool,
}

/// "t pell" for "Tor Pell" and for "T. Pell"; "tor" for "Tor Pell" and for "Tor".
fn shorts(name: &str) -> Vec<Short> {
    let words = words(name);
    let letters = |word: &String| word.chars().count();
    let Some(first) = words.first() else {
        return Vec::new();
    };
    let mut shorts = vec![Short {
        form: first.clone(),
        is_whole: words.len() == 1,
        needs_number: true,
    }];
    if let [one, .., other] = words.as_slice() {
        for (initial, whole, side) in [(one, other, "<"), (other, one, ">")] {
            let letter: String = initial.chars().take(1).collect();
            shorts.push(Short {
                form: format!("{side}{letter} {whole}"),
                is_whole: letters(initial) == 1,
                needs_number: false,
            });
        }
    }
    shorts
}

/// What two names have in common when they look alike: a plain form, or a plain form with any one
/// letter but the first taken out; names that differ in their first letter are two names.
fn keys(name: &str) -> BTreeSet<String> {
    let mut keys = BTreeSet::new();
    for plain in plain_forms(name) {
        let letters: Vec<char> = plain.chars().collect();
        keys.insert(plain);
        if letters.len() < LETTERS_MIN {
            continue;
        }
        for (skip, _) in letters.iter().enumerate().skip(1) {
            let kept = letters.iter().enumerate().filter(|(at, _)| *at != skip);
            keys.insert(kept.map(|(_, letter)| letter).collect());
        }
    }
    keys
}

/// Lower case, without titles, one spelling for each sound, no doubled letters; once with the
/// words as written, since they may be joined, and once in order of the alphabet, since first and
/// last names change places.
fn plain_forms(name: &str) -> [String; 2] {
    let mut words = words(name);
    let written = words.concat();
    words.sort_unstable();
    [written, words.concat()]
}

/// The words of a name as they sound, without titles and without what stands in brackets.
fn words(name: &str) -> Vec<String> {
    let lower = name.to_lowercase();
    let (before, _) = lower.split_once('(').unwrap_or((&lower, ""));
    let bare = if before.trim().is_empty() {
        &lower
    } else {
        before
    };
    let mut words: Vec<&str> = bare
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .collect();
    if words.len() > 1 {
        words.retain(|word| !TITLES.contains(word));
    }
    words.into_iter().map(sound).collect()
}

fn sound(word: &str) -> String {
    let mut text = word.to_string();
    for (written, sound) in SOUNDS {
        text = text.replace(written, sound);
    }
    let mut letters: Vec<char> = text.chars().collect();
    letters.dedup();
    letters.into_iter().collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(first: &str, second: &str, alike: bool) {
        let mut names = Alike::default();
        assert_eq!(names.add(first, &[]), None);
        assert_eq!(
            names.add(second, &[]).is_some(),
            alike,
            "{first} and {second}"
        );
    }

    /// Twenty pairs as typed lists have them: titles, order, one letter, old spelling.
    #[test]
    fn pairs_that_are_probably_one_person() {
        for (first, second) in [
            ("Tamo Rill", "Tammo Rill"),
            ("Tamo Rill", "Rill Tamo"),
            ("Tamo Rill", "Rill, Tamo"),
            ("Tamo Rill", "Pak Tamo Rill"),
            ("Tamo Rill", "TAMO RILL"),
            ("Tamo Rill", "Tamo Ril"),
            ("Tamo Rill", "Tano Rill"),
            ("Tamo Rill", "Tmao Rill"),
            ("Tamo Rill", "Mr. Tamo Rill"),
            ("Soelo Venn", "Sulo Venn"),
            ("Djarra Oss", "Jarra Oss"),
            ("Tjimo Kand", "Cimo Kand"),
            ("Phella Dunn", "Fella Dunn"),
            ("Yorra Best", "Iorra Best"),
            ("Anna-Lise Korr", "Anna Lise Korr"),
            ("Anna-Lise Korr", "Annalise Korr"),
            ("Bokhar Tinn", "Bokar Tinn"),
            ("Haji Bokar Tinn", "Bokar Tinn"),
            ("Thessa Munn", "Tessa Mun"),
            ("Ouro Makk", "Uro Mack"),
            ("Tor Pell", "T. Pell"),
            ("Bako M.", "Bako Mirk"),
            ("Tor Pell", "Tor Pell (Haji)"),
        ] {
            check(first, second, true);
        }
    }

    #[test]
    fn pairs_that_are_two_people() {
        for (first, second) in [
            ("Ali", "Adi"),
            ("Tamo Rill", "Tamo Dorn"),
            ("Tamo Rill", "Sela Rill"),
            ("Bu", "Ba"),
            ("Oss Djarra", "Oss Tamara"),
            ("Hilo Kell", "Nilo Kell"),
            ("Tor Pell", "Tor"),
            ("T. Pell", "T. Dorn"),
        ] {
            check(first, second, false);
        }
    }

    /// A first name alone is one person with the whole name where the number is the same.
    #[test]
    fn a_number_is_evidence() {
        let number = ["+447700900001".to_owned()];
        let other = ["+447700900002".to_owned()];
        let mut names = Alike::default();
        assert_eq!(names.add("Tor Pell", &number), None);
        assert_eq!(names.add("Tor", &other), None);
        assert_eq!(names.add("Tor", &number).as_deref(), Some("Tor Pell"));
    }
}
