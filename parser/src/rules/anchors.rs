//! The words of work that open a report each.
//!
//! A thing ("urea", "cows") opens one only when no work near by takes it: "8 dead, cows" is one
//! report, "8 dead, wind broke 12" are two. Deliberately absent: which of the other words belong
//! to which report (`segment`).

use smallvec::SmallVec;

use crate::{
    details::Unit,
    kind::{Kind, Thing},
    lists::piece::{Piece, Sense},
    meaning::{Meaning, Plain, sort},
    pieces::text::{Text, break_strength, is_count_like},
};

/// Nobody writes a longer clause; further away nothing is looked for.
const CLAUSE_PIECES_MAX: usize = 24;
/// So many words may stand between the filling and its "gaps".
const GAP_REACH: usize = 4;
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

/// The words of work of a text. Those of a short one take no memory.
pub(crate) type Anchors = SmallVec<[Anchor; 4]>;

/// The words that open a report each, in order, of those that may.
pub(crate) fn anchors(text: &Text<'_, '_>, opening: &[Anchor]) -> Anchors {
    let mut anchors = opened(text, opening);
    merge(text, &mut anchors);
    anchors
}

/// The words that may open a report each.
pub(crate) fn opening(pieces: &[Piece<'_>]) -> Anchors {
    let places = 0..pieces.len();
    places.filter_map(|at| opens(pieces, at)).collect()
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
        work.goes_with(self).then_some(match self {
            Self::Ailment | Self::Cause | Self::Fertiliser => work,
            Self::Spray if work == Kind::Fertilised => Kind::Sprayed,
            Self::Spray => work,
            Self::Crop => Kind::IntercropSown,
            Self::Cover => Kind::CoverSown,
        })
    }
}

/// Whether a piece may open a report, as far as a glance tells.
pub(crate) fn may_open(piece: &Piece<'_>) -> bool {
    piece.is_of(sort::WORK | sort::WETNESS) || piece.is_plain(Plain::Tall)
}

fn opened(text: &Text<'_, '_>, opening: &[Anchor]) -> Anchors {
    let mut kept = Anchors::with_capacity(opening.len());
    for (index, anchor) in opening.iter().enumerate() {
        let Some(thing) = anchor.thing else {
            kept.push(*anchor);
            continue;
        };
        let near = kept
            .last_mut()
            .filter(|work| !text.has_stop(&(work.at + 1..anchor.at)))
            .filter(|work| !has_own_number(text, work.at, anchor.at));
        let taken = near.is_some_and(|work| {
            let kind = thing.with(work.kind);
            // "planted 120 no rice".
            let before = anchor.at.checked_sub(1).and_then(|at| text.pieces.get(at));
            let is_denied =
                thing == Thing::Crop && before.is_some_and(|piece| piece.is_plain(Plain::Negation));
            work.kind = kind.filter(|_| !is_denied).unwrap_or(work.kind);
            // "weeded the rice": the crop is no news.
            kind.is_some() || thing == Thing::Crop
        });
        if !taken && !joins_next(text, *anchor, thing, opening.get(index + 1..)) {
            kept.push(*anchor);
        }
    }
    kept
}

/// "goats: 8 dead": the thing belongs to the work after it.
fn joins_next(text: &Text<'_, '_>, anchor: Anchor, thing: Thing, later: Option<&[Anchor]>) -> bool {
    let mut later = later.unwrap_or_default().iter().take(CLAUSE_PIECES_MAX);
    let Some(work) = later.find(|next| next.thing.is_none()) else {
        return false;
    };
    let between = anchor.at + 1..work.at;
    // A number right before the work counts that work.
    let right_before = work.at.checked_sub(1).is_some_and(|at| {
        is_count_like(text.pieces, at)
            || text
                .pieces
                .get(at)
                .is_some_and(|piece| piece.is_plain(Plain::Trees))
    });
    // "14 flooded A, 2 dead B": the thing has a number of its own.
    let near = anchor.at.saturating_sub(2);
    if text.counts(&(near..anchor.at)) > 0 && text.counts(&between) > 0 {
        return false;
    }
    let after = text.counts(&(work.at + 1..text.pieces.len()));
    let allowed = u32::from(right_before && after == 0);
    !text.has_stop(&between) && text.counts(&between) <= allowed && thing.with(work.kind).is_some()
}

/// The work before has its number, and the thing has another.
fn has_own_number(text: &Text<'_, '_>, work: usize, thing: usize) -> bool {
    // Beyond a mark it belongs to what was said before.
    let breaks = |at: &usize| {
        let piece = text.pieces.get(*at);
        piece.is_some_and(|piece| break_strength(piece) > 0)
    };
    let near = work.saturating_sub(2);
    let start = (near..work).rfind(breaks).unwrap_or(near);
    let before_work = text.counts(&(start..work));
    let between = text.counts(&(work + 1..thing));
    let edge = (thing + 1..text.pieces.len())
        .take(CLAUSE_PIECES_MAX)
        .find(|at| text.pieces.get(*at).is_some_and(is_edge));
    let ends_in_work = edge
        .and_then(|at| text.pieces.get(at))
        .is_some_and(|piece| piece.kind().is_some());
    let end = edge.unwrap_or(text.pieces.len());
    // Before another work the number is that work's.
    let after = if ends_in_work {
        0
    } else {
        text.counts(&(thing + 1..end))
    };
    before_work.min(1) + between + after >= 2 || (before_work > 0 && after > 0)
}

/// A mark, "and", or another word of work.
fn is_edge(piece: &Piece<'_>) -> bool {
    break_strength(piece) > 0 || piece.kind().is_some()
}

fn opens(pieces: &[Piece<'_>], at: usize) -> Option<Anchor> {
    let piece = pieces.get(at).filter(|piece| may_open(piece))?;
    let anchor = |kind, thing| Some(Anchor { at, kind, thing });
    if let Some(kind) = piece.kind() {
        let is_no_work = is_unit_here(pieces, at)
            || is_gap_filled(pieces, at)
            || is_small_here(pieces, at)
            || is_place_here(pieces, at)
            || is_weather(pieces, at);
        let kind = unmeasured(pieces, at).unwrap_or(kind);
        // "planted 60 gaps" fills them.
        let fills = kind == Kind::Planted && plants_gaps(pieces, at);
        let kind = if fills { Kind::Replaced } else { kind };
        return if is_no_work { None } else { anchor(kind, None) };
    }
    if piece.is_plain(Plain::Tall) {
        return anchor(tall_kind(pieces, at), None);
    }
    let thing = piece.part(Thing::named);
    if thing.is_some() && is_length_here(pieces, at) {
        return None;
    }
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

/// "dam B": a word of work that is also one for a block, before the name of one.
fn is_place_here(pieces: &[Piece<'_>], at: usize) -> bool {
    let is_block_word = pieces
        .get(at)
        .is_some_and(|piece| piece.is_plain(Plain::Block));
    let named = pieces
        .get(at + 1)
        .is_some_and(|next| matches!(next.sense, Sense::Block(_)));
    let other_work = || {
        let mut others = pieces.iter().enumerate().filter(|(other, _)| *other != at);
        others.any(|(_, other)| other.is_of(sort::WORK))
    };
    let counted = || (0..pieces.len()).any(|at| is_count_like(pieces, at));
    is_block_word
        && if named {
            other_work() || !counted()
        } else {
            !is_count_like(pieces, at + 1)
        }
}

/// "pas taille B": a measure without a value, where its letters with an accent are other work.
fn unmeasured(pieces: &[Piece<'_>], at: usize) -> Option<Kind> {
    let other = pieces.get(at)?.listed()?.phrase.unmeasured?;
    let is_value = |piece: &Piece<'_>| {
        piece.number().is_some()
            || matches!(
                piece.sense,
                Sense::List { .. } | Sense::Metres(_) | Sense::Range(..)
            )
    };
    let has_value = (0..pieces.len()).any(|at| {
        let counts_trees = pieces
            .get(at + 1)
            .is_some_and(|next| next.is_plain(Plain::Trees));
        pieces.get(at).is_some_and(is_value) && !counts_trees
    });
    (!has_value).then_some(other)
}

/// "vanh 41 phan": beside measured work the word is a unit of length.
fn is_length_here(pieces: &[Piece<'_>], at: usize) -> bool {
    let is_length = pieces
        .get(at)
        .is_some_and(|piece| piece.means(|meaning| meaning.unit().is_some_and(Unit::is_length)));
    let after_number = at
        .checked_sub(1)
        .and_then(|at| pieces.get(at))
        .is_some_and(|piece| piece.number().is_some() || matches!(piece.sense, Sense::List { .. }));
    is_length
        && after_number
        && pieces
            .iter()
            .any(|piece| piece.kind().is_some_and(Kind::needs_values))
}

/// "filled 6 gaps", "6 gaps filled": what was filled is no further loss. "8 gaps, filled 6" and
/// "8 gaps filled 6" tell of both.
fn is_gap_filled(pieces: &[Piece<'_>], at: usize) -> bool {
    let filling = |piece: &Piece<'_>| piece.kind() == Some(Kind::Replaced);
    let planting = |at: usize| {
        let is_planted = pieces
            .get(at)
            .is_some_and(|piece| piece.kind() == Some(Kind::Planted) && !is_unit_here(pieces, at));
        is_planted && plants_gaps(pieces, at)
    };
    if !pieces
        .get(at)
        .is_some_and(|piece| piece.is_plain(Plain::Gaps))
    {
        return false;
    }
    let small = |piece: &Piece<'_>| {
        piece.number().is_some() || piece.is_any(&[Plain::Filler, Plain::Of, Plain::Trees])
    };
    let start = at.saturating_sub(GAP_REACH);
    let before = pieces.get(start..at).unwrap_or_default().iter().rev();
    let after_filling = before
        .into_iter()
        .find(|piece| !small(piece))
        .is_some_and(filling);
    let two_counts = is_count_like(pieces, at + 2)
        && at
            .checked_sub(1)
            .is_some_and(|at| is_count_like(pieces, at));
    let filled = pieces.get(at + 1).is_some_and(filling) && !two_counts;
    let start = at.saturating_sub(GAP_REACH);
    let planted = || (start..at + 2).any(planting);
    after_filling || filled || planted()
}

/// "planted 60 gaps", "60 gaps planted": one number, and the gaps right before or after the work.
fn plants_gaps(pieces: &[Piece<'_>], at: usize) -> bool {
    let is_gap = |piece: Option<&Piece<'_>>| piece.is_some_and(|gap| gap.is_plain(Plain::Gaps));
    let small = |piece: &Piece<'_>| {
        piece.number().is_some()
            || piece.is_any(&[Plain::Filler, Plain::Of, Plain::Trees, Plain::At])
    };
    let after = pieces.iter().skip(at + 1).take(GAP_REACH);
    let mut after = after.skip_while(|piece| small(piece) && !piece.is_plain(Plain::Gaps));
    let before = at.checked_sub(1).and_then(|at| pieces.get(at));
    let is_beside = is_gap(after.next()) || is_gap(before);
    let breaks = |at: &usize| {
        pieces
            .get(*at)
            .is_none_or(|piece| break_strength(piece) > 0)
    };
    let far = at + CLAUSE_PIECES_MAX;
    let end = (at + 1..far).find(breaks).unwrap_or(far);
    let near = at.saturating_sub(CLAUSE_PIECES_MAX);
    let start = (near..at).rfind(breaks).unwrap_or(near);
    is_beside && (start..end).filter(|at| is_count_like(pieces, *at)).count() <= 1
}

/// "planted 20 in the rain": how the weather was at other work is no news.
fn is_weather(pieces: &[Piece<'_>], at: usize) -> bool {
    let is_rain = |piece: &Piece<'_>| piece.kind() == Some(Kind::Rain);
    let small = |piece: &Piece<'_>| {
        piece.is_any(&[Plain::At, Plain::Filler, Plain::Of])
            && piece.number().is_none()
            && !piece.is_any(&[Plain::Negation, Plain::And])
    };
    let before = at.checked_sub(1).and_then(|at| pieces.get(at));
    let measured = pieces
        .get(at + 1)
        .is_some_and(|next| next.number().is_some());
    let other_work = || {
        let near = pieces.get(at.saturating_sub(CLAUSE_PIECES_MAX)..at + 1);
        near.unwrap_or_default().iter().any(|piece| {
            let named =
                |meaning: Meaning| meaning.cause().is_some() || meaning == Meaning::Fertiliser;
            piece.kind().is_some_and(|kind| kind != Kind::Rain) || piece.means(named)
        })
    };
    pieces.get(at).is_some_and(is_rain) && before.is_some_and(small) && !measured && other_work()
}

/// "around 8 dead", "the cows came": beside other work the word is a small word.
fn is_small_here(pieces: &[Piece<'_>], at: usize) -> bool {
    // "salam" greets, and is the twin of "sulam".
    let greets = |piece: &Piece<'_>| {
        let is_twin = piece
            .listed()
            .is_some_and(|listed| listed.twin_of().is_some());
        is_twin && piece.is_plain(Plain::Courtesy)
    };
    let small = |piece: &Piece<'_>| piece.is_plain(Plain::Filler) || greets(piece);
    let harm = |piece: &Piece<'_>| {
        piece.part(Meaning::cause).is_some() || piece.part(Meaning::ailment).is_some()
    };
    pieces.get(at).is_some_and(small)
        && pieces
            .iter()
            .any(|other| (other.kind().is_some() && !small(other)) || harm(other))
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
fn merge(text: &Text<'_, '_>, anchors: &mut Anchors) {
    anchors.dedup_by(|next, last| {
        let is_same = last.kind == next.kind && is_one_work(text, last.at, next.at);
        if is_same {
            last.thing = last.thing.and(next.thing);
        }
        is_same
    });
}

fn is_one_work(text: &Text<'_, '_>, first: usize, second: usize) -> bool {
    let edge = |at: &usize| text.pieces.get(*at).is_some_and(is_edge);
    let between = first + 1..second;
    let start = (0..first).rev().take(CLAUSE_PIECES_MAX).find(edge);
    let start = start.map_or(0, |at| at + 1);
    let end = (second + 1..text.pieces.len())
        .take(CLAUSE_PIECES_MAX)
        .find(edge)
        .unwrap_or(text.pieces.len());
    let count =
        text.counts(&(start..first)) + text.counts(&between) + text.counts(&(second + 1..end));
    // "opened 50 in B for tapping": the second word brings nothing of its own.
    let rest = second + 1..end;
    let adds = text.counts(&rest) + text.blocks(&rest) > 0;
    !text.has_stop(&between) && (text.blocks(&between) == 0 || !adds) && count <= 1
}
