//! A stand of two years comes on the record: what lies before is not known, and so never late.

use std::{collections::BTreeMap, vec, vec::Vec};

use budwood_parser::Kind;
use chrono::{Days, NaiveDate};

use super::given::{BLOCK, Given, day, fao, given};
use crate::{
    jobs::nudge::is_late,
    land::enrolment::{Enrolment, Known},
    words::{
        event::{Body, Event, Happened, Source},
        id::EventId,
        job::TaskKind::{self, Feed, OpenRest, RootCheck, SurvivalCheck, Weed},
    },
};

const ON: &str = "2027-06-10";

fn enrolled(known: Known) -> Given {
    let enrolment = Enrolment {
        block: BLOCK,
        on: day(ON),
        known,
    };
    let at = day(ON).and_hms_opt(9, 0, 0).unwrap().and_utc();
    let event = |(id, body): (u64, Body)| Event {
        id: EventId(id),
        at,
        by: None,
        source: Source::Sheet,
        message: None,
        supersedes: None,
        body,
    };
    let mut given = given(fao(), "").rains();
    given.events = (1..).zip(enrolment.facts()).map(event).collect();
    given
}

fn two_years_old() -> Known {
    Known {
        planted: Some((Happened::on(day("2025-06-01")), 480)),
        ..Known::default()
    }
}

#[test]
fn what_was_known_becomes_facts() {
    let known = Known {
        alive: Some((457, Some(day("2026-12-01")))),
        girths: Some((day("2027-05-01"), vec![20.0, 22.0])),
        opened: Some((day("2027-06-01"), 12)),
        last: BTreeMap::from([(Kind::Weeded, day("2027-05-20"))]),
        ..two_years_old()
    };
    let state = enrolled(known).state();
    assert_eq!(state.planted_on(), Some(day("2025-06-01")));
    let living = state.living();
    assert_eq!((living.first, living.planted, living.gaps), (457, 480, 23));
    assert_eq!(state.last_of(Kind::Dead), Some(day("2026-12-01")));
    assert_eq!(state.last_of(Kind::Weeded), Some(day("2027-05-20")));
    assert_eq!(state.girths[0].mean_cm(), Some(21.0));
    assert_eq!((state.opened, state.listed_on), (12, Some(day(ON))));
    assert_eq!(enrolled(Known::default()).state().listed_on, None);
}

/// Trees that were counted on a day that nobody remembers were counted by the day of enrolment, and
/// nothing was known later than that.
#[test]
fn what_was_known_was_known_on_that_day() {
    let known = Known {
        alive: Some((470, None)),
        last: BTreeMap::from([(Kind::Weeded, day("2028-01-01"))]),
        ..two_years_old()
    };
    let state = enrolled(known).state();
    assert_eq!(state.last_of(Kind::Dead), Some(day(ON)));
    assert_eq!(state.last_of(Kind::Weeded), Some(day(ON)));
    // More alive than planted: no tree died.
    let more = Known {
        alive: Some((500, None)),
        ..two_years_old()
    };
    assert_eq!(enrolled(more).state().dead(), 0);
}

#[test]
fn nothing_is_late_or_lost_on_the_day_of_enrolment_and_nobody_quiet() {
    let known = Known {
        alive: Some((400, Some(day("2026-02-01")))),
        last: BTreeMap::from([(Kind::Fertilised, day("2026-06-15"))]),
        ..two_years_old()
    };
    for known in [two_years_old(), known] {
        let given = enrolled(known);
        let state = given.state();
        for task in given.tasks_on(day(ON)) {
            assert!(task.due >= day(ON), "{task:?}");
            assert!(!is_late(&task, day(ON)), "{task:?}");
        }
        let feed = given.at(ON, Feed).unwrap();
        assert_eq!(feed.figures.lost, []);
        assert_eq!(state.quiet_since(), Some(day(ON)));
    }
}

/// FAO: in the third year weeds every 73 days, roots twice a year.
#[test]
fn rounds_count_from_the_day_of_enrolment() {
    let due = |known: Known, kind: TaskKind| enrolled(known).due(ON, kind);
    let after = |days: u64| Some(std::format!("{}", day(ON) + Days::new(days)));
    let every = |kind| {
        let due: NaiveDate = due(two_years_old(), kind).unwrap().parse().unwrap();
        (due - day(ON)).num_days()
    };
    assert!(every(Weed) >= 21, "{}", every(Weed));
    assert!(every(RootCheck) >= 61, "{}", every(RootCheck));
    // A round that falls on the very day is asked for on it.
    let three_weeks_old = Known {
        planted: Some((Happened::on(day("2027-05-20")), 480)),
        ..Known::default()
    };
    assert_eq!(due(three_weeks_old, Weed), after(0));
    // What is known to be long ago is due at once, and not late before it was asked for.
    let weeded = Known {
        last: BTreeMap::from([(Kind::Weeded, day("2026-12-01"))]),
        ..two_years_old()
    };
    assert_eq!(due(weeded, Weed), after(0));
    // The round of this season is asked for; nobody counts trees of two years.
    assert_eq!(due(two_years_old(), Feed), after(0));
    assert_eq!(due(two_years_old(), SurvivalCheck), None);
}

#[test]
fn a_tapped_stand_is_asked_for_its_other_trees_only() {
    let known = Known {
        planted: Some((Happened::on(day("2019-06-01")), 480)),
        opened: Some((day("2027-02-01"), 400)),
        ..Known::default()
    };
    let kinds: Vec<TaskKind> = enrolled(known)
        .tasks_on(day(ON))
        .iter()
        .map(|task| task.kind)
        .collect();
    assert_eq!(kinds, [OpenRest, TaskKind::HandOver]);
}
