//! What the day brings: texts that wait, sickness that gathers, promises, visits, the line.

use budwood_scheduler::{Person, group::visit::visits};

use super::Page;
use crate::{
    engine::{
        looks::{Cell, Grid, Look, Part, heads, page},
        questions::{figures::Names, waiting::concern},
        roles::{self, Verb},
        view::View,
    },
    wording::{Key, Value, visit},
    words::{limits, matter::Matter, message::Audience},
};

impl<'a> View<'a> {
    pub(super) fn today_page(self, viewer: &'a Person) -> Page {
        let mut parts = Vec::new();
        if roles::may(viewer.role, Verb::ReadQueue) {
            parts.push(self.waiting_part(viewer));
        }
        parts.push(self.clusters_part(viewer));
        if roles::may(viewer.role, Verb::Promise) {
            parts.push(self.promises_part(viewer));
        }
        parts.push(self.visits_part(viewer));
        if roles::may(viewer.role, Verb::LookAtNumbers) {
            parts.extend(self.line_parts());
        }
        Page::new(page("page-today"), parts)
    }

    /// The texts that wait, with their age.
    pub(super) fn waiting_part(self, viewer: &Person) -> Part {
        let waiting = self.waiting_for(viewer);
        if waiting.is_empty() {
            return Part::Note(page("page-none-waits"));
        }
        let row = |matter: &&Matter| {
            let sender = self.person(matter.person);
            let name = sender.map_or("", |sender| &sender.name);
            let group = sender.and_then(|sender| sender.group);
            vec![
                Cell::of(name).to(Look::Queue(Some(matter.message))),
                Cell::of(self.group_name(group)),
                Cell::of(concern(matter.concern)),
                Cell::of(self.hours_since(matter.at)).marked(self.age(matter)),
            ]
        };
        Part::Table(Grid {
            title: page("page-waiting"),
            head: heads(&["page-who", "page-group", "page-why", "page-hours"]),
            rows: waiting.iter().map(row).collect(),
        })
    }

    /// A word for how old a text is: beyond the first bound old, beyond the last very old.
    fn age(self, matter: &Matter) -> Option<Key> {
        let hours = self.hours_since(matter.at);
        let [old, very_old] = limits::WAITING_HOURS;
        if hours >= very_old {
            Some(Key::Page("page-very-old"))
        } else {
            (hours >= old).then_some(Key::Page("page-old"))
        }
    }

    fn clusters_part(self, viewer: &Person) -> Part {
        let mut rows = Vec::new();
        for group in self.groups_of(viewer) {
            for cluster in self.clusters_of(group.id, self.today_in(group)) {
                rows.push(vec![
                    Cell::of(group.name.as_str()).to(Look::Sick),
                    Cell::of(cluster.ailment),
                    Cell::of(cluster.reports),
                    Cell::of(Value::DayYear(cluster.since)),
                ]);
            }
        }
        if rows.is_empty() {
            return Part::Note(page("page-none-gathers"));
        }
        Part::Table(Grid {
            title: page("page-gathers"),
            head: heads(&["page-group", "page-sickness", "page-reports", "page-since"]),
            rows,
        })
    }

    fn promises_part(self, viewer: &Person) -> Part {
        let promises = self.promises_of(viewer);
        if promises.is_empty() {
            return Part::Note(page("page-none-promised"));
        }
        let today = self.today_of(viewer.id);
        let rows = promises.into_iter().map(|promise| {
            let to = match &promise.to {
                Audience::Person(person) => {
                    let name = self.person(*person).map_or("", |person| &person.name);
                    Cell::of(name).to(Look::Person(*person))
                }
                Audience::Group(group) => Cell::of(self.group_name(Some(*group))),
            };
            let late = (promise.on < today).then_some(Key::Page("page-late"));
            vec![
                to,
                Cell::of(promise.number),
                Cell::of(Value::DayYear(promise.on)).marked(late),
                Cell::of(promise.words.as_str()),
            ]
        });
        Part::Table(Grid {
            title: page("page-promises"),
            head: heads(&["page-to-whom", "page-number", "page-by", "page-words"]),
            rows: rows.collect(),
        })
    }

    fn visits_part(self, viewer: &Person) -> Part {
        let names = Names::of_all(self, viewer);
        let groups = self.groups_of(viewer);
        let findings: Vec<_> = groups.flat_map(|group| self.findings_of(group)).collect();
        let rows = visits(&findings).into_iter().take(limits::PAGE_ROWS);
        let rows = rows.map(|one| {
            let name = names.shown(one.person);
            let group = self.person(one.person).and_then(|person| person.group);
            vec![
                Cell::of(name).to(Look::Person(one.person)),
                Cell::of(self.group_name(group)),
                Cell::of(visit("", &one.reason)),
            ]
        });
        let rows: Vec<Vec<Cell>> = rows.collect();
        if rows.is_empty() {
            return Part::Note(page("page-none-to-visit"));
        }
        Part::Table(Grid {
            title: page("page-visits"),
            head: heads(&["page-who", "page-group", "page-why"]),
            rows,
        })
    }
}
