//! Questions: of a farmer about his blocks, of an adviser about a group or a person.
//!
//! A word of work beside a group's name is a question when an adviser texts. Deliberately absent:
//! answers.

use alloc::{string::ToString, vec::Vec};

use crate::{
    details::{Measure, Unit},
    fold::Folded,
    kind::Kind,
    meaning::{Meaning, Plain, sort},
    piece::{Glance, Piece, Sense},
    reading::{Query, Sender, Stance, Topic},
};

/// More words than this beside a name are no question about it.
const GROUP_WORDS_MAX: usize = 5;
const MEMBER_WORDS_MAX: usize = 3;
/// So many may a sentence have that asks about a group.
const SENTENCE_WORDS_MAX: usize = 16;
/// What may be asked about all groups in a sentence; deeds are never taken from one.
const FOR_ALL: [Topic; 6] = [
    Topic::Status,
    Topic::Late,
    Topic::Quiet,
    Topic::Gaps,
    Topic::Sick,
    Topic::Visit,
];
/// What may be said of a person's phone. These words stand in reports too, so they count only where
/// the text begins with one and names a person.
const OF_PHONES: [Topic; 3] = [Topic::Lost, Topic::Found, Topic::Moved];
/// The name of a language, or of a group that we do not know, has no more words.
const NAME_WORDS_MAX: usize = 2;

/// A question of an adviser, which is never a report.
pub(crate) fn adviser(pieces: &[Piece<'_>], folded: &Folded<'_>, sender: Sender) -> Option<Query> {
    if sender != Sender::Adviser {
        return None;
    }
    let core = core(pieces);
    let is_group = |piece: &&Piece<'_>| matches!(piece.sense, Sense::Group(_));
    let is_member = |piece: &&Piece<'_>| matches!(piece.sense, Sense::Member(_));
    let names_member = core.iter().any(is_member);
    if core.iter().any(is_group) {
        // "from Keti RIVA: dead 9 A": the group says which Keti.
        let reports = names_member && is_told(&core) && other_kind(&core).is_some();
        if names_member && let Some(topic) = of_phone(&core) {
            return Some(query(pieces, topic, None));
        }
        (!reports).then(|| about_group(pieces, &core)).flatten()
    } else if names_member {
        about_member(pieces, &core)
    } else {
        about_all(pieces, &core)
            .or_else(|| about_unknown_name(pieces, &core, folded))
            .or_else(|| about_all_at_length(pieces, &core))
    }
}

/// What a word asks about.
fn topic_of(piece: &Piece<'_>) -> Option<Topic> {
    let topic = piece.part(Meaning::adviser_topic);
    topic.filter(|topic| !OF_PHONES.contains(topic))
}

fn about_group(pieces: &[Piece<'_>], core: &[&Piece<'_>]) -> Option<Query> {
    let topic = core.iter().find_map(|piece| topic_of(piece));
    let topic = topic.unwrap_or(Topic::Status);
    let clear = core.iter().all(|piece| crate::gate::is_known(piece));
    let is_short = clear && core.len() <= GROUP_WORDS_MAX;
    (is_short || asks_at_length(pieces, core)).then(|| query(pieces, topic, other_kind(core)))
}

/// "who in Kolo is behind with weeding?": a whole sentence that names what is asked, and asks.
fn asks_at_length(pieces: &[Piece<'_>], core: &[&Piece<'_>]) -> bool {
    let named =
        |piece: &&Piece<'_>| topic_of(piece).is_some() || piece.part(Meaning::topic).is_some();
    core.len() <= SENTENCE_WORDS_MAX && core.iter().any(named) && is_question(pieces)
}

/// A question mark, or a word that asks.
pub(crate) fn is_question(pieces: &[Piece<'_>]) -> bool {
    (0..pieces.len()).any(|at| {
        crate::gate::is_asking_mark(pieces, at)
            || pieces.get(at).is_some_and(|piece| {
                piece.means(|meaning| meaning == Meaning::Stance(Stance::Question))
            })
    })
}

/// "girth Tamo" asks; "from Tamo: dead 4 A" reports for him.
fn about_member(pieces: &[Piece<'_>], core: &[&Piece<'_>]) -> Option<Query> {
    if let Some(topic) = of_phone(core) {
        return Some(query(pieces, topic, None));
    }
    let topic = core.iter().find_map(|piece| topic_of(piece));
    let topic = topic.filter(|topic| *topic != Topic::Status);
    let kind = other_kind(core);
    let told = is_told(core);
    // "hold Tamo until 15 Jan, the land is sold".
    let holds = core
        .first()
        .is_some_and(|piece| topic_of(piece) == Some(Topic::LeaveAlone) && kind.is_none());
    let asks = holds || core.len() <= MEMBER_WORDS_MAX && !(told && kind.is_some());
    asks.then(|| query(pieces, topic.unwrap_or(Topic::Member), kind))
}

/// A figure or a block stands in it, as in a report.
fn is_told(core: &[&Piece<'_>]) -> bool {
    core.iter().any(|piece| {
        matches!(
            piece.sense,
            Sense::Number(_) | Sense::Block(_) | Sense::List { .. }
        )
    })
}

/// "lost Keti", "moved Keti KOLO 07700 900555": nothing but the word, who, and where a number is
/// told that number.
fn of_phone(core: &[&Piece<'_>]) -> Option<Topic> {
    let (first, rest) = core.split_first()?;
    let topic = first.part(Meaning::adviser_topic);
    let topic = topic.filter(|topic| OF_PHONES.contains(topic))?;
    let is_name = |piece: &&&Piece<'_>| matches!(piece.sense, Sense::Member(_) | Sense::Group(_));
    let mut others = rest.iter().filter(|piece| !is_name(piece));
    (topic == Topic::Moved || others.next().is_none()).then_some(topic)
}

/// "QUIET", "late this week": about all groups.
fn about_all(pieces: &[Piece<'_>], core: &[&Piece<'_>]) -> Option<Query> {
    let topic = topic_of(core.first()?)?;
    let only_topic = core
        .iter()
        .all(|piece| topic_of(piece).is_some() || is_period(piece));
    only_topic.then(|| query(pieces, topic, None))
}

/// "which farmers have gone quiet since June?": about all groups, where no number could be a report.
fn about_all_at_length(pieces: &[Piece<'_>], core: &[&Piece<'_>]) -> Option<Query> {
    let mut topics = core.iter().filter_map(|piece| topic_of(piece));
    let topic = topics.find(|topic| FOR_ALL.contains(topic))?;
    let counted = core.iter().any(|piece| piece.number().is_some());
    let asks = asks_at_length(pieces, core) && !counted;
    asks.then(|| query(pieces, topic, other_kind(core)))
}

/// "late Hilltopp", "Hilltopp status": a name that we do not know is asked about under that name.
fn about_unknown_name(
    pieces: &[Piece<'_>],
    core: &[&Piece<'_>],
    folded: &Folded<'_>,
) -> Option<Query> {
    let is_topic = |piece: &Piece<'_>| topic_of(piece).is_some();
    let is_name =
        |piece: &Piece<'_>| matches!(piece.sense, Sense::Unknown) || piece.is_plain(Plain::Land);
    let is_answer = |piece: &Piece<'_>| {
        is_period(piece) || piece.is_any(&[Plain::Yes, Plain::No, Plain::Negation])
    };
    let mut names = core.iter().filter(|piece| is_name(piece));
    let first = names.next()?;
    let (more, last) = names.fold((0, first), |(more, _), piece| (more + 1, piece));
    let beside = core
        .iter()
        .all(|piece| is_topic(piece) || is_name(piece) || is_answer(piece));
    let ends = core
        .first()
        .is_some_and(|piece| is_topic(piece) || is_name(piece));
    let topic = core.iter().find_map(|piece| topic_of(piece))?;
    (beside && ends && more < NAME_WORDS_MAX).then(|| Query {
        group: Some(folded.written(first.start, last.end).to_string()),
        ..query(pieces, topic, other_kind(core))
    })
}

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

/// The kind of work beside the topic: "prune KOLO" has one, "gaps KOLO" has none.
fn other_kind(core: &[&Piece<'_>]) -> Option<Kind> {
    core.iter()
        .filter(|piece| topic_of(piece).is_none_or(|topic| topic == Topic::Status))
        .find_map(|piece| kind_asked(piece))
}

/// More words than these are no command that is read to the letter.
const COMMAND_WORDS_MAX: usize = 4;

/// A few words, all of the lists or names: they are said to the bot to the letter.
pub(crate) fn is_command(pieces: &[Piece<'_>]) -> bool {
    pieces.len() <= COMMAND_WORDS_MAX && pieces.iter().all(crate::gate::is_known)
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
    let clear = pieces.iter().any(crate::gate::is_clear_work);
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
fn is_amount(piece: &Piece<'_>) -> bool {
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
    crate::gate::is_known(piece) && !elsewhere
}

/// The words that carry the question.
fn core<'p, 'r>(pieces: &'p [Piece<'r>]) -> Vec<&'p Piece<'r>> {
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

fn is_period(piece: &Piece<'_>) -> bool {
    matches!(piece.sense, Sense::Number(_) | Sense::When(_))
        || piece.part(Meaning::period).is_some()
}

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
