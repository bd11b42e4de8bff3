//! Groups and texts change hands by a code only, and whoever has them no more sees them no more.

use super::{KETI, MORNING, to};
use crate::fixture::{
    DEMO_ROLL, code,
    desk::{ADVISER, Desk},
};
use budwood::{engine::Input, play::virtual_clock};
use chrono::TimeDelta;

const BEN: &str = "+447700900101";

/// With a second adviser, who has no group.
fn desk() -> Desk {
    let mut desk = Desk::open(MORNING);
    let rows = String::from_utf8_lossy(DEMO_ROLL);
    let head = rows.lines().next().unwrap();
    let roll = format!(
        "{head}\nperson,,Ben Tarr,adviser,{BEN},en,2026-09-01,contract{}\n",
        ",".repeat(head.matches(',').count() - 7)
    );
    let plan = virtual_clock::plan_roll(&desk.engine, roll.as_bytes(), desk.now);
    assert!(plan.may_be_stored(), "{plan}");
    desk.input(Input::Roll(Box::new(virtual_clock::entries(&plan))));
    desk
}

fn advisers(desk: &Desk) -> Vec<u64> {
    let groups = desk.stored("group");
    groups
        .iter()
        .filter_map(|group| group["adviser"].as_u64())
        .collect()
}

#[test]
fn a_forged_handover_moves_nothing() {
    let mut desk = desk();
    let before = advisers(&desk);
    assert_eq!(desk.text(ADVISER, "handover Ben"), "asked for a code");
    let sent = desk.send_all();
    assert_eq!(to(&sent, BEN), [""; 0]);
    assert_eq!(desk.text(ADVISER, "yes"), "nothing was asked");
    assert_eq!(desk.text(BEN, "status KOLO"), "answered");
    assert!(!to(&desk.send_all(), BEN)[0].contains("farmers"));
    assert_eq!(advisers(&desk), before);
    assert_eq!(desk.text(ADVISER, &code(&sent)), "done with a code");
    assert_ne!(advisers(&desk), before);
    let mut desk = desk.restart(true);
    // The same words at once after a start may be a second delivery.
    desk.wait(TimeDelta::hours(1));
    desk.text(BEN, "status KOLO");
    desk.text(ADVISER, "status KOLO");
    let sent = desk.send_all();
    assert!(
        to(&sent, BEN)
            .iter()
            .any(|text| text.contains("15 farmers")),
        "{sent:?}"
    );
    assert!(
        !to(&sent, ADVISER)
            .iter()
            .any(|text| text.contains("15 farmers")),
        "{sent:?}"
    );
}

#[test]
fn a_text_is_passed_on_by_a_code_and_only_to_a_colleague() {
    let mut desk = desk();
    desk.text(KETI, "why did 9 trees die");
    desk.text(ADVISER, "next");
    desk.send_all();
    assert_eq!(desk.text(ADVISER, "p Tamo"), "answered");
    assert_eq!(desk.text(ADVISER, "p Ben"), "asked for a code");
    let sent = desk.send_all();
    assert_eq!(to(&sent, BEN), [""; 0]);
    assert_eq!(desk.text(BEN, "next"), "answered");
    assert!(!to(&desk.send_all(), BEN)[0].contains("9 trees"));
    assert_eq!(desk.text(ADVISER, &code(&sent)), "passed");
    let mut desk = desk.restart(true);
    desk.wait(TimeDelta::hours(1));
    desk.send_all();
    desk.text(BEN, "next");
    assert!(to(&desk.send_all(), BEN)[0].contains("9 trees"));
    desk.text(ADVISER, "next");
    assert!(!to(&desk.send_all(), ADVISER)[0].contains("9 trees"));
}
