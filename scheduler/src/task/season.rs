//! Rain and dry season, as far as the group's usual dates and the adviser's word tell.
//!
//! The day on which the adviser opens the planting window moves the rains of that year, and with
//! them the jobs that wait for rain; nothing else moves. Without both dates nothing is known of the season, and no job waits for it.

use chrono::{Datelike, NaiveDate};

use crate::{
    days::{after, before, in_year},
    task::Season,
};

/// The rains of one year begin this much before or after their usual day; a window opened further
/// away is one within the rains.
const SHIFT_DAYS_MAX: i64 = 45;

/// The rains of one year.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rains {
    /// First day.
    pub start: NaiveDate,
    /// Last day.
    pub end: NaiveDate,
}

impl Season {
    /// The rains on this day, or the next after it if it is dry. None when the dates of the
    /// rains are not known.
    #[must_use]
    pub fn rains(&self, day: NaiveDate) -> Option<Rains> {
        let (start, end) = self.rains_start.zip(self.rains_end)?;
        // Rains that began last year may still fall; those that begin next year may be next.
        (-1..=1).find_map(|shift| {
            let year = day.year().checked_add(shift)?;
            let start_day = in_year(year, start)?;
            let end_year = if start <= end {
                year
            } else {
                year.checked_add(1)?
            };
            let end = in_year(end_year, end)?;
            let rains = Rains {
                start: self.opened_near(start_day).unwrap_or(start_day).min(end),
                end,
            };
            (day <= rains.end).then_some(rains)
        })
    }

    /// The day on which the adviser opened the window, if that was about the usual first day of
    /// these rains: then it tells when they began this year.
    fn opened_near(&self, start: NaiveDate) -> Option<NaiveDate> {
        self.window_opened.filter(|opened| {
            let days = opened.signed_duration_since(start).num_days();
            days.abs() <= SHIFT_DAYS_MAX
        })
    }

    /// Moves a job that needs moist soil out of the dry season, and from rains that are over to
    /// the next. The result stays the same from day to day until those rains are over too.
    #[must_use]
    pub fn wait_for_rain(&self, due: NaiveDate, today: NaiveDate) -> NaiveDate {
        match self.rains(due.max(today)) {
            Some(rains) => due.max(rains.start),
            None => due,
        }
    }

    /// The last day of these rains on which new plants still have so many days of rain before
    /// them.
    pub(crate) fn last_planting(rains: Rains, rain_left_days: u32) -> Option<NaiveDate> {
        before(rains.end, rain_left_days).filter(|day| *day >= rains.start)
    }

    /// The rains after these.
    pub(crate) fn next(&self, rains: Rains) -> Option<Rains> {
        self.rains(after(rains.end, 1)?)
    }
}
