//! `budwood read --lines`: JSON lines in, one JSON line out for each, right or wrong.

use std::{
    io::Write as _,
    process::{Output, Stdio},
};

use serde_json::{Value, json};

use super::running::command;

fn read(input: &[u8]) -> Output {
    let here = std::path::Path::new(".");
    let mut child = command(here, &["read", "--lines", "--received", "2026-03-18T12:00"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("it runs");
    // A writer of its own, so that neither side waits for the other when both pipes are full.
    let mut to = child.stdin.take().expect("a pipe");
    let bytes = input.to_vec();
    let writer = std::thread::spawn(move || to.write_all(&bytes));
    let output = child.wait_with_output().expect("it ends");
    writer.join().expect("a writer").expect("all was read");
    output
}

fn answers(input: &[u8]) -> Vec<Value> {
    let output = read(input);
    assert_eq!(output.status.code(), Some(0));
    String::from_utf8(output.stdout)
        .expect("UTF-8")
        .lines()
        .map(|line| serde_json::from_str(line).expect("JSON"))
        .collect()
}

#[test]
fn a_text_in_its_scene_is_read() {
    let line = br#"{"id":"x1","lang":"en","role":"farmer","text":"planted 120 block B","ctx":{"plots":{"B":{"planted":120}},"last":{"kind":"dead","count":8,"block":"B","minutes_ago":4},"pending":"confirm"}}"#;
    let answers = answers(line);
    let [answer] = answers.as_slice() else {
        panic!("{answers:?}")
    };
    assert_eq!(answer["id"], "x1");
    assert_eq!(answer["act"], "record");
    assert_eq!(
        answer["events"],
        json!([{ "kind": "planted", "count": 120, "block": "B" }])
    );
    assert_eq!(answer["lang"], "en");
    assert!(answer["note"].is_string());
}

#[test]
fn each_line_is_answered_in_its_order_with_its_own_id() {
    let lines = br#"{"id":1,"text":"weeded B yesterday"}

{"id":"b","text":"thanks"}
{"text":"102","ctx":{"pending":{"ask":"count","kind":"planted","block":"B"}}}
{"id":"d","text":"status KOLO","role":"adviser","ctx":{"groups":["KOLO"]}}
{"id":"e","text":"dead 8 B","role":"unknown"}
{"id":"f","text":"","unknown key":true}"#;
    let found: Vec<(Value, Value, Value)> = answers(lines)
        .into_iter()
        .map(|mut one| {
            let mut take = |key: &str| one[key].take();
            (take("id"), take("act"), take("events"))
        })
        .collect();
    let none = json!([]);
    let expected = [
        (
            json!(1),
            json!("record"),
            json!([{ "kind": "weeded", "block": "B", "date_rel": -1 }]),
        ),
        (json!("b"), json!("silent"), none.clone()),
        (
            Value::Null,
            json!("record"),
            json!([{ "kind": "planted", "count": 102, "block": "B" }]),
        ),
        (
            json!("d"),
            json!("answer"),
            json!([{ "kind": "query", "what": "status", "group": "KOLO" }]),
        ),
        (json!("e"), json!("help"), none.clone()),
        (json!("f"), json!("silent"), none),
    ];
    assert_eq!(found, expected);
}

#[test]
fn a_bad_line_is_answered_with_what_is_wrong_and_the_next_one_is_read() {
    let long = format!("{{\"text\":\"{}\"}}", "dead 8 B ".repeat(200_000));
    let lines = [
        b"not json".to_vec(),
        br#"{"id":"x"}"#.to_vec(),
        br#"{"text":5}"#.to_vec(),
        b"\xff\xfe\x00".to_vec(),
        b"[]".to_vec(),
        long.into_bytes(),
        br#"{"id":"last","text":"dead 8 B"}"#.to_vec(),
    ];
    let answers = answers(&lines.join(&b'\n'));
    let (last, bad) = answers.split_last().expect("answers");
    assert_eq!(bad.len(), lines.len() - 1);
    for answer in bad {
        let said = answer["error"].as_str().expect("what is wrong");
        assert!(!said.is_empty() && said.len() < 300, "{said}");
    }
    assert_eq!(last["id"], "last");
    assert_eq!(last["act"], "record");
}
