//! Each limit of what can be true, just below and just above it.
//!
//! The limits are the project's reading rules; what they rest on stands beside them in the code.
//! 0.35 and 1.3 are no round binary numbers, so values that lie exactly on a limit are those that
//! are exact.

use std::{string::ToString, vec, vec::Vec};

use budwood_parser::{Details, Kind, Measure, Per, Report, Unit, When};

use super::given::{Given, count, day, given, report};
use crate::land::block::{Census, Cohort, Count};

/// A count that is sound, and one more that is not.
#[track_caller]
pub(super) fn check_count(given: &Given, kind: Kind, block: &str, sound: u32, why: &str) {
    let name = kind.name();
    let check = |trees: u32, start: &str, end: &str| {
        let then = std::format!("{start} {name} {trees} {block}{end}");
        given.check_report(report(kind, block, count(trees)), &then);
    };
    check(sound, "record", "");
    check(sound + 1, "confirm", &std::format!(": [{why}]"));
}

#[test]
fn more_than_the_land_holds() {
    // 100 points, and 30 % more.
    check_count(
        &given(),
        Kind::Planted,
        "C",
        130,
        "MoreThanAreaHolds { holds: 100 }",
    );
    // 220 points, 200 planted: 86 more make 286, which is 30 % more than 220.
    check_count(
        &given(),
        Kind::Planted,
        "A",
        86,
        "MoreThanAreaHolds { holds: 220 }",
    );
    // The area is not known: half as many again as were planted.
    check_count(
        &given(),
        Kind::Planted,
        "B",
        180,
        "MoreThanAreaHolds { holds: 120 }",
    );
    let mut bare = given();
    bare.plots[2].points = None;
    bare.check_report(
        report(Kind::Planted, "C", count(50_000)),
        "record planted 50000 C",
    );
}

#[test]
fn a_fifth_of_the_block_dead_at_once() {
    check_count(&given(), Kind::Dead, "A", 40, "LargeShare { alive: 200 }");
    let mut small = given();
    small.state("B").cohorts[0].planted = 12;
    check_count(&small, Kind::Dead, "B", 5, "LargeShare { alive: 12 }");
}

#[test]
fn more_than_are_alive() {
    let mut farmer = given();
    farmer.state("A").cohorts[0].dead = 190;
    farmer.state("A").cohorts[0].planted_on = day("2021-06-01");
    check_count(&farmer, Kind::Dead, "A", 10, "MoreThanAlive { alive: 10 }");
    for kind in [
        Kind::Branched,
        Kind::NotBranched,
        Kind::BranchInduction,
        Kind::TappingOpened,
        Kind::Disease,
        Kind::Damage,
    ] {
        check_count(&farmer, kind, "A", 10, "MoreThanAlive { alive: 10 }");
    }
}

/// A has 200 living trees. Counts of the same weeks should add up to about all of them.
#[test]
fn trees_with_branches_and_without_are_all_that_live() {
    let mut farmer = given();
    let tall = |on| {
        Some(Count {
            on: day(on),
            trees: Some(60),
        })
    };
    farmer.state("A").tall = tall("2027-03-10");
    check_count(
        &farmer,
        Kind::Branched,
        "A",
        160,
        "DoesNotAddUp { told: 221, alive: 200 }",
    );
    let branched = |farmer: &Given, trees, then| {
        farmer.check_report(report(Kind::Branched, "A", count(trees)), then);
    };
    branched(&farmer, 120, "record branched 120 A");
    branched(
        &farmer,
        119,
        "confirm branched 119 A: [DoesNotAddUp { told: 179, alive: 200 }]",
    );
    farmer.state("A").tall = tall("2027-03-09");
    branched(&farmer, 119, "record branched 119 A");
    farmer.state("A").tall = tall("2027-03-10");
    farmer.state("A").induced = tall("2027-03-12");
    branched(&farmer, 50, "record branched 50 A");
    let both = given();
    both.check(
        "branched 90 A, not branched 30 A",
        "confirm branched 90 A + not_branched 30 A: [DoesNotAddUp { told: 120, alive: 200 }]",
    );
}

/// Numbers that people guess end in 0 or 5 (heaping, as in the field experiment on prompts of Field
/// Methods 2022); a prompt only where they look so.
#[test]
fn girths_that_look_guessed_are_asked_about() {
    let farmer = given();
    farmer.check(
        "girth 40 45 40 50 45 A",
        "confirm girth [40.0, 45.0, 40.0, 50.0, 45.0] A: [Heaped]",
    );
    farmer.check(
        "girth 40 45 40 50 44 A",
        "record girth [40.0, 45.0, 40.0, 50.0, 44.0] A",
    );
    farmer.check(
        "girth 40 45 40 50 A",
        "record girth [40.0, 45.0, 40.0, 50.0] A",
    );
}

#[test]
fn more_filled_than_there_are_gaps() {
    let mut farmer = given();
    farmer.state("A").cohorts[0].dead = 12;
    check_count(
        &farmer,
        Kind::Replaced,
        "A",
        12,
        "MoreThanGaps { gaps: 12 }",
    );
}

/// Where nobody counted the dead, a few replaced trees tell of as many deaths; a fifth of the block
/// is not a few, and where they were counted, so are the gaps.
#[test]
fn replaced_trees_tell_of_deaths_where_nobody_counted_them() {
    check_count(
        &given(),
        Kind::Replaced,
        "A",
        40,
        "MoreThanGaps { gaps: 0 }",
    );
    let mut farmer = given();
    let none_dead = Count {
        on: day("2027-01-10"),
        trees: Some(0),
    };
    farmer.state("A").last.insert(Kind::Dead, none_dead);
    farmer.check_report(
        report(Kind::Replaced, "A", count(1)),
        "confirm replaced 1 A: [MoreThanGaps { gaps: 0 }]",
    );
    let mut filled = given();
    let state = filled.state("A");
    state.cohorts[0].dead = 6;
    state.cohorts.push(Cohort {
        planted_on: day("2026-09-01"),
        clone_name: None,
        planted: 6,
        dead: 0,
        backfill: true,
    });
    filled.check_report(
        report(Kind::Replaced, "A", count(1)),
        "confirm replaced 1 A: [MoreThanGaps { gaps: 0 }]",
    );
    given().check(
        "dead 9 A and replaced 10",
        "confirm dead 9 A + replaced 10 A: [MoreThanGaps { gaps: 9 }]",
    );
}

/// What the same text says before counts: planting and dying, dying and filling.
#[test]
fn facts_of_one_text_count_together() {
    let farmer = given();
    farmer.check("planted 100 C, 8 died", "record planted 100 C + dead 8 C");
    farmer.check("dead 9 A and replaced 9", "record dead 9 A + replaced 9 A");
}

fn values(kind: Kind, values_cm: &[f64]) -> Report {
    let details = Details {
        values_cm: values_cm.to_vec(),
        ..Details::default()
    };
    report(kind, "A", details)
}

/// Measured values that are sound, and others of which one is not.
#[track_caller]
fn check_values(given: &Given, kind: Kind, sound: &[f64], odd: &[f64], why: &str) {
    let name = kind.name();
    given.check_report(
        values(kind, sound),
        &std::format!("record {name} {sound:?} A"),
    );
    given.check_report(
        values(kind, odd),
        &std::format!("confirm {name} {odd:?} A: [{why}]"),
    );
}

#[test]
fn girths_and_heights_that_no_young_tree_has() {
    let farmer = given();
    check_values(&farmer, Kind::Girth, &[1.0], &[0.9], "OddValue(0.9)");
    check_values(&farmer, Kind::Girth, &[150.0], &[150.1], "OddValue(150.1)");
    check_values(&farmer, Kind::Height, &[10.0], &[9.9], "OddValue(9.9)");
    check_values(
        &farmer,
        Kind::Height,
        &[3_500.0],
        &[3_500.5],
        "OddValue(3500.5)",
    );
}

#[test]
fn one_value_far_from_the_others() {
    let farmer = given();
    let (near, far) = ([40.0, 40.0, 53.9], [40.0, 40.0, 54.1]);
    check_values(&farmer, Kind::Girth, &near, &far, "OddValue(54.1)");
    let (near, far) = ([40.0, 40.0, 26.1], [40.0, 40.0, 25.9]);
    check_values(&farmer, Kind::Girth, &near, &far, "OddValue(25.9)");
    // It is the middle one of five that counts, in whatever order they are told.
    let shuffled = [40.0, 41.0, 42.0, 21.0, 20.0];
    farmer.check_report(
        values(Kind::Girth, &shuffled),
        &std::format!("confirm girth {shuffled:?} A: [OddValue(21.0)]"),
    );
    // Of two values neither is the odd one.
    farmer.check_report(
        values(Kind::Girth, &[20.0, 60.0]),
        "record girth [20.0, 60.0] A",
    );
}

fn measured(mean_cm: f64) -> Given {
    let mut farmer = given();
    farmer.state("A").girths = vec![Census {
        on: day("2027-01-10"),
        values_cm: vec![mean_cm],
        reached: None,
        source: crate::words::event::Source::OwnText,
    }];
    farmer
}

#[test]
fn stems_do_not_shrink_by_more_than_two_centimetres() {
    let farmer = measured(46.0);
    check_values(
        &farmer,
        Kind::Girth,
        &[44.0],
        &[43.5],
        "Shrunk { before: 46.0 }",
    );
}

/// Trees do not get shorter, but others may be measured: a twentieth less is no doubt, which is an
/// assumption. A published series that falls from 48.2 to 45.0 cm (`ghana.rs`) is asked about.
#[test]
fn trees_do_not_get_shorter() {
    let mut farmer = given();
    farmer.state("A").heights = vec![Census {
        on: day("2027-01-10"),
        values_cm: vec![200.0],
        reached: None,
        source: crate::words::event::Source::OwnText,
    }];
    let why = "Shrunk { before: 200.0 }";
    check_values(&farmer, Kind::Height, &[190.0], &[189.5], why);
}

/// Growth before opening of 6 to 18 cm a year is the most that any source names (Chinese notes);
/// two months allow a few centimetres, and samples differ.
#[test]
fn stems_do_not_grow_in_weeks_what_takes_years() {
    let farmer = measured(40.0);
    check_values(
        &farmer,
        Kind::Girth,
        &[47.0],
        &[48.0],
        "Grew { before: 40.0 }",
    );
    // A census that is told late is held against what was known before it, not after.
    let late = Report {
        when: Some(When::Calendar {
            day: 1,
            month: 1,
            year: Some(2027),
            named: true,
        }),
        ..values(Kind::Girth, &[30.0])
    };
    farmer.check_report(late, "record girth [30.0] A on 2027-01-01");
}

/// Trees of six years at 16 to 21: no stand is so thin, but in inches they are what they should
/// be. Younger ones are not judged.
#[test]
fn girths_in_inches_are_asked_about() {
    let aged = |planted: &str| {
        let mut farmer = given();
        farmer.state("A").cohorts[0].planted_on = day(planted);
        farmer
    };
    let six = aged("2021-03-01");
    let inches = [18.0, 19.0, 17.0, 20.0];
    six.check_report(
        values(Kind::Girth, &inches),
        &std::format!("confirm girth {inches:?} A: [PerhapsInches]"),
    );
    let thin = [26.0, 24.0, 25.0];
    six.check_report(
        values(Kind::Girth, &thin),
        &std::format!("record girth {thin:?} A"),
    );
    six.check_report(
        values(Kind::Girth, &[121.0]),
        "confirm girth [121.0] A: [OddValue(121.0)]",
    );
    let two = aged("2025-03-01");
    let two_says = std::format!("record girth {inches:?} A");
    two.check_report(values(Kind::Girth, &inches), &two_says);
}

/// 250 m, or 3,500 mm: no planted rubber tree is so thick, and "is this right?" would let it in.
#[test]
fn impossible_girths_are_asked_for_anew() {
    let given = given();
    let asked = |values_cm: &[f64]| values(Kind::Girth, values_cm);
    given.check_report(asked(&[41.0, 350.0]), "ask values of girth [41.0, 350.0] A");
    given.check_report(asked(&[25_000.0]), "ask values of girth [25000.0] A");
}

/// A census of a block that was never planted is asked about, and one of a day before planting.
#[test]
fn a_census_needs_trees() {
    given().check_report(
        report(Kind::Girth, "C", values(Kind::Girth, &[41.0, 43.0]).details),
        "confirm girth [41.0, 43.0] C: [NotPlanted]",
    );
}

#[test]
fn thin_trees_are_not_opened() {
    let opened = |mean: f64| {
        let mut farmer = measured(mean);
        farmer.state("A").cohorts[0].planted_on = day("2021-06-01");
        farmer.told(report(Kind::TappingOpened, "A", count(100)))
    };
    assert_eq!(opened(45.0), "record tapping_opened 100 A");
    assert_eq!(
        opened(44.5),
        "confirm tapping_opened 100 A: [TooThin { mean: 44.5 }]"
    );
}

#[test]
fn more_than_a_kilogram_of_fertiliser_a_tree() {
    let fed = |value: f64, unit: Unit, per: Option<Per>| {
        let details = Details {
            amount: Some(Measure { value, unit }),
            per,
            ..Details::default()
        };
        report(Kind::Fertilised, "A", details)
    };
    // Sound amount, too much, unit, for what: 200 trees, and 50 kg to a bag (common practice).
    let cases = [
        (1.0, 1.01, Unit::Kilogram, Some(Per::Tree)),
        (1_000.0, 1_001.0, Unit::Gram, Some(Per::Tree)),
        (200.0, 201.0, Unit::Kilogram, Some(Per::Total)),
        (200.0, 201.0, Unit::Kilogram, None),
        (4.0, 4.5, Unit::Bag, None),
    ];
    // Where nothing is planted, nobody knows for how many trees it is.
    let mut bare = fed(500.0, Unit::Kilogram, None);
    bare.block = Some("C".to_string());
    given().check_report(bare, "record fertilised C");
    for (sound, too_much, unit, per) in cases {
        given().check_report(fed(sound, unit, per), "record fertilised A");
        given().check_report(
            fed(too_much, unit, per),
            "confirm fertilised A: [TooMuchFeed]",
        );
    }
}

#[test]
fn the_same_again_within_a_week() {
    let last_seen = |on: &str| {
        let mut farmer = given();
        let seen = Count {
            on: day(on),
            trees: Some(20),
        };
        farmer.state("A").last.insert(Kind::Dead, seen);
        farmer
    };
    let dead = |trees| report(Kind::Dead, "A", count(trees));
    last_seen("2027-03-11").check_report(dead(20), "confirm dead 20 A: [SameAgain]");
    last_seen("2027-03-10").check_report(dead(20), "record dead 20 A");
    last_seen("2027-03-11").check_report(dead(21), "record dead 21 A");
    // Nothing seen twice is nothing odd.
    let mut none = last_seen("2027-03-11");
    let seen = none.state("A").last.get_mut(&Kind::Dead).unwrap();
    seen.trees = Some(0);
    none.check_report(dead(0), "record dead 0 A");
}

#[test]
fn nothing_happens_to_trees_before_they_are_planted() {
    let dead_on = |month: u8, of_month: u8| Report {
        when: Some(When::Calendar {
            day: of_month,
            month,
            year: Some(2026),
            named: true,
        }),
        ..report(Kind::Dead, "A", count(3))
    };
    given().check_report(dead_on(6, 1), "record dead 3 A on 2026-06-01");
    given().check_report(
        dead_on(5, 31),
        "confirm dead 3 A on 2026-05-31: [BeforePlanting]",
    );
    given().check_report(
        report(Kind::Dead, "C", count(3)),
        "confirm dead 3 C: [NotPlanted]",
    );
    // Work that needs no trees can be done before.
    given().check_report(
        report(Kind::Weeded, "C", Details::default()),
        "record weeded C",
    );
}

#[test]
fn a_word_that_was_repaired_comes_after_a_number_that_cannot_be() {
    let mut repaired = report(Kind::Dead, "A", count(900));
    repaired.doubts = vec![budwood_parser::Doubt::Repaired {
        from: "deaf".to_string(),
        to: "dead".to_string(),
    }];
    given().check_report(
        repaired,
        "confirm dead 900 A: [MoreThanAlive { alive: 200 }, \
         Reading(Repaired { from: \"deaf\", to: \"dead\" })]",
    );
}

#[test]
fn a_block_that_is_not_known_is_asked_for_before_anything_is_judged() {
    let nowhere: Vec<Report> = vec![report(Kind::Dead, "Q", count(90_000))];
    for report in nowhere {
        given().check_report(report, "ask block not Q of dead 90000 Q");
    }
}
