//! What the season moves, and what it leaves alone.

use std::{
    collections::BTreeMap,
    format,
    string::{String, ToString},
};

use chrono::NaiveDate;

use super::given::{Given, day, fao, given, indonesia};
use crate::{
    handbook::calendar::Calendar,
    jobs::task::Task,
    words::{
        job::{
            Clock,
            TaskKind::{self, Backfill, Clear, Feed, Firebreak, Plant},
        },
        season::Season,
    },
};

const RAINS: Season = Season {
    rains_start: Some((5, 20)),
    rains_end: Some((10, 31)),
    second_rains: None,
    window_opened: None,
};

/// Every job as text, with the days that it has and what they hang on.
fn listed(given: &Given, today: NaiveDate) -> BTreeMap<TaskKind, (Clock, String)> {
    let told = |task: Task| {
        let days = format!("{} {} {:?}", task.due, task.late_after, task.ends);
        (task.kind, (task.clock, days))
    };
    given.tasks_on(today).into_iter().map(told).collect()
}

/// A young stand, half planted, with gaps, in the dry season before its second rains.
fn young(calendar: Calendar) -> Given {
    let facts = "2026-06-05 planted 300\n2026-09-25 dead 40\n2026-07-20 weeded\n\
                 2027-01-10 pruned\n2027-01-12 white_root 0";
    let mut given = given(calendar, facts).planned("2027-06-05");
    given.season = RAINS;
    given
}

/// The rains come five weeks late, then two weeks early: the jobs that hang on the season move,
/// and no other does by a day.
#[test]
fn a_shift_of_the_season_moves_season_jobs_only() {
    let today = day("2027-06-25");
    for calendar in [fao(), indonesia()] {
        let usual = young(calendar.clone());
        let before = listed(&usual, today);
        for (opened, what) in [("2027-06-24", "late"), ("2027-05-06", "early")] {
            let mut shifted = young(calendar.clone());
            shifted.season.window_opened = Some(day(opened));
            let after = listed(&shifted, today);
            let mut moved = String::new();
            for (kind, (clock, days)) in &after {
                let same = before.get(kind).is_some_and(|(_, usual)| usual == days);
                if !same {
                    assert_eq!(*clock, Clock::Season, "{} {what}", kind.name());
                    moved += kind.name();
                    moved += " ";
                }
            }
            for kind in before.keys() {
                assert!(after.contains_key(kind), "{} is gone", kind.name());
            }
            assert!(moved.contains("feed"), "{} {what}: {moved}", calendar.name);
            let left = after.len() - moved.split_whitespace().count();
            assert!(left >= 4, "{moved}: {after:#?}");
        }
    }
}

/// Moving the window by two weeks moves planting by two weeks.
#[test]
fn planting_moves_with_the_window() {
    let due = |opened: &str| {
        let mut block = given(fao(), "2027-05-03 holes_dug 600").planned("2027-06-01");
        block.season = RAINS;
        block.season.window_opened = Some(day(opened));
        let plant = block.at("2027-06-30", Plant).unwrap();
        assert_eq!(plant.clock, Clock::Season);
        (plant.due.to_string(), plant.ends.unwrap() - plant.due)
    };
    let (first, first_days) = due("2027-06-14");
    let (second, second_days) = due("2027-06-28");
    assert_eq!(
        (first.as_str(), second.as_str()),
        ("2027-06-14", "2027-06-28")
    );
    assert_eq!(first_days, second_days);
}

/// The adviser's word tells when the rains began only about their usual day; one within the rains
/// is a second planting.
#[test]
fn rains_begin_when_the_window_opens_about_their_day() {
    let start = |opened: Option<&str>, on: &str| {
        let season = Season {
            window_opened: opened.map(day),
            ..RAINS
        };
        season.rains(day(on)).unwrap().start.to_string()
    };
    assert_eq!(start(None, "2027-06-10"), "2027-05-20");
    assert_eq!(start(Some("2027-06-24"), "2027-06-25"), "2027-06-24");
    assert_eq!(start(Some("2027-05-06"), "2027-05-07"), "2027-05-06");
    assert_eq!(start(Some("2027-08-20"), "2027-08-21"), "2027-05-20");
    assert_eq!(
        start(Some("2027-06-24"), "2028-06-25"),
        "2028-05-20",
        "a year later"
    );
}

/// The season holds a job as long as it is dry; in the rains the job has its own day again.
#[test]
fn a_held_job_hangs_on_the_season() {
    let mut held = young(fao());
    held.events.truncate(1);
    let feed = held.at("2027-02-01", Feed).unwrap();
    assert_eq!((feed.due, feed.clock), (day("2027-05-20"), Clock::Season));
    held.season = Season::default();
    let free = held.at("2027-02-01", Feed).unwrap();
    assert_eq!(free.clock, Clock::Planting);
    assert!(free.due < day("2027-02-02"));
    let filled = young(fao()).at("2026-09-26", Backfill);
    assert_eq!(
        filled.unwrap().clock,
        Clock::Season,
        "it must be done before the rains end"
    );
}

/// Handbooks: not in heavy rain, not in dry weather, soil moist. A flood holds feeding and planting
/// for a fortnight, a word of dry weather for a week, unless rain is told before.
#[test]
fn wet_and_dry_soil_hold_planting_and_feeding() {
    let planting = |facts: &str| {
        let mut block = given(fao(), facts).planned("2027-06-01");
        block.season = RAINS;
        block.season.window_opened = Some(day("2027-06-05"));
        block
    };
    let due = |facts: &str| planting(facts).due("2027-06-12", Plant).unwrap();
    assert_eq!(due("2027-05-03 holes_dug 600"), "2027-06-05");
    assert_eq!(due("2027-06-10 flood 20"), "2027-06-24");
    assert_eq!(due("2027-06-10 flood 0"), "2027-06-05");
    assert_eq!(due("2027-06-11 dry"), "2027-06-18");
    assert_eq!(due("2027-06-11 dry\n2027-06-12 soaked"), "2027-06-05");
    assert_eq!(due("2027-06-08 soaked\n2027-06-11 dry"), "2027-06-05");
    let fed = |facts: &str| {
        let mut block = given(indonesia(), facts);
        block.season = RAINS;
        block.due("2027-09-12", Feed).unwrap()
    };
    let planted = "2027-06-05 planted 500\n";
    assert_eq!(fed(planted), "2027-09-05");
    assert_eq!(
        fed(&[planted, "2027-09-10 flood 40"].concat()),
        "2027-09-24"
    );
    assert_eq!(fed(&[planted, "2027-09-10 dry"].concat()), "2027-09-17");
}

/// Rains from April and from September, as in the south of Ghana (dates are common practice there):
/// each job waits for those that its block is in, or the next.
#[test]
fn where_it_rains_twice_a_year_the_next_rains_count() {
    let season = Season {
        rains_start: Some((4, 1)),
        rains_end: Some((7, 15)),
        second_rains: Some(((9, 1), (11, 15))),
        window_opened: None,
    };
    let rains = |season: Season, on: &str| {
        let rains = season.rains(day(on)).unwrap();
        format!("{} {}", rains.start, rains.end)
    };
    let (first, second) = ("2027-04-01 2027-07-15", "2027-09-01 2027-11-15");
    for (on, expected) in [
        ("2027-01-10", first),
        ("2027-07-15", first),
        ("2027-07-16", second),
        ("2027-11-15", second),
        ("2027-11-16", "2028-04-01 2028-07-15"),
    ] {
        assert_eq!(rains(season, on), expected, "{on}");
    }
    let swapped = Season {
        rains_start: Some((9, 1)),
        rains_end: Some((11, 15)),
        second_rains: Some(((4, 1), (7, 15))),
        ..season
    };
    assert_eq!(rains(swapped, "2027-01-10"), first);
    let opened = |on: &str| Season {
        window_opened: Some(day(on)),
        ..season
    };
    assert_eq!(
        rains(opened("2027-09-12"), "2027-09-13"),
        "2027-09-12 2027-11-15"
    );
    assert_eq!(rains(opened("2027-09-12"), "2027-06-01"), first);
    let planted_in = |planned: &str, window: &str, today: &str| {
        let mut block = given(fao(), "2027-02-20 holes_dug 600").planned(planned);
        block.season = opened(window);
        block.due(today, Plant)
    };
    let spring = planted_in("2027-04-10", "2027-04-05", "2027-04-06");
    assert_eq!(spring, Some("2027-04-05".to_string()));
    assert_eq!(planted_in("2027-09-10", "2027-04-05", "2027-04-06"), None);
    let autumn = planted_in("2027-09-10", "2027-09-03", "2027-09-04");
    assert_eq!(autumn, Some("2027-09-03".to_string()));
}

/// FAO by common practice: a firebreak four weeks before the rains end on 31 October. It is still
/// worth cutting for two months; then it is spoken of before the next dry season.
#[test]
fn a_firebreak_is_cut_before_each_dry_season() {
    let cut = |facts: &str, today: &str| {
        let planted = ["2026-06-01 planted 600\n", facts].concat();
        given(fao(), &planted).rains().at(today, Firebreak)
    };
    let due = |facts: &str, today: &str| cut(facts, today).map(|task| task.due.to_string());
    let (first, second) = (
        Some("2027-10-03".to_string()),
        Some("2028-10-03".to_string()),
    );
    assert_eq!(due("", "2027-06-01"), first);
    assert_eq!(due("", "2027-12-30"), first);
    assert_eq!(due("", "2027-12-31"), second);
    assert_eq!(due("2027-10-03 done firebreak", "2027-10-05"), second);
    // One cut in the middle of the rains is overgrown when they end.
    assert_eq!(due("2027-07-01 done firebreak", "2027-10-05"), first);
    let task = cut("", "2027-06-01").unwrap();
    assert_eq!(task.late_after, day("2027-10-31"));
    assert_eq!(task.figures.width_m, Some(3.0));
    // Seven years: the last is cut before the rains end in which they are full, and none on that day.
    let last = |planted: &str| {
        let given = given(fao(), &[planted, " planted 600"].concat()).rains();
        given.due("2027-08-01", Firebreak)
    };
    assert_eq!(last("2020-11-01"), first);
    assert_eq!(last("2020-10-31"), None);
    let unknown = given(fao(), "2026-06-01 planted 600");
    assert_eq!(unknown.at("2027-10-05", Firebreak), None);
}

/// FAO by common practice: felling in the half year before planting and 75 days before it at the
/// latest; after the rains where these end in time.
#[test]
fn felling_waits_for_the_dry_season() {
    let clear = |planned: &str, rains: Option<((u32, u32), (u32, u32))>| {
        let mut block = given(fao(), "2026-06-01 done order_plants").planned(planned);
        block.season.rains_start = rains.map(|(start, _)| start);
        block.season.rains_end = rains.map(|(_, end)| end);
        block.due("2026-08-01", Clear)
    };
    let on = |text: &str| Some(text.to_string());
    assert_eq!(clear("2027-06-01", None), on("2026-12-01"));
    let usual = Some(((5, 20), (10, 31)));
    assert_eq!(clear("2027-06-01", usual), on("2026-12-01"));
    assert_eq!(clear("2027-04-01", usual), on("2026-11-01"));
    // Where it rains until it must be done, nobody waits. 75 days before 1 June is 18 March.
    assert_eq!(
        clear("2027-06-01", Some(((9, 1), (3, 17)))),
        on("2027-03-18")
    );
    assert_eq!(
        clear("2027-06-01", Some(((9, 1), (3, 18)))),
        on("2026-12-01")
    );
}
