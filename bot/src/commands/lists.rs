//! `budwood roll check` and `roll load`: a list of people is brought to the running service, or to
//! the store itself.

use std::{io::Write, path::Path, process::ExitCode};

use anyhow::Context;
use chrono::{DateTime, Utc};

use super::{page::Page, talk};
use crate::{
    engine::{Engine, Input, Sheet, SheetAnswer, SheetDeed, SheetFate},
    service::{
        clock::Clock,
        config::Config,
        control::Control,
        setup::{self, config},
    },
};

pub(super) fn check(file: &Path, config_path: Option<&Path>) -> anyhow::Result<ExitCode> {
    let sheet = Sheet {
        csv: setup::read_bytes(file)?,
        deed: SheetDeed::Check,
    };
    let answer = match config_path {
        Some(path) => bring_sheet(&config(path)?, sheet)?,
        None => {
            let now = Clock::System.now();
            take_sheet(&mut talk::empty_engine(now)?, sheet, now)?
        }
    };
    say_sheet(&answer)
}

pub(super) fn load(file: &Path, config_path: &Path) -> anyhow::Result<ExitCode> {
    let sheet = Sheet {
        csv: setup::read_bytes(file)?,
        deed: SheetDeed::Load,
    };
    say_sheet(&bring_sheet(&config(config_path)?, sheet)?)
}

/// To the running service, or to the store itself.
fn bring_sheet(config: &Config, sheet: Sheet) -> anyhow::Result<SheetAnswer> {
    if let Some(mut control) = Control::connect(&config.store.folder)? {
        return Ok(control.bring_sheet(&sheet)?);
    }
    let now = Clock::System.now();
    take_sheet(&mut setup::open_engine(config, now)?, sheet, now)
}

fn take_sheet(
    engine: &mut Engine,
    sheet: Sheet,
    now: DateTime<Utc>,
) -> anyhow::Result<SheetAnswer> {
    let told = engine.handle(vec![Input::Sheet(sheet)], now)?.pop();
    told.and_then(|told| told.sheet)
        .context("the engine says nothing of the list")
}

fn say_sheet(answer: &SheetAnswer) -> anyhow::Result<ExitCode> {
    let mut out = Page::open();
    writeln!(out, "{}", answer.page)?;
    Ok(match answer.fate {
        SheetFate::Refused => ExitCode::FAILURE,
        SheetFate::Good => ExitCode::SUCCESS,
        SheetFate::Stored => {
            writeln!(out, "stored")?;
            ExitCode::SUCCESS
        }
    })
}
