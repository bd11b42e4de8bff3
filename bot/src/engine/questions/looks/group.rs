//! A group: its season by weeks, its people, the texts to come.

use budwood_scheduler::{
    Block, Body, Group, Person, PersonId, Source,
    figures::{
        Farmer,
        season::{Told, What, first_day},
    },
};
use chrono::{Days, NaiveDate, TimeDelta};

use super::Page;
use crate::{
    engine::{
        looks::{Cell, Grid, Look, Part, Weeks, heads, page},
        questions::figures::Names,
        view::View,
    },
    wording::{Key, Value, living},
    words::limits,
};

impl<'a> View<'a> {
    pub(super) fn group_page(self, viewer: &'a Person, name: &str) -> Option<Page> {
        let mut groups = self.groups_of(viewer);
        let group = groups.find(|group| group.name == name)?;
        let names = Names::of(self, [group]);
        let mut parts = vec![
            Part::Note(self.status_words(group, &names)),
            self.group_figures(group, &names),
            self.season_weeks(group, &names),
            self.members_part(group, &names),
        ];
        parts.push(self.coming_part(group, &names));
        Some(Page::new(Value::name(&group.name), parts))
    }

    fn name_cell(self, names: &Names<'a>, person: PersonId) -> Cell {
        Cell::of(Value::name(&names.shown(person))).to(Look::Person(person))
    }

    /// Weeks across, farmers down.
    fn season_weeks(self, group: &'a Group, names: &Names<'a>) -> Part {
        let table = self.table(group);
        let blocks: usize = table.farmers.iter().map(|one| one.stands.len()).sum();
        let each = (limits::SEASON_FACTS / blocks.max(1)).max(1);
        let told = |block: &Block, from: NaiveDate| self.told_since(block, from, each);
        let season = table.season(limits::SEASON_WEEKS, told).value;
        let first = first_day(self.today_in(group), limits::SEASON_WEEKS);
        let weeks = 0..u64::try_from(limits::SEASON_WEEKS).unwrap_or_default();
        let from = weeks.filter_map(|week| first.checked_add_days(Days::new(week * 7)));
        Part::Weeks(Weeks {
            from: from.collect(),
            rows: season
                .into_iter()
                .map(|(person, weeks)| (self.name_cell(names, person), weeks))
                .collect(),
        })
    }

    /// What was told of a block from a day on, the latest `most` facts.
    fn told_since(self, block: &Block, from: NaiveDate, most: usize) -> Vec<Told> {
        let facts = self.state(block.id).map(|state| &state.facts);
        let last = facts.into_iter().flat_map(|facts| facts.iter().rev());
        let events = last.take(most).filter_map(|fact| self.event(*fact));
        // What became known before that day tells of no later one.
        let recent = events.take_while(|event| event.at.date_naive() >= from);
        let told = recent.filter_map(|event| {
            let by = match event.source {
                Source::Visit => What::Seen,
                Source::OwnText | Source::Leader | Source::Sheet | Source::Bot => What::Done,
            };
            if let Body::Reported { on, .. } = event.body {
                let on = on.day();
                return Some(Told { on, what: by });
            }
            if let Body::TaskDone { on, .. } = event.body {
                return Some(Told { on, what: by });
            }
            let Body::Nudged { on, .. } = event.body else {
                return None;
            };
            let what = What::Asked;
            Some(Told { on, what })
        });
        told.collect()
    }

    fn members_part(self, group: &'a Group, names: &Names<'a>) -> Part {
        let table = self.table(group);
        let row = |farmer: &Farmer<'a>| {
            let mut sum = budwood_scheduler::land::block::Living::default();
            let (mut due, mut late) = (Vec::new(), 0_usize);
            for stand in &farmer.stands {
                sum = sum.with(stand.state.living());
                let jobs = farmer.jobs(stand).iter();
                for task in jobs.filter(|task| task.due <= farmer.today) {
                    if farmer.late_job(stand, task, table.rules).is_some() {
                        late += 1;
                    }
                    let job = Value::from(task.kind);
                    if !due.contains(&job) {
                        due.push(job);
                    }
                }
            }
            let heard = farmer
                .heard_on()
                .map(|on| Value::day_seen(on, farmer.today));
            let mark = (late > 0).then_some(Key::Page("page-late"));
            vec![
                self.name_cell(names, farmer.person.id),
                Cell::of(farmer.stands.len()),
                if sum.planted > 0 {
                    Cell::of(living(sum))
                } else {
                    Cell::empty()
                },
                Cell::of(sum.gaps),
                Cell::of(Value::List(due)),
                Cell::of(late).marked(mark),
                Cell::of(heard.unwrap_or_else(|| page("page-never"))),
            ]
        };
        Part::Table(Grid {
            title: page("page-members"),
            head: heads(&[
                "page-who",
                "page-blocks",
                "page-living",
                "page-gaps",
                "page-due-jobs",
                "page-late-jobs",
                "page-heard",
            ]),
            rows: table.farmers.iter().map(row).collect(),
        })
    }

    /// The texts that would go in the next days, unless the work is told before.
    fn coming_part(self, group: &'a Group, names: &Names<'a>) -> Part {
        let today = self.today_in(group);
        let until = today + TimeDelta::days(limits::AHEAD_DAYS);
        let mut coming = Vec::new();
        for block in self.blocks_of_group(group) {
            if self.nudged_about(block.id).is_none() {
                continue;
            }
            let may = self.candidates(block.id, today).into_iter();
            let soon = may.filter(|one| one.on.max(one.task.due) <= until);
            coming.extend(soon.map(|one| (one.on.max(today), block, one)));
        }
        coming.sort_by_key(|(on, block, _)| (*on, block.owner, block.id));
        let rows = coming.into_iter().take(limits::PAGE_ROWS);
        let rows = rows.map(|(on, block, one)| {
            let why = if one.is_again {
                page("page-why-again")
            } else {
                page("page-why-due")
            };
            vec![
                self.name_cell(names, block.owner),
                Cell::of(Value::name(&block.name)),
                Cell::of(one.task.kind),
                Cell::of(Value::day_seen(one.task.due, today)),
                Cell::of(Value::day_seen(on, today)),
                Cell::of(why),
            ]
        });
        let rows: Vec<Vec<Cell>> = rows.collect();
        if rows.is_empty() {
            return Part::Note(page("page-none-coming"));
        }
        Part::Table(Grid {
            title: page("page-coming"),
            head: heads(&[
                "page-who",
                "page-block",
                "page-job",
                "page-due-day",
                "page-not-before",
                "page-why",
            ]),
            rows,
        })
    }
}
