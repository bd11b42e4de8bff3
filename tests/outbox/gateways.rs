//! Several gateways at once: which one a text leaves by, what each is told, and what never moves.

use std::{collections::BTreeSet, time::Duration};

use budwood::{
    engine::Input,
    store::{Change, MemoryStore, Store, read_line},
    words::{
        limits,
        traffic::{About, Delivery, Inbound, Link, SendOutcome, Whose},
        ways::{Ration, Route, Way, Ways},
    },
};
use chrono::TimeDelta;

use super::{MORNING, theirs, unclear};
use crate::fixture::desk::{Desk, HANA, JARO, at, inbound};

fn ways() -> Ways {
    let way = |name: &str, idempotent| Way {
        name: name.to_owned(),
        idempotent,
        price_micro: None,
        ration: Ration::default(),
    };
    Ways {
        receiving: vec!["ears".to_owned()],
        gateways: vec![way("sim", false), way("centre", true)],
        routes: vec![Route {
            prefixes: vec![HANA.to_owned()],
            gateways: vec!["centre".to_owned()],
        }],
    }
}

/// The demo's list behind two gateways, with nobody's answer waiting.
fn desk() -> Desk {
    Desk::open(MORNING).restart_behind(ways())
}

fn texts_by(desk: &mut Desk, gateway: &str, from: &str) {
    desk.inbound(Inbound {
        gateway: gateway.to_owned(),
        ..inbound(from, "help")
    });
}

fn away(after: Option<Duration>) -> SendOutcome {
    SendOutcome::Wait {
        whose: Whose::Gateway,
        after,
        why: "away".into(),
    }
}

fn down(desk: &mut Desk) {
    let since = desk.now;
    let why = "no device".to_owned();
    let link = Link::Down { since, why };
    desk.wait(TimeDelta::minutes(limits::GATEWAY_OUT_MINUTES));
    let gateway = "sim".to_owned();
    desk.input(Input::Link { gateway, link });
}

#[test]
fn an_answer_leaves_the_way_the_text_came() {
    let mut desk = desk();
    texts_by(&mut desk, "centre", JARO);
    assert_eq!(desk.claim_by("sim"), None);
    let text = desk.claim_by("centre").unwrap();
    assert_eq!(text.to, JARO);
    assert_eq!(desk.stored("outbound")[0]["gateway"], "centre");
    desk.accepted(text.id, None);
    // By a gateway that sends nothing: then by the number, else by the first.
    for (from, gateway) in [(HANA, "centre"), (JARO, "sim")] {
        desk.wait(TimeDelta::hours(1));
        texts_by(&mut desk, "elsewhere", from);
        assert_eq!(desk.claim_by(gateway).unwrap().to, from);
    }
}

#[test]
fn an_answer_leaves_the_way_the_text_came_after_a_restart_too() {
    let mut desk = desk();
    texts_by(&mut desk, "centre", JARO);
    let mut desk = desk.restart_behind(ways());
    assert_eq!(desk.claim_by("sim"), None);
    assert_eq!(desk.claim_by("centre").unwrap().to, JARO);
}

#[test]
fn a_gateway_that_takes_nothing_costs_no_text_a_try_and_is_left_alone() {
    let mut desk = desk();
    texts_by(&mut desk, "sim", JARO);
    texts_by(&mut desk, "sim", HANA);
    let text = desk.claim_by("sim").unwrap();
    desk.tried(text.id, away(Some(Duration::from_secs(90))));
    assert_eq!(desk.claim_by("sim"), None);
    assert_eq!(desk.state(text.id), "ready");
    assert_eq!(
        desk.engine.next_try(),
        Some(desk.now + TimeDelta::seconds(90))
    );
    desk.wait(TimeDelta::seconds(90));
    let claimed = [desk.claim_by("sim"), desk.claim_by("sim")];
    let to: BTreeSet<String> = claimed.into_iter().flatten().map(|text| text.to).collect();
    assert_eq!(to, [JARO, HANA].map(str::to_owned).into());
    let stored = desk.stored("outbound");
    assert!(stored.iter().all(|text| text["tries"] == 1), "{stored:?}");
}

#[test]
fn what_no_gateway_has_leaves_by_another_when_its_own_is_out() {
    let mut desk = desk();
    texts_by(&mut desk, "sim", JARO);
    let start = desk.now;
    while let Some(text) = desk.claim_by("sim") {
        desk.tried(text.id, away(None));
        assert_eq!(desk.claim_by("centre"), None);
        desk.now = desk.engine.next_try().unwrap();
    }
    assert!(desk.now - start >= TimeDelta::minutes(limits::GATEWAY_OUT_MINUTES));
    assert!(desk.now - start < TimeDelta::hours(1));
    assert_eq!(desk.claim_by("centre").unwrap().to, JARO);
    assert_eq!(desk.stored("outbound")[0]["gateway"], "centre");
    assert_eq!(desk.stored("outbound")[0]["tries"], 1);
}

#[test]
fn what_waits_for_a_line_that_is_down_leaves_by_another() {
    let mut desk = desk();
    texts_by(&mut desk, "sim", JARO);
    down(&mut desk);
    assert_eq!(desk.claim_by("sim"), None);
    assert_eq!(desk.claim_by("centre").unwrap().to, JARO);
    // A text that comes meanwhile as well; when the line is up again they go by it.
    texts_by(&mut desk, "sim", HANA);
    assert_eq!(desk.claim_by("centre").unwrap().to, HANA);
    let (gateway, link) = ("sim".to_owned(), Link::Up);
    desk.input(Input::Link { gateway, link });
    desk.wait(TimeDelta::hours(1));
    let id = desk.stored("outbound").len();
    texts_by(&mut desk, "sim", crate::fixture::desk::ADVISER);
    assert!(desk.stored("outbound").len() > id, "an answer");
    assert!(desk.claim_by("sim").is_some());
}

/// A provider that ignores our id would send an unanswered text twice.
#[test]
fn what_a_gateway_may_have_never_moves_and_is_tried_again_only_where_that_is_harmless() {
    let mut desk = desk();
    texts_by(&mut desk, "sim", JARO);
    let text = desk.claim_by("sim").unwrap();
    desk.tried(text.id, unclear());
    assert_eq!(desk.state(text.id), "unknown");
    down(&mut desk);
    assert_eq!(
        (desk.claim_by("sim"), desk.claim_by("centre")),
        (None, None)
    );

    let mut desk = Desk::open(MORNING).restart_behind(ways());
    texts_by(&mut desk, "centre", JARO);
    let text = desk.claim_by("centre").unwrap();
    desk.tried(text.id, unclear());
    desk.wait(TimeDelta::minutes(1));
    assert_eq!(desk.claim_by("sim"), None);
    assert_eq!(desk.claim_by("centre").unwrap(), text);
    // Not taken this time: still the first try may have been.
    desk.tried(text.id, away(None));
    let link = Link::Down {
        since: desk.now - TimeDelta::days(1),
        why: String::new(),
    };
    let gateway = "centre".to_owned();
    desk.input(Input::Link { gateway, link });
    desk.wait(TimeDelta::hours(1));
    assert_eq!(desk.claim_by("sim"), None);
    assert_eq!(desk.claim_by("centre").unwrap(), text);
}

#[test]
fn after_a_crash_a_text_on_its_way_stays_with_its_gateway() {
    for (gateway, state) in [("sim", "unknown"), ("centre", "ready")] {
        let mut desk = desk();
        texts_by(&mut desk, gateway, JARO);
        let text = desk.claim_by(gateway).unwrap();
        let mut again = desk.restart_behind(ways());
        assert_eq!(again.state(text.id), state);
        let others = ["sim", "centre"].map(|name| again.claim_by(name));
        let claimed: Vec<_> = others.into_iter().flatten().collect();
        assert_eq!(claimed.len(), usize::from(state == "ready"));
        // The configuration has no such gateway any more.
        let mut gone = desk.restart_behind(Ways::one("other", true));
        assert_eq!(gone.state(text.id), "unknown");
        assert_eq!(gone.claim_by("other"), None);
    }
}

/// It was to be tried again by the gateway that may have it, and that one is no more.
#[test]
fn what_a_gateway_may_have_that_is_gone_is_not_sent_again() {
    let mut desk = desk();
    texts_by(&mut desk, "centre", JARO);
    let text = desk.claim_by("centre").unwrap();
    desk.tried(text.id, unclear());
    assert_eq!(desk.state(text.id), "ready");
    let mut gone = desk.restart_behind(Ways::one("other", true));
    gone.wait(TimeDelta::hours(1));
    assert_eq!(gone.claim_by("other"), None);
    assert_eq!(gone.state(text.id), "unknown");
}

#[test]
fn two_gateways_may_give_the_same_id() {
    let mut desk = desk();
    let mut sent = Vec::new();
    for (gateway, from) in [("sim", JARO), ("centre", HANA)] {
        texts_by(&mut desk, gateway, from);
        let text = desk.claim_by(gateway).unwrap();
        desk.accepted(text.id, Some("7"));
        sent.push(text.id);
    }
    desk.told_by("centre", theirs("7"), Delivery::Delivered);
    assert_eq!(desk.state(sent[0]), "sent");
    assert_eq!(desk.state(sent[1]), "delivered");
    // Nor does one gateway's word count about another one's text.
    desk.told_by("centre", About::Ours(sent[0]), Delivery::Failed);
    assert_eq!(desk.state(sent[0]), "sent");
}

#[test]
fn a_receipt_before_the_answer_is_kept_for_its_own_gateway() {
    let mut desk = desk();
    desk.told_by("centre", theirs("7"), Delivery::Failed);
    desk.told_by("sim", theirs("7"), Delivery::Delivered);
    texts_by(&mut desk, "sim", JARO);
    let text = desk.claim_by("sim").unwrap();
    desk.accepted(text.id, Some("7"));
    assert_eq!(desk.state(text.id), "delivered");
}

#[test]
fn a_text_of_several_parts_has_arrived_when_all_have() {
    let part = |name: &str| name.to_owned();
    for (receipts, state) in [
        (vec![("a", Delivery::Delivered)], "sent"),
        (
            vec![("a", Delivery::Delivered), ("a", Delivery::Delivered)],
            "sent",
        ),
        (
            vec![("b", Delivery::Delivered), ("a", Delivery::Delivered)],
            "delivered",
        ),
        (
            vec![("a", Delivery::Delivered), ("b", Delivery::Failed)],
            "failed",
        ),
    ] {
        let mut desk = desk();
        texts_by(&mut desk, "sim", JARO);
        let text = desk.claim_by("sim").unwrap();
        // The first may come before the answer.
        let mut receipts = receipts.into_iter();
        let (id, delivery) = receipts.next().unwrap();
        desk.told_by("sim", theirs(id), delivery);
        let ids = vec![part("a"), part("b")];
        desk.tried(text.id, SendOutcome::Accepted { ids });
        for (id, delivery) in receipts {
            desk.told_by("sim", theirs(id), delivery);
        }
        assert_eq!(desk.state(text.id), state);
    }
}

/// Records of the first version name no gateway.
#[test]
fn an_old_store_is_taken_over() {
    let old = |id: u64, state: &str, more: &str| {
        format!(
            r#"{{"v":1,"kind":"outbound","body":{{"id":{id},"at":"{MORNING}","to":"{JARO}","text":"Hello","purpose":{{"answer":{{"to":1}}}},"expires_at":"2026-12-15T02:00:00Z","state":"{state}","tries":1,"try_at":"{MORNING}"{more}}}}}"#
        )
    };
    let mut all = Change::default();
    for line in [
        old(11, "ready", ""),
        old(12, "sending", ""),
        old(13, "sent", r#","gateway_id":"p-9""#),
    ] {
        read_line(line.as_bytes(), &mut all).unwrap();
    }
    let store = MemoryStore::new();
    store.commit(&all).unwrap();
    let mut desk = Desk::behind(ways(), store, at(MORNING));
    let id = budwood_scheduler::MessageId;
    // Which gateway may have it is not known, so nobody tries again.
    assert_eq!(desk.state(id(12)), "unknown");
    assert_eq!(desk.claim_by("sim").unwrap().id, id(11));
    desk.told_by("sim", theirs("p-9"), Delivery::Delivered);
    assert_eq!(desk.state(id(13)), "delivered");
}

/// One that only brings texts is seen too, and what one did before a start is known after it.
#[test]
fn each_gateway_tells_how_it_is_doing() {
    let mut desk = desk();
    let began = desk.now;
    let names = |desk: &Desk| {
        let all = desk.engine.gateways(desk.now);
        all.into_iter().map(|one| one.name).collect::<Vec<_>>()
    };
    assert_eq!(names(&desk), ["sim", "centre", "ears"]);
    texts_by(&mut desk, "ears", JARO);
    let one = |desk: &Desk, name: &str| {
        let mut all = desk.engine.gateways(desk.now).into_iter();
        all.find(|one| one.name == name).unwrap()
    };
    let (ears, sim) = (one(&desk, "ears"), one(&desk, "sim"));
    assert_eq!((ears.last_in, ears.last_out), (Some(began), None));
    assert_eq!((sim.last_in, sim.last_out), (None, None));
    assert_eq!(
        sim.oldest_waiting,
        Some(began),
        "the answer, by the first that sends"
    );
    desk.wait(TimeDelta::minutes(1));
    let text = desk.claim_by("sim").unwrap();
    desk.tried(text.id, away(None));
    assert_eq!(one(&desk, "sim").refused_in_a_row, 1);
    desk.wait(TimeDelta::minutes(1));
    let text = desk.claim_by("sim").unwrap();
    desk.accepted(text.id, None);
    let mut desk = desk.restart_behind(ways());
    let sim = one(&desk, "sim");
    assert_eq!(sim.last_out, Some(began + TimeDelta::minutes(2)));
    assert_eq!((sim.oldest_waiting, sim.refused_in_a_row), (None, 0));
    assert_eq!(one(&desk, "ears").last_in, Some(began));
    desk.wait(TimeDelta::days(7));
    let silent = "gateway ears: nothing came in for 168 hours, longer than in the week before";
    assert_eq!(one(&desk, "ears").trouble.as_deref(), Some(silent));
    let link = Link::Down {
        since: began,
        why: "no device".into(),
    };
    let gateway = "ears".to_owned();
    desk.input(Input::Link { gateway, link });
    let down = "gateway ears: its line is down";
    assert_eq!(one(&desk, "ears").trouble.as_deref(), Some(down));
    assert_eq!(one(&desk, "ears").down_since, Some(began));
    let receipt = |desk: &mut Desk| desk.told_by("sim", About::Ours(text.id), Delivery::Delivered);
    assert_eq!(one(&desk, "sim").last_receipt, None);
    receipt(&mut desk);
    assert_eq!(one(&desk, "sim").last_receipt, Some(desk.now));
}

fn rationed(ration: Ration) -> Desk {
    let mut ways = ways();
    ways.gateways[0].ration = ration;
    Desk::open(MORNING).restart_behind(ways)
}

#[test]
fn what_is_too_much_for_a_minute_waits_for_the_next() {
    let mut desk = rationed(Ration {
        a_minute: Some(1),
        a_day: None,
    });
    texts_by(&mut desk, "sim", JARO);
    texts_by(&mut desk, "sim", HANA);
    let first = desk.claim_by("sim").unwrap();
    desk.accepted(first.id, None);
    assert_eq!(desk.claim_by("sim"), None);
    // Not by the other: it is only a minute.
    assert_eq!(desk.claim_by("centre"), None);
    let next = desk.engine.next_try().unwrap();
    assert!(next - desk.now <= TimeDelta::minutes(1), "{next}");
    desk.now = next;
    let second = desk.claim_by("sim").unwrap();
    assert_ne!(second.to, first.to);
}

/// A plan of a SIM card has its bound for a day; what has left counts after a restart too.
#[test]
fn what_is_too_much_for_a_day_leaves_by_another() {
    let ration = Ration {
        a_minute: None,
        a_day: Some(2),
    };
    let mut desk = rationed(ration);
    texts_by(&mut desk, "sim", JARO);
    let text = desk.claim_by("sim").unwrap();
    assert_eq!(desk.stored("outbound")[0]["parts"], 1, "{text:?}");
    desk.accepted(text.id, None);
    let mut ways = ways();
    ways.gateways[0].ration = ration;
    let mut desk = desk.restart_behind(ways);
    desk.wait(TimeDelta::hours(1));
    texts_by(&mut desk, "sim", JARO);
    let text = desk.claim_by("sim").unwrap();
    desk.accepted(text.id, None);
    texts_by(&mut desk, "sim", HANA);
    assert_eq!(desk.claim_by("sim"), None);
    assert_eq!(desk.claim_by("centre").unwrap().to, HANA);
    // The next day it sends again.
    desk.wait(TimeDelta::days(1));
    texts_by(&mut desk, "sim", JARO);
    assert_eq!(desk.claim_by("sim").unwrap().to, JARO);
}
