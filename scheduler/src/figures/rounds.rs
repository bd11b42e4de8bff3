//! One kind of work: who did it, with whom it is due, with whom late; and what harm was told.

use alloc::vec::Vec;
use core::cmp::Reverse;

use budwood_parser::Cause;
use chrono::{NaiveDate, TimeDelta};

use super::{Farmer, Figure, LateJob, Name, Table, Window};
use crate::{
    land::{block::BlockState, book::Book},
    words::{id::PersonId, job::TaskKind},
};

/// Work that was done longer ago is of another year.
const DONE_DAYS: i64 = 365;

/// Harm that was told longer ago is of another storm. An assumption.
pub const HARM_DAYS: i64 = 90;

/// News of a storm comes before anybody asks. An assumption.
const TOLD_BEFORE_DAYS: i64 = 2;

/// How far a kind of work is.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Round {
    /// Farmers who did it and of whom it is not asked now.
    pub done: Vec<PersonId>,
    /// Farmers with whom it is due.
    pub due: Vec<PersonId>,
    /// Farmers with whom it is late, most days first.
    pub late: Vec<LateJob>,
}

/// What came of it when a group was asked about harm.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Survey {
    /// When it was asked.
    pub on: NaiveDate,
    /// How many farmers were asked, of those who are still there.
    pub asked: usize,
    /// Who told of trees that were hurt, and how many; most first.
    pub hurt: Vec<(PersonId, u32)>,
    /// Who did not answer.
    pub silent: Vec<PersonId>,
}

impl Table<'_> {
    /// What came of the last time when the group was asked about this harm. An answer is what was
    /// told of it since two days before that day, "none" too: who told at once is not asked twice.
    #[must_use]
    pub fn survey(&self, book: &Book, cause: Cause) -> Figure<Option<Survey>> {
        let last = book.asked.iter().rev().find(|round| round.cause == cause);
        let survey = last.map(|round| {
            let since = round.on - TimeDelta::days(TOLD_BEFORE_DAYS);
            let mut survey = Survey {
                on: round.on,
                asked: 0,
                hurt: Vec::new(),
                silent: Vec::new(),
            };
            let asked = self.farmers.iter();
            for farmer in asked.filter(|farmer| round.people.contains(&farmer.person.id)) {
                survey.asked += 1;
                let told = farmer.stands.iter().filter_map(|stand| {
                    let count = stand.state.harmed.get(&cause)?;
                    (count.on >= since).then_some(count.trees.unwrap_or(0))
                });
                match told.reduce(u32::saturating_add) {
                    None => survey.silent.push(farmer.person.id),
                    Some(0) => {}
                    Some(trees) => survey.hurt.push((farmer.person.id, trees)),
                }
            }
            survey.hurt.sort_by_key(|(_, trees)| Reverse(*trees));
            survey
        });
        self.figure(Name::Survey, Window::days(HARM_DAYS), survey)
    }

    /// How far a kind of work is: each farmer once, by what is most pressing.
    #[must_use]
    pub fn round(&self, task: TaskKind) -> Figure<Round> {
        let mut round = Round::default();
        for farmer in &self.farmers {
            let open = farmer.stands.iter().flat_map(|stand| {
                let jobs = farmer.jobs(stand).iter();
                let open = jobs.filter(|job| job.kind == task && job.due <= farmer.today);
                open.map(move |job| farmer.late_job(stand, job, self.rules))
            });
            match open.max_by_key(|late| late.map(|job| job.days)) {
                Some(Some(job)) if job.days > 0 => round.late.push(job),
                Some(_) => round.due.push(farmer.person.id),
                None if farmer.did(task) => round.done.push(farmer.person.id),
                None => {}
            }
        }
        round.late.sort_by_key(|job| Reverse(job.days));
        self.figure(Name::Round, Window::days(DONE_DAYS), round)
    }

    /// Farmers who told of this harm, most trees first.
    #[must_use]
    pub fn harm(&self, cause: Cause) -> Figure<Vec<(PersonId, u32)>> {
        let farmers = self.farmers.iter().filter_map(|farmer| {
            let told = farmer.stands.iter().filter_map(|stand| {
                let count = stand.state.harmed.get(&cause)?;
                let age = farmer.today.signed_duration_since(count.on).num_days();
                (age <= HARM_DAYS && count.trees != Some(0)).then_some(count.trees.unwrap_or(0))
            });
            let trees = told.reduce(u32::saturating_add)?;
            Some((farmer.person.id, trees))
        });
        let mut harm: Vec<_> = farmers.collect();
        harm.sort_by_key(|(_, trees)| Reverse(*trees));
        self.figure(Name::Harm, Window::days(HARM_DAYS), harm)
    }
}

impl Farmer<'_> {
    /// Whether this work was done within a year.
    fn did(&self, task: TaskKind) -> bool {
        let mut done = self
            .stands
            .iter()
            .filter_map(|stand| done_on(stand.state, task));
        done.any(|on| self.today.signed_duration_since(on).num_days() <= DONE_DAYS)
    }
}

/// The last day on which a report proved this job, or it was said to be done.
fn done_on(state: &BlockState, task: TaskKind) -> Option<NaiveDate> {
    let proven = task.proven_by().and_then(|kind| state.last_of(kind));
    proven.max(state.done.get(&task).copied())
}
