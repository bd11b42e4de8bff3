//! A farmer with their blocks; the facts under a figure; a fact with the text that told it.

use budwood_scheduler::{
    Block, BlockId, Body, Consent, Event, EventId, MessageId, Person, PersonId, figures::Name,
};
use chrono::NaiveDate;

use super::Page;
use crate::{
    args,
    engine::{
        local_time::civil_day,
        looks::{Cell, Grid, Look, Part, Range, Rests, heads, page, page_of},
        questions::{address::last_digits, losses::letter},
        roles::{self, Verb},
        view::View,
    },
    wording::{Key, Phrase, Ready, Value, clause, living},
    words::limits,
};

impl<'a> View<'a> {
    pub(super) fn farmer_page(self, viewer: &'a Person, id: PersonId) -> Option<Page> {
        let person = self.farmer_looked_at(viewer, id)?;
        let blocks: Vec<&Block> = self.world.directory.blocks_of(id).collect();
        let mut parts = vec![
            Part::Table(self.about_part(viewer, person)),
            Part::Table(self.blocks_part(person, &blocks)),
        ];
        let ranges = self.ranges_of(person, &blocks);
        if !ranges.is_empty() {
            parts.push(Part::Ranges(ranges));
        }
        let facts = self.told_of_blocks(&blocks, |_| true);
        parts.push(self.facts_part(facts, person));
        let mut seen = Page::new(Value::name(&person.name), parts);
        seen.about = Some(id);
        Some(seen)
    }

    fn about_part(self, viewer: &Person, person: &'a Person) -> Grid {
        let farmer = self.farmer(person);
        let consent = match &person.consent {
            Consent::Given { on, .. } => {
                page_of("page-consent-given", args! { "day" => Value::DayYear(*on) })
            }
            Consent::Withdrawn { on, .. } => page_of(
                "page-consent-withdrawn",
                args! { "day" => Value::DayYear(*on) },
            ),
            Consent::Unknown => page("page-consent-unknown"),
        };
        let day = |on: Option<NaiveDate>| {
            let day = on.map(|on| Value::day_seen(on, farmer.today));
            day.unwrap_or_else(|| page("page-never"))
        };
        let group = self.group_name(person.group);
        let mut rows = vec![
            vec![
                Cell::of(page("page-group")),
                Cell::of(group).to(Look::Group(group.to_owned())),
            ],
            vec![Cell::of(page("page-consent")), Cell::of(consent)],
            vec![
                Cell::of(page("page-language")),
                Cell::of(person.language.as_str()),
            ],
            vec![
                Cell::of(page("page-heard")),
                Cell::of(day(farmer.heard_on())),
            ],
        ];
        if farmer.is_in_peace() {
            rows.push(vec![
                Cell::of(page("page-hold")),
                Cell::of(page("page-hold-yes")),
            ]);
        }
        if roles::may(viewer.role, Verb::LookAtNumbers) {
            let numbers = self.world.directory.numbers_of(person.id);
            let digits = numbers.map(|number| Value::from(format!("…{}", last_digits(number))));
            let phones = vec![
                Cell::of(page("page-phones")),
                Cell::of(Value::List(digits.collect())),
            ];
            rows.push(phones);
        }
        Grid {
            title: page("page-about"),
            head: heads(&["page-what", "page-is"]),
            rows,
        }
    }

    fn blocks_part(self, person: &Person, blocks: &[&Block]) -> Grid {
        let today = self.today_of(person.id);
        let row = |block: &&Block| {
            let state = self.state(block.id);
            let stand = state.map(|state| state.living()).unwrap_or_default();
            let planted = state.and_then(|state| state.planted_on());
            let sick = state.map_or(0, |state| {
                let told = state.sick.values().filter_map(|count| count.trees);
                told.fold(0, u32::saturating_add)
            });
            let due = self.tasks_of(block.id, today).into_iter();
            let due = due.filter(|task| task.due <= today);
            let due = due.map(|task| {
                let args = args! { "task" => task.kind, "day" => Value::day_seen(task.due, today) };
                Phrase::new(Key::Page("page-job-on"), args).into()
            });
            vec![
                Cell::of(Value::name(&block.name)),
                Cell::of(block.hectares().map_or_else(Value::nothing, Value::Land)),
                Cell::of(planted.map_or_else(Value::nothing, Value::DayYear)),
                if stand.planted > 0 {
                    Cell::of(living(stand)).to(Look::Under(block.id, Rests::Living))
                } else {
                    Cell::empty()
                },
                Cell::of(stand.gaps),
                Cell::of(sick).to(Look::Under(block.id, Rests::Sick)),
                Cell::of(Value::List(due.collect())),
            ]
        };
        Grid {
            title: page("page-blocks"),
            head: heads(&[
                "page-block",
                "page-land",
                "page-planted-on",
                "page-living",
                "page-gaps",
                "page-sick-trees",
                "page-due-jobs",
            ]),
            rows: blocks.iter().map(row).collect(),
        }
    }

    /// When stands will be ready, where that can be told: the range that READY tells.
    fn ranges_of(self, person: &Person, blocks: &[&Block]) -> Vec<Range> {
        let today = self.today_of(person.id);
        let ranges = blocks.iter().filter_map(|block| {
            if self.state(block.id)?.opened > 0 {
                return None;
            }
            let outlook = self.outlook(block.id, today)?;
            let Ready::Between(earliest, latest) = outlook.ready else {
                return None;
            };
            let seen = outlook.forecast?;
            Some(Range {
                block: block.name.clone(),
                census_on: seen.census_on,
                of: seen.of,
                earliest,
                likely: seen.block.likely,
                latest,
            })
        });
        ranges.collect()
    }

    /// What was told of blocks, the newest first.
    fn told_of_blocks<'b>(
        self,
        blocks: &[&'b Block],
        is_asked: impl Fn(&Event) -> bool,
    ) -> Vec<(&'b Block, Event)> {
        let mut told: Vec<(&Block, Event)> = Vec::new();
        for block in blocks {
            let facts = self.state(block.id).map(|state| &state.facts);
            let last = facts.into_iter().flat_map(|facts| facts.iter().rev());
            let events = last
                .take(limits::FACTS_OF_BLOCK)
                .filter_map(|fact| self.event(*fact))
                .filter(|event| is_asked(event));
            told.extend(events.map(|event| (*block, event)));
        }
        told.sort_by_key(|(_, event)| std::cmp::Reverse((day_told(&event.body), event.id)));
        told
    }

    fn facts_part(self, facts: Vec<(&Block, Event)>, person: &Person) -> Part {
        let today = self.today_of(person.id);
        let rows = facts.iter().filter_map(|(block, event)| {
            let (on, what) = what_told(&event.body)?;
            let by = event.by.and_then(|by| self.person(by));
            Some(vec![
                Cell::of(Value::day_seen(on, today)).to(Look::Fact(event.id)),
                Cell::of(Value::name(&block.name)),
                Cell::of(what),
                Cell::of(Phrase::from(letter(event.source))),
                Cell::of(by.map_or("", |by| &by.name)),
            ])
        });
        let rows: Vec<Vec<Cell>> = rows.collect();
        if rows.is_empty() {
            return Part::Note(page("page-none-told"));
        }
        Part::Table(Grid {
            title: page("page-facts"),
            head: heads(&[
                "page-day",
                "page-block",
                "page-what",
                "page-source",
                "page-told-by",
            ]),
            rows,
        })
    }

    pub(super) fn facts_page(
        self,
        viewer: &'a Person,
        block: BlockId,
        rests: Rests,
    ) -> Option<Page> {
        let block = self.world.directory.block(block)?;
        let person = self.farmer_looked_at(viewer, block.owner)?;
        let (name, title) = match rests {
            Rests::Living => (Name::Living, "page-under-living"),
            Rests::Sick => (Name::Sick, "page-under-sick"),
        };
        let is_asked = |event: &Event| matches!(&event.body, Body::Reported { kind, .. } if name.rests_on(*kind));
        let facts = self.told_of_blocks(&[block], is_asked);
        let args = args! {
            "name" => Value::name(&person.name),
            "block" => Value::name(&block.name),
        };
        let mut seen = Page::new(page_of(title, args), vec![self.facts_part(facts, person)]);
        seen.about = Some(person.id);
        Some(seen)
    }

    pub(super) fn fact_page(self, viewer: &'a Person, id: EventId) -> Option<Page> {
        // Asked by number: one that is not there must not end the step.
        let event = self.fact_asked(id)?;
        let block = self.world.directory.block(event.body.block()?)?;
        let person = self.farmer_looked_at(viewer, block.owner)?;
        let (on, what) = what_told(&event.body)?;
        let by = event.by.and_then(|by| self.person(by));
        let told_on = civil_day(event.at, self.zone_of(person.id));
        let mut rows = vec![
            vec![
                Cell::of(page("page-who")),
                Cell::of(Value::name(&person.name)).to(Look::Person(person.id)),
            ],
            vec![
                Cell::of(page("page-block")),
                Cell::of(Value::name(&block.name)),
            ],
            vec![Cell::of(page("page-day")), Cell::of(Value::DayYear(on))],
            vec![Cell::of(page("page-what")), Cell::of(what)],
            vec![
                Cell::of(page("page-source")),
                Cell::of(Phrase::from(letter(event.source))),
            ],
            vec![
                Cell::of(page("page-told-by")),
                Cell::of(by.map_or("", |by| &by.name)),
            ],
            vec![
                Cell::of(page("page-told-on")),
                Cell::of(Value::DayYear(told_on)),
            ],
        ];
        if let Some(old) = event.supersedes.and_then(|old| self.fact_asked(old))
            && let Some((_, what)) = what_told(&old.body)
        {
            let mut cell = Cell::of(what).to(Look::Fact(old.id));
            cell.is_struck = true;
            rows.push(vec![Cell::of(page("page-instead-of")), cell]);
        }
        if roles::may(viewer.role, Verb::ReadQueue)
            && let Some(text) = event.message.and_then(|message| self.text_of(message))
        {
            rows.push(vec![Cell::of(page("page-text")), Cell::of(text)]);
        }
        let grid = Grid {
            title: page("page-fact"),
            head: heads(&["page-what", "page-is"]),
            rows,
        };
        let mut parts = vec![Part::Table(grid)];
        if !self.counts(&event) {
            parts.insert(0, Part::Note(page("page-counts-no-more")));
        } else if roles::may(viewer.role, Verb::Fix)
            && let Body::Reported { details, .. } = &event.body
        {
            parts.push(Part::Fix {
                fact: id,
                person: person.id,
                count: details.count,
            });
        }
        let mut seen = Page::new(page("page-fact"), parts);
        seen.about = Some(person.id);
        Some(seen)
    }

    /// The text of a message that came in, as it came.
    fn text_of(self, message: MessageId) -> Option<String> {
        self.store
            .received(message)
            .ok()
            .flatten()
            .map(|one| one.text)
    }
}

/// The day that a fact is of.
fn day_told(body: &Body) -> Option<NaiveDate> {
    what_told(body).map(|(on, _)| on)
}

/// The day of a fact of a block and what it tells; nothing where it tells of none.
pub(super) fn what_told(body: &Body) -> Option<(NaiveDate, Value)> {
    if let Body::Reported {
        kind, on, details, ..
    } = body
    {
        return Some((on.day(), clause(*kind, details).into()));
    }
    if let Body::TaskDone { task, on, .. } = body {
        return Some((*on, (*task).into()));
    }
    if let Body::Nudged { task, on, .. } = body {
        return Some((*on, page_of("page-asked-for", args! { "task" => *task })));
    }
    if let Body::Postponed { task, until, .. } = body {
        return Some((*until, page_of("page-put-off", args! { "task" => *task })));
    }
    let Body::Warned { ailment, on, .. } = body else {
        return None;
    };
    Some((*on, page_of("page-warned", args! { "ailment" => *ailment })))
}
