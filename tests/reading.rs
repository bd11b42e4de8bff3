//! Hand-written texts of every language, read as `budwood read --lines` reads them.
//!
//! The texts were written before the word lists, and those marked `aside` were not looked at
//! while the lists were mended. A small set can refute a list; it cannot prove one.

use std::{collections::BTreeMap, fmt::Write as _, fs, path::Path};

use budwood::{read, setup};
use chrono::{NaiveDate, NaiveDateTime};
use serde_json::{Value, json};

/// What became of one text.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Outcome {
    /// As expected.
    Right,
    /// Something else was stored than what was said.
    WrongValue,
    /// A question where the text was clear.
    NeedlessQuestion,
    /// Stored where nothing was to be stored.
    FalseAccept,
    /// Neither stored nor answered as expected; nothing false was stored.
    Other,
}

const OUTCOMES: [Outcome; 5] = [
    Outcome::Right,
    Outcome::WrongValue,
    Outcome::NeedlessQuestion,
    Outcome::FalseAccept,
    Outcome::Other,
];

/// One text with what is expected of it and what came of it.
struct Case {
    language: String,
    aside: bool,
    outcome: Outcome,
    shown: String,
}

#[test]
fn no_language_stores_what_was_not_said() {
    let cases = cases();
    let table = table(&cases);
    println!("{table}");
    if let Ok(wanted) = std::env::var("BUDWOOD_SHOW") {
        for case in &cases {
            let shown = case.language == wanted && !case.aside && case.outcome != Outcome::Right;
            if shown {
                println!("{:?} {}", case.outcome, case.shown);
            }
        }
    }
    let bad: Vec<&str> = cases
        .iter()
        .filter(|case| matches!(case.outcome, Outcome::WrongValue | Outcome::FalseAccept))
        .map(|case| case.shown.as_str())
        .collect();
    assert!(bad.is_empty(), "{}\n{table}", bad.join("\n"));
}

/// Every set is there, and every language is read at all.
#[test]
fn every_language_is_read() {
    let mut right: BTreeMap<String, (usize, usize)> = BTreeMap::new();
    for case in cases() {
        let entry = right.entry(case.language).or_default();
        entry.0 += usize::from(case.outcome == Outcome::Right);
        entry.1 += 1;
    }
    assert!(right.len() >= 11, "{right:?}");
    for (language, (right, all)) in right {
        assert!(
            right * 100 >= all * RIGHT_PERCENT_MIN,
            "{language}: {right} of {all}"
        );
    }
}

/// Every code has its words; a code that is not loaded is told and not guessed.
#[test]
fn a_line_names_a_language_that_is_loaded() {
    let texts = [
        ("en", "planted 120 block B"),
        ("en-WA", "we plant 120 trees block B"),
        ("fr", "planté 120 bloc B"),
        ("id", "tanam 120 blok B"),
        ("ms", "tanam 120 pokok blok B"),
        ("th", "ปลูก 120 ต้น แปลง B"),
        ("th-Latn", "pluk 120 ton plaeng B"),
        ("vi", "trồng 120 cây lô B"),
        ("vi-bare", "trong 120 cay lo B"),
        ("pt", "plantei 120 mudas talhão B"),
        ("ta", "120 மரம் நட்டேன் தோட்டம் B"),
        ("ta-Latn", "120 maram natten thottam B"),
        ("ml", "120 തൈ നട്ടു തോട്ടം B"),
        ("ml-Latn", "120 thai nattu thottam B"),
        ("si", "ගස් 120 හිටෙව්වා කොටස B"),
        ("si-Latn", "gas 120 hitewwa kotasa B"),
        ("mix", "planted 120 block B"),
    ];
    for (code, text) in texts {
        let answer = answer(&json!({ "lang": code, "text": text }));
        assert_eq!(answer["act"], "record", "{code}: {answer}");
        assert_eq!(answer["events"][0]["count"], 120, "{code}: {answer}");
    }
    let answer = answer(&json!({ "lang": "xx", "text": "planted 120 block B" }));
    assert!(answer["error"].as_str().unwrap().contains("\"xx\""));
    assert_eq!(answer["act"], Value::Null);
}

fn answer(line: &Value) -> Value {
    let reader = setup::built_in(1).unwrap().reader;
    let mut answers = Vec::new();
    read::lines(
        &reader,
        received(),
        line.to_string().as_bytes(),
        &mut answers,
    )
    .unwrap();
    json_of(std::str::from_utf8(&answers).unwrap())
}

fn received() -> NaiveDateTime {
    let day = NaiveDate::from_ymd_opt(2026, 3, 18).unwrap();
    day.and_hms_opt(12, 0, 0).unwrap()
}

/// Fewer right than this is a broken pack.
const RIGHT_PERCENT_MIN: usize = 50;

fn cases() -> Vec<Case> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../tests/texts");
    let mut files: Vec<_> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    files.sort();
    let reader = setup::built_in(1).unwrap().reader;
    let mut cases = Vec::new();
    for file in files {
        let lines = fs::read_to_string(&file).unwrap();
        let mut answers = Vec::new();
        read::lines(&reader, received(), lines.as_bytes(), &mut answers).unwrap();
        let answers = String::from_utf8(answers).unwrap();
        assert_eq!(lines.lines().count(), answers.lines().count());
        let language = file.file_stem().unwrap().to_str().unwrap();
        cases.extend(lines.lines().zip(answers.lines()).map(|(line, answer)| {
            let (line, answer) = (json_of(line), json_of(answer));
            Case {
                language: language.to_owned(),
                aside: line["aside"] == json!(true),
                outcome: outcome(&line, &answer),
                shown: format!(
                    "{} {}: expected {} {}, found {} {} ({})",
                    line["id"],
                    line["text"],
                    line["act"],
                    line["events"],
                    answer["act"],
                    answer["events"],
                    answer["note"]
                ),
            }
        }));
    }
    cases
}

fn json_of(line: &str) -> Value {
    serde_json::from_str(line).unwrap()
}

fn outcome(line: &Value, answer: &Value) -> Outcome {
    let stores = |act: &Value| act == "record" || act == "amend";
    let same = line["act"] == answer["act"] && same_events(&line["events"], &answer["events"]);
    if same {
        Outcome::Right
    } else if stores(&answer["act"]) && stores(&line["act"]) {
        Outcome::WrongValue
    } else if stores(&answer["act"]) {
        Outcome::FalseAccept
    } else if stores(&line["act"]) && (answer["act"] == "confirm" || answer["act"] == "ask") {
        Outcome::NeedlessQuestion
    } else {
        Outcome::Other
    }
}

/// The same facts, in any order.
fn same_events(expected: &Value, found: &Value) -> bool {
    let texts = |events: &Value| -> Vec<String> {
        let events = events.as_array().cloned().unwrap_or_default();
        let mut texts: Vec<String> = events.iter().map(ToString::to_string).collect();
        texts.sort();
        texts
    };
    texts(expected) == texts(found)
}

fn table(cases: &[Case]) -> String {
    let mut counts: BTreeMap<(&str, bool, Outcome), usize> = BTreeMap::new();
    for case in cases {
        *counts
            .entry((&case.language, case.aside, case.outcome))
            .or_default() += 1;
    }
    let mut languages: Vec<&str> = cases.iter().map(|case| case.language.as_str()).collect();
    languages.dedup();
    let mut table = String::from(
        "language  part   right  wrong value  needless question  false accept  other\n",
    );
    for language in languages {
        for aside in [false, true] {
            let part = if aside { "aside" } else { "tuned" };
            write!(table, "{language:<9} {part}").unwrap();
            for (outcome, width) in OUTCOMES.into_iter().zip([8, 13, 19, 14, 7]) {
                let count = counts.get(&(language, aside, outcome)).unwrap_or(&0);
                write!(table, "{count:>width$}").unwrap();
            }
            table.push('\n');
        }
    }
    table
}
