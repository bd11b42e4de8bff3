//! Compares a store with the provider's book.
//!
//! - Every acknowledged text is there, none is there twice, none that nobody sent.
//! - Each has had its effect once: the trees of a block are the sum of its stored texts.
//! - States are what the log says, folded anew.
//! - Each has its answer, but for the bound on answers to one phone, which is counted anew here.

use std::{
    collections::{BTreeMap, BTreeSet},
    path::Path,
};

use budwood::{
    store::{Loaded, SledStore, Store},
    words::message::{Purpose, Received},
};
use budwood_scheduler::{BlockId, BlockState, Directory, Event, MessageId};
use chrono::TimeDelta;

use super::ledger::{Ledger, Text};

/// Answers to a farmer's phone in an hour: the next text is told that it is enough.
const ANSWERS: usize = 10;

/// Opens the store and compares; says what is wrong.
pub(crate) fn judge(store: &Path, ledger: &Ledger) -> Result<(), String> {
    let store = SledStore::open(store, 16 * 1024 * 1024)
        .map_err(|error| format!("the store does not open: {error:?}"))?;
    let mut received = Vec::new();
    let mut events = Vec::new();
    let read = store
        .each_received(&mut |text| received.push(text))
        .and_then(|()| store.each_event(&mut |event| events.push(event)))
        .and_then(|()| store.load(usize::MAX));
    let loaded = read.map_err(|error| format!("the store cannot be read: {error:?}"))?;
    let sent: BTreeMap<&str, &Text> = ledger
        .texts
        .iter()
        .map(|text| (text.id.as_str(), text))
        .collect();
    texts_are_there_once(&received, &sent)?;
    effects_are_there_once(&received, &events, &loaded, &sent)?;
    states_are_what_the_log_says(&events, &loaded)?;
    answers_are_there(&received, &loaded)
}

fn texts_are_there_once(received: &[Received], sent: &BTreeMap<&str, &Text>) -> Result<(), String> {
    let mut found = BTreeSet::new();
    for text in received {
        let id = text.gateway_id.as_deref().unwrap_or_default();
        let Some(original) = sent.get(id) else {
            return Err(format!("text {id:?} was never sent"));
        };
        if text.text != original.words() || text.from != original.from() {
            return Err(format!("text {id} is another than was sent"));
        }
        if !found.insert(id) {
            return Err(format!("text {id} is there twice"));
        }
    }
    let lost: Vec<&str> = sent
        .values()
        .filter(|text| text.is_acknowledged && !found.contains(text.id.as_str()))
        .map(|text| text.id.as_str())
        .collect();
    if lost.is_empty() {
        Ok(())
    } else {
        Err(format!(
            "{} acknowledged texts are lost: {lost:?}",
            lost.len()
        ))
    }
}

fn effects_are_there_once(
    received: &[Received],
    events: &[Event],
    loaded: &Loaded,
    sent: &BTreeMap<&str, &Text>,
) -> Result<(), String> {
    let mut trees: BTreeMap<String, u32> = BTreeMap::new();
    let mut recorded = 0;
    for text in received.iter().filter(|text| text.outcome == "recorded") {
        let id = text.gateway_id.as_deref().unwrap_or_default();
        *trees.entry(text.from.clone()).or_default() += sent[id].trees;
        recorded += 1;
    }
    let known = directory(loaded);
    for (number, trees) in &trees {
        let of_block = |block| state(loaded, block).map_or(0, BlockState::planted);
        let planted: u32 = owners_blocks(&known, number).map(of_block).sum();
        if planted != *trees {
            return Err(format!(
                "{number} told {trees} trees; {planted} are counted"
            ));
        }
    }
    let told = events.iter().filter(|event| event.message.is_some());
    let told: BTreeSet<MessageId> = told.filter_map(|event| event.message).collect();
    if told.len() != recorded || known.blocks().count() > 0 && recorded != received.len() {
        return Err(format!(
            "{} texts, {recorded} recorded, {} in the log",
            received.len(),
            told.len()
        ));
    }
    Ok(())
}

fn states_are_what_the_log_says(events: &[Event], loaded: &Loaded) -> Result<(), String> {
    let mut log: BTreeMap<BlockId, Vec<&Event>> = BTreeMap::new();
    for event in events {
        if let Some(block) = event.body.block() {
            log.entry(block).or_default().push(event);
        }
    }
    for (block, events) in &log {
        let rebuilt = BlockState::replay(events.iter().copied());
        if state(loaded, *block) != Some(&rebuilt) {
            return Err(format!(
                "the state of block {block:?} is not that of the log"
            ));
        }
    }
    Ok(())
}

fn answers_are_there(received: &[Received], loaded: &Loaded) -> Result<(), String> {
    let mut answered: BTreeMap<MessageId, usize> = BTreeMap::new();
    for outbound in &loaded.outbound {
        if let Purpose::Answer { to } = outbound.purpose {
            *answered.entry(to).or_default() += 1;
        }
    }
    let mut lately: BTreeMap<&str, Vec<chrono::DateTime<chrono::Utc>>> = BTreeMap::new();
    for text in received.iter().filter(|text| text.outcome == "recorded") {
        let lately = lately.entry(&text.from).or_default();
        lately.retain(|at| *at > text.at - TimeDelta::hours(1));
        let expected = usize::from(lately.len() <= ANSWERS);
        lately.extend((expected == 1).then_some(text.at));
        let found = answered.get(&text.id).copied().unwrap_or(0);
        if found != expected {
            let id = text.gateway_id.as_deref().unwrap_or_default();
            return Err(format!("text {id} has {found} answers, not {expected}"));
        }
    }
    Ok(())
}

fn state(loaded: &Loaded, block: BlockId) -> Option<&BlockState> {
    let found = loaded.states.iter().find(|(id, _)| *id == block);
    found.map(|(_, state)| state)
}

fn directory(loaded: &Loaded) -> Directory {
    let mut directory = Directory::default();
    for person in loaded.persons.clone() {
        directory.put_person(person);
    }
    for phone in loaded.phones.clone() {
        directory.put_phone(phone);
    }
    for block in loaded.blocks.clone() {
        directory.put_block(block);
    }
    directory
}

fn owners_blocks<'a>(
    directory: &'a Directory,
    number: &str,
) -> impl Iterator<Item = BlockId> + use<'a> {
    let people: Vec<_> = directory
        .phone(number)
        .map(|phone| phone.people().collect())
        .unwrap_or_default();
    people
        .into_iter()
        .flat_map(|person| directory.blocks_of(person).map(|block| block.id))
}
