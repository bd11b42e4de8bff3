//! Danger, death and need in bad spelling lead to first help or to the adviser, never to silence.
//!
//! The texts are invented; `danger.txt` holds them with what must come of each.

use budwood::play::virtual_clock::Rig;

use super::story::{instant, moment_of};
use crate::fixture::{self, DEMO_ROLL, LastingStore};

const TEXTS: &str = include_str!("danger.txt");

/// Ruma has the blocks A and Hill.
const RUMA: &str = "+447700900004";
const MARA: &str = "+447700900100";

/// A valley in which Ruma's phone uses this language.
fn rig(language: &str) -> Rig {
    let roll = String::from_utf8_lossy(DEMO_ROLL);
    let roll = roll.replace(&format!("{RUMA},en"), &format!("{RUMA},{language}"));
    let start = instant(moment_of("2026-12-20 10:00"));
    let store = Box::new(LastingStore::default());
    let mut rig = Rig::open(fixture::setup(), store, start).expect("an empty store");
    rig.load_roll(roll.as_bytes())
        .expect("a list without faults");
    rig
}

/// What nobody understands, or what may be a question: the adviser reads either.
const PERSON: &str = ", not understood. ";
const ASKED: &str = ", a question. ";

/// How the adviser's list names what comes of a text.
fn shown(end: &str) -> Option<&str> {
    Some(match end {
        "fire" => ", fire. ",
        "snake" => ", a snake bite. ",
        "illness" => ", illness. ",
        "grief" => ", a death. ",
        "number" => ". Lost? LOST ",
        "call" => ", please call. ",
        "person" => PERSON,
        "asked" => return None,
        other => panic!("no such end: {other}"),
    })
}

#[test]
fn danger_in_bad_spelling_is_told_to_a_person() {
    let mut wrong = Vec::new();
    for line in TEXTS.lines().filter(|line| !line.starts_with('#')) {
        let mut parts = line.splitn(3, '|');
        let mut part = || parts.next().expect("language|end|text");
        let (language, end, text) = (part(), part(), part());
        let mut rig = rig(language);
        let said = rig.text(RUMA, text).expect("a store");
        let answered = said.iter().any(|one| one.text.to == RUMA);
        let next = rig.text(MARA, "next").expect("a store");
        let next = next.first().map_or("", |one| one.text.text.as_str());
        let is_right = shown(end).map_or(next == "No text waits for you.", |wanted| {
            next.contains(wanted) || (wanted == PERSON && next.contains(ASKED))
        });
        if !answered || !is_right {
            wrong.push(format!("{line}: answered {answered}, {next}"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
