//! The engine's time: the computer's, as long as it can be believed.

use chrono::{DateTime, TimeDelta, Utc};

use crate::{
    engine::Engine,
    service::clock::{Clock, guard::ClockGuard},
};

/// The computer's clock and what watches it.
#[derive(Debug)]
pub struct WatchedTime {
    clock: Clock,
    guard: ClockGuard,
    /// How far the engine's time is from the computer's; nothing while that can be believed.
    off: TimeDelta,
}

impl WatchedTime {
    /// Nothing is known yet of this clock.
    #[must_use]
    pub fn new(clock: Clock) -> Self {
        Self {
            clock,
            guard: ClockGuard::default(),
            off: TimeDelta::zero(),
        }
    }

    /// The time to work with. Nudges wait while it is a guess.
    pub fn look(&mut self, engine: &mut Engine) -> DateTime<Utc> {
        let (computer, steady) = (self.clock.now(), self.clock.steady());
        let now = self.guard.look(computer, steady, engine.latest());
        let is_doubted = self.guard.doubt().is_some();
        engine.let_nudges_wait(is_doubted);
        self.off = if is_doubted {
            now - computer
        } else {
            TimeDelta::zero()
        };
        now
    }

    /// A person says that the computer's clock is right as it stands.
    pub fn believe(&mut self, engine: &mut Engine) {
        self.guard.believe(self.clock.now(), self.clock.steady());
        engine.believe(self.clock.now());
    }

    /// Whether the computer's clock is not believed.
    pub(super) fn is_doubted(&self) -> bool {
        self.guard.doubt().is_some()
    }

    /// Why some texts do not leave, in words for health and log.
    pub(super) fn why_held(&self, engine: &Engine) -> Option<String> {
        if let Some(doubt) = self.guard.doubt() {
            return Some(doubt.to_string());
        }
        let since = engine.held_since()?.format("%Y-%m-%d %H:%M");
        Some(format!(
            "held: the store was filled from a backup or a log on {since} UTC, and no text leaves \
             until `budwood release CONFIG`"
        ))
    }

    /// When the next text can be sent, on the computer's clock: that is what the senders look at.
    pub(super) fn next_try(&self, engine: &Engine) -> Option<DateTime<Utc>> {
        Some(engine.next_try()? - self.off)
    }
}
