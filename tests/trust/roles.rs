//! Every role, every verb, the own group and another one: what is let through is the table here.
//!
//! Each row is a service of its own: everybody texts the same, and what comes of it tells whether
//! they reached what they meant.

use budwood::engine::Operator;
use chrono::{NaiveTime, TimeDelta};
use chrono_tz::Asia::Jakarta;

use super::to;
use crate::fixture::{code, desk::Desk};

/// Invented: two groups with an adviser each, and one of every role in the first.
const ROLL: &str = "\
row,group,name,role,phone,consent_on,consent_how,adviser,zone,calendar,rains_start,rains_end,block,area,unit,clone,planted_on,planted
group,KOLO,,,,,,Mara Tindel,Asia/Jakarta,fao,1 Nov,30 Apr,,,,,,
group,RIVA,,,,,,Ben Tarr,Asia/Jakarta,fao,1 Nov,30 Apr,,,,,,
person,,Mara Tindel,adviser,+447700900100,2025-09-01,contract,,,,,,,,,,,
person,,Ben Tarr,adviser,+447700900101,2025-09-01,contract,,,,,,,,,,,
person,KOLO,Tamo Oss,farmer,+447700900005,2025-09-12,signed sheet,,,,,,,,,,,
person,KOLO,Lia Wend,leader,+447700900006,2025-09-12,signed sheet,,,,,,,,,,,
person,KOLO,Ilse Vann,clerk,+447700900102,2025-09-01,contract,,,,,,,,,,,
person,KOLO,Nils Orr,nursery,+447700900103,2025-09-01,contract,,,,,,,,,,,
person,KOLO,Vera Lund,viewer,+447700900104,2025-09-01,contract,,,,,,,,,,,
person,RIVA,Keti Olm,farmer,+447700900008,2025-09-12,signed sheet,,,,,,,,,,,
block,KOLO,Tamo Oss,,,,,,,,,,A,1.1,ha,PB260,2025-11-12,520
block,RIVA,Keti Olm,,,,,,,,,,A,1.1,ha,PB260,2025-11-12,500
";

/// Who texts, in the order of the columns below.
const ROLES: [(&str, &str); 8] = [
    ("farmer", "+447700900005"),
    ("leader", "+447700900006"),
    ("adviser", "+447700900100"),
    ("clerk", "+447700900102"),
    ("nursery", "+447700900103"),
    ("viewer", "+447700900104"),
    ("operator", "+447700900200"),
    ("stranger", "+447700900777"),
];

const LEADER: &str = "+447700900006";

/// Whom each verb reaches: people of the own group (o), of another one (x), of both (b), of none (.).
const EXPECTED: &str = "
             farmer leader adviser clerk nursery viewer operator stranger
status         .      .      o       o      .       o       .        .
late           .      .      o       o      .       o       .        .
dead           .      .      o       o      .       o       .        .
member         .      .      o       o      .       o       .        .
whose          .      .      o       o      .       .       .        .
next           .      .      o       o      .       .       .        .
report         .      o      o       .      .       .       .        .
fix            .      o      o       .      .       .       .        .
hold           .      .      o       .      .       .       .        .
moved          .      .      o       .      .       .       .        .
adviser_lost   .      o      .       o      .       .       .        .
window         .      .      o       .      .       .       .        .
warn           .      .      o       .      .       .       .        .
tell           .      .      o       .      .       .       .        .
promise        .      .      o       .      .       .       .        .
list           .      o      o       o      .       o       .        .
train          .      o      o       o      .       o       .        .
paid           .      o      o       o      .       o       .        .
allot          .      .      o       o      o       o       .        .
trained        .      o      o       .      .       .       .        .
buying         .      o      o       .      .       .       .        .
stock          .      .      o       .      o       .       .        .
pick_up        .      .      o       .      o       .       .        .
handover       .      .      o       .      .       .       .        .
ask_harm       .      .      o       .      .       .       .        .
grant          .      .      o       o      .       o       .        .
owner          .      .      o       .      .       .       .        .
divide         .      .      o       .      .       .       .        .
join           .      .      o       .      .       .       .        .
leave          .      .      o       .      .       .       .        .
helper         .      .      o       .      .       .       .        .
";

/// What is texted, to somebody or some group, and what shows that it reached them: something that
/// became of the text, or words in the answer.
fn verb(name: &str, is_own: bool) -> (String, &'static str) {
    let (group, person, digits, adviser) = if is_own {
        ("KOLO", "Tamo", "0005", "Mara")
    } else {
        ("RIVA", "Keti", "0008", "Ben")
    };
    let asked = "asked for a code";
    match name {
        "status" => (format!("status {group}"), "Quiet"),
        "late" => (format!("late {group}"), "late"),
        "dead" => (format!("dead {group}"), "2 of"),
        "member" => (person.to_owned(), "planted 12 Nov"),
        "whose" => (format!("who {digits}"), "agreed"),
        "next" => (
            "next".to_owned(),
            if is_own { "Tamo Oss" } else { "Keti Olm" },
        ),
        "report" => (format!("from {person}: dead 4 A"), asked),
        "fix" => (format!("fix {person} A dead 3 not 2"), asked),
        "hold" => (format!("hold {person}"), asked),
        "moved" => (format!("moved {person} 07700 900555"), asked),
        "adviser_lost" => (format!("lost {adviser}"), asked),
        "window" => (format!("window {group}"), asked),
        "warn" => (format!("warn {group}"), "No cluster"),
        "tell" => (format!("tell {group}: meeting on Friday"), asked),
        "promise" => (format!("promise {person} a string"), "promised"),
        "list" => (format!("list {group}"), "Work is due"),
        "train" => (format!("train {group}"), "no training"),
        "paid" => (format!("paid {group}"), "0.00 paid"),
        "allot" => (format!("allot {group}"), "no plants"),
        "trained" => (format!("trained pruning: {person}"), "Noted"),
        "buying" => (format!("buying day {group} 36.50 19 Mar"), "36.50"),
        "stock" => (format!("stock {group} PB260 600"), "600"),
        "ask_harm" => (format!("ask wind {group}"), asked),
        "grant" => (format!("grant {group}"), "part payments"),
        "pick_up" => (format!("pick up day {group} 19 Mar"), "nothing to pick up"),
        "owner" => (
            format!(
                "new owner {person} A {}",
                if is_own { "Lia" } else { "Tamo" }
            ),
            asked,
        ),
        "divide" => (format!("split {person} A 200"), asked),
        "join" => (format!("new member {group} Mina Weil 07700 900556"), asked),
        "leave" => (format!("leaves group {person}"), asked),
        "helper" => (format!("second phone {person} Mina 07700 900557"), asked),
        "handover" => (format!("handover {group} Ben"), asked),
        other => panic!("no such verb: {other}"),
    }
}

fn desk() -> Desk {
    let mut desk = Desk::open_list("2026-02-16T03:00:00Z", ROLL.as_bytes(), |setup| {
        setup.operator = Some(Operator {
            number: "+447700900200".to_owned(),
            language: None,
            at: NaiveTime::MIN,
            zone: Jakarta,
        });
    });
    for farmer in ["+447700900005", "+447700900008"] {
        assert_eq!(desk.text(farmer, "dead 2"), "recorded");
        assert_eq!(desk.text(farmer, "call me"), "for a person");
    }
    desk.wait(TimeDelta::days(1));
    desk.send_all();
    desk
}

/// Whether a text of theirs reached what it meant.
fn reaches(desk: &mut Desk, phone: &str, name: &str, is_own: bool) -> bool {
    let (text, sign) = verb(name, is_own);
    let outcome = desk.text(phone, &text);
    let sent = desk.send_all();
    let answer = to(&sent, phone).concat();
    // A leader's word for a member is confirmed by the leader, not by a code; a farmer's is asked
    // about as one of their own.
    let member = if is_own { "Tamo" } else { "Keti" };
    let is_confirmed = name == "report" && outcome == "asked to confirm";
    let is_leaders = is_confirmed && answer.contains(member);
    // So is what a leader puts right: the member reads it, and may contest it.
    let is_leaders = is_leaders
        || (name == "fix" && phone == LEADER && outcome == "changed" && answer.contains(member));
    // What an adviser enters in a book waits for the code of a visit.
    let is_entry = matches!(name, "trained" | "buying" | "stock" | "pick_up");
    let is_entered = is_entry && outcome == "asked for a code";
    outcome == sign || is_leaders || is_entered || answer.contains(sign)
}

#[test]
fn every_role_reaches_with_every_verb_what_the_table_says() {
    let rows = EXPECTED.lines().filter(|line| !line.is_empty()).skip(1);
    let mut wrong = Vec::new();
    for row in rows {
        let mut cells = row.split_whitespace();
        let name = cells.next().unwrap();
        let cells: Vec<&str> = cells.collect();
        assert_eq!(cells.len(), ROLES.len(), "{name}");
        let mut desk = desk();
        for ((role, phone), expected) in ROLES.into_iter().zip(cells) {
            let mut reaches = |is_own| reaches(&mut desk, phone, name, is_own);
            let found = match (reaches(true), reaches(false)) {
                (false, false) => ".",
                (true, false) => "o",
                (false, true) => "x",
                (true, true) => "b",
            };
            if found != expected {
                wrong.push(format!("{role} {name}: {found} and not {expected}"));
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

/// Who asks for what is not theirs to ask is told whom to ask, and what they can.
#[test]
fn what_a_role_may_not_is_told_politely() {
    let mut desk = desk();
    for (phone, text) in [
        ("+447700900104", "week"),
        ("+447700900104", "next"),
        ("+447700900102", "tell KOLO: meeting on Friday"),
    ] {
        desk.text(phone, text);
        let sent = desk.send_all();
        let answer = to(&sent, phone).concat();
        assert!(!answer.is_empty(), "{text}");
    }
    for (phone, word) in [("+447700900104", "CLONE"), ("+447700900102", "WAITING")] {
        assert_eq!(desk.text(phone, "help"), "helped");
        let sent = desk.send_all();
        assert!(to(&sent, phone)[0].contains(word), "{sent:?}");
    }
}

/// A clerk's word needs a code, as an adviser's does, and what was read by one is not closed by the
/// other.
#[test]
fn a_clerk_works_through_the_queue_of_the_group() {
    const CLERK: &str = "+447700900102";
    const MARA: &str = "+447700900100";
    let mut desk = desk();
    desk.text("+447700900005", "why did 9 trees die");
    desk.text(CLERK, "next");
    desk.text(CLERK, "next");
    desk.send_all();
    assert_ne!(desk.text(MARA, "done"), "seen to");
    assert_eq!(desk.stored("matter").len(), 3);
    assert_eq!(desk.text(CLERK, "1"), "asked for a code");
    let code = code(&desk.send_all());
    let before = desk.reports().len();
    assert_eq!(desk.text(CLERK, &code), "recorded");
    assert_eq!(desk.reports().len(), before + 1);
    assert_eq!(desk.stored("matter").len(), 2);
}
