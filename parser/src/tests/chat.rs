//! Lines of chat that hold a word of work, a number and the letter of a block.
//!
//! They are made by a generator with a fixed seed: a thing of the house or the town, a word of work
//! that also has another sense, small words, and at times a number and a letter. What is asserted
//! is the share that would be stored; being asked about or answered is counted elsewhere.

use std::{format, string::String, vec::Vec};

use super::{read, render};

/// Lines that are made.
const LINES: usize = 20_000;
/// At most one line in so many may be stored.
const LINES_FOR_ONE_FACT: usize = 10_000;
/// Any seed would do; the same one gives the same lines.
const SEED: u64 = 20_000;

/// What people talk of that is no tree. Several are listed words of the trade in another sense.
const SUBJECTS: &[&str] = &[
    "phone", "motor", "lamp", "radio", "shoe", "shirt", "bed", "door", "window", "roof", "fence",
    "road", "bridge", "well", "pump", "engine", "bus", "boat", "market", "school", "church",
    "feast", "music", "ball", "goal", "team", "song", "fee", "price", "ticket", "letter",
    "clothes", "pot", "stove", "soup", "fish", "chicken", "dog", "bread", "sugar", "salt", "milk",
    "tea", "water", "tooth", "hair", "hand", "back", "eye", "room", "table", "chair", "clock",
    "knife", "rope", "paint", "nail", "paper", "book", "bank", "hotel", "office", "beach", "river",
];

/// Units of the trade that are things of the house too; only without their number.
const UNITS: &[&str] = &[
    "bag", "bags", "tin", "cup", "bucket", "sack", "foot", "tins", "cups",
];

/// Words of work that chat also uses.
const TRIGGERS: &[&str] = &[
    "dead",
    "died",
    "lost",
    "missing",
    "dry",
    "dried",
    "broke",
    "broken",
    "burnt",
    "fire",
    "clean",
    "cleaned",
    "clear",
    "cleared",
    "open",
    "opened",
    "cover",
    "crown",
    "round",
    "high",
    "pink",
    "plant",
    "planted",
    "planned",
    "wedding",
    "deaf",
    "pig",
    "rice",
    "corn",
    "ate",
    "eaten",
    "eat",
    "cut grass",
    "tap",
    "tapped",
    "topped",
    "line",
    "lined",
    "marked",
    "hole",
    "dig",
    "dug",
    "pit",
    "got",
    "came",
    "received",
    "filled",
    "fed",
    "feed",
    "supplied",
    "replaced",
    "rain",
    "root",
    "sick",
    "weak",
    "stolen",
    "failed",
    "spray",
    "sprayed",
    "poison",
    "storm",
    "wind",
    "branch",
    "trimmed",
    "pruned",
    "weed",
    "weeded",
    "fertiliser",
    "girth",
    "height",
    "ringed",
    "brushed",
    "applied",
    "damaged",
];

const SMALL: &[&str] = &[
    "the", "my", "a", "your", "our", "this", "that", "so", "just", "only", "very", "some", "new",
    "old", "with", "at", "on", "in", "for", "and", "is", "was", "i", "we", "it", "now", "again",
    "still",
];

const LETTERS: &[&str] = &["A", "B", "C", "a", "b", "c"];

#[test]
fn chat_with_words_of_work_is_not_stored() {
    let mut dice = Dice(SEED);
    let stored: Vec<String> = (0..LINES)
        .map(|_| line(&mut dice))
        .filter(|text| is_stored(text))
        .collect();
    assert!(
        stored.len() * LINES_FOR_ONE_FACT <= LINES,
        "{} of {LINES} lines would be stored, such as {:#?}",
        stored.len(),
        stored
            .iter()
            .take(400)
            .map(|text| format!("{text} => {}", render::reading(&read(text))))
            .collect::<Vec<_>>()
    );
}

/// A fact without any doubt: it would be stored unasked.
fn is_stored(text: &str) -> bool {
    let reading = read(text);
    let sure = reading
        .reports
        .iter()
        .any(|report| report.doubts.is_empty());
    sure && reading.stances.is_empty() && reading.acts.is_empty() && reading.alarm.is_none()
}

fn line(dice: &mut Dice) -> String {
    let subject = dice.one_of(SUBJECTS);
    let trigger = dice.one_of(TRIGGERS);
    let (small, more) = (dice.one_of(SMALL), dice.one_of(SMALL));
    let letter = dice.one_of(LETTERS);
    let number = 1 + dice.below(60);
    let unit = dice.one_of(UNITS);
    match dice.below(16) {
        0 => format!("{subject} {trigger} {letter}"),
        1 => format!("{subject} {trigger} {number} {letter}"),
        2 => format!("{small} {subject} {trigger} {number} {letter}"),
        3 => format!("{trigger} {small} {subject} {letter}"),
        4 => format!("{trigger} {number} {subject} {letter}"),
        5 => format!("{small} {trigger} {subject} {more} {number} {letter}"),
        6 => format!("{trigger} {subject} {number}{letter}"),
        7 => format!("{letter} {subject} {trigger} {number}"),
        8 => format!("{subject} {small} {trigger} {more} {letter} {number}"),
        9 => format!("{small} {subject} {trigger} {more} {subject} {number} {letter}"),
        10 => format!("{number} {subject} {trigger} {small} {letter}"),
        11 => format!("{unit} {trigger} {letter}"),
        12 => format!("{small} {unit} {trigger} {number} {letter}"),
        13 => format!("{trigger} my {unit} {letter}"),
        14 => format!("{small} {unit} {more} {trigger} {letter} {number}"),
        _ => format!("{trigger} {small} {more} {subject} at {number} {letter}"),
    }
}

/// A small generator of numbers that look like chance: `SplitMix64` (Steele, Lea, Flood 2014).
struct Dice(u64);

impl Dice {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    fn below(&mut self, end: u64) -> u64 {
        self.next() % end
    }

    fn one_of(&mut self, words: &[&'static str]) -> &'static str {
        let at = usize::try_from(self.below(words.len() as u64)).unwrap();
        words[at]
    }
}
