//! Real chat and adverts against the reader and the policy: nothing of it is stored, and hardly
//! anything answered.
//!
//! English: the UCI collection (Almeida, Gómez Hidalgo, Yamakami 2011). Indonesian: 35,328 texts that
//! people wrote to each other in public, of which nothing was learned. Both as the peers ship them; here
//! they all come from a registered farmer with four blocks.

use budwood_parser::{Known, Pack, Reader, Sender, Topic, languages};
use budwood_scheduler::{
    BlockState, Cohort,
    decide::{Answer, Decision, Plot, Scene, decide},
};
use chrono::NaiveDate;
use serde_json::{Value, json};

use crate::peer::ask;

const BLOCKS: [&str; 4] = ["A", "B", "C", "D"];
/// The collection as shipped; fewer would mean that it was not read.
const TEXTS_MIN: usize = 4_800;
/// One text in so many may be answered.
const TEXTS_FOR_ONE_ANSWER: usize = 1_000;

fn day(year: i32) -> NaiveDate {
    NaiveDate::from_ymd_opt(year, 3, 18).expect("it exists")
}

fn plots() -> Vec<Plot> {
    let planted = Cohort {
        planted_on: day(2023),
        clone_name: None,
        planted: 120,
        dead: 0,
        backfill: false,
    };
    let plot = |name: &&str| Plot {
        name: (*name).to_owned(),
        points: None,
        state: BlockState {
            cohorts: vec![planted.clone()],
            ..BlockState::default()
        },
    };
    BLOCKS.iter().map(plot).collect()
}

/// Whoever writes "call me" is answered that somebody will.
fn asks_for_a_call(decision: &Decision) -> bool {
    matches!(decision, Decision::Answer(Answer::Query(query)) if query.topic == Topic::CallMe)
}

#[test]
fn real_chat_is_not_stored_and_hardly_answered() {
    check(&json!({}), &[], TEXTS_MIN, TEXTS_FOR_ONE_ANSWER);
}

/// The Indonesian texts, on a phone of that language. The aim is one answer in a thousand, as in
/// English; so far it is 5 to 6.
const INDONESIAN_MIN: usize = 35_000;
const INDONESIAN_FOR_ONE_ANSWER: usize = 160;

#[test]
fn real_chat_in_indonesian_is_not_stored_and_hardly_answered() {
    check(
        &json!({"lang": "id"}),
        &["id"],
        INDONESIAN_MIN,
        INDONESIAN_FOR_ONE_ANSWER,
    );
}

fn check(wanted: &Value, phone: &[&str], texts_min: usize, for_one_answer: usize) {
    let packs: Result<Vec<Pack>, _> = languages::ALL
        .iter()
        .map(|toml| Pack::parse(toml))
        .collect();
    let reader = Reader::new(packs.expect("the packs that ship can be read")).expect("they agree");
    let known = Known {
        languages: phone,
        blocks: &BLOCKS,
        groups: &[],
        members: &[],
        rolls: &[],
        sender: Sender::Farmer,
    };
    let plots = plots();
    let scene = Scene {
        sender: Sender::Farmer,
        today: day(2026),
        plots: &plots,
        last: &[],
        pending: None,
        nudged: None,
    };
    let texts = ask("chat.py", std::slice::from_ref(wanted));
    assert!(texts.len() >= texts_min, "only {} texts", texts.len());
    let (mut answered, mut stored) = (Vec::new(), Vec::new());
    for text in &texts {
        let text = text.get("text").and_then(Value::as_str).unwrap_or_default();
        let decision = decide(&reader.read(text, &known), &scene);
        if matches!(decision, Decision::Record(_)) {
            stored.push(text);
        }
        let quiet = matches!(decision, Decision::Silent(_) | Decision::Person(_));
        if !quiet && !asks_for_a_call(&decision) {
            answered.push(text);
        }
    }
    println!(
        "{phone:?}: of {} texts {} stored, {} answered",
        texts.len(),
        stored.len(),
        answered.len()
    );
    assert!(stored.is_empty(), "{stored:#?}");
    assert!(
        answered.len() * for_one_answer <= texts.len(),
        "{} of {} texts are answered: {answered:#?}",
        answered.len(),
        texts.len()
    );
}
