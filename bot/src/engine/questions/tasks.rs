//! What is due on a block, and which of its jobs may still be nudged for.

use budwood_parser::Kind;
use budwood_scheduler::{
    Block, BlockId, BlockState, Calendar, Group, Person, PersonId, Season, Task, TaskKind,
    jobs::{
        nudge::{self, NextTry, Rules, Turn, Withheld},
        task::tasks,
    },
    land::stand,
};
use chrono::NaiveDate;

use crate::{
    engine::{
        local_time::{civil_day, zone},
        view::View,
    },
    words::message::Talk,
};

/// The season of a group.
pub(crate) fn season_of(group: &Group) -> Season {
    Season {
        rains_start: group.rains_start,
        rains_end: group.rains_end,
        second_rains: group.second_rains,
        window_opened: group.window_opened,
    }
}

/// A block whose nudge may go now.
pub(crate) struct Ready {
    pub(crate) block: BlockId,
    pub(crate) today: NaiveDate,
    pub(crate) candidate: Candidate,
}

/// A job that may be nudged for, and from which day.
#[derive(Clone, Debug)]
pub(crate) struct Candidate {
    pub(crate) task: Task,
    pub(crate) on: NaiveDate,
    /// Whether a text has spoken of it before.
    pub(crate) is_again: bool,
}

impl Candidate {
    pub(crate) fn turn(&self, rules: &Rules) -> Turn {
        Turn::of(rules, &self.task, self.is_again)
    }

    /// Which job to speak of first: the lowest.
    pub(crate) fn rank(&self, rules: &Rules) -> impl Ord + use<> {
        nudge::rank(rules, &self.task, self.is_again)
    }
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
                let tasks = tasks.filter(|task| self.may_be_asked(block.id, task.kind));
                tasks.map(|task| (block.name.as_str(), task))
            })
            .collect();
        jobs.sort_by_key(|(_, task)| (task.due > today, task.urgency(), task.due));
        jobs
    }

    /// Whether a text may speak of a job to the owner of a block: some work must have been shown to
    /// them first. Until it is, they are on the adviser's TRAIN.
    fn may_be_asked(self, id: BlockId, job: TaskKind) -> bool {
        let owner = || self.world.directory.block(id).map(|block| block.owner);
        let shown = |kind| owner().is_some_and(|owner| self.was_shown(owner, kind));
        job.shown_first().is_none_or(shown)
    }

    /// Whether somebody was shown how a kind of work is done.
    pub(crate) fn was_shown(self, person: PersonId, kind: Kind) -> bool {
        let group = self.person(person).and_then(|person| person.group);
        let group = group.and_then(|group| self.world.directory.group(group));
        group.is_some_and(|group| group.book.was_shown(person, kind))
    }

    /// The jobs of a block that a nudge may still go for.
    pub(crate) fn candidates(self, id: BlockId, today: NaiveDate) -> Vec<Candidate> {
        let state = self.state(id);
        self.tasks_of(id, today)
            .into_iter()
            .filter(|task| self.may_be_asked(id, task.kind))
            .filter_map(|task| {
                let track = state.and_then(|state| state.nudges.get(&task.kind));
                let is_again = track.is_some_and(|track| track.due == task.due);
                match nudge::next_try(&self.setup.rules, &task, track, today) {
                    NextTry::On(on) => Some(Candidate { task, on, is_again }),
                    NextTry::AdviserList | NextTry::Over => None,
                }
            })
            .collect()
    }

    /// Whether a phone must be welcomed before anything else is said to it. Nobody is where the
    /// office does that itself.
    pub(crate) fn is_new(self, number: &str) -> bool {
        self.setup.rules.welcomes_a_day > 0 && self.talk(number).is_none_or(Talk::is_new)
    }

    /// Whether the ration of this day has a welcome left.
    pub(crate) fn has_welcomes(self) -> bool {
        let day = |at| civil_day(at, self.setup.zone);
        let today = day(self.now);
        let given = self.world.welcomed.iter().filter(|at| day(**at) == today);
        u32::try_from(given.count()).is_ok_and(|given| given < self.setup.rules.welcomes_a_day)
    }

    /// The first day on which a phone has rested from its last routine text: a week after a nudge,
    /// a night after its welcome.
    pub(crate) fn rested_on(self, number: &str, group: &Group) -> Option<NaiveDate> {
        let talk = self.talk(number)?;
        let day = |at| civil_day(at, zone(group, self.setup));
        let nudged = talk.routine_at.map(day);
        let nudged = nudged.map(|day| nudge::rested_on(&self.setup.rules, day));
        let waits = self.world.outbox.welcome_waits(number);
        let welcomed = waits.then_some(self.now).or(talk.welcomed_at);
        nudged.max(welcomed.and_then(|at| day(at).succ_opt()))
    }

    /// Whether the owner of a block is left in peace, and the day on which that is over, if one is
    /// set.
    pub(crate) fn held(self, id: BlockId) -> Option<Option<(&'a Group, NaiveDate)>> {
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
        let mut numbers = self.world.directory.numbers_that_reach(owner.id);
        let number = numbers.next()?;
        Some((group, number))
    }
}
