//! What an operator does with a store and with the service that runs: backup and restore, export
//! and import, release, reload, codes for the office's pages.

use std::{io::Write, path::Path};

use anyhow::bail;

use super::page::Page;
use crate::{
    backup,
    service::{clock::Clock, control::Control, setup::config},
};

pub(super) fn backup(path: &Path, folder: &Path, keep: Option<u16>) -> anyhow::Result<()> {
    let (config, clock) = (config(path)?, Clock::System);
    let (copy, records) = match keep {
        Some(keep) => backup::backup_and_keep(&config, folder, keep.into(), &clock)?,
        None => (folder.to_owned(), backup::backup(&config, folder, &clock)?),
    };
    writeln!(Page::open(), "{records} records in {}", copy.display())?;
    Ok(())
}

pub(super) fn try_restore(folder: &Path) -> anyhow::Result<()> {
    let records = backup::try_restore(folder)?;
    writeln!(Page::open(), "{records} records, all of them can be put in")?;
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

pub(super) fn office_code(path: &Path, name: &str, out: &mut Page) -> anyhow::Result<()> {
    let config = config(path)?;
    let Some(office) = &config.office else {
        bail!("the configuration has no [office], so there are no pages");
    };
    let Some(mut control) = Control::connect(&config.store.folder)? else {
        bail!("no service runs with this store; start it first: budwood serve CONFIG");
    };
    let code = control.office_code(name)?;
    let scheme = if office.certificate.is_some() {
        "https"
    } else {
        "http"
    };
    let own = format!("{scheme}://{}", office.listen);
    let address = office.address.as_ref().map_or(own, ToString::to_string);
    writeln!(out, "{code} lets {name} in at {address} for ten minutes")?;
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
