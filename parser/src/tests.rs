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
mod trace;
mod unsure;

use std::vec::Vec;

use crate::{Known, Names, Pack, Reader, Reading, Sender, languages};

/// A farmer with four blocks, who shares a phone with one other person.
const FARMER: Known<'_> = Known {
    languages: &["en"],
    blocks: &["A", "B", "C", "Old Mill"],
    groups: &[],
    members: &["Tamo"],
    rolls: &[],
    sender: Sender::Farmer,
};

/// An adviser with two groups.
const ADVISER: Known<'_> = Known {
    languages: &[],
    blocks: &[],
    groups: &["KOLO", "Two Rivers"],
    members: &["Tamo", "Siti Hill"],
    rolls: &[],
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

/// The same of a phone of another language.
#[track_caller]
fn check_as(language: &str, text: &str, expected: &str) {
    let known = Known {
        languages: &[language],
        ..FARMER
    };
    let reading = reader().read(text, &known);
    assert_eq!(render::reading(&reading), expected, "for {text:?}");
}

/// Checks what an adviser's text is read as, whether the names come one by one or made ready.
#[track_caller]
fn check_adviser(text: &str, expected: &str) {
    let names = Names::new(ADVISER.members.iter().copied());
    let made_ready = Known {
        members: &[],
        rolls: &[&names],
        ..ADVISER
    };
    for known in [&ADVISER, &made_ready] {
        let reading = reader().read(text, known);
        assert_eq!(render::reading(&reading), expected, "for {text:?}");
    }
}
