//! Answers to the adviser: lists that fit one SMS, the most pressing first.

use std::collections::BTreeMap;

use budwood_parser::Ailment;
use budwood_scheduler::{TaskKind, group::visit::Reason};
use chrono::NaiveDate;

use super::{Tongue, fit::short};
use crate::args;

/// One late job of one person.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LateItem {
    /// Who.
    pub name: String,
    /// Which job.
    pub task: TaskKind,
    /// How many days late.
    pub days: i64,
    /// Three nudges were given: now it is the adviser's.
    pub told: bool,
}

/// One block in the answer about a person.
#[derive(Clone, Debug, PartialEq)]
pub struct MemberBlock {
    /// Its name.
    pub name: String,
    /// First day of planting.
    pub planted_on: Option<NaiveDate>,
    /// Trees planted at first.
    pub planted: u32,
    /// Living trees.
    pub alive: u32,
    /// The area, if known.
    pub hectares: Option<f64>,
    /// The most pressing job and its day.
    pub due: Option<(TaskKind, NaiveDate)>,
    /// Its last girth census.
    pub girth: Option<MemberGirth>,
}

/// The last girth census of a block.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MemberGirth {
    /// Mean girth in centimetres.
    pub mean_cm: f64,
    /// Trees measured.
    pub of: u32,
    /// Whole months ahead of what is usual; negative when behind.
    pub months_ahead: i32,
    /// When it will likely be ready for opening: not before the first day, nor after the second.
    pub ready: Option<(NaiveDate, NaiveDate)>,
}

impl Tongue<'_> {
    /// "weed 6 feed 3", most first, as many as `shown`.
    #[must_use]
    pub fn task_counts(&self, counts: &BTreeMap<TaskKind, u32>, shown: usize) -> String {
        let mut sorted: Vec<(TaskKind, u32)> =
            counts.iter().map(|(task, count)| (*task, *count)).collect();
        sorted.sort_by_key(|(task, count)| (std::cmp::Reverse(*count), *task));
        let left = sorted.len().saturating_sub(shown);
        let mut words: Vec<String> = sorted
            .iter()
            .take(shown)
            .map(|(task, count)| {
                self.say(
                    "task-count",
                    args! { "task" => self.job(*task), "count" => *count },
                )
            })
            .collect();
        if left > 0 {
            words.push(self.say("more", args! { "count" => left }));
        }
        words.join(", ")
    }

    /// A list of people under a heading, cut to one SMS, with "+3" for those left out. `item`
    /// words one of them with a name of the given length at most; `whole` puts the list into its
    /// sentence.
    #[must_use]
    pub fn people<T>(
        &self,
        items: &[T],
        item: impl Fn(&T, usize) -> String,
        whole: impl Fn(String) -> String,
    ) -> String {
        self.fit_list(items.len(), |length, shown, left| {
            let mut words: Vec<String> = items
                .iter()
                .take(shown)
                .map(|one| item(one, length))
                .collect();
            if left > 0 {
                words.push(self.say("more", args! { "count" => left }));
            }
            whole(words.join(", "))
        })
    }

    /// "Siti weed 18d".
    #[must_use]
    pub fn late_item(&self, late: &LateItem, length: usize) -> String {
        let key = if late.told {
            "late-person-told"
        } else {
            "late-person"
        };
        self.say(
            key,
            args! {
                "name" => short(&late.name, length),
                "task" => self.job(late.task),
                "days" => late.days,
            },
        )
    }

    /// "Siti leaf spot, cluster of 3", "Awa quiet 64d".
    #[must_use]
    pub fn visit(&self, name: &str, reason: &Reason, length: usize) -> String {
        let called = short(name, length);
        match *reason {
            Reason::Cluster { ailment, reports } => self.say(
                "visit-cluster",
                args! { "name" => called, "ailment" => self.ailment(ailment), "count" => reports },
            ),
            Reason::Sick { ailment, trees } => self.sick_person(name, ailment, trees, length),
            Reason::Lost { pct } => {
                self.say("visit-lost", args! { "name" => called, "pct" => pct })
            }
            Reason::Silent { days } => {
                self.say("visit-quiet", args! { "name" => called, "days" => days })
            }
            Reason::Late {
                task,
                days,
                in_vain,
            } => {
                let late = LateItem {
                    name: name.to_owned(),
                    task,
                    days,
                    told: in_vain,
                };
                self.late_item(&late, length)
            }
            Reason::Ending { task, days } => self.say(
                "visit-ending",
                args! { "name" => called, "task" => self.job(task), "days" => days },
            ),
        }
    }

    /// "Siti leaf spot 12".
    #[must_use]
    pub fn sick_person(
        &self,
        name: &str,
        ailment: Ailment,
        trees: Option<u32>,
        length: usize,
    ) -> String {
        self.say(
            "sick-person",
            args! {
                "name" => short(name, length),
                "ailment" => self.ailment(ailment),
                "count" => trees.map(|trees| trees.to_string()).unwrap_or_default(),
            },
        )
    }

    /// ", girth 29.5 cm (30), 4 months behind, ready to tap Feb 2029 to Sep 2030".
    #[must_use]
    pub fn member_girth(&self, girth: &MemberGirth) -> String {
        let key = if girth.months_ahead < 0 {
            "member-behind"
        } else {
            "member-ahead"
        };
        let against = self.say(key, args! { "months" => girth.months_ahead.unsigned_abs() });
        let ready = girth.ready.map_or_else(String::new, |(earliest, latest)| {
            self.say(
                "member-ready",
                args! {
                    "earliest" => self.month_year(earliest),
                    "latest" => self.month_year(latest),
                },
            )
        });
        self.say(
            "member-girth",
            args! {
                "mean" => self.number(girth.mean_cm),
                "of" => girth.of,
                "against" => against,
                "ready" => ready,
            },
        )
    }

    /// "leaf spot".
    #[must_use]
    pub fn ailment(&self, ailment: Ailment) -> String {
        self.say(&format!("ailment-{}", ailment.name()), args! {})
    }

    /// "A 104/120 alive, planted 12 Jun 2026, weed Sat 9 Aug".
    #[must_use]
    pub fn member_block(&self, block: &MemberBlock, length: usize) -> String {
        let due = block.due.map_or_else(String::new, |(task, day)| {
            self.say(
                "member-due",
                args! { "task" => self.job(task), "day" => self.day(day) },
            )
        });
        let due = match &block.girth {
            Some(girth) => due + &self.member_girth(girth),
            None => due,
        };
        match block.planted_on {
            Some(day) => self.say(
                "member-block",
                args! {
                    "block" => short(&block.name, length),
                    "alive" => block.alive,
                    "planted" => block.planted,
                    "day" => self.day_year(day),
                    "due" => due,
                },
            ),
            None => {
                let area = block.hectares.map(|area| self.land(area));
                self.say(
                    "member-block-empty",
                    args! {
                        "block" => short(&block.name, length),
                        "area" => area.unwrap_or_default(),
                        "due" => due,
                    },
                )
            }
        }
    }
}
