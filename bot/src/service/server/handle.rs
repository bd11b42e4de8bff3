//! The way into the engine's thread, and what it shows of itself to others.

use std::{
    path::PathBuf,
    sync::{
        Arc, Mutex, OnceLock, PoisonError,
        atomic::{AtomicBool, AtomicUsize, Ordering},
        mpsc::{SyncSender, TrySendError},
    },
    time::Duration,
};

use tokio::sync::oneshot;
use tracing::{error, info, warn};

use super::{
    disk::{folder_bytes, free_bytes},
    pace::Pace,
    watchdog::{Turns, Watch},
};
use crate::{
    engine::{HeldBack, Input, Told},
    service::port::{Arrival, Health, Intake, IntakeFuture, MonthHealth, Refused},
    words::traffic::GatewayHealth,
};

/// Who waits for what a step tells.
pub(super) type Waits = oneshot::Sender<Result<Told, Refused>>;

/// Why the store is not whole, once that is known.
#[derive(Default)]
pub(super) struct Gap(OnceLock<String>);

impl Gap {
    /// Tells it, if nobody has yet.
    pub(super) fn tell(&self, why: &str) {
        self.0.get_or_init(|| why.to_owned());
    }

    pub(super) fn why(&self) -> Option<String> {
        self.0.get().cloned()
    }
}

/// An input, and who waits for it.
pub(super) struct Job {
    pub(super) input: Input,
    pub(super) told: Waits,
}

/// The way into the engine's thread.
#[derive(Clone)]
pub struct Handle {
    pub(super) jobs: SyncSender<Job>,
    pub(super) shared: Arc<Shared>,
}

#[derive(Default)]
pub(super) struct Shared {
    /// The folder of the store.
    pub(super) folder: PathBuf,
    pub(super) step_pace: Pace,
    pub(super) commit_pace: Pace,
    /// Whether the computer's clock is doubted.
    pub(super) clock_doubted: AtomicBool,
    /// Texts that wait for a person.
    pub(super) unclear_waiting: AtomicUsize,
    /// Why no new work is taken.
    pub(super) trouble: Mutex<Option<String>>,
    /// Why some texts do not leave, though new work is taken.
    pub(super) held: Mutex<Option<String>>,
    pub(super) gap: Gap,
    /// The engine has stopped for good.
    pub(super) broken: AtomicBool,
    /// The engine's thread does not come back, so nobody may wait for it.
    pub(super) stuck: AtomicBool,
    pub(super) steps: Turns,
    pub(super) commits: Turns,
    pub(super) inbox_waiting: AtomicUsize,
    pub(super) outbox_waiting: AtomicUsize,
    /// What the budget did not let go, and how many deeds are locked.
    pub(super) guarded: Mutex<(HeldBack, u64)>,
    /// What left in this month.
    pub(super) month: Mutex<MonthHealth>,
    /// How each gateway was doing when the engine last looked.
    pub(super) gateways: Mutex<Vec<GatewayHealth>>,
}

impl Shared {
    fn trouble(&self) -> Option<String> {
        self.trouble
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .clone()
    }

    pub(super) fn set_trouble(&self, what: Option<String>) {
        *self.trouble.lock().unwrap_or_else(PoisonError::into_inner) = what;
    }

    /// The end, for this reason.
    pub(super) fn break_off(&self, error: &anyhow::Error) {
        self.set_trouble(Some("the store failed; the service stops".to_owned()));
        self.broken.store(true, Ordering::SeqCst);
        error!(
            error = format!("{error:#}"),
            "the store failed; the service stops"
        );
    }

    pub(super) fn set_month(&self, month: MonthHealth) {
        *self.month.lock().unwrap_or_else(PoisonError::into_inner) = month;
    }

    pub(super) fn set_gateways(&self, gateways: Vec<GatewayHealth>) {
        let mut known = self.gateways.lock().unwrap_or_else(PoisonError::into_inner);
        *known = gateways;
    }

    fn gateways(&self) -> Vec<GatewayHealth> {
        let known = self.gateways.lock();
        known.unwrap_or_else(PoisonError::into_inner).clone()
    }

    fn held(&self) -> Option<String> {
        self.held
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .clone()
    }

    /// Logs a new lock once: it is the office's to ask whose number is forged.
    pub(super) fn set_guarded(&self, held_back: HeldBack, locked: u64) {
        let mut guarded = self.guarded.lock().unwrap_or_else(PoisonError::into_inner);
        if guarded.1 < locked {
            warn!(locked, "wrong codes came and locked a deed for a day");
        }
        *guarded = (held_back, locked);
    }

    /// Logs a change once.
    pub(super) fn set_held(&self, why: Option<String>) {
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
}

impl Intake for Handle {
    fn take(&self, arrival: Arrival) -> IntakeFuture {
        let told = self.submit(match arrival {
            Arrival::Text(inbound) => Input::Text(inbound),
            Arrival::Part(part) => Input::Part(part),
            Arrival::MissedCall { gateway, from, at } => Input::MissedCall { gateway, from, at },
            Arrival::Receipt(receipt) => Input::Receipt(receipt),
        });
        Box::pin(async move { told.await.map(|_| ()) })
    }

    fn health(&self) -> Health {
        let guarded = &self.shared.guarded;
        let (held_back, locked) = *guarded.lock().unwrap_or_else(PoisonError::into_inner);
        let gateways = self.shared.gateways();
        let of_gateway = || gateways.iter().find_map(|one| one.trouble.clone());
        Health {
            trouble: (self.shared.trouble())
                .or_else(|| self.shared.gap.why())
                .or_else(|| self.shared.held())
                .or_else(of_gateway),
            inbox_waiting: self.shared.inbox_waiting.load(Ordering::Relaxed),
            outbox_waiting: self.shared.outbox_waiting.load(Ordering::Relaxed),
            unclear_waiting: self.shared.unclear_waiting.load(Ordering::Relaxed),
            clock_trusted: !self.shared.clock_doubted.load(Ordering::Relaxed),
            store_bytes: folder_bytes(&self.shared.folder).ok(),
            disk_free_bytes: free_bytes(&self.shared.folder).ok(),
            steps: self.shared.step_pace.spans(),
            commits: self.shared.commit_pace.spans(),
            held_back,
            month: *(self.shared.month.lock()).unwrap_or_else(PoisonError::into_inner),
            locked,
            gateways,
        }
    }
}

/// Sees how the engine ends, from outside.
#[derive(Clone)]
pub struct EndWatch(pub(super) Arc<Shared>);

impl EndWatch {
    /// Ends when the engine has stopped by itself, or stands still.
    pub async fn end(self) {
        /// A service that cannot store is stopped within this time.
        const LOOK: Duration = Duration::from_millis(250);
        /// A minute. A bad memory card may take tens of seconds for one sync and be well after it.
        const STALL_LOOKS: u32 = 240;
        let shared = &self.0;
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

    /// Whether the engine's thread does not come back, so that nobody may wait for it.
    #[must_use]
    pub fn is_stuck(&self) -> bool {
        self.0.stuck.load(Ordering::SeqCst)
    }
}
