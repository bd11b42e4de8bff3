//! Jobs: nudges, and jobs with their numbers.

use std::collections::{BTreeMap, BTreeSet};

use budwood_scheduler::{
    Figures, Task, TaskKind,
    handbook::calendar::Datum,
    jobs::feed::{Portion, Ration},
};
use chrono::NaiveDate;

use super::{Args, Key, Phrase, Value};
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
    /// They were never shown how it is done, and can read it.
    pub is_new: bool,
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
    } else if figures.is_steep {
        Key::NudgeIntercropSteep
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
        "dose" => dose(figures),
        "height" => length(figures.height_m),
        "girth" => Value::figure(figures.girth_cm),
        "datum" => datum(figures),
        "share" => Value::figure(figures.share_pct),
        "width" => length(figures.width_m),
        "distance" => length(figures.distance_m),
        "gap" => length(figures.gap_cm),
        "pit" => pit(figures, length),
        "walk" => walk(figures),
        "how" => if nudge.is_new {
            Value::Extra(Key::NudgeHow.into())
        } else {
            Value::nothing()
        },
        "ailment" => figures.near.map_or_else(Value::nothing, Value::from),
    };
    Phrase::new(key, args)
}

/// What a text of the field round is made of.
#[derive(Clone, Copy, Debug)]
pub struct RoundText<'a> {
    /// Whom it speaks to.
    pub name: &'a str,
    /// Their blocks.
    pub blocks: &'a [String],
    /// What to look at and to do.
    pub jobs: &'a BTreeSet<TaskKind>,
    /// By when: a day that is not past when the text arrives.
    pub by: NaiveDate,
    /// Who signs.
    pub adviser: &'a str,
}

/// One walk over all blocks for several jobs, one word to reply.
#[must_use]
pub fn field_round(round: RoundText<'_>) -> Phrase {
    let mut jobs: Vec<Value> = Vec::new();
    for (name, task) in WALKED {
        if round.jobs.contains(&task) {
            if !jobs.is_empty() {
                jobs.push(Phrase::from(Key::WalkThen).into());
            }
            jobs.push(Phrase::from(name).into());
        }
    }
    let args = args! {
        "name" => Value::name(round.name),
        "block" => Value::List(round.blocks.iter().map(|name| Value::name(name)).collect()),
        "by" => round.by,
        "jobs" => Value::Joined(jobs),
        "adviser" => Value::name(round.adviser),
    };
    Phrase::new(Key::FieldRound, args)
}

/// What a field round is for, in the order of a walk.
const WALKED: [(Key, TaskKind); 5] = [
    (Key::WalkWeeds, TaskKind::Weed),
    (Key::WalkShoots, TaskKind::Prune),
    (Key::WalkRoots, TaskKind::RootCheck),
    (Key::WalkLeaves, TaskKind::LeafCheck),
    (Key::WalkCrops, TaskKind::Intercrop),
];

/// What each tree gets and what it takes for all of them, product by product; where that is too
/// long, in figures alone; and at the least, all products together.
#[must_use]
pub fn dose(figures: &Figures) -> Value {
    let trees = figures.trees.unwrap_or(0);
    let sum = args! {
        "trees" => trees,
        "grams" => Value::figure(figures.grams_per_tree),
        "kilograms" => Value::figure(figures.kilograms),
    };
    let sum = Some(Phrase::new(Key::FeedSum, sum));
    let Some(ration) = figures.rations.first() else {
        return Value::Spare(vec![sum]);
    };
    let grams = |one: &Portion| Phrase::new(Key::FeedGrams, portion(one)).into();
    let weight = |one: &Portion| Phrase::new(Key::FeedWeight, portion(one)).into();
    let full = args! {
        "trees" => trees,
        "products" => plus(" + ", ration, grams),
        "kilograms" => plus(" + ", ration, weight),
    };
    let bare = |one: &Portion| {
        let name = Value::from(one.product.as_str());
        Value::Joined(vec![name, " ".into(), Value::Figure(one.grams_per_tree)])
    };
    let brief = args! {
        "trees" => trees,
        "products" => plus("+", ration, bare),
        "kilograms" => plus("+", ration, |one| Value::Figure(one.kilograms)),
    };
    Value::Spare(vec![
        Some(Phrase::new(Key::FeedDoses, full)),
        Some(Phrase::new(Key::FeedBrief, brief)),
        sum,
    ])
}

fn portion(one: &Portion) -> Args {
    args! {
        "product" => one.product.as_str(),
        "grams" => Value::Figure(one.grams_per_tree),
        "kilograms" => Value::Figure(one.kilograms),
    }
}

fn plus(sign: &str, ration: &Ration, word: impl Fn(&Portion) -> Value) -> Value {
    let mut values = Vec::new();
    for one in &ration.products {
        if !values.is_empty() {
            values.push(Value::from(sign));
        }
        values.push(word(one));
    }
    Value::Joined(values)
}

/// How large to dig: an edge, or how wide and how deep.
fn pit(figures: &Figures, length: impl Fn(Option<f64>) -> Value) -> Phrase {
    let wide = length(figures.pit_cm);
    match figures.round_deep_cm {
        None => Phrase::new(Key::PitEdge, args! { "cm" => wide }),
        Some(deep) => {
            let args = args! { "wide" => wide, "deep" => Value::Figure(deep) };
            Phrase::new(Key::PitRound, args)
        }
    }
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
