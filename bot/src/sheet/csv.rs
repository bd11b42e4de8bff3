//! A sheet as CSV (RFC 4180) in UTF-8: only the columns and the rows, for other programs.

use super::Sheet;

/// What a spreadsheet program takes for the begin of a formula.
const FORMULA: [char; 6] = ['=', '+', '-', '@', '\t', '\r'];

/// What tells older spreadsheet programs that a file is UTF-8.
const BYTE_ORDER_MARK: &str = "\u{feff}";

impl Sheet {
    /// The columns by their names in files, and the rows.
    #[must_use]
    pub fn csv(&self, marked: bool) -> Vec<u8> {
        let start = if marked { BYTE_ORDER_MARK } else { "" };
        let mut writer = ::csv::WriterBuilder::new()
            .terminator(::csv::Terminator::CRLF)
            .from_writer(start.as_bytes().to_vec());
        // Writing to memory does not fail, and every row has a cell for every column.
        let _ = writer.write_record(self.columns.iter().map(|column| &column.key));
        for row in self.shown_rows() {
            let _ = writer.write_record(row.iter().map(|cell| plain(cell)));
        }
        writer.into_inner().unwrap_or_default()
    }
}

/// A cell that no spreadsheet program calculates. Numbers, such as two of a place, stay as they are.
fn plain(cell: &str) -> String {
    let mut parts = cell.split(", ");
    let is_number = parts.all(|part| part.parse::<f64>().is_ok() && !part.starts_with('+'));
    if cell.starts_with(FORMULA) && !is_number {
        format!("'{cell}")
    } else {
        cell.to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::plain;

    /// The characters are those that the Open Worldwide Application Security Project names under
    /// "CSV Injection".
    #[test]
    fn no_cell_is_a_formula() {
        for cell in ["=1+1", "+447700900001", "-x", "@a", "\tx", "\rx", "-1, -x"] {
            assert_eq!(plain(cell), format!("'{cell}"));
        }
        for cell in ["Tamo Rill", "-1.5", "-1.25, 101.5", "12", "", "a=b"] {
            assert_eq!(plain(cell), cell);
        }
    }
}
