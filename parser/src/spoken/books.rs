//! What asks the books of a group, or enters something in them: "list", "trained pruning: Yano, Nilo",
//! "stock GT1 600". Such a text begins with its word, and comes from who keeps books.
//!
//! Deliberately absent: who that is, and what the books hold.

use alloc::{
    string::{String, ToString},
    vec::Vec,
};

use crate::{
    glyphs::fold::{Folded, bare},
    lists::piece::{Piece, Sense},
    meaning::Meaning,
    pack::Pack,
    reading::{Entry, Query, Sender, Topic},
    spoken::queries::{core, kind_asked, query},
};

/// The words of all packs, the longest first, with and without their marks.
pub(crate) fn words(packs: &[Pack]) -> Vec<(String, Topic)> {
    let all = packs.iter().flat_map(|pack| &pack.books);
    let mut words: Vec<(String, Topic)> = all
        .flat_map(|(phrase, topic)| [(phrase.clone(), *topic), (bare(phrase), *topic)])
        .collect();
    words.sort_by_key(|(phrase, _)| core::cmp::Reverse(phrase.len()));
    words
}

/// What a text asks of the books, or enters in them.
pub(crate) fn read(
    pieces: &[Piece<'_>],
    folded: &Folded<'_>,
    sender: Sender,
    words: &[(String, Topic)],
) -> Option<Query> {
    if sender != Sender::Adviser {
        return None;
    }
    let text = folded.text.trim_start();
    let start = folded.text.len() - text.len();
    let (phrase, topic) = words.iter().find(|(phrase, _)| {
        let rest = text.strip_prefix(phrase.as_str());
        let next = rest.map(|rest| rest.chars().next());
        next.is_some_and(|next| next.is_none_or(|next| !next.is_alphanumeric()))
    })?;
    let end = start + phrase.len();
    let at = pieces.partition_point(|piece| piece.start < end);
    let rest = pieces.get(at..).unwrap_or_default();
    let core = core(rest);
    let is_asked = core.iter().all(|piece| {
        let named = matches!(piece.sense, Sense::Group(_) | Sense::When(_));
        named || kind_asked(piece).is_some()
    });
    let is_named = |piece: &&Piece<'_>| matches!(piece.sense, Sense::Member(_) | Sense::Group(_));
    let is_of_people = topic.is_of_people();
    let is_meant = if is_of_people {
        // Whoever is new has a name that nobody knows.
        core.iter().any(is_named)
    } else {
        is_asked || (topic.is_of_books() && is_entered(*topic, &core))
    };
    if !is_meant {
        return None;
    }
    let words = folded.written(end, folded.text.len()).trim();
    let words = if is_of_people { words } else { "" };
    let kind = core.iter().find_map(|piece| kind_asked(piece));
    Some(Query {
        entry: Entry {
            words: words.to_string(),
            ..entry(*topic, &core)
        },
        ..query(rest, *topic, kind.filter(|_| topic.takes_kind()))
    })
}

/// "trained branch: Yano, Nilo", "paid Yano 47.40", "stock GT1 600": what follows says that it is
/// entered, and not asked.
pub(crate) fn is_entered(topic: Topic, rest: &[&Piece<'_>]) -> bool {
    let names = rest
        .iter()
        .any(|piece| matches!(piece.sense, Sense::Member(_)));
    let counts = rest.iter().any(|piece| piece.number().is_some());
    // Nobody is left out unseen, and nothing goes to another group than the one that is named.
    let is_clear = !rest
        .iter()
        .any(|piece| matches!(piece.sense, Sense::Unknown));
    let needs_names = matches!(topic, Topic::Trained | Topic::Paid);
    is_clear && (names || !needs_names) && (counts || topic == Topic::Trained)
}

/// What is entered: each person with the number behind the name, and what belongs to nobody.
pub(crate) fn entry(topic: Topic, core: &[&Piece<'_>]) -> Entry {
    let mut entry = Entry::default();
    if !topic.is_of_books() && !topic.is_of_people() {
        return entry;
    }
    for piece in core {
        if let Sense::Member(name) = piece.sense {
            entry.lines.push((name.to_string(), None));
        } else if let Sense::When(when) = piece.sense {
            entry.when = entry.when.or(Some(when));
        } else if let Some(number) = piece.number() {
            let value = number.decimal.unwrap_or(number.value);
            match entry.lines.last_mut() {
                Some((_, told @ None)) => *told = Some(value),
                Some(_) | None => entry.amount = entry.amount.or(Some(value)),
            }
        } else if piece.means(|meaning| meaning == Meaning::Clone) {
            let name = piece.listed().and_then(|listed| listed.name());
            entry.clone_name = entry.clone_name.or(name.map(ToString::to_string));
        }
    }
    entry
}
