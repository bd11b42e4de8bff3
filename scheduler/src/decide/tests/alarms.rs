//! What a person must see, and what is told beside it.
//!
//! The rules are the project's own policy for texts.

use std::vec;

use budwood_parser::{Act, Alarm, Kind, Reading, Sender, Stance};

use super::given::{check, count, given, report};
use crate::decide::Concern;

#[test]
fn grief_and_danger_come_before_everything() {
    let mut reading = Reading {
        reports: vec![report(Kind::Dead, "A", count(1))],
        acts: vec![Act::Stop],
        alarm: Some(Alarm::Grief),
        ..Reading::default()
    };
    check(&given(), &reading, "person, grief");
    reading.alarm = Some(Alarm::Danger);
    check(&given().from(Sender::Unknown), &reading, "person, danger");
}

/// A question or an alarm does not silence the reports beside it; a stranger reports nothing.
#[test]
fn reports_beside_a_question_are_told_too() {
    let mut reading = Reading {
        reports: vec![report(Kind::Dead, "A", count(3))],
        alarm: Some(Alarm::Illness),
        both: true,
        ..Reading::default()
    };
    let then = "record dead 3 A; person, illness";
    check(&given(), &reading, then);
    check(&given().from(Sender::Adviser), &reading, then);
    let stranger = given().from(Sender::Unknown);
    check(&stranger, &reading, "person, illness");
    let with_plan = Reading {
        stances: vec![Stance::Plan],
        ..reading.clone()
    };
    check(&given(), &with_plan, "person, illness");
    reading.reports.clear();
    check(&given(), &reading, "person, illness");
    let stop = Reading {
        alarm: None,
        acts: vec![Act::Stop],
        reports: vec![report(Kind::Dead, "A", count(3))],
        ..reading
    };
    check(&given(), &stop, "stop");
}

/// Records keep a concern by its name.
#[test]
fn a_concern_is_found_by_its_name() {
    let others = [Concern::CallMe, Concern::Question, Concern::Unclear];
    let alarms = Alarm::ALL.iter().map(|alarm| Concern::Alarm(*alarm));
    for concern in alarms.chain(others) {
        assert_eq!(Concern::from_name(concern.name()), Some(concern));
    }
    assert_eq!(Concern::from_name("nothing"), None);
}

/// Fire, a bite, an attack, an illness: somebody may die of it. The rest can wait for the morning.
#[test]
fn a_danger_is_what_somebody_may_die_of() {
    for alarm in Alarm::ALL {
        let expected = matches!(
            alarm,
            Alarm::Fire | Alarm::Snake | Alarm::Danger | Alarm::Illness
        );
        assert_eq!(Concern::Alarm(*alarm).is_danger(), expected, "{alarm:?}");
    }
    for other in [Concern::CallMe, Concern::Question, Concern::Unclear] {
        assert!(!other.is_danger());
    }
}
