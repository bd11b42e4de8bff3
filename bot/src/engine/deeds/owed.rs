//! A complaint is owed an answer: it is promised for the adviser, by a day and under a number.

use budwood_scheduler::Person;

use crate::{
    args,
    engine::{step::Step, turn::Turn},
    wording::{Key, Phrase, Value},
};

impl Step<'_> {
    /// What did not come is answered by the adviser within some days: that is promised for them, under a
    /// number that both read. Who complains again has the same one.
    pub(super) fn owed_an_answer(&mut self, turn: &Turn, speaker: &Person) -> Option<Phrase> {
        let view = self.view();
        let (promise, is_new) = view.answer_owed(turn, speaker)?;
        let args = args! {
            "number" => promise.number,
            "day" => Value::day_seen(promise.on, view.today_of(speaker.id)),
        };
        let phrase = view.signed_with(speaker, Key::ComplaintTold, args);
        if is_new {
            self.put_promise(promise);
        }
        Some(phrase)
    }
}
