//! What is due, block by block: for support.
//!
//! Works on a copy in memory, so it changes nothing and can be asked while the service runs.

use std::{io::Write, sync::Arc};

use budwood_scheduler::{Block, Task, jobs::nudge};
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
    format!("{job}, due from {}{late}", task.due)
}
