//! Questions of farmers: what now, when, how much, may I, what do you hold of me.

use budwood_parser::{Kind, Query, Topic};
use budwood_scheduler::{
    Block, BlockId, Consent, Group, Person, PersonId, Task, TaskKind,
    jobs::orders::plants_to_order,
    outlook::survival::{Infill, infill},
    plan,
    words::area::hectares,
};
use chrono::NaiveDate;

use crate::{
    args,
    engine::{
        deeds::due_index::{calendar_of, season_of, tasks_of},
        step::Step,
        turn::Turn,
    },
    wording::short,
    words::limits,
};

impl Step<'_> {
    pub(crate) fn farmer_answer(&self, turn: &Turn, speaker: &Person, query: &Query) -> String {
        match query.topic {
            Topic::Next => self.what_now(speaker),
            Topic::When => self.when(speaker, query),
            Topic::HowMuch => self.how_much(speaker, query),
            Topic::MayI => self.may_i(speaker, query),
            Topic::Status | Topic::Member => self.my_blocks(speaker),
            Topic::MyData => self.my_data(speaker),
            Topic::CallMe => self.plain(speaker, "call-me"),
            Topic::Who => self.plain(speaker, "who"),
            Topic::Language
            | Topic::Gaps
            | Topic::Late
            | Topic::Quiet
            | Topic::Sick
            | Topic::Visit
            | Topic::Window
            | Topic::Warn
            | Topic::Hold
            | Topic::Erase
            | Topic::Other => {
                debug_assert!(
                    turn.speaker == speaker.id,
                    "the speaker asks for themselves"
                );
                self.plain(speaker, "no-answer")
            }
        }
    }

    pub(crate) fn plain(&self, speaker: &Person, key: &str) -> String {
        let tongue = self.tongue(speaker);
        let adviser = self.adviser_name(speaker);
        tongue.fit(|length| {
            let args = args! {
                "name" => short(speaker.called(), length),
                "adviser" => short(&adviser, length),
            };
            tongue.say(key, args)
        })
    }

    /// The jobs of all of a person's blocks, most urgent first.
    fn jobs_of(&self, person: PersonId) -> Vec<(String, Task)> {
        let today = self.today_of(person);
        let mut jobs: Vec<(String, Task)> = self
            .world
            .directory
            .blocks_of(person)
            .flat_map(|block| {
                tasks_of(self.world, self.setup, block.id, today)
                    .into_iter()
                    .map(move |task| (block.name.clone(), task))
            })
            .collect();
        jobs.sort_by_key(|(_, task)| (task.due > today, task.urgency(), task.due));
        jobs
    }

    fn what_now(&self, speaker: &Person) -> String {
        let tongue = self.tongue(speaker);
        let today = self.today_of(speaker.id);
        let adviser = self.adviser_name(speaker);
        let jobs = self.jobs_of(speaker.id);
        let now: Vec<&(String, Task)> = jobs.iter().filter(|(_, task)| task.due <= today).collect();
        if now.is_empty() {
            return self.nothing_now(speaker, &jobs);
        }
        tongue.people(
            &now,
            |(block, task), length| format!("{} {}", tongue.job(task.kind), short(block, length)),
            |tasks| {
                let args = args! {
                    "name" => short(speaker.called(), 12),
                    "tasks" => tasks,
                    "adviser" => short(&adviser, 12),
                };
                tongue.say("now", args)
            },
        )
    }

    fn nothing_now(&self, speaker: &Person, jobs: &[(String, Task)]) -> String {
        let tongue = self.tongue(speaker);
        let adviser = self.adviser_name(speaker);
        let next = jobs.iter().min_by_key(|(_, task)| task.due);
        let today = self.today_of(speaker.id);
        let example = self.example(speaker.id);
        tongue.fit(|length| match next {
            Some((block, task)) => tongue.say(
                "now-nothing",
                args! {
                    "name" => short(speaker.called(), length),
                    "task" => tongue.job(task.kind),
                    "block" => short(block, length),
                    "day" => tongue.day_ahead(task.due, today),
                    "adviser" => short(&adviser, length),
                },
            ),
            None => tongue.say(
                "now-none",
                args! {
                    "name" => short(speaker.called(), length),
                    "example" => example.as_str(),
                    "adviser" => short(&adviser, length),
                },
            ),
        })
    }

    fn when(&self, speaker: &Person, query: &Query) -> String {
        let wanted = query.kind.and_then(|kind| {
            TaskKind::ALL
                .into_iter()
                .find(|task| task.proven_by() == Some(kind))
        });
        let jobs = self.jobs_of(speaker.id);
        let of_block = |name: &str| {
            query
                .block
                .as_deref()
                .is_none_or(|block| block.eq_ignore_ascii_case(name))
        };
        let found = jobs
            .iter()
            .filter(|(block, task)| of_block(block) && wanted.is_none_or(|kind| kind == task.kind))
            .min_by_key(|(_, task)| task.due);
        let group = speaker
            .group
            .and_then(|group| self.world.directory.group(group));
        if let (Some(TaskKind::Open), Some(_)) = (wanted, group) {
            return self.when_tap(speaker, query);
        }
        if let (Some(TaskKind::Plant), None, Some(group)) = (wanted, found, group) {
            return self.may_plant(speaker, group);
        }
        let Some((block, task)) = found else {
            return self.plain(speaker, "may-other");
        };
        let today = self.today_of(speaker.id);
        let tongue = self.tongue(speaker);
        let adviser = self.adviser_name(speaker);
        tongue.fit(|length| {
            tongue.say(
                "when-task",
                args! {
                    "task" => tongue.job(task.kind),
                    "block" => short(block, length),
                    "day" => tongue.day_ahead(task.due.max(today), today),
                    "adviser" => short(&adviser, length),
                },
            )
        })
    }

    fn how_much(&self, speaker: &Person, query: &Query) -> String {
        if query.kind == Some(Kind::Fertilised) {
            return self.how_much_feed(speaker, query);
        }
        // "How many died": of those planted, so many are alive.
        if query.kind == Some(Kind::Dead) {
            return self.my_blocks(speaker);
        }
        self.how_many_plants(speaker, query)
            .unwrap_or_else(|| self.plain(speaker, "how-much-unknown"))
    }

    fn how_many_plants(&self, speaker: &Person, query: &Query) -> Option<String> {
        let group = self.world.directory.group(speaker.group?)?;
        let calendar = calendar_of(self.setup, group)?;
        let own = || self.block_asked(speaker, query);
        let asked = query.area.and_then(hectares);
        let (area, points) = match asked {
            Some(area) => {
                let spacing = calendar.spacing;
                let land = plan::Land::level(area);
                (area, plan::points(land, spacing.row_m, spacing.in_row_m))
            }
            None => {
                let block = own()?;
                (block.hectares()?, plan::points_of(block, calendar)?)
            }
        };
        let points = points.ok()?;
        let order = &calendar.order;
        let plants = plants_to_order(points, order.spares_pct, order.transit_loss_pct)?;
        let tongue = self.tongue(speaker);
        let adviser = self.adviser_name(speaker);
        Some(tongue.fit(|length| {
            tongue.say(
                "how-many-plants",
                args! {
                    "area" => tongue.land(area),
                    "points" => points,
                    "order" => plants,
                    "adviser" => short(&adviser, length),
                },
            )
        }))
    }

    fn how_much_feed(&self, speaker: &Person, query: &Query) -> String {
        let jobs = self.jobs_of(speaker.id);
        let found = jobs.iter().find(|(block, task)| {
            task.kind == TaskKind::Feed
                && query
                    .block
                    .as_deref()
                    .is_none_or(|name| block.eq_ignore_ascii_case(name))
        });
        let Some((block, task)) = found else {
            return self.plain(speaker, "may-other");
        };
        let tongue = self.tongue(speaker);
        let adviser = self.adviser_name(speaker);
        let figures = &task.figures;
        tongue.fit(|length| {
            tongue.say(
                "how-much-feed",
                args! {
                    "block" => short(block, length),
                    "trees" => figures.trees.unwrap_or(0),
                    "grams" => figures.grams_per_tree.map(|value| tongue.number(value)).unwrap_or_default(),
                    "kilograms" => figures.kilograms.map(|value| tongue.number(value)).unwrap_or_default(),
                    "ring" => tongue.say("feed-ring", args! {}),
                    "adviser" => short(&adviser, length),
                },
            )
        })
    }

    fn may_i(&self, speaker: &Person, query: &Query) -> String {
        let group = speaker
            .group
            .and_then(|group| self.world.directory.group(group));
        let text = match (query.kind, group) {
            (Some(Kind::TappingOpened), Some(group)) => self.may_tap(speaker, group, query),
            (Some(Kind::Planted), Some(group)) => Some(self.may_plant(speaker, group)),
            (Some(Kind::Replaced | Kind::Dead), Some(group)) => {
                self.may_fill(speaker, group, query)
            }
            (Some(Kind::Sprayed), _) => Some(self.plain(speaker, "may-spray")),
            _ => None,
        };
        text.unwrap_or_else(|| self.plain(speaker, "may-other"))
    }

    /// Gaps are filled while the handbook has it and rain is left; a refusal gives the reason.
    fn may_fill(&self, speaker: &Person, group: &Group, query: &Query) -> Option<String> {
        let calendar = calendar_of(self.setup, group)?;
        let block = self.block_asked(speaker, query)?;
        let state = self.world.states.get(&block.id)?;
        let today = self.today_of(speaker.id);
        let (key, day) = match infill(state, &season_of(group), calendar, today) {
            Infill::Until(last) => ("may-fill-yes", Some(last)),
            Infill::NotBefore(first) => ("may-fill-wait", Some(first)),
            Infill::TooOld { .. } => ("may-fill-late", None),
            Infill::NotPlanted | Infill::NoGaps => return None,
        };
        let tongue = self.tongue(speaker);
        let adviser = self.adviser_name(speaker);
        Some(tongue.fit(|length| {
            tongue.say(
                key,
                args! {
                    "block" => short(&block.name, length),
                    "day" => day.map(|day| tongue.day_ahead(day, today)).unwrap_or_default(),
                    "months" => calendar.backfill.until_months,
                    "adviser" => short(&adviser, length),
                },
            )
        }))
    }

    fn may_plant(&self, speaker: &Person, group: &Group) -> String {
        let tongue = self.tongue(speaker);
        let adviser = self.adviser_name(speaker);
        let today = self.today_of(speaker.id);
        let still = calendar_of(self.setup, group).map_or(0, |c| c.planting.window_days);
        let opened = group
            .window_opened
            .filter(|day| (today - *day).num_days() <= i64::from(still) && *day <= today);
        tongue.fit(|length| match opened {
            Some(day) => tongue.say(
                "may-plant-yes",
                args! {
                    "name" => short(speaker.called(), length),
                    "day" => tongue.day(day),
                    "adviser" => short(&adviser, length),
                },
            ),
            None => tongue.say(
                "may-plant-wait",
                args! {
                    "name" => short(speaker.called(), length),
                    "group" => short(&group.name, length),
                    "adviser" => short(&adviser, length),
                },
            ),
        })
    }

    fn my_blocks(&self, speaker: &Person) -> String {
        let tongue = self.tongue(speaker);
        let blocks: Vec<&Block> = self.world.directory.blocks_of(speaker.id).collect();
        if blocks.is_empty() {
            return self.plain(speaker, "no-blocks");
        }
        tongue.people(
            &blocks,
            |block, length| self.my_block(speaker, block.id, &short(&block.name, length)),
            |list| list,
        )
    }

    fn my_block(&self, speaker: &Person, block: BlockId, name: &str) -> String {
        let tongue = self.tongue(speaker);
        let state = self.world.states.get(&block);
        let planted: Option<NaiveDate> = state.and_then(|state| state.planted_on());
        match (state, planted) {
            (Some(state), Some(day)) => tongue.say(
                "my-block",
                args! {
                    "block" => name,
                    "alive" => state.alive(),
                    "planted" => state.planted(),
                    "day" => tongue.day_year(day),
                },
            ),
            _ => tongue.say("my-block-empty", args! { "block" => name }),
        }
    }

    fn my_data(&self, speaker: &Person) -> String {
        let tongue = self.tongue(speaker);
        let consent = match &speaker.consent {
            Consent::Given { on, .. } => tongue.day_year(*on),
            Consent::Unknown | Consent::Withdrawn { .. } => tongue.say("consent-none", args! {}),
        };
        let group = self.group_name(speaker);
        let blocks: Vec<&Block> = self.world.directory.blocks_of(speaker.id).collect();
        tongue.people(
            &blocks,
            |block, length| short(&block.name, length),
            |blocks| {
                let args = args! {
                    "group" => short(&group, limits::SHORT_NAME),
                    "blocks" => blocks,
                    "consent" => consent.as_str(),
                };
                tongue.say("my-data", args)
            },
        )
    }
}
