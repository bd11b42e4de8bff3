//! A clock that cannot be believed: nudges wait, texts are taken in, and it ends by itself.
//!
//! The moments are common practice: a small computer without a battery wakes up in 1970, and
//! somebody sets a clock by hand.

use std::time::Duration;

use budwood::{
    engine::Input,
    service::{
        clock::{
            Clock, FixedClock,
            guard::{ClockGuard, Doubt},
        },
        config::StoreConfig,
        port::Intake,
        server::{self, Room},
    },
};
use chrono::{DateTime, TimeDelta, Utc};

use crate::fixture::{
    claim,
    desk::{Desk, HANA, JARO, at, inbound},
};

const NOON: &str = "2026-12-14T05:00:00Z";
const HOUR: i64 = 3_600;

/// A guard and the clocks that it watches.
struct Watch {
    guard: ClockGuard,
    hand: FixedClock,
    latest: DateTime<Utc>,
}

impl Watch {
    fn at(computer: &str, latest: &str) -> Self {
        Self {
            guard: ClockGuard::default(),
            hand: FixedClock::at(at(computer)),
            latest: at(latest),
        }
    }

    fn look(&mut self) -> (DateTime<Utc>, Option<Doubt>) {
        let now = self
            .guard
            .look(self.hand.now(), self.hand.steady(), self.latest);
        (now, self.guard.doubt())
    }
}

#[test]
fn a_clock_that_runs_is_believed() {
    let mut watch = Watch::at(NOON, "2026-12-14T04:00:00Z");
    for hours in [0, 1, 24, 24 * 365] {
        watch.hand.advance(TimeDelta::hours(hours));
        assert_eq!(watch.look(), (watch.hand.now(), None));
    }
}

/// A small computer whose clock came up years ahead, and a service that was off for two months.
#[test]
fn a_start_long_after_the_last_stored_moment_is_doubted() {
    let mut watch = Watch::at("2031-01-01T05:00:00Z", NOON);
    let secs = (at("2031-01-01T05:00:00Z") - at(NOON)).num_seconds();
    assert_eq!(
        watch.look(),
        (watch.hand.now(), Some(Doubt::Ahead { secs }))
    );
    // A text that comes is stored with this time, which proves nothing.
    watch.latest = watch.hand.now();
    assert_eq!(watch.look().1, Some(Doubt::Ahead { secs }));
    watch.guard.believe(watch.hand.now(), watch.hand.steady());
    assert_eq!(watch.look().1, None, "a person says so");

    let mut put_right = Watch::at("2031-01-01T05:00:00Z", NOON);
    put_right.look();
    put_right.hand.set(at(NOON) + TimeDelta::hours(1));
    assert_eq!(put_right.look(), (put_right.hand.now(), None));

    let mut empty = Watch::at("2031-01-01T05:00:00Z", "1970-01-01T00:00:00Z");
    assert_eq!(empty.look().1, None, "a new store has no last moment");
    let mut weeks = Watch::at("2027-02-01T05:00:00Z", NOON);
    assert_eq!(weeks.look().1, None, "seven weeks off");
}

#[test]
fn small_corrections_are_believed_and_time_does_not_go_back_behind_a_fact() {
    let mut watch = Watch::at(NOON, NOON);
    watch.look();
    for secs in [1, 30, -50] {
        watch.hand.set(at(NOON) + TimeDelta::seconds(secs));
        let (now, doubt) = watch.look();
        assert_eq!(doubt, None);
        assert_eq!(now, at(NOON) + TimeDelta::seconds(secs.max(0)));
    }
}

#[test]
fn a_clock_put_forward_is_not_believed_until_it_is_put_back() {
    let mut watch = Watch::at(NOON, NOON);
    watch.look();
    watch.hand.set(at(NOON) + TimeDelta::days(30));
    watch.hand.advance(TimeDelta::minutes(10));
    let moved = Doubt::Moved { secs: 720 * HOUR };
    // Time is counted on from the last moment that was right.
    let ten_past = at(NOON) + TimeDelta::minutes(10);
    assert_eq!(watch.look(), (ten_past, Some(moved)));
    watch.hand.advance(TimeDelta::hours(2));
    let later = ten_past + TimeDelta::hours(2);
    assert_eq!(watch.look(), (later, Some(moved)));
    watch.hand.set(later + TimeDelta::seconds(5));
    assert_eq!(watch.look(), (later + TimeDelta::seconds(5), None));
}

/// A clock that was fast by less than a jump is put right while texts come all the time.
#[test]
fn a_clock_that_was_fast_is_believed_once_it_is_past_what_is_stored() {
    let mut watch = Watch::at(NOON, NOON);
    watch.look();
    watch.hand.set(at(NOON) + TimeDelta::minutes(50));
    watch.latest = watch.look().0;
    watch.hand.set(at(NOON));
    for _ in 0..49 {
        watch.hand.advance(TimeDelta::minutes(1));
        let (now, _) = watch.look();
        assert_eq!(now, at(NOON) + TimeDelta::minutes(50));
        watch.latest = now;
    }
    assert_eq!(watch.look(), (at(NOON) + TimeDelta::minutes(50), None));
}

#[test]
fn a_clock_put_back_is_not_believed_until_it_is_put_right() {
    let mut watch = Watch::at(NOON, "2026-12-01T00:00:00Z");
    watch.look();
    watch.hand.set(at(NOON) - TimeDelta::hours(3));
    let moved = Doubt::Moved { secs: -3 * HOUR };
    assert_eq!(watch.look(), (at(NOON), Some(moved)));
    watch.hand.set(at(NOON));
    assert_eq!(watch.look(), (at(NOON), None));
}

/// No battery, no network yet.
#[test]
fn a_computer_that_wakes_up_in_1970() {
    let mut watch = Watch::at("1970-01-01T00:00:09Z", NOON);
    let (now, doubt) = watch.look();
    assert_eq!(now, at(NOON));
    assert!(matches!(doubt, Some(Doubt::Behind { .. })));
    // The network sets the clock. That is no jump: it was never right before.
    watch.hand.set(at(NOON) + TimeDelta::days(2));
    assert_eq!(watch.look(), (at(NOON) + TimeDelta::days(2), None));
    // Even with nothing stored 1970 is not believed.
    let mut empty = Watch::at("1970-01-01T00:00:09Z", "1970-01-01T00:00:00Z");
    assert!(matches!(empty.look().1, Some(Doubt::Behind { .. })));
}

#[test]
fn a_person_may_say_that_the_clock_is_right() {
    let mut watch = Watch::at(NOON, NOON);
    watch.look();
    watch.hand.set(at(NOON) + TimeDelta::hours(5));
    assert!(watch.look().1.is_some());
    watch.guard.believe(watch.hand.now(), watch.hand.steady());
    assert_eq!(watch.look(), (at(NOON) + TimeDelta::hours(5), None));
}

#[test]
fn the_reason_says_what_to_do() {
    let said = |doubt: Doubt| doubt.to_string();
    assert_eq!(
        said(Doubt::Moved { secs: 2 * HOUR }),
        "the clock was put forward by 120 minutes; nudges wait until it is right again. If it is \
         right, run `budwood release CONFIG`"
    );
    assert!(said(Doubt::Moved { secs: -2 * HOUR }).contains("put back by 120 minutes"));
    assert!(said(Doubt::Behind { secs: 300 }).contains("5 minutes before the last stored text"));
}

#[test]
fn the_engine_keeps_facts_in_order_whatever_the_clock_says() {
    let mut desk = Desk::open(NOON);
    desk.text(JARO, "planted 120");
    desk.now -= TimeDelta::days(3);
    desk.text(HANA, "planted 90");
    let reports = desk.reports();
    assert_eq!(reports.len(), 2);
    assert_eq!(reports[1]["at"], NOON);
    // The same after a restart.
    let mut desk = desk.restart(true);
    desk.text(HANA, "planted 91");
    assert!(
        desk.stored("received")
            .iter()
            .all(|text| text["at"] == NOON)
    );
}

#[test]
fn nudges_wait_and_answers_go_while_the_clock_is_in_doubt() {
    let mut desk = Desk::open("2026-11-02T02:00:00Z");
    desk.wake();
    let waiting = desk.engine.waiting();
    assert!(waiting > 1);
    desk.engine.let_nudges_wait(true);
    assert_eq!(desk.engine.next_wake(), None);
    assert_eq!(desk.engine.next_try(), None);
    desk.text(HANA, "help");
    let sent = desk.send_all();
    assert_eq!(sent.len(), 1);
    assert_eq!(sent[0].to, HANA);
    let events = desk.stored("event").len();
    desk.wait(TimeDelta::days(8));
    desk.input(Input::Wake);
    assert_eq!(desk.stored("event").len(), events);
    desk.wait(TimeDelta::days(-8));
    desk.engine.let_nudges_wait(false);
    assert_eq!(desk.send_all().len(), waiting);
}

/// The service itself, on a clock that somebody sets.
#[tokio::test]
async fn the_service_says_so_and_goes_on_by_itself() {
    let mut desk = Desk::open("2026-11-02T02:00:00Z");
    desk.wake();
    let start = desk.now;
    let hand = FixedClock::at(start);
    let room = Room::new(&StoreConfig {
        folder: env!("CARGO_MANIFEST_DIR").into(),
        cache_mb: 16,
        reserve_mb: 0,
    });
    let running = server::start(desk.engine, Clock::Fixed(hand.clone()), room).unwrap();
    let handle = running.handle.clone();
    let claimed = async || {
        let told = handle.submit(claim()).await.unwrap();
        told.send.map(|text| text.to)
    };
    hand.advance(TimeDelta::minutes(1));
    let first = claimed().await.expect("a nudge goes");
    assert_eq!(handle.health().trouble, None);

    hand.set(start - TimeDelta::hours(5));
    assert_eq!(claimed().await, None);
    let trouble = handle.health().trouble.expect("health is red");
    assert!(trouble.contains("put back by 301 minutes"), "{trouble}");
    handle
        .submit(Input::Text(inbound(HANA, "help")))
        .await
        .unwrap();
    assert_eq!(claimed().await.as_deref(), Some(HANA));
    // The senders wait by the computer's clock, so that is what they are told.
    let due = *running.next_try.borrow();
    assert!(due.is_none_or(|due| due <= hand.now()), "{due:?}");

    hand.set(start + TimeDelta::minutes(2));
    let next = claimed().await.expect("nudges go again");
    assert_ne!(next, first);
    assert_eq!(handle.health().trouble, None);
    drop(handle);
    running.finish().unwrap();
    assert!(hand.steady() >= Duration::from_secs(60));
}

/// The service came up in 2031 and texted; then somebody put the clock right and said so.
#[test]
fn a_clock_that_was_ahead_silences_nobody_once_it_is_put_right() {
    let mut desk = Desk::open(NOON);
    desk.now = at("2031-01-01T09:00:00Z");
    let wake = |desk: &mut Desk| {
        while desk.engine.next_wake().is_some_and(|at| at <= desk.now) {
            desk.input(Input::Wake);
        }
    };
    wake(&mut desk);
    assert!(
        !desk.send_all().is_empty(),
        "by the wrong clock they are due"
    );
    desk.now = at(NOON) + TimeDelta::days(1);
    desk.engine.believe(desk.now);
    desk.input(Input::Release);
    let mut sent = 0;
    for _ in 0..14 * 24 {
        desk.wait(TimeDelta::hours(1));
        wake(&mut desk);
        sent += desk.send_all().len();
    }
    assert!(sent > 0, "within a fortnight somebody is texted");
}
