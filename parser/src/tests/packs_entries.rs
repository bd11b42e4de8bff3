//! Every entry of every pack, read by itself in its language.
//!
//! A word of work with a number and a block is that work, or is asked about, or says nothing: it
//! is never another work. An answer is that answer or none.

use std::{
    collections::{BTreeMap, BTreeSet},
    format,
    string::{String, ToString},
    vec::Vec,
};

use super::{FARMER, render};
use crate::{
    Act, Kind, Known, Pack, Reading,
    glyphs::fold::bare,
    languages,
    meaning::{Meaning, Plain},
};

/// The work that a meaning tells of.
fn work(meaning: Meaning) -> Option<Kind> {
    let things = [
        (Meaning::Fertiliser, Kind::Fertilised),
        (Meaning::Spray, Kind::Sprayed),
        (Meaning::Crop, Kind::IntercropSown),
        (Meaning::Cover, Kind::CoverSown),
    ];
    let thing = things.into_iter().find(|(thing, _)| *thing == meaning);
    meaning
        .kind()
        .or(meaning.ailment().map(|_| Kind::Disease))
        .or(meaning.cause().map(|_| Kind::Damage))
        .or(thing.map(|(_, kind)| kind))
}

fn packs() -> Vec<Pack> {
    languages::ALL
        .iter()
        .map(|text| Pack::parse(text).unwrap())
        .collect()
}

/// The readings of a pack by spelling: as listed, and without accents where those are not listed.
fn spellings(pack: &Pack) -> BTreeMap<String, Vec<Meaning>> {
    let mut spellings: BTreeMap<String, Vec<Meaning>> = BTreeMap::new();
    for entry in &pack.entries {
        let meanings = spellings.entry(entry.phrase.clone()).or_default();
        meanings.push(entry.meaning);
    }
    let listed: BTreeSet<String> = spellings.keys().cloned().collect();
    for entry in &pack.entries {
        let plain = bare(&entry.phrase);
        if plain.is_ascii() && !listed.contains(&plain) {
            spellings.entry(plain).or_default().push(entry.meaning);
        }
    }
    spellings
}

fn read(code: &str, text: &str) -> Reading {
    let known = Known {
        languages: &[code],
        ..FARMER
    };
    super::reader().read(text, &known)
}

fn is_sure(reading: &Reading) -> bool {
    reading.stances.is_empty()
        && reading.problems.is_empty()
        && reading
            .reports
            .iter()
            .all(|report| report.doubts.is_empty())
}

#[test]
fn a_word_of_work_is_never_another_work() {
    let mut wrong: Vec<String> = Vec::new();
    let mut count = 0;
    for pack in packs() {
        for (phrase, meanings) in spellings(&pack) {
            let meant: BTreeSet<Kind> = meanings.iter().filter_map(|one| work(*one)).collect();
            if meant.is_empty() {
                continue;
            }
            for text in [format!("{phrase} 8 B"), format!("B {phrase} 8")] {
                count += 1;
                let reading = read(pack.code(), &text);
                let other = reading
                    .reports
                    .iter()
                    .find(|report| !may_be(report.kind, &meant));
                if other.is_some() && is_sure(&reading) {
                    wrong.push(format!(
                        "{} {text}: {}",
                        pack.code(),
                        render::reading(&reading)
                    ));
                }
            }
        }
    }
    assert!(count > 5_000, "only {count} texts");
    assert!(wrong.is_empty(), "{} of {count}: {wrong:#?}", wrong.len());
}

/// Land, plants and rain may be told in other words than those of the entry ("no rain").
fn may_be(kind: Kind, meant: &BTreeSet<Kind>) -> bool {
    meant.contains(&kind) || kind == Kind::NotDone
}

#[test]
fn an_answer_is_never_another_answer() {
    let classes: [(Plain, Act); 7] = [
        (Plain::Yes, Act::Yes),
        (Plain::No, Act::No),
        (Plain::Done, Act::Done),
        (Plain::Undo, Act::Undo),
        (Plain::Help, Act::Help),
        (Plain::Stop, Act::Stop),
        (Plain::Start, Act::Start),
    ];
    let mut wrong: Vec<String> = Vec::new();
    for pack in packs() {
        for (phrase, meanings) in spellings(&pack) {
            let expected: Vec<&Act> = classes
                .iter()
                .filter(|(class, _)| meanings.contains(&Meaning::Plain(*class)))
                .map(|(_, act)| act)
                .collect();
            if expected.is_empty() {
                continue;
            }
            let reading = read(pack.code(), &phrase);
            let is_right = reading
                .acts
                .iter()
                .all(|act| expected.contains(&act) || matches!(act, Act::Later(_) | Act::Query(_)));
            // Who wants no more texts must be heard.
            let stops = meanings.contains(&Meaning::Plain(Plain::Stop));
            if !is_right || (stops && reading.acts != [Act::Stop]) {
                wrong.push(format!("{} {phrase}: {:?}", pack.code(), reading.acts));
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

/// Who wants no more texts is heard in any language that is loaded, whatever the phone speaks;
/// only where the phone's own language says something else by those words they keep their meaning.
#[test]
fn stop_is_heard_in_every_language_on_every_phone() {
    let packs = packs();
    let mut wrong: Vec<String> = Vec::new();
    let mut count = 0;
    for phone in &packs {
        let own = spellings(phone);
        for pack in &packs {
            for (phrase, meanings) in spellings(pack) {
                let stops = meanings.contains(&Meaning::Plain(Plain::Stop));
                if !stops || own.contains_key(&phrase) {
                    continue;
                }
                count += 1;
                let acts = read(phone.code(), &phrase).acts;
                if acts != [Act::Stop] {
                    wrong.push(format!("{phrase} on {}: {acts:?}", phone.code()));
                }
            }
        }
    }
    assert!(count > 400, "only {count} texts");
    assert!(wrong.is_empty(), "{} of {count}: {wrong:#?}", wrong.len());
}

/// Spellings that mean different work, numbers or answers in different packs. The phone's own
/// language decides; the list is pinned, so that a new clash is seen when it comes.
#[test]
fn clashes_between_packs_are_known() {
    let mut readings: BTreeMap<String, BTreeMap<String, BTreeSet<String>>> = BTreeMap::new();
    for pack in packs() {
        for (phrase, meanings) in spellings(&pack) {
            let told: BTreeSet<String> = meanings.iter().filter_map(|one| told(*one)).collect();
            if !told.is_empty() && !phrase.contains(' ') {
                let by_pack = readings.entry(phrase).or_default();
                by_pack.insert(pack.code().to_string(), told);
            }
        }
    }
    let clashes: Vec<String> = readings
        .into_iter()
        .filter(|(_, by_pack)| by_pack.values().collect::<BTreeSet<_>>().len() > 1)
        .map(|(phrase, by_pack)| {
            let said: Vec<String> = by_pack
                .into_iter()
                .map(|(code, told)| {
                    format!("{code} {}", told.into_iter().collect::<Vec<_>>().join("/"))
                })
                .collect();
            format!("{phrase}: {}", said.join(", "))
        })
        .collect();
    let found = clashes.join("\n") + "\n";
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/src/tests/packs_clashes.txt");
    if std::env::var_os("BUDWOOD_UPDATE").is_some() {
        std::fs::write(path, &found).unwrap();
    }
    let pinned = std::fs::read_to_string(path).unwrap();
    assert_eq!(found, pinned, "BUDWOOD_UPDATE=1 takes a change over");
}

/// What matters when it is mistaken.
fn told(meaning: Meaning) -> Option<String> {
    if let Some(kind) = work(meaning) {
        return Some(kind.name().to_string());
    }
    if let Some(number) = meaning.numeral() {
        return Some(format!("{number:?}"));
    }
    let answers = [
        (Plain::Yes, "yes"),
        (Plain::No, "no"),
        (Plain::Negation, "not"),
        (Plain::Stop, "stop"),
        (Plain::Done, "done"),
        (Plain::Later, "later"),
    ];
    answers
        .into_iter()
        .find(|(class, _)| meaning == Meaning::Plain(*class))
        .map(|(_, name)| name.to_string())
}
