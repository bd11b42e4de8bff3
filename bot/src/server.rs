//! The service: the engine on a thread of its own, HTTP in, the outbox out.
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
mod outbox;
mod refuse;
mod room;
mod stall;
mod time;
mod whole;

use std::{
    io, mem,
    net::TcpListener,
    panic::{AssertUnwindSafe, catch_unwind},
    path::Path,
    sync::{
        Arc, Mutex, PoisonError,
        atomic::{AtomicBool, AtomicUsize, Ordering},
        mpsc::{Receiver, RecvTimeoutError, SyncSender, TrySendError, sync_channel},
    },
    thread::{self, JoinHandle},
    time::Duration,
};

use anyhow::{Context, anyhow, bail};
use chrono::{DateTime, Utc};
use tokio::{
    signal::unix::{SignalKind, signal},
    sync::{oneshot, watch},
};
use tracing::{error, info, warn};

use self::{
    commits::{Commits, Waits},
    stall::{Turns, Watch},
};
pub use self::{room::Room, time::WatchedTime};
use crate::{
    clock::Clock,
    config::Config,
    control,
    engine::{Engine, Input, Told},
    gateway::{Health, Inbound, Intake, IntakeFuture, Receipt, Refused, http::HttpGateway},
    limits, setup,
    store::SledStore,
    web::{self, WebSettings},
};

/// The loop looks at the clock at least this often, so that a clock put right is noticed.
const LOOK_AT_CLOCK: Duration = Duration::from_secs(30);

/// An input, and who waits for it.
struct Job {
    input: Input,
    told: Waits,
}

/// The way into the engine's thread.
#[derive(Clone)]
pub struct Handle {
    jobs: SyncSender<Job>,
    shared: Arc<Shared>,
}

#[derive(Default)]
struct Shared {
    /// Why no new work is taken.
    trouble: Mutex<Option<String>>,
    /// Why some texts do not leave, though new work is taken.
    held: Mutex<Option<String>>,
    gap: whole::Gap,
    /// The engine has stopped for good.
    broken: AtomicBool,
    /// The engine's thread does not come back, so nobody may wait for it.
    stuck: AtomicBool,
    steps: Turns,
    commits: Turns,
    inbox_waiting: AtomicUsize,
    outbox_waiting: AtomicUsize,
}

impl Shared {
    fn trouble(&self) -> Option<String> {
        self.trouble
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .clone()
    }

    fn set_trouble(&self, what: Option<String>) {
        *self.trouble.lock().unwrap_or_else(PoisonError::into_inner) = what;
    }

    /// The end, for this reason.
    fn break_off(&self, error: &anyhow::Error) {
        self.set_trouble(Some("the store failed; the service stops".to_owned()));
        self.broken.store(true, Ordering::SeqCst);
        error!(
            error = format!("{error:#}"),
            "the store failed; the service stops"
        );
    }

    fn held(&self) -> Option<String> {
        self.held
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .clone()
    }

    /// Logs a change once.
    fn set_held(&self, why: Option<String>) {
        let mut held = self.held.lock().unwrap_or_else(PoisonError::into_inner);
        if *held != why {
            match &why {
                Some(why) => warn!(why, "texts are held"),
                None => info!("texts may leave"),
            }
            *held = why;
        }
    }
}

impl Handle {
    /// Hands an input to the engine. What comes back comes after the commit.
    ///
    /// # Errors
    ///
    /// When the queue is full or the engine has stopped.
    pub fn submit(
        &self,
        input: Input,
    ) -> impl Future<Output = Result<Told, Refused>> + Send + use<> {
        let (told, wait) = oneshot::channel();
        // Counted before it is there: the engine's thread may take it out at once.
        self.shared.inbox_waiting.fetch_add(1, Ordering::Relaxed);
        let sent = self.jobs.try_send(Job { input, told });
        if sent.is_err() {
            self.shared.inbox_waiting.fetch_sub(1, Ordering::Relaxed);
        }
        async move {
            match sent {
                Ok(()) => wait.await.unwrap_or(Err(Refused::Unhealthy)),
                Err(TrySendError::Full(_)) => Err(Refused::Busy),
                Err(TrySendError::Disconnected(_)) => Err(Refused::Unhealthy),
            }
        }
    }

    fn taken(&self, input: Input) -> IntakeFuture {
        let told = self.submit(input);
        Box::pin(async move { told.await.map(|_| ()) })
    }
}

impl Intake for Handle {
    fn text(&self, inbound: Inbound) -> IntakeFuture {
        self.taken(Input::Text(inbound))
    }

    fn receipt(&self, receipt: Receipt) -> IntakeFuture {
        self.taken(Input::Receipt(receipt))
    }

    fn health(&self) -> Health {
        Health {
            trouble: (self.shared.trouble())
                .or_else(|| self.shared.gap.why())
                .or_else(|| self.shared.held()),
            inbox_waiting: self.shared.inbox_waiting.load(Ordering::Relaxed),
            outbox_waiting: self.shared.outbox_waiting.load(Ordering::Relaxed),
        }
    }
}

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
    let shared = Arc::new(Shared::default());
    let mut time = WatchedTime::new(clock.clone());
    time.look(&mut engine);
    publish(&engine, &time, &shared, &tell_next_try);
    let handle = Handle {
        jobs,
        shared: shared.clone(),
    };
    whole::look(engine.shared_store(), shared.clone())?;
    let (commits, committing) = commits::start(engine.shared_store(), shared.clone())?;
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
    } = seats;
    loop {
        let now = time.look(engine);
        let wait = if room.is_short() {
            room::LOOK
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
        if room.is_short() {
            batch = refuse::refuse_new_work(batch);
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
        shared.steps.turn();
        let stepped = engine.step(inputs, now);
        shared.steps.turn();
        publish(engine, time, shared, next_try);
        // The thread that commits has said why it stopped.
        if commits.hand_over(stepped, waiting).is_err() {
            return Ok(());
        }
    }
}

/// Shows the others how the engine is now.
fn publish(
    engine: &Engine,
    time: &WatchedTime,
    shared: &Shared,
    next_try: &watch::Sender<Option<DateTime<Utc>>>,
) {
    shared
        .outbox_waiting
        .store(engine.waiting(), Ordering::Relaxed);
    shared.set_held(time.why_held(engine));
    // Only news wakes the senders: a text that waits for another one to its phone is none.
    next_try.send_if_modified(|known| {
        let next = time.next_try(engine);
        std::mem::replace(known, next) != next
    });
}

fn until(wake: Option<DateTime<Utc>>, now: DateTime<Utc>) -> Duration {
    wake.map_or(LOOK_AT_CLOCK, |wake| {
        (wake - now).to_std().unwrap_or(Duration::ZERO)
    })
    .min(LOOK_AT_CLOCK)
}

/// Opens the store of a configuration.
///
/// # Errors
///
/// When it is in use or cannot be read.
pub fn open_engine(config: &Config, now: DateTime<Utc>) -> anyhow::Result<Engine> {
    let cache = u64::from(config.store.cache_mb) * 1024 * 1024;
    let store = SledStore::open(&config.store.folder, cache)
        .with_context(|| format!("store {}", config.store.folder.display()))?;
    let setup = Arc::new(setup::from_config(config)?);
    Ok(Engine::open(setup, Box::new(store), now)?)
}

/// Serves until the system asks to stop, then ends what has begun.
///
/// # Errors
///
/// When the configuration, the store or the port cannot be used, or a commit failed.
pub async fn serve(config: &Path) -> anyhow::Result<()> {
    // Before the store is opened, so that whoever asks to stop meanwhile is heard.
    let stop = asked_to_stop().context("cannot wait for signals")?;
    let config = crate::cli::config(config)?;
    crate::telemetry::start(&config.log_filter)?;
    let listener = TcpListener::bind(config.web.listen)
        .with_context(|| format!("cannot listen on {}", config.web.listen))?;
    run_service(config, listener, Clock::System, stop).await
}

/// The whole service, with its listener, clock and stop signal given: tests pass their own.
///
/// # Errors
///
/// When the store cannot be used, or a commit failed.
pub async fn run_service(
    config: Config,
    listener: TcpListener,
    clock: Clock,
    stop: impl Future<Output = ()> + Send + 'static,
) -> anyhow::Result<()> {
    let engine = open_engine(&config, clock.now())?;
    // The store is ours from here on, so a control socket in its folder is ours too.
    let folder = &config.store.folder;
    let control = control::Listener::bind(folder).with_context(|| {
        format!(
            "cannot make the control socket in {} (is its path longer than 90 bytes?)",
            folder.display()
        )
    })?;
    let running = start(engine, clock.clone(), Room::new(&config.store))?;
    info!(address = %listener.local_addr()?, "serving");
    let settings = WebSettings {
        gateway: "http".to_owned(),
        auth: config.inbound.clone(),
        workers: config.web.workers,
        clock: clock.clone(),
    };
    let (stop_outbox, outbox_stops) = watch::channel(false);
    let control = tokio::spawn(control.serve(running.handle.clone(), outbox_stops.clone()));
    let senders = match &config.outbound {
        Some(outbound) => {
            let gateway = HttpGateway::new(outbound.http.clone(), clock.clone())?;
            outbox::start(
                Arc::new(gateway),
                &running,
                outbound.parallel,
                &clock,
                &outbox_stops,
            )
        }
        None => Vec::new(),
    };
    let intake: Arc<dyn Intake> = Arc::new(running.handle.clone());
    let shared = running.handle.shared.clone();
    let watched = shared.clone();
    let stop = async move {
        tokio::select! {
            () = stop => {}
            () = broken(&shared) => {}
        }
    };
    web::serve(listener, intake, settings, stop).await?;
    if watched.stuck.load(Ordering::SeqCst) {
        bail!("the store did not answer for a minute");
    }
    stop_outbox.send_replace(true);
    for sender in senders {
        sender.await?;
    }
    control.await?;
    running.finish()?;
    info!("stopped; everything taken in is stored");
    Ok(())
}

/// Ends when the engine has stopped by itself, or stands still.
async fn broken(shared: &Shared) {
    /// A service that cannot store is stopped within this time.
    const LOOK: Duration = Duration::from_millis(250);
    /// A minute. A bad memory card may take tens of seconds for one sync and be well after it.
    const STALL_LOOKS: u32 = 240;
    let (mut steps, mut commits) = (Watch::default(), Watch::default());
    while !shared.broken.load(Ordering::SeqCst) {
        tokio::time::sleep(LOOK).await;
        // Both look, so that each sees every moment.
        if steps.is_stalled(&shared.steps, STALL_LOOKS)
            | commits.is_stalled(&shared.commits, STALL_LOOKS)
        {
            shared.set_trouble(Some(
                "the store does not answer; the service stops".to_owned(),
            ));
            shared.stuck.store(true, Ordering::SeqCst);
            return;
        }
    }
}

/// Ends when the system or the terminal asks to stop, from this call on.
fn asked_to_stop() -> io::Result<impl Future<Output = ()> + Send + 'static> {
    let mut system = signal(SignalKind::terminate())?;
    let mut terminal = signal(SignalKind::interrupt())?;
    Ok(async move {
        tokio::select! {
            _ = system.recv() => {}
            _ = terminal.recv() => {}
        }
    })
}

#[cfg(test)]
mod tests;
