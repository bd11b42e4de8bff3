//! Which nudges may go at this moment, what they say, and when a block is to be looked at next.
//!
//! A tick costs what is due, not what exists, so the next moment of each block is kept in order
//! (`World::due`). It follows from the block's jobs, the nudges already given, the phone's rest,
//! quiet days and hours.

use std::collections::BTreeSet;

use budwood_scheduler::{BlockId, Lesson, Phone, Task, TaskKind, jobs::nudge};
use chrono::{DateTime, NaiveDate, NaiveTime, TimeDelta, Utc};

use super::{
    round::{Part, blocks_in, is_walked, together},
    tasks::{Candidate, Ready},
};
use crate::{
    engine::{
        local_time::{instant, zone},
        said::{Said, To},
        view::View,
    },
    wording::{self, NudgeText, RoundText},
    words::{limits, message::Purpose},
};

/// A block is looked at again after this many days at the latest: a round that nobody answered
/// gives way to the next one as days pass, and ages bring new jobs. A phone rests as long anyway.
const LOOK_AGAIN_DAYS: i64 = 7;

impl<'a> View<'a> {
    /// The first blocks that are due, and all others that are due on their phones.
    pub(crate) fn due_now(self) -> BTreeSet<BlockId> {
        let end: (DateTime<Utc>, BlockId) = (self.now, BlockId(u32::MAX));
        let due = self.world.due.range(..=end).map(|(_, block)| *block);
        let first: BTreeSet<BlockId> = due.take(limits::WAKE_BLOCKS).collect();
        let beside = first.iter().flat_map(|block| self.on_its_phones(*block));
        let is_due = |block: &BlockId| {
            let at = self.world.due_of.get(block);
            at.is_some_and(|at| *at <= self.now)
        };
        let beside: BTreeSet<BlockId> = beside.filter(is_due).collect();
        &first | &beside
    }

    /// All blocks of those who share a phone with the owner of this one.
    fn on_its_phones(self, block: BlockId) -> Vec<BlockId> {
        let directory = &self.world.directory;
        let Some(block) = directory.block(block) else {
            return Vec::new();
        };
        directory
            .numbers_of(block.owner)
            .filter_map(|number| directory.phone(number))
            .flat_map(Phone::people)
            .flat_map(|person| directory.blocks_of(person))
            .map(|block| block.id)
            .collect()
    }

    /// The most urgent job of a block for which a nudge may go right now, and to which phone.
    pub(crate) fn ready(self, id: BlockId) -> Option<(String, Ready)> {
        let (group, number) = self.nudged_about(id)?;
        let zone = zone(group, self.setup);
        let local = self.now.with_timezone(&zone).naive_local();
        let today = local.date();
        let rested = self.rested_on(number, group);
        if self.is_new(number)
            || rested.is_some_and(|rested| today < rested)
            || !nudge::is_window(&self.setup.rules, local, &group.quiet_days)
        {
            return None;
        }
        let (rules, texts) = (&self.setup.rules, self.texts_in_a_year(number, today));
        let candidate = self
            .candidates(id, today)
            .into_iter()
            .filter(|candidate| self.may_be_told_on(id, candidate, today) <= today)
            .filter(|candidate| candidate.turn(rules).may_be_said(rules, texts))
            .filter(|candidate| !self.world.outbox.nudge_waits(id, candidate.task.kind))
            .min_by_key(|candidate| candidate.rank(rules))?;
        let ready = Ready {
            block: id,
            today,
            candidate,
        };
        Some((number.to_owned(), ready))
    }

    /// Routine texts that a phone got in the last year.
    fn texts_in_a_year(self, number: &str, today: NaiveDate) -> u32 {
        let weeks = self.talk(number).and_then(|talk| talk.texted);
        weeks.map_or(0, |weeks| weeks.count(today))
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
        let next = if self.is_new(number) {
            today + TimeDelta::days(i64::from(!self.has_welcomes()))
        } else {
            let (rules, texts) = (&self.setup.rules, self.texts_in_a_year(number, today));
            self.candidates(id, today)
                .into_iter()
                .filter(|candidate| candidate.turn(rules).may_be_said(rules, texts))
                .map(|candidate| self.may_be_told_on(id, &candidate, today))
                .chain([today + TimeDelta::days(LOOK_AGAIN_DAYS)])
                .min()?
        };
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

    /// What the nudge says, and the jobs that it speaks of.
    pub(crate) fn nudge(self, number: &str, ready: &Ready) -> Option<(Said, Vec<Part<'a>>)> {
        let block = self.world.directory.block(ready.block)?;
        let owner = self.person(block.owner)?;
        let task = &ready.candidate.task;
        let soon = ready.today + TimeDelta::days(limits::NOTICE_DAYS);
        let parts = self.parts(ready);
        let is_round = is_walked(task) && parts.len() > 1;
        let by = |task: &Task| {
            let by = task.late_after.max(soon);
            task.ends.map_or(by, |ends| by.min(ends))
        };
        let blocks: Vec<String> = blocks_in(&parts)
            .into_iter()
            .map(|(_, name)| name)
            .collect();
        let phrase = if is_round {
            let jobs: BTreeSet<TaskKind> = parts.iter().map(|part| part.task.kind).collect();
            wording::field_round(RoundText {
                name: owner.called(),
                blocks: &blocks,
                jobs: &jobs,
                by: by(task),
                adviser: self.adviser_name(owner),
            })
        } else {
            let task = together(&parts)?;
            wording::nudge(NudgeText {
                name: owner.called(),
                block: &blocks.join(", "),
                task: &task,
                by: by(&task),
                adviser: self.adviser_name(owner),
                is_new: Lesson::of_job(task.kind)
                    .is_some_and(|lesson| !self.was_shown(owner.id, lesson.shown_as())),
            })
        };
        let said = Said {
            to: To {
                number: number.to_owned(),
                language: self.language_of(owner.id),
            },
            phrase,
            purpose: Purpose::Nudge {
                block: ready.block,
                task: task.kind,
                due: task.due,
            },
            asks: false,
        };
        Some((said, parts))
    }

    /// The first day on which a text may speak of this job: a round rests longer than a phone.
    pub(crate) fn may_be_told_on(
        self,
        id: BlockId,
        candidate: &Candidate,
        today: NaiveDate,
    ) -> NaiveDate {
        let rested = || {
            let block = self.world.directory.block(id)?;
            self.round_rested_on(block.owner, today)
        };
        let rested = is_walked(&candidate.task).then(rested).flatten();
        candidate.on.max(rested.unwrap_or(candidate.on))
    }
}
