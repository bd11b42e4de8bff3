//! What is left of somebody who had their name taken out.

use chrono::TimeDelta;

use crate::fixture::desk::Desk;

/// Nilo Farr: one block, alone on the phone.
const NILO: &str = "+447700900003";

/// The answer to the last text goes to a phone that is nobody's any more, and must not begin a
/// conversation with it anew.
#[test]
fn the_conversation_of_an_erased_phone_is_not_written_back() {
    let mut desk = Desk::open("2026-12-14T02:00:00Z");
    let talks = |desk: &Desk| {
        let mut talks = desk.stored("talk");
        talks.retain(|talk| talk["number"] == NILO);
        talks.len()
    };
    desk.text(NILO, "planted 120");
    desk.send_all();
    assert_eq!(talks(&desk), 1, "there is one to take out");
    desk.wait(TimeDelta::hours(1));
    assert_eq!(desk.text(NILO, "erase"), "asked for a code");
    let asked = desk.send_all().pop().expect("a code is sent");
    let code = asked.text.split_whitespace().last().expect("its last word");
    assert_eq!(desk.text(NILO, &format!("yes {code}")), "done with a code");
    assert_eq!(talks(&desk), 0, "with the step that takes it out");
    desk.send_all();
    desk.wait(TimeDelta::hours(30));
    desk.send_all();
    assert_eq!(talks(&desk), 0, "nor when the last answer has gone");
    let phones = desk.stored("phone");
    assert!(phones.iter().all(|phone| phone["number"] != NILO));
    let people = desk.stored("person");
    assert!(people.iter().all(|person| person["name"] != "Nilo Farr"));
}
