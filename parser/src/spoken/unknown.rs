//! The name of a group that we do not know.
//!
//! Deliberately absent: names that we know (`names`, `called`).

use alloc::string::{String, ToString};

use crate::{
    glyphs::fold::Folded,
    lists::piece::{Piece, Sense},
    meaning::Plain,
};

/// A name of no more words than this is looked for.
const NAME_WORDS_MAX: usize = 3;

/// A name that we do not know: beside a word for a group, in capitals amid small letters, or with a
/// capital right behind a word of place.
pub(crate) fn unknown_name(pieces: &[Piece<'_>], folded: &Folded<'_>) -> Option<String> {
    beside_group(pieces, folded).or_else(|| written_as_name(pieces, folded))
}

/// "groupe Gbapleu", "kalikavu group": what follows the word, else what stands before it.
fn beside_group(pieces: &[Piece<'_>], folded: &Folded<'_>) -> Option<String> {
    let at = pieces
        .iter()
        .position(|piece| piece.is_plain(Plain::Group))?;
    let unknown = |piece: &&Piece<'_>| matches!(piece.sense, Sense::Unknown);
    let behind = || pieces.get(at + 1).filter(unknown);
    let before = || {
        at.checked_sub(1)
            .and_then(|at| pieces.get(at))
            .filter(unknown)
    };
    let name = behind().or_else(before)?;
    Some(folded.written(name.start, name.end).to_string())
}

fn written_as_name(pieces: &[Piece<'_>], folded: &Folded<'_>) -> Option<String> {
    let written = |piece: &Piece<'_>| folded.written(piece.start, piece.end);
    let shouts = |text: &str| {
        text.chars().filter(|letter| letter.is_alphabetic()).count() > 2
            && !text.chars().any(char::is_lowercase)
    };
    if pieces
        .iter()
        .all(|piece| !written(piece).chars().any(char::is_lowercase))
    {
        return None;
    }
    let is_name = |at: usize| {
        pieces.get(at).is_some_and(|piece| {
            let text = written(piece);
            let first = text.chars().next().is_some_and(char::is_uppercase);
            let before = at.checked_sub(1).and_then(|at| pieces.get(at));
            let placed =
                before.is_some_and(|before| before.is_any(&[Plain::At, Plain::To, Plain::From]));
            matches!(piece.sense, Sense::Unknown) && (shouts(text) || (first && placed))
        })
    };
    let start = (0..pieces.len()).find(|at| is_name(*at))?;
    let goes_on = |at: &usize| {
        pieces.get(*at).is_some_and(|piece| {
            matches!(piece.sense, Sense::Unknown)
                && written(piece)
                    .chars()
                    .next()
                    .is_some_and(char::is_uppercase)
        })
    };
    let more = (start + 1..pieces.len())
        .take_while(goes_on)
        .take(NAME_WORDS_MAX - 1);
    let end = more.last().unwrap_or(start);
    let (first, last) = (pieces.get(start)?, pieces.get(end)?);
    Some(folded.written(first.start, last.end).to_string())
}
