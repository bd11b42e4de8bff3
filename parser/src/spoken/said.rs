//! What is said to the bot itself: the first of a command, a language, a correction, a question.

use alloc::{string::String, vec::Vec};

use crate::{
    glyphs::fold::Folded,
    lists::piece::{Glance, Piece},
    pack::Own,
    pieces::known,
    reading::{Act, Alarm, Correction, Sender, Topic},
    spoken::{acts, alarm, asked, books, corrections, own, queries},
};

/// Words that count where they stand in a text, and are in no list.
pub(crate) struct Apart {
    /// By which books are asked: at the begin.
    pub(crate) books: Vec<(String, Topic)>,
    /// By which people decide about themselves: the whole text.
    pub(crate) own: Vec<Own>,
}

/// What is said to the bot itself.
pub(crate) struct Spoken {
    pub(crate) act: Option<Act>,
    /// Words of work in the text only say what the act is about.
    pub(crate) replaces_reports: bool,
}

impl Spoken {
    /// What a person must see. What else an adviser's words would say is told to others, or is about
    /// money that is asked after: nobody needs help by it.
    pub(crate) fn alarm(&self, pieces: &[Piece<'_>], glance: Glance, calm: bool) -> Option<Alarm> {
        let needs_none = |topic: Topic| {
            let is_told = matches!(topic, Topic::Tell | Topic::Promise);
            is_told || topic.is_of_books() || topic.is_of_people()
        };
        match &self.act {
            Some(Act::Query(query)) if needs_none(query.topic) => None,
            _ => alarm::read(pieces, glance, calm),
        }
    }
}

/// Finds it. Texts that begin with one of these words are about the books.
pub(crate) fn spoken(
    pieces: &[Piece<'_>],
    glance: Glance,
    folded: &Folded<'_>,
    (sender, calm): (Sender, bool),
    apart: &Apart,
) -> Spoken {
    // A correction changes a record, so every word of it must be known.
    let exact = |_: &Correction| calm && pieces.iter().all(known::is_known);
    let correction = || corrections::read(pieces, glance, folded).filter(exact);
    let act = own::read(pieces, folded, &apart.own)
        .or_else(|| books::read(pieces, folded, sender, &apart.books))
        .map(Act::Query)
        .or_else(|| acts::read(pieces, glance))
        .or_else(|| queries::language(pieces, glance, folded).map(Act::Query))
        .or_else(|| correction().map(Act::Correct))
        .or_else(|| asked::adviser(pieces, folded, sender).map(Act::Query));
    if act.is_some() {
        return Spoken {
            act,
            replaces_reports: true,
        };
    }
    Spoken {
        act: queries::anyone(pieces, glance)
            .filter(|_| calm)
            .map(Act::Query),
        replaces_reports: false,
    }
}
