//! The years of one block, played by a farmer who does every job on the day it falls due.
//!
//! What is due follows from the same rules as in service ([`crate::jobs::task`]). What the farmer
//! finds is assumed: it rains when that is asked, a share dies at first, a fifth of the trees is
//! tall without branches, girths are those that the calendar leads to expect. Deliberately absent:
//! chance.

#[cfg(test)]
mod tests;

use alloc::vec::Vec;

use budwood_parser::{Ailment, Details, Kind, Wetness};
use chrono::{DateTime, Days, NaiveDate};

use crate::{
    handbook::calendar::Calendar,
    jobs::task::{Task, most_urgent, tasks},
    land::{block::BlockState, directory::Block},
    outlook::{
        census::USUAL_SPREAD,
        growth::{Among, LIMITS_CM, standard},
    },
    sums::{chance, days, rounding},
    words::{
        event::{Body, Event, Happened, Source},
        id::EventId,
        job::TaskKind,
        season::Season,
    },
};

/// One in so many plants is dead at the first count (assumption).
const DEAD_ONE_IN: u32 = 10;
/// One in so many trees is tall without branches when they are counted (assumption).
const TALL_ONE_IN: u32 = 5;
/// Years that are played after the planting.
pub const YEARS: u32 = 7;

/// The jobs of a block from this day to the end of the seventh year after planting, in the order
/// in which they are done. `season` holds the usual rains; the window opens on the planned day.
///
/// Without a planned day nothing can be played.
#[must_use]
pub fn years(block: &Block, calendar: &Calendar, season: Season, from: NaiveDate) -> Vec<Done> {
    let mut life = Life {
        block,
        calendar,
        season,
        events: Vec::new(),
        state: BlockState::default(),
    };
    let Some(planned_on) = block.planned_on else {
        return Vec::new();
    };
    let end = days::months_after(planned_on, YEARS * 12).unwrap_or(from);
    let span = end.signed_duration_since(from).num_days();
    let mut done = Vec::new();
    for offset in 0..u64::try_from(span).unwrap_or(0) {
        let Some(today) = from.checked_add_days(Days::new(offset)) else {
            break;
        };
        if today == planned_on {
            life.season.window_opened = Some(today);
        }
        // Done work is due no more, so a day has no more jobs than there are kinds.
        for _ in TaskKind::ALL {
            let due = tasks(block, &life.state, &life.season, calendar, today);
            let Some(task) = most_urgent(&due, today) else {
                break;
            };
            life.work(task, today);
            done.push(Done {
                on: today,
                month: days::months_between(planned_on, today),
                task: task.clone(),
            });
        }
    }
    done
}

/// A job that was done.
#[derive(Clone, Debug, PartialEq)]
pub struct Done {
    /// When.
    pub on: NaiveDate,
    /// Whole months after the planned day; 0 before it.
    pub month: u32,
    /// Which, with its figures.
    pub task: Task,
}

struct Life<'a> {
    block: &'a Block,
    calendar: &'a Calendar,
    season: Season,
    events: Vec<EventId>,
    state: BlockState,
}

impl Life<'_> {
    fn work(&mut self, task: &Task, today: NaiveDate) {
        let body = match self.report(task, today) {
            Some((kind, details)) => Body::Reported {
                block: self.block.id,
                kind,
                on: Happened::on(today),
                details,
            },
            None => Body::TaskDone {
                block: self.block.id,
                task: task.kind,
                on: today,
            },
        };
        let id = EventId(u64::try_from(self.events.len()).unwrap_or(u64::MAX));
        self.events.push(id);
        self.state.apply(&Event {
            id,
            at: DateTime::UNIX_EPOCH,
            by: None,
            source: Source::OwnText,
            message: None,
            supersedes: None,
            body,
        });
    }

    /// The report that proves the job; none where a word does.
    fn report(&self, task: &Task, today: NaiveDate) -> Option<(Kind, Details)> {
        let trees = task.figures.trees.unwrap_or(0);
        let mut details = Details {
            count: task.figures.trees,
            ..Details::default()
        };
        match task.kind {
            TaskKind::SurvivalCheck => {
                let first = self.state.last_of(Kind::Dead).is_none();
                details.count = Some(if first { trees / DEAD_ONE_IN } else { 0 });
            }
            TaskKind::RainWatch => details.wetness = Some(Wetness::Soaked),
            TaskKind::CountTall => details.count = Some(trees / TALL_ONE_IN),
            TaskKind::RootCheck => {
                details.count = Some(0);
                details.ailment = Some(Ailment::WhiteRoot);
            }
            TaskKind::GirthCensus => {
                let share = self.share_reached(today).unwrap_or(0.0);
                details.of = Some(trees);
                details.count = rounding::floor(f64::from(trees) * share);
            }
            TaskKind::Weed
            | TaskKind::Feed
            | TaskKind::Prune
            | TaskKind::Clear
            | TaskKind::SowCover => {
                details.count = None;
            }
            TaskKind::OrderPlants
            | TaskKind::Line
            | TaskKind::DigPits
            | TaskKind::FillPits
            | TaskKind::Plant
            | TaskKind::Backfill
            | TaskKind::Mulch
            | TaskKind::Firebreak
            | TaskKind::InduceBranching
            | TaskKind::LookAtInduced
            | TaskKind::GetReady
            | TaskKind::LeafCheck
            | TaskKind::Intercrop
            | TaskKind::Open
            | TaskKind::OpenRest
            | TaskKind::HandOver => {}
        }
        task.kind.proven_by().map(|kind| (kind, details))
    }

    /// The share of the trees that reaches the girth of opening, as the calendar leads to expect.
    fn share_reached(&self, today: NaiveDate) -> Option<f64> {
        const DAYS_A_YEAR: f64 = 365.25;
        let planted_on = self.state.planted_on()?;
        let days = i32::try_from(today.signed_duration_since(planted_on).num_days()).ok()?;
        let clone_name = self.block.clone_name.as_deref();
        let curve = standard(
            self.calendar,
            clone_name,
            Among::default(),
            LIMITS_CM.likely,
        )?;
        let mean_cm = curve.girth_cm(f64::from(days) / DAYS_A_YEAR);
        let girth_cm = self.calendar.opening.girth_cm;
        Some(chance::below(
            (mean_cm - girth_cm) / (USUAL_SPREAD * mean_cm),
        ))
    }
}
