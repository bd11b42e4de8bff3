//! Items of the adviser's lists, the most pressing first in each.

use budwood_parser::Ailment;
use budwood_scheduler::{TaskKind, group::visit::Reason, land::block::Living};
use chrono::NaiveDate;

use super::{Key, Phrase, Value, facts::living};
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
    /// Its living trees.
    pub living: Living,
    /// The area, if known.
    pub hectares: Option<f64>,
    /// The most pressing job and its day.
    pub due: Option<(TaskKind, NaiveDate)>,
    /// The day on which it is told: a day of another year carries its year.
    pub today: NaiveDate,
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

/// "Siti weed 18d".
#[must_use]
pub fn late_item(late: &LateItem) -> Phrase {
    let key = if late.told {
        Key::LatePersonTold
    } else {
        Key::LatePerson
    };
    let args = args! {
        "name" => Value::name(&late.name),
        "task" => late.task,
        "days" => late.days,
    };
    Phrase::new(key, args)
}

/// "Siti leaf spot, cluster of 3", "Awa quiet 64d".
#[must_use]
pub fn visit(name: &str, reason: &Reason) -> Phrase {
    let called = Value::name(name);
    match *reason {
        Reason::Cluster { ailment, reports } => Phrase::new(
            Key::VisitCluster,
            args! { "name" => called, "ailment" => ailment, "count" => reports },
        ),
        Reason::Sick { ailment, trees } => sick_person(name, ailment, trees),
        Reason::Lost { pct } => {
            let args = args! { "name" => called, "pct" => pct };
            Phrase::new(Key::VisitLost, args)
        }
        Reason::Silent { days } => {
            let args = args! { "name" => called, "days" => days };
            Phrase::new(Key::VisitQuiet, args)
        }
        Reason::Late {
            task,
            days,
            in_vain,
        } => late_item(&LateItem {
            name: name.to_owned(),
            task,
            days,
            told: in_vain,
        }),
        Reason::Ending { task, days } => Phrase::new(
            Key::VisitEnding,
            args! { "name" => called, "task" => task, "days" => days },
        ),
    }
}

/// "Siti leaf spot 12".
#[must_use]
pub fn sick_person(name: &str, ailment: Ailment, trees: Option<u32>) -> Phrase {
    let args = args! {
        "name" => Value::name(name),
        "ailment" => ailment,
        "count" => trees.map(|trees| trees.to_string()).unwrap_or_default(),
    };
    Phrase::new(Key::SickPerson, args)
}

/// ", girth 29.5 cm (30), 4 months behind, ready to tap Feb 2029 to Sep 2030".
#[must_use]
pub fn member_girth(girth: &MemberGirth) -> Phrase {
    let key = if girth.months_ahead < 0 {
        Key::MemberBehind
    } else {
        Key::MemberAhead
    };
    let ready = girth.ready.map(|(earliest, latest)| {
        let args = args! {
            "earliest" => Value::Month(earliest),
            "latest" => Value::Month(latest),
        };
        Phrase::new(Key::MemberReady, args)
    });
    let months = args! { "months" => girth.months_ahead.unsigned_abs() };
    let args = args! {
        "mean" => girth.mean_cm,
        "of" => girth.of,
        "against" => Phrase::new(key, months),
        "ready" => ready,
    };
    Phrase::new(Key::MemberGirth, args)
}

/// "A 104 + 9 of 120 alive, planted 12 Jun 2026, weed Sat 9 Aug". Girths are told where all blocks fit
/// with them, rather than leave a block out.
#[must_use]
pub fn member_block(block: &MemberBlock) -> Phrase {
    let due = block.due.map(|(task, day)| {
        let args = args! { "task" => task, "day" => Value::day_seen(day, block.today) };
        Phrase::new(Key::MemberDue, args)
    });
    let girth = block.girth.as_ref().map(member_girth).map(Value::Extra);
    let due = Value::Joined([Some(due.into()), girth].into_iter().flatten().collect());
    match block.planted_on {
        Some(day) => Phrase::new(
            Key::MemberBlock,
            args! {
                "block" => Value::name(&block.name),
                "living" => living(block.living),
                "day" => Value::DayYear(day),
                "due" => due,
            },
        ),
        None => {
            let area = block.hectares.map(Value::Land);
            Phrase::new(
                Key::MemberBlockEmpty,
                args! {
                    "block" => Value::name(&block.name),
                    "area" => area.unwrap_or_else(Value::nothing),
                    "due" => due,
                },
            )
        }
    }
}
