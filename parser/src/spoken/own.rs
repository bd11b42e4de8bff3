//! What people decide about themselves or ask for, word for word: "share yes", "how prune", "more".
//!
//! Such words stand for something that must not be guessed, so nothing of them is repaired, nothing
//! learned, and only thanks may stand beside a decision. Deliberately absent: who it is.

use alloc::vec::Vec;

use crate::{
    glyphs::fold::{Folded, bare},
    lists::piece::{Piece, Sense},
    meaning::{Meaning, Plain},
    pack::{Own, Pack},
    reading::{Query, Topic},
    spoken::queries::{core, kind_asked},
};

/// The words of all packs, the longest first, with and without their marks.
pub(crate) fn words(packs: &[Pack]) -> Vec<Own> {
    let all = packs.iter().flat_map(|pack| &pack.own);
    let mut words: Vec<Own> = all
        .flat_map(|own| {
            let plain = Own {
                phrase: bare(&own.phrase),
                ..own.clone()
            };
            [own.clone(), plain]
        })
        .collect();
    words.sort_by_key(|own| core::cmp::Reverse(own.phrase.len()));
    words
}

/// What is decided, if the whole text says it.
pub(crate) fn read(pieces: &[Piece<'_>], folded: &Folded<'_>, words: &[Own]) -> Option<Query> {
    let text = folded.text.trim_start();
    let start = folded.text.len() - text.len();
    let own = words.iter().find(|own| {
        let rest = text.strip_prefix(own.phrase.as_str());
        let next = rest.map(|rest| rest.chars().next());
        next.is_some_and(|next| next.is_none_or(|next| !next.is_alphanumeric()))
    })?;
    let end = start + own.phrase.len();
    let at = pieces.partition_point(|piece| piece.start < end);
    let (words, rest) = pieces.split_at_checked(at)?;
    // "How many" is another word than "how".
    if words.last().is_some_and(|last| last.end > end) {
        return None;
    }
    if own.topic == Topic::HowTo {
        return how_to(rest);
    }
    let small = |piece: &Piece<'_>| {
        let is_full_stop = matches!(piece.sense, Sense::Mark(mark) if mark != '?');
        is_full_stop || piece.is_plain(Plain::Courtesy)
    };
    rest.iter().all(small).then(|| Query {
        yes: own.yes,
        ..Query::of(own.topic, None)
    })
}

/// "How prune", "how plant stump": a kind of work, a sort of plants, and nothing of one's own.
fn how_to(rest: &[Piece<'_>]) -> Option<Query> {
    let material = |piece: &Piece<'_>| piece.part(Meaning::material);
    let core = core(rest);
    let named = |piece: &&Piece<'_>| kind_asked(piece).is_some() || material(piece).is_some();
    core.iter().all(named).then(|| Query {
        material: core.iter().find_map(|piece| material(piece)),
        ..Query::of(
            Topic::HowTo,
            core.iter().find_map(|piece| kind_asked(piece)),
        )
    })
}
