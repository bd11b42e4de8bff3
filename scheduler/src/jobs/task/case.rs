//! All that the rules may look at, and how a rule's plan becomes a task.

use budwood_parser::Cause;
use chrono::NaiveDate;

use crate::{
    handbook::calendar::{Calendar, Rounds},
    jobs::task::{Figures, Task},
    land::{block::BlockState, directory::Block},
    outlook::rain,
    sums::days,
    words::{
        job::{Clock, TaskKind},
        season::Season,
    },
};

/// Days of a season. A round missed for longer than this, and longer than its own interval, gives
/// way to the next one, so that the job is spoken of again; a shorter one stays as it is, so that
/// nobody is reminded of one job more than a few times a season.
const SEASON_DAYS: u32 = 84;

/// So long after a flood the soil is taken to be wet through: nothing is planted or fed (an
/// assumption; handbooks say "not in heavy rain" and "stop until it eases").
const DRAINED_AFTER_DAYS: u32 = 14;
/// A word of dry weather holds planting and feeding for so many days, unless rain is told before.
const DRY_DAYS: u32 = 7;

/// One block on one day.
#[derive(Clone, Copy)]
pub(super) struct Case<'a> {
    pub(super) block: &'a Block,
    pub(super) state: &'a BlockState,
    pub(super) season: &'a Season,
    pub(super) calendar: &'a Calendar,
    pub(super) today: NaiveDate,
}

/// What a rule says of its job.
pub(super) struct Plan {
    pub(super) due: NaiveDate,
    pub(super) late_after: NaiveDate,
    pub(super) ends: Option<NaiveDate>,
    pub(super) figures: Figures,
}

impl Case<'_> {
    /// Whether every tree of the stand was counted with branches.
    pub(super) fn all_branched(&self) -> bool {
        let branched = self.state.branched.and_then(|count| count.trees);
        branched.is_some_and(|trees| trees > 0 && trees >= self.state.alive())
    }

    /// The task of this plan, put off as the farmer asked and never before the block was on the
    /// record, but never past its end.
    pub(super) fn task(&self, kind: TaskKind, plan: Plan, clock: Clock) -> Task {
        let (mut due, mut late_after) = (plan.due, plan.late_after);
        // What fell due before the block was on the record is due from that day, and not late.
        let put_off = self.state.postponed.get(&kind).copied();
        if let Some(not_before) = put_off.max(self.state.listed_on)
            && not_before > due
        {
            let patience = late_after.signed_duration_since(due);
            due = plan
                .ends
                .map_or(not_before, |ends| ends.min(not_before))
                .max(due);
            late_after = due.checked_add_signed(patience).unwrap_or(due);
        }
        Task {
            kind,
            block: self.block.id,
            due,
            late_after: late_after.max(due),
            ends: plan.ends,
            clock,
            figures: Figures {
                is_published: self.calendar.is_published(kind),
                ..plan.figures
            },
        }
    }

    /// The last day on which this job is known to have been done, by its report or by word.
    pub(super) fn last_done(&self, kind: TaskKind) -> Option<NaiveDate> {
        let reported = kind
            .proven_by()
            .and_then(|report| self.state.last_of(report));
        reported.max(self.said_done(kind))
    }

    /// The last day on which this job was said to be done.
    pub(super) fn said_done(&self, kind: TaskKind) -> Option<NaiveDate> {
        self.state.done.get(&kind).copied()
    }

    /// Moves a job that needs moist soil past a flood, and past a dry spell of which the farmer
    /// told.
    pub(super) fn wait_for_soil(&self, due: NaiveDate) -> Option<NaiveDate> {
        let flood = self.state.harmed.get(&Cause::Flood);
        let drained = flood
            .filter(|count| count.trees != Some(0))
            .and_then(|count| days::after(count.on, DRAINED_AFTER_DAYS));
        let asked_again =
            rain::is_dry(&self.state.rains, self.today).and_then(|on| days::after(on, DRY_DAYS));
        Some(due).max(drained).max(asked_again)
    }

    /// When a job that comes round by age is due, and the last day on which it is still asked
    /// for. None when nothing is planted or the table of rounds has ended.
    pub(super) fn round(
        &self,
        rounds: &[Rounds],
        last: Option<NaiveDate>,
    ) -> Option<(NaiveDate, NaiveDate)> {
        let planted_on = self.state.planted_on()?;
        let last = last.filter(|day| *day >= planted_on);
        let month = days::months_between(planted_on, last.unwrap_or(planted_on));
        let (mut due, every_days) = rounds
            .iter()
            .filter(|row| month < row.until_month)
            .filter_map(|row| Some((first_day(row, planted_on, last)?, row.every_days)))
            .min()?;
        // Of rounds before the block was on the record nothing is known: they count from there.
        if last.is_none()
            && let Some(listed_on) = self.state.listed_on
            && due < listed_on
        {
            due = days::after(listed_on, every_days)?;
        }
        let end = days::months_after(planted_on, rounds.last()?.until_month)?;
        if every_days >= SEASON_DAYS {
            let missed = self.today.signed_duration_since(due).num_days() / i64::from(every_days);
            let missed = u32::try_from(missed).unwrap_or(0);
            due = days::after(due, missed.checked_mul(every_days)?)?;
        }
        Some((due, days::before(end, 1)?))
    }
}

/// The first day on which this row of a table asks for the job.
fn first_day(row: &Rounds, planted_on: NaiveDate, last: Option<NaiveDate>) -> Option<NaiveDate> {
    let opens = days::months_after(planted_on, row.from_month)?;
    match last {
        Some(last) => Some(days::after(last, row.every_days)?.max(opens)),
        // A job that is asked for from the start is first due an interval after planting; one
        // that is asked for from an age on, at that age.
        None if row.from_month == 0 => days::after(planted_on, row.every_days),
        None => Some(opens),
    }
}
