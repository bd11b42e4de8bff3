//! All groups, a row each, with the figures of STATUS.

use budwood_scheduler::{Group, Person, figures::Name};

use super::Page;
use crate::{
    args,
    engine::{
        looks::{Cell, Grid, Look, Part, heads, page, page_of},
        questions::{asked::Asked, figures::Names},
        view::View,
    },
    wording::{Phrase, Value},
};

const HEADS: [&str; 11] = [
    "page-group",
    "page-farmers",
    "page-planted-farmers",
    "page-alive-pct",
    "page-visited-pct",
    "page-gaps",
    "page-due",
    "page-late-jobs",
    "page-quiet",
    "page-sick-farmers",
    "page-unreached",
];

impl<'a> View<'a> {
    pub(super) fn groups_page(self, viewer: &'a Person) -> Page {
        let names = Names::of_all(self, viewer);
        let groups = self.groups_of(viewer);
        let rows = groups.map(|group| self.group_row(group, &names));
        let grid = Grid {
            title: page("page-groups"),
            head: heads(&HEADS),
            rows: rows.collect(),
        };
        Page::new(page("page-groups"), vec![Part::Table(grid)])
    }

    /// The figures of one group as a table.
    pub(super) fn group_figures(self, group: &'a Group, names: &Names<'a>) -> Part {
        Part::Table(Grid {
            title: page("page-figures"),
            head: heads(&HEADS),
            rows: vec![self.group_row(group, names)],
        })
    }

    fn group_row(self, group: &'a Group, names: &Names<'a>) -> Vec<Cell> {
        let asked = Asked {
            group,
            table: self.table(group),
            names,
        };
        let table = &asked.table;
        let living = table.living().value;
        let pct = |pct: Option<u32>| match pct {
            Some(pct) => Cell::of(page_of("page-pct", args! { "pct" => pct })),
            None => Cell::of(page("page-unknown")),
        };
        let jobs = table.jobs().value;
        let due = jobs
            .due
            .values()
            .fold(0, |sum: u32, one| sum.saturating_add(*one));
        let unreached = table.farmers.iter();
        let unreached = unreached.filter(|one| !one.has_phone || !one.person.consent.is_given());
        vec![
            Cell::of(group.name.as_str()).to(Look::Group(group.name.clone())),
            Cell::of(table.farmers().value),
            Cell::of(table.planted().value),
            pct(living.survival_pct()),
            pct(self.visited_pct(table, Name::Living)),
            Cell::of(living.gaps),
            Cell::of(due),
            Cell::of(jobs.list.len()),
            Cell::of(table.quiet().value.len()),
            Cell::of(self.sick_people(&asked).0.len()),
            Cell::of(unreached.count()),
        ]
    }

    /// STATUS of a group, word for word as it goes by text.
    pub(super) fn status_words(self, group: &'a Group, names: &Names<'a>) -> Value {
        let asked = Asked {
            group,
            table: self.table(group),
            names,
        };
        let status: Phrase = self.status(&asked);
        status.into()
    }
}
