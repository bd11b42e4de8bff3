//! A start on a store with years of facts, in a process of its own.

use std::{
    env, fs,
    path::Path,
    process::Command,
    time::{Duration, Instant},
};

use budwood::{
    engine::{Engine, Input},
    store::{Change, SledStore, Store},
    words::traffic::Inbound,
};
use budwood_parser::{Details, Kind};
use budwood_scheduler::{BlockId, BlockState, Body, Event, EventId, Happened, PersonId, Source};
use chrono::{DateTime, Days, TimeDelta, Utc};

use super::{
    people::{day, noon, number, settle, setup},
    tick::folder,
};

/// Blocks and facts: ten facts on a block, or a hundred as after some years.
const STORES: [(u32, u64); 4] = [
    (100_000, 0),
    (10_000, 1_000_000),
    (100_000, 1_000_000),
    (100_000, 10_000_000),
];
/// Facts written at once, as many as the service writes at once: with much larger batches sled takes
/// memory and does not give it back.
const GROUP: usize = 256;
const CACHE_BYTES: u64 = 64 * 1024 * 1024;

pub(crate) fn run() {
    for (blocks, facts) in STORES {
        let folder = folder();
        let begin = Instant::now();
        fill(folder.path(), blocks, facts);
        println!(
            "{facts} facts on {blocks} blocks written in {:.0} s, {} MB on disk",
            begin.elapsed().as_secs_f64(),
            bytes(folder.path()) / 1_000_000
        );
        let program = env::current_exe().unwrap();
        let done = Command::new(program)
            .arg("opened")
            .arg(folder.path())
            .status()
            .unwrap();
        assert!(done.success(), "the other process broke off");
    }
}

/// Opens a store, answers one text, and says how long it took and what memory it has.
pub(crate) fn opened(folder: &Path) {
    let bare = memory();
    let begin = Instant::now();
    let setup = setup();
    let ready = begin.elapsed();
    let store = SledStore::open(folder, CACHE_BYTES).unwrap();
    let open = begin.elapsed();
    let now = noon() + TimeDelta::days(8 * 365);
    let mut engine = Engine::open(setup, Box::new(store), now).unwrap();
    let loaded = begin.elapsed();
    let text = Inbound {
        gateway: "bench".to_owned(),
        gateway_id: None,
        from: number(7),
        to: "12345".to_owned(),
        text: "weeded A".to_owned(),
        sent_at: None,
    };
    engine.handle(vec![Input::Text(text)], now).unwrap();
    let seconds = |time: Duration| time.as_secs_f64();
    println!(
        "  start to first answer {:.2} s (words {:.2}, store {:.2}, memory {:.2}); {} MB of memory, \
         {} MB before",
        seconds(begin.elapsed()),
        seconds(ready),
        seconds(open) - seconds(ready),
        seconds(loaded) - seconds(open),
        memory() / 1_000_000,
        bare / 1_000_000,
    );
}

/// Facts as they come: every block once in turn, round after round, a round every four weeks.
fn fill(folder: &Path, blocks: u32, facts: u64) {
    let store = SledStore::open(folder, CACHE_BYTES).unwrap();
    settle(&store, blocks, 0);
    let mut states: Vec<BlockState> = vec![BlockState::default(); blocks as usize];
    let mut change = Change::default();
    for number in 0..facts {
        let block = u32::try_from(number % u64::from(blocks)).unwrap();
        let event = fact(number, block, number / u64::from(blocks));
        states.get_mut(block as usize).unwrap().apply(&event);
        change.events.push(event);
        if change.events.len() == GROUP {
            store.commit(&std::mem::take(&mut change)).unwrap();
        }
    }
    store.commit(&change).unwrap();
    if facts > 0 {
        let mut rest = (0..blocks).map(BlockId).zip(states).peekable();
        while rest.peek().is_some() {
            let states = rest.by_ref().take(GROUP).collect();
            store
                .commit(&Change {
                    states,
                    ..Change::default()
                })
                .unwrap();
        }
    }
}

fn fact(number: u64, block: u32, round: u64) -> Event {
    let on = day(2026, 9, 1) + Days::new(28 * round);
    let (kind, count) = match round {
        0 => (Kind::Planted, Some(400)),
        round if round.is_multiple_of(6) => (Kind::Dead, Some(2)),
        _ => (Kind::Weeded, None),
    };
    Event {
        id: EventId(number + 1),
        at: evening(on),
        by: Some(PersonId(block)),
        source: Source::OwnText,
        message: None,
        supersedes: None,
        body: Body::Reported {
            block: BlockId(block),
            kind,
            on: Happened::on(on),
            details: Details {
                count,
                ..Details::default()
            },
        },
    }
}

fn evening(on: chrono::NaiveDate) -> DateTime<Utc> {
    on.and_hms_opt(18, 0, 0).unwrap().and_utc()
}

/// Bytes of this process that lie in memory.
fn memory() -> u64 {
    let pages = fs::read_to_string("/proc/self/statm").unwrap();
    let resident = pages.split_whitespace().nth(1).unwrap();
    resident.parse::<u64>().unwrap() * 4_096
}

/// Bytes of the files in a folder.
pub(crate) fn bytes(folder: &Path) -> u64 {
    fs::read_dir(folder)
        .unwrap()
        .map(|entry| {
            let entry = entry.unwrap();
            let kind = entry.metadata().unwrap();
            if kind.is_dir() {
                bytes(&entry.path())
            } else {
                kind.len()
            }
        })
        .sum()
}
