//! How long steps and commits take, for a monitor.

use std::{
    sync::atomic::{AtomicU64, Ordering},
    time::Duration,
};

use crate::service::port::{SPANS_MICROS, Spans};

/// Counts of how long something took, since the start.
#[derive(Default)]
pub(super) struct Pace {
    counts: [AtomicU64; SPANS_MICROS.len() + 1],
    micros: AtomicU64,
}

impl Pace {
    pub(super) fn note(&self, took: Duration) {
        let micros = u64::try_from(took.as_micros()).unwrap_or(u64::MAX);
        let span = SPANS_MICROS.partition_point(|end| *end < micros);
        if let Some(count) = self.counts.get(span) {
            count.fetch_add(1, Ordering::Relaxed);
        }
        self.micros.fetch_add(micros, Ordering::Relaxed);
    }

    pub(super) fn spans(&self) -> Spans {
        let mut spans = Spans {
            micros: self.micros.load(Ordering::Relaxed),
            ..Spans::default()
        };
        for (count, counted) in spans.counts.iter_mut().zip(&self.counts) {
            *count = counted.load(Ordering::Relaxed);
        }
        spans
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_lies_in_the_first_span_that_is_long_enough() {
        let pace = Pace::default();
        for micros in [0, 100, 101, 1_000_000, 1_000_001] {
            pace.note(Duration::from_micros(micros));
        }
        let spans = pace.spans();
        assert_eq!(spans.counts, [2, 1, 0, 0, 0, 0, 0, 1, 1]);
        assert_eq!(spans.micros, 2_000_202);
    }
}
