//! What to do with a text: a reading and the scene it falls into give one decision.
//!
//! Pure policy: record and read back, confirm what is doubtful, ask for one missing slot, give
//! one example, stay silent, hand over to a person. Deliberately absent: how the answer is
//! worded, and storing anything.

mod amend;
mod beside;
mod complete;
mod concern;
mod date;
mod draft;
mod heed;
mod sanity;
mod scene;
#[cfg(test)]
mod tests;
mod unnamed;

use alloc::{
    boxed::Box,
    string::{String, ToString},
    vec,
    vec::Vec,
};

use budwood_parser::{
    Act, Bare, Details, Doubt, Kind, Problem, Query, Reading, Report, Sender, Stance, Wetness, When,
};

pub use self::{
    concern::Concern,
    date::{ahead as date_ahead, resolve as resolve_date},
    heed::heed,
    scene::{Last, Nudged, Pending, Plot, Scene},
};
use crate::words::event::Happened;

/// What to do with a text.
#[derive(Clone, Debug, PartialEq)]
pub enum Decision {
    /// Store these facts and read their consequence back.
    Record(Vec<Draft>),
    /// Ask "is this right? 1 yes, 2 no" before storing.
    Confirm {
        /// What was understood.
        facts: Vec<Draft>,
        /// Why it is doubtful; the first is the one to say.
        why: Vec<Why>,
    },
    /// Ask for one slot of the first fact; the others wait for it.
    Ask {
        /// What was understood so far.
        facts: Vec<Draft>,
        /// What is missing from the first incomplete one.
        missing: Missing,
    },
    /// Change or take back earlier facts.
    Amend(Amend),
    /// A question or a command that the bot answers.
    Answer(Answer),
    /// An answer to a question of ours.
    Reply(Reply),
    /// Not understood: give one example.
    Help(Unclear),
    /// Say nothing.
    Silent(Quiet),
    /// A person must see this.
    Person(Concern),
    /// A report, and beside it a question or an alarm: both are done.
    Both(Box<Self>, Box<Self>),
}

/// A fact that is not stored yet.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    /// What kind.
    pub kind: Kind,
    /// The block's name, once it is known.
    pub block: Option<String>,
    /// When, as said.
    pub said: Option<When>,
    /// When, as dates; the day of sending if nothing was said.
    pub on: Happened,
    /// The rest.
    pub details: Details,
}

/// A slot that must be asked for.
#[derive(Clone, Debug, PartialEq)]
pub enum Missing {
    /// Which block: none named and there are several, or the name is not known.
    Block {
        /// The unknown name, if one was said.
        unknown: Option<String>,
    },
    /// How many.
    Count {
        /// The range that was said, if one was.
        range: Option<(u32, u32)>,
    },
    /// Which measured values.
    Values,
    /// Which day: the one said lies in the future, too far back, or does not exist.
    Date,
}

/// Why a fact is doubtful.
#[derive(Clone, Debug, PartialEq)]
pub enum Why {
    /// The reading itself was not sure.
    Reading(Doubt),
    /// More trees planted than the area holds.
    MoreThanAreaHolds {
        /// What the area holds.
        holds: u32,
    },
    /// More than the living trees.
    MoreThanAlive {
        /// Living trees.
        alive: u32,
    },
    /// More than the gaps.
    MoreThanGaps {
        /// Trees found dead and not yet replaced.
        gaps: u32,
    },
    /// A large share of the block at once.
    LargeShare {
        /// Living trees.
        alive: u32,
    },
    /// The same report came a few days ago.
    SameAgain,
    /// A measured value that no young rubber tree has.
    OddValue(f64),
    /// Smaller than measured before.
    Shrunk {
        /// The earlier mean in centimetres.
        before: f64,
    },
    /// Thicker than measured before by more than a tree grows in the time.
    Grew {
        /// The earlier mean in centimetres.
        before: f64,
    },
    /// Girths that all end in 0 or 5, as nobody measures them.
    Heaped,
    /// Trees with and without branches, counted about the same time, are not all that live.
    DoesNotAddUp {
        /// Both together.
        told: u32,
        /// Living trees.
        alive: u32,
    },
    /// So thin for their age that the girths may be in inches.
    PerhapsInches,
    /// Opened while the trees are thin.
    TooThin {
        /// The last mean in centimetres.
        mean: f64,
    },
    /// Opened at an age at which no tree can be thick enough.
    TooYoung {
        /// Whole months after planting.
        months: u32,
    },
    /// More than a kilogram of fertiliser a tree.
    TooMuchFeed,
    /// Before the block was planted.
    BeforePlanting,
    /// Nothing was planted there as far as the record knows.
    NotPlanted,
}

impl Why {
    /// How bad it is, 0 the worst: what cannot be so, then what hardly is, last how it was typed. The
    /// worst is asked about.
    const fn rank(&self) -> u8 {
        match self {
            Self::NotPlanted | Self::BeforePlanting => 0,
            Self::MoreThanAlive { .. } | Self::TooYoung { .. } => 1,
            Self::MoreThanAreaHolds { .. } | Self::MoreThanGaps { .. } => 2,
            Self::DoesNotAddUp { .. } | Self::LargeShare { .. } | Self::TooThin { .. } => 3,
            Self::OddValue(_) | Self::PerhapsInches | Self::TooMuchFeed => 4,
            Self::Shrunk { .. } | Self::Grew { .. } | Self::Heaped | Self::SameAgain => 5,
            Self::Reading(_) => 6,
        }
    }
}

/// A change of earlier facts.
#[derive(Clone, Debug, PartialEq)]
pub enum Amend {
    /// Take the last text's facts back.
    Undo,
    /// The read-back was wrong: take it back and ask what is right.
    Wrong,
    /// One slot of the last fact (or the named one) is different.
    Change(Box<Change>),
    /// It cannot be told which fact or which slot is meant.
    Unsure(budwood_parser::Correction),
}

/// A change of one slot.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// Position of the fact in [`Scene::last`].
    pub index: usize,
    /// The slot.
    pub field: budwood_parser::Field,
    /// As said.
    pub said: budwood_parser::Correction,
    /// The fact with the new value.
    pub now: Draft,
}

/// What the bot answers.
#[derive(Clone, Debug, PartialEq)]
pub enum Answer {
    /// How does this work?
    Help,
    /// No more texts.
    Stop,
    /// Texts again.
    Start,
    /// A question.
    Query(Box<Query>),
}

/// An answer to a question of ours.
#[derive(Clone, Debug, PartialEq)]
pub enum Reply {
    /// Store what was to be confirmed.
    Yes(Vec<Draft>),
    /// Drop what was to be confirmed.
    No,
    /// The nudge was seen. It says nothing of the work, so it is never a fact.
    Seen,
    /// The job last nudged for is done.
    Done,
    /// Remind later.
    Later(Option<u16>),
    /// Position in a list that we sent ("for whom? 1 Ama 2 Kofi").
    Choice(u32),
}

/// Why a text was not understood.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unclear {
    /// It is about work, but no report came out.
    NoReport,
    /// A report from a number that is not on the list.
    Stranger,
    /// A plan, the work of others, what they own: only what they did is stored.
    NotDone,
    /// A number or a name that answers no question of ours.
    NothingAsked,
}

/// Why nothing is said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Quiet {
    /// Thanks, greetings, nothing.
    Courtesy,
    /// A plan, news of others, a saying, a stock statement.
    Stance(Stance),
    /// Nothing about work.
    NotWork,
    /// Yes, no or a number while nothing was asked.
    NothingAsked,
    /// Not one of our people.
    Stranger,
}

/// Decides what to do with a text.
#[must_use]
pub fn decide(reading: &Reading, scene: &Scene<'_>) -> Decision {
    beside::or_a_person(reading, scene, decide_as_told(reading, scene))
}

fn decide_as_told(reading: &Reading, scene: &Scene<'_>) -> Decision {
    let has_lapsed = scene.has_lapsed();
    let scene = &scene.without_lapsed();
    let first = reading.acts.first();
    // A word that means nothing without the nudge that it answers.
    if reading.alarm.is_none() && has_lapsed && matches!(first, Some(Act::Done | Act::Later(_))) {
        return Decision::Help(Unclear::NoReport);
    }
    if let Some(amended) = amend::borne_out(reading, scene) {
        return amended;
    }
    let beside = match (reading.alarm, first) {
        (Some(alarm), _) => Some(Decision::Person(Concern::Alarm(alarm))),
        (None, Some(act)) => act_on(act, scene),
        (None, None) => None,
    };
    if let Some(beside) = beside {
        return beside::with_reports(reading, scene, beside);
    }
    if scene.sender == Sender::Unknown {
        let work = !reading.reports.is_empty() && reading.stances.is_empty();
        return if work {
            Decision::Help(Unclear::Stranger)
        } else {
            Decision::Silent(Quiet::Stranger)
        };
    }
    if let Some(decision) = unnamed::answer(reading, scene) {
        return decision;
    }
    if let Some(bare) = &reading.bare {
        return fill(bare, scene);
    }
    if let Some(stance) = reading.stances.first() {
        return Decision::Silent(if *stance == Stance::Courtesy {
            Quiet::Courtesy
        } else {
            Quiet::Stance(*stance)
        });
    }
    if reading.reports.is_empty() {
        return if reading.about_work {
            Decision::Help(Unclear::NoReport)
        } else {
            Decision::Silent(Quiet::NotWork)
        };
    }
    told(reading, scene)
}

/// What is done with the reports of a text.
fn told(reading: &Reading, scene: &Scene<'_>) -> Decision {
    let mut drafts = reading
        .reports
        .iter()
        .map(|report| draft::of(report, scene))
        .collect();
    draft::take_off_broken(&mut drafts);
    let drafts = unnamed::spread(drafts, reading.unnamed, scene);
    let doubts = reading.reports.iter().flat_map(doubts_of).collect();
    let no_such_day = reading
        .problems
        .iter()
        .any(|problem| matches!(problem, Problem::NoSuchDay(_)));
    judge(drafts, doubts, no_such_day.then_some(Missing::Date), scene)
}

fn doubts_of(report: &Report) -> impl Iterator<Item = Doubt> + '_ {
    report.doubts.iter().cloned()
}

/// Facts as complete as they are: ask, confirm or record. `unread` is a slot that was said and
/// could not be read.
fn judge(
    mut facts: Vec<Draft>,
    doubts: Vec<Doubt>,
    unread: Option<Missing>,
    scene: &Scene<'_>,
) -> Decision {
    draft::share_blocks(&mut facts, scene);
    let range = doubts.iter().find_map(range_of);
    let missing = facts
        .iter()
        .find_map(|fact| complete::missing(fact, range, scene));
    if let Some(missing) = missing.or(unread) {
        return Decision::Ask { facts, missing };
    }
    let mut why: Vec<Why> = doubts
        .into_iter()
        .filter(|doubt| !matches!(doubt, Doubt::Range(..)))
        .map(Why::Reading)
        .collect();
    why.extend(sanity::check(&facts, scene));
    why.sort_by_key(Why::rank);
    if why.is_empty() {
        Decision::Record(facts)
    } else {
        Decision::Confirm { facts, why }
    }
}

fn range_of(doubt: &Doubt) -> Option<(u32, u32)> {
    if let Doubt::Range(low, high) = doubt {
        Some((*low, *high))
    } else {
        None
    }
}

/// What is said to the bot itself. From a stranger only the three words that anyone may say.
fn act_on(act: &Act, scene: &Scene<'_>) -> Option<Decision> {
    let known = scene.sender != Sender::Unknown;
    match act {
        Act::Stop => Some(Decision::Answer(Answer::Stop)),
        Act::Start => Some(Decision::Answer(Answer::Start)),
        Act::Help => Some(Decision::Answer(Answer::Help)),
        Act::Query(query) => {
            known.then(|| Decision::Answer(Answer::Query(Box::new(query.clone()))))
        }
        Act::Undo => known.then_some(Decision::Amend(Amend::Undo)),
        Act::Correct(correction) => known.then(|| amend::correct(correction, scene)),
        Act::Yes => known.then(|| yes(scene)),
        Act::No => known.then(|| no(scene)),
        Act::Done => known.then_some(Decision::Reply(Reply::Done)),
        Act::Later(days) => known.then_some(Decision::Reply(Reply::Later(*days))),
    }
}

fn yes(scene: &Scene<'_>) -> Decision {
    match scene.pending {
        Some(Pending::Confirm(facts)) => Decision::Reply(Reply::Yes(facts.clone())),
        // "Yes" may be "it rained" or "I have read this": where it would be a fact, it is asked.
        Some(Pending::Nudge { .. }) => match draft::rain(Wetness::Soaked, scene) {
            Some(fact) => Decision::Confirm {
                facts: vec![fact],
                why: Vec::new(),
            },
            None => Decision::Reply(Reply::Seen),
        },
        Some(Pending::Ask { .. } | Pending::Choose { .. }) | None => {
            Decision::Silent(Quiet::NothingAsked)
        }
    }
}

fn no(scene: &Scene<'_>) -> Decision {
    match scene.pending {
        Some(Pending::Confirm(_) | Pending::Ask { .. } | Pending::Choose { .. }) => {
            Decision::Reply(Reply::No)
        }
        Some(Pending::Nudge { .. }) | None if !scene.last.is_empty() => {
            Decision::Amend(Amend::Wrong)
        }
        Some(Pending::Nudge { .. }) | None => match draft::rain(Wetness::None, scene) {
            Some(fact) => Decision::Record(vec![fact]),
            None => Decision::Silent(Quiet::NothingAsked),
        },
    }
}

/// A bare number, block, person or day counts only when it was asked for.
fn fill(bare: &Bare, scene: &Scene<'_>) -> Decision {
    match (scene.pending, bare) {
        (Some(Pending::Confirm(_)), Bare::Number(1.0)) => yes(scene),
        (Some(Pending::Confirm(_)), Bare::Number(2.0)) => no(scene),
        // "Is it 4 on Hill?" - "B", or "5": so it is another one.
        (Some(Pending::Confirm(facts)), bare) => match complete::instead(facts, bare, scene) {
            Some(facts) => judge(facts, Vec::new(), None, scene),
            None => Decision::Silent(Quiet::NothingAsked),
        },
        // After a read-back it means that, or nothing.
        (Some(Pending::Nudge { is_last, .. }), Bare::Number(1.0)) => {
            if *is_last {
                Decision::Reply(Reply::Done)
            } else {
                Decision::Silent(Quiet::NothingAsked)
            }
        }
        (Some(Pending::Choose { options }), Bare::Number(number)) => complete::whole(*number)
            .filter(|choice| (1..=*options).contains(choice))
            .map_or(Decision::Silent(Quiet::NothingAsked), |choice| {
                Decision::Reply(Reply::Choice(choice))
            }),
        (Some(Pending::Ask { facts, missing }), bare) => {
            match complete::fill(facts, missing, bare, scene) {
                Some(facts) => judge(facts, Vec::new(), None, scene),
                None => Decision::Ask {
                    facts: facts.clone(),
                    missing: missing.clone(),
                },
            }
        }
        (Some(Pending::Nudge { .. }), bare) => match complete::answer(bare, scene) {
            Some(fact) => judge(vec![fact], unsure(bare), None, scene),
            None => Decision::Silent(Quiet::NothingAsked),
        },
        (Some(Pending::Choose { .. }) | None, _) => Decision::Silent(Quiet::NothingAsked),
    }
}

/// A number without a word may have been meant for something else; none at all does no harm.
fn unsure(bare: &Bare) -> Vec<Doubt> {
    match bare {
        Bare::Number(number) if *number > 0.0 => vec![Doubt::LooseEnd(number.to_string())],
        Bare::Number(_) | Bare::Numbers(_) | Bare::Block(_) | Bare::Member(_) | Bare::When(_) => {
            Vec::new()
        }
    }
}
