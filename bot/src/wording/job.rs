//! Jobs in words: nudges, and jobs by their short names.

use budwood_scheduler::{Figures, Task, TaskKind};
use chrono::NaiveDate;

use super::{Key, Tongue, fit::short};
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

impl Tongue<'_> {
    /// A job in one or two words.
    #[must_use]
    pub fn job(&self, kind: TaskKind) -> String {
        self.say(Key::Job(kind), args! {})
    }

    /// The nudge: one job, one date, one word to reply.
    #[must_use]
    pub fn nudge(&self, nudge: NudgeText<'_>) -> String {
        let figures: &Figures = &nudge.task.figures;
        let decimal =
            |value: Option<f64>| value.map(|value| self.number(value)).unwrap_or_default();
        // What no publication says is never told as a rule.
        let key = if nudge.task.kind == TaskKind::Open && !figures.is_published {
            Key::NudgeOpenUsual
        } else if figures.near.is_some() {
            Key::NudgeNear
        } else {
            Key::Nudge(nudge.task.kind)
        };
        let near = figures.near.map(|ailment| self.ailment(ailment));
        self.fit(|length| {
            self.say(
                key,
                args! {
                    "name" => short(nudge.name, length),
                    "block" => short(nudge.block, length),
                    "adviser" => short(nudge.adviser, length),
                    "by" => self.day(nudge.by),
                    "since" => figures.since.map(|day| self.day(day)).unwrap_or_default(),
                    "trees" => figures.trees.unwrap_or(0),
                    "grams" => decimal(figures.grams_per_tree),
                    "kilograms" => decimal(figures.kilograms),
                    "height" => decimal(figures.height_m),
                    "girth" => decimal(figures.girth_cm),
                    "datum" => decimal(figures.datum_cm),
                    "share" => decimal(figures.share_pct),
                    "width" => decimal(figures.width_m),
                    "distance" => decimal(figures.distance_m),
                    "pit" => decimal(figures.pit_cm),
                    "walk" => self.walk(figures),
                    "ailment" => near.clone().unwrap_or_default(),
                },
            )
        })
    }

    /// Which trees to measure: chosen by counting, never by eye.
    fn walk(&self, figures: &Figures) -> String {
        match figures.walk {
            Some(walk) => self.say(
                Key::WalkEvery,
                args! { "every" => walk.every, "from" => walk.from },
            ),
            None => self.say(Key::WalkAll, args! {}),
        }
    }
}
