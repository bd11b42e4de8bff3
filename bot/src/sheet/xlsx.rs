//! A sheet as a workbook (ECMA-376): words stay words, so a number of a phone keeps its plus and
//! nothing is calculated.

use rust_xlsxwriter::{
    ExcelDateTime, Format, FormatAlign, FormatBorder, Workbook, Worksheet, XlsxError,
};

use super::{Cell, ColumnKind, Sheet};

/// A column is never wider, in letters; longer cells are wrapped.
const WIDTH_MAX: usize = 40;
/// Room for a pen.
const ROW_HEIGHT: f64 = 22.0;
/// A4, in the numbers of the standard.
const A4: u8 = 9;

/// How cells look.
struct Looks {
    title: Format,
    head: Format,
    cell: Format,
    day: Format,
}

impl Looks {
    fn new() -> Self {
        let framed = || {
            Format::new()
                .set_border(FormatBorder::Thin)
                .set_align(FormatAlign::VerticalCenter)
                .set_text_wrap()
        };
        Self {
            title: Format::new().set_bold().set_font_size(14),
            head: framed().set_bold(),
            cell: framed(),
            day: framed().set_num_format("yyyy-mm-dd"),
        }
    }

    fn decimals(&self, decimals: u8) -> Format {
        let places = "0".repeat(decimals.into());
        let pattern = if decimals == 0 {
            "0".to_owned()
        } else {
            format!("0.{places}")
        };
        self.cell.clone().set_num_format(pattern)
    }
}

impl Sheet {
    /// The workbook: title, columns, rows, notes, ready to be printed.
    ///
    /// # Errors
    ///
    /// When there are more rows or letters than a workbook holds.
    pub fn xlsx(&self) -> Result<Vec<u8>, XlsxError> {
        let looks = Looks::new();
        let mut book = Workbook::new();
        let page = book.add_worksheet();
        page.write_string_with_format(0, 0, &self.title, &looks.title)?;
        let mut row = 1;
        for line in &self.head {
            page.write_string(row, 0, line)?;
            row += 1;
        }
        let head = row + 1;
        self.write_table(page, head, &looks)?;
        row = head + u32::try_from(self.rows.len()).unwrap_or(u32::MAX - 9) + 2;
        for note in &self.notes {
            page.write_string(row, 0, note)?;
            row += 1;
        }
        page.set_freeze_panes(head + 1, 0)?;
        page.set_repeat_rows(head, head)?;
        page.set_landscape().set_paper_size(A4);
        page.set_print_fit_to_pages(1, 0);
        page.set_footer("&L&F&R&P / &N");
        book.save_to_buffer()
    }

    fn write_table(&self, page: &mut Worksheet, head: u32, looks: &Looks) -> Result<(), XlsxError> {
        for (at, column) in (0_u16..).zip(&self.columns) {
            page.write_string_with_format(head, at, &column.title, &looks.head)?;
            let cells = self.rows.iter().filter_map(|row| row.get(usize::from(at)));
            let letters = cells.map(|cell| self.shown(cell).chars().count()).max();
            let least = match column.kind {
                ColumnKind::Blank(letters) => usize::from(letters),
                ColumnKind::Words | ColumnKind::Number | ColumnKind::Day | ColumnKind::Code => 0,
            };
            let words = column.title.split_whitespace();
            let word = words.map(|word| word.chars().count()).max();
            let width = letters.max(word).unwrap_or(0).max(least).min(WIDTH_MAX) + 2;
            page.set_column_width(at, u16::try_from(width).unwrap_or(u16::MAX))?;
        }
        for (row, cells) in (head + 1..).zip(&self.rows) {
            page.set_row_height(row, ROW_HEIGHT)?;
            for (at, cell) in (0_u16..).zip(cells) {
                write_cell(page, (row, at), cell, looks)?;
            }
        }
        Ok(())
    }
}

fn write_cell(
    page: &mut Worksheet,
    (row, at): (u32, u16),
    cell: &Cell,
    looks: &Looks,
) -> Result<(), XlsxError> {
    match cell {
        Cell::Words(words) => page.write_string_with_format(row, at, words, &looks.cell)?,
        Cell::Count(count) => {
            page.write_number_with_format(row, at, as_number(*count), &looks.cell)?
        }
        Cell::Figure(units, decimals) => {
            let ten = 10_f64.powi(i32::from(*decimals));
            let sign = if *units < 0 { -1.0 } else { 1.0 };
            let value = sign * as_number(units.unsigned_abs()) / ten;
            page.write_number_with_format(row, at, value, &looks.decimals(*decimals))?
        }
        Cell::Day(day) => {
            let day = ExcelDateTime::parse_from_str(&day.to_string())?;
            page.write_datetime_with_format(row, at, &day, &looks.day)?
        }
        Cell::Blank => page.write_blank(row, at, &looks.cell)?,
    };
    Ok(())
}
const fn as_number(count: u64) -> f64 {
    count as f64
}
