//! Sheets show what answers by text show, and a row that is texted back lands on its block for ever.

mod forms;
mod rows;

use budwood::{
    engine::{Input, SheetOrder},
    sheet::{Cell, Sheet},
    words::printed::SheetKind,
};

use crate::fixture::desk::Desk;

/// Ten in the morning where the group lives.
const MORNING: &str = "2026-12-14T03:00:00Z";

/// The languages that there are texts in.
const LANGUAGES: [&str; 6] = ["en", "fr", "id", "pt", "th", "vi"];

/// A sheet of the demo's group.
fn printed(desk: &mut Desk, kind: SheetKind, language: Option<&str>) -> Sheet {
    let order = SheetOrder {
        kind,
        group: "KOLO".to_owned(),
        language: language.map(str::to_owned),
    };
    let told = desk.input(Input::Print(order)).sheet;
    told.expect("an answer").expect("a sheet")
}

/// The cell of a row under a column.
fn cell<'s>(sheet: &'s Sheet, row: usize, column: &str) -> &'s Cell {
    let at = sheet.columns.iter().position(|one| one.key == column);
    &sheet.rows[row][at.expect("a column of this name")]
}

/// The row of a farmer.
fn row_of(sheet: &Sheet, farmer: &str) -> usize {
    let rows = 0..sheet.rows.len();
    let mut found = rows.filter(|row| cell(sheet, *row, "farmer") == &Cell::from(farmer));
    found.next().expect("a row of this farmer")
}

#[test]
fn a_meeting_sheet_has_a_row_for_each_block_and_room_to_write() {
    let mut desk = Desk::open(MORNING);
    let sheet = printed(&mut desk, SheetKind::Meeting, None);
    assert_eq!(sheet.number, Some(1));
    let blocks = desk.engine.directory().blocks().count();
    assert_eq!(sheet.rows.len(), blocks);
    let keti = row_of(&sheet, "Keti Olm");
    // As the list has it: 520 planted, none told dead.
    assert_eq!(cell(&sheet, keti, "planted"), &Cell::from(520_u32));
    assert_eq!(cell(&sheet, keti, "alive"), &Cell::from(520_u32));
    assert_eq!(cell(&sheet, keti, "dead"), &Cell::Blank);
    let tamo = row_of(&sheet, "Tamo Rill");
    assert_eq!(
        cell(&sheet, tamo, "planted"),
        &Cell::Blank,
        "nothing is planted"
    );
    let names: Vec<String> = (0..sheet.rows.len())
        .map(|row| sheet.shown(cell(&sheet, row, "farmer")).to_lowercase())
        .collect();
    assert!(names.is_sorted(), "as they are looked for");
}

/// The text VISIT and the visit list are made from one figure.
#[test]
fn the_visit_list_is_that_of_the_text() {
    let mut desk = Desk::open(MORNING);
    for (number, text) in [("+447700900005", "dead 90"), ("+447700900005", "1")] {
        desk.text(number, text);
        desk.send_all();
    }
    desk.text(crate::fixture::desk::ADVISER, "visit");
    let sent = desk.send_all();
    let answer = &sent.last().expect("an answer").text;
    let sheet = printed(&mut desk, SheetKind::Visits, None);
    assert!(!sheet.rows.is_empty(), "{answer}");
    let first = sheet.shown(cell(&sheet, 0, "farmer"));
    let called = first.split(' ').next().unwrap();
    let reason = sheet.shown(cell(&sheet, 0, "reason"));
    assert!(
        answer.starts_with(&format!("Visit first: {called} {reason}")),
        "{answer}"
    );
    let phone = sheet.shown(cell(&sheet, 0, "phone"));
    assert_eq!(phone.len(), 4, "no whole number is printed");
}

/// Kilograms add up, and bags together are those of the answer BAGS.
#[test]
fn shares_add_up_to_what_is_bought() {
    let mut desk = Desk::open(MORNING);
    let sheet = printed(&mut desk, SheetKind::Shares, None);
    let tenths: i64 = (0..sheet.rows.len())
        .map(|row| {
            let found = cell(&sheet, row, "kilograms");
            let Cell::Figure(units, 1) = found else {
                panic!("{found:?}");
            };
            *units
        })
        .sum();
    assert!(tenths > 0, "something is due");
    desk.text(crate::fixture::desk::ADVISER, "bags KOLO");
    let sent = desk.send_all();
    let answer = &sent.last().expect("an answer").text;
    let kilograms = match tenths % 10 {
        0 => format!("{}", tenths / 10),
        tenth => format!("{}.{tenth}", tenths / 10),
    };
    assert!(answer.contains(&kilograms), "{kilograms}: {answer}");
}

#[test]
fn an_unknown_group_is_told() {
    let mut desk = Desk::open(MORNING);
    let order = SheetOrder {
        kind: SheetKind::Meeting,
        group: "NOWHERE".to_owned(),
        language: None,
    };
    let told = desk.input(Input::Print(order)).sheet.unwrap();
    assert_eq!(told, Err("there is no group NOWHERE".to_owned()));
    assert!(desk.stored("sheet").is_empty());
}
