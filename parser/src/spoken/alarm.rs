//! What a person must see at once: grief, danger, illness, a complaint, money.
//!
//! Deliberately absent: what is done about it.

use crate::{
    details::Cause,
    glyphs::fold::Folded,
    kind::{Effect, Kind},
    lists::{
        lexicon::{Langs, Lexicon},
        piece::{Glance, Piece, Sense},
    },
    meaning::{Meaning, Plain, sort},
    pieces::known::is_bare,
    reading::Alarm,
    rules::gate::reports_surely,
};

/// "my father has died": so many words may stand between.
const PERSON_REACH: usize = 4;

/// Words of people and what is theirs.
const PEOPLE: u64 = Plain::Relative.bit() | Plain::Phone.bit() | Plain::Body.bit();

/// The gravest alarm of a text. A complaint or money only in a calm text, one whose words are
/// known: chat and adverts are full of them.
pub(crate) fn read(pieces: &[Piece<'_>], glance: Glance, calm: bool) -> Option<Alarm> {
    let names = |piece: &Piece<'_>| matches!(piece.sense, Sense::Member(_));
    let speaks = glance.traits.has_plain(PEOPLE) || glance.traits.has(sort::ALARM | sort::CAUSE);
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
        (Alarm::Number, is_number(pieces)),
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

/// "my wife is sick": a person, in a text without trees; "arm broken": a body, and harm.
fn is_illness(pieces: &[Piece<'_>]) -> bool {
    let person = |piece: &Piece<'_>| {
        piece.is_plain(Plain::Relative) || matches!(piece.sense, Sense::Member(_))
    };
    let field = |piece: &Piece<'_>| {
        piece.is_plain(Plain::Trees) || matches!(piece.sense, Sense::Block(_) | Sense::Number(_))
    };
    let is_hurt = pieces.iter().any(is_body) && pieces.iter().any(harms);
    (is_hurt && !pieces.iter().any(places))
        || (!pieces.iter().any(field) && is_said_of(pieces, person, Kind::Disease))
}

/// "i los my fone": a phone, and that it is gone.
fn is_number(pieces: &[Piece<'_>]) -> bool {
    let any = |wanted: fn(&Piece<'_>) -> bool| pieces.iter().any(wanted);
    any(|piece| piece.is_plain(Plain::Phone)) && any(is_gone)
}

fn is_gone(piece: &Piece<'_>) -> bool {
    let is_stolen = |meaning| meaning == Meaning::Cause(Cause::Theft);
    piece.is_plain(Plain::Lost) || piece.means(is_stolen)
}

/// A word of need in a text of which perhaps nothing else is understood: a body, somebody of the
/// family beside harm or a word of no list, or a slip of a word for fire.
pub(crate) fn may_be_need(
    pieces: &[Piece<'_>],
    folded: &Folded<'_>,
    lexicon: &Lexicon,
    own: Langs,
) -> bool {
    let any = |wanted: fn(&Piece<'_>) -> bool| pieces.iter().any(wanted);
    let is_strange = |piece: &Piece<'_>| matches!(piece.sense, Sense::Unknown);
    let burns = |piece: &Piece<'_>| {
        let word = folded.text.get(piece.start..piece.end);
        is_strange(piece) && word.is_some_and(|word| lexicon.is_near_fire(word, own))
    };
    let works = |piece: &Piece<'_>| piece.kind().is_some() && !harms(piece);
    let is_family = any(|piece| piece.is_plain(Plain::Relative))
        && pieces.iter().any(|piece| harms(piece) || is_strange(piece))
        && !pieces.iter().any(works)
        && !any(places);
    is_family || any(is_body) || pieces.iter().any(burns)
}

fn is_body(piece: &Piece<'_>) -> bool {
    piece.is_plain(Plain::Body)
}

/// A death, sickness, or what does harm.
fn harms(piece: &Piece<'_>) -> bool {
    let harm = |kind: Kind| matches!(kind.effect(), Effect::Dead | Effect::Sick | Effect::Harmed);
    piece.kind().is_some_and(harm) || piece.is_of(sort::CAUSE | sort::AILMENT)
}

/// A block, or how many: then it is of trees.
const fn places(piece: &Piece<'_>) -> bool {
    matches!(piece.sense, Sense::Block(_) | Sense::Number(_))
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
    let is_fire =
        first.is_some_and(|word| word.means(|meaning| meaning == Meaning::Cause(Cause::Fire)));
    is_fire && words.next().is_none()
}
