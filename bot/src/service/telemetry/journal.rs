//! A line of the log for a journal: its priority, then place and words.
//!
//! The journal writes down the time by itself, and shows by the priority what is urgent.

use std::fmt;

use tracing::{Event, Level, Subscriber};
use tracing_subscriber::{
    fmt::{
        FmtContext, FormatEvent, FormatFields,
        format::{self, Format, Full, Writer},
    },
    registry::LookupSpan,
};

/// Writes such lines.
pub(super) struct ForJournal(Format<Full, ()>);

impl Default for ForJournal {
    fn default() -> Self {
        Self(format::format().without_time().with_level(false))
    }
}

impl<S, N> FormatEvent<S, N> for ForJournal
where
    S: Subscriber + for<'a> LookupSpan<'a>,
    N: for<'a> FormatFields<'a> + 'static,
{
    fn format_event(
        &self,
        context: &FmtContext<'_, S, N>,
        mut writer: Writer<'_>,
        event: &Event<'_>,
    ) -> fmt::Result {
        let mut words = String::new();
        self.0
            .format_event(context, Writer::new(&mut words), event)?;
        let priority = priority(*event.metadata().level());
        // Each line is taken for one by itself.
        words
            .lines()
            .try_for_each(|line| writeln!(writer, "<{priority}>{}", line.trim_start()))
    }
}

/// The manual page sd-daemon(3), with the numbers of RFC 5424, table 2.
fn priority(level: Level) -> u8 {
    match level {
        Level::ERROR => 3,
        Level::WARN => 4,
        Level::INFO => 6,
        Level::DEBUG | Level::TRACE => 7,
    }
}
