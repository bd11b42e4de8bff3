//! Words that the reader does not know: a share of those that people use is taken out of its pack,
//! and texts with just these are read.
//!
//! Nobody can demand that they are understood. What must never come of them is another kind of
//! work.

use std::collections::{BTreeMap, BTreeSet};

use budwood_parser::{Pack, Reader, languages};
use serde_json::Value;

use crate::{
    chance::Chance,
    draw::{happens, pick},
    farm::Farm,
    judge::Tally,
    message::line,
    plan,
    rates::Level,
    run,
    speech::{Speech, Words},
    surface::Teller,
};

/// Of ten thousand words of work, so many are held out.
const HELD_OUT: u64 = 1_500;
/// Any seed would do; the same one holds the same words.
const SEED: u64 = 15;
/// One text of these for so many reports.
const REPORTS_FOR_ONE: usize = 5;

/// Adds texts with words that are held out to a tally, and hands each that is read as another kind
/// of work to `show`.
pub(crate) fn measure(
    speech: &Speech,
    reports: usize,
    tally: &mut Tally,
    mut show: impl FnMut(&Value, &str, &Value),
) {
    let held = held(speech);
    if held.is_empty() {
        return;
    }
    let reader = reader_without(speech, &held);
    let mut chance = Chance::new(SEED);
    let mut kinds = Vec::new();
    let mut lines = Vec::new();
    for _ in 0..reports / REPORTS_FOR_ONE {
        let farm = Farm::draw(&mut chance, speech);
        let plot = farm.plot(&mut chance).clone();
        let Some(fact) = plan::fact(&mut chance, &only(speech, &held), &plot, &[]) else {
            continue;
        };
        let narrow = only(speech, &held);
        let mut teller = Teller {
            chance: &mut chance,
            speech: &narrow,
            farm: &farm,
            level: Level::Clean,
        };
        let told = teller.tell(std::slice::from_ref(&fact), None);
        let text: Vec<&str> = told
            .tokens
            .iter()
            .map(|token| token.text.as_str())
            .collect();
        lines.push(line(Some(&speech.code), &text.join(" "), &farm));
        kinds.push(fact.kind);
    }
    let answers = run::answers_to(&reader, &lines);
    for ((answer, kind), line) in answers.iter().zip(kinds).zip(&lines) {
        tally.held += 1;
        if is_another(answer, kind) {
            tally.held_wrong += 1;
            show(line, kind, answer);
        }
    }
}

fn is_another(answer: &Value, kind: &str) -> bool {
    let events = answer.get("events").and_then(Value::as_array);
    let other = |event: &Value| event.get("kind").and_then(Value::as_str) != Some(kind);
    answer.get("act").and_then(Value::as_str) == Some("record")
        && events.is_some_and(|events| events.iter().any(other))
}

/// The words of each kind that are held out; at least one word of a kind stays.
fn held(speech: &Speech) -> BTreeMap<String, Vec<String>> {
    let mut chance = Chance::new(SEED);
    let mut held = BTreeMap::new();
    for (kind, words) in &speech.work {
        let all: BTreeSet<&str> = words.all().collect();
        let chosen: Vec<String> = all
            .iter()
            .filter(|_| happens(&mut chance, HELD_OUT))
            .map(|word| (*word).to_owned())
            .collect();
        if !chosen.is_empty() && chosen.len() < all.len() {
            held.insert(kind.clone(), chosen);
        }
    }
    if held.is_empty() {
        let kinds: Vec<(&String, &Words)> = speech.work.iter().collect();
        let (kind, words) = pick(&mut chance, &kinds);
        held.extend(
            words
                .all()
                .next()
                .map(|word| ((*kind).clone(), vec![word.to_owned()])),
        );
    }
    held
}

/// The speech of one who knows no other words of work.
fn only(speech: &Speech, held: &BTreeMap<String, Vec<String>>) -> Speech {
    let mut narrow = speech.clone();
    narrow.damage.clear();
    narrow.disease.clear();
    narrow.loans.clear();
    let words =
        |(kind, words): (&String, &Vec<String>)| (kind.clone(), Words::from(words.join(";")));
    narrow.work = held.iter().map(words).collect();
    narrow
}

/// The pack of the language without these words, as one who never heard them would write it.
fn reader_without(speech: &Speech, held: &BTreeMap<String, Vec<String>>) -> Reader {
    let code = format!("code = \"{}\"", speech.code);
    let mut packs = Vec::new();
    for text in languages::ALL
        .iter()
        .filter(|text| text.lines().any(|line| line == code))
    {
        let mut text = (*text).to_owned();
        for word in held.values().flatten() {
            for listed in ["\"{w}\", ", ", \"{w}\"", "\"{w}\",", "[\"{w}\"]"] {
                let left = if listed.starts_with('[') { "[]" } else { "" };
                text = text.replace(&listed.replace("{w}", word), left);
            }
        }
        // Twins of a word that is no longer there.
        let words: BTreeSet<&str> = held.values().flatten().map(String::as_str).collect();
        let stays = |line: &&str| {
            let key = line.split(" =").next().unwrap_or_default();
            !words.contains(key.trim_matches('"'))
        };
        let text: Vec<&str> = text.lines().filter(stays).collect();
        packs.push(Pack::parse(&text.join("\n")).expect("a pack with fewer words is a pack"));
    }
    Reader::new(packs).expect("one pack cannot disagree")
}
