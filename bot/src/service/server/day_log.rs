//! A line of the log for each day (UTC): what came in, what left, what failed, what waits, and what
//! the month has cost.
//!
//! A day in which the service was stopped has a line for each of its parts. Deliberately absent:
//! who texted, and what.

use std::time::Duration;

use chrono::{DateTime, NaiveDate, Utc};
use tokio::time::sleep;
use tracing::info;

use super::handle::Handle;
use crate::{
    service::{
        clock::Clock,
        port::{Health, Intake, Stop},
    },
    words::traffic::Passed,
};

/// A day that is over is noticed by then.
const LOOK: Duration = Duration::from_secs(20);

/// Writes the lines until the service stops, and one for what was left then.
pub(crate) async fn keep(handle: Handle, clock: Clock, mut stop: Stop) {
    let mut day = Day::beginning(clock.now());
    while !*stop.borrow() {
        tokio::select! {
            _ = stop.changed() => {}
            () = sleep(LOOK) => {}
        }
        let health = handle.health();
        if let Some((on, passed)) = day.over(clock.now(), total(&health)) {
            write(on, passed, &health);
        }
    }
    let health = handle.health();
    let (on, passed) = day.cut(clock.now(), total(&health));
    write(on, passed, &health);
}

fn write(on: NaiveDate, passed: Passed, health: &Health) {
    info!(
        day = %on,
        texts_in = passed.texts_in,
        texts_out = passed.texts_out,
        failed = passed.failed,
        waiting = health.outbox_waiting,
        month_parts = health.month.parts,
        month_money = health.month.money(),
        "what passed in a day"
    );
}

/// What passed by all gateways since the start.
fn total(health: &Health) -> Passed {
    let all = health.gateways.iter().map(|gateway| gateway.passed);
    all.fold(Passed::default(), |sum, one| Passed {
        texts_in: sum.texts_in + one.texts_in,
        receipts: sum.receipts + one.receipts,
        texts_out: sum.texts_out + one.texts_out,
        failed: sum.failed + one.failed,
    })
}

/// A day, and what had passed when it began.
struct Day {
    on: NaiveDate,
    before: Passed,
}

impl Day {
    fn beginning(now: DateTime<Utc>) -> Self {
        Self {
            on: now.date_naive(),
            before: Passed::default(),
        }
    }

    /// What passed in it, if it is over: another one begins. A clock that was put back begins one
    /// too, so that nothing is counted twice.
    fn over(&mut self, now: DateTime<Utc>, total: Passed) -> Option<(NaiveDate, Passed)> {
        (now.date_naive() != self.on).then(|| self.cut(now, total))
    }

    fn cut(&mut self, now: DateTime<Utc>, total: Passed) -> (NaiveDate, Passed) {
        let before = std::mem::replace(&mut self.before, total);
        let on = std::mem::replace(&mut self.on, now.date_naive());
        let passed = Passed {
            texts_in: total.texts_in.saturating_sub(before.texts_in),
            receipts: total.receipts.saturating_sub(before.receipts),
            texts_out: total.texts_out.saturating_sub(before.texts_out),
            failed: total.failed.saturating_sub(before.failed),
        };
        (on, passed)
    }
}

#[cfg(test)]
mod tests {
    use chrono::TimeDelta;

    use super::*;

    fn passed(texts_in: u64, texts_out: u64, failed: u64) -> Passed {
        Passed {
            texts_in,
            texts_out,
            failed,
            ..Passed::default()
        }
    }

    #[test]
    fn each_day_tells_what_passed_in_it_and_nothing_is_told_twice() {
        let noon: DateTime<Utc> = "2027-03-01T12:00:00Z".parse().unwrap();
        let mut day = Day::beginning(noon);
        let hours = |hours| noon + TimeDelta::hours(hours);
        let on = |text: &str| text.parse::<NaiveDate>().unwrap();
        assert_eq!(day.over(hours(11), passed(3, 2, 0)), None);
        let first = day.over(hours(12), passed(5, 4, 1));
        assert_eq!(first, Some((on("2027-03-01"), passed(5, 4, 1))));
        assert_eq!(day.over(hours(13), passed(6, 4, 1)), None);
        let second = day.over(hours(40), passed(6, 5, 1));
        assert_eq!(second, Some((on("2027-03-02"), passed(1, 1, 0))));
        let rest = day.cut(hours(41), passed(9, 5, 2));
        assert_eq!(rest, (on("2027-03-03"), passed(3, 0, 1)));
    }
}
