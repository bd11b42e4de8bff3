//! What an account brought just before its line broke, so that it is not taken in twice.
//!
//! A centre that did not see our answer delivers again on the next line, with the same octets and
//! neither an id nor a time (SMPP 3.4, 4.6.1). Deliberately absent: what came before a start; the
//! engine knows that.

use std::{
    collections::VecDeque,
    sync::{Mutex, PoisonError},
};

use chrono::{DateTime, TimeDelta, Utc};

use crate::{service::clock::Clock, words::limits};

/// Bodies that are kept: more than a centre delivers without an answer.
const KEPT_MAX: usize = 256;

/// An answer that was written so long before the line broke has arrived.
const ANSWERED: TimeDelta = TimeDelta::minutes(1);

/// Bodies that were taken.
pub(super) struct Lately {
    clock: Clock,
    taken: Mutex<VecDeque<Body>>,
}

struct Body {
    at: DateTime<Utc>,
    octets: Vec<u8>,
    /// The line has ended since, and may have lost our answer.
    is_doubtful: bool,
}

impl Lately {
    pub(super) const fn new(clock: Clock) -> Self {
        Self {
            clock,
            taken: Mutex::new(VecDeque::new()),
        }
    }

    fn with<T>(&self, look: impl FnOnce(&mut VecDeque<Body>, DateTime<Utc>) -> T) -> T {
        let mut taken = self.taken.lock().unwrap_or_else(PoisonError::into_inner);
        look(&mut taken, self.clock.now())
    }

    /// It is taken now.
    pub(super) fn keep(&self, octets: Vec<u8>) {
        self.with(|taken, at| {
            if taken.len() >= KEPT_MAX {
                taken.pop_front();
            }
            taken.push_back(Body {
                at,
                octets,
                is_doubtful: false,
            });
        });
    }

    /// The line has ended.
    pub(super) fn line_ended(&self) {
        self.with(|taken, now| {
            taken.retain(|body| body.is_doubtful || now - body.at <= ANSWERED);
            for body in taken {
                body.is_doubtful = true;
            }
        });
    }

    /// Whether this was taken on a line that broke, and comes again. It does so once.
    pub(super) fn comes_again(&self, octets: &[u8]) -> bool {
        self.with(|taken, now| {
            let earliest = now - TimeDelta::minutes(limits::CUT_OFF_MINUTES);
            let is_it =
                |body: &Body| body.is_doubtful && body.at >= earliest && body.octets == octets;
            let found = taken.iter().position(is_it);
            found.and_then(|at| taken.remove(at)).is_some()
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::service::clock::FixedClock;

    #[test]
    fn only_what_was_taken_just_before_a_break_comes_again_and_only_once() {
        let clock = FixedClock::at(DateTime::UNIX_EPOCH);
        let lately = Lately::new(Clock::Fixed(clock.clone()));
        lately.keep(b"old".to_vec());
        clock.advance(TimeDelta::minutes(2));
        lately.keep(b"new".to_vec());
        assert!(!lately.comes_again(b"new"), "the line is whole");
        lately.line_ended();
        assert!(!lately.comes_again(b"old") && !lately.comes_again(b"other"));
        assert!(lately.comes_again(b"new") && !lately.comes_again(b"new"));
        lately.keep(b"late".to_vec());
        lately.line_ended();
        clock.advance(TimeDelta::minutes(limits::CUT_OFF_MINUTES + 1));
        assert!(!lately.comes_again(b"late"));
    }
}
