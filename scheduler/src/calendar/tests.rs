//! The calendars that ship against what their sources print, and refusals of wrong files.

use std::{format, string::ToString};

use budwood_parser::Material;

use super::{Calendar, Confidence, Datum, Rounds, profiles, rounds_at};

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
    assert_eq!(rounds_at(&fao.weeding.rounds, 0).unwrap().every_days, 21);
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

/// Common practice: side shoots are cut below 3 m, one looks 1 to 2 weeks after induction, strips
/// of 3 m are cleared, holes measure at least 40 cm each way.
#[test]
fn every_calendar_keeps_common_practice() {
    for (name, text) in profiles::ALL {
        let calendar = Calendar::parse(text).unwrap();
        assert_eq!(calendar.name, *name);
        assert!(calendar.pruning.height_m <= 3.0, "{name}");
        assert!(calendar.induction.look_from_days >= 7, "{name}");
        assert!(calendar.induction.look_until_days <= 14, "{name}");
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
            .collect::<std::vec::Vec<_>>()
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
        for key in calendar.sources.keys() {
            let used = calendar.citations.iter().any(|cited| cited.source == *key);
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

#[test]
fn ages_outside_the_table_have_no_rounds() {
    let row = Rounds {
        from_month: 12,
        until_month: 24,
        every_days: 73,
    };
    assert_eq!(rounds_at(&[row], 11), None);
    assert_eq!(rounds_at(&[row], 12), Some(&row));
    assert_eq!(rounds_at(&[row], 24), None);
}

#[track_caller]
fn refused(from: &str, to: &str, error: &str) {
    assert!(profiles::FAO.contains(from), "{from} is not in the file");
    let text = profiles::FAO.replacen(from, to, 1);
    assert_eq!(Calendar::parse(&text).unwrap_err().to_string(), error);
}

#[test]
fn a_wrong_file_is_refused_by_the_path_of_the_key() {
    refused(
        "edge_cm = { value = 60,",
        "edge_cm = { value = 6,",
        "pits.edge_cm.value: expected 20 to 200, found 6",
    );
    refused(
        "height_m = { value = 3.0, source = \"fao\", confidence = \"read\" }",
        "height_m = { value = 300.0, source = \"fao\", confidence = \"read\" }",
        "pruning.height_m.value: expected 0.5 to 10, found 300",
    );
    refused(
        "slack_days = {",
        "slak_days = { value = 1 }\nslack_days = {",
        "order.slak_days: is not a key that is known here",
    );
    refused(
        "edge_cm = { value = 60, source = \"fao\", ",
        "edge_cm = { value = 60, ",
        "pits.edge_cm.source: is missing",
    );
    refused(
        "edge_cm = { value = 60, source = \"fao\"",
        "edge_cm = { value = 60, source = \"hearsay\"",
        "pits.edge_cm.source: \"hearsay\" is not listed in sources",
    );
    refused(
        "edge_cm = { value = 60, source = \"fao\", confidence = \"read\"",
        "edge_cm = { value = 60, source = \"fao\", confidence = \"sure\"",
        "pits.edge_cm.confidence: expected one of read, copy, derived, common practice, memory, \
         found \"sure\"",
    );
    refused(
        "edge_cm = { value = 60, source",
        "edge_cm = { source",
        "pits.edge_cm.value: is missing",
    );
    refused("[spacing]", "[spaces]", "spacing: is missing");
    refused(
        "datum = { value = \"ground\"",
        "datum = { value = \"knee\"",
        "opening.datum.value: expected one of ground, union, found \"knee\"",
    );
}

#[test]
fn tables_by_age_have_no_gaps_and_no_overlaps() {
    let rows = "weeding.rounds: ages overlap or leave a gap";
    refused(
        "from_month = 12\nuntil_month = 24",
        "from_month = 13\nuntil_month = 24",
        rows,
    );
    refused(
        "from_month = 12\nuntil_month = 24",
        "from_month = 11\nuntil_month = 24",
        rows,
    );
    refused(
        "from_month = 0\nuntil_month = 12",
        "from_month = 0\nuntil_month = 0",
        "weeding.rounds[0].until_month: expected 1 to 360, found 0",
    );
    refused(
        "from_year = 3\nuntil_year = 3",
        "from_year = 2\nuntil_year = 3",
        "feeding.years: year 3 is missing or there twice",
    );
    refused(
        "rounds_a_year = { value = 2",
        "rounds_a_year = { value = 5",
        "feeding.rounds_a_year: does not divide 12 months evenly",
    );
}

const OWN: &str = r#"
name = "hill_valley"

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
    let own = Calendar::parse_changed(profiles::FAO, OWN).unwrap();
    assert_eq!(own.name, "hill_valley");
    assert_eq!((own.opening.girth_cm, own.opening.height_cm), (48.0, 100.0));
    assert_eq!(own.weeding.rounds.len(), 1);
    assert_eq!(own.weeding.strip_m, fao().weeding.strip_m);
    let girth = own
        .citations
        .iter()
        .find(|cited| cited.path == "opening.girth_cm");
    assert_eq!(girth.unwrap().source, "valley");
    assert_eq!(Calendar::parse_changed(profiles::FAO, "").unwrap(), fao());
}

#[test]
fn changes_are_refused_like_a_file() {
    let error = |changes: &str| {
        let result = Calendar::parse_changed(profiles::FAO, changes);
        result.unwrap_err().to_string()
    };
    assert_eq!(
        error("[opening]\ngirth_cm = { value = 48.0 }"),
        "opening.girth_cm.source: is missing",
        "a new value does not keep the old one's source"
    );
    assert_eq!(
        error("[opening]\ngirth = { value = 48.0 }"),
        "opening.girth: is not a key that is known here"
    );
    assert_eq!(
        error("opening = 3"),
        "opening: expected a table, found integer"
    );
    assert!(error("= 3").starts_with("changes: "));
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
        Calendar::parse(&text).unwrap_err().to_string()
    };
    assert_eq!(
        error("month = 5\n", "month = 2\n"),
        "feeding.months: are not in rising order"
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
