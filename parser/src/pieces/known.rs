//! What a piece is to the rules, at a glance.
//!
//! Deliberately absent: what follows from it (`gate`, `proof`).

use crate::{
    lists::{
        lexicon::Listed,
        piece::{Piece, Sense},
    },
    meaning::{Plain, sort},
};

/// A word that says something.
pub(crate) fn is_known(piece: &Piece<'_>) -> bool {
    !matches!(piece.sense, Sense::Unknown | Sense::NoNumber)
}

/// A word of work that chat seldom uses.
pub(crate) fn is_clear_work(piece: &Piece<'_>) -> bool {
    is_work(piece) && piece.listed().is_some_and(|listed| !listed.is_weak())
}

/// A word of work, or a thing that names work.
pub(crate) fn is_work(piece: &Piece<'_>) -> bool {
    let two_kinds = matches!(piece.sense, Sense::TwoKinds(..));
    piece.is_of(sort::WORK) || two_kinds
}

/// A word that is this one only without its accents: in a text that surely reports it is another.
pub(crate) fn is_bare(piece: &Piece<'_>) -> bool {
    piece.listed().is_some_and(Listed::is_bare)
}

/// So many numbers beside measured work are a census.
pub(crate) const VALUES_MIN: usize = 4;

/// How many numbers there are.
pub(crate) fn figures(pieces: &[Piece<'_>]) -> usize {
    let of = |piece: &Piece<'_>| {
        if let Sense::List { values, .. } = &piece.sense {
            values.iter().count()
        } else {
            usize::from(piece.number().is_some())
        }
    };
    pieces.iter().map(of).sum()
}

/// A question mark, but not that of "how are you?".
pub(crate) fn is_asking_mark(pieces: &[Piece<'_>], at: usize) -> bool {
    let before = || at.checked_sub(1).and_then(|at| pieces.get(at));
    pieces.get(at).is_some_and(|piece| piece.is_mark('?'))
        && !before().is_some_and(|piece| piece.is_plain(Plain::Courtesy))
}
