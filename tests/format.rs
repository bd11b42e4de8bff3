//! Records of every version ever written stay readable.
//!
//! `format/v1.jsonl` holds one record of each kind and shape as version 1 wrote it. The file is
//! never edited: a new shape gets new lines, a new version a new file. Deliberately absent: what
//! the records mean, which the tests of the stores check.

use std::collections::BTreeSet;

use budwood::{store::rewritten, words::message::SendState};
use budwood_parser::Kind;
use budwood_scheduler::Role;
use serde_json::Value;

const V1: &str = include_str!("format/v1.jsonl");

fn records() -> impl Iterator<Item = Value> {
    V1.lines()
        .map(|line| serde_json::from_str(line).expect("a line of JSON"))
}

/// The names found at this place in the records of this kind; of an object its only key.
fn names(kind: &str, place: &str) -> BTreeSet<String> {
    records()
        .filter(|record| record["kind"] == kind)
        .filter_map(|record| match record.pointer(place)? {
            Value::String(name) => Some(name.clone()),
            Value::Object(variant) => variant.keys().next().cloned(),
            Value::Null | Value::Bool(_) | Value::Number(_) | Value::Array(_) => None,
        })
        .collect()
}

fn set<'a>(names: impl IntoIterator<Item = &'a str>) -> BTreeSet<String> {
    names.into_iter().map(str::to_owned).collect()
}

#[test]
fn what_version_1_wrote_is_read_and_written_back_byte_for_byte() {
    for (index, line) in V1.lines().enumerate() {
        let again = rewritten(line.as_bytes()).unwrap();
        assert_eq!(
            String::from_utf8(again).unwrap(),
            line,
            "v1.jsonl, line {}",
            index + 1
        );
    }
}

/// A number comes back as it was written, to the last digit (nearest value, IEEE 754). Otherwise a
/// log would change each time it is put in and written again.
#[test]
fn a_number_keeps_its_last_digit() {
    let sample = V1.lines().find(|line| line.contains("\"slope_pct\":12.0"));
    let record = sample
        .unwrap()
        .replace("\"slope_pct\":12.0", "\"slope_pct\":12.011111111111111");
    let again = rewritten(record.as_bytes()).unwrap();
    assert_eq!(String::from_utf8(again).unwrap(), record);
}

#[test]
fn the_samples_hold_every_kind_and_shape() {
    let kinds: BTreeSet<String> = records()
        .filter_map(|record| Some(record["kind"].as_str()?.to_owned()))
        .collect();
    assert_eq!(
        kinds,
        set([
            "event", "person", "phone", "group", "block", "state", "talk", "received", "outbound"
        ])
    );
    assert_eq!(
        names("event", "/body/fact"),
        set([
            "reported",
            "task_done",
            "postponed",
            "nudged",
            "taken_back",
            "window_opened",
            "warned",
            "planting_held",
            "consent_given",
            "consent_withdrawn",
            "erased"
        ])
    );
    assert_eq!(
        names("event", "/body/source"),
        set(["bot", "own_text", "leader", "sheet", "visit"])
    );
    assert_eq!(
        names("event", "/body/fact/reported/kind"),
        set(Kind::ALL.map(Kind::name))
    );
    assert_eq!(
        names("talk", "/body/open/question"),
        set([
            "confirm",
            "ask",
            "for_whom",
            "open_window",
            "hold_planting",
            "warn",
            "erase"
        ])
    );
    assert_eq!(
        names("talk", "/body/open/question/ask/missing"),
        set(["block", "count", "values", "date"])
    );
    assert_eq!(
        names("outbound", "/body/purpose"),
        set(["answer", "nudge", "notice"])
    );
    assert_eq!(
        names("outbound", "/body/state"),
        set(SendState::ALL.map(SendState::name))
    );
    assert_eq!(
        names("person", "/body/role"),
        set(Role::ALL.map(Role::name))
    );
    assert_eq!(
        names("person", "/body/consent"),
        set(["unknown", "given", "withdrawn"])
    );
}

#[test]
fn what_is_no_record_of_ours_is_refused() {
    let cases = [
        ("", "not a record"),
        ("[]", "not a record"),
        (r#"{"v":1,"kind":"event"}"#, "not a record"),
        (
            r#"{"v":1,"kind":"prophecy","body":{}}"#,
            "kind \"prophecy\" is not known",
        ),
        (
            r#"{"v":0,"kind":"event","body":{}}"#,
            "found event of version 0",
        ),
        (r#"{"v":1,"kind":"event","body":{"id":-1}}"#, "not a event"),
    ];
    for (record, what) in cases {
        let shown = rewritten(record.as_bytes()).unwrap_err().to_string();
        assert!(shown.contains(what), "{shown}");
    }
}
