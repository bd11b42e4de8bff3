//! What a known phone is owed where its text is sure of nothing: it is asked about, answered, or
//! told to a person.
//!
//! Silence is left for thanks, greetings, adverts, and talk without a word of work or need.

use alloc::vec::Vec;

use budwood_parser::{Alarm, Bare, Cause, Effect, Reading, Report, Stance, Taken, Word};

use super::{
    Concern, Decision, Draft, Missing, Quiet, Scene, Unclear, doubts_of, draft,
    draft::is_nudged_for, judge, unnamed,
};

/// With so many words of no list a text is a story, and nobody is asked about the dead in it.
const STORY_WORDS: usize = 3;
/// With so many words a text says more than yes or later.
const SAYING_WORDS: usize = 3;

/// What to do with a text of which [`decide`](super::decide) would say nothing.
#[must_use]
pub fn heed(decision: Decision, reading: &Reading, scene: &Scene<'_>) -> Decision {
    let heard = if let Decision::Silent(quiet) = &decision {
        match quiet {
            Quiet::Stance(_) => of_work(reading, scene).or_else(|| scrambled(reading)),
            Quiet::NothingAsked => nothing_asked(reading),
            Quiet::NotWork => not_told(reading).or_else(|| scrambled(reading)),
            Quiet::Courtesy | Quiet::Stranger => None,
        }
    } else {
        None
    };
    let heard = heard.unwrap_or(decision);
    let idle = [Stance::Advert, Stance::Courtesy];
    let is_idle = idle.iter().any(|one| reading.stances.contains(one));
    if reading.may_need && !is_idle && is_nothing_made_of(&heard) {
        return Decision::Person(Concern::Unclear);
    }
    heard
}

/// An example of a report is no help to who needs some.
fn is_nothing_made_of(decision: &Decision) -> bool {
    matches!(
        decision,
        Decision::Help(Unclear::NoReport | Unclear::NotDone)
            | Decision::Silent(Quiet::NotWork | Quiet::Stance(_))
    )
}

/// A yes without a question is a greeting; a number or a block is not.
fn nothing_asked(reading: &Reading) -> Option<Decision> {
    let says = reading.bare.as_ref()?;
    (*says != Bare::Number(1.0)).then_some(Decision::Help(Unclear::NothingAsked))
}

fn of_work(reading: &Reading, scene: &Scene<'_>) -> Option<Decision> {
    let is = |stances: &[Stance]| stances.iter().any(|one| reading.stances.contains(one));
    if is(&[Stance::Advert, Stance::Courtesy]) {
        return None;
    }
    let only_thought = is(&[Stance::Question, Stance::Plan, Stance::Hypothetical]);
    if !only_thought && reading.reports.iter().any(burns) {
        return Some(Decision::Person(Concern::Alarm(Alarm::Fire)));
    }
    if is(&[Stance::Saying]) {
        return None;
    }
    let asks = is(&[Stance::Question, Stance::Request]);
    if asks && (names_work(reading) || names_command(reading)) {
        return Some(Decision::Person(Concern::Question));
    }
    if asks || !names_work(reading) {
        return None;
    }
    Some(
        if is(&[
            Stance::Plan,
            Stance::Hearsay,
            Stance::Stock,
            Stance::Hypothetical,
        ]) {
            Decision::Help(Unclear::NotDone)
        } else {
            unsure(reading, scene)
        },
    )
}

/// "My trees look bad" is neither a report nor a question, and not nothing. What words of no list
/// say may be a need.
fn not_told(reading: &Reading) -> Option<Decision> {
    let is_long = reading.words.len() >= SAYING_WORDS;
    if names_work(reading) || (is_long && names_command(reading)) {
        return Some(Decision::Help(Unclear::NoReport));
    }
    let mut words = reading.words.iter();
    let is_strange = words.any(|word| word.taken == Taken::Unknown);
    (is_long && is_strange).then_some(Decision::Person(Concern::Unclear))
}

/// Nothing but words of no list and a number: talk has small words in it, so this was a report,
/// misspelt beyond reading.
fn scrambled(reading: &Reading) -> Option<Decision> {
    let is_strange = |word: &Word| word.taken == Taken::Unknown;
    let is_number = |word: &Word| matches!(word.taken, Taken::Number(_));
    let words = reading.words.as_slice();
    let has_both = words.iter().any(is_strange) && words.iter().any(is_number);
    let is_other =
        |word: &Word| !is_strange(word) && !is_number(word) && word.taken != Taken::Question;
    let is_advert = reading.stances.contains(&Stance::Advert);
    (has_both && !is_advert && !words.iter().any(is_other))
        .then_some(Decision::Help(Unclear::NoReport))
}

/// A word of the trade stands in it.
fn names_work(reading: &Reading) -> bool {
    let is_trade = |word: &Word| {
        matches!(
            word.taken,
            Taken::Kind(_)
                | Taken::Ailment(_)
                | Taken::Cause(_)
                | Taken::Product
                | Taken::Clone
                | Taken::Species
                | Taken::Unit
                | Taken::BlockWord
                | Taken::Block(_)
        )
    };
    reading.about_work || !reading.reports.is_empty() || reading.words.iter().any(is_trade)
}

/// A word that is said to the bot stands in it ("my trees", "later").
fn names_command(reading: &Reading) -> bool {
    let mut words = reading.words.iter();
    words.any(|word| word.taken == Taken::Command)
}

/// Nobody counts trees while they burn.
fn burns(report: &Report) -> bool {
    let is_fire = report.details.cause == Some(Cause::Fire);
    report.kind.effect() == Effect::Harmed && is_fire && report.details.count.is_none()
}

/// Words of work that any talk could hold: what they would tell is asked about.
fn unsure(reading: &Reading, scene: &Scene<'_>) -> Decision {
    let strange = reading.words.iter();
    let strange = strange.filter(|word| word.taken == Taken::Unknown).count();
    if strange >= STORY_WORDS || (strange > 0 && reading.reports.iter().all(may_be_person)) {
        return Decision::Person(Concern::Unclear);
    }
    if strange > 0 {
        return Decision::Help(Unclear::NoReport);
    }
    let tells = |report: &Report| {
        let is_placed = report.block.is_some() || report.details.count.is_some();
        let is_loss = report.kind.effect() == Effect::Dead;
        is_placed || is_loss || report.kind.care().is_some()
    };
    if !reading.reports.iter().any(tells) {
        return Decision::Help(Unclear::NoReport);
    }
    let reports = reading.reports.iter().filter(|report| tells(report));
    let facts: Vec<Draft> = reports
        .clone()
        .map(|report| draft::of(report, scene))
        .collect();
    let facts = unnamed::spread(facts, reading.unnamed, scene);
    let uncounted = |fact: &Draft| {
        let is_asked = is_nudged_for(fact.kind, scene) && fact.kind.is_counted();
        is_asked && fact.details.count.is_none() && fact.details.extent.is_none()
    };
    if facts.iter().any(uncounted) && facts.iter().all(|fact| fact.block.is_some()) {
        return Decision::Ask {
            facts,
            missing: Missing::Count { range: None },
        };
    }
    let judged = judge(facts, reports.flat_map(doubts_of).collect(), None, scene);
    if let Decision::Record(facts) = judged {
        Decision::Confirm {
            facts,
            why: Vec::new(),
        }
    } else {
        judged
    }
}

/// "Keti is dead", "Keti is sick" may be a person.
fn may_be_person(report: &Report) -> bool {
    let details = &report.details;
    let is_bare = details.count.is_none() && details.extent.is_none() && details.cause.is_none();
    let harms = matches!(report.kind.effect(), Effect::Dead | Effect::Sick);
    harms && report.block.is_none() && is_bare
}
