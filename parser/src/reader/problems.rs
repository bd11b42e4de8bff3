//! What is wrong with single pieces of a text, whatever it tells.
//!
//! Deliberately absent: what no report takes up (`account`).

use alloc::vec::Vec;

use crate::{
    glyphs::fold::Folded,
    lists::piece::{Piece, Sense},
    reading::Problem,
};

/// Numbers too large, days that do not exist, words of two kinds.
pub(super) fn of(pieces: &[Piece<'_>], folded: &Folded<'_>) -> Vec<Problem> {
    pieces
        .iter()
        .filter_map(|piece| {
            let span = folded.span(piece.start, piece.end);
            let (one, other) = match piece.sense {
                Sense::TooLarge => return Some(Problem::NumberTooLarge(span)),
                Sense::NoSuchDay => return Some(Problem::NoSuchDay(span)),
                Sense::NoNumber => return Some(Problem::LooseEnd(span)),
                Sense::TwoKinds(one, other) => (one, other),
                Sense::Listed(_)
                | Sense::Number(_)
                | Sense::List { .. }
                | Sense::Range(..)
                | Sense::Share(..)
                | Sense::Grade
                | Sense::Triple(_)
                | Sense::Fraction(..)
                | Sense::Metres(_)
                | Sense::When(_)
                | Sense::Clock
                | Sense::Spacing
                | Sense::Block(_)
                | Sense::Group(_)
                | Sense::Member(_)
                | Sense::Mark(_)
                | Sense::Unknown => return None,
            };
            Some(Problem::TwoKinds(span, one, other))
        })
        .collect()
}
