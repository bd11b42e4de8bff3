//! The log: set up once, and the names of its fields.
//!
//! A message of the log reads alone; fields carry what one searches by. A failure is logged once,
//! where it is handled. Numbers, names and texts never go to `info` or above: an id stands for
//! them. The two core crates do not log at all; what they decided is in what they return.

use std::io::{self, IsTerminal};

use tracing_subscriber::{
    Registry, filter::Targets, fmt, layer::SubscriberExt, registry, reload, util::SubscriberInitExt,
};

/// Id of a message of ours.
pub const MESSAGE_ID: &str = "message.id";
/// Name of a gateway.
pub const GATEWAY_NAME: &str = "gateway.name";
/// Status of an HTTP answer.
pub const HTTP_STATUS: &str = "http.status";
/// Path of an HTTP request.
pub const HTTP_ROUTE: &str = "http.route";

/// Id of a person whose records are looked at.
pub const PERSON_ID: &str = "person.id";
/// Id of a person who looks at pages.
pub const VIEWER_ID: &str = "viewer.id";

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
    /// The log is gone.
    #[error("the log does not take another filter")]
    Gone,
}

/// Changes what is logged.
pub struct LogFilter(reload::Handle<Targets, Registry>);

impl LogFilter {
    /// From here on by this filter.
    ///
    /// # Errors
    ///
    /// When the filter cannot be read.
    pub fn set(&self, filter: &str) -> Result<(), TelemetryError> {
        let filter = read_filter(filter)?;
        self.0.reload(filter).map_err(|_| TelemetryError::Gone)
    }
}

/// Starts the log on standard error, where a service manager picks it up.
///
/// # Errors
///
/// When the filter cannot be read, or when a log was started before.
pub fn start(filter: &str) -> Result<LogFilter, TelemetryError> {
    let (filter, handle) = reload::Layer::new(read_filter(filter)?);
    let lines = fmt::layer()
        .with_writer(io::stderr)
        // Colours are for people; a journal would keep their codes.
        .with_ansi(io::stderr().is_terminal());
    registry()
        .with(filter)
        .with(lines)
        .try_init()
        .map_err(|_| TelemetryError::Twice)?;
    Ok(LogFilter(handle))
}

/// Reads a filter; the configuration is checked with it at the start. It tells levels by the place
/// that a line comes from. Filters by the value of a field would need a library for patterns that
/// takes as long to build as the store does. An empty filter lets errors through.
pub(crate) fn read_filter(filter: &str) -> Result<Targets, TelemetryError> {
    let parts = filter.split(',').map(str::trim);
    let mut parts: Vec<&str> = parts.filter(|part| !part.is_empty()).collect();
    if parts.is_empty() {
        parts.push("error");
    }
    parts.join(",").parse().map_err(|_| TelemetryError::Filter {
        filter: filter.to_owned(),
    })
}

#[cfg(test)]
mod tests {
    use tracing::Level;

    use super::*;

    #[track_caller]
    fn check(filter: &str, from: &str, level: Level, expected: bool) {
        let found = read_filter(filter).map(|filter| filter.would_enable(from, &level));
        assert_eq!(
            found.ok(),
            Some(expected),
            "{level} of {from} by {filter:?}"
        );
    }

    #[test]
    fn a_filter_tells_levels_by_place() {
        check("info", "budwood::server", Level::INFO, true);
        check("info", "budwood::server", Level::DEBUG, false);
        check("info,budwood=debug", "budwood::server", Level::DEBUG, true);
        check("info, budwood=debug", "budwood::server", Level::DEBUG, true);
        check("info,budwood=debug", "sled", Level::DEBUG, false);
        check(
            "warn,budwood::web=off",
            "budwood::web::auth",
            Level::ERROR,
            false,
        );
        check("", "budwood::server", Level::ERROR, true);
        check("", "budwood::server", Level::WARN, false);
    }

    #[test]
    fn what_is_no_filter_is_refused() {
        for filter in ["a=b=c", "budwood=loud"] {
            assert!(read_filter(filter).is_err(), "{filter:?}");
        }
    }
}
