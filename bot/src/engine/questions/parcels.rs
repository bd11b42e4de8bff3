//! What partners get, as tables, places and days; a file each for what goes to whom.
//!
//! Two kinds never mix: names and places of those who agreed that buyers are told (`plots`), and
//! facts and figures by id, without names, numbers and places (`programme`, `calendar`).

mod blocks;
mod calendar;
mod indicators;
mod plots;
mod programme;

use crate::{
    engine::view::View,
    parcel::{days::Day, places::Place},
    sheet::{Cell, Column, ColumnKind, Layout, Sheet},
    store::StoreError,
    words::given::ParcelKind,
};

/// What is given.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Parcel {
    /// Tables, each a file.
    pub sheets: Vec<Sheet>,
    /// Places, if places are given.
    pub places: Option<Vec<Place>>,
    /// Days, if days are given.
    pub days: Option<Vec<Day>>,
    /// What whoever gets it must know.
    pub notes: Vec<String>,
    /// Of how many people it tells.
    pub people: usize,
    /// Of how many blocks it tells.
    pub blocks: usize,
}

impl View<'_> {
    /// What a partner gets.
    pub(crate) fn parcel(self, kind: ParcelKind) -> Result<Parcel, StoreError> {
        match kind {
            ParcelKind::Plots => Ok(self.plots_parcel()),
            ParcelKind::Programme => self.programme_parcel(),
            ParcelKind::Calendar => Ok(self.calendar_parcel()),
        }
    }
}

/// A table for programs: its columns are named alike in every language.
fn table(key: &str, title: &str, columns: &[(&str, ColumnKind)]) -> Sheet {
    let columns = columns.iter().map(|(key, kind)| Column {
        key: (*key).to_owned(),
        title: (*key).to_owned(),
        kind: *kind,
    });
    Sheet {
        key: key.to_owned(),
        number: None,
        title: title.to_owned(),
        head: Vec::new(),
        layout: Layout::Rows,
        columns: columns.collect(),
        rows: Vec::new(),
        notes: Vec::new(),
        language: "en".to_owned(),
        decimal: '.',
    }
}

/// Hectares to the square metre.
fn hectares(value: Option<f64>) -> Cell {
    #[expect(
        clippy::cast_possible_truncation,
        reason = "a cast of this kind stops at the ends of the range"
    )]
    value.map_or(Cell::Blank, |value| {
        Cell::Figure((value * 10_000.0).round() as i64, 4)
    })
}
