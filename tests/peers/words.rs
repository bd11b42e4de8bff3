//! Number words against PyPI num2words2 in every language that it and we have, and against
//! vn-numberwords for Vietnamese and pythainlp for Thai.
//!
//! The rule: a number in words is read right, or not as a number at all. Never as another one
//! without a doubt, for a wrong count would be stored. It holds for the words alone and inside a
//! report, with marks and without, and with the spaces lost.

use budwood_parser::{Bare, Doubt, Reader, Reading};
use serde_json::{Value, json};
use unicode_normalization::{UnicodeNormalization, char::is_combining_mark};

use crate::{
    packs::{Language, read, reader, spoken},
    peer::ask,
};

/// No block has more trees than a farmer would count in words.
const LAST: u32 = 2_000;

/// The share that must be read as the peer writes it; the rest is asked for.
const READ_PERCENT_MIN: usize = 99;

/// How the words are written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Manner {
    /// As the peer writes them.
    Plain,
    /// Without hyphens, commas and "and"; in capitals.
    Loose,
    /// Without marks, as phones without them send it.
    Bare,
    /// Without spaces.
    Glued,
}

const MANNERS: [Manner; 4] = [Manner::Plain, Manner::Loose, Manner::Bare, Manner::Glued];

fn written(words: &str, manner: Manner) -> String {
    let plain = words.replace(',', "");
    match manner {
        Manner::Plain => plain,
        Manner::Loose => plain.replace(" and ", " ").replace('-', " ").to_uppercase(),
        Manner::Bare => without_marks(&plain),
        Manner::Glued => plain.replace([' ', '-'], ""),
    }
}

/// Latin letters without their marks; signs of other scripts are no marks.
fn without_marks(text: &str) -> String {
    if text
        .chars()
        .any(|letter| letter > '\u{1eff}' || ('\u{300}'..'\u{1e00}').contains(&letter))
    {
        return text.to_owned();
    }
    text.nfd()
        .filter(|letter| !is_combining_mark(*letter))
        .map(|letter| if letter == 'đ' { 'd' } else { letter })
        .collect()
}

#[test]
fn numbers_in_words_are_read_right_or_not_at_all() {
    let reader = reader();
    let mut faults = Vec::new();
    for language in spoken(&reader) {
        check(&reader, language, &mut faults);
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

fn check(reader: &Reader, language: Language, faults: &mut Vec<String>) {
    let answers = ask(
        "words.py",
        &[json!({"lang": language.theirs, "last": LAST})],
    );
    assert!(
        answers.len() > LAST as usize,
        "{}: only {}",
        language.code,
        answers.len()
    );
    for manner in MANNERS {
        let mut wrong = Vec::new();
        let mut right = 0;
        for answer in &answers {
            let number = answer.get("number").and_then(Value::as_u64);
            let number = number
                .and_then(|number| u32::try_from(number).ok())
                .expect("a number");
            let words = answer
                .get("words")
                .and_then(Value::as_str)
                .unwrap_or_default();
            let text = written(words, manner);
            let alone = alone(&read(reader, language, &text));
            let told = format!("{} {text} {} B", language.planted, language.block);
            let told_count = counted(&read(reader, language, &told));
            right += usize::from(alone == Some(f64::from(number)));
            if alone.is_some_and(|found| (found - f64::from(number)).abs() > 0.0) {
                wrong.push(format!("{text:?} is {number}, not {alone:?}"));
            }
            if told_count.is_some_and(|found| found != number) {
                wrong.push(format!("{told:?} is {number}, not {told_count:?}"));
            }
        }
        let code = language.code;
        if !wrong.is_empty() {
            let shown: Vec<&String> = wrong.iter().take(8).collect();
            faults.push(format!(
                "{code} {manner:?}: {} wrong: {shown:#?}",
                wrong.len()
            ));
        }
        let demanded = manner == Manner::Plain;
        if demanded && right * 100 < answers.len() * READ_PERCENT_MIN {
            faults.push(format!("{code}: {right} of {} were read", answers.len()));
        }
    }
}

fn is_sure(reading: &Reading) -> bool {
    let doubts = reading.reports.iter().flat_map(|report| &report.doubts);
    !doubts
        .into_iter()
        .any(|doubt| matches!(doubt, Doubt::LooseNumber(_)))
}

fn alone(reading: &Reading) -> Option<f64> {
    match reading.bare {
        Some(Bare::Number(number)) if is_sure(reading) => Some(number),
        _ => None,
    }
}

/// The count that would be stored with no question.
fn counted(reading: &Reading) -> Option<u32> {
    let [report] = reading.reports.as_slice() else {
        return None;
    };
    let sure = reading.stances.is_empty() && report.doubts.is_empty();
    report.details.count.filter(|_| sure)
}
