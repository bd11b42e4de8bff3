//! The engine on a thread of its own, and who hands it work.
//!
//! The run loop, as one thread does it for ever:
//!
//! 1. Wait for an input, or until the engine wants to be woken.
//! 2. Take what else has come meanwhile, up to a batch.
//! 3. Step all of it, and hand it to the thread that commits (`commits`).
//!
//! That thread writes and syncs whatever has been stepped meanwhile, and then tells everyone who
//! waits. Nothing is told before it is on the disk.
//!
//! After a failed commit nothing more is acknowledged or written: the loop ends, health says why,
//! and the service stops so that whoever watches it starts it again. While the disk is short of
//! room nothing new is begun (`room`); that ends by itself.

mod commits;
pub(crate) mod day_log;
pub(crate) mod disk;
pub(crate) mod disk_space;
mod handle;
pub(crate) mod outbox;
mod pace;
pub(crate) mod store_check;
pub(crate) mod watchdog;
pub(crate) mod watched_time;

use std::{
    mem,
    panic::{AssertUnwindSafe, catch_unwind},
    sync::{
        Arc,
        atomic::Ordering,
        mpsc::{Receiver, RecvTimeoutError, sync_channel},
    },
    thread::{self, JoinHandle},
    time::Duration,
};

use anyhow::{Context, anyhow};
use chrono::{DateTime, Utc};
use tokio::sync::watch;

use self::{
    commits::Commits,
    handle::{Job, Shared},
};
pub use self::{
    disk_space::Room,
    handle::{EndWatch, Handle},
    watched_time::WatchedTime,
};
use crate::{
    engine::{Engine, Input, Stepped},
    service::{clock::Clock, port::MonthHealth},
    store::StoreError,
    words::limits,
};

/// The loop looks at the clock at least this often, so that a clock put right is noticed.
const LOOK_AT_CLOCK: Duration = Duration::from_secs(30);

/// The engine on its thread.
pub struct Running {
    /// The way in.
    pub handle: Handle,
    /// When the outbox has something to send next.
    pub next_try: watch::Receiver<Option<DateTime<Utc>>>,
    steps: JoinHandle<anyhow::Result<()>>,
    commits: JoinHandle<anyhow::Result<()>>,
}

impl Running {
    /// Sees how the engine ends.
    #[must_use]
    pub fn watch(&self) -> EndWatch {
        EndWatch(self.handle.shared.clone())
    }

    /// Waits until everything that was handed in is done. All other handles must be gone.
    ///
    /// # Errors
    ///
    /// When the engine stopped because of a failed commit.
    pub fn finish(self) -> anyhow::Result<()> {
        drop(self.handle);
        let of_thread = |thread: JoinHandle<anyhow::Result<()>>| {
            thread
                .join()
                .unwrap_or_else(|_| Err(anyhow!("a thread broke off")))
        };
        let stepped = of_thread(self.steps);
        of_thread(self.commits).and(stepped)
    }
}

/// Starts the engine on a thread, and the commits on another.
///
/// # Errors
///
/// When a thread cannot be made.
pub fn start(mut engine: Engine, clock: Clock, mut room: Room) -> anyhow::Result<Running> {
    let (jobs, inbox) = sync_channel(limits::QUEUE_MAX);
    let (tell_next_try, next_try) = watch::channel(None);
    let shared = Arc::new(Shared {
        folder: room.folder(),
        ..Shared::default()
    });
    let mut time = WatchedTime::new(clock.clone());
    let now = time.look(&mut engine);
    publish(&engine, &time, &shared, &tell_next_try, now);
    let handle = Handle {
        jobs,
        shared: shared.clone(),
    };
    store_check::look(engine.shared_store(), shared.clone())?;
    let (commits, committing) =
        commits::start(engine.shared_store(), shared.clone(), clock.clone())?;
    let steps = thread::Builder::new()
        .name("engine".to_owned())
        .spawn(move || {
            // The engine reads from the store, whose library may panic where the disk fails.
            let result = catch_unwind(AssertUnwindSafe(|| {
                let seats = Seats {
                    inbox: &inbox,
                    shared: &shared,
                    next_try: &tell_next_try,
                    commits: &commits,
                    clock: &clock,
                };
                run(&mut engine, &mut time, &mut room, &seats)
            }))
            .unwrap_or_else(|_| Err(anyhow!("the engine broke off")));
            if let Err(error) = &result {
                // Closing the store would write again, to a disk that has just failed.
                mem::forget(engine);
                shared.break_off(error);
            }
            result
        })?;
    Ok(Running {
        handle,
        next_try,
        steps,
        commits: committing,
    })
}

/// What the loop looks at.
struct Seats<'a> {
    inbox: &'a Receiver<Job>,
    shared: &'a Shared,
    next_try: &'a watch::Sender<Option<DateTime<Utc>>>,
    commits: &'a Commits,
    clock: &'a Clock,
}

fn run(
    engine: &mut Engine,
    time: &mut WatchedTime,
    room: &mut Room,
    seats: &Seats<'_>,
) -> anyhow::Result<()> {
    let Seats {
        inbox,
        shared,
        next_try,
        commits,
        clock,
    } = seats;
    loop {
        let now = time.look(engine);
        if engine.is_erasing() && !room.is_short() && !erase_some(engine, now, seats)? {
            return Ok(());
        }
        let wait = if room.is_short() {
            disk_space::LOOK
        } else if engine.is_erasing() {
            Duration::ZERO
        } else {
            until(engine.next_wake(), now)
        };
        let mut batch: Vec<Job> = match inbox.recv_timeout(wait) {
            Ok(job) => vec![job],
            Err(RecvTimeoutError::Timeout) => Vec::new(),
            Err(RecvTimeoutError::Disconnected) => return Ok(()),
        };
        batch.extend(inbox.try_iter().take(limits::BATCH_MAX - batch.len()));
        shared
            .inbox_waiting
            .fetch_sub(batch.len(), Ordering::Relaxed);
        if batch.iter().any(|job| matches!(job.input, Input::Release)) {
            time.believe(engine);
        }
        if room.look() {
            shared.set_trouble(room.trouble());
            room.log();
        }
        engine.see_disk(room.is_low());
        if room.is_short() {
            batch = disk_space::refuse_new_work(batch);
        }
        let now = time.look(engine);
        let (mut inputs, waiting): (Vec<Input>, Vec<_>) =
            batch.into_iter().map(|job| (job.input, job.told)).unzip();
        if !room.is_short() && engine.next_wake().is_some_and(|wake| wake <= now) {
            inputs.push(Input::Wake);
        }
        if engine.looks_at_store(&inputs) && commits.settle().is_err() {
            return Ok(());
        }
        let stepped = step_each(engine, inputs, now, (shared, clock)).context("cannot step")?;
        publish(engine, time, shared, next_try, now);
        // The thread that commits has said why it stopped.
        if commits.hand_over(stepped, waiting).is_err() {
            return Ok(());
        }
    }
}

/// Takes some more of somebody out of the records, between two batches, so that nobody waits for all
/// of it. Gives whether the thread that commits goes on.
fn erase_some(engine: &mut Engine, now: DateTime<Utc>, seats: &Seats<'_>) -> anyhow::Result<bool> {
    if seats.commits.settle().is_err() {
        return Ok(false);
    }
    seats.shared.steps.turn();
    let change = engine.erase_some(now).context("cannot read the store")?;
    seats.shared.steps.turn();
    let stepped = Stepped {
        change,
        told: Vec::new(),
    };
    let goes_on = seats.commits.hand_over(stepped, Vec::new());
    Ok(goes_on.is_ok() && seats.commits.settle().is_ok())
}

/// Steps one input after the other. The watch sees each begin and end: many of them that take
/// their time are no stall, and one that does not end is.
fn step_each(
    engine: &mut Engine,
    inputs: Vec<Input>,
    now: DateTime<Utc>,
    (shared, clock): (&Shared, &Clock),
) -> Result<Stepped, StoreError> {
    let mut all = Stepped::default();
    for input in inputs {
        let begin = clock.steady();
        shared.steps.turn();
        let stepped = engine.step(vec![input], now)?;
        shared.steps.turn();
        let took = clock.steady().saturating_sub(begin);
        shared.step_pace.note(took);
        all.change.append(stepped.change);
        all.told.extend(stepped.told);
    }
    Ok(all)
}

/// Shows the others how the engine is now.
fn publish(
    engine: &Engine,
    time: &WatchedTime,
    shared: &Shared,
    next_try: &watch::Sender<Option<DateTime<Utc>>>,
    now: DateTime<Utc>,
) {
    shared
        .outbox_waiting
        .store(engine.waiting(), Ordering::Relaxed);
    shared
        .unclear_waiting
        .store(engine.unclear(), Ordering::Relaxed);
    shared
        .clock_doubted
        .store(time.is_doubted(), Ordering::Relaxed);
    shared.set_held(time.why_held(engine));
    shared.set_guarded(engine.held_back(), engine.locked());
    shared.set_gateways(engine.gateways(now));
    shared.set_month(month(engine, now));
    // Only news wakes the senders: a text that waits for another one to its phone is none.
    next_try.send_if_modified(|known| {
        let next = time.next_try(engine);
        std::mem::replace(known, next) != next
    });
}

fn month(engine: &Engine, now: DateTime<Utc>) -> MonthHealth {
    let (ledger, gone_pct) = engine.month(now);
    let total = ledger.total();
    MonthHealth {
        parts: total.parts,
        micro: total.micro,
        gone_pct,
    }
}

fn until(wake: Option<DateTime<Utc>>, now: DateTime<Utc>) -> Duration {
    wake.map_or(LOOK_AT_CLOCK, |wake| {
        (wake - now).to_std().unwrap_or(Duration::ZERO)
    })
    .min(LOOK_AT_CLOCK)
}

#[cfg(test)]
mod tests;
