//! Questions: of a farmer about his blocks, of an adviser about a group or a person.
//!
//! A word of work beside a group's name is a question when an adviser texts. Deliberately absent:
//! answers.

use alloc::{string::ToString, vec::Vec};

use crate::{
    details::{Measure, Unit},
    kind::Kind,
    meaning::{Meaning, Plain},
    piece::{Piece, Sense},
    reading::{Query, Sender, Stance, Topic},
};

/// A question of an adviser, which is never a report.
pub(crate) fn adviser(pieces: &[Piece<'_>], sender: Sender) -> Option<Query> {
    if sender != Sender::Adviser {
        return None;
    }
    let core = core(pieces);
    let named = |wanted: fn(&Sense<'_>) -> bool| core.iter().any(|piece| wanted(&piece.sense));
    let group = named(|sense| matches!(sense, Sense::Group(_)));
    let member = named(|sense| matches!(sense, Sense::Member(_)));
    let topic = core
        .iter()
        .find_map(|piece| piece.part(Meaning::adviser_topic));
    let kind = core.iter().find_map(|piece| kind_asked(piece));
    if group {
        let topic = topic.unwrap_or(Topic::Status);
        let clear = core.iter().all(|piece| crate::gate::is_known(piece));
        return (clear && core.len() <= 5).then(|| query(pieces, topic, kind));
    }
    if member {
        // "from Tamo: dead 4 A" reports for him.
        let reports = core.iter().any(|piece| {
            matches!(
                piece.sense,
                Sense::Number(_) | Sense::Block(_) | Sense::List { .. }
            )
        });
        let short = core.len() <= 3;
        let topic = topic
            .filter(|topic| *topic != Topic::Status)
            .unwrap_or(Topic::Member);
        return (short && !(reports && kind.is_some())).then(|| query(pieces, topic, kind));
    }
    let only_topic = core
        .iter()
        .all(|piece| piece.part(Meaning::adviser_topic).is_some() || is_period(piece));
    let firm = core
        .first()
        .and_then(|piece| piece.part(Meaning::adviser_topic));
    firm.filter(|_| only_topic)
        .map(|topic| query(pieces, topic, None))
}

/// A question that anyone may ask.
pub(crate) fn anyone(pieces: &[Piece<'_>]) -> Option<Query> {
    let core = core(pieces);
    let trade = core.iter().any(|piece| is_trade(piece));
    let clear = pieces.iter().any(crate::gate::is_clear_work);
    let whole = core.iter().all(|piece| {
        piece.means(|meaning| matches!(meaning, Meaning::Topic(_)))
            || matches!(
                piece.sense,
                Sense::Block(_) | Sense::When(_) | Sense::Member(_)
            )
    });
    let mut topics = core
        .iter()
        .enumerate()
        .filter_map(|(at, piece)| Some((at, piece.part(Meaning::topic)?)));
    let found = topics.find(|(at, topic)| match topic {
        Topic::CallMe | Topic::Who | Topic::MyData | Topic::Erase | Topic::Next | Topic::Status => {
            whole
        }
        Topic::When => whole || (*at == 0 && trade),
        Topic::HowMuch | Topic::MayI => *at == 0 && trade,
        Topic::Other => *at == 0 && clear,
        Topic::Late | Topic::Quiet | Topic::Gaps | Topic::Sick | Topic::Member | Topic::Window => {
            false
        }
    });
    let asked = || {
        let question = pieces.iter().any(|piece| {
            piece.is_mark('?')
                || piece.means(|meaning| meaning == Meaning::Stance(Stance::Question))
        });
        (question && clear).then_some((0, Topic::Other))
    };
    let (_, topic) = found.or_else(asked)?;
    Some(query(
        pieces,
        topic,
        core.iter().find_map(|piece| kind_asked(piece)),
    ))
}

/// The words that carry the question.
fn core<'p, 'r>(pieces: &'p [Piece<'r>]) -> Vec<&'p Piece<'r>> {
    pieces
        .iter()
        .filter(|piece| {
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
        })
        .collect()
}

/// The kind of work that a word asks about.
fn kind_asked(piece: &Piece<'_>) -> Option<Kind> {
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

fn is_trade(piece: &Piece<'_>) -> bool {
    kind_asked(piece).is_some()
        || piece.is_any(&[Plain::Trees, Plain::Tall])
        || piece.means(|meaning| matches!(meaning, Meaning::Crop | Meaning::Cover | Meaning::Clone))
}

fn is_period(piece: &Piece<'_>) -> bool {
    matches!(piece.sense, Sense::Number(_) | Sense::When(_))
        || piece.part(Meaning::period).is_some()
}

fn query(pieces: &[Piece<'_>], topic: Topic, kind: Option<Kind>) -> Query {
    let find = |name: for<'s> fn(&'s Sense<'_>) -> Option<&'s str>| {
        pieces
            .iter()
            .find_map(|piece| name(&piece.sense).map(ToString::to_string))
    };
    let mut query = Query {
        topic,
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
        kind,
        area: None,
        period_days: None,
        number: None,
        yes: None,
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
