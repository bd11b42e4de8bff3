//! The operator is told each morning how the service is, and at once when a line falls silent, by the
//! same outbox as everything else. What was told in the morning is kept with what left in the month, so that no start tells it again.

use chrono::TimeDelta;

use crate::{
    engine::{said::Said, step::Step},
    words::limits,
};

impl Step<'_> {
    /// The line of this morning, if its time has come. One that is hours late waits for the next
    /// morning.
    pub(crate) fn morning_line(&mut self) -> Option<Said> {
        let view = self.view();
        if view.next_morning()? > self.now {
            return None;
        }
        let (day, began) = view.last_morning()?;
        let is_late = self.now - began > TimeDelta::hours(limits::MORNING_HOURS);
        let said = view.to_operator(view.morning());
        self.ledger().told_on = Some(day);
        said.filter(|_| !is_late)
    }

    /// What is wrong, as soon as a line has fallen silent: the morning may be far.
    pub(crate) fn silence_told(&mut self) -> Option<Said> {
        let names = self.setup.ways.names();
        if !self.world.links.note_silence(names, self.now) {
            return None;
        }
        let view = self.view();
        view.to_operator(view.morning())
    }
}
