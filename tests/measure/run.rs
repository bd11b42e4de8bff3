//! Runs the generated texts through `budwood read --lines`, in process.

use std::{env, io::Cursor};

use budwood::{commands::read, service::setup};
use budwood_parser::Reader;
use serde_json::Value;

use crate::{
    chance::Chance,
    judge::{Tally, Verdict, judge},
    message::{Maker, Message},
    rates::Level,
    speech::Speech,
    surface::sent_on,
};

/// Texts of each sort in a plain `cargo test`.
const TEXTS: usize = 500;
/// The first of the seeds: one for each language and level.
const SEED: u64 = 1_103;

/// How many reports, and how many negatives, in each cell: `BUDWOOD_TEXTS`.
pub(crate) fn texts() -> usize {
    env::var("BUDWOOD_TEXTS")
        .ok()
        .and_then(|number| number.parse().ok())
        .unwrap_or(TEXTS)
}

/// Whether everything is read with all packs on, as the service does: `BUDWOOD_ALL`.
fn all_packs() -> bool {
    env::var_os("BUDWOOD_ALL").is_some()
}

/// The reader that ships.
pub(crate) fn reader() -> Reader {
    setup::built_in(0).expect("what ships can be read").reader
}

/// The texts of one cell.
pub(crate) fn messages(index: u64, speech: &Speech, level: Level, number: usize) -> Vec<Message> {
    let all = all_packs();
    let mut maker = Maker {
        chance: Chance::new(SEED + index * 3 + level as u64),
        speech,
        level,
        lang: (!all).then_some(speech.code.as_str()),
    };
    let mut messages: Vec<Message> = (0..number).map(|_| maker.message()).collect();
    messages.extend((0..number).map(|_| maker.negative()));
    messages
}

/// What the reader makes of the texts, in order.
pub(crate) fn answers(reader: &Reader, messages: &[Message]) -> Vec<Value> {
    let lines: Vec<Value> = messages
        .iter()
        .map(|message| message.line.clone())
        .collect();
    answers_to(reader, &lines)
}

/// What the reader makes of these lines.
pub(crate) fn answers_to(reader: &Reader, given: &[Value]) -> Vec<Value> {
    let mut lines = String::new();
    for line in given {
        lines += &line.to_string();
        lines.push('\n');
    }
    let mut answers = Vec::new();
    let received = sent_on().and_hms_opt(12, 0, 0).expect("noon exists");
    read::lines(reader, received, Cursor::new(lines), &mut answers).expect("memory does not fail");
    let answers = String::from_utf8(answers).expect("answers are UTF-8");
    let parse = |line| serde_json::from_str(line).expect("answers are JSON");
    answers.lines().map(parse).collect()
}

/// Measures one cell and hands each fault to `show`.
pub(crate) fn measure(
    reader: &Reader,
    messages: &[Message],
    mut show: impl FnMut(&Message, &Verdict, &Value),
) -> Tally {
    let answers = answers(reader, messages);
    assert_eq!(answers.len(), messages.len(), "one answer for each text");
    let mut tally = Tally::default();
    for (message, answer) in messages.iter().zip(&answers) {
        let verdict = judge(message, answer);
        tally.add(message, &verdict);
        if verdict.fault.is_some() {
            show(message, &verdict, answer);
        }
    }
    tally
}
