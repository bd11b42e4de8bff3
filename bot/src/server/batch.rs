//! What shares one commit: who else has come, and what may still be begun.

use std::sync::mpsc::Receiver;

use super::Job;
use crate::{clock::Clock, engine::Input, gateway::Refused, limits};

/// Takes what else has come. Those who were told together send their next texts together, within
/// a moment of each other: as many as last time share this flush too, instead of most of them
/// waiting for the flush of the first. One who is alone never waits.
pub(super) fn gather(
    inbox: &Receiver<Job>,
    batch: &mut Vec<Job>,
    last_batch: usize,
    clock: &Clock,
) {
    batch.extend(inbox.try_iter().take(limits::BATCH_MAX - batch.len()));
    let end = clock.now() + limits::GATHER_MAX;
    while !batch.is_empty() && batch.len() < last_batch && clock.now() < end {
        match inbox.recv_timeout(limits::GATHER) {
            Ok(job) => batch.push(job),
            Err(_) => return,
        }
    }
}

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
