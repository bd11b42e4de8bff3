//! Nudges that were given, counted anew for each round of a job.

use chrono::NaiveDate;

use super::{BlockState, NudgeTrack};
use crate::words::job::TaskKind;

impl BlockState {
    /// One more was given.
    pub(super) fn nudged(&mut self, task: TaskKind, on: NaiveDate, due: NaiveDate) {
        match self.nudges.get_mut(&task) {
            Some(track) if track.due == due => {
                track.tries = track.tries.saturating_add(1);
                track.last_on = track.last_on.max(on);
            }
            _ => {
                self.nudges.insert(
                    task,
                    NudgeTrack {
                        due,
                        tries: 1,
                        first_on: on,
                        last_on: on,
                    },
                );
            }
        }
    }
}
