//! The cells of a file: CSV in any common encoding, and the workbooks of spreadsheet programs.

use std::io::Cursor;

use calamine::{Data, Reader, open_workbook_auto_from_rs};
use encoding_rs::{Encoding, UTF_8, UTF_16BE, UTF_16LE, WINDOWS_874, WINDOWS_1252, WINDOWS_1258};
use unicode_normalization::UnicodeNormalization;

use crate::{
    roll::rows::{Lines, separator},
    words::limits,
};

/// More columns than that are no list of people.
const COLUMNS_MAX: usize = 100;
/// Thai words are written with this many letters in a row, which no other old encoding has.
const THAI_RUN: usize = 3;
/// Letters that Vietnamese has in its old encoding, and Western languages seldom.
const VIETNAMESE: [u8; 5] = [0xD0, 0xF0, 0xFD, 0xDD, 0xCC];

/// The rows of a file, each with the line or row that a person finds it under.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Grid {
    /// Line, counted from 1, and cells.
    pub rows: Vec<(usize, Vec<String>)>,
}

/// Why a file has no cells.
#[derive(Debug, thiserror::Error)]
pub enum GridFault {
    /// Far too many bytes.
    #[error("the file has more than {} MB; split it by group", limits::ROLL_FILE_BYTES_MAX / 1_000_000)]
    Large,
    /// A workbook that cannot be opened.
    #[error("this workbook cannot be read ({0}); save it as CSV, or without a password")]
    Workbook(String),
    /// No cell is filled.
    #[error("the file has no rows")]
    Empty,
    /// More rows than a list has.
    #[error(
        "there are more than {} rows; split the file by group",
        limits::ROLL_ROWS_MAX
    )]
    RowsMany,
}

/// Lines that tell what stands between cells; titles and notes above the heads have signs of their own.
const SEPARATOR_LINES: usize = 40;

impl Grid {
    /// The cells of a file.
    ///
    /// # Errors
    ///
    /// When it is too large, or no table.
    pub fn read(file: &[u8]) -> Result<Self, GridFault> {
        if file.len() > limits::ROLL_FILE_BYTES_MAX {
            return Err(GridFault::Large);
        }
        let is_workbook = file.starts_with(b"PK\x03\x04") || file.starts_with(b"\xD0\xCF\x11\xE0");
        let mut grid = if is_workbook {
            Self::of_workbook(file)?
        } else {
            Self::of_text(&decoded(file))
        };
        for (_, cells) in &mut grid.rows {
            cells.truncate(COLUMNS_MAX);
            while cells.last().is_some_and(String::is_empty) {
                cells.pop();
            }
        }
        grid.rows.retain(|(_, cells)| !cells.is_empty());
        match grid.rows.len() {
            0 => Err(GridFault::Empty),
            rows if rows > limits::ROLL_ROWS_MAX => Err(GridFault::RowsMany),
            _ => Ok(grid),
        }
    }

    fn of_text(text: &str) -> Self {
        let mut lines = Lines::new(text.as_bytes());
        let mut reader = csv::ReaderBuilder::new()
            .delimiter(separator(text.lines().take(SEPARATOR_LINES)))
            .has_headers(false)
            .flexible(true)
            .from_reader(text.as_bytes());
        let records = reader.records().filter_map(Result::ok);
        let rows = records.map(|record| {
            let offset = record.position().map_or(0, csv::Position::byte);
            let cells = record.iter().map(tidy);
            (lines.at(offset), cells.collect())
        });
        Self {
            rows: rows.take(limits::ROLL_ROWS_MAX + 1).collect(),
        }
    }

    /// The page with most rows: others are notes and sums.
    fn of_workbook(file: &[u8]) -> Result<Self, GridFault> {
        let fault = |error: calamine::Error| GridFault::Workbook(error.to_string());
        let mut book = open_workbook_auto_from_rs(Cursor::new(file)).map_err(fault)?;
        let pages = book.worksheets();
        let largest = pages.into_iter().max_by_key(|(_, page)| page.height());
        let (_, page) = largest.ok_or(GridFault::Empty)?;
        let first = page.start().map_or(0, |(row, _)| row);
        let rows = page.rows().enumerate().map(|(at, cells)| {
            let line = usize::try_from(first).unwrap_or(0) + at + 1;
            (line, cells.iter().map(shown).collect())
        });
        Ok(Self {
            rows: rows.take(limits::ROLL_ROWS_MAX + 1).collect(),
        })
    }
}

/// A cell of a workbook as its text.
fn shown(cell: &Data) -> String {
    match cell {
        Data::Empty => String::new(),
        Data::String(text) | Data::DateTimeIso(text) | Data::DurationIso(text) => tidy(text),
        Data::Int(number) => number.to_string(),
        // A whole number has no decimals: a phone that was typed as one keeps its digits.
        Data::Float(number) => number.to_string(),
        Data::Bool(is_so) => if *is_so { "yes" } else { "no" }.to_owned(),
        Data::DateTime(at) => at
            .as_datetime()
            .map_or_else(|| at.as_f64().to_string(), |at| at.date().to_string()),
        Data::Error(error) => error.to_string(),
    }
}

/// Blanks at the ends and doubled ones taken out, letters in one form.
fn tidy(cell: &str) -> String {
    let one_form: String = cell.nfc().collect();
    one_form.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The text of a file, whatever wrote it.
fn decoded(file: &[u8]) -> String {
    let (encoding, skip) = Encoding::for_bom(file).unwrap_or_else(|| (guessed(file), 0));
    let body = file.get(skip..).unwrap_or_default();
    encoding.decode_without_bom_handling(body).0.into_owned()
}

/// The encoding of a file that does not tell it.
fn guessed(file: &[u8]) -> &'static Encoding {
    if let Some(wide) = wide(file) {
        return wide;
    }
    if std::str::from_utf8(file).is_ok() {
        return UTF_8;
    }
    let is_high = |byte: &u8| *byte >= 0x80;
    let mut runs = file.split(|byte| !is_high(byte));
    if runs.any(|run| run.len() >= THAI_RUN) {
        return WINDOWS_874;
    }
    if file.iter().any(|byte| VIETNAMESE.contains(byte)) {
        return WINDOWS_1258;
    }
    WINDOWS_1252
}

/// Two bytes a letter: of Latin letters one is nothing.
fn wide(file: &[u8]) -> Option<&'static Encoding> {
    let zeros = |from: usize| {
        let bytes = file.iter().skip(from).step_by(2).take(200);
        let (all, zero) = bytes.fold((0, 0), |(all, zero), byte| {
            (all + 1, zero + usize::from(*byte == 0))
        });
        all > 1 && zero * 2 > all
    };
    match (zeros(0), zeros(1)) {
        (false, true) => Some(UTF_16LE),
        (true, false) => Some(UTF_16BE),
        (true, true) | (false, false) => None,
    }
}

#[cfg(test)]
mod tests {
    use encoding_rs::{WINDOWS_874, WINDOWS_1252, WINDOWS_1258};

    use super::Grid;

    /// The same words as the encodings of the WHATWG Encoding Standard write them.
    #[test]
    fn old_encodings_are_known_by_their_letters() {
        for (encoding, words) in [
            (WINDOWS_1252, "José,Andrée"),
            (WINDOWS_874, "สมชาย,กลุ่มเหนือ"),
            (WINDOWS_1258, "Đường,Hà"),
        ] {
            let (bytes, _, lost) = encoding.encode(words);
            if lost {
                continue;
            }
            let grid = Grid::read(&bytes).unwrap();
            assert_eq!(grid.rows[0].1.join(","), words, "{}", encoding.name());
        }
        let wide: Vec<u8> = "Tamo,Rill\n"
            .encode_utf16()
            .flat_map(u16::to_le_bytes)
            .collect();
        assert_eq!(Grid::read(&wide).unwrap().rows[0].1, ["Tamo", "Rill"]);
        let marked = [b"\xEF\xBB\xBF".as_slice(), "Đỗ;1".as_bytes()].concat();
        assert_eq!(Grid::read(&marked).unwrap().rows[0].1, ["Đỗ", "1"]);
    }

    #[test]
    fn what_is_no_table_is_told() {
        assert!(Grid::read(b"").is_err());
        assert!(Grid::read(b"PK\x03\x04 and nothing behind it").is_err());
        assert!(Grid::read(b"\xD0\xCF\x11\xE0 an old one").is_err());
        assert!(Grid::read(&vec![b'a'; 30_000_000]).is_err());
    }
}
