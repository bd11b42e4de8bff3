//! `budwood demo`: three years of an invented group in a few seconds.
//!
//! A script says what people text and when; farmers behind the scenes answer their nudges as
//! people do. Everything else is the real thing: reader, engine, store, calendar and wording, on
//! a clock that is moved. Nothing is kept: the store lies in a folder that goes at the end.
//!
//! Deliberately absent: anything that the bot says. Read on in `script` and `stage`.

mod ending;
mod gathered;
mod screen;
mod script;
mod stage;
mod tally;

use std::{io::Write, sync::Arc};

use anyhow::Context;
use chrono::{DateTime, TimeDelta, Utc};
use chrono_tz::Tz;

use self::{
    gathered::Gathered,
    screen::Screen,
    script::{Line, Said},
    stage::Stage,
};
use crate::{
    play::{
        replies::{REPLIES, Replies},
        virtual_clock::{DEMO_ROLL, Rig},
    },
    service::setup,
    store::{SledStore, Store},
    words::limits,
};

/// The script that ships.
pub const SCRIPT: &str = include_str!("../../../demo-data/three-years.txt");

/// The clocks of the zone furthest ahead show this much more than UTC.
const ZONE_AHEAD_MAX: TimeDelta = TimeDelta::hours(14);

/// Codes in the demo protect nothing, and must be the same in every run.
const SECRET: u64 = 0;

/// Plays the demo in a store on disk that is removed at the end.
///
/// # Errors
///
/// When the demo's files are broken, or the temporary folder cannot be written.
pub fn play(all: bool, output: &mut impl Write) -> anyhow::Result<()> {
    let folder = tempfile::Builder::new()
        .prefix("budwood-demo-")
        .tempdir()
        .context("cannot make a temporary folder")?;
    let store = SledStore::open(&folder.path().join("store"), limits::DEMO_CACHE_BYTES)?;
    play_script(SCRIPT, Box::new(Gathered::new(store)), all, output)
}

/// Plays a script with the demo's people in this store.
///
/// # Errors
///
/// When the script is broken, with its line.
pub fn play_script(
    script: &str,
    store: Box<dyn Store>,
    all: bool,
    output: &mut impl Write,
) -> anyhow::Result<()> {
    let script = script::parse(script)?;
    let replies = Replies::parse(REPLIES)?;
    let setup = Arc::new(setup::built_in(SECRET)?);
    let mut rig = Rig::open(setup, store, opening(&script)?)?;
    let plan = rig.load_roll(DEMO_ROLL)?;
    let zone = zone(&rig);
    let mut screen = Screen::new(output, all);
    screen.list(&plan)?;
    let (rig, tally) = Stage::new(rig, zone, replies, screen).play(&script)?;
    ending::tell(&rig, &tally, output)
}

/// A moment before anything in the script, wherever its farms lie.
fn opening(script: &[Line]) -> anyhow::Result<DateTime<Utc>> {
    script
        .iter()
        .find_map(|line| match &line.said {
            Said::Cue(cue) => Some(cue.at),
            Said::Scene(_) | Said::Note(_) | Said::Holds(_) => None,
        })
        .map(|first| first.and_utc() - ZONE_AHEAD_MAX)
        .context("nobody does anything in the script")
}

/// The zone of the demo's group.
fn zone(rig: &Rig) -> Tz {
    let directory = rig.engine().directory();
    directory
        .groups()
        .next()
        .and_then(|group| group.zone.parse().ok())
        .unwrap_or(Tz::UTC)
}
