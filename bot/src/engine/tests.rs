//! Rules of the engine without a conversation: what is answered and said is looked at as a value.
//!
//! The people are those of the demo.

mod figures;
mod table;

use std::{
    collections::{BTreeMap, BTreeSet},
    sync::Arc,
};

use budwood_parser::{Ailment, Details, Entry, Kind, Pack, Query, Reader, Topic, languages};
use budwood_scheduler::{
    BlockId, Body, Calendar, Consent, EventId, Happened, MessageId, Person, PersonId, TextClass,
    decide::Draft, handbook::calendar::profiles, jobs::nudge::Rules, land::block::Living,
};
use chrono::{DateTime, Utc};

use super::{
    Engine, Input, NewSetup, Outcome, Setup,
    deeds::codes::Given,
    memory::world::World,
    questions::codes::Large,
    said::{Said, To},
    step::Step,
    turn::Turn,
    view::View,
};
use crate::{
    store::{Loaded, MemoryStore},
    wording::{self, Key, Texts, Value},
    words::{
        ledger::MonthBudget,
        message::{Deed, Open, Purpose, Question},
        traffic::Inbound,
        ways::Ways,
    },
};

/// A farmer who planted 520 trees two years ago.
const KETI: &str = "Keti Olm";
const KETIS_NUMBER: &str = "+447700900005";
const ADVISERS_NUMBER: &str = "+447700900100";

/// The engine's memory with the people of the demo, at a moment.
struct Valley {
    world: World,
    setup: Setup,
    store: MemoryStore,
    now: DateTime<Utc>,
}

/// What ships, without gateways, and nobody waits for a welcome.
fn built_in() -> Setup {
    let packs = languages::ALL.iter().map(|pack| Pack::parse(pack).unwrap());
    let calendars = profiles::ALL.iter().map(|(name, text)| {
        let calendar = Calendar::parse(text).unwrap();
        ((*name).to_owned(), calendar)
    });
    Setup {
        reader: Reader::new(packs.collect()).unwrap(),
        texts: Texts::built_in().unwrap(),
        calendars: calendars.collect::<BTreeMap<_, _>>(),
        rules: Rules {
            welcomes_a_day: 0,
            ..Rules::standard()
        },
        own_numbers: Vec::new(),
        country: "GB".to_owned(),
        zone: chrono_tz::UTC,
        secret: 0,
        ways: Ways::default(),
        parts_a_day: None,
        month: MonthBudget::default(),
        operator: None,
    }
}

impl Valley {
    fn at(now: &str) -> Self {
        let mut valley = Self {
            world: World::new(Loaded::default()),
            setup: built_in(),
            store: MemoryStore::new(),
            now: now.parse().unwrap(),
        };
        let roll = include_bytes!("../../../demo-data/roll.csv");
        let plan = valley.view().plan_roll(roll);
        assert!(plan.may_be_stored(), "{plan}");
        valley.step().roll(plan.into());
        valley
    }

    fn view(&self) -> View<'_> {
        View {
            world: &self.world,
            setup: &self.setup,
            store: &self.store,
            now: self.now,
        }
    }

    fn step(&mut self) -> Step<'_> {
        Step::new(&mut self.world, &self.setup, &self.store, self.now)
    }

    fn person(&self, name: &str) -> Person {
        let plan = &self.world.directory;
        let group = plan.group_named("KOLO").unwrap();
        let adviser = plan.person(group.adviser.unwrap());
        let mut people = plan.members(group.id).chain(adviser);
        people.find(|person| person.name == name).unwrap().clone()
    }

    /// A text of somebody about their own blocks.
    fn turn(&self, name: &str, text: &str) -> Turn {
        let person = self.person(name).id;
        let mut numbers = self.world.directory.numbers_of(person);
        Turn {
            number: numbers.next().unwrap().to_owned(),
            message: MessageId(1),
            speaker: person,
            target: person,
            text: text.to_owned(),
            sent_at: self.now,
        }
    }
}

fn fact(valley: &Valley, kind: Kind, details: Details) -> Draft {
    Draft {
        kind,
        block: Some("A".to_owned()),
        said: None,
        on: Happened::on(valley.now.date_naive()),
        details,
    }
}

fn dead(valley: &Valley, count: u32) -> Draft {
    let details = Details {
        count: Some(count),
        ..Details::default()
    };
    fact(valley, Kind::Dead, details)
}

fn sick(valley: &Valley) -> Draft {
    let details = Details {
        count: Some(3),
        ailment: Some(Ailment::Pink),
        ..Details::default()
    };
    fact(valley, Kind::Disease, details)
}

fn keys(said: &[Said]) -> Vec<Key> {
    said.iter().map(|said| said.phrase.key).collect()
}

#[test]
fn a_deed_says_and_sends_nothing() {
    let mut valley = Valley::at("2026-11-02T03:00:00Z");
    let turn = valley.turn(KETI, "dead 8 A");
    let facts = [dead(&valley, 8)];
    let mut step = valley.step();
    let done = step.store_facts(&turn, &facts);
    assert_eq!(done.outcome, Outcome::Recorded);
    assert_eq!(keys(&done.said), [Key::ReadBack]);
    assert_eq!(done.said[0].to.number, KETIS_NUMBER);
    assert!(step.change.outbound.is_empty(), "only `post` sends");
    let Some(Value::Spare(forms)) = done.said[0].phrase.arg("stand") else {
        panic!("{:?}", done.said);
    };
    let stand = forms[0].as_ref().unwrap();
    assert_eq!(stand.key, Key::StandAlive);
    let living = Living {
        first: 512,
        filled: 0,
        planted: 520,
        gaps: 8,
    };
    assert_eq!(
        stand.arg("living"),
        Some(&Value::Phrase(wording::living(living)))
    );
    step.post(done.said[0].clone());
    assert_eq!(step.change.outbound.len(), 1);
}

#[test]
fn sickness_is_told_to_the_adviser_unless_they_stopped() {
    let mut valley = Valley::at("2026-11-02T03:00:00Z");
    let turn = valley.turn(KETI, "pink 3 A");
    let facts = [sick(&valley)];
    let said = valley.step().store_facts(&turn, &facts).said;
    assert_eq!(keys(&said), [Key::ReadBack, Key::SickNotice]);
    assert_eq!(said[1].to.number, ADVISERS_NUMBER);
    let about = MessageId(1);
    assert_eq!(said[1].purpose, Purpose::Notice { about });

    let mut adviser = valley.person("Mara Tindel");
    adviser.consent = Consent::Withdrawn {
        on: valley.now.date_naive(),
        how: "text STOP".to_owned(),
    };
    valley.world.put_person(adviser);
    let said = valley.step().store_facts(&turn, &facts).said;
    assert_eq!(keys(&said), [Key::ReadBack]);
}

#[test]
fn young_trees_may_not_be_tapped() {
    let valley = Valley::at("2026-11-02T03:00:00Z");
    let keti = valley.person(KETI);
    let query = Query {
        topic: Topic::MayI,
        group: None,
        member: None,
        block: None,
        kind: Some(Kind::TappingOpened),
        area: None,
        period_days: None,
        number: None,
        yes: None,
        language: None,
        material: None,
        entry: Entry::default(),
    };
    let answer = valley.view().farmer_answer(&keti, &query);
    assert_eq!(answer.key, Key::MayTapNo);
    let rule = &valley.setup.calendars["fao"].opening;
    assert_eq!(answer.arg("girth"), Some(&Value::Figure(rule.girth_cm)));
    assert_eq!(answer.arg("adviser"), Some(&Value::name("Mara")));
}

#[test]
fn who_is_erased_hears_it_in_their_language_and_is_forgotten() {
    let mut valley = Valley::at("2026-11-02T03:00:00Z");
    let keti = valley.person(KETI);
    let turn = valley.turn(KETI, "yes 471147");
    let mut step = valley.step();
    let talk = step.talk(KETIS_NUMBER);
    talk.language = Some("fr".to_owned());
    talk.open = Some(Open {
        at: turn.sent_at,
        message: turn.message,
        rest: None,
        person: Some(keti.id),
        question: Question::Code {
            code: "471147".to_owned(),
            deed: Deed::Erase { person: keti.id },
        },
    });
    let Some(Given::Done(done)) = step.code_given(&turn, &keti) else {
        panic!("nothing was done");
    };
    assert_eq!(done.outcome, Outcome::DoneWithCode);
    assert_eq!(keys(&done.said), [Key::Erased]);
    let to = To {
        number: KETIS_NUMBER.to_owned(),
        language: Some("fr".to_owned()),
    };
    assert_eq!(done.said[0].to, to);
    for said in done.said {
        step.post(said);
    }
    assert!(step.view().talk(KETIS_NUMBER).is_none());
    let (change, _) = step.finish();
    assert_eq!(change.gone_phones, [KETIS_NUMBER]);
    assert_eq!(change.outbound.len(), 1, "the last word goes");
    assert!(change.talks.is_empty(), "{:?}", change.talks);
}

#[test]
fn a_wrong_code_does_nothing() {
    let mut valley = Valley::at("2026-11-02T03:00:00Z");
    let keti = valley.person(KETI);
    let turn = valley.turn(KETI, "yes 100000");
    let mut step = valley.step();
    let large = Large {
        deed: Deed::Erase { person: keti.id },
        phrase: Key::EraseAsk.into(),
    };
    step.ask_code(&turn, large);
    let Some(Given::Done(done)) = step.code_given(&turn, &keti) else {
        panic!("nothing was done");
    };
    assert_eq!(done.outcome, Outcome::WrongCode);
    assert!(step.change.events.is_empty());
}

#[test]
fn each_nudge_is_a_fact_too() {
    let mut valley = Valley::at("2026-11-02T03:00:00Z");
    valley.now = valley.world.due.first().unwrap().0;
    let mut step = valley.step();
    let said = step.wake();
    assert!(!said.is_empty(), "something is due");
    let told: Vec<&Body> = step.change.events.iter().map(|fact| &fact.body).collect();
    for said in &said {
        let Purpose::Nudge { block, task, due } = said.purpose else {
            panic!("{said:?}");
        };
        let on = step.now.with_timezone(&chrono_tz::Asia::Jakarta);
        let on = on.date_naive();
        let lead = Body::Nudged {
            block,
            task,
            on,
            due,
        };
        assert!(told.contains(&&lead), "{lead:?}");
    }
    let owners = |blocks: &mut dyn Iterator<Item = BlockId>| -> BTreeSet<PersonId> {
        blocks
            .filter_map(|block| Some(step.world.directory.block(block)?.owner))
            .collect()
    };
    let told = owners(&mut told.iter().filter_map(|body| body.block()));
    let texted = owners(&mut said.iter().filter_map(|said| match said.purpose {
        Purpose::Nudge { block, .. } => Some(block),
        Purpose::Welcome { .. }
        | Purpose::Answer { .. }
        | Purpose::Notice { .. }
        | Purpose::Announcement { .. }
        | Purpose::Service { .. } => None,
    }));
    assert_eq!(
        told, texted,
        "a fact for who was texted, and for nobody else"
    );
}

/// Looks and rounds of a month are one text, and one word answers for all of them.
#[test]
fn a_field_round_is_one_text_and_one_answer() {
    let mut valley = Valley::at("2026-11-02T03:00:00Z");
    let keti = valley.person(KETI).id;
    let told = loop {
        valley.now = valley.world.due.first().unwrap().0;
        let mut step = valley.step();
        let said = step.wake();
        let is_hers = |said: &&Said| said.to.number == KETIS_NUMBER;
        let hers = said.iter().find(is_hers);
        if hers.is_some_and(|said| said.phrase.key == Key::FieldRound) {
            let told = step.change.events.iter().filter_map(|fact| {
                let Body::Nudged { block, task, .. } = fact.body else {
                    return None;
                };
                let owner = step.world.directory.block(block)?.owner;
                (owner == keti).then_some((block, task))
            });
            break told.collect::<Vec<_>>();
        }
        assert!(
            valley.now.to_rfc3339().as_str() < "2027-11",
            "no round in a year"
        );
    };
    assert!(told.len() > 1, "{told:?}");
    assert!(
        told.iter()
            .all(|(_, task)| task.class() == TextClass::Round)
    );
    let turn = valley.turn(KETI, "done");
    let mut step = valley.step();
    let done = step.nudge_done(&turn);
    assert_eq!(done.outcome, Outcome::Recorded);
    assert_eq!(step.change.events.len(), told.len());
    for (block, task) in told {
        let today = step.now.date_naive();
        let open = step.view().tasks_of(block, today);
        let is_due = open.iter().any(|one| one.kind == task && one.due <= today);
        assert!(!is_due, "{} is still due", task.name());
    }
    let again = step.nudge_done(&turn);
    assert_eq!(again.outcome, Outcome::NothingWasAsked);
}

#[test]
fn a_setup_is_taken_over_whole_or_not_at_all() {
    let valley = Valley::at("2026-09-14T08:00:00Z");
    let Valley {
        world, setup, now, ..
    } = valley;
    let without_calendars = Valley::at("2026-09-14T08:00:00Z").setup;
    let without_calendars = Setup {
        calendars: BTreeMap::new(),
        ..without_calendars
    };
    let early = Valley::at("2026-09-14T08:00:00Z").setup;
    let window_from = "07:00:00".parse().unwrap();
    let early = Setup {
        rules: Rules {
            window_from,
            ..Rules::standard()
        },
        ..early
    };
    let mut engine = Engine {
        world,
        setup: Arc::new(setup),
        store: Arc::new(MemoryStore::new()),
    };
    let mut take = |setup: Setup| {
        let told = engine.handle(vec![Input::Setup(NewSetup(Arc::new(setup)))], now);
        (told.unwrap().remove(0).refused, engine.next_wake())
    };
    let (refused, before) = take(without_calendars);
    assert!(refused.is_some_and(|why| why.contains("KOLO")));
    let (refused, after) = take(early);
    assert_eq!(refused, None);
    assert!(after < before, "{after:?} is not before {before:?}");
}

#[test]
fn a_fact_that_cannot_be_read_ends_the_step() {
    for is_whole in [true, false] {
        let mut valley = Valley::at("2026-11-02T03:00:00Z");
        let turn = valley.turn(KETI, "dead 8 A");
        let facts = [dead(&valley, 8)];
        valley.step().store_facts(&turn, &facts);
        let keti = valley.person(KETI).id;
        let block = valley.view().block_named(keti, Some("A")).unwrap();
        if !is_whole {
            let state = valley.world.states.get_mut(&block).unwrap();
            state.facts.insert(0, EventId(9_999));
        }
        let mut engine = Engine {
            world: valley.world,
            setup: Arc::new(valley.setup),
            store: Arc::new(valley.store),
        };
        let undo = Input::Text(Inbound {
            gateway: "line".to_owned(),
            gateway_id: None,
            from: KETIS_NUMBER.to_owned(),
            to: String::new(),
            text: "undo".to_owned(),
            sent_at: None,
        });
        let handled = engine.handle(vec![undo], valley.now);
        assert_eq!(handled.is_ok(), is_whole, "{handled:?}");
    }
}
