//! Numbers in words.
//!
//! One grammar for all languages; what differs is data: values ("twenty", "seratus"), scales
//! ("hundred", "puluh"), what adds ("belas"), which values a unit may follow, which word joins.
//!
//! A run of number words is of one language, and read whole or not at all: "twenty thirteen" is no
//! number, and never twenty. Deliberately absent: digits alone, which `figure` reads, and the sum
//! itself (`tally`).

use crate::{
    glyphs::figure::Number,
    lists::{
        lexicon::{Langs, Lexicon, Listed},
        piece::{Piece, Sense},
    },
    meaning::{Meaning, Numeral, Plain, sort},
    pieces::tally::Tally,
};

/// What a run of number words came to.
pub(crate) enum Said {
    /// A number.
    Number(Number),
    /// Number words that make no number.
    Nonsense,
}

/// Reads the number words at the start of these pieces; also how many pieces they take.
///
/// Beside digits elsewhere in the text (`has_digits`) a word that is a number only without its
/// accents is none by itself.
pub(crate) fn read(
    pieces: &[Piece<'_>],
    lexicon: &Lexicon,
    own: Langs,
    has_digits: bool,
) -> Option<(Said, usize)> {
    let first = pieces.first()?;
    let first_is_digits = matches!(first.sense, Sense::Number(_));
    // Most pieces are neither; they need no closer look.
    if !first_is_digits && !has_numeral(first) {
        return None;
    }
    let mut tally = Tally::new(lexicon);
    let mut used = 0;
    let mut words = 0;
    while let Some(piece) = pieces.get(used) {
        if words > 0 && piece.is_mark('-') && pieces.get(used + 1).is_some_and(has_numeral) {
            used += 1;
            continue;
        }
        if !takes(&mut tally, pieces, used, words == 0) {
            break;
        }
        words += 1;
        used += 1;
    }
    if words == 0 || (words == 1 && (first_is_digits || is_other_word(pieces, own, has_digits))) {
        return None;
    }
    let next = pieces.get(used).filter(|next| !may_be_work(next));
    let stuck = next.is_some_and(|next| has_value(next) && !tally.may_be_followed(value_of(next)));
    if stuck {
        let more = pieces
            .iter()
            .skip(used)
            .take_while(|piece| has_value(piece));
        return Some((Said::Nonsense, used + more.count()));
    }
    Some((Said::Number(tally.number()?), used))
}

/// Takes the piece at this place, in the first of its readings that fits.
fn takes(tally: &mut Tally<'_>, pieces: &[Piece<'_>], at: usize, first: bool) -> bool {
    let Some(piece) = pieces.get(at) else {
        return false;
    };
    let after_hyphen = usize::from(pieces.get(at + 1).is_some_and(|next| next.is_mark('-')));
    let next = pieces.get(at + 1 + after_hyphen);
    let is_scaled = || {
        next.is_some_and(|next| {
            numerals(next).any(|part| matches!(part, Numeral::Scale(_) | Numeral::Loose(_)))
        })
    };
    if let Sense::Number(number) = &piece.sense {
        let Some(value) = number.whole() else {
            return false;
        };
        let glued = at
            .checked_sub(1)
            .and_then(|at| pieces.get(at))
            .is_some_and(|before| before.end == piece.start);
        return if first {
            (1..100).contains(&value) && is_scaled() && tally.take(Numeral::Value(value), None)
        } else {
            glued && tally.take_glued(value)
        };
    }
    let Some(listed) = piece.listed() else {
        return false;
    };
    listed.of_numbers().any(|(langs, part)| {
        let fits = match part {
            Numeral::One => first && is_scaled(),
            Numeral::Join => !first,
            Numeral::Value(_)
            | Numeral::Scale(_)
            | Numeral::Plus(_)
            | Numeral::Loose(_)
            | Numeral::HalfScale => true,
        };
        let mut more = tally.clone();
        more.langs &= langs;
        let taken = fits && more.langs != 0 && more.take(part, next.and_then(value_of));
        if taken {
            *tally = more;
        }
        taken
    })
}

/// A word that is also work, a denial, a thing, or in the chat of every language, and stands alone:
/// then it is a number only before what is counted ("bon cay chet": four trees dead).
fn is_other_word(pieces: &[Piece<'_>], own: Langs, has_digits: bool) -> bool {
    let counted = pieces.get(1).is_some_and(|next| {
        next.is_plain(Plain::Trees) || next.means(|meaning| matches!(meaning, Meaning::Unit(_)))
    });
    let is_weak = |piece: &Piece<'_>| piece.listed().is_some_and(Listed::is_weak);
    let is_shadow = |piece: &Piece<'_>| piece.listed().is_some_and(Listed::is_shadow_number);
    let is_bare = |piece: &Piece<'_>| piece.listed().is_some_and(Listed::is_bare_number);
    let doubtful = |piece: &Piece<'_>| {
        may_be_work(piece)
            || is_shadow(piece)
            || ((own == 0 || has_digits) && is_weak(piece))
            || (has_digits && is_bare(piece))
    };
    !counted && pieces.first().is_some_and(doubtful)
}

/// Whether a number word may be something else that carries weight.
fn may_be_work(piece: &Piece<'_>) -> bool {
    let heavy = |meaning| {
        matches!(
            meaning,
            Meaning::Kind(_)
                | Meaning::Ailment(_)
                | Meaning::Cause(_)
                | Meaning::Fertiliser
                | Meaning::Stance(_)
        )
    };
    has_numeral(piece) && (piece.is_plain(Plain::Negation) || piece.means(heavy))
}

fn numerals(piece: &Piece<'_>) -> impl Iterator<Item = Numeral> {
    piece.meanings().filter_map(Meaning::numeral)
}

fn has_numeral(piece: &Piece<'_>) -> bool {
    piece.is_of(sort::NUMERAL)
}

fn value_of(piece: &Piece<'_>) -> Option<u32> {
    if !has_numeral(piece) {
        return None;
    }
    numerals(piece).find_map(|numeral| match numeral {
        Numeral::Value(value) | Numeral::Scale(value) => Some(value),
        Numeral::Plus(_)
        | Numeral::Loose(_)
        | Numeral::One
        | Numeral::Join
        | Numeral::HalfScale => None,
    })
}

fn has_value(piece: &Piece<'_>) -> bool {
    value_of(piece).is_some()
}
