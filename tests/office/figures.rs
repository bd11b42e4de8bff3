//! A page shows what a text says.

use budwood::engine::looks::{Look, Part};
use chrono::TimeDelta;

use super::{MARA, TAMO, comes_in, desk, look, words};
use crate::fixture::desk::Desk;

/// A desk on which things were told.
fn told() -> Desk {
    let mut desk = desk();
    for (from, text) in [
        (TAMO, "dead 20"),
        (TAMO, "white root 3 trees"),
        ("+447700900006", "weeded"),
        ("+447700900006", "dead 4"),
    ] {
        desk.text(from, text);
        desk.wait(TimeDelta::hours(3));
        desk.send_all();
    }
    desk
}

/// What an adviser is answered.
fn answer(desk: &mut Desk, text: &str) -> String {
    desk.text(MARA, text);
    desk.send_all().pop().expect("an answer").text
}

#[test]
fn a_group_page_begins_with_its_status_as_it_is_texted() {
    let mut desk = told();
    let status = answer(&mut desk, "STATUS KOLO");
    let mara = comes_in(&mut desk, "Mara Tindel");
    let seen = look(&mut desk, &mara, Look::Group("KOLO".to_owned())).expect("a page");
    let page = words(&seen);
    assert_eq!(page[1].trim(), status, "{page:#?}");
}

/// The figures of the row stand in the answer to STATUS, which names each.
#[test]
fn the_row_of_a_group_has_the_figures_of_status() {
    let mut desk = told();
    let status = answer(&mut desk, "STATUS KOLO");
    let mara = comes_in(&mut desk, "Mara Tindel");
    let seen = look(&mut desk, &mara, Look::Groups).expect("a page");
    let row = words(&seen).pop().expect("a row");
    // 2 farmers, both planted; 896 of 920 alive (by hand: 920 - 20 - 4), none counted on a visit; 24
    // gaps.
    assert!(
        row.starts_with("KOLO | 2 | 2 | 97 % | 0 % | 24 | "),
        "{row}"
    );
    for figure in ["2 farmers", "2 planted", "97%"] {
        assert!(status.contains(figure), "{figure}: {status}");
    }
    let sick = row.split(" | ").nth(9).expect("sick farmers");
    assert!(status.contains(&format!("sick {sick}")), "{row}\n{status}");
}

#[test]
fn the_season_shows_what_was_done_seen_asked_and_late_in_its_week() {
    let mut desk = told();
    desk.text(MARA, "from Tamo: dead 2");
    let code = crate::fixture::code(&desk.send_all());
    desk.text(MARA, &code);
    desk.send_all();
    desk.text(MARA, "1");
    desk.send_all();
    let mara = comes_in(&mut desk, "Mara Tindel");
    let seen = look(&mut desk, &mara, Look::Group("KOLO".to_owned())).expect("a page");
    let Some(Part::Weeks(weeks)) = seen
        .parts
        .iter()
        .find(|part| matches!(part, Part::Weeks(_)))
    else {
        panic!("a season");
    };
    assert_eq!(weeks.from.len(), 26);
    let last = |row: usize| weeks.rows[row].1.last().copied().expect("a week");
    let (tamo, lia) = (last(0), last(1));
    assert!(tamo.done && tamo.seen, "{tamo:?}");
    assert!(lia.done && !lia.seen, "{lia:?}");
    let first = weeks.rows[0].1[0];
    assert!(first.is_empty(), "{first:?}");
}

#[test]
fn every_figure_of_a_farmer_opens_to_its_facts_and_a_fact_to_its_text() {
    let mut desk = told();
    let mara = comes_in(&mut desk, "Mara Tindel");
    let tamo = desk
        .engine
        .directory()
        .persons()
        .find(|one| one.name == "Tamo Oss");
    let tamo = tamo.expect("Tamo").id;
    let seen = look(&mut desk, &mara, Look::Person(tamo)).expect("a page");
    let tables = seen.parts.iter().filter_map(|part| {
        let Part::Table(grid) = part else {
            return None;
        };
        Some(grid)
    });
    let cells = tables.flat_map(|grid| grid.rows.iter().flatten().cloned());
    let cells: Vec<_> = cells.collect();
    let under: Vec<Look> = cells.iter().filter_map(|cell| cell.to.clone()).collect();
    let mut found = 0;
    for one in under {
        let page = look(&mut desk, &mara, one.clone()).expect("every link leads to a page");
        let page = words(&page).join("\n");
        if let Look::Under(..) = one {
            assert!(page.contains("dead") || page.contains("root"), "{page}");
            found += 1;
        }
        if page.contains("white root 3 trees") {
            found += 1;
        }
    }
    assert!(found >= 3, "{found}");
}
