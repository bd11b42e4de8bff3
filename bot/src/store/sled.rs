//! The store on disk: one sled tree with key prefixes, so that one batch is atomic.
//!
//! Decision (2026-11): `flush()` of sled 0.34.7 ends in `sync_file_range`, which does not survive
//! a power cut. Every commit is therefore `apply_batch`, blocking `flush()`, then `sync_data()` on
//! a handle of our own on sled's `db` file; only then is anything acknowledged. The background
//! flusher is off. `flush_async` deadlocks and is forbidden by a lint. The price is one more sync
//! per commit, which grouping pays back.
//!
//! What else sled needs from outside, each in a file of its own: `guard` opens what a crash left,
//! `mark` knows what must be there, `flush` wakes a flush that was forgotten.

#[cfg(test)]
mod earlier;
mod flush;
mod guard;
mod mark;

use std::{
    fs::{self, File, Permissions},
    io::{self, Write},
    ops::Bound,
    os::unix::fs::PermissionsExt,
    panic::{self, AssertUnwindSafe},
    path::{Path, PathBuf},
    sync::{Mutex, MutexGuard, PoisonError},
    thread,
};

use budwood_scheduler::{Event, EventId};
use chrono::{DateTime, TimeDelta, Utc};

use self::{
    flush::Flush,
    mark::{Mark, Tally, Told},
};
use super::{Change, Loaded, Record, Store, StoreError, keyed};
use crate::words::{limits, message::Received};

/// Our own file in the folder: the store was made whole, and in which version of its layout.
const MADE: &str = "budwood";

/// The same inside the tree.
const MARK: &[u8] = b"m/made";

/// The records that are numbered as they come and never taken out, as [`Told`] has them.
const NUMBERED: [&[u8]; 3] = [keyed::EVENTS, keyed::RECEIVED, keyed::OUTBOUND];

/// The version of the layout of keys.
const VERSION: &str = "1\n";

/// A store in a folder.
#[derive(Debug)]
pub struct SledStore {
    folder: PathBuf,
    // Before the tree, so that it lets go of it first.
    flush: Flush,
    tree: sled::Db,
    /// sled's own file, to be synced after each flush.
    file: File,
    mark: Mutex<Mark>,
}

impl SledStore {
    /// Opens the store in this folder, or makes a new one.
    ///
    /// # Errors
    ///
    /// When another process has it, it is damaged, or the disk cannot be written.
    pub fn open(folder: &Path, cache_bytes: u64) -> Result<Self, StoreError> {
        fs::create_dir_all(folder)
            // One that was made by hand, or by an older program, is shut too.
            .and_then(|()| fs::set_permissions(folder, Permissions::from_mode(0o700)))
            .map_err(StoreError::from)
            .and_then(|()| patiently(|| guard::open(folder, || Self::attempt(folder, cache_bytes))))
            .map_err(|error| guard::advise(error, folder))
    }

    fn attempt(folder: &Path, cache_bytes: u64) -> Result<Self, StoreError> {
        let damaged = || StoreError::Damaged(folder.display().to_string());
        let made = made_version(folder)?;
        let tree = sled::Config::new()
            .path(folder)
            .cache_capacity(cache_bytes)
            .flush_every_ms(None)
            .open()
            .map_err(|error| guard::explain(error, folder))?;
        let file = File::options()
            .read(true)
            .write(true)
            .open(folder.join("db"))?;
        let store = Self {
            folder: folder.to_owned(),
            flush: Flush::new((*tree).clone())?,
            tree,
            file,
            mark: Mutex::new(Mark::open(folder)?),
        };
        let marked = store.tree.get(MARK).map_err(|error| store.fault(error))?;
        match (made, marked.is_some()) {
            // A log that sled takes for an empty one has lost everything; going on would bury it.
            (true, false) => return Err(damaged()),
            (true, true) => store.sync()?,
            (false, _) => store.make()?,
        }
        let newest = store.newest()?;
        if !store.mark().is_reached_by(newest) {
            return Err(damaged());
        }
        store.touch()?;
        Ok(store)
    }

    /// Reads the rows that a start takes into memory. Where they cannot be read the store is
    /// refused now, while what opening has changed can be put back.
    fn touch(&self) -> Result<(), StoreError> {
        for prefix in keyed::KEPT_IN_MEMORY {
            self.under(prefix).try_for_each(|row| row.map(drop))?;
        }
        keyed::recent_outbound(self.under(keyed::OUTBOUND), limits::RECENT_MESSAGES)?;
        let Some(last) = keyed::newest_received(self.under(keyed::RECEIVED))? else {
            return Ok(());
        };
        let since = last.at - TimeDelta::days(limits::HEARD_DAYS);
        keyed::received_since(self.under(keyed::RECEIVED), since, &mut |_| ())
    }

    /// The newest ids that are there.
    fn newest(&self) -> Result<[u64; 3], StoreError> {
        let mut newest = [0; 3];
        for (newest, prefix) in newest.iter_mut().zip(NUMBERED) {
            let row = self.under(prefix).next_back().transpose()?;
            *newest = row.map_or(0, |(key, _)| keyed::number(&key));
        }
        Ok(newest)
    }

    /// How many there are with ids up to these.
    fn numbers(&self, told: Told) -> Result<[u64; 3], StoreError> {
        let mut numbers = [0; 3];
        for ((number, prefix), Tally { newest, .. }) in numbers.iter_mut().zip(NUMBERED).zip(told.0)
        {
            for row in self.under(prefix) {
                let (key, _) = row?;
                *number += u64::from(keyed::number(&key) <= newest);
            }
        }
        Ok(numbers)
    }

    /// Whether a store was made in this folder.
    #[must_use]
    pub fn exists(folder: &Path) -> bool {
        folder.join(MADE).is_file()
    }

    /// Finishes a new store. It is only there for good when its files and folders are on the
    /// disk; the file [`MADE`] comes last and says so.
    fn make(&self) -> Result<(), StoreError> {
        let folder = self.folder.as_path();
        self.tree
            .insert(MARK, VERSION.as_bytes())
            .map_err(|error| self.fault(error))?;
        self.sync()?;
        for name in ["conf", "db"] {
            File::open(folder.join(name))?.sync_all()?;
        }
        File::open(folder)?.sync_all()?;
        let mut made = File::create(folder.join(MADE))?;
        made.write_all(VERSION.as_bytes())?;
        made.sync_all()?;
        File::open(folder)?.sync_all()?;
        let parent: PathBuf = match folder.parent() {
            Some(parent) if !parent.as_os_str().is_empty() => parent.to_owned(),
            _ => ".".into(),
        };
        File::open(parent)?.sync_all()?;
        Ok(())
    }

    fn sync(&self) -> Result<(), StoreError> {
        self.flush.run().map_err(|error| self.fault(error))?;
        self.file.sync_data()?;
        Ok(())
    }

    fn under<'a>(&'a self, prefix: &[u8]) -> impl DoubleEndedIterator<Item = keyed::Row> + use<'a> {
        self.tree.scan_prefix(prefix).map(|row| {
            row.map(|(key, value)| (key.to_vec(), value.to_vec()))
                .map_err(|error| self.fault(error))
        })
    }

    fn after<'a>(&'a self, key: Option<&[u8]>) -> impl Iterator<Item = keyed::Row> + use<'a> {
        let from = key.map_or(Bound::Unbounded, |key| Bound::Excluded(key.to_vec()));
        self.tree.range((from, Bound::Unbounded)).map(|row| {
            row.map(|(key, value)| (key.to_vec(), value.to_vec()))
                .map_err(|error| self.fault(error))
        })
    }

    fn mark(&self) -> MutexGuard<'_, Mark> {
        // A thread that broke off in the middle of a mark has left the old one or the new one.
        self.mark.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn fault(&self, error: sled::Error) -> StoreError {
        guard::explain(error, &self.folder)
    }
}

/// The engine lets go of its files a moment after it was closed, and so does a process that was
/// told to stop.
fn patiently<T>(open: impl Fn() -> Result<T, StoreError>) -> Result<T, StoreError> {
    let mut left = limits::STORE_LOCK_TRIES;
    loop {
        match open() {
            Err(StoreError::InUse(_)) if left > 0 => left -= 1,
            other => return other,
        }
        thread::sleep(limits::STORE_LOCK_PAUSE);
    }
}

/// Whether the store was made, by a version that this program knows.
fn made_version(folder: &Path) -> Result<bool, StoreError> {
    match fs::read_to_string(folder.join(MADE)) {
        Ok(version) if version.is_empty() => Ok(false),
        Ok(version) if version == VERSION => Ok(true),
        Ok(version) => Err(StoreError::Newer {
            version: version.trim().to_owned(),
        }),
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(false),
        Err(error) => Err(error.into()),
    }
}

impl Store for SledStore {
    fn commit(&self, change: &Change) -> Result<(), StoreError> {
        let mut batch = sled::Batch::default();
        for (key, value) in keyed::rows(change)? {
            match value {
                Some(value) => batch.insert(key, value),
                None => batch.remove(key),
            }
        }
        self.tree
            .apply_batch(batch)
            .map_err(|error| self.fault(error))?;
        self.sync()?;
        self.mark().advance(change)?;
        Ok(())
    }

    fn load(&self, messages: usize) -> Result<Loaded, StoreError> {
        keyed::load(|prefix| Box::new(self.under(prefix)), messages)
    }

    fn event(&self, id: EventId) -> Result<Option<Event>, StoreError> {
        let key = keyed::event_key(id);
        self.tree
            .get(&key)
            .map_err(|error| self.fault(error))?
            .map(|value| keyed::event(&key, &value))
            .transpose()
    }

    fn each_event(&self, visit: &mut dyn FnMut(Event)) -> Result<(), StoreError> {
        keyed::each_event(self.under(keyed::EVENTS), visit)
    }

    fn each_received(&self, visit: &mut dyn FnMut(Received)) -> Result<(), StoreError> {
        keyed::each_received(self.under(keyed::RECEIVED), visit)
    }

    fn received_since(
        &self,
        since: DateTime<Utc>,
        visit: &mut dyn FnMut(Received),
    ) -> Result<(), StoreError> {
        keyed::received_since(self.under(keyed::RECEIVED), since, visit)
    }

    fn records(&self, after: Option<&[u8]>, at_most: usize) -> Result<Vec<Record>, StoreError> {
        keyed::records(self.after(after), at_most)
    }

    fn record(&self, key: &[u8]) -> Result<Option<Record>, StoreError> {
        let line = self.tree.get(key).map_err(|error| self.fault(error))?;
        Ok(line.map(|line| Record {
            key: key.to_vec(),
            line: line.to_vec(),
        }))
    }

    fn verify(&self) -> Result<(), StoreError> {
        let told = self.mark().told();
        // In some damaged logs sled finds what it reads impossible, and panics.
        let found = panic::catch_unwind(AssertUnwindSafe(|| self.numbers(told)));
        let damaged = || StoreError::Damaged(self.folder.display().to_string());
        let found = found.unwrap_or_else(|_| Err(damaged()))?;
        let is_whole = found
            .iter()
            .zip(told.0)
            .all(|(found, told)| *found >= told.number);
        is_whole.then_some(()).ok_or_else(damaged)
    }
}
