//! The store on disk: one sled tree with key prefixes, so that one batch is atomic.
//!
//! Decision (2026-11): `flush()` of sled 0.34.7 ends in `sync_file_range`, which does not survive
//! a power cut. Every commit is therefore `apply_batch`, blocking `flush()`, then `sync_data()` on
//! a handle of our own on sled's `db` file; only then is anything acknowledged. The background
//! flusher is off. `flush_async` deadlocks and is forbidden by a lint. The price is one more sync
//! per commit, which grouping pays back.

mod guard;

use std::{
    fs::{self, File},
    io,
    path::{Path, PathBuf},
};

use budwood_scheduler::{Event, EventId};

use super::{Change, Loaded, Store, StoreError, keyed};
use crate::message::Received;

/// A store in a folder.
#[derive(Debug)]
pub struct SledStore {
    tree: sled::Db,
    /// sled's own file, to be synced after each flush.
    file: File,
}

impl SledStore {
    /// Opens the store in this folder, or makes a new one.
    ///
    /// # Errors
    ///
    /// When another process has it, or the disk cannot be written.
    pub fn open(folder: &Path, cache_bytes: u64) -> Result<Self, StoreError> {
        let fresh = !folder.join("db").exists();
        fs::create_dir_all(folder)?;
        let config = sled::Config::new()
            .path(folder)
            .cache_capacity(cache_bytes)
            .flush_every_ms(None);
        let tree =
            guard::open(folder, || config.open()).map_err(|error| guard::explain(error, folder))?;
        let file = File::options()
            .read(true)
            .write(true)
            .open(folder.join("db"))?;
        let store = Self { tree, file };
        store.sync()?;
        if fresh {
            sync_first(folder)?;
        }
        Ok(store)
    }

    fn sync(&self) -> Result<(), StoreError> {
        self.tree.flush().map_err(engine)?;
        self.file.sync_data()?;
        Ok(())
    }

    fn under(&self, prefix: &[u8]) -> impl DoubleEndedIterator<Item = keyed::Row> + use<> {
        self.tree.scan_prefix(prefix).map(|row| {
            row.map(|(key, value)| (key.to_vec(), value.to_vec()))
                .map_err(engine)
        })
    }
}

fn engine(error: sled::Error) -> StoreError {
    StoreError::Engine(Box::new(error))
}

/// A new store is only there for good when its files and folders are on the disk.
fn sync_first(folder: &Path) -> io::Result<()> {
    for name in ["conf", "db"] {
        File::open(folder.join(name))?.sync_all()?;
    }
    File::open(folder)?.sync_all()?;
    let parent: PathBuf = folder
        .parent()
        .map_or_else(|| ".".into(), Path::to_path_buf);
    let parent = if parent.as_os_str().is_empty() {
        ".".into()
    } else {
        parent
    };
    File::open(parent)?.sync_all()
}

impl Store for SledStore {
    fn commit(&mut self, change: &Change) -> Result<(), StoreError> {
        let mut batch = sled::Batch::default();
        for (key, value) in keyed::rows(change)? {
            match value {
                Some(value) => batch.insert(key, value),
                None => batch.remove(key),
            }
        }
        self.tree.apply_batch(batch).map_err(engine)?;
        self.sync()
    }

    fn load(&self, messages: usize) -> Result<Loaded, StoreError> {
        keyed::load(|prefix| Box::new(self.under(prefix)), messages)
    }

    fn event(&self, id: EventId) -> Result<Option<Event>, StoreError> {
        let key = keyed::event_key(id);
        self.tree
            .get(&key)
            .map_err(engine)?
            .map(|value| keyed::event(&key, &value))
            .transpose()
    }

    fn each_event(&self, visit: &mut dyn FnMut(Event)) -> Result<(), StoreError> {
        keyed::each_event(self.under(keyed::EVENTS), visit)
    }

    fn each_received(&self, visit: &mut dyn FnMut(Received)) -> Result<(), StoreError> {
        keyed::each_received(self.under(keyed::RECEIVED), visit)
    }
}
