//! What a rehearsal counts.

use std::collections::{BTreeMap, BTreeSet};

use budwood_scheduler::{BlockId, PersonId, TaskKind};
use chrono::{Datelike, NaiveDate};

use crate::words::sms;

/// So many jobs due at once in one week are a clash: more than a text a week can speak of in
/// three weeks.
pub(super) const CLASH_JOBS: usize = 4;

/// Counts of one play.
#[derive(Clone, Debug, Default)]
pub(super) struct Tally {
    pub(super) from: NaiveDate,
    pub(super) farmers: u32,
    pub(super) silent_farmers: u32,
    pub(super) blocks: u32,
    pub(super) years: BTreeMap<i32, Year>,
    pub(super) nudges_of: BTreeMap<(i32, PersonId), u32>,
    pub(super) weeks: BTreeMap<NaiveDate, u32>,
    pub(super) jobs: BTreeMap<TaskKind, u32>,
    pub(super) clashes: BTreeMap<NaiveDate, u32>,
    /// Farmers with more work than days, by week; none when it is not known what work takes.
    pub(super) short: Option<BTreeMap<NaiveDate, u32>>,
    pub(super) planted: BTreeMap<i32, u32>,
    pub(super) ready: BTreeMap<i32, BTreeSet<BlockId>>,
    /// Jobs that became late before a text spoke of them.
    pub(super) untold: BTreeSet<(BlockId, TaskKind, NaiveDate)>,
    pub(super) seen_planted: BTreeSet<BlockId>,
    pub(super) seen_ready: BTreeSet<BlockId>,
}

/// Counts of one year of play.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Year {
    pub(super) nudges: u32,
    pub(super) answers: u32,
    pub(super) segments: u32,
    pub(super) texts_in: u32,
}

impl Tally {
    pub(super) fn sent(&mut self, on: NaiveDate, text: &str, nudge: Option<(PersonId, TaskKind)>) {
        let year = self.year_of(on);
        let counts = self.years.entry(year).or_default();
        counts.segments += u32::try_from(sms::measure(text).parts).unwrap_or(1);
        match nudge {
            Some((person, job)) => {
                counts.nudges += 1;
                *self.nudges_of.entry((year, person)).or_default() += 1;
                *self.jobs.entry(job).or_default() += 1;
            }
            None => counts.answers += 1,
        }
        *self.weeks.entry(week(on)).or_default() += 1;
    }

    pub(super) fn texted(&mut self, on: NaiveDate) {
        let year = self.year_of(on);
        self.years.entry(year).or_default().texts_in += 1;
    }

    pub(super) fn clash(&mut self, on: NaiveDate) {
        *self.clashes.entry(week(on)).or_default() += 1;
    }

    pub(super) fn short(&mut self, on: NaiveDate) {
        if let Some(short) = &mut self.short {
            *short.entry(week(on)).or_default() += 1;
        }
    }

    pub(super) fn planted(&mut self, block: BlockId, on: NaiveDate) {
        if self.seen_planted.insert(block) {
            *self.planted.entry(on.year()).or_default() += 1;
        }
    }

    pub(super) fn ready(&mut self, block: BlockId, on: NaiveDate) {
        if self.seen_ready.insert(block) {
            self.ready.entry(on.year()).or_default().insert(block);
        }
    }

    /// Years of the play, from 1.
    fn year_of(&self, on: NaiveDate) -> i32 {
        let days = on.signed_duration_since(self.from).num_days().max(0);
        i32::try_from(days / 365).unwrap_or(0) + 1
    }
}

/// The Monday of the week.
fn week(on: NaiveDate) -> NaiveDate {
    on.week(chrono::Weekday::Mon).first_day()
}
