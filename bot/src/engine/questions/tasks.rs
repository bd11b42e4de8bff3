//! What is due on a block, and when the block is to be looked at next.
//!
//! A tick costs what is due, not what exists, so the next moment of each block is kept in order
//! (`World::due`). It follows from the block's jobs, the nudges already given, the phone's rest,
//! quiet days and hours.

use budwood_scheduler::{
    Block, BlockId, BlockState, Calendar, Group, Person, PersonId, Season, Task,
    jobs::{
        nudge::{self, NextTry, Withheld},
        task::tasks,
    },
    land::stand,
};
use chrono::{DateTime, NaiveDate, NaiveTime, TimeDelta, Utc};

use crate::engine::{
    local_time::{civil_day, instant, zone},
    view::View,
};

/// A block is looked at again after this many days at the latest: a round that nobody answered
/// gives way to the next one as days pass, and ages bring new jobs. A phone rests as long anyway.
const LOOK_AGAIN_DAYS: i64 = 7;

/// The season of a group.
pub(crate) fn season_of(group: &Group) -> Season {
    Season {
        rains_start: group.rains_start,
        rains_end: group.rains_end,
        second_rains: group.second_rains,
        window_opened: group.window_opened,
    }
}

/// A job that may be nudged for, and from which day.
#[derive(Clone, Debug)]
pub(crate) struct Candidate {
    pub(crate) task: Task,
    pub(crate) on: NaiveDate,
}

impl<'a> View<'a> {
    /// The calendar of a group; the roll lets only known names in.
    pub(crate) fn calendar_of(self, group: &Group) -> Option<&'a Calendar> {
        self.setup.calendars.get(&group.calendar)
    }

    /// Planting points of a block.
    pub(crate) fn points_of(self, block: &Block) -> Option<u32> {
        let group = self.world.directory.group_of_block(block)?;
        stand::points(block, self.calendar_of(group)?)
    }

    /// The jobs of a block on this day: due, late and to come.
    pub(crate) fn tasks_of(self, id: BlockId, today: NaiveDate) -> Vec<Task> {
        let jobs = || {
            let block = self.world.directory.block(id)?;
            let group = self.world.directory.group_of_block(block)?;
            let calendar = self.calendar_of(group)?;
            let empty = BlockState::default();
            let state = self.state(id).unwrap_or(&empty);
            Some(tasks(block, state, &season_of(group), calendar, today))
        };
        jobs().unwrap_or_default()
    }

    /// The jobs of all of a person's blocks with the names of these, most urgent first.
    pub(crate) fn jobs_of(self, person: PersonId) -> Vec<(&'a str, Task)> {
        let today = self.today_of(person);
        let blocks = self.world.directory.blocks_of(person);
        let mut jobs: Vec<(&str, Task)> = blocks
            .flat_map(|block| {
                let tasks = self.tasks_of(block.id, today).into_iter();
                tasks.map(|task| (block.name.as_str(), task))
            })
            .collect();
        jobs.sort_by_key(|(_, task)| (task.due > today, task.urgency(), task.due));
        jobs
    }

    /// The jobs of a block that a nudge may still go for.
    pub(crate) fn candidates(self, id: BlockId, today: NaiveDate) -> Vec<Candidate> {
        let state = self.state(id);
        self.tasks_of(id, today)
            .into_iter()
            .filter_map(|task| {
                let track = state.and_then(|state| state.nudges.get(&task.kind));
                match nudge::next_try(&self.setup.rules, &task, track, today) {
                    NextTry::On(on) => Some(Candidate { task, on }),
                    NextTry::AdviserList | NextTry::Over => None,
                }
            })
            .collect()
    }

    /// The first day on which a phone has rested from its last routine text.
    pub(crate) fn rested_on(self, number: &str, group: &Group) -> Option<NaiveDate> {
        let at = self.talk(number)?.routine_at?;
        let day = civil_day(at, zone(group, self.setup));
        Some(nudge::rested_on(&self.setup.rules, day))
    }

    /// When to look at a block next. None when nobody is to be texted about it.
    pub(crate) fn next_look(self, id: BlockId) -> Option<DateTime<Utc>> {
        if let Some(until) = self.held(id) {
            let (group, day) = until?;
            return Some(instant(
                day.and_time(NaiveTime::MIN),
                zone(group, self.setup),
            ));
        }
        let (group, number) = self.nudged_about(id)?;
        let zone = zone(group, self.setup);
        let local = self.now.with_timezone(&zone).naive_local();
        let today = local.date();
        let next = self
            .candidates(id, today)
            .into_iter()
            .map(|candidate| candidate.on)
            .chain([today + TimeDelta::days(LOOK_AGAIN_DAYS)])
            .min()?;
        let rested = self.rested_on(number, group);
        let day = next.max(rested.unwrap_or(next)).max(today);
        let not_before = day.and_time(NaiveTime::MIN).max(local);
        let slot = nudge::slot(
            &self.setup.rules,
            not_before,
            &group.quiet_days,
            group.market_day,
        );
        Some(instant(slot, zone).max(self.now))
    }

    /// Whether the owner of a block is left in peace, and the day on which that is over, if one is
    /// set.
    fn held(self, id: BlockId) -> Option<Option<(&'a Group, NaiveDate)>> {
        let directory = &self.world.directory;
        let block = directory.block(id)?;
        let owner = directory.person(block.owner)?;
        let group = directory.group_of_block(block)?;
        match nudge::withheld(owner, self.today_in(group))? {
            Withheld::Held(until) => Some(until.and_then(|until| {
                let over = until.succ_opt()?;
                Some((group, over))
            })),
            Withheld::NoConsent | Withheld::NotDue | Withheld::Quiet => None,
        }
    }

    /// Who may be told about a block, and where they live. None without their consent, and while
    /// they are left in peace: asked when a nudge is planned, when it is put out and when it is
    /// sent.
    pub(crate) fn told_about(self, id: BlockId) -> Option<(&'a Person, &'a Group)> {
        let directory = &self.world.directory;
        let block = directory.block(id)?;
        let owner = directory.person(block.owner)?;
        let group = directory.group_of_block(block)?;
        let may = nudge::withheld(owner, self.today_in(group)).is_none();
        may.then_some((owner, group))
    }

    /// The same with the phone.
    pub(crate) fn nudged_about(self, id: BlockId) -> Option<(&'a Group, &'a str)> {
        let (owner, group) = self.told_about(id)?;
        let number = self.world.directory.numbers_of(owner.id).next()?;
        Some((group, number))
    }
}
