//! The years of one block, played by a farmer who does every job on the day it falls due.
//!
//! What is due follows from the same rules as in service ([`crate::jobs::task`]). What the farmer
//! finds is assumed: it rains when that is asked, a share dies at first, a fifth of the trees is
//! tall without branches, the stand reaches the girth at the calendar's least age. Deliberately
//! absent: chance.

use alloc::vec::Vec;

use budwood_parser::{Ailment, Details, Kind, Wetness};
use chrono::{DateTime, Days, NaiveDate};

use crate::{
    handbook::calendar::Calendar,
    jobs::task::{Task, most_urgent, tasks},
    land::{block::BlockState, directory::Block},
    sums::days,
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
/// The share of a sample that reaches the girth before and after the least age, in per cent
/// (assumption).
const REACHED_PCT: (u32, u32) = (10, 95);
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
                let (before, after) = REACHED_PCT;
                let share = if self.is_old_enough(today) {
                    after
                } else {
                    before
                };
                details.of = Some(trees);
                details.count = Some(trees.saturating_mul(share) / 100);
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

    fn is_old_enough(&self, today: NaiveDate) -> bool {
        let least = self.calendar.opening.minimum_months;
        let planted_on = self.state.planted_on();
        planted_on.is_some_and(|day| days::months_between(day, today) >= least)
    }
}
