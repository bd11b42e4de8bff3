//! Trees by planting season: planted, dead, filled in, alive.

use std::{
    string::{String, ToString},
    vec,
    vec::Vec,
};

use budwood_parser::{
    Details,
    Kind::{Dead, Planted, Replaced},
};

use super::{day, fold, seen, trees};
use crate::land::block::{BlockState, Cohort, Living};

fn cohort(planted_on: &str, planted: u32, dead: u32, backfill: bool) -> Cohort {
    Cohort {
        planted_on: day(planted_on),
        clone_name: None,
        planted,
        dead,
        backfill,
    }
}

#[test]
fn plantings_of_one_season_are_one_cohort() {
    // 120 days later is still the same season, 121 days later is another; told in any order.
    for (first, second, cohorts) in [
        ("2027-06-01", "2027-09-29", 1),
        ("2027-06-01", "2027-09-30", 2),
        ("2027-09-29", "2027-06-01", 1),
        ("2027-09-30", "2027-06-01", 2),
    ] {
        let state = fold(&[(Planted, first, trees(100)), (Planted, second, trees(20))]);
        assert_eq!(state.cohorts.len(), cohorts, "{first} {second}");
        assert_eq!(state.planted(), 120);
        assert_eq!(state.planted_on(), Some(day("2027-06-01")));
        let oldest_first = state.cohorts.is_sorted_by_key(|cohort| cohort.planted_on);
        assert!(oldest_first);
    }
}

#[test]
fn a_cohort_keeps_the_clone_that_was_told_first() {
    let of = |clone: Option<&str>, count| Details {
        clone_name: clone.map(ToString::to_string),
        ..trees(count)
    };
    let state = fold(&[
        (Planted, "2027-06-01", of(None, 100)),
        (Planted, "2027-06-02", of(Some("PB260"), 20)),
        (Planted, "2027-06-03", of(Some("GT1"), 5)),
    ]);
    let clones: Vec<Option<String>> = state.cohorts.iter().map(|c| c.clone_name.clone()).collect();
    assert_eq!(clones, [Some("PB260".to_string())]);
    assert_eq!(state.planted(), 125);
}

#[test]
fn a_planting_without_a_number_is_a_planting_of_no_trees() {
    let state = fold(&[(Planted, "2027-06-01", Details::default())]);
    assert_eq!(state.cohorts, [cohort("2027-06-01", 0, 0, false)]);
    assert_eq!(state.planted_on(), Some(day("2027-06-01")));
}

#[test]
fn trees_in_the_gaps_are_a_cohort_of_their_own() {
    let state = fold(&[
        (Planted, "2027-06-01", trees(100)),
        (Dead, "2027-07-01", trees(30)),
        (Replaced, "2027-07-10", trees(20)),
    ]);
    let expected = [
        cohort("2027-06-01", 100, 30, false),
        cohort("2027-07-10", 20, 0, true),
    ];
    assert_eq!(state.cohorts, expected);
    assert_eq!((state.planted(), state.replaced()), (100, 20));
    assert_eq!((state.dead(), state.alive(), state.gaps()), (30, 90, 10));
    assert_eq!(state.planted_on(), Some(day("2027-06-01")));
}

/// 480 planted, 23 died and were replaced: 457 + 23 of 480, and no gap.
#[test]
fn living_trees_are_first_ones_filled_in_and_gaps() {
    let facts = [
        (Planted, "2027-06-01", trees(480)),
        (Dead, "2027-07-01", trees(23)),
        (Replaced, "2027-07-10", trees(23)),
        (Dead, "2027-09-01", trees(7)),
    ];
    let living = |number: usize| fold(&facts[..number]).living();
    let expected = |first, filled, gaps| Living {
        first,
        filled,
        planted: 480,
        gaps,
    };
    assert_eq!(living(1), expected(480, 0, 0));
    assert_eq!(living(2), expected(457, 0, 23));
    assert_eq!(living(3), expected(457, 23, 0));
    assert_eq!(living(4), expected(450, 23, 7));
    assert_eq!(living(4).alive(), 473);
    assert_eq!(BlockState::default().living(), Living::default());
}

#[test]
fn only_filled_in_trees_are_no_planting() {
    let state = fold(&[(Replaced, "2027-07-10", trees(20))]);
    assert_eq!(state.planted_on(), None);
    assert_eq!((state.planted(), state.alive(), state.gaps()), (0, 20, 0));
}

/// Trees are replaced where others died: nobody need have told of those.
#[test]
fn replaced_trees_tell_of_deaths() {
    let filled = |dead: u32, replaced: u32| {
        let state = fold(&[
            (Planted, "2027-06-01", trees(100)),
            (Dead, "2027-07-01", trees(dead)),
            (Replaced, "2027-07-10", trees(replaced)),
        ]);
        (state.dead(), state.alive(), state.gaps())
    };
    assert_eq!(filled(0, 8), (8, 100, 0), "eight died untold");
    assert_eq!(filled(5, 8), (8, 100, 0), "three more died untold");
    assert_eq!(filled(8, 8), (8, 100, 0));
    assert_eq!(filled(10, 8), (10, 98, 2), "two gaps are left");
}

/// So survival of the first planting is never shown too high.
#[test]
fn a_death_counts_against_the_oldest_trees() {
    let two = |dead: u32| {
        let state = fold(&[
            (Planted, "2028-06-01", trees(20)),
            (Planted, "2027-06-01", trees(100)),
            (Dead, "2028-07-01", trees(dead)),
        ]);
        let dead: Vec<u32> = state.cohorts.iter().map(|cohort| cohort.dead).collect();
        (dead, state.alive())
    };
    assert_eq!(two(30), (vec![30, 0], 90));
    assert_eq!(two(100), (vec![100, 0], 20));
    assert_eq!(two(110), (vec![100, 10], 10));
    assert_eq!(two(500), (vec![100, 20], 0), "more cannot die than live");
}

#[test]
fn deaths_add_up_and_none_is_none() {
    let state = fold(&[
        (Planted, "2027-06-01", trees(100)),
        (Dead, "2027-07-01", trees(3)),
        (Dead, "2027-08-01", trees(0)),
        (Dead, "2027-09-01", trees(4)),
        (Dead, "2027-10-01", Details::default()),
    ]);
    assert_eq!((state.dead(), state.alive()), (7, 93));
    assert_eq!(state.last[&Dead], seen("2027-10-01", None));
}
