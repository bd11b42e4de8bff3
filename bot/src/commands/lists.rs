//! `budwood roll check`, `roll load` and `roll undo`: a list of people is brought to the running
//! service, or to the store itself, and the last one is taken back.

use std::{io::Write, path::Path, process::ExitCode};

use anyhow::Context;
use chrono::{DateTime, Utc};

use super::{page::Page, talk};
use crate::{
    engine::{BackDeed, Engine, Input, List, ListAnswer, ListDeed, ListFate},
    service::{
        clock::Clock,
        config::Config,
        control::Control,
        setup::{self, config},
    },
};

pub(super) fn check(file: &Path, config_path: Option<&Path>) -> anyhow::Result<ExitCode> {
    let list = List {
        csv: setup::read_bytes(file)?,
        deed: ListDeed::Check,
    };
    say_list(&bring(config_path, list)?)
}

/// To the service of a configuration or its store, or to an empty one.
pub(super) fn bring(config_path: Option<&Path>, list: List) -> anyhow::Result<ListAnswer> {
    match config_path {
        Some(path) => bring_list(&config(path)?, list),
        None => {
            let now = Clock::System.now();
            take_list(&mut talk::empty_engine(now)?, list, now)
        }
    }
}

pub(super) fn load(file: &Path, config_path: &Path) -> anyhow::Result<ExitCode> {
    let list = List {
        csv: setup::read_bytes(file)?,
        deed: ListDeed::Load,
    };
    say_list(&bring_list(&config(config_path)?, list)?)
}

/// Shows what taking the last list back would do, or takes it back.
pub(super) fn undo(config_path: &Path, is_agreed: bool) -> anyhow::Result<ExitCode> {
    let deed = if is_agreed {
        BackDeed::Take
    } else {
        BackDeed::Look
    };
    let answer = take_back(&config(config_path)?, deed)?;
    let mut out = Page::open();
    write!(out, "{}", answer.page)?;
    Ok(match answer.fate {
        ListFate::Refused => ExitCode::FAILURE,
        ListFate::Good if is_agreed => {
            writeln!(out, "nothing was left to take back")?;
            ExitCode::SUCCESS
        }
        ListFate::Good => {
            writeln!(out, "nothing is changed yet; --yes takes it back")?;
            ExitCode::SUCCESS
        }
        ListFate::Stored => {
            writeln!(out, "taken back")?;
            ExitCode::SUCCESS
        }
    })
}

fn take_back(config: &Config, deed: BackDeed) -> anyhow::Result<ListAnswer> {
    if let Some(mut control) = Control::connect(&config.store.folder)? {
        return Ok(control.take_back(deed)?);
    }
    let now = Clock::System.now();
    let mut engine = setup::open_engine(config, now)?;
    let told = engine.handle(vec![Input::Unload(deed)], now)?.pop();
    told.and_then(|told| told.list)
        .context("the engine says nothing of the list")
}

/// To the running service, or to the store itself.
fn bring_list(config: &Config, list: List) -> anyhow::Result<ListAnswer> {
    if let Some(mut control) = Control::connect(&config.store.folder)? {
        return Ok(control.bring_list(&list)?);
    }
    let now = Clock::System.now();
    take_list(&mut setup::open_engine(config, now)?, list, now)
}

fn take_list(engine: &mut Engine, list: List, now: DateTime<Utc>) -> anyhow::Result<ListAnswer> {
    let told = engine.handle(vec![Input::List(list)], now)?.pop();
    told.and_then(|told| told.list)
        .context("the engine says nothing of the list")
}

fn say_list(answer: &ListAnswer) -> anyhow::Result<ExitCode> {
    let mut out = Page::open();
    writeln!(out, "{}", answer.page)?;
    Ok(match answer.fate {
        ListFate::Refused => ExitCode::FAILURE,
        ListFate::Good => ExitCode::SUCCESS,
        ListFate::Stored => {
            writeln!(out, "stored")?;
            ExitCode::SUCCESS
        }
    })
}
