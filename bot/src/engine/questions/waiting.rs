//! What waits for the adviser: which texts, how old they are, what they say.

use budwood_parser::Alarm;
use budwood_scheduler::{
    Person, Role,
    decide::{Concern, Decision, Draft},
    jobs::nudge,
};
use chrono::{DateTime, TimeDelta, Utc};

use super::address::last_digits;
use crate::{
    args,
    engine::{
        local_time::{instant, zone},
        said::Said,
        turn::Turn,
        view::View,
    },
    wording::{Args, Facts, Key, Phrase, Value},
    words::{limits, matter::Matter},
};

impl<'a> View<'a> {
    /// The texts that wait for this adviser: where a life may hang on it first, then the oldest.
    pub(crate) fn waiting_for(self, adviser: &Person) -> Vec<&'a Matter> {
        let is_theirs = |matter: &&Matter| {
            let sender = self.person(matter.person);
            let own = sender.and_then(|sender| self.adviser_of(sender));
            own.is_some_and(|own| own.id == adviser.id)
        };
        let mut waiting: Vec<&Matter> = self.world.matters.all().filter(is_theirs).collect();
        waiting.sort_by_key(|matter| (!matter.concern.is_danger(), matter.at));
        waiting
    }

    /// WAITING: how many, the oldest, and who.
    pub(crate) fn waiting_list(self, adviser: &Person) -> Phrase {
        let waiting = self.waiting_for(adviser);
        let Some(oldest) = waiting.iter().map(|matter| matter.at).min() else {
            return Key::WaitingNone.into();
        };
        let people = waiting.iter().map(|matter| {
            let args = args! {
                "name" => Value::name(self.sender_of(matter)),
                "hours" => self.hours_since(matter.at),
            };
            Phrase::new(Key::WaitingPerson, args).into()
        });
        let args = args! {
            "count" => waiting.len(),
            "hours" => self.hours_since(oldest),
            "people" => Value::List(people.collect()),
        };
        Phrase::new(Key::WaitingList, args)
    }

    /// The text that NEXT shows: the first that was not shown lately; where all were, the one that
    /// was shown longest ago.
    pub(crate) fn next_waiting(self, adviser: &Person) -> Option<&'a Matter> {
        let waiting = self.waiting_for(adviser).into_iter();
        let lately = self.now - TimeDelta::hours(2 * limits::READ_HOURS);
        waiting.min_by_key(|matter| matter.read_at.filter(|at| *at > lately))
    }

    /// What the adviser read last, a while ago at most.
    pub(crate) fn read_last(self, adviser: &Person) -> Option<&'a Matter> {
        let lately = self.now - TimeDelta::hours(limits::READ_HOURS);
        let waiting = self.waiting_for(adviser).into_iter();
        waiting
            .filter(|matter| matter.read_at.is_some_and(|at| at > lately))
            .max_by_key(|matter| matter.read_at)
    }

    /// A text that waits, in its sender's own words. They stand last: where there is no room they
    /// are cut, and nothing else.
    pub(crate) fn matter_shown(self, matter: &Matter) -> Phrase {
        let facts = self.facts_in(matter);
        let group = self.person(matter.person).and_then(|person| person.group);
        let args = args! {
            "name" => Value::name(self.sender_of(matter)),
            "group" => Value::name(self.group_name(group)),
            "digits" => last_digits(&matter.number),
            "hours" => self.hours_since(matter.at),
            "concern" => concern(matter.concern),
            "text" => matter.text.as_str(),
        };
        if !facts.is_empty() {
            return self.with_facts(matter, args, &facts);
        }
        let key = if matter.concern == Concern::Alarm(Alarm::Number) {
            Key::WaitingNextNumber
        } else {
            Key::WaitingNext
        };
        Phrase::new(key, args)
    }

    fn with_facts(self, matter: &Matter, mut args: Args, facts: &[Draft]) -> Phrase {
        let mut blocks: Vec<&str> = facts
            .iter()
            .filter_map(|fact| fact.block.as_deref())
            .collect();
        blocks.dedup();
        let block = blocks.join(", ");
        let drafts: Vec<&Draft> = facts.iter().collect();
        let told = Facts {
            block: &block,
            facts: &drafts,
            today: self.today_of(matter.person),
        };
        args.extend(args! { "block" => Value::name(&block), "facts" => told.clauses() });
        Phrase::new(Key::WaitingNextStore, args)
    }

    /// What a text that waits would have stored, if it can be read.
    pub(crate) fn facts_in(self, matter: &Matter) -> Vec<Draft> {
        let Some(sender) = self.person(matter.person) else {
            return Vec::new();
        };
        let turn = Turn {
            number: matter.number.clone(),
            message: matter.message,
            speaker: sender.id,
            target: sender.id,
            text: matter.text.clone(),
            sent_at: matter.at,
        };
        let reading = self.read(&turn, sender.role);
        // It tells of somebody else, or may: a person sorts it out.
        if reading.member.is_some() || self.everyone_on(&matter.number).len() > 1 {
            return Vec::new();
        }
        match self.decide(&turn, &reading, sender.role) {
            Decision::Record(facts) | Decision::Confirm { facts, .. } => facts,
            Decision::Ask { .. }
            | Decision::Amend(_)
            | Decision::Answer(_)
            | Decision::Reply(_)
            | Decision::Help(_)
            | Decision::Silent(_)
            | Decision::Person(_)
            | Decision::Both(..) => Vec::new(),
        }
    }

    /// That texts are old: one text to the adviser for all of them, and to the office of the group
    /// when they are very old.
    pub(crate) fn told_of_age(self, old: &[Matter]) -> Vec<Said> {
        let mut said: Vec<Said> = Vec::new();
        for matter in old {
            let Some(sender) = self.person(matter.person) else {
                continue;
            };
            let Some(hours) = limits::WAITING_HOURS.get(told_before(matter)) else {
                continue;
            };
            let since = self.now - TimeDelta::hours(*hours);
            let Some(adviser) = self.adviser_of(sender) else {
                continue;
            };
            let mut waiting = self.waiting_for(adviser);
            waiting.retain(|matter| matter.at <= since);
            let first = waiting.first().copied().unwrap_or(matter);
            let of = self.person(first.person).and_then(|person| person.group);
            let args = args! {
                "count" => waiting.len(),
                "hours" => *hours,
                "name" => Value::name(self.sender_of(first)),
                "group" => Value::name(self.group_name(of)),
            };
            let is_last = limits::WAITING_HOURS.last() == Some(hours);
            let office = self.office_of(sender).filter(|_| is_last);
            for reader in [Some(adviser), office].into_iter().flatten() {
                let phrase = Phrase::new(Key::WaitingOld, args.clone());
                let Some(one) = self.notice_to(reader, matter.message, phrase) else {
                    continue;
                };
                if !said.iter().any(|other| other.to.number == one.to.number) {
                    said.push(one);
                }
            }
        }
        said
    }

    /// When the age of a text is told next: by day, where its sender lives.
    pub(crate) fn tell_at(self, matter: &Matter) -> Option<DateTime<Utc>> {
        let told = usize::try_from(matter.told).unwrap_or(usize::MAX);
        let hours = limits::WAITING_HOURS.get(told)?;
        let at = (matter.at + TimeDelta::hours(*hours)).max(self.now);
        let sender = self.person(matter.person);
        let Some(group) = sender.and_then(|sender| self.group_of(sender)) else {
            return Some(at);
        };
        let zone = zone(group, self.setup);
        let local = at.with_timezone(&zone).naive_local();
        let slot = nudge::slot(&self.setup.rules, local, &[], None);
        Some(instant(slot, zone).max(at))
    }

    fn office_of(self, sender: &Person) -> Option<&'a Person> {
        let mut members = self.world.directory.members(sender.group?);
        members.find(|person| person.role == Role::Clerk)
    }

    fn sender_of(self, matter: &Matter) -> &'a str {
        let sender = self.person(matter.person);
        sender.map_or("", |person| &person.name)
    }

    pub(crate) fn hours_since(self, at: DateTime<Utc>) -> i64 {
        (self.now - at).num_hours()
    }
}

/// A matter that is due was told so often before.
fn told_before(matter: &Matter) -> usize {
    usize::try_from(matter.told).unwrap_or(usize::MAX)
}

/// Why a text waits, in a word or two.
pub(crate) fn concern(concern: Concern) -> Phrase {
    match concern {
        Concern::Alarm(alarm) => Key::Alarm(alarm),
        Concern::CallMe => Key::ConcernCallMe,
        Concern::Question => Key::ConcernQuestion,
        Concern::Unclear => Key::ConcernUnclear,
    }
    .into()
}
