//! Opens a sled folder that a crash, a power cut or a full disk left half-written.
//!
//! What sled 0.34.7 does not survive by itself, each cured here and each tested:
//!
//! - A snapshot that was being written (`snap.….generating`) is read as if it were whole
//!   (spacejam/sled issues 1527, 1533, 1166). Snapshots only save time: it is removed.
//! - A snapshot that is not whole stops every open. It is set aside; sled reads its log instead.
//! - `conf` is written without a sync, so a power cut soon after the first start can leave it
//!   torn. It is set aside; sled writes it anew, as this program never changes its settings.
//!
//! Files are set aside into a folder, never deleted. If the store cannot be opened all the same,
//! they are put back.
//!
//! What is not cured: where sled's log itself is damaged, sled has cut it off there before anybody
//! could ask. `mark` sees that, and the opening is refused.

use std::{
    fs, io,
    path::{Path, PathBuf},
};

use super::StoreError;

/// The folder inside the store for what was set aside.
const ASIDE: &str = "set-aside";

/// Opens with `open`; sets broken helper files aside and tries again where that can help.
pub(super) fn open(
    folder: &Path,
    open: impl Fn() -> Result<sled::Db, sled::Error>,
) -> Result<sled::Db, sled::Error> {
    drop_unfinished(folder)?;
    let first = match open() {
        Err(error @ sled::Error::Corruption { .. }) => error,
        other => return other,
    };
    let snapshots = set_aside(folder, |name| name.starts_with("snap."))?;
    let again = if snapshots.is_empty() {
        Err(first)
    } else {
        open()
    };
    let second = match again {
        Err(error @ sled::Error::Corruption { .. }) => error,
        other => return other,
    };
    let conf = set_aside(folder, |name| name == "conf")?;
    let last = if conf.is_empty() { Err(second) } else { open() };
    if last.is_err() {
        put_back(&conf)?;
        put_back(&snapshots)?;
    }
    last
}

/// Removes snapshots that were never finished.
fn drop_unfinished(folder: &Path) -> io::Result<()> {
    for path in files(folder)? {
        if name(&path)
            .is_some_and(|name| name.starts_with("snap.") && name.ends_with(".generating"))
        {
            fs::remove_file(path)?;
        }
    }
    Ok(())
}

/// A file that was moved: from where, to where.
struct Moved {
    from: PathBuf,
    to: PathBuf,
}

fn set_aside(folder: &Path, chosen: impl Fn(&str) -> bool) -> io::Result<Vec<Moved>> {
    let mut moved = Vec::new();
    for from in files(folder)? {
        let Some(name) = name(&from).filter(|name| chosen(name)) else {
            continue;
        };
        let to = free_name(&folder.join(ASIDE), name)?;
        fs::rename(&from, &to)?;
        moved.push(Moved { from, to });
    }
    Ok(moved)
}

fn put_back(moved: &[Moved]) -> io::Result<()> {
    for Moved { from, to } in moved {
        fs::rename(to, from)?;
    }
    Ok(())
}

/// A name that is not taken: what was set aside earlier is kept too.
fn free_name(aside: &Path, name: &str) -> io::Result<PathBuf> {
    fs::create_dir_all(aside)?;
    let taken = fs::read_dir(aside)?.count();
    Ok(aside.join(format!("{taken}.{name}")))
}

fn files(folder: &Path) -> io::Result<Vec<PathBuf>> {
    if !folder.exists() {
        return Ok(Vec::new());
    }
    fs::read_dir(folder)?
        .map(|entry| Ok(entry?.path()))
        .filter(is_file)
        .collect()
}

fn is_file(path: &io::Result<PathBuf>) -> bool {
    path.as_ref().map_or(true, |path| path.is_file())
}

fn name(path: &Path) -> Option<&str> {
    path.file_name()?.to_str()
}

/// Says what to do about a store that cannot be opened.
pub(super) fn explain(error: sled::Error, folder: &Path) -> StoreError {
    let place = || folder.display().to_string();
    match &error {
        sled::Error::Io(cause) if cause.to_string().contains("could not acquire lock") => {
            StoreError::InUse(place())
        }
        sled::Error::Corruption { .. } => StoreError::Damaged(place()),
        sled::Error::Io(_)
        | sled::Error::CollectionNotFound(_)
        | sled::Error::Unsupported(_)
        | sled::Error::ReportableBug(_) => StoreError::Engine(Box::new(error)),
    }
}

/// Says what to do where the disk itself stands in the way of opening.
pub(super) fn advise(error: StoreError, folder: &Path) -> StoreError {
    let place = folder.display().to_string();
    match disk_kind(&error) {
        Some(io::ErrorKind::StorageFull) => StoreError::Full(place),
        Some(kind @ (io::ErrorKind::ReadOnlyFilesystem | io::ErrorKind::PermissionDenied)) => {
            StoreError::NotWritable {
                place,
                source: kind.into(),
            }
        }
        _ => error,
    }
}

fn disk_kind(error: &StoreError) -> Option<io::ErrorKind> {
    match error {
        StoreError::Disk(cause) => Some(cause.kind()),
        StoreError::Engine(cause) => match cause.downcast_ref() {
            Some(sled::Error::Io(cause)) => Some(cause.kind()),
            _ => None,
        },
        StoreError::InUse(_)
        | StoreError::Damaged(_)
        | StoreError::Full(_)
        | StoreError::NotWritable { .. }
        | StoreError::Newer { .. }
        | StoreError::Record { .. } => None,
    }
}

#[cfg(test)]
mod tests;
