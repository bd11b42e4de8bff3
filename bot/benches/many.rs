//! What many blocks and many facts cost: a tick, a start, memory, the disk.
//!
//! 1. `tick`: the engine in memory with 1,000 to 1,000,000 blocks of which none, one in a hundred
//!    or all are due, beside a look at every block. A tick costs what is due, not what exists.
//! 2. `burst`: 100,000 nudges due at one minute, until they are in the outbox on the disk.
//! 3. `start`: a store with up to 100,000 blocks and 10,000,000 facts, opened by a fresh process,
//!    until its first text is acknowledged; and the memory that the process then has.
//! 4. `disk`: a year of texts from 1,000 farmers, and what the folder has grown to.
//! 5. `ask`: a text of an adviser of 100 to 10,000 members, every question, beside a farmer's text.
//!
//! Absolute figures only mean something beside their machine.
//!
//! `cargo bench -p budwood --bench many`; `-- tick`, `burst`, `start`, `disk` or `ask` runs one part.
#![expect(
    clippy::disallowed_methods,
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a bench reads the clock, prints, and breaks off where something is not there"
)]

mod many {
    pub(crate) mod ask;
    pub(crate) mod disk;
    pub(crate) mod people;
    pub(crate) mod start;
    pub(crate) mod tick;
}

use std::env;

use self::many::{ask, disk, start, tick};

fn main() {
    let args: Vec<String> = env::args().skip(1).filter(|arg| arg != "--bench").collect();
    let parts: Vec<&str> = args.iter().map(String::as_str).collect();
    match parts.as_slice() {
        [] => {
            tick::run();
            tick::burst();
            start::run();
            disk::run();
            ask::run();
        }
        ["tick"] => tick::run(),
        ["burst"] => tick::burst(),
        ["start"] => start::run(),
        ["disk"] => disk::run(),
        ["ask"] => ask::run(),
        ["opened", folder] => start::opened(folder.as_ref()),
        other => println!("there is no part {other:?}"),
    }
}
