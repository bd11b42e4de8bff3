//! What work costs and who does it: a file of the organisation's own, since prices are nobody's
//! handbook.

use std::collections::BTreeMap;

use budwood_parser::table::{Table, TableError, read_file};
use budwood_scheduler::{TaskKind, plan::life::Done};
use chrono::{Datelike, NaiveDate};

/// Jobs, grants and hands.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Costs {
    /// What money is called.
    pub(crate) currency: String,
    /// People who work on the block.
    pub(crate) people: f64,
    work: BTreeMap<TaskKind, Work>,
    grants: BTreeMap<i32, f64>,
}

/// What one round of a job takes.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Work {
    a_hectare: f64,
    a_tree: f64,
    days_a_hectare: f64,
}

/// One month: what goes out, what comes in, and what is in hand after it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Month {
    pub(crate) month: i32,
    pub(crate) paid: f64,
    pub(crate) granted: f64,
    pub(crate) in_hand: f64,
    pub(crate) days: f64,
}

impl Costs {
    /// Reads a file of costs.
    ///
    /// # Errors
    ///
    /// When a key is missing, unknown or wrong.
    pub(crate) fn read(text: &str) -> Result<Self, TableError> {
        read_file(text, |file| {
            let people = positive(file, "people", 1_000.0)?;
            if people < 1.0 {
                return Err(file.error("people", "expected at least 1"));
            }
            Ok(Self {
                currency: file.need_text("currency")?.to_owned(),
                people,
                work: file.tables("work", work)?.into_iter().collect(),
                grants: file.tables("grant", grant)?.into_iter().collect(),
            })
        })
    }

    /// Days that one round of a job takes on so much land with all hands.
    pub(crate) fn days(&self, job: TaskKind, hectares: f64) -> f64 {
        let work = self.work.get(&job);
        work.map_or(0.0, |work| work.days_a_hectare * hectares / self.people)
    }

    /// Money and labour by month after planting, months before it negative.
    pub(crate) fn months(&self, years: &[Done], hectares: f64, points: u32) -> Vec<Month> {
        let mut months: BTreeMap<i32, Month> = BTreeMap::new();
        for (month, amount) in &self.grants {
            months.entry(*month).or_default().granted += amount * hectares;
        }
        let planted = years.iter().find(|done| done.task.kind == TaskKind::Plant);
        for done in years {
            let Some(work) = self.work.get(&done.task.kind) else {
                continue;
            };
            let trees = f64::from(done.task.figures.trees.unwrap_or(points));
            let month = planted.map_or(0, |planted| months_apart(planted.on, done.on));
            let entry = months.entry(month).or_default();
            entry.paid += work.a_hectare * hectares + work.a_tree * trees;
            entry.days += self.days(done.task.kind, hectares);
        }
        let mut in_hand = 0.0;
        for (month, entry) in &mut months {
            in_hand += entry.granted - entry.paid;
            entry.month = *month;
            entry.in_hand = in_hand;
        }
        months.into_values().collect()
    }
}

/// Months from one day to another, as a calendar on the wall has them.
pub(super) fn months_apart(from: NaiveDate, to: NaiveDate) -> i32 {
    let at = |day: NaiveDate| day.year() * 12 + i32::try_from(day.month0()).unwrap_or(0);
    at(to) - at(from)
}

fn work(row: &Table<'_>) -> Result<(TaskKind, Work), TableError> {
    let name = row.need_text("job")?;
    let kind = TaskKind::from_name(name);
    let kind = kind.ok_or_else(|| row.error("job", format!("no job is called \"{name}\"")))?;
    let work = Work {
        a_hectare: positive(row, "a_hectare", 1e9)?,
        a_tree: positive(row, "a_tree", 1e6)?,
        days_a_hectare: positive(row, "days_a_hectare", 1_000.0)?,
    };
    Ok((kind, work))
}

fn grant(row: &Table<'_>) -> Result<(i32, f64), TableError> {
    let month = row.need_number("month")?;
    let whole = (-60..=84).find(|whole| f64::from(*whole) == month);
    let whole = whole.ok_or_else(|| row.error("month", "expected a month from -60 to 84"))?;
    Ok((whole, positive(row, "a_hectare", 1e9)?))
}

fn positive(row: &Table<'_>, key: &str, most: f64) -> Result<f64, TableError> {
    let value = row.number(key)?.unwrap_or(0.0);
    if (0.0..=most).contains(&value) {
        Ok(value)
    } else {
        Err(row.error(key, format!("expected 0 to {most}, found {value}")))
    }
}
