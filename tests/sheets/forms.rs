//! The same cells in every form.

use budwood::{sheet::Sheet, words::printed::SheetKind};

use super::{LANGUAGES, MORNING, printed};
use crate::fixture::desk::Desk;

/// The records of a CSV, without its first line.
fn cells_of(csv: &[u8]) -> Vec<Vec<String>> {
    let mut reader = csv::Reader::from_reader(csv);
    let rows = reader.records().map(|row| row.expect("a row of cells"));
    // A sign before what a spreadsheet program would calculate is no part of the cell.
    let cell = |cell: &str| match cell.strip_prefix('\'') {
        Some(rest) if rest.starts_with(['=', '+', '-', '@']) => rest.to_owned(),
        _ => cell.to_owned(),
    };
    rows.map(|row| row.iter().map(cell).collect()).collect()
}

fn shown(sheet: &Sheet) -> Vec<Vec<String>> {
    sheet.shown_rows().collect()
}

#[test]
fn every_sheet_in_every_language_is_the_same_in_every_form() {
    let mut desk = Desk::open(MORNING);
    for kind in SheetKind::ALL {
        for language in LANGUAGES {
            let sheet = printed(&mut desk, kind, Some(language));
            assert_eq!(sheet.language, language);
            let rows = shown(&sheet);
            assert_eq!(cells_of(&sheet.csv(false)), rows, "{kind} {language}");
            let page = sheet.page().unwrap();
            for cell in rows.iter().flatten() {
                let escaped = cell.replace('\'', "&#39;");
                assert!(page.contains(&escaped), "{kind} {language}: {cell}");
            }
            assert!(page.contains(&format!("lang=\"{language}\"")));
            // A workbook is a ZIP archive (ECMA-376, part 2).
            let book = sheet.xlsx().unwrap();
            assert!(book.starts_with(b"PK"));
            let paper = sheet.pdf().unwrap();
            assert!(paper.starts_with(b"%PDF-"), "{kind} {language}");
        }
    }
}
