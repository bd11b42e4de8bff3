//! `budwood due --plan` and `budwood check calendar` as a person runs them.

use std::{
    fs,
    process::{Command, Output},
};

use budwood_scheduler::TaskKind;

fn budwood(args: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_budwood"))
        .current_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/.."))
        .args(args)
        .output()
        .unwrap()
}

fn page(args: &[&str]) -> String {
    let output = budwood(args);
    let told = String::from_utf8_lossy(&output.stderr).into_owned();
    assert!(output.status.success(), "{told}");
    String::from_utf8(output.stdout).unwrap()
}

fn refusal(args: &[&str]) -> String {
    let output = budwood(args);
    assert!(!output.status.success());
    String::from_utf8(output.stderr).unwrap()
}

const PLAN: [&str; 6] = [
    "due",
    "--plan",
    "--calendar",
    "thailand",
    "--planting",
    "2027-06-01",
];

/// 1.2 ha at 7 x 3 m: 571 points; with 10 % spares and 3 % loss 647.5, so 648; in trays of 20, 660
/// (worked by hand). Leads: 10 months for bag plants (CNRA), two weeks in hand.
#[test]
fn a_plan_is_as_worked_by_hand() {
    let plan = |more: &[&str]| page(&[&PLAN[..], more].concat());
    let text = plan(&["--area", "1.2 ha"]);
    assert!(text.contains("points     571"), "{text}");
    assert!(text.contains("order      648"), "{text}");
    // A twentieth and a fifth of 571.
    assert!(text.contains("losses  28-114  plants"), "{text}");
    // A straight line through 29 cm at 4.5 years has 50 cm at 7.2; stands are opened in November.
    assert!(text.contains("opening    7.4  years"), "{text}");
    assert!(text.contains("in 2034-11; four times"), "{text}");
    assert!(
        text.contains("2026-07-18  order at the latest (polybag)"),
        "{text}"
    );
    assert!(text.contains("(memory)"), "{text}");
    assert!(plan(&["--area", "7.5 rai", "--bundle", "20"]).contains("order      660"));
    let rich = plan(&[
        "--area",
        "1 ha",
        "--costs",
        "demo-data/costs.toml",
        "--slope-pct",
        "30",
    ]);
    // Seven hectare-days of clearing and so on: the grants of the file, 700 and 250.
    assert!(rich.contains("granted 950"), "{rich}");
    assert!(
        rich.contains("until the likely opening, month 89: "),
        "{rich}"
    );
    assert!(rich.contains("terraces and cover"), "{rich}");
}

/// 20 months for budded stumps (CNRA), and two weeks in hand; rains of April and of September as
/// in the south of Ghana (dates are common practice there).
#[test]
fn lead_times_follow_the_material_and_jobs_the_rains() {
    let plan = |more: &[&str]| page(&[&PLAN[..], &["--area", "1.2 ha"], more].concat());
    let text = plan(&["--material", "budded stump"]);
    assert!(
        text.contains("2025-09-17  order at the latest (budded stump)"),
        "{text}"
    );
    assert!(!text.contains("water the bag plants"), "{text}");
    let order = |text: &str| {
        let mut lines = text.lines().map(str::trim_start);
        let line = lines.find(|line| line.contains("order plants") && line.contains("office"));
        line.unwrap()[..10].to_owned()
    };
    assert!(order(&text) < order(&plan(&[])), "{text}");
    for condition in TaskKind::Plant.conditions() {
        assert!(text.contains(condition.words()), "{text}");
    }
    let told = refusal(&[&PLAN[..], &["--area", "1 ha", "--material", "cutting"]].concat());
    assert!(
        told.contains("expected one of polybag, budded_stump, stump, seedling"),
        "{told}"
    );
    let twice = plan(&["--rains", "04-01/07-15,09-01/11-15"]);
    // Four weeks before the end of either rains.
    for due in ["2027-10-18", "2028-06-17", "2028-10-18"] {
        assert!(
            twice
                .lines()
                .any(|line| line.contains(due) && line.contains("firebreak")),
            "{twice}"
        );
    }
    let thrice = [
        "--area",
        "1 ha",
        "--rains",
        "01-01/02-01,04-01/05-01,09-01/10-01",
    ];
    assert!(refusal(&[&PLAN[..], &thrice].concat()).contains("at most two rains a year"));
}

/// A hectare of 100 x 100 m with 2 m left free holds 14 rows of 33 trees (worked by hand), where
/// the area alone says 476.
#[test]
fn a_rectangle_is_counted_in_rows() {
    let text = page(&[&PLAN[..], &["--rectangle", "100x100", "--margin-m", "2"]].concat());
    assert!(
        text.starts_with("1.00 ha at 7 x 3 m (476 trees a hectare)"),
        "{text}"
    );
    assert!(
        text.contains("points     462  rows along the rectangle"),
        "{text}"
    );
}

/// Department of Agriculture, Thailand: 70 g of 20-8-20 in month 2 hold 14 g of nitrogen, 5.6 g of
/// phosphate and 14 g of potash; 571 trees take 40 kg. As much nitrogen is in 93 g of 15-15-15,
/// with 8.4 g more phosphate (worked by hand).
#[test]
fn feeding_is_told_in_nutrients_and_in_another_product() {
    let plan = |more: &[&str]| page(&[&PLAN[..], &["--area", "1.2 ha"], more].concat());
    let text = plan(&[]);
    assert!(
        text.contains("      2     40   14.0    5.6   14.0      -  20-8-20 70\n"),
        "{text}"
    );
    assert!(
        text.contains("only the bag tells what is in it: rock phosphate\n"),
        "{text}"
    );
    let text = plan(&["--instead", "15-15-15"]);
    assert!(
        text.contains("20-8-20 70; or 93 of the other (P2O5 +8.4)\n"),
        "{text}"
    );
    let told = refusal(&[&PLAN[..], &["--area", "1 ha", "--instead", "0-0-60"]].concat());
    assert!(
        told.contains("expected a grade with nitrogen like 15-15-15"),
        "{told}"
    );
}

/// Wilson's interval for 15 of 30 is 33.2 to 66.8 %: 17 points to each side. 53 trees for a mean
/// within 5 % where girths spread by 18 % (Student's t).
#[test]
fn a_census_is_planned_by_how_sure_it_is() {
    let text = page(&[&PLAN[..], &["--area", "1.2 ha"]].concat());
    assert!(
        text.contains("   30  the usual sample of this calendar: the share within 17 points"),
        "{text}"
    );
    assert!(text.contains("   53  the mean within 5 %"), "{text}");
}

#[test]
fn what_can_not_be_planned_is_refused() {
    let with = |more: &[&str]| refusal(&[&PLAN[..], more].concat());
    assert!(with(&["--area=-1 ha"]).contains("the area is -1 ha, expected more than 0"));
    assert!(with(&["--area", "12000 ha"]).contains("expected at most 1000"));
    assert!(with(&["--area", "1 bucket"]).contains("expected an area like"));
    assert!(with(&[]).contains("--area, --rectangle or --outline is needed"));
    assert!(with(&["--area", "1 ha", "--calendar-x"]).contains("--calendar-x"));
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("walk.txt");
    fs::write(&file, "101.5 3.1\n101.501 3.1\n101.501 3.101\n").unwrap();
    let told = with(&["--outline", file.to_str().unwrap()]);
    assert!(
        told.contains("Are latitude and longitude swapped?"),
        "{told}"
    );
    fs::write(
        &file,
        "3.1 101.5\n3.1 101.501\n3.101 101.501\n3.101 101.5\n",
    )
    .unwrap();
    let text = page(&[&PLAN[..], &["--outline", file.to_str().unwrap()]].concat());
    assert!(text.starts_with("1.23 ha at 7 x 3 m"), "{text}");
}

#[test]
fn a_calendar_is_checked_with_lines() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("hill.toml");
    let own = "base = \"malaysia\"\nname = \"hill\"\ntitle = \"Hill Valley growers\"\n";
    fs::write(&file, own).unwrap();
    let text = page(&["check", "calendar", file.to_str().unwrap()]);
    assert!(
        text.starts_with("calendar hill: Hill Valley growers\ngood: "),
        "{text}"
    );
    assert!(text.contains("\n  opening.girth_cm\n"), "{text}");
    fs::write(&file, format!("{own}[pits]\nedge_m = 0.6\n")).unwrap();
    let output = budwood(&["check", "calendar", file.to_str().unwrap()]);
    assert!(!output.status.success());
    let told = String::from_utf8(output.stdout).unwrap();
    assert!(
        told.contains("line 5: pits.edge_m: is not a key that is known here; is edge_cm meant?")
    );
}
