//! The log: set up once, and the names of its fields.
//!
//! A message of the log reads alone; fields carry what one searches by. A failure is logged once,
//! where it is handled. Numbers, names and texts never go to `info` or above: an id stands for
//! them. The two core crates do not log at all; what they decided is in what they return.

mod journal;

use std::io::{self, IsTerminal};

use tracing::Subscriber;
use tracing_subscriber::{
    Layer, Registry,
    filter::Targets,
    fmt::{self, MakeWriter},
    layer::SubscriberExt,
    registry,
    registry::LookupSpan,
    reload,
    util::SubscriberInitExt,
};

use self::journal::ForJournal;

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

/// How a line of the log is written.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum LogFormat {
    /// For people: time, level, place, words.
    #[default]
    Text,
    /// An object for each line, for programs that collect logs.
    Json,
    /// For a journal that keeps the time itself: the priority comes first.
    Journal,
}

impl LogFormat {
    /// Each, with its name in the configuration.
    pub const ALL: [(&str, Self); 3] = [
        ("text", Self::Text),
        ("json", Self::Json),
        ("journal", Self::Journal),
    ];
}

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
pub fn start(filter: &str, format: LogFormat) -> Result<LogFilter, TelemetryError> {
    let (filter, handle) = reload::Layer::new(read_filter(filter)?);
    registry()
        .with(filter)
        .with(lines(format, io::stderr, io::stderr().is_terminal()))
        .try_init()
        .map_err(|_| TelemetryError::Twice)?;
    Ok(LogFilter(handle))
}

/// Writes lines of this form. Colours are for people; whatever keeps lines would keep their codes.
fn lines<S, W>(format: LogFormat, writer: W, has_colours: bool) -> Box<dyn Layer<S> + Send + Sync>
where
    S: Subscriber + for<'a> LookupSpan<'a>,
    W: for<'a> MakeWriter<'a> + Send + Sync + 'static,
{
    let layer = fmt::layer().with_writer(writer);
    match format {
        LogFormat::Text => layer.with_ansi(has_colours).boxed(),
        LogFormat::Json => layer.json().flatten_event(true).boxed(),
        LogFormat::Journal => {
            let layer = layer.with_ansi(false);
            layer.event_format(ForJournal::default()).boxed()
        }
    }
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
    use std::{
        io::Write,
        sync::{Arc, Mutex},
    };

    use serde_json::{Value, json};
    use tracing::{Level, error, info, subscriber, warn};

    use super::*;

    /// What was written.
    #[derive(Clone, Default)]
    struct Paper(Arc<Mutex<Vec<u8>>>);

    impl Write for &Paper {
        fn write(&mut self, octets: &[u8]) -> io::Result<usize> {
            self.0.lock().unwrap().write(octets)
        }

        fn flush(&mut self) -> io::Result<()> {
            Ok(())
        }
    }

    /// The lines of three events, one of which has two lines of words.
    fn written(format: LogFormat) -> Vec<String> {
        let paper = Paper::default();
        let layer = lines(format, Arc::new(paper.clone()), false);
        subscriber::with_default(registry().with(layer), || {
            info!(
                { MESSAGE_ID } = 7,
                why = "a \"word\"",
                "a text was not taken"
            );
            warn!("first\nsecond");
            error!("the end");
        });
        let text = String::from_utf8(paper.0.lock().unwrap().clone()).unwrap();
        text.lines().map(str::to_owned).collect()
    }

    #[test]
    fn a_line_for_programs_is_an_object_with_every_field() {
        let read = |line: &String| serde_json::from_str::<Value>(line).unwrap();
        let lines: Vec<Value> = written(LogFormat::Json).iter().map(read).collect();
        let [first, second, _] = &lines[..] else {
            panic!("{lines:?}");
        };
        for (key, expected) in [
            ("level", json!("INFO")),
            ("message", json!("a text was not taken")),
            ("message.id", json!(7)),
            ("why", json!("a \"word\"")),
        ] {
            assert_eq!(first[key], expected);
        }
        // RFC 3339, as programs that collect logs read it.
        let at = first["timestamp"].as_str().unwrap();
        assert!(chrono::DateTime::parse_from_rfc3339(at).is_ok(), "{at}");
        assert_eq!(second["message"], "first\nsecond");
    }

    /// The manual page sd-daemon(3): each line begins with its priority in angle brackets, of the
    /// numbers of RFC 5424, table 2.
    #[test]
    fn each_line_of_a_journal_begins_with_its_priority() {
        assert_eq!(
            written(LogFormat::Journal),
            [
                "<6>budwood::service::telemetry::tests: a text was not taken message.id=7 \
                 why=\"a \\\"word\\\"\"",
                "<4>budwood::service::telemetry::tests: first",
                "<4>second",
                "<3>budwood::service::telemetry::tests: the end",
            ]
        );
    }

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
