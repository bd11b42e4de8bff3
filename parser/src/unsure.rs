//! Words that leave open what is meant: they are asked about.
//!
//! Deliberately absent: what keeps a text from being a report (`gate`).

use crate::{
    fold::Folded,
    kind::Kind,
    meaning::{Meaning, Plain},
    piece::{Piece, Sense},
    text::is_count_like,
};

/// "làm cỏ lô B không": the last word of a text that tells of work asks about it.
pub(crate) fn asks_behind(pieces: &[Piece<'_>], at: usize) -> bool {
    let is_end = |piece: &Piece<'_>| {
        matches!(piece.sense, Sense::Mark(_)) || piece.is_plain(Plain::Courtesy)
    };
    is_behind_work(pieces, at)
        && pieces
            .get(at + 1..)
            .is_some_and(|rest| rest.iter().all(is_end))
}

/// A "not" of what follows, with nothing to deny behind it.
fn is_behind_work(pieces: &[Piece<'_>], at: usize) -> bool {
    let worked = |piece: &Piece<'_>| piece.kind().is_some();
    let is_ahead = pieces
        .get(at)
        .is_some_and(|piece| piece.is_plain(Plain::Ahead) && !piece.is_plain(Plain::At));
    is_ahead
        && pieces
            .get(..at)
            .is_some_and(|before| before.iter().any(worked))
        && !pieces
            .get(at + 1..)
            .is_some_and(|after| after.iter().any(worked))
}

/// The first word that leaves open what is meant: a "not" behind the work inside a text, and one
/// number beside a measure whose letters are also other work ("taille 70").
pub(crate) fn unsure<'t>(pieces: &[Piece<'_>], folded: &Folded<'t>) -> Option<&'t str> {
    let word = (0..pieces.len())
        .find(|at| is_behind_work(pieces, *at) || is_lone_measure(pieces, *at))
        .and_then(|at| pieces.get(at))?;
    Some(folded.written(word.start, word.end))
}

fn is_lone_measure(pieces: &[Piece<'_>], at: usize) -> bool {
    let Some(piece) = pieces.get(at) else {
        return false;
    };
    let is_both = piece.kind().is_some_and(Kind::needs_values)
        && piece
            .listed()
            .is_some_and(|listed| listed.phrase.unmeasured.is_some());
    if !is_both {
        return false;
    }
    let is_length = |piece: &Piece<'_>| {
        matches!(piece.sense, Sense::Metres(_) | Sense::List { .. })
            || piece.means(|meaning| matches!(meaning, Meaning::Unit(unit) if unit.is_length()))
    };
    let figures = (0..pieces.len()).filter(|at| {
        let counts_trees = pieces
            .get(at + 1)
            .is_some_and(|next| next.is_plain(Plain::Trees));
        is_count_like(pieces, *at) && !counts_trees
    });
    figures.count() == 1 && !pieces.iter().any(is_length)
}
