//! What holds whatever the facts.

use std::{format, string::String, vec::Vec};

use chrono::{Days, NaiveDate};
use proptest::{collection::vec, prelude::*, sample::select};

use super::given::{day, fact, fao, given, indonesia};
use crate::{
    handbook::calendar::Calendar,
    outlook::forecast,
    words::{
        job::{Clock, TaskKind},
        season::Season,
    },
};

const REPORTS: [&str; 22] = [
    "cleared",
    "lined",
    "holes_dug 600",
    "plants 650",
    "planted 500",
    "planted 4294967295",
    "dead 30",
    "dead 4294967295",
    "replaced 30",
    "weeded",
    "fertilised",
    "pruned",
    "branched 100",
    "not_branched 40",
    "branch_induction 40",
    "girth 24/30",
    "girth 9/12",
    "girth cm:51,49,50.5",
    "white_root 2",
    "leaf_fall 3",
    "tapping_opened 10",
    "done order_plants",
];

/// Any day from 1900 to 2200, half of them within ten years, so that facts meet.
fn any_day() -> impl Strategy<Value = NaiveDate> {
    let start = day("1900-01-01");
    let near = 127_u64 * 365..137 * 365;
    prop_oneof![0_u64..300 * 365, near]
        .prop_map(move |days| start.checked_add_days(Days::new(days)).unwrap())
}

fn any_line() -> impl Strategy<Value = String> {
    (any_day(), select(&REPORTS[..])).prop_map(|(on, what)| format!("{on} {what}"))
}

fn any_season() -> impl Strategy<Value = Season> {
    let month_day = || proptest::option::of((0_u32..=13, 0_u32..=32));
    let second = proptest::option::of(((0_u32..=13, 0_u32..=32), (0_u32..=13, 0_u32..=32)));
    let window = proptest::option::of(any_day());
    (month_day(), month_day(), second, window).prop_map(
        |(rains_start, rains_end, second_rains, window_opened)| Season {
            rains_start,
            rains_end,
            second_rains,
            window_opened,
        },
    )
}

fn any_calendar() -> impl Strategy<Value = Calendar> {
    prop_oneof![Just(fao()), Just(indonesia())]
}

proptest! {
    #[test]
    fn any_facts_on_any_day_give_whole_tasks(
        calendar in any_calendar(),
        lines in vec(any_line(), 0..12),
        season in any_season(),
        planned_on in proptest::option::of(any_day()),
        put_off in proptest::option::of((select(&TaskKind::ALL[..]), any_day())),
        today in any_day(),
    ) {
        let mut given = given(calendar, &lines.join("\n"));
        given.season = season;
        given.block.planned_on = planned_on;
        if let Some((kind, until)) = put_off {
            let line = format!("{today} later {} {until}", kind.name());
            given.events.push(fact(99, &line));
        }
        let tasks = given.tasks_on(today);
        let kinds: Vec<_> = tasks.iter().map(|task| task.kind).collect();
        let mut once = kinds.clone();
        once.sort();
        once.dedup();
        prop_assert_eq!(&kinds, &once, "one task of a kind, in order");
        for task in &tasks {
            prop_assert!(task.due <= task.late_after);
            prop_assert!(task.ends.is_none_or(|ends| ends >= today && ends >= task.due));
            prop_assert!(task.clock == task.kind.clock() || task.clock == Clock::Season);
        }
        if let Some(forecast) = forecast::opening(&given.state(), &given.calendar, &given.season, forecast::Beside::default()) {
            prop_assert!(forecast.block.earliest <= forecast.block.likely);
            prop_assert!(forecast.block.likely <= forecast.block.latest);
        }
    }

    #[test]
    fn no_task_of_a_stand_before_planting(
        lines in vec(any_line(), 0..12),
        season in any_season(),
        today in any_day(),
    ) {
        let facts: Vec<_> = lines
            .into_iter()
            .filter(|line| !line.contains("planted") && !line.contains("replaced"))
            .collect();
        let mut given = given(fao(), &facts.join("\n"));
        given.season = season;
        for task in given.tasks_on(today) {
            use TaskKind::{DigPits, OrderPlants, Plant, RainWatch};
            let is_before = matches!(task.kind, OrderPlants | DigPits | RainWatch | Plant);
            prop_assert!(is_before, "{task:?}");
        }
    }

    #[test]
    fn no_planting_without_the_advisers_word(
        lines in vec(any_line(), 0..12),
        season in any_season(),
        planned_on in any_day(),
        today in any_day(),
    ) {
        let mut given = given(fao(), &lines.join("\n"));
        given.season = Season { window_opened: None, ..season };
        given.block.planned_on = Some(planned_on);
        let tasks = given.tasks_on(today);
        prop_assert!(tasks.iter().all(|task| task.kind != TaskKind::Plant));
    }

    #[test]
    fn nothing_is_due_on_the_day_it_was_done(
        calendar in any_calendar(),
        offset in 0_u64..6 * 365,
    ) {
        let on = day("2027-06-01").checked_add_days(Days::new(offset)).unwrap();
        let work = [
            (TaskKind::Weed, "weeded"),
            (TaskKind::Feed, "fertilised"),
            (TaskKind::Prune, "pruned"),
            (TaskKind::RootCheck, "white_root 0"),
            (TaskKind::GirthCensus, "girth 1/30"),
        ];
        for (kind, report) in work {
            let facts = format!("2027-06-01 planted 500\n{on} {report}");
            let given = given(calendar.clone(), &facts);
            let task = given.tasks_on(on).into_iter().find(|task| task.kind == kind);
            // Feeding in the first half of the time to the first round is not that round.
            prop_assert!(task.is_none_or(|task| task.due > on), "{kind:?}");
        }
    }

    #[test]
    fn the_order_in_which_facts_arrive_does_not_matter(
        (lines, shuffled) in independent_lines()
            .prop_flat_map(|lines| (Just(lines.clone()), Just(lines).prop_shuffle())),
        today in 0_u64..3_650,
        calendar in any_calendar(),
    ) {
        let today = day("2026-01-01").checked_add_days(Days::new(today)).unwrap();
        let due = |lines: &[String]| {
            let facts = format!("2027-06-01 planted 500\n{}", lines.join("\n"));
            given(calendar.clone(), &facts).rains().tasks_on(today)
        };
        prop_assert_eq!(due(&lines), due(&shuffled));
    }
}

/// Reports on different days within ten years. Counts of trees belong together and are left out;
/// all else is independent of each other.
fn independent_lines() -> impl Strategy<Value = Vec<String>> {
    let counts = ["planted", "replaced", "dead"];
    let what = select(&REPORTS[..]).prop_filter("a count of trees", move |what| {
        !counts.iter().any(|count| what.starts_with(count))
    });
    proptest::collection::btree_map(0_u64..3_650, what, 0..9).prop_map(|lines| {
        let start = day("2026-01-01");
        lines
            .into_iter()
            .map(|(days, what)| {
                let on = start.checked_add_days(Days::new(days)).unwrap();
                format!("{on} {what}")
            })
            .collect()
    })
}
