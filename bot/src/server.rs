//! The service: the engine on a thread of its own, HTTP in, the outbox out.
//!
//! The run loop, as one thread does it for ever:
//!
//! 1. Wait for an input, or until the engine wants to be woken.
//! 2. Take what else has come meanwhile, up to a batch.
//! 3. Step all of it and commit once.
//! 4. Tell everyone who waits. Nothing is told before the commit is on the disk.
//!
//! After a failed commit nothing more is acknowledged or written: the loop ends, health says why,
//! and the service stops so that whoever watches it starts it again. While the disk is short of
//! room nothing new is begun (`room`); that ends by itself.

mod outbox;
mod room;
mod stall;

use std::{
    mem,
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
use tokio::sync::{oneshot, watch};
use tracing::{error, info};

use self::{
    room::Room,
    stall::{Turns, Watch},
};
use crate::{
    clock::Clock,
    config::Config,
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
    told: oneshot::Sender<Result<Told, Refused>>,
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
    /// The engine has stopped for good.
    broken: AtomicBool,
    /// The engine's thread does not come back, so nobody may wait for it.
    stuck: AtomicBool,
    turns: Turns,
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
            trouble: self.shared.trouble(),
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
    thread: JoinHandle<anyhow::Result<()>>,
}

impl Running {
    /// Waits until everything that was handed in is done. All other handles must be gone.
    ///
    /// # Errors
    ///
    /// When the engine stopped because of a failed commit.
    pub fn finish(self) -> anyhow::Result<()> {
        drop(self.handle);
        match self.thread.join() {
            Ok(result) => result,
            Err(_) => bail!("the engine's thread broke off"),
        }
    }
}

/// Starts the engine on a thread.
///
/// # Errors
///
/// When the thread cannot be made.
pub fn start(mut engine: Engine, clock: Clock, mut room: Room) -> anyhow::Result<Running> {
    let (jobs, inbox) = sync_channel(limits::QUEUE_MAX);
    let (tell_next_try, next_try) = watch::channel(engine.next_try());
    let shared = Arc::new(Shared::default());
    let handle = Handle {
        jobs,
        shared: shared.clone(),
    };
    let thread = thread::Builder::new()
        .name("engine".to_owned())
        .spawn(move || {
            // The store's library may panic where the disk fails; that must not go unnoticed.
            let result = catch_unwind(AssertUnwindSafe(|| {
                let seats = Seats {
                    inbox: &inbox,
                    clock: &clock,
                    shared: &shared,
                };
                run(&mut engine, &mut room, &seats, &tell_next_try)
            }))
            .unwrap_or_else(|_| Err(anyhow!("the engine broke off")));
            if let Err(error) = &result {
                shared.set_trouble(Some("the store failed; the service stops".to_owned()));
                shared.broken.store(true, Ordering::SeqCst);
                error!(
                    error = format!("{error:#}"),
                    "the store failed; the service stops"
                );
                // Closing the store would write again, to a disk that has just failed.
                mem::forget(engine);
            }
            result
        })?;
    Ok(Running {
        handle,
        next_try,
        thread,
    })
}

/// What the loop looks at.
struct Seats<'a> {
    inbox: &'a Receiver<Job>,
    clock: &'a Clock,
    shared: &'a Shared,
}

fn run(
    engine: &mut Engine,
    room: &mut Room,
    seats: &Seats<'_>,
    next_try: &watch::Sender<Option<DateTime<Utc>>>,
) -> anyhow::Result<()> {
    let Seats {
        inbox,
        clock,
        shared,
    } = seats;
    let mut last_batch = 0;
    loop {
        let wait = match room.is_short() {
            true => room::LOOK,
            false => until(engine.next_wake(), clock.now()),
        };
        let mut batch: Vec<Job> = match inbox.recv_timeout(wait) {
            Ok(job) => vec![job],
            Err(RecvTimeoutError::Timeout) => Vec::new(),
            Err(RecvTimeoutError::Disconnected) => return Ok(()),
        };
        gather(inbox, &mut batch, last_batch, clock);
        last_batch = batch.len();
        shared
            .inbox_waiting
            .fetch_sub(batch.len(), Ordering::Relaxed);
        if room.look() {
            shared.set_trouble(room.trouble());
            room.log();
        }
        if room.is_short() {
            batch = refuse_new_work(batch);
        }
        let now = clock.now();
        let (mut inputs, waiting): (Vec<Input>, Vec<_>) =
            batch.into_iter().map(|job| (job.input, job.told)).unzip();
        if !room.is_short() && engine.next_wake().is_some_and(|wake| wake <= now) {
            inputs.push(Input::Wake);
        }
        if inputs.is_empty() {
            continue;
        }
        shared.turns.turn();
        let told = engine.handle(inputs, now).context("cannot commit")?;
        shared.turns.turn();
        for (waits, told) in waiting.into_iter().zip(told) {
            // Whoever asked may have gone away; what they asked for is done all the same.
            let _ = waits.send(Ok(told));
        }
        shared
            .outbox_waiting
            .store(engine.waiting(), Ordering::Relaxed);
        next_try.send_replace(engine.next_try());
    }
}

/// Takes what else has come. Those who were told together send their next texts together, within
/// a moment of each other: as many as last time share this flush too, instead of most of them
/// waiting for the flush of the first. One who is alone never waits.
fn gather(inbox: &Receiver<Job>, batch: &mut Vec<Job>, last_batch: usize, clock: &Clock) {
    batch.extend(inbox.try_iter().take(limits::BATCH_MAX - batch.len()));
    let end = clock.now() + limits::GATHER_MAX;
    while !batch.is_empty() && batch.len() < last_batch && clock.now() < end {
        match inbox.recv_timeout(limits::GATHER) {
            Ok(job) => batch.push(job),
            Err(_) => return,
        }
    }
}

/// Keeps what ends work that has begun; all else waits outside until there is room again.
fn refuse_new_work(batch: Vec<Job>) -> Vec<Job> {
    let (kept, refused): (Vec<Job>, Vec<Job>) =
        batch.into_iter().partition(|job| match &job.input {
            Input::Tried { .. } => true,
            Input::Text(_)
            | Input::Receipt(_)
            | Input::Wake
            | Input::ClaimNext
            | Input::Roll(_) => false,
        });
    for job in refused {
        // Whoever asked may have gone away.
        let _ = job.told.send(Err(Refused::Unhealthy));
    }
    kept
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
    let config = crate::cli::config(config)?;
    crate::telemetry::start(&config.log_filter)?;
    let listener = TcpListener::bind(config.web.listen)
        .with_context(|| format!("cannot listen on {}", config.web.listen))?;
    run_service(config, listener, Clock::System, asked_to_stop()).await
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
    let room = Room::new(&config.store);
    let running = start(engine, clock.clone(), room)?;
    info!(address = %listener.local_addr()?, "serving");
    let settings = WebSettings {
        gateway: "http".to_owned(),
        auth: config.inbound.clone(),
        workers: config.web.workers,
        clock: clock.clone(),
    };
    let (stop_outbox, outbox_stops) = watch::channel(false);
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
    let mut watch = Watch::default();
    while !shared.broken.load(Ordering::SeqCst) {
        tokio::time::sleep(LOOK).await;
        if watch.is_stalled(&shared.turns, STALL_LOOKS) {
            shared.set_trouble(Some(
                "the store does not answer; the service stops".to_owned(),
            ));
            shared.stuck.store(true, Ordering::SeqCst);
            return;
        }
    }
}

/// Ends when the system or the terminal asks to stop.
async fn asked_to_stop() {
    let terminal = tokio::signal::ctrl_c();
    match tokio::signal::unix::signal(tokio::signal::unix::SignalKind::terminate()) {
        Ok(mut terminate) => {
            tokio::select! {
                _ = terminal => {}
                _ = terminate.recv() => {}
            }
        }
        Err(_) => {
            let _ = terminal.await;
        }
    }
}

#[cfg(test)]
mod tests;
