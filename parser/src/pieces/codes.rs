//! A letter and a number without a space: the name of a block, or a block and a count.
//!
//! Deliberately absent: single letters (`letters`).

use crate::{
    glyphs::fold::Folded,
    kind::Kind,
    lists::piece::{Piece, Pieces, Sense},
    meaning::Plain,
};

/// "plot b2", where B is a block of the farmer and B2 is not: one name all the same, unless the 2
/// is needed as a count.
pub(crate) fn join_codes<'r>(pieces: &mut Pieces<'r>, folded: &'r Folded<'r>) {
    let glued = (0..pieces.len()).filter(|at| is_glued(pieces, *at)).count();
    if glued == 0 || !has_spare_number(pieces) {
        return;
    }
    // "dead A8 B4" counts; "planted 120 B2" names.
    let alone = glued == 1 && numbers(pieces) > 1;
    let mut joined = Pieces::with_capacity(pieces.len());
    for (at, piece) in pieces.iter().enumerate() {
        let is_code = is_glued(pieces, at)
            && !is_counted(pieces, at)
            && ((alone && is_small(piece))
                || (is_after_block_word(pieces, at) && piece.end - piece.start <= DIGITS_MAX));
        match joined.last_mut() {
            Some(letter) if is_code => {
                letter.end = piece.end;
                letter.becomes(Sense::Block(folded.written(letter.start, letter.end)));
            }
            _ => joined.push(*piece),
        }
    }
    *pieces = joined;
}

/// Names of blocks have at most two digits: "plot c247" counts.
const DIGITS_MAX: usize = 2;

/// Nobody has so many blocks of one letter: "A27" counts.
fn is_small(piece: &Piece<'_>) -> bool {
    piece.number().is_some_and(|number| number.value < 10.0)
}

/// A number right behind the letter of a block.
fn is_glued(pieces: &[Piece<'_>], at: usize) -> bool {
    let letter = at.checked_sub(1).and_then(|at| pieces.get(at));
    let number = pieces.get(at).filter(|piece| piece.number().is_some());
    letter.zip(number).is_some_and(|(letter, number)| {
        matches!(letter.sense, Sense::Block(_)) && letter.end == number.start
    })
}

/// "B3 days ago", "B12 may", "B5 trees": the number goes with what follows.
fn is_counted(pieces: &[Piece<'_>], at: usize) -> bool {
    pieces.get(at + 1).is_some_and(|next| {
        next.is_plain(Plain::Trees)
            || next.means(|meaning| meaning.unit().is_some())
            || is_of_date(next)
    })
}

fn is_after_block_word(pieces: &[Piece<'_>], at: usize) -> bool {
    let word = at.checked_sub(2).and_then(|at| pieces.get(at));
    word.is_some_and(|word| word.is_plain(Plain::Block))
}

/// No work in the text lacks a number when one of them is a name.
fn has_spare_number(pieces: &[Piece<'_>]) -> bool {
    let any =
        |wanted: fn(Kind) -> bool| pieces.iter().any(|piece| piece.kind().is_some_and(wanted));
    let counts = any(Kind::wants_count)
        || pieces.iter().any(|piece| {
            piece.means(|meaning| meaning.cause().is_some() || meaning.ailment().is_some())
        });
    !any(Kind::needs_values) && (numbers(pieces) > 1 || !counts)
}

/// The numbers that are no part of a date.
fn numbers(pieces: &[Piece<'_>]) -> usize {
    let counts = |at: &usize| {
        let is_number = pieces
            .get(*at)
            .is_some_and(|piece| piece.number().is_some());
        is_number && !pieces.get(*at + 1).is_some_and(is_of_date)
    };
    (0..pieces.len()).filter(counts).count()
}

fn is_of_date(piece: &Piece<'_>) -> bool {
    piece.means(|meaning| meaning.ago().is_some() || meaning.month().is_some())
}
