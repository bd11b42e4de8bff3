//! What is said to the bot that asks nothing, in words of no list: corrections and answers.
//!
//! Deliberately absent: how likely it is said (`meant`).

use crate::{
    glyphs::fold::Folded,
    lists::piece::{Glance, Piece},
    reading::{Act, Correction, Reading},
    spoken::corrections,
};

/// What can be said, each a column behind those of what is asked. Who wants no more texts must say so
/// in listed words; a person hears of it else.
pub(crate) const SAID: [Said; 6] = [
    Said::Correct,
    Said::Undo,
    Said::Yes,
    Said::No,
    Said::Later,
    Said::Done,
];

/// What can be said to the bot that asks nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Said {
    Correct,
    Undo,
    Yes,
    No,
    Later,
    Done,
}

impl Said {
    /// The same, with what is to be changed.
    pub(crate) fn act(self, pieces: &[Piece<'_>], folded: &Folded<'_>) -> Option<Act> {
        Some(match self {
            Self::Correct => Act::Correct(corrections::likely(pieces, folded)?),
            Self::Undo => Act::Undo,
            Self::Yes => Act::Yes,
            Self::No => Act::No,
            Self::Later => Act::Later(None),
            Self::Done => Act::Done,
        })
    }
}

/// Only a correction may stand beside what sounds like a report: "weeded A, done" tells.
pub(crate) fn may_be_said(act: &Act, reading: &Reading) -> bool {
    matches!(act, Act::Correct(_)) || reading.reports.is_empty()
}

/// A correction that holds if what was told before has one of its two values: so no word of it need be
/// known. Where a correction is likely, any two values may be one.
pub(crate) fn amends(
    pieces: &[Piece<'_>],
    folded: &Folded<'_>,
    is_likely: bool,
) -> Option<Correction> {
    let has_both = |change: &Correction| change.from.is_some() && change.to.is_some();
    let listed = corrections::read(pieces, Glance::of(pieces), folded);
    let likely = || corrections::likely(pieces, folded).filter(has_both);
    match listed {
        Some(change) if has_both(&change) => Some(change),
        Some(_) => likely(),
        None => is_likely.then(likely).flatten(),
    }
}
