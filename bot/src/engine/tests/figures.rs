//! What answers show: one number wherever it is asked for, and what follows from it.

use budwood_parser::{Details, Entry, Kind, Query, Topic};
use budwood_scheduler::{TaskKind, land::block::Living};
use chrono::TimeDelta;

use super::{ADVISERS_NUMBER, KETI, Valley, dead, fact, keys, sick};
use crate::wording::{self, Key, Phrase, Value};

fn asked(topic: Topic, group: Option<&str>) -> Query {
    Query {
        topic,
        group: group.map(str::to_owned),
        member: None,
        block: None,
        kind: None,
        area: None,
        period_days: None,
        number: None,
        yes: None,
        language: None,
        material: None,
        entry: Entry::default(),
    }
}

fn count(phrase: &Phrase, name: &str) -> i64 {
    match phrase.arg(name) {
        Some(Value::Count(count)) => *count,
        other => panic!("{name} of {phrase:?} is {other:?}"),
    }
}

/// The text within a text.
fn inner(value: &Value) -> Phrase {
    let Value::Phrase(phrase) = value else {
        panic!("{value:?}");
    };
    phrase.clone()
}

/// How many a list names, and the phrases in it.
fn listed(phrase: &Phrase, name: &str) -> Vec<Phrase> {
    let Some(Value::List(items)) = phrase.arg(name) else {
        panic!("{name} of {phrase:?}");
    };
    items.iter().map(inner).collect()
}

/// 480 trees of which 23 died and were filled in: told one way by whoever is asked.
#[test]
fn living_trees_are_told_one_way_everywhere() {
    let mut valley = Valley::at("2026-11-02T03:00:00Z");
    let turn = valley.turn(KETI, "dead 23, filled 20");
    let filled = Details {
        count: Some(20),
        ..Details::default()
    };
    let facts = [dead(&valley, 23), fact(&valley, Kind::Replaced, filled)];
    let said = valley.step().store_facts(&turn, &facts).said;
    let living = Value::Phrase(wording::living(Living {
        first: 497,
        filled: 20,
        planted: 520,
        gaps: 3,
    }));
    let Some(Value::Spare(forms)) = said[0].phrase.arg("stand") else {
        panic!("{said:?}");
    };
    assert_eq!(forms[0].as_ref().unwrap().arg("living"), Some(&living));
    let (keti, mara) = (valley.person(KETI), valley.person("Mara Tindel"));
    let view = valley.view();
    let own = view.farmer_answer(&keti, &asked(Topic::Status, None));
    assert_eq!(listed(&own, "blocks")[0].arg("living"), Some(&living));
    let member = Query {
        member: Some("Keti".to_owned()),
        ..asked(Topic::Member, None)
    };
    let member = view.adviser_answer(&mara, &member, "").unwrap();
    assert_eq!(listed(&member, "blocks")[0].arg("living"), Some(&living));
    let gaps = view.adviser_answer(&mara, &asked(Topic::Gaps, None), "");
    assert_eq!(count(&gaps.unwrap(), "gaps"), 3);
}

#[test]
fn no_figure_differs_between_two_answers() {
    let mut valley = Valley::at("2027-02-02T03:00:00Z");
    let turn = valley.turn(KETI, "dead 23, pink 3");
    let facts = [dead(&valley, 23), sick(&valley)];
    valley.step().store_facts(&turn, &facts);
    let mara = valley.person("Mara Tindel");
    let ask = |topic| {
        let query = asked(topic, Some("KOLO"));
        valley.view().adviser_answer(&mara, &query, "").unwrap()
    };
    let status = ask(Topic::Status);
    assert_eq!(count(&status, "sick"), 1);
    assert_eq!(listed(&ask(Topic::Sick), "people").len(), 1);
    let quiet = listed(&ask(Topic::Quiet), "people").len();
    assert!(quiet > 0);
    assert_eq!(count(&status, "quiet"), i64::try_from(quiet).unwrap());
    let late = listed(&ask(Topic::Late), "people");
    let in_status = status.arg("late").map(inner);
    let Some(Value::Jobs(in_status)) = in_status.as_ref().and_then(|late| late.arg("tasks")) else {
        panic!("{status:?}");
    };
    let told: i64 = in_status
        .iter()
        .map(|job| count(&inner(job), "count"))
        .sum();
    assert!(told > 0);
    assert_eq!(told, i64::try_from(late.len()).unwrap());
    let gaps = ask(Topic::Gaps);
    let of_each = listed(&gaps, "people");
    let of_each: i64 = of_each.iter().map(|one| count(one, "gaps")).sum();
    assert_eq!((count(&gaps, "gaps"), of_each), (23, 23));
}

/// Measured by the farmer on all trees: the adviser hears of it once, and looks before anyone taps.
#[test]
fn the_adviser_is_told_once_that_a_stand_is_thick_enough() {
    let mut valley = Valley::at("2031-11-02T03:00:00Z");
    let turn = valley.turn(KETI, "girth A");
    let girths = |values_cm| Details {
        values_cm,
        ..Details::default()
    };
    let all = fact(&valley, Kind::Girth, girths(vec![58.0; 520]));
    let said = valley.step().store_facts(&turn, &[all]).said;
    assert_eq!(keys(&said), [Key::ReadBack, Key::OpenNotice]);
    assert_eq!(said[1].to.number, ADVISERS_NUMBER);
    assert_eq!(said[1].phrase.arg("share"), Some(&Value::Figure(100.0)));
    valley.now += TimeDelta::days(100);
    let turn = valley.turn(KETI, "girth A");
    let few = fact(&valley, Kind::Girth, girths(vec![48.0; 10]));
    let said = valley.step().store_facts(&turn, &[few]).said;
    assert!(!keys(&said).contains(&Key::OpenNotice), "it is told once");
    let tapping = Query {
        kind: Some(Kind::TappingOpened),
        ..asked(Topic::MayI, None)
    };
    let keti = valley.person(KETI);
    let answer = valley.view().farmer_answer(&keti, &tapping);
    assert_eq!(
        answer.key,
        Key::MayTapCheck,
        "a small sample takes nothing back"
    );
}

#[test]
fn work_that_is_due_may_be_done() {
    let mut valley = Valley::at("2026-11-02T03:00:00Z");
    let keti = valley.person(KETI);
    let weeding = Query {
        kind: Some(Kind::Weeded),
        ..asked(Topic::MayI, None)
    };
    let due = valley.view().jobs_of(keti.id);
    let weed = due.iter().find(|(_, task)| task.kind == TaskKind::Weed);
    let due = weed.expect("weeding is asked for").1.due;
    let answer = |valley: &Valley| valley.view().farmer_answer(&keti, &weeding).key;
    valley.now = due.and_hms_opt(12, 0, 0).unwrap().and_utc();
    assert_eq!(answer(&valley), Key::MayYes);
    valley.now -= TimeDelta::days(10);
    assert_eq!(answer(&valley), Key::WhenTask);
    let clearing = Query {
        kind: Some(Kind::Cleared),
        ..asked(Topic::MayI, None)
    };
    let answer = valley.view().farmer_answer(&keti, &clearing);
    assert_eq!(answer.key, Key::MayOther);
}
