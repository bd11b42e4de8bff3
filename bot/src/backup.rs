//! What an operator does so that nothing is lost: backup, restore, export, import, release.
//!
//! A log is every record of a store as a JSON line (`log`); a backup is a folder with a log and a
//! manifest (`folder`). Both are of one moment, and taken from the running service through its
//! control socket or from the store itself (`source`). They are written beside their place under
//! another name and moved there when they are on the disk, so a half one is never taken for a
//! whole one. A store is filled (`fill`) only when it is empty and only after the whole log was
//! read and found good; afterwards nothing is sent until a person says so. Deliberately absent:
//! when to take backups, and moving them elsewhere; the system's timers and copies do that.

mod fill;
mod folder;
mod log;
pub(crate) mod source;

use std::path::{Path, PathBuf};

use anyhow::{Context, bail};

use self::source::Source;
use crate::{
    engine::Input,
    service::{clock::Clock, config::Config, control::Control, setup},
    store::{Change, SledStore, Store, read_line},
};

/// The version of backups that is written.
pub(crate) const BACKUP_VERSION: u32 = folder::VERSION;

/// Copies everything into a new folder, while the service runs or not. Gives how many records.
///
/// # Errors
///
/// When there is no store, the folder is taken or cannot be written, or the store cannot be read.
pub fn backup(config: &Config, folder: &Path, clock: &Clock) -> anyhow::Result<u64> {
    folder::refuse_taken(folder)?;
    folder::write(folder, Source::open(config)?, clock.now())
}

/// Copies everything into a new folder in this one, named by the moment, and then removes the oldest
/// of such copies until so many are left. Gives the new folder, and how many records it has.
///
/// # Errors
///
/// As for [`backup`]; nothing is removed then.
pub fn backup_and_keep(
    config: &Config,
    folder: &Path,
    keep: usize,
    clock: &Clock,
) -> anyhow::Result<(PathBuf, u64)> {
    folder::prepare(folder)?;
    let copy = folder::named(folder, clock.now());
    let records = backup(config, &copy, clock)?;
    folder::keep_newest(folder, keep)?;
    Ok((copy, records))
}

/// Reads and checks a whole backup as a restore would. Gives how many records it has.
///
/// # Errors
///
/// When it is not whole and good.
pub fn try_restore(folder: &Path) -> anyhow::Result<u64> {
    Ok(folder::check(folder)?.summary.records)
}

/// Fills an empty store from a backup. Gives how many records.
///
/// # Errors
///
/// When the backup is not whole and good, or the store is not empty or in use. The store is then
/// as it was.
pub fn restore(config: &Config, folder: &Path, clock: &Clock) -> anyhow::Result<u64> {
    let log = folder::check(folder)?;
    fill::fill(config, &log, clock.now())
}

/// Writes every record as a line into a new file. Gives how many.
///
/// # Errors
///
/// When there is no store, the file is there or cannot be written, or the store cannot be read.
pub fn export(config: &Config, file: &Path) -> anyhow::Result<u64> {
    log::refuse_taken(file)?;
    log::write_new(file, Source::open(config)?)
}

/// Fills an empty store from an exported log. Gives how many records.
///
/// # Errors
///
/// When the log is not whole and good, or the store is not empty or in use. The store is then as
/// it was.
pub fn import(config: &Config, file: &Path, clock: &Clock) -> anyhow::Result<u64> {
    let log = log::check(file)?;
    fill::fill(config, &log, clock.now())
}

/// Lets texts leave again after a restore, or believes the clock as it stands.
///
/// # Errors
///
/// When there is no store, or the service does not answer.
pub fn release(config: &Config, clock: &Clock) -> anyhow::Result<()> {
    if let Some(mut control) = Control::connect(&config.store.folder)? {
        return Ok(control.release()?);
    }
    need_store(config)?;
    let now = clock.now();
    setup::open_engine(config, now)?.handle(vec![Input::Release], now)?;
    Ok(())
}

/// Reads every record of the store as a restore would. Gives how many there are.
///
/// # Errors
///
/// When there is no store, or a record cannot be read.
pub fn check_records(config: &Config) -> anyhow::Result<u64> {
    let mut source = Source::open(config)?;
    let mut records = 0;
    while let Some(lines) = source.next_lines()? {
        for line in lines {
            read_line(&line, &mut Change::default())
                .with_context(|| format!("cannot read record {}", records + 1))?;
            records += 1;
        }
    }
    source.verify()?;
    Ok(records)
}

/// Gives every record as it is at this moment to `take`, some at a time.
///
/// # Errors
///
/// When there is no store, it cannot be read, or they are not taken.
pub fn records_of(
    config: &Config,
    take: &mut dyn FnMut(Vec<Vec<u8>>) -> anyhow::Result<()>,
) -> anyhow::Result<()> {
    let mut source = Source::open(config)?;
    while let Some(lines) = source.next_lines()? {
        take(lines)?;
    }
    source.verify()?;
    Ok(())
}

/// A store must be there: a wrong path must not make an empty one.
fn need_store(config: &Config) -> anyhow::Result<()> {
    let folder = &config.store.folder;
    if !SledStore::exists(folder) {
        bail!(
            "there is no store in {}; check `folder` under [store] in the configuration",
            folder.display()
        );
    }
    Ok(())
}

fn open_store(config: &Config) -> anyhow::Result<Box<dyn Store>> {
    let cache = u64::from(config.store.cache_mb) * 1024 * 1024;
    let folder = &config.store.folder;
    let store =
        SledStore::open(folder, cache).with_context(|| format!("store {}", folder.display()))?;
    Ok(Box::new(store))
}
