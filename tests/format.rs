//! Records of every version ever written stay readable.
//!
//! `format/v1.jsonl` holds one record of each kind and shape as version 1 wrote it, `v2.jsonl` those
//! of which there is a second version. Lines are never edited: a new shape gets new lines, a new
//! version a new file. Deliberately absent: what
//! the records mean, which the tests of the stores check.

use std::collections::BTreeSet;

use budwood::{store::rewritten, words::message::SendState};
use budwood_parser::Kind;
use budwood_scheduler::Role;
use serde_json::Value;

const V1: &str = include_str!("format/v1.jsonl");
const V2: &str = include_str!("format/v2.jsonl");

/// Kinds of which there is a second version.
const SECOND: [&str; 3] = ["received", "outbound", "talk"];

fn records() -> impl Iterator<Item = Value> {
    V1.lines().chain(V2.lines()).map(parsed)
}

fn parsed(line: &str) -> Value {
    serde_json::from_str(line).expect("a line of JSON")
}

fn again(line: &str) -> String {
    String::from_utf8(rewritten(line.as_bytes()).expect(line)).expect("UTF-8")
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
fn what_is_of_the_newest_version_is_read_and_written_back_byte_for_byte() {
    let is_second = |line: &str| SECOND.map(Value::from).contains(&parsed(line)["kind"]);
    let newest = V1.lines().filter(|line| !is_second(line)).chain(V2.lines());
    for line in newest {
        assert_eq!(again(line), line);
    }
}

/// What version 1 told is all there, what it did not tell is left open, and it is written back as
/// version 2.
#[test]
fn what_is_of_the_first_version_says_the_same_in_the_second() {
    let first = |line: &&str| SECOND.map(Value::from).contains(&parsed(line)["kind"]);
    let mut lines = 0;
    for line in V1.lines().filter(first) {
        let (old, new) = (parsed(line), parsed(&again(line)));
        assert_eq!((&old["v"], &new["v"]), (&Value::from(1), &Value::from(2)));
        assert_eq!(again(&again(line)), again(line));
        let mut body = new["body"].as_object().expect("a body").clone();
        if old["kind"] == "outbound" {
            // 3GPP TS 23.038: 32 characters of the default alphabet are one message.
            assert_eq!(body.remove("alphabet"), Some("gsm7".into()));
            assert_eq!(body.remove("parts"), Some(1.into()));
            if let Some(ids) = body.remove("ids") {
                body.insert("gateway_id".to_owned(), ids[0].clone());
            }
        }
        assert_eq!(Value::Object(body), old["body"]);
        lines += 1;
    }
    assert!(lines > 10, "the lines are there");
}

/// A text out of which everything is told, and one of which nothing is told yet.
#[test]
fn the_samples_of_the_second_version_hold_every_key() {
    let keys = |kind: &str| -> BTreeSet<String> {
        let of_kind = V2.lines().map(parsed).filter(|one| one["kind"] == kind);
        let keys = of_kind.map(|one| one["body"].as_object().expect("a body").clone());
        keys.flatten().map(|(key, _)| key).collect()
    };
    let outbound = [
        "id",
        "at",
        "to",
        "text",
        "purpose",
        "expires_at",
        "state",
        "tries",
        "try_at",
        "gateway",
        "alphabet",
        "parts",
        "ids",
        "arrived",
        "sent_at",
        "settled_at",
        "code",
        "price_micro",
    ];
    assert_eq!(keys("outbound"), set(outbound));
    assert!(keys("received").contains("parts"));
    assert!(keys("talk").contains("heard_by"));
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
            "event", "person", "phone", "group", "block", "state", "talk", "received", "outbound",
            "matter", "promise", "sheet", "load", "given", "outline", "part", "erasure", "ledger"
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
            "left_alone",
            "gone_on",
            "phone_lost",
            "phone_found",
            "number_moved",
            "entered",
            "handed_over",
            "passed",
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
        names("outbound", "/body/purpose"),
        set(["answer", "nudge", "notice", "service", "announcement"])
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
    assert_eq!(
        names("person", "/body/sharing"),
        set(["given", "withdrawn"])
    );
    assert_eq!(
        names("event", "/body/fact/consent_given/purpose"),
        set(["buyers"])
    );
}

#[test]
fn the_samples_hold_all_that_passes() {
    let told = [
        "owner",
        "gave",
        "got",
        "joined",
        "left",
        "helper",
        "helper_left",
    ];
    assert_eq!(names("event", "/body/fact/passed"), set(told));
    let asked = ["owner", "part", "join", "new", "leave", "helper"];
    let found = names("talk", "/body/open/question/pass/passing");
    assert_eq!(found, set(asked));
}

#[test]
fn the_samples_hold_every_question() {
    assert_eq!(
        names("talk", "/body/open/question"),
        set([
            "confirm",
            "confirm_many",
            "ask",
            "for_whom",
            "open_window",
            "hold_planting",
            "warn",
            "erase",
            "stop",
            "visit",
            "announce",
            "hand_over",
            "ask_harm",
            "ask_leaders",
            "pass",
            "lost",
            "found",
            "moved"
        ])
    );
    assert_eq!(
        names("talk", "/body/open/question/ask/missing"),
        set(["block", "count", "values", "date"])
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
        (
            r#"{"v":2,"kind":"event","body":{}}"#,
            "found event of version 2",
        ),
        (
            r#"{"v":3,"kind":"outbound","body":{}}"#,
            "found outbound of version 3",
        ),
        (r#"{"v":1,"kind":"event","body":{"id":-1}}"#, "not a event"),
    ];
    for (record, what) in cases {
        let shown = rewritten(record.as_bytes()).unwrap_err().to_string();
        assert!(shown.contains(what), "{shown}");
    }
}
