//! A table for people: what a sheet of paper, a page, a file or a terminal shows.
//!
//! Made from the same figures as the answers by text, in the words of one language, and written in
//! several forms, each of which has a file here. Deliberately absent: anything of rubber, and where
//! the rows come from; that is the engine's `questions::sheets`.

mod csv;
mod page;
#[cfg(feature = "paper")]
mod paper;
mod square;
mod terminal;
mod xlsx;

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

/// A table, worded.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sheet {
    /// Its name in files and addresses: "meeting".
    pub key: String,
    /// The number under which its rows are on record, if they are.
    pub number: Option<u32>,
    /// The first line.
    pub title: String,
    /// What stands under the title: who, when, how much in all.
    pub head: Vec<String>,
    /// How it is laid out on pages.
    pub layout: Layout,
    /// The columns, from the left.
    pub columns: Vec<Column>,
    /// The rows, each with a cell for every column.
    pub rows: Vec<Vec<Cell>>,
    /// What stands below the rows.
    pub notes: Vec<String>,
    /// The code of its language.
    pub language: String,
    /// What stands between whole and tenths where the language is spoken.
    pub decimal: char,
}

/// How rows are laid out on pages and paper. Files have rows either way.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Layout {
    /// A table.
    Rows,
    /// A card for each row, to be cut out: the first cell above, the others below.
    Cards,
}

/// A column.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Column {
    /// Its name in files: the same in every language.
    pub key: String,
    /// What is written above it.
    pub title: String,
    /// What is in it.
    pub kind: ColumnKind,
}

/// What is in a column. Writers choose width, side and type of cell by it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ColumnKind {
    /// Words and names.
    Words,
    /// Numbers.
    Number,
    /// A day.
    Day,
    /// A number to text, shown also as a code that phones read.
    Code,
    /// Nothing: a person writes into it. So many letters are to have room.
    Blank(u8),
}

/// What stands in a cell.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Cell {
    /// Words.
    Words(String),
    /// A whole number.
    Count(u64),
    /// A number with decimals, as so many of the last decimal: 125 and 1 are 12.5.
    Figure(i64, u8),
    /// A day, as files write it.
    Day(NaiveDate),
    /// Nothing: it is not known, or to be filled in by hand.
    Blank,
}

impl Sheet {
    /// What a cell shows, the same in every form.
    #[must_use]
    pub fn shown(&self, cell: &Cell) -> String {
        match cell {
            Cell::Words(words) => words.clone(),
            Cell::Count(count) => count.to_string(),
            Cell::Figure(units, decimals) => self.decimals(*units, *decimals),
            Cell::Day(day) => day.to_string(),
            Cell::Blank => String::new(),
        }
    }

    fn decimals(&self, units: i64, decimals: u8) -> String {
        let sign = if units < 0 { "-" } else { "" };
        let ten = 10_u64.saturating_pow(decimals.into()).max(1);
        let (whole, part) = (units.unsigned_abs() / ten, units.unsigned_abs() % ten);
        let places = usize::from(decimals);
        if places == 0 {
            return format!("{sign}{whole}");
        }
        format!("{sign}{whole}{}{part:0places$}", self.decimal)
    }

    /// The rows as they are shown.
    pub fn shown_rows(&self) -> impl Iterator<Item = Vec<String>> {
        let rows = self.rows.iter();
        rows.map(|row| row.iter().map(|cell| self.shown(cell)).collect())
    }
}

impl Cell {
    /// Kilograms and other measures: with one decimal.
    #[must_use]
    pub fn tenths(value: f64) -> Self {
        #[expect(
            clippy::cast_possible_truncation,
            reason = "a cast of this kind stops at the ends of the range"
        )]
        let units = (value * 10.0).round() as i64;
        Self::Figure(units, 1)
    }

    /// A number without decimals.
    #[must_use]
    pub fn whole(value: f64) -> Self {
        #[expect(
            clippy::cast_possible_truncation,
            reason = "a cast of this kind stops at the ends of the range"
        )]
        let units = value.round() as i64;
        Self::Figure(units, 0)
    }

    /// Money in hundredths.
    #[must_use]
    pub fn cents(cents: u64) -> Self {
        Self::Figure(i64::try_from(cents).unwrap_or(i64::MAX), 2)
    }
}

impl ColumnKind {
    /// Whether its cells stand on the right.
    const fn is_right(self) -> bool {
        matches!(self, Self::Number)
    }
}

impl From<&str> for Cell {
    fn from(words: &str) -> Self {
        Self::Words(words.to_owned())
    }
}

impl From<String> for Cell {
    fn from(words: String) -> Self {
        Self::Words(words)
    }
}

impl From<u32> for Cell {
    fn from(count: u32) -> Self {
        Self::Count(count.into())
    }
}

impl From<usize> for Cell {
    fn from(count: usize) -> Self {
        Self::Count(u64::try_from(count).unwrap_or(u64::MAX))
    }
}

impl<T: Into<Self>> From<Option<T>> for Cell {
    fn from(known: Option<T>) -> Self {
        known.map_or(Self::Blank, Into::into)
    }
}
