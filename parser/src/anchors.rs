//! The words of work that open a report each.
//!
//! A thing ("urea", "cows") opens one only when no work near by takes it: "8 dead, cows" is one
//! report, "8 dead, wind broke 12" are two. Deliberately absent: which of the other words belong
//! to which report (`segment`).

use alloc::vec::Vec;
use core::ops::Range;

use crate::{
    kind::Kind,
    meaning::{Meaning, Plain},
    piece::{Piece, Sense},
    segment::{break_strength, is_count_like},
};

/// How far from "tall" its length may stand.
const TALL_REACH: usize = 5;

/// A word that opens a report.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Anchor {
    /// Which piece.
    pub(crate) at: usize,
    pub(crate) kind: Kind,
    /// The thing that names the kind, if no work does.
    pub(crate) thing: Option<Thing>,
}

/// The words that open a report each, in order.
pub(crate) fn anchors(pieces: &[Piece<'_>]) -> Vec<Anchor> {
    merged(pieces, opened(pieces))
}

/// A thing that names a kind of work by itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Thing {
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

fn opened(pieces: &[Piece<'_>]) -> Vec<Anchor> {
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
        return if is_unit_here(pieces, at) || is_small_here(pieces, at) {
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

/// "around 8 dead": beside other work the word is a small word.
fn is_small_here(pieces: &[Piece<'_>], at: usize) -> bool {
    let small = |piece: &Piece<'_>| piece.is_plain(Plain::Filler);
    pieces.get(at).is_some_and(small)
        && pieces
            .iter()
            .any(|other| other.kind().is_some() && !small(other))
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
