//! People who are left in peace, and who are reminded again.
//!
//! An adviser does so by [`Step::hold_or_go`], which asks for the code that opens a visit; a death does so
//! by itself.

use budwood_parser::{Query, Topic};
use budwood_scheduler::{Body, Person, Reason};

use crate::{
    args,
    engine::{outcome::Outcome, said::Done, step::Step, turn::Turn},
    wording::{Key, Phrase, Value},
    words::limits,
};

impl Step<'_> {
    /// HOLD and GO, by the adviser of the one who is named.
    pub(crate) fn hold_or_go(&mut self, turn: &Turn, adviser: &Person, query: &Query) -> Done {
        let view = self.view();
        let named = query.member.as_deref();
        let found = named.map(|name| view.members_named(turn, adviser, name));
        let found = found.unwrap_or_default();
        if found.len() > 1 {
            let said = view.reply(turn, view.which(adviser, &found));
            return Outcome::Answered.saying([said]);
        }
        let member = found.first().and_then(|member| view.person(*member));
        let Some(member) = member.cloned() else {
            let said = view.reply(turn, view.not_yours(adviser));
            return Outcome::Answered.saying([said]);
        };
        if !self.view().is_on_visit(&turn.number) {
            let turn = Turn {
                target: member.id,
                ..turn.clone()
            };
            let visit = self.view().visit(&turn);
            return self.ask_code(&turn, visit);
        }
        let name = Value::name(&member.name);
        let (outcome, phrase) = if query.topic == Topic::GoOn {
            let telling = view.telling(turn, member.id);
            let key = if member.hold.is_some() {
                let body = Body::GoneOn { person: member.id };
                self.record(telling, None, body);
                Key::GoneOn
            } else {
                Key::NotHeld
            };
            (Outcome::GoneOn, Phrase::new(key, args! { "name" => name }))
        } else {
            let until = self.view().day_named(turn, adviser, query);
            let words = turn.text.trim().chars();
            let words: String = words.take(limits::REASON_CHARS_MAX).collect();
            self.leave_alone(turn, member.id, until, Reason::Told(words));
            let phrase = match until {
                Some(until) => {
                    let day = Value::day_seen(until, self.view().today_of(member.id));
                    Phrase::new(Key::HeldUntil, args! { "name" => name, "day" => day })
                }
                None => Phrase::new(Key::Held, args! { "name" => name }),
            };
            (Outcome::LeftAlone, phrase)
        };
        outcome.saying([self.view().reply(turn, phrase)])
    }
}
