//! A disk that can fail once, remembers what was written to it, and outlives its engine: in memory,
//! or the real store in a folder.

use std::{
    fs, io,
    path::{Path, PathBuf},
    sync::{Arc, Mutex, PoisonError},
};

use budwood::{
    backup,
    service::clock::{Clock, FixedClock},
    store::{Change, Hold, Loaded, MemoryStore, Record, SledStore, Store, StoreError, read_line},
    words::message::Received,
};
use budwood_scheduler::{Event, EventId};
use chrono::{DateTime, Utc};
use tempfile::TempDir;

use crate::fixture;

/// The store of a small service.
const CACHE_BYTES: u64 = 16 * 1024 * 1024;

/// A store that outlives its engine.
#[derive(Clone)]
pub(super) struct Disk(Arc<Mutex<Inner>>);

struct Inner {
    /// None while it is opened again.
    store: Option<Box<dyn Store>>,
    folders: Option<Folders>,
    written: Vec<Change>,
    fails: bool,
}

/// A folder for each life of the store.
struct Folders {
    all: TempDir,
    lives: u32,
}

impl Folders {
    fn path(&self, name: &str) -> PathBuf {
        self.all.path().join(format!("{name}{}", self.lives))
    }
}

impl Disk {
    pub(super) fn in_memory() -> Self {
        Self::over(Box::new(MemoryStore::new()), None)
    }

    /// The real store, in a folder that is removed at the end.
    pub(super) fn in_folder() -> Self {
        let all = tempfile::tempdir().expect("room for a folder");
        let folders = Folders { all, lives: 0 };
        let store = open(&folders.path("store"));
        Self::over(store, Some(folders))
    }

    fn over(store: Box<dyn Store>, folders: Option<Folders>) -> Self {
        Self(Arc::new(Mutex::new(Inner {
            store: Some(store),
            folders,
            written: Vec::new(),
            fails: false,
        })))
    }

    /// The next write fails and leaves nothing, as when the power goes.
    pub(super) fn fail_once(&self) {
        self.with(|inner| inner.fails = true);
    }

    /// What was written since the last call. A failure that did not happen is called off.
    pub(super) fn take_written(&self) -> Vec<Change> {
        self.with(|inner| {
            inner.fails = false;
            std::mem::take(&mut inner.written)
        })
    }

    /// What a new process finds: files that are opened anew.
    pub(super) fn open_again(&self) {
        self.with(|inner| {
            if let Some(folders) = &inner.folders {
                inner.store = None;
                inner.store = Some(open(&folders.path("store")));
            }
        });
    }

    /// The disk is lost; a new one is filled with what was copied.
    pub(super) fn restore(&self, lines: &[Vec<u8>], now: DateTime<Utc>) {
        self.with(|inner| {
            inner.store = None;
            inner.store = Some(match &mut inner.folders {
                None => filled(lines, now),
                Some(folders) => {
                    fs::remove_dir_all(folders.path("store")).expect("the folder was ours");
                    folders.lives += 1;
                    let log = folders.path("log");
                    fs::write(&log, log_of(lines)).expect("room for a log");
                    let config = fixture::config(&folders.path("store"));
                    let clock = Clock::Fixed(FixedClock::at(now));
                    backup::import(&config, &log, &clock).expect("a whole log");
                    fs::remove_file(log).expect("the log was ours");
                    open(&folders.path("store"))
                }
            });
        });
    }

    fn with<T>(&self, work: impl FnOnce(&mut Inner) -> T) -> T {
        work(&mut self.0.lock().unwrap_or_else(PoisonError::into_inner))
    }

    fn store<T>(&self, work: impl FnOnce(&dyn Store) -> T) -> T {
        self.with(|inner| work(inner.store.as_deref().expect("an open store")))
    }
}

fn open(folder: &Path) -> Box<dyn Store> {
    Box::new(SledStore::open(folder, CACHE_BYTES).expect("what was written can be opened"))
}

/// A store in memory, filled as a restore fills one.
fn filled(lines: &[Vec<u8>], now: DateTime<Utc>) -> Box<dyn Store> {
    let store = MemoryStore::new();
    let mut all = Change::default();
    for line in lines {
        read_line(line, &mut all).expect("a line of a copy");
    }
    all.hold = Some(Hold::Held { since: now });
    store.commit(&all).expect("memory does not fail");
    Box::new(store)
}

/// The copied lines as an exported log, with the last line that bot/src/store/README.md describes.
fn log_of(lines: &[Vec<u8>]) -> Vec<u8> {
    let mut log: Vec<u8> = Vec::new();
    for line in lines {
        log.extend_from_slice(line);
        log.push(b'\n');
    }
    let sum: String = hmac_sha256::Hash::hash(&log)
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect();
    let records = lines.len();
    let end = format!(r#"{{"v":1,"kind":"end","body":{{"records":{records},"sha256":"{sum}"}}}}"#);
    log.extend_from_slice(end.as_bytes());
    log.push(b'\n');
    log
}

impl Store for Disk {
    fn commit(&self, change: &Change) -> Result<(), StoreError> {
        self.with(|inner| {
            if std::mem::take(&mut inner.fails) {
                return Err(StoreError::Disk(io::Error::other("the power is gone")));
            }
            inner.written.push(change.clone());
            let store = inner.store.as_deref().expect("an open store");
            store.commit(change)
        })
    }

    fn load(&self, messages: usize) -> Result<Loaded, StoreError> {
        self.store(|store| store.load(messages))
    }

    fn event(&self, id: EventId) -> Result<Option<Event>, StoreError> {
        self.store(|store| store.event(id))
    }

    fn each_event(&self, visit: &mut dyn FnMut(Event)) -> Result<(), StoreError> {
        self.store(|store| store.each_event(visit))
    }

    fn each_received(&self, visit: &mut dyn FnMut(Received)) -> Result<(), StoreError> {
        self.store(|store| store.each_received(visit))
    }

    fn received_since(
        &self,
        since: DateTime<Utc>,
        visit: &mut dyn FnMut(Received),
    ) -> Result<(), StoreError> {
        self.store(|store| store.received_since(since, visit))
    }

    fn records(&self, after: Option<&[u8]>, at_most: usize) -> Result<Vec<Record>, StoreError> {
        self.store(|store| store.records(after, at_most))
    }

    fn record(&self, key: &[u8]) -> Result<Option<Record>, StoreError> {
        self.store(|store| store.record(key))
    }
}
