//! Plants and fertiliser: wanted, ordered, shared out; who gets how much.

use budwood_scheduler::{Group, Person, figures::by_clone};

use super::Page;
use crate::{
    args,
    engine::{
        looks::{Cell, Grid, Look, Part, heads, page, page_of},
        questions::{figures::Names, losses::clone_name},
        roles::{self, Verb},
        view::View,
    },
    wording::Value,
};

impl<'a> View<'a> {
    pub(super) fn stock_page(self, viewer: &'a Person) -> Page {
        let mut parts = Vec::new();
        for group in self.groups_by(viewer, Verb::LookAtPlants) {
            parts.push(self.plants_part(group));
            parts.push(self.allotted_part(group));
            if roles::may(viewer.role, Verb::LookAtBooks) {
                parts.push(self.feed_part(viewer, group));
            }
        }
        Page::new(page("page-stock"), parts)
    }

    fn plants_part(self, group: &'a Group) -> Part {
        let wanted = self.table(group).wanted(None).value;
        let args = args! { "group" => Value::name(&group.name) };
        if wanted.is_empty() {
            return Part::Note(page_of("page-none-wanted", args));
        }
        let firm: Vec<_> = wanted.iter().filter(|one| one.is_firm).cloned().collect();
        let firm = by_clone(&firm);
        let rows = by_clone(&wanted).into_iter().map(|(clone, day, plants)| {
            let same = firm.iter().find(|(one, on, _)| *one == clone && *on == day);
            let firm = same.map_or(0, |(_, _, plants)| *plants);
            vec![
                Cell::of(clone_name(clone)),
                Cell::of(Value::DayYear(day)),
                Cell::of(plants),
                Cell::of(firm),
                Cell::of(plants.saturating_sub(firm)),
            ]
        });
        Part::Table(Grid {
            title: page_of("page-plants", args),
            head: heads(&[
                "page-clone",
                "page-planting",
                "page-plants-all",
                "page-firm",
                "page-wished",
            ]),
            rows: rows.collect(),
        })
    }

    fn allotted_part(self, group: &'a Group) -> Part {
        let allotted = self.table(group).allotted(&group.book).value;
        let args = args! { "group" => Value::name(&group.name) };
        if allotted.is_empty() {
            return Part::Note(page_of("page-none-raised", args));
        }
        let rows = allotted.into_iter().map(|one| {
            let shared = one.shares.iter().map(|(_, plants)| *plants);
            vec![
                Cell::of(clone_name(one.clone_name.as_deref())),
                Cell::of(one.supply),
                Cell::of(one.ready_on.map_or_else(Value::nothing, Value::DayYear)),
                Cell::of(one.ordered),
                Cell::of(shared.fold(0, u32::saturating_add)),
            ]
        });
        Part::Table(Grid {
            title: page_of("page-nursery", args),
            head: heads(&[
                "page-clone",
                "page-supply",
                "page-ready-on",
                "page-ordered",
                "page-shared",
            ]),
            rows: rows.collect(),
        })
    }

    fn feed_part(self, viewer: &Person, group: &'a Group) -> Part {
        let feed = self.table(group).feed_due().value;
        let args = args! { "group" => Value::name(&group.name) };
        let Some(bags) = feed.bags.filter(|_| !feed.shares.is_empty()) else {
            return Part::Note(page_of("page-none-feed", args));
        };
        let names = Names::of(self, [group]);
        let may_open = roles::may(viewer.role, Verb::Look);
        let rows = feed.shares.iter().map(|(person, kilograms)| {
            let name = Cell::of(Value::name(&names.shown(*person)));
            let name = if may_open {
                name.to(Look::Person(*person))
            } else {
                name
            };
            vec![name, Cell::of(*kilograms)]
        });
        let mut rows: Vec<Vec<Cell>> = rows.collect();
        rows.push(vec![Cell::of(page("page-sum")), Cell::of(feed.kilograms())]);
        let args = args! {
            "group" => Value::name(&group.name),
            "pooled" => bags.pooled,
            "alone" => bags.alone,
        };
        Part::Table(Grid {
            title: page_of("page-feed", args),
            head: heads(&["page-who", "page-kilograms"]),
            rows,
        })
    }
}
