//! The last list is taken back: what it wrote is as it was before, and what others have built on it
//! since stays.

use std::sync::Arc;

use budwood::{
    engine::{BackDeed, Engine, Input, List, ListAnswer, ListDeed, ListFate},
    service::setup,
    store::MemoryStore,
    words::traffic::Inbound,
};
use budwood_scheduler::{Consent, Directory};
use chrono::{DateTime, TimeDelta, Utc};

/// Mara's group as it was in spring (invented).
const SPRING: &str = "\
row,group,name,role,phone,language,consent_on,adviser,zone,calendar,rains_start,rains_end,block,area,unit,planted_on,planted
group,KOLO,,,,,,Mara Tindel,Asia/Jakarta,fao,1 Nov,30 Apr,,,,,
person,,Mara Tindel,adviser,+447700900999,en,2026-09-01,,,,,,,,,,
person,KOLO,Tor Pell,farmer,+447700900001,en,2026-09-05,,,,,,,,,,
person,KOLO,Bako Mirk,farmer,+447700900002,en,,,,,,,,,,,
block,KOLO,Tor Pell,,,,,,,,,,A,1.2,ha,2024-11,480
";

/// What came in autumn: a group, two people, a block for Tor, a consent and a language.
const AUTUMN: &str = "\
row,group,name,role,phone,language,consent_on,adviser,zone,calendar,rains_start,rains_end,block,area,unit,planted_on,planted
group,SENA,,,,,,Mara Tindel,Asia/Jakarta,fao,1 Nov,30 Apr,,,,,
person,KOLO,Tor Pell,farmer,+447700900001,fr,,,,,,,,,,,
person,KOLO,Bako Mirk,farmer,+447700900002;+447700900012,en,2026-10-05,,,,,,,,,,
person,SENA,Osa Kand,farmer,+447700900003,en,2026-10-05,,,,,,,,,,
person,SENA,Keti Rill,farmer,+447700900001,en,2026-10-05,,,,,,,,,,
block,KOLO,Tor Pell,,,,,,,,,,B,0.5,ha,2025-11,200
block,SENA,Osa Kand,,,,,,,,,,A,1,ha,2025-11,400
";

struct Office {
    engine: Engine,
    now: DateTime<Utc>,
}

impl Office {
    fn open() -> Self {
        let now = "2026-11-30T09:00:00Z".parse().expect("a moment");
        let setup = Arc::new(setup::built_in(0).expect("what is built in"));
        let store = Box::new(MemoryStore::new());
        let engine = Engine::open(setup, store, now).expect("an empty store");
        Self { engine, now }
    }

    fn step(&mut self, input: Input) -> Option<ListAnswer> {
        self.now += TimeDelta::minutes(1);
        let told = self.engine.handle(vec![input], self.now).expect("a store");
        told.into_iter().next().and_then(|told| told.list)
    }

    #[track_caller]
    fn load(&mut self, csv: &str) {
        let list = List {
            csv: csv.as_bytes().to_vec(),
            deed: ListDeed::Load,
        };
        let answer = self.step(Input::List(list)).expect("an answer");
        assert_eq!(answer.fate, ListFate::Stored, "{}", answer.page);
    }

    fn back(&mut self, deed: BackDeed) -> ListAnswer {
        self.step(Input::Unload(deed)).expect("an answer")
    }

    fn text(&mut self, from: &str, text: &str) {
        self.step(Input::Text(Inbound {
            gateway: "handset".to_owned(),
            gateway_id: None,
            from: from.to_owned(),
            to: "12345".to_owned(),
            text: text.to_owned(),
            sent_at: None,
        }));
    }

    /// Everything that lasts, as text.
    fn records(&self) -> String {
        let records = self.engine.shared_store().records(None, 10_000);
        let lines = records.expect("records").into_iter();
        lines
            .map(|record| String::from_utf8(record.line).expect("text"))
            .collect()
    }
}

/// Whether all that was there is there again as it was, and what is more is nobody.
#[track_caller]
fn assert_as_before(now: &Directory, before: &Directory) {
    for person in before.persons() {
        assert_eq!(now.person(person.id), Some(person));
        let blocks =
            |directory: &Directory| -> Vec<_> { directory.blocks_of(person.id).cloned().collect() };
        assert_eq!(blocks(now), blocks(before), "blocks of {}", person.name);
    }
    for group in before.groups() {
        assert_eq!(now.group(group.id), Some(group));
    }
    let phones = |directory: &Directory| -> Vec<_> { directory.phones().cloned().collect() };
    assert_eq!(phones(now), phones(before));
    for person in now.persons().filter(|one| before.person(one.id).is_none()) {
        assert!(person.erased && person.group.is_none(), "{}", person.name);
        assert!(!person.consent.is_given());
    }
}

#[test]
fn all_is_as_before() {
    let mut office = Office::open();
    office.load(SPRING);
    let before = office.engine.directory().clone();
    office.load(AUTUMN);
    let looked = office.back(BackDeed::Look);
    assert_eq!(looked.fate, ListFate::Good);
    assert_ne!(office.engine.directory(), &before);
    let answer = office.back(BackDeed::Take);
    assert_eq!(answer.fate, ListFate::Stored, "{}", answer.page);
    assert_eq!(answer.page, looked.page);
    insta::assert_snapshot!(answer.page, @r"
    taken back: groups 0
    taken back: people 4
    taken back: phones 3
    taken back: blocks 2
    taken back: facts 5
    stays: group SENA: a group is not taken away, only what is in it
    ");
    assert_as_before(office.engine.directory(), &before);
    let records = office.records();
    for gone in ["Osa Kand", "Keti Rill", "+447700900003", "+447700900012"] {
        assert!(!records.contains(gone), "{gone} is still on record");
    }
    // No trees stand where the list told of some, and the facts say why.
    for block in office.engine.directory().blocks() {
        let planted = office.engine.state(block.id).map(|state| state.planted());
        let expected = if before.block(block.id).is_some() {
            480
        } else {
            0
        };
        assert_eq!(planted.unwrap_or_default(), expected);
    }
    assert_eq!(records.matches("\"taken_back\"").count(), 2);
    assert_eq!(office.back(BackDeed::Take).fate, ListFate::Refused);
    // The same list can come again, and nobody gets the id of who went.
    let went: Vec<_> = office
        .engine
        .directory()
        .persons()
        .map(|one| one.id)
        .collect();
    office.load(AUTUMN);
    let mut people = office.engine.directory().persons();
    let osa = people.find(|one| one.name == "Osa Kand").expect("Osa");
    assert!(!went.contains(&osa.id));
}

#[test]
fn what_others_built_on_stays() {
    let mut office = Office::open();
    office.load(SPRING);
    office.load(AUTUMN);
    office.text("+447700900003", "weeded A");
    let answer = office.back(BackDeed::Take);
    assert_eq!(answer.fate, ListFate::Stored);
    assert!(
        answer.page.contains("stays: Osa Kand: something was told"),
        "{}",
        answer.page
    );
    let directory = office.engine.directory();
    let osa = directory
        .persons()
        .find(|one| one.name == "Osa Kand")
        .expect("Osa");
    assert!(osa.consent.is_given());
    let block = directory.blocks_of(osa.id).next().expect("her block");
    let state = office.engine.state(block.id).expect("a state");
    assert_eq!(state.planted(), 400);
    // The others went.
    assert!(directory.persons().all(|one| one.name != "Keti Rill"));
    let bako = directory
        .persons()
        .find(|one| one.name == "Bako Mirk")
        .expect("Bako");
    assert_eq!(bako.consent, Consent::Unknown);
}

/// Who said STOP since keeps their word; a list must not bring the old state back.
#[test]
fn a_stop_stands() {
    let mut office = Office::open();
    office.load(SPRING);
    office.load(AUTUMN);
    office.text("+447700900002", "STOP");
    let answer = office.back(BackDeed::Take);
    assert!(answer.page.contains("stays: Bako Mirk"), "{}", answer.page);
    let mut people = office.engine.directory().persons();
    let bako = people.find(|one| one.name == "Bako Mirk").expect("Bako");
    assert!(matches!(bako.consent, Consent::Withdrawn { .. }));
}
