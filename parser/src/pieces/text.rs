//! The pieces of a text with sums over them, so that a stretch is weighed in one step.
//!
//! Without the sums the time for a text made of words of work would grow with its square.
//! Deliberately absent: what the sums decide (`anchors`, `segment`).

use core::ops::Range;

use smallvec::SmallVec;

use crate::{
    details::Unit,
    lists::piece::{IN_PLACE_MAX, Piece, Sense},
    meaning::{Meaning, Plain},
};

/// The pieces of a text.
pub(crate) struct Text<'a, 'r> {
    pub(crate) pieces: &'a [Piece<'r>],
    /// What stands before each piece, and one more for the end.
    sums: &'a [Sum],
}

/// Where the sums of a text lie.
pub(crate) type Sums = SmallVec<[Sum; IN_PLACE_MAX]>;

#[derive(Clone, Copy, Default)]
pub(crate) struct Sum {
    counts: u32,
    blocks: u32,
    areas: u32,
    stops: u32,
}

impl<'a, 'r> Text<'a, 'r> {
    /// Sums the pieces up.
    pub(crate) fn new(pieces: &'a [Piece<'r>], sums: &'a mut Sums) -> Self {
        sums.clear();
        sums.reserve(pieces.len() + 1);
        let mut sum = Sum::default();
        sums.push(sum);
        for (at, piece) in pieces.iter().enumerate() {
            sum.counts += u32::from(is_count_like(pieces, at));
            sum.blocks += u32::from(matches!(piece.sense, Sense::Block(_)));
            sum.areas += u32::from(is_area(pieces, at));
            sum.stops += u32::from(break_strength(piece) >= FULL_STOP);
            sums.push(sum);
        }
        Self { pieces, sums }
    }

    /// How many numbers stand there that may count trees.
    pub(crate) fn counts(&self, range: &Range<usize>) -> u32 {
        self.between(range, |sum| sum.counts)
    }

    /// How many names of blocks.
    pub(crate) fn blocks(&self, range: &Range<usize>) -> u32 {
        self.between(range, |sum| sum.blocks)
    }

    /// How many sizes of land.
    pub(crate) fn areas(&self, range: &Range<usize>) -> u32 {
        self.between(range, |sum| sum.areas)
    }

    /// Whether a sentence ends there.
    pub(crate) fn has_stop(&self, range: &Range<usize>) -> bool {
        self.between(range, |sum| sum.stops) > 0
    }

    fn between(&self, range: &Range<usize>, of: impl Fn(Sum) -> u32) -> u32 {
        let at = |index: usize| self.sums.get(index).copied().map_or(0, &of);
        at(range.end).saturating_sub(at(range.start))
    }
}

/// The strength of a mark that ends a sentence.
pub(crate) const FULL_STOP: u32 = 3;

/// How strongly a piece parts what stands before it from what stands after.
pub(crate) fn break_strength(piece: &Piece<'_>) -> u32 {
    if let Sense::Mark(mark) = piece.sense {
        return match mark {
            '\n' | '.' | ';' | '!' | '?' => FULL_STOP,
            ',' | ':' | '/' | '&' | '+' | '-' => 2,
            _ => 0,
        };
    }
    if piece.is_plain(Plain::And) { 2 } else { 0 }
}

/// "2.5 ha".
fn is_area(pieces: &[Piece<'_>], at: usize) -> bool {
    let unit = || pieces.get(at + 1).and_then(|next| next.part(Meaning::unit));
    pieces.get(at).is_some_and(|piece| piece.number().is_some())
        && unit().is_some_and(Unit::is_area)
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
    let has_unit = || {
        pieces.get(at + 1).is_some_and(|next| {
            next.is_any(&[Plain::Row, Plain::Round])
                || (next.means(|meaning| matches!(meaning, Meaning::Unit(_) | Meaning::Period(_)))
                    && !next.is_plain(Plain::At))
        })
    };
    is_number && !has_unit()
}
