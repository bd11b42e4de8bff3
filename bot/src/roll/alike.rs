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
}

impl Alike {
    /// Takes a name in; gives an earlier one that looks like it.
    pub(super) fn add(&mut self, name: &str) -> Option<String> {
        let mut earlier = None;
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

/// What two names have in common when they look alike: a plain form, or a plain form with any one
/// letter taken out.
fn keys(name: &str) -> BTreeSet<String> {
    let mut keys = BTreeSet::new();
    for plain in plain_forms(name) {
        let letters: Vec<char> = plain.chars().collect();
        keys.insert(plain);
        if letters.len() < LETTERS_MIN {
            continue;
        }
        for (skip, _) in letters.iter().enumerate() {
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
    let lower = name.to_lowercase();
    let mut words: Vec<&str> = lower
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .collect();
    if words.len() > 1 {
        words.retain(|word| !TITLES.contains(word));
    }
    let mut words: Vec<String> = words.into_iter().map(sound).collect();
    let written = words.concat();
    words.sort_unstable();
    [written, words.concat()]
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
        assert_eq!(names.add(first), None);
        assert_eq!(names.add(second).is_some(), alike, "{first} and {second}");
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
        ] {
            check(first, second, false);
        }
    }
}
