//! Which lesson a text asks for.

use budwood_parser::{Query, Topic};
use budwood_scheduler::Lesson;

use super::books::shown_kind;
use crate::engine::{turn::Turn, view::View};

impl View<'_> {
    /// The lesson that a text asks for; HOW alone asks about the last nudge.
    pub(crate) fn lesson_asked(self, turn: &Turn, query: &Query) -> Option<Lesson> {
        if query.topic != Topic::HowTo {
            return None;
        }
        let asked = Lesson::asked(query.kind.map(shown_kind), query.material);
        let is_bare = query.kind.is_none() && query.material.is_none();
        let nudge = || self.talk(&turn.number)?.nudge.as_ref();
        let of_nudge = || Lesson::of_job(nudge()?.task);
        asked.or_else(|| is_bare.then(of_nudge).flatten())
    }
}
