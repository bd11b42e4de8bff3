//! What is printed: each language has each text, with the same values in it.

use std::collections::BTreeSet;

use budwood::wording::Paper;

use super::source;

/// The names of the values of a text.
fn values(text: &str) -> BTreeSet<&str> {
    text.split("{ $")
        .skip(1)
        .filter_map(|rest| rest.split(' ').next())
        .collect()
}

#[test]
fn every_language_has_exactly_what_is_printed() {
    let known: BTreeSet<&str> = Paper::ALL.iter().map(|paper| paper.name()).collect();
    let files = source::printed();
    let (_, english) = files.iter().find(|(code, _)| code == "en").unwrap();
    let english = source::texts(english);
    assert_eq!(files.len(), source::files().len());
    for (language, file) in &files {
        let texts = source::texts(file);
        let written: BTreeSet<&str> = texts.keys().map(String::as_str).collect();
        assert_eq!(written, known, "{language}");
        for (name, text) in &texts {
            assert_eq!(values(text), values(&english[name]), "{language}: {name}");
        }
    }
}

#[test]
fn everything_that_is_printed_is_asked_for() {
    let code = source::code();
    let asked: BTreeSet<&str> = code
        .split("Paper::")
        .skip(1)
        .filter_map(|rest| rest.split(|c: char| !c.is_alphanumeric()).next())
        .collect();
    for paper in Paper::ALL {
        let name = format!("{paper:?}");
        assert!(asked.contains(name.as_str()), "{name} is printed nowhere");
    }
}
