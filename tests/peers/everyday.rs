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

/// Languages of which the peer has a list.
const LISTED: [&str; 7] = ["en", "fr", "id", "ms", "pt", "th", "vi"];

#[test]
fn words_of_every_day_tell_nothing_alone() {
    let reader = reader();
    let mut stored = Vec::new();
    for language in spoken(&reader) {
        if LISTED.contains(&language.theirs) {
            check(&reader, language, &mut stored);
        }
    }
    assert!(stored.is_empty(), "{stored:#?}");
}

fn check(reader: &Reader, language: Language, stored: &mut Vec<String>) {
    let words = ask("everyday.js", &[json!({ "lang": language.theirs })]);
    assert!(words.len() > 100, "{}: {}", language.code, words.len());
    let word = |answer: &Value| answer["word"].as_str().unwrap_or_default().to_owned();
    let mut collide = Vec::new();
    for word in words.iter().map(word) {
        let reading = read(reader, language, &word);
        if is_stored(&reading) {
            stored.push(format!("{}: {word}", language.code));
        } else if says_something(&reading) {
            collide.push(word);
        }
    }
    println!(
        "{}: {} of {} common words collide: {}",
        language.code,
        collide.len(),
        words.len(),
        collide.join(", ")
    );
}

fn is_stored(reading: &Reading) -> bool {
    let clear = reading
        .reports
        .iter()
        .all(|report| report.doubts.is_empty());
    !reading.reports.is_empty() && clear && reading.stances.is_empty()
}

/// It would be asked about, helped with an example, or shown to a person.
fn says_something(reading: &Reading) -> bool {
    let told = !reading.reports.is_empty() && reading.stances.is_empty();
    told || reading.about_work || reading.alarm.is_some() || reading.asks
}
