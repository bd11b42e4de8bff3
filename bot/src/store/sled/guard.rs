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
//! everything stands as it stood: opening a damaged log, sled cuts it off and a snapshot with it,
//! which `mark` sees only afterwards. So what an opening may write over is copied first (`log`).
//! Deliberately absent: values so large that sled puts them into files of their own; no record is.

mod before;
mod log;

use std::{
    fs::{self, File, TryLockError},
    io,
    panic::{self, AssertUnwindSafe},
    path::{Path, PathBuf},
};

use self::before::Before;
use super::StoreError;
use crate::words::limits;

/// The folder inside the store for what was set aside.
const ASIDE: &str = "set-aside";

/// How sled calls its snapshots.
const SNAPSHOT: &str = "snap.";

/// Opens with `attempt`, which says [`StoreError::Damaged`] also for a store that opens but is not
/// whole; sets helper files aside and tries again where that can help.
pub(super) fn open<T>(
    folder: &Path,
    attempt: impl Fn() -> Result<T, StoreError>,
) -> Result<T, StoreError> {
    open_keeping(folder, limits::LOG_COPIED_WHOLE_BYTES, attempt)
}

/// The same; a log up to so many bytes is copied whole.
fn open_keeping<T>(
    folder: &Path,
    whole: u64,
    attempt: impl Fn() -> Result<T, StoreError>,
) -> Result<T, StoreError> {
    if is_in_use(folder)? {
        return Err(StoreError::InUse(folder.display().to_string()));
    }
    drop_unfinished_snapshots(folder)?;
    let attempt = || unbroken(folder, &attempt);
    // On a full disk a store must open all the same.
    let before = Before::keep(folder, whole).ok();
    let damaged = match attempt() {
        Err(error @ StoreError::Damaged(_)) => error,
        // Another process has opened it meanwhile: it is that one's now.
        other @ (Ok(_) | Err(StoreError::InUse(_))) => {
            before.iter().try_for_each(Before::forget)?;
            return other;
        }
        Err(error) => {
            before.map_or(Ok(()), Before::put_back)?;
            return Err(error);
        }
    };
    let mut before = before.map_or_else(|| Before::keep(folder, whole), Ok)?;
    let mut aside = Vec::new();
    let result = before
        .keep_rest()
        .map_err(StoreError::from)
        .and_then(|()| without_helpers(folder, &mut aside, attempt, damaged));
    if result.is_ok() {
        before.forget()?;
    } else {
        before.put_back()?;
        aside.iter().try_for_each(fs::remove_file)?;
    }
    result
}

/// In some damaged logs sled finds what it holds impossible, and panics.
fn unbroken<T>(
    folder: &Path,
    attempt: impl Fn() -> Result<T, StoreError>,
) -> Result<T, StoreError> {
    // Whatever it had in memory is gone with it.
    panic::catch_unwind(AssertUnwindSafe(attempt))
        .unwrap_or_else(|_| Err(StoreError::Damaged(folder.display().to_string())))
}

/// Whether another process has the store: then an unfinished snapshot is a living one.
fn is_in_use(folder: &Path) -> io::Result<bool> {
    match File::open(folder.join(log::LOG)) {
        Ok(log) => match log.try_lock() {
            Ok(()) => Ok(false),
            Err(TryLockError::WouldBlock) => Ok(true),
            Err(TryLockError::Error(error)) => Err(error),
        },
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(false),
        Err(error) => Err(error),
    }
}

/// First without the snapshots, then without `conf` too.
fn without_helpers<T>(
    folder: &Path,
    moved: &mut Vec<PathBuf>,
    attempt: impl Fn() -> Result<T, StoreError>,
    mut damaged: StoreError,
) -> Result<T, StoreError> {
    let helpers: [fn(&str) -> bool; 2] = [|name| name.starts_with(SNAPSHOT), |name| name == "conf"];
    for helper in helpers {
        let aside = set_aside(folder, helper)?;
        let is_other = !aside.is_empty();
        moved.extend(aside);
        if is_other {
            damaged = match attempt() {
                Err(error @ StoreError::Damaged(_)) => error,
                other => return other,
            };
        }
    }
    Err(damaged)
}

fn drop_unfinished_snapshots(folder: &Path) -> io::Result<()> {
    let unfinished = |name: &str| name.starts_with(SNAPSHOT) && name.ends_with(".generating");
    for path in files(folder)? {
        if name(&path).is_some_and(unfinished) {
            fs::remove_file(path)?;
        }
    }
    Ok(())
}

/// Where the chosen files went.
fn set_aside(folder: &Path, chosen: impl Fn(&str) -> bool) -> io::Result<Vec<PathBuf>> {
    let mut moved = Vec::new();
    for from in files(folder)? {
        let Some(name) = name(&from).filter(|name| chosen(name)) else {
            continue;
        };
        let to = free_name(&folder.join(ASIDE), name)?;
        fs::rename(&from, &to)?;
        moved.push(to);
    }
    Ok(moved)
}

/// A name that is not taken: what was set aside earlier is kept too.
fn free_name(aside: &Path, name: &str) -> io::Result<PathBuf> {
    fs::create_dir_all(aside)?;
    let mut names = (0_u32..).map(|number| aside.join(format!("{number}.{name}")));
    let free = names.find(|path| !path.exists());
    free.ok_or_else(|| io::Error::other("every name is taken"))
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
        | StoreError::HalfFilled
        | StoreError::FactGone(_)
        | StoreError::Full(_)
        | StoreError::NotWritable { .. }
        | StoreError::Newer { .. }
        | StoreError::Record { .. } => None,
    }
}

#[cfg(test)]
mod tests;
