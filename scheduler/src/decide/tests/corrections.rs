//! Corrections: which slot of which fact is meant, of what is stored and of what waits.
//!
//! The rules are the project's own policy for texts.

use std::{string::ToString, vec, vec::Vec};

use budwood_parser::{Act, Bare, Correction, Details, Kind, Reading, Sender};

use super::given::{bare, check, count, draft, given, says};
use crate::decide::{Draft, Pending};

fn correct(from: Option<&str>, to: Option<&str>) -> Reading {
    says(Act::Correct(Correction {
        from: from.map(ToString::to_string),
        to: to.map(ToString::to_string),
        ..Correction::default()
    }))
}

/// The number that equals the stored one is the old one, whichever comes first.
#[test]
fn a_correction_finds_the_slot_that_it_means() {
    let farmer = given().after(&[draft(Kind::Planted, "A", count(120))]);
    let to_102 = "change count of 0 to planted 102 A";
    check(&farmer, &correct(Some("120"), Some("102")), to_102);
    check(&farmer, &correct(Some("102"), Some("120")), to_102);
    check(&farmer, &correct(None, Some("102")), to_102);
    check(&farmer, &correct(Some("7"), Some("8")), "unsure which");
    check(&farmer, &correct(None, Some("120")), "unsure which");
    check(&farmer, &correct(None, Some("12.5")), "unsure which");
    let to_b = "change block of 0 to planted 120 B";
    check(&farmer, &correct(Some("A"), Some("B")), to_b);
    check(&farmer, &correct(Some("B"), Some("A")), to_b);
    check(&farmer, &correct(None, Some("b")), to_b);
    check(&farmer, &correct(Some("B"), Some("C")), "unsure which");
    check(&given(), &correct(None, Some("102")), "unsure which");
    check(&farmer, &says(Act::Undo), "undo");
}

/// Of several facts the last that fits is meant, unless the correction names its kind.
#[test]
fn a_correction_reaches_the_last_fact_or_the_one_named() {
    let farmer = given().after(&[
        draft(Kind::Planted, "A", count(120)),
        draft(Kind::Dead, "A", count(8)),
    ]);
    check(
        &farmer,
        &correct(None, Some("9")),
        "change count of 1 to dead 9 A",
    );
    let mut named = Correction {
        to: Some("102".to_string()),
        kind: Some(Kind::Planted),
        ..Correction::default()
    };
    check(
        &farmer,
        &says(Act::Correct(named.clone())),
        "change count of 0 to planted 102 A",
    );
    named.block = Some("B".to_string());
    check(&farmer, &says(Act::Correct(named)), "unsure which");
}

#[test]
fn a_correction_reaches_what_waits_to_be_confirmed_first() {
    let stored = [draft(Kind::Planted, "B", count(60))];
    let waiting = vec![
        draft(Kind::Dead, "A", count(90)),
        draft(Kind::Replaced, "A", count(4)),
    ];
    let asked = given().after(&stored).asked(Pending::Confirm(waiting));
    let then = "record dead 9 A + replaced 4 A";
    check(&asked, &correct(Some("90"), Some("9")), then);
    // What fits nothing that waits is about what was stored.
    let to_50 = "change count of 0 to planted 50 B";
    check(&asked, &correct(Some("60"), Some("50")), to_50);
}

/// One girth can be put right by another number; of several nobody knows which is meant.
#[test]
fn one_measured_value_can_be_corrected() {
    let girths = |values: &[f64]| {
        let details = Details {
            values_cm: values.to_vec(),
            ..Details::default()
        };
        given().after(&[draft(Kind::Girth, "A", details)])
    };
    let to_43 = correct(None, Some("43"));
    check(
        &girths(&[34.0]),
        &to_43,
        "change values_cm of 0 to girth [43.0] A",
    );
    check(&girths(&[34.0, 44.0]), &to_43, "unsure which");
    check(&girths(&[]), &to_43, "unsure which");
    // The block that it was about already is no other one.
    check(&girths(&[34.0]), &correct(None, Some("A")), "unsure which");
}

/// Asked to confirm, people text the number or the block that is right.
#[test]
fn another_block_or_number_puts_right_what_waits() {
    let told = |facts: Vec<Draft>, says: Bare, then: &str| {
        check(&given().asked(Pending::Confirm(facts)), &bare(says), then);
    };
    let block = || Bare::Block("b".to_string());
    let dead = || draft(Kind::Dead, "A", count(90));
    told(
        vec![dead()],
        block(),
        "confirm dead 90 B: [LargeShare { alive: 120 }]",
    );
    told(vec![dead()], Bare::Number(12.0), "record dead 12 A");
    told(
        vec![draft(Kind::Weeded, "A", Details::default())],
        Bare::Number(12.0),
        "silent, NothingAsked",
    );
    let two = vec![dead(), draft(Kind::Replaced, "A", count(4))];
    told(two, Bare::Number(12.0), "silent, NothingAsked");
}

#[test]
fn a_stranger_corrects_nothing() {
    let stranger = given().from(Sender::Unknown);
    check(&stranger, &correct(None, Some("102")), "silent, Stranger");
}

/// Words of no list make a correction only where a fact that was told has one of the two values.
#[test]
fn a_likely_correction_must_be_borne_out() {
    let likely = |from: &str, to: &str, sender: Sender| {
        let reading = Reading {
            amends: Some(Correction {
                from: Some(from.to_string()),
                to: Some(to.to_string()),
                ..Correction::default()
            }),
            ..Reading::default()
        };
        let told = given().after(&[draft(Kind::Replaced, "A", count(33))]);
        (told.from(sender), reading)
    };
    let (farmer, reading) = likely("38", "33", Sender::Farmer);
    let to_38 = "change count of 0 to replaced 38 A";
    check(&farmer, &reading, to_38);
    let (farmer, reading) = likely("38", "34", Sender::Farmer);
    check(&farmer, &reading, "silent, NotWork");
    let (stranger, reading) = likely("38", "33", Sender::Unknown);
    check(&stranger, &reading, "silent, Stranger");
}
