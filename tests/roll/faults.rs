//! What is refused or doubted in a list, in the words that the office sees.
//!
//! Checked against: ISO 8601 for days, Ofcom's numbers for drama and ITU-T E.123 for phones.

use budwood::roll::{Fault, Finding, Severity};
use budwood_parser::Kind;
use budwood_scheduler::{Body, Happened};

use super::{Office, block_list, day, phone_list};

/// What is said about a list, a line for each finding.
fn said(csv: &str) -> String {
    let plan = Office::default().plan(csv.as_bytes());
    let lines: Vec<String> = plan.findings.iter().map(Finding::to_string).collect();
    lines.join("\n")
}

/// Forty cells as offices type them. Expected numbers follow Ofcom's plan and ITU-T E.123.
#[test]
fn forty_phone_cells() {
    let one = "+447700900001";
    let two = ["+447700900001", "+447700900002"];
    for cell in [
        "+447700900001",
        "+44 7700 900001",
        "+44-7700-900001",
        "+44 (0) 7700 900001",
        "+44(0)7700900001",
        "07700900001",
        "07700 900001",
        "07700-900-001",
        "07700.900.001",
        "(07700) 900001",
        "07700/900001",
        "7700900001",
        "447700900001",
        "00447700900001",
        "00 44 7700 900001",
        "'07700900001",
        "tel:+447700900001",
        "Tel: 07700900001",
        " 07700900001 ;",
        ";07700900001",
        "07700 900 001",
        "+447700900001",
        "07700900001;07700 900001",
    ] {
        check_phone(cell, &[one]);
    }
    for cell in [
        "07700900001;07700900002",
        "+447700900001 ; +447700900002",
        "07700 900001; 07700 900002;",
    ] {
        check_phone(cell, &two);
    }
    for cell in [
        "2.31777E+11",
        "4,477E11",
        "O7700900001",
        "0770090000l",
        "077009OO001",
        "07700900001 / 07700900002",
        "07700900001 07700900002",
        "07700900001, 07700900002",
        "+4477009",
        "+44",
        "40404",
        "none",
        "?",
        "=07700900001",
        "-07700900001",
        "+9997700900001",
        "07700900001 (wife)",
    ] {
        let csv = phone_list(cell);
        let plan = Office::default().plan(csv.as_bytes());
        assert!(!plan.may_be_stored(), "{cell}");
    }
}

#[track_caller]
fn check_phone(cell: &str, numbers: &[&str]) {
    let plan = Office::default().plan(phone_list(cell).as_bytes());
    assert!(plan.may_be_stored(), "{cell}: {plan}");
    let found: Vec<&str> = plan.phones.iter().map(|p| p.number.as_str()).collect();
    assert_eq!(found, numbers, "{cell}");
}

#[test]
fn refused_numbers_say_what_to_do() {
    insta::assert_snapshot!(said(&phone_list("2.31777E+11;O7700900001;40404;+4477009;?")), @r#"
    line 3: refused: phone "2.31777E+11" was rounded by a spreadsheet and its last digits are lost; set the cells to text and type the number again
    line 3: refused: phone "O7700900001" has the letter 'O'; write digits only
    line 3: refused: phone "40404" is a short code; a person's number is longer
    line 3: refused: phone "+4477009" has too few digits; write the whole number with its area code
    line 3: refused: phone "?" is not a phone number; write it like +44 7700 900123
    "#);
    insta::assert_snapshot!(said(&phone_list("1;2;3;4;5;6")), @"line 3: refused: there are more than 5 numbers for one person; keep those in use");
    // The London range for drama (Ofcom) is a landline; the freephone one is a service. The third lost
    // three digits, and is as long as some numbers of the UK are, so it is only doubted.
    insta::assert_snapshot!(said(&phone_list("020 7946 0123;0808 157 0123;07700900")), @r#"
    line 3: doubtful: +442079460123 is a landline number; texts will probably not arrive
    line 3: doubtful: +448081570123 is the number of a service, a satellite or a ship; it gets no texts
    line 3: doubtful: +447700900 is in no range of numbers known to be in use; compare it with the phone
    "#);
}

#[test]
fn files_that_cannot_be_read_at_all() {
    insta::assert_snapshot!(said(""), @"line 1: refused: the file is empty; its first line must name the columns");
    insta::assert_snapshot!(said("\n\n"), @"line 1: refused: the file is empty; its first line must name the columns");
    insta::assert_snapshot!(said("person,KOLO,Tamo Rill"), @"line 1: refused: the first line must name the columns, and one of them must be `row`");
    insta::assert_snapshot!(said("row,group,telephone,name,name"), @r#"
    line 1: refused: "telephone" is not a column of the roll; take it out, or use one of row, group, adviser, zone, calendar, market_day, rains_start, rains_end, name, role, phone, language, consent_on, consent_how, share_on, share_how, shown, block, area, unit, slope_pct, row_m, tree_m, latitude, longitude, planned_on, clone, planted_on, planted, alive, counted_on, girths, measured_on, opened, opened_on, weeded_on, fed_on, pruned_on
    line 1: refused: the column name is there twice; keep one
    "#);
    insta::assert_snapshot!(said("PK\u{3}\u{4}rest of an archive"), @"line 1: refused: this is a spreadsheet's own file; save it as CSV in UTF-8");
    let bytes = |csv: &[u8]| Office::default().plan(csv).to_string();
    insta::assert_snapshot!(bytes(b"row,group,name\nperson,KOLO,Andr\xE9\n"), @r#"
    line 2: refused: this line is not UTF-8 text; save the sheet as CSV in UTF-8

    groups: 0 new, 0 changed, 0 as known
    people: 0 new, 0 changed, 0 as known
    phones: 0 new, 0 changed, 0 as known
    blocks: 0 new, 0 changed, 0 as known
    facts:  0 new
    1 refused, 0 doubtful. Nothing can be stored until the refused lines are put right.
    "#);
    insta::assert_snapshot!(bytes(b"\xFF\xFEr\0o\0w\0"), @r#"
    line 1: refused: this line is not UTF-8 text; save the sheet as CSV in UTF-8

    groups: 0 new, 0 changed, 0 as known
    people: 0 new, 0 changed, 0 as known
    phones: 0 new, 0 changed, 0 as known
    blocks: 0 new, 0 changed, 0 as known
    facts:  0 new
    1 refused, 0 doubtful. Nothing can be stored until the refused lines are put right.
    "#);
    insta::assert_snapshot!(bytes(b"r\0o\0w\0,\0"), @r#"
    line 1: refused: this line is not UTF-8 text; save the sheet as CSV in UTF-8

    groups: 0 new, 0 changed, 0 as known
    people: 0 new, 0 changed, 0 as known
    phones: 0 new, 0 changed, 0 as known
    blocks: 0 new, 0 changed, 0 as known
    facts:  0 new
    1 refused, 0 doubtful. Nothing can be stored until the refused lines are put right.
    "#);
    insta::assert_snapshot!(bytes(&b"row,name\n".repeat(600_000)), @r#"
    line 1: refused: the file has more than 5 MB; split it by group

    groups: 0 new, 0 changed, 0 as known
    people: 0 new, 0 changed, 0 as known
    phones: 0 new, 0 changed, 0 as known
    blocks: 0 new, 0 changed, 0 as known
    facts:  0 new
    1 refused, 0 doubtful. Nothing can be stored until the refused lines are put right.
    "#);
}

#[test]
fn rows_that_cannot_be_read() {
    insta::assert_snapshot!(said(
        "row,group,name\nperson,KOLO\ntree,KOLO,Tamo\n,KOLO,Tamo\nperson,KOLO,Tamo,x\nperson,,\n"
    ), @r#"
    line 2: refused: this row has 2 cells and the first line has 3; look for a missing or an extra separator, or a quotation mark that is not closed
    line 3: refused: row is "tree"; write group, person or block
    line 4: refused: row is ""; write group, person or block
    line 5: refused: this row has 4 cells and the first line has 3; look for a missing or an extra separator, or a quotation mark that is not closed
    line 6: refused: name is empty; a person row needs it
    "#);
    insta::assert_snapshot!(said("row,group,name\nperson,KOLO,\"Tamo\nRill\n"), @"line 2: refused: there is no group KOLO; add a group row for it, or correct the name");
    let long = format!("row,name\nperson,{}\n", "x".repeat(201));
    insta::assert_snapshot!(said(&long), @"line 2: refused: name has more than 200 characters; is a quotation mark not closed?");
    insta::assert_snapshot!(said(
        "row,group,name,role,language,consent_on,zone\n\
         person,,=HYPERLINK(1),adviser,,2026-01-01,\n\
         person,,@Tamo,adviser,,2026-01-01,\n\
         person,,-,adviser,,2026-01-01,\n\
         person,,12,adviser,,2026-01-01,\n\
         person,,A name of very many letters indeed,adviser,,2026-01-01,\n\
         person,,Tamo,king,,2026-01-01,\n\
         person,,Tamo,viewer,xx,2026-01-01,\n\
         person,,Tamo,,,2026-01-01,\n\
         person,KOLO,Tamo,,,2026-01-01,\n\
         person,,Sela,viewer,,2026-01-01,Asia/Jakarta\n"
    ), @r#"
    line 2: refused: name begins with = + - or @, as a formula does; type the plain value, or leave it empty
    line 3: refused: name begins with = + - or @, as a formula does; type the plain value, or leave it empty
    line 4: refused: name begins with = + - or @, as a formula does; type the plain value, or leave it empty
    line 5: refused: name is "12"; write a name
    line 6: refused: name is "A name of very many letters indeed"; write a name of at most 30 letters, as people call them
    line 7: refused: role is "king"; write one of farmer, leader, adviser, clerk, nursery, viewer
    line 8: refused: language is "xx"; write one of en, fr
    line 9: refused: group is empty; a person row needs it
    line 10: refused: there is no group KOLO; add a group row for it, or correct the name
    line 11: doubtful: zone is not used in a person row; the cell is passed over
    line 11: doubtful: Sela has no phone; a leader can report for them
    "#);
}

#[test]
fn groups_with_faults() {
    insta::assert_snapshot!(said(
        "row,group,adviser,zone,calendar,market_day,rains_start,rains_end\n\
         group,,,Asia/Jakarta,fao,,,\n\
         group,KOLO VALLEY,,Asia/Jakarta,fao,,,\n\
         group,ONE,,Kolo,fao,,,\n\
         group,TWO,,Asia/Jakarta,moon,,,\n\
         group,THREE,,,fao,,,\n\
         group,FOUR,,Asia/Jakarta,,,,\n\
         group,FIVE,,Asia/Jakarta,fao,Fullmoon,,\n\
         group,SIX,,Asia/Jakarta,fao,,31 Apr,30 May\n\
         group,SEVEN,,Asia/Jakarta,fao,,1 Nov,\n\
         group,EIGHT,Nobody,Asia/Jakarta,fao,,1 Nov,30 Apr\n\
         group,eight,,Asia/Jakarta,fao,,,\n\
         group,NINE,,asia/jakarta,FAO,saturday,11-01,04-30\n\
         group,TEN,,Asia/Jakarta,fao,,1 Apr; 1 Sep,15 Jul\n\
         group,ELEVEN,,Asia/Jakarta,fao,,1 Apr; 1 Jul,15 Jul; 15 Nov\n\
         group,TWELVE,,Asia/Jakarta,fao,,1 Apr;1 Jul;1 Oct,1 May;1 Aug;1 Nov\n\
         group,TWICE,,Asia/Jakarta,fao,,1 Sep; 1 Apr,15 Nov; 15 Jul\n"
    ), @r#"
    line 2: refused: group is empty; a group row needs it
    line 3: refused: group is "KOLO VALLEY"; write one word of at most 12 letters and digits
    line 4: refused: zone is "Kolo"; write a name of the time zone database, like Asia/Jakarta
    line 5: refused: calendar is "moon"; write one of fao, india
    line 6: refused: zone is empty; a group row needs it
    line 7: refused: calendar is empty; a group row needs it
    line 8: refused: market_day is "Fullmoon"; write a day of the week, like Mon or Monday
    line 9: refused: rains_start is "31 Apr"; write the day as 15 Apr or 04-15, or two with ; between, like 1 Apr; 1 Sep
    line 10: refused: rains_end is empty, and rains_start is not; fill both or none
    line 11: refused: there is no adviser Nobody; add a person row with the role adviser
    line 12: refused: eight is already on line 11; join the two rows, or tell them apart by name
    line 13: doubtful: NINE has no adviser; fill adviser, or nobody can ask about it
    line 14: refused: rains_end is "15 Jul"; write as many days as rains_start has, one rains after the other, like 15 Jul; 15 Nov
    line 15: refused: rains_end is "15 Jul; 15 Nov"; write as many days as rains_start has, one rains after the other, like 15 Jul; 15 Nov
    line 16: refused: rains_start is "1 Apr;1 Jul;1 Oct"; write the day as 15 Apr or 04-15, or two with ; between, like 1 Apr; 1 Sep
    line 17: doubtful: TWICE has no adviser; fill adviser, or nobody can ask about it
    "#);
}

#[test]
fn people_who_may_be_one_or_are_named_twice() {
    insta::assert_snapshot!(said(
        "row,group,zone,calendar,adviser,name,role,phone,consent_on,consent_how\n\
         group,KOLO,Asia/Jakarta,fao,Mara,,,,,\n\
         group,LUND,Asia/Jakarta,fao,Mara,,,,,\n\
         person,KOLO,,,,Mara,adviser,07700900100,2026-01-01,\n\
         person,LUND,,,,Mara,adviser,07700900101,2026-01-01,\n\
         person,KOLO,,,,Tamo Rill,,07700900001,2026-01-01,\n\
         person,KOLO,,,,TAMO RILL,,07700900002,2026-01-01,\n\
         person,KOLO,,,,Tammo Rill,,07700900001,2026-01-01,\n\
         person,LUND,,,,Tamo Rill,,07700900003,2026-01-01,\n\
         person,KOLO,,,,Sela Dorn,,,2026-01-01,\n\
         person,KOLO,,,,Osa Brint,,07700900004,,\n\
         person,KOLO,,,,Bako Wend,,07700900005,,signed sheet\n"
    ), @r#"
    line 2: refused: there are several advisers called Mara; tell them apart by name, or keep one row with an empty group
    line 3: refused: there are several advisers called Mara; tell them apart by name, or keep one row with an empty group
    line 5: doubtful: Mara is also in the group KOLO; if they are one person, keep one row
    line 7: refused: TAMO RILL is already on line 6; join the two rows, or tell them apart by name
    line 8: doubtful: Tammo Rill looks like Tamo Rill; if they are one person, keep one spelling
    line 8: doubtful: +447700900001 is shared by Tamo Rill, Tammo Rill; texts will name the person, and answers are asked "for whom?"
    line 9: doubtful: Tamo Rill is also in the group KOLO; if they are one person, keep one row
    line 10: doubtful: Sela Dorn has no phone; a leader can report for them
    line 11: doubtful: Osa Brint has not agreed to texts and will not be texted; fill consent_on, or let them text START
    line 12: refused: consent_on is empty, and consent_how is not; fill both or none
    "#);
}

#[test]
fn days_are_read_in_one_order_only() {
    for (cell, expected) in [
        // ISO 8601: a day, and with reduced precision a month and a year.
        ("2024-12-12", (day(2024, 12, 12), day(2024, 12, 12))),
        ("2024-02-29", (day(2024, 2, 29), day(2024, 2, 29))),
        ("2024-02", (day(2024, 2, 1), day(2024, 2, 29))),
        ("2021", (day(2021, 1, 1), day(2021, 12, 31))),
        ("2026", (day(2026, 1, 1), day(2026, 11, 1))),
        ("2026-11-01", (day(2026, 11, 1), day(2026, 11, 1))),
    ] {
        let csv = block_list("area,unit,planted_on,planted", &format!("1,ha,{cell},400"));
        let plan = Office::default().plan(csv.as_bytes());
        assert!(plan.findings.is_empty(), "{cell}: {plan}");
        let (from, to) = expected;
        let planted = plan.facts.iter().find(|body| body.block().is_some());
        let Some(Body::Reported {
            on, details, kind, ..
        }) = planted
        else {
            panic!("{cell}: {plan}")
        };
        assert_eq!(*kind, Kind::Planted);
        assert_eq!(*on, Happened { from, to }, "{cell}");
        assert_eq!(details.count, Some(400));
    }
    let mut refusals = String::new();
    for cell in [
        "12/6/2025",
        "12.6.2025",
        "2025/06/12",
        "2025-6-12",
        "20250612",
        "2025-13-01",
        "2025-02-29",
        "2026-11-02",
        "2568-06-12",
        "1900-01-00",
        "1900-01-01",
        "9999-01-01",
        "45821",
        "June 2025",
        "0000-00-00",
        "2025-06-12T00:00",
    ] {
        let csv = block_list("area,unit,planted_on,planted", &format!("1,ha,{cell},400"));
        refusals += &said(&csv);
        refusals.push('\n');
    }
    insta::assert_snapshot!(refusals, @r#"
    line 5: refused: planted_on is "12/6/2025"; write the day as year-month-day, like 2026-04-15, or only 2026-04 or 2026
    line 5: refused: planted_on is "12.6.2025"; write the day as year-month-day, like 2026-04-15, or only 2026-04 or 2026
    line 5: refused: planted_on is "2025/06/12"; write the day as year-month-day, like 2026-04-15, or only 2026-04 or 2026
    line 5: refused: planted_on is "2025-6-12"; write the day as year-month-day, like 2026-04-15, or only 2026-04 or 2026
    line 5: refused: planted_on is "20250612"; write the day as year-month-day, like 2026-04-15, or only 2026-04 or 2026
    line 5: refused: planted_on is "2025-13-01"; write the day as year-month-day, like 2026-04-15, or only 2026-04 or 2026
    line 5: refused: planted_on is "2025-02-29"; write the day as year-month-day, like 2026-04-15, or only 2026-04 or 2026
    line 5: refused: planted_on is "2026-11-02"; this day is still to come; write a day that is over
    line 5: refused: planted_on is "2568-06-12"; 2568 is a Buddhist year; write 2025
    line 5: refused: planted_on is "1900-01-00"; write the day as year-month-day, like 2026-04-15, or only 2026-04 or 2026
    line 5: refused: planted_on is "1900-01-01"; this is the first day that a computer knows, and stands for an empty cell; write the day, or leave it empty
    line 5: refused: planted_on is "9999-01-01"; the year is not plausible; write the day as year-month-day, like 2026-04-15
    line 5: refused: planted_on is "45821"; write the day as year-month-day, like 2026-04-15, or only 2026-04 or 2026
    line 5: refused: planted_on is "June 2025"; write the day as year-month-day, like 2026-04-15, or only 2026-04 or 2026
    line 5: refused: planted_on is "0000-00-00"; write the day as year-month-day, like 2026-04-15, or only 2026-04 or 2026
    line 5: refused: planted_on is "2025-06-12T00:00"; write the day as year-month-day, like 2026-04-15, or only 2026-04 or 2026
    "#);
}

#[test]
fn land_and_trees_with_faults() {
    let mut text = String::new();
    for (columns, cells) in [
        ("area,unit", ",ha"),
        ("area,unit", "1.5,"),
        ("area,unit", "0,ha"),
        ("area,unit", "2 half,ha"),
        ("area,unit", "\"1,500\",ha"),
        ("area,unit", "1e9,ha"),
        ("area,unit", "1.5,kg"),
        ("area,unit", "1.5,m2"),
        ("area,unit", "120,ha"),
        ("area,unit,slope_pct", "1.5,ha,300"),
        ("area,unit,row_m", "1.5,ha,7"),
        ("area,unit,row_m,tree_m", "1.5,ha,0.1,3"),
        ("area,unit,planned_on", "1.5,ha,2040-01-01"),
        ("area,unit,planted", "1.5,ha,400"),
        ("area,unit,planted_on", "1.5,ha,2025-06-12"),
        ("area,unit,planted_on,planted", "1,ha,2025-06-12,1.200"),
        ("area,unit,planted_on,planted", "1,ha,2025-06-12,0"),
        ("area,unit,planted_on,planted", "1,ha,2025-06-12,911"),
    ] {
        text += &format!("{cells}\n  {}\n", said(&block_list(columns, cells)));
    }
    insta::assert_snapshot!(text, @r#"
    ,ha
      line 5: doubtful: block A of Tamo Rill has no area; amounts of plants and fertiliser will be missing
    1.5,
      line 5: refused: unit is empty, and area is not; fill both or none
    0,ha
      line 5: refused: area is "0"; write a number above 0, like 1.5
    2 half,ha
      line 5: refused: area is "2 half"; write a number above 0, like 1.5
    "1,500",ha
      line 5: refused: area is "1,500"; write a number above 0, like 1.5
    1e9,ha
      line 5: refused: area is "1e9"; write a number above 0, like 1.5
    1.5,kg
      line 5: refused: unit is "kg"; write one of ha, acre, rai, m2
    1.5,m2
      line 5: doubtful: block A of Tamo Rill has an area of 1.5 m2; is the unit right?
    120,ha
      line 5: doubtful: block A of Tamo Rill has an area of 120 ha; is the unit right?
    1.5,ha,300
      line 5: refused: slope_pct is "300"; write a number from 0 to 200, with a point for decimals
    1.5,ha,7
      line 5: refused: tree_m is empty, and row_m is not; fill both or none
    1.5,ha,0.1,3
      line 5: refused: row_m is "0.1"; write a number from 1 to 30, with a point for decimals
    1.5,ha,2040-01-01
      line 5: refused: planned_on is "2040-01-01"; the year is not plausible; write the day as year-month-day, like 2026-04-15
    1.5,ha,400
      line 5: refused: planted_on is empty, and planted is not; fill both or none
    1.5,ha,2025-06-12
      line 5: refused: planted is empty, and planted_on is not; fill both or none
    1,ha,2025-06-12,1.200
      line 5: refused: planted is "1.200"; write a whole number from 1 to 60000, in digits
    1,ha,2025-06-12,0
      line 5: refused: planted is "0"; write a whole number from 1 to 60000, in digits
    1,ha,2025-06-12,911
      line 5: doubtful: block A of Tamo Rill has 911 trees on land for about 700; compare trees and area
    "#);
}

#[test]
fn blocks_with_odd_names_and_owners() {
    let list = block_list("area,unit", "1,ha");
    let rows = "block,KOLO,,,,Tamo Rill,,,,a,1,ha\n\
                block,KOLO,,,,Tamo Rill,,,,Dead,1,ha\n\
                block,KOLO,,,,Tamo Rill,,,,2,1,ha\n\
                block,KOLO,,,,Tamo Rill,,,,North Hill,1,ha\n\
                block,KOLO,,,,Tamo Rill,,,,,1,ha\n\
                block,KOLO,,,,Sela Dorn,,,,A,1,ha\n\
                block,LUND,,,,Tamo Rill,,,,A,1,ha\n\
                block,KOLO,,,,Tamo Rill,,,,Höhe,1,ha\n";
    insta::assert_snapshot!(said(&format!("{list}{rows}")), @r#"
    line 6: refused: block a of this farmer is already on line 5; join the two rows, or tell them apart by name
    line 7: doubtful: "Dead" is also a word or a number of the text language; another name is safer
    line 8: doubtful: "2" is also a word or a number of the text language; another name is safer
    line 9: refused: block is "North Hill"; write one word of at most 12 letters and digits
    line 10: refused: block is empty; a block row needs it
    line 11: refused: there is no person Sela Dorn in this group; add a person row, or correct the name
    line 12: refused: there is no group LUND; add a group row for it, or correct the name
    "#);
}

#[test]
fn a_file_at_the_limit_loads_and_one_row_more_does_not() {
    let mut list = "row,name,role,phone,consent_on\n".to_string();
    for number in 0..20_000 {
        list += &format!("person,Person {number:05},viewer,,2026-01-05\n");
    }
    let plan = Office::default().plan(list.as_bytes());
    assert!(plan.may_be_stored());
    assert_eq!(plan.persons.len(), 20_000);
    let shown = plan.to_string();
    assert!(
        shown.lines().count() < 520,
        "a long list of findings is cut"
    );

    list += "person,One More,viewer,,2026-01-05\n";
    let plan = Office::default().plan(list.as_bytes());
    let refused: Vec<&Fault> = plan
        .findings
        .iter()
        .filter(|finding| finding.severity() == Severity::Refused)
        .map(|finding| &finding.fault)
        .collect();
    assert_eq!(refused, [&Fault::RowsMany]);
}

#[test]
fn one_bad_row_is_not_repeated_for_every_row_that_needs_it() {
    let list = block_list("area,unit", "1,ha");
    insta::assert_snapshot!(said(&list.replace("fao", "moon")), @r#"line 2: refused: calendar is "moon"; write one of fao, india"#);
    insta::assert_snapshot!(said(&list.replace("Tamo Rill,farmer", "Tamo Rill,king")), @r#"line 4: refused: role is "king"; write one of farmer, leader, adviser, clerk, nursery, viewer"#);
    insta::assert_snapshot!(said(&list.replace("adviser,+44", "=adviser,+44")), @"line 3: refused: role begins with = + - or @, as a formula does; type the plain value, or leave it empty");
}

#[test]
fn one_number_for_a_whole_village_is_refused_once_it_is_too_many() {
    let mut list = "row,name,role,phone,consent_on\n".to_string();
    for number in 0..52 {
        list += &format!("person,Person {number:05},viewer,07700900001,2026-01-05\n");
    }
    let plan = Office::default().plan(list.as_bytes());
    let refused: Vec<String> = plan
        .findings
        .iter()
        .filter(|finding| finding.severity() == Severity::Refused)
        .map(Finding::to_string)
        .collect();
    insta::assert_snapshot!(refused.join("\n"), @r#"
    line 52: refused: +447700900001 is used by more than 50 people; leave phone empty for those who do not hold it
    line 53: refused: +447700900001 is used by more than 50 people; leave phone empty for those who do not hold it
    "#);
}
