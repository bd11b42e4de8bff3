//! Words that leave open what is meant: they are asked about.
//!
//! Deliberately absent: what keeps a text from being a report (`gate`).

use crate::{
    details::Ailment,
    glyphs::fold::Folded,
    kind::Kind,
    lists::{
        piece::{Piece, Sense, Trust},
        spelling::GUESS_LETTERS_MIN,
    },
    meaning::{Meaning, Plain, sort},
    pieces::text::{break_strength, is_count_like},
    reading::Report,
    rules::{anchors::may_open, reports::Told, segment::Segment},
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
    let at = open
        .or_else(|| unnamed(pieces, segments, told))
        .or_else(|| clause_without_work(pieces))?;
    let word = pieces.get(at)?;
    Some(folded.written(word.start, word.end))
}

/// "blumm siang A": a word of no list that may say something after all, and a number of days that
/// is no day ("8 days afo").
pub(crate) fn suspect<'t>(pieces: &[Piece<'_>], folded: &Folded<'t>) -> Option<&'t str> {
    let of_days = |at: usize| {
        let counts = pieces.get(at).is_some_and(|piece| piece.number().is_some());
        let unit = pieces
            .get(at + 1)
            .and_then(|piece| piece.part(Meaning::period));
        counts && unit.is_some()
    };
    let word = (0..pieces.len()).find_map(|at| {
        let piece = pieces.get(at)?;
        let odd = of_days(at) || is_lone_letter(pieces, at) || is_after_next(pieces, at);
        let is_suspect =
            piece.trust == Trust::Suspect && (!is_tiny(piece) || is_before_work(pieces, at));
        (is_suspect || odd).then_some(piece)
    })?;
    Some(folded.written(word.start, word.end))
}

/// "14 by wind welila B": where only a cause tells of harm, a word of no list may be a death.
pub(crate) fn nameless<'t>(
    pieces: &[Piece<'_>],
    segments: &[Segment],
    folded: &Folded<'t>,
) -> Option<&'t str> {
    let mut nameless = segments
        .iter()
        .filter(|segment| segment.by_thing && is_why(pieces.get(segment.anchor)));
    let word = nameless.find_map(|segment| {
        let mut words = pieces.get(segment.pieces.clone())?.iter();
        words.find(|piece| matches!(piece.sense, Sense::Unknown) && !is_tiny(piece))
    })?;
    Some(folded.written(word.start, word.end))
}

/// What may also be why trees died.
fn is_why(piece: Option<&Piece<'_>>) -> bool {
    piece.is_some_and(|piece| {
        // "broken by wind" says it all.
        let is_phrase = piece
            .listed()
            .is_some_and(|listed| listed.phrase.text.contains(' '));
        let termites = Meaning::Ailment(Ailment::Termites);
        !is_phrase && (piece.is_of(sort::CAUSE) || piece.means(|meaning| meaning == termites))
    })
}

/// So short a word is suspect only where it may turn the work behind it around.
fn is_tiny(piece: &Piece<'_>) -> bool {
    piece.end - piece.start < GUESS_LETTERS_MIN
}

fn is_before_work(pieces: &[Piece<'_>], at: usize) -> bool {
    let next = pieces.get(at + 1..).unwrap_or_default().iter();
    let mut next = next.skip_while(|piece| piece.is_plain(Plain::Filler));
    next.next().is_some_and(|piece| piece.kind().is_some())
}

/// "next weekwe": a word of no list where a day or a period is said.
fn is_after_next(pieces: &[Piece<'_>], at: usize) -> bool {
    let before = at.checked_sub(1).and_then(|at| pieces.get(at));
    let is_unknown = pieces
        .get(at)
        .is_some_and(|piece| matches!(piece.sense, Sense::Unknown));
    is_unknown && before.is_some_and(|piece| piece.is_any(&[Plain::Next, Plain::Last]))
}

/// "n weeded A": a letter before work may be a "not" cut short.
fn is_lone_letter(pieces: &[Piece<'_>], at: usize) -> bool {
    let piece = pieces.get(at);
    let is_letter = piece
        .is_some_and(|piece| matches!(piece.sense, Sense::Unknown) && piece.end - piece.start == 1);
    is_letter && pieces.get(at + 1).is_some_and(|next| next.kind().is_some())
}

/// A word of no list where something is told that no listed word names: trees that are counted at
/// work which has none, a second number of one work, something that came.
fn unnamed(pieces: &[Piece<'_>], segments: &[Segment], told: &Told) -> Option<usize> {
    let is_unknown = |at: usize| {
        pieces.get(at).is_some_and(|piece| {
            matches!(piece.sense, Sense::Unknown) && piece.end - piece.start >= NAME_LEN_MIN
        })
    };
    let counts_nothing =
        |report: &Report| report.kind.counts_no_trees() && report.details.count.is_some();
    if told.reports.len() > segments.len() || told.reports.iter().any(counts_nothing) {
        return (0..pieces.len()).find(|at| is_unknown(*at));
    }
    let came = segments
        .iter()
        .filter(|segment| segment.kind == Kind::Received);
    came.filter_map(|segment| segment.anchor.checked_sub(1))
        .find(|at| is_unknown(*at))
}

/// "tỉa cành lô B với dọn đst lô A": a word of no list in a clause of its own with a block or a number,
/// beside one that has work and the same: some other work may be told.
fn clause_without_work(pieces: &[Piece<'_>]) -> Option<usize> {
    let is_strange = |piece: &Piece<'_>| {
        matches!(piece.sense, Sense::Unknown) && piece.end - piece.start >= NAME_LEN_MIN
    };
    if !pieces.iter().any(is_strange) {
        return None;
    }
    let clauses = || pieces.split(|piece| break_strength(piece) >= CLAUSE_BREAK);
    let works = |clause: &[Piece<'_>]| clause.iter().any(may_open);
    let placed = |clause: &[Piece<'_>]| {
        clause
            .iter()
            .any(|piece| matches!(piece.sense, Sense::Block(_)))
    };
    let counted = |clause: &[Piece<'_>]| (0..clause.len()).any(|at| is_count_like(clause, at));
    let with_place = clauses().any(|clause| works(clause) && placed(clause));
    let with_count = clauses().any(|clause| works(clause) && counted(clause));
    let odd = clauses().find(|clause| {
        let tells = (with_place && placed(clause)) || (with_count && counted(clause));
        tells && !works(clause) && clause.iter().any(is_strange)
    })?;
    let word = odd.iter().find(|piece| is_strange(piece))?;
    pieces.iter().position(|piece| piece.start == word.start)
}

/// A clause ends at least with a comma, or with "and".
const CLAUSE_BREAK: u32 = 2;

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
    // "brushed farm B" names a place, "cleaned the land B" is either.
    let has_article = at
        .checked_sub(1)
        .and_then(|at| pieces.get(at))
        .is_some_and(|piece| piece.is_plain(Plain::Filler) && !piece.is_plain(Plain::At));
    let names_place = pieces
        .get(at + 1)
        .is_some_and(|next| matches!(next.sense, Sense::Block(_)));
    let small = |piece: &&Piece<'_>| piece.is_any(&[Plain::Filler, Plain::At]) && !cleans(piece);
    let mut before = pieces.get(..at).unwrap_or_default().iter().rev();
    let mut after = pieces.get(at + 1..).unwrap_or_default().iter();
    let cleaned = before.find(|piece| !small(piece)).is_some_and(cleans)
        || after.find(|piece| !small(piece)).is_some_and(cleans);
    is_land && (has_article || !names_place) && cleaned
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
