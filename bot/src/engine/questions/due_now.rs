//! Which nudges may go at this moment, and what they say.

use std::collections::BTreeSet;

use budwood_scheduler::{BlockId, Phone, jobs::nudge};
use chrono::{DateTime, NaiveDate, TimeDelta, Utc};

use super::tasks::Candidate;
use crate::{
    engine::{
        local_time::zone,
        said::{Said, To},
        view::View,
    },
    wording::{self, NudgeText},
    words::{limits, message::Purpose},
};

/// A block whose nudge may go now.
pub(crate) struct Ready {
    pub(crate) block: BlockId,
    pub(crate) today: NaiveDate,
    pub(crate) candidate: Candidate,
}

impl View<'_> {
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
        if rested.is_some_and(|rested| today < rested)
            || !nudge::is_window(&self.setup.rules, local, &group.quiet_days)
        {
            return None;
        }
        let candidate = self
            .candidates(id, today)
            .into_iter()
            .filter(|candidate| candidate.on <= today)
            .filter(|candidate| !self.world.outbox.nudge_waits(id, candidate.task.kind))
            .min_by_key(|candidate| (candidate.task.urgency(), candidate.task.due))?;
        let ready = Ready {
            block: id,
            today,
            candidate,
        };
        Some((number.to_owned(), ready))
    }

    /// What the nudge says.
    pub(crate) fn nudge(self, number: &str, ready: &Ready) -> Option<Said> {
        let block = self.world.directory.block(ready.block)?;
        let owner = self.person(block.owner)?;
        let task = &ready.candidate.task;
        let soon = ready.today + TimeDelta::days(limits::NOTICE_DAYS);
        let by = task.late_after.max(soon);
        let phrase = wording::nudge(NudgeText {
            name: owner.called(),
            block: &block.name,
            task,
            by: task.ends.map_or(by, |ends| by.min(ends)),
            adviser: self.adviser_name(owner),
        });
        Some(Said {
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
        })
    }
}
