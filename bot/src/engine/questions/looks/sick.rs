//! Where trees are sick: a plain map of the blocks with a point, and the same as a table.

use budwood_parser::Ailment;
use budwood_scheduler::{
    Block, Person, Source,
    figures::{SICK_DAYS, is_sick},
};
use chrono::NaiveDate;

use super::Page;
use crate::{
    engine::{
        looks::{Cell, Grid, Look, Part, Rests, Spot, Spots, family, heads, page},
        questions::figures::Names,
        view::View,
    },
    wording::{Key, Value},
};

/// A block with sick trees.
struct Sick<'a> {
    block: &'a Block,
    ailment: Ailment,
    trees: Option<u32>,
    on: NaiveDate,
    is_seen: bool,
    is_news: bool,
}

/// Sickness that was told of in these days is on the map.
const DAYS: i64 = 180;

/// And in these it is news.
const NEWS_DAYS: i64 = SICK_DAYS;

impl<'a> View<'a> {
    pub(super) fn sick_page(self, viewer: &'a Person) -> Page {
        let names = Names::of_all(self, viewer);
        let groups = self.groups_of(viewer);
        let blocks = groups.flat_map(|group| self.blocks_of_group(group));
        let blocks: Vec<&Block> = blocks.collect();
        let sick: Vec<Sick<'_>> = blocks
            .iter()
            .flat_map(|block| self.sick_on(block))
            .collect();
        let mut spots: Vec<Spot> = Vec::new();
        let mut rows = Vec::new();
        for (number, one) in (1..).zip(&sick) {
            let point = one.block.point;
            spots.extend(point.map(|point| Spot {
                number,
                latitude: point.latitude,
                longitude: point.longitude,
                family: family(one.ailment),
                is_seen: one.is_seen,
            }));
            rows.push(self.sick_row(number, one, &names));
        }
        let is_sick = |block: &Block| sick.iter().any(|one| one.block.id == block.id);
        let well = blocks.iter().filter(|block| !is_sick(block));
        spots.extend(well.filter_map(|block| {
            let point = block.point?;
            Some(Spot {
                number: 0,
                latitude: point.latitude,
                longitude: point.longitude,
                family: None,
                is_seen: false,
            })
        }));
        let mut parts = Vec::new();
        if !spots.is_empty() {
            parts.push(Part::Spots(Spots { spots }));
        }
        parts.push(if rows.is_empty() {
            Part::Note(page("page-none-sick"))
        } else {
            Part::Table(Grid {
                title: page("page-sick"),
                head: heads(&[
                    "page-number",
                    "page-who",
                    "page-block",
                    "page-sickness",
                    "page-trees",
                    "page-day",
                    "page-seen-on-visit",
                    "page-on-map",
                ]),
                rows,
            })
        });
        Page::new(page("page-sick"), parts)
    }

    fn sick_row(self, number: usize, one: &Sick<'_>, names: &Names<'_>) -> Vec<Cell> {
        let trees = one.trees.map_or_else(Value::nothing, Value::from);
        let today = self.today_of(one.block.owner);
        let yes = |is: bool| page(if is { "page-yes" } else { "page-no" });
        vec![
            Cell::of(number),
            Cell::of(Value::name(&names.shown(one.block.owner))).to(Look::Person(one.block.owner)),
            Cell::of(Value::name(&one.block.name)).to(Look::Under(one.block.id, Rests::Sick)),
            Cell::of(one.ailment),
            Cell::of(trees),
            Cell::of(Value::day_seen(one.on, today))
                .marked(one.is_news.then_some(Key::Page("page-new"))),
            Cell::of(yes(one.is_seen)),
            Cell::of(yes(one.block.point.is_some())),
        ]
    }

    /// What is not known to be over on a block.
    fn sick_on(self, block: &'a Block) -> Vec<Sick<'a>> {
        let Some(state) = self.state(block.id) else {
            return Vec::new();
        };
        let today = self.today_of(block.owner);
        let open = state.sick.iter();
        let open = open.filter(|(ailment, count)| is_sick(state, **ailment, **count, today, DAYS));
        let open: Vec<_> = open.collect();
        if open.is_empty() {
            return Vec::new();
        }
        let looks = self.look(&[block]);
        let was_seen = |ailment: Ailment| {
            let sightings = looks.iter().flat_map(|(_, look)| &look.sightings);
            let mut of_it = sightings.filter(|(_, one)| one.ailment == ailment);
            of_it.any(|(_, one)| one.source == Source::Visit)
        };
        let found = open.into_iter().map(|(ailment, count)| Sick {
            block,
            ailment: *ailment,
            trees: count.trees,
            on: count.on,
            is_seen: was_seen(*ailment),
            is_news: (today - count.on).num_days() <= NEWS_DAYS,
        });
        found.collect()
    }
}
