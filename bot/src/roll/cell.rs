//! Typed cells: days, numbers, areas. Each refusal says what to write instead.
//!
//! Deliberately strict: a day such as 5/6/2026 has two readings and a list has nobody to ask, so
//! only the order year-month-day is read.

use budwood_parser::{Measure, Unit};
use budwood_scheduler::Happened;
use chrono::{Datelike, Months, NaiveDate};

use super::{
    column::{Column, RowKind},
    finding::Fault,
    odd,
    rows::Row,
};

/// Rubber stands are felled after some thirty years (common practice); an older day is a
/// spreadsheet's zero or a slip.
const FIRST_YEAR: i32 = 1950;
/// How far ahead plans are made; later is a slip.
const PLAN_YEARS_MAX: u32 = 10;
/// The Buddhist calendar of Thailand and Laos is 543 years ahead (common practice).
const BUDDHIST_YEARS: i32 = 543;
/// Names go into a text of 160 characters together with everything else.
const NAME_CHARS_MAX: usize = 30;
/// Girths that a tree can have, in centimetres.
const GIRTH_CM: std::ops::RangeInclusive<f64> = 1.0..=150.0;
/// More girths than a census of a smallholding has.
const GIRTHS_MAX: usize = 1_000;
/// Short names of groups and blocks are typed on small keys and printed in every text.
const SHORT_NAME_CHARS_MAX: usize = 12;

const DAY_FORM: &str = "write the day as year-month-day, like 2026-04-15";
const SPAN_FORM: &str = "write the day as year-month-day, like 2026-04-15, or only 2026-04 or 2026";
const DAY_ZERO: &str = "this is the first day that a computer knows, and stands for an empty cell; write the day, or leave it empty";
const MONTH_DAY_FORM: &str =
    "write the day as 15 Apr or 04-15, or two with ; between, like 1 Apr; 1 Sep";

/// The cells of one row, read by type.
pub(super) struct Cells<'a> {
    row: &'a Row,
    today: NaiveDate,
}

impl<'a> Cells<'a> {
    pub(super) const fn new(row: &'a Row, today: NaiveDate) -> Self {
        Self { row, today }
    }

    /// The cell as it is.
    pub(super) fn text(&self, column: Column) -> Option<&'a str> {
        self.row.cell(column)
    }

    /// The fault of a cell.
    pub(super) fn wrong(&self, column: Column, want: impl Into<String>) -> Fault {
        Fault::Cell {
            column,
            found: self.text(column).unwrap_or("").to_string(),
            want: want.into(),
        }
    }

    /// A name of a person, which must be there.
    pub(super) fn name(&self, column: Column) -> Result<&'a str, Fault> {
        let name = self.text(column).ok_or_else(|| self.missing(column))?;
        if name.chars().count() > NAME_CHARS_MAX {
            let want =
                format!("write a name of at most {NAME_CHARS_MAX} letters, as people call them");
            return Err(self.wrong(column, want));
        }
        if let Some(letters) = odd::unspoiled(name) {
            let want = format!("the letters were spoiled by a program; write {letters}");
            return Err(self.wrong(column, want));
        }
        if !name.chars().any(char::is_alphabetic) || name.chars().any(char::is_control) {
            return Err(self.wrong(column, "write a name"));
        }
        Ok(name)
    }

    /// A short name of a group or block, one word, which must be there.
    pub(super) fn short_name(&self, column: Column) -> Result<&'a str, Fault> {
        let name = self.text(column).ok_or_else(|| self.missing(column))?;
        let letters = |c: char| c.is_alphanumeric() || matches!(c, '-' | '_' | '\'');
        // Combining vowels of several scripts count as marks, not as letters.
        let fits = |c: char| letters(c) || (!c.is_ascii() && !c.is_control() && !c.is_whitespace());
        if name.chars().count() > SHORT_NAME_CHARS_MAX || !name.chars().all(fits) {
            let want =
                format!("write one word of at most {SHORT_NAME_CHARS_MAX} letters and digits");
            return Err(self.wrong(column, want));
        }
        Ok(name)
    }

    /// One value of a list of names.
    pub(super) fn one_of<T: Copy>(
        &self,
        column: Column,
        values: &[(&str, T)],
    ) -> Result<Option<T>, Fault> {
        let Some(text) = self.text(column) else {
            return Ok(None);
        };
        let found = values
            .iter()
            .find(|(name, _)| name.eq_ignore_ascii_case(text));
        match found {
            Some((_, value)) => Ok(Some(*value)),
            None => {
                let names: Vec<&str> = values.iter().map(|(name, _)| *name).collect();
                Err(self.wrong(column, format!("write one of {}", names.join(", "))))
            }
        }
    }

    /// A day that is over or is today.
    pub(super) fn past_day(&self, column: Column) -> Result<Option<NaiveDate>, Fault> {
        let Some(text) = self.text(column) else {
            return Ok(None);
        };
        let day = iso_day(text).ok_or_else(|| self.wrong(column, DAY_FORM))?;
        self.in_past(column, day)?;
        Ok(Some(day))
    }

    /// A day that may lie ahead.
    pub(super) fn plan_day(&self, column: Column) -> Result<Option<NaiveDate>, Fault> {
        let Some(text) = self.text(column) else {
            return Ok(None);
        };
        let day = iso_day(text).ok_or_else(|| self.wrong(column, DAY_FORM))?;
        let last = self
            .today
            .checked_add_months(Months::new(12 * PLAN_YEARS_MAX));
        if day.year() < FIRST_YEAR || last.is_some_and(|last| day > last) {
            return Err(self.wrong(column, self.odd_year(day)));
        }
        Ok(Some(day))
    }

    /// A day, or any day of a month or a year, that is over or has begun.
    pub(super) fn past_span(&self, column: Column) -> Result<Option<Happened>, Fault> {
        let Some(text) = self.text(column) else {
            return Ok(None);
        };
        let (from, to) = iso_span(text).ok_or_else(|| self.wrong(column, SPAN_FORM))?;
        self.in_past(column, from)?;
        let to = to.min(self.today);
        Ok(Some(Happened { from, to }))
    }

    /// Days of every year, as month and day: one or two, parted by a semicolon.
    pub(super) fn month_days(&self, column: Column) -> Result<Vec<(u32, u32)>, Fault> {
        let Some(text) = self.text(column) else {
            return Ok(Vec::new());
        };
        let days: Option<Vec<_>> = text.split(';').map(|day| month_day(day.trim())).collect();
        days.filter(|days| days.len() <= 2)
            .ok_or_else(|| self.wrong(column, MONTH_DAY_FORM))
    }

    /// A number within bounds, with a point or a comma for decimals.
    pub(super) fn number(&self, column: Column, low: f64, high: f64) -> Result<Option<f64>, Fault> {
        let Some(text) = self.text(column) else {
            return Ok(None);
        };
        let value = match text.strip_prefix('-') {
            Some(text) => decimal(text).map(|value| -value),
            None => decimal(text),
        };
        match value {
            Some(value) if (low..=high).contains(&value) => Ok(Some(value)),
            _ => {
                let want =
                    format!("write a number from {low} to {high}, with a point for decimals");
                Err(self.wrong(column, want))
            }
        }
    }

    /// A clone, in the spelling of the trade.
    pub(super) fn clone_name(&self) -> Result<Option<String>, Fault> {
        let Some(text) = self.text(Column::CloneName) else {
            return Ok(None);
        };
        let name = odd::clone_name(text).ok_or_else(|| {
            let want = "write one clone, like PB260, or leave it empty when it is not known";
            self.wrong(Column::CloneName, want)
        })?;
        Ok(Some(name))
    }

    /// Girths of trees in centimetres, parted by semicolons.
    pub(super) fn girths(&self, column: Column) -> Result<Option<Vec<f64>>, Fault> {
        let Some(text) = self.text(column) else {
            return Ok(None);
        };
        let girths = text
            .split(';')
            .map(str::trim)
            .filter(|cell| !cell.is_empty());
        let girths: Option<Vec<f64>> = girths
            .map(|cell| decimal(cell).filter(|cm| GIRTH_CM.contains(cm)))
            .collect();
        let girths = girths.filter(|girths| (1..=GIRTHS_MAX).contains(&girths.len()));
        girths
            .map(Some)
            .ok_or_else(|| self.wrong(column, "write girths in centimetres, like 41; 43.5; 39"))
    }

    /// A number of trees.
    pub(super) fn trees(&self, column: Column, max: u32) -> Result<Option<u32>, Fault> {
        let Some(text) = self.text(column) else {
            return Ok(None);
        };
        match whole(text) {
            Some(trees) if (1..=max).contains(&trees) => Ok(Some(trees)),
            _ => {
                let want = format!("write a whole number from 1 to {max}, in digits");
                Err(self.wrong(column, want))
            }
        }
    }

    /// An area with its unit. The unit is never guessed.
    pub(super) fn area(&self) -> Result<Option<Measure>, Fault> {
        let units: Vec<(&str, Unit)> = Unit::ALL
            .iter()
            .filter(|unit| unit.is_area())
            .map(|unit| (unit.name(), *unit))
            .collect();
        let unit = self.one_of(Column::Unit, &units)?;
        let Some(text) = self.text(Column::Area) else {
            return Ok(None);
        };
        let value = decimal(text)
            .filter(|value| *value > 0.0)
            .ok_or_else(|| self.wrong(Column::Area, "write a number above 0, like 1.5"))?;
        let unit = unit.ok_or(Fault::HalfPair(Column::Unit, Column::Area))?;
        Ok(Some(Measure { value, unit }))
    }

    fn missing(&self, column: Column) -> Fault {
        Fault::Missing(column, self.row.kind)
    }

    fn in_past(&self, column: Column, day: NaiveDate) -> Result<(), Fault> {
        if odd::is_day_zero(day) {
            return Err(self.wrong(column, DAY_ZERO));
        }
        if day <= self.today && day.year() >= FIRST_YEAR {
            return Ok(());
        }
        let soon = self
            .today
            .checked_add_months(Months::new(12 * PLAN_YEARS_MAX));
        if day > self.today && soon.is_some_and(|soon| day <= soon) {
            return Err(self.wrong(
                column,
                "this day is still to come; write a day that is over",
            ));
        }
        Err(self.wrong(column, self.odd_year(day)))
    }

    fn odd_year(&self, day: NaiveDate) -> String {
        let common = day.year() - BUDDHIST_YEARS;
        if (FIRST_YEAR..=self.today.year() + 1).contains(&common) {
            return format!("{} is a Buddhist year; write {common}", day.year());
        }
        format!("the year is not plausible; {DAY_FORM}")
    }
}

/// The kind of a row, for faults that name it.
impl Cells<'_> {
    pub(super) const fn kind(&self) -> RowKind {
        self.row.kind
    }
}

/// "2026-04-15" and nothing looser (ISO 8601, calendar date, extended format).
fn iso_day(text: &str) -> Option<NaiveDate> {
    let mut parts = text.split('-');
    let (year, month, day) = (parts.next()?, parts.next()?, parts.next()?);
    if parts.next().is_some() {
        return None;
    }
    NaiveDate::from_ymd_opt(
        digits(year, 4)?.try_into().ok()?,
        digits(month, 2)?,
        digits(day, 2)?,
    )
}

/// "2026-04-15", "2026-04" or "2026" (ISO 8601, reduced precision), as first and last day.
fn iso_span(text: &str) -> Option<(NaiveDate, NaiveDate)> {
    if let Some(day) = iso_day(text) {
        return Some((day, day));
    }
    let (year, month) = match text.split_once('-') {
        Some((year, month)) => (digits(year, 4)?, Some(digits(month, 2)?)),
        None => (digits(text, 4)?, None),
    };
    let year = i32::try_from(year).ok()?;
    let from = NaiveDate::from_ymd_opt(year, month.unwrap_or(1), 1)?;
    let months = Months::new(if month.is_some() { 1 } else { 12 });
    let to = from.checked_add_months(months)?.pred_opt()?;
    Some((from, to))
}

/// "15 Apr", "Apr 15" or "04-15", as month and day. 29 February is not a day of every year.
fn month_day(text: &str) -> Option<(u32, u32)> {
    const PLAIN_YEAR: i32 = 2001;
    let (month, day) = match text.split_once('-') {
        Some((month, day)) if digits(month, 2).is_some() => (digits(month, 2)?, digits(day, 2)?),
        _ => {
            let (first, second) = text.split_once([' ', '-', '.'])?;
            let (word, number) = match first.parse::<chrono::Month>() {
                Ok(month) => (month, second),
                Err(_) => (second.parse::<chrono::Month>().ok()?, first),
            };
            if number.len() > 2 || !number.bytes().all(|byte| byte.is_ascii_digit()) {
                return None;
            }
            (word.number_from_month(), number.parse().ok()?)
        }
    };
    NaiveDate::from_ymd_opt(PLAIN_YEAR, month, day).map(|_| (month, day))
}

/// Digits, exactly so many.
fn digits(text: &str, length: usize) -> Option<u32> {
    (text.len() == length && text.bytes().all(|byte| byte.is_ascii_digit()))
        .then(|| text.parse().ok())
        .flatten()
}

fn whole(text: &str) -> Option<u32> {
    text.bytes()
        .all(|byte| byte.is_ascii_digit())
        .then(|| text.parse().ok())
        .flatten()
}

/// "1.5", "1,5" or "2". A comma before exactly three digits may part thousands, and is refused.
fn decimal(text: &str) -> Option<f64> {
    let (before, after) = match text.split_once(['.', ',']) {
        Some((before, after)) => (before, Some(after)),
        None => (text, None),
    };
    let plain = |part: &str| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit());
    if !plain(before) || before.len() > 9 || after.is_some_and(|after| !plain(after)) {
        return None;
    }
    if text.contains(',') && after.is_some_and(|after| after.len() == 3) {
        return None;
    }
    text.replace(',', ".").parse().ok()
}
