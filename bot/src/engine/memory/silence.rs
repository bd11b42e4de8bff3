//! How long a line is usually quiet, and when it is quiet for longer.
//!
//! A line that is broken and does not know it looks like one on which nobody writes. What tells the
//! two apart is its own last week.

use std::collections::VecDeque;

use chrono::{DateTime, TimeDelta, Utc};

use crate::words::limits;

/// When something came by a line, as far as it matters.
#[derive(Debug, Default)]
pub(super) struct Heard {
    first: Option<DateTime<Utc>>,
    last: Option<DateTime<Utc>>,
    /// Pauses of the last week that are longer than each that came after them: when they ended, and
    /// how long they were.
    pauses: VecDeque<(DateTime<Utc>, TimeDelta)>,
}

impl Heard {
    /// Something came.
    pub(super) fn note(&mut self, at: DateTime<Utc>) {
        self.first = Some(self.first.map_or(at, |first| first.min(at)));
        let Some(last) = self.last.replace(at) else {
            return;
        };
        // What comes out of order ends no pause.
        if at <= last {
            self.last = Some(last);
            return;
        }
        let pause = at - last;
        while self.pauses.back().is_some_and(|(_, back)| *back <= pause) {
            self.pauses.pop_back();
        }
        self.pauses.push_back((at, pause));
        let week_ago = at - TimeDelta::days(limits::SILENT_DAYS);
        while self.pauses.front().is_some_and(|(end, _)| *end < week_ago) {
            self.pauses.pop_front();
        }
    }

    pub(super) const fn last(&self) -> Option<DateTime<Utc>> {
        self.last
    }

    /// From when on it is quieter than it ever was in the week before, if nothing comes. What was
    /// missed before the service `began` was missed by the service, so that counts only after a
    /// whole week.
    pub(super) fn silent_from(&self, began: Option<DateTime<Utc>>) -> Option<DateTime<Utc>> {
        let (first, last) = (self.first?, self.last?);
        let week = TimeDelta::days(limits::SILENT_DAYS);
        // A start recalls no more than a week.
        let is_known = last - first >= TimeDelta::days(limits::SILENT_DAYS - 1);
        let longest = self.pauses.front().filter(|_| is_known);
        let usual = longest.map_or(week, |(_, longest)| {
            // A quarter more, for what comes each day comes a little later on some.
            let usual = *longest + *longest / 4;
            usual.max(TimeDelta::hours(limits::SILENT_HOURS_MIN))
        });
        let since = last.max(began.unwrap_or(last));
        Some((last + week).min(since + usual))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(hours: i64) -> DateTime<Utc> {
        DateTime::from_timestamp(1_790_000_000 + hours * 3_600, 0).unwrap()
    }

    /// Something every so many hours of so many days.
    fn every(hours: usize, days: i64) -> Heard {
        let mut heard = Heard::default();
        for hour in (0..=days * 24).step_by(hours) {
            heard.note(at(hour));
        }
        heard
    }

    #[test]
    fn a_line_is_silent_when_it_is_quieter_than_its_last_week() {
        // Every 16 hours, and a quarter more.
        assert_eq!(every(16, 10).silent_from(None), Some(at(240 + 20)));
        // A busy one is quiet at night.
        assert_eq!(every(1, 10).silent_from(None), Some(at(240 + 12)));
        // One that is known for some days only, or hardly used.
        assert_eq!(every(1, 5).silent_from(None), Some(at(120 + 7 * 24)));
        assert_eq!(every(160, 20).silent_from(None), Some(at(480 + 7 * 24)));
        assert_eq!(Heard::default().silent_from(None), None);
    }

    #[test]
    fn the_longest_pause_counts_for_a_week() {
        let mut heard = every(1, 7);
        let begin = 7 * 24;
        heard.note(at(begin + 40));
        for hour in (begin + 40..begin + 40 + 7 * 24).step_by(10) {
            heard.note(at(hour));
            assert_eq!(heard.silent_from(None), Some(at(hour + 50)), "{hour}");
        }
        heard.note(at(begin + 40 + 7 * 24 + 2));
        let from = heard.silent_from(None).unwrap();
        assert_eq!(
            from - heard.last().unwrap(),
            TimeDelta::minutes(12 * 60 + 30)
        );
    }

    #[test]
    fn what_comes_out_of_order_is_no_pause() {
        let mut heard = every(1, 10);
        let before = heard.silent_from(None);
        heard.note(at(3));
        assert_eq!(
            (heard.last(), heard.silent_from(None)),
            (Some(at(240)), before)
        );
    }

    #[test]
    fn the_time_before_a_start_is_nobodys_silence() {
        let heard = every(1, 10);
        assert_eq!(heard.silent_from(Some(at(300))), Some(at(312)));
        // But for a whole week.
        assert_eq!(heard.silent_from(Some(at(240 + 160))), Some(at(240 + 168)));
    }
}
