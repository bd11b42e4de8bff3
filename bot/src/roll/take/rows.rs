//! Row by row: cells are mended, and a flat row becomes a row of a person and one of a block.

use std::collections::{BTreeMap, BTreeSet};

use budwood_parser::{Measure, Unit};
use budwood_scheduler::words::area::hectares;

use super::{
    Answers, Question, amounts, day,
    findings::{Doubt, Yes},
    grid::Grid,
    heads::Mapping,
    mend,
    mended::Mended,
};
use crate::roll::{column::Column, odd};

/// Fewer trees on a hectare are no stand of rubber; in another unit they may be one. Handbooks plant
/// 400 to 700.
const TREES_PER_HECTARE: std::ops::RangeInclusive<f64> = 200.0..=900.0;
/// The names of a farmer's blocks, where a list has none.
const BLOCKS: &str = "ABCDEFGHJKLMNPQRSTUVWXYZ";
/// Words at the begin of a line of sums.
const SUMS: [&str; 6] = ["total", "sum", "jumlah", "somme", "tổng", "รวม"];

/// The cells of a row by column, none of them empty.
type Cells = BTreeMap<Column, String>;

/// What came out of a list.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Taken {
    /// The plain list, of the rows in which nothing is open.
    pub csv: Vec<u8>,
    /// The line of the office's list behind each line of the plain one, the line of heads included.
    pub lines: Vec<usize>,
    /// What is open.
    pub doubts: Vec<Doubt>,
    /// What must be known of the whole list.
    pub questions: BTreeSet<Question>,
    /// Lines of the office's list that are held back.
    pub held: BTreeSet<usize>,
    /// Line and cells of each row that goes out.
    rows: Vec<(usize, Cells)>,
    /// Whose row each line is.
    who: BTreeMap<usize, String>,
}

impl Taken {
    /// Holds rows back that the check of the plain list refused, each with the reason.
    pub fn refuse(&mut self, refused: &BTreeMap<usize, String>) {
        for (line, why) in refused {
            self.held.insert(*line);
            self.doubts.push(Doubt {
                line: *line,
                who: self.who.get(line).cloned().unwrap_or_default(),
                column: Column::Row.name().to_owned(),
                found: String::new(),
                wrong: why.clone(),
                proposal: None,
            });
        }
        let rows = std::mem::take(&mut self.rows);
        self.write(rows);
    }

    /// The plain list of the rows in which nothing is open.
    fn write(&mut self, mut rows: Vec<(usize, Cells)>) {
        rows.retain(|(line, _)| !self.held.contains(line));
        let mut writer = csv::Writer::from_writer(Vec::new());
        // Writing to memory does not fail.
        let _ = writer.write_record(Column::ALL.iter().map(|column| column.name()));
        self.lines = vec![0];
        for (line, cells) in &rows {
            let columns = Column::ALL.iter();
            let cells = columns.map(|column| cells.get(column).map_or("", String::as_str));
            let _ = writer.write_record(cells);
            self.lines.push(*line);
        }
        self.csv = writer.into_inner().unwrap_or_default();
        self.rows = rows;
    }
}

/// Mends a list.
#[must_use]
pub fn take(grid: &Grid, mapping: &Mapping, answers: &Answers, yes: &Yes) -> Taken {
    let mut answers = answers.clone();
    let days = days(grid, mapping);
    answers.day_order = answers
        .day_order
        .or_else(|| day::order_of(days.iter().copied()));
    let mut taker = Taker {
        answers: &answers,
        mapping,
        yes,
        taken: Taken::default(),
        people: BTreeMap::new(),
        out: Vec::new(),
    };
    for (line, cells) in grid.rows.iter().skip(mapping.head_row + 1) {
        taker.row(*line, cells);
    }
    taker.finish()
}

/// The cells of all columns of days.
fn days<'g>(grid: &'g Grid, mapping: &Mapping) -> Vec<&'g str> {
    let is_day = |column: Column| {
        matches!(
            column,
            Column::ConsentOn
                | Column::ShareOn
                | Column::PlantedOn
                | Column::CountedOn
                | Column::PlannedOn
                | Column::MeasuredOn
                | Column::OpenedOn
                | Column::WeededOn
                | Column::FedOn
                | Column::PrunedOn
        )
    };
    let columns = mapping.columns.iter().enumerate();
    let places =
        columns.filter_map(|(at, (_, column))| column.filter(|one| is_day(*one)).map(|_| at));
    let places: Vec<usize> = places.collect();
    let rows = grid.rows.iter().skip(mapping.head_row + 1);
    rows.flat_map(|(_, cells)| places.iter().filter_map(|at| cells.get(*at)))
        .map(String::as_str)
        .collect()
}

/// A person of the list so far.
struct Known {
    /// The place of their row in what goes out.
    at: usize,
    blocks: BTreeSet<String>,
}

struct Taker<'a> {
    answers: &'a Answers,
    mapping: &'a Mapping,
    yes: &'a Yes,
    taken: Taken,
    people: BTreeMap<(String, String), Known>,
    /// Line and cells of each row that goes out.
    out: Vec<(usize, Cells)>,
}

impl Taker<'_> {
    fn row(&mut self, line: usize, cells: &[String]) {
        let of = |column| {
            let at = self.mapping.place(column)?;
            cells
                .get(at)
                .map(String::as_str)
                .filter(|cell| !cell.is_empty())
        };
        let who = of(Column::Name).unwrap_or_default().to_owned();
        let first = cells.iter().find(|cell| !cell.is_empty());
        let first = first.map(|cell| cell.to_lowercase()).unwrap_or_default();
        let is_sum = SUMS.iter().any(|sum| first.starts_with(sum));
        if is_sum && (who.is_empty() || who.to_lowercase() == first) {
            return;
        }
        self.taken.who.insert(line, who.clone());
        let mut row = Cells::new();
        let mapping = self.mapping;
        for (at, (_, column)) in mapping.columns.iter().enumerate() {
            let (Some(column), Some(cell)) = (column, cells.get(at)) else {
                continue;
            };
            if !cell.is_empty() {
                self.cell(line, &who, *column, cell, &mut row);
            }
        }
        // As it was written: a yes to "they did not agree" empties the cell, and is no consent.
        let written = [
            (Column::ConsentOn, Column::ConsentHow),
            (Column::ShareOn, Column::ShareHow),
        ];
        for (day, how) in written {
            self.consent(line, &who, &mut row, (day, of(day)), (how, of(how)));
        }
        self.unit(line, &who, &mut row);
        if self.mapping.is_plain() {
            self.out.push((line, row));
        } else {
            self.flat(line, &who, row);
        }
    }

    /// One cell; what is open in it holds the row back.
    fn cell(&mut self, line: usize, who: &str, column: Column, cell: &str, row: &mut Cells) {
        let is_head_unit = |unit: Unit| unit.name().to_owned();
        let found = if column == Column::Area {
            let land = amounts::land(cell);
            if let Some(unit) = land.unit {
                row.insert(Column::Unit, is_head_unit(unit));
            }
            Some(land.value)
        } else if column == Column::Unit {
            if row.contains_key(&Column::Unit) {
                return;
            }
            let unit = amounts::unit(cell).map_or_else(|| cell.to_owned(), is_head_unit);
            Some(Mended::Plain(unit))
        } else {
            mend::mended(column, cell, self.answers)
        };
        let key = (line, column.name().to_owned(), cell.to_owned());
        let agreed = self.yes.get(&key).cloned();
        let value = match (agreed, found) {
            (Some(agreed), _) => agreed,
            (None, Some(Mended::Plain(value))) => value,
            (None, Some(Mended::Proposed { value, why })) => {
                return self.doubt(line, who, column, cell, &why, Some(value));
            }
            (None, Some(Mended::Refused(why))) => {
                return self.doubt(line, who, column, cell, &why, None);
            }
            (None, None) => {
                self.taken.questions.insert(Question::DayOrder);
                self.taken.held.insert(line);
                return;
            }
        };
        if !value.is_empty() {
            row.insert(column, value);
        }
    }

    fn doubt(
        &mut self,
        line: usize,
        who: &str,
        column: Column,
        found: &str,
        wrong: &str,
        proposal: Option<String>,
    ) {
        self.taken.held.insert(line);
        self.taken.doubts.push(Doubt {
            line,
            who: who.to_owned(),
            column: column.name().to_owned(),
            found: found.to_owned(),
            wrong: wrong.to_owned(),
            proposal,
        });
    }

    /// A day of consent beside words that say no is no consent, and no more is a day that says no.
    fn consent(
        &mut self,
        line: usize,
        who: &str,
        row: &mut Cells,
        (day, on): (Column, Option<&str>),
        (manner, how): (Column, Option<&str>),
    ) {
        let refuses = |cell: Option<&str>| cell.is_some_and(odd::says_no);
        if refuses(on) || refuses(how) {
            row.remove(&day);
            row.remove(&manner);
        }
        let Some(how) = how else {
            return;
        };
        if odd::says_no(how) {
            let key = (line, manner.name().to_owned(), how.to_owned());
            if !self.yes.contains_key(&key) {
                let why = "this says that they did not agree: they are kept without consent";
                self.doubt(line, who, manner, how, why, Some(String::new()));
            }
            return;
        }
        let is_of_all = day == Column::ConsentOn && !refuses(on);
        match self.answers.consent_on.filter(|_| is_of_all) {
            Some(all) => {
                row.entry(day).or_insert_with(|| all.to_string());
            }
            None if !row.contains_key(&day) => {
                row.remove(&manner);
            }
            None => {}
        }
    }

    /// The unit of the cell, of its column, of the head, of the whole list; and whether trees tell
    /// that it is another.
    fn unit(&mut self, line: usize, who: &str, row: &mut Cells) {
        let Some(area) = row.get(&Column::Area).cloned() else {
            return;
        };
        let told = row.get(&Column::Unit).cloned();
        let unit = told
            .or_else(|| self.mapping.unit.clone())
            .or_else(|| self.answers.unit.clone());
        let Some(unit) = unit else {
            self.taken.questions.insert(Question::Unit);
            self.taken.held.insert(line);
            return;
        };
        let key = (line, Column::Unit.name().to_owned(), unit.clone());
        if let Some(agreed) = self.yes.get(&key) {
            row.insert(Column::Unit, agreed.clone());
            return;
        }
        let trees = row
            .get(&Column::Planted)
            .and_then(|trees| trees.parse::<u32>().ok());
        let size = area.replace(',', ".").parse::<f64>().ok();
        if let (Some(trees), Some(size)) = (trees, size)
            && let Some(other) = likelier(trees, size, &unit)
        {
            let why =
                format!("{trees} trees are few on {area} {unit}, and usual on {area} {other}");
            return self.doubt(line, who, Column::Unit, &unit, &why, Some(other));
        }
        row.insert(Column::Unit, unit);
    }

    /// A row of a person, once, and one of a block.
    fn flat(&mut self, line: usize, who: &str, mut row: Cells) {
        if self.taken.held.contains(&line) {
            return;
        }
        let group = row
            .get(&Column::Group)
            .cloned()
            .or_else(|| self.answers.group.clone());
        let Some(name) = row.get(&Column::Name).cloned() else {
            return self.doubt(line, who, Column::Name, "", "the name is missing", None);
        };
        let Some(group) = group else {
            self.taken.questions.insert(Question::Group);
            self.taken.held.insert(line);
            return;
        };
        let group = group.to_uppercase();
        row.insert(Column::Group, group.clone());
        let of_block = |column: &Column| {
            column.need(crate::roll::RowKind::Block).is_some()
                && column.need(crate::roll::RowKind::Person).is_none()
        };
        let (mut block, mut person): (Cells, Cells) =
            row.into_iter().partition(|(column, _)| of_block(column));
        let key = (group.clone(), name.to_lowercase());
        let known = self.people.get(&key).map(|known| known.at);
        match known {
            Some(at) if block.is_empty() => {
                let before = self.out.get(at).map_or(0, |(line, _)| *line);
                let why = format!("the same person is on line {before}");
                return self.doubt(line, who, Column::Name, &name, &why, None);
            }
            Some(at) => self.more_of(at, person),
            None => {
                let at = self.out.len();
                person.insert(Column::Row, "person".to_owned());
                self.out.push((line, person));
                let blocks = BTreeSet::new();
                self.people.insert(key.clone(), Known { at, blocks });
            }
        }
        if block.is_empty() {
            return;
        }
        if let Some(known) = self.people.get_mut(&key) {
            let mut free = BLOCKS.chars().map(|name| name.to_string());
            let given = block.get(&Column::Block).cloned();
            let called = given.or_else(|| free.find(|name| !known.blocks.contains(name)));
            let called = called.unwrap_or_default();
            known.blocks.insert(called.clone());
            block.insert(Column::Block, called);
        }
        block.insert(Column::Row, "block".to_owned());
        block.insert(Column::Group, group);
        block.insert(Column::Name, name);
        self.out.push((line, block));
    }

    /// A later row of the same person: another number is one more.
    fn more_of(&mut self, at: usize, later: Cells) {
        let Some((_, person)) = self.out.get_mut(at) else {
            return;
        };
        for (column, value) in later {
            match person.get_mut(&column) {
                None => {
                    person.insert(column, value);
                }
                Some(known) if column == Column::Phone && !known.contains(&value) => {
                    *known = format!("{known}; {value}");
                }
                Some(_) => {}
            }
        }
    }

    fn finish(mut self) -> Taken {
        let mut rows = self.groups();
        rows.append(&mut self.out);
        self.taken.write(rows);
        self.taken
    }

    /// A row for each group, where zone and calendar of new groups are told.
    fn groups(&self) -> Vec<(usize, Cells)> {
        let (Some(zone), Some(calendar)) = (&self.answers.zone, &self.answers.calendar) else {
            return Vec::new();
        };
        let groups: BTreeSet<&String> = self.people.keys().map(|(group, _)| group).collect();
        let row = |group: &&String| {
            let cells = [
                (Column::Row, "group".to_owned()),
                (Column::Group, (*group).clone()),
                (Column::Zone, zone.clone()),
                (Column::Calendar, calendar.clone()),
            ];
            (0, Cells::from(cells))
        };
        groups.iter().map(row).collect()
    }
}

/// The unit in which so many trees are usual, where they are far too few in this one.
fn likelier(trees: u32, size: f64, unit: &str) -> Option<String> {
    let a_hectare = |unit: Unit| {
        let land = hectares(Measure { value: size, unit }).filter(|land| *land > 0.0)?;
        Some(f64::from(trees) / land)
    };
    let told = amounts::unit(unit)?;
    let least = TREES_PER_HECTARE.start();
    if trees == 0 || a_hectare(told)? >= *least {
        return None;
    }
    let others = [Unit::Rai, Unit::Acre];
    let mut others = others.into_iter().filter(|unit| *unit != told);
    let other = others
        .find(|unit| a_hectare(*unit).is_some_and(|trees| TREES_PER_HECTARE.contains(&trees)))?;
    Some(other.name().to_owned())
}
