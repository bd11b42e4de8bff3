//! A question or an alarm does not silence the reports beside it, and what is asked is not met with
//! silence.

use alloc::boxed::Box;

use budwood_parser::{Act, Reading, Sender};

use super::{Answer, Concern, Decision, Quiet, Scene, Unclear, told};

/// What is decided of a text that says something else too: both, where both are sure.
pub(super) fn with_reports(reading: &Reading, scene: &Scene<'_>, beside: Decision) -> Decision {
    let reports = reading.both && !reading.reports.is_empty() && reading.stances.is_empty();
    let stays = matches!(
        beside,
        Decision::Person(_) | Decision::Answer(Answer::Query(_))
    );
    // Whoever asks two things gets two answers.
    let mut beside = beside;
    for act in reading.acts.iter().skip(1) {
        if let Act::Query(query) = act
            && stays
            && scene.sender != Sender::Unknown
        {
            let answer = Decision::Answer(Answer::Query(Box::new(query.clone())));
            beside = Decision::Both(Box::new(beside), Box::new(answer));
        }
    }
    if reports && stays && scene.sender != Sender::Unknown {
        return Decision::Both(Box::new(told(reading, scene)), Box::new(beside));
    }
    beside
}

/// Where nothing is made of a text and something is asked in it, a person is told.
pub(super) fn or_a_person(reading: &Reading, scene: &Scene<'_>, decision: Decision) -> Decision {
    let is_nothing = matches!(
        decision,
        Decision::Silent(Quiet::NotWork | Quiet::NothingAsked | Quiet::Stance(_))
            | Decision::Help(Unclear::NoReport | Unclear::NotDone | Unclear::NothingAsked)
    );
    if !(reading.asks && is_nothing) || scene.sender == Sender::Unknown {
        return decision;
    }
    Decision::Person(if reading.may_need {
        Concern::Unclear
    } else {
        Concern::Question
    })
}
