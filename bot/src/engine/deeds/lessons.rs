//! How a piece of work is done: HOW and the work gives the first of five short texts, MORE the next.

use budwood_parser::{Act, Query};
use budwood_scheduler::{Lesson, Person, handbook::lesson::STEPS};

use crate::{
    args,
    engine::{outcome::Outcome, said::Done, step::Step, turn::Turn},
    wording::{Key, Phrase},
    words::message::Listed,
};

impl Step<'_> {
    /// The first step of the lesson that is asked for, if there is one.
    pub(super) fn lesson(&mut self, turn: &Turn, query: &Query) -> Option<Done> {
        let lesson = self.view().lesson_asked(turn, query)?;
        Some(self.lesson_step(turn, lesson, 1, turn.text.clone()))
    }

    /// The next step of the lesson that was begun.
    pub(super) fn more_lesson(&mut self, turn: &Turn, speaker: &Person) -> Option<Done> {
        let view = self.view();
        let listed = view.talk(&turn.number)?.listed.clone()?;
        let asked = Turn {
            text: listed.text.clone(),
            ..turn.clone()
        };
        let acts = view.read(&asked, speaker.role).acts;
        let lesson = acts.iter().find_map(|act| {
            if let Act::Query(query) = act {
                view.lesson_asked(turn, query)
            } else {
                None
            }
        })?;
        let step = usize::try_from(listed.shown).ok()?.checked_add(1)?;
        Some(self.lesson_step(turn, lesson, step, listed.text))
    }

    fn lesson_step(&mut self, turn: &Turn, lesson: Lesson, step: usize, text: String) -> Done {
        let is_last = step >= STEPS;
        let shown = u32::try_from(step).unwrap_or(u32::MAX);
        self.talk(&turn.number).listed = (!is_last).then_some(Listed { text, shown });
        let args = args! {
            "step" => step,
            "of" => STEPS,
            "text" => Phrase::from(Key::Lesson(lesson, step.min(STEPS))),
        };
        let key = if is_last {
            Key::LessonEnd
        } else {
            Key::LessonStep
        };
        Outcome::Answered.saying([self.view().reply(turn, Phrase::new(key, args))])
    }
}
