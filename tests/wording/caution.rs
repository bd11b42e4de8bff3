//! Cautions and reasons: one list for all languages, and each text says what the list has of it.
//!
//! A translation that drops a caution has to drop it from the list, where its line stands between
//! those of the others. Deliberately absent: whether the words are good ones, which people judge.

use std::collections::{BTreeMap, BTreeSet};

use budwood::words::sms::{self, Alphabet};

use super::source;

const LIST: &str = include_str!("cautions.txt");

/// Texts that can lead to harm: each is in the list.
const CAREFUL: [&str; 47] = [
    "call-me",
    "cluster-notice",
    "field-round",
    "first-danger",
    "first-fire",
    "first-illness",
    "first-snake",
    "harm-question",
    "how-much-feed",
    "lesson-stumps-3",
    "lesson-pits-2",
    "lesson-pits-4",
    "lesson-planting-2",
    "lesson-shoots-4",
    "lesson-shoots-5",
    "lesson-branching-3",
    "lesson-branching-4",
    "lesson-branching-5",
    "may-spray",
    "may-tap-check",
    "may-tap-no",
    "may-tap-no-usual",
    "nudge-clear",
    "nudge-dig_pits",
    "nudge-feed",
    "nudge-fill_pits",
    "nudge-firebreak",
    "nudge-get_ready",
    "nudge-induce_branching",
    "nudge-leaf_check",
    "nudge-line",
    "nudge-look_at_induced",
    "nudge-mulch",
    "nudge-near",
    "nudge-open",
    "nudge-open-usual",
    "nudge-open_rest",
    "nudge-plant",
    "nudge-prune",
    "nudge-root_check",
    "nudge-weed",
    "stand-harm",
    "stand-label",
    "stand-sick",
    "when-tap-early",
    "when-tap-unknown",
    "who",
];

/// What one text says in each language.
struct Row<'a> {
    key: &'a str,
    said: BTreeMap<&'a str, Said<'a>>,
}

/// How a language says it.
enum Said<'a> {
    Always(&'a str),
    /// In the longer form of the text.
    WithRoom(&'a str),
    /// Not at all, for a reason.
    LeftOut(&'a str),
}

fn rows() -> Vec<Row<'static>> {
    let lines = LIST.lines().filter(|line| !line.starts_with('#'));
    let mut rows: Vec<Row<'static>> = Vec::new();
    for line in lines.filter(|line| !line.is_empty()) {
        let heading = line.split_once(": ").filter(|(key, _)| !key.contains(' '));
        if let Some((key, english)) = heading {
            let said = BTreeMap::from([("en", Said::Always(english))]);
            rows.push(Row { key, said });
            continue;
        }
        let (mark, words) = line.split_once(' ').expect("a language and its words");
        let (language, said) = if let Some(language) = mark.strip_suffix('~') {
            (language, Said::WithRoom(words))
        } else if let Some(language) = mark.strip_suffix('-') {
            (language, Said::LeftOut(words))
        } else {
            (mark, Said::Always(words))
        };
        let row = rows.last_mut().expect("a text before its languages");
        assert!(row.said.insert(language, said).is_none(), "twice: {line}");
    }
    rows
}

#[test]
fn every_caution_is_said_in_every_language() {
    let files = source::files();
    let mut missing = Vec::new();
    for row in rows() {
        let languages: BTreeSet<&str> = files.iter().map(|(code, _)| code.as_str()).collect();
        let listed: BTreeSet<&str> = row.said.keys().copied().collect();
        assert_eq!(listed, languages, "{}", row.key);
        for (language, file) in &files {
            let texts = source::texts(file);
            let long = format!("{}.long", row.key);
            let (key, words) = match row.said[language.as_str()] {
                Said::Always(words) => (row.key, words),
                Said::WithRoom(words) => (long.as_str(), words),
                Said::LeftOut(_) => continue,
            };
            let text = texts.get(key).expect(key).to_lowercase();
            if !text.contains(words) {
                missing.push(format!("{language}: {key} lacks {words:?}: {text}"));
            }
        }
    }
    assert!(missing.is_empty(), "{}", missing.join("\n"));
}

#[test]
fn what_can_harm_comes_with_its_caution() {
    let listed: BTreeSet<&str> = rows().iter().map(|row| row.key).collect();
    let bare: Vec<&str> = CAREFUL
        .into_iter()
        .filter(|key| !listed.contains(key))
        .collect();
    assert!(bare.is_empty(), "no caution for {bare:?}");
}

/// Only a language that has 70 letters for an SMS may leave a caution out, with a reason.
#[test]
fn only_a_language_without_room_leaves_a_caution_out() {
    let files: BTreeMap<String, String> = source::files().into_iter().collect();
    for row in rows() {
        for (language, said) in &row.said {
            let Said::LeftOut(reason) = said else {
                continue;
            };
            let text = &source::texts(&files[*language])[row.key];
            let own = sms::bare(&source::own_letters(text));
            let is_short = sms::measure(&own).alphabet != Alphabet::Gsm7;
            assert!(is_short, "{language}: {} has room: {text}", row.key);
            assert!(reason.starts_with("no room beside "), "{reason}");
        }
    }
}
