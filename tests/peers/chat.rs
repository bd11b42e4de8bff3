//! Real chat and adverts against the reader and the policy: nothing of it is stored, and hardly
//! anything answered.
//!
//! The texts are those of the UCI collection (Almeida, Gómez Hidalgo, Yamakami 2011) as the peer
//! ships them; here they all come from a registered farmer with four blocks.

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
    let packs: Result<Vec<Pack>, _> = languages::ALL
        .iter()
        .map(|toml| Pack::parse(toml))
        .collect();
    let reader = Reader::new(packs.expect("the packs that ship can be read")).expect("they agree");
    let known = Known {
        languages: &[],
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
    let texts = ask("chat.py", &[json!({})]);
    assert!(texts.len() >= TEXTS_MIN, "only {} texts", texts.len());
    let mut answered = Vec::new();
    for text in &texts {
        let text = text.get("text").and_then(Value::as_str).unwrap_or_default();
        let decision = decide(&reader.read(text, &known), &scene);
        assert!(
            !matches!(decision, Decision::Record(_)),
            "{text:?}: {decision:?}"
        );
        let quiet = matches!(decision, Decision::Silent(_) | Decision::Person(_));
        if !quiet && !asks_for_a_call(&decision) {
            answered.push(text);
        }
    }
    assert!(
        answered.len() * TEXTS_FOR_ONE_ANSWER <= texts.len(),
        "{} of {} texts are answered: {answered:#?}",
        answered.len(),
        texts.len()
    );
}
