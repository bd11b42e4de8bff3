//! Laws that need no expected outcome: what must not change a report, what must take it away, and
//! what must change exactly one value of it.
//!
//! They hold on plain reports: a kind, a number and a block, in words of the language. A report
//! that is not read at all is no matter of these laws; the table of measures counts it.

use std::collections::BTreeMap;

use budwood_parser::Reader;
use serde_json::{Value, json};

use crate::{
    chance::Chance,
    farm::{Farm, Naming},
    message::{line, put},
    plan::{self, Extra, Fact},
    rates::Level,
    run::{answers_to, reader},
    spacing,
    speech::Speech,
    surface::Teller,
    token::Token,
};

/// Reports that the laws are tried on, in each language.
const REPORTS: usize = 150;
/// Any seed would do; the same one gives the same reports.
const SEED: u64 = 52;

/// Which law.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Law {
    /// Courtesy, spaces, capitals and a full stop change nothing.
    Manner,
    /// The order of the slots changes nothing.
    Order,
    /// "not yet", "tomorrow" and "?" leave nothing that is stored as done.
    TakenAway,
    /// Another number changes the count and nothing else.
    OneValue,
    /// The same report again is not stored again without a question.
    Twice,
}

/// A text that a law makes of a report, and the events that may be stored from it.
struct Case {
    law: Law,
    text: String,
    line: Value,
    /// Must be stored exactly so; none: must not be stored.
    events: Option<Vec<Value>>,
}

#[test]
fn the_laws_hold_in_every_language() {
    let reader = reader();
    let loaded: Vec<String> = reader.languages().map(str::to_owned).collect();
    let mut faults = Vec::new();
    for (language, speech) in Speech::all() {
        if !loaded.contains(&speech.code) {
            continue;
        }
        let (tried, broken) = breaks(&reader, &speech);
        assert!(
            tried > REPORTS / 5,
            "{language}: only {tried} reports are read at all"
        );
        for (law, texts) in broken {
            let shown: Vec<&String> = texts.iter().take(12).collect();
            let number = texts.len();
            faults.push(format!("{language} {law:?}: {number} breaks {shown:#?}"));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

fn breaks(reader: &Reader, speech: &Speech) -> (usize, BTreeMap<Law, Vec<String>>) {
    let mut chance = Chance::new(SEED);
    let mut broken: BTreeMap<Law, Vec<String>> = BTreeMap::new();
    let mut tried = 0;
    for _ in 0..REPORTS {
        let Some((farm, fact)) = plain_fact(&mut chance, speech) else {
            continue;
        };
        let mut told = texts(&mut chance, speech, &farm, &fact).into_iter();
        let Some(plain) = told.next() else { continue };
        let first = line(Some(&speech.code), &plain, &farm);
        let answer = answers_to(reader, std::slice::from_ref(&first));
        let Some(events) = answer.first().and_then(stored) else {
            continue;
        };
        if !is_of(&events, &fact) {
            continue;
        }
        tried += 1;
        let others: Vec<String> = told.collect();
        let cases = cases(speech, &farm, &fact, &plain, &others, &events);
        let lines: Vec<Value> = cases.iter().map(|case| case.line.clone()).collect();
        for (case, answer) in cases.iter().zip(answers_to(reader, &lines)) {
            if !holds(case, stored(&answer)) && !is_asked(case, &answer) {
                let found = format!("{:?} <- {plain:?}: {answer}", case.text);
                broken.entry(case.law).or_default().push(found);
            }
        }
    }
    (tried, broken)
}

/// The one event says what the fact says; what is read otherwise is no matter of the laws.
fn is_of(events: &[Value], fact: &Fact) -> bool {
    let slot = |name: &str| events.first().and_then(|event| event.get(name)).cloned();
    let count = slot("count").as_ref().and_then(Value::as_u64);
    let kind = slot("kind");
    events.len() == 1
        && kind.as_ref().and_then(Value::as_str) == Some(fact.kind)
        && count == fact.count.map(u64::from)
}

/// A fact of a farm whose blocks have letters.
fn plain_fact(chance: &mut Chance, speech: &Speech) -> Option<(Farm, Fact)> {
    let farm = Farm::draw(chance, speech);
    let plot = farm.plot(chance).clone();
    let fact = plan::fact(chance, speech, &plot, &[])?;
    let plain = match &fact.extra {
        Extra::None | Extra::Ailment(_) | Extra::Damage(_) => true,
        Extra::Cause(_) | Extra::Feed { .. } | Extra::Girths(_) | Extra::Area(..) => false,
    };
    (plain && farm.naming == Naming::Letters).then_some((farm, fact))
}

/// The report in every order.
fn texts(chance: &mut Chance, speech: &Speech, farm: &Farm, fact: &Fact) -> Vec<String> {
    let level = Level::Clean;
    let mut speech = speech.clone();
    speech.loans.clear();
    let mut teller = Teller {
        chance,
        speech: &speech,
        farm,
        level,
    };
    let rows: Vec<Vec<Token>> = teller.in_every_order(fact);
    let joined = |row: &Vec<Token>| spacing::joined(chance, &speech, level.rates(), row);
    rows.iter().map(joined).collect()
}

fn cases(
    speech: &Speech,
    farm: &Farm,
    fact: &Fact,
    plain: &str,
    others: &[String],
    events: &[Value],
) -> Vec<Case> {
    let case = |law: Law, text: String, events: Option<&[Value]>| {
        let line = line(Some(&speech.code), &text, farm);
        Case {
            law,
            text,
            line,
            events: events.map(<[Value]>::to_vec),
        }
    };
    let manner = &speech.manner;
    let any = |list: &crate::speech::List| list.0.first().cloned().unwrap_or_default();
    let mut cases = Vec::new();
    for text in [
        format!("{}, {plain}", any(&manner.greeting)),
        format!("{plain} {}", any(&manner.thanks)),
        format!("{plain} {}", any(&manner.title)),
        plain.replace(' ', "  "),
        plain.to_uppercase(),
        format!("{plain}."),
    ] {
        cases.push(case(Law::Manner, text, Some(events)));
    }
    for text in others {
        cases.push(case(Law::Order, text.clone(), Some(events)));
    }
    for text in [
        format!("{plain} {}", manner.not_yet),
        format!("{plain} {}", manner.tomorrow),
        format!("{plain}?"),
    ] {
        cases.push(case(Law::TakenAway, text, None));
    }
    let Some(count) = fact.count else {
        return cases;
    };
    // One tree fewer is as true as before; one more might not be.
    let other = count.saturating_sub(1).max(1);
    let text = plain.replacen(&count.to_string(), &other.to_string(), 1);
    if text != plain {
        let changed: Vec<Value> = events
            .iter()
            .map(|event| with_count(event, other))
            .collect();
        cases.push(case(Law::OneValue, text, Some(&changed)));
    }
    let mut twice = case(Law::Twice, plain.to_owned(), None);
    let block = &fact.plot.name;
    let last = json!({"kind": fact.kind, "count": count, "block": block, "minutes_ago": 2});
    put(&mut twice.line, "last", last);
    cases.push(twice);
    cases
}

fn with_count(event: &Value, count: u32) -> Value {
    let mut event = event.clone();
    if let Some(slot) = event.get_mut("count") {
        *slot = json!(count);
    }
    event
}

/// The events that an answer stores.
fn stored(answer: &Value) -> Option<Vec<Value>> {
    let is_stored = answer.get("act").and_then(Value::as_str) == Some("record");
    let events = answer.get("events").and_then(Value::as_array);
    events.filter(|_| is_stored).cloned()
}

/// What a case wants is told, and asked about: the same facts in another order, less sure.
fn is_asked(case: &Case, answer: &Value) -> bool {
    let is_confirm = answer.get("act").and_then(Value::as_str) == Some("confirm");
    let events = answer.get("events").and_then(Value::as_array);
    matches!(case.law, Law::Order) && is_confirm && events == case.events.as_ref()
}

fn holds(case: &Case, found: Option<Vec<Value>>) -> bool {
    match (&case.events, found) {
        (Some(wanted), Some(found)) => *wanted == found,
        (Some(_), None) => false,
        (None, None) => true,
        // "planted 120 B not yet" tells that a job is not done.
        (None, Some(found)) => found
            .iter()
            .all(|event| event.get("kind").and_then(Value::as_str) == Some("not_done")),
    }
}
