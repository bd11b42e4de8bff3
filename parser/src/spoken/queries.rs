//! Questions that anyone may ask, and what all questions are made of.
//!
//! Deliberately absent: answers, and what only an adviser asks.

use alloc::{string::ToString, vec::Vec};

use crate::{
    details::{Measure, Unit},
    glyphs::fold::Folded,
    kind::Kind,
    lists::piece::{Glance, Piece, Sense},
    meaning::{Meaning, Plain, sort},
    reading::{Query, Stance, Topic},
};

/// The name of a language, or of a group that we do not know, has no more words.
pub(crate) const NAME_WORDS_MAX: usize = 2;

/// "language", "language fr", "bahasa indonesia": what stands after the word is taken as a name,
/// whatever else it means.
pub(crate) fn language(pieces: &[Piece<'_>], glance: Glance, folded: &Folded<'_>) -> Option<Query> {
    let is_language = |piece: &Piece<'_>| piece.part(Meaning::topic) == Some(Topic::Language);
    // Most texts hold no such word; they need no closer look.
    if !glance.traits.has(sort::TOPIC) || !pieces.iter().any(is_language) {
        return None;
    }
    let mut words = pieces
        .iter()
        .filter(|piece| !matches!(piece.sense, Sense::Mark(_)) && !piece.is_plain(Plain::Courtesy));
    words.next().filter(|piece| is_language(piece))?;
    let first = words.next();
    let (more, last) = words.fold((0, first), |(more, _), next| (more + 1, Some(next)));
    let named = first
        .zip(last)
        .map(|(first, last)| folded.written(first.start, last.end).to_string());
    (more < NAME_WORDS_MAX).then(|| Query {
        language: named,
        ..query(&[], Topic::Language, None)
    })
}

/// More words than these are no command that is read to the letter.
const COMMAND_WORDS_MAX: usize = 4;

/// A few words, all of the lists or names: they are said to the bot to the letter.
pub(crate) fn is_command(pieces: &[Piece<'_>]) -> bool {
    pieces.len() <= COMMAND_WORDS_MAX && pieces.iter().all(crate::pieces::known::is_known)
}

/// What is asked only where nothing else is said.
const AS_A_WHOLE: [Topic; 6] = [
    Topic::CallMe,
    Topic::Who,
    Topic::MyData,
    Topic::Erase,
    Topic::Next,
    Topic::Status,
];
/// What is asked wherever its words stand.
const ANYWHERE: [Topic; 2] = [Topic::Order, Topic::Meeting];

/// A question that anyone may ask.
pub(crate) fn anyone(pieces: &[Piece<'_>], glance: Glance) -> Option<Query> {
    // Most texts ask nothing; they need no closer look.
    if !glance.asks && !glance.traits.has(sort::TOPIC | sort::STANCE) {
        return None;
    }
    let mut core = core(pieces);
    // "what next, yes?"
    core.retain(|piece| !piece.is_plain(Plain::Yes));
    if is_of_pay(&core) {
        return None;
    }
    let trade = core.iter().any(|piece| is_trade(piece));
    let clear = pieces.iter().any(crate::pieces::known::is_clear_work);
    let whole = core.iter().all(|piece| is_asking(piece) || is_about(piece));
    let land = core.windows(2).any(|pair| is_area(pair));
    // "block A fertiliser when", as many languages ask: then every word must be known.
    let plain = (trade || land || core.iter().any(|piece| is_pack(piece)))
        && core.iter().all(|piece| is_of_the_field(piece));
    let mut topics = core
        .iter()
        .enumerate()
        .filter_map(|(at, piece)| Some((at, piece.part(Meaning::topic)?)));
    let asked_after = || is_question(pieces) || core.iter().any(|piece| is_amount(piece));
    let found = topics.find(|(at, topic)| {
        let first = *at == 0;
        let of = |one: Topic| *topic == one;
        (of(Topic::When) && (whole || plain || (first && trade)))
            || (of(Topic::HowMuch) && (plain || (first && trade)) && !is_counted(&core, *at))
            || (of(Topic::MayI) && (plain || (first && trade)))
            || (of(Topic::Price) && (whole || asked_after()))
            || (of(Topic::Other) && first && clear)
            || (AS_A_WHOLE.contains(topic) && whole)
            || ANYWHERE.contains(topic)
    });
    let asked = || (clear && is_question(pieces)).then_some((0, Topic::Other));
    let (at, topic) = found.or_else(asked)?;
    // "may I weed A" names the work after the question, "A weed may I" before it.
    let (before, after) = core.split_at_checked(at)?;
    let after = after.iter().find_map(|piece| kind_asked(piece));
    let before = || before.iter().rev().find_map(|piece| kind_asked(piece));
    // "how many bags": of fertiliser.
    let feed = || {
        core.iter()
            .any(|piece| is_pack(piece))
            .then_some(Kind::Fertilised)
    };
    let kind = after.or_else(before).or_else(feed);
    Some(query(pieces, topic, kind.map(|kind| sown(pieces, kind))))
}

/// "can I plant cassava": what is planted is another crop than rubber.
pub(crate) fn sown(pieces: &[Piece<'_>], kind: Kind) -> Kind {
    let means = |meaning| pieces.iter().any(|piece| piece.means(|own| own == meaning));
    let other = [
        (Meaning::Crop, Kind::IntercropSown),
        (Meaning::Cover, Kind::CoverSown),
    ];
    let sown = other.into_iter().find(|(thing, _)| means(*thing));
    sown.filter(|_| kind == Kind::Planted)
        .map_or(kind, |(_, sown)| sown)
}

/// "what", "must", "please send": words around the one that says what is asked.
fn is_asking(piece: &Piece<'_>) -> bool {
    piece.means(|meaning| {
        matches!(
            meaning,
            Meaning::Topic(_) | Meaning::Stance(Stance::Question | Stance::Plan | Stance::Request)
        )
    })
}

/// The land, the day or the person that is asked about.
fn is_about(piece: &Piece<'_>) -> bool {
    let named = matches!(
        piece.sense,
        Sense::Block(_) | Sense::When(_) | Sense::Member(_)
    );
    named || piece.is_plain(Plain::Land)
}

/// "chet may 97 ngay": a figure after "how many" is no question, but for one of land.
fn is_counted(core: &[&Piece<'_>], at: usize) -> bool {
    let next = core.get(at + 1..).unwrap_or_default();
    let figure = next.first().is_some_and(|next| next.number().is_some());
    figure && !next.get(..2).is_some_and(is_area)
}

/// "how much you got for cleaning": what comes in for work is money.
fn is_of_pay(core: &[&Piece<'_>]) -> bool {
    let kinds = || core.iter().filter_map(|piece| piece.kind());
    let comes_in = kinds().any(|kind| kind == Kind::Received);
    let has_amount = core.iter().any(|piece| is_amount(piece));
    comes_in && kinds().any(|kind| kind != Kind::Received) && has_amount
}

/// "How much".
pub(crate) fn is_amount(piece: &Piece<'_>) -> bool {
    piece.part(Meaning::topic) == Some(Topic::HowMuch)
}

/// Bags and kilograms.
fn is_pack(piece: &Piece<'_>) -> bool {
    let is_pack = |unit: Unit| !unit.is_area() && !unit.is_length();
    piece.part(Meaning::unit).is_some_and(is_pack)
}

/// "2 rai": land has trees on it.
fn is_area(pair: &[&Piece<'_>]) -> bool {
    matches!(pair, [number, unit] if number.number().is_some() && unit.part(area_unit).is_some())
}

/// Nothing strange, and no word of what others do or of life at home.
fn is_of_the_field(piece: &Piece<'_>) -> bool {
    let elsewhere = piece.means(|meaning| {
        matches!(
            meaning,
            Meaning::Stance(Stance::Hearsay | Stance::Saying | Stance::Advert | Stance::Stock)
        )
    });
    crate::pieces::known::is_known(piece) && !elsewhere
}

/// A question mark, or a word that asks.
pub(crate) fn is_question(pieces: &[Piece<'_>]) -> bool {
    (0..pieces.len()).any(|at| {
        crate::pieces::known::is_asking_mark(pieces, at)
            || pieces.get(at).is_some_and(|piece| {
                piece.means(|meaning| meaning == Meaning::Stance(Stance::Question))
            })
    })
}

/// The words that carry the question.
pub(crate) fn core<'p, 'r>(pieces: &'p [Piece<'r>]) -> Vec<&'p Piece<'r>> {
    let mut core = Vec::with_capacity(pieces.len());
    core.extend(pieces.iter().filter(|piece| {
        let topic = piece.means(|meaning| {
            matches!(
                meaning,
                Meaning::Topic(_) | Meaning::AdviserTopic(_) | Meaning::Kind(_)
            )
        });
        let small = piece.is_any(&[
            Plain::Courtesy,
            Plain::Filler,
            Plain::At,
            Plain::Block,
            Plain::To,
            Plain::From,
        ]);
        !matches!(piece.sense, Sense::Mark(_)) && (topic || !small)
    }));
    core
}

/// The kind of work that a word asks about.
pub(crate) fn kind_asked(piece: &Piece<'_>) -> Option<Kind> {
    let asked = |meaning: Meaning| {
        let things = [
            (Meaning::Fertiliser, Kind::Fertilised),
            (Meaning::Spray, Kind::Sprayed),
        ];
        let thing = things.into_iter().find(|(thing, _)| *thing == meaning);
        let sight = meaning.ailment().map(|_| Kind::Disease);
        let harm = meaning.cause().map(|_| Kind::Damage);
        sight.or(harm).or(thing.map(|(_, kind)| kind))
    };
    piece.kind().or_else(|| piece.part(asked))
}

pub(crate) fn is_trade(piece: &Piece<'_>) -> bool {
    // "when you came", "how much you got": small words there.
    (kind_asked(piece).is_some() && !piece.is_plain(Plain::Filler))
        || piece.is_any(&[Plain::Trees, Plain::Tall])
        || piece.means(|meaning| matches!(meaning, Meaning::Crop | Meaning::Cover | Meaning::Clone))
}

/// A question with the names and numbers in it.
pub(crate) fn query(pieces: &[Piece<'_>], topic: Topic, kind: Option<Kind>) -> Query {
    let find = |name: for<'s> fn(&'s Sense<'_>) -> Option<&'s str>| {
        pieces
            .iter()
            .find_map(|piece| name(&piece.sense).map(ToString::to_string))
    };
    let mut query = Query {
        group: find(|sense| {
            if let Sense::Group(name) = sense {
                Some(name)
            } else {
                None
            }
        }),
        member: find(|sense| {
            if let Sense::Member(name) = sense {
                Some(name)
            } else {
                None
            }
        }),
        block: find(|sense| {
            if let Sense::Block(name) = sense {
                Some(name)
            } else {
                None
            }
        }),
        ..Query::of(topic, kind)
    };
    for (at, piece) in pieces.iter().enumerate() {
        let next = pieces.get(at + 1);
        if let Sense::Number(number) = piece.sense {
            let area = next.and_then(|next| next.part(area_unit));
            if let Some(unit) = area {
                let value = number.decimal.unwrap_or(number.value);
                query.area = Some(Measure { value, unit });
            } else if let Some(days) = next.and_then(|next| next.part(Meaning::period)) {
                let many = number.whole().and_then(|many| u16::try_from(many).ok());
                query.period_days = many.and_then(|many| many.checked_mul(days));
            } else {
                query.number = query.number.or(number.whole());
            }
        } else if let Some(days) = piece.part(Meaning::period) {
            query.period_days = query.period_days.or(Some(days));
        } else if topic == Topic::Window && piece.is_plain(Plain::Yes) {
            query.yes = Some(true);
        } else if topic == Topic::Window && piece.is_any(&[Plain::No, Plain::Negation]) {
            query.yes = Some(false);
        }
    }
    query
}

fn area_unit(meaning: Meaning) -> Option<Unit> {
    meaning.unit().filter(|unit| unit.is_area())
}
