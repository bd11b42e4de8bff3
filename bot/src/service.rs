//! The service put together: the engine, HTTP in, the outbox out, the control socket, and the end.

pub mod body_mac;
pub mod call;
pub mod certificate;
pub mod clock;
pub mod config;
pub mod control;
pub mod door;
pub mod gateway;
mod mended;
pub mod network;
pub mod port;
mod reload;
pub mod server;
pub mod setup;
pub mod signature;
mod supervisor;
pub mod taken;
pub mod telemetry;
pub(crate) mod value;
pub mod web;

use std::{env, fs, io, net::TcpListener, path::Path, sync::Arc};

use anyhow::{Context, bail};
use tokio::{
    signal::unix::{Signal, SignalKind, signal},
    sync::{mpsc, oneshot, watch},
    task::JoinSet,
};
use tracing::{error, info};

use crate::words::limits;

use self::{
    clock::Clock,
    config::{Config, OfficeConfig},
    port::{Environment, Intake, Stop, stopped},
    reload::{Reloader, Reloads},
    server::{Handle, Room, day_log, outbox::Outbox, start},
    setup::open_engine,
    supervisor::Supervisor,
    web::{
        WebSettings,
        office::{self, OfficeSettings},
    },
};

/// Serves until the system asks to stop, then ends what has begun.
///
/// # Errors
///
/// When the configuration, the store or the port cannot be used, or a commit failed.
pub async fn serve(config: &Path) -> anyhow::Result<()> {
    // Before the store is opened, so that whoever asks to stop meanwhile is heard.
    let stop = asked_to_stop().context("cannot wait for signals")?;
    let hang_up = signal(SignalKind::hangup()).context("cannot wait for signals")?;
    let file = config.to_path_buf();
    let config = setup::config(&file)?;
    let log = telemetry::start(&config.log.filter, config.log.format)?;
    let listener = TcpListener::bind(config.web.listen)
        .with_context(|| format!("cannot listen on {}", config.web.listen))?;
    let system = System {
        reloads: Reloads { config: file, log },
        hang_up,
        supervisor: Supervisor::of(&|name| env::var(name).ok()),
    };
    let (clock, system) = (Clock::System, Some(system));
    run(config, &secret, listener, clock, stop, system).await
}

/// What the system that runs the service is to it.
struct System {
    reloads: Reloads,
    hang_up: Signal,
    supervisor: Supervisor,
}

/// Looks a secret up: in the environment, or as a file of its name among the credentials that a
/// service manager hands over.
#[must_use]
pub fn secret(name: &str) -> Option<String> {
    env::var(name).ok().or_else(|| {
        let folder = env::var_os("CREDENTIALS_DIRECTORY")?;
        let kept = fs::read_to_string(Path::new(&folder).join(name)).ok()?;
        Some(kept.trim().to_owned())
    })
}

/// The whole service, with its secrets, listener, clock and stop signal given: tests pass their
/// own.
///
/// # Errors
///
/// When a secret is missing, the store cannot be used, or a commit failed.
pub async fn run_service(
    config: Config,
    environment: Environment<'_>,
    listener: TcpListener,
    clock: Clock,
    stop: impl Future<Output = ()> + Send + 'static,
) -> anyhow::Result<()> {
    run(config, environment, listener, clock, stop, None).await
}

async fn run(
    config: Config,
    environment: Environment<'_>,
    listener: TcpListener,
    clock: Clock,
    stop: impl Future<Output = ()> + Send + 'static,
    system: Option<System>,
) -> anyhow::Result<()> {
    let gateways = config.open_gateways(environment, &clock)?;
    let office = config.office.as_ref().map(office_listener).transpose()?;
    let engine = open_engine(&config, clock.now())?;
    // The store is ours from here on, so a control socket in its folder is ours too.
    let folder = &config.store.folder;
    let control = control::Listener::bind(folder).with_context(|| {
        format!(
            "cannot make the control socket in {} (is its path longer than 90 bytes?)",
            folder.display()
        )
    })?;
    let secret = engine.setup().secret;
    let running = start(engine, clock.clone(), Room::new(&config.store))?;
    info!(address = %listener.local_addr()?, "serving");
    let settings = WebSettings {
        doors: gateways.iter().filter_map(|one| one.door.clone()).collect(),
        workers: config.web.workers,
        clock: clock.clone(),
    };
    let (stop_outbox, outbox_stops) = watch::channel(false);
    let mut tasks = JoinSet::new();
    let (ask, asked) = mpsc::channel(limits::RELOADS_WAITING_MAX);
    let supervisor = system.map(|system| {
        let handle = running.handle.clone();
        tasks.spawn(Reloader::new(system.reloads, config.clone(), secret, handle).serve(asked));
        tasks.spawn(ask_on_signal(
            system.hang_up,
            ask.clone(),
            outbox_stops.clone(),
        ));
        Arc::new(system.supervisor)
    });
    tasks.spawn(control.serve(running.handle.clone(), ask, outbox_stops.clone()));
    let days = day_log::keep(running.handle.clone(), clock.clone(), outbox_stops.clone());
    tasks.spawn(days);
    let outbox = Outbox {
        running: &running,
        own_numbers: config.own_numbers().into(),
        clock: clock.clone(),
        stop: outbox_stops,
    };
    for (opened, set) in gateways.iter().zip(&config.gateways) {
        outbox.start(&opened.gateway, set.parallel, &mut tasks);
    }
    if let (Some(listener), Some(set)) = (office, &config.office) {
        let stop = outbox.stop.clone();
        begin_office(listener, set, &running.handle, (&clock, stop), &mut tasks);
    }
    let intake: Arc<dyn Intake> = Arc::new(running.handle.clone());
    let watch = running.watch();
    if let Some(supervisor) = &supervisor {
        supervisor.begin(watch.clone(), outbox.stop.clone(), &mut tasks);
    }
    let stop = either(stop, watch.clone().end());
    web::serve(listener, intake, settings, stop).await?;
    if let Some(supervisor) = &supervisor {
        supervisor.stopping();
    }
    if watch.is_stuck() {
        bail!("the store did not answer for a minute");
    }
    stop_outbox.send_replace(true);
    while let Some(ended) = tasks.join_next().await {
        ended?;
    }
    running.finish()?;
    info!("stopped; everything taken in is stored");
    Ok(())
}

/// The port of the pages, once it is sure that they can be served on it.
fn office_listener(office: &OfficeConfig) -> anyhow::Result<TcpListener> {
    if let Some(certificate) = &office.certificate {
        certificate.config().context("[office]")?;
    }
    let listener = TcpListener::bind(office.listen)
        .with_context(|| format!("cannot listen on {}", office.listen))?;
    info!(address = %listener.local_addr()?, "pages for the office");
    Ok(listener)
}

/// Ends with the first of the two.
async fn either(one: impl Future<Output = ()>, other: impl Future<Output = ()>) {
    tokio::select! {
        () = one => {}
        () = other => {}
    }
}

/// Serves the pages beside all else; without them texts go on.
fn begin_office(
    listener: TcpListener,
    office: &OfficeConfig,
    handle: &Handle,
    (clock, stop): (&Clock, Stop),
    tasks: &mut JoinSet<()>,
) {
    let settings = OfficeSettings {
        address: office.address.clone(),
        certificate: office.certificate.clone(),
        clock: clock.clone(),
    };
    let handle = handle.clone();
    tasks.spawn(async move {
        if let Err(error) = office::serve(listener, handle, settings, stopped(stop)).await {
            error!(error = format!("{error:#}"), "the office's pages are gone");
        }
    });
}

/// Each signal asks for the configuration to be read again; the answer is in the log.
async fn ask_on_signal(mut hang_up: Signal, ask: reload::Ask, stop: Stop) {
    loop {
        tokio::select! {
            () = stopped(stop.clone()) => return,
            signal = hang_up.recv() => {
                if signal.is_none() || ask.send(oneshot::channel().0).await.is_err() {
                    return;
                }
            }
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
