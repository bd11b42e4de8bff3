//! The servers that are compared. All have the same web side, on a thread of their own.

use std::{
    fmt::Write as _,
    fs::{self, File},
    io::Write as _,
    net::{SocketAddr, TcpListener},
    path::Path,
    sync::{
        Arc,
        mpsc::{Receiver, SyncSender, sync_channel},
    },
    thread::{self, JoinHandle},
};

use budwood::{
    engine::{HeldBack, Input},
    play::virtual_clock,
    service::{
        self,
        clock::{Clock, FixedClock},
        config::Config,
        door::{Auth, Door, Takes},
        port::{Arrival, Health, Intake, IntakeFuture, MonthHealth, SPANS_MICROS, Spans},
        setup,
        web::{self, WebSettings},
    },
    words::{limits, secret::Secret, traffic::Inbound},
};
use chrono::DateTime;
use tempfile::TempDir;
use tokio::{runtime, sync::oneshot};

pub(crate) const TOKEN: &str = "only-for-the-bench";

/// Farmers on the roll, each with one block.
pub(crate) const FARMERS: usize = 900;

/// Threads of the web side, as a small computer has them.
const WORKERS: usize = 2;

/// The mean size of a record of the service, from `--bench many -- disk`.
const RECORD_BYTES: usize = 150;

/// What the service gives its store by default.
const CACHE_BYTES: u64 = 32 * 1024 * 1024;

/// What is behind the web side.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Kind {
    /// Nothing; it is only greeted.
    Hello,
    /// An answer, and no store.
    Answered,
    /// A plain file.
    File,
    /// The store's library alone, given as many records as the service writes for a text.
    Bare,
    /// The service.
    Whole,
}

impl Kind {
    pub(crate) const ALL: [Self; 5] = [
        Self::Hello,
        Self::Answered,
        Self::File,
        Self::Bare,
        Self::Whole,
    ];

    pub(crate) const fn name(self) -> &'static str {
        match self {
            Self::Hello => "hello",
            Self::Answered => "answered",
            Self::File => "file",
            Self::Bare => "bare",
            Self::Whole => "whole",
        }
    }
}

/// A running server.
pub(crate) struct Server {
    pub(crate) address: SocketAddr,
    pub(crate) clock: FixedClock,
    stop: Option<oneshot::Sender<()>>,
    thread: Option<JoinHandle<()>>,
    _folder: TempDir,
}

impl Server {
    pub(crate) fn start(kind: Kind) -> Self {
        let folder = folder();
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let address = listener.local_addr().unwrap();
        let clock = FixedClock::at(DateTime::from_timestamp(1_790_000_000, 0).unwrap());
        let (stop, stopped) = oneshot::channel();
        let (place, time) = (folder.path().to_owned(), Clock::Fixed(clock.clone()));
        let thread = thread::spawn(move || {
            let stop = async {
                let _ = stopped.await;
            };
            let runtime = runtime::Builder::new_multi_thread()
                .worker_threads(1)
                .enable_all()
                .build()
                .unwrap();
            runtime.block_on(async {
                if kind == Kind::Whole {
                    let config = settled(&place, &time);
                    let secret = |_: &str| Some(TOKEN.to_owned());
                    service::run_service(config, &secret, listener, time, stop)
                        .await
                        .unwrap();
                } else {
                    let settings = WebSettings {
                        doors: vec![Door {
                            gateway: "line".to_owned(),
                            auth: Auth::Bearer {
                                token: Secret::new(TOKEN),
                            },
                            networks: Vec::new(),
                            takes: Takes::OneApi,
                        }],
                        workers: WORKERS,
                        clock: time,
                    };
                    let intake: Arc<dyn Intake> = match kind {
                        Kind::File => Arc::new(ToDisk::new(to_file(&place))),
                        Kind::Bare => Arc::new(ToDisk::new(to_sled(&place))),
                        Kind::Hello | Kind::Answered | Kind::Whole => Arc::new(ToNowhere),
                    };
                    web::serve(listener, intake, settings, stop).await.unwrap();
                }
            });
        });
        Self {
            address,
            clock,
            stop: Some(stop),
            thread: Some(thread),
            _folder: folder,
        }
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        drop(self.stop.take());
        self.thread.take().unwrap().join().unwrap();
    }
}

/// A folder on the disk that is measured: that of the build, which is no disk in memory.
pub(crate) fn folder() -> TempDir {
    tempfile::tempdir_in(env!("CARGO_TARGET_TMPDIR")).unwrap()
}

const NO_TIME: Spans = Spans {
    counts: [0; SPANS_MICROS.len() + 1],
    micros: 0,
};

const HEALTHY: Health = Health {
    gateways: Vec::new(),
    trouble: None,
    inbox_waiting: 0,
    outbox_waiting: 0,
    unclear_waiting: 0,
    clock_trusted: true,
    store_bytes: None,
    disk_free_bytes: None,
    steps: NO_TIME,
    commits: NO_TIME,
    held_back: HeldBack {
        answers: 0,
        notices: 0,
        strangers: 0,
        unpaid: 0,
        services: 0,
        echoes: 0,
        machines: 0,
        costly: 0,
    },
    month: MonthHealth {
        micro: 0,
        parts: 0,
        gone_pct: None,
    },
    locked: 0,
};

struct ToNowhere;

impl Intake for ToNowhere {
    fn take(&self, _: Arrival) -> IntakeFuture {
        Box::pin(async { Ok(()) })
    }
    fn health(&self) -> Health {
        HEALTHY
    }
}

/// Writes down all texts that came together.
type WriteGroup = Box<dyn FnMut(&[(Inbound, oneshot::Sender<()>)]) + Send>;

/// A durable server that does nothing but write: one sync for all texts that came together.
struct ToDisk {
    jobs: SyncSender<(Inbound, oneshot::Sender<()>)>,
}

impl ToDisk {
    fn new(mut write: WriteGroup) -> Self {
        let (jobs, inbox) = sync_channel(limits::QUEUE_MAX);
        thread::spawn(move || run(&inbox, &mut write));
        Self { jobs }
    }
}

fn run(inbox: &Receiver<(Inbound, oneshot::Sender<()>)>, write: &mut WriteGroup) {
    while let Ok(first) = inbox.recv() {
        let mut jobs = vec![first];
        jobs.extend(inbox.try_iter().take(limits::BATCH_MAX - 1));
        write(&jobs);
        for (_, told) in jobs {
            let _ = told.send(());
        }
    }
}

/// A line for each text.
fn to_file(folder: &Path) -> WriteGroup {
    let mut file = File::create(folder.join("log")).unwrap();
    Box::new(move |jobs| {
        let mut lines = String::new();
        for (text, _) in jobs {
            let id = text.gateway_id.as_deref().unwrap_or_default();
            writeln!(lines, "{id} {} {} {}", text.from, text.to, text.text).unwrap();
        }
        file.write_all(lines.as_bytes()).unwrap();
        file.sync_data().unwrap();
    })
}

/// What the service writes for a text, and nothing else of the service: three new records in the
/// order of their numbers, two in place of older ones of the farmer.
fn to_sled(folder: &Path) -> WriteGroup {
    let tree = sled::Config::new()
        .path(folder)
        .cache_capacity(CACHE_BYTES)
        .flush_every_ms(None)
        .open()
        .unwrap();
    let db = File::options().write(true).open(folder.join("db")).unwrap();
    let mut number = 0_u64;
    Box::new(move |jobs| {
        let mut batch = sled::Batch::default();
        for (text, _) in jobs {
            number += 1;
            let mut put = |prefix: &str, key: &[u8]| {
                batch.insert([prefix.as_bytes(), key].concat(), vec![b'x'; RECORD_BYTES]);
            };
            for prefix in ["e/", "i/", "o/"] {
                put(prefix, &number.to_be_bytes());
            }
            for prefix in ["s/", "t/"] {
                put(prefix, text.from.as_bytes());
            }
        }
        tree.apply_batch(batch).unwrap();
        tree.flush().unwrap();
        db.sync_data().unwrap();
    })
}

impl Intake for ToDisk {
    fn take(&self, arrival: Arrival) -> IntakeFuture {
        let Arrival::Text(text) = arrival else {
            return Box::pin(async { Ok(()) });
        };
        let (told, wait) = oneshot::channel();
        self.jobs.send((text, told)).unwrap();
        Box::pin(async {
            wait.await.unwrap();
            Ok(())
        })
    }
    fn health(&self) -> Health {
        HEALTHY
    }
}

/// A configuration whose store knows all farmers.
fn settled(folder: &Path, clock: &Clock) -> Config {
    let file = folder.join("budwood.toml");
    let text = format!(
        "[store]\nfolder = \"store\"\nreserve_mb = 16\n\
         [web]\nlisten = \"127.0.0.1:8470\"\nworkers = {WORKERS}\n\
         [[gateway]]\nname = \"line\"\nkind = \"oneapi\"\n[gateway.in]\nauth = \"bearer\"\n\
         [line]\nname = \"mera\"\nown_number = \"12345\"\ncountry = \"GB\"\n\
         fallback_zone = \"Europe/London\"\n[nudges]\n[languages]\n[calendars]\n[log]\n"
    );
    fs::write(&file, text).unwrap();
    let config = Config::load(&file).unwrap();
    let now = clock.now();
    let mut engine = setup::open_engine(&config, now).unwrap();
    let plan = virtual_clock::plan_roll(&engine, roll().as_bytes(), now);
    let entries = Box::new(virtual_clock::entries(&plan));
    engine.handle(vec![Input::Roll(entries)], now).unwrap();
    config
}

fn roll() -> String {
    let mut roll = "row,group,name,role,phone,language,consent_on,consent_how,adviser,zone,\
                    calendar,block,area,unit,clone\n\
                    group,MERA,,,,,,,Ada Brone,Asia/Jakarta,fao,,,,\n\
                    person,,Ada Brone,adviser,+447700900999,en,2026-09-01,contract,,,,,,,\n"
        .to_owned();
    for farmer in 0..FARMERS {
        let from = format!("+447700900{farmer:03}");
        writeln!(
            roll,
            "person,MERA,Farmer {farmer},farmer,{from},en,2026-09-05,signed sheet,,,,,,,\n\
             block,MERA,Farmer {farmer},,,,,,,,,A,40,ha,PB260"
        )
        .unwrap();
    }
    roll
}
