//! Days to come: jobs of each group by their last day, days for plants and fertiliser, and what
//! advisers owe. No name is in a title: a calendar is shown on walls and shared.

use std::collections::BTreeMap;

use budwood_scheduler::{Group, TaskKind};
use chrono::NaiveDate;

use super::{Parcel, table};
use crate::{
    engine::view::View,
    parcel::days::Day,
    sheet::{Cell, ColumnKind},
    words::message::Audience,
};

impl View<'_> {
    pub(super) fn calendar_parcel(self) -> Parcel {
        let mut days: Vec<Day> = Vec::new();
        for group in self.world.directory.groups() {
            days.extend(self.jobs_to_come(group));
            let gathered = [
                (group.book.pick_up, "plants", "plants are given out"),
                (
                    group.book.buying.as_ref().and_then(|buying| buying.on),
                    "buying",
                    "fertiliser is bought together",
                ),
            ];
            for (on, what, title) in gathered {
                days.extend(on.map(|on| Day {
                    uid: format!("{what}-{}@budwood", group.id),
                    on,
                    title: format!("{}: {title}", group.name),
                }));
            }
        }
        for promise in self.world.promises.values() {
            let group = match promise.to {
                Audience::Person(person) => self.person(person).and_then(|person| person.group),
                Audience::Group(group) => Some(group),
            };
            days.push(Day {
                uid: format!("promise-{}@budwood", promise.message.0),
                on: promise.on,
                title: format!("{}: a promise is due", self.group_name(group)),
            });
        }
        days.sort_by(|one, other| (one.on, &one.uid).cmp(&(other.on, &other.uid)));
        let mut sheet = table(
            "days",
            "Days to come",
            &[("day", ColumnKind::Day), ("what", ColumnKind::Words)],
        );
        let rows = days.iter();
        sheet.rows = rows
            .map(|day| vec![Cell::Day(day.on), day.title.as_str().into()])
            .collect();
        Parcel {
            sheets: vec![sheet],
            days: Some(days),
            notes: vec![
                "An entry keeps its id: take the file in again when days have moved. Days of jobs \
                 are the last ones on which they are done in time."
                    .to_owned(),
            ],
            ..Parcel::default()
        }
    }

    /// The next last day of each job of a group, and on how many blocks it is.
    fn jobs_to_come(self, group: &Group) -> Vec<Day> {
        let table = self.table(group);
        let today = self.today_in(group);
        let mut next: BTreeMap<TaskKind, (NaiveDate, u32)> = BTreeMap::new();
        for farmer in &table.farmers {
            for stand in &farmer.stands {
                let jobs = farmer.jobs(stand).iter();
                for task in jobs.filter(|task| !task.only_tells() && task.late_after >= today) {
                    let known = next.entry(task.kind).or_insert((task.late_after, 0));
                    match task.late_after.cmp(&known.0) {
                        std::cmp::Ordering::Less => *known = (task.late_after, 1),
                        std::cmp::Ordering::Equal => known.1 += 1,
                        std::cmp::Ordering::Greater => {}
                    }
                }
            }
        }
        let tongue = self.setup.texts.tongue(&["en"]);
        let day = |(kind, (on, blocks)): (TaskKind, (NaiveDate, u32))| Day {
            uid: format!("due-{}-{}@budwood", group.id, kind.name()),
            on,
            title: format!("{}: {} ({blocks} blocks)", group.name, tongue.job(kind)),
        };
        next.into_iter().map(day).collect()
    }
}
