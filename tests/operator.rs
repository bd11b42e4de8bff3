//! What the operator is told by text: a line each morning, and when the month's money runs out.

use budwood::{
    engine::{Input, Operator},
    words::{
        ledger::MonthBudget,
        traffic::{Link, Outgoing, SendOutcome, Whose},
        ways::{Ration, Way, Ways},
    },
};
use chrono::{DateTime, NaiveTime, TimeDelta, Utc};

use crate::fixture::{
    LINE,
    desk::{ADVISER, Desk, HANA, JARO, at},
};

const PHONE: &str = "+447700900999";

/// Keti Olm, a farmer of the demo.
const KETI: &str = "+447700900005";

/// Seven in the morning where the operator is, and nobody is nudged.
const SEVEN: &str = "2026-12-02T00:00:00Z";

fn operator() -> Option<Operator> {
    Some(Operator {
        number: PHONE.to_owned(),
        language: None,
        at: NaiveTime::from_hms_opt(7, 0, 0).unwrap(),
        zone: chrono_tz::Asia::Jakarta,
    })
}

/// The line and a spare one, and gateways that only bring texts.
fn two_ways(receiving: &[&str]) -> Ways {
    let way = |name: &str| Way {
        name: name.to_owned(),
        idempotent: true,
        price_micro: None,
        ration: Ration::default(),
    };
    Ways {
        gateways: [LINE, "spare"].map(way).into(),
        receiving: receiving.iter().map(ToString::to_string).collect(),
        routes: Vec::new(),
    }
}

/// Opened an hour before seven.
fn desk() -> Desk {
    let before = at(SEVEN) - TimeDelta::hours(1);
    Desk::open_with(&before.to_rfc3339(), |setup| setup.operator = operator())
}

/// What the operator gets by what waits now.
fn told(desk: &mut Desk) -> Vec<String> {
    let sent = desk.send_all().into_iter();
    let to_operator = |text: Outgoing| (text.to == PHONE).then_some(text.text);
    sent.filter_map(to_operator).collect()
}

/// The time comes for which the engine asked, once and again.
fn wake_until(desk: &mut Desk, until: DateTime<Utc>) {
    while let Some(wake) = desk.engine.next_wake().filter(|wake| *wake <= until) {
        desk.now = desk.now.max(wake);
        desk.input(Input::Wake);
    }
    desk.now = until;
}

#[test]
fn a_good_morning_is_told_once_a_day_and_not_again_after_a_start() {
    let mut desk = desk();
    desk.text(JARO, "who is this");
    desk.send_all();
    wake_until(&mut desk, at(SEVEN) - TimeDelta::seconds(1));
    assert_eq!(told(&mut desk), [""; 0]);
    wake_until(&mut desk, at(SEVEN));
    let expected = "All is well. Last text in 1h ago. Waiting to leave: 0. Parts this month: 1.";
    assert_eq!(told(&mut desk), [expected]);
    for _ in 0..3 {
        desk = desk.restart_with(|setup| setup.operator = operator());
        desk.wait(TimeDelta::hours(1));
        let now = desk.now;
        wake_until(&mut desk, now);
        assert_eq!(told(&mut desk), [""; 0]);
    }
    wake_until(&mut desk, at(SEVEN) + TimeDelta::days(2));
    assert_eq!(
        told(&mut desk).len(),
        1,
        "yesterday's was not fetched in time"
    );
}

#[test]
fn a_service_that_was_down_at_seven_tells_it_later_but_not_at_night() {
    for (hours, expected) in [(5, 1), (7, 0), (16, 0)] {
        let mut desk = desk();
        desk.now = at(SEVEN) + TimeDelta::hours(hours);
        desk.input(Input::Wake);
        assert_eq!(told(&mut desk).len(), expected, "{hours} hours late");
        let next = desk.engine.next_wake();
        assert!(
            next.is_some_and(|next| next > desk.now),
            "it would wake for ever"
        );
        wake_until(&mut desk, at(SEVEN) + TimeDelta::days(1));
        assert_eq!(told(&mut desk).len(), 1, "the next day");
    }
}

#[test]
fn without_a_phone_nobody_is_told() {
    let mut desk = Desk::open(SEVEN);
    desk.text(JARO, "help");
    desk.send_all();
    let month_later = at(SEVEN) + TimeDelta::days(3);
    wake_until(&mut desk, month_later);
    assert_eq!(told(&mut desk), [""; 0]);
}

/// Who wants no texts gets none, whatever the configuration says.
#[test]
fn an_operator_who_wrote_stop_is_left_alone() {
    let as_jaro = || {
        operator().map(|operator| Operator {
            number: JARO.to_owned(),
            ..operator
        })
    };
    let before = at(SEVEN) - TimeDelta::hours(1);
    let open = || Desk::open_with(&before.to_rfc3339(), |setup| setup.operator = as_jaro());
    for (text, expected) in [("help", 1), ("stop", 0)] {
        let mut desk = open();
        desk.text(JARO, text);
        desk.send_all();
        wake_until(&mut desk, at(SEVEN));
        let sent = desk.send_all();
        let to_jaro = sent
            .iter()
            .filter(|text| text.text.starts_with("All is well"));
        assert_eq!(to_jaro.count(), expected, "{text}");
    }
}

#[test]
fn a_bad_morning_says_what_is_wrong() {
    let before = at(SEVEN) - TimeDelta::hours(5);
    let mut desk = Desk::open_with(&before.to_rfc3339(), |setup| {
        setup.operator = operator();
        setup.ways = two_ways(&["ears"]);
    });
    let now = desk.now;
    let down = Link::Down {
        since: now,
        why: "no device".to_owned(),
    };
    desk.input(Input::Link {
        gateway: "ears".to_owned(),
        link: down,
    });
    // An answer that the line does not take, and that waits.
    desk.text(JARO, "who is this");
    let text = desk.claim().unwrap();
    desk.tried(
        text.id,
        SendOutcome::Wait {
            whose: Whose::SetUp,
            after: None,
            why: "it answered 401".to_owned(),
        },
    );
    desk.engine.see_disk(true);
    desk.now = at(SEVEN);
    let down = Link::Down {
        since: now,
        why: "no connection".to_owned(),
    };
    desk.input(Input::Link {
        gateway: LINE.to_owned(),
        link: down,
    });
    desk.input(Input::Wake);
    let spare: Vec<String> = std::iter::from_fn(|| desk.claim_by("spare"))
        .filter(|text| text.to == PHONE)
        .map(|text| text.text)
        .collect();
    let expected = format!(
        "Please look after the text service: the disk is nearly full, {LINE} takes no texts, ears \
         has no line, a text has waited 5h to leave."
    );
    assert_eq!(spare, [expected], "by the gateway that takes texts");
}

/// Every ten hours something came; after half a day and half an hour without, a person is told, once,
/// and not by that line.
#[test]
fn a_line_that_falls_silent_is_told_at_once_by_another() {
    let set = |setup: &mut budwood::engine::Setup| {
        setup.operator = operator();
        setup.ways = two_ways(&[]);
    };
    let take_all = |desk: &mut Desk, gateway: &str| -> Vec<String> {
        let mut taken = Vec::new();
        while let Some(text) = desk.claim_by(gateway) {
            desk.accepted(text.id, None);
            taken.extend((text.to == PHONE).then_some(text.text));
        }
        taken
    };
    let mut desk = Desk::open_with("2026-12-02T02:00:00Z", set);
    for _ in 0..20 {
        desk.text(JARO, "what now");
        let next = desk.now + TimeDelta::hours(10);
        wake_until(&mut desk, next);
        take_all(&mut desk, LINE);
        assert_eq!(take_all(&mut desk, "spare"), [""; 0]);
    }
    let last = desk.now - TimeDelta::hours(10);
    let silent = last + TimeDelta::minutes(12 * 60 + 30);
    wake_until(&mut desk, silent - TimeDelta::seconds(1));
    take_all(&mut desk, LINE);
    assert_eq!(take_all(&mut desk, "spare"), [""; 0]);
    wake_until(&mut desk, silent);
    let told = take_all(&mut desk, "spare");
    let expected = format!("nothing came in by {LINE} for 12h");
    assert!(
        matches!(told.as_slice(), [one] if one.contains(&expected)),
        "{told:?}"
    );
    assert_eq!(take_all(&mut desk, LINE), [""; 0]);
    let health = desk.engine.gateways(desk.now).remove(0);
    let trouble =
        format!("gateway {LINE}: nothing came in for 12 hours, longer than in the week before");
    assert_eq!(health.trouble, Some(trouble));
    wake_until(&mut desk, silent + TimeDelta::hours(2));
    assert_eq!(take_all(&mut desk, "spare"), [""; 0], "told once");
    desk.text(JARO, "what now");
    assert_eq!(desk.engine.gateways(desk.now)[0].trouble, None);
}

/// Ten parts at most: a stranger is the first to go without, then looks, then jobs, then answers.
/// What was told and what left are there again after a start.
#[test]
fn the_operator_is_warned_as_the_month_goes_and_codes_go_on() {
    let month = MonthBudget {
        parts: Some(10),
        micro: None,
    };
    let set = move |setup: &mut budwood::engine::Setup| {
        setup.operator = operator();
        setup.month = month;
    };
    let mut desk = Desk::open_with("2026-12-10T03:00:00Z", set);
    let mut warned = Vec::new();
    for question in ["who is this", "help"].into_iter().cycle().take(14) {
        desk.text(KETI, question);
        // Each step from the store, as after a kill.
        warned.extend(told(&mut desk));
        warned.extend(told(&mut desk));
        desk = desk.restart_with(set);
        desk.wait(TimeDelta::hours(1));
    }
    assert_eq!(
        warned,
        [
            "50% of this month's budget is gone, 5 parts. Nothing stops yet.",
            "80% of this month's budget is gone, 8 parts. No answers to strangers now. Reminders \
             stop at 90 and 95%, answers at 100%.",
            "100% of this month's budget is gone, 10 parts. Until it ends only codes, STOP, first \
             help and notices go."
        ]
    );
    let parts = desk.engine.month(desk.now).0.total().parts;
    assert_eq!(parts, 11, "and the last warning itself");
    desk.text(HANA, "who is this");
    assert_eq!(desk.send_all().len(), 0);
    desk.text(HANA, "erase");
    assert_eq!(desk.send_all().len(), 1, "a code");
    desk.text(JARO, "fire in the farm now");
    let sent = desk.send_all();
    assert!(sent.iter().any(|text| text.to == JARO), "first help");
    assert!(sent.iter().any(|text| text.to == ADVISER), "an alarm");
    desk.now = at("2027-01-01T00:00:00Z");
    desk.text(HANA, "who is this");
    assert_eq!(desk.send_all().len(), 1, "a new month");
}

/// A text counts once, when a gateway has it or may have it, at the price of that gateway.
#[test]
fn a_text_is_paid_for_once_and_only_if_it_may_have_left() {
    let ways = || Ways {
        gateways: vec![Way {
            name: LINE.to_owned(),
            idempotent: true,
            price_micro: Some(20_000),
            ration: Ration::default(),
        }],
        ..Ways::default()
    };
    let mut desk = Desk::open_with("2026-12-10T03:00:00Z", |setup| setup.ways = ways());
    let spent = |desk: &Desk| {
        let total = desk.engine.month(desk.now).0.total();
        (total.parts, total.micro)
    };
    let wait = |whose| SendOutcome::Wait {
        whose,
        after: None,
        why: "later".to_owned(),
    };
    desk.text(JARO, "who is this");
    let text = desk.claim().unwrap();
    desk.tried(text.id, wait(Whose::Text));
    assert_eq!(spent(&desk), (0, 0), "it surely did not leave");
    desk.wait(TimeDelta::minutes(5));
    assert_eq!(desk.claim().unwrap().id, text.id);
    desk.tried(
        text.id,
        SendOutcome::Unknown {
            why: "no answer".to_owned(),
        },
    );
    assert_eq!(spent(&desk), (1, 20_000), "it may have");
    desk.wait(TimeDelta::minutes(10));
    assert_eq!(desk.claim().unwrap().id, text.id);
    desk.accepted(text.id, Some("p-1"));
    assert_eq!(spent(&desk), (1, 20_000), "once");
    let price = |desk: &Desk| desk.stored("outbound")[0]["price_micro"].clone();
    assert_eq!(price(&desk), 20_000);
    let desk = desk.restart_with(|setup| setup.ways = ways());
    assert_eq!(spent(&desk), (1, 20_000));
    // Cut off in the middle: nobody knows, so it counts.
    let mut desk = desk;
    desk.text(HANA, "who is this");
    desk.claim().unwrap();
    let desk = desk.restart_with(|setup| setup.ways = ways());
    assert_eq!(spent(&desk), (2, 40_000));
}

/// A reminder waits while there is no money, and goes when there is.
#[test]
fn reminders_stop_before_answers_do() {
    let month = |parts| MonthBudget {
        parts: Some(parts),
        micro: None,
    };
    let mut desk = Desk::open_with("2026-12-10T03:00:00Z", |setup| setup.month = month(20));
    for question in ["who is this", "help"].into_iter().cycle().take(19) {
        desk.text(KETI, question);
        desk.send_all();
        desk.wait(TimeDelta::minutes(30));
    }
    assert_eq!(desk.engine.month(desk.now).1, Some(95));
    let until = desk.now + TimeDelta::days(4);
    let mut sent = Vec::new();
    while desk.now < until {
        let next = desk.now + TimeDelta::hours(1);
        wake_until(&mut desk, next);
        sent.extend(desk.send_all());
    }
    assert_eq!(sent.len(), 0, "nobody is welcomed or nudged");
    assert!(desk.engine.waiting() > 0, "but they wait");
    desk.text(JARO, "who is this");
    assert_eq!(desk.send_all().len(), 1, "and who asks is answered");
}

/// The budget that was gone is made larger: its shares are told anew, and those that are gone are not.
#[test]
fn a_larger_budget_is_warned_of_anew() {
    let set = |parts| {
        move |setup: &mut budwood::engine::Setup| {
            setup.operator = operator();
            setup.month = MonthBudget {
                parts: Some(parts),
                micro: None,
            };
        }
    };
    let warned = |desk: &mut Desk, texts| {
        let mut warned = Vec::new();
        for question in ["who is this", "help"].into_iter().cycle().take(texts) {
            desk.text(KETI, question);
            warned.extend(told(desk));
            warned.extend(told(desk));
            desk.wait(TimeDelta::hours(1));
        }
        warned.retain(|text| text.contains("of this month's budget is gone"));
        warned
    };
    let mut desk = Desk::open_with("2026-12-10T03:00:00Z", set(10));
    assert_eq!(warned(&mut desk, 14).len(), 3);
    let mut desk = desk.restart_with(set(40));
    let again = warned(&mut desk, 24);
    let shares: Vec<&str> = again.iter().map(|text| &text[..3]).collect();
    assert_eq!(shares, ["50%", "80%"]);
}
