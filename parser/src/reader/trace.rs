//! How a text was read, for a person who asks why: the cuts, the role of each piece, what that is
//! worth, and by how much it holds.
//!
//! Deliberately absent: anything that changes a reading.

use alloc::vec::Vec;

use super::{Both, Reader, words_of};
use crate::{
    glyphs::fold::Folded,
    kind::Kind,
    learned::{
        course::{ASKED, Course, TOLD, kind_of},
        weights::SCALE,
    },
    lists::piece::Piece,
    pieces::used::{Use, Uses},
    reading::Known,
    rules::plans,
    span::Span,
};

/// How a text was read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Trace {
    /// Every piece, in order.
    pub steps: Vec<Step>,
    /// How sure what was learned is, in hundredths of log-odds.
    pub sure: i32,
    /// So sure it is stored without a question.
    pub stored_from: i32,
    /// So sure it is worth a question.
    pub asked_from: i32,
    /// Which reading holds.
    pub holds: Holds,
}

/// Which reading of a text holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Holds {
    /// That of the word lists.
    Lists,
    /// They and what was learned tell the same.
    Both,
    /// That which was learned of other people's texts.
    Learned,
}

/// One piece of a text, and its role.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Step {
    /// Where the text was cut.
    pub span: Span,
    /// What the piece does in the text.
    pub role: Role,
    /// What the piece by itself is worth for that role against standing aside, in hundredths of
    /// log-odds.
    pub worth: i32,
    /// How much worse the best reading is in which it has another role, in the same.
    pub margin: i32,
    /// What a number is used for, and by how much that is likelier than another use.
    pub used: Option<(&'static str, i32)>,
}

/// What a piece does in a text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Role {
    /// Nothing: a courtesy, a reason, a story.
    Aside,
    /// It asks.
    Asked,
    /// It speaks with the bot.
    Talk,
    /// It tells of work.
    Told(Kind),
    /// It denies that the work was done.
    Denied(Kind),
}

impl Reader {
    /// How a text is read; slower than reading it.
    #[must_use]
    pub fn trace(&self, text: &str, known: &Known<'_>) -> Trace {
        let both = self.read(text, known).both;
        self.with_pieces(text, known, |all, folded| {
            let mut way = Vec::new();
            let Both { learned, .. } = self.both(all, folded, known, |course, uses| {
                way = steps(all, folded, course, uses);
            });
            let words = words_of(plans::before_plan(all), all, folded);
            Trace {
                steps: way,
                sure: learned.sure,
                stored_from: learned.stored_from(words),
                asked_from: learned.asked_from(words),
                holds: match (both, learned.agrees()) {
                    (false, _) => Holds::Lists,
                    (true, true) => Holds::Both,
                    (true, false) => Holds::Learned,
                },
            }
        })
    }
}

/// The steps of a course.
fn steps(pieces: &[Piece<'_>], folded: &Folded<'_>, course: &Course, uses: &Uses) -> Vec<Step> {
    let each = pieces.iter().zip(&course.states).zip(&course.margins);
    let more = course.worths.iter().zip(uses);
    each.zip(more)
        .map(|(((piece, state), margin), (worths, used))| {
            let alone = |state: usize| worths.get(state).copied().unwrap_or(0);
            Step {
                span: folded.span(piece.start, piece.end),
                role: role(*state),
                worth: hundredths(alone(usize::from(*state)) - alone(0)),
                margin: hundredths(*margin),
                used: used.map(|(used, margin)| (name(used), hundredths(margin))),
            }
        })
        .collect()
}

/// Steps of a weight as hundredths of log-odds; no other state at all is past every bound.
fn hundredths(steps: i32) -> i32 {
    steps.saturating_mul(100) / i32::from(SCALE)
}

fn role(state: u8) -> Role {
    match kind_of(state) {
        Some((kind, false)) => Role::Told(kind),
        Some((kind, true)) => Role::Denied(kind),
        None if usize::from(state) == ASKED => Role::Asked,
        None if usize::from(state) + 1 == TOLD => Role::Talk,
        None => Role::Aside,
    }
}

/// A use in plain words.
const fn name(used: Use) -> &'static str {
    match used {
        Use::Nothing => "nothing that is kept",
        Use::Count => "count",
        Use::Of => "of so many",
        Use::Amount => "amount",
        Use::Area => "area",
        Use::Value => "measured value",
        Use::Rain => "millimetres",
        Use::Place => "block",
        Use::Day => "day",
    }
}
