//! What waits, by everything that it is looked up by: put in, found, and gone once it is settled.

use budwood_scheduler::PersonId;
use chrono::NaiveDate;

use super::*;
use crate::words::traffic::{Delivery, Whose};

const ANSWER: Purpose = Purpose::Answer { to: MessageId(1) };
const WELCOME: Purpose = Purpose::Welcome {
    person: PersonId(1),
};
const NUDGE: Purpose = Purpose::Nudge {
    block: BlockId(1),
    task: TaskKind::Weed,
    due: NaiveDate::MIN,
};

fn at(seconds: i64) -> DateTime<Utc> {
    DateTime::from_timestamp(1_790_000_000 + seconds, 0).unwrap()
}

/// A text that was made at this second, is ready since then, and has this id.
fn text(id: u64, made: i64, to: &str, purpose: Purpose) -> Outbound {
    let at = at(made);
    let expires_at = at + TimeDelta::days(1);
    Outbound::new(MessageId(id), at, to, "Hello".into(), purpose, expires_at)
}

fn in_state(state: SendState, text: Outbound) -> Outbound {
    Outbound { state, ..text }
}

fn receipt(gateway: &str, id: &str) -> Receipt {
    Receipt {
        gateway: gateway.to_owned(),
        about: About::Theirs(id.to_owned()),
        delivery: Delivery::Delivered,
        code: None,
    }
}

fn next(waiting: &Waiting, gateway: &str, now: i64, with_nudges: bool) -> Option<u64> {
    let next = waiting.next_ready(gateway, at(now), with_nudges);
    next.map(|text| text.id.0)
}

#[test]
fn answers_go_first_and_reminders_only_when_they_may() {
    let mut waiting = Waiting::default();
    waiting.put(text(1, 0, "n", NUDGE), "sim");
    waiting.put(text(2, 5, "w", WELCOME), "sim");
    waiting.put(text(3, 9, "a", ANSWER), "sim");
    assert_eq!(next(&waiting, "sim", 8, true), Some(1));
    assert_eq!(next(&waiting, "sim", 8, false), None);
    assert_eq!(next(&waiting, "sim", 9, true), Some(3));
    assert_eq!(next(&waiting, "sim", 9, false), Some(3));
    assert_eq!(next(&waiting, "other", 9, true), None);
    let links = Links::default();
    assert_eq!(waiting.next_try(&links, true), Some(at(0)));
    assert_eq!(waiting.next_try(&links, false), Some(at(9)));
}

/// When it waits for no gateway nobody can try it, and while a gateway is left alone nobody does.
#[test]
fn the_next_try_is_when_a_gateway_takes_it() {
    let mut waiting = Waiting::default();
    let mut links = Links::default();
    waiting.put(text(1, 0, "a", ANSWER), "");
    assert_eq!(waiting.next_try(&links, true), None);
    waiting.put(text(2, 50, "b", ANSWER), "sim");
    waiting.put(text(3, 90, "c", ANSWER), "centre");
    assert_eq!(waiting.next_try(&links, true), Some(at(50)));
    links.refused("sim", Whose::Gateway, String::new());
    links.pause("sim", at(50), TimeDelta::seconds(30));
    assert_eq!(waiting.next_try(&links, true), Some(at(80)));
    links.pause("sim", at(50), TimeDelta::seconds(300));
    assert_eq!(waiting.next_try(&links, true), Some(at(90)));
}

#[test]
fn two_texts_to_one_phone_go_one_after_the_other() {
    let mut waiting = Waiting::default();
    waiting.put(text(1, 0, "a", ANSWER), "sim");
    waiting.put(text(2, 1, "a", ANSWER), "sim");
    waiting.put(text(3, 2, "b", ANSWER), "sim");
    let sending = in_state(SendState::Sending, text(1, 0, "a", ANSWER));
    waiting.put(sending.clone(), "sim");
    assert_eq!(next(&waiting, "sim", 9, true), Some(3));
    assert_eq!(waiting.sending(), std::slice::from_ref(&sending));
    waiting.put(in_state(SendState::Sent, sending), "sim");
    assert_eq!(next(&waiting, "sim", 9, true), Some(2));
    assert_eq!(waiting.sending(), []);
}

/// What has not left is counted, shown by age, and found by its number.
#[test]
fn what_has_not_left_is_counted() {
    let mut waiting = Waiting::default();
    assert_eq!((waiting.unsent(), waiting.oldest("sim")), (0, None));
    waiting.put(text(1, 20, "a", NUDGE), "sim");
    waiting.put(text(2, 30, "a", ANSWER), "sim");
    // Made last, though its turn comes first.
    let again = Outbound {
        try_at: at(10),
        ..text(3, 40, "b", ANSWER)
    };
    waiting.put(again, "centre");
    let sending = in_state(SendState::Sending, text(4, 5, "a", ANSWER));
    waiting.put(sending, "sim");
    let sent = in_state(SendState::Sent, text(5, 1, "a", ANSWER));
    waiting.put(sent.clone(), "sim");
    assert_eq!(waiting.unsent(), 4);
    assert_eq!(waiting.oldest("sim"), Some(at(20)));
    assert_eq!(waiting.oldest("centre"), Some(at(40)));
    assert_eq!(waiting.oldest_answer(), Some(at(30)), "a nudge has time");
    assert_eq!(waiting.lanes(), ["centre", "sim"]);
    let ids = |texts: Vec<Outbound>| texts.iter().map(|text| text.id.0).collect::<Vec<_>>();
    assert_eq!(ids(waiting.unsent_to("a")), [1, 2, 4]);
    assert_eq!(ids(waiting.ready_for("sim")), [2, 1]);
    assert_eq!(ids(waiting.ready_for("centre")), [3]);
    assert_eq!(waiting.all().count(), 5);
    assert_eq!(waiting.get(MessageId(5)), Some(&sent));
}

/// A job is nudged for once at a time, and a phone is welcomed once.
#[test]
fn what_waits_is_not_made_again() {
    let mut waiting = Waiting::default();
    let nudge_waits = |waiting: &Waiting, block, task| waiting.nudge_waits(BlockId(block), task);
    waiting.put(text(7, 0, "a", NUDGE), "sim");
    waiting.put(text(8, 0, "b", WELCOME), "sim");
    assert!(nudge_waits(&waiting, 1, TaskKind::Weed));
    assert!(!nudge_waits(&waiting, 1, TaskKind::Feed));
    assert!(!nudge_waits(&waiting, 2, TaskKind::Weed));
    let welcomed = |waiting: &Waiting| ["a", "b", "c"].map(|number| waiting.welcome_waits(number));
    assert_eq!(welcomed(&waiting), [false, true, false]);
    // On its way it is not sent again either; when the gateway has it, it waits no more.
    let sending = |id, to, purpose| in_state(SendState::Sending, text(id, 0, to, purpose));
    waiting.put(sending(8, "b", WELCOME), "sim");
    assert_eq!(welcomed(&waiting), [false, true, false]);
    for (id, to, purpose) in [(7, "a", NUDGE), (8, "b", WELCOME)] {
        let sent = in_state(SendState::Sent, sending(id, to, purpose));
        waiting.put(sent, "sim");
    }
    assert!(!nudge_waits(&waiting, 1, TaskKind::Weed));
    assert_eq!(welcomed(&waiting), [false; 3]);
}

/// Settled, a text leaves no trace.
#[test]
fn a_settled_text_is_forgotten() {
    for state in [
        SendState::Delivered,
        SendState::Failed,
        SendState::Expired,
        SendState::Cancelled,
    ] {
        let mut waiting = Waiting::default();
        for purpose in [ANSWER, NUDGE, WELCOME] {
            let ready = Outbound {
                ids: vec!["p-1".to_owned()],
                ..text(1, 0, "a", purpose)
            };
            for before in [SendState::Ready, SendState::Sending, SendState::Sent] {
                waiting.put(in_state(before, ready.clone()), "sim");
                waiting.put(in_state(state, ready.clone()), "sim");
                assert_eq!(waiting.unsent(), 0, "{before:?} {state:?}");
                assert_eq!(waiting.get(MessageId(1)), None);
                assert_eq!(waiting.oldest("sim"), None);
                assert_eq!(waiting.next_try(&Links::default(), true), None);
                assert!(!waiting.nudge_waits(BlockId(1), TaskKind::Weed));
                assert!(!waiting.welcome_waits("a"));
                assert!(waiting.sending_to.is_empty());
                assert!(waiting.handed_over.is_empty() && waiting.handed_to.is_empty());
                assert!(waiting.by_gateway_id.is_empty());
            }
        }
    }
}

/// A gateway's id counts for its own texts; an old store names no gateway.
#[test]
fn a_receipt_finds_its_text() {
    let mut waiting = Waiting::default();
    let sent = |id, gateway: Option<&str>, theirs: &str| Outbound {
        gateway: gateway.map(str::to_owned),
        ids: vec![theirs.to_owned(), format!("{theirs}-2")],
        ..in_state(SendState::Sent, text(id, 0, "a", ANSWER))
    };
    waiting.put(sent(1, Some("sim"), "7"), "sim");
    waiting.put(sent(2, Some("centre"), "7"), "centre");
    waiting.put(sent(3, None, "9"), "");
    let named = |receipt: Receipt| waiting.named_by(&receipt).map(|text| text.id.0);
    assert_eq!(named(receipt("sim", "7")), Some(1));
    assert_eq!(named(receipt("centre", "7-2")), Some(2));
    assert_eq!(named(receipt("sim", "9")), Some(3), "of an old store");
    assert_eq!(named(receipt("sim", "8")), None);
    let ours = |id| Receipt {
        about: About::Ours(MessageId(id)),
        ..receipt("sim", "")
    };
    assert_eq!(named(ours(2)), Some(2));
    assert_eq!(named(ours(4)), None);
}

/// A week after it was made no receipt comes any more; one second earlier it may.
#[test]
fn what_the_gateway_has_is_kept_for_a_week() {
    let mut waiting = Waiting::default();
    for (id, state) in [(1, SendState::Sent), (2, SendState::Unknown)] {
        waiting.put(in_state(state, text(id, 0, "a", ANSWER)), "sim");
    }
    waiting.put(text(3, 0, "a", ANSWER), "sim");
    let week = TimeDelta::hours(limits::RECEIPT_HOURS);
    waiting.forget_before(at(0) + week);
    assert_eq!(waiting.all().count(), 3);
    waiting.forget_before(at(1) + week);
    let left: Vec<u64> = waiting.all().map(|text| text.id.0).collect();
    assert_eq!(left, [3], "what has not left is never forgotten");
}

/// Of one phone only so many are kept in mind, the newest, and those of others stay.
#[test]
fn one_phones_texts_push_out_no_others() {
    let mut waiting = Waiting::default();
    let put = |waiting: &mut Waiting, id, to: &str| {
        waiting.put(in_state(SendState::Sent, text(id, 0, to, ANSWER)), "sim");
    };
    put(&mut waiting, 1, "a");
    let most = u64::try_from(limits::HANDED_OVER_OF_PHONE).unwrap();
    for id in 2..=most + 1 {
        put(&mut waiting, id, "b");
    }
    assert_eq!(waiting.all().count(), limits::HANDED_OVER_OF_PHONE + 1);
    put(&mut waiting, most + 2, "b");
    assert_eq!(waiting.get(MessageId(2)), None);
    assert!(waiting.get(MessageId(1)).is_some());
    assert!(waiting.get(MessageId(3)).is_some());
    assert_eq!(waiting.all().count(), limits::HANDED_OVER_OF_PHONE + 1);
}

/// Receipts that came first wait for their answer, so many of each gateway, the oldest first.
#[test]
fn a_receipt_that_came_first_waits_for_its_answer() {
    let mut waiting = Waiting::default();
    for (gateway, id) in [("sim", "1"), ("sim", "2"), ("centre", "1"), ("sim", "1")] {
        waiting.keep_early(receipt(gateway, id));
    }
    let one = ["1".to_owned()];
    let first = waiting.take_early("sim", &one);
    assert_eq!(first, [receipt("sim", "1"), receipt("sim", "1")]);
    assert_eq!(waiting.take_early("sim", &one), []);
    assert_eq!(waiting.take_early("centre", &one), [receipt("centre", "1")]);
    assert!(!waiting.early.contains_key("centre"));
    let two = ["2".to_owned()];
    assert_eq!(waiting.take_early("sim", &two), [receipt("sim", "2")]);
    for number in 0..=limits::QUEUE_MAX {
        waiting.keep_early(receipt("sim", &number.to_string()));
    }
    let ids = ["0", "1", "1024"].map(str::to_owned);
    let last = [receipt("sim", "1"), receipt("sim", "1024")];
    assert_eq!(waiting.take_early("sim", &ids), last);
}
