//! Every page and every role: what is seen is the table here.

use budwood::engine::looks::{Look, Rests, Unseen, Viewer};
use budwood_scheduler::{BlockId, EventId};

use super::{ROLL, comes_in, desk, look, texted};
use crate::fixture::desk::Desk;

/// Who looks, in the order of the columns below.
const NAMES: [&str; 4] = ["Mara Tindel", "Ilse Vann", "Nils Orr", "Vera Lund"];

/// What each sees: the page (p), that it is not theirs (-), that there is no such thing (0).
const EXPECTED: &str = "
            adviser clerk nursery viewer
today          p      p      -      p
queue          p      p      -      -
groups         p      p      -      p
own group      p      p      -      p
other group    0      0      -      0
own farmer     p      p      -      p
other farmer   0      0      -      0
own block      p      p      -      p
other block    0      0      -      0
own fact       p      p      -      p
other fact     0      0      -      0
no fact        0      0      -      0
sick           p      p      -      p
season         p      p      -      p
stock          p      p      p      p
line           p      p      -      -
";

/// The pages by the names of the rows.
fn pages(desk: &Desk) -> Vec<(&'static str, Look)> {
    let directory = desk.engine.directory();
    let person = |name: &str| {
        let mut people = directory.persons();
        people.find(|one| one.name == name).expect("a person").id
    };
    let block = |name: &str| {
        directory
            .blocks_of(person(name))
            .next()
            .expect("a block")
            .id
    };
    let fact = |block: BlockId| {
        let facts = &desk.engine.state(block).expect("a state").facts;
        *facts.first().expect("a fact")
    };
    let (own, other) = ("Tamo Oss", "Keti Olm");
    vec![
        ("today", Look::Today),
        ("queue", Look::Queue(None)),
        ("groups", Look::Groups),
        ("own group", Look::Group("KOLO".to_owned())),
        ("other group", Look::Group("RIVA".to_owned())),
        ("own farmer", Look::Person(person(own))),
        ("other farmer", Look::Person(person(other))),
        ("own block", Look::Under(block(own), Rests::Living)),
        ("other block", Look::Under(block(other), Rests::Living)),
        ("own fact", Look::Fact(fact(block(own)))),
        ("other fact", Look::Fact(fact(block(other)))),
        ("no fact", Look::Fact(EventId(u64::MAX))),
        ("sick", Look::Sick),
        ("season", Look::Season),
        ("stock", Look::Stock),
        ("line", Look::Line),
    ]
}

#[test]
fn each_role_sees_its_pages_and_no_others() {
    let mut desk = desk();
    let pages = pages(&desk);
    let viewers: Vec<Viewer> = NAMES.map(|name| comes_in(&mut desk, name)).into();
    let mut lines = vec!["            adviser clerk nursery viewer".to_owned()];
    for (name, page) in pages {
        let seen = viewers
            .iter()
            .map(|viewer| match look(&mut desk, viewer, page.clone()) {
                Ok(_) => "p",
                Err(Unseen::NotTheirs(_)) => "-",
                Err(Unseen::Nothing(_)) => "0",
                Err(Unseen::Stranger) => "?",
            });
        let seen: Vec<&str> = seen.collect();
        lines.push(format!("{name:<15}{}", seen.join("      ")));
    }
    assert_eq!(lines.join("\n"), EXPECTED.trim_matches('\n'));
}

/// A text comes to the phone on record of those who may look, and to nobody else.
#[test]
fn codes_go_only_to_who_may_look() {
    let mut desk = desk();
    for line in ROLL.lines().filter(|line| line.starts_with("person,")) {
        let cells: Vec<&str> = line.split(',').collect();
        let [_, _, name, role, phone, ..] = cells[..] else {
            panic!("{line}");
        };
        let sent = texted(&mut desk, name).map(|(to, _)| to);
        let may = !matches!(role, "farmer" | "leader");
        assert_eq!(sent.as_deref(), may.then_some(phone), "{name}");
    }
    for nobody in ["", "Mara", "mara  tindel", "Nobody Here", "+447700900100"] {
        assert_eq!(texted(&mut desk, nobody), None, "{nobody}");
    }
    let again = texted(&mut desk, " MARA TINDEL ").map(|(to, _)| to);
    assert_eq!(again.as_deref(), Some("+447700900100"));
}

/// What only some may read on a page that many may see.
#[test]
fn a_viewer_reads_no_numbers_and_no_texts() {
    let mut desk = desk();
    desk.text(super::TAMO, "dead 8");
    desk.send_all();
    let tamo = pages(&desk)[5].1.clone();
    let (viewer, clerk) = (
        comes_in(&mut desk, "Vera Lund"),
        comes_in(&mut desk, "Ilse Vann"),
    );
    let block = pages(&desk)[7].1.clone();
    let Look::Under(block, _) = block else {
        panic!("a block");
    };
    let facts = &desk.engine.state(block).expect("a state").facts;
    let told = Look::Fact(*facts.last().expect("the report"));
    let mut seen = |viewer: &Viewer, page: &Look| {
        let seen = look(&mut desk, viewer, page.clone()).expect("a page");
        super::words(&seen).join("\n")
    };
    assert!(seen(&clerk, &tamo).contains("…0005"));
    assert!(!seen(&viewer, &tamo).contains("0005"));
    assert!(seen(&clerk, &told).contains("dead 8"));
    assert!(seen(&viewer, &told).contains("8 more dead trees"));
    assert!(!seen(&viewer, &told).contains("dead 8"));
}
