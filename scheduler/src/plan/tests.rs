//! Points against published densities and worked examples, back-scheduling against a table worked
//! from cited lead times, the seven years under each calendar.

use std::{
    fmt::Write,
    format,
    string::{String, ToString},
    vec,
    vec::Vec,
};

use budwood_parser::{Material, Measure, Unit};
use chrono::NaiveDate;

use super::{
    Land, Measured, PlanError, StepKind, back_schedule, in_rectangle,
    life::years,
    outline::{Outline, count},
    points, points_of,
};
use crate::{
    handbook::calendar::{Calendar, profiles},
    jobs::orders::{in_bundles, plants_to_order},
    land::{directory::Block, stand},
    words::{
        id::{BlockId, PersonId},
        job::TaskKind,
        season::Season,
    },
};

fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

fn calendar(name: &str) -> Calendar {
    let (_, text) = profiles::ALL
        .iter()
        .find(|(known, _)| *known == name)
        .unwrap();
    Calendar::parse(text).unwrap()
}

fn block(planned_on: &str) -> Block {
    Block {
        id: BlockId(1),
        owner: PersonId(1),
        name: "A".to_string(),
        area: Some(Measure {
            value: 1.0,
            unit: Unit::Hectare,
        }),
        area_source: "gps".to_string(),
        slope_pct: None,
        spacing_m: None,
        point: None,
        planned_on: Some(day(planned_on)),
        clone_name: None,
    }
}

/// What each source prints for a hectare. Sources round up, down or to what feet gave, so each
/// stands beside what our function gives; larger gaps are named.
#[test]
fn published_against_computed_densities() {
    let table = [
        (8.0, 2.0, 625, 0),   // FAO Better Farming Series 25, 1977
        (7.0, 3.0, 476, 0),   // phanbonvietlien.com (copy); estate text (copy)
        (6.0, 3.0, 555, 0),   // CNRA, fiche technique no. 1 (copy)
        (7.0, 2.8, 510, 0),   // CNRA (copy)
        (5.0, 3.0, 666, 0),   // CNRA (copy)
        (7.0, 2.5, 571, 0),   // phanbonvietlien.com (copy)
        (8.0, 2.5, 500, 0),   // Brazilian silviculture pages (copy)
        (4.0, 2.0, 1_250, 0), // INIFAP, Mexico 2022
        (8.0, 4.0, 312, 0),   // INIFAP
        (10.0, 5.0, 200, 0),  // INIFAP
        (8.0, 3.0, 419, -3),  // 67 trees a rai, Thai notes (copy)
        (6.7, 3.4, 445, -7),  // Tamil Nadu (copy): 22 x 11 feet
        (4.9, 4.9, 420, -4),  // Tamil Nadu (copy): 16 x 16 feet
        (6.1, 3.0, 539, 7),   // Tamil Nadu (copy): 20 x 10 feet
        (5.5, 3.5, 520, -1),  // Rubber Development Department, Sri Lanka: 510 to 520
        (4.5, 4.3, 520, -4),  // the same
    ];
    for (row_m, in_row_m, published, gap) in table {
        let ours = points(Land::level(1.0), row_m, in_row_m).unwrap();
        assert_eq!(i64::from(ours) - published, gap, "{row_m} x {in_row_m}");
    }
    // 76 trees a rai (1,600 square metres) at 7 x 3 m, Thai notes (copy).
    assert_eq!(points(Land::level(0.16), 7.0, 3.0), Ok(76));
}

/// Slope by cosine: 30 % is 1.04, 50 % is 1.12 (geometry).
#[test]
fn slopes_count_by_what_was_measured_along_them() {
    let land = |slope_pct, area, spacing| {
        let land = Land {
            slope_pct,
            area,
            spacing,
            ..Land::level(1.0)
        };
        points(land, 7.0, 3.0).unwrap()
    };
    let (level, ground) = (Measured::Level, Measured::AlongTheGround);
    assert_eq!(land(30.0, level, level), 476);
    assert_eq!(land(30.0, level, ground), 497);
    assert_eq!(land(50.0, level, ground), 532);
    assert_eq!(land(30.0, ground, level), 456);
    assert_eq!(land(30.0, ground, ground), 476);
    let mut taped = block("2027-06-01");
    taped.area_source = "tape".to_string();
    taped.slope_pct = Some(30.0);
    for (name, _) in profiles::ALL {
        let calendar = calendar(name);
        let both = (
            points_of(&taped, &calendar),
            stand::points(&taped, &calendar),
        );
        assert_eq!(both.0.unwrap().ok(), both.1, "{name}");
    }
}

/// Worked by hand: a hectare 100 x 100 m at 7 x 3 m with a margin of 2 m has 14 rows of 33; a
/// strip of 400 x 25 m has 4 rows of 133, and with 3.5 m 3 rows of 132.
#[test]
fn shape_and_margin_decide() {
    let rectangle = |length, width, margin| in_rectangle((length, width), (7.0, 3.0), margin);
    assert_eq!(rectangle(100.0, 100.0, 2.0), Ok(462));
    assert_eq!(rectangle(400.0, 25.0, 2.0), Ok(532));
    assert_eq!(rectangle(400.0, 25.0, 3.5), Ok(396));
    assert_eq!(rectangle(10.0, 3.0, 2.0), Ok(0));
    let outline = |length: f64, width: f64| {
        Outline::new(vec![
            (0.0, 0.0),
            (length, 0.0),
            (length, width),
            (0.0, width),
        ])
        .unwrap()
    };
    for (length, width, margin) in [(100.0, 100.0, 2.0), (400.0, 25.0, 2.0), (400.0, 25.0, 3.5)] {
        let counted = count(&outline(length, width), 90.0, (7.0, 3.0), margin);
        assert_eq!(counted, rectangle(length, width, margin));
        let upright = count(&outline(width, length), 0.0, (7.0, 3.0), margin);
        assert_eq!(upright, counted);
    }
    // An L: 60 x 60 m with a corner of 30 x 30 m cut out. Rows of 2 m, trees of 2 m, no margin:
    // 16 rows of 31 trees below (0 to 30 m), 15 of 16 above.
    let ell = [
        (0.0, 0.0),
        (60.0, 0.0),
        (60.0, 30.0),
        (30.0, 30.0),
        (30.0, 60.0),
        (0.0, 60.0),
    ];
    let ell = Outline::new(ell.to_vec()).unwrap();
    assert_eq!(ell.area_m2(), 2_700.0);
    assert_eq!(count(&ell, 90.0, (2.0, 2.0), 0.5), Ok(15 * 30 + 15 * 15));
}

#[test]
fn land_that_is_none_is_refused() {
    let error = |land: Land| points(land, 7.0, 3.0).unwrap_err().to_string();
    assert_eq!(
        error(Land::level(-1.0)),
        "the area is -1 ha, expected more than 0"
    );
    assert_eq!(
        error(Land::level(f64::NAN)),
        "the area is NaN ha, expected more than 0"
    );
    assert_eq!(
        error(Land::level(12_000.0)),
        "the area is 12000 ha, expected at most 1000"
    );
    assert!(points(Land::level(1.0), 0.0, 3.0).is_err());
    let steep = Land {
        slope_pct: 400.0,
        ..Land::level(1.0)
    };
    assert_eq!(error(steep), "the slope is 400 %, expected 0 to 173");
    let bow = vec![(0.0, 0.0), (10.0, 10.0), (10.0, 0.0), (0.0, 10.0)];
    assert_eq!(Outline::new(bow), Err(PlanError::Crossing(1, 3)));
    let line = vec![(0.0, 0.0), (10.0, 0.0), (0.0, 0.0)];
    assert_eq!(Outline::new(line), Err(PlanError::FewCorners(2)));
    let back = vec![(0.0, 0.0), (10.0, 0.0), (5.0, 0.0), (5.0, 9.0)];
    assert_eq!(Outline::new(back), Err(PlanError::Crossing(1, 2)));
    let nowhere = vec![(0.0, 0.0), (f64::NAN, 0.0), (5.0, 0.0)];
    assert_eq!(Outline::new(nowhere), Err(PlanError::NoPlace(2)));
    assert!(in_rectangle((1e300, 1e300), (7.0, 3.0), 2.0).is_err());
}

/// 0.8 ha at 6 x 3 m with 15 % spares (worked by hand): 444 and 67; in bundles of 20: 520.
#[test]
fn plants_come_in_bundles() {
    let points = points(Land::level(0.8), 6.0, 3.0).unwrap();
    let plants = plants_to_order(points, 15.0, 0.0).unwrap();
    assert_eq!(
        (points, plants, in_bundles(plants, 20)),
        (444, 511, Some(520))
    );
    assert_eq!(in_bundles(520, 20), Some(520));
    assert_eq!(in_bundles(520, 0), None);
    assert_eq!(in_bundles(u32::MAX, 20), None);
}

#[track_caller]
fn by(calendar: &Calendar, what: StepKind, wanted: &str) {
    let steps = back_schedule(calendar, day("2027-06-01"), Material::Polybag);
    let found = steps.iter().find(|step| step.what == what);
    assert_eq!(found.map(|step| step.by), Some(day(wanted)), "{what:?}");
}

/// Planting on 1 June 2027, worked from the cited leads: pits 1 month and refilling 10 days before
/// (FAO), bag plants watered the day before (Rubber Board of India), first count after 20 days
/// (North-West Vietnam), first feeding at 2 months (Thailand), filling to the end of year 1 (FAO,
/// Vietnam) or 2 (Indonesia).
#[test]
fn back_schedules_are_as_worked_from_the_sources() {
    let fao = calendar("fao");
    by(&fao, StepKind::Job(TaskKind::DigPits), "2027-05-01");
    by(&fao, StepKind::RefillPits, "2027-05-22");
    by(&fao, StepKind::Water, "2027-05-31");
    by(&fao, StepKind::LastFilling, "2028-05-31");
    by(
        &calendar("vietnam"),
        StepKind::Job(TaskKind::SurvivalCheck),
        "2027-06-21",
    );
    by(
        &calendar("thailand"),
        StepKind::Job(TaskKind::Feed),
        "2027-08-01",
    );
    by(&calendar("indonesia"), StepKind::LastFilling, "2029-05-31");
    // 10 months for bag plants (CNRA), and two weeks in hand.
    by(&fao, StepKind::Order(Material::Polybag), "2026-07-18");
}

fn told(name: &str) -> String {
    let calendar = calendar(name);
    let season = Season {
        rains_start: Some((5, 20)),
        rains_end: Some((10, 31)),
        second_rains: None,
        window_opened: None,
    };
    let mut page = String::new();
    for done in years(&block("2027-06-01"), &calendar, season, day("2025-06-01")) {
        let trees = done.task.figures.trees;
        let trees = trees.map_or(String::new(), |trees| format!(" {trees}"));
        let (on, month) = (done.on, done.month);
        writeln!(page, "{on} month {month}: {}{trees}", done.task.kind.name()).unwrap();
    }
    page
}

/// The list of seven years under each calendar, to be read by a person when it changes.
#[test]
fn seven_years_under_each_calendar() {
    for (name, _) in profiles::ALL {
        insta::assert_snapshot!(format!("seven_years_{name}"), told(name));
    }
}

/// No job comes before its condition, and none after its last day, whatever the calendar.
#[test]
fn every_calendar_leads_to_an_opened_stand() {
    for (name, _) in profiles::ALL {
        let calendar = calendar(name);
        let page = told(name);
        let on = |job: &str| -> Vec<NaiveDate> {
            let lines = page
                .lines()
                .filter(|line| line.split_whitespace().nth(3) == Some(job));
            lines.map(|line| day(&line[..10])).collect()
        };
        let planted = on("plant")[0];
        assert_eq!(planted, day("2027-06-01"), "{name}");
        for before in ["order_plants", "clear", "line", "dig_pits"] {
            assert!(on(before)[0] < planted, "{name}: {before}");
        }
        // Fell only when plants are sure.
        assert!(on("order_plants")[0] <= on("clear")[0], "{name}");
        let last_filling = super::days::months_after(planted, calendar.backfill.until_months);
        assert!(
            on("backfill").iter().all(|day| Some(*day) < last_filling),
            "{name}"
        );
        let least = super::days::months_after(planted, calendar.opening.minimum_months);
        assert!(on("open").iter().all(|day| Some(*day) >= least), "{name}");
        assert!(on("firebreak").len() >= 4, "{name}");
    }
}
