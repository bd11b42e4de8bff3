//! From bytes to rows of named cells: encoding, separator, first line, counting of lines.
//!
//! Spreadsheets save CSV in many ways. What is harmless is handled (a byte order mark, line ends
//! of any system, `;` or a tab between cells, blanks, empty rows, empty cells at the end); what
//! would change a value is refused.

use csv::{ByteRecord, ReaderBuilder};

use crate::words::limits;

use super::{
    column::{Column, RowKind},
    finding::{Fault, Finding, Severity},
};

/// One row, its filled cells by column.
#[derive(Debug)]
pub(super) struct Row {
    /// Line of the file on which it begins, from 1.
    pub(super) line: usize,
    /// What it describes.
    pub(super) kind: RowKind,
    /// A cell of it was refused. The row is kept so that others can still refer to it.
    pub(super) refused: bool,
    cells: Vec<(Column, String)>,
}

impl Row {
    /// The cell, if it is filled.
    pub(super) fn cell(&self, column: Column) -> Option<&str> {
        self.cells
            .iter()
            .find(|(at, _)| *at == column)
            .map(|(_, text)| text.as_str())
    }
}

/// Reads the rows that can be read; what cannot be is added to the findings.
pub(super) fn read(csv: &[u8], findings: &mut Vec<Finding>) -> Vec<Row> {
    let body = match text_of(csv) {
        Ok(body) => body,
        Err(finding) => {
            findings.push(finding);
            return Vec::new();
        }
    };
    let mut lines = Lines::new(body.as_bytes());
    let first = body.lines().find(|line| !line.trim().is_empty());
    let mut reader = ReaderBuilder::new()
        .delimiter(separator(first.into_iter()))
        .has_headers(false)
        .flexible(true)
        .from_reader(body.as_bytes());
    let mut record = ByteRecord::new();
    let mut columns: Option<Vec<Column>> = None;
    let mut rows = Vec::new();
    // Reading from memory cannot fail, and rows of any length are let through.
    while reader.read_byte_record(&mut record).unwrap_or(false) {
        let offset = record.position().map_or(0, csv::Position::byte);
        let line = lines.at(offset);
        let cells = cells_of(&record);
        if cells.iter().all(String::is_empty) {
            continue;
        }
        let Some(columns) = &columns else {
            match header(&cells) {
                Ok(found) => columns = Some(found),
                Err(faults) => {
                    findings.extend(faults.into_iter().map(|fault| Finding { line, fault }));
                    return Vec::new();
                }
            }
            continue;
        };
        if rows.len() == limits::ROLL_ROWS_MAX {
            let fault = Fault::RowsMany;
            findings.push(Finding { line, fault });
            break;
        }
        match row(line, columns, cells) {
            Ok((row, faults)) => {
                findings.extend(faults.into_iter().map(|fault| Finding { line, fault }));
                rows.push(row);
            }
            Err(fault) => findings.push(Finding { line, fault }),
        }
    }
    if columns.is_none() {
        let fault = Fault::FileEmpty;
        findings.push(Finding { line: 1, fault });
    }
    rows
}

/// The text of the file, without a byte order mark.
fn text_of(csv: &[u8]) -> Result<&str, Finding> {
    let at = |line, fault| Err(Finding { line, fault });
    // An archive (the newer workbooks) or a compound file (the older ones).
    if csv.starts_with(b"PK\x03\x04") || csv.starts_with(b"\xD0\xCF\x11\xE0") {
        return at(1, Fault::Workbook);
    }
    if csv.len() > limits::ROLL_FILE_BYTES_MAX {
        return at(1, Fault::FileLarge);
    }
    let csv = csv.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(csv);
    match str::from_utf8(csv) {
        // Text in two bytes a letter is valid UTF-8 as long as it is English, but full of zeros.
        Ok(text) => match text.find('\0') {
            None => Ok(text),
            Some(offset) => at(Lines::new(csv).at(offset as u64), Fault::NotUtf8),
        },
        Err(error) => {
            let offset = error.valid_up_to() as u64;
            at(Lines::new(csv).at(offset), Fault::NotUtf8)
        }
    }
}

/// The separator: of the three in use, the one that these lines have most of.
pub(super) fn separator<'a>(lines: impl Iterator<Item = &'a str>) -> u8 {
    let bytes: Vec<u8> = lines.flat_map(str::bytes).collect();
    let count = |separator: u8| bytes.iter().filter(|byte| **byte == separator).count();
    let mut best = b',';
    for candidate in *b";\t" {
        if count(candidate) > count(best) {
            best = candidate;
        }
    }
    best
}

/// The cells, blanks at the ends and doubled blanks taken out. The text was UTF-8 as a whole and
/// separators are ASCII, so no cell can lose a letter here.
fn cells_of(record: &ByteRecord) -> Vec<String> {
    record
        .iter()
        .map(|cell| {
            let text = String::from_utf8_lossy(cell);
            text.split_whitespace().collect::<Vec<_>>().join(" ")
        })
        .collect()
}

fn header(cells: &[String]) -> Result<Vec<Column>, Vec<Fault>> {
    let filled = cells.iter().rposition(|cell| !cell.is_empty());
    let mut columns = Vec::new();
    let mut faults = Vec::new();
    for cell in cells.iter().take(filled.map_or(0, |last| last + 1)) {
        match Column::from_name(&cell.to_lowercase()) {
            None => faults.push(Fault::ColumnUnknown(cell.clone())),
            Some(column) if columns.contains(&column) => faults.push(Fault::ColumnTwice(column)),
            Some(column) => columns.push(column),
        }
    }
    if !columns.contains(&Column::Row) {
        // Most likely there is no first line with names at all: say that instead of a complaint
        // about every cell.
        return Err(vec![Fault::NoHeader]);
    }
    if faults.is_empty() {
        Ok(columns)
    } else {
        Err(faults)
    }
}

/// A row, with what is wrong in single cells of it.
fn row(
    line: usize,
    columns: &[Column],
    mut cells: Vec<String>,
) -> Result<(Row, Vec<Fault>), Fault> {
    while cells.len() > columns.len() && cells.last().is_some_and(String::is_empty) {
        cells.pop();
    }
    if cells.len() != columns.len() {
        return Err(Fault::CellCount {
            found: cells.len(),
            expected: columns.len(),
        });
    }
    let mut cells: Vec<(Column, String)> = columns.iter().copied().zip(cells).collect();
    cells.retain(|(_, text)| !text.is_empty());
    let kind = row_kind(&cells)?;
    let mut faults = Vec::new();
    cells.retain(|(column, text)| match cell_fault(*column, text, kind) {
        Some(fault) => {
            faults.push(fault);
            false
        }
        None => true,
    });
    let refused = faults
        .iter()
        .any(|fault| fault.severity() == Severity::Refused);
    let row = Row {
        line,
        kind,
        refused,
        cells,
    };
    Ok((row, faults))
}

fn row_kind(cells: &[(Column, String)]) -> Result<RowKind, Fault> {
    let cell = cells.iter().find(|(column, _)| *column == Column::Row);
    let word = cell.map_or("", |(_, text)| text.as_str());
    RowKind::ALL
        .into_iter()
        .find(|kind| kind.name().eq_ignore_ascii_case(word))
        .ok_or_else(|| Fault::Cell {
            column: Column::Row,
            found: word.to_string(),
            want: "write group, person or block".to_string(),
        })
}

fn cell_fault(column: Column, text: &str, kind: RowKind) -> Option<Fault> {
    if text.chars().count() > limits::ROLL_CELL_CHARS_MAX {
        return Some(Fault::CellLong(column));
    }
    let is_sign = column == Column::Phone && text.starts_with('+')
        || matches!(column, Column::Latitude | Column::Longitude) && text.starts_with('-');
    if text.starts_with(['=', '+', '-', '@']) && !is_sign {
        return Some(Fault::Formula(column));
    }
    column
        .need(kind)
        .is_none()
        .then_some(Fault::NotUsed(column, kind))
}

/// Counts lines up to an offset. Offsets must not go back, so that a file is counted once.
pub(super) struct Lines<'a> {
    bytes: &'a [u8],
    offset: usize,
    line: usize,
}

impl<'a> Lines<'a> {
    pub(super) const fn new(bytes: &'a [u8]) -> Self {
        Self {
            bytes,
            offset: 0,
            line: 1,
        }
    }

    /// The line of the first byte at or after `offset` that is not a line end: the reader names
    /// the place before the empty lines that it passes over.
    pub(super) fn at(&mut self, offset: u64) -> usize {
        let offset = usize::try_from(offset).unwrap_or(usize::MAX);
        while let Some(byte) = self.bytes.get(self.offset) {
            if self.offset >= offset && !matches!(byte, b'\r' | b'\n') {
                break;
            }
            let next = self.bytes.get(self.offset + 1);
            if *byte == b'\n' || (*byte == b'\r' && next != Some(&b'\n')) {
                self.line += 1;
            }
            self.offset += 1;
        }
        self.line
    }
}
