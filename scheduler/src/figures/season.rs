//! The season of each farmer by weeks: what was done, what a visit saw, what was asked, what is late.

use alloc::vec::Vec;

use chrono::{Days, NaiveDate};

use super::{Farmer, Figure, Name, Table, Window, days_late};
use crate::{land::directory::Block, words::id::PersonId};

/// What was told of a block on a day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Told {
    /// The day.
    pub on: NaiveDate,
    /// What.
    pub what: What,
}

/// What can be told of a day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum What {
    /// Work was reported.
    Done,
    /// A visit saw it.
    Seen,
    /// A text asked for work.
    Asked,
}

/// A week of a farmer.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[expect(
    clippy::struct_excessive_bools,
    reason = "four things, and any of them may be in one week"
)]
pub struct Week {
    /// Work was reported.
    pub done: bool,
    /// A visit saw it.
    pub seen: bool,
    /// A text asked for work.
    pub asked: bool,
    /// Work that is still open was late.
    pub late: bool,
}

impl Week {
    /// Whether nothing was in it.
    #[must_use]
    pub const fn is_empty(self) -> bool {
        !(self.done || self.seen || self.asked || self.late)
    }
}

const DAYS_A_WEEK: usize = 7;

impl Table<'_> {
    /// So many weeks up to today, the earliest first, of each farmer. `told` gives what is known of a
    /// block from a day on.
    #[must_use]
    pub fn season(
        &self,
        weeks: usize,
        told: impl Fn(&Block, NaiveDate) -> Vec<Told>,
    ) -> Figure<Vec<(PersonId, Vec<Week>)>> {
        let of = |farmer: &Farmer<'_>| {
            let from = first_day(farmer.today, weeks);
            let mut season = vec_of(weeks);
            let mut mark = |on: NaiveDate, mark: &mut dyn FnMut(&mut Week)| {
                if let Some(week) = week_of(from, on).and_then(|at| season.get_mut(at)) {
                    mark(week);
                }
            };
            for stand in &farmer.stands {
                for told in told(stand.block, from) {
                    mark(told.on, &mut |week| match told.what {
                        What::Done => week.done = true,
                        What::Seen => week.seen = true,
                        What::Asked => week.asked = true,
                    });
                }
                for task in farmer.jobs(stand) {
                    let late = days_late(farmer.person, stand.state, task, farmer.today);
                    for days in (0..u64::try_from(late).unwrap_or(0)).step_by(DAYS_A_WEEK) {
                        if let Some(day) = farmer.today.checked_sub_days(Days::new(days)) {
                            mark(day, &mut |week| week.late = true);
                        }
                    }
                }
            }
            (farmer.person.id, season)
        };
        let season = self.farmers.iter().map(of).collect();
        let days = i64::try_from(weeks * DAYS_A_WEEK).unwrap_or(i64::MAX);
        self.figure(Name::Season, Window::days(days), season)
    }
}

fn vec_of(weeks: usize) -> Vec<Week> {
    core::iter::repeat_n(Week::default(), weeks).collect()
}

/// The first day of the weeks that end with today.
#[must_use]
pub fn first_day(today: NaiveDate, weeks: usize) -> NaiveDate {
    let days = (weeks * DAYS_A_WEEK).saturating_sub(1);
    let back = Days::new(u64::try_from(days).unwrap_or_default());
    today.checked_sub_days(back).unwrap_or(today)
}

fn week_of(from: NaiveDate, on: NaiveDate) -> Option<usize> {
    let days = on.signed_duration_since(from).num_days();
    usize::try_from(days).ok().map(|days| days / DAYS_A_WEEK)
}
