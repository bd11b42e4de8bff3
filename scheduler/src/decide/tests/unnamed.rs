//! Blocks that are meant without their names. Trees die only where some were planted, and no number
//! is true of each of several blocks.

use std::vec;

use budwood_parser::{Details, Kind, Measure, Reading, Report, Unit, Unnamed};

use super::given::{Given, count, draft, given, in_short, report};
use crate::decide::{Missing, Pending};

fn plain(kind: Kind, details: Details) -> Report {
    Report {
        block: None,
        ..report(kind, "", details)
    }
}

#[track_caller]
fn check(given: &Given, unnamed: Option<Unnamed>, told: Report, then: &str) {
    let reading = Reading {
        reports: vec![told],
        unnamed,
        about_work: true,
        ..Reading::default()
    };
    assert_eq!(in_short(&given.decide(&reading)), then);
}

/// The farmer has A and B planted, and C bare.
#[test]
fn both_are_the_two_where_it_can_have_been_done() {
    let both = |given: &Given, kind, then| {
        check(
            given,
            Some(Unnamed::Both),
            plain(kind, Details::default()),
            then,
        );
    };
    both(&given(), Kind::Branched, "record branched A + branched B");
    both(&given(), Kind::Weeded, "ask block of weeded");
    let mut two = given();
    two.plots.remove(0);
    both(&two, Kind::Weeded, "record weeded B + weeded C");
    both(&two, Kind::Branched, "record branched B");
}

#[test]
fn all_are_those_where_it_can_have_been_done() {
    let all = |told, then| check(&given(), Some(Unnamed::All), told, then);
    let work = |kind| plain(kind, Details::default());
    all(work(Kind::Weeded), "record weeded A + weeded B + weeded C");
    all(work(Kind::Branched), "record branched A + branched B");
    // So many trees, bags or centimetres are not the same on each.
    all(work(Kind::Dead), "ask block of dead");
    all(work(Kind::Girth), "ask block of girth");
    all(plain(Kind::Pruned, count(12)), "ask block of pruned 12");
    let bags = Details {
        amount: Some(Measure {
            value: 2.0,
            unit: Unit::Bag,
        }),
        ..Details::default()
    };
    all(plain(Kind::Fertilised, bags), "ask block of fertilised");
}

#[test]
fn the_only_planted_block_is_meant_for_what_needs_trees() {
    let mut one = given();
    one.state("B").cohorts.clear();
    let told = |given: &Given, kind, trees: u32, then| {
        check(given, None, plain(kind, count(trees)), then);
    };
    told(&one, Kind::Dead, 4, "record dead 4 A");
    told(&one, Kind::Planted, 20, "ask block of planted 20");
    told(&given(), Kind::Dead, 4, "ask block of dead 4");
}

#[test]
fn both_answers_which_block() {
    let mut fact = draft(Kind::Weeded, "", Details::default());
    fact.block = None;
    let mut asked = given().asked(Pending::Ask {
        facts: vec![fact.clone()],
        missing: Missing::Block { unknown: None },
    });
    asked.plots.pop();
    let both = Reading {
        unnamed: Some(Unnamed::Both),
        ..Reading::default()
    };
    assert_eq!(in_short(&asked.decide(&both)), "record weeded A + weeded B");
    // With a report of its own it is no answer.
    let pruned = plain(Kind::Pruned, Details::default());
    check(
        &asked,
        Some(Unnamed::Both),
        pruned,
        "record pruned A + pruned B",
    );
    // Another question is not answered by it.
    asked.pending = Some(Pending::Ask {
        facts: vec![fact],
        missing: Missing::Date,
    });
    assert_eq!(in_short(&asked.decide(&both)), "silent, NotWork");
}

/// Rain falls on all blocks: it names none for the work beside it.
#[test]
fn work_is_where_the_work_beside_it_was() {
    let beside = |first: Report, then: &str| {
        let reading = Reading {
            reports: vec![first, plain(Kind::Weeded, Details::default())],
            about_work: true,
            ..Reading::default()
        };
        assert_eq!(in_short(&given().decide(&reading)), then);
    };
    beside(
        report(Kind::Pruned, "B", Details::default()),
        "record pruned B + weeded B",
    );
    beside(
        report(Kind::Rain, "B", Details::default()),
        "ask block of rain B + weeded",
    );
}
