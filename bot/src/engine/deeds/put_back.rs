//! UNDO and a number: what was put right of somebody else is again as it was told before.

use budwood_parser::Act;
use budwood_scheduler::{Body, Person};

use crate::{
    engine::{
        outcome::Outcome,
        questions::read_back::draft_of,
        roles,
        said::Done,
        step::Step,
        turn::{Telling, Turn},
    },
    wording::put_back,
};

impl Step<'_> {
    /// Does what such a text asks for; none when it is another text.
    pub(crate) fn put_back(&mut self, turn: &Turn, speaker: &Person) -> Option<Done> {
        let (words, number) = turn.text.trim().rsplit_once(' ')?;
        let number: u64 = number.parse().ok()?;
        let fix = self.view().fix_numbered(speaker, number)?;
        let asked = Turn {
            text: words.to_owned(),
            ..turn.clone()
        };
        let reading = self.view().read(&asked, speaker.role);
        let [Act::Undo] = reading.acts.as_slice() else {
            return None;
        };
        if roles::needs_code(speaker.role) && !self.view().is_on_visit(&turn.number) {
            let visit = self.view().visit(turn);
            return Some(self.ask_code(turn, visit));
        }
        let old = self.view().event(fix.supersedes?)?;
        let Body::Reported { block, .. } = old.body else {
            return None;
        };
        let draft = draft_of(&self.world.directory, &old)?;
        let turn = &Turn {
            target: self.view().owner_of(&old).unwrap_or(turn.target),
            ..turn.clone()
        };
        // Who told it first is who tells it again.
        let telling = Telling {
            by: old.by,
            source: old.source,
            message: Some(turn.message),
        };
        self.record(telling, Some(fix.id), old.body);
        self.close_question(&turn.number);
        let view = self.view();
        let said = view.with_stand(turn, block, &[&draft], put_back);
        let told = view.fixed_notice(turn, block, &draft);
        Some(Outcome::Changed.saying(said.into_iter().chain(told)))
    }
}
