//! Questions of the adviser about what was told of a farmer, what comes next there, and whose number
//! it is.

use budwood_parser::{Kind, Query};
use budwood_scheduler::{
    Body, Event, Person, PersonId,
    figures::{Labour, Scope, Table, busy_weeks},
};
use chrono::NaiveDate;

use super::{address::last_digits, figures::Names, losses::letter};
use crate::{
    args,
    engine::{local_time::civil_day, view::View},
    wording::{Key, Phrase, Value, clause},
    words::limits,
};

/// So far ahead LABOUR looks.
const AHEAD_DAYS: i64 = 30;

impl View<'_> {
    /// LAST: what was told of a farmer's blocks, the newest first; of one kind, if it is named.
    pub(super) fn last_told(self, person: &Person, query: &Query) -> Phrase {
        let blocks: Vec<_> = self.world.directory.blocks_of(person.id).collect();
        let several = blocks.len() > 1;
        let mut told: Vec<(&str, Event)> = Vec::new();
        for block in blocks {
            let facts = self.state(block.id).map(|state| &state.facts);
            let last = facts.into_iter().flat_map(|facts| facts.iter().rev());
            let events = last
                .take(limits::FACTS_OF_BLOCK)
                .filter_map(|fact| self.event(*fact));
            told.extend(events.map(|event| (block.name.as_str(), event)));
        }
        let today = self.today_of(person.id);
        let facts = told.iter().filter_map(|(block, event)| {
            let (on, what) = told_of(&event.body, query)?;
            let block = several.then(|| Value::Joined(vec![" ".into(), Value::name(block)]));
            let args = args! {
                "day" => Value::day_seen(on, today),
                "source" => Phrase::from(letter(event.source)),
                "block" => block.unwrap_or_else(Value::nothing),
                "what" => what,
            };
            Some(((on, event.id), Phrase::new(Key::LastFact, args)))
        });
        let mut facts: Vec<_> = facts.collect();
        facts.sort_by_key(|(when, _)| std::cmp::Reverse(*when));
        let facts: Vec<Value> = facts.into_iter().map(|(_, fact)| fact.into()).collect();
        let name = Value::brief(person.called());
        if facts.is_empty() {
            return Phrase::new(Key::LastNone, args! { "name" => name });
        }
        Phrase::new(Key::LastList, args! { "name" => name, "facts" => facts })
    }

    /// LABOUR: the jobs of a farmer in the next weeks, how long they take where the calendar tells,
    /// and when people are busy with something else.
    pub(super) fn labour(self, person: &Person) -> Phrase {
        let Some(person) = self.person(person.id) else {
            return Key::LabourNone.into();
        };
        let today = self.today_of(person.id);
        let table = Table {
            scope: Scope::Adviser(person.id),
            rules: &self.setup.rules,
            farmers: vec![self.farmer(person)],
        };
        let work = table.labour(AHEAD_DAYS).value;
        let name = Value::brief(person.called());
        let mut args = args! { "name" => name, "days" => AHEAD_DAYS };
        if work.is_empty() {
            return Phrase::new(Key::LabourNone, args);
        }
        let jobs: Vec<Value> = work.iter().map(|job| self.labour_job(job, today)).collect();
        args.extend(args! { "jobs" => jobs });
        let told = work.iter().filter_map(|job| job.days);
        let sum: f64 = told.clone().sum();
        if told.count() == 0 {
            return Phrase::new(Key::Labour, args);
        }
        let group = self.group_of(person);
        let calendar = group.and_then(|group| self.calendar_of(group));
        let busy = calendar.and_then(|calendar| busy_weeks(calendar, today, AHEAD_DAYS));
        let busy = busy.map(|(from, until)| {
            let args = args! {
                "from" => Value::day_seen(from, today),
                "to" => Value::day_seen(until, today),
            };
            Phrase::new(Key::LabourBusy, args)
        });
        args.extend(args! { "effort" => sum.ceil(), "busy" => Value::Spare(vec![busy, None]) });
        Phrase::new(Key::LabourDays, args)
    }

    fn labour_job(self, job: &Labour, today: NaiveDate) -> Value {
        let block = self.world.directory.block(job.block);
        let mut args = args! {
            "task" => job.task,
            "block" => Value::name(block.map_or("", |block| &block.name)),
            "day" => Value::day_seen(job.on, today),
        };
        let key = match job.days {
            Some(days) => {
                args.extend(args! { "effort" => days.ceil() });
                Key::LabourJobDays
            }
            None => Key::LabourJob,
        };
        Phrase::new(key, args).into()
    }

    /// WHO: whose number ends in these digits, of the adviser's own people.
    pub(super) fn whose(self, speaker: &Person, digits: &str) -> Phrase {
        let directory = &self.world.directory;
        let groups = self.groups_of(speaker);
        let members = groups.flat_map(|group| directory.members(group.id));
        let fits = |person: &&Person| {
            let mut numbers = directory.numbers_of(person.id);
            numbers.any(|number| number.ends_with(digits))
        };
        let found: Vec<&Person> = members.filter(fits).collect();
        let args = args! { "digits" => digits };
        if found.is_empty() {
            return Phrase::new(Key::WhoseNone, args);
        }
        let names = Names::of_all(self, speaker);
        let zone = self.zone_of(speaker.id);
        let mut heard = None;
        let people = found.iter().map(|person| {
            let number = directory
                .numbers_of(person.id)
                .find(|one| one.ends_with(digits));
            let at = number.and_then(|number| self.talk(number)?.heard_at);
            heard = heard.max(at);
            self.who_uses(&names, person.id, number.unwrap_or_default())
        });
        let people: Vec<Value> = people.collect();
        let last = heard.map(|at| {
            let day = Value::day_seen(civil_day(at, zone), self.today_of(speaker.id));
            Phrase::new(Key::WhoseLast, args! { "day" => day })
        });
        let mut args = args;
        args.extend(args! {
            "people" => people,
            "last" => last.unwrap_or_else(|| Key::WhoseNever.into()),
        });
        Phrase::new(Key::Whose, args)
    }

    /// A person with their group and consent, and the end of another number of theirs.
    fn who_uses(self, names: &Names<'_>, id: PersonId, number: &str) -> Value {
        let Some(person) = self.person(id) else {
            return Value::nothing();
        };
        let consent = match &person.consent {
            budwood_scheduler::Consent::Given { on, .. } => Value::DayYear(*on),
            budwood_scheduler::Consent::Unknown | budwood_scheduler::Consent::Withdrawn { .. } => {
                Phrase::from(Key::ConsentNone).into()
            }
        };
        let mut others = self.world.directory.numbers_of(id);
        let other = others.find(|other| *other != number);
        let other = other
            .map(|other| Phrase::new(Key::WhoseOther, args! { "digits" => last_digits(other) }));
        let args = args! {
            "name" => Value::name(&names.shown(id)),
            "group" => Value::name(self.group_name(person.group)),
            "consent" => consent,
            "other" => other,
        };
        Phrase::new(Key::WhosePerson, args).into()
    }
}

/// The day of a fact and what it tells, if it is asked about.
fn told_of(body: &Body, query: &Query) -> Option<(NaiveDate, Value)> {
    let is_asked = |kind: Kind| query.kind.is_none_or(|asked| asked == kind);
    if let Body::Reported {
        kind, on, details, ..
    } = body
    {
        return is_asked(*kind).then(|| (on.day(), clause(*kind, details).into()));
    }
    let Body::TaskDone { task, on, .. } = body else {
        return None;
    };
    let told = query.kind.is_none() || task.proven_by() == query.kind;
    told.then(|| (*on, (*task).into()))
}
