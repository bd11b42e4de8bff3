//! What an operator does with a store and with the service that runs: backup and restore, export
//! and import, release, reload, check.

use std::{io::Write, path::Path};

use anyhow::bail;

use super::page::Page;
use crate::{
    backup,
    service::{
        clock::Clock,
        control::Control,
        setup::{self, config},
    },
};

pub(super) fn check(path: &Path, with_records: bool) -> anyhow::Result<()> {
    let config = config(path)?;
    let setup = setup::from_config(&config)?;
    let calendars: Vec<&str> = setup.calendars.keys().map(String::as_str).collect();
    let mut out = Page::open();
    writeln!(out, "configuration: good")?;
    let languages: Vec<&str> = setup.reader.languages().collect();
    writeln!(out, "languages read: {}", languages.join(", "))?;
    for doubt in setup::pack_doubts(&config)? {
        writeln!(out, "doubtful: {doubt}")?;
    }
    writeln!(out, "calendars: {}", calendars.join(", "))?;
    if with_records {
        let records = backup::check_records(&config)?;
        writeln!(out, "records: {records}, all of them can be read")?;
    }
    Ok(())
}

pub(super) fn backup(path: &Path, folder: &Path) -> anyhow::Result<()> {
    let records = backup::backup(&config(path)?, folder, &Clock::System)?;
    writeln!(Page::open(), "{records} records in {}", folder.display())?;
    Ok(())
}

pub(super) fn restore(path: &Path, folder: &Path) -> anyhow::Result<()> {
    let records = backup::restore(&config(path)?, folder, &Clock::System)?;
    say_held(records)
}

pub(super) fn export(path: &Path, file: &Path) -> anyhow::Result<()> {
    let records = backup::export(&config(path)?, file)?;
    writeln!(Page::open(), "{records} records in {}", file.display())?;
    Ok(())
}

pub(super) fn import(path: &Path, file: &Path) -> anyhow::Result<()> {
    let records = backup::import(&config(path)?, file, &Clock::System)?;
    say_held(records)
}

fn say_held(records: u64) -> anyhow::Result<()> {
    writeln!(
        Page::open(),
        "{records} records put in. No text leaves until you run `budwood release CONFIG`"
    )?;
    Ok(())
}

pub(super) fn release(path: &Path) -> anyhow::Result<()> {
    backup::release(&config(path)?, &Clock::System)?;
    writeln!(Page::open(), "texts may leave")?;
    Ok(())
}

pub(super) fn reload(path: &Path) -> anyhow::Result<()> {
    let config = config(path)?;
    let Some(mut control) = Control::connect(&config.store.folder)? else {
        bail!("no service runs with this store; it reads the configuration when it starts");
    };
    let new = control.reload()?;
    writeln!(Page::open(), "{new}")?;
    Ok(())
}
