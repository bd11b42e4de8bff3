//! Notices a step that does not end.
//!
//! A disk that no longer answers, or a library that waits for itself, would leave a service that
//! looks healthy and takes nothing. Deliberately absent: why, which only the machine's own log
//! can tell.

use std::sync::atomic::{AtomicU64, Ordering};

/// Steps begun and ended: odd while one is under way.
#[derive(Default)]
pub(super) struct Turns(AtomicU64);

impl Turns {
    /// A step begins or ends.
    pub(super) fn turn(&self) {
        self.0.fetch_add(1, Ordering::SeqCst);
    }

    /// How many have begun and ended, counted together.
    #[cfg(test)]
    pub(super) fn seen(&self) -> u64 {
        self.0.load(Ordering::SeqCst)
    }
}

/// Counts how often the same step was seen under way.
#[derive(Default)]
pub(super) struct Watch {
    last: u64,
    looks: u32,
}

impl Watch {
    /// Looks once; gives whether the same step has now been seen so often.
    pub(super) fn is_stalled(&mut self, turns: &Turns, looks_max: u32) -> bool {
        let turn = turns.0.load(Ordering::SeqCst);
        let is_same = turn == self.last && !turn.is_multiple_of(2);
        self.looks = if is_same { self.looks + 1 } else { 0 };
        self.last = turn;
        self.looks >= looks_max
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_one_step_that_goes_on_is_a_stall() {
        let (turns, mut watch) = (Turns::default(), Watch::default());
        let mut look = |turns: &Turns| watch.is_stalled(turns, 2);
        assert!(!look(&turns) && !look(&turns) && !look(&turns), "idle");
        turns.turn();
        assert!(!look(&turns) && !look(&turns));
        turns.turn();
        turns.turn();
        assert!(!look(&turns) && !look(&turns), "another step");
        assert!(look(&turns), "the same again");
        turns.turn();
        assert!(!look(&turns), "it has ended");
    }
}
