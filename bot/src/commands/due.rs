//! What is due, block by block: for support.
//!
//! Works on a copy in memory, so it changes nothing and can be asked while the service runs.

use std::{io::Write, sync::Arc};

use budwood_scheduler::{
    Block, Task,
    jobs::{
        nudge,
        task::{Lost, LostRound},
    },
    land::block::Living,
};
use chrono::{DateTime, NaiveDate, Utc};

use crate::{
    backup::source::Source,
    engine::Engine,
    service::{config::Config, setup},
    store::{Change, MemoryStore, Store, read_line},
};

/// Prints what is due on a day, block by block. Changes nothing.
///
/// # Errors
///
/// When there is no store, or it cannot be read.
pub fn print(
    config: &Config,
    on: NaiveDate,
    now: DateTime<Utc>,
    out: &mut impl Write,
) -> anyhow::Result<()> {
    let store = copy_in_memory(Source::open(config)?)?;
    let setup = Arc::new(setup::from_config(config)?);
    let engine = Engine::open(setup, Box::new(store), now)?;
    let mut blocks: Vec<(String, &Block)> = engine
        .directory()
        .blocks()
        .map(|block| (place(&engine, block), block))
        .collect();
    blocks.sort_by(|(one, _), (other, _)| one.cmp(other));
    let mut jobs = 0;
    for (place, block) in blocks {
        for task in engine.tasks(block.id, on) {
            if task.due <= on {
                writeln!(out, "{place}: {}", line(&engine, &task, on))?;
                jobs += 1;
            }
        }
    }
    writeln!(out, "{jobs} jobs due on {on}")?;
    Ok(())
}

/// Only what jobs follow from: facts and texts are many, and states hold what they came to.
fn copy_in_memory(mut source: Source) -> anyhow::Result<MemoryStore> {
    let store = MemoryStore::new();
    while let Some(lines) = source.next_lines()? {
        let mut part = Change::default();
        for line in lines {
            read_line(&line, &mut part)?;
        }
        part.events.clear();
        part.received.clear();
        part.outbound.clear();
        store.commit(&part)?;
    }
    Ok(store)
}

fn place(engine: &Engine, block: &Block) -> String {
    let directory = engine.directory();
    let owner = directory
        .person(block.owner)
        .map_or("nobody", |owner| owner.name.as_str());
    let group = directory
        .group_of_block(block)
        .map_or("no group", |group| group.name.as_str());
    format!("{group}, {owner}, {}", block.name)
}

fn line(engine: &Engine, task: &Task, on: NaiveDate) -> String {
    let job = engine.setup().texts.tongue(&[]).job(task.kind);
    let late = if nudge::is_late(task, on) {
        format!(", late since {}", task.late_after)
    } else {
        String::new()
    };
    let alive = task.figures.living.map_or_else(String::new, |living| {
        let Living {
            first,
            filled,
            planted,
            ..
        } = living;
        format!(", alive {first} + {filled} filled in, of {planted}")
    });
    let lost: Vec<String> = task.figures.lost.iter().map(lost).collect();
    let lost = lost.concat();
    format!("{job}, due from {}{late}{alive}{lost}", task.due)
}

/// A round of feeding that is asked for no more.
fn lost(round: &LostRound) -> String {
    let LostRound { round, on, why, .. } = round;
    let why = match why {
        Lost::NoRoom => "the rains left no days for it",
        Lost::NotGiven => "no word of it came",
    };
    format!("; round {round} of {on} was lost: {why}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_lost_round_is_told_with_its_reason() {
        let told = |why| {
            lost(&LostRound {
                round: 3,
                on: NaiveDate::from_ymd_opt(2028, 6, 1).unwrap(),
                until: NaiveDate::from_ymd_opt(2028, 7, 1).unwrap(),
                why,
            })
        };
        assert_eq!(
            told(Lost::NotGiven),
            "; round 3 of 2028-06-01 was lost: no word of it came"
        );
        assert!(told(Lost::NoRoom).ends_with("the rains left no days for it"));
    }
}
