//! Words of every day against each pack: what stands in a list of common words of a language must not
//! by itself be taken for work, harm or a need, by a phone of that language.
//!
//! The lists are those of npm stopwords-iso (MIT), for the languages that it has. Alone, a word of
//! them may answer the bot ("yes", "no", "later", a number): that is no collision. What collides is
//! printed, so that a writer of packs sees which listed word is common and not called weak, and which
//! form without marks is another word.

use budwood_parser::{Reader, Reading};
use serde_json::{Value, json};

use crate::{
    packs::{Language, read, reader, spoken},
    peer::ask,
};

/// Languages of which the peer has a list, and how many of its words collide at most: what it is today,
/// with a little room. It may only get less.
const MOST: [(&str, usize); 7] = [
    ("en", 20),
    ("fr", 28),
    ("id", 88),
    ("ms", 25),
    ("pt", 12),
    ("th", 14),
    ("vi", 215),
];

#[test]
fn words_of_every_day_tell_nothing_alone() {
    let reader = reader();
    for language in spoken(&reader) {
        let most = MOST.iter().find(|(code, _)| *code == language.theirs);
        if let Some((_, most)) = most {
            check(&reader, language, *most);
        }
    }
}

fn check(reader: &Reader, language: Language, most: usize) {
    let words = ask("everyday.js", &[json!({ "lang": language.theirs })]);
    assert!(words.len() > 100, "{}: {}", language.code, words.len());
    let word = |answer: &Value| answer["word"].as_str().unwrap_or_default().to_owned();
    let collides = |word: &String| says_something(&read(reader, language, word));
    let collide: Vec<String> = words.iter().map(word).filter(collides).collect();
    println!(
        "{}: {} of {} common words collide: {}",
        language.code,
        collide.len(),
        words.len(),
        collide.join(", ")
    );
    assert!(
        collide.len() <= most,
        "{}: {}",
        language.code,
        collide.len()
    );
}

/// It would be asked about, helped with an example, or shown to a person.
fn says_something(reading: &Reading) -> bool {
    let told = !reading.reports.is_empty() && reading.stances.is_empty();
    told || reading.about_work || reading.alarm.is_some() || reading.asks
}
