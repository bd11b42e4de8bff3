//! Misspellings of English words of work against PyPI codespell's list.
//!
//! The rule: a listed misspelling is read as the word that it stands for, or not read; never as
//! another kind of work.

use budwood_parser::{Kind, Known, Pack, Reader, Sender, languages};
use serde_json::{Value, json};

use crate::peer::ask;

/// Words of work that the peer lists misspellings of; what each means is read, not told here.
const WORDS: &[&str] = &[
    "apply",
    "applied",
    "branch",
    "branches",
    "branching",
    "brush",
    "brushed",
    "canopy",
    "capped",
    "casualties",
    "circumference",
    "clean",
    "cleaned",
    "cleaning",
    "clear",
    "cleared",
    "clearing",
    "cover",
    "crop",
    "crops",
    "crown",
    "damage",
    "damaged",
    "dead",
    "delivered",
    "destroyed",
    "died",
    "disease",
    "diseased",
    "dying",
    "failed",
    "feed",
    "feeding",
    "fertilised",
    "fertilized",
    "fertilizing",
    "filled",
    "girth",
    "height",
    "heights",
    "hole",
    "holes",
    "induced",
    "induction",
    "infected",
    "killed",
    "marked",
    "missing",
    "open",
    "opened",
    "opening",
    "planted",
    "planting",
    "pruned",
    "pruning",
    "rain",
    "rainfall",
    "received",
    "receive",
    "refill",
    "replace",
    "replaced",
    "replacing",
    "replanted",
    "round",
    "slashed",
    "sprayed",
    "supplied",
    "supplies",
    "supply",
    "tapped",
    "thickness",
    "transplanted",
    "trimmed",
    "weeding",
];
/// So many must be on the list, or it was not read.
const MISSPELLINGS_MIN: usize = 150;
/// The share that must be read right.
const RIGHT_PERCENT_MIN: usize = 95;

fn kinds(reader: &Reader, word: &str) -> Vec<Kind> {
    let known = Known {
        languages: &["en"],
        blocks: &["A", "B"],
        groups: &[],
        members: &[],
        rolls: &[],
        sender: Sender::Farmer,
    };
    let reading = reader.read(&format!("{word} 4 B"), &known);
    if reading.stances.is_empty() {
        reading.reports.iter().map(|report| report.kind).collect()
    } else {
        Vec::new()
    }
}

#[test]
fn listed_misspellings_are_read_right_or_not_at_all() {
    let packs: Result<Vec<Pack>, _> = languages::ALL
        .iter()
        .map(|toml| Pack::parse(toml))
        .collect();
    let reader = Reader::new(packs.expect("the packs that ship can be read")).expect("they agree");
    let listed = ask("misspellings.py", &[json!({"words": WORDS})]);
    assert!(
        listed.len() >= MISSPELLINGS_MIN,
        "only {} misspellings",
        listed.len()
    );
    let mut missed = Vec::new();
    for entry in &listed {
        let word = |key: &str| entry.get(key).and_then(Value::as_str).unwrap_or_default();
        let (wrong, right) = (word("wrong"), word("right"));
        let expected = kinds(&reader, right);
        let found = kinds(&reader, wrong);
        assert!(!expected.is_empty(), "{right:?} is no work");
        if found.is_empty() {
            missed.push(wrong);
        } else {
            assert_eq!(found, expected, "{wrong:?} stands for {right:?}");
        }
    }
    let right = listed.len() - missed.len();
    assert!(
        right * 100 >= listed.len() * RIGHT_PERCENT_MIN,
        "{right} of {} were read; not these: {missed:?}",
        listed.len()
    );
}
