//! Parts a text into one segment for each kind of work named in it.
//!
//! Every word of work opens a segment, unless it only adds to another ("8 dead, cows"). What
//! stands between two of them is parted where it costs least: at a full stop or comma, so that
//! each has the numbers it needs. Deliberately absent: what the numbers mean (`slots`).

use alloc::vec::Vec;
use core::ops::Range;

use crate::{
    kind::Kind,
    meaning::{Meaning, Plain},
    piece::{Piece, Sense},
};

/// The pieces of one report, or of several of one kind.
#[derive(Clone, Debug)]
pub(crate) struct Segment {
    pub(crate) kind: Kind,
    /// The piece that names the kind.
    pub(crate) anchor: usize,
    /// The kind was named by a thing ("urea", "cows"), not by the work.
    pub(crate) by_thing: bool,
    pub(crate) pieces: Range<usize>,
}

/// How far from "tall" its length may stand.
const TALL_REACH: usize = 5;
/// More pieces between two kinds are never weighed one by one.
const GAP_PIECES_MAX: usize = 24;

/// Parts the pieces.
pub(crate) fn segments(pieces: &[Piece<'_>]) -> Vec<Segment> {
    let anchors = merged(pieces, anchors(pieces));
    let text = Text::new(pieces);
    let cuts = cuts(&text, &anchors);
    anchors
        .into_iter()
        .zip(cuts.windows(2))
        .map(|(anchor, cut)| Segment {
            kind: anchor.kind,
            anchor: anchor.at,
            by_thing: anchor.thing.is_some(),
            pieces: match cut {
                [start, end] => *start..*end,
                _ => 0..0,
            },
        })
        .collect()
}

/// How strongly a piece parts what stands before it from what stands after.
pub(crate) fn break_strength(piece: &Piece<'_>) -> u32 {
    if let Sense::Mark(mark) = piece.sense {
        return match mark {
            '\n' | '.' | ';' | '!' | '?' => 3,
            ',' | ':' | '/' | '&' | '+' | '-' => 2,
            _ => 0,
        };
    }
    if piece.is_plain(Plain::And) { 2 } else { 0 }
}

/// A number that may count trees.
pub(crate) fn is_count_like(pieces: &[Piece<'_>], at: usize) -> bool {
    let Some(piece) = pieces.get(at) else {
        return false;
    };
    let is_number = matches!(
        piece.sense,
        Sense::Number(_) | Sense::Range(..) | Sense::Share(..) | Sense::List { .. }
    );
    let has_unit = pieces.get(at + 1).is_some_and(|next| {
        next.is_any(&[Plain::Row, Plain::Round])
            || (next.means(|meaning| matches!(meaning, Meaning::Unit(_) | Meaning::Period(_)))
                && !next.is_plain(Plain::At))
    });
    is_number && !has_unit
}

/// A thing that names a kind of work by itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Thing {
    Ailment,
    Cause,
    Fertiliser,
    Spray,
    Crop,
    Cover,
}

impl Thing {
    fn named(meaning: Meaning) -> Option<Self> {
        let plain = [
            (Meaning::Fertiliser, Self::Fertiliser),
            (Meaning::Spray, Self::Spray),
            (Meaning::Crop, Self::Crop),
            (Meaning::Cover, Self::Cover),
        ];
        let sight = meaning.ailment().map(|_| Self::Ailment);
        let harm = meaning.cause().map(|_| Self::Cause);
        let plain = plain.into_iter().find(|(named, _)| *named == meaning);
        sight.or(harm).or(plain.map(|(_, thing)| thing))
    }

    const fn kind(self) -> Kind {
        match self {
            Self::Ailment => Kind::Disease,
            Self::Cause => Kind::Damage,
            Self::Fertiliser => Kind::Fertilised,
            Self::Spray => Kind::Sprayed,
            Self::Crop => Kind::IntercropSown,
            Self::Cover => Kind::CoverSown,
        }
    }

    /// The kind of a report of this work with this thing, if they belong together.
    fn with(self, work: Kind) -> Option<Kind> {
        let together = |kinds: &[Kind]| kinds.contains(&work).then_some(work);
        match self {
            Self::Ailment => together(&[Kind::Dead, Kind::Disease, Kind::Replaced]),
            Self::Cause => together(&[Kind::Dead, Kind::Damage, Kind::Replaced]),
            Self::Fertiliser => together(&[
                Kind::Fertilised,
                Kind::Received,
                Kind::Planted,
                Kind::HolesDug,
            ]),
            Self::Spray if work == Kind::Fertilised => Some(Kind::Sprayed),
            Self::Spray => together(&[Kind::Sprayed, Kind::Weeded]),
            Self::Crop => matches!(work, Kind::Planted | Kind::IntercropSown | Kind::CoverSown)
                .then_some(Kind::IntercropSown),
            Self::Cover => matches!(work, Kind::Planted | Kind::IntercropSown | Kind::CoverSown)
                .then_some(Kind::CoverSown),
        }
    }
}

#[derive(Clone, Copy, Debug)]
struct Anchor {
    at: usize,
    kind: Kind,
    thing: Option<Thing>,
}

fn anchors(pieces: &[Piece<'_>]) -> Vec<Anchor> {
    let opening: Vec<Anchor> = (0..pieces.len())
        .filter_map(|at| opens(pieces, at))
        .collect();
    let mut kept: Vec<Anchor> = Vec::new();
    for (index, anchor) in opening.iter().enumerate() {
        let Some(thing) = anchor.thing else {
            kept.push(*anchor);
            continue;
        };
        let between = |from: usize, to: usize| pieces.get(from + 1..to).unwrap_or_default();
        let same_sentence =
            |between: &[Piece<'_>]| between.iter().all(|piece| break_strength(piece) < 3);
        let before = kept
            .last_mut()
            .filter(|work| same_sentence(between(work.at, anchor.at)));
        if let Some(work) = before {
            let own_number = has_own_number(pieces, work.at, anchor.at);
            if let Some(kind) = thing.with(work.kind).filter(|_| !own_number) {
                work.kind = kind;
                continue;
            }
            // "weeded the rice": the crop is no news.
            if thing == Thing::Crop && !own_number {
                continue;
            }
        }
        let after = opening
            .iter()
            .skip(index + 1)
            .find(|next| next.thing.is_none())
            .filter(|work| same_sentence(between(anchor.at, work.at)))
            .filter(|work| {
                numbers(pieces, anchor.at + 1..work.at) <= numbers_needed_before(pieces, work.at)
            });
        let joins_next = after.and_then(|work| thing.with(work.kind));
        if joins_next.is_none() {
            kept.push(*anchor);
        }
    }
    kept
}

/// A number between here and a work that stands right before it counts that work.
fn numbers_needed_before(pieces: &[Piece<'_>], work: usize) -> usize {
    let right_before = work.checked_sub(1).is_some_and(|at| {
        is_count_like(pieces, at)
            || pieces
                .get(at)
                .is_some_and(|piece| piece.is_plain(Plain::Trees))
    });
    let after = numbers(pieces, work + 1..pieces.len());
    usize::from(right_before && after == 0)
}

/// The work before has its number, and the thing has another.
fn has_own_number(pieces: &[Piece<'_>], work: usize, thing: usize) -> bool {
    let before_work = work
        .checked_sub(2)
        .map_or(0, |from| numbers(pieces, from..work));
    let between = numbers(pieces, work + 1..thing);
    let clause_end = (thing + 1..pieces.len())
        .find(|at| {
            pieces
                .get(*at)
                .is_some_and(|piece| break_strength(piece) > 0)
        })
        .unwrap_or(pieces.len());
    let next_work = (thing + 1..clause_end)
        .find(|at| pieces.get(*at).is_some_and(|piece| piece.kind().is_some()))
        .unwrap_or(clause_end);
    let after = usize::from(next_work == clause_end) * numbers(pieces, thing + 1..next_work);
    let own_first = before_work.min(1) + between;
    own_first + after >= 2 || (before_work > 0 && after > 0)
}

fn numbers(pieces: &[Piece<'_>], range: Range<usize>) -> usize {
    range.filter(|at| is_count_like(pieces, *at)).count()
}

fn opens(pieces: &[Piece<'_>], at: usize) -> Option<Anchor> {
    let piece = pieces.get(at)?;
    let anchor = |kind, thing| Some(Anchor { at, kind, thing });
    if let Some(kind) = piece.kind() {
        return if is_unit_here(pieces, at) {
            None
        } else {
            anchor(kind, None)
        };
    }
    if piece.is_plain(Plain::Tall) {
        return anchor(tall_kind(pieces, at), None);
    }
    let thing = piece.part(Thing::named);
    if let Some(thing) = thing {
        return anchor(thing.kind(), Some(thing));
    }
    let is_rain = piece.means(|meaning| matches!(meaning, Meaning::Wetness(_)));
    is_rain.then_some(Anchor {
        at,
        kind: Kind::Rain,
        thing: None,
    })
}

/// "120 plant" beside other work: the word counts trees and is no work.
fn is_unit_here(pieces: &[Piece<'_>], at: usize) -> bool {
    let Some(piece) = pieces.get(at) else {
        return false;
    };
    let counted = at
        .checked_sub(1)
        .is_some_and(|at| is_count_like(pieces, at));
    let other_work = || {
        pieces
            .iter()
            .enumerate()
            .any(|(index, other)| index != at && other.kind().is_some())
    };
    piece.is_plain(Plain::Trees) && counted && other_work()
}

/// "tall 40" counts trees that have not branched; "tall 2.5 m" is a height.
fn tall_kind(pieces: &[Piece<'_>], at: usize) -> Kind {
    let near = pieces.get(at.saturating_sub(TALL_REACH)..pieces.len().min(at + TALL_REACH + 1));
    let has_length = near.unwrap_or_default().iter().any(|piece| {
        matches!(piece.sense, Sense::Metres(_))
            || piece.means(|meaning| matches!(meaning, Meaning::Unit(unit) if unit.is_length()))
                && !piece.is_plain(Plain::At)
    });
    if has_length {
        Kind::Height
    } else {
        Kind::NotBranched
    }
}

/// "dug 120 holes" names one work twice.
fn merged(pieces: &[Piece<'_>], anchors: Vec<Anchor>) -> Vec<Anchor> {
    let mut kept: Vec<Anchor> = Vec::new();
    for anchor in anchors {
        let same = kept.last_mut().filter(|last| last.kind == anchor.kind);
        match same {
            Some(last) if is_one_work(pieces, last.at, anchor.at) => {
                last.thing = last.thing.and(anchor.thing);
            }
            _ => kept.push(anchor),
        }
    }
    kept
}

fn is_one_work(pieces: &[Piece<'_>], first: usize, second: usize) -> bool {
    let is_edge = |at: &usize| {
        pieces
            .get(*at)
            .is_some_and(|piece| break_strength(piece) > 0 || piece.kind().is_some())
    };
    let between = first + 1..second;
    let parted = between.clone().any(|at| {
        pieces.get(at).is_some_and(|piece| {
            break_strength(piece) > 2 || matches!(piece.sense, Sense::Block(_))
        })
    });
    let start = (0..first).rev().find(is_edge).map_or(0, |at| at + 1);
    let end = (second + 1..pieces.len())
        .find(is_edge)
        .unwrap_or(pieces.len());
    let count =
        numbers(pieces, start..first) + numbers(pieces, between) + numbers(pieces, second + 1..end);
    !parted && count <= 1
}

/// Sums over the pieces, so that a stretch is weighed in one step.
struct Text<'a, 'r> {
    pieces: &'a [Piece<'r>],
    /// Count-like numbers, then blocks, before each piece.
    sums: Vec<(u32, u32)>,
    has_blocks: bool,
}

impl<'a, 'r> Text<'a, 'r> {
    fn new(pieces: &'a [Piece<'r>]) -> Self {
        let mut sums = Vec::with_capacity(pieces.len() + 1);
        let (mut counts, mut blocks) = (0, 0);
        sums.push((counts, blocks));
        for (at, piece) in pieces.iter().enumerate() {
            counts += u32::from(is_count_like(pieces, at));
            blocks += u32::from(matches!(piece.sense, Sense::Block(_)));
            sums.push((counts, blocks));
        }
        Self {
            pieces,
            sums,
            has_blocks: blocks > 0,
        }
    }

    /// What it costs that this work has these pieces.
    fn cost(&self, anchor: &Anchor, range: &Range<usize>) -> u32 {
        let at = |index: usize| self.sums.get(index).copied().unwrap_or((0, 0));
        let (start, end) = (at(range.start), at(range.end));
        let (counts, blocks) = (end.0 - start.0, end.1 - start.1);
        let numbers = if anchor.kind.needs_values() {
            6 * u32::from(counts == 0)
        } else if anchor.kind.wants_count() {
            let rows = blocks.max(1);
            if counts == 0 {
                6
            } else {
                4 * counts.saturating_sub(rows)
            }
        } else {
            2 * counts
        };
        let lacks_block = u32::from(self.has_blocks && blocks == 0);
        numbers + lacks_block
    }

    /// What it costs to part the text before this piece; little at a mark.
    fn cut_cost(&self, at: usize) -> u32 {
        let piece = |at: Option<usize>| at.and_then(|at| self.pieces.get(at));
        let (before, after) = (piece(at.checked_sub(1)), piece(Some(at)));
        let belongs = before.is_some_and(|before| {
            before.is_any(&[Plain::Block, Plain::At, Plain::Land, Plain::Row])
                && after
                    .is_some_and(|after| matches!(after.sense, Sense::Block(_) | Sense::Number(_)))
        }) || after.is_some_and(|after| {
            before.is_some_and(|before| matches!(before.sense, Sense::Number(_)))
                && (after.is_any(&[Plain::Trees, Plain::Row, Plain::Round, Plain::Weak])
                    || after.means(|meaning| matches!(meaning, Meaning::Unit(_))))
        });
        if belongs {
            return 40;
        }
        // The mark itself may stand on either side of the cut.
        let strength = before
            .map_or(0, break_strength)
            .max(after.map_or(0, break_strength));
        6 - 2 * strength.min(3)
    }
}

/// Where each segment starts; one more for the end.
fn cuts(text: &Text<'_, '_>, anchors: &[Anchor]) -> Vec<usize> {
    let end = text.pieces.len();
    // For each anchor the possible starts of its segment: cost so far, and the choice before.
    let mut ways: Vec<Vec<(usize, u32, usize)>> = Vec::new();
    for (index, anchor) in anchors.iter().enumerate() {
        let Some(previous) = index.checked_sub(1).and_then(|before| anchors.get(before)) else {
            ways.push(alloc::vec![(0, 0, 0)]);
            continue;
        };
        let gap = previous.at + 1..=anchor.at;
        // A very long gap belongs to the work before it, apart from its end.
        let skip = (anchor.at - previous.at).saturating_sub(GAP_PIECES_MAX);
        let before = ways.last().cloned().unwrap_or_default();
        let here = gap.skip(skip).filter_map(|cut| {
            let (choice, cost) = before
                .iter()
                .enumerate()
                .map(|(choice, (start, cost, _))| {
                    (choice, cost + text.cost(previous, &(*start..cut)))
                })
                .min_by_key(|(choice, cost)| (*cost, usize::MAX - choice))?;
            Some((cut, cost + text.cut_cost(cut), choice))
        });
        ways.push(here.collect());
    }
    let mut cuts = alloc::vec![end];
    let last = anchors.last().and_then(|anchor| {
        let ways = ways.last()?.iter().enumerate();
        // The latest of equally good cuts: what was said belongs to what was named.
        ways.min_by_key(|(index, (start, cost, _))| {
            (cost + text.cost(anchor, &(*start..end)), usize::MAX - index)
        })
    });
    let mut choice = last.map_or(0, |(index, _)| index);
    for ways in ways.iter().rev() {
        let Some((start, _, before)) = ways.get(choice) else {
            break;
        };
        cuts.push(*start);
        choice = *before;
    }
    cuts.reverse();
    cuts
}
