//! A letter and a number without a space: the name of a block, or a block and a count.
//!
//! Deliberately absent: single letters (`letters`).

use alloc::vec::Vec;

use crate::{
    fold::Folded,
    kind::Kind,
    meaning::Plain,
    piece::{Piece, Sense},
};

/// "plot b2", where B is a block of the farmer and B2 is not: one name all the same, unless the 2
/// is needed as a count.
pub(crate) fn join_codes<'r>(pieces: Vec<Piece<'r>>, folded: &'r Folded<'r>) -> Vec<Piece<'r>> {
    let is_counted = |at: usize| {
        pieces.get(at + 1).is_some_and(|next| {
            next.is_plain(Plain::Trees)
                || next.means(|meaning| {
                    meaning.unit().is_some() || meaning.ago().is_some() || meaning.month().is_some()
                })
        })
    };
    let is_date = |at: usize| {
        let next = pieces.get(at + 1);
        next.is_some_and(|next| next.means(|word| word.ago().is_some() || word.month().is_some()))
    };
    let numbers = (0..pieces.len())
        .filter(|at| !is_date(*at))
        .filter(|at| {
            pieces
                .get(*at)
                .is_some_and(|piece| piece.number().is_some())
        })
        .count();
    let counts = pieces.iter().any(|piece| {
        piece.kind().is_some_and(Kind::wants_count)
            || piece.means(|meaning| meaning.cause().is_some() || meaning.ailment().is_some())
    });
    let measures = pieces
        .iter()
        .any(|piece| piece.kind().is_some_and(Kind::needs_values));
    let spare = !measures && (numbers > 1 || !counts);
    let is_glued = |at: usize| {
        let letter = at.checked_sub(1).and_then(|at| pieces.get(at));
        let number = pieces.get(at).filter(|piece| piece.number().is_some());
        letter.zip(number).is_some_and(|(letter, number)| {
            matches!(letter.sense, Sense::Block(_)) && letter.end == number.start
        })
    };
    let glued = (0..pieces.len()).filter(|at| is_glued(*at)).count();
    let after_word = |at: usize| {
        let word = at.checked_sub(2).and_then(|at| pieces.get(at));
        word.is_some_and(|word| word.is_plain(Plain::Block))
    };
    // "dead A8 B4" counts; "planted 120 B2" names.
    let is_code = |at: usize| {
        let alone = glued == 1 && numbers > 1;
        is_glued(at) && spare && !is_counted(at) && (alone || after_word(at))
    };
    let mut joined: Vec<Piece<'r>> = Vec::with_capacity(pieces.len());
    for (at, piece) in pieces.iter().enumerate() {
        match joined.last_mut() {
            Some(letter) if is_code(at) => {
                letter.end = piece.end;
                letter.sense = Sense::Block(folded.written(letter.start, letter.end));
            }
            _ => joined.push(piece.clone()),
        }
    }
    joined
}
