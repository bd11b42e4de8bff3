//! What a list tells of a stand that is there already: trees, girths, tapping, last rounds.

use std::collections::BTreeMap;

use budwood_parser::Kind;
use budwood_scheduler::{Happened, land::enrolment::Known};
use chrono::NaiveDate;

use crate::roll::{cell::Cells, column::Column, finding::Fault};

/// More trees than fifty hectares hold.
const TREES_MAX: u32 = 60_000;

/// What is told only of a planted stand.
const OF_STANDS: [Column; 9] = [
    Column::Alive,
    Column::CountedOn,
    Column::Girths,
    Column::MeasuredOn,
    Column::Opened,
    Column::OpenedOn,
    Column::WeededOn,
    Column::FedOn,
    Column::PrunedOn,
];

/// The last rounds that a list may tell.
const ROUNDS: [(Column, Kind); 3] = [
    (Column::WeededOn, Kind::Weeded),
    (Column::FedOn, Kind::Fertilised),
    (Column::PrunedOn, Kind::Pruned),
];

/// What is known of a stand; none where nothing is planted.
pub(super) fn known(cells: &Cells<'_>) -> Result<Option<Known>, Fault> {
    let planted = pair(
        (Column::PlantedOn, cells.past_span(Column::PlantedOn)?),
        (Column::Planted, cells.trees(Column::Planted, TREES_MAX)?),
    )?;
    let Some((planted_on, trees)) = planted else {
        let mut told = OF_STANDS.into_iter();
        return match told.find(|column| cells.text(*column).is_some()) {
            Some(column) => Err(Fault::HalfPair(Column::Planted, column)),
            None => Ok(None),
        };
    };
    let some = |column| some_of(cells, column, trees);
    let day = |column| day_after(cells, column, planted_on);
    let alive = match (some(Column::Alive)?, day(Column::CountedOn)?) {
        (Some(alive), counted_on) => Some((alive, counted_on)),
        (None, Some(_)) => return Err(Fault::HalfPair(Column::Alive, Column::CountedOn)),
        (None, None) => None,
    };
    let mut last = BTreeMap::new();
    for (column, kind) in ROUNDS {
        if let Some(on) = day(column)? {
            last.insert(kind, on);
        }
    }
    Ok(Some(Known {
        planted: Some((planted_on, trees)),
        clone_name: None,
        alive,
        girths: pair(
            (Column::MeasuredOn, day(Column::MeasuredOn)?),
            (Column::Girths, cells.girths(Column::Girths)?),
        )?,
        opened: pair(
            (Column::OpenedOn, day(Column::OpenedOn)?),
            (Column::Opened, some(Column::Opened)?),
        )?,
        last,
    }))
}

/// Two cells of which each needs the other.
fn pair<A, B>(
    (one, a): (Column, Option<A>),
    (other, b): (Column, Option<B>),
) -> Result<Option<(A, B)>, Fault> {
    match (a, b) {
        (Some(a), Some(b)) => Ok(Some((a, b))),
        (None, None) => Ok(None),
        (Some(_), None) => Err(Fault::HalfPair(other, one)),
        (None, Some(_)) => Err(Fault::HalfPair(one, other)),
    }
}

/// Some of the trees that were planted.
fn some_of(cells: &Cells<'_>, column: Column, planted: u32) -> Result<Option<u32>, Fault> {
    match cells.trees(column, TREES_MAX)? {
        Some(trees) if trees > planted => {
            let want = format!("that is more than the {planted} planted");
            Err(cells.wrong(column, want))
        }
        trees => Ok(trees),
    }
}

/// A day on which the stand was there.
fn day_after(
    cells: &Cells<'_>,
    column: Column,
    planted_on: Happened,
) -> Result<Option<NaiveDate>, Fault> {
    match cells.past_day(column)? {
        Some(day) if day < planted_on.from => Err(cells.wrong(column, "that is before planting")),
        day => Ok(day),
    }
}
