//! An adviser's own words: nobody else sends any, and who wants none gets none.

use budwood::words::traffic::Outgoing;
use chrono::TimeDelta;

use super::{KETI, MORNING, to, wrong};
use crate::fixture::{
    code,
    desk::{ADVISER, Desk, HANA, JARO},
};

const TELL: &str = "tell KOLO: meeting Friday 8 at the school";

/// What was sent of an adviser's words.
fn heard(sent: &[Outgoing]) -> Vec<&str> {
    let sent = sent.iter().filter(|text| text.text.contains("meeting"));
    let others = sent.filter(|text| text.to != ADVISER);
    others.map(|text| text.to.as_str()).collect()
}

#[test]
fn a_forged_tell_reaches_nobody() {
    let mut desk = Desk::open(MORNING);
    assert_eq!(desk.text(ADVISER, TELL), "asked for a code");
    let sent = desk.send_all();
    assert_eq!(to(&sent, ADVISER).len(), sent.len(), "only she is told");
    let wrong = wrong(&code(&sent));
    for outcome in ["wrong code", "wrong code", "locked"] {
        assert_eq!(desk.text(ADVISER, &wrong), outcome);
    }
    assert_eq!(desk.text(ADVISER, "yes"), "nothing was asked");
    assert_eq!(desk.text(ADVISER, TELL), "locked");
    assert_eq!(heard(&desk.send_all()), [""; 0]);
}

#[test]
fn a_visit_sends_nothing_to_many() {
    let mut desk = Desk::open(MORNING);
    desk.text(ADVISER, "from Keti: dead 4");
    let visit = code(&desk.send_all());
    assert_eq!(desk.text(ADVISER, &visit), "asked to confirm");
    desk.text(ADVISER, "1");
    assert_eq!(desk.text(ADVISER, TELL), "asked for a code");
    let own = code(&desk.send_all());
    assert_ne!(own, visit);
    assert_eq!(heard(&desk.send_all()), [""; 0]);
    assert_eq!(desk.text(ADVISER, &own), "done with a code");
    assert!(heard(&desk.send_all()).len() > 10);
    // The same code again sends nothing.
    desk.text(ADVISER, &own);
    assert_eq!(heard(&desk.send_all()), [""; 0]);
}

/// Each phone is asked for again when its text leaves.
#[test]
fn who_stops_or_mourns_after_the_code_gets_none() {
    let mut desk = Desk::open(MORNING);
    desk.text(ADVISER, TELL);
    let code = code(&desk.send_all());
    desk.text(ADVISER, &code);
    desk.text(JARO, "stop");
    desk.text(HANA, "my mother died");
    let mut desk = desk.restart(true);
    let sent = desk.send_all();
    let heard = heard(&sent);
    assert!(heard.contains(&KETI), "{heard:?}");
    assert!(
        !heard.contains(&JARO) && !heard.contains(&HANA),
        "{heard:?}"
    );
}

#[test]
fn words_that_lie_too_long_are_sent_no_more() {
    let mut desk = Desk::open(MORNING);
    desk.text(ADVISER, TELL);
    let code = code(&desk.send_all());
    desk.text(ADVISER, &code);
    // The gateway took nothing for three days.
    desk.wait(TimeDelta::hours(72));
    assert_eq!(heard(&desk.send_all()), [""; 0]);
}

#[test]
fn one_phone_asks_for_it_five_times_a_day() {
    let mut desk = Desk::open(MORNING);
    for _ in 0..5 {
        assert_eq!(desk.text(ADVISER, TELL), "asked for a code");
    }
    assert_eq!(desk.text(ADVISER, TELL), "locked");
    assert_eq!(desk.text(ADVISER, "window KOLO"), "asked for a code");
    desk.wait(TimeDelta::hours(24));
    assert_eq!(desk.text(ADVISER, TELL), "asked for a code");
}

#[test]
fn they_wait_where_a_day_has_no_money_left_and_answers_do_not() {
    let mut desk = Desk::open_with(MORNING, |setup| setup.parts_a_day = Some(10));
    desk.text(ADVISER, TELL);
    let code = code(&desk.send_all());
    desk.text(ADVISER, &code);
    desk.text(KETI, "who is this");
    let sent = desk.send_all();
    // Two of ten went to her and one to Keti; reminders and these words stop at eight.
    assert_eq!(heard(&sent).len(), 5, "{sent:?}");
    desk.wait(TimeDelta::hours(24));
    assert_eq!(heard(&desk.send_all()).len(), 8);
}

#[test]
fn nobody_but_their_adviser_speaks_to_a_group() {
    let mut desk = Desk::open(MORNING);
    for phone in [KETI, "+447700900014"] {
        assert_ne!(desk.text(phone, TELL), "asked for a code");
    }
    assert_eq!(heard(&desk.send_all()), [""; 0]);
}
