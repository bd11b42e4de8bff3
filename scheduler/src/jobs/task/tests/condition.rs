//! The conditions that a person reads on a plan are those that decide.

use std::{collections::BTreeSet, vec, vec::Vec};

use super::given::{Given, day, fao, given};
use crate::{
    jobs::task::{
        Condition::{self, *},
        case::Case,
    },
    words::job::TaskKind,
};

/// A block, planned for June 2027 in rains from 20 May, with these facts.
fn block(facts: &str) -> Given {
    given(fao(), facts).planned("2027-06-01").rains()
}

fn opened(facts: &str) -> Given {
    block(facts).window("2027-06-02")
}

fn unplanned(facts: &str) -> Given {
    given(fao(), facts).rains()
}

fn holds(given: &Given, condition: Condition, today: &str) -> bool {
    let state = given.state();
    condition.holds(&Case {
        block: &given.block,
        state: &state,
        season: &given.season,
        calendar: &given.calendar,
        today: day(today),
    })
}

const DUG: &str = "2027-05-02 holes_dug 600";
const SOME_DUG: &str = "2027-05-02 holes_dug 300";
const STAND: &str = "2027-06-03 planted 600\n";

/// A job, a condition of it, a block for which all hold, and one for which this one does not.
type Row = (TaskKind, Condition, &'static str, Given, Given);

fn before_planting() -> Vec<Row> {
    use TaskKind::{Clear, DigPits, FillPits, Line, OrderPlants};
    let ordered = "2026-09-01 done order_plants\n";
    let with = |first: &str, then: &str| block(&[first, then].concat());
    let day = "2027-05-21";
    vec![
        (OrderPlants, Planned, day, block(""), unplanned("")),
        (OrderPlants, NothingOrdered, day, block(""), block(ordered)),
        (
            OrderPlants,
            NothingPlanted,
            day,
            block(""),
            block("2027-05-20 planted 100"),
        ),
        (Clear, PlantsOrdered, day, block(ordered), block("")),
        (
            Clear,
            NothingCleared,
            day,
            block(ordered),
            with(ordered, "2027-03-01 cleared"),
        ),
        (
            Line,
            NothingPegged,
            day,
            block(""),
            block("2027-04-01 lined"),
        ),
        (DigPits, HolesMissing, day, block(SOME_DUG), block(DUG)),
        (FillPits, HolesDug, day, block(DUG), block(SOME_DUG)),
        (
            FillPits,
            HolesOpen,
            day,
            block(DUG),
            with(DUG, "\n2027-05-19 done fill_pits"),
        ),
    ]
}

fn when_rain_is_near() -> Vec<Row> {
    use TaskKind::{Plant, RainWatch, SowCover};
    let mut uncovered = block("2027-03-01 cleared");
    uncovered.calendar.cover.is_asked = false;
    let day = "2027-05-21";
    vec![
        (RainWatch, SomeHoles, day, block(SOME_DUG), block("")),
        (
            RainWatch,
            WindowShut,
            day,
            block(DUG),
            block(DUG).window("2027-05-20"),
        ),
        (Plant, WindowOpen, "2027-06-04", opened(DUG), block(DUG)),
        (
            Plant,
            PlacesLeft,
            "2027-06-04",
            opened(DUG),
            opened(&[DUG, "\n", STAND].concat()),
        ),
        (
            SowCover,
            CoverAsked,
            day,
            block("2027-03-01 cleared"),
            uncovered,
        ),
        (
            SowCover,
            LandClear,
            day,
            block("2027-03-01 cleared"),
            block(""),
        ),
        (
            SowCover,
            NoCover,
            day,
            block("2027-03-01 cleared"),
            block("2027-03-01 cleared\n2027-05-20 cover_sown"),
        ),
    ]
}

fn of_young_trees() -> Vec<Row> {
    use TaskKind::{Backfill, Mulch, Weed};
    let with = |facts: &str| block(&[STAND, facts].concat());
    let mut no_rains = with("");
    no_rains.season = crate::words::season::Season::default();
    let young = "2027-07-20";
    vec![
        (Weed, Planted, young, with(""), block("")),
        (
            Backfill,
            DeadCounted,
            young,
            with("2027-07-10 dead 40"),
            with(""),
        ),
        (
            Backfill,
            GapsTooMany,
            young,
            with("2027-07-10 dead 40"),
            with("2027-07-10 dead 0"),
        ),
        (Mulch, RainsKnown, young, with(""), no_rains),
    ]
}

fn of_grown_trees() -> Vec<Row> {
    use TaskKind::{CountTall, HandOver, InduceBranching, LookAtInduced, Open, OpenRest};
    let with = |facts: &str| block(&[STAND, facts].concat());
    let old = "2033-01-10";
    let ready = "2033-01-02 girth 480/600";
    let tapped = "2032-09-01 tapping_opened 500";
    vec![
        (
            CountTall,
            SomeUnbranched,
            "2029-01-10",
            with("2028-12-20 branched 10"),
            with("2028-12-20 branched 600"),
        ),
        (
            InduceBranching,
            TallCounted,
            "2029-06-10",
            with("2029-06-01 not_branched 40"),
            with("2029-06-01 not_branched 0"),
        ),
        (
            LookAtInduced,
            Induced,
            "2029-06-10",
            with("2029-06-01 branch_induction 40"),
            with("2029-06-01 not_branched 40"),
        ),
        (
            Open,
            ThickEnough,
            old,
            with(ready),
            with("2033-01-02 girth 100/600"),
        ),
        (
            OpenRest,
            TreesLeft,
            old,
            with(tapped),
            with("2032-09-01 tapping_opened 600"),
        ),
        (
            OpenRest,
            Tapped,
            old,
            with(tapped),
            with("2032-09-01 tapping_opened 20"),
        ),
        (
            HandOver,
            Tapped,
            old,
            with(tapped),
            with("2032-09-01 tapping_opened 20"),
        ),
    ]
}

/// With it the job comes, without it and nothing else it does not; and no condition is left out.
#[test]
fn each_condition_decides_over_its_job() {
    let mut seen = BTreeSet::new();
    let rows = [
        before_planting(),
        when_rain_is_near(),
        of_young_trees(),
        of_grown_trees(),
    ];
    for (kind, condition, today, with, without) in rows.into_iter().flatten() {
        let what = std::format!("{}: {}", kind.name(), condition.words());
        assert!(with.at(today, kind).is_some(), "{what}");
        assert!(without.at(today, kind).is_none(), "not so, {what}");
        for one in kind.conditions() {
            assert!(holds(&with, *one, today), "{what}, and {}", one.words());
            let expected = *one != condition && !follows(*one, condition);
            assert_eq!(
                holds(&without, *one, today),
                expected,
                "without {what}: {}",
                one.words()
            );
        }
        seen.insert(condition);
    }
    let named = TaskKind::ALL.into_iter().flat_map(TaskKind::conditions);
    let named: BTreeSet<Condition> = named.copied().collect();
    assert_eq!(seen, named);
}

/// A person tells conditions apart by their words alone.
#[test]
fn no_two_conditions_read_the_same() {
    let named = TaskKind::ALL.into_iter().flat_map(TaskKind::conditions);
    let named: BTreeSet<Condition> = named.copied().collect();
    let words: BTreeSet<&str> = named.iter().map(|one| one.words()).collect();
    assert_eq!(words.len(), named.len());
    assert!(!words.contains(""));
}

/// Whether one condition cannot hold without another: uncounted dead leave no gaps.
fn follows(one: Condition, other: Condition) -> bool {
    matches!((one, other), (GapsTooMany, DeadCounted))
}
