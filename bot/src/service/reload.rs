//! A changed configuration is taken over while the service runs.
//!
//! Asked for by the signal SIGHUP or through the control socket. What the engine looks up each time
//! (hours of nudges, routes, language packs, calendars) and the log's filter may change; what was
//! opened at the start (store, address, gateways, the line) may not, and is named. All or nothing:
//! a file that cannot be taken over whole changes nothing.

use std::{path::PathBuf, sync::Arc};

use tokio::sync::{mpsc, oneshot};
use tracing::{info, warn};

use super::{config::Config, server::Handle, setup, telemetry::LogFilter};
use crate::engine::{Input, NewSetup};

/// What became of it: what is new, or why nothing changed.
pub(crate) type Taken = Result<String, String>;

/// Asks for it. The answer comes through the channel that is sent.
pub(crate) type Ask = mpsc::Sender<oneshot::Sender<Taken>>;

/// Where the configuration lies, and the log whose filter is in it.
pub(super) struct Reloads {
    /// The file.
    pub(super) config: PathBuf,
    /// The log.
    pub(super) log: LogFilter,
}

/// Takes over a changed configuration.
pub(super) struct Reloader {
    reloads: Reloads,
    /// As it runs now.
    running: Config,
    /// Codes stay good: they are made with it.
    secret: u64,
    handle: Handle,
}

impl Reloader {
    pub(super) const fn new(
        reloads: Reloads,
        running: Config,
        secret: u64,
        handle: Handle,
    ) -> Self {
        Self {
            reloads,
            running,
            secret,
            handle,
        }
    }

    /// Does what is asked, one after another, until nobody can ask any more.
    pub(super) async fn serve(mut self, mut asked: mpsc::Receiver<oneshot::Sender<Taken>>) {
        while let Some(answer) = asked.recv().await {
            let taken = self.take_over().await;
            match &taken {
                Ok(new) => info!(new, "the configuration was read again"),
                Err(why) => warn!(why, "the configuration was read again and changes nothing"),
            }
            // Whoever asked may have gone away.
            let _ = answer.send(taken);
        }
    }

    async fn take_over(&mut self) -> Taken {
        let (file, secret) = (self.reloads.config.clone(), self.secret);
        let read = move || {
            let config = setup::config(&file)?;
            let mut setup = setup::from_config(&config)?;
            setup.secret = secret;
            anyhow::Ok((config, setup))
        };
        let (config, setup) = tokio::task::spawn_blocking(read)
            .await
            .map_err(|_| "it could not be read".to_owned())?
            .map_err(|error| format!("{error:#}"))?;
        let fixed = fixed(&self.running, &config);
        if !fixed.is_empty() {
            return Err(format!(
                "{} cannot change while the service runs; put it back, or stop the service and \
                 start it again",
                fixed.join(", ")
            ));
        }
        let told = self
            .handle
            .submit(Input::Setup(NewSetup(Arc::new(setup))))
            .await
            .map_err(|refused| refused.to_string())?;
        if let Some(why) = told.refused {
            return Err(why);
        }
        let log = &self.reloads.log;
        log.set(&config.log.filter)
            .map_err(|error| error.to_string())?;
        let new = changed(&self.running, &config);
        self.running = config;
        Ok(new)
    }
}

/// The blocks that differ and were opened at the start.
fn fixed(running: &Config, new: &Config) -> Vec<&'static str> {
    // A gateway's own keys are known to its kind alone; none of what is shown here is a secret.
    let gateways = |config: &Config| format!("{:?}", config.gateways);
    let blocks = [
        ("[store]", running.store == new.store),
        ("[web]", running.web == new.web),
        ("[office]", running.office == new.office),
        ("[[gateway]]", gateways(running) == gateways(new)),
        ("[line]", running.line == new.line),
        ("format of [log]", running.log.format == new.log.format),
    ];
    let differ = blocks.into_iter().filter(|(_, is_same)| !is_same);
    differ.map(|(name, _)| name).collect()
}

/// What is new, by its place in the file. The files that it names are read again in any case.
fn changed(running: &Config, new: &Config) -> String {
    let parts = [
        ("[nudges]", running.nudges == new.nudges),
        ("[operator]", running.operator == new.operator),
        ("[[route]]", running.routes == new.routes),
        (
            "the list of language packs",
            running.language_files == new.language_files,
        ),
        (
            "the list of calendars",
            running.calendar_files == new.calendar_files,
        ),
        ("the log's filter", running.log.filter == new.log.filter),
    ];
    let differ = parts.into_iter().filter(|(_, is_same)| !is_same);
    let names: Vec<&str> = differ.map(|(name, _)| name).collect();
    if names.is_empty() {
        "language packs and calendars were read again; the configuration is as it was".to_owned()
    } else {
        format!("new: {}", names.join(", "))
    }
}
