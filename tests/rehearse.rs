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

#[test]
fn a_calendar_that_asks_for_less_sends_less() {
    let reminders = |calendar: &str| {
        let page = rehearse(&["--years", "1", "--rains-late", "0", "--calendar", calendar]);
        year(&page, "1").get(1).copied().unwrap()
    };
    // 17 weedings in year 1 (FAO) against 2 to 3 (Indonesian estate text).
    assert!(reminders("indonesia") < reminders("fao"));
}
