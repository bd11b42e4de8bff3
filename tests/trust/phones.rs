//! A lost phone loses its rights, and a number that moved takes them along.

use budwood::engine::{Input, List, ListDeed};
use chrono::TimeDelta;

use super::{KETI, MORNING, to};
use crate::fixture::{
    DEMO_ROLL, code,
    desk::{ADVISER, Desk, JARO},
};

/// Keti's new number.
const NEW: &str = "+447700900555";

/// The leader of the group.
const LEADER: &str = "+447700900014";

/// Asks, and answers with the code.
fn with_code(desk: &mut Desk, from: &str, text: &str) {
    assert_eq!(desk.text(from, text), "asked for a code", "{text}");
    let code = code(&desk.send_all());
    assert_eq!(desk.text(from, &format!("yes {code}")), "done with a code");
}

fn last_to(desk: &mut Desk, number: &str) -> String {
    let sent = desk.send_all();
    to(&sent, number)
        .last()
        .map_or_else(String::new, |text| (*text).to_owned())
}

/// How many reports of work are stored.
fn told(desk: &Desk) -> usize {
    let mut events = desk.stored("event");
    events.retain(|event| !event["message"].is_null() && event["fact"]["reported"].is_object());
    events.len()
}

fn is_told_nothing(text: &str) {
    assert!(!text.is_empty());
    for what in ["Keti", "Mara", "KOLO", "520"] {
        assert!(!text.contains(what), "{what}: {text}");
    }
}

#[test]
fn a_forged_lost_holds_no_phone_and_a_forged_moved_moves_no_number() {
    let mut desk = Desk::open(MORNING);
    for forged in ["lost Keti", "moved Keti 07700 900555"] {
        assert_eq!(desk.text(ADVISER, forged), "asked for a code");
        let sent = desk.send_all();
        assert_eq!(to(&sent, ADVISER).len(), sent.len(), "only she is told");
        desk.text(ADVISER, "yes 123456");
        desk.text(ADVISER, "yes");
        desk.send_all();
    }
    assert_eq!(desk.text(KETI, "dead 4 A"), "recorded");
    assert_eq!(desk.text(NEW, "dead 5 A"), "from a stranger");
    assert_eq!(desk.reports().len(), 1);
}

#[test]
fn a_lost_phone_is_told_nothing_and_changes_nothing_until_it_is_found() {
    let mut desk = Desk::open(MORNING);
    desk.text(KETI, "planted 1200 A");
    desk.send_all();
    with_code(&mut desk, ADVISER, "lost Keti");
    let held = last_to(&mut desk, ADVISER);
    assert!(held.contains("Keti Olm") && held.contains("0005"), "{held}");
    let facts = told(&desk);
    let mut desk = desk.restart(true);
    for text in [
        "yes", "dead 4 A", "what now", "my data", "erase", "stop", "next",
    ] {
        assert_eq!(desk.text(KETI, text), "for a person", "{text}");
        desk.wait(TimeDelta::hours(1));
        is_told_nothing(&last_to(&mut desk, KETI));
    }
    assert_eq!(told(&desk), facts, "nothing is stored");
    assert!(!desk.stored("matter").is_empty(), "it waits for a person");
    for _ in 0..200 {
        desk.wake();
        assert_eq!(to(&desk.send_all(), KETI), [""; 0]);
    }
    with_code(&mut desk, ADVISER, "found Keti");
    desk.send_all();
    assert_eq!(desk.text(KETI, "dead 4 A"), "recorded");
    assert!(last_to(&mut desk, KETI).contains("4 more dead"));
}

#[test]
fn what_a_lost_phone_told_is_stored_by_the_advisers_code_alone() {
    let mut desk = Desk::open(MORNING);
    with_code(&mut desk, ADVISER, "lost Keti");
    desk.text(KETI, "dead 4 A");
    // The visit that the code of LOST opened is over.
    desk.wait(TimeDelta::hours(24));
    desk.text(ADVISER, "next");
    let shown = last_to(&mut desk, ADVISER);
    assert!(shown.contains("Store A: 4 more dead trees"), "{shown}");
    assert_eq!(desk.text(ADVISER, "1"), "asked for a code");
    assert_eq!(told(&desk), 0);
    let asked = desk.send_all();
    assert!(asked[0].text.contains("Keti"), "whose it is: {asked:?}");
    let code = code(&asked);
    assert_eq!(desk.text(ADVISER, &code), "recorded");
    let stored = desk.reports().pop().expect("a fact");
    let people = desk.stored("person");
    let mara = people.iter().find(|one| one["name"] == "Mara Tindel");
    assert_eq!(stored["by"], mara.expect("the adviser")["id"]);
    assert_eq!(stored["source"], "own_text", "nobody saw it on a visit");
    assert_eq!(desk.stored("matter").len(), 0);
    assert_eq!(desk.text(ADVISER, "1"), "nothing was asked");
    assert_eq!(told(&desk), 1);
}

#[test]
fn first_help_is_for_whoever_holds_the_phone() {
    let mut desk = Desk::open(MORNING);
    with_code(&mut desk, ADVISER, "lost Keti");
    desk.send_all();
    desk.text(KETI, "snake bit my son");
    let sent = desk.send_all();
    is_told_nothing(to(&sent, KETI)[0]);
    assert!(to(&sent, KETI)[0].contains("clinic"));
    assert_eq!(to(&sent, ADVISER).len(), 1, "{sent:?}");
}

#[test]
fn what_was_asked_on_a_phone_ends_when_it_is_lost() {
    let mut desk = Desk::open(MORNING);
    desk.text(JARO, "erase");
    let open = code(&desk.send_all());
    with_code(&mut desk, ADVISER, "lost Jaro");
    assert_eq!(desk.text(JARO, &format!("yes {open}")), "for a person");
    with_code(&mut desk, ADVISER, "found Jaro");
    assert_ne!(desk.text(JARO, &format!("yes {open}")), "done with a code");
    assert_eq!(desk.stored("erasure").len(), 0);
}

#[test]
fn a_number_that_moved_takes_all_rights_along() {
    let mut desk = Desk::open(MORNING);
    desk.text(KETI, "dead 4 A");
    desk.send_all();
    with_code(&mut desk, ADVISER, "moved Keti 07700 900555");
    assert!(last_to(&mut desk, ADVISER).contains("0555"));
    let mut desk = desk.restart(true);
    assert_eq!(desk.text(NEW, "dead 5 A"), "recorded");
    assert!(last_to(&mut desk, NEW).contains("9 in all"));
    assert_eq!(desk.text(KETI, "dead 6 A"), "from a stranger");
    assert_eq!(desk.text(KETI, "no"), "from a stranger");
    assert_eq!(told(&desk), 2);
    desk.send_all();
    // A list from before knows it by the old number.
    let list = List {
        csv: DEMO_ROLL.to_vec(),
        deed: ListDeed::Load,
    };
    let page = desk.input(Input::List(list)).list.expect("an answer").page;
    assert!(page.contains("was theirs and is no more"), "{page}");
    assert_eq!(desk.text(KETI, "dead 6 A"), "from a stranger");
    // A lost phone that is replaced: back to the first number.
    with_code(&mut desk, ADVISER, "lost Keti");
    with_code(&mut desk, ADVISER, "moved Keti 07700900005");
    desk.send_all();
    assert_eq!(desk.text(KETI, "dead 7 A"), "recorded");
    assert_eq!(desk.text(NEW, "dead 8 A"), "from a stranger");
}

#[test]
fn a_number_of_somebody_else_or_from_abroad_is_not_taken() {
    let mut desk = Desk::open(MORNING);
    for (text, told) in [
        ("moved Keti 07700 900006", "somebody else"),
        ("moved Keti 12345", "whole number"),
        ("moved Keti", "whole number"),
        ("moved Keti +62 812 3456 7890", "this country"),
        ("moved Keti 09012 345678", "this country"),
    ] {
        assert_eq!(desk.text(ADVISER, text), "answered", "{text}");
        let answer = last_to(&mut desk, ADVISER);
        assert!(answer.contains(told), "{answer}");
        assert!(!answer.contains("Jaro"), "{answer}");
    }
}

#[test]
fn an_advisers_phone_is_lost_by_the_word_of_the_leader_and_of_no_farmer() {
    let mut desk = Desk::open(MORNING);
    desk.text(ADVISER, "from Keti: dead 4");
    let visit = code(&desk.send_all());
    desk.text(ADVISER, &visit);
    desk.text(ADVISER, "1");
    assert_ne!(desk.text(JARO, "lost Mara"), "asked for a code");
    desk.send_all();
    assert_ne!(
        desk.text(LEADER, "moved Mara 07700 900555"),
        "asked for a code"
    );
    desk.send_all();
    with_code(&mut desk, LEADER, "lost Mara");
    desk.send_all();
    let facts = told(&desk);
    for text in [
        "from Keti: dead 9",
        "status KOLO",
        "next",
        "found Mara",
        "lost Keti",
    ] {
        assert_eq!(desk.text(ADVISER, text), "for a person", "{text}");
        is_told_nothing(&last_to(&mut desk, ADVISER));
        desk.wait(TimeDelta::hours(1));
    }
    assert_eq!(told(&desk), facts);
    // Nor is a farmer told that she is told.
    desk.text(KETI, "call me");
    let sent = desk.send_all();
    assert_eq!(to(&sent, ADVISER), [""; 0]);
    assert!(!to(&sent, KETI)[0].contains("I told"), "{sent:?}");
}

#[test]
fn after_erase_there_is_no_trace_of_the_old_number_and_of_the_new_one() {
    let mut desk = Desk::open(MORNING);
    desk.text(KETI, "i lost my phone");
    desk.send_all();
    with_code(&mut desk, ADVISER, "lost Keti");
    desk.text(KETI, "who is there");
    with_code(&mut desk, ADVISER, "moved Keti 07700 900 555");
    desk.send_all();
    desk.text(ADVISER, "moved Keti +44 7700 900556");
    desk.send_all();
    desk.text(NEW, "dead 4 A");
    desk.send_all();
    with_code(&mut desk, NEW, "erase");
    desk.send_all();
    let lines = desk.lines();
    for trace in [
        "7700900005",
        "7700900555",
        "900 555",
        "7700900556",
        "900556",
        "Keti",
    ] {
        let holds = |line: &&String| line.to_lowercase().contains(&trace.to_lowercase());
        let held: Vec<&String> = lines.iter().filter(holds).collect();
        assert!(held.is_empty(), "{trace}: {held:?}");
    }
}

/// What the leader said of Jaro must not be stored on the leader's own block.
#[test]
fn what_a_waiting_text_tells_of_somebody_else_is_not_offered_for_its_sender() {
    let mut desk = Desk::open(MORNING);
    with_code(&mut desk, ADVISER, "lost Tor");
    desk.send_all();
    assert_eq!(desk.text(LEADER, "Jaro: dead 4 A"), "for a person");
    desk.text(LEADER, "dead 4 A");
    desk.send_all();
    desk.text(ADVISER, "next");
    let first = last_to(&mut desk, ADVISER);
    assert!(first.contains("Jaro: dead 4 A"), "{first}");
    assert!(!first.contains("Store"), "{first}");
    desk.text(ADVISER, "next");
    let second = last_to(&mut desk, ADVISER);
    assert!(second.contains("Store A"), "{second}");
}

/// The queue of a phone is full: what NEXT can not show is no notice either.
#[test]
fn what_finds_no_place_in_the_queue_is_told_to_nobody() {
    let mut desk = Desk::open(MORNING);
    with_code(&mut desk, ADVISER, "lost Keti");
    for _ in 0..10 {
        desk.text(KETI, "dead 4 A");
    }
    desk.send_all();
    assert_eq!(desk.stored("matter").len(), 10);
    desk.wait(TimeDelta::hours(2));
    desk.send_all();
    desk.text(KETI, "dead 5 A");
    assert_eq!(to(&desk.send_all(), ADVISER), [""; 0]);
    assert_eq!(desk.stored("matter").len(), 10);
}

/// The network gives a lost number to somebody else, and the office lists it.
#[test]
fn whoever_gets_a_number_that_was_lost_and_left_has_lost_nothing() {
    let mut desk = Desk::open(MORNING);
    with_code(&mut desk, ADVISER, "lost Keti");
    with_code(&mut desk, ADVISER, "moved Keti 07700 900555");
    let phone = desk.engine.directory().phone(KETI).expect("it is known");
    assert_eq!((phone.lost_on, phone.people().count()), (None, 0));
}
