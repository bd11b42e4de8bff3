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

/// What another publication says of a value: both are published, and nothing here decides.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct AlsoPublished {
    /// The path of the value.
    pub of: String,
    /// What the other says, in words.
    pub says: String,
    /// Key of the source in [`super::Calendar::sources`].
    pub source: String,
    /// How sure it is.
    pub confidence: Confidence,
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

    /// Whether a page stands behind it.
    #[must_use]
    pub const fn is_published(self) -> bool {
        match self {
            Self::Read | Self::Copy | Self::Derived => true,
            Self::CommonPractice | Self::Memory => false,
        }
    }
}

/// The reader of one file: knows its sources, collects its citations and its faults.
///
/// A fault does not end the reading, so that who wrote the file sees all of them at once. In the
/// place of a value that is wrong stands one that is in range; no calendar is made of it.
pub(super) struct Cited {
    pub(super) sources: BTreeMap<String, String>,
    citations: RefCell<Vec<Citation>>,
    faults: RefCell<Vec<TableError>>,
}

impl Cited {
    pub(super) fn new(file: &Table<'_>) -> Self {
        let faults = RefCell::new(Vec::new());
        let mut sources = BTreeMap::new();
        let read = file.need_table("sources", |list| {
            for key in list.keys() {
                match list.need_text(key) {
                    Ok(text) => {
                        sources.insert(key.to_string(), text.to_string());
                    }
                    Err(fault) => faults.borrow_mut().push(fault),
                }
            }
            Ok(())
        });
        faults.borrow_mut().extend(read.err());
        Self {
            sources,
            citations: RefCell::new(Vec::new()),
            faults,
        }
    }

    /// The sources that something was taken from, the citations, and the faults.
    pub(super) fn into_parts(self) -> (BTreeMap<String, String>, Vec<Citation>, Vec<TableError>) {
        (
            self.sources,
            self.citations.into_inner(),
            self.faults.into_inner(),
        )
    }

    /// Takes note of a fault.
    pub(super) fn fault(&self, fault: TableError) {
        self.faults.borrow_mut().push(fault);
    }

    /// How many faults were told so far.
    pub(super) fn number_of_faults(&self) -> usize {
        self.faults.borrow().len()
    }

    /// What was read, or none and a fault.
    pub(super) fn keep<T>(&self, read: Result<T, TableError>) -> Option<T> {
        read.map_err(|fault| self.fault(fault)).ok()
    }

    /// A table that must be there, with every key in it asked for.
    pub(super) fn section<T>(
        &self,
        table: &Table<'_>,
        key: &str,
        read: impl FnOnce(&Table<'_>) -> T,
    ) -> Option<T> {
        self.keep(table.need_table(key, |inner| Ok(self.whole_of(inner, read))))
    }

    /// The rows of a list of tables.
    pub(super) fn rows<T>(
        &self,
        table: &Table<'_>,
        key: &str,
        read: impl Fn(&Table<'_>) -> T,
    ) -> Vec<T> {
        let rows = table.tables(key, |row| Ok(self.whole_of(row, &read)));
        self.keep(rows).unwrap_or_default()
    }

    fn whole_of<T>(&self, table: &Table<'_>, read: impl FnOnce(&Table<'_>) -> T) -> T {
        let value = read(table);
        self.faults.borrow_mut().extend(table.take_unknown());
        value
    }

    pub(super) fn number(&self, table: &Table<'_>, key: &str, range: RangeInclusive<f64>) -> f64 {
        let least = *range.start();
        self.number_if_there(table, key, range)
            .unwrap_or_else(|| self.missing(table, key, least))
    }

    pub(super) fn number_if_there(
        &self,
        table: &Table<'_>,
        key: &str,
        range: RangeInclusive<f64>,
    ) -> Option<f64> {
        self.cell(table, key, |cell| {
            let least = *range.start();
            let value = cell.need_number("value");
            let value = value.and_then(|value| in_range(cell, "value", value, range));
            self.keep(value).unwrap_or(least)
        })
    }

    pub(super) fn whole(&self, table: &Table<'_>, key: &str, range: RangeInclusive<u32>) -> u32 {
        let least = *range.start();
        self.whole_if_there(table, key, range)
            .unwrap_or_else(|| self.missing(table, key, least))
    }

    pub(super) fn whole_if_there(
        &self,
        table: &Table<'_>,
        key: &str,
        range: RangeInclusive<u32>,
    ) -> Option<u32> {
        self.cell(table, key, |cell| self.whole_here(cell, "value", range))
    }

    /// A whole number of a row, whose source is the row's.
    pub(super) fn whole_here(
        &self,
        table: &Table<'_>,
        key: &str,
        range: RangeInclusive<u32>,
    ) -> u32 {
        let least = *range.start();
        let value = table.need_whole(key);
        let value = value.and_then(|value| in_range(table, key, value, range));
        self.keep(value).unwrap_or(least)
    }

    /// A number of a row, whose source is the row's.
    pub(super) fn number_here(
        &self,
        table: &Table<'_>,
        key: &str,
        range: RangeInclusive<f64>,
    ) -> f64 {
        let least = *range.start();
        let value = table.need_number(key);
        let value = value.and_then(|value| in_range(table, key, value, range));
        self.keep(value).unwrap_or(least)
    }

    pub(super) fn flag(&self, table: &Table<'_>, key: &str) -> bool {
        let flag = self.cell(table, key, |cell| {
            let value = cell
                .flag("value")
                .and_then(|value| value.ok_or_else(|| cell.error("value", "is missing")));
            self.keep(value).unwrap_or_default()
        });
        flag.unwrap_or_else(|| self.missing(table, key, false))
    }

    /// One of a few words.
    pub(super) fn word<T: Copy>(
        &self,
        table: &Table<'_>,
        key: &str,
        choices: &[T],
        name: impl Fn(T) -> &'static str,
    ) -> Option<T> {
        let word = self.cell(table, key, |cell| {
            self.keep(one_of(cell, "value", choices, name))
        });
        word.unwrap_or_else(|| self.missing(table, key, None))
    }

    /// A value with its source, if it is there.
    pub(super) fn cell<T>(
        &self,
        table: &Table<'_>,
        key: &str,
        read: impl FnOnce(&Table<'_>) -> T,
    ) -> Option<T> {
        let cell = table.table(key, |cell| {
            Ok(self.whole_of(cell, |cell| {
                self.cite(cell);
                read(cell)
            }))
        });
        self.keep(cell).flatten()
    }

    /// A value that is missing is a fault, unless it was there and told of already.
    fn missing<T>(&self, table: &Table<'_>, key: &str, instead: T) -> T {
        let path = table.path_of(key);
        let is_told = self.faults.borrow().iter().any(|fault| fault.path == path);
        if !is_told {
            self.fault(table.error(key, "is missing"));
        }
        instead
    }

    /// Takes note of where this table's value comes from.
    pub(super) fn cite(&self, table: &Table<'_>) {
        let source = self.keep(table.need_text("source"));
        if let Some(source) = source
            && !self.sources.contains_key(source)
        {
            self.fault(table.error("source", format!("\"{source}\" is not listed in sources")));
        }
        let confidence = one_of(table, "confidence", &Confidence::ALL, Confidence::name);
        let confidence = self.keep(confidence);
        let note = self.keep(table.text("note")).flatten();
        let path = table.path_of("source");
        if let (Some(source), Some(confidence)) = (source, confidence) {
            self.citations.borrow_mut().push(Citation {
                path: path.trim_end_matches(".source").to_string(),
                source: source.to_string(),
                confidence,
                note: note.map(ToString::to_string),
            });
        }
    }

    /// What another publication says of a value.
    pub(super) fn also_published(&self, row: &Table<'_>) -> Option<AlsoPublished> {
        self.cite(row);
        let path = self.keep(row.need_text("of"))?;
        let says = self.keep(row.need_text("says"))?;
        // The row's own citation was just noted: it belongs to the contradiction, not to a value.
        let cited = self.citations.borrow_mut().pop()?;
        Some(AlsoPublished {
            of: path.to_string(),
            says: says.to_string(),
            source: cited.source,
            confidence: cited.confidence,
        })
    }
}

/// Refuses a value outside its range, and says in which unit it is asked for.
fn in_range<T: PartialOrd + core::fmt::Display>(
    table: &Table<'_>,
    key: &str,
    value: T,
    range: RangeInclusive<T>,
) -> Result<T, TableError> {
    if range.contains(&value) {
        return Ok(value);
    }
    let (least, most) = range.into_inner();
    let path = table.path_of(key);
    let unit = unit_of(path.trim_end_matches(".value"));
    Err(table.error(
        key,
        format!("expected {least} to {most}{unit}, found {value}"),
    ))
}

/// The unit that the name of a value ends with, in words.
fn unit_of(path: &str) -> &'static str {
    let units = [
        ("_pct", " per cent"),
        ("_cm", " centimetres"),
        ("_m", " metres"),
        ("_month", " months after planting"),
        ("_months", " months after planting"),
        ("_months_before", " months before planting"),
        ("_days_before", " days before"),
        ("_days", " days"),
        ("_trees", " trees"),
    ];
    let found = units.iter().find(|(end, _)| path.ends_with(end));
    found.map_or("", |(_, unit)| unit)
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
