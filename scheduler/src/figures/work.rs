//! Jobs: what is due and what is late, by farmer.

use alloc::{collections::BTreeMap, vec::Vec};

use chrono::NaiveDate;

use super::{Farmer, Figure, Name, Stand, Table, Window};
use crate::{
    jobs::{
        nudge::{NextTry, Rules, next_try},
        task::Task,
    },
    land::{
        block::BlockState,
        directory::{Consent, Person},
    },
    sums::days,
    words::{id::PersonId, job::TaskKind},
};

/// What a list brought is not late for two weeks: nobody could report it before.
const LIST_NOTICE_DAYS: u32 = 14;

/// A round of feeding that was lost is news for half a year: so long it explains how trees stand
/// (an assumption).
pub const FEED_LOST_DAYS: i64 = 183;

/// Jobs of some farmers.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Jobs {
    /// Farmers with each job due and not late.
    pub due: BTreeMap<TaskKind, u32>,
    /// Farmers with each job late.
    pub late: BTreeMap<TaskKind, u32>,
    /// Each job that is late or nudged for in vain, most days first.
    pub list: Vec<LateJob>,
}

/// A job of one farmer that is late, or that no nudge goes for any more: then it is the adviser's,
/// however much time is left.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LateJob {
    /// Whose.
    pub person: PersonId,
    /// Which.
    pub task: TaskKind,
    /// For how many days; 0 when it is not late.
    pub days: i64,
    /// Every nudge for it was given.
    pub in_vain: bool,
}

impl Table<'_> {
    /// Jobs that are due and late. Of a job that is late on several blocks of one farmer the longest
    /// wait is told.
    #[must_use]
    pub fn jobs(&self) -> Figure<Jobs> {
        let mut jobs = Jobs::default();
        for farmer in &self.farmers {
            for (task, late) in of_farmer(farmer, self.rules) {
                let counts = if late.is_some_and(|job| job.days > 0) {
                    &mut jobs.late
                } else {
                    &mut jobs.due
                };
                *counts.entry(task).or_default() += 1;
                jobs.list.extend(late);
            }
        }
        jobs.list.sort_by_key(|job| core::cmp::Reverse(job.days));
        self.figure(Name::Jobs, Window::ALL, jobs)
    }

    /// Farmers with rounds of feeding that were not given and are asked for no more, and how many;
    /// most first.
    #[must_use]
    pub fn feed_lost(&self) -> Figure<Vec<(PersonId, usize)>> {
        let lost_by = |farmer: &Farmer<'_>| {
            let jobs = farmer.stands.iter().flat_map(|stand| farmer.jobs(stand));
            let lost = jobs.flat_map(|task| &task.figures.lost);
            let days = lost.map(|round| farmer.today.signed_duration_since(round.until).num_days());
            days.filter(|days| *days <= FEED_LOST_DAYS).count()
        };
        let all = self.farmers.iter();
        let mut lost: Vec<_> = all
            .map(|farmer| (farmer.person.id, lost_by(farmer)))
            .filter(|(_, rounds)| *rounds > 0)
            .collect();
        lost.sort_by_key(|(_, rounds)| core::cmp::Reverse(*rounds));
        self.figure(Name::FeedLost, Window::days(FEED_LOST_DAYS), lost)
    }
}

fn of_farmer(farmer: &Farmer<'_>, rules: &Rules) -> BTreeMap<TaskKind, Option<LateJob>> {
    let mut due: BTreeMap<TaskKind, Option<LateJob>> = BTreeMap::new();
    for stand in &farmer.stands {
        let jobs = farmer.jobs(stand).iter();
        for task in jobs.filter(|task| task.due <= farmer.today) {
            let worst = due.entry(task.kind).or_default();
            if let Some(job) = farmer.late_job(stand, task, rules)
                && worst.is_none_or(|worst| job.days > worst.days)
            {
                *worst = Some(job);
            }
        }
    }
    due
}

impl Farmer<'_> {
    /// None for a job that is not late and still nudged for.
    #[must_use]
    pub fn late_job(&self, stand: &Stand<'_>, task: &Task, rules: &Rules) -> Option<LateJob> {
        let days = days_late(self.person, stand.state, task, self.today);
        let track = stand.state.nudges.get(&task.kind);
        let track = track.filter(|track| track.due == task.due);
        let is_left = next_try(rules, task, track, self.today) == NextTry::AdviserList;
        let tries = track.map_or(0, |track| usize::from(track.tries));
        (days > 0 || (is_left && !task.only_tells())).then_some(LateJob {
            person: self.person.id,
            task: task.kind,
            days,
            in_vain: tries > rules.again_after_days.len(),
        })
    }
}

/// Days late, seen from when the block became known, or its owner agreed to be texted: of a stand
/// that came by a list nobody could report before. 0 when it is not late.
#[must_use]
pub fn days_late(owner: &Person, state: &BlockState, task: &Task, today: NaiveDate) -> i64 {
    let agreed_on = match owner.consent {
        Consent::Given { on, .. } => Some(on),
        Consent::Unknown | Consent::Withdrawn { .. } => None,
    };
    let known_on = state.known_on.or(agreed_on);
    let noticed = known_on.and_then(|day| days::after(day, LIST_NOTICE_DAYS));
    let late_after = noticed.map_or(task.late_after, |day| task.late_after.max(day));
    today.signed_duration_since(late_after).num_days().max(0)
}
