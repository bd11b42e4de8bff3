//! A group in figures.

use std::collections::BTreeMap;

use budwood_parser::Ailment;
use budwood_scheduler::{
    Block, BlockId, BlockState, Consent, Directory, Group, GroupId, Person, PersonId, Role, Task,
    TaskKind,
    jobs::nudge::{NextTry, next_try},
    outlook::infill::gaps_to_fill,
};
use chrono::{NaiveDate, TimeDelta};

use super::tasks::season_of;
use crate::{
    engine::{local_time::civil_day, view::View},
    wording::LateItem,
    words::limits,
};

/// Who told of sickness, of which, and on how many trees.
pub(crate) type SickPerson = (String, Ailment, Option<u32>);

/// How a group stands on one day.
#[derive(Clone, Debug, Default)]
pub(crate) struct Summary {
    /// Farmers and leaders.
    pub(crate) farmers: u32,
    /// Of these, those with something planted.
    pub(crate) planted: u32,
    /// Living trees of the first plantings in per cent of those planted; backfills are left out,
    /// so that they cannot hide losses.
    pub(crate) alive_pct: Option<u32>,
    /// Farmers with each job due and not late.
    pub(crate) due: BTreeMap<TaskKind, u32>,
    /// Farmers with each job late.
    pub(crate) late: BTreeMap<TaskKind, u32>,
    /// Each job that is late or nudged for in vain, most days first.
    pub(crate) late_items: Vec<LateItem>,
    /// Farmers of whom nothing was heard for long, with the days; none for never.
    pub(crate) quiet: Vec<(String, Option<i64>)>,
    /// Farmers who told of sickness lately: name, block state key and count.
    pub(crate) sick: Vec<SickPerson>,
    /// Gaps by farmer, most first.
    pub(crate) gaps: Vec<(String, u32)>,
    /// Of these, the ones that can still be filled.
    pub(crate) gaps_to_fill: u32,
    /// Planted blocks whose dead were never counted.
    pub(crate) uncounted: u32,
}

/// Sums up a group.
pub(crate) fn summary(view: View<'_>, group: &Group) -> Summary {
    let mut sum = Summary::default();
    let today = view.today_in(group);
    let directory = &view.world.directory;
    let names = Names::of(directory, group.id);
    let mut trees = (0_u64, 0_u64);
    for person in directory.members(group.id).filter(|one| is_farmer(one)) {
        sum.farmers += 1;
        let blocks: Vec<&Block> = directory.blocks_of(person.id).collect();
        let states: Vec<&BlockState> = blocks
            .iter()
            .filter_map(|block| view.state(block.id))
            .collect();
        if states.iter().any(|state| state.planted() > 0) {
            sum.planted += 1;
        }
        for living in states.iter().map(|state| state.living()) {
            trees.0 += u64::from(living.first);
            trees.1 += u64::from(living.planted);
        }
        let name = names.shown(person);
        let due: Vec<Task> = view.due_of(person, today);
        sum.add_jobs(view, name, &due, today);
        sum.add_sickness(name, &states, today);
        sum.add_gaps(name, &states);
        if let Some(calendar) = view.calendar_of(group) {
            let season = season_of(group);
            let open = states
                .iter()
                .map(|state| gaps_to_fill(state, &season, calendar, today));
            sum.gaps_to_fill = open.fold(sum.gaps_to_fill, u32::saturating_add);
        }
        sum.add_silence(view, (person, name), &due, today);
    }
    sum.alive_pct = trees
        .0
        .saturating_mul(100)
        .checked_div(trees.1)
        .and_then(|pct| pct.try_into().ok());
    sum.late_items
        .sort_by_key(|item| std::cmp::Reverse(item.days));
    sum.gaps.sort_by_key(|(_, gaps)| std::cmp::Reverse(*gaps));
    sum.quiet
        .sort_by_key(|(_, days)| std::cmp::Reverse(days.unwrap_or(i64::MAX)));
    sum
}

/// What farmers are called in lists: the first name, and the whole one where two share the first.
pub(crate) struct Names<'a>(BTreeMap<&'a str, u32>);

impl<'a> Names<'a> {
    pub(crate) fn of(directory: &'a Directory, group: GroupId) -> Self {
        let mut names: BTreeMap<&str, u32> = BTreeMap::new();
        for person in directory.members(group) {
            *names.entry(person.called()).or_default() += 1;
        }
        Self(names)
    }

    pub(crate) fn shown(&self, person: &'a Person) -> &'a str {
        match self.0.get(person.called()) {
            Some(2..) => &person.name,
            Some(_) | None => person.called(),
        }
    }
}

pub(crate) fn is_farmer(person: &Person) -> bool {
    matches!(person.role, Role::Farmer | Role::Leader) && !person.erased
}

impl Summary {
    fn add_jobs(&mut self, view: View<'_>, name: &str, tasks: &[Task], today: NaiveDate) {
        let mut due: BTreeMap<TaskKind, Option<LateItem>> = BTreeMap::new();
        for task in tasks {
            // Of a job that is late on several blocks the longest wait is told.
            let worst = due.entry(task.kind).or_default();
            if let Some(item) = view.late_item(name, task, today)
                && worst.as_ref().is_none_or(|worst| item.days > worst.days)
            {
                *worst = Some(item);
            }
        }
        for (kind, late) in due {
            let counts = if late.as_ref().is_some_and(|item| item.days > 0) {
                &mut self.late
            } else {
                &mut self.due
            };
            *counts.entry(kind).or_default() += 1;
            self.late_items.extend(late);
        }
    }

    fn add_sickness(&mut self, name: &str, states: &[&BlockState], today: NaiveDate) {
        let news = states
            .iter()
            .flat_map(|state| &state.sick)
            .filter(|(_, count)| count.trees != Some(0))
            .filter(|(_, count)| (today - count.on).num_days() <= limits::SICK_DAYS)
            .max_by_key(|(_, count)| count.trees);
        if let Some((ailment, count)) = news {
            self.sick.push((name.to_owned(), *ailment, count.trees));
        }
    }

    fn add_gaps(&mut self, name: &str, states: &[&BlockState]) {
        let gaps = states
            .iter()
            .map(|state| state.gaps())
            .fold(0, u32::saturating_add);
        if gaps > 0 {
            self.gaps.push((name.to_owned(), gaps));
        }
        let uncounted = states
            .iter()
            .filter(|state| state.planted() > 0)
            .filter(|state| state.last_of(budwood_parser::Kind::Dead).is_none());
        self.uncounted = self
            .uncounted
            .saturating_add(uncounted.fold(0, |number, _| number + 1));
    }

    fn add_silence(
        &mut self,
        view: View<'_>,
        (person, name): (&Person, &str),
        due: &[Task],
        today: NaiveDate,
    ) {
        let heard = view.last_heard(person.id);
        let days = heard.map(|day| (today - day).num_days());
        if days.is_none_or(|days| days > limits::QUIET_DAYS) && is_expected(person, due) {
            self.quiet.push((name.to_owned(), days));
        }
    }
}

/// A person with nothing due is not quiet, only idle; one who is not to be texted is not asked.
pub(crate) fn is_expected(person: &Person, due: &[Task]) -> bool {
    person.consent.is_given() && !due.is_empty()
}

impl View<'_> {
    /// What is due on the blocks of a person. It is asked once for each person of a group: nothing
    /// else of an answer takes as long.
    pub(crate) fn due_of(self, person: &Person, today: NaiveDate) -> Vec<Task> {
        let blocks = self.world.directory.blocks_of(person.id);
        let tasks = blocks.flat_map(|block| self.tasks_of(block.id, today));
        tasks.filter(|task| task.due <= today).collect()
    }

    /// The last day on which a person texted, or something was told for them.
    pub(crate) fn last_heard(self, person: PersonId) -> Option<NaiveDate> {
        let zone = self.zone_of(person);
        let directory = &self.world.directory;
        let texted = directory
            .numbers_of(person)
            .filter_map(|number| self.talk(number)?.heard_at)
            .map(|at| civil_day(at, zone))
            .max();
        let told = directory
            .blocks_of(person)
            .filter_map(|block| self.state(block.id)?.quiet_since())
            .max();
        texted.max(told)
    }

    /// Days late, seen from when the block became known, or its owner agreed to be texted: of a
    /// stand that came by a list nobody could report before.
    fn days_late(self, block: BlockId, task: &Task, today: NaiveDate) -> i64 {
        let stand_known_on = self.state(block).and_then(|state| state.known_on);
        let known_on = stand_known_on.or_else(|| self.agreed_on(block));
        let notice = TimeDelta::days(limits::LIST_NOTICE_DAYS);
        let late_after = known_on.map_or(task.late_after, |day| task.late_after.max(day + notice));
        (today - late_after).num_days().max(0)
    }

    fn agreed_on(self, block: BlockId) -> Option<NaiveDate> {
        let owner = self.world.directory.block(block)?.owner;
        match self.person(owner)?.consent {
            Consent::Given { on, .. } => Some(on),
            Consent::Unknown | Consent::Withdrawn { .. } => None,
        }
    }

    /// None for a job that is not late, unless there will be no more nudges for it: then it is the
    /// adviser's, however much time is left.
    pub(crate) fn late_item(self, name: &str, task: &Task, today: NaiveDate) -> Option<LateItem> {
        let days = self.days_late(task.block, task, today);
        let rules = &self.setup.rules;
        let track = self
            .state(task.block)
            .and_then(|state| state.nudges.get(&task.kind))
            .filter(|track| track.due == task.due);
        let given_up =
            !task.only_tells() && next_try(rules, task, track, today) == NextTry::AdviserList;
        let tries = track.map_or(0, |track| usize::from(track.tries));
        (days > 0 || given_up).then(|| LateItem {
            name: name.to_owned(),
            task: task.kind,
            days,
            told: tries > rules.again_after_days.len(),
        })
    }
}
