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
    clock::{Clock, FixedClock},
    config::{Config, Secret},
    engine::Input,
    gateway::{Health, Inbound, Intake, IntakeFuture, Receipt},
    limits, rig, server,
    web::{self, Auth, WebSettings},
};
use chrono::DateTime;
use tempfile::TempDir;
use tokio::{runtime, sync::oneshot};

pub(crate) const TOKEN: &str = "only-for-the-bench";

/// Farmers on the roll, each with one block.
pub(crate) const FARMERS: usize = 900;

/// Threads of the web side, as a small computer has them.
const WORKERS: usize = 2;

/// What is behind the web side.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Kind {
    /// Nothing; it is only greeted.
    Hello,
    /// An answer, and no store.
    Answered,
    /// A plain file.
    File,
    /// The service.
    Whole,
}

impl Kind {
    pub(crate) const ALL: [Self; 4] = [Self::Hello, Self::Answered, Self::File, Self::Whole];

    pub(crate) const fn name(self) -> &'static str {
        match self {
            Self::Hello => "hello",
            Self::Answered => "answered",
            Self::File => "file",
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
                    server::run_service(config, listener, time, stop)
                        .await
                        .unwrap();
                } else {
                    let settings = WebSettings {
                        gateway: "http".to_owned(),
                        auth: Auth::Bearer {
                            token: Secret::new(TOKEN),
                        },
                        workers: WORKERS,
                        clock: time,
                    };
                    let intake: Arc<dyn Intake> = match kind {
                        Kind::File => Arc::new(ToFile::new(&place)),
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

const HEALTHY: Health = Health {
    trouble: None,
    inbox_waiting: 0,
    outbox_waiting: 0,
};

struct ToNowhere;

impl Intake for ToNowhere {
    fn text(&self, _: Inbound) -> IntakeFuture {
        Box::pin(async { Ok(()) })
    }
    fn receipt(&self, _: Receipt) -> IntakeFuture {
        Box::pin(async { Ok(()) })
    }
    fn health(&self) -> Health {
        HEALTHY
    }
}

/// The plainest durable server: a line for each text, one sync for all that came together.
struct ToFile {
    jobs: SyncSender<(String, oneshot::Sender<()>)>,
}

impl ToFile {
    fn new(folder: &Path) -> Self {
        let (jobs, inbox) = sync_channel(limits::QUEUE_MAX);
        let file = File::create(folder.join("log")).unwrap();
        thread::spawn(move || append(file, &inbox));
        Self { jobs }
    }
}

fn append(mut file: File, inbox: &Receiver<(String, oneshot::Sender<()>)>) {
    while let Ok(first) = inbox.recv() {
        let mut jobs = vec![first];
        jobs.extend(inbox.try_iter().take(limits::BATCH_MAX - 1));
        let lines: String = jobs.iter().map(|(line, _)| line.as_str()).collect();
        file.write_all(lines.as_bytes()).unwrap();
        file.sync_data().unwrap();
        for (_, told) in jobs {
            let _ = told.send(());
        }
    }
}

impl Intake for ToFile {
    fn text(&self, text: Inbound) -> IntakeFuture {
        let id = text.gateway_id.unwrap_or_default();
        let line = format!("{id} {} {} {}\n", text.from, text.to, text.text);
        let (told, wait) = oneshot::channel();
        self.jobs.send((line, told)).unwrap();
        Box::pin(async {
            wait.await.unwrap();
            Ok(())
        })
    }
    fn receipt(&self, _: Receipt) -> IntakeFuture {
        Box::pin(async { Ok(()) })
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
         [web]\nlisten = \"127.0.0.1:8470\"\nworkers = {WORKERS}\n[inbound]\nauth = \"bearer\"\n\
         [outbound]\nkind = \"none\"\n\
         [line]\nname = \"mera\"\nown_number = \"12345\"\ncountry = \"GB\"\n\
         fallback_zone = \"Europe/London\"\n[nudges]\n[languages]\n[calendars]\n[log]\n"
    );
    fs::write(&file, text).unwrap();
    let config = Config::load(&file, &|_| Some(TOKEN.to_owned())).unwrap();
    let now = clock.now();
    let mut engine = server::open_engine(&config, now).unwrap();
    let plan = rig::plan_roll(&engine, roll().as_bytes(), now);
    let entries = Box::new(rig::entries(&plan));
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
