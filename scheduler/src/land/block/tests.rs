//! The fold, fact by fact: what each kind of fact changes in a block's state, and what it leaves.

mod jobs;
mod trees;

use std::{
    string::{String, ToString},
    vec,
    vec::Vec,
};

use budwood_parser::{Ailment, Cause, Details, Extent, Kind, Supply, Wetness};
use chrono::{DateTime, NaiveDate, NaiveTime, Utc};

use super::{BlockState, Census, Count, RAINS_KEPT};
use crate::words::{
    event::{Body, Event, Happened, Purpose, Source},
    id::{BlockId, EventId, GroupId, PersonId},
    job::TaskKind,
    rainfall::Rain,
};

const B: BlockId = BlockId(1);

fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

fn noon(text: &str) -> DateTime<Utc> {
    let noon = NaiveTime::from_hms_opt(12, 0, 0).unwrap();
    day(text).and_time(noon).and_utc()
}

fn event(id: u64, known: &str, body: Body) -> Event {
    Event {
        id: EventId(id),
        at: noon(known),
        by: None,
        source: Source::OwnText,
        message: None,
        supersedes: None,
        body,
    }
}

fn told(kind: Kind, on: &str, details: Details) -> Body {
    Body::Reported {
        block: B,
        kind,
        on: Happened::on(day(on)),
        details,
    }
}

fn trees(count: u32) -> Details {
    Details {
        count: Some(count),
        ..Details::default()
    }
}

/// A state after these facts, each known on the day on which it happened.
fn fold(facts: &[(Kind, &str, Details)]) -> BlockState {
    let events: Vec<Event> = (1..)
        .zip(facts)
        .map(|(id, (kind, on, details))| event(id, on, told(*kind, on, details.clone())))
        .collect();
    BlockState::replay(&events)
}

fn bodies(bodies: &[(&str, Body)]) -> BlockState {
    let events: Vec<Event> = (1..)
        .zip(bodies)
        .map(|(id, (known, body))| event(id, known, body.clone()))
        .collect();
    BlockState::replay(&events)
}

fn seen(on: &str, trees: Option<u32>) -> Count {
    Count { on: day(on), trees }
}

#[test]
fn pegs_holes_plants_and_opened_trees_add_up() {
    let plants = |count| Details {
        supply: Some(Supply::Plants),
        ..trees(count)
    };
    let feed = Details {
        supply: Some(Supply::Fertiliser),
        ..trees(9)
    };
    let state = fold(&[
        (Kind::Lined, "2027-02-01", trees(180)),
        (Kind::Lined, "2027-02-02", trees(75)),
        (Kind::Lined, "2027-02-03", Details::default()),
        (Kind::HolesDug, "2027-03-01", trees(200)),
        (Kind::HolesDug, "2027-03-09", trees(50)),
        (Kind::Received, "2027-05-01", plants(300)),
        (Kind::Received, "2027-05-02", feed),
        (Kind::Received, "2027-05-02", trees(7)),
        (Kind::Received, "2027-05-03", plants(20)),
        (Kind::TappingOpened, "2034-05-01", trees(100)),
        (Kind::TappingOpened, "2034-09-01", trees(60)),
    ]);
    assert_eq!((state.pegs, state.holes), (255, 250));
    assert_eq!(state.plants_received, 320);
    assert_eq!(state.opened, 160);
}

#[test]
fn numbers_beyond_all_measure_stay_at_the_most() {
    let most = u32::MAX;
    let state = fold(&[
        (Kind::Lined, "2027-02-01", trees(most)),
        (Kind::Lined, "2027-02-02", trees(most)),
        (Kind::HolesDug, "2027-03-01", trees(most)),
        (Kind::HolesDug, "2027-03-02", trees(most)),
        (Kind::Planted, "2027-06-01", trees(most)),
        (Kind::Planted, "2027-06-02", trees(most)),
        (Kind::Planted, "2029-06-02", trees(most)),
        (Kind::TappingOpened, "2034-05-01", trees(most)),
        (Kind::TappingOpened, "2034-05-02", trees(most)),
    ]);
    assert_eq!((state.pegs, state.holes, state.opened), (most, most, most));
    assert_eq!((state.planted(), state.alive()), (most, most));
}

/// A report that arrives late must not hide a newer one.
#[test]
fn the_last_count_is_the_one_of_the_last_day() {
    let tall: fn(&BlockState) -> Option<Count> = |state| state.tall;
    let branched: fn(&BlockState) -> Option<Count> = |state| state.branched;
    let induced: fn(&BlockState) -> Option<Count> = |state| state.induced;
    for (kind, of) in [
        (Kind::NotBranched, tall),
        (Kind::Branched, branched),
        (Kind::BranchInduction, induced),
    ] {
        let newer = fold(&[
            (kind, "2029-06-01", trees(40)),
            (kind, "2029-05-01", trees(60)),
        ]);
        assert_eq!(of(&newer), Some(seen("2029-06-01", Some(40))), "{kind:?}");
        assert_eq!(newer.last[&kind], seen("2029-06-01", Some(40)));
        assert_eq!(newer.rounds[&kind], 2);
        let again = fold(&[
            (kind, "2029-06-01", trees(40)),
            (kind, "2029-06-01", trees(41)),
        ]);
        assert_eq!(of(&again), Some(seen("2029-06-01", Some(41))), "{kind:?}");
        assert_eq!(again.last[&kind], seen("2029-06-01", Some(41)));
        let all = [again.tall, again.branched, again.induced];
        assert_eq!(all.iter().flatten().count(), 1, "{kind:?} alone");
    }
}

/// Each counts for a round of its own; what else was done is no feeding.
#[test]
fn each_day_of_feeding_is_kept() {
    let none = Details::default;
    let state = fold(&[
        (Kind::Fertilised, "2027-09-09", none()),
        (Kind::Fertilised, "2027-09-01", none()),
        (Kind::Weeded, "2027-09-02", none()),
    ]);
    assert_eq!(state.fed, [day("2027-09-09"), day("2027-09-01")]);
    let said = bodies(&[
        ("2028-06-05", task(TaskKind::Feed, "2028-06-04")),
        ("2028-06-05", task(TaskKind::Mulch, "2028-06-05")),
    ]);
    assert_eq!(said.fed, [day("2028-06-04")]);
}

#[test]
fn sickness_and_harm_are_kept_by_what_they_are() {
    let sick = |ailment, count| Details {
        ailment,
        ..trees(count)
    };
    let harm = |cause, count| Details {
        cause,
        ..trees(count)
    };
    let state = fold(&[
        (Kind::Disease, "2028-06-01", sick(Some(Ailment::Pink), 4)),
        (Kind::Disease, "2028-05-01", sick(Some(Ailment::Pink), 9)),
        (Kind::Disease, "2028-06-02", sick(None, 2)),
        (Kind::Damage, "2028-06-03", harm(Some(Cause::Wind), 5)),
        (Kind::Damage, "2028-06-04", harm(Some(Cause::Wind), 6)),
        (Kind::Damage, "2028-06-05", harm(None, 1)),
    ]);
    assert_eq!(state.sick.len(), 2);
    assert_eq!(state.sick[&Ailment::Pink], seen("2028-06-01", Some(4)));
    assert_eq!(state.sick[&Ailment::Other], seen("2028-06-02", Some(2)));
    assert_eq!(state.harmed.len(), 2);
    assert_eq!(state.harmed[&Cause::Wind], seen("2028-06-04", Some(6)));
    assert_eq!(state.harmed[&Cause::Other], seen("2028-06-05", Some(1)));
    assert_eq!(state.alive(), 0, "sick trees are not dead, nor planted");
}

/// "No sick trees" is said of what was seen before that day, and not of what came after it.
#[test]
fn no_sick_trees_clears_what_was_seen_until_then() {
    let sick = |ailment, count| Details {
        ailment,
        ..trees(count)
    };
    let state = fold(&[
        (
            Kind::Disease,
            "2028-05-01",
            sick(Some(Ailment::WhiteRoot), 3),
        ),
        (Kind::Disease, "2028-06-10", sick(Some(Ailment::Pink), 4)),
        (Kind::Disease, "2028-06-01", sick(None, 0)),
    ]);
    assert_eq!(state.sick[&Ailment::WhiteRoot], seen("2028-06-01", Some(0)));
    assert_eq!(state.sick[&Ailment::Pink], seen("2028-06-10", Some(4)));
}

#[test]
fn girths_and_heights_are_two_lists() {
    let values = |cm: &[f64]| Details {
        values_cm: cm.to_vec(),
        ..Details::default()
    };
    let sample = Details {
        of: Some(30),
        ..trees(12)
    };
    let mut girth = event(1, "2030-03-01", told(Kind::Girth, "2030-03-01", sample));
    girth.source = Source::Visit;
    let height = event(
        2,
        "2030-03-02",
        told(Kind::Height, "2030-03-02", values(&[250.0, 260.0])),
    );
    let state = BlockState::replay([&girth, &height]);
    let counted = Census {
        on: day("2030-03-01"),
        values_cm: vec![],
        reached: Some((12, 30)),
        source: Source::Visit,
    };
    let measured = Census {
        on: day("2030-03-02"),
        values_cm: vec![250.0, 260.0],
        reached: None,
        source: Source::OwnText,
    };
    assert_eq!(
        (state.girths, state.heights),
        (vec![counted], vec![measured])
    );
}

/// Worked by hand: 40, 42 and 50 have the mean 44 and the standard deviation root of 28 = 5.29.
#[test]
fn mean_and_spread_of_a_census() {
    let census = |values_cm: &[f64]| Census {
        on: day("2030-03-01"),
        values_cm: values_cm.to_vec(),
        reached: None,
        source: Source::OwnText,
    };
    let three = census(&[40.0, 42.0, 50.0]);
    assert_eq!(three.mean_cm(), Some(44.0));
    assert!((three.spread().unwrap() - 28.0_f64.sqrt() / 44.0).abs() < 1e-12);
    let one = census(&[40.0]);
    assert_eq!((one.mean_cm(), one.spread()), (Some(40.0), None));
    let none = census(&[]);
    assert_eq!((none.mean_cm(), none.spread()), (None, None));
    assert_eq!(census(&[0.0, 0.0]).spread(), None);
    assert!(census(&[40.0, 42.0]).spread().is_some());
}

#[test]
fn rain_is_kept_by_day_and_only_the_last_reports() {
    let rain = |wetness, mm| Details {
        wetness,
        mm,
        ..Details::default()
    };
    let start = day("2027-04-01");
    let mut facts = Vec::new();
    for days in 0..20_i64 {
        let on = (start + chrono::TimeDelta::days(days)).to_string();
        facts.push((on, rain(None, Some(5.0))));
    }
    facts.push(("2027-03-01".to_string(), rain(Some(Wetness::None), None)));
    facts.swap(18, 19);
    let facts: Vec<_> = facts
        .iter()
        .map(|(on, details)| (Kind::Rain, on.as_str(), details.clone()))
        .collect();
    let state = fold(&facts);
    assert_eq!(state.rains.len(), RAINS_KEPT);
    let last = Rain {
        on: day("2027-04-20"),
        wetness: None,
        mm: Some(5.0),
    };
    assert_eq!(state.rains.last(), Some(&last));
    assert_eq!(state.rains[0].on, day("2027-04-05"));
    assert!(state.last.is_empty() && state.rounds.is_empty());
}

/// "Not done" and rain are no work; all other reports are the last of their kind.
#[test]
fn each_kind_of_work_leaves_its_last_day_and_number() {
    for kind in Kind::ALL.iter().copied() {
        let state = fold(&[(kind, "2028-06-01", trees(3))]);
        let is_work = !matches!(kind, Kind::NotDone | Kind::Rain);
        let last = is_work.then(|| seen("2028-06-01", Some(3)));
        assert_eq!(state.last.get(&kind).copied(), last, "{kind:?}");
        assert_eq!(state.last_of(kind), last.map(|last| last.on), "{kind:?}");
        assert_eq!(state.rounds.get(&kind).copied(), is_work.then_some(1));
        assert_eq!(state.heard_on, Some(day("2028-06-01")), "{kind:?}");
        assert_eq!(state.known_on, Some(day("2028-06-01")), "{kind:?}");
        assert_eq!(state.listed_on, None, "{kind:?}, no list brought it");
        assert_eq!(state.facts, [EventId(1)], "{kind:?}");
    }
}

/// Half a round is none: the job stays open, and the block was heard of. Half of the sick is a count.
#[test]
fn a_part_of_a_round_counts_as_none() {
    for extent in [Extent::Half, Extent::Few] {
        let part = || Details {
            extent: Some(extent),
            ..Details::default()
        };
        let state = fold(&[(Kind::Weeded, "2028-06-01", part())]);
        assert!(state.last.is_empty() && state.rounds.is_empty());
        assert_eq!(state.heard_on, Some(day("2028-06-01")));
        assert!(
            fold(&[(Kind::Fertilised, "2028-06-01", part())])
                .fed
                .is_empty()
        );
        let sick = fold(&[(Kind::Disease, "2028-06-01", part())]);
        assert!(sick.last.contains_key(&Kind::Disease));
    }
}

fn task(task: TaskKind, on: &str) -> Body {
    Body::TaskDone {
        block: B,
        task,
        on: day(on),
    }
}

#[test]
fn a_warning_is_kept_by_its_last_day() {
    let warned = |ailment, on| Body::Warned {
        block: B,
        ailment,
        on: day(on),
    };
    let state = bodies(&[
        ("2028-06-09", warned(Ailment::Pink, "2028-06-09")),
        ("2028-06-10", warned(Ailment::Pink, "2028-06-01")),
        ("2028-06-10", warned(Ailment::LeafSpot, "2028-06-10")),
    ]);
    assert_eq!(state.warned.len(), 2);
    assert_eq!(state.warned[&Ailment::Pink], day("2028-06-09"));
    assert_eq!(state.heard_on, None, "nobody told anything");
}

/// What is said of people and groups, and that a fact was taken back, changes no block.
#[test]
fn what_is_about_no_block_changes_none() {
    let person = PersonId(1);
    let group = GroupId(1);
    let on = day("2028-06-01");
    let how = String::new;
    for body in [
        Body::TakenBack { block: B },
        Body::WindowOpened { group, on },
        Body::PlantingHeld { group, on },
        Body::ConsentGiven {
            person,
            purpose: Purpose::Reminders,
            how: how(),
        },
        Body::ConsentWithdrawn {
            person,
            purpose: Purpose::Buyers,
            how: how(),
        },
        Body::Erased { person },
    ] {
        let state = bodies(&[("2028-06-01", body.clone())]);
        assert_eq!(state, BlockState::default(), "{body:?}");
    }
}

/// What was taken back is left out when the rest is folded anew, and counts nowhere.
#[test]
fn a_fact_that_was_taken_back_leaves_nothing() {
    let planted = event(
        1,
        "2027-06-01",
        told(Kind::Planted, "2027-06-01", trees(100)),
    );
    let dead = event(2, "2027-07-01", told(Kind::Dead, "2027-07-01", trees(60)));
    let mut back = event(3, "2027-07-02", Body::TakenBack { block: B });
    back.supersedes = Some(EventId(2));
    let before = BlockState::replay([&planted]);
    assert_ne!(BlockState::replay([&planted, &dead]), before);
    assert_eq!(BlockState::replay([&planted, &back]), before);
}

#[test]
fn a_block_is_known_from_the_list_that_brought_it_on() {
    let listed = |event: Event| Event {
        source: Source::Sheet,
        ..event
    };
    let late = listed(event(
        1,
        "2028-03-01",
        told(Kind::Planted, "2027-06-01", trees(100)),
    ));
    let sooner = event(2, "2028-02-01", told(Kind::Weeded, "2027-08-01", trees(1)));
    let sooner = listed(sooner);
    let state = BlockState::replay([&late, &sooner]);
    assert_eq!(state.listed_on, Some(day("2028-02-01")));
    assert_eq!(
        state.heard_on,
        Some(day("2027-08-01")),
        "by the day told of"
    );
    // Before it was on the record nobody was quiet; after that the last word counts.
    assert_eq!(state.quiet_since(), Some(day("2028-02-01")));
    let word = event(3, "2028-04-01", told(Kind::Weeded, "2028-04-01", trees(1)));
    let since = BlockState::replay([&late, &sooner, &word]).quiet_since();
    assert_eq!(since, Some(day("2028-04-01")));
    assert_eq!(state.facts, [EventId(1), EventId(2)]);
}

/// Of a span the middle is reckoned with; the farmer was heard on its last day at the latest.
#[test]
fn work_of_last_week_counts_in_the_middle_of_it() {
    let on = Happened {
        from: day("2028-06-01"),
        to: day("2028-06-07"),
    };
    let weeded = Body::Reported {
        block: B,
        kind: Kind::Weeded,
        on,
        details: Details::default(),
    };
    let state = BlockState::replay([&event(1, "2028-06-14", weeded)]);
    assert_eq!(state.last_of(Kind::Weeded), Some(day("2028-06-04")));
    assert_eq!(state.heard_on, Some(day("2028-06-07")));
}
