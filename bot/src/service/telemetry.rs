//! The log: set up once, and the names of its fields.
//!
//! A message of the log reads alone; fields carry what one searches by. A failure is logged once,
//! where it is handled. Numbers, names and texts never go to `info` or above: an id stands for
//! them. The two core crates do not log at all; what they decided is in what they return.

use std::io::{self, IsTerminal};

use tracing_subscriber::{EnvFilter, fmt, util::SubscriberInitExt};

/// Id of a message of ours.
pub const MESSAGE_ID: &str = "message.id";
/// Name of a gateway.
pub const GATEWAY_NAME: &str = "gateway.name";
/// Status of an HTTP answer.
pub const HTTP_STATUS: &str = "http.status";
/// Path of an HTTP request.
pub const HTTP_ROUTE: &str = "http.route";

/// The log could not be set up.
#[derive(Debug, thiserror::Error)]
pub enum TelemetryError {
    /// The filter is not one.
    #[error("log filter {filter:?} is not a list such as \"info,budwood=debug\"")]
    Filter {
        /// The filter as given.
        filter: String,
    },
    /// There is one already.
    #[error("the log was set up twice")]
    Twice,
}

/// Starts the log on standard error, where a service manager picks it up.
///
/// # Errors
///
/// When the filter cannot be read, or when a log was started before.
pub fn start(filter: &str) -> Result<(), TelemetryError> {
    let filter = read_filter(filter)?;
    fmt()
        .with_env_filter(filter)
        .with_writer(io::stderr)
        // Colours are for people; a journal would keep their codes.
        .with_ansi(io::stderr().is_terminal())
        .finish()
        .try_init()
        .map_err(|_| TelemetryError::Twice)
}

/// Reads a filter; the configuration is checked with it at the start.
pub(crate) fn read_filter(filter: &str) -> Result<EnvFilter, TelemetryError> {
    EnvFilter::try_new(filter).map_err(|_| TelemetryError::Filter {
        filter: filter.to_owned(),
    })
}
