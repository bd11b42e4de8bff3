//! What a service manager is told: that the service is ready, still works, and stops.
//!
//! By the protocol of `sd_notify(3)`: a line to the socket that `NOTIFY_SOCKET` names, and a sign of
//! life twice in each `WATCHDOG_USEC`. Where nobody asks, nobody is told. No sign of life is given
//! while the store does not answer, so that the manager ends what cannot end itself.

use std::{
    io,
    os::{
        linux::net::SocketAddrExt,
        unix::net::{SocketAddr, UnixDatagram},
    },
    sync::Arc,
    time::Duration,
};

use tokio::task::JoinSet;
use tracing::warn;

use super::{
    port::{Environment, Stop, stopped},
    server::EndWatch,
};

/// Who is told, and how often it wants a sign of life.
pub(super) struct Supervisor {
    socket: Option<UnixDatagram>,
    every: Option<Duration>,
}

impl Supervisor {
    /// Whoever the environment names.
    pub(super) fn of(environment: Environment<'_>) -> Self {
        let place = environment("NOTIFY_SOCKET");
        let socket = place.and_then(|place| {
            connect(&place)
                .inspect_err(|error| warn!(%error, "the service manager cannot be told"))
                .ok()
        });
        let wanted = environment("WATCHDOG_USEC").and_then(|text| text.parse().ok());
        let every = wanted.filter(|micros: &u64| *micros > 0);
        Self {
            socket,
            every: every.map(|micros| Duration::from_micros(micros / 2)),
        }
    }

    /// What has begun is ended, and then the service.
    pub(super) fn stopping(&self) {
        self.tell("STOPPING=1");
    }

    /// Gives signs of life until told to stop.
    async fn stay_alive(&self, watch: &EndWatch, stop: Stop) {
        let (Some(every), true) = (self.every, self.socket.is_some()) else {
            return;
        };
        loop {
            if !watch.is_stuck() {
                self.tell("WATCHDOG=1");
            }
            tokio::select! {
                () = stopped(stop.clone()) => return,
                () = tokio::time::sleep(every) => {}
            }
        }
    }

    /// Says that the service is ready, and goes on giving signs of life.
    pub(super) fn begin(self: &Arc<Self>, watch: EndWatch, stop: Stop, tasks: &mut JoinSet<()>) {
        self.tell("READY=1");
        let supervisor = self.clone();
        tasks.spawn(async move { supervisor.stay_alive(&watch, stop).await });
    }

    /// A manager that does not listen is no reason to stop.
    fn tell(&self, state: &str) {
        if let Some(socket) = &self.socket {
            let _ = socket.send(state.as_bytes());
        }
    }
}

/// A path, or a name of the kernel's own behind an `@`.
fn connect(place: &str) -> io::Result<UnixDatagram> {
    let address = match place.strip_prefix('@') {
        Some(name) => SocketAddr::from_abstract_name(name)?,
        None => SocketAddr::from_pathname(place)?,
    };
    let socket = UnixDatagram::unbound()?;
    socket.connect_addr(&address)?;
    socket.set_nonblocking(true)?;
    Ok(socket)
}
