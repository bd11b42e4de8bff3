//! What is said to the bot itself: yes, no, done, later, undo, help, stop, start.
//!
//! Each counts only as the whole message, once greetings and thanks are taken away. Deliberately
//! absent: whether a question is open.

use crate::{
    details::Per,
    lists::piece::{Glance, Piece, Sense},
    meaning::{Meaning, Plain},
    reading::{Act, Bare},
};

/// The act of a text, if the whole text is one.
pub(crate) fn read(pieces: &[Piece<'_>], glance: Glance) -> Option<Act> {
    // Most texts hold no such word; they need no closer look.
    let also = Plain::Stop.bit() | Plain::Later.bit();
    let speaks = ANSWERS.iter().fold(also, |all, class| all | class.bit());
    if !glance.asks && !glance.traits.has_plain(speaks) {
        return None;
    }
    let impolite = words(pieces).filter(|piece| !piece.is_plain(Plain::Courtesy));
    if only(impolite).is_some_and(|only| only.is_plain(Plain::Stop)) {
        return Some(Act::Stop);
    }
    let is_only_question = !pieces.is_empty() && pieces.iter().all(|piece| piece.is_mark('?'));
    if is_only_question {
        return Some(Act::Help);
    }
    // "right?" asks.
    if glance.asks {
        return None;
    }
    // "ครับ" is polite, and by itself a yes.
    let all_polite = words(pieces).all(|piece| piece.is_plain(Plain::Courtesy));
    let core = || words(pieces).filter(|piece| all_polite || !piece.is_plain(Plain::Courtesy));
    let first = core().next()?;
    if first.is_plain(Plain::Later) {
        return later(core().skip(1));
    }
    // "ok done", "done A": the block fills the question.
    let done = core().any(|piece| piece.is_plain(Plain::Done));
    let only_done = core().all(|piece| {
        piece.is_any(&[Plain::Done, Plain::Yes, Plain::Subject])
            || matches!(piece.sense, Sense::Block(_))
    });
    if done && only_done {
        return Some(Act::Done);
    }
    let said = answer(first)?;
    // "cancel that for me, help": small words change nothing about what is taken back.
    let small = |piece: &Piece<'_>| {
        said == Plain::Undo && piece.is_any(&[Plain::Filler, Plain::Help, Plain::Subject])
    };
    let same = core()
        .skip(1)
        .all(|piece| answer(piece) == Some(said) || small(piece));
    act(said).filter(|_| same)
}

/// The text is one thing that may fill a question.
pub(crate) fn bare(pieces: &[Piece<'_>]) -> Option<Bare> {
    let has_number = pieces.iter().any(|piece| piece.number().is_some());
    let small = |piece: &&Piece<'_>| {
        piece.is_any(&[
            Plain::Courtesy,
            Plain::Block,
            Plain::Land,
            Plain::Trees,
            Plain::Done,
        ]) || piece.means(|meaning| meaning == Meaning::Per(Per::Total))
            || (piece.is_plain(Plain::Filler)
                && (has_number || !piece.is_plain(Plain::Yes))
                && piece.kind().is_none())
            || (piece.is_plain(Plain::At) && piece.kind().is_none())
    };
    let core = || words(pieces).filter(|piece| !small(piece));
    if let Some(only) = only(core()) {
        return bare_piece(only);
    }
    let are_numbers = core().count() > 1 && core().all(|piece| piece.number().is_some());
    let numbers = core().filter_map(Piece::number).map(|number| number.value);
    are_numbers.then(|| Bare::Numbers(numbers.collect()))
}

/// The one piece, if there is no other.
fn only<'p, 'r>(mut pieces: impl Iterator<Item = &'p Piece<'r>>) -> Option<&'p Piece<'r>> {
    let first = pieces.next()?;
    pieces.next().is_none().then_some(first)
}

fn bare_piece(piece: &Piece<'_>) -> Option<Bare> {
    match &piece.sense {
        Sense::Number(number) => Some(Bare::Number(number.value)),
        Sense::List { values, .. } => Some(Bare::Numbers(values.iter().collect())),
        Sense::Block(name) => Some(Bare::Block((*name).into())),
        Sense::Member(name) => Some(Bare::Member((*name).into())),
        Sense::When(when) => Some(Bare::When(*when)),
        Sense::Listed(_)
        | Sense::Range(..)
        | Sense::Share(..)
        | Sense::Grade
        | Sense::Triple(_)
        | Sense::Fraction(..)
        | Sense::Metres(_)
        | Sense::NoSuchDay
        | Sense::Clock
        | Sense::Spacing
        | Sense::TooLarge
        | Sense::NoNumber
        | Sense::Group(_)
        | Sense::Mark(_)
        | Sense::TwoKinds(..)
        | Sense::Unknown => None,
    }
}

fn words<'p, 'r>(pieces: &'p [Piece<'r>]) -> impl Iterator<Item = &'p Piece<'r>> {
    pieces
        .iter()
        .filter(|piece| !matches!(piece.sense, Sense::Mark(_)))
}

/// The first of these that a word is listed as is what it says.
const ANSWERS: [Plain; 6] = [
    Plain::No,
    Plain::Yes,
    Plain::Done,
    Plain::Undo,
    Plain::Help,
    Plain::Start,
];

fn answer(piece: &Piece<'_>) -> Option<Plain> {
    ANSWERS.into_iter().find(|class| piece.is_plain(*class))
}

fn act(answer: Plain) -> Option<Act> {
    let acts = [
        Act::No,
        Act::Yes,
        Act::Done,
        Act::Undo,
        Act::Help,
        Act::Start,
    ];
    ANSWERS
        .into_iter()
        .zip(acts)
        .find(|(class, _)| *class == answer)
        .map(|(_, act)| act)
}

/// "later", "later 2w", "later next week".
fn later<'p>(rest: impl Iterator<Item = &'p Piece<'p>>) -> Option<Act> {
    let mut rest = rest.filter(|piece| {
        !piece.is_any(&[Plain::At, Plain::Filler]) || piece.part(Meaning::period).is_some()
    });
    match (rest.next(), rest.next(), rest.next()) {
        (None, ..) => Some(Act::Later(None)),
        (Some(one), None, _) => {
            let days = one.part(Meaning::period)?;
            Some(Act::Later(Some(days)))
        }
        (Some(count), Some(unit), None) => {
            let each = unit.part(Meaning::period)?;
            let many = match count.number() {
                Some(number) => u16::try_from(number.whole()?).ok()?,
                None => u16::from(count.is_plain(Plain::Next)),
            };
            (many > 0).then_some(())?;
            Some(Act::Later(Some(many.checked_mul(each)?)))
        }
        (Some(_), Some(_), Some(_)) => None,
    }
}
