//! The stories tell of every kind of fact: how people text it, and what we answer.

use std::{collections::BTreeSet, fs, path::Path};

use budwood_parser::{Kind, Known, Pack, Reader, Sender, languages};

use super::story::{Line, lines};

#[test]
fn every_kind_of_fact_is_told_in_a_story() {
    let pack = Pack::parse(languages::ENGLISH).expect("a pack without faults");
    let reader = Reader::new(vec![pack]).expect("a pack without faults");
    let known = Known {
        languages: &["en"],
        blocks: &["A", "B", "C"],
        groups: &[],
        members: &[],
        rolls: &[],
        sender: Sender::Farmer,
    };
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../tests/conversations");
    let mut told: BTreeSet<Kind> = BTreeSet::new();
    for entry in fs::read_dir(folder).expect("a folder of stories") {
        let path = entry.expect("an entry").path();
        let story = fs::read_to_string(path).expect("a story");
        for (_, line) in lines(&story) {
            if let Line::Text(text) = line {
                let reading = reader.read(text.text, &known);
                told.extend(reading.reports.iter().map(|report| report.kind));
            }
        }
    }
    let untold = Kind::ALL.into_iter().filter(|kind| !told.contains(kind));
    let untold: Vec<&str> = untold.map(Kind::name).collect();
    assert!(untold.is_empty(), "no story in English tells of {untold:?}");
}
