//! How the texts of `tests/corpus` are read, and when a reading of one is right: one rule for those who
//! learn from them (`parser/src/teach/corpus.rs`) and those who measure (`tests/measure/corpus.rs`).

use std::{fs, path::Path, vec::Vec};

use serde_json::Value;

/// Slots with free names, and those that two fair clerks fill differently.
const FREE: [&str; 17] = [
    "product",
    "species",
    "clone",
    "material",
    "extent",
    "formula",
    "per",
    "cause",
    "from",
    "kind_ref",
    "count_ref",
    "topic",
    "period",
    "raw",
    "approx",
    "unit_guess",
    "number",
];
/// What is said to the bot and is no fact.
const TALK: [&str; 11] = [
    "query", "deed", "yes", "no", "help", "stop", "start", "undo", "correct", "done", "later",
];
/// Slots that are measured; all other numbers are counted, and are right to the last tree and day.
const MEASURED: [&str; 4] = ["area", "amount", "mm", "values_cm"];
/// Of what is measured so much may be lost in rounding: this share of it, and no less than the other.
const SHARE: f64 = 0.01;
const LEAST: f64 = 0.01;
/// Groups of an adviser where the text names none.
pub(super) const GROUPS: [&str; 6] = ["KOLO", "TAMBI", "MERAPU", "SERIPA", "PHUNA", "DAKLIM"];

/// The texts of a folder, file by file in the order of their names.
pub(super) fn texts(folder: &Path) -> Vec<Value> {
    let mut files: Vec<_> = fs::read_dir(folder)
        .expect("the texts are there")
        .map(|file| file.expect("a file").path())
        .collect();
    files.sort();
    let mut texts = Vec::new();
    for file in files {
        for line in fs::read_to_string(file).expect("a text file").lines() {
            let text: Value = serde_json::from_str(line).expect("a line of JSON");
            if text.get("text").is_some() {
                texts.push(text);
            }
        }
    }
    texts
}

pub(super) fn kind(event: &Value) -> &str {
    event["kind"].as_str().unwrap_or_default()
}

pub(super) fn is_fact(event: &Value) -> bool {
    !TALK.contains(&kind(event))
}

/// Whether the clerk leaves a slot open; `*` is the whole event.
pub(super) fn may_lack(event: &Value, slot: &str) -> bool {
    event["opt"] == true
        || event["opt"]
            .as_array()
            .is_some_and(|open| open.iter().any(|it| it == slot))
}

/// What is false of a reading.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Faults {
    /// Slots with another value than the clerk's.
    pub(super) slots: usize,
    /// Events that were not found.
    pub(super) missing: usize,
    /// Facts that nobody told.
    pub(super) extra: usize,
}

/// Holds what was read against what the clerk entered; each event is held against the one of its kind
/// that is most like it.
pub(super) fn faults(wanted: &[&Value], got: &[Value]) -> Faults {
    let mut left: Vec<&Value> = got.iter().collect();
    let mut faults = Faults::default();
    for event in wanted {
        let found = left
            .iter()
            .enumerate()
            .filter(|(_, got)| kind(got) == kind(event))
            .map(|(at, got)| (false_slots(event, got), at))
            .min();
        match found {
            Some((slots, at)) => {
                faults.slots += slots;
                left.remove(at);
            }
            None => faults.missing += usize::from(!may_lack(event, "*")),
        }
    }
    faults.extra = left.into_iter().filter(|event| is_fact(event)).count();
    faults
}

/// How many slots of an event are false.
fn false_slots(wanted: &Value, got: &Value) -> usize {
    let is_scored = |slot: &str, value: &Value| {
        let today = slot == "date_rel" && *value == 0;
        !(slot == "kind"
            || slot == "opt"
            || FREE.contains(&slot)
            || may_lack(wanted, slot)
            || today)
    };
    let slots = wanted.as_object().into_iter().flatten();
    let other = slots
        .filter(|(slot, value)| {
            is_scored(slot, value) && !is_same(slot, value, &got[slot.as_str()])
        })
        .count();
    let made_up =
        |slot: &str| !got[slot].is_null() && wanted[slot].is_null() && !may_lack(wanted, slot);
    other
        + usize::from(made_up("date_rel") && got["date_rel"] != 0)
        + usize::from(made_up("count") && !may_lack(wanted, "area"))
}

/// Whether two clerks would call two values the same.
fn is_same(slot: &str, wanted: &Value, got: &Value) -> bool {
    match (wanted, got) {
        (Value::Array(wanted), Value::Array(got)) => {
            wanted.len() == got.len()
                && wanted
                    .iter()
                    .zip(got)
                    .all(|(one, other)| is_same(slot, one, other))
        }
        (Value::String(wanted), Value::String(got)) => plain(wanted) == plain(got),
        _ => match (wanted.as_f64(), got.as_f64()) {
            (Some(wanted), Some(got)) if MEASURED.contains(&slot) => {
                (wanted - got).abs() <= (wanted.abs() * SHARE).max(LEAST)
            }
            (Some(wanted), Some(got)) => (wanted - got).abs() < 1e-6,
            _ => wanted == got,
        },
    }
}

/// A word as two clerks would write it.
fn plain(text: &str) -> std::string::String {
    let text = text
        .trim()
        .to_lowercase()
        .replace(' ', "_")
        .replace('-', "");
    match text.as_str() {
        "bags" | "sack" | "sacks" => "bag".into(),
        "hectare" => "ha".into(),
        "gram" | "grams" => "g".into(),
        _ => text,
    }
}

#[test]
fn a_value_is_right_within_a_hundredth_a_count_and_a_day_only_when_they_are_that() {
    let faults = |wanted: &str, got: &str| {
        let event = |text: &str| serde_json::from_str::<Value>(text).expect("JSON");
        false_slots(&event(wanted), &event(got))
    };
    for (wanted, got, number) in [
        (
            r#"{"area":1,"unit":"ha"}"#,
            r#"{"area":0.5,"unit":"ha"}"#,
            1,
        ),
        (r#"{"area":0.33}"#, r#"{"area":0.3333}"#, 0),
        (r#"{"amount":150}"#, r#"{"amount":151}"#, 0),
        (r#"{"amount":150}"#, r#"{"amount":152}"#, 1),
        (
            r#"{"area":1,"unit":"hectare"}"#,
            r#"{"area":1,"unit":"ha"}"#,
            0,
        ),
        (
            r#"{"area":1,"unit":"ha"}"#,
            r#"{"area":1,"unit":"acre"}"#,
            1,
        ),
        (r#"{"count":480}"#, r#"{"count":481}"#, 1),
        (r#"{"count":12,"of":30}"#, r#"{"count":12}"#, 1),
        (r#"{"values_cm":[41,43]}"#, r#"{"values_cm":[41,43]}"#, 0),
        (r#"{"values_cm":[41,43]}"#, r#"{"values_cm":[41,45]}"#, 1),
        (r#"{"values_cm":[41,43]}"#, r#"{"values_cm":[41]}"#, 1),
        (r#"{"date_rel":-2}"#, r#"{"date_rel":-3}"#, 1),
        (r#"{"date_rel":"last_week"}"#, r#"{"date_rel":-3}"#, 1),
        (r#"{"date_rel":0}"#, r#"{}"#, 0),
        (r#"{}"#, r#"{"date_rel":-1}"#, 1),
        (r#"{"count":3,"opt":["count"]}"#, r#"{"count":5}"#, 0),
        (r#"{"cause":"wind"}"#, r#"{"cause":"fire"}"#, 0),
    ] {
        assert_eq!(faults(wanted, got), number, "{wanted} {got}");
    }
}
