//! Whether the words of a report prove it: a number near its word of work, or a block, with
//! nothing strange beside; a word that chat is full of needs more than one that it seldom uses.
//!
//! Deliberately absent: what takes a report back (`gate`).

use crate::{
    details::Extent,
    kind::Kind,
    lists::piece::{Piece, Sense},
    meaning::{Meaning, Numeral, Plain, sort},
    pieces::{
        known::{VALUES_MIN, figures, is_known, is_work},
        text::is_count_like,
    },
    rules::{reports::Told, segment::Segment},
};

/// A text of so few words can be clear although one of them is strange.
const SHORT_WORDS_MAX: usize = 5;
/// With two words of the trade in it, so many.
const TRADE_WORDS_MAX: usize = 8;
/// A number this near to a word of work goes with it.
const NUMBER_REACH: usize = 3;

/// Whether a segment reports: a number near its word of work, or a block, or nothing else at all.
pub(crate) fn is_proven(pieces: &[Piece<'_>], segment: &Segment, told: &Told) -> bool {
    let Some(anchor) = pieces.get(segment.anchor) else {
        return false;
    };
    if happens_often(pieces, segment) {
        return false;
    }
    let weak = segment.by_thing || anchor.listed().is_some_and(|listed| listed.is_weak());
    let has_block = told.reports.iter().any(|report| report.block.is_some());
    if weak {
        is_weakly_proven(pieces, segment, anchor, (told, has_block))
    } else {
        has_block || is_clearly_told(pieces, segment, anchor, told)
    }
}

/// "broken 14 times" is no tree.
fn happens_often(pieces: &[Piece<'_>], segment: &Segment) -> bool {
    let is_count = |pair: &[Piece<'_>]| matches!(pair, [number, times] if number.number().is_some() && times.is_plain(Plain::Round));
    segment.kind.is_harm() && pieces.windows(2).any(is_count)
}

fn has_number(pieces: &[Piece<'_>], segment: &Segment) -> bool {
    let mut works = segment
        .pieces
        .clone()
        .filter(|at| *at == segment.anchor || pieces.get(*at).is_some_and(is_work));
    works.any(|at| has_number_near(pieces, at))
        || segment.pieces.clone().any(|at| counts_trees(pieces, at))
}

fn are_all_known(pieces: &[Piece<'_>]) -> bool {
    (0..pieces.len()).all(|at| has_place(pieces, at))
}

/// Work that chat seldom names, without a block: with its number, or with nothing strange.
fn is_clearly_told(
    pieces: &[Piece<'_>],
    segment: &Segment,
    anchor: &Piece<'_>,
    told: &Told,
) -> bool {
    // What is counted is nothing without its number: "our cat died yesterday".
    let needs_count = segment.kind.needs_count();
    let all_said = || {
        let counted = !needs_count || !told.denials.is_empty() || names_trees(pieces);
        are_all_known(pieces) && (counted || is_compact(pieces))
    };
    let about_a_thing = || pieces.iter().any(|piece| piece.everyday) && !names_trees(pieces);
    (has_number(pieces, segment) && !about_a_thing())
        || all_said()
        || (!needs_count && is_phrase(anchor) && has_one_stranger(pieces))
}

fn is_phrase(piece: &Piece<'_>) -> bool {
    piece
        .listed()
        .is_some_and(|listed| listed.phrase.text.contains(' '))
}

/// Work that chat is full of: more must be said beside it.
fn is_weakly_proven(
    pieces: &[Piece<'_>],
    segment: &Segment,
    anchor: &Piece<'_>,
    (told, has_block): (&Told, bool),
) -> bool {
    if is_elsewhere(pieces, segment) || has_nothing_come(pieces, segment, anchor) {
        return false;
    }
    let all_known = are_all_known(pieces);
    let has_block_word = pieces.iter().any(|piece| piece.is_plain(Plain::Block));
    let is_census = segment.kind.needs_values() && figures(pieces) >= VALUES_MIN;
    let placed = has_block_word
        || names_trees(pieces)
        || is_census
        || (has_block && (all_known || has_one_stranger(pieces)))
        || (all_known && (is_fed(pieces) || is_harm(pieces)))
        || is_compact(pieces);
    let clear = all_known || (has_block_word && has_one_stranger(pieces));
    // "ma hai a": something else was lost.
    let before = segment.anchor.checked_sub(1).and_then(|at| pieces.get(at));
    let has_subject = before.is_some_and(|piece| piece.is_plain(Plain::Filler));
    let idle = segment.kind.needs_count() && has_subject && !has_block_word;
    let uncounted = has_block && clear && !idle && !segment.kind.is_counted_sight();
    let fed = all_known && is_product_named(pieces, segment);
    let denied = !told.denials.is_empty();
    (placed && (denied || has_number(pieces, segment)))
        || uncounted
        || fed
        || is_answer(pieces, segment)
}

/// "lost 3 bags", "money lost B": no trees.
fn is_elsewhere(pieces: &[Piece<'_>], segment: &Segment) -> bool {
    pieces.iter().any(|piece| {
        piece.means(|meaning| {
            let pack = meaning
                .unit()
                .is_some_and(|unit| !unit.is_area() && !unit.is_length());
            (pack && !segment.kind.takes_amount()) || matches!(meaning, Meaning::Alarm(_))
        })
    })
}

/// "i came at 8 B" is in every story; plants or fertiliser must have come. "GOT 648" answers.
fn has_nothing_come(pieces: &[Piece<'_>], segment: &Segment, anchor: &Piece<'_>) -> bool {
    segment.kind == Kind::Received
        && segment.anchor > 0
        && anchor.is_plain(Plain::Filler)
        && !names_trees(pieces)
        && !pieces
            .iter()
            .any(|piece| piece.means(|meaning| meaning == Meaning::Fertiliser))
}

/// "put tsp 3 sacks": a fertiliser and its amount are in no chat.
fn is_fed(pieces: &[Piece<'_>]) -> bool {
    let named = pieces.iter().any(|piece| piece.is_of(sort::FERTILISER));
    let packed = (1..pieces.len()).any(|at| {
        let unit = pieces.get(at).and_then(|piece| piece.part(Meaning::unit));
        let number = pieces.get(at - 1).and_then(Piece::number);
        number.is_some() && unit.is_some_and(|unit| !unit.is_length() && !unit.is_area())
    });
    named
        && (packed
            || pieces
                .iter()
                .any(|piece| matches!(piece.sense, Sense::Grade)))
}

/// "applied kcl yesterday": the work, and what was put.
fn is_product_named(pieces: &[Piece<'_>], segment: &Segment) -> bool {
    segment.kind == Kind::Fertilised
        && !segment.by_thing
        && pieces
            .iter()
            .any(|piece| piece.is_of(sort::FERTILISER) && piece.kind().is_none())
}

/// "missing thirteen by wind": a loss and its cause.
fn is_harm(pieces: &[Piece<'_>]) -> bool {
    let lost = pieces
        .iter()
        .any(|piece| piece.kind().is_some_and(Kind::is_harm));
    let why = |piece: &Piece<'_>| {
        piece.is_of(sort::CAUSE) && (piece.kind().is_none() || is_phrase(piece))
    };
    let causes = pieces.iter().filter(|piece| piece.is_of(sort::CAUSE));
    let told_whole = causes.clone().any(is_phrase) || causes.count() > 1;
    (lost && pieces.iter().any(why)) || told_whole
}

/// "dead 8 abeg B": one word of no list in a short text that is clear apart from it. A word of
/// every day would be about something else.
fn has_one_stranger(pieces: &[Piece<'_>]) -> bool {
    let mut strange = (0..pieces.len()).filter(|at| !has_place(pieces, *at));
    let first = strange.next().and_then(|at| pieces.get(at));
    let is_slang =
        first.is_some_and(|piece| matches!(piece.sense, Sense::Unknown) && !piece.everyday);
    let words = pieces
        .iter()
        .filter(|piece| !matches!(piece.sense, Sense::Mark(_)));
    let works = pieces.iter().filter(|piece| is_work(piece)).count();
    let most = if works > 1 {
        TRADE_WORDS_MAX
    } else {
        SHORT_WORDS_MAX
    };
    is_slang && strange.next().is_none() && words.count() <= most
}

/// "162 plants plot B branch": wherever it stands, it is the number of this work.
fn counts_trees(pieces: &[Piece<'_>], at: usize) -> bool {
    let trees = pieces
        .get(at + 1)
        .is_some_and(|next| next.is_plain(Plain::Trees));
    trees && is_count_like(pieces, at)
}

/// The name of a block and its word between the two do not part them.
fn has_number_near(pieces: &[Piece<'_>], at: usize) -> bool {
    let counts = |at: usize| {
        let is_number =
            |piece: &Piece<'_>| matches!(piece.sense, Sense::Number(_) | Sense::Metres(_));
        is_count_like(pieces, at) || pieces.get(at).is_some_and(is_number)
    };
    let is_place = |at: &usize| {
        pieces.get(*at).is_some_and(|piece| {
            piece.is_plain(Plain::Block) || matches!(piece.sense, Sense::Block(_))
        })
    };
    let before = (0..at).rev().filter(|at| !is_place(at)).take(NUMBER_REACH);
    let after = (at + 1..pieces.len())
        .filter(|at| !is_place(at))
        .take(NUMBER_REACH);
    counts(at) || before.chain(after).any(counts)
}

/// Whether a word stands where a report would have it: known, a unit beside a number, thanks and
/// names of respect at an end.
fn has_place(pieces: &[Piece<'_>], at: usize) -> bool {
    let Some(piece) = pieces.get(at) else {
        return false;
    };
    if !is_known(piece) || is_lone_unit(pieces, at) {
        return false;
    }
    !(only_asks(piece) || piece.is_plain(Plain::Courtesy) && is_inside(pieces, at))
}

/// A word that is listed for an adviser's questions alone, as "window".
pub(crate) fn only_asks(piece: &Piece<'_>) -> bool {
    piece.listed().is_some()
        && piece
            .meanings()
            .all(|meaning| matches!(meaning, Meaning::AdviserTopic(_)))
}

/// A unit without a number: "my bag". "A bag" is one where work has amounts.
pub(crate) fn is_lone_unit(pieces: &[Piece<'_>], at: usize) -> bool {
    let has_amounts = || {
        pieces.iter().any(|piece| {
            piece.kind().is_some_and(Kind::takes_amount)
                || piece.means(|meaning| meaning == Meaning::Fertiliser)
        })
    };
    let number = |at: Option<usize>| {
        at.and_then(|at| pieces.get(at)).is_some_and(|piece| {
            matches!(piece.sense, Sense::Number(_) | Sense::Fraction(..))
                || piece.means(|meaning| meaning == Meaning::Extent(Extent::Half))
                || (piece.means(|meaning| meaning == Meaning::Numeral(Numeral::One))
                    && has_amounts())
        })
    };
    let is_unit = pieces.get(at).is_some_and(|piece| {
        piece.listed().is_some()
            && piece
                .meanings()
                .all(|meaning| matches!(meaning, Meaning::Unit(_) | Meaning::Material(_)))
    });
    is_unit && !number(at.checked_sub(1)) && !number(Some(at + 1))
}

/// Between other words, without a mark beside it.
fn is_inside(pieces: &[Piece<'_>], at: usize) -> bool {
    let more = |piece: &Piece<'_>| !piece.is_plain(Plain::Courtesy);
    let before = pieces
        .get(..at)
        .unwrap_or_default()
        .iter()
        .rev()
        .find(|piece| more(piece));
    let after = pieces
        .get(at + 1..)
        .unwrap_or_default()
        .iter()
        .find(|piece| more(piece));
    let is_word = |piece: &Piece<'_>| !matches!(piece.sense, Sense::Mark(_));
    before.is_some_and(is_word) && after.is_some_and(is_word)
}

/// Trees are named, and not as the work itself ("plant 8").
pub(crate) fn names_trees(pieces: &[Piece<'_>]) -> bool {
    pieces.iter().enumerate().any(|(at, piece)| {
        let counted = || {
            at.checked_sub(1)
                .is_some_and(|at| is_count_like(pieces, at))
        };
        piece.is_plain(Plain::Trees) && (piece.kind().is_none() || counted())
    })
}

/// "DEAD 8", "i lost 3 yesterday": nothing but the report, in the form that a nudge teaches.
pub(crate) fn is_compact(pieces: &[Piece<'_>]) -> bool {
    pieces.iter().enumerate().all(|(at, piece)| {
        let small = [
            Plain::Courtesy,
            Plain::Subject,
            Plain::Negation,
            Plain::Weak,
            Plain::Of,
            Plain::Tall,
            Plain::And,
        ];
        is_work(piece)
            || piece.is_any(&small)
            || (piece.means(|meaning| meaning.unit().is_some()) && !is_lone_unit(pieces, at))
            || matches!(
                piece.sense,
                Sense::Mark(_)
                    | Sense::Number(_)
                    | Sense::List { .. }
                    | Sense::Range(..)
                    | Sense::Share(..)
                    | Sense::Metres(_)
                    | Sense::When(_)
                    | Sense::Block(_)
                    | Sense::Member(_)
            )
    })
}

/// "rain yes", "crop none", "fed", "cleared today": the forms that a nudge teaches.
fn is_answer(pieces: &[Piece<'_>], segment: &Segment) -> bool {
    let words = || {
        pieces
            .iter()
            .enumerate()
            .filter(|(_, piece)| !matches!(piece.sense, Sense::Mark(_)))
            .filter(|(_, piece)| !piece.is_plain(Plain::Courtesy))
    };
    if segment.kind.is_upkeep() {
        return words().all(|(at, piece)| {
            at == segment.anchor
                || piece.is_plain(Plain::Done)
                || matches!(piece.sense, Sense::When(_))
        });
    }
    let answered = pieces.get(segment.anchor + 1).is_some_and(|next| {
        next.is_any(&[Plain::Yes, Plain::No, Plain::Negation, Plain::Done])
            || next.means(|meaning| matches!(meaning, Meaning::Crop | Meaning::Wetness(_)))
    });
    let first = words().next().map(|(at, _)| at);
    let count = words().count();
    let undated = words().filter(|(_, piece)| !matches!(piece.sense, Sense::When(_)));
    // "broken done" is of a house.
    let done = pieces
        .get(segment.anchor + 1)
        .is_some_and(|next| next.is_plain(Plain::Done));
    let answers = answered && undated.count() == 2 && !(segment.kind.is_harm() && done);
    first == Some(segment.anchor) && (count == 1 || answers)
}
