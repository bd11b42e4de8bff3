//! The rounds of a growing stand.

use super::given::{day, fao, given, indonesia};
use crate::{
    handbook::calendar::{Calendar, profiles},
    jobs::task::{most_urgent, tasks},
    land::block::BlockState,
    words::job::{
        Clock,
        TaskKind::{Feed, InduceBranching, LookAtInduced, Prune, RootCheck, Weed},
    },
};

const PLANTED: &str = "2027-06-01 planted 600\n";

fn with(facts: &str) -> std::string::String {
    [PLANTED, facts].concat()
}

/// FAO Better Farming Series 25: every 3 weeks in the first year.
#[test]
fn weeding_comes_round_by_age() {
    let fresh = given(fao(), PLANTED);
    let weed = fresh.at("2027-06-02", Weed).unwrap();
    assert_eq!(weed.due, day("2027-06-22"));
    assert_eq!(weed.figures.round, Some(1));
    assert_eq!(weed.clock, Clock::Planting);
    let weeded = given(fao(), &with("2027-06-25 weeded"));
    let weed = weeded.at("2027-06-30", Weed).unwrap();
    assert_eq!(weed.due, day("2027-07-16"));
    assert_eq!(weed.figures.round, Some(2));
    // Year 2: 5 rounds, every 73 days, from its first day on.
    let first_day = given(fao(), &with("2028-06-01 weeded"));
    assert_eq!(
        first_day.due("2028-06-02", Weed).as_deref(),
        Some("2028-08-13")
    );
    let year_2 = given(fao(), &with("2028-07-01 weeded"));
    assert_eq!(
        year_2.due("2028-07-02", Weed).as_deref(),
        Some("2028-09-12")
    );
}

#[test]
fn no_weeding_before_planting_and_after_the_table() {
    assert_eq!(
        given(fao(), "2027-05-01 weeded").at("2027-06-02", Weed),
        None
    );
    assert_eq!(given(fao(), PLANTED).at("2033-06-02", Weed), None);
    let cleared_first = given(fao(), "2027-05-01 weeded\n2027-06-01 planted 600");
    assert_eq!(
        cleared_first.due("2027-06-02", Weed).as_deref(),
        Some("2027-06-22")
    );
}

#[test]
fn weeding_is_put_off_and_forgotten_when_done() {
    let off = given(fao(), &with("2027-06-22 later weed 2027-07-06"));
    let weed = off.at("2027-06-23", Weed).unwrap();
    assert_eq!(
        (weed.due, weed.late_after),
        (day("2027-07-06"), day("2027-07-20"))
    );
    let done = given(
        fao(),
        &with("2027-06-22 later weed 2027-12-01\n2027-06-24 weeded"),
    );
    assert_eq!(done.due("2027-06-25", Weed).as_deref(), Some("2027-07-15"));
    let said = given(
        fao(),
        &with("2027-06-22 later weed 2027-12-01\n2027-06-24 done weed"),
    );
    assert_eq!(said.due("2027-06-25", Weed).as_deref(), Some("2027-07-15"));
}

/// Month 3 of the Indonesian Rubber Research Centre's table in two rounds: 260 g a tree, 156 kg
/// for 600.
#[test]
fn feeding_is_for_live_trees() {
    let fed = given(indonesia(), PLANTED);
    let feed = fed.at("2027-06-02", Feed).unwrap();
    assert_eq!(feed.due, day("2027-09-01"));
    assert_eq!(feed.figures.round, Some(1));
    assert_eq!(feed.figures.grams_per_tree, Some(260.0));
    assert_eq!(feed.figures.kilograms, Some(156.0));
    let fewer = given(indonesia(), &with("2027-07-01 dead 100"));
    let feed = fewer.at("2027-07-02", Feed).unwrap();
    assert_eq!(feed.figures.kilograms, Some(130.0));
}

#[test]
fn a_missed_round_of_feeding_gives_way_to_the_next() {
    let none = given(fao(), PLANTED);
    assert_eq!(none.due("2028-02-29", Feed).as_deref(), Some("2027-09-01"));
    assert_eq!(none.due("2028-03-01", Feed).as_deref(), Some("2028-03-01"));
    assert_eq!(none.due("2043-12-01", Feed), None, "the table has ended");
}

#[test]
fn a_report_closes_the_round_that_it_is_nearest_to() {
    let due = |fed: &str, today: &str| {
        let facts = with(&[fed, " fertilised"].concat());
        given(fao(), &facts).due(today, Feed)
    };
    // Half-way between planting and 1 September is 17 July.
    let early_enough = due("2027-07-17", "2027-08-02");
    assert_eq!(early_enough.as_deref(), Some("2028-03-01"));
    let too_early = due("2027-07-16", "2027-08-02");
    assert_eq!(too_early.as_deref(), Some("2027-09-01"));
    let at_planting = due("2027-06-01", "2027-06-02");
    assert_eq!(at_planting.as_deref(), Some("2027-09-01"));
    let very_late = due("2028-01-10", "2028-01-11");
    // It is still that of September; the next keeps half of the six months from it.
    assert_eq!(very_late.as_deref(), Some("2028-04-10"));
}

#[test]
fn young_trees_in_the_gaps_get_the_dose_of_their_age() {
    let facts = with("2027-07-01 dead 100\n2028-05-25 replaced 100");
    let given = given(indonesia(), &facts);
    // September 2028: 500 trees in month 15 (250 + 200 + 200 + 75 over 2), 100 in month 3 (260 g).
    let feed = given.at("2028-09-02", Feed).unwrap();
    assert_eq!(feed.figures.grams_per_tree, Some(362.5));
    assert_eq!(feed.figures.kilograms, Some(500.0 * 0.3625));
    assert_eq!(
        feed.figures.kilograms_in_all(),
        500.0 * 0.3625 + 100.0 * 0.26
    );
}

/// Rubber Board of India and Vietnamese procedures: feed on moist soil only.
#[test]
fn feeding_waits_for_rain() {
    let given = given(fao(), &with("2027-09-05 fertilised")).rains();
    // The round of March falls in the dry months.
    for today in ["2027-09-06", "2028-02-01", "2028-03-15", "2028-05-20"] {
        assert_eq!(given.due(today, Feed).as_deref(), Some("2028-05-20"));
    }
    let missed = self::given(fao(), PLANTED).rains();
    // Nothing is spread in the last month of the rains.
    assert_eq!(
        missed.due("2027-10-01", Feed).as_deref(),
        Some("2027-09-01")
    );
    assert_eq!(
        missed.due("2027-10-02", Feed).as_deref(),
        Some("2028-05-20")
    );
    assert_eq!(
        missed.due("2028-05-25", Feed).as_deref(),
        Some("2028-05-20")
    );
}

#[test]
fn side_shoots_are_cut_until_the_stand_has_branched() {
    let fresh = given(fao(), PLANTED);
    let prune = fresh.at("2027-06-02", Prune).unwrap();
    assert_eq!(prune.due, day("2027-08-01"));
    assert_eq!(prune.figures.height_m, Some(3.0));
    let pruned = given(fao(), &with("2027-08-10 pruned"));
    assert_eq!(
        pruned.due("2027-08-11", Prune).as_deref(),
        Some("2027-09-07")
    );
    let some = given(fao(), &with("2029-08-10 branched 300"));
    assert!(some.at("2029-08-11", Prune).is_some());
    let all = given(fao(), &with("2029-08-10 branched 600"));
    assert_eq!(all.at("2029-08-11", Prune), None);
    let none_known = given(fao(), "2027-06-01 planted\n2029-08-10 branched 0");
    assert!(none_known.at("2029-08-11", Prune).is_some());
    assert_eq!(fresh.at("2030-06-01", Prune), None, "month 36");
}

/// Thai pruning guide: from about a year on, in the rains, not in the dry season.
#[test]
fn side_shoots_wait_for_rain_where_the_handbook_says_so() {
    let thailand = Calendar::parse(profiles::THAILAND).unwrap();
    let facts = "2026-12-01 planted 600";
    assert_eq!(
        given(thailand, facts)
            .rains()
            .due("2027-12-02", Prune)
            .as_deref(),
        Some("2028-05-20")
    );
    assert_eq!(
        given(fao(), facts)
            .rains()
            .due("2027-01-02", Prune)
            .as_deref(),
        Some("2027-02-01")
    );
}

#[test]
fn tall_trees_without_branches_are_made_to_branch() {
    let open = |facts: &str, today: &str| given(fao(), &with(facts)).due(today, InduceBranching);
    assert_eq!(open("", "2029-06-02"), None);
    assert_eq!(open("2029-06-01 not_branched 0", "2029-06-02"), None);
    let counted = open("2029-06-01 not_branched 40", "2029-06-02");
    assert_eq!(counted.as_deref(), Some("2029-06-01"));
    let early = open("2028-06-01 not_branched 40", "2028-06-02");
    assert_eq!(early.as_deref(), Some("2028-12-01"), "from month 18");
    for closed in [
        "branch_induction 40",
        "done induce_branching",
        "branched 600",
    ] {
        let facts = ["2029-06-01 not_branched 40\n2029-06-09 ", closed].concat();
        assert_eq!(open(&facts, "2029-06-10"), None, "{closed}");
    }
    let same_day = "2029-06-01 not_branched 40\n2029-06-01 branch_induction 40";
    assert_eq!(open(same_day, "2029-06-02"), None);
    let others = "2029-06-01 branched 600\n2029-06-01 not_branched 40";
    assert!(open(others, "2029-06-02").is_some());
    let again = "2029-06-01 not_branched 40\n2029-06-09 branch_induction 40\n\
                 2029-08-01 not_branched 12";
    assert_eq!(open(again, "2029-08-02").as_deref(), Some("2029-08-01"));
    assert_eq!(open("2029-06-01 not_branched 40", "2031-06-01"), None);
}

#[test]
fn nobody_induces_branches_in_the_dry_season() {
    let facts = with("2029-02-01 not_branched 40");
    let dry = given(fao(), &facts).rains();
    let induce = dry.at("2029-02-02", InduceBranching).unwrap();
    assert_eq!(induce.due, day("2029-05-20"));
    assert_eq!(induce.figures.trees, Some(40));
}

/// New shoots after 2 to 3 weeks (pages of an Indonesian rubber researcher, 2017, read in a copy).
#[test]
fn induced_trees_are_looked_at() {
    let facts = with("2029-06-01 not_branched 40\n2029-06-09 branch_induction 40");
    let look = given(fao(), &facts)
        .at("2029-06-10", LookAtInduced)
        .unwrap();
    assert_eq!(
        (look.due, look.late_after),
        (day("2029-06-23"), day("2029-06-30"))
    );
    assert_eq!(look.figures.trees, Some(40));
    let old = with("2031-05-30 not_branched 9\n2031-05-30 branch_induction 9");
    let look = given(fao(), &old).at("2031-06-02", LookAtInduced).unwrap();
    assert_eq!(look.due, day("2031-06-13"), "whatever the age");
    assert_eq!(given(fao(), &old).at("2031-08-23", LookAtInduced), None);
    for closed in ["branched 35", "not_branched 5", "done look_at_induced"] {
        let facts = [&facts, "\n2029-06-20 ", closed].concat();
        let seen = given(fao(), &facts);
        assert_eq!(seen.at("2029-06-21", LookAtInduced), None, "{closed}");
    }
}

#[test]
fn roots_are_looked_at_whatever_other_sickness_is_seen() {
    let fresh = given(fao(), PLANTED);
    assert_eq!(
        fresh.due("2027-06-02", RootCheck).as_deref(),
        Some("2027-08-31")
    );
    let leaf = given(fao(), &with("2027-08-01 leaf_fall 20"));
    assert_eq!(
        leaf.due("2027-08-02", RootCheck).as_deref(),
        Some("2027-08-31")
    );
    let none = given(fao(), &with("2027-08-01 white_root 0"));
    assert_eq!(
        none.due("2027-08-02", RootCheck).as_deref(),
        Some("2027-10-31")
    );
    // A missed check gives way to the next one: four times 91 days after planting.
    assert_eq!(
        fresh.due("2028-07-01", RootCheck).as_deref(),
        Some("2028-05-30")
    );
}

#[test]
fn the_most_urgent_of_what_is_due_is_spoken_of() {
    let facts = with("2027-07-01 dead 31");
    let given = given(fao(), &facts);
    let all = given.tasks_on(day("2027-07-02"));
    let urgent = most_urgent(&all, day("2027-07-02")).unwrap();
    assert_eq!(urgent.kind.name(), "backfill");
    let earlier = most_urgent(&all, day("2027-06-25")).unwrap();
    assert_eq!(earlier.kind.name(), "weed");
    assert_eq!(most_urgent(&all, day("2027-06-02")), None);
}

#[test]
fn nothing_known_nothing_due() {
    let given = given(fao(), "");
    let empty = BlockState::default();
    let all = tasks(
        &given.block,
        &empty,
        &given.season,
        &given.calendar,
        day("2027-06-02"),
    );
    assert_eq!(all, []);
}
