//! Rounds of feeding in the rains: none is asked for too late in them, and none is lost silently.

use std::{
    collections::BTreeSet,
    format,
    string::{String, ToString},
    vec,
    vec::Vec,
};

use chrono::{Days, NaiveDate};
use proptest::prelude::*;

use super::given::{Given, RAINS, day, fact, fao, given, indonesia};
use crate::{
    handbook::calendar::{Calendar, profiles},
    jobs::{
        feed::{Portion, Ration},
        task::{Lost, LostRound, case::Case, feeding},
    },
    land::block::BlockState,
    words::{
        event::{Event, Source},
        job::TaskKind::{Feed, Weed},
        season::Season,
    },
};

/// Rain twice a year, as near the equator.
const TWICE: Season = Season {
    rains_start: Some((3, 15)),
    rains_end: Some((7, 10)),
    second_rains: Some(((9, 15), (11, 30))),
    window_opened: None,
};

fn fed(given: &mut Given, on: NaiveDate) {
    let id = given.events.len() as u64 + 1;
    given.events.push(fact(id, &format!("{on} fertilised")));
}

fn lost(given: &Given, today: &str) -> Vec<LostRound> {
    lost_on(given, day(today))
}

fn lost_on(given: &Given, today: NaiveDate) -> Vec<LostRound> {
    let state = given.state();
    let case = case(given, &state, today);
    feeding::lost(&case, &feeding::placed(&case).unwrap())
}

fn case<'a>(given: &'a Given, state: &'a BlockState, today: NaiveDate) -> Case<'a> {
    Case {
        block: &given.block,
        state,
        season: &given.season,
        calendar: &given.calendar,
        today,
    }
}

/// The round of March falls in the dry and waits for 20 May. Given in June, July or August it is
/// still that round, and the round of September is asked for in this year's rains.
#[test]
fn a_round_that_waited_for_rain_does_not_count_for_the_next() {
    let next = |fed_on: &str| {
        let facts = format!("2027-06-01 planted 600\n2027-09-05 fertilised\n{fed_on} fertilised");
        let given = given(fao(), &facts).rains();
        let task = given.at(fed_on, Feed).unwrap();
        (task.due.to_string(), task.figures.round)
    };
    assert_eq!(next("2028-05-20"), ("2028-09-01".into(), Some(3)));
    assert_eq!(next("2028-06-02"), ("2028-09-02".into(), Some(3)));
    assert_eq!(next("2028-06-20"), ("2028-09-10".into(), Some(3)));
    // Four weeks after a very late one, while the rains leave time for it.
    assert_eq!(next("2028-08-31"), ("2028-09-28".into(), Some(3)));
}

/// Two products of one round may be spread on two days.
#[test]
fn a_round_in_two_goes_is_one_round() {
    let facts = "2027-06-01 planted 600\n2027-09-01 fertilised\n2027-09-09 fertilised\n\
                 2028-05-20 fertilised\n2028-05-27 fertilised";
    let given = given(fao(), facts).rains();
    assert_eq!(given.at("2028-06-01", Feed).unwrap().figures.round, Some(3));
    assert_eq!(lost(&given, "2028-06-01"), []);
}

/// What is given at planting goes into the hole and is no round.
#[test]
fn feeding_at_planting_is_no_round() {
    let facts = "2027-06-01 planted 600\n2027-06-01 fertilised";
    let given = given(fao(), facts).rains();
    assert_eq!(given.at("2027-06-02", Feed).unwrap().figures.round, Some(1));
}

/// "Done", said to the reminder, is a round as a report is.
#[test]
fn a_round_said_to_be_done_is_given() {
    let facts = "2027-06-01 planted 600\n2027-09-03 done feed";
    let given = given(fao(), facts).rains();
    assert_eq!(given.at("2027-09-04", Feed).unwrap().figures.round, Some(2));
}

#[test]
fn ten_rounds_in_five_years_for_who_plants_in_the_first_weeks_of_rain() {
    for planted_after in 0..28 {
        for delay in [0, 5, 14, 20] {
            let planted_on = day("2027-05-20") + Days::new(planted_after);
            let mut given = given(fao(), &format!("{planted_on} planted 600")).rains();
            let played = play(&mut given, planted_on, delay);
            let given_rounds = played.given.iter().filter(|round| **round <= 10).count();
            assert_eq!(
                given_rounds, 10,
                "{planted_on} and {delay} days: {played:?}"
            );
        }
    }
}

/// Planted in August, the round of month 3 would come in the dry: it is brought forward where the
/// trees are old enough, and else waits for the rains.
#[test]
fn a_round_of_the_dry_is_brought_forward_or_waits() {
    let due = |planted: &str| {
        let given = given(fao(), &format!("{planted} planted 600")).rains();
        given.due(planted, Feed).unwrap()
    };
    assert_eq!(due("2027-07-10"), "2027-09-10", "the last days of room");
    assert_eq!(due("2027-08-01"), "2027-09-16", "half of the three months");
    assert_eq!(due("2027-08-20"), "2028-05-20");
    // What is brought forward is still the dose of its round.
    let early = given(fao(), "2027-08-01 planted 600").rains();
    let figures = early.at("2027-09-16", Feed).unwrap().figures;
    assert_eq!(figures.trees, Some(600));
    assert!(figures.kilograms_in_all() > 0.0);
}

/// Rain twice a year: a round that falls between the two rains goes to the nearer of them, which are
/// 10 June, the last day of room in the first, and 15 September.
#[test]
fn a_round_between_two_rains_goes_to_the_nearer() {
    let next = |planted: &str| {
        let facts = format!("{planted} planted 600\n2027-03-15 fertilised");
        let mut given = given(fao(), &facts);
        given.season = TWICE;
        let task = given.at("2027-03-16", Feed).unwrap();
        assert_eq!(task.figures.round, Some(2));
        task.due.to_string()
    };
    // Month 9 is 1 August, 52 days after the one and 45 before the other.
    assert_eq!(next("2026-11-01"), "2027-09-15");
    // 28 July: 48 and 49. Half of the days from 15 March to then is 21 May.
    assert_eq!(next("2026-10-28"), "2027-05-21");
}

/// Rain from 1 April to 10 June, and a window that the adviser opened so late that these rains leave
/// no month before their last: a round of the winter waits for the next rains all the same.
#[test]
fn rains_that_began_late_leave_no_room() {
    let mut given = given(fao(), "2027-09-01 planted 600");
    given.season.rains_start = Some((4, 1));
    given.season.rains_end = Some((6, 10));
    given.season.window_opened = Some(day("2027-05-16"));
    assert_eq!(given.due("2027-09-02", Feed).as_deref(), Some("2028-04-01"));
}

/// A round of September may be given until the rains are over, and is told of when it was done later:
/// in the first half of the time to the next one, 20 May, it is that round, late; in the second half
/// it is the next one, early.
#[test]
fn a_very_late_round_counts_until_half_ways_to_the_next() {
    let rounds = |fed_on: &str| {
        let facts = format!("2027-06-01 planted 600\n{fed_on} fertilised");
        let given = given(fao(), &facts).rains();
        let lost: Vec<u32> = lost(&given, "2028-05-21")
            .iter()
            .map(|lost| lost.round)
            .collect();
        (lost, given.at("2028-05-21", Feed).unwrap().figures.round)
    };
    assert_eq!(rounds("2027-11-10"), (vec![], Some(2)));
    assert_eq!(rounds("2028-01-10"), (vec![], Some(2)));
    assert_eq!(rounds("2028-01-11"), (vec![1], Some(3)));
    assert_eq!(rounds("2028-02-10"), (vec![1], Some(3)));
}

/// The plan of a block needs no more rounds than the first one to come.
#[test]
fn rounds_are_placed_as_far_as_the_first_to_come() {
    let last = |facts: &str, today: &str| {
        let given = given(fao(), facts).rains();
        let state = given.state();
        let rounds = feeding::placed(&case(&given, &state, day(today)));
        rounds.unwrap().last().unwrap().number
    };
    let planted = "2027-06-01 planted 600\n";
    assert_eq!(last(planted, "2027-06-02"), 1);
    assert_eq!(last(planted, "2027-09-01"), 2, "the first has come");
    let early = format!("{planted}2027-08-20 fertilised");
    assert_eq!(last(&early, "2027-08-21"), 2, "the first was given");
}

#[test]
fn rounds_that_were_not_given_are_told() {
    let never = given(fao(), "2027-06-01 planted 600").rains();
    assert_eq!(lost(&never, "2027-10-01"), []);
    let first = LostRound {
        round: 1,
        on: day("2027-09-01"),
        until: day("2027-10-01"),
        why: Lost::NotGiven,
    };
    assert_eq!(lost(&never, "2027-10-02"), [first]);
    let second = LostRound {
        round: 2,
        on: day("2028-03-01"),
        until: day("2028-08-31"),
        why: Lost::NotGiven,
    };
    assert_eq!(lost(&never, "2028-09-01"), [first, second]);
    let task = never.at("2028-09-01", Feed).unwrap();
    assert_eq!(task.figures.lost, [first, second], "beside the next round");
    // Rain for five weeks leaves a few days in each year.
    let mut short = given(indonesia(), "2027-06-01 planted 600");
    short.season = Season {
        rains_start: Some((6, 1)),
        rains_end: Some((7, 5)),
        ..Season::default()
    };
    let told = lost(&short, "2029-06-01");
    assert!(told.iter().any(|lost| lost.why == Lost::NoRoom), "{told:?}");
}

#[test]
fn rounds_before_a_block_was_known_are_not_lost() {
    let mut late = given(fao(), "2027-06-01 planted 600").rains();
    late.events[0].at = "2029-01-10T12:00:00Z".parse().unwrap();
    late.events[0].source = Source::Sheet;
    let rounds: Vec<u32> = lost(&late, "2029-10-02")
        .iter()
        .map(|lost| lost.round)
        .collect();
    assert_eq!(rounds, [4, 5], "of May and September 2029");
}

/// Trees of the text are those that the grams are for, product by product; trees times grams is
/// kilograms.
#[test]
fn trees_times_grams_is_kilograms() {
    let facts = "2027-06-01 planted 600\n2027-07-01 dead 120\n2028-05-25 replaced 100";
    let task = given(indonesia(), facts).at("2028-09-02", Feed).unwrap();
    let figures = task.figures;
    assert_eq!(figures.trees, Some(480));
    assert_eq!(figures.grams_per_tree, Some(362.5));
    assert_eq!(figures.kilograms, Some(174.0));
    // The Indonesian table in two rounds a year: year 2 for the first trees, year 1 for the young.
    let lines = |ration: &Ration| {
        let line = |one: &Portion| (one.product.clone(), one.grams_per_tree, one.kilograms);
        (
            ration.trees,
            ration.products.iter().map(line).collect::<Vec<_>>(),
        )
    };
    let [first, young] = figures.rations.as_slice() else {
        panic!("{:?}", figures.rations);
    };
    let total = |ration: &Ration| ration.products.iter().map(|one| one.kilograms).sum::<f64>();
    assert_eq!(lines(first).0, 480);
    assert_eq!(lines(young).0, 100);
    assert!(
        lines(first)
            .1
            .contains(&(String::from("urea"), 125.0, 60.0))
    );
    assert!((total(first) - 174.0).abs() < 1e-9);
    assert!((total(young) - 26.0).abs() < 1e-9);
    assert_eq!(figures.trees_fed(), 580);
    assert!((figures.kilograms_in_all() - 200.0).abs() < 1e-9);
}

/// A block that was planted in two seasons: the text is about the first, and each gets its own.
#[test]
fn each_season_of_planting_is_fed_by_its_own_age() {
    let facts = "2027-06-01 planted 300\n2028-06-01 planted 200";
    let figures = given(indonesia(), facts)
        .at("2028-09-12", Feed)
        .unwrap()
        .figures;
    let trees: Vec<u32> = figures.rations.iter().map(|ration| ration.trees).collect();
    assert_eq!((figures.trees, trees), (Some(300), vec![300, 200]));
    let grams: Vec<f64> = figures.rations.iter().map(Ration::grams_per_tree).collect();
    assert_eq!(grams, [362.5, 260.0], "halves of year 2 and of year 1");
}

/// Trees that are too young for any round are not among those that are fed.
#[test]
fn trees_without_a_dose_are_not_counted() {
    let facts = "2027-06-01 planted 600\n2027-07-01 dead 20\n2027-08-25 replaced 20";
    let figures = given(indonesia(), facts)
        .at("2027-09-02", Feed)
        .unwrap()
        .figures;
    assert_eq!((figures.trees, figures.trees_fed()), (Some(580), 580));
    let weed = given(indonesia(), facts).at("2027-09-02", Weed).unwrap();
    assert_eq!(weed.figures.rations, []);
    // Where all of the first trees died, the others are the ones that the text is about.
    let facts = "2027-06-01 planted 60\n2028-05-01 dead 60\n2028-05-20 replaced 60";
    let figures = given(indonesia(), facts)
        .at("2028-09-12", Feed)
        .unwrap()
        .figures;
    assert_eq!(figures.trees, Some(60));
    assert_eq!(figures.grams_per_tree, Some(260.0));
}

/// What came of a table when every round is given so many days after it was asked for.
#[derive(Debug)]
struct Played {
    given: BTreeSet<u32>,
    not_given: BTreeSet<u32>,
    last_day: NaiveDate,
}

/// Plays all rounds of a table. No round is ever asked for in the last month of the rains.
fn play(given: &mut Given, planted_on: NaiveDate, delay: u64) -> Played {
    let mut played = Played {
        given: BTreeSet::new(),
        not_given: BTreeSet::new(),
        last_day: planted_on + Days::new(16 * 366),
    };
    let mut today = planted_on;
    while today < played.last_day {
        let state = given.state();
        let Some(plan) = feeding::feed(&case(given, &state, today)) else {
            break;
        };
        if plan.due > today {
            today = plan.due;
            continue;
        }
        let last = plan.ends.unwrap();
        let rains = given.season.rains(plan.due).unwrap();
        assert!(plan.due >= rains.start && last + Days::new(30) <= rains.end);
        let round = plan.figures.round.unwrap();
        let on = (plan.due + Days::new(delay)).max(today);
        if on <= last {
            fed(given, on);
            assert!(
                played.given.insert(round),
                "round {round} is asked for twice"
            );
            today = on;
        } else {
            played.not_given.insert(round);
            today = last + Days::new(1);
        }
    }
    played
}

proptest! {
    #[test]
    fn no_feed_in_the_last_month_of_rain_and_no_round_lost_silently(
        planted_after in 0_u64..365,
        delay in 0_u64..120,
        is_twice in any::<bool>(),
        calendar in 0..profiles::ALL.len(),
    ) {
        let calendar = Calendar::parse(profiles::ALL[calendar].1).unwrap();
        let planted_on = day("2027-01-01") + Days::new(planted_after);
        let mut given = given(calendar, &format!("{planted_on} planted 600"));
        given.season = if is_twice { TWICE } else { RAINS };
        let played = play(&mut given, planted_on, delay);
        let told: BTreeSet<u32> = lost_on(&given, played.last_day)
            .iter()
            .map(|lost| lost.round)
            .collect();
        let in_time: u32 = (1..)
            .zip(&given.calendar.feeding.rounds)
            .filter(|(_, round)| round.month < 15 * 12)
            .map(|(number, _)| number)
            .max()
            .unwrap();
        for round in 1..=in_time {
            let is_given = played.given.contains(&round);
            prop_assert!(is_given != told.contains(&round), "round {round}: {played:?} {told:?}");
        }
        prop_assert!(played.not_given.is_subset(&told));
    }
}

/// The events of a block, as they were, so that a round is not counted by the order of telling.
#[test]
fn rounds_told_late_count_for_their_own_day() {
    let facts = [
        "2027-06-01 planted 600",
        "2028-05-22 fertilised",
        "2027-09-02 fertilised",
    ];
    let events: Vec<Event> = (1..).zip(facts).map(|(id, line)| fact(id, line)).collect();
    let mut told = given(fao(), "").rains();
    told.events = events;
    assert_eq!(told.at("2028-05-23", Feed).unwrap().figures.round, Some(3));
}
