//! Jobs: nudges, and jobs with their numbers.

use std::collections::BTreeMap;

use budwood_scheduler::{Figures, Task, TaskKind, handbook::calendar::Datum};
use chrono::NaiveDate;

use super::{Key, Phrase, Value};
use crate::args;

/// What a nudge is made of.
#[derive(Clone, Copy, Debug)]
pub struct NudgeText<'a> {
    /// Whom it speaks to.
    pub name: &'a str,
    /// Their block.
    pub block: &'a str,
    /// The job.
    pub task: &'a Task,
    /// By when to do it: a day that is not past when the text arrives.
    pub by: NaiveDate,
    /// Who signs.
    pub adviser: &'a str,
}

/// The nudge: one job, one date, one word to reply.
#[must_use]
pub fn nudge(nudge: NudgeText<'_>) -> Phrase {
    let figures: &Figures = &nudge.task.figures;
    // What no publication says is never told as a rule.
    let key = if nudge.task.kind == TaskKind::Open && !figures.is_published {
        Key::NudgeOpenUsual
    } else if figures.near.is_some() {
        Key::NudgeNear
    } else {
        Key::Nudge(nudge.task.kind)
    };
    let length = |value: Option<f64>| match value {
        Some(value) if !figures.is_published => Value::Usual(value),
        value => Value::figure(value),
    };
    let args = args! {
        "name" => Value::name(nudge.name),
        "block" => Value::name(nudge.block),
        "adviser" => Value::name(nudge.adviser),
        "by" => nudge.by,
        "since" => figures.since.map_or_else(Value::nothing, Value::Day),
        "trees" => figures.trees.unwrap_or(0),
        "grams" => Value::figure(figures.grams_per_tree),
        "kilograms" => Value::figure(figures.kilograms),
        "height" => length(figures.height_m),
        "girth" => Value::figure(figures.girth_cm),
        "datum" => datum(figures),
        "share" => Value::figure(figures.share_pct),
        "width" => length(figures.width_m),
        "distance" => length(figures.distance_m),
        "pit" => length(figures.pit_cm),
        "walk" => walk(figures),
        "ailment" => figures.near.map_or_else(Value::nothing, Value::from),
    };
    Phrase::new(key, args)
}

/// How high to measure, and from where: between ground and graft lie some ten centimetres.
fn datum(figures: &Figures) -> Phrase {
    let key = match figures.datum {
        Some(Datum::Union) => Key::DatumUnion,
        Some(Datum::Ground) | None => Key::DatumGround,
    };
    Phrase::new(key, args! { "cm" => Value::figure(figures.datum_cm) })
}

/// Which trees to measure: chosen by counting, never by eye.
fn walk(figures: &Figures) -> Phrase {
    match figures.walk {
        Some(walk) => {
            let args = args! { "every" => walk.every, "from" => walk.from };
            Phrase::new(Key::WalkEvery, args)
        }
        None => Key::WalkAll.into(),
    }
}

/// "weed 6, feed 3", most first.
#[must_use]
pub fn task_counts(counts: &BTreeMap<TaskKind, u32>) -> Value {
    let mut sorted: Vec<(TaskKind, u32)> =
        counts.iter().map(|(task, count)| (*task, *count)).collect();
    sorted.sort_by_key(|(task, count)| (std::cmp::Reverse(*count), *task));
    let words = sorted.into_iter().map(|(task, count)| {
        let args = args! { "task" => task, "count" => count };
        Phrase::new(Key::TaskCount, args).into()
    });
    Value::Jobs(words.collect())
}
