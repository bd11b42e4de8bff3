//! Seasons and rain: the usual rains of each group, the window, what was told, the weeks to come.

use std::collections::BTreeMap;

use budwood_parser::Wetness;
use budwood_scheduler::{Group, Person, TaskKind};
use chrono::{NaiveDate, TimeDelta};

use super::Page;
use crate::{
    args,
    engine::{
        looks::{Cell, Grid, Look, Part, heads, page, page_of},
        questions::{figures::Names, tasks::season_of},
        view::View,
    },
    wording::{Phrase, Value},
    words::limits,
};

/// Reports of rain so old are still shown.
const RAIN_DAYS: i64 = 28;

/// So many weeks ahead are shown.
const WEEKS: i64 = 8;

impl<'a> View<'a> {
    pub(super) fn season_page(self, viewer: &'a Person) -> Page {
        let groups: Vec<&Group> = self.groups_of(viewer).collect();
        let rows = groups.iter().map(|group| self.rains_row(group));
        let mut parts = vec![Part::Table(Grid {
            title: page("page-rains"),
            head: heads(&[
                "page-group",
                "page-rains-begin",
                "page-rains-end",
                "page-window",
                "page-rain-told",
            ]),
            rows: rows.collect(),
        })];
        let names = Names::of_all(self, viewer);
        parts.push(self.rain_reports(&groups, &names));
        parts.extend(groups.iter().map(|group| self.weeks_ahead(group)));
        Page::new(page("page-season"), parts)
    }

    fn rains_row(self, group: &Group) -> Vec<Cell> {
        let today = self.today_in(group);
        let rains = season_of(group).rains(today);
        let day = |day: Option<NaiveDate>| {
            Cell::of(day.map_or_else(|| page("page-unknown"), Value::DayYear))
        };
        let window = match group.window_opened {
            Some(on) => page_of("page-open-since", args! { "day" => Value::DayYear(on) }),
            None => page("page-window-shut"),
        };
        let told = self.rain_told(group.id, today);
        vec![
            Cell::of(group.name.as_str()).to(Look::Group(group.name.clone())),
            day(rains.map(|rains| rains.start)),
            day(rains.map(|rains| rains.end)),
            Cell::of(window),
            Cell::of(told.map_or_else(|| page("page-nothing"), Value::from)),
        ]
    }

    fn rain_reports(self, groups: &[&Group], names: &Names<'_>) -> Part {
        let mut told = Vec::new();
        for group in groups {
            let since = self.today_in(group) - TimeDelta::days(RAIN_DAYS);
            let recent = self.rains_of(group.id).into_iter();
            let recent = recent.filter(|(_, rain)| rain.on >= since);
            told.extend(recent.map(|(who, rain)| (rain.on, *group, who, rain)));
        }
        told.sort_by_key(|(on, group, who, _)| (std::cmp::Reverse(*on), group.id, *who));
        let rows = told.into_iter().take(limits::PAGE_ROWS);
        let rows = rows.map(|(on, group, who, rain)| {
            let wetness = match rain.wetness {
                Some(Wetness::Soaked) => page("page-soaked"),
                Some(Wetness::None) => page("page-dry"),
                None => Value::nothing(),
            };
            let millimetres = rain.mm.map_or_else(Value::nothing, Value::from);
            vec![
                Cell::of(Value::DayYear(on)),
                Cell::of(group.name.as_str()),
                Cell::of(Value::name(&names.shown(who))).to(Look::Person(who)),
                Cell::of(wetness),
                Cell::of(millimetres),
            ]
        });
        let rows: Vec<Vec<Cell>> = rows.collect();
        if rows.is_empty() {
            return Part::Note(page("page-none-rain"));
        }
        Part::Table(Grid {
            title: page("page-rain-reports"),
            head: heads(&[
                "page-day",
                "page-group",
                "page-who",
                "page-ground",
                "page-millimetres",
            ]),
            rows,
        })
    }

    /// The jobs that become due in the next weeks, with how many blocks.
    fn weeks_ahead(self, group: &'a Group) -> Part {
        let today = self.today_in(group);
        let mut weeks: BTreeMap<i64, BTreeMap<TaskKind, usize>> = BTreeMap::new();
        for block in self.blocks_of_group(group) {
            for task in self.tasks_of(block.id, today) {
                let week = (task.due - today).num_days().div_euclid(7).max(0);
                if week < WEEKS {
                    let week = weeks.entry(week).or_default();
                    *week.entry(task.kind).or_default() += 1;
                }
            }
        }
        let rows = weeks.into_iter().map(|(week, jobs)| {
            let from = today + TimeDelta::days(week * 7);
            let jobs = jobs.into_iter().map(|(task, count)| {
                let args = args! { "task" => task, "count" => count };
                Phrase::new(crate::wording::Key::Page("page-job-count"), args).into()
            });
            vec![
                Cell::of(Value::DayYear(from)),
                Cell::of(Value::List(jobs.collect())),
            ]
        });
        let rows: Vec<Vec<Cell>> = rows.collect();
        let args = args! { "group" => Value::name(&group.name) };
        Part::Table(Grid {
            title: page_of("page-ahead", args),
            head: heads(&["page-week-from", "page-jobs-blocks"]),
            rows,
        })
    }
}
