//! Relative and calendar days against PyPI dateparser, in every language that it and we have.
//!
//! The expressions are the peer's own. The rule: a day that we read is the day that it reads; what
//! lies in the future is never stored as done.

use budwood_scheduler::decide::resolve_date;
use chrono::NaiveDate;
use serde_json::{Value, json};

use crate::{
    packs::{Language, read, reader, spoken},
    peer::ask,
};

/// A Wednesday, as in the rest of the tests.
const TODAY: &str = "2026-03-18";

/// The share of the peer's expressions that must be read.
const READ_PERCENT_MIN: usize = 40;

/// The peer takes the March of its own month list for January.
const ITS_FAULTS: [&str; 1] = ["7 มี.ค."];

#[test]
fn days_are_read_as_the_peer_reads_them() {
    let reader = reader();
    let today: NaiveDate = TODAY.parse().expect("it is a day");
    let mut faults = Vec::new();
    for language in spoken(&reader) {
        let Language {
            code,
            theirs,
            planted,
            block,
            ..
        } = language;
        let answers = ask("dates.py", &[json!({"lang": theirs, "today": TODAY})]);
        assert!(
            answers.len() >= 20,
            "{code}: only {} expressions",
            answers.len()
        );
        let (mut read_right, mut asked) = (0, 0);
        let mut missed = Vec::new();
        for answer in &answers {
            let text = answer
                .get("text")
                .and_then(Value::as_str)
                .unwrap_or_default();
            let date = answer.get("date").and_then(Value::as_str);
            let Some(date) = date.and_then(|date| date.parse::<NaiveDate>().ok()) else {
                continue;
            };
            if ITS_FAULTS.contains(&text) {
                continue;
            }
            let told = format!("{planted} 12 {block} B {text}");
            let reading = read(&reader, language, &told);
            let report = reading
                .reports
                .first()
                .filter(|_| reading.stances.is_empty());
            if date > today {
                if report.is_some_and(|report| report.doubts.is_empty()) {
                    faults.push(format!("{code}: {told:?} is to come, and is read as done"));
                }
                continue;
            }
            asked += 1;
            let when = report.and_then(|report| report.when);
            match when.and_then(|when| resolve_date(when, today)) {
                Some(found) if found.from == date && found.to == date => read_right += 1,
                Some(found) => faults.push(format!("{code}: {told:?} is {date}, not {found:?}")),
                None => missed.push(text),
            }
        }
        println!("{code}: {read_right} of {asked} days read; not {missed:?}");
        if read_right * 100 < asked * READ_PERCENT_MIN {
            faults.push(format!(
                "{code}: {read_right} of {asked} read; not {missed:?}"
            ));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}
