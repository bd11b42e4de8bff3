//! What the reader makes of texts, one line a text.

mod acts;
mod advisers;
mod chat;
mod clauses;
mod dates;
mod gate;
mod laws;
mod memory;
mod numbers;
mod packs;
mod packs_entries;
pub(crate) mod render;
mod reports;
mod scripts;
mod spelling;
mod tongues;
mod unsure;

use std::vec::Vec;

use crate::{Known, Pack, Reader, Reading, Sender, languages};

/// A farmer with four blocks, who shares a phone with one other person.
const FARMER: Known<'_> = Known {
    languages: &["en"],
    blocks: &["A", "B", "C", "Old Mill"],
    groups: &[],
    members: &["Tamo"],
    sender: Sender::Farmer,
};

/// An adviser with two groups.
const ADVISER: Known<'_> = Known {
    languages: &[],
    blocks: &[],
    groups: &["KOLO", "Two Rivers"],
    members: &["Tamo", "Siti Hill"],
    sender: Sender::Adviser,
};

fn reader() -> &'static Reader {
    static READER: std::sync::OnceLock<Reader> = std::sync::OnceLock::new();
    READER.get_or_init(|| reader_of(languages::ALL))
}

fn reader_of(packs: &[&str]) -> Reader {
    let packs: Vec<Pack> = packs
        .iter()
        .map(|pack| Pack::parse(pack).unwrap())
        .collect();
    Reader::new(packs).unwrap()
}

fn read(text: &str) -> Reading {
    reader().read(text, &FARMER)
}

/// Checks what a farmer's text is read as.
#[track_caller]
fn check(text: &str, expected: &str) {
    assert_eq!(render::reading(&read(text)), expected, "for {text:?}");
}

/// Checks that nothing of a text is stored without a question, on a phone of these languages.
#[track_caller]
fn check_not_stored(languages: &[&str], text: &str) {
    let known = Known {
        languages,
        ..FARMER
    };
    let reading = reader().read(text, &known);
    let asked = reading
        .reports
        .iter()
        .all(|report| !report.doubts.is_empty());
    let shown = render::reading(&reading);
    assert!(asked || !reading.stances.is_empty(), "{text:?}: {shown}");
}

/// Checks what an adviser's text is read as.
#[track_caller]
fn check_adviser(text: &str, expected: &str) {
    let reading = reader().read(text, &ADVISER);
    assert_eq!(render::reading(&reading), expected, "for {text:?}");
}
