//! What a job tells of: the block's own numbers and the calendar's, each as the texts and the plan
//! have it.

use budwood_parser::Ailment;

use super::given::{Given, day, fao, given};
use crate::{
    handbook::calendar::{Calendar, Datum, profiles},
    jobs::task::Figures,
    land::block::Living,
    words::job::TaskKind::{
        self, Backfill, CountTall, Feed, GirthCensus, InduceBranching, LeafCheck, Line,
        LookAtInduced, Mulch, Open, OpenRest, Prune, RootCheck, SurvivalCheck,
    },
};

const PLANTED: &str = "2027-06-01 planted 600\n2027-06-10 dead 20\n";
const STAND: &str = "2022-06-01 planted 425\n2027-07-01 girth 80/100\n";

fn with(facts: &str) -> Given {
    given(fao(), &[PLANTED, facts].concat()).rains()
}

fn stand(facts: &str) -> Given {
    given(fao(), &[STAND, facts].concat())
}

fn figures(given: &Given, today: &str, kind: TaskKind) -> Figures {
    given.at(today, kind).unwrap().figures
}

/// Of 600 trees 580 live: so many are looked at and counted.
#[test]
fn living_trees_are_looked_at() {
    for (kind, facts, today) in [
        (RootCheck, "", "2027-08-01"),
        (LeafCheck, "", "2027-08-01"),
        (CountTall, "", "2028-12-01"),
        (RootCheck, "2027-12-01 warned white_root", "2027-12-02"),
        (LeafCheck, "2027-12-01 warned pink", "2027-12-02"),
    ] {
        let figures = figures(&with(facts), today, kind);
        assert_eq!(figures.trees, Some(580), "{} {today}", kind.name());
        let near = facts.split_whitespace().last();
        assert_eq!(figures.near, near.and_then(Ailment::from_name));
    }
}

/// What is asked about is those that live, of those that were planted.
#[test]
fn the_dead_are_asked_about_among_the_living() {
    let living = Living {
        first: 580,
        filled: 0,
        planted: 600,
        gaps: 20,
    };
    let count = figures(&with(""), "2027-07-29", SurvivalCheck);
    assert_eq!((count.trees, count.living), (Some(580), Some(living)));
    let fill = figures(&with(""), "2027-07-02", Backfill);
    assert_eq!((fill.trees, fill.living), (Some(20), Some(living)));
}

/// Heights of the calendar: side shoots, and trees that are to branch.
#[test]
fn heights_are_those_of_the_calendar() {
    let calendar = fao();
    let prune = figures(&with(""), "2027-09-01", Prune);
    assert_eq!(prune.height_m, Some(calendar.pruning.height_m));
    let tall = "2028-12-01 not_branched 70\n";
    let induce = figures(&with(tall), "2028-12-02", InduceBranching);
    let count = figures(&with(""), "2028-12-01", CountTall);
    for height in [induce.height_m, count.height_m] {
        assert_eq!(height, Some(calendar.induction.height_m));
    }
    assert_eq!(induce.trees, Some(70));
    let look = [tall, "2028-12-05 branch_induction 60"].concat();
    let look = figures(&with(&look), "2028-12-06", LookAtInduced);
    assert_eq!(look.trees, Some(60));
}

/// One hectare at 8 x 2 m has 625 points (FAO Better Farming Series 25).
#[test]
fn pegs_are_those_of_the_land() {
    let line = given(fao(), "").planned("2027-06-01");
    assert_eq!(figures(&line, "2027-04-02", Line).trees, Some(625));
}

/// FAO Better Farming Series 25: 50 cm at 1 m above the ground, wherever girths are spoken of.
#[test]
fn girths_are_told_with_the_height_at_which_they_are_measured() {
    let rest = stand("2027-08-01 tapping_opened 340");
    for (kind, given, today) in [
        (GirthCensus, stand(""), "2027-07-02"),
        (Open, stand(""), "2027-07-02"),
        (OpenRest, rest, "2027-08-02"),
    ] {
        let told = figures(&given, today, kind);
        let rule = (told.girth_cm, told.datum_cm, told.datum);
        let published = (Some(50.0), Some(100.0), Some(Datum::Ground));
        assert_eq!(rule, published, "{}", kind.name());
    }
    let india = Calendar::parse(profiles::INDIA).unwrap();
    let india = given(india, &[STAND, "2027-08-01 tapping_opened 340"].concat());
    let told = figures(&india, "2027-08-02", OpenRest);
    assert_eq!(
        (told.datum_cm, told.datum),
        (Some(125.0), Some(Datum::Union))
    );
}

/// Only what a publication stands behind is told as a rule.
#[test]
fn what_is_published_is_told_as_that() {
    let is_published = |kind| figures(&with(""), "2027-09-01", kind).is_published;
    for kind in [Feed, Mulch] {
        assert_eq!(
            is_published(kind),
            fao().is_published(kind),
            "{}",
            kind.name()
        );
    }
    assert_ne!(is_published(Feed), is_published(Mulch));
    assert_eq!(
        day("2027-09-01"),
        with("").at("2027-09-01", Feed).unwrap().due
    );
}
