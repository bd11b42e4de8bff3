//! `budwood rehearse` on the demo's list: two years in the real engine.

use std::process::Command;

fn rehearse(more: &[&str]) -> String {
    let output = Command::new(env!("CARGO_BIN_EXE_budwood"))
        .current_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/.."))
        .args(["rehearse", "demo-data/roll.csv"])
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

/// The looks and rounds of a month are one text: about 20 texts in the year of planting and 14 in each
/// later one, where there were 32 and 26 when each job had a text of its own; never more than 40.
#[test]
fn a_farmer_gets_few_texts() {
    let page = rehearse(&["--years", "4", "--rains-late", "0"]);
    for (number, most_each) in [("1", 20.95), ("2", 14.0), ("3", 14.0), ("4", 14.0)] {
        let told = year(&page, number);
        let [_, _, per_farmer, most, ..] = told[..] else {
            panic!("{told:?}");
        };
        assert!(per_farmer <= most_each, "year {number}: {per_farmer}");
        assert!(most <= 40.0, "year {number}: {most}");
    }
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

/// Who has more jobs than texts may speak of misses some of them, and the page says which.
#[test]
fn jobs_that_no_text_spoke_of_are_told() {
    let line = "  late, and no text ever spoke of it: ";
    let page = rehearse(&["--years", "2", "--rains-late", "0"]);
    let usual = page
        .lines()
        .find_map(|told| told.strip_prefix(line))
        .unwrap();
    assert!(usual.contains("weed "), "{usual}");
    // Jobs that arise once are spoken of in their time.
    for job in ["plant ", "survival check ", "backfill "] {
        assert!(!usual.contains(job), "{usual}");
    }
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
