//! The wall calendar of a group: week by week the jobs that are due, as far as they are known today.

use std::collections::BTreeMap;

use budwood_scheduler::{Group, TaskKind};
use chrono::{Datelike, NaiveDate, TimeDelta};

use super::maker::Maker;
use crate::{
    args,
    sheet::{Cell, ColumnKind, Sheet},
    wording::Paper,
    words::printed::SheetKind,
};

/// Half a year: a season and what follows it.
const WEEKS: i64 = 26;

impl Maker<'_> {
    pub(super) fn season(&self) -> Sheet {
        let columns = vec![
            self.column(Paper::ColumnWeek, ColumnKind::Words),
            self.column(Paper::ColumnJobs, ColumnKind::Words),
            self.column(Paper::ColumnRains, ColumnKind::Words),
            self.column(Paper::ColumnNotes, ColumnKind::Blank(30)),
        ];
        let mut sheet = self.begin(SheetKind::Season, Paper::SheetSeason, columns);
        let today = self.view.today_in(self.group);
        let behind = TimeDelta::days(today.weekday().num_days_from_monday().into());
        let jobs = self.jobs_by_day(today);
        for week in 0..WEEKS {
            let from = today - behind + TimeDelta::days(7 * week);
            let to = from + TimeDelta::days(6);
            let mut counts: BTreeMap<TaskKind, u32> = BTreeMap::new();
            for (task, blocks) in jobs.range(from..=to).flat_map(|(_, due)| due) {
                *counts.entry(*task).or_default() += blocks;
            }
            let counts = counts.iter();
            let named = counts.map(|(task, blocks)| format!("{} {blocks}", self.tongue.job(*task)));
            let named: Vec<String> = named.collect();
            let span = format!("{} - {}", self.tongue.day(from), self.tongue.day(to));
            sheet.rows.push(vec![
                span.into(),
                named.join(", ").into(),
                self.rains_in(from, to).into(),
                Cell::Blank,
            ]);
        }
        sheet.notes.push(self.say(Paper::SheetSeasonHow, args! {}));
        sheet
    }

    /// Blocks by the day from which each job is due; what is overdue counts today.
    fn jobs_by_day(&self, today: NaiveDate) -> BTreeMap<NaiveDate, BTreeMap<TaskKind, u32>> {
        let table = self.view.table(self.group);
        let mut jobs: BTreeMap<NaiveDate, BTreeMap<TaskKind, u32>> = BTreeMap::new();
        for farmer in &table.farmers {
            for stand in &farmer.stands {
                for task in farmer.jobs(stand).iter().filter(|task| !task.only_tells()) {
                    let on_day = jobs.entry(task.due.max(today)).or_default();
                    *on_day.entry(task.kind).or_default() += 1;
                }
            }
        }
        jobs
    }

    /// The usual begin and end of the rains, in the week that they are in.
    fn rains_in(&self, from: NaiveDate, to: NaiveDate) -> String {
        let Group {
            rains_start,
            rains_end,
            second_rains,
            ..
        } = self.group;
        let second = second_rains.as_ref();
        let turns = [
            (*rains_start, Paper::RainsBegin),
            (*rains_end, Paper::RainsEnd),
            (second.map(|(start, _)| *start), Paper::RainsBegin),
            (second.map(|(_, end)| *end), Paper::RainsEnd),
        ];
        let is_here = |(month, day): (u32, u32)| {
            let years = [from.year(), to.year()];
            let mut days = years
                .into_iter()
                .filter_map(|year| NaiveDate::from_ymd_opt(year, month, day));
            days.any(|day| (from..=to).contains(&day))
        };
        let here = turns
            .into_iter()
            .filter(|(day, _)| day.is_some_and(is_here));
        let said: Vec<String> = here.map(|(_, paper)| self.say(paper, args! {})).collect();
        said.join(", ")
    }
}
