//! Rows that are texted back.

use budwood::{engine::Input, sheet::Sheet, words::printed::SheetKind};
use budwood_parser::Kind;
use budwood_scheduler::BlockId;

use super::{MORNING, cell, printed, row_of};
use crate::fixture::{
    code,
    desk::{ADVISER, Desk},
};

/// Tor Gallen, the leader.
const LEADER: &str = "+447700900014";
/// Keti Olm, with one planted block.
const KETI: &str = "+447700900005";

/// The number of a farmer's first row.
fn row(sheet: &Sheet, farmer: &str) -> String {
    sheet.shown(cell(sheet, row_of(sheet, farmer), "row"))
}

fn dead(desk: &Desk, block: BlockId) -> u32 {
    desk.engine.state(block).map_or(0, |state| state.dead())
}

fn block_of(desk: &Desk, number: &str) -> BlockId {
    let directory = desk.engine.directory();
    let person = directory.phone(number).unwrap().people().next().unwrap();
    directory.blocks_of(person).next().unwrap().id
}

#[test]
fn a_leader_texts_rows_back() {
    let mut desk = Desk::open(MORNING);
    let sheet = printed(&mut desk, SheetKind::Meeting, None);
    let (keti, yano) = (row(&sheet, "Keti Olm"), row(&sheet, "Yano Cleft"));
    let text = format!("SHEET 1: {keti} dead 20, {yano} weeded");
    assert_eq!(desk.text(LEADER, &text), "asked to confirm");
    let sent = desk.send_all();
    let asked = &sent.last().unwrap().text;
    assert!(asked.contains("Keti") && asked.contains("Yano"), "{asked}");
    assert_eq!(desk.text(LEADER, "1"), "recorded");
    let block = block_of(&desk, KETI);
    assert_eq!(dead(&desk, block), 20);
    let state = desk.engine.state(block_of(&desk, "+447700900012")).unwrap();
    assert!(state.last_of(Kind::Weeded).is_some());
}

/// The sheet of last year still leads to its blocks when others were added and one has another owner.
#[test]
fn rows_lead_to_their_blocks_after_blocks_moved() {
    let mut desk = Desk::open(MORNING);
    let sheet = printed(&mut desk, SheetKind::Meeting, None);
    let keti = row(&sheet, "Keti Olm");
    let block = block_of(&desk, KETI);
    let directory = desk.engine.directory();
    let jaro = directory.phone(crate::fixture::desk::JARO).unwrap();
    let jaro = jaro.people().next().unwrap();
    let moved = budwood_scheduler::Block {
        owner: jaro,
        name: "Keti1".to_owned(),
        ..directory.block(block).unwrap().clone()
    };
    let entries = budwood::engine::Entries {
        blocks: vec![moved],
        ..Default::default()
    };
    desk.input(Input::Roll(Box::new(entries)));
    let new = printed(&mut desk, SheetKind::Meeting, None);
    assert!(new.number.is_some());
    let mut desk = desk.restart(true);
    desk.text(LEADER, &format!("sheet 1 row {keti} dead 20"));
    let sent = desk.send_all();
    let asked = &sent.last().unwrap().text;
    assert!(asked.contains("Jaro Keti1"), "{asked}");
    desk.text(LEADER, "1");
    assert_eq!(dead(&desk, block), 20);
}

/// Printing the same again changes nothing, so that a sheet can be looked at.
#[test]
fn the_same_rows_keep_their_number() {
    let mut desk = Desk::open(MORNING);
    printed(&mut desk, SheetKind::Meeting, Some("th"));
    let before = desk.lines();
    let again = printed(&mut desk, SheetKind::Meeting, Some("en"));
    assert_eq!(again.number, Some(1));
    printed(&mut desk, SheetKind::Visits, None);
    assert_eq!(desk.lines(), before);
}

#[test]
fn rows_and_sheets_that_are_not_there_are_told() {
    let mut desk = Desk::open(MORNING);
    printed(&mut desk, SheetKind::Meeting, None);
    for (text, answer) in [
        ("SHEET 9: 3 dead 20", "no sheet 9"),
        ("SHEET 1: 300 dead 20", "Sheet 1 has rows 1 to"),
        ("SHEET 1", "Sheet 1 has rows 1 to"),
    ] {
        assert_eq!(desk.text(LEADER, text), "answered", "{text}");
        let sent = desk.send_all();
        let told = &sent.last().unwrap().text;
        assert!(told.contains(answer), "{text}: {told}");
    }
    assert!(desk.reports().is_empty());
}

/// What is not clear is asked about in a text that names whose it is.
#[test]
fn an_unclear_row_is_asked_about() {
    let mut desk = Desk::open(MORNING);
    let sheet = printed(&mut desk, SheetKind::Meeting, None);
    let keti = row(&sheet, "Keti Olm");
    desk.text(LEADER, &format!("sheet 1: {keti} planted"));
    let sent = desk.send_all();
    let asked = &sent.last().unwrap().text;
    assert!(
        asked.contains("Keti") || asked.contains("How many"),
        "{asked}"
    );
    assert!(desk.reports().is_empty());
}

/// "5 dead" of a sheet is row 5, where trees died without a number: it is asked about, and nobody is
/// taken to have died. The other rows wait for the answer.
#[test]
fn a_row_without_a_count_is_asked_about_and_is_no_death() {
    let mut desk = Desk::open(MORNING);
    let sheet = printed(&mut desk, SheetKind::Meeting, None);
    let (keti, yano) = (row(&sheet, "Keti Olm"), row(&sheet, "Yano Cleft"));
    let text = format!("SHEET 1: {keti} dead, {yano} dead");
    assert_eq!(desk.text(LEADER, &text), "asked for a slot");
    let sent = desk.send_all();
    assert_eq!(sent.len(), 1, "nobody else is told: {sent:?}");
    assert_eq!(desk.text(LEADER, "20"), "asked to confirm");
    desk.send_all();
    desk.text(LEADER, "1");
    assert_eq!(dead(&desk, block_of(&desk, KETI)), 20);
    let asked = desk.send_all().pop().unwrap().text;
    assert!(asked.contains("How many"), "{asked}");
    desk.text(LEADER, "3");
    desk.text(LEADER, "1");
    assert_eq!(desk.reports().len(), 2);
}

/// A farmer's text is none of a sheet, and an adviser needs a code as for a visit.
#[test]
fn who_may_not_text_rows_stores_nothing_by_them() {
    let mut desk = Desk::open(MORNING);
    let sheet = printed(&mut desk, SheetKind::Meeting, None);
    let keti = row(&sheet, "Keti Olm");
    let text = format!("SHEET 1: {keti} dead 20");
    desk.text("+447700900012", &text);
    desk.text("+447700900012", "1");
    assert_eq!(dead(&desk, block_of(&desk, KETI)), 0);
    desk.send_all();
    assert_eq!(desk.text(ADVISER, &text), "asked for a code");
    let code = code(&desk.send_all());
    assert_eq!(
        desk.text(ADVISER, &format!("yes {code}")),
        "asked to confirm"
    );
    assert_eq!(desk.text(ADVISER, "1"), "recorded");
    assert_eq!(dead(&desk, block_of(&desk, KETI)), 20);
}

/// What each sheet says about texting back is read as it says, in its language.
#[test]
fn the_example_on_each_sheet_is_read() {
    for language in super::LANGUAGES {
        let mut desk = Desk::open(MORNING);
        let sheet = printed(&mut desk, SheetKind::Meeting, Some(language));
        let note = sheet.notes.first().expect("how to text rows back");
        let (_, example) = note.split_once(": ").expect("an example");
        let told = desk.text(LEADER, example);
        let sent = desk.send_all();
        // Row 3 of the demo has no trees yet, so the number is asked about or row 5 alone is clear.
        assert!(
            ["asked to confirm", "asked for a slot", "told a person"].contains(&told),
            "{language}: {example}: {told}: {sent:?}"
        );
    }
}
