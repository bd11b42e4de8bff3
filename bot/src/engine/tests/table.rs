//! Every question of an adviser and of a farmer, asked in one world: the answer stands in a table and
//! was reckoned by a person, and each number in it is that of the figure behind it.
//!
//! `tests/table/world.txt` is the world and `calendar.toml` its calendar, `adviser.txt` and `farmer.txt` beside it are the questions;
//! each begins with how it is written. Deliberately absent: what else a conversation does, which is
//! in `tests/conversations`.

mod figure;

use std::sync::{Arc, OnceLock};

use budwood_scheduler::Calendar;
use chrono::{DateTime, NaiveDateTime, TimeDelta, TimeZone, Utc};
use chrono_tz::Asia::Jakarta;

use super::{
    super::{Engine, Input, Told},
    Setup, built_in,
};
use crate::{
    store::MemoryStore,
    words::{
        traffic::{About, Delivery, Inbound, Outgoing, Receipt, SendOutcome},
        ways::{HANDSET, Ration, Way, Ways},
    },
};

const WORLD: &str = include_str!("../../../../tests/table/world.txt");
const CALENDAR: &str = include_str!("../../../../tests/table/calendar.toml");
const ADVISER: &str = include_str!("../../../../tests/table/adviser.txt");
const FARMER: &str = include_str!("../../../../tests/table/farmer.txt");

/// What a part costs in this world, in millionths.
const PRICE_MICRO: u64 = 20_000;

/// The engine of the world, with what a gateway and a clock do.
struct Desk {
    engine: Engine,
    now: DateTime<Utc>,
    /// Numbers on which no text arrives.
    failing: Vec<String>,
    /// The last code that came.
    code: String,
    /// The number by which the last change can be taken back.
    number_told: String,
    /// Texts that left since the first of the month.
    left: u64,
}

fn setup() -> Arc<Setup> {
    static SETUP: OnceLock<Arc<Setup>> = OnceLock::new();
    let made = || {
        let handset = Way {
            name: HANDSET.to_owned(),
            idempotent: true,
            price_micro: Some(PRICE_MICRO),
            ration: Ration::default(),
        };
        let mut built_in = built_in();
        let calendar = Calendar::parse(CALENDAR).unwrap();
        built_in.calendars.insert(calendar.name.clone(), calendar);
        Arc::new(Setup {
            ways: Ways {
                gateways: vec![handset],
                ..Ways::default()
            },
            ..built_in
        })
    };
    SETUP.get_or_init(made).clone()
}

fn instant(text: &str) -> DateTime<Utc> {
    let local = NaiveDateTime::parse_from_str(text, "%Y-%m-%d %H:%M").unwrap();
    Jakarta.from_local_datetime(&local).unwrap().to_utc()
}

impl Desk {
    /// The world as it stands when the questions are asked.
    fn open() -> Self {
        let lines = || WORLD.lines().filter(|line| !line.starts_with('#'));
        let rows = |line: &&str| {
            let heads = ["row,", "group,", "person,", "block,"];
            heads.iter().any(|head| line.starts_with(head))
        };
        let list: String = lines().filter(rows).flat_map(|row| [row, "\n"]).collect();
        let moments = lines().filter_map(|line| line.strip_prefix("== "));
        let start = instant(moments.clone().next().unwrap());
        let failing = lines().filter_map(|line| line.strip_prefix("fails "));
        let mut desk = Self {
            engine: Engine::open(setup(), Box::new(MemoryStore::new()), start).unwrap(),
            now: start,
            failing: failing.map(str::to_owned).collect(),
            code: String::new(),
            number_told: String::new(),
            left: 0,
        };
        let plan = desk.engine.plan_roll(list.as_bytes(), start);
        assert!(plan.may_be_stored(), "{plan}");
        desk.one(Input::Roll(Box::new(plan.into())));
        for line in lines().filter(|line| !rows(line) && !line.starts_with("fails ")) {
            if let Some(moment) = line.strip_prefix("== ") {
                desk.pass(instant(moment));
            } else if let Some((who, text)) = line.split_once(": ") {
                desk.pass(desk.now + TimeDelta::minutes(1));
                desk.text(who, text);
            }
        }
        desk
    }

    fn one(&mut self, input: Input) -> Told {
        let mut told = self.engine.handle(vec![input], self.now).unwrap();
        told.pop().unwrap_or_default()
    }

    /// Time passes, and what is due then leaves.
    fn pass(&mut self, end: DateTime<Utc>) {
        loop {
            let wake = self.engine.next_wake();
            let next = wake.into_iter().chain(self.engine.next_try()).min();
            let Some(next) = next.filter(|next| *next <= end) else {
                break;
            };
            self.now = self.now.max(next);
            if wake.is_some_and(|wake| wake <= self.now) {
                self.one(Input::Wake);
            }
            self.leave();
        }
        self.now = self.now.max(end);
    }

    /// Everything that may leave does.
    fn leave(&mut self) -> Vec<Outgoing> {
        let mut gone = Vec::new();
        let claim = || Input::ClaimNext {
            gateway: HANDSET.to_owned(),
        };
        while let Some(text) = self.one(claim()).send {
            let id = text.id;
            let outcome = SendOutcome::Accepted { ids: Vec::new() };
            self.one(Input::Tried { id, outcome });
            if self.failing.contains(&text.to) {
                self.one(Input::Receipt(Receipt {
                    gateway: HANDSET.to_owned(),
                    about: About::Ours(id),
                    delivery: Delivery::Failed,
                    code: None,
                }));
            }
            self.left += u64::from(self.now >= instant("2026-12-01 07:00"));
            gone.push(text);
        }
        gone
    }

    fn number(&self, called: &str) -> String {
        let directory = self.engine.directory();
        let mut people = directory.persons();
        let person = people.find(|person| person.is_named(called)).unwrap();
        directory.numbers_of(person.id).next().unwrap().to_owned()
    }

    /// A text comes in; gives what its sender reads.
    fn text(&mut self, who: &str, text: &str) -> Vec<String> {
        let number = self.number(who);
        self.one(Input::Text(Inbound {
            gateway: HANDSET.to_owned(),
            gateway_id: None,
            from: number.clone(),
            to: "12345".to_owned(),
            text: text
                .replace("CODE", &self.code)
                .replace("NUMBER", &self.number_told),
            sent_at: None,
        }));
        let mut read = Vec::new();
        for text in self.leave() {
            let mut text_read = text.text;
            if let Some(code) = number_after(&text_read, "YES ").filter(|code| code.len() == 6) {
                text_read = text_read.replace(&code, "CODE");
                self.code = code;
            }
            if let Some(number) = number_after(&text_read, "UNDO ") {
                text_read = text_read.replace(&number, "NUMBER");
                self.number_told = number;
            }
            if text.to == number {
                read.push(text_read);
            }
        }
        read
    }
}

/// The digits behind a word.
fn number_after(text: &str, word: &str) -> Option<String> {
    let (_, rest) = text.split_once(word)?;
    let digits: String = rest.chars().take_while(char::is_ascii_digit).collect();
    (!digits.is_empty()).then_some(digits)
}

/// A number stands in a text by itself, not as a part of another.
fn shows(text: &str, number: &str) -> bool {
    let is_number = |c: char| c.is_ascii_digit() || c == '.';
    let mut parts = text.split(|c: char| !is_number(c));
    parts.any(|part| part.trim_end_matches('.') == number)
}

/// Asks one question of the table, and compares answer and figures.
fn ask(desk: &mut Desk, row: &str, usual: &str) -> Vec<String> {
    let mut faults = Vec::new();
    let mut read: Vec<String> = Vec::new();
    let mut last = String::new();
    let title = row.lines().next().unwrap_or_default();
    for line in row.lines().skip(1) {
        if let Some(asked) = line.strip_prefix("? ") {
            faults.extend(
                read.drain(..)
                    .map(|text| format!("{title}: also said: {text}")),
            );
            let named = asked.split_once(": ").filter(|(who, _)| !who.contains(' '));
            let (who, text) = match named {
                Some((who, text)) if usual.is_empty() => (who, text),
                _ => (usual, asked),
            };
            read = desk.text(who, text);
        } else if let Some(told) = line.strip_prefix("> ") {
            // The answer itself is not in it yet.
            let left = desk.left - 1;
            let cents = left * PRICE_MICRO / 10_000;
            let cost = format!("{}.{:02}", cents / 100, cents % 100);
            let told = told.replace("PARTS", &left.to_string());
            let told = told.replace("MONEY", &cost);
            last = if read.is_empty() {
                String::new()
            } else {
                read.remove(0)
            };
            if last != told {
                faults.push(format!("{title}:\n   told {told}\n    now {last}"));
            }
        } else if let Some(figure) = line.strip_prefix("= ") {
            let (name, rest) = figure.split_once(' ').unwrap();
            let (whom, value) = rest.split_once(' ').unwrap();
            let view = desk.engine.view(desk.now);
            let now = figure::value(view, name, whom);
            if now != value {
                faults.push(format!("{title}: {name} of {whom} is {now}, not {value}"));
            }
            if !shows(&last, value) {
                faults.push(format!("{title}: {last} does not show {name} {value}"));
            }
        }
    }
    faults.extend(
        read.into_iter()
            .map(|text| format!("{title}: also said: {text}")),
    );
    faults
}

/// Of a table the questions, each with its lines.
fn rows(table: &str) -> Vec<&str> {
    table.split("\n## ").skip(1).collect()
}

fn check(table: &str, usual: &str, numbered: usize) {
    let rows = rows(table);
    for number in 1..=numbered {
        let begin = format!("{number} ");
        let found = rows.iter().filter(|row| row.starts_with(&begin)).count();
        assert_eq!(found, 1, "question {number}");
    }
    // What only asks changes nothing; whatever else there is has a world of its own.
    let only_asks = |row: &str| !usual.is_empty() && row.matches("\n? ").count() == 1;
    let mut shared = Desk::open();
    let faults = rows.iter().flat_map(|row| {
        if only_asks(row) {
            ask(&mut shared, row, usual)
        } else {
            ask(&mut Desk::open(), row, usual)
        }
    });
    let faults: Vec<String> = faults.collect();
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn each_question_of_an_adviser_has_the_answer_of_the_table() {
    check(ADVISER, "Mara", 35);
}

#[test]
fn each_question_of_a_farmer_has_the_answer_of_the_table() {
    check(FARMER, "", 23);
}

#[test]
fn a_number_is_shown_by_itself() {
    for (text, number) in [
        ("alive 95%.", "95"),
        ("is 182.50. To", "182.50"),
        ("9d", "9"),
    ] {
        assert!(shows(text, number), "{text}");
    }
    for (text, number) in [("alive 95%", "5"), ("1109 of", "109"), ("182.50", "182")] {
        assert!(!shows(text, number), "{text}");
    }
}
