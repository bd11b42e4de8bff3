//! What waits for the adviser: which texts, how old they are, what they say.

use budwood_parser::Alarm;
use budwood_scheduler::{
    Person, Role,
    decide::{Concern, Draft},
    jobs::nudge,
};
use chrono::{DateTime, TimeDelta, Utc};

use super::address::last_digits;
use crate::{
    args,
    engine::{
        local_time::{instant, zone},
        roles::{self, Reach, Verb},
        said::Said,
        view::View,
    },
    wording::{Args, Key, Phrase, Value},
    words::{limits, matter::Matter},
};

/// Of each kind of text that waits the first and how many there are, in the order in which they wait.
pub(crate) fn kinds_of<'m>(waiting: &[&'m Matter]) -> Vec<(&'m Matter, usize)> {
    let mut kinds: Vec<(&Matter, usize)> = Vec::new();
    for matter in waiting {
        match kinds
            .iter_mut()
            .find(|(first, _)| first.concern == matter.concern)
        {
            Some((_, count)) => *count += 1,
            None => kinds.push((matter, 1)),
        }
    }
    kinds
}

impl<'a> View<'a> {
    /// The texts that wait for this adviser, or in the clerk's group: where a life may hang on it first, then the oldest.
    pub(crate) fn waiting_for(self, adviser: &Person) -> Vec<&'a Matter> {
        let reach = roles::reach(adviser.role, Verb::ReadQueue);
        let is_theirs = |matter: &&Matter| match reach {
            Reach::Nobody => false,
            Reach::OwnGroup => {
                let sender = self.person(matter.person);
                let group = sender.and_then(|sender| sender.group);
                group.is_some() && group == adviser.group && matter.person != adviser.id
            }
            Reach::Advised => {
                let reader = self.reader_of(matter);
                reader.is_some_and(|reader| reader.id == adviser.id)
            }
        };
        let mut waiting: Vec<&Matter> = self.world.matters.all().filter(is_theirs).collect();
        waiting.sort_by_key(|matter| (!matter.concern.is_danger(), matter.at));
        waiting
    }

    /// Who is to read a text: its sender's adviser, or whom it was passed to.
    fn reader_of(self, matter: &Matter) -> Option<&'a Person> {
        match matter.passed_to {
            Some(person) => self.person(person),
            None => self.adviser_of(self.person(matter.person)?),
        }
    }

    /// WAITING: how many, the oldest; of each kind how many, and whose is the oldest.
    pub(crate) fn waiting_list(self, adviser: &Person) -> Phrase {
        let waiting = self.waiting_for(adviser);
        let Some(oldest) = waiting.iter().map(|matter| matter.at).min() else {
            return Key::WaitingNone.into();
        };
        let people = kinds_of(&waiting).into_iter().map(|(first, count)| {
            let args = args! {
                "concern" => concern(first.concern),
                "count" => count,
                "name" => Value::name(self.sender_of(first)),
                "hours" => self.hours_since(first.at),
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
            .filter(|matter| matter.read_by.is_none_or(|reader| reader == adviser.id))
            .filter(|matter| matter.read_at.is_some_and(|at| at > lately))
            .max_by_key(|matter| matter.read_at)
    }

    /// A text that waits, in its sender's own words. They stand last: where there is no room they
    /// are cut, and nothing else.
    pub(crate) fn matter_shown(self, matter: &Matter) -> Phrase {
        let readings = self.readings_of(matter);
        let group = self.person(matter.person).and_then(|person| person.group);
        let args = args! {
            "name" => Value::name(self.sender_of(matter)),
            "group" => Value::name(self.group_name(group)),
            "digits" => last_digits(&matter.number),
            "hours" => self.hours_since(matter.at),
            "concern" => concern(matter.concern),
            "text" => matter.text.as_str(),
        };
        if !readings.is_empty() {
            return self.with_readings(matter, args, &readings);
        }
        let key = if matter.concern == Concern::Alarm(Alarm::Number) {
            Key::WaitingNextNumber
        } else {
            Key::WaitingNext
        };
        Phrase::new(key, args)
    }

    fn with_readings(self, matter: &Matter, mut args: Args, readings: &[Vec<Draft>]) -> Phrase {
        let mut shown = self.readings_shown(matter, readings);
        if shown.len() > 1 {
            let shown = shown.into_iter().map(Value::from);
            args.extend(args! { "readings" => Value::List(shown.collect()) });
            return Phrase::new(Key::WaitingNextChoose, args);
        }
        args.extend(shown.pop().map(|only| only.args).unwrap_or_default());
        Phrase::new(Key::WaitingNextStore, args)
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
            let Some(adviser) = self.reader_of(matter) else {
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
