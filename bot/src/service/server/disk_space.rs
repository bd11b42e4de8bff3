//! Room on the disk: below the reserve nothing new is begun.
//!
//! A disk that fills up in the middle of a write leaves the store half-written. So the engine's
//! thread looks before each step, and while there is too little room it writes nothing but the
//! end of what it began. Providers keep their texts and bring them again. When there is room
//! again, work goes on. Deliberately absent: making room; only a person knows what may go.

use std::{path::PathBuf, time::Duration};

use tracing::{info, warn};

use super::{disk::free_bytes, handle::Job};
use crate::{
    engine::Input,
    service::{config::StoreConfig, port::Refused},
};

/// While there is too little room it is looked at this often.
pub(super) const LOOK: Duration = Duration::from_secs(1);

/// Less than so many times the reserve is told to the operator while there is still time.
const LOW: u64 = 2;

const MIB: u64 = 1024 * 1024;

/// What is known of the room on the store's disk.
#[derive(Debug)]
pub struct Room {
    folder: PathBuf,
    reserve: u64,
    short: Option<String>,
    is_low: bool,
}

impl Room {
    /// The room on the disk of this store. Nothing is looked at yet.
    #[must_use]
    pub fn new(config: &StoreConfig) -> Self {
        Self {
            folder: config.folder.clone(),
            reserve: u64::from(config.reserve_mb) * MIB,
            short: None,
            is_low: false,
        }
    }

    /// Looks again; gives whether it turned short or turned enough.
    pub(super) fn look(&mut self) -> bool {
        let was_short = self.is_short();
        let free = free_bytes(&self.folder);
        self.is_low = free
            .as_ref()
            .map_or(true, |free| *free < self.reserve * LOW);
        self.short = match free {
            Ok(free) => short_of(free, self.reserve),
            Err(error) => Some(format!("the free space of the disk is not known: {error}")),
        };
        was_short != self.is_short()
    }

    /// The folder that it is about.
    pub(super) fn folder(&self) -> PathBuf {
        self.folder.clone()
    }

    /// Logs a turn.
    pub(super) fn log(&self) {
        match &self.short {
            Some(why) => warn!(why, "new work is refused until there is room"),
            None => info!("there is room on the disk again; work goes on"),
        }
    }

    /// Whether there is too little, as of the last look.
    pub(super) const fn is_short(&self) -> bool {
        self.short.is_some()
    }

    /// Whether there soon will be too little, as of the last look.
    pub(super) const fn is_low(&self) -> bool {
        self.is_low
    }

    /// Why no new work is taken, if so.
    pub(super) fn trouble(&self) -> Option<String> {
        self.short.clone()
    }
}

fn short_of(free: u64, reserve: u64) -> Option<String> {
    (free < reserve).then(|| {
        format!(
            "the disk of the store has {} MiB free, less than the reserve of {} MiB: make room; \
             texts are refused until then",
            free / MIB,
            reserve / MIB
        )
    })
}

/// Keeps what ends work that has begun; all else waits outside until there is room again.
pub(super) fn refuse_new_work(batch: Vec<Job>) -> Vec<Job> {
    let (kept, refused): (Vec<Job>, Vec<Job>) =
        batch.into_iter().partition(|job| match &job.input {
            Input::Tried { .. }
            | Input::Link { .. }
            | Input::Signs { .. }
            | Input::Copy(_)
            | Input::Setup(_)
            | Input::Look { .. } => true,
            Input::Text(_)
            | Input::Part(_)
            | Input::MissedCall { .. }
            | Input::Receipt(_)
            | Input::Wake
            | Input::ClaimNext { .. }
            | Input::Roll(_)
            | Input::List(_)
            | Input::Unload(_)
            | Input::Give(_)
            | Input::Outline(_)
            | Input::Print(_)
            | Input::Door(_)
            | Input::Desk { .. }
            | Input::Release => false,
        });
    for job in refused {
        // Whoever asked may have gone away.
        let _ = job.told.send(Err(Refused::Unhealthy));
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn short_is_below_the_reserve_and_says_what_to_do() {
        assert_eq!(short_of(16 * MIB, 16 * MIB), None);
        let why = short_of(16 * MIB - 1, 16 * MIB).unwrap();
        assert!(
            why.contains("15 MiB free") && why.contains("make room"),
            "{why}"
        );
    }
}
