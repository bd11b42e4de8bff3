//! `budwood rehearse` on the demo's list: two years in the real engine.

use std::{path::Path, process::Command};

fn rehearse(more: &[&str]) -> String {
    rehearse_list(Path::new("demo-data/roll.csv"), more)
}

fn rehearse_list(roll: &Path, more: &[&str]) -> String {
    let output = Command::new(env!("CARGO_BIN_EXE_budwood"))
        .current_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/.."))
        .arg("rehearse")
        .arg(roll)
        .args(more)
        .output()
        .unwrap();
    let told = String::from_utf8_lossy(&output.stderr).into_owned();
    assert!(output.status.success(), "{told}");
    String::from_utf8(output.stdout).unwrap()
}

/// The two plays differ by the rains and not by luck: a shift of three weeks moves most jobs and
/// hardly adds to them.
#[test]
fn late_rains_alone_make_the_difference() {
    let page = rehearse(&["--years", "3", "--price", "0.05", "--rains-late", "21"]);
    let (usual, late) = page.split_once("With rains 21 days later").unwrap();
    let reminders = |part: &str| {
        ["1", "2", "3"]
            .map(|no| year(part, no)[1])
            .iter()
            .sum::<f64>()
    };
    let (usual, late) = (reminders(usual), reminders(late));
    assert!((late - usual).abs() < 0.05 * usual, "{page}");
}

/// The numbers of a line that begins with this year of the play.
fn year(page: &str, year: &str) -> Vec<f64> {
    let line = page
        .lines()
        .find(|line| line.split_whitespace().next() == Some(year));
    let numbers = line.unwrap().split_whitespace();
    numbers.map(|number| number.parse().unwrap()).collect()
}

#[test]
fn says_what_a_year_costs_and_moves_with_the_rains() {
    let page = rehearse(&["--years", "2", "--price", "0.05", "--rains-late", "30"]);
    let usual = page.split("With rains 30 days later").next().unwrap();
    let first = year(usual, "1");
    let [_, reminders, per_farmer, most, answers, segments, cost] = first[..] else {
        panic!("{first:?}");
    };
    assert!(reminders > 0.0 && answers > 0.0, "{page}");
    // Every text that is sent is one segment: tests/wording.rs; the price is per segment.
    assert_eq!(segments, reminders + answers, "{page}");
    assert!((cost - segments * 0.05).abs() < 0.006, "{page}");
    // One routine text a week to a phone.
    assert!(per_farmer <= most && most <= 53.0, "{page}");
    assert!(page.contains("blocks planted: "), "{page}");
    assert!(page.contains("The shift makes "), "{page}");
    assert_eq!(
        page,
        rehearse(&["--years", "2", "--price", "0.05", "--rains-late", "30"])
    );
}

/// What a year costs a farmer's patience, and that nothing decisive starves for it. When repeats went
/// before what nobody had been told of, 20.3 texts went in the first of these years, and ordering,
/// clearing and feeding were late on some blocks before a text spoke of them.
#[test]
fn few_texts_and_each_decisive_job_in_time() {
    let page = rehearse(&["--calendar", "fao", "--rains-late", "21"]);
    let (usual, late) = page.split_once("With rains 21 days later").unwrap();
    for (number, most_each) in
        [1, 2, 3, 4, 5, 6, 7].map(|year| (year, if year == 1 { 20.0 } else { 14.0 }))
    {
        let told = year(usual, &number.to_string());
        let [_, _, per_farmer, most, ..] = told[..] else {
            panic!("{told:?}");
        };
        assert!(per_farmer <= most_each, "year {number}: {per_farmer}");
        assert!(most <= 40.0, "year {number}: {most}");
    }
    for part in [usual, late] {
        let (decisive, _) = untold(part);
        assert_eq!(decisive, "none", "{page}");
    }
}

/// What the page says of jobs that were late before a text spoke of them: those with a text of their own,
/// and those of the field round.
fn untold(page: &str) -> (&str, &str) {
    let line = "  late before a text spoke of it: ";
    let told = page.lines().find_map(|told| told.strip_prefix(line));
    told.unwrap().split_once("; in the field round: ").unwrap()
}

/// Hands are counted only where it is known what work takes.
#[test]
fn tells_who_has_more_work_than_days() {
    let line = "farmers with more work due than days for it: ";
    let told = |more: &[&str]| {
        let page = rehearse(&[&["--years", "1", "--rains-late", "0"], more].concat());
        page.split_once(line)
            .map(|(_, rest)| rest.lines().next().unwrap().to_owned())
    };
    assert_eq!(told(&[]), None);
    let folder = tempfile::tempdir().unwrap();
    let costs = |people: u32, days: u32| {
        let file = folder.path().join(format!("{people}-{days}.toml"));
        let text = format!(
            "currency = \"reed\"\npeople = {people}\n[[work]]\njob = \"weed\"\ndays_a_hectare = {days}\n"
        );
        std::fs::write(&file, text).unwrap();
        told(&["--costs", file.to_str().unwrap()]).unwrap()
    };
    assert_eq!(costs(2, 2), "never", "a day of weeding in three weeks");
    assert_ne!(costs(1, 60), "never");
    assert_eq!(costs(100, 60), "never");
}

/// Stands grow as their own calendar leads to expect: Indonesia's opens at 45 cm after 4.5 years,
/// India's at 50 cm after seven (sources in their calendars).
#[test]
fn stands_grow_by_their_own_calendar() {
    let opened = |calendar: &str| {
        let page = rehearse(&["--years", "7", "--rains-late", "0", "--calendar", calendar]);
        let line = page
            .lines()
            .find_map(|line| line.trim().strip_prefix("blocks that come to opening: "));
        let blocks = line.unwrap().split(", ");
        blocks
            .filter_map(|part| part.split_once(" in ")?.0.parse::<u32>().ok())
            .sum::<u32>()
    };
    let (fast, slow) = (opened("indonesia"), opened("india"));
    assert!(fast > slow + 5, "{fast} and {slow} of 19 blocks");
}

/// Who has more jobs than texts may speak of misses some of them, and the page says which: here five people
/// share one phone.
#[test]
fn jobs_that_were_told_too_late_are_listed() {
    let folder = tempfile::tempdir().unwrap();
    let roll = folder.path().join("roll.csv");
    let mut list = include_str!("../demo-data/roll.csv").to_owned();
    for number in ["900004", "900006", "900008", "900010"] {
        list = list.replace(&format!("{number},en"), "900001,en");
    }
    std::fs::write(&roll, list).unwrap();
    let page = rehearse_list(&roll, &["--years", "2", "--rains-late", "0"]);
    let (decisive, round) = untold(&page);
    assert!(decisive.contains("survival check "), "{page}");
    assert!(round.contains("weed "), "{page}");
}

/// A list without plus signs needs to be told its country.
#[test]
fn numbers_of_the_country_are_read() {
    let folder = tempfile::tempdir().unwrap();
    let roll = folder.path().join("roll.csv");
    let list = include_str!("../demo-data/roll.csv").replace("+447700", "07700");
    std::fs::write(&roll, list).unwrap();
    let run = |more: &[&str]| {
        Command::new(env!("CARGO_BIN_EXE_budwood"))
            .args(["rehearse", roll.to_str().unwrap(), "--years", "1"])
            .args(["--rains-late", "0"])
            .args(more)
            .output()
            .unwrap()
    };
    assert!(!run(&[]).status.success());
    assert!(run(&["--country", "GB"]).status.success());
    let config = concat!(env!("CARGO_MANIFEST_DIR"), "/../deploy/budwood.toml");
    assert!(run(&["--config", config]).status.success());
    let told = run(&["--country", "GBR"]);
    assert!(String::from_utf8_lossy(&told.stderr).contains("two letters"));
}
