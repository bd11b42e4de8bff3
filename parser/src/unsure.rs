//! Words that leave open what is meant: they are asked about.
//!
//! Deliberately absent: what keeps a text from being a report (`gate`).

use crate::{
    fold::Folded,
    kind::Kind,
    meaning::{Meaning, Plain},
    piece::{Piece, Sense},
    reading::Report,
    reports::Told,
    segment::Segment,
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

/// The first word that leaves open what is meant.
pub(crate) fn unsure<'t>(
    pieces: &[Piece<'_>],
    segments: &[Segment],
    told: &Told,
    folded: &Folded<'t>,
) -> Option<&'t str> {
    let open = (0..pieces.len()).find(|at| {
        is_behind_work(pieces, *at) || is_lone_measure(pieces, *at) || is_land_cleaned(pieces, *at)
    });
    let at = open.or_else(|| unnamed(pieces, segments, told))?;
    let word = pieces.get(at)?;
    Some(folded.written(word.start, word.end))
}

/// A word of no list where something is told that no listed word names: trees that are counted at
/// work which has none, a second number of one work, something that came.
fn unnamed(pieces: &[Piece<'_>], segments: &[Segment], told: &Told) -> Option<usize> {
    let is_unknown = |at: usize| {
        pieces.get(at).is_some_and(|piece| {
            matches!(piece.sense, Sense::Unknown) && piece.end - piece.start >= NAME_LEN_MIN
        })
    };
    let counts_nothing = |report: &Report| {
        let bare = matches!(
            report.kind,
            Kind::Cleared | Kind::Lined | Kind::Weeded | Kind::Sprayed | Kind::Fertilised
        );
        bare && report.details.count.is_some()
    };
    if told.reports.len() > segments.len() || told.reports.iter().any(counts_nothing) {
        return (0..pieces.len()).find(|at| is_unknown(*at));
    }
    let came = segments
        .iter()
        .filter(|segment| segment.kind == Kind::Received);
    came.filter_map(|segment| segment.anchor.checked_sub(1))
        .find(|at| is_unknown(*at))
}

/// Shorter words are slips of small words, or letters.
const NAME_LEN_MIN: usize = 3;

/// "nettoyé le champ": whether weeds or the whole land were cleared.
fn is_land_cleaned(pieces: &[Piece<'_>], at: usize) -> bool {
    let cleans = |piece: &Piece<'_>| {
        let is_weak = piece.listed().is_some_and(|listed| listed.is_weak());
        piece.kind() == Some(Kind::Weeded) && is_weak
    };
    let is_land = pieces
        .get(at)
        .is_some_and(|piece| piece.is_plain(Plain::Land) && !piece.is_plain(Plain::Block));
    let small = |piece: &&Piece<'_>| piece.is_any(&[Plain::Filler, Plain::At]) && !cleans(piece);
    let mut before = pieces.get(..at).unwrap_or_default().iter().rev();
    let mut after = pieces.get(at + 1..).unwrap_or_default().iter();
    let cleaned = before.find(|piece| !small(piece)).is_some_and(cleans)
        || after.find(|piece| !small(piece)).is_some_and(cleans);
    is_land && cleaned
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
