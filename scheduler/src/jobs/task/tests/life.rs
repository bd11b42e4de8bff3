//! A block's life under each calendar: a farmer who does every job on the day it is due.

use std::{fmt::Write, format, string::String};

use chrono::Days;

use super::given::{Given, day, fact, fao, given, indonesia};
use crate::{
    jobs::task::{Task, most_urgent},
    words::job::TaskKind,
};

/// Days of work from the plan to the end of the seventh year.
const DAYS: u64 = 8 * 365;

/// Does the most urgent job of each day, and writes down what was due.
fn live(mut given: Given) -> String {
    let mut diary = String::new();
    let start = day("2026-06-01");
    for offset in 0..DAYS {
        let today = start.checked_add_days(Days::new(offset)).unwrap();
        if today == day("2027-06-05") {
            given.season.window_opened = Some(today);
        }
        // Done work is due no more, so a day has no more jobs than there are kinds.
        for _ in TaskKind::ALL {
            let Some(task) = most_urgent(&given.tasks_on(today), today).cloned() else {
                break;
            };
            writeln!(diary, "{today} {}", told(&task)).unwrap();
            let line = format!("{today} {}", work(&task, &given));
            let id = given.events.len() as u64 + 1;
            given.events.push(fact(id, &line));
        }
    }
    diary
}

fn told(task: &Task) -> String {
    let mut text = String::from(task.kind.name());
    if let Some(round) = task.figures.round {
        write!(text, " round {round}").unwrap();
    }
    if let Some(trees) = task.figures.trees {
        write!(text, " {trees} trees").unwrap();
    }
    if let Some(kilograms) = task.figures.kilograms {
        write!(text, " {kilograms:.1} kg").unwrap();
    }
    text
}

/// The report of a farmer who does the whole job. A tenth of the plants die at first.
fn work(task: &Task, given: &Given) -> String {
    let trees = task.figures.trees.unwrap_or(0);
    let first_count = given.state().last_of(budwood_parser::Kind::Dead).is_none();
    match task.kind {
        TaskKind::OrderPlants => "done order_plants".into(),
        TaskKind::Clear => "cleared".into(),
        TaskKind::Line => format!("lined {trees}"),
        TaskKind::Mulch => "done mulch".into(),
        TaskKind::Firebreak => "done firebreak".into(),
        TaskKind::CountTall => format!("not_branched {}", trees / 5),
        TaskKind::GetReady => "done get_ready".into(),
        TaskKind::RainWatch => "soaked".into(),
        TaskKind::FillPits | TaskKind::LeafCheck | TaskKind::OpenRest | TaskKind::HandOver => {
            format!("done {}", task.kind.name())
        }
        TaskKind::SowCover => "cover_sown".into(),
        TaskKind::Intercrop => "intercrop_sown".into(),
        TaskKind::DigPits => format!("holes_dug {trees}"),
        TaskKind::Plant => format!("planted {trees}"),
        TaskKind::SurvivalCheck if first_count => format!("dead {}", trees / 10),
        TaskKind::SurvivalCheck => "dead 0".into(),
        TaskKind::Backfill => format!("replaced {trees}"),
        TaskKind::Weed => "weeded".into(),
        TaskKind::Feed => "fertilised".into(),
        TaskKind::Prune => "pruned".into(),
        TaskKind::InduceBranching => format!("branch_induction {trees}"),
        TaskKind::LookAtInduced => format!("branched {trees}"),
        TaskKind::RootCheck => "white_root 0".into(),
        TaskKind::GirthCensus => format!("girth {}", girth(given, trees)),
        TaskKind::Open => format!("tapping_opened {trees}"),
    }
}

/// From the fifth census on nine trees of ten reach the girth. Of a sample that is close all trees
/// are asked for, and measured.
fn girth(given: &Given, trees: u32) -> String {
    let reached = if given.state().girths.len() < 4 {
        trees / 15
    } else {
        trees * 9 / 10
    };
    format!("{reached}/{trees}")
}

/// FAO Better Farming Series 25: every 3 weeks, about 17 rounds in the first year.
#[test]
fn seventeen_weedings_in_the_first_year() {
    let diary = live(given(fao(), "").planned("2027-06-01").rains());
    let first_year = diary.lines().take_while(|line| *line < "2028-06-05");
    let weedings = first_year.filter(|line| line.contains(" weed ")).count();
    assert_eq!(weedings, 17);
}

#[test]
fn seven_years_by_the_fao_handbook() {
    insta::assert_snapshot!(live(given(fao(), "").planned("2027-06-01").rains()));
}

#[test]
fn seven_years_by_indonesian_practice() {
    insta::assert_snapshot!(live(given(indonesia(), "").planned("2027-06-01").rains()));
}
