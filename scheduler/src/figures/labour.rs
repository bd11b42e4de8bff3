//! Work of the days to come, how long it takes, and when everybody is busy with something else.

use alloc::vec::Vec;

use chrono::{Datelike, NaiveDate, TimeDelta};

use super::{Figure, Name, Table, Window};
use crate::{
    handbook::calendar::Calendar,
    sums::days::in_year,
    words::{id::BlockId, job::TaskKind},
};

/// A job to come, with the days that one person needs for it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Labour {
    /// Where.
    pub block: BlockId,
    /// Which.
    pub task: TaskKind,
    /// From when on; today where it is due already.
    pub on: NaiveDate,
    /// Working days; none where the handbook or the size of the land does not tell.
    pub days: Option<f64>,
}

impl Table<'_> {
    /// The jobs of so many days to come, the first first.
    #[must_use]
    pub fn labour(&self, days: i64) -> Figure<Vec<Labour>> {
        let mut jobs = Vec::new();
        for farmer in &self.farmers {
            let until = farmer.today + TimeDelta::days(days);
            for stand in &farmer.stands {
                let to_come = farmer.jobs(stand).iter().filter(|job| job.due <= until);
                jobs.extend(to_come.map(|job| {
                    let hectares = stand.block.hectares();
                    let norm = farmer.calendar.and_then(|one| norm(one, job.kind));
                    let work = Labour {
                        block: stand.block.id,
                        task: job.kind,
                        on: job.due.max(farmer.today),
                        days: norm.zip(hectares).map(|(norm, size)| norm * size),
                    };
                    (job.due, work)
                }));
            }
        }
        jobs.sort_by_key(|(due, _)| *due);
        let jobs = jobs.into_iter().map(|(_, work)| work).collect();
        self.figure(Name::Labour, Window::ALL, jobs)
    }
}

fn norm(calendar: &Calendar, task: TaskKind) -> Option<f64> {
    let found = calendar.labour.iter().find(|norm| norm.task == task);
    found.map(|norm| norm.days_per_ha)
}

/// The first weeks within so many days in which people have no time, by the calendar of the place.
#[must_use]
pub fn busy_weeks(
    calendar: &Calendar,
    today: NaiveDate,
    days: i64,
) -> Option<(NaiveDate, NaiveDate)> {
    let until = today + TimeDelta::days(days);
    // One that began last year may go on into this one.
    let years = [today.year() - 1, today.year(), today.year() + 1];
    let weeks = calendar.busy_weeks.iter().flat_map(|busy| {
        years.into_iter().filter_map(|year| {
            let from = in_year(year, busy.from)?;
            let ends = in_year(year, busy.until)?;
            let ends = if ends < from {
                in_year(year + 1, busy.until)?
            } else {
                ends
            };
            Some((from, ends))
        })
    });
    weeks
        .filter(|(from, ends)| *from <= until && *ends >= today)
        .min()
}

#[cfg(test)]
mod tests {
    use super::busy_weeks;
    use crate::handbook::calendar::{BusyWeeks, Calendar, profiles};

    #[test]
    fn busy_weeks_are_those_of_any_year() {
        let mut calendar = Calendar::parse(profiles::FAO).unwrap();
        calendar.busy_weeks.push(BusyWeeks {
            from: (12, 20),
            until: (1, 5),
        });
        let day = |text: &str| text.parse().unwrap();
        let busy = |today: &str| busy_weeks(&calendar, day(today), 30);
        let turn = Some((day("2026-12-20"), day("2027-01-05")));
        assert_eq!(busy("2026-11-19"), None, "one day too far");
        assert_eq!(busy("2026-11-20"), turn);
        assert_eq!(busy("2027-01-05"), turn, "its last day");
        assert_eq!(busy("2027-01-06"), None);
    }
}
