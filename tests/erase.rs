//! What is left of somebody who had their name taken out: nothing but the figures of the land.

use std::sync::Arc;

use budwood::{
    engine::{Engine, Input},
    store::{Change, Store, read_line},
    words::{limits, traffic::InboundPart},
};
use budwood_scheduler::MessageId;
use chrono::TimeDelta;

use crate::fixture::{
    self, LastingStore, code,
    desk::{ADVISER, Desk, HANA, JARO, inbound},
};

/// Nilo Farr: one block, alone on the phone.
const NILO: &str = "+447700900003";

/// Sela and Bako share a phone.
const SHARED: &str = "+447700900002";

/// Everything of them that a record could hold.
const OF_NILO: [&str; 6] = [
    "7700900003",
    "Nilo",
    "Farr",
    "planted 120",
    "snake bit my son",
    "please call me",
];

fn asks_to_be_erased(desk: &mut Desk, number: &str) -> MessageId {
    desk.send_all();
    assert_eq!(desk.text(number, "erase"), "asked for a code");
    let asked = desk.send_all().pop().expect("a code is sent");
    let code = asked.text.split_whitespace().last().expect("its last word");
    assert_eq!(
        desk.text(number, &format!("yes {code}")),
        "done with a code"
    );
    let last = desk.claim().expect("a last word");
    assert_eq!(last.to, number);
    last.id
}

/// The records that hold any of these, whatever capitals they have.
fn holding<'a>(lines: &'a [String], of: &[&str]) -> Vec<&'a str> {
    let lines = lines.iter().map(String::as_str);
    let holds = |line: &&str| {
        let line = line.to_lowercase();
        of.iter().any(|what| line.contains(&what.to_lowercase()))
    };
    lines.filter(holds).collect()
}

/// Texts of theirs, of the adviser about them, and of ours to all of them, in every state.
fn valley_that_talks_of_nilo(desk: &mut Desk) {
    desk.text(NILO, "planted 120");
    desk.send_all();
    desk.wait(TimeDelta::hours(1));
    desk.text(NILO, "snake bit my son");
    desk.send_all();
    desk.wait(TimeDelta::hours(1));
    desk.text(NILO, "please call me");
    desk.send_all();
    desk.input(Input::MissedCall {
        gateway: fixture::LINE.to_owned(),
        from: NILO.to_owned(),
        at: desk.now,
    });
    desk.send_all();
    for question in ["NEXT", "WAITING", "NILO", "from Nilo: dead 4", "LATE KOLO"] {
        desk.wait(TimeDelta::hours(1));
        desk.text(ADVISER, question);
        desk.send_all();
    }
    desk.text(ADVISER, "hold Nilo until 1 Mar, moved to the coast");
    let asked = desk.send_all();
    let code = code(&asked);
    desk.text(ADVISER, &format!("yes {code}"));
    desk.text(ADVISER, "hold Hana until 1 Mar, until Nilo is buried");
    desk.send_all();
    desk.wait(TimeDelta::days(1));
    desk.text(ADVISER, "from Nilo: dead 5");
    desk.send_all();
    desk.text(HANA, "Nilo Farr said 07700 900003 is his number");
    desk.send_all();
    desk.wait(TimeDelta::hours(1));
    desk.input(Input::Part(InboundPart {
        text: inbound(NILO, "planted 120 in the "),
        reference: 7,
        of: 2,
        number: 1,
    }));
}

#[test]
fn after_erase_no_record_of_the_store_holds_number_name_or_texts() {
    let mut desk = Desk::open("2026-12-14T02:00:00Z");
    valley_that_talks_of_nilo(&mut desk);
    let lines = desk.lines();
    for what in OF_NILO {
        assert!(!holding(&lines, &[what]).is_empty(), "{what} was there");
    }
    let words = |desk: &Desk| {
        let told = desk.stored("event").into_iter();
        let words = told.map(|event| event["fact"]["left_alone"]["hold"]["reason"]["told"].clone());
        words
            .filter_map(|words| Some(words.as_str()?.to_owned()))
            .collect::<Vec<String>>()
    };
    assert_eq!(words(&desk).len(), 2, "{:?}", words(&desk));
    assert_eq!(desk.stored("part").len(), 1, "it waits for the others");
    let facts = desk.stored("event").len();
    let texts = desk.stored("received").len() + desk.stored("outbound").len();
    let last = asks_to_be_erased(&mut desk, NILO);
    // The last word must know its number until it has left, and so must who sees to it.
    let kinds = |lines: &[String]| -> Vec<String> {
        let held = holding(lines, &OF_NILO).into_iter();
        let kind = held.map(|line| line.split('"').nth(5).unwrap_or_default().to_owned());
        kind.collect()
    };
    assert_eq!(kinds(&desk.lines()), ["outbound", "erasure"]);
    desk.accepted(last, Some("theirs-1"));
    assert_eq!(holding(&desk.lines(), &OF_NILO), Vec::<&str>::new());
    assert!(desk.stored("erasure").is_empty(), "nothing is left to do");
    assert_eq!(
        words(&desk),
        ["", "hold Hana until 1 Mar, until P5 is buried"],
        "why they were left in peace is no figure; of others it stays without the name"
    );
    // Facts and the number of texts stay as they were; ERASE, its code and two answers came.
    assert_eq!(desk.stored("event").len(), facts + 1);
    let now = desk.stored("received").len() + desk.stored("outbound").len();
    assert_eq!(now, texts + 4);
    let status = |desk: &mut Desk| {
        desk.text(ADVISER, "STATUS KOLO");
        desk.send_all().pop().expect("an answer").text
    };
    assert!(!status(&mut desk).contains("Nilo"));
    let restarted = desk.restart(true);
    assert_eq!(holding(&restarted.lines(), &OF_NILO), Vec::<&str>::new());
    // A receipt still finds its text.
    desk.receipt(last, budwood::words::traffic::Delivery::Delivered);
    assert_eq!(desk.state(last), "delivered");
}

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
    let last = asks_to_be_erased(&mut desk, NILO);
    assert_eq!(talks(&desk), 0, "with the step that takes it out");
    desk.accepted(last, None);
    desk.wait(TimeDelta::hours(30));
    desk.send_all();
    assert_eq!(talks(&desk), 0, "nor when the last answer has gone");
}

/// The number is unknown then, and whoever asks again is not told to go to the adviser.
#[test]
fn a_second_erase_is_answered_kindly() {
    let mut desk = Desk::open("2026-12-14T02:00:00Z");
    let last = asks_to_be_erased(&mut desk, NILO);
    desk.accepted(last, None);
    assert_eq!(desk.text(NILO, "erase"), "from a stranger");
    let answers = desk.send_all();
    let told: Vec<&str> = answers.iter().map(|answer| answer.text.as_str()).collect();
    let kind = "We hold no name for this number. There is nothing more to take out.";
    assert_eq!(told, [kind]);
}

/// A phone that others use stays theirs, with what they are asked next.
#[test]
fn who_shares_a_phone_goes_and_the_others_stay() {
    let mut desk = Desk::open("2026-12-14T02:00:00Z");
    for text in ["call me", "2", "erase"] {
        desk.text(SHARED, text);
        desk.send_all();
    }
    assert_eq!(desk.text(SHARED, "2"), "asked for a code");
    let asked = desk.send_all().pop().expect("a code is sent");
    let code = asked.text.split_whitespace().last().expect("its last word");
    desk.text(SHARED, &format!("yes {code}"));
    desk.send_all();
    desk.text(SHARED, "2");
    desk.send_all();
    let names = |desk: &Desk| holding(&desk.lines(), &["Bako"]).len();
    assert_eq!(names(&desk), 0);
    let phones = desk.stored("phone");
    assert!(phones.iter().any(|phone| phone["number"] == SHARED));
    assert_eq!(desk.text(SHARED, "planted 90"), "recorded");
}

/// Sled stands still when much is written at once, and the power may go between two writes.
#[test]
fn an_erasure_goes_on_in_small_writes_after_a_crash() {
    let disk = LastingStore::default();
    let mut desk = Desk::open("2026-12-14T02:00:00Z");
    for day in 0..400 {
        desk.inbound(inbound(NILO, &format!("planted 120, no {day}")));
        desk.inbound(inbound(JARO, &format!("thanks {day}")));
        desk.send_all();
        desk.wait(TimeDelta::hours(7));
    }
    let copy = |store: &dyn Store, lines: &[String]| {
        let mut all = Change::default();
        for line in lines {
            read_line(line.as_bytes(), &mut all).unwrap();
        }
        store.commit(&all).unwrap();
    };
    desk.text(NILO, "erase");
    let asked = desk.send_all().pop().expect("a code is sent");
    let code = asked.text.split_whitespace().last().expect("its last word");
    copy(&disk, &desk.lines());
    let now = desk.now;
    let open = || {
        let setup = Arc::new(fixture::own_setup());
        Engine::open(setup, Box::new(disk.clone()), now).unwrap()
    };
    let mut engine = open();
    let yes = Input::Text(inbound(NILO, &format!("yes {code}")));
    let stepped = engine.step(vec![yes], now);
    disk.commit(&stepped.unwrap().change).unwrap();
    let mut writes = 0;
    let mut crashes = 0;
    while engine.is_erasing() {
        let change = engine.erase_some(now).unwrap();
        let keys = change.keys().unwrap();
        assert!(keys.len() <= limits::ERASE_RECORDS, "{}", keys.len());
        // Every third write is lost with what memory knew of it.
        writes += 1;
        if writes % 3 == 0 && crashes < 4 {
            crashes += 1;
            engine = open();
        } else if !change.is_empty() {
            disk.commit(&change).unwrap();
        }
    }
    assert!(writes > 8, "{writes}");
    let records = disk.records(None, usize::MAX).unwrap();
    let lines: Vec<String> = records
        .into_iter()
        .map(|record| String::from_utf8(record.line).unwrap())
        .collect();
    let held = holding(&lines, &["7700900003", "Nilo", "planted 120"]);
    assert_eq!(
        held.len(),
        2,
        "the last word, and what is still to do: {held:?}"
    );
    let thanks = holding(&lines, &["thanks"]).len();
    assert!(thanks >= 400, "those of others stay: {thanks}");
}
