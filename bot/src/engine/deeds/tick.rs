//! The time has come: which nudge goes to which phone.
//!
//! One job, one text. When several blocks of one phone are due, the most urgent job wins, and
//! the phone's rest moves the others. Where very many are due at once, a step takes some of them
//! and the next wake the others, so that nobody who texts meanwhile waits for all of them.

use std::collections::{BTreeMap, BTreeSet};

use budwood_scheduler::{BlockId, Body, Phone, jobs::nudge};
use chrono::{DateTime, NaiveDate, TimeDelta, Utc};

use super::due_index::{Candidate, candidates};
use crate::{
    engine::step::{Step, Telling, civil_day, zone},
    wording::NudgeText,
    words::{
        limits,
        message::{OpenNudge, Purpose},
    },
};

/// Hours in a day.
const DAY_HOURS: i64 = 24;

/// A block whose nudge may go now.
struct Ready {
    block: BlockId,
    today: NaiveDate,
    candidate: Candidate,
}

impl Step<'_> {
    /// Nudges for what is due now.
    pub(crate) fn wake(&mut self) {
        if self.world.held_since.is_some() || self.world.nudges_wait {
            return;
        }
        let mut by_phone: BTreeMap<String, Vec<Ready>> = BTreeMap::new();
        for block in self.due_now() {
            match self.ready(block) {
                Some((number, ready)) => by_phone.entry(number).or_default().push(ready),
                None => self.plan(block),
            }
        }
        for (number, mut ready) in by_phone {
            ready.sort_by_key(|ready| {
                (
                    ready.candidate.task.urgency(),
                    ready.candidate.task.due,
                    ready.block,
                )
            });
            if let Some(first) = ready.first() {
                self.nudge(&number, first);
            }
            for ready in &ready {
                self.plan(ready.block);
            }
        }
    }

    /// The first blocks that are due, and all others that are due on their phones.
    fn due_now(&self) -> BTreeSet<BlockId> {
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
    fn on_its_phones(&self, block: BlockId) -> Vec<BlockId> {
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

    /// The most urgent job of a block for which a nudge may go right now.
    fn ready(&self, id: BlockId) -> Option<(String, Ready)> {
        let block = self.world.directory.block(id)?;
        let owner = self.world.directory.person(block.owner)?;
        let group = self.world.directory.group_of_block(block)?;
        let number = self.world.directory.numbers_of(owner.id).next()?.to_owned();
        let zone = zone(group, self.setup);
        let local = self.now.with_timezone(&zone).naive_local();
        let today = local.date();
        let rested = self
            .world
            .talks
            .get(&number)
            .and_then(|talk| talk.routine_at)
            .is_none_or(|at| today >= nudge::rested_on(&self.setup.rules, civil_day(at, zone)));
        if !owner.consent.is_given()
            || !rested
            || !nudge::is_window(&self.setup.rules, local, &group.quiet_days)
        {
            return None;
        }
        let candidate = candidates(self.world, self.setup, id, today)
            .into_iter()
            .filter(|candidate| candidate.on <= today)
            .filter(|candidate| !self.world.outbox.nudge_waits(id, candidate.task.kind))
            .min_by_key(|candidate| (candidate.task.urgency(), candidate.task.due))?;
        Some((
            number,
            Ready {
                block: id,
                today,
                candidate,
            },
        ))
    }

    fn nudge(&mut self, number: &str, ready: &Ready) {
        let Some(text) = self.nudge_text(ready) else {
            return;
        };
        let task = &ready.candidate.task;
        let body = Body::Nudged {
            block: ready.block,
            task: task.kind,
            on: ready.today,
            due: task.due,
        };
        self.record(Telling::BOT, None, body);
        let hours = i64::from(self.setup.rules.expires_after_days) * DAY_HOURS;
        let purpose = Purpose::Nudge {
            block: ready.block,
            task: task.kind,
            due: task.due,
        };
        self.post(number, text, purpose, hours);
        let now = self.now;
        let open = OpenNudge {
            at: now,
            block: ready.block,
            task: task.kind,
            due: task.due,
        };
        let talk = self.talk(number);
        talk.routine_at = Some(now);
        talk.nudge = Some(open);
        let lapsed = now - TimeDelta::hours(limits::QUESTION_HOURS);
        if talk.open.as_ref().is_some_and(|open| open.at < lapsed) {
            talk.open = None;
        }
    }

    fn nudge_text(&self, ready: &Ready) -> Option<String> {
        /// A text may wait three days; a date must not be past when it is read.
        const NOTICE_DAYS: i64 = 7;
        let block = self.world.directory.block(ready.block)?;
        let owner = self.world.directory.person(block.owner)?;
        let task = &ready.candidate.task;
        let soon = ready.today + TimeDelta::days(NOTICE_DAYS);
        let by = task.late_after.max(soon);
        let by = task.ends.map_or(by, |ends| by.min(ends));
        let adviser = self.adviser_name(owner);
        Some(self.tongue(owner).nudge(NudgeText {
            name: owner.called(),
            block: &block.name,
            task,
            by,
            adviser: &adviser,
        }))
    }
}
