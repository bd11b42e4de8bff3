//! What an adviser owes is noted, and kept.

use budwood_parser::Query;
use budwood_scheduler::{Person, PersonId};

use crate::{
    args,
    engine::{outcome::Outcome, said::Done, step::Step, turn::Turn},
    wording::{Key, Phrase},
};

impl Step<'_> {
    /// "call Keti Friday": it is on the adviser's list until it is kept.
    pub(crate) fn promise(&mut self, turn: &Turn, adviser: &Person, query: &Query) -> Done {
        let view = self.view();
        match view.promising(turn, adviser, query) {
            Ok(promise) => {
                let phrase = view.promised(&promise);
                self.put_promise(promise);
                Outcome::Promised.saying([self.view().reply(turn, phrase)])
            }
            Err(instead) => Outcome::Answered.saying([view.reply(turn, instead)]),
        }
    }

    /// "kept Keti", "kept 41": one promise is owed no more. Where none was made, the call that she
    /// waits for is; that closes a text of hers, so it needs the code of a visit.
    pub(crate) fn kept(&mut self, turn: &Turn, adviser: &Person, query: &Query) -> Done {
        let view = self.view();
        let named = query.member.as_deref();
        let found: Vec<PersonId> = named
            .map(|name| view.members_named(turn, adviser, name))
            .unwrap_or_default();
        if found.len() > 1 {
            let said = view.reply(turn, view.which(adviser, &found));
            return Outcome::Answered.saying([said]);
        }
        if let Some(promise) = view.promise_meant(adviser, query, &found).cloned() {
            self.drop_promise(promise.message);
            let view = self.view();
            let args = args! {
                "text" => promise.words.as_str(),
                "count" => view.owed(adviser).len(),
            };
            let said = view.reply(turn, Phrase::new(Key::PromiseKept, args));
            return Outcome::Kept.saying([said]);
        }
        // Or what was read of hers a moment ago.
        let texts = view.calls_owed(adviser).into_iter();
        let mut texts = texts.chain(view.read_last(adviser));
        let call = texts.find(|text| found.contains(&text.person));
        let Some(call) = call.cloned() else {
            return Outcome::Answered.saying([view.reply(turn, Key::PromiseNone)]);
        };
        if !view.is_on_visit(&turn.number) {
            let turn = Turn {
                target: call.person,
                ..turn.clone()
            };
            let visit = self.view().visit(&turn);
            return self.ask_code(&turn, visit);
        }
        self.close_and_say(turn, adviser, &call)
    }
}
