//! Whether the computer's clock can be believed.
//!
//! A small computer may wake up years back after a power cut, and anybody may set a clock. A
//! nudge that goes on the wrong day does harm; a text that is not taken in does more. So while
//! the clock is in doubt nudges wait, texts are taken in, and time is counted on from the last
//! moment that was right, or stands at the last stored one. The guard goes on by itself once the clock is right again.
//!
//! In doubt is a clock that stands before the last stored fact or message, or that moved against
//! the steady clock by more than an hour, or that stands long after the last stored moment at a
//! start. A clock that is wrong from the start and stands shortly after that moment cannot be told
//! from a right one. Deliberately absent: reading clocks.

use std::{fmt, time::Duration};

use chrono::{DateTime, TimeDelta, Utc};

use crate::words::limits;

/// No clock is right that stands before the day on which this was written: 2026-01-01.
const NOT_BEFORE_SECS: i64 = 1_767_225_600;

/// Watches a clock.
#[derive(Clone, Debug, Default)]
pub struct ClockGuard {
    /// The time and the steady clock when they were last right; none before the first time.
    right: Option<(DateTime<Utc>, Duration)>,
    /// The last stored moment at the start, while the clock stood long after it.
    left_off: Option<DateTime<Utc>>,
    doubt: Option<Doubt>,
}

/// Why a clock is not believed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doubt {
    /// It stands before the last stored fact or message.
    Behind {
        /// By so many seconds.
        secs: i64,
    },
    /// At the start it stood long after the last stored fact or message, and stands there still.
    Ahead {
        /// By so many seconds.
        secs: i64,
    },
    /// It was put forward, or back if negative.
    Moved {
        /// By so many seconds.
        secs: i64,
    },
}

impl ClockGuard {
    /// Compares the computer's time with the steady clock and with what is stored, and gives the
    /// time to work with: the computer's, or the best guess while that is in doubt.
    pub fn look(
        &mut self,
        computer: DateTime<Utc>,
        steady: Duration,
        latest: DateTime<Utc>,
    ) -> DateTime<Utc> {
        let stored = latest;
        let latest = latest.max(DateTime::from_timestamp(NOT_BEFORE_SECS, 0).unwrap_or_default());
        let expected = self
            .right
            .map(|(then, at)| then + passed(at, steady))
            .unwrap_or(computer);
        let moved = (computer - expected).num_seconds();
        let behind = (latest - computer).num_seconds();
        // Texts that come meanwhile carry the last stored moment along, so the first one counts.
        let is_start = self.right.is_none();
        let left_off = self.left_off.unwrap_or(stored);
        let ahead = (computer - left_off).num_seconds();
        let is_ahead = is_start
            && left_off.timestamp() > NOT_BEFORE_SECS
            && ahead > TimeDelta::days(limits::CLOCK_AHEAD_DAYS).num_seconds();
        self.left_off = is_ahead.then_some(left_off);
        self.doubt = if moved.abs() > limits::CLOCK_JUMP_SECS {
            Some(Doubt::Moved { secs: moved })
        } else if behind > limits::CLOCK_BACK_SECS {
            Some(Doubt::Behind { secs: behind })
        } else if is_ahead {
            Some(Doubt::Ahead { secs: ahead })
        } else {
            self.right = Some((computer, steady));
            None
        };
        let now = match self.doubt {
            Some(Doubt::Moved { .. }) => expected,
            // Counted on, time would carry the last stored moment along with every text, and a
            // clock that was put right would never catch up.
            // The service may have been off for a season, and texts must get their days.
            Some(Doubt::Behind { .. } | Doubt::Ahead { .. }) | None => computer,
        };
        now.max(latest)
    }

    /// Why the time is a guess, if it is.
    #[must_use]
    pub const fn doubt(&self) -> Option<Doubt> {
        self.doubt
    }

    /// A person says that the clock is right as it stands.
    pub const fn believe(&mut self, computer: DateTime<Utc>, steady: Duration) {
        self.right = Some((computer, steady));
        self.left_off = None;
    }
}

fn passed(from: Duration, to: Duration) -> TimeDelta {
    TimeDelta::from_std(to.saturating_sub(from)).unwrap_or_default()
}

impl fmt::Display for Doubt {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let minutes = |secs: &i64| secs.abs() / 60;
        match self {
            Self::Behind { secs } => write!(
                f,
                "the clock stands {} minutes before the last stored text",
                minutes(secs)
            )?,
            Self::Ahead { secs } => write!(
                f,
                "the clock stands {} days after the last stored text",
                secs / (24 * 60 * 60)
            )?,
            Self::Moved { secs } if *secs < 0 => {
                write!(f, "the clock was put back by {} minutes", minutes(secs))?;
            }
            Self::Moved { secs } => {
                write!(f, "the clock was put forward by {} minutes", minutes(secs))?;
            }
        }
        f.write_str(
            "; nudges wait until it is right again. If it is right, run `budwood release CONFIG`",
        )
    }
}
