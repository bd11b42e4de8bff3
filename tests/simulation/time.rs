//! The true time, and the computer's clock, which somebody may set wrong.
//!
//! The engine gets its time as in service: from what watches the computer's clock.

use budwood::{
    engine::Engine,
    service::{
        clock::{Clock, FixedClock},
        server::WatchedTime,
    },
};
use chrono::{DateTime, TimeDelta, Utc};

use super::chance::Chance;

/// A clock that is wrong by more than this must not send a nudge.
const WRONG_MINUTES: i64 = 60;

pub(super) struct Time {
    /// The true time.
    now: DateTime<Utc>,
    /// The computer's clock.
    hand: FixedClock,
    watched: WatchedTime,
    /// How far the computer's clock is from the true time.
    off: TimeDelta,
    /// Since when the computer's clock is as it is.
    set_at: DateTime<Utc>,
    /// The engine has believed the clock since it started.
    believed: bool,
}

impl Time {
    pub(super) fn at(now: DateTime<Utc>) -> Self {
        let hand = FixedClock::at(now);
        let watched = WatchedTime::new(Clock::Fixed(hand.clone()));
        Self {
            now,
            hand,
            watched,
            off: TimeDelta::zero(),
            set_at: now,
            believed: false,
        }
    }

    /// The true time.
    pub(super) const fn now(&self) -> DateTime<Utc> {
        self.now
    }

    /// What the computer's clock shows.
    pub(super) fn computer(&self) -> DateTime<Utc> {
        self.hand.now()
    }

    pub(super) fn pass_until(&mut self, later: DateTime<Utc>) {
        if later > self.now {
            self.hand.advance(later - self.now);
            self.now = later;
        }
    }

    /// The engine's time.
    pub(super) fn look(&mut self, engine: &mut Engine) -> DateTime<Utc> {
        let now = self.watched.look(engine);
        self.believed |= now == self.computer();
        now
    }

    /// Whether the computer's clock is so wrong that nothing may hang on it.
    pub(super) fn is_wrong(&self) -> bool {
        self.off.abs() > TimeDelta::minutes(WRONG_MINUTES)
    }

    /// For how long the computer's clock has been right; none while it is not.
    pub(super) fn right_for(&self) -> Option<TimeDelta> {
        self.off.is_zero().then(|| self.now - self.set_at)
    }

    /// Somebody sets the clock: a little, or by hours, days, years; or puts it right again.
    ///
    /// Not one that has stood behind since the start: when that leaps, nothing tells whether it
    /// leaps to the right time or past it.
    pub(super) fn set_by_somebody(&mut self, chance: &mut Chance) {
        let off = if self.off.is_zero() && self.believed {
            let years = i64::from(1 + chance.below(30)) * 365;
            let forward = *chance.pick(&[
                TimeDelta::seconds(40),
                TimeDelta::minutes(20),
                TimeDelta::minutes(55),
                TimeDelta::hours(3),
                TimeDelta::days(1),
                TimeDelta::days(35),
                TimeDelta::days(years),
            ]);
            if chance.once_in(2) { forward } else { -forward }
        } else {
            TimeDelta::zero()
        };
        self.set_off(off);
    }

    pub(super) fn put_right(&mut self) {
        self.set_off(TimeDelta::zero());
    }

    fn set_off(&mut self, off: TimeDelta) {
        if off != self.off {
            self.set_at = self.now;
        }
        self.off = off;
        self.hand.set(self.now + off);
    }

    /// The computer starts again: with the right time from the network, or without any.
    pub(super) fn start_again(&mut self, chance: &mut Chance) {
        if self.is_wrong() || chance.once_in(10) {
            let first = DateTime::from_timestamp(9, 0).expect("1970");
            let off = if chance.once_in(2) {
                first - self.now
            } else {
                TimeDelta::zero()
            };
            self.set_off(off);
        }
        self.watched = WatchedTime::new(Clock::Fixed(self.hand.clone()));
        self.believed = false;
    }

    /// The adviser says that the clock is right as it stands.
    pub(super) fn believe(&mut self, engine: &mut Engine) {
        self.watched.believe(engine);
    }
}
