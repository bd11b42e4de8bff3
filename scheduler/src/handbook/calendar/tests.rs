//! The calendars that ship against what their sources print, and refusals of wrong files.

use std::{
    format,
    string::{String, ToString},
    vec::Vec,
};

use budwood_parser::Material;

use super::{Calendar, Confidence, Datum, profiles};
use crate::words::job::TaskKind;

fn fao() -> Calendar {
    Calendar::parse(profiles::FAO).unwrap()
}

fn indonesia() -> Calendar {
    Calendar::parse(profiles::INDONESIA).unwrap()
}

/// FAO Better Farming Series 25 (1977): 8 x 2 m, pits of 60 cm a month before and refilled 10 days
/// before, stem kept clean to 3 m, replacing in the first year, 50 cm at 1 m after 5 years,
/// weeding every 3 weeks.
#[test]
fn fao_is_as_printed() {
    let fao = fao();
    assert_eq!((fao.spacing.row_m, fao.spacing.in_row_m), (8.0, 2.0));
    assert_eq!(fao.pits.edge_cm, 60);
    assert_eq!(
        (fao.pits.dig_months_before, fao.pits.refill_days_before),
        (1, 10)
    );
    assert_eq!(fao.pruning.height_m, 3.0);
    assert_eq!(fao.backfill.until_months, 12);
    assert_eq!((fao.opening.girth_cm, fao.opening.height_cm), (50.0, 100.0));
    assert_eq!(fao.opening.minimum_months, 60);
    assert_eq!(fao.weeding.rounds.first().unwrap().every_days, 21);
}

/// Wartono 2014 (hole of 40 cm best), estate text (infilling in years 1 and 2, 5 % deaths
/// tolerable), Rinojati et al. 2017 (45 cm), procedure 2016 (counts every 2 weeks for 3 months).
#[test]
fn indonesia_is_as_printed() {
    let indonesia = indonesia();
    assert_eq!(indonesia.pits.edge_cm, 40);
    assert_eq!(indonesia.backfill.until_months, 24);
    assert_eq!(indonesia.backfill.survival_target_pct, 95.0);
    assert_eq!(indonesia.opening.girth_cm, 45.0);
    assert_eq!(indonesia.opening.datum, Datum::Union);
    let again = indonesia.survival.again.unwrap();
    assert_eq!((again.every_days, again.until_days), (14, 90));
}

/// Common practice: side shoots are cut below 3 m, strips of 3 m are cleared, holes measure at least
/// 40 cm each way. New shoots are seen 2 to 3 weeks after induction, when the tie comes off (pages of
/// an Indonesian rubber researcher, 2017, read in a copy).
#[test]
fn every_calendar_keeps_common_practice() {
    for (name, text) in profiles::ALL {
        let calendar = Calendar::parse(text).unwrap();
        assert_eq!(calendar.name, *name);
        assert!(calendar.pruning.height_m <= 3.0, "{name}");
        assert!(calendar.induction.look_from_days >= 14, "{name}");
        assert!(calendar.induction.look_until_days <= 21, "{name}");
        assert!(calendar.weeding.strip_m >= 3.0, "{name}");
        assert!(calendar.pits.edge_cm >= 40, "{name}");
    }
}

/// Rubber notes of the Indonesian Rubber Research Centre: grams a tree and year; the two rounds of
/// a year add up to the year.
#[test]
fn the_feeding_table_adds_up_to_the_printed_years() {
    let printed = [
        (1, [250.0, 120.0, 100.0, 50.0]),
        (2, [250.0, 200.0, 200.0, 75.0]),
        (3, [250.0, 200.0, 200.0, 100.0]),
        (4, [300.0, 200.0, 250.0, 100.0]),
        (5, [300.0, 200.0, 250.0, 100.0]),
        (6, [350.0, 200.0, 300.0, 75.0]),
        (15, [350.0, 200.0, 300.0, 75.0]),
    ];
    let feeding = indonesia().feeding;
    for (year, grams) in printed {
        let months = (year - 1) * 12..year * 12;
        for (product, grams) in ["urea", "tsp", "kcl", "kieserite"].iter().zip(grams) {
            let sum: f64 = feeding
                .rounds
                .iter()
                .filter(|round| months.contains(&round.month))
                .flat_map(|round| &round.doses)
                .filter(|dose| dose.product == *product)
                .map(|dose| dose.grams)
                .sum();
            assert_eq!(sum, grams, "{product} in year {year}");
        }
    }
    assert_eq!(feeding.basal.first().unwrap().grams, 100.0);
}

#[test]
fn rounds_of_a_year_lie_evenly() {
    let months = |a_year: &str| {
        let text = profiles::INDONESIA.replace(
            "rounds_a_year = { value = 2",
            &format!("rounds_a_year = {{ value = {a_year}"),
        );
        let rounds = Calendar::parse(&text).unwrap().feeding.rounds;
        rounds
            .iter()
            .map(|round| round.month)
            .filter(|month| *month < 12)
            .collect::<Vec<_>>()
    };
    assert_eq!(months("2"), [3, 9]);
    assert_eq!(months("6"), [1, 3, 5, 7, 9, 11]);
}

#[test]
fn every_value_names_a_source_that_is_listed_in_full() {
    for (name, text) in profiles::ALL {
        let calendar = Calendar::parse(text).unwrap();
        assert!(calendar.citations.len() > 40, "{name}");
        for cited in &calendar.citations {
            let source = calendar.sources.get(&cited.source).unwrap();
            assert!(source.len() > 20, "{name}: {}", cited.path);
            let needs_no_page = matches!(
                cited.confidence,
                Confidence::CommonPractice | Confidence::Memory
            );
            assert!(
                needs_no_page || cited.source != "practice",
                "{name}: {}",
                cited.path
            );
        }
        for key in budwood_parser::table::texts_of(text, "sources").keys() {
            let used = calendar.sources.contains_key(key);
            assert!(used, "{name}: nothing is taken from {key}");
        }
    }
}

#[test]
fn leads_cover_every_material() {
    let order = fao().order;
    assert_eq!(order.lead_days.len(), Material::ALL.len());
    assert_eq!(order.lead_days.get(&Material::Polybag), Some(&304));
}

#[track_caller]
fn faults(text: &str) -> Vec<String> {
    let error = Calendar::parse(text).unwrap_err();
    error.faults.iter().map(ToString::to_string).collect()
}

/// The faults of the FAO calendar with one change, each without its line.
#[track_caller]
fn refused(from: &str, to: &str, wanted: &[&str]) {
    assert!(profiles::FAO.contains(from), "{from} is not in the file");
    let text = profiles::FAO.replacen(from, to, 1);
    let error = Calendar::parse(&text).unwrap_err();
    let found: Vec<String> = error
        .faults
        .iter()
        .map(|fault| format!("{}: {}", fault.path, fault.what))
        .collect();
    assert_eq!(found, wanted);
}

#[test]
fn a_wrong_file_is_refused_by_the_path_of_the_key() {
    refused(
        "edge_cm = { value = 60,",
        "edge_cm = { value = 6,",
        &["pits.edge_cm.value: expected 20 to 200 centimetres, found 6"],
    );
    refused(
        "height_m = { value = 3.0, source = \"fao\", confidence = \"read\" }",
        "height_m = { value = 300.0, source = \"fao\", confidence = \"read\" }",
        &["pruning.height_m.value: expected 0.5 to 10 metres, found 300"],
    );
    refused(
        "slack_days = {",
        "slak_days = {",
        &[
            "order.slack_days: is missing",
            "order.slak_days: is not a key that is known here; is slack_days meant?",
        ],
    );
    refused(
        "edge_cm = {",
        "edge_m = {",
        &[
            "pits.edge_cm: is missing",
            "pits.edge_m: is not a key that is known here; is edge_cm meant?",
        ],
    );
    refused(
        "edge_cm = { value = 60, source = \"fao\", ",
        "edge_cm = { value = 60, ",
        &["pits.edge_cm.source: is missing"],
    );
    refused(
        "edge_cm = { value = 60, source = \"fao\"",
        "edge_cm = { value = 60, source = \"hearsay\"",
        &["pits.edge_cm.source: \"hearsay\" is not listed in sources"],
    );
    refused(
        "edge_cm = { value = 60, source = \"fao\", confidence = \"read\"",
        "edge_cm = { value = 60, source = \"fao\", confidence = \"sure\"",
        &[
            "pits.edge_cm.confidence: expected one of read, copy, derived, common practice, \
           memory, found \"sure\"",
        ],
    );
    refused(
        "edge_cm = { value = 60, source",
        "edge_cm = { source",
        &["pits.edge_cm.value: is missing"],
    );
    refused(
        "datum = { value = \"ground\"",
        "datum = { value = \"knee\"",
        &["opening.datum.value: expected one of ground, union, found \"knee\""],
    );
}

#[test]
fn tables_by_age_have_no_gaps_and_no_overlaps() {
    let row = "from_month = 12\nuntil_month = 24";
    refused(
        row,
        "from_month = 13\nuntil_month = 24",
        &["weeding.rounds[1].from_month: leaves a gap: no row holds from month 12 to 13"],
    );
    refused(
        row,
        "from_month = 11\nuntil_month = 24",
        &[
            "weeding.rounds[1].from_month: is an overlap: the row before holds until month 12, not 11",
        ],
    );
    refused(
        "from_month = 0\nuntil_month = 12",
        "from_month = 0\nuntil_month = 0",
        &["weeding.rounds[0].until_month: expected 1 to 361 months after planting, found 0"],
    );
    refused(
        "from_year = 3\nuntil_year = 3",
        "from_year = 2\nuntil_year = 3",
        &["feeding.years: year 3 is missing or there twice"],
    );
    refused(
        "rounds_a_year = { value = 2",
        "rounds_a_year = { value = 5",
        &["feeding.rounds_a_year: does not divide 12 months evenly"],
    );
}

/// Every fault at once, in the order of the file, each with its line.
#[test]
fn all_faults_are_told_with_their_lines() {
    let text = [
        "base = \"thailand\"",
        "name = \"hill\"",
        "[sources]",
        "hill = \"Hill Valley growers, rule of their meeting, 2031\"",
        "[opening]",
        "girth_cm = { value = 4.8, source = \"hill\", confidence = \"read\" }",
        "share_pct = { value = 60.0, confidence = \"read\" }",
        "[pits]",
        "edge_mm = { value = 400, source = \"hill\", confidence = \"read\" }",
        "[[weeding.rounds]]",
        "from_month = 0",
        "until_month = 12",
        "every_days = 30",
        "source = \"hill\"",
        "confidence = \"read\"",
        "[[weeding.rounds]]",
        "from_month = 18",
        "until_month = 60",
        "every_days = 60",
        "source = \"hill\"",
        "confidence = \"read\"",
    ]
    .join("\n");
    assert_eq!(
        faults(&text),
        [
            "line 6: opening.girth_cm.value: expected 10 to 200 centimetres, found 4.8",
            "line 7: opening.share_pct.source: is missing",
            "line 9: pits.edge_mm: is not a key that is known here; is edge_cm meant?",
            "line 17: weeding.rounds[1].from_month: leaves a gap: no row holds from month 12 to 18",
            "title: is missing: a calendar with a base has one of its own",
        ]
    );
    let cut = faults("name = \"x\"\ntitle = \n");
    assert!(
        cut.iter().all(|fault| fault.starts_with("line 2: file: ")),
        "{cut:?}"
    );
}

const OWN: &str = r#"
base = "fao"
name = "hill_valley"
title = "Hill Valley growers"

[sources]
valley = "Hill Valley growers, rule of their meeting, 2031"

[opening]
girth_cm = { value = 48.0, source = "valley", confidence = "read" }

[[weeding.rounds]]
from_month = 0
until_month = 60
every_days = 60
source = "valley"
confidence = "read"
"#;

#[test]
fn an_organisation_puts_its_own_values_in_place() {
    let own = Calendar::parse(OWN).unwrap();
    assert_eq!(own.name, "hill_valley");
    assert_eq!((own.opening.girth_cm, own.opening.height_cm), (48.0, 100.0));
    assert_eq!(own.weeding.rounds.len(), 1);
    assert_eq!(own.weeding.strip_m, fao().weeding.strip_m);
    assert_eq!(own.citation("opening.girth_cm").unwrap().source, "valley");
    // Two steps: what it says, then Thailand, then FAO.
    let thai = Calendar::parse(&OWN.replacen("fao", "thailand", 1)).unwrap();
    assert_eq!(
        (thai.opening.girth_cm, thai.opening.height_cm),
        (48.0, 150.0)
    );
    assert_eq!(thai.pits.edge_cm, 60);
}

#[test]
fn an_own_file_is_refused_like_a_whole_one() {
    let own = |section: &str| {
        let head = OWN.split("[opening]").next().unwrap();
        faults(&format!("{head}{section}"))
    };
    assert_eq!(
        own("[opening]\ngirth_cm = { value = 48.0 }"),
        [
            "line 10: opening.girth_cm.source: is missing",
            "line 10: opening.girth_cm.confidence: is missing"
        ],
        "a new value does not keep the old one's source"
    );
    assert_eq!(
        own("[opening]\ngirth = 3"),
        [
            "line 10: opening.girth: is not a key that is known here; known are: datum, girth_cm, \
             height_cm, minimum_months, months, ready_days_before, rest_every_days, sample_trees, \
             share_pct"
        ]
    );
    assert_eq!(
        faults(&OWN.replacen("valley =", "cnra =", 1))
            .first()
            .unwrap(),
        "line 7: sources.cnra: is another page in the base; give it another key"
    );
    assert!(
        faults(&OWN.replacen("fao", "oz", 1))
            .first()
            .unwrap()
            .starts_with("line 2: base: expected one of china, cote_divoire, fao, ")
    );
}

/// A feeding table is taken as a whole: nothing of the base's is left beside the own one.
#[test]
fn feeding_tables_are_never_blended() {
    let thai = Calendar::parse(profiles::THAILAND).unwrap();
    let products: Vec<&str> = thai
        .feeding
        .rounds
        .iter()
        .flat_map(|round| &round.doses)
        .map(|dose| dose.product.as_str())
        .collect();
    assert!(products.iter().all(|product| *product == "20-8-20"));
    assert!(thai.feeding.basal.iter().all(|dose| dose.product != "tsp"));
}

/// Contradictions between publications stay visible, with the source of each side.
#[test]
fn contradictions_are_kept() {
    for (name, text) in profiles::ALL {
        let calendar = Calendar::parse(text).unwrap();
        assert!(!calendar.also_published.is_empty(), "{name}");
        for other in &calendar.also_published {
            assert!(
                calendar.sources.contains_key(&other.source),
                "{name}: {}",
                other.of
            );
            assert!(
                calendar.citation(&other.of).is_some(),
                "{name}: {}",
                other.of
            );
        }
    }
}

/// Rows of Côte d'Ivoire (CNRA; APROMAC 2021; Obouayeba et al. 2002), Sri Lanka (Rubber
/// Development Department), China (copies of advisory texts), Malaysia (RISDA).
#[test]
fn the_newer_calendars_are_as_printed() {
    let printed = [
        (profiles::COTE_DIVOIRE, 7.0, 2.8, 510, 40, 12),
        (profiles::SRI_LANKA, 5.5, 3.5, 519, 60, 12),
        (profiles::CHINA, 7.0, 2.8, 510, 70, 24),
        (profiles::MALAYSIA, 6.0, 3.3, 505, 60, 12),
    ];
    for (text, row_m, in_row_m, a_hectare, edge_cm, until_months) in printed {
        let calendar = Calendar::parse(text).unwrap();
        let spacing = calendar.spacing;
        assert_eq!((spacing.row_m, spacing.in_row_m), (row_m, in_row_m));
        let trees = crate::sums::rounding::floor(10_000.0 / (row_m * in_row_m));
        assert_eq!(trees, Some(a_hectare), "{}", calendar.name);
        assert_eq!(calendar.pits.edge_cm, edge_cm, "{}", calendar.name);
        // CNRA and APROMAC: 60 cm deep and 40 cm wide, round; the others print an edge.
        let is_round = calendar.name == "cote_divoire";
        assert_eq!(calendar.pits.round_deep_cm, is_round.then_some(60));
        assert_eq!(
            calendar.backfill.until_months, until_months,
            "{}",
            calendar.name
        );
    }
    let lanka = Calendar::parse(profiles::SRI_LANKA).unwrap();
    assert_eq!(lanka.planting.months, [5, 6, 10, 11]);
    assert!(!lanka.are_published(&["opening.girth_cm", "opening.share_pct"]));
    assert!(fao().are_published(&["opening.girth_cm", "opening.share_pct"]));
    assert!(!lanka.is_published(TaskKind::Open) && fao().is_published(TaskKind::Open));
}

/// The four calendars beside FAO and Indonesia: opening girth, height and datum, share,
/// and the height to which the stem is kept clean, as their sources print them.
#[test]
fn openings_are_as_printed() {
    let printed = [
        (profiles::INDIA, 50.0, 125.0, Datum::Union, 70.0, 2.5),
        (profiles::THAILAND, 50.0, 150.0, Datum::Ground, 50.0, 2.0),
        (profiles::VIETNAM, 50.0, 100.0, Datum::Ground, 70.0, 3.0),
        (profiles::PHILIPPINES, 45.0, 160.0, Datum::Ground, 60.0, 3.0),
    ];
    for (text, girth_cm, height_cm, datum, share_pct, clean_m) in printed {
        let calendar = Calendar::parse(text).unwrap();
        let opening = calendar.opening;
        assert_eq!(opening.girth_cm, girth_cm, "{}", calendar.name);
        assert_eq!(opening.height_cm, height_cm, "{}", calendar.name);
        assert_eq!(opening.datum, datum, "{}", calendar.name);
        assert_eq!(opening.share_pct, share_pct, "{}", calendar.name);
        assert_eq!(calendar.pruning.height_m, clean_m, "{}", calendar.name);
    }
}

#[test]
fn a_feeding_table_has_one_shape_and_rises() {
    let error = |from: &str, to: &str| {
        let text = profiles::THAILAND.replacen(from, to, 1);
        assert_ne!(text, profiles::THAILAND);
        let error = Calendar::parse(&text).unwrap_err();
        let fault = error.faults.first().unwrap();
        format!("{}: {}", fault.path, fault.what)
    };
    assert_eq!(
        error("month = 5\n", "month = 2\n"),
        "feeding.months[1].month: comes after month 2 of the row before"
    );
    let year = "[[feeding.years]]\nfrom_year = 1\nuntil_year = 1\ngrams = { urea = 1.0 }\n\
                source = \"doa\"\nconfidence = \"copy\"\n\n[pruning]";
    assert_eq!(
        error("[pruning]", year),
        "feeding.months: and years cannot both be there"
    );
}

#[test]
fn text_that_is_not_a_table_is_refused() {
    for text in ["", "= 3", "name = 3", "\u{0}", "[[weeding]]"] {
        assert!(Calendar::parse(text).is_err(), "{text:?}");
    }
}
