//! Hand-written texts of every language, read as `budwood read --lines` reads them.
//!
//! The texts were written before the words that they ask for. What was found with those marked
//! `aside` was not looked at while the lists were mended; once it has been, they are marked
//! "read", and new ones are laid aside. A small set can refute a list; it cannot prove one.

use std::{
    collections::{BTreeMap, BTreeSet},
    fmt::Write as _,
    fs,
    path::Path,
};

use budwood::{commands::read, service::setup};
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

/// Whether the lists were mended with a text in view.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Part {
    /// From the beginning.
    Tuned,
    /// Laid aside at first, and read since.
    Read,
    /// Not yet.
    Aside,
}

const PARTS: [(Part, &str); 3] = [
    (Part::Tuned, "tuned"),
    (Part::Read, "read"),
    (Part::Aside, "aside"),
];

/// One text with what is expected of it and what came of it.
struct Case {
    language: String,
    part: Part,
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
            let shown = case.language == wanted
                && case.part != Part::Aside
                && case.outcome != Outcome::Right;
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
    assert!(right.len() >= 16, "{right:?}");
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

/// What parser/README.md shows of ten texts is what is made of them. `BUDWOOD_UPDATE=1` takes a change over.
#[test]
fn the_page_for_writers_shows_what_is_made_of_ten_texts() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../parser/README.md");
    let readme = fs::read_to_string(&path).unwrap();
    let (before, rest) = readme.split_once(TEN_TEXTS).unwrap();
    let (section, after) = rest.split_once("\n## ").unwrap();
    let reader = setup::built_in(1).unwrap().reader;
    let mut texts = 0;
    let mut blocks = section.split("```");
    let mut found = blocks.next().unwrap().to_owned();
    while let (Some(block), Some(prose)) = (blocks.next(), blocks.next()) {
        found.push_str("```text\n");
        for line in block.lines().skip(1) {
            let whole = line.strip_prefix("text      ");
            let text = whole.unwrap_or(line);
            if whole.is_none() && is_shown(line) {
                continue;
            }
            texts += 1;
            let page = read::explained(&reader, received(), text);
            match whole {
                Some(_) => found.push_str(&page),
                None => found.push_str(&ending(text, &page)),
            }
        }
        found.push_str("```");
        found.push_str(prose);
    }
    assert_eq!(texts, 10);
    if std::env::var_os("BUDWOOD_UPDATE").is_some() {
        fs::write(&path, format!("{before}{TEN_TEXTS}{found}\n## {after}")).unwrap();
    } else {
        assert_eq!(section, found, "BUDWOOD_UPDATE=1 takes a change over");
    }
}

const TEN_TEXTS: &str = "## Ten texts and what is made of them\n";

/// What `budwood read` shows below the words.
const SHOWN: [&str; 5] = ["stance ", "problem ", "fact ", "said ", "does "];

/// Whether a line of the page is an answer, and not a text.
fn is_shown(line: &str) -> bool {
    let labels = SHOWN.iter().chain(&["  ", "language ", "margin "]);
    labels.into_iter().any(|label| line.starts_with(*label))
}

/// The text, and below it what came of it.
fn ending(text: &str, page: &str) -> String {
    let shown = |line: &&str| SHOWN.iter().any(|label| line.starts_with(*label));
    let lines = page.lines().filter(shown);
    let mut ending = format!("{text}\n");
    for line in lines {
        writeln!(ending, "    {line}").unwrap();
    }
    ending
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
        cases.extend(lines.lines().zip(answers.lines()).map(|(line, answer)| {
            let (line, answer) = (json_of(line), json_of(answer));
            Case {
                language: line["lang"].as_str().unwrap().to_owned(),
                part: part(&line["aside"]),
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

fn part(aside: &Value) -> Part {
    if aside.is_string() {
        Part::Read
    } else if *aside == json!(true) {
        Part::Aside
    } else {
        Part::Tuned
    }
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
    let mut table = String::from(
        "language  part   right  wrong value  needless question  false accept  other\n",
    );
    let languages: BTreeSet<&str> = cases.iter().map(|case| case.language.as_str()).collect();
    for language in languages {
        for part in PARTS {
            let of_language = |case: &&Case| case.language == language;
            write_row(&mut table, language, part, cases.iter().filter(of_language));
        }
    }
    for part in PARTS {
        write_row(&mut table, "all", part, cases.iter());
    }
    table
}

fn write_row<'a>(
    table: &mut String,
    language: &str,
    (part, name): (Part, &str),
    cases: impl Iterator<Item = &'a Case> + Clone,
) {
    write!(table, "{language:<9} {name:<5}").unwrap();
    for (outcome, width) in OUTCOMES.into_iter().zip([7, 13, 19, 14, 7]) {
        let is_counted = |case: &&Case| case.part == part && case.outcome == outcome;
        let count = cases.clone().filter(is_counted).count();
        write!(table, "{count:>width$}").unwrap();
    }
    table.push('\n');
}
