//! A text that comes twice, late, or by two ways has the effect of once, on the right day.
//!
//! What networks do: 3GPP TS 23.040 lets a centre deliver again when an acknowledgement was lost,
//! under the same service centre time stamp (9.2.3.11), and keeps a text for days (9.2.3.12).

use budwood::{
    engine::Input,
    words::traffic::{Inbound, InboundPart},
};
use chrono::TimeDelta;

use crate::fixture::desk::{ADVISER, Desk, HANA, JARO, at, inbound};

const MORNING: &str = "2026-12-14T02:00:00Z";
const SENT: &str = "2026-12-14T01:59:00Z";

fn planted(gateway: &str, gateway_id: Option<&str>, sent_at: Option<&str>) -> Inbound {
    Inbound {
        gateway: gateway.to_owned(),
        gateway_id: gateway_id.map(str::to_owned),
        sent_at: sent_at.map(at),
        ..inbound(JARO, "planted 120")
    }
}

/// The second delivery is silent and changes nothing, but is kept as it came.
#[track_caller]
fn check_twice(first: Inbound, later: TimeDelta, second: Inbound) {
    let mut desk = Desk::open(MORNING);
    assert_eq!(desk.inbound(first), "recorded");
    assert_eq!(desk.send_all().len(), 1);
    desk.wait(later);
    assert_eq!(desk.inbound(second), "delivered twice");
    assert_eq!(desk.send_all(), []);
    assert_eq!(desk.reports().len(), 1);
    let received = desk.stored("received");
    assert_eq!(received.len(), 2);
    assert_eq!(received[1]["outcome"], "delivered twice");
}

/// The second text is one of its own: a farmer who is not sure that the first one came.
#[track_caller]
fn check_own_repeat(first: Inbound, later: TimeDelta, second: Inbound) {
    let mut desk = Desk::open(MORNING);
    assert_eq!(desk.inbound(first), "recorded");
    desk.wait(later);
    assert_eq!(desk.inbound(second), "same again");
    assert_eq!(desk.reports().len(), 1);
}

#[test]
fn a_gateway_that_was_not_answered_in_time_delivers_again() {
    let mut desk = Desk::open(MORNING);
    let text = planted("line", Some("m-1"), Some(SENT));
    assert_eq!(desk.inbound(text.clone()), "recorded");
    assert_eq!(desk.inbound(text.clone()), "delivered again");
    let mut desk = desk.restart(true);
    assert_eq!(desk.inbound(text), "delivered again");
    assert_eq!(desk.stored("received").len(), 1);
    assert_eq!(desk.reports().len(), 1);
}

#[test]
fn a_no_that_comes_again_after_50_100_other_texts_takes_nothing_back() {
    let mut desk = Desk::open(MORNING);
    let no = Inbound {
        gateway_id: Some("m-2".to_owned()),
        ..inbound(JARO, "NO")
    };
    desk.text(JARO, "planted 12");
    assert_eq!(desk.inbound(no.clone()), "taken back");
    assert_eq!(desk.text(JARO, "planted 120"), "recorded");
    let others = (0..50_100).map(|number| {
        Input::Text(Inbound {
            gateway_id: Some(format!("other-{number}")),
            ..inbound(&format!("PROMO {number}"), "win a phone")
        })
    });
    desk.engine.handle(others.collect(), desk.now).unwrap();
    assert_eq!(desk.inbound(no.clone()), "delivered again");
    // A start must know it too, days later.
    let mut desk = desk.restart(true);
    desk.wait(TimeDelta::days(6));
    assert_eq!(desk.inbound(no), "delivered again");
}

#[test]
fn a_known_id_with_another_sender_or_other_words_is_a_new_text() {
    let mut desk = Desk::open(MORNING);
    let text = planted("line", Some("m-1"), None);
    assert_eq!(desk.inbound(text.clone()), "recorded");
    let hers = Inbound {
        from: HANA.to_owned(),
        ..text.clone()
    };
    assert_eq!(desk.inbound(hers), "recorded");
    let other_words = Inbound {
        text: "undo".to_owned(),
        ..text
    };
    assert_eq!(desk.inbound(other_words), "taken back");
    assert_eq!(desk.stored("received").len(), 3);
}

#[test]
fn texts_with_an_empty_id_are_each_kept() {
    let mut desk = Desk::open(MORNING);
    let with_empty = |text: &str| Inbound {
        gateway_id: Some(String::new()),
        ..inbound(JARO, text)
    };
    assert_eq!(desk.inbound(with_empty("planted 120")), "recorded");
    assert_eq!(desk.inbound(with_empty("undo")), "taken back");
    assert_eq!(desk.stored("received").len(), 2);
    let ids = |desk: &Desk| desk.stored("received")[1].get("gateway_id").cloned();
    assert_eq!(ids(&desk), None);
}

#[test]
fn two_gateways_for_one_number_bring_one_text() {
    let modem = planted("modem", None, Some("2026-12-14T01:58:30Z"));
    let provider = planted("line", Some("m-1"), Some(SENT));
    check_twice(modem.clone(), TimeDelta::seconds(3), provider.clone());
    check_twice(provider, TimeDelta::minutes(9), modem);
    // Neither says when the text was sent.
    check_twice(
        planted("modem", None, None),
        TimeDelta::minutes(2),
        planted("line", Some("m-1"), None),
    );
}

#[test]
fn a_network_that_missed_our_answer_delivers_again_with_the_same_time_stamp() {
    check_twice(
        planted("modem", None, Some(SENT)),
        TimeDelta::hours(5),
        planted("modem", None, Some(SENT)),
    );
    check_twice(
        planted("line", Some("m-1"), Some(SENT)),
        TimeDelta::minutes(1),
        planted("line", Some("m-2"), Some(SENT)),
    );
}

#[test]
fn a_farmer_who_repeats_is_not_a_second_delivery() {
    check_own_repeat(
        planted("line", Some("m-1"), Some(SENT)),
        TimeDelta::minutes(1),
        planted("line", Some("m-2"), Some("2026-12-14T02:00:30Z")),
    );
    check_own_repeat(
        planted("modem", None, None),
        TimeDelta::minutes(3),
        planted("line", Some("m-1"), None),
    );
    check_own_repeat(
        planted("line", None, None),
        TimeDelta::seconds(1),
        planted("line", None, None),
    );
}

#[test]
fn a_second_delivery_is_known_after_a_restart() {
    let mut desk = Desk::open(MORNING);
    desk.inbound(planted("modem", None, Some(SENT)));
    let mut desk = desk.restart(true);
    let second = planted("line", Some("m-1"), Some(SENT));
    assert_eq!(desk.inbound(second), "delivered twice");
}

#[test]
fn the_same_words_of_another_farmer_are_no_second_delivery() {
    let mut desk = Desk::open(MORNING);
    desk.inbound(planted("modem", None, Some(SENT)));
    let hers = Inbound {
        from: HANA.to_owned(),
        ..planted("line", None, Some(SENT))
    };
    assert_eq!(desk.inbound(hers), "recorded");
    assert_eq!(desk.reports().len(), 2);
}

/// A stamp that cannot be right is no proof: a broken centre gives the same one to every text.
#[test]
fn an_impossible_time_stamp_proves_nothing() {
    check_own_repeat(
        planted("modem", None, Some("1970-01-01T00:00:00Z")),
        TimeDelta::minutes(1),
        planted("modem", None, Some("1970-01-01T00:00:00Z")),
    );
}

#[test]
fn an_impatient_farmer_is_answered_once() {
    let mut desk = Desk::open(MORNING);
    desk.text(JARO, "planted 120");
    assert_eq!(desk.send_all().len(), 1);
    let mut answers = 0;
    for _ in 0..3 {
        desk.wait(TimeDelta::minutes(20));
        assert_eq!(desk.text(JARO, "planted 120"), "same again");
        answers += desk.send_all().len();
    }
    assert_eq!(answers, 1);
    assert_eq!(desk.reports().len(), 1);
}

#[test]
fn a_late_text_counts_its_days_from_when_it_was_sent() {
    let mut desk = Desk::open(MORNING);
    // 23:30 on 10 December where the group lives, three days before it comes.
    let late = planted("line", Some("m-1"), Some("2026-12-10T16:30:00Z"));
    assert_eq!(desk.inbound(late), "recorded");
    let report = &desk.reports()[0];
    assert_eq!(report["at"], MORNING);
    assert!(report.to_string().contains("2026-12-10"), "{report}");
    assert!(!report.to_string().contains("2026-12-14\""), "{report}");
}

fn part(number: u8, of: u8, text: &str) -> InboundPart {
    InboundPart {
        text: Inbound {
            gateway: "sim".to_owned(),
            sent_at: Some(at(SENT)),
            ..inbound(JARO, text)
        },
        reference: 300,
        of,
        number,
    }
}

/// Parts in any order, one of them twice, with a crash between them: one text, once.
#[test]
fn parts_become_one_text_whatever_happens_between_them() {
    let mut desk = Desk::open(MORNING);
    desk.input(Input::Part(part(3, 3, " A")));
    desk.input(Input::Part(part(1, 3, "planted ")));
    assert_eq!(desk.stored("part").len(), 2);
    assert_eq!(desk.stored("received").len(), 0);
    let mut desk = desk.restart(true);
    let again = desk.input(Input::Part(part(1, 3, "planted ")));
    assert_eq!(again.outcome.unwrap().name(), "delivered again");
    let whole = desk.input(Input::Part(part(2, 3, "120")));
    assert_eq!(whole.outcome.unwrap().name(), "recorded");
    assert_eq!(desk.stored("received")[0]["text"], "planted 120 A");
    assert_eq!(desk.reports().len(), 1);
    // The last part comes again, after another crash.
    let mut desk = desk.restart(true);
    let again = desk.input(Input::Part(part(2, 3, "120")));
    assert_eq!(again.outcome.unwrap().name(), "delivered again");
    desk.wait(TimeDelta::hours(1));
    desk.input(Input::Wake);
    assert_eq!(
        (desk.stored("received").len(), desk.reports().len()),
        (1, 1)
    );
}

/// What never came whole is read as far as it goes, with a mark, and is not lost.
#[test]
fn a_part_that_never_comes_is_marked() {
    let mut desk = Desk::open(MORNING);
    desk.input(Input::Part(part(1, 2, "the road is ")));
    desk.wait(TimeDelta::minutes(9));
    desk.input(Input::Wake);
    assert_eq!(desk.stored("received").len(), 0);
    desk.wait(TimeDelta::minutes(1));
    desk.input(Input::Wake);
    assert_eq!(desk.stored("received")[0]["text"], "the road is  [...] ");
    desk.input(Input::Part(part(2, 2, "wet")));
    desk.wait(TimeDelta::minutes(10));
    desk.input(Input::Wake);
    assert_eq!(desk.stored("received")[1]["text"], " [...] wet");
}

/// A call that nobody answers is a wish to be called, once for each time.
#[test]
fn a_missed_call_asks_to_be_called() {
    let mut desk = Desk::open(MORNING);
    let call = |seconds: i64| Input::MissedCall {
        gateway: "sim".to_owned(),
        from: JARO.to_owned(),
        at: at(MORNING) + TimeDelta::seconds(seconds),
    };
    desk.input(call(0));
    let again = desk.input(call(5));
    assert_eq!(again.outcome.unwrap().name(), "delivered again");
    let sent = desk.send_all();
    assert!(sent.iter().any(|text| text.to == ADVISER), "{sent:?}");
    assert!(sent.iter().any(|text| text.to == JARO), "{sent:?}");
}
