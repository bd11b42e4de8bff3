//! What must not be forgotten: every due job is nudged for, or it is on the adviser's list.
//!
//! A job is ripe when its day has come, or that of its next try. A phone for which a job has been
//! ripe for long must have got a nudge; a job whose tries are used up, or that is late for whatever
//! reason (no consent, a phone that rests for more urgent jobs), must be in the answer to LATE.

use std::collections::{BTreeMap, BTreeSet};

use budwood::{
    engine::Engine,
    store::Change,
    words::message::{Purpose, Received},
};
use budwood_scheduler::{Consent, Group, Person, Role, Task, TaskKind, TextClass};
use chrono::{NaiveDate, TimeDelta};

use super::{Laws, Moment, local, sending::REST_DAYS};

/// How long a nudge may wait beyond the rest of its phone: a week until a round that came by
/// itself is seen, two days for the eve of market, and days without texts that follow each other.
const PATIENCE_DAYS: i64 = 12;
/// Days after the first nudge of a round on which the next ones go.
const AGAIN_AFTER_DAYS: [i64; 2] = [7, 21];
/// The field round comes again after so many days at the soonest, and at the latest.
const ROUND_AGAIN_DAYS: i64 = 31;
const ROUND_DAYS: i64 = 45;
/// Routine texts to a phone in a year at most, and so many of them that nothing is said again, or no field
/// round goes, any more.
const TEXTS_A_YEAR: usize = 40;
const AGAIN_A_YEAR: usize = 24;
const ROUNDS_A_YEAR: usize = 32;
const YEAR_DAYS: i64 = 364;
/// A job of a stand that came by a list is late only after so many days on the list.
const LIST_NOTICE_DAYS: i64 = 14;

/// Which jobs are ripe for each phone, and when it was last told of one.
#[derive(Clone, Default)]
pub(super) struct Owed {
    /// With whether only parts of a field round are.
    ripe_since: BTreeMap<String, (NaiveDate, bool)>,
    nudged_on: BTreeMap<String, Vec<NaiveDate>>,
}

impl Owed {
    /// A text may speak of several jobs.
    pub(super) fn nudged(&mut self, number: &str, on: NaiveDate) {
        let days = self.nudged_on.entry(number.to_owned()).or_default();
        if days.last() != Some(&on) {
            days.push(on);
        }
        let texts = self.texts(number, on);
        assert!(
            texts <= TEXTS_A_YEAR,
            "{texts} texts to {number} in the year to {on}"
        );
    }

    /// Texts in the year to this day.
    fn texts(&self, number: &str, today: NaiveDate) -> usize {
        let days = self.nudged_on.get(number).map_or(&[][..], Vec::as_slice);
        let of_year = |day: &&NaiveDate| (today - **day).num_days() < YEAR_DAYS;
        days.iter().filter(of_year).count()
    }
}

/// What is to be done about an open job.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Turn {
    /// The farmer is to be nudged, now.
    Farmer,
    /// Not yet.
    Waits,
    /// Three nudges were of no use.
    Adviser,
}

impl Laws {
    /// While nothing may be sent nothing is owed, and afterwards patience begins anew.
    pub(in super::super) fn nothing_is_owed(&mut self) {
        self.owed.ripe_since.clear();
    }

    /// To be asked now and then while texts may be sent: no phone waits for ever.
    pub(in super::super) fn owed(&mut self, engine: &Engine, moment: Moment) {
        let directory = engine.directory();
        let mut ripe: BTreeMap<String, (NaiveDate, Vec<Job>)> = BTreeMap::new();
        for block in directory.blocks() {
            let Some(group) = directory.group_of_block(block) else {
                continue;
            };
            let today = local(group, moment.now).date();
            let Some(number) = directory.numbers_of(block.owner).next() else {
                continue;
            };
            // Who waits for the welcome is owed nothing yet.
            if !self.met.contains(number) {
                continue;
            }
            if !self.agreed.contains(&block.owner) || self.held.contains(&block.owner) {
                continue;
            }
            let texts = self.owed.texts(number, today);
            for task in engine.tasks(block.id, today) {
                // Who was never shown it is on the adviser's TRAIN.
                let may_be =
                    task.kind != TaskKind::InduceBranching || self.shown.contains(&block.owner);
                let is_theirs = may_be && self.turn(&task, today) == Turn::Farmer;
                if is_theirs && self.has_room(&task, texts) {
                    let (_, jobs) = ripe.entry(number.to_owned()).or_insert((today, Vec::new()));
                    jobs.push((block.name.clone(), task.kind));
                }
            }
        }
        let before = std::mem::take(&mut self.owed.ripe_since);
        for (number, (today, jobs)) in ripe {
            self.figures.phones_looked_at += 1;
            // Looks and rounds go together in one text, which comes every sixth week at least.
            let only_rounds = jobs.iter().all(|(_, job)| job.class() == TextClass::Round);
            let since = match before.get(&number) {
                Some((since, was_only)) if *was_only == only_rounds => *since,
                Some(_) | None => today,
            };
            let last = self.last_told(&number);
            let waited = (today - since).num_days();
            let rest = if only_rounds { ROUND_DAYS } else { REST_DAYS };
            let most = rest + PATIENCE_DAYS;
            let silent = last.is_none_or(|last| (today - last).num_days() > most);
            assert!(
                waited <= PATIENCE_DAYS || !silent,
                "on {today} {jobs:?} of {number} are due since {since}, and nothing was said \
                 since {last:?}"
            );
            self.owed.ripe_since.insert(number, (since, only_rounds));
        }
    }

    /// The day of the last nudge for a phone: made, or handed over later.
    fn last_told(&self, number: &str) -> Option<NaiveDate> {
        let made = self.owed.nudged_on.get(number).and_then(|days| days.last());
        let made = made.copied();
        let handed = self.nudged.get(number).map(|(_, at)| at.date_naive());
        made.max(handed)
    }

    /// Whether a phone that got so many texts in a year is owed one of this; one more or less lies on the
    /// edge of the year.
    fn has_room(&self, task: &Task, texts: usize) -> bool {
        let is_again = !self.facts.tries(task.block, task.kind, task.due).is_empty();
        let most = match task.class() {
            TextClass::Round => ROUNDS_A_YEAR,
            TextClass::Urgent | TextClass::Decisive if is_again => AGAIN_A_YEAR,
            TextClass::Urgent | TextClass::Decisive => TEXTS_A_YEAR,
        };
        texts + 1 < most
    }

    fn turn(&self, task: &Task, today: NaiveDate) -> Turn {
        let tries = self.facts.tries(task.block, task.kind, task.due);
        let is_round = task.class() == TextClass::Round;
        let next = match (tries.as_slice(), AGAIN_AFTER_DAYS) {
            ([], _) => task.due,
            ([last] | [_, last], _) if is_round => *last + TimeDelta::days(ROUND_AGAIN_DAYS),
            ([first], [wait, _]) => *first + TimeDelta::days(wait),
            ([first, last], [_, wait]) => {
                (*first + TimeDelta::days(wait)).max(*last + TimeDelta::days(REST_DAYS))
            }
            (_, _) => return Turn::Adviser,
        };
        if task.ends.is_some_and(|ends| next > ends) {
            Turn::Adviser
        } else if next <= today {
            Turn::Farmer
        } else {
            Turn::Waits
        }
    }

    /// The adviser asked for the list: what must be there is there, and nothing else.
    pub(super) fn late_list(
        &mut self,
        asked: &Received,
        change: &Change,
        engine: &Engine,
        moment: Moment,
    ) {
        let answer = change
            .outbound
            .iter()
            .find(|out| out.purpose == Purpose::Answer { to: asked.id });
        let name = asked.text.trim_start_matches("LATE ");
        let Some((answer, group)) = answer.zip(engine.directory().group_named(name)) else {
            return;
        };
        let (must, may) = self.late_jobs(engine, group, moment);
        let told = List::read(&answer.text);
        let members = engine.directory().members(group.id);
        let held = members.filter(|one| is_farmer(one) && self.held.contains(&one.id));
        let held = held.count();
        let text = &answer.text;
        assert!(
            told.in_peace.is_none_or(|told| told == held),
            "{held} are left in peace: {text}"
        );
        self.figures.lists += 1;
        self.figures.listed += must.len();
        assert!(
            told.all >= must.len() && told.all <= may.len(),
            "{} on the list, {} to {} expected: {}",
            told.all,
            must.len(),
            may.len(),
            answer.text
        );
        if told.is_whole {
            for job in &must {
                assert!(
                    told.has(job, engine),
                    "{} of {} is missing: {}",
                    job.1.name(),
                    job.0,
                    answer.text
                );
            }
        }
    }

    /// Jobs of a group that must be on the list, and those that may be.
    fn late_jobs(
        &self,
        engine: &Engine,
        group: &Group,
        moment: Moment,
    ) -> (BTreeSet<Job>, BTreeSet<Job>) {
        let directory = engine.directory();
        let today = local(group, moment.now).date();
        let (mut must, mut may) = (BTreeSet::new(), BTreeSet::new());
        for person in directory
            .members(group.id)
            .filter(|person| is_farmer(person) && !self.held.contains(&person.id))
        {
            for block in directory.blocks_of(person.id) {
                let open = engine.tasks(block.id, today);
                for task in open.iter().filter(|task| task.due <= today) {
                    let job = (person.called().to_owned(), task.kind);
                    let is_given_up = self.turn(task, today) == Turn::Adviser;
                    if self.is_late(task, person, today) || (is_given_up && !task.only_tells()) {
                        must.insert(job.clone());
                    }
                    may.insert(job);
                }
            }
        }
        (must, may)
    }

    fn is_late(&self, task: &Task, owner: &Person, today: NaiveDate) -> bool {
        let notice = TimeDelta::days(LIST_NOTICE_DAYS);
        let agreed_on = match owner.consent {
            Consent::Given { on, .. } => Some(on),
            Consent::Unknown | Consent::Withdrawn { .. } => None,
        };
        let known_on = self.facts.known_on(task.block).or(agreed_on);
        today > task.late_after && known_on.is_none_or(|day| today > day + notice)
    }
}

/// A person and a job.
type Job = (String, TaskKind);

fn is_farmer(person: &Person) -> bool {
    matches!(person.role, Role::Farmer | Role::Leader) && !person.erased
}

/// An answer to LATE, taken apart.
struct List {
    items: Vec<String>,
    /// Those shown, and those counted at the end.
    all: usize,
    is_whole: bool,
    /// None where there was no room to say it.
    in_peace: Option<usize>,
}

impl List {
    /// "Late KOLO: Bakon weed 18d, Bamen feed 3d told 3x, +4. Left in peace 2. Feed rounds lost
    /// in 183 days: 3, see Bamen".
    fn read(text: &str) -> Self {
        let text = text.split(". Feed rounds lost").next().unwrap_or(text);
        let (text, in_peace) = match text.split_once(". Left in peace ") {
            Some((list, count)) => (list, count.trim_end_matches('.').parse().ok()),
            None => (text, None),
        };
        let Some((_, people)) = text.split_once(": ") else {
            assert!(text.starts_with("None late"), "no list: {text}");
            return Self {
                items: Vec::new(),
                all: 0,
                is_whole: true,
                in_peace,
            };
        };
        let (left, items): (Vec<&str>, Vec<&str>) =
            people.split(", ").partition(|item| item.starts_with('+'));
        let left: usize = left
            .iter()
            .filter_map(|item| item.strip_prefix('+')?.parse::<usize>().ok())
            .sum();
        Self {
            all: items.len() + left,
            is_whole: left == 0,
            in_peace,
            items: items.into_iter().map(str::to_owned).collect(),
        }
    }

    /// Names may be cut short to let a list fit.
    fn has(&self, (name, kind): &Job, engine: &Engine) -> bool {
        let job = engine.setup().texts.tongue(&["en"]).job(*kind);
        self.items.iter().any(|item| {
            item.split_once(' ').is_some_and(|(shown, rest)| {
                name.starts_with(shown) && rest.starts_with(job.as_str())
            })
        })
    }
}
