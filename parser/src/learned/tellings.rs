//! From the best course to segments: what is told, where, and how sure that is.
//!
//! Deliberately absent: slots (`slots`), and what is done with a reading that is not sure.

use smallvec::SmallVec;

use crate::{
    details::{Ailment, Cause, Wetness},
    glyphs::{figure::Number, fold::Folded},
    kind::Kind,
    learned::{
        clues::Clues,
        course::{
            AILMENT_COUNT, AILMENTS, ASIDE, ASKED, CAUSE_COUNT, CAUSES, Course, TOLD, kind_of,
        },
        weights::{MORE_COLUMNS, Weights},
    },
    lists::piece::{Piece, Pieces, Sense},
    pieces::used::{Use, Uses},
    reading::{Known, Report},
    rules::segment::{Segment, Segments},
    when::When,
};

/// What a text tells, as far as it was learned.
pub(crate) struct Tellings {
    pub(crate) segments: Segments,
    /// How much worse any other reading is.
    pub(crate) margin: i32,
    /// Something is asked of the bot.
    pub(crate) asked: bool,
    /// Every kind told is named by a listed word.
    pub(crate) listed: bool,
}

/// The tellings of a course.
pub(crate) fn tellings(pieces: &[Piece<'_>], course: &Course) -> Tellings {
    let mut segments = Segments::new();
    let mut margin = course.missed;
    let mut state_before = ASIDE;
    let mut sure = i32::MAX;
    let state_at = |at: usize| course.states.get(at).copied().unwrap_or(0);
    let mut asked = false;
    for (at, piece) in pieces.iter().enumerate() {
        let state = state_at(at);
        let here = course.margins.get(at).copied().unwrap_or(0);
        asked |= usize::from(state) == ASKED;
        if usize::from(state) == ASKED && usize::from(state) != state_before {
            margin = margin.min(here);
        }
        if matters(piece) && (usize::from(state) >= TOLD || is_value(piece)) {
            margin = margin.min(here);
        }
        let Some((kind, denied)) = kind_of(state) else {
            state_before = usize::from(state);
            continue;
        };
        let goes_on = segments
            .last()
            .is_some_and(|last: &Segment| last.kind == kind && last.denied == Some(denied));
        if goes_on {
            if let Some(last) = segments.last_mut() {
                last.pieces.end = at + 1;
                if anchor_worth(course, at, kind) > anchor_worth(course, last.anchor, kind) {
                    last.anchor = at;
                }
            }
            sure = sure.max(here);
        } else {
            margin = margin.min(sure);
            sure = here;
            segments.push(Segment {
                kind,
                anchor: at,
                by_thing: false,
                denied: Some(denied),
                pieces: at..at + 1,
            });
        }
        state_before = usize::from(state);
    }
    margin = margin.min(sure);
    let listed = segments.iter().all(|segment| {
        pieces
            .get(segment.pieces.clone())
            .is_some_and(|pieces| pieces.iter().any(|piece| names(piece, segment.kind)))
    });
    Tellings {
        segments,
        margin,
        asked,
        listed,
    }
}

/// A piece that fills a slot.
fn is_value(piece: &Piece<'_>) -> bool {
    matches!(
        piece.sense,
        Sense::Number(_)
            | Sense::Block(_)
            | Sense::List { .. }
            | Sense::Range(..)
            | Sense::Share(..)
            | Sense::Metres(_)
    )
}

fn matters(piece: &Piece<'_>) -> bool {
    is_value(piece)
}

/// How much a piece says for this kind against nothing.
fn anchor_worth(course: &Course, at: usize, kind: Kind) -> i32 {
    let Some(worth) = course.worths.get(at) else {
        return 0;
    };
    let told = Kind::ALL.iter().position(|other| *other == kind);
    let of = told
        .and_then(|at| worth.get(TOLD + at))
        .copied()
        .unwrap_or(0);
    of - worth.first().copied().unwrap_or(0)
}

/// Whether a listed word names this kind of work or what it is done with.
fn names(piece: &Piece<'_>, kind: Kind) -> bool {
    piece.kind() == Some(kind)
        || piece.is_of(match kind {
            Kind::Disease => crate::meaning::sort::AILMENT | crate::meaning::sort::CAUSE,
            Kind::Damage => crate::meaning::sort::CAUSE,
            Kind::Fertilised | Kind::Received => crate::meaning::sort::FERTILISER,
            Kind::Sprayed => crate::meaning::sort::SPRAY,
            Kind::CoverSown => crate::meaning::sort::COVER,
            Kind::IntercropSown => crate::meaning::sort::CROP,
            Kind::Rain => crate::meaning::sort::WETNESS,
            Kind::Cleared
            | Kind::Lined
            | Kind::HolesDug
            | Kind::Planted
            | Kind::Dead
            | Kind::Replaced
            | Kind::Weeded
            | Kind::Pruned
            | Kind::Branched
            | Kind::NotBranched
            | Kind::BranchInduction
            | Kind::Girth
            | Kind::Height
            | Kind::TappingOpened
            | Kind::NotDone => 0,
        })
}

/// The pieces with what stands aside made silent: numbers and names there fill no slot.
/// Numbers that name a block or a day become one.
pub(crate) fn hushed<'r>(
    pieces: &[Piece<'r>],
    course: &Course,
    uses: &Uses,
    folded: &'r Folded<'r>,
    known: &Known<'r>,
) -> Pieces<'r> {
    let mut all: Pieces<'r> = SmallVec::from_slice(pieces);
    for ((piece, state), used) in all.iter_mut().zip(&course.states).zip(uses) {
        match used {
            Some((Use::Place, _)) => {
                let written = folded.written(piece.start, piece.end);
                let own = known.blocks.iter().find(|name| **name == written);
                piece.becomes(Sense::Block(own.copied().unwrap_or(written)));
                continue;
            }
            Some((Use::Day, _)) => {
                let day = piece.number().and_then(Number::whole);
                let day = day
                    .and_then(|day| u8::try_from(day).ok())
                    .filter(|day| (1..=31).contains(day));
                if let Some(day) = day {
                    piece.becomes(Sense::When(When::MonthDay(day)));
                    continue;
                }
            }
            _ => {}
        }
        if usize::from(*state) < TOLD && (is_value(piece) || matches!(piece.sense, Sense::When(_)))
        {
            piece.becomes(Sense::Clock);
        }
    }
    all
}

/// Names the sickness and the cause of harm where no listed word did; by how much each is likelier
/// than another, at least.
pub(crate) fn name_harm(
    reports: &mut [Report],
    segments: &Segments,
    learned: (&Clues<'_, '_>, &Weights),
    folded: &Folded<'_>,
    pieces: &[Piece<'_>],
) -> i32 {
    let mut least = i32::MAX;
    for report in reports {
        let inside = |segment: &&Segment| {
            let place = |at: usize| {
                pieces
                    .get(at)
                    .map(|piece| folded.span(piece.start, piece.end).start)
            };
            let start = place(segment.pieces.start).unwrap_or(0);
            let end = place(segment.pieces.end).unwrap_or(usize::MAX);
            segment.kind == report.kind && (start..end).contains(&report.span.start)
        };
        let Some(segment) = segments.iter().find(inside) else {
            continue;
        };
        let mut best = |first: usize, count: usize| {
            let (best, margin) = best_column(learned, segment, first, count)?;
            least = least.min(margin);
            Some(best)
        };
        let details = &mut report.details;
        if report.kind == Kind::Disease && details.ailment.is_none() {
            details.ailment =
                best(AILMENTS, AILMENT_COUNT).and_then(|at| Ailment::ALL.get(at).copied());
        }
        if report.kind == Kind::Damage && details.cause.is_none() {
            details.cause = best(CAUSES, CAUSE_COUNT).and_then(|at| Cause::ALL.get(at).copied());
        }
        if report.kind == Kind::Rain {
            let denied = segment.denied == Some(true);
            details.wetness = Some(if denied {
                Wetness::None
            } else {
                Wetness::Soaked
            });
            // "no rain for 20 days" says how long, not when.
            if denied && matches!(report.when, Some(When::DaysAgo(2..))) {
                report.when = None;
            }
        }
    }
    least
}

/// The best of some columns over a segment, and how much worse the next is.
fn best_column(
    (clues, weights): (&Clues<'_, '_>, &Weights),
    segment: &Segment,
    first: usize,
    count: usize,
) -> Option<(usize, i32)> {
    let mut sum = [0; MORE_COLUMNS];
    for at in segment.pieces.clone() {
        weights.add_piece(&mut sum, clues, at);
    }
    let columns = sum.get(first..first + count)?;
    let best = (0..count).max_by_key(|column| columns.get(*column))?;
    let worth = *columns.get(best)?;
    let others = columns.iter().enumerate().filter(|(at, _)| *at != best);
    let second = others.map(|(_, worth)| *worth).max().unwrap_or(worth);
    Some((best, worth - second))
}
