//! A sheet for a terminal: columns side by side, a line for each row.

use std::fmt;

use unicode_normalization::char::is_combining_mark;

use super::{ColumnKind, Sheet};

/// Between two columns.
const GAP: &str = "  ";

impl fmt::Display for Sheet {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(f, "{}", self.title)?;
        for line in &self.head {
            writeln!(f, "{line}")?;
        }
        let titles: Vec<String> = self.columns.iter().map(|one| one.title.clone()).collect();
        let rows: Vec<Vec<String>> = self.shown_rows().collect();
        let widths = self.columns.iter().enumerate().map(|(at, column)| {
            let cells = rows.iter().filter_map(|row| row.get(at));
            let cells = cells.chain(titles.get(at)).map(|cell| width(cell));
            let room = match column.kind {
                ColumnKind::Blank(letters) => usize::from(letters),
                ColumnKind::Words | ColumnKind::Number | ColumnKind::Day | ColumnKind::Code => 0,
            };
            cells.max().unwrap_or(0).max(room)
        });
        let widths: Vec<usize> = widths.collect();
        writeln!(f)?;
        self.line(f, &titles, &widths)?;
        for row in &rows {
            self.line(f, row, &widths)?;
        }
        if !self.notes.is_empty() {
            writeln!(f)?;
        }
        for note in &self.notes {
            writeln!(f, "{note}")?;
        }
        Ok(())
    }
}

impl Sheet {
    fn line(&self, f: &mut fmt::Formatter<'_>, cells: &[String], widths: &[usize]) -> fmt::Result {
        let mut line = String::new();
        for ((cell, width_of), column) in cells.iter().zip(widths).zip(&self.columns) {
            let blanks = " ".repeat(width_of.saturating_sub(width(cell)));
            let is_line = matches!(column.kind, ColumnKind::Blank(_)) && cell.is_empty();
            if is_line {
                line += &"_".repeat(*width_of);
            } else if column.kind.is_right() {
                line += &blanks;
                line += cell;
            } else {
                line += cell;
                line += &blanks;
            }
            line += GAP;
        }
        writeln!(f, "{}", line.trim_end())
    }
}

/// How many places letters take: marks above and below take none.
fn width(text: &str) -> usize {
    text.chars().filter(|c| !is_combining_mark(*c)).count()
}

#[cfg(test)]
mod tests {
    use super::super::{Cell, Column, ColumnKind, Layout, Sheet};

    #[test]
    fn columns_stand_under_each_other_in_every_script() {
        let column = |title: &str, kind| Column {
            key: title.to_owned(),
            title: title.to_owned(),
            kind,
        };
        let sheet = Sheet {
            key: "trees".into(),
            number: Some(12),
            title: "ต้นไม้ 12".into(),
            head: vec!["KOLO".into()],
            layout: Layout::Rows,
            columns: vec![
                column("ชื่อ", ColumnKind::Words),
                column("ตาย", ColumnKind::Number),
                column("kg", ColumnKind::Number),
                column("+", ColumnKind::Blank(4)),
            ],
            rows: vec![
                vec!["ที่ดิน".into(), 7_u32.into(), Cell::tenths(12.5), Cell::Blank],
                vec!["Đỗ Hạnh".into(), 120_u32.into(), Cell::Blank, Cell::Blank],
            ],
            notes: vec!["1 / 1".into()],
            language: "th".into(),
            decimal: ',',
        };
        let expected = "\
ต้นไม้ 12
KOLO

ชื่อ       ตาย    kg  +
ที่ดิน        7  12,5  ____
Đỗ Hạnh  120        ____

1 / 1
";
        assert_eq!(sheet.to_string(), expected);
    }
}
