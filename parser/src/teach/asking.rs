//! Learns what a text asks, from the texts of `tests/corpus/learn`, of `tests/texts`, of the patterns of
//! `tests/corpus/questions`, and of chat.
//!
//! `BUDWOOD_PEERS=$PWD/tests/.peers cargo test -p budwood-parser write_the_questions -- --ignored` writes
//! the table anew, and beside it a sum of what it was learned of.

use std::{
    fs, println,
    string::{String, ToString},
    vec::Vec,
};

use serde_json::{Value, json};

use super::{
    Sum,
    corpus::{self, Line},
    features::Features,
    own_lines,
    questions::{self, Question, Questions},
    root,
};
use crate::{
    Act, Kind, Query, Reader, Topic,
    learned::clues::Clue,
    reader::asked_by_rules,
    spoken::{
        askings::Askings,
        meant::{self, Asked, WHATS},
        replied::{SAID, Said},
        signals::{Signals, signals},
    },
};

impl Line {
    /// Which column of what can be asked is right: nothing of it is the first; none where it is no use
    /// for learning.
    pub(super) fn asks(&self) -> Option<usize> {
        let is_asked = |event: &&Value| matches!(event["kind"].as_str(), Some("query" | "deed"));
        let expect = self.expect.as_ref();
        let mut asked = expect.into_iter().flatten().filter(is_asked);
        let Some(first) = asked.next() else {
            if let Some(said) = self.says() {
                return said;
            }
            let fair = self.alternatives.iter().any(|act| act == "answer");
            return (!fair).then_some(0);
        };
        let only = expect.is_some_and(|all| all.iter().all(|event| is_asked(&event)));
        if self.act != "answer" || !only {
            return None;
        }
        let what = first["what"].as_str()?;
        let is_deed = first["kind"] == "deed";
        let by_adviser = self.role == "adviser";
        WHATS
            .iter()
            .position(|(topic, kind)| {
                let query = Query::of(*topic, *kind);
                query.what(by_adviser) == what && topic.is_deed() == is_deed
            })
            .map(|at| at + 1)
    }

    /// Which column of what else can be said is right: none of a bare answer, which the lists read.
    fn says(&self) -> Option<Option<usize>> {
        if !matches!(self.act.as_str(), "amend" | "reply") {
            return None;
        }
        let only = match self.expect.as_deref() {
            Some([only]) => only["kind"].as_str(),
            _ => None,
        };
        let column = |kind: &str| {
            let said = match kind {
                "correct" => Said::Correct,
                "undo" => Said::Undo,
                "yes" => Said::Yes,
                "no" => Said::No,
                "later" => Said::Later,
                "done" => Said::Done,
                _ => return None,
            };
            let at = SAID.iter().position(|other| *other == said);
            at.map(|at| 1 + WHATS.len() + at)
        };
        Some(only.and_then(column))
    }

    /// The clues and signs of what it asks.
    pub(super) fn asking_clues(&self) -> (Vec<Clue>, Signals) {
        let mut all = Vec::new();
        let signs = self.with_known(|known, _| {
            corpus::reader().with_pieces(&self.text, known, |pieces, folded| {
                let (lists, query) = asked_by_rules(pieces, folded, known.sender);
                meant::each_clue(pieces, folded, known.sender, query.as_ref(), |clue| {
                    all.push(clue);
                });
                signals(pieces, known.sender, lists, query.as_ref())
            })
        });
        (all, signs)
    }

    /// What a reader makes of it, beside what is right.
    pub(super) fn asked(&self, reader: &Reader) -> Value {
        let (asked, reading) = self.with_known(|known, _| {
            let asked = reader.with_pieces(&self.text, known, |pieces, folded| {
                let (lists, query) = asked_by_rules(pieces, folded, known.sender);
                Asked::of(
                    pieces,
                    folded,
                    (known.sender, query.as_ref()),
                    lists,
                    reader.askings(),
                )
            });
            (asked, reader.read(&self.text, known))
        });
        let by_adviser = self.role == "adviser";
        let read = reading.acts.first().map(|act| match act {
            Act::Query(query) => query.what(by_adviser).to_string(),
            other => std::format!("{other:?}"),
        });
        let (topic, kind) = asked.topic().unwrap_or((Topic::Other, None));
        json!({
            "lang": self.lang, "role": self.role, "text": self.text, "act": self.act, "expect": self.expect,
            "right": self.asks(), "is": asked.what + 1, "what": Query::of(topic, kind).what(by_adviser),
            "asked": asked.asked, "this": asked.this, "read": read, "asks": reading.asks,
            "reports": reading.reports.len(), "alarm": reading.alarm.is_some(), "topic": match reading.acts.first() {
                Some(Act::Query(query)) => query.kind.map(Kind::name), _ => None }, "alt": self.alternatives,
        })
    }
}

/// All texts of which is learned what they ask: those of people, of patterns, and chat.
fn asking_lines() -> Vec<Line> {
    let mut lines = own_lines();
    lines.extend(corpus::patterns(&root().join("tests/corpus/questions")));
    // Twice: most texts that reach a phone ask nothing.
    lines.extend(corpus::chat());
    lines.extend(corpus::chat());
    lines
}

/// What is asked, learned of all people but those of one fold.
fn askings(all: &[(&Line, Question)], features: &Features, leave_out: Option<usize>) -> Vec<u8> {
    let is_in = |line: &Line| leave_out.is_none() || line.fold() != leave_out;
    let texts: Vec<&Question> = all
        .iter()
        .filter(|(line, _)| is_in(line))
        .map(|(_, question)| question)
        .collect();
    Questions::learned(features.len(), &texts).bytes(features)
}

/// The questions of the texts, with the rows of their clues.
fn questions_of(lines: &[Line]) -> (Vec<(&Line, Question)>, Features) {
    let mut all = questions::questions(lines);
    let clues = all.iter().flat_map(|(_, question)| &question.clues);
    let features = Features::of(clues.copied());
    for (_, question) in &mut all {
        question.clues = features.rows(&question.clues);
    }
    (all, features)
}

#[test]
#[ignore = "writes the table of what is asked"]
fn write_the_questions() {
    let lines = asking_lines();
    let (all, features) = questions_of(&lines);
    fs::write(root().join(ASKINGS), askings(&all, &features, None)).unwrap();
    fs::write(root().join(ASKINGS_OF), questions_sum()).unwrap();
}

/// The table is stale when a word, a text or a pattern has changed since: then `write_the_questions`.
#[test]
fn the_questions_were_learned_of_what_is_there() {
    let stored = fs::read_to_string(root().join(ASKINGS_OF)).unwrap();
    assert_eq!(stored, questions_sum(), "run write_the_questions");
}

#[test]
#[ignore = "learns for a minute, and needs the chat that tests/all installs"]
fn the_questions_are_what_the_tool_makes() {
    let stored = fs::read(root().join(ASKINGS)).unwrap();
    let lines = asking_lines();
    let (all, features) = questions_of(&lines);
    assert!(
        stored == askings(&all, &features, None),
        "run write_the_questions"
    );
}

const ASKINGS: &str = "parser/weights/askings.bin";
const ASKINGS_OF: &str = "parser/weights/askings_of.txt";

/// A sum of all that is learned of the texts of the project about what is asked.
fn questions_sum() -> String {
    let mut lines = own_lines();
    lines.extend(corpus::patterns(&root().join("tests/corpus/questions")));
    let mut sum = Sum::new();
    for (_, question) in questions::questions(&lines) {
        question.clues.iter().for_each(|clue| sum.take(*clue));
        sum.take(question.signals);
        sum.take(question.right as u32);
    }
    std::format!("{:016x}\n", sum.0)
}

/// One line a text: what is right, and what is read by weights that never met its writer.
#[test]
#[ignore = "learns for minutes, and shows the texts of `learn`, to look into"]
fn show_what_is_asked() {
    let lines = asking_lines();
    let (all, features) = questions_of(&lines);
    let folds = std::env::var("FOLDS").map_or(corpus::FOLDS, |it| it.parse().unwrap());
    for fold in 0..folds {
        let bytes = askings(&all, &features, Some(fold)).into_boxed_slice();
        println!("# {} bytes, {} rows", bytes.len(), features.len());
        let table = Askings::of(std::boxed::Box::leak(bytes));
        let reader = corpus::new_reader().with_askings(table);
        for (line, _) in all.iter().filter(|(line, _)| line.fold() == Some(fold)) {
            println!("{}", line.asked(&reader));
        }
    }
}
