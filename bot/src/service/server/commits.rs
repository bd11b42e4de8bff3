//! The thread that commits: whatever was stepped while it wrote shares the next write and sync.
//!
//! Steps are committed in their order, so what a later step tells never comes before what an
//! earlier one wrote, and a second delivery of a text is acknowledged only with the first. After
//! a failure it takes nothing more: all who wait are told so by their channel's end.

use std::{
    mem,
    panic::{AssertUnwindSafe, catch_unwind},
    sync::{
        Arc,
        atomic::{AtomicUsize, Ordering},
        mpsc::{Receiver, SyncSender, sync_channel},
    },
    thread::{self, JoinHandle},
};

use super::handle::{Shared, Waits};
use crate::{
    engine::{Stepped, Told},
    service::clock::Clock,
    store::{Change, Store},
    words::limits,
};
use anyhow::{Context, anyhow};

enum Work {
    Commit(Box<Stepped>, Vec<Waits>),
    /// Somebody waits until everything before is on the disk.
    Settle(SyncSender<()>),
}

/// The thread has stopped; it has said why.
#[derive(Debug)]
pub(super) struct Stopped;

/// The engine's side.
pub(super) struct Commits {
    work: SyncSender<Work>,
    /// Facts that are not in the store yet.
    facts: Arc<AtomicUsize>,
}

impl Commits {
    /// Hands over what was stepped, and who waits for it. Waits while the disk is far behind.
    pub(super) fn hand_over(&self, stepped: Stepped, waits: Vec<Waits>) -> Result<(), Stopped> {
        let facts = stepped.change.events.len();
        let facts = self.facts.fetch_add(facts, Ordering::SeqCst) + facts;
        self.send(Work::Commit(Box::new(stepped), waits))?;
        // The engine has only so many facts at hand, and looks up older ones in the store.
        if facts > limits::UNCOMMITTED_FACTS_MAX {
            self.settle()?;
        }
        Ok(())
    }

    /// Returns when everything that was handed over is on the disk.
    pub(super) fn settle(&self) -> Result<(), Stopped> {
        let (tell, told) = sync_channel(1);
        self.send(Work::Settle(tell))?;
        told.recv().map_err(|_| Stopped)
    }

    fn send(&self, work: Work) -> Result<(), Stopped> {
        self.work.send(work).map_err(|_| Stopped)
    }
}

/// Starts the thread.
pub(super) fn start(
    store: Arc<dyn Store>,
    shared: Arc<Shared>,
    clock: Clock,
) -> anyhow::Result<(Commits, JoinHandle<anyhow::Result<()>>)> {
    let (work, inbox) = sync_channel(limits::STEPPED_MAX);
    let facts = Arc::new(AtomicUsize::new(0));
    let commits = Commits {
        work,
        facts: facts.clone(),
    };
    let thread = thread::Builder::new()
        .name("commits".to_owned())
        .spawn(move || {
            // The store's library may panic where the disk fails; that must not go unnoticed.
            let result = catch_unwind(AssertUnwindSafe(|| {
                run(store.as_ref(), &inbox, &facts, (&shared, &clock))
            }))
            .unwrap_or_else(|_| Err(anyhow!("the store broke off")));
            if let Err(error) = &result {
                // Closing the store would write again, to a disk that has just failed.
                mem::forget(store);
                shared.break_off(error);
            }
            result
        })?;
    Ok((commits, thread))
}

fn run(
    store: &dyn Store,
    inbox: &Receiver<Work>,
    facts: &AtomicUsize,
    (shared, clock): (&Shared, &Clock),
) -> anyhow::Result<()> {
    while let Ok(first) = inbox.recv() {
        let mut group = Group::default();
        group.add(first);
        while group.steps < limits::BATCH_MAX
            && let Ok(next) = inbox.try_recv()
        {
            group.add(next);
        }
        if !group.change.is_empty() {
            let begin = clock.steady();
            shared.commits.turn();
            store.commit(&group.change).context("cannot commit")?;
            shared.commits.turn();
            let took = clock.steady().saturating_sub(begin);
            shared.commit_pace.note(took);
        }
        facts.fetch_sub(group.change.events.len(), Ordering::SeqCst);
        group.tell();
    }
    Ok(())
}

/// What shares one write.
#[derive(Default)]
struct Group {
    steps: usize,
    change: Change,
    told: Vec<(Waits, Told)>,
    settled: Vec<SyncSender<()>>,
}

impl Group {
    fn add(&mut self, work: Work) {
        match work {
            Work::Commit(stepped, waits) => {
                self.steps += stepped.told.len();
                self.change.append(stepped.change);
                self.told.extend(waits.into_iter().zip(stepped.told));
            }
            Work::Settle(tell) => self.settled.push(tell),
        }
    }

    /// Whoever asked may have gone away; what they asked for is done all the same.
    fn tell(self) {
        for (waits, told) in self.told {
            let _ = waits.send(Ok(told));
        }
        for tell in self.settled {
            let _ = tell.send(());
        }
    }
}
