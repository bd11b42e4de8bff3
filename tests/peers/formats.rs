//! Names of months and weekdays and decimal marks against CLDR, as PyPI babel ships it.
//!
//! The rule: a name that we read is read as CLDR has it, and no full name is unknown to us.

use budwood_parser::{Day, When};
use serde_json::{Value, json};

use crate::{
    packs::{Language, read, reader, spoken},
    peer::ask,
};

/// Sunday, and also a week: asked for.
const AMBIGUOUS: [&str; 1] = ["minggu"];

/// Full names of months that must be read, of twelve.
const MONTHS_READ_MIN: usize = 12;

#[test]
fn names_of_months_and_weekdays_are_those_of_cldr() {
    let reader = reader();
    let mut faults = Vec::new();
    for language in spoken(&reader) {
        let answers = ask("formats.py", &[json!({"lang": language.theirs})]);
        let answer = answers.first().expect("one answer to one question");
        let when = |day: &str| {
            let told = format!("{} 12 {} B {day}", language.planted, language.block);
            read(&reader, language, &told)
                .reports
                .first()
                .and_then(|report| report.when)
        };
        let code = language.code;
        let mut months = 0;
        for (month, name, full) in names(answer, "months") {
            match when(&format!("7 {name}")) {
                Some(When::Calendar {
                    day: 7,
                    month: found,
                    ..
                }) if usize::from(found) == month => {
                    months += usize::from(full);
                }
                Some(other) => faults.push(format!("{code}: 7 {name:?} is {other:?}")),
                None => {}
            }
        }
        if months < MONTHS_READ_MIN {
            faults.push(format!(
                "{code}: {months} of 12 full names of months are read"
            ));
        }
        for (place, name, full) in names(answer, "weekdays") {
            let right = Day::ALL.get(place - 1);
            match when(&name) {
                Some(When::Weekday(found)) if Some(&found) == right => {}
                None if !full || AMBIGUOUS.contains(&name.as_str()) => {}
                other => faults.push(format!("{code}: {name:?} is {other:?}")),
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// The names in a list of lists: place from one, name, whether it is the full one.
fn names(answer: &Value, list: &str) -> Vec<(usize, String, bool)> {
    let lists = answer
        .get(list)
        .and_then(Value::as_array)
        .expect("the peer gives lists");
    let mut names = Vec::new();
    for (place, spelled) in lists.iter().enumerate() {
        for (width, name) in spelled.as_array().into_iter().flatten().enumerate() {
            let name = name.as_str().unwrap_or_default().to_lowercase();
            names.push((place + 1, name, width == 0));
        }
    }
    names
}

#[test]
fn decimals_are_read_with_the_mark_of_the_language() {
    let reader = reader();
    for language in spoken(&reader) {
        let Language { code, theirs, .. } = language;
        let answers = ask("formats.py", &[json!({"lang": theirs})]);
        let decimal = answers
            .first()
            .and_then(|answer| answer.get("decimal")?.as_str());
        let decimal = decimal.expect("the peer writes a number");
        let told = format!("{} {decimal} 44 41 42 {} B", language.girth, language.block);
        let reading = read(&reader, language, &told);
        let values = reading
            .reports
            .first()
            .map(|report| report.details.values_cm.clone());
        assert_eq!(
            values,
            Some(vec![43.5, 44.0, 41.0, 42.0]),
            "{code}: {told:?}"
        );
    }
}
