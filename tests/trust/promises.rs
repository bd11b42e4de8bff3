//! What an adviser owes is theirs alone, lasts, and is nobody's once its person is taken out.

use chrono::TimeDelta;

use super::{KETI, MORNING, to};
use crate::fixture::{
    code,
    desk::{ADVISER, Desk, JARO},
};

#[test]
fn a_promise_lasts_until_it_is_kept() {
    let mut desk = Desk::open(MORNING);
    assert_eq!(desk.text(ADVISER, "call Keti Friday"), "promised");
    desk.wait(TimeDelta::days(40));
    let mut desk = desk.restart(true);
    assert_eq!(desk.stored("promise").len(), 1);
    assert_eq!(desk.text(ADVISER, "kept 1"), "kept");
    assert_eq!(desk.stored("promise").len(), 0);
    let mut desk = desk.restart(true);
    // The same words at once after a start may be a second delivery.
    desk.wait(TimeDelta::hours(1));
    assert_eq!(desk.text(ADVISER, "kept 1"), "answered");
}

#[test]
fn whoever_is_taken_out_is_owed_nothing_by_name() {
    let mut desk = Desk::open(MORNING);
    desk.text(ADVISER, "call Jaro Friday");
    desk.text(ADVISER, "promise Keti the string that Jaro has");
    desk.text(JARO, "erase");
    let code = code(&desk.send_all());
    desk.text(JARO, &code);
    let promises = desk.stored("promise");
    assert_eq!(promises.len(), 1, "{promises:?}");
    let words = promises[0]["words"].as_str().unwrap();
    assert!(
        !words.contains("Jaro") && words.contains("string"),
        "{words}"
    );
}

#[test]
fn a_forged_kept_closes_no_text_that_waits() {
    let mut desk = Desk::open(MORNING);
    desk.text(KETI, "call me");
    desk.send_all();
    assert_eq!(desk.text(ADVISER, "kept Keti"), "asked for a code");
    assert_eq!(desk.stored("matter").len(), 1);
    let code = code(&desk.send_all());
    assert_eq!(desk.text(ADVISER, &code), "seen to");
    assert_eq!(desk.stored("matter").len(), 0);
}

#[test]
fn so_many_are_open_at_once() {
    let mut desk = Desk::open(MORNING);
    for minute in 0..60 {
        assert_eq!(
            desk.text(ADVISER, &format!("promise Keti string {minute}")),
            "promised"
        );
        desk.wait(TimeDelta::minutes(2));
    }
    desk.send_all();
    assert_eq!(desk.text(ADVISER, "promise Keti one more"), "answered");
    assert!(to(&desk.send_all(), ADVISER)[0].contains("60"));
    assert_eq!(desk.stored("promise").len(), 60);
}
