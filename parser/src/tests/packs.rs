//! Faults of language packs name the file's key.

use std::{
    format,
    string::{String, ToString},
    vec::Vec,
};

use crate::{Kind, Pack, PackFault, Reader, languages};

#[track_caller]
fn fault(toml: &str, expected: &str) {
    let full = format!("code = \"xx\"\nname = \"Test\"\n{toml}");
    assert_eq!(Pack::parse(&full).unwrap_err().to_string(), expected);
}

#[test]
fn faults_are_named() {
    fault(
        "[kinds]\nplantd = []",
        "language pack: kinds.plantd: is not a key that is known here",
    );
    fault(
        "colour = 1",
        "language pack: colour: is not a key that is known here",
    );
    fault(
        "[words]\nblock = 1",
        "language pack: words.block: expected a list of texts, found integer",
    );
    fault(
        "[words]\nblock = [\"a b c d e\"]",
        "language pack: words.block: \"a b c d e\": expected 1 to 4 words, found 5",
    );
    fault(
        "[words]\nblock = [\"  \"]",
        "language pack: words.block: \"  \": expected 1 to 4 words, found 0",
    );
    fault(
        "[kinds]\nplanted = [\"set\"]\ndead = [\"set\"]",
        "language pack xx: \"set\" is listed both as planted and as dead",
    );
    fault(
        "[months]\n13 = [\"x\"]",
        "language pack: months.13: is not a key that is known here",
    );
    fault(
        "[numbers]\nunit_after = [1.5]",
        "language pack: numbers.unit_after: expected whole numbers",
    );
}

#[test]
fn packs_that_do_not_go_together() {
    let pack = Pack::parse(languages::ENGLISH).unwrap();
    let faults = Reader::new(Vec::from([pack.clone(), pack])).err().unwrap();
    assert_eq!(faults, [PackFault::Twice("en".to_string())]);
}

#[test]
fn every_pack_that_ships_has_words_for_every_kind() {
    for text in languages::ALL {
        let pack = Pack::parse(text).unwrap();
        for kind in Kind::ALL.into_iter().filter(|kind| *kind != Kind::NotDone) {
            let listed = pack
                .entries
                .iter()
                .any(|entry| entry.meaning.kind() == Some(kind));
            assert!(listed, "{}: {}", pack.code(), kind.name());
        }
    }
}

#[test]
fn a_reader_names_its_languages() {
    let codes: Vec<String> = super::reader()
        .languages()
        .map(ToString::to_string)
        .collect();
    assert_eq!(codes.first().map(String::as_str), Some("en"));
    assert_eq!(super::read("planted 120 B").language.as_deref(), Some("en"));
}
