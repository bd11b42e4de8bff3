//! What an adviser owes: by their own text, and by ours, which said that they would call.

use budwood_parser::{Query, Taken};
use budwood_scheduler::{
    Person, PersonId,
    decide::{Concern, date_ahead},
};
use chrono::{NaiveDate, TimeDelta};

use super::figures::Names;
use crate::{
    args,
    engine::{turn::Turn, view::View},
    wording::{Key, Phrase, Value},
    words::{limits, matter::Matter, message::Audience, promise::Promise},
};

/// A promise without a day is for a week.
const USUAL_DAYS: i64 = 7;
/// Plants that did not come dry out elsewhere: who waits for them hears of it within so many days.
const ANSWER_DAYS: i64 = 3;

impl<'a> View<'a> {
    /// The promise that a text makes; or what is said instead.
    pub(crate) fn promising(
        self,
        turn: &Turn,
        speaker: &Person,
        query: &Query,
    ) -> Result<Promise, Phrase> {
        let reading = self.read(turn, speaker.role);
        let (to, _) = self.spoken_to(turn, speaker, query, &reading)?;
        let open = self.promises_of(speaker);
        if open.len() >= limits::PROMISES_MAX {
            let args = args! { "count" => open.len() };
            return Err(Phrase::new(Key::PromiseFull, args));
        }
        let usual = || self.today_of(speaker.id) + TimeDelta::days(USUAL_DAYS);
        let words = turn.text.trim().chars();
        Ok(Promise {
            message: turn.message,
            number: self.next_promise(speaker),
            at: self.now,
            by: speaker.id,
            to,
            on: self.day_named(turn, speaker, query).unwrap_or_else(usual),
            words: words.take(limits::REASON_CHARS_MAX).collect(),
        })
    }

    /// The answer that the adviser of somebody owes them, and whether that is new; none where the list of
    /// what is owed is full.
    pub(crate) fn answer_owed(self, turn: &Turn, to: &Person) -> Option<(Promise, bool)> {
        let adviser = self.adviser_of(to)?;
        let open = self.promises_of(adviser);
        let told = Audience::Person(to.id);
        let is_same = |one: &&&Promise| one.to == told && one.words == turn.text.trim();
        if let Some(known) = open.iter().find(is_same) {
            return Some(((*known).clone(), false));
        }
        if open.len() >= limits::PROMISES_MAX {
            return None;
        }
        let words = turn.text.trim().chars();
        let promise = Promise {
            message: turn.message,
            number: self.next_promise(adviser),
            at: self.now,
            by: adviser.id,
            to: told,
            on: self.today_of(adviser.id) + TimeDelta::days(ANSWER_DAYS),
            words: words.take(limits::REASON_CHARS_MAX).collect(),
        };
        Some((promise, true))
    }

    /// The number of an adviser's next promise: no open one has it.
    pub(crate) fn next_promise(self, adviser: &Person) -> u32 {
        let open = self.promises_of(adviser).into_iter();
        let last = open.map(|promise| promise.number).max();
        last.unwrap_or_default().saturating_add(1)
    }

    /// That it is noted.
    pub(crate) fn promised(self, promise: &Promise) -> Phrase {
        let today = self.today_of(promise.by);
        let args = args! {
            "number" => promise.number,
            "day" => Value::day_seen(promise.on, today),
            "text" => promise.words.as_str(),
        };
        Phrase::new(Key::Promised, args)
    }

    /// The day that an adviser names: "until 15 Jan", "2 weeks".
    pub(crate) fn day_named(
        self,
        turn: &Turn,
        adviser: &Person,
        query: &Query,
    ) -> Option<NaiveDate> {
        let today = self.today_of(adviser.id);
        let reading = self.read(turn, adviser.role);
        let said = reading.words.iter().find_map(|word| {
            if let Taken::When(when) = word.taken {
                date_ahead(when, today)
            } else {
                None
            }
        });
        let days = query.period_days.map(i64::from);
        said.or_else(|| days.map(|days| today + TimeDelta::days(days)))
    }

    /// What an adviser promised, the earliest day first.
    pub(crate) fn promises_of(self, adviser: &Person) -> Vec<&'a Promise> {
        let promises = self.world.promises.values();
        let mut own: Vec<&Promise> = promises.filter(|one| one.by == adviser.id).collect();
        own.sort_by_key(|promise| (promise.on, promise.message));
        own
    }

    /// Whom we told that the adviser would call, who waited longest first.
    pub(crate) fn calls_owed(self, adviser: &Person) -> Vec<&'a Matter> {
        let mut calls = self.waiting_for(adviser);
        calls.retain(|matter| matter.concern == Concern::CallMe);
        calls.sort_by_key(|matter| matter.at);
        calls
    }

    /// All of it, as WEEK lists it.
    pub(crate) fn owed(self, adviser: &Person) -> Vec<Value> {
        let today = self.today_of(adviser.id);
        let names = Names::of_all(self, adviser);
        let calls = self.calls_owed(adviser).into_iter().map(|call| {
            let asked = crate::engine::local_time::civil_day(call.at, self.zone_of(adviser.id));
            let args = args! {
                "name" => Value::name(&names.shown(call.person)),
                "day" => Value::day_seen(asked, today),
            };
            Phrase::new(Key::OwedCall, args)
        });
        let promises = self.promises_of(adviser).into_iter().map(|promise| {
            let args = args! {
                "number" => promise.number,
                "day" => Value::day_seen(promise.on, today),
                "text" => Value::brief_words(&promise.words),
            };
            Phrase::new(Key::Owed, args)
        });
        calls.chain(promises).map(Value::from).collect()
    }

    /// The promise that a text says is kept: by its number, or the first to the one who is named.
    pub(crate) fn promise_meant(
        self,
        adviser: &Person,
        query: &Query,
        people: &[PersonId],
    ) -> Option<&'a Promise> {
        let mut own = self.promises_of(adviser).into_iter();
        if query.member.is_none() {
            let number = query.number?;
            return own.find(|promise| promise.number == number);
        }
        own.find(|promise| {
            people
                .iter()
                .any(|one| promise.to == Audience::Person(*one))
        })
    }
}
