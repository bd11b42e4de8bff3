//! Jobs in words: nudges, and jobs by their short names.

use budwood_scheduler::{Figures, Task, TaskKind, handbook::calendar::Datum};
use chrono::NaiveDate;

use super::{Tongue, fit::short};
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
        self.say(&format!("job-{}", kind.name()), args! {})
    }

    /// The nudge: one job, one date, one word to reply.
    #[must_use]
    pub fn nudge(&self, nudge: NudgeText<'_>) -> String {
        let figures: &Figures = &nudge.task.figures;
        // What no publication says is never told as a rule.
        let key = if nudge.task.kind == TaskKind::Open && !figures.is_published {
            "nudge-open-usual".to_owned()
        } else if figures.near.is_some() {
            "nudge-near".to_owned()
        } else {
            format!("nudge-{}", nudge.task.kind.name())
        };
        let near = figures.near.map(|ailment| self.ailment(ailment));
        let decimal =
            |value: Option<f64>| value.map(|value| self.number(value)).unwrap_or_default();
        let args = |length: usize, is_usual: bool| {
            let length_of = |value: Option<f64>| match (is_usual, value) {
                (true, Some(value)) => self.usual(value),
                _ => decimal(value),
            };
            args! {
                "name" => short(nudge.name, length),
                "block" => short(nudge.block, length),
                "adviser" => short(nudge.adviser, length),
                "by" => self.day(nudge.by),
                "since" => figures.since.map(|day| self.day(day)).unwrap_or_default(),
                "trees" => figures.trees.unwrap_or(0),
                "grams" => decimal(figures.grams_per_tree),
                "kilograms" => decimal(figures.kilograms),
                "height" => length_of(figures.height_m),
                "girth" => decimal(figures.girth_cm),
                "datum" => self.datum(figures),
                "share" => decimal(figures.share_pct),
                "width" => length_of(figures.width_m),
                "distance" => length_of(figures.distance_m),
                "pit" => length_of(figures.pit_cm),
                "walk" => self.walk(figures),
                "ailment" => near.clone().unwrap_or_default(),
            }
        };
        let as_usual = || {
            self.one_sms(|length| self.say(&key, args(length, true)))
                .ok()
        };
        let as_usual = (!figures.is_published).then(as_usual).flatten();
        as_usual.unwrap_or_else(|| self.fit_text(&key, |length| args(length, false)))
    }

    /// A length that no publication stands behind: what many do, not a rule.
    fn usual(&self, value: f64) -> String {
        self.say("usual", args! { "value" => self.number(value) })
    }

    /// How high to measure, and from where: between ground and graft lie some ten centimetres.
    fn datum(&self, figures: &Figures) -> String {
        let cm = figures.datum_cm.map(|cm| self.number(cm));
        let key = match figures.datum {
            Some(Datum::Union) => "datum-union",
            Some(Datum::Ground) | None => "datum-ground",
        };
        self.say(key, args! { "cm" => cm.unwrap_or_default() })
    }

    /// Which trees to measure: chosen by counting, never by eye.
    fn walk(&self, figures: &Figures) -> String {
        match figures.walk {
            Some(walk) => self.say(
                "walk-every",
                args! { "every" => walk.every, "from" => walk.from },
            ),
            None => self.say("walk-all", args! {}),
        }
    }
}
