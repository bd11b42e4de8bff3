//! What may still be begun while the disk is short of room.

use super::Job;
use crate::{engine::Input, gateway::Refused};

/// Keeps what ends work that has begun; all else waits outside until there is room again.
pub(super) fn refuse_new_work(batch: Vec<Job>) -> Vec<Job> {
    let (kept, refused): (Vec<Job>, Vec<Job>) =
        batch.into_iter().partition(|job| match &job.input {
            Input::Tried { .. } | Input::Copy(_) => true,
            Input::Text(_)
            | Input::Receipt(_)
            | Input::Wake
            | Input::ClaimNext
            | Input::Roll(_)
            | Input::Sheet(_)
            | Input::Release => false,
        });
    for job in refused {
        // Whoever asked may have gone away.
        let _ = job.told.send(Err(Refused::Unhealthy));
    }
    kept
}
