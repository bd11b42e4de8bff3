//! Given facts, at a day, then tasks: facts are written one to a line.
//!
//! `2027-06-01 planted 120`, `2028-03-01 girth 12/30`, `2027-07-01 done order_plants`,
//! `2027-07-01 later weed 2027-07-15`, `2027-07-01 nudged weed 2027-06-30`,
//! `2027-08-01 white_root 2`, `2027-08-01 warned leaf_spot`.

use std::{
    string::{String, ToString},
    vec::Vec,
};

use budwood_parser::{Ailment, Cause, Details, Kind, Measure, Supply, Unit, Wetness};
use chrono::{DateTime, NaiveDate};

use crate::{
    handbook::calendar::{Calendar, profiles},
    jobs::task::{Task, tasks},
    land::{block::BlockState, directory::Block},
    words::{
        event::{Body, Event, Happened, Source},
        id::{BlockId, EventId, PersonId},
        job::TaskKind,
        season::Season,
    },
};

pub(super) const BLOCK: BlockId = BlockId(1);

pub(super) fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

pub(super) fn fao() -> Calendar {
    Calendar::parse(profiles::FAO).unwrap()
}

pub(super) fn indonesia() -> Calendar {
    Calendar::parse(profiles::INDONESIA).unwrap()
}

/// One hectare, spacing of the calendar, nothing planned.
pub(super) fn block() -> Block {
    Block {
        id: BLOCK,
        owner: PersonId(1),
        name: "B".to_string(),
        area: Some(Measure {
            value: 1.0,
            unit: Unit::Hectare,
        }),
        area_source: "gps".to_string(),
        slope_pct: None,
        spacing_m: None,
        point: None,
        planned_on: None,
        clone_name: None,
    }
}

/// Rain from 20 May to 31 October.
pub(super) const RAINS: Season = Season {
    rains_start: Some((5, 20)),
    rains_end: Some((10, 31)),
    second_rains: None,
    window_opened: None,
};

/// A block with its facts, in a season, by a calendar.
pub(super) struct Given {
    pub(super) block: Block,
    pub(super) events: Vec<Event>,
    pub(super) season: Season,
    pub(super) calendar: Calendar,
}

pub(super) fn given(calendar: Calendar, facts: &str) -> Given {
    let lines = facts.lines().map(str::trim).filter(|line| !line.is_empty());
    Given {
        block: block(),
        events: (1..).zip(lines).map(|(id, line)| fact(id, line)).collect(),
        season: Season::default(),
        calendar,
    }
}

impl Given {
    pub(super) fn planned(mut self, day_text: &str) -> Self {
        self.block.planned_on = Some(day(day_text));
        self
    }

    pub(super) fn rains(mut self) -> Self {
        self.season = RAINS;
        self
    }

    pub(super) fn window(mut self, day_text: &str) -> Self {
        self.season.window_opened = Some(day(day_text));
        self
    }

    pub(super) fn state(&self) -> BlockState {
        BlockState::replay(&self.events)
    }

    pub(super) fn tasks_on(&self, today: NaiveDate) -> Vec<Task> {
        tasks(
            &self.block,
            &self.state(),
            &self.season,
            &self.calendar,
            today,
        )
    }

    /// The task of this kind at a day.
    pub(super) fn at(&self, today: &str, kind: TaskKind) -> Option<Task> {
        let all = self.tasks_on(day(today));
        all.into_iter().find(|task| task.kind == kind)
    }

    /// When the task of this kind is due, as seen on a day.
    pub(super) fn due(&self, today: &str, kind: TaskKind) -> Option<String> {
        self.at(today, kind).map(|task| task.due.to_string())
    }
}

/// One line as an event.
pub(super) fn fact(id: u64, line: &str) -> Event {
    let words: Vec<&str> = line.split_whitespace().collect();
    let on = day(words[0]);
    let body = match words[1] {
        "done" => Body::TaskDone {
            block: BLOCK,
            task: TaskKind::from_name(words[2]).unwrap(),
            on,
        },
        "later" => Body::Postponed {
            block: BLOCK,
            task: TaskKind::from_name(words[2]).unwrap(),
            until: day(words[3]),
        },
        "warned" => Body::Warned {
            block: BLOCK,
            ailment: Ailment::from_name(words[2]).unwrap(),
            on,
        },
        "nudged" => Body::Nudged {
            block: BLOCK,
            task: TaskKind::from_name(words[2]).unwrap(),
            on,
            due: day(words[3]),
        },
        name => {
            let (kind, details) = report(name, words.get(2).copied());
            Body::Reported {
                block: BLOCK,
                kind,
                on: Happened::on(on),
                details,
            }
        }
    };
    Event {
        id: EventId(id),
        at: DateTime::UNIX_EPOCH,
        by: None,
        source: Source::OwnText,
        message: None,
        supersedes: None,
        body,
    }
}

fn report(name: &str, amount: Option<&str>) -> (Kind, Details) {
    let mut details = Details::default();
    if let Some((reached, of)) = amount.and_then(|amount| amount.split_once('/')) {
        details.count = reached.parse().ok();
        details.of = of.parse().ok();
    } else if let Some(girths) = amount.and_then(|amount| amount.strip_prefix("cm:")) {
        details.values_cm = girths.split(',').map(|cm| cm.parse().unwrap()).collect();
    } else {
        details.count = amount.map(|amount| amount.parse().unwrap());
    }
    let kind = match name {
        "plants" => {
            details.supply = Some(Supply::Plants);
            Kind::Received
        }
        "white_root" | "leaf_fall" | "pink" | "termites" => {
            details.ailment = Ailment::from_name(name);
            Kind::Disease
        }
        "flood" => {
            details.cause = Some(Cause::Flood);
            Kind::Damage
        }
        "soaked" | "dry" => {
            let is_dry = name == "dry";
            details.wetness = Some(if is_dry {
                Wetness::None
            } else {
                Wetness::Soaked
            });
            Kind::Rain
        }
        _ => Kind::from_name(name).unwrap(),
    };
    (kind, details)
}
