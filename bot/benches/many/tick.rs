//! A tick with few and many blocks, and a burst of nudges that must be on the disk.

use std::{
    hint::black_box,
    time::{Duration, Instant},
};

use budwood::{
    engine::{Engine, Input},
    store::SledStore,
};
use budwood_scheduler::BlockId;
use chrono::{DateTime, Utc};
use tempfile::TempDir;

use super::people::{Nowhere, noon, settle, setup, valley};

/// Blocks of the burst.
const BURST: u32 = 100_000;
/// Ticks with nothing due: the median counts.
const IDLE_TICKS: usize = 1_001;

pub(crate) fn run() {
    println!(
        "{:>10} {:>8} {:>8} {:>12} {:>12} {:>14} {:>12}",
        "blocks", "due", "nudges", "tick us", "us a nudge", "scan of all ms", "tick/scan"
    );
    for blocks in [1_000, 10_000, 100_000, 1_000_000] {
        for (name, one_in) in [("none", 0), ("1 %", 100), ("all", 1)] {
            let store = Nowhere::with(valley(blocks, one_in));
            let mut engine = Engine::open(setup(), Box::new(store), noon()).unwrap();
            let scan = scan(&engine, blocks, noon());
            let idle = idle_tick(&mut engine);
            let (tick, nudges) = if one_in == 0 {
                (idle, 0)
            } else {
                first_nudges(&mut engine)
            };
            let due = blocks.checked_div(one_in).unwrap_or(0);
            assert_eq!(
                nudges, due as usize,
                "every block that is due is nudged for"
            );
            println!(
                "{blocks:>10} {name:>8} {nudges:>8} {:>12.1} {:>12.1} {:>14.1} {:>12.5}",
                micros(tick),
                micros(tick) / nudges.max(1) as f64,
                micros(scan) / 1e3,
                tick.as_secs_f64() / scan.as_secs_f64(),
            );
        }
    }
}

pub(crate) fn burst() {
    let folder = folder();
    let store = SledStore::open(folder.path(), 64 * 1024 * 1024).unwrap();
    settle(&store, BURST, 1);
    let mut engine = Engine::open(setup(), Box::new(store), noon()).unwrap();
    let (time, nudges) = first_nudges(&mut engine);
    assert_eq!(nudges, BURST as usize, "every block is nudged for");
    println!(
        "{nudges} nudges due at one minute are in the outbox on the disk after {:.2} s",
        time.as_secs_f64()
    );
}

/// On the disk of the build, which is no disk in memory.
pub(crate) fn folder() -> TempDir {
    tempfile::tempdir_in(env!("CARGO_TARGET_TMPDIR")).unwrap()
}

/// Lets time pass to the first moment at which nudges go, and measures that one. Blocks are also
/// looked at now and then without a nudge; those moments are not measured.
fn first_nudges(engine: &mut Engine) -> (Duration, usize) {
    loop {
        let at = engine.next_wake().unwrap();
        let (time, nudges) = tick(engine, at);
        if nudges > 0 {
            return (time, nudges);
        }
    }
}

fn tick(engine: &mut Engine, at: DateTime<Utc>) -> (Duration, usize) {
    let before = engine.waiting();
    let begin = Instant::now();
    loop {
        engine.handle(vec![Input::Wake], at).unwrap();
        if engine.next_wake().is_none_or(|next| next > at) {
            break;
        }
    }
    (begin.elapsed(), engine.waiting() - before)
}

/// The middle one of many, before anything is due.
fn idle_tick(engine: &mut Engine) -> Duration {
    let mut times: Vec<Duration> = (0..IDLE_TICKS).map(|_| tick(engine, noon()).0).collect();
    times.sort_unstable();
    times.swap_remove(IDLE_TICKS / 2)
}

/// What a tick would cost that looks at every block.
fn scan(engine: &Engine, blocks: u32, at: DateTime<Utc>) -> Duration {
    let begin = Instant::now();
    for block in 0..blocks {
        black_box(engine.tasks(BlockId(block), at.date_naive()));
    }
    begin.elapsed()
}

fn micros(time: Duration) -> f64 {
    time.as_secs_f64() * 1e6
}
