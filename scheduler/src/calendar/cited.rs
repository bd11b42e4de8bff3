//! Reads values that carry their source: `{ value = 3.0, source = "fao", confidence = "read" }`.
//!
//! A row of a list of tables carries `source` and `confidence` as keys of its own.

use alloc::{
    collections::BTreeMap,
    format,
    string::{String, ToString},
    vec::Vec,
};
use core::{cell::RefCell, ops::RangeInclusive};

use budwood_parser::table::{Table, TableError};

/// Where one value comes from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Citation {
    /// The path of the value, such as `pits.edge_cm`.
    pub path: String,
    /// Key of the source in [`super::Calendar::sources`].
    pub source: String,
    /// How sure the value is.
    pub confidence: Confidence,
    /// What a reader should know beside it.
    pub note: Option<String>,
}

/// How sure a value is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Confidence {
    /// Read in the source or its abstract.
    Read,
    /// Read in a copy or a secondary page.
    Copy,
    /// Worked out from the source named.
    Derived,
    /// Known to the trade, without a single source.
    CommonPractice,
    /// From memory, no page at hand.
    Memory,
}

impl Confidence {
    /// Every confidence, the surest first.
    pub const ALL: [Self; 5] = [
        Self::Read,
        Self::Copy,
        Self::Derived,
        Self::CommonPractice,
        Self::Memory,
    ];

    /// The name in files.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Read => "read",
            Self::Copy => "copy",
            Self::Derived => "derived",
            Self::CommonPractice => "common practice",
            Self::Memory => "memory",
        }
    }
}

/// The reader of one file: knows its sources, collects its citations.
pub(super) struct Cited {
    pub(super) sources: BTreeMap<String, String>,
    citations: RefCell<Vec<Citation>>,
}

impl Cited {
    pub(super) fn new(file: &Table<'_>) -> Result<Self, TableError> {
        let sources = file.need_table("sources", |list| {
            list.keys()
                .into_iter()
                .map(|key| Ok((key.to_string(), list.need_text(key)?.to_string())))
                .collect()
        })?;
        Ok(Self {
            sources,
            citations: RefCell::new(Vec::new()),
        })
    }

    pub(super) fn into_citations(self) -> Vec<Citation> {
        self.citations.into_inner()
    }

    pub(super) fn number(
        &self,
        table: &Table<'_>,
        key: &str,
        range: RangeInclusive<f64>,
    ) -> Result<f64, TableError> {
        table.need_table(key, |cell| {
            self.cite(cell)?;
            in_range(cell, "value", cell.need_number("value")?, range)
        })
    }

    pub(super) fn whole(
        &self,
        table: &Table<'_>,
        key: &str,
        range: RangeInclusive<u32>,
    ) -> Result<u32, TableError> {
        let value = self.whole_if_there(table, key, range)?;
        value.ok_or_else(|| table.error(key, "is missing"))
    }

    pub(super) fn whole_if_there(
        &self,
        table: &Table<'_>,
        key: &str,
        range: RangeInclusive<u32>,
    ) -> Result<Option<u32>, TableError> {
        table.table(key, |cell| {
            self.cite(cell)?;
            in_range(cell, "value", cell.need_whole("value")?, range)
        })
    }

    pub(super) fn flag(&self, table: &Table<'_>, key: &str) -> Result<bool, TableError> {
        table.need_table(key, |cell| {
            self.cite(cell)?;
            let value = cell.flag("value")?;
            value.ok_or_else(|| cell.error("value", "is missing"))
        })
    }

    /// One of a few words.
    pub(super) fn word<T: Copy>(
        &self,
        table: &Table<'_>,
        key: &str,
        choices: &[T],
        name: impl Fn(T) -> &'static str,
    ) -> Result<T, TableError> {
        table.need_table(key, |cell| {
            self.cite(cell)?;
            one_of(cell, "value", choices, name)
        })
    }

    /// Takes note of where this table's value comes from.
    pub(super) fn cite(&self, table: &Table<'_>) -> Result<(), TableError> {
        let source = table.need_text("source")?;
        if !self.sources.contains_key(source) {
            return Err(table.error("source", format!("\"{source}\" is not listed in sources")));
        }
        let path = table.path_of("source");
        self.citations.borrow_mut().push(Citation {
            path: path.trim_end_matches(".source").to_string(),
            source: source.to_string(),
            confidence: one_of(table, "confidence", &Confidence::ALL, Confidence::name)?,
            note: table.text("note")?.map(ToString::to_string),
        });
        Ok(())
    }
}

/// Refuses a value outside its range.
pub(super) fn in_range<T: PartialOrd + core::fmt::Display>(
    table: &Table<'_>,
    key: &str,
    value: T,
    range: RangeInclusive<T>,
) -> Result<T, TableError> {
    if range.contains(&value) {
        return Ok(value);
    }
    let (least, most) = range.into_inner();
    Err(table.error(key, format!("expected {least} to {most}, found {value}")))
}

fn one_of<T: Copy>(
    table: &Table<'_>,
    key: &str,
    choices: &[T],
    name: impl Fn(T) -> &'static str,
) -> Result<T, TableError> {
    let found = table.need_text(key)?;
    let choice = choices
        .iter()
        .copied()
        .find(|choice| name(*choice) == found);
    choice.ok_or_else(|| {
        let names: Vec<_> = choices.iter().map(|choice| name(*choice)).collect();
        let names = names.join(", ");
        table.error(key, format!("expected one of {names}, found \"{found}\""))
    })
}
