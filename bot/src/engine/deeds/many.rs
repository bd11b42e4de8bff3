//! What one text tells of many is confirmed together, stored of each, and read back together.

use budwood_parser::{Act, Bare, Reading};

use crate::{
    args,
    engine::{
        outcome::Outcome,
        said::{Done, Said},
        step::Step,
        turn::Turn,
    },
    wording::{Key, Phrase},
    words::message::{Purpose, Question, Told},
};

impl Step<'_> {
    /// Asks whether all of it is right; what the text tells of others waits for the answer.
    pub(crate) fn ask_many(&mut self, turn: &Turn, told: Vec<Told>, rest: String) -> Done {
        let phrase = self.view().confirm_many(turn, &told);
        let said = self.ask(turn, turn.speaker, Question::ConfirmMany(told), phrase);
        if let Some(open) = &mut self.talk(&turn.number).open {
            open.rest = Some(rest).filter(|rest| !rest.is_empty());
        }
        Outcome::AskedToConfirm.saying([said])
    }

    /// "1, yes" or "2, no" to that question.
    pub(crate) fn many_answered(&mut self, turn: &Turn, reading: &Reading) -> Option<Done> {
        let open = self.view().open_question(&turn.number)?;
        let Question::ConfirmMany(told) = open.question else {
            return None;
        };
        match (reading.acts.as_slice(), &reading.bare) {
            ([Act::Yes], _) | ([], Some(Bare::Number(1.0))) => Some(self.store_many(turn, &told)),
            ([Act::No], _) | ([], Some(Bare::Number(2.0))) => Some(self.drop_question(turn)),
            _ => None,
        }
    }

    fn store_many(&mut self, turn: &Turn, told: &[Told]) -> Done {
        self.talk(&turn.number).open = None;
        let mut stored = Vec::new();
        let mut notices: Vec<Said> = Vec::new();
        for one in told {
            let of_one = Turn {
                target: one.person,
                ..turn.clone()
            };
            let done = self.store_facts(&of_one, &one.facts);
            if done.outcome == Outcome::Recorded {
                stored.append(&mut self.talk(&turn.number).last);
            }
            let is_answer = |said: &Said| matches!(said.purpose, Purpose::Answer { .. });
            notices.extend(done.said.into_iter().filter(|said| !is_answer(said)));
        }
        self.talk(&turn.number).last = stored;
        let view = self.view();
        let args = args! { "people" => view.people_told(turn, told) };
        let said = view.reply(turn, Phrase::new(Key::ManyTold, args));
        Outcome::Recorded.saying([said].into_iter().chain(notices))
    }
}
