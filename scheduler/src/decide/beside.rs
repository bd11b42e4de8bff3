//! A question or an alarm does not silence the reports beside it.

use alloc::boxed::Box;

use budwood_parser::{Reading, Sender};

use super::{Answer, Decision, Scene, told};

/// What is decided of a text that says something else too: both, where both are sure.
pub(super) fn with_reports(reading: &Reading, scene: &Scene<'_>, beside: Decision) -> Decision {
    let reports = reading.both && !reading.reports.is_empty() && reading.stances.is_empty();
    let stays = matches!(
        beside,
        Decision::Person(_) | Decision::Answer(Answer::Query(_))
    );
    if reports && stays && scene.sender != Sender::Unknown {
        return Decision::Both(Box::new(told(reading, scene)), Box::new(beside));
    }
    beside
}
