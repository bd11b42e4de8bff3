//! Who forges a number, and who texts without end, gets nothing by it and is in nobody's way.

mod handover;
mod phones;
mod promises;
mod roles;
mod tell;

use budwood::words::traffic::Outgoing;
use chrono::TimeDelta;

use crate::fixture::{
    code,
    desk::{ADVISER, Desk, HANA, JARO},
};

/// Ten in the morning where the group lives.
const MORNING: &str = "2026-12-14T03:00:00Z";

/// A farmer of the demo's list with one block, A, of 520 trees.
const KETI: &str = "+447700900005";

const VISIT: &str = "from Keti: dead 4";

/// What arrives on a phone.
fn to<'t>(sent: &'t [Outgoing], number: &str) -> Vec<&'t str> {
    let sent = sent.iter().filter(|text| text.to == number);
    sent.map(|text| text.text.as_str()).collect()
}

/// Another code than this one.
fn wrong(code: &str) -> String {
    let other = if code.starts_with('9') { '8' } else { '9' };
    format!("{other}{}", &code[1..])
}

#[test]
fn a_forged_adviser_writes_nothing_without_the_code() {
    let mut desk = Desk::open(MORNING);
    assert_eq!(desk.text(ADVISER, VISIT), "asked for a code");
    assert_eq!(desk.text(ADVISER, "1"), "nothing was asked");
    assert_eq!(desk.text(ADVISER, "yes"), "nothing was asked");
    assert_eq!(desk.reports().len(), 0);
    let sent = desk.send_all();
    assert_eq!(to(&sent, ADVISER).len(), sent.len(), "only she is told");
}

#[test]
fn one_right_code_opens_a_visit_until_the_evening() {
    let mut desk = Desk::open(MORNING);
    desk.text(ADVISER, VISIT);
    let code = code(&desk.send_all());
    // The text that waited is taken up.
    assert_eq!(
        desk.text(ADVISER, &format!("yes {code}")),
        "asked to confirm"
    );
    assert_eq!(desk.text(ADVISER, "1"), "recorded");
    desk.wait(TimeDelta::hours(8));
    let later = "from Keti: dead 6";
    assert_eq!(desk.text(ADVISER, later), "asked to confirm");
    assert_eq!(desk.text(ADVISER, "1"), "recorded");
    // 19:00 there.
    desk.wait(TimeDelta::hours(1));
    let evening = "from Keti: dead 7";
    assert_eq!(desk.text(ADVISER, evening), "asked for a code");
    assert_eq!(desk.reports().len(), 2);
    let desk = desk.restart(true);
    assert_eq!(desk.reports().len(), 2);
}

#[test]
fn a_visit_that_begins_at_night_ends_at_midnight() {
    // 21:00 there.
    let mut desk = Desk::open("2026-12-14T14:00:00Z");
    desk.text(ADVISER, VISIT);
    let code = code(&desk.send_all());
    assert_eq!(desk.text(ADVISER, &code), "asked to confirm");
    assert_eq!(desk.text(ADVISER, "2"), "asked for a slot");
    desk.wait(TimeDelta::minutes(179));
    assert_eq!(desk.text(ADVISER, VISIT), "asked to confirm");
    assert_eq!(desk.text(ADVISER, "2"), "asked for a slot");
    desk.wait(TimeDelta::minutes(1));
    assert_eq!(desk.text(ADVISER, VISIT), "asked for a code");
}

/// On the very minute at which the evening begins too.
#[test]
fn a_visit_that_begins_as_the_evening_does_ends_at_midnight() {
    // 19:00 there.
    let mut desk = Desk::open("2026-12-14T12:00:00Z");
    desk.text(ADVISER, VISIT);
    let code = code(&desk.send_all());
    assert_eq!(desk.text(ADVISER, &code), "asked to confirm");
    assert_eq!(desk.text(ADVISER, "2"), "asked for a slot");
    desk.wait(TimeDelta::minutes(299));
    assert_eq!(desk.text(ADVISER, VISIT), "asked to confirm");
    assert_eq!(desk.text(ADVISER, "2"), "asked for a slot");
    desk.wait(TimeDelta::minutes(1));
    assert_eq!(desk.text(ADVISER, VISIT), "asked for a code");
}

#[test]
fn a_forged_hold_stops_no_reminders_and_a_forged_go_begins_none() {
    let mut desk = Desk::open(MORNING);
    let held = |desk: &Desk| {
        let people = desk.stored("person");
        people.iter().filter(|one| !one["hold"].is_null()).count()
    };
    assert_eq!(desk.text(ADVISER, "hold Keti"), "asked for a code");
    let sent = desk.send_all();
    assert!(sent[0].text.contains("Keti"), "{sent:?}");
    assert_eq!(held(&desk), 0);
    assert_eq!(desk.text(ADVISER, &code(&sent)), "left alone");
    assert_eq!(held(&desk), 1);
    // The next morning.
    desk.wait(TimeDelta::hours(24));
    assert_eq!(desk.text(ADVISER, "go Keti"), "asked for a code");
    assert_eq!(held(&desk), 1);
    let code = code(&desk.send_all());
    assert_eq!(desk.text(ADVISER, &code), "gone on");
    assert_eq!(held(&desk), 0);
}

#[test]
fn a_forged_no_takes_back_nothing_that_a_visit_stored() {
    let mut desk = Desk::open(MORNING);
    desk.text(ADVISER, VISIT);
    let code = code(&desk.send_all());
    desk.text(ADVISER, &code);
    assert_eq!(desk.text(ADVISER, "1"), "recorded");
    desk.wait(TimeDelta::hours(12));
    assert_eq!(desk.text(ADVISER, "no"), "asked for a code");
    assert_eq!(desk.reports().len(), 1);
}

#[test]
fn three_wrong_codes_lock_the_deed_for_a_day_and_the_phone_sees_each() {
    let mut desk = Desk::open(MORNING);
    desk.text(JARO, "erase");
    let right = code(&desk.send_all());
    let bad = format!("yes {}", wrong(&right));
    assert_eq!(desk.text(JARO, &bad), "wrong code");
    assert_eq!(desk.text(JARO, &bad), "wrong code");
    assert_eq!(desk.engine.locked(), 0);
    assert_eq!(desk.text(JARO, &bad), "locked");
    assert_eq!(to(&desk.send_all(), JARO).len(), 3);
    assert_eq!(desk.engine.locked(), 1);
    // Nor does the right one count any more, nor is another one sent, whatever happens meanwhile.
    assert_ne!(desk.text(JARO, &right), "done with a code");
    desk.wait(TimeDelta::hours(23));
    let mut desk = desk.restart(true);
    assert_eq!(desk.text(JARO, "erase"), "locked");
    desk.wait(TimeDelta::hours(1));
    assert_eq!(desk.text(JARO, "erase"), "asked for a code");
}

#[test]
fn a_lock_is_of_one_deed() {
    let mut desk = Desk::open(MORNING);
    desk.text(ADVISER, "erase");
    let bad = wrong(&code(&desk.send_all()));
    for _ in 0..3 {
        desk.text(ADVISER, &bad);
    }
    assert_eq!(desk.text(ADVISER, "erase"), "locked");
    assert_eq!(desk.text(ADVISER, VISIT), "asked for a code");
}

#[test]
fn a_guesser_has_three_guesses_a_day_at_900_000_codes() {
    let mut desk = Desk::open(MORNING);
    let mut guesses = 0;
    let mut codes = std::collections::BTreeSet::new();
    for _ in 0..7 {
        for _ in 0..50 {
            if desk.text(JARO, "erase") == "asked for a code" {
                codes.insert(code(&desk.send_all()));
            }
            let guess = desk.text(JARO, "yes 123456");
            guesses += u32::from(["wrong code", "locked"].contains(&guess));
            desk.wait(TimeDelta::seconds(1));
        }
        desk.wait(TimeDelta::days(1));
    }
    assert_eq!(guesses, 7 * 3);
    assert!(codes.len() > 14, "each is another one: {codes:?}");
}

#[test]
fn so_many_codes_are_sent_to_one_phone_in_a_day() {
    let mut desk = Desk::open(MORNING);
    for _ in 0..20 {
        assert_eq!(desk.text(JARO, "erase"), "asked for a code");
    }
    assert_eq!(desk.text(JARO, "erase"), "locked");
}

#[test]
fn a_number_in_a_report_is_no_code() {
    let mut desk = Desk::open(MORNING);
    desk.text(JARO, "erase");
    let right = code(&desk.send_all());
    assert_ne!(
        desk.text(JARO, "call me at 07700 900123 or 900124"),
        "wrong code"
    );
    assert_eq!(
        desk.text(JARO, &format!("{right}, thanks")),
        "done with a code"
    );
}

#[test]
fn an_advisers_stop_needs_a_code_and_a_farmers_does_not() {
    let mut desk = Desk::open(MORNING);
    assert_eq!(desk.text(JARO, "stop"), "stopped");
    assert_eq!(desk.text(ADVISER, "stop"), "asked for a code");
    let sent = desk.send_all();
    let code = code(&sent);
    // She is still told.
    desk.text(KETI, "call me");
    assert_eq!(to(&desk.send_all(), ADVISER).len(), 1);
    assert_eq!(desk.text(ADVISER, &code), "done with a code");
    desk.send_all();
    desk.text(HANA, "call me");
    assert_eq!(to(&desk.send_all(), ADVISER), [""; 0]);
}

#[test]
fn a_farmer_reads_that_she_is_told_only_when_she_is() {
    let told = |desk: &mut Desk| {
        desk.text(KETI, "3 trees with pink disease A");
        let sickness = desk.send_all();
        desk.text(KETI, "call me");
        let call = desk.send_all();
        let says = |sent: &[Outgoing]| to(sent, KETI).concat().contains("Mara");
        let posted = |sent: &[Outgoing]| !to(sent, ADVISER).is_empty();
        assert_eq!(says(&sickness), posted(&sickness), "{sickness:?}");
        assert_eq!(says(&call), posted(&call), "{call:?}");
        posted(&sickness)
    };
    assert!(told(&mut Desk::open(MORNING)));
    let mut desk = Desk::open(MORNING);
    desk.text(ADVISER, "stop");
    let code = code(&desk.send_all());
    desk.text(ADVISER, &code);
    desk.send_all();
    assert!(!told(&mut desk));
}

#[test]
fn an_adviser_is_answered_sixty_times_an_hour() {
    let mut desk = Desk::open(MORNING);
    for _ in 0..70 {
        desk.text(ADVISER, "status KOLO");
        desk.wait(TimeDelta::seconds(10));
    }
    // The last one says that it is enough for an hour.
    assert_eq!(to(&desk.send_all(), ADVISER).len(), 61);
    assert_eq!(desk.engine.held_back().answers, 10);
}

#[test]
fn codes_and_stop_are_seen_whatever_was_answered_before() {
    let mut desk = Desk::open(MORNING);
    for _ in 0..30 {
        desk.text(JARO, "who is this");
    }
    assert_eq!(to(&desk.send_all(), JARO).len(), 11);
    desk.text(JARO, "erase");
    let right = code(&desk.send_all());
    desk.text(JARO, &wrong(&right));
    assert_eq!(to(&desk.send_all(), JARO).len(), 1);
    assert_eq!(desk.text(JARO, "stop"), "stopped");
    assert_eq!(to(&desk.send_all(), JARO).len(), 1);
}

#[test]
fn three_thousand_texts_of_one_farmer_are_in_nobodys_way() {
    let mut desk = Desk::open(MORNING);
    for number in 0..3_000 {
        desk.text(JARO, &format!("{number} trees with pink disease A"));
    }
    desk.text(KETI, "what now");
    let sent = desk.send_all();
    assert!(to(&sent, JARO).len() <= 11, "{}", to(&sent, JARO).len());
    assert!(
        to(&sent, ADVISER).len() <= 4,
        "{}",
        to(&sent, ADVISER).len()
    );
    assert_eq!(to(&sent, KETI).len(), 1);
    // What she did not get comes as one text when the hour ends.
    desk.wait(TimeDelta::hours(1));
    let later = desk.send_all();
    let digest = to(&later, ADVISER);
    assert_eq!(digest.len(), 1, "{digest:?}");
    let gathered = desk.engine.held_back().notices;
    assert!(gathered > 0);
    assert!(digest[0].starts_with(&format!("{gathered} ")), "{digest:?}");
    assert!(digest[0].contains("Jaro Pell"), "{digest:?}");
}

#[test]
fn strangers_are_answered_once_at_home_and_forgotten() {
    let mut desk = Desk::open(MORNING);
    let stranger = "+447700900777";
    for _ in 0..3 {
        assert_eq!(desk.text(stranger, "planted 120"), "from a stranger");
    }
    // Abroad, by satellite (ITU-T E.164: 881 is global mobile satellite), and a premium rate number
    // of the country (Ofcom: 09 numbers).
    for (code, rest) in [(62, "81234567890"), (881, "612345678"), (44, "9012345678")] {
        let other = format!("+{code}{rest}");
        assert_eq!(desk.text(&other, "planted 120"), "from a stranger");
    }
    let sent = desk.send_all();
    assert_eq!(sent.len(), 1);
    assert_eq!(sent[0].to, stranger);
    assert_eq!(desk.engine.held_back().strangers, 5);
    let is_theirs = |talk: &serde_json::Value| talk["number"] == stranger;
    assert!(!desk.stored("talk").iter().any(is_theirs));
    desk.wait(TimeDelta::days(1));
    desk.text(stranger, "planted 120");
    assert_eq!(desk.send_all().len(), 1);
}

#[test]
fn a_day_without_money_left_answers_nobody_but_for_codes_and_alarms() {
    let mut desk = Desk::open_with(MORNING, |setup| setup.parts_a_day = Some(10));
    let questions = ["who is this", "help"];
    for question in questions.into_iter().cycle().take(4) {
        desk.text(JARO, question);
        desk.send_all();
    }
    desk.text("+447700900777", "planted 120");
    assert_eq!(desk.send_all().len(), 1, "less than half is gone");
    desk.text("+447700900778", "planted 120");
    assert_eq!(desk.send_all().len(), 0, "half is gone");
    let mut desk = desk.restart_with(|setup| setup.parts_a_day = Some(10));
    for question in questions.into_iter().cycle().take(9) {
        desk.text(KETI, question);
        desk.send_all();
    }
    desk.text(HANA, "who is this");
    assert_eq!(desk.send_all().len(), 0, "all is gone");
    desk.text(HANA, "erase");
    code(&desk.send_all());
    desk.wait(TimeDelta::days(1));
    desk.text(HANA, "who is this");
    assert_eq!(desk.send_all().len(), 1);
}

/// What is asked when nobody reads it is not answered by the next text: a person looks instead.
#[test]
fn a_question_that_nobody_reads_is_not_answered_by_the_next_text() {
    let mut desk = Desk::open(MORNING);
    for question in ["who is this", "help"].into_iter().cycle().take(11) {
        desk.text(JARO, question);
    }
    assert_eq!(
        to(&desk.send_all(), JARO).len(),
        11,
        "ten, and that it is enough"
    );
    assert_eq!(desk.text(JARO, "planted 2500"), "asked to confirm");
    let sent = desk.send_all();
    assert_eq!(to(&sent, JARO), [""; 0], "the hour has no answer left");
    assert_eq!(to(&sent, ADVISER).len(), 1, "{sent:?}");
    assert_eq!(desk.text(JARO, "1"), "nothing was asked");
    assert_eq!(desk.reports().len(), 0);
    desk.text(ADVISER, "next");
    assert!(to(&desk.send_all(), ADVISER)[0].contains("planted 2500"));
}

#[test]
fn a_thousand_stops_are_not_answered_without_end() {
    let mut desk = Desk::open(MORNING);
    let mut sent = Vec::new();
    for _ in 0..1_000 {
        desk.text(JARO, "stop");
        desk.text(KETI, "fire in the farm now");
        sent.append(&mut desk.send_all());
    }
    for phone in [JARO, KETI] {
        let got = to(&sent, phone).len();
        assert!((10..=31).contains(&got), "{phone}: {got}");
    }
}

#[test]
fn a_forged_done_closes_nothing_that_waits() {
    let mut desk = Desk::open(MORNING);
    desk.text(KETI, "i lost my phone");
    desk.text(ADVISER, "next");
    desk.send_all();
    assert_eq!(desk.text(ADVISER, "done"), "asked for a code");
    let code = code(&desk.send_all());
    assert_eq!(desk.stored("matter").len(), 1);
    assert_eq!(desk.text(ADVISER, &code), "seen to");
    assert_eq!(desk.stored("matter").len(), 0);
}
