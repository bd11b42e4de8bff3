//! A new number, told from the old phone: a code goes to the new one, and comes back by the old one,
//! so that nobody takes a record over with one phone alone.

use budwood_scheduler::Role;

use crate::{
    args,
    engine::{outcome::Outcome, questions::passing::ending, said::Done, step::Step, turn::Turn},
    wording::{Key, Phrase, Value},
    words::message::{Deed, Question},
};

impl Step<'_> {
    /// Asks for the code, if the text holds such a number; else a person looks, as at a phone that
    /// several share.
    pub(crate) fn new_number(&mut self, turn: &Turn) -> Option<Done> {
        let view = self.view();
        let speaker = view.person(turn.speaker)?;
        let may = match speaker.role {
            Role::Farmer | Role::Leader => true,
            Role::Adviser | Role::Clerk | Role::Nursery | Role::Viewer => false,
        };
        let is_alone = view.everyone_on(&turn.number) == [turn.speaker];
        if !may || !is_alone || view.is_helpers(&turn.number) {
            return None;
        }
        let number = view.mobile_in(&turn.text)?;
        if view.is_anybodys(&number) {
            return None;
        }
        let person = turn.speaker;
        let deed = Deed::Moved {
            person,
            number: number.clone(),
        };
        if view.is_locked(&turn.number, &deed) {
            return Some(Outcome::Locked.saying([view.locked(turn)]));
        }
        let code = view.code(turn);
        let args = args! { "code" => code.as_str(), "name" => Value::name(speaker.called()) };
        let phrase = Phrase::new(Key::NumberCode, args);
        let there = view.to_number(turn.message, (&number, person), phrase);
        self.use_code(turn, &deed, false);
        let sent = Phrase::new(Key::NumberCodeSent, args! { "digits" => ending(&number) });
        let question = Question::Code { code, deed };
        let said = self.ask(turn, person, question, sent);
        Some(Outcome::AskedForCode.saying([said, there]))
    }
}
