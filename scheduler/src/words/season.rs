//! Rain and dry season, as far as the group's usual dates and the adviser's word tell.
//!
//! The day on which the adviser opens the planting window moves the rains of that year, and with
//! them the jobs that wait for rain; nothing else moves. Without both dates nothing is known of the
//! season, and no job waits for it. Where it rains twice a year, the rains are those that a day
//! lies in, or the next.

use chrono::{Datelike, NaiveDate};

use crate::sums::days::{after, before, in_year};

/// The rains of one year begin this much before or after their usual day; a window opened further
/// away is one within the rains.
const SHIFT_DAYS_MAX: u32 = 45;
/// So many days before the usual first day of the rains it is first asked whether they have begun
/// (an assumption: who sees them earlier tells of it unasked).
const WATCH_BEFORE_DAYS: u32 = 21;
/// Plantings, and plans of planting, that lie this close belong to one season (an assumption: no
/// rains in which one plants are longer).
const ONE_SEASON_DAYS: u32 = 120;

/// Whether these two days of planting belong to one season.
#[must_use]
pub fn is_one_season(one: NaiveDate, other: NaiveDate) -> bool {
    one.signed_duration_since(other).num_days().unsigned_abs() <= u64::from(ONE_SEASON_DAYS)
}

/// What a group's season says, for one year.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Season {
    /// Usual first day of the rains, as month and day.
    pub rains_start: Option<(u32, u32)>,
    /// Usual last day of the rains, as month and day.
    pub rains_end: Option<(u32, u32)>,
    /// Usual first and last day of the second rains, where there are two in a year.
    pub second_rains: Option<((u32, u32), (u32, u32))>,
    /// The day on which the adviser opened the planting window.
    pub window_opened: Option<NaiveDate>,
}

/// The rains of one year.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rains {
    /// First day.
    pub start: NaiveDate,
    /// Last day.
    pub end: NaiveDate,
}

/// The days on which it is asked whether the rains have begun.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Watch {
    /// The first.
    pub from: NaiveDate,
    /// The last.
    pub until: NaiveDate,
    /// The day on which the adviser opened the window of these rains, if that was done.
    pub opened_on: Option<NaiveDate>,
}

impl Season {
    /// The rains on this day, or the next after it if it is dry. None when the dates of the
    /// rains are not known.
    #[must_use]
    pub fn rains(&self, day: NaiveDate) -> Option<Rains> {
        let Rains { start, end } = self.usual(day)?;
        // A window opened about the usual first day tells when the rains began this year.
        let opened_near = self.window_opened.filter(|opened| {
            let days = opened.signed_duration_since(start).num_days();
            days.abs() <= i64::from(SHIFT_DAYS_MAX)
        });
        Some(Rains {
            start: opened_near.unwrap_or(start).min(end),
            end,
        })
    }

    /// The days about the usual beginning of the rains that this day lies in, or of the next.
    #[must_use]
    pub fn watch(&self, day: NaiveDate) -> Option<Watch> {
        let usual = self.usual(day)?;
        let earliest = before(usual.start, SHIFT_DAYS_MAX)?;
        Some(Watch {
            from: before(usual.start, WATCH_BEFORE_DAYS)?,
            until: after(usual.start, SHIFT_DAYS_MAX)?.min(usual.end),
            opened_on: self
                .window_opened
                .filter(|opened| (earliest..=usual.end).contains(opened)),
        })
    }

    /// Whether a planting that is meant to begin on one day may belong to a window that was opened on
    /// another. Where it rains twice a year both lie in, or before, the same rains.
    pub(crate) fn may_be_one(&self, planned_on: NaiveDate, opened_on: NaiveDate) -> bool {
        self.second_rains.is_none() || self.usual(planned_on) == self.usual(opened_on)
    }

    /// The rains on this day or the next after it, by their usual days.
    fn usual(&self, day: NaiveDate) -> Option<Rains> {
        let first = self.rains_start.zip(self.rains_end);
        let each = first.into_iter().chain(self.second_rains);
        each.filter_map(|(start, end)| yearly(start, end, day))
            .min_by_key(|rains| rains.end)
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

/// Of rains that come each year, those on this day or the next after it.
fn yearly(start: (u32, u32), end: (u32, u32), day: NaiveDate) -> Option<Rains> {
    // Rains that began last year may still fall; those that begin next year may be next.
    (-1..=1).find_map(|shift| {
        let year = day.year().checked_add(shift)?;
        let end_year = if start <= end {
            year
        } else {
            year.checked_add(1)?
        };
        let rains = Rains {
            start: in_year(year, start)?,
            end: in_year(end_year, end)?,
        };
        (day <= rains.end).then_some(rains)
    })
}

#[cfg(test)]
mod tests {
    use super::is_one_season;

    #[test]
    fn a_season_of_planting_is_four_months() {
        let day = |text: &str| text.parse().unwrap();
        let june = day("2027-06-01");
        for (other, is_one) in [
            ("2027-02-01", true),
            ("2027-01-31", false),
            ("2027-06-01", true),
            ("2027-09-29", true),
            ("2027-09-30", false),
        ] {
            assert_eq!(is_one_season(june, day(other)), is_one, "{other}");
        }
    }
}
