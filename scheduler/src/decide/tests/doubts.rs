//! What cannot be true of land and trees, and which doubt is asked about first.

use std::{string::ToString, vec};

use budwood_parser::{Details, Kind, Report};

use super::{
    given::{Given, count, day, given, in_short, report},
    sanity::check_count,
};
use crate::land::block::Cohort;

/// Land for 220 trees: pegs, pits and trees are one chain, and the last whole count holds.
#[test]
fn what_does_not_fit_on_the_pegs_or_the_pits_is_asked_about() {
    let holds = |holds: u32| std::format!("MoreThanAreaHolds {{ holds: {holds} }}");
    check_count(&given(), Kind::Lined, "A", 286, &holds(220));
    check_count(&given(), Kind::HolesDug, "A", 286, &holds(220));
    let mut pegged = given();
    pegged.state("A").pegs = 200;
    check_count(&pegged, Kind::Lined, "A", 86, &holds(220));
    check_count(&pegged, Kind::HolesDug, "A", 260, &holds(200));
    pegged.state("A").holes = 60;
    check_count(&pegged, Kind::HolesDug, "A", 200, &holds(200));
    // Nobody knows how many fit on B.
    check_kind(&given(), Kind::Lined, "B", 5_000, "record");
    // C: 100 points, 92 pits, nothing planted.
    let mut dug = given();
    dug.state("C").holes = 92;
    check_count(&dug, Kind::Planted, "C", 119, &holds(92));
}

#[track_caller]
fn check_kind(given: &Given, kind: Kind, block: &str, trees: u32, start: &str) {
    let then = std::format!("{start} {} {trees} {block}", kind.name());
    given.check_report(report(kind, block, count(trees)), &then);
}

/// Planted on 1 June 2026. The fastest published growth is 20 cm a year, and no profile opens below
/// a mean of 45 cm.
#[test]
fn young_trees_are_not_opened() {
    let mut farmer = given();
    let opened = |farmer: &Given, then: &str| {
        farmer.check_report(report(Kind::TappingOpened, "A", count(100)), then);
    };
    opened(
        &farmer,
        "confirm tapping_opened 100 A: [TooYoung { months: 9 }]",
    );
    let mut planted = |on: &str| {
        farmer.state("A").cohorts[0].planted_on = day(on);
        farmer.told(report(Kind::TappingOpened, "A", count(100)))
    };
    assert!(planted("2027-03-17").contains("TooYoung { months: 0 }"));
    assert!(planted("2024-12-20").contains("TooYoung { months: 26 }"));
    assert_eq!(planted("2024-12-10"), "record tapping_opened 100 A");
    given().check(
        "opened 100 C",
        "confirm tapping_opened 100 C: [NotPlanted, MoreThanAlive { alive: 0 }]",
    );
}

/// A letter in a number is nothing beside a number that does not fit the land.
#[test]
fn the_worst_doubt_is_the_first() {
    let slip = Report {
        doubts: vec![budwood_parser::Doubt::LetterForDigit("5o0".to_string())],
        ..report(Kind::Planted, "A", count(500))
    };
    given().check_report(
        slip,
        "confirm planted 500 A: [MoreThanAreaHolds { holds: 220 }, \
         Reading(LetterForDigit(\"5o0\"))]",
    );
}

#[test]
fn more_dead_than_alive_is_asked_about() {
    let mut farmer = given();
    farmer.state("A").cohorts[0].dead = 200;
    check_count(&farmer, Kind::Dead, "A", 0, "MoreThanAlive { alive: 0 }");
    // Trees that were filled in may die too.
    farmer.state("A").cohorts.push(Cohort {
        planted_on: day("2026-09-01"),
        clone_name: None,
        planted: 30,
        dead: 0,
        backfill: true,
    });
    check_count(&farmer, Kind::Dead, "A", 30, "MoreThanAlive { alive: 30 }");
}

/// What is broken of the plants that came was never planted.
#[test]
fn broken_plants_are_no_damage_to_trees() {
    let plants = Details {
        supply: Some(budwood_parser::Supply::Plants),
        ..count(400)
    };
    let reading = |second: Report| budwood_parser::Reading {
        reports: vec![report(Kind::Received, "A", plants.clone()), second],
        about_work: true,
        ..budwood_parser::Reading::default()
    };
    let told = |second| in_short(&given().decide(&reading(second)));
    let broken = report(Kind::Damage, "A", count(12));
    assert_eq!(told(broken), "record received 388 A");
    let dead = report(Kind::Dead, "A", count(12));
    assert_eq!(told(dead), "record received 388 A");
    let elsewhere = report(Kind::Damage, "B", count(12));
    assert_eq!(told(elsewhere), "record received 400 A + damage 12 B");
    // Bags do not break trees.
    let bags = Details {
        supply: Some(budwood_parser::Supply::Fertiliser),
        ..count(8)
    };
    let with_bags = budwood_parser::Reading {
        reports: vec![
            report(Kind::Received, "A", bags),
            report(Kind::Damage, "A", count(12)),
        ],
        about_work: true,
        ..budwood_parser::Reading::default()
    };
    let told = in_short(&given().decide(&with_bags));
    assert_eq!(told, "record received 8 A + damage 12 A");
    // Damage without plants that came is damage.
    check_kind(&given(), Kind::Damage, "A", 12, "record");
}

/// Where nothing is planted, nobody knows of how many the sick or the dead are.
#[test]
fn a_block_without_trees_has_no_whole() {
    check_kind(&given(), Kind::Disease, "C", 5, "record");
    let mut all = report(Kind::Dead, "C", Details::default());
    all.doubts = vec![budwood_parser::Doubt::Whole(budwood_parser::Extent::All)];
    given().check_report(all, "ask count of dead C");
}
