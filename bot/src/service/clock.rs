//! The only reader of the clock.
//!
//! Everything else gets the time as an argument, or a [`Clock`] as a value. Tests and the demo
//! give one that stands still until it is moved. Whether the computer's time can be believed is
//! found out in [`guard`]. Deliberately absent: waiting, and time zones.

pub mod guard;

use std::{
    sync::{
        Arc, OnceLock,
        atomic::{AtomicI64, AtomicU64, Ordering},
    },
    time::{Duration, Instant},
};

use chrono::{DateTime, TimeDelta, Utc};

/// Tells the time.
#[derive(Clone, Debug)]
pub enum Clock {
    /// The computer's own time.
    System,
    /// A time that only moves when it is told to.
    Fixed(FixedClock),
}

impl Clock {
    /// The time now.
    #[must_use]
    pub fn now(&self) -> DateTime<Utc> {
        match self {
            Self::System => system_now(),
            Self::Fixed(clock) => clock.now(),
        }
    }

    /// How much time has passed, on a clock that nobody can set. It stands still while the
    /// computer sleeps.
    #[must_use]
    pub fn steady(&self) -> Duration {
        match self {
            Self::System => system_steady(),
            Self::Fixed(clock) => clock.steady(),
        }
    }
}

/// A time that stands still. Its copies share one time.
#[derive(Clone, Debug)]
pub struct FixedClock {
    /// Microseconds since 1970, so that setting and reading need no lock.
    micros: Arc<AtomicI64>,
    /// Microseconds by which it was moved forward.
    passed_micros: Arc<AtomicU64>,
}

impl FixedClock {
    /// A clock that stands at this time.
    #[must_use]
    pub fn at(now: DateTime<Utc>) -> Self {
        Self {
            micros: Arc::new(AtomicI64::new(now.timestamp_micros())),
            passed_micros: Arc::default(),
        }
    }

    /// The time that it stands at.
    #[must_use]
    pub fn now(&self) -> DateTime<Utc> {
        DateTime::from_timestamp_micros(self.micros.load(Ordering::SeqCst))
            .expect("only times that were valid are put in")
    }

    /// How much time has passed.
    #[must_use]
    pub fn steady(&self) -> Duration {
        Duration::from_micros(self.passed_micros.load(Ordering::SeqCst))
    }

    /// Puts it at this time, as somebody who sets a clock: no time passes.
    pub fn set(&self, now: DateTime<Utc>) {
        self.micros.store(now.timestamp_micros(), Ordering::SeqCst);
    }

    /// Lets this much time pass; stays where it is if that leaves the calendar.
    pub fn advance(&self, by: TimeDelta) {
        if let Some(later) = self.now().checked_add_signed(by) {
            self.set(later);
            let micros = by.num_microseconds().unwrap_or_default();
            let passed = u64::try_from(micros).unwrap_or_default();
            self.passed_micros.fetch_add(passed, Ordering::SeqCst);
        }
    }
}

#[expect(
    clippy::disallowed_methods,
    reason = "this is the one place that reads the clock"
)]
fn system_now() -> DateTime<Utc> {
    Utc::now()
}

#[expect(
    clippy::disallowed_methods,
    reason = "this is the one place that reads the clock"
)]
fn system_steady() -> Duration {
    static FIRST: OnceLock<Instant> = OnceLock::new();
    FIRST.get_or_init(Instant::now).elapsed()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn copies_of_a_fixed_clock_share_one_time() {
        let start = DateTime::from_timestamp(1_614_265_330, 0).unwrap();
        let hand = FixedClock::at(start);
        let clock = Clock::Fixed(hand.clone());
        assert_eq!(clock.now(), start);
        hand.advance(TimeDelta::minutes(5));
        assert_eq!(clock.now(), start + TimeDelta::minutes(5));
    }

    #[test]
    fn a_fixed_clock_never_leaves_the_calendar() {
        let clock = FixedClock::at(DateTime::<Utc>::MAX_UTC);
        let before = clock.now();
        clock.advance(TimeDelta::days(1));
        assert_eq!(clock.now(), before);
    }
}
