//! Questions and deeds of an adviser: about a group, about a person, about all groups.
//!
//! A word of work beside a group's name is a question when an adviser texts. Deliberately absent:
//! answers.

use alloc::string::ToString;

use crate::{
    details::Unit,
    glyphs::fold::Folded,
    kind::Kind,
    lists::piece::{Piece, Sense},
    meaning::{Meaning, Plain},
    reading::{Query, Sender, Topic},
    spoken::books,
    spoken::queries::{NAME_WORDS_MAX, core, is_amount, is_question, kind_asked, query},
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
/// What may be done about a person who is named. These words stand in reports and in talk too, so
/// they count only where the text begins with one and a name follows; behind it may stand no more
/// than other names.
const ABOUT_ONE: [Topic; 5] = [
    Topic::Lost,
    Topic::Found,
    Topic::Moved,
    Topic::Pass,
    Topic::Kept,
];
/// The same, and what follows the name are the adviser's own words.
const IN_OWN_WORDS: [Topic; 2] = [Topic::Tell, Topic::Promise];
/// Words that say something only as the whole text, the last of them with a number behind it.
const ALONE: [Topic; 2] = [Topic::More, Topic::Whose];

/// A question of an adviser, which is never a report.
pub(crate) fn adviser(pieces: &[Piece<'_>], folded: &Folded<'_>, sender: Sender) -> Option<Query> {
    if sender != Sender::Adviser {
        return None;
    }
    let core = core(pieces);
    let is_group = |piece: &&Piece<'_>| matches!(piece.sense, Sense::Group(_));
    let is_member = |piece: &&Piece<'_>| matches!(piece.sense, Sense::Member(_));
    if is_done_for_one(pieces) {
        return Some(query(pieces, Topic::Kept, None));
    }
    if let Some(topic) = to_the_letter(&core) {
        return Some(Query {
            entry: books::entry(topic, &core),
            ..query(pieces, topic, None)
        });
    }
    let names_member = core.iter().any(is_member);
    if core.iter().any(is_group) {
        // "from Keti RIVA: dead 9 A": the group says which Keti.
        let reports = names_member && tells(&core);
        (!reports).then(|| about_group(pieces, &core)).flatten()
    } else if names_member {
        about_member(pieces, &core)
    } else {
        about_all(pieces, &core)
            .or_else(|| about_unknown_name(pieces, &core, folded))
            .or_else(|| about_all_at_length(pieces, &core))
    }
}

/// What a word asks about, wherever it stands.
fn topic_of(piece: &Piece<'_>) -> Option<Topic> {
    let topic = piece.part(Meaning::adviser_topic);
    let topic = topic.or_else(|| is_bag(piece).then_some(Topic::Bags));
    let stands_first = |topic: &Topic| {
        let mut firsts = ABOUT_ONE.iter().chain(&IN_OWN_WORDS).chain(&ALONE);
        firsts.any(|first| first == topic)
    };
    topic.filter(|topic| !stands_first(topic))
}

/// What is asked first; of "dead cause" and "dead clone" what stands behind says it.
fn topic_in(core: &[&Piece<'_>]) -> Option<Topic> {
    let mut topics = core.iter().filter_map(|piece| topic_of(piece));
    let first = topics.next()?;
    let by = topics.find(|topic| matches!(topic, Topic::Cause | Topic::Clone));
    Some(by.filter(|_| first == Topic::Dead).unwrap_or(first))
}

fn about_group(pieces: &[Piece<'_>], core: &[&Piece<'_>]) -> Option<Query> {
    let kind = other_kind(core);
    let topic = topic_in(core);
    let topic = topic.unwrap_or(match kind {
        Some(Kind::Fertilised) if core.iter().any(|piece| is_amount(piece)) => Topic::Bags,
        Some(_) => Topic::Job,
        None => Topic::Status,
    });
    let clear = core
        .iter()
        .all(|piece| crate::pieces::known::is_known(piece));
    let is_short = clear && core.len() <= GROUP_WORDS_MAX;
    (is_short || asks_at_length(pieces, core)).then(|| query(pieces, topic, kind))
}

/// "who in Kolo is behind with weeding?": a whole sentence that names what is asked, and asks.
fn asks_at_length(pieces: &[Piece<'_>], core: &[&Piece<'_>]) -> bool {
    let named =
        |piece: &&Piece<'_>| topic_of(piece).is_some() || piece.part(Meaning::topic).is_some();
    core.len() <= SENTENCE_WORDS_MAX && core.iter().any(named) && is_question(pieces)
}

/// "girth Tamo" asks; "from Tamo: dead 4 A" reports for him.
fn about_member(pieces: &[Piece<'_>], core: &[&Piece<'_>]) -> Option<Query> {
    let topic = topic_in(core).filter(|topic| *topic != Topic::Status);
    let kind = other_kind(core);
    // "hold Tamo until 15 Jan, the land is sold".
    let holds = core
        .first()
        .is_some_and(|piece| topic_of(piece) == Some(Topic::LeaveAlone) && kind.is_none());
    let asks = holds || core.len() <= MEMBER_WORDS_MAX && !tells(core);
    asks.then(|| query(pieces, topic.unwrap_or(Topic::Member), kind))
}

/// A kind of work stands in it, and a figure or a block, as in a report.
fn tells(core: &[&Piece<'_>]) -> bool {
    let is_told = |piece: &&Piece<'_>| {
        matches!(
            piece.sense,
            Sense::Number(_) | Sense::Block(_) | Sense::List { .. }
        )
    };
    core.iter().any(is_told) && core.iter().any(|piece| kind_asked(piece).is_some())
}

/// "done Keti": what was promised to her.
fn is_done_for_one(pieces: &[Piece<'_>]) -> bool {
    let mut words = pieces
        .iter()
        .filter(|piece| !matches!(piece.sense, Sense::Mark(_)));
    let is_done = words
        .next()
        .is_some_and(|first| first.is_plain(Plain::Done));
    let is_member = |piece: &Piece<'_>| matches!(piece.sense, Sense::Member(_));
    let is_name = |piece: &Piece<'_>| is_member(piece) || matches!(piece.sense, Sense::Group(_));
    let mut named = words.clone();
    is_done && named.any(is_member) && words.all(is_name)
}

/// What a text says that begins as it must: "lost Keti", "moved Keti KOLO 07700 900555", "p Tor",
/// "tell KOLO the plants come on Saturday", "more", "who 0003".
fn to_the_letter(core: &[&Piece<'_>]) -> Option<Topic> {
    let (first, rest) = core.split_first()?;
    let topic = first.part(Meaning::adviser_topic)?;
    let is_member = |piece: &&&Piece<'_>| matches!(piece.sense, Sense::Member(_));
    let is_name = |piece: &&&Piece<'_>| is_member(piece) || matches!(piece.sense, Sense::Group(_));
    let holds = if IN_OWN_WORDS.contains(&topic) {
        rest.first().is_some_and(|piece| is_name(&piece))
    } else if ABOUT_ONE.contains(&topic) {
        let only_names = rest.iter().all(|piece| is_name(&piece));
        let by_number = matches!(rest, [only] if only.number().is_some());
        let of_one = rest.iter().any(|piece| is_member(&piece));
        (topic == Topic::Kept && by_number) || (of_one && (topic == Topic::Moved || only_names))
    } else if topic.is_of_books() {
        books::is_entered(topic, rest)
    } else if topic == Topic::Whose {
        matches!(rest, [only] if only.number().is_some())
    } else {
        topic == Topic::More && rest.is_empty()
    };
    holds.then_some(topic)
}

/// "QUIET", "late this week", "prune", "train branch": about all groups.
fn about_all(pieces: &[Piece<'_>], core: &[&Piece<'_>]) -> Option<Query> {
    topic_of(core.first()?)?;
    let topic = topic_in(core)?;
    let of_work = matches!(topic, Topic::Train | Topic::Job);
    let only_topic = core.iter().all(|piece| {
        topic_of(piece).is_some() || is_period(piece) || (of_work && piece.kind().is_some())
    });
    let kind = other_kind(core).filter(|_| of_work);
    only_topic.then(|| query(pieces, topic, kind))
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

/// The kind of work beside the topic: "prune KOLO" has one, "gaps KOLO" has none.
fn other_kind(core: &[&Piece<'_>]) -> Option<Kind> {
    core.iter()
        .filter(|piece| {
            let topic = topic_of(piece);
            topic.is_none_or(|topic| matches!(topic, Topic::Status | Topic::Job))
        })
        .find_map(|piece| kind_asked(piece))
}

/// Bags, of which only fertiliser comes in.
fn is_bag(piece: &Piece<'_>) -> bool {
    piece.part(Meaning::unit) == Some(Unit::Bag)
}

fn is_period(piece: &Piece<'_>) -> bool {
    matches!(piece.sense, Sense::Number(_) | Sense::When(_))
        || piece.part(Meaning::period).is_some()
}
