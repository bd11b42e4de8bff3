//! Doubts, problems, days and facts in plain words, for the person who reads an explanation.
//!
//! Deliberately absent: what farmers are sent (`wording`).

use budwood_parser::{Doubt, Problem, Span, When};
use serde_json::Value;

/// Why a reading is not sure.
pub(super) fn doubt(doubt: &Doubt) -> String {
    match doubt {
        Doubt::Repaired { from, to } => {
            format!("{from:?} was taken for {to:?}, and may be a word of its own")
        }
        Doubt::LetterForDigit(written) => format!("a letter of {written:?} was taken for a digit"),
        Doubt::LooseNumber(number) => format!("{number} was said loosely"),
        Doubt::Range(from, to) => format!("from {from} to {to}: which?"),
        Doubt::GuessedUnit(unit) => format!("the unit was guessed: {}", unit.name()),
        Doubt::CommaList => "the commas can be read two ways".to_owned(),
        Doubt::Whole(extent) => format!("{} of the trees, not counted", extent.name()),
        Doubt::TwoCounts(one, other) => format!("the count may be {one} or {other}"),
        Doubt::LooseEnd(number) => format!("nothing says what {number:?} counts"),
        Doubt::SomebodyElse(name) => format!("{name:?} may be the one who did it"),
        Doubt::Likeness => {
            "other texts like it meant this, and it may mean another thing".to_owned()
        }
        Doubt::StrangeWord(word) => format!("{word:?} has nothing to do with trees"),
        Doubt::TwoLanguages(word) => format!("{word:?} means two things in two languages"),
    }
}

/// What could not be read.
pub(super) fn problem(text: &str, problem: &Problem) -> String {
    let piece = |span: &Span| text.get(span.start..span.end).unwrap_or_default();
    match problem {
        Problem::LooseEnd(span) => format!("nothing says what {:?} counts", piece(span)),
        Problem::NumberTooLarge(span) => format!("{:?} is too large a number", piece(span)),
        Problem::NoSuchDay(span) => format!("there is no day {:?}", piece(span)),
        Problem::TwoKinds(span, one, other) => format!(
            "{:?} may be {} or {}",
            piece(span),
            one.name(),
            other.name()
        ),
        Problem::Cut(_) => "the text is longer than is read".to_owned(),
    }
}

/// A day as it was said.
pub(super) fn day(when: When) -> String {
    match when {
        When::DaysAgo(0) => "today".to_owned(),
        When::DaysAgo(1) => "yesterday".to_owned(),
        When::DaysAgo(days) => format!("{days} days ago"),
        When::Weekday(day) => format!("the last {}", day.name()),
        When::Calendar {
            day, month, year, ..
        } => year.map_or_else(
            || format!("{day}/{month}"),
            |year| format!("{day}/{month}/{year}"),
        ),
        When::MonthDay(day) => format!("the last {day} of a month"),
        When::LastWeek => "last week".to_owned(),
        When::LastMonth => "last month".to_owned(),
    }
}

/// A fact or an act as `read --lines` gives it, without the marks of JSON.
pub(super) fn event(event: &Value) -> String {
    let Some(slots) = event.as_object() else {
        return event.to_string();
    };
    let kind = slots.get("kind").map(value).unwrap_or_default();
    let rest = slots
        .iter()
        .filter(|(key, _)| *key != "kind")
        .map(|(key, slot)| match (key.as_str(), slot.as_i64()) {
            ("date_rel", Some(0)) => ", today".to_owned(),
            ("date_rel", Some(-1)) => ", yesterday".to_owned(),
            ("date_rel", Some(days)) => format!(", {} days ago", days.unsigned_abs()),
            _ => format!(", {} {}", key.replace("date_rel", "day"), value(slot)),
        });
    kind + &rest.collect::<String>()
}

fn value(slot: &Value) -> String {
    match slot {
        Value::String(text) => text.clone(),
        Value::Array(values) => values.iter().map(value).collect::<Vec<_>>().join(" "),
        Value::Null | Value::Bool(_) | Value::Number(_) | Value::Object(_) => slot.to_string(),
    }
}
