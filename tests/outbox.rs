//! Texts out: sent once, tried again with care, and not at all when they must not go.
//!
//! The pauses are checked against SHA-256 from Python's hashlib (FIPS 180-4). That a receipt may
//! come before the answer, twice, late or never: SMPP 3.4, 2.11 and appendix B, and common
//! practice. One confirmation after STOP: CTIA Messaging Principles, opt-out, from memory.

mod gateways;
mod reached;

use std::time::Duration;

use budwood::{
    engine::{Entries, Input},
    words::{
        limits,
        traffic::{About, Delivery, Outgoing, Receipt, SendOutcome, Whose},
    },
};
use chrono::TimeDelta;

use crate::fixture::{
    LINE,
    desk::{ADVISER, Desk, HANA, JARO, at},
};

const MORNING: &str = "2026-12-14T02:00:00Z";

fn later(after: Option<Duration>) -> SendOutcome {
    SendOutcome::Wait {
        whose: Whose::Text,
        after,
        why: "busy".into(),
    }
}

fn theirs(id: &str) -> About {
    About::Theirs(id.to_owned())
}

fn unclear() -> SendOutcome {
    SendOutcome::Unknown {
        why: "no answer".into(),
    }
}

/// A desk with one answer on its way to the gateway.
fn sending() -> (Desk, Outgoing) {
    let mut desk = Desk::open(MORNING);
    desk.text(JARO, "help");
    let text = desk.claim().unwrap();
    assert_eq!(desk.state(text.id), "sending");
    (desk, text)
}

#[test]
fn pauses_double_and_are_spread() {
    let (mut desk, text) = sending();
    // int.from_bytes(sha256(id of 8 bytes + try of 4 bytes)[:4]) % (pause // 4 + 1), for id 2.
    assert_eq!(text.id.0, 2);
    for (try_after_secs, spread_secs) in PAUSES {
        desk.tried(text.id, later(None));
        assert_eq!(desk.state(text.id), "ready");
        let pause = TimeDelta::seconds(try_after_secs + spread_secs);
        assert_eq!(desk.engine.next_try(), Some(desk.now + pause));
        desk.wait(pause - TimeDelta::seconds(1));
        assert_eq!(desk.claim(), None);
        desk.wait(TimeDelta::seconds(1));
        assert_eq!(desk.claim().unwrap(), text);
    }
}

const PAUSES: [(i64, i64); 9] = [
    (30, 6),
    (60, 7),
    (120, 28),
    (240, 43),
    (480, 29),
    (960, 184),
    (1_920, 395),
    (3_600, 428),
    (3_600, 98),
];

#[test]
fn a_gateway_that_asks_for_a_longer_pause_gets_it() {
    let (mut desk, text) = sending();
    desk.tried(text.id, later(Some(Duration::from_secs(300))));
    let pause = desk.engine.next_try().unwrap() - desk.now;
    assert_eq!(pause, TimeDelta::seconds(300 + 6));
}

#[test]
fn a_pause_goes_on_after_a_restart() {
    let (mut desk, text) = sending();
    desk.tried(text.id, later(Some(Duration::from_hours(10))));
    let mut desk = desk.restart(false);
    desk.wait(TimeDelta::hours(9));
    assert!(desk.claim().is_none());
    desk.wait(TimeDelta::hours(4));
    assert_eq!(desk.claim().unwrap().id, text.id);
}

/// A clock that ran a year ahead left a pause that ends in a year. After a start by the right one the
/// text goes.
#[test]
fn a_pause_that_lies_a_year_ahead_is_over_at_the_start() {
    let (mut desk, text) = sending();
    desk.now = at("2027-12-14T02:00:00Z");
    desk.tried(text.id, later(None));
    desk.now = at(MORNING);
    let mut desk = desk.restart(false);
    assert_eq!(desk.claim().unwrap().id, text.id);
}

/// Nor does it wait for that year where a person says that the clock is right now.
#[test]
fn a_pause_that_lies_a_year_ahead_is_over_once_the_clock_is_put_right() {
    let mut desk = Desk::open("2027-12-14T02:00:00Z");
    desk.text(JARO, "help");
    let text = desk.claim().unwrap();
    desk.tried(text.id, later(None));
    desk.now = at(MORNING);
    desk.engine.believe(desk.now);
    assert_eq!(desk.claim(), None);
    desk.input(Input::Release);
    assert_eq!(desk.claim().unwrap().id, text.id);
}

/// Two parts a day: the answer takes one, and what is left of the day is not for reminders. They go
/// when the next day of the budget has begun, at midnight in UTC.
#[test]
fn a_reminder_that_the_day_has_no_money_for_waits_for_the_next() {
    let mut desk = Desk::open_with("2026-11-02T02:00:00Z", |setup| {
        setup.parts_a_day = Some(2);
    });
    desk.wake();
    let day = desk.now.date_naive();
    let is_nudge = |text: &serde_json::Value| !text["purpose"]["nudge"].is_null();
    for question in ["help", "who is this"] {
        desk.text(HANA, question);
    }
    while let Some(text) = desk.claim() {
        assert_eq!(text.to, HANA, "answers first");
        desk.accepted(text.id, None);
    }
    let mut stored = desk.stored("outbound");
    stored.retain(is_nudge);
    assert!(!stored.is_empty());
    let midnight = day.succ_opt().unwrap().and_time(chrono::NaiveTime::MIN);
    for nudge in &stored {
        assert_eq!(nudge["state"], "ready");
        let try_at = nudge["try_at"].as_str().unwrap();
        assert_eq!(at(try_at), midnight.and_utc());
    }
    // At seven in the morning there it may not go yet; in the afternoon it does.
    desk.now = midnight.and_utc() + TimeDelta::hours(9);
    let nudge = desk.claim().unwrap();
    assert!(stored.iter().any(|one| one["id"] == nudge.id.0));
}

/// A notice is of use for three days, which is longer than all tries.
#[test]
fn tries_come_to_an_end() {
    let mut desk = Desk::open(MORNING);
    desk.text(JARO, "call me");
    let sent = desk.claim().unwrap();
    let notice = desk.claim().unwrap();
    assert_eq!(notice.to, ADVISER);
    desk.accepted(sent.id, None);
    let mut tries = 1;
    while desk.state(notice.id) == "sending" {
        desk.tried(notice.id, later(None));
        if let Some(due) = desk.engine.next_try() {
            desk.now = due;
            desk.claim();
            tries += 1;
        }
    }
    assert_eq!(desk.state(notice.id), "failed");
    assert_eq!(tries, limits::TRIES_MAX);
    assert!(desk.now < notice.expires_at);
}

#[test]
fn an_answer_that_was_not_sent_within_a_day_is_dropped() {
    let (mut desk, text) = sending();
    assert_eq!(text.expires_at, at(MORNING) + TimeDelta::hours(24));
    desk.tried(text.id, later(None));
    desk.wait(TimeDelta::hours(24));
    assert_eq!(desk.claim(), None);
    assert_eq!(desk.state(text.id), "expired");
}

#[test]
fn a_refused_text_has_failed() {
    let (mut desk, text) = sending();
    let refused = SendOutcome::Refused {
        code: Some("SVC0004".into()),
        why: "no".into(),
    };
    desk.tried(text.id, refused);
    assert_eq!(desk.state(text.id), "failed");
    let stored = &desk.stored("outbound")[0];
    assert_eq!(stored["code"], "SVC0004");
    assert_eq!(stored["settled_at"], MORNING);
    desk.wait(TimeDelta::hours(1));
    assert_eq!(desk.claim(), None);
}

#[test]
fn a_receipt_with_our_id_may_come_before_the_answer() {
    let (mut desk, text) = sending();
    desk.receipt(text.id, Delivery::Delivered);
    assert_eq!(desk.state(text.id), "delivered");
    for outcome in [later(None), unclear()] {
        desk.tried(text.id, outcome);
        assert_eq!(desk.state(text.id), "delivered");
    }
    desk.accepted(text.id, Some("p-1"));
    assert_eq!(desk.state(text.id), "delivered");
}

#[test]
fn a_receipt_with_the_gateways_id_may_come_before_the_answer() {
    let (mut desk, text) = sending();
    desk.told_by(LINE, theirs("p-1"), Delivery::Delivered);
    assert_eq!(desk.state(text.id), "sending");
    desk.accepted(text.id, Some("p-1"));
    assert_eq!(desk.state(text.id), "delivered");
}

#[test]
fn the_gateways_id_is_noted_even_if_a_receipt_came_first() {
    let (mut desk, text) = sending();
    desk.receipt(text.id, Delivery::Waiting);
    assert_eq!(desk.state(text.id), "sent");
    desk.accepted(text.id, Some("p-1"));
    desk.told_by(LINE, theirs("p-1"), Delivery::Failed);
    assert_eq!(desk.state(text.id), "failed");
}

#[test]
fn the_networks_word_for_a_failure_is_kept() {
    let (mut desk, text) = sending();
    desk.accepted(text.id, Some("p-1"));
    desk.input(Input::Receipt(Receipt {
        gateway: LINE.to_owned(),
        about: theirs("p-1"),
        delivery: Delivery::Failed,
        code: Some("UNDELIV".to_owned()),
    }));
    assert_eq!(desk.stored("outbound")[0]["code"], "UNDELIV");
}

#[test]
fn states_move_forward_only() {
    let (mut desk, text) = sending();
    desk.accepted(text.id, None);
    for (delivery, state) in [
        (Delivery::Waiting, "sent"),
        (Delivery::Uncertain, "sent"),
        (Delivery::Delivered, "delivered"),
        (Delivery::Delivered, "delivered"),
        (Delivery::Failed, "delivered"),
        (Delivery::Waiting, "delivered"),
    ] {
        desk.receipt(text.id, delivery);
        assert_eq!(desk.state(text.id), state);
    }
}

#[test]
fn without_a_receipt_a_text_stays_sent_and_is_forgotten() {
    let (mut desk, text) = sending();
    desk.accepted(text.id, Some("p-1"));
    assert!(desk.engine.outbound(text.id).is_some());
    assert_eq!(desk.engine.waiting(), 0);
    desk.wait(TimeDelta::hours(limits::RECEIPT_HOURS + 1));
    desk.text(HANA, "help");
    assert!(desk.engine.outbound(text.id).is_none());
    desk.receipt(text.id, Delivery::Delivered);
    assert_eq!(desk.state(text.id), "sent");
    // Nor does a restart bring it back.
    let mut desk = desk.restart(true);
    desk.input(Input::Wake);
    assert!(desk.engine.outbound(text.id).is_none());
}

/// Nobody knows whether the gateway has it, so it goes again only where that is harmless.
#[test]
fn a_crash_between_sending_and_noting() {
    let (desk, text) = sending();
    let mut other = desk.restart(false);
    assert_eq!(other.state(text.id), "unknown");
    other.wait(TimeDelta::hours(1));
    assert_eq!(other.claim(), None);

    let mut same = desk.restart(true);
    assert_eq!(same.state(text.id), "ready");
    assert_eq!(same.claim().unwrap(), text);
}

#[test]
fn what_was_sent_is_not_sent_after_a_crash() {
    let (mut desk, text) = sending();
    desk.accepted(text.id, None);
    let mut desk = desk.restart(true);
    desk.wait(TimeDelta::hours(1));
    assert_eq!(desk.claim(), None);
    assert_eq!(desk.state(text.id), "sent");
}

#[test]
fn a_try_without_an_answer() {
    let (mut desk, text) = sending();
    desk.tried(text.id, unclear());
    assert_eq!(desk.state(text.id), "ready");

    let (desk, _) = sending();
    let mut desk = desk.restart(false);
    desk.text(HANA, "help");
    let text = desk.claim().unwrap();
    desk.tried(text.id, unclear());
    assert_eq!(desk.state(text.id), "unknown");
    // A receipt tells more.
    desk.receipt(text.id, Delivery::Delivered);
    assert_eq!(desk.state(text.id), "delivered");
}

#[test]
fn after_stop_only_the_confirmation_leaves() {
    let mut desk = Desk::open("2026-11-02T02:00:00Z");
    desk.wake();
    let nudge = desk.claim().unwrap();
    desk.tried(nudge.id, later(None));
    desk.text(&nudge.to, "help");
    desk.text(&nudge.to, "STOP");
    desk.wait(TimeDelta::minutes(30));
    let sent = desk.send_all();
    let theirs: Vec<_> = sent.iter().filter(|text| text.to == nudge.to).collect();
    assert_eq!(theirs.len(), 1, "{theirs:?}");
    assert!(theirs[0].id > nudge.id);
    assert_eq!(desk.state(nudge.id), "cancelled");
    for _ in 0..20 {
        desk.wake();
        assert!(desk.send_all().iter().all(|text| text.to != nudge.to));
    }
}

/// A morning with more texts than are kept in mind must not hide what waits behind them.
#[test]
fn a_text_that_waits_is_remembered_however_many_came_after_it() {
    let (mut desk, text) = sending();
    desk.tried(text.id, later(None));
    for minutes in 0..5 {
        desk.wait(TimeDelta::minutes(minutes));
        desk.text(HANA, "help");
    }
    let of_all = |number| desk.engine.store().load(number).unwrap().outbound;
    assert!(of_all(1).len() > 1);
    assert!(of_all(1).iter().any(|one| one.id == text.id));
    // A week later nothing can come of it any more.
    desk.wait(TimeDelta::days(8));
    desk.text(JARO, "help");
    assert_eq!(desk.engine.store().load(1).unwrap().outbound.len(), 1);
}

/// It cannot be called back, but it is not tried again either.
#[test]
fn a_text_on_its_way_when_stop_comes() {
    let (mut desk, text) = sending();
    desk.text(JARO, "STOP");
    desk.tried(text.id, later(None));
    desk.wait(TimeDelta::hours(1));
    let sent = desk.send_all();
    assert_eq!(sent.len(), 1);
    assert_ne!(sent[0].id, text.id);
    assert_eq!(desk.state(text.id), "expired");
}

#[test]
fn a_nudge_that_could_not_go_in_the_evening_waits_for_the_next_day() {
    let mut desk = Desk::open("2026-11-02T02:00:00Z");
    desk.wake();
    let nudge = desk.claim().unwrap();
    assert_eq!(nudge.expires_at, desk.now + TimeDelta::days(3));
    // 18:50 where the group lives: it may go until 19:00.
    desk.now = at(&format!("{}T11:50:00Z", desk.now.date_naive()));
    desk.tried(nudge.id, later(Some(Duration::from_secs(20 * 60))));
    desk.wait(TimeDelta::minutes(30));
    assert!(desk.send_all().iter().all(|text| text.id != nudge.id));
    assert_eq!(desk.state(nudge.id), "ready");
    let next = desk.engine.outbound(nudge.id).unwrap().try_at;
    let local = next + TimeDelta::hours(7);
    assert_eq!(
        local.date_naive(),
        desk.now.date_naive() + TimeDelta::days(1)
    );
    assert_eq!(local.time().to_string(), "15:30:00");
}

#[test]
fn a_nudge_for_work_that_was_done_meanwhile_is_not_sent() {
    let mut desk = Desk::open("2026-11-02T02:00:00Z");
    desk.wake();
    let nudge = desk.claim().unwrap();
    desk.tried(nudge.id, later(None));
    desk.text(&nudge.to, "done");
    desk.wait(TimeDelta::minutes(10));
    let sent = desk.send_all();
    assert!(sent.iter().all(|text| text.id != nudge.id), "{sent:?}");
    assert_eq!(desk.state(nudge.id), "cancelled");
}

#[test]
fn a_nudge_to_a_phone_that_is_somebody_elses_now_is_not_sent() {
    let mut desk = Desk::open("2026-11-02T02:00:00Z");
    desk.wake();
    let nudge = desk.claim().unwrap();
    desk.tried(nudge.id, later(None));
    let directory = desk.engine.directory();
    let mut phone = directory.phone(&nudge.to).unwrap().clone();
    let hers = directory.phone(HANA).unwrap().links.clone();
    assert_ne!(phone.links, hers);
    phone.links = hers;
    desk.input(Input::Roll(Box::new(Entries {
        phones: vec![phone],
        ..Entries::default()
    })));
    desk.wait(TimeDelta::minutes(10));
    assert!(desk.send_all().iter().all(|text| text.id != nudge.id));
    assert_eq!(desk.state(nudge.id), "cancelled");
}

/// Those to other phones are.
#[test]
fn a_welcome_to_a_phone_that_is_somebody_elses_now_is_not_sent() {
    let mut desk = Desk::open_with("2026-11-02T02:00:00Z", |setup| {
        setup.rules.welcomes_a_day = 100;
    });
    desk.wake();
    let stored = desk.stored("outbound");
    let welcomes = stored
        .iter()
        .filter(|one| !one["purpose"]["welcome"].is_null());
    let [one, next, .., other] = welcomes.collect::<Vec<_>>()[..] else {
        panic!("several phones are welcomed");
    };
    let number = |welcome: &serde_json::Value| welcome["to"].as_str().unwrap().to_owned();
    let id =
        |welcome: &serde_json::Value| budwood_scheduler::MessageId(welcome["id"].as_u64().unwrap());
    let directory = desk.engine.directory();
    let mut phone = directory.phone(&number(one)).unwrap().clone();
    phone.links = directory.phone(&number(other)).unwrap().links.clone();
    desk.input(Input::Roll(Box::new(Entries {
        phones: vec![phone],
        ..Entries::default()
    })));
    let sent = desk.send_all();
    assert!(sent.iter().all(|text| text.id != id(one)), "{sent:?}");
    for welcome in [next, other] {
        assert!(sent.iter().any(|text| text.id == id(welcome)), "{sent:?}");
    }
    assert_eq!(desk.state(id(one)), "cancelled");
}

#[test]
fn who_asks_is_answered_before_anybody_is_nudged() {
    let mut desk = Desk::open("2026-11-02T02:00:00Z");
    desk.wake();
    assert!(desk.engine.waiting() > 1);
    desk.text(HANA, "help");
    let first = desk.claim().unwrap();
    assert_eq!(first.to, HANA);
    assert_eq!(first.expires_at, desk.now + TimeDelta::hours(24));
}
