//! Questions of farmers: what now, when, how much, may I, what do you hold of me.

use budwood_parser::{Kind, Query, Topic};
use budwood_scheduler::{
    Block, Consent, Group, Person, Task, TaskKind, TextClass,
    jobs::orders::plants_to_order,
    outlook::infill::{Infill, infill},
    plan,
    words::area::hectares,
};

use chrono::TimeDelta;

use super::tasks::season_of;
use crate::{
    args,
    engine::view::View,
    wording::{Key, Phrase, Value, dose, living},
    words::limits,
};

impl View<'_> {
    /// The answer to a farmer's question.
    #[expect(clippy::too_many_lines, reason = "a table: a line for each topic")]
    pub(crate) fn farmer_answer(self, speaker: &Person, query: &Query) -> Phrase {
        match query.topic {
            Topic::Next => self.what_now(speaker),
            Topic::When => self.when(speaker, query),
            Topic::HowMuch => self.how_much(speaker, query),
            Topic::MayI => self.may_i(speaker, query),
            Topic::Status | Topic::Member => self.my_blocks(speaker),
            Topic::MyData => self.my_data(speaker),
            Topic::Share => self.asks_to_share(speaker),
            Topic::Order => self.my_order(speaker),
            Topic::CallMe => self.signed(speaker, Key::CallMe),
            Topic::Who => self.signed(speaker, Key::Who),
            Topic::Price => self.signed(speaker, Key::PriceNone),
            Topic::Language
            | Topic::Gaps
            | Topic::Late
            | Topic::Quiet
            | Topic::Sick
            | Topic::Visit
            | Topic::Window
            | Topic::Warn
            | Topic::Hold
            | Topic::LeaveAlone
            | Topic::Lost
            | Topic::Found
            | Topic::Moved
            | Topic::GoOn
            | Topic::Waiting
            | Topic::Dead
            | Topic::Cause
            | Topic::Girth
            | Topic::Ready
            | Topic::Bags
            | Topic::Paid
            | Topic::Last
            | Topic::Root
            | Topic::Rain
            | Topic::Wind
            | Topic::Fire
            | Topic::Train
            | Topic::Grant
            | Topic::Map
            | Topic::Cost
            | Topic::Best
            | Topic::Labour
            | Topic::Clone
            | Topic::Week
            | Topic::Job
            | Topic::More
            | Topic::Whose
            | Topic::Tell
            | Topic::Ask
            | Topic::AskHarm
            | Topic::Harm
            | Topic::Pass
            | Topic::Promise
            | Topic::Kept
            | Topic::HandOver
            | Topic::Erase
            | Topic::Meeting
            | Topic::Count
            | Topic::Open
            | Topic::Fix
            | Topic::HowTo
            | Topic::Advice
            | Topic::List
            | Topic::Trained
            | Topic::Stock
            | Topic::Sent
            | Topic::Allot
            | Topic::PickUp
            | Topic::Buying
            | Topic::Owner
            | Topic::Divide
            | Topic::Join
            | Topic::Leave
            | Topic::Contact
            | Topic::Other => self.signed(speaker, Key::NoAnswer),
        }
    }

    fn what_now(self, speaker: &Person) -> Phrase {
        let today = self.today_of(speaker.id);
        let jobs = self.jobs_of(speaker.id);
        let now = jobs.iter().filter(|(_, task)| task.due <= today);
        let now = now.map(|(block, task)| {
            Value::Joined(vec![task.kind.into(), " ".into(), Value::name(block)])
        });
        let now: Vec<Value> = now.collect();
        if now.is_empty() {
            return self.nothing_now(speaker, &jobs);
        }
        let args = args! {
            "name" => Value::brief(speaker.called()),
            "tasks" => now,
            "adviser" => Value::brief(self.adviser_name(speaker)),
        };
        Phrase::new(Key::Now, args)
    }

    fn nothing_now(self, speaker: &Person, jobs: &[(&str, Task)]) -> Phrase {
        let today = self.today_of(speaker.id);
        match jobs.iter().min_by_key(|(_, task)| task.due) {
            Some((block, task)) => {
                let args = args! {
                    "task" => task.kind,
                    "block" => Value::name(block),
                    "day" => Value::day_seen(task.due, today),
                };
                self.signed_with(speaker, Key::NowNothing, args)
            }
            None => {
                let args = args! { "example" => self.example(speaker.id) };
                self.signed_with(speaker, Key::NowNone, args)
            }
        }
    }

    fn when(self, speaker: &Person, query: &Query) -> Phrase {
        let wanted = query.kind.and_then(|kind| {
            TaskKind::ALL
                .into_iter()
                .find(|task| task.proven_by() == Some(kind))
        });
        let jobs = self.jobs_of(speaker.id);
        let of_block = |name: &str| {
            let asked = query.block.as_deref();
            asked.is_none_or(|block| block.eq_ignore_ascii_case(name))
        };
        let found = jobs
            .iter()
            .filter(|(block, task)| of_block(block) && wanted.is_none_or(|kind| kind == task.kind))
            .min_by_key(|(_, task)| task.due);
        let group = self.group_of(speaker);
        if let (Some(TaskKind::Open), Some(_)) = (wanted, group) {
            return self.when_tap(speaker, query);
        }
        if let (Some(TaskKind::Plant), None, Some(group)) = (wanted, found, group) {
            return self.may_plant(speaker, group);
        }
        let Some((block, task)) = found else {
            return self.signed(speaker, Key::MayOther);
        };
        let today = self.today_of(speaker.id);
        let args = args! {
            "task" => task.kind,
            "block" => Value::name(block),
            "day" => Value::day_seen(task.due.max(today), today),
        };
        self.signed_with(speaker, Key::WhenTask, args)
    }

    fn how_much(self, speaker: &Person, query: &Query) -> Phrase {
        if query.kind == Some(Kind::Fertilised) {
            return self.how_much_feed(speaker, query);
        }
        // "How many died": of those planted, so many are alive.
        if query.kind == Some(Kind::Dead) {
            return self.my_blocks(speaker);
        }
        self.how_many_plants(speaker, query)
            .unwrap_or_else(|| self.signed(speaker, Key::HowMuchUnknown))
    }

    fn how_many_plants(self, speaker: &Person, query: &Query) -> Option<Phrase> {
        let calendar = self.calendar_of(self.group_of(speaker)?)?;
        let asked = query.area.and_then(hectares);
        let (area, points) = match asked {
            Some(area) => {
                let spacing = calendar.spacing;
                let land = plan::Land::level(area);
                (area, plan::points(land, spacing.row_m, spacing.in_row_m))
            }
            None => {
                let block = self.block_asked(speaker, query)?;
                (block.hectares()?, plan::points_of(block, calendar)?)
            }
        };
        let points = points.ok()?;
        let order = &calendar.order;
        let plants = plants_to_order(points, order.spares_pct, order.transit_loss_pct)?;
        let args = args! { "area" => Value::Land(area), "points" => points, "order" => plants };
        Some(self.signed_with(speaker, Key::HowManyPlants, args))
    }

    fn how_much_feed(self, speaker: &Person, query: &Query) -> Phrase {
        let jobs = self.jobs_of(speaker.id);
        let asked = query.block.as_deref();
        let found = jobs.iter().find(|(block, task)| {
            let is_it = asked.is_none_or(|name| block.eq_ignore_ascii_case(name));
            task.kind == TaskKind::Feed && is_it
        });
        let Some((block, task)) = found else {
            return self.signed(speaker, Key::MayOther);
        };
        let figures = &task.figures;
        let args = args! {
            "block" => Value::name(block),
            "dose" => dose(figures),
            "ring" => Phrase::from(Key::FeedRing),
        };
        self.signed_with(speaker, Key::HowMuchFeed, args)
    }

    fn may_i(self, speaker: &Person, query: &Query) -> Phrase {
        let phrase = match (query.kind, self.group_of(speaker)) {
            (Some(Kind::TappingOpened), Some(group)) => self.may_tap(speaker, group, query),
            (Some(Kind::Planted), Some(group)) => Some(self.may_plant(speaker, group)),
            (Some(Kind::Replaced | Kind::Dead), Some(group)) => {
                self.may_fill(speaker, group, query)
            }
            (Some(Kind::Sprayed), _) => Some(self.signed(speaker, Key::MaySpray)),
            (Some(kind), _) => self.may_work(speaker, kind, query),
            (None, _) => None,
        };
        phrase.unwrap_or_else(|| self.signed(speaker, Key::MayOther))
    }

    /// Rounds that are due may be done, and those to come have their day; what is decided once in the
    /// life of a stand is the adviser's.
    fn may_work(self, speaker: &Person, kind: Kind, query: &Query) -> Option<Phrase> {
        let jobs = self.jobs_of(speaker.id);
        let is_asked = |name: &str| {
            let asked = query.block.as_deref();
            asked.is_none_or(|block| block.eq_ignore_ascii_case(name))
        };
        let (block, task) = jobs
            .iter()
            .find(|(block, task)| task.kind.proven_by() == Some(kind) && is_asked(block))?;
        if task.kind == TaskKind::Feed {
            return Some(self.how_much_feed(speaker, query));
        }
        if task.class() != TextClass::Round {
            return None;
        }
        let today = self.today_of(speaker.id);
        let (key, day) = if task.due <= today {
            let soon = today + TimeDelta::days(limits::NOTICE_DAYS);
            (Key::MayYes, task.late_after.max(soon))
        } else {
            (Key::WhenTask, task.due)
        };
        let args = args! {
            "task" => task.kind,
            "block" => Value::name(block),
            "day" => Value::day_seen(day, today),
        };
        Some(self.signed_with(speaker, key, args))
    }

    /// Gaps are filled while the handbook has it and rain is left; a refusal gives the reason.
    fn may_fill(self, speaker: &Person, group: &Group, query: &Query) -> Option<Phrase> {
        let calendar = self.calendar_of(group)?;
        let block = self.block_asked(speaker, query)?;
        let state = self.state(block.id)?;
        let today = self.today_of(speaker.id);
        let (key, day) = match infill(state, &season_of(group), calendar, today) {
            Infill::Until(last) => (Key::MayFillYes, Some(last)),
            Infill::NotBefore(first) => (Key::MayFillWait, Some(first)),
            Infill::TooOld { .. } => (Key::MayFillLate, None),
            Infill::NotPlanted | Infill::NoGaps => return None,
        };
        let args = args! {
            "block" => Value::name(&block.name),
            "day" => day.map_or_else(Value::nothing, |day| Value::day_seen(day, today)),
            "months" => calendar.backfill.until_months,
        };
        Some(self.signed_with(speaker, key, args))
    }

    /// When plants are given out, to who gets some.
    fn my_order(self, speaker: &Person) -> Phrase {
        let today = self.today_of(speaker.id);
        let told = || {
            let group = self.group_of(speaker)?;
            let on = group.book.pick_up.filter(|on| *on >= today)?;
            let shares = self.plants_for(group).into_iter();
            let mut own = shares.filter(|(person, _)| *person == speaker.id);
            own.next().map(|(_, plants)| (on, plants))
        };
        match told() {
            Some((on, plants)) => {
                let args = args! { "day" => Value::day_seen(on, today), "plants" => plants };
                self.signed_with(speaker, Key::OrderPickUp, args)
            }
            None => self.signed(speaker, Key::NoAnswer),
        }
    }

    fn may_plant(self, speaker: &Person, group: &Group) -> Phrase {
        let today = self.today_of(speaker.id);
        let still = self.calendar_of(group);
        let still = still.map_or(0, |calendar| calendar.planting.window_days);
        let is_open = |day: &chrono::NaiveDate| {
            (today - *day).num_days() <= i64::from(still) && *day <= today
        };
        match group.window_opened.filter(is_open) {
            Some(day) => self.signed_with(speaker, Key::MayPlantYes, args! { "day" => day }),
            None => {
                let args = args! { "group" => Value::name(&group.name) };
                self.signed_with(speaker, Key::MayPlantWait, args)
            }
        }
    }

    fn my_blocks(self, speaker: &Person) -> Phrase {
        let blocks = self.world.directory.blocks_of(speaker.id);
        let blocks: Vec<Value> = blocks.map(|block| self.my_block(block).into()).collect();
        if blocks.is_empty() {
            return self.signed(speaker, Key::NoBlocks);
        }
        Phrase::new(Key::MyBlocks, args! { "blocks" => blocks })
    }

    fn my_block(self, block: &Block) -> Phrase {
        let name = Value::name(&block.name);
        let state = self.state(block.id);
        let planted = state.and_then(|state| Some((state, state.planted_on()?)));
        let Some((state, day)) = planted else {
            return Phrase::new(Key::MyBlockEmpty, args! { "block" => name });
        };
        let args = args! {
            "block" => name,
            "living" => living(state.living()),
            "day" => Value::DayYear(day),
        };
        Phrase::new(Key::MyBlock, args)
    }

    /// SHARE without a yes or a no: how it is now, and what can be said.
    fn asks_to_share(self, speaker: &Person) -> Phrase {
        let args = args! { "sharing" => sharing(speaker) };
        self.signed_with(speaker, Key::ShareAsk, args)
    }

    fn my_data(self, speaker: &Person) -> Phrase {
        let consent = match &speaker.consent {
            Consent::Given { on, .. } => Value::DayYear(*on),
            Consent::Unknown | Consent::Withdrawn { .. } => Phrase::from(Key::ConsentNone).into(),
        };
        let blocks = self.world.directory.blocks_of(speaker.id);
        let blocks = blocks.map(|block| Value::name(&block.name));
        let args = args! {
            "group" => Value::brief(self.group_name(speaker.group)),
            "blocks" => Value::List(blocks.collect()),
            "consent" => consent,
            "sharing" => sharing(speaker),
        };
        Phrase::new(Key::MyData, args)
    }
}

/// Whether buyers may be told of somebody.
fn sharing(person: &Person) -> Phrase {
    if person.sharing.is_given() {
        Key::SharingYes.into()
    } else {
        Key::SharingNo.into()
    }
}
