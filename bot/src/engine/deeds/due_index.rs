//! When each block is to be looked at next: the due index.
//!
//! A tick costs what is due, not what exists, so the next moment of each block is kept in order.
//! It follows from the block's jobs, the nudges already given, the phone's rest, quiet days and
//! hours.

use budwood_scheduler::{
    Block, BlockId, BlockState, Calendar, Group, Season, Task,
    jobs::{
        nudge::{self, NextTry},
        task::tasks,
    },
    land::stand,
};
use chrono::{DateTime, NaiveDate, NaiveTime, TimeDelta, Utc};

use crate::engine::{
    Setup,
    memory::world::World,
    step::{Step, civil_day, instant, zone},
};

/// A block is looked at again after this many days at the latest: a round that nobody answered
/// gives way to the next one as days pass, and ages bring new jobs. A phone rests as long anyway.
const LOOK_AGAIN_DAYS: i64 = 7;

/// The calendar of a group; the roll lets only known names in.
pub(crate) fn calendar_of<'a>(setup: &'a Setup, group: &Group) -> Option<&'a Calendar> {
    setup.calendars.get(&group.calendar)
}

/// The season of a group.
pub(crate) fn season_of(group: &Group) -> Season {
    Season {
        rains_start: group.rains_start,
        rains_end: group.rains_end,
        second_rains: group.second_rains,
        window_opened: group.window_opened,
    }
}

/// Planting points of a block.
pub(crate) fn points_of(world: &World, setup: &Setup, block: &Block) -> Option<u32> {
    let group = world.directory.group_of_block(block)?;
    stand::points(block, calendar_of(setup, group)?)
}

/// The jobs of a block on this day: due, late and to come.
pub(crate) fn tasks_of(world: &World, setup: &Setup, id: BlockId, today: NaiveDate) -> Vec<Task> {
    let jobs = || {
        let block = world.directory.block(id)?;
        let group = world.directory.group_of_block(block)?;
        let calendar = calendar_of(setup, group)?;
        let empty = BlockState::default();
        let state = world.states.get(&id).unwrap_or(&empty);
        Some(tasks(block, state, &season_of(group), calendar, today))
    };
    jobs().unwrap_or_default()
}

/// A job that may be nudged for, and from which day.
#[derive(Clone, Debug)]
pub(crate) struct Candidate {
    pub(crate) task: Task,
    pub(crate) on: NaiveDate,
}

/// The jobs of a block that a nudge may still go for.
pub(crate) fn candidates(
    world: &World,
    setup: &Setup,
    id: BlockId,
    today: NaiveDate,
) -> Vec<Candidate> {
    let state = world.states.get(&id);
    tasks_of(world, setup, id, today)
        .into_iter()
        .filter_map(|task| {
            let track = state.and_then(|state| state.nudges.get(&task.kind));
            match nudge::next_try(&setup.rules, &task, track, today) {
                NextTry::On(on) => Some(Candidate { task, on }),
                NextTry::AdviserList | NextTry::Over => None,
            }
        })
        .collect()
}

impl Step<'_> {
    /// Looks at every block: at the start, or when the rules changed.
    pub(crate) fn plan_all(&mut self) {
        let blocks: Vec<BlockId> = self
            .world
            .directory
            .blocks()
            .map(|block| block.id)
            .collect();
        for block in blocks {
            self.plan(block);
        }
    }

    /// Finds out when to look at a block next.
    pub(crate) fn plan(&mut self, id: BlockId) {
        let at = self.next_look(id);
        if let Some(old) = self.world.due_of.remove(&id) {
            self.world.due.remove(&(old, id));
        }
        if let Some(at) = at {
            self.world.due.insert((at, id));
            self.world.due_of.insert(id, at);
        }
    }

    /// None when nobody is to be texted about it.
    fn next_look(&self, id: BlockId) -> Option<DateTime<Utc>> {
        let block = self.world.directory.block(id)?;
        let owner = self.world.directory.person(block.owner)?;
        let group = self.world.directory.group_of_block(block)?;
        if !owner.consent.is_given() {
            return None;
        }
        let number = self.world.directory.numbers_of(owner.id).next()?;
        let zone = zone(group, self.setup);
        let local = self.now.with_timezone(&zone).naive_local();
        let today = local.date();
        let rested = self
            .world
            .talks
            .get(number)
            .and_then(|talk| talk.routine_at)
            .map(|at| nudge::rested_on(&self.setup.rules, civil_day(at, zone)));
        let next = candidates(self.world, self.setup, id, today)
            .into_iter()
            .map(|candidate| candidate.on)
            .chain([today + TimeDelta::days(LOOK_AGAIN_DAYS)])
            .min()?;
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
}
