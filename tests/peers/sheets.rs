//! Every sheet in every language with 500 rows, read back by programs that are not ours: the page by
//! Debian's Chromium, the workbook by LibreOffice, the paper by poppler, the code on cards by zbar.
//!
//! What they see is what our CSV has, cell by cell. Paper is compared without blanks, as a long cell
//! is broken into lines there.

use std::{
    fmt::Write as _,
    fs,
    path::{Path, PathBuf},
    process::Command,
};

use budwood::{
    engine::{Engine, Input, SheetOrder},
    play::virtual_clock::{entries, plan_roll},
    service::setup,
    sheet::{Layout, Sheet},
    store::MemoryStore,
    words::printed::SheetKind,
};
use chrono::{DateTime, Utc};
use serde_json::json;
use tempfile::TempDir;

use crate::peer::ask;

const LANGUAGES: [&str; 6] = ["en", "fr", "id", "pt", "th", "vi"];

const FARMERS: u32 = 500;

/// Syllables of invented names, with marks and in two scripts.
const NAMES: [&str; 10] = [
    "Ba",
    "D\u{f3}",
    "Fe",
    "G\u{1ee5}",
    "K\u{1ed1}",
    "Lo",
    "M\u{ea}",
    "\u{e01}\u{e34}\u{e48}\u{e07}",
    "\u{e19}\u{e49}\u{e33}",
    "Zu",
];

/// A list of one group with a block of 500 farmers, some of them late, some with trees.
fn list() -> String {
    let mut list =
        "row,group,name,role,phone,language,consent_on,adviser,zone,calendar,rains_start,\
                    rains_end,block,area,unit,planted_on,planted\n\
                    group,KOLO,,,,,,Mara Tindel,Asia/Jakarta,fao,1 Nov,30 Apr,,,,,\n\
                    person,,Mara Tindel,adviser,+447700900999,en,2026-09-01,,,,,,,,,,\n"
            .to_owned();
    for number in 0..FARMERS {
        let part = |at: u32| NAMES[(number / 10_u32.pow(at)) as usize % 10];
        let name = format!("J{}{} R{}a", part(0), part(1), part(2));
        writeln!(
            list,
            "person,KOLO,{name},farmer,+447700900{number:03},en,2026-09-05,,,,,,,,,,"
        )
        .expect("a line");
        let planted = if number % 3 == 0 { "," } else { "2024-11,480" };
        writeln!(list, "block,KOLO,{name},,,,,,,,,,A,1.25,ha,{planted}").expect("a line");
    }
    list
}

fn engine() -> (Engine, DateTime<Utc>) {
    let now: DateTime<Utc> = "2026-12-14T03:00:00Z".parse().expect("a moment");
    let mut setup = setup::built_in(0).expect("what ships is sound");
    setup.own_numbers = vec!["+447700900999".to_owned()];
    let store = Box::new(MemoryStore::new());
    let mut engine = Engine::open(setup.into(), store, now).expect("an empty store");
    let plan = plan_roll(&engine, list().as_bytes(), now);
    assert!(plan.may_be_stored(), "{plan}");
    let roll = Input::Roll(Box::new(entries(&plan)));
    engine.handle(vec![roll], now).expect("a store");
    (engine, now)
}

fn printed(engine: &mut Engine, now: DateTime<Utc>, kind: SheetKind, language: &str) -> Sheet {
    let order = SheetOrder {
        kind,
        group: "KOLO".to_owned(),
        language: Some(language.to_owned()),
    };
    let told = engine
        .handle(vec![Input::Print(order)], now)
        .expect("a store");
    let sheet = told.into_iter().next().and_then(|told| told.sheet);
    sheet.expect("an answer").expect("a sheet")
}

/// The rows of our CSV, as others must show them: a sign before what a spreadsheet program would
/// calculate is no part of a cell there.
fn rows(sheet: &Sheet) -> Vec<Vec<String>> {
    let file = sheet.csv(false);
    let mut reader = csv::Reader::from_reader(file.as_slice());
    let rows = reader.records().map(|row| row.expect("cells"));
    let cell = |cell: &str| match cell.strip_prefix('\'') {
        Some(rest) if rest.starts_with(['=', '+', '-', '@']) => rest.to_owned(),
        _ => cell.to_owned(),
    };
    rows.map(|row| row.iter().map(cell).collect()).collect()
}

fn run(command: &mut Command) -> String {
    let output = command
        .output()
        .expect("the peer starts; run tests/all, which installs it");
    let problem = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{command:?}: {problem}");
    String::from_utf8_lossy(&output.stdout).into_owned()
}

fn without_blanks(text: &str) -> String {
    text.chars()
        .filter(|letter| !letter.is_whitespace())
        .collect()
}

#[test]
fn every_sheet_has_the_same_cells_in_every_program() {
    let folder = TempDir::new().expect("a folder");
    let (mut engine, now) = engine();
    let mut sheets: Vec<(String, Sheet)> = Vec::new();
    for kind in SheetKind::ALL {
        for language in LANGUAGES {
            let sheet = printed(&mut engine, now, kind, language);
            let name = format!("{kind}-{language}");
            let at = |ending: &str| folder.path().join(format!("{name}.{ending}"));
            fs::write(at("xlsx"), sheet.xlsx().expect("a workbook")).expect("room");
            fs::write(at("html"), sheet.page().expect("a page")).expect("room");
            fs::write(at("pdf"), sheet.pdf().expect("paper")).expect("room");
            sheets.push((name, sheet));
        }
    }
    let longest = sheets.iter().map(|(_, sheet)| sheet.rows.len()).max();
    assert!(longest >= Some(FARMERS as usize), "{longest:?}");
    in_libreoffice(folder.path(), &sheets);
    on_paper(folder.path(), &sheets);
    in_chromium(folder.path(), &sheets);
}

/// LibreOffice opens each workbook and writes it as CSV, cells as they are shown.
fn in_libreoffice(folder: &Path, sheets: &[(String, Sheet)]) {
    let out = folder.join("csv");
    let books = sheets
        .iter()
        .map(|(name, _)| folder.join(format!("{name}.xlsx")));
    run(Command::new("soffice")
        .arg(format!(
            "-env:UserInstallation=file://{}",
            folder.join("profile").display()
        ))
        .args(["--headless", "--convert-to"])
        // Comma, quotation marks, UTF-8, from the first line, as shown.
        .arg("csv:Text - txt - csv (StarCalc):44,34,76,1,,1033,false,true,false")
        .arg("--outdir")
        .arg(&out)
        .args(books));
    for (name, sheet) in sheets {
        let text = fs::read(out.join(format!("{name}.csv"))).expect("a converted workbook");
        let mut reader = csv::ReaderBuilder::new()
            .has_headers(false)
            .flexible(true)
            .from_reader(text.as_slice());
        let theirs: Vec<Vec<String>> = reader
            .records()
            .map(|row| row.expect("cells").iter().map(str::to_owned).collect())
            .collect();
        let titles: Vec<&str> = sheet.columns.iter().map(|one| one.title.as_str()).collect();
        let is_head = |row: &Vec<String>| row.iter().take(titles.len()).eq(titles.iter());
        let head = theirs.iter().position(is_head);
        let head = head.unwrap_or_else(|| panic!("{name}: no head {titles:?}"));
        for (at, row) in rows(sheet).iter().enumerate() {
            let found = &theirs[head + 1 + at];
            for (ours, theirs) in row.iter().zip(found) {
                // A workbook holds numbers, and whoever opens it has their own mark of decimals.
                let number = |cell: &str| cell.replace(sheet.decimal, ".").parse::<f64>().ok();
                let is_same = match (number(ours), theirs.parse::<f64>().ok()) {
                    (Some(ours), Some(theirs)) => (ours - theirs).abs() < 1e-9,
                    _ => ours == theirs,
                };
                assert!(is_same, "{name}, row {at}: {ours:?} and {theirs:?}");
            }
        }
    }
}

/// Poppler gives the words of the paper in the order in which they were drawn.
fn on_paper(folder: &Path, sheets: &[(String, Sheet)]) {
    for (name, sheet) in sheets {
        let paper = folder.join(format!("{name}.pdf"));
        let text = without_blanks(&run(Command::new("pdftotext")
            .arg("-raw")
            .arg(&paper)
            .arg("-")));
        let mut from = 0;
        for (at, row) in rows(sheet).iter().enumerate() {
            for cell in row.iter().map(|cell| without_blanks(cell)) {
                let Some(found) = text.get(from..).and_then(|rest| rest.find(&cell)) else {
                    panic!("{name}, row {at}: {cell:?} is not on paper");
                };
                // What is between two cells is a title, a name of a column or the end of a page.
                from += found + cell.len();
            }
        }
    }
    let cards = folder.join("cards-en.pdf");
    let picture = folder.join("cards");
    run(Command::new("pdftoppm")
        .args(["-r", "200", "-f", "1", "-l", "1", "-png"])
        .arg(&cards)
        .arg(&picture));
    let pictures: Vec<PathBuf> = fs::read_dir(folder)
        .expect("a folder")
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "png"))
        .collect();
    assert_eq!(pictures.len(), 1);
    let codes = run(Command::new("zbarimg")
        .args(["--quiet", "--raw"])
        .args(&pictures));
    let (_, sheet) = sheets
        .iter()
        .find(|(name, _)| name == "cards-en")
        .expect("cards");
    let line = rows(sheet)[0]
        .iter()
        .find(|cell| cell.chars().all(|c| c.is_ascii_digit() || c == '+') && !cell.is_empty())
        .cloned();
    let line = line.expect("the number to text");
    // Eight cards lie on a page.
    assert_eq!(codes.lines().count(), 8, "{codes}");
    assert!(
        codes.lines().all(|code| code.contains(&line)),
        "{line}: {codes}"
    );
}

/// Chromium opens each page and gives the text of its cells.
fn in_chromium(folder: &Path, sheets: &[(String, Sheet)]) {
    let of_rows: Vec<&(String, Sheet)> = sheets
        .iter()
        .filter(|(_, sheet)| sheet.layout == Layout::Rows)
        .collect();
    let questions: Vec<_> = of_rows
        .iter()
        .map(|(name, _)| json!({ "file": folder.join(format!("{name}.html")) }))
        .collect();
    let answers = ask("sheets.js", &questions);
    assert_eq!(answers.len(), of_rows.len());
    for ((name, sheet), answer) in of_rows.into_iter().zip(answers) {
        let theirs: Vec<Vec<String>> =
            serde_json::from_value(answer["cells"].clone()).expect("cells");
        let ours = rows(sheet);
        assert_eq!(theirs.len(), ours.len(), "{name}");
        for (at, (ours, theirs)) in ours.iter().zip(&theirs).enumerate() {
            assert_eq!(ours, theirs, "{name}, row {at}");
        }
        // Nothing stands over the edge of its cell.
        assert_eq!(answer["over"], json!([]), "{name}");
    }
}
