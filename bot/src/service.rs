//! The service put together: the engine, HTTP in, the outbox out, the control socket, and the end.

pub mod clock;
pub mod config;
pub mod control;
pub mod gateway;
pub mod server;
pub mod setup;
pub mod telemetry;
pub mod web;

use std::{io, net::TcpListener, path::Path, sync::Arc};

use anyhow::{Context, bail};
use tokio::{
    signal::unix::{SignalKind, signal},
    sync::watch,
};
use tracing::info;

use self::{
    clock::Clock,
    config::Config,
    gateway::{Intake, http::HttpGateway},
    server::{Room, outbox, start},
    setup::open_engine,
    web::WebSettings,
};

/// Serves until the system asks to stop, then ends what has begun.
///
/// # Errors
///
/// When the configuration, the store or the port cannot be used, or a commit failed.
pub async fn serve(config: &Path) -> anyhow::Result<()> {
    // Before the store is opened, so that whoever asks to stop meanwhile is heard.
    let stop = asked_to_stop().context("cannot wait for signals")?;
    let config = setup::config(config)?;
    telemetry::start(&config.log_filter)?;
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
    let watch = running.watch();
    let watched = watch.clone();
    let stop = async move {
        tokio::select! {
            () = stop => {}
            () = watched.end() => {}
        }
    };
    web::serve(listener, intake, settings, stop).await?;
    if watch.is_stuck() {
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
