//! What a person must see at once: grief, danger, illness, a complaint, money.
//!
//! Deliberately absent: what is done about it.

use crate::{
    gate::{is_bare, reports_surely},
    kind::Kind,
    meaning::{Meaning, Plain, sort},
    piece::{Glance, Piece, Sense},
    reading::Alarm,
};

/// "my father has died": so many words may stand between.
const PERSON_REACH: usize = 4;

/// The gravest alarm of a text. A complaint or money only in a calm text, one whose words are
/// known: chat and adverts are full of them.
pub(crate) fn read(pieces: &[Piece<'_>], glance: Glance, calm: bool) -> Option<Alarm> {
    let names = |piece: &Piece<'_>| matches!(piece.sense, Sense::Member(_));
    let speaks = glance.traits.has_plain(Plain::Relative.bit())
        || glance.traits.has(sort::ALARM | sort::CAUSE);
    // Most texts hold no such word; they need no closer look.
    if !speaks && !pieces.iter().any(names) {
        return None;
    }
    let is_report = reports_surely(pieces);
    let said = |wanted: Alarm| {
        pieces.iter().any(|piece| {
            piece.means(|meaning| meaning == Meaning::Alarm(wanted))
                && !(is_report && is_bare(piece))
        })
    };
    let order = [
        (Alarm::Fire, is_fire_alone(pieces)),
        (Alarm::Snake, false),
        (Alarm::Danger, false),
        (Alarm::Grief, is_grief(pieces)),
        (Alarm::Illness, is_illness(pieces)),
        (Alarm::Number, false),
        (Alarm::Complaint, false),
        (Alarm::Money, false),
    ];
    order
        .into_iter()
        .filter(|(alarm, _)| calm || !matches!(alarm, Alarm::Complaint | Alarm::Money))
        .find(|(alarm, sure)| *sure || said(*alarm))
        .map(|(alarm, _)| alarm)
}

/// A relative, and a word of death right after.
fn is_grief(pieces: &[Piece<'_>]) -> bool {
    let relative = |piece: &Piece<'_>| piece.is_plain(Plain::Relative);
    is_said_of(pieces, relative, Kind::Dead)
}

/// "my wife is sick": a person, in a text without trees.
fn is_illness(pieces: &[Piece<'_>]) -> bool {
    let person = |piece: &Piece<'_>| {
        piece.is_plain(Plain::Relative) || matches!(piece.sense, Sense::Member(_))
    };
    let field = |piece: &Piece<'_>| {
        piece.is_plain(Plain::Trees) || matches!(piece.sense, Sense::Block(_) | Sense::Number(_))
    };
    !pieces.iter().any(field) && is_said_of(pieces, person, Kind::Disease)
}

/// Whether this kind is named soon after such a word.
fn is_said_of(pieces: &[Piece<'_>], who: impl Fn(&Piece<'_>) -> bool, what: Kind) -> bool {
    pieces.iter().enumerate().any(|(at, piece)| {
        who(piece)
            && pieces
                .iter()
                .skip(at + 1)
                .take(PERSON_REACH)
                .take_while(|next| !matches!(next.sense, Sense::Mark(_) | Sense::Number(_)))
                .any(|next| next.kind() == Some(what))
    })
}

/// "FIRE" as the whole text is a cry for help.
fn is_fire_alone(pieces: &[Piece<'_>]) -> bool {
    let mut words = pieces.iter().filter(|piece| {
        !matches!(piece.sense, Sense::Mark(_)) && !piece.is_any(&[Plain::Courtesy, Plain::Help])
    });
    let first = words.next();
    let is_fire = first.is_some_and(|word| {
        word.means(|meaning| meaning == Meaning::Cause(crate::details::Cause::Fire))
    });
    is_fire && words.next().is_none()
}
