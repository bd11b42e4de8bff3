//! Flushes sled, and wakes a flush that sled has forgotten.
//!
//! When a write fails while a flush waits for it, sled 0.34.7 keeps the error but does not always
//! wake the one who waits (`exit_reservation` in its log sets the error without the notice that
//! `maybe_seal_and_write_iobuf` gives). Another flush finds the error and wakes all. So a thread
//! looks whether a flush takes unusually long, and then starts another one. On a disk that is
//! only slow this does nothing: both flushes end when the disk is done.

use std::{
    io,
    sync::{
        Arc,
        atomic::{AtomicBool, AtomicU64, Ordering},
    },
    thread::{self, JoinHandle},
    time::Duration,
};

/// A flush that is still the same one after this long is looked after.
const LOOK: Duration = Duration::from_millis(250);

/// Flushes, with somebody who looks after them.
#[derive(Debug)]
pub(super) struct Flush {
    tree: sled::Tree,
    seen: Arc<Seen>,
    watcher: Option<JoinHandle<()>>,
}

#[derive(Debug, Default)]
struct Seen {
    /// Flushes begun and ended: odd while one is under way.
    turns: AtomicU64,
    closed: AtomicBool,
}

impl Flush {
    /// Flushes of this tree.
    pub(super) fn new(tree: sled::Tree) -> io::Result<Self> {
        let seen = Arc::new(Seen::default());
        let (watched, watches) = (tree.clone(), seen.clone());
        let watcher = thread::Builder::new()
            .name("flush-watcher".to_owned())
            .spawn(move || watch(&watched, &watches))?;
        Ok(Self {
            tree,
            seen,
            watcher: Some(watcher),
        })
    }

    /// Writes everything out, and waits for it.
    pub(super) fn run(&self) -> Result<(), sled::Error> {
        self.seen.turns.fetch_add(1, Ordering::SeqCst);
        let result = self.tree.flush();
        self.seen.turns.fetch_add(1, Ordering::SeqCst);
        result.map(|_| ())
    }
}

impl Drop for Flush {
    fn drop(&mut self) {
        self.seen.closed.store(true, Ordering::SeqCst);
        if let Some(watcher) = self.watcher.take() {
            watcher.thread().unpark();
            // It has its own hold on the tree, which must be gone before the store is closed.
            let _ = watcher.join();
        }
    }
}

fn watch(tree: &sled::Tree, seen: &Seen) {
    let (mut last, mut looks, mut next) = (0, 0_u32, 1);
    while !seen.closed.load(Ordering::SeqCst) {
        thread::park_timeout(LOOK);
        let turn = seen.turns.load(Ordering::SeqCst);
        if turn != last || turn.is_multiple_of(2) {
            (last, looks, next) = (turn, 0, 1);
            continue;
        }
        looks += 1;
        // Each may get stuck in its turn, so each has a thread of its own, ever more rarely.
        if looks == next {
            next *= 2;
            let tree = tree.clone();
            // The one who waits gets the error; here it is of no use.
            thread::spawn(move || drop(tree.flush()));
        }
    }
}
