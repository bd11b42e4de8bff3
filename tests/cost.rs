//! What a text of an adviser costs by the size of the group, in pieces of memory taken: figures
//! that are the same on every machine, which times are not.

use allocation_counter::measure;
use budwood::{engine::Input, play::virtual_clock, store::MemoryStore};

use crate::fixture::desk::{ADVISER, Desk, at, inbound};

/// Four times as many members may cost little more than four times as much.
const FEW: usize = 60;
const MANY: usize = 240;

const TEXTS: [&str; 16] = [
    "thanks",
    "status KOLO",
    "late KOLO",
    "quiet",
    "gaps KOLO",
    "sick KOLO",
    "visit",
    "girth KOLO",
    "girth séla7",
    "how much fertiliser KOLO",
    "séla7",
    "Nobody",
    "help",
    "from séla7: dead 4 A",
    "when do the buyers come to the market on the other side of the river this year",
    "weed KOLO",
];

/// A group of stands of five years, of which half were measured, some are sick and some have gaps.
/// Names with accents must be folded, which takes memory each time it is done.
fn village(members: usize) -> Desk {
    let head = "row,group,name,role,phone,language,consent_on,consent_how,adviser,zone,calendar,\
                market_day,rains_start,rains_end,block,area,unit,slope_pct,row_m,tree_m,latitude,\
                longitude,planned_on,clone,planted_on,planted\n\
                group,KOLO,,,,,,,Mara,Asia/Jakarta,fao,Sat,1 Nov,30 Apr,,,,,,,,,,,,\n";
    let mut list = head.to_owned();
    list += &format!(
        "person,,Mara,adviser,{ADVISER},en,2026-09-01,contract{}\n",
        ",".repeat(18)
    );
    for id in 0..members {
        let (name, phone) = (format!("Séla{id} Olm{id}"), number(id));
        let person = format!("person,KOLO,{name},farmer,{phone},en,2026-09-01,signed sheet");
        list += &format!("{person}{}\n", ",".repeat(18));
        let block = format!("block,KOLO,{name}{}A,1,ha,,,,,,,,", ",".repeat(12));
        list += &format!("{block}2022-01-10,{}\n", 300 + id);
    }
    let mut desk = Desk::over(MemoryStore::new(), at("2027-02-01T03:00:00Z"), true);
    let plan = virtual_clock::plan_roll(&desk.engine, list.as_bytes(), desk.now);
    assert!(plan.may_be_stored(), "{plan}");
    desk.input(Input::Roll(Box::new(virtual_clock::entries(&plan))));
    for id in 0..members {
        let said = match id % 4 {
            0 => format!("dead {} A", 4 + id % 30),
            1 => "girth A 40 42 40 42 40 42 40 42".to_owned(),
            2 => "white root 2 trees A".to_owned(),
            _ => "girth A 48 51 50 52 49 51 50 52".to_owned(),
        };
        desk.text(&number(id), &said);
    }
    desk
}

/// Of the numbers for invented people.
fn number(id: usize) -> String {
    format!("+447700900{}", 200 + id)
}

#[test]
fn a_text_of_an_adviser_costs_a_straight_line_in_members() {
    let mut costs = [FEW, MANY].map(|members| {
        let mut desk = village(members);
        TEXTS.map(|text| {
            desk.wait(chrono::TimeDelta::hours(25));
            // Whatever is kept for the next text is made by the first.
            desk.text(ADVISER, "thank you");
            desk.wait(chrono::TimeDelta::hours(25));
            let input = Input::Text(inbound(ADVISER, text));
            measure(|| drop(desk.engine.step(vec![input], desk.now))).count_total
        })
    });
    let [few, many] = &mut costs;
    let rows = TEXTS.iter().zip(few.iter().zip(many.iter()));
    let crooked: Vec<_> = rows.filter(|(_, (few, many))| **many > 5 * **few).collect();
    assert!(crooked.is_empty(), "(text, few, many): {crooked:?}");
}
