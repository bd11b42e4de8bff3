//! How many parts left by each gateway in this minute and on this day, against what it may send.
//!
//! In memory only: at the start what left before it is counted again.

use std::collections::BTreeMap;

use chrono::{DateTime, DurationRound, TimeDelta, Utc};

use crate::words::ways::Ration;

/// Counts by gateway.
#[derive(Default)]
pub(crate) struct Rations(BTreeMap<String, Sent>);

#[derive(Default)]
struct Sent {
    minute: Counted,
    day: Counted,
}

/// Parts of the last minute or day in which any left.
#[derive(Clone, Copy, Default)]
struct Counted {
    from: DateTime<Utc>,
    parts: u32,
}

impl Counted {
    fn add(&mut self, parts: u32, at: DateTime<Utc>, every: TimeDelta) {
        let from = begin(at, every);
        let before = if from == self.from { self.parts } else { 0 };
        *self = Self {
            from,
            parts: before.saturating_add(parts),
        };
    }

    /// When this many more may leave, where that is not now. Nothing is too long for a minute or a
    /// day that is still empty: it would wait without end.
    fn over(
        self,
        most: Option<u32>,
        parts: u32,
        now: DateTime<Utc>,
        every: TimeDelta,
    ) -> Option<DateTime<Utc>> {
        let from = begin(now, every);
        let sent = if from == self.from { self.parts } else { 0 };
        let is_over = sent > 0 && most.is_some_and(|most| sent.saturating_add(parts) > most);
        is_over.then_some(from + every)
    }
}

const MINUTE: TimeDelta = TimeDelta::minutes(1);
const DAY: TimeDelta = TimeDelta::days(1);

/// The begin of the minute or day in which this is.
fn begin(at: DateTime<Utc>, every: TimeDelta) -> DateTime<Utc> {
    at.duration_trunc(every).unwrap_or(at)
}

impl Rations {
    /// So many parts leave by a gateway.
    pub(crate) fn add(&mut self, gateway: &str, parts: u32, at: DateTime<Utc>) {
        let sent = self.0.entry(gateway.to_owned()).or_default();
        sent.minute.add(parts, at, MINUTE);
        sent.day.add(parts, at, DAY);
    }

    /// When so many parts may leave by a gateway, where that is not now.
    pub(crate) fn over(
        &self,
        gateway: &str,
        ration: Ration,
        parts: u32,
        now: DateTime<Utc>,
    ) -> Option<DateTime<Utc>> {
        let sent = self.0.get(gateway)?;
        let minute = sent.minute.over(ration.a_minute, parts, now, MINUTE);
        let day = sent.day.over(ration.a_day, parts, now, DAY);
        minute.max(day)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(text: &str) -> DateTime<Utc> {
        text.parse().unwrap()
    }

    #[test]
    fn a_minute_and_a_day_have_their_bounds() {
        let ration = Ration {
            a_minute: Some(3),
            a_day: Some(5),
        };
        let mut rations = Rations::default();
        let over = |rations: &Rations, parts, now| rations.over("sim", ration, parts, at(now));
        assert_eq!(over(&rations, 9, "2026-09-12T10:00:59Z"), None, "the first");
        rations.add("sim", 2, at("2026-09-12T10:00:01.5Z"));
        assert_eq!(over(&rations, 1, "2026-09-12T10:00:59Z"), None);
        let next = Some(at("2026-09-12T10:01:00Z"));
        assert_eq!(over(&rations, 2, "2026-09-12T10:00:59.9Z"), next);
        assert_eq!(over(&rations, 3, "2026-09-12T10:01:00Z"), None);
        rations.add("sim", 3, at("2026-09-12T10:01:00Z"));
        // Both are full: the day lasts longer.
        let tomorrow = Some(at("2026-09-13T00:00:00Z"));
        assert_eq!(over(&rations, 1, "2026-09-12T10:01:30Z"), tomorrow);
        assert_eq!(over(&rations, 1, "2026-09-12T23:59:59Z"), tomorrow);
        assert_eq!(over(&rations, 1, "2026-09-13T00:00:00Z"), None);
        assert_eq!(
            rations.over("centre", ration, 9, at("2026-09-12T10:01:30Z")),
            None
        );
        let free = Ration::default();
        let now = at("2026-09-12T10:01:30Z");
        assert_eq!(rations.over("sim", free, 99, now), None);
    }
}
