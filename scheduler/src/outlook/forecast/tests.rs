//! Forecasts of single stands.

use std::{string::ToString, vec::Vec};

use chrono::{Days, NaiveDate};

use super::{
    Beside, Forecast, Laws, Outlook, Stands,
    aim::{Part, Wanted},
    bank::bank,
    is_likely_by, months_ahead, opening,
    path::Path,
    sample::{Sample, sample},
};
use crate::{
    handbook::calendar::{Calendar, profiles},
    land::block::{BlockState, Census, Cohort},
    outlook::{
        census::mean_for_share,
        growth::{Course, Seen, Shape, fit},
    },
    sums::chance::quantile,
    words::{event::Source, season::Season},
};

/// Nothing is known of the rains, so that each day counts the same.
const DRY: Season = Season {
    rains_start: None,
    rains_end: None,
    second_rains: None,
    window_opened: None,
};

fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

fn fao() -> Calendar {
    Calendar::parse(profiles::FAO).unwrap()
}

fn cohort(planted_on: &str, planted: u32, backfill: bool) -> Cohort {
    Cohort {
        planted_on: day(planted_on),
        clone_name: None,
        planted,
        dead: 0,
        backfill,
    }
}

fn census(on: &str, values_cm: Vec<f64>, reached: Option<(u32, u32)>) -> Census {
    Census {
        on: day(on),
        values_cm,
        reached,
        source: Source::OwnText,
    }
}

fn state(on: &str, values_cm: Vec<f64>, reached: Option<(u32, u32)>) -> BlockState {
    BlockState {
        cohorts: Vec::from([cohort("2024-01-01", 500, false)]),
        girths: Vec::from([census(on, values_cm, reached)]),
        ..BlockState::default()
    }
}

/// Thirty girths with this mean and a spread of 18 %, at even shares of the distribution.
fn thirty(mean_cm: f64) -> Vec<f64> {
    (0..30)
        .map(|n| mean_cm * (1.0 + 0.184 * quantile((f64::from(n) + 0.5) / 30.0).unwrap()))
        .collect()
}

fn width(forecast: &Forecast) -> i64 {
    (forecast.block.latest - forecast.block.earliest).num_days()
}

/// The days of a range are those on which a tenth, a half and nine tenths of the chance has come.
#[test]
fn the_range_leaves_out_a_tenth_on_each_side() {
    let state = state("2028-01-01", thirty(29.5), None);
    let found = opening(&state, &fao(), &DRY, Beside::default()).unwrap();
    let block = found.block;
    assert_eq!(found.of, 30);
    let calendar = fao();
    let outlook = Outlook::new(&state, &calendar, &DRY, Beside::default()).unwrap();
    let aims = outlook.aims(&calendar, &outlook.parts());
    let chance = |day| outlook.chance(&aims, outlook.year.between(outlook.last.on, day));
    assert!((chance(block.earliest) - 0.1).abs() < 0.01);
    assert!((chance(block.likely) - 0.5).abs() < 0.01);
    assert!((chance(block.latest) - 0.9).abs() < 0.01);
}

/// Worked by hand for one shape alone: on a straight line from 0.5 years, 29.5 cm at 4 years are
/// 8.43 cm a year; the rule of 50 cm at half the trees, who do not lean to a side, needs a mean of
/// 50 cm, which is 2.43 years later.
#[test]
fn a_straight_line_by_hand() {
    let course = Course {
        shape: Shape::Straight,
        rate: 29.5 / 3.5,
        start_years: 0.5,
    };
    let path = Path::start(course, 0.0).seen(4.0, 29.5, 0.1).unwrap();
    let mut calendar = fao();
    calendar.opening.share_pct = 50.0;
    let mut sample = sample(
        &census("2028-01-01", thirty(29.5), None),
        &calendar.opening,
        500,
    );
    let even = sample.as_mut().unwrap();
    (even.skew, even.skew_error) = (0.0, 0.0);
    let parts = [Part {
        trees: 500.0,
        older_years: 0.0,
    }];
    let wanted = Wanted::new(&parts, &calendar.opening, even).unwrap();
    let aim = wanted.on(path.way()).unwrap();
    assert!((aim.grown - 50.0).abs() < 1e-4, "{aim:?}");
    assert!((path.chance(&aim, 20.5 / (29.5 / 3.5)) - 0.5).abs() < 1e-4);
}

/// Girths that are those of one shape soon make it the one that is believed most.
#[test]
fn the_girths_decide_between_the_shapes() {
    let calendar = fao();
    let believed = |girths: [f64; 5]| {
        let samples: Vec<(f64, Sample)> = (2..)
            .zip(girths)
            .map(|(age, girth)| {
                let census = census("2028-01-01", thirty(girth), None);
                (
                    f64::from(age),
                    sample(&census, &calendar.opening, 500).unwrap(),
                )
            })
            .collect();
        let members = bank(&calendar, None, Beside::default(), &samples);
        let weight = |is_meant: &dyn Fn(Shape) -> bool| -> f64 {
            let meant = members.iter().filter(|one| is_meant(one.path.course.shape));
            meant.map(|one| one.weight).sum()
        };
        let all = weight(&|_| true);
        let slowing =
            weight(&|shape| matches!(shape, Shape::Slowing { limit_cm } if limit_cm < 100.0));
        let sigmoid = weight(&|shape| matches!(shape, Shape::Sigmoid { .. }));
        (slowing / all, sigmoid / all)
    };
    let (slowing, sigmoid) = believed([18.0, 29.0, 37.5, 44.5, 50.0]);
    assert!(slowing > 0.5 && sigmoid < 0.1, "{slowing} {sigmoid}");
    let (slowing, sigmoid) = believed([7.8, 17.3, 29.2, 41.3, 51.8]);
    assert!(sigmoid > 0.5 && slowing < 0.1, "{slowing} {sigmoid}");
}

/// Worked by hand: with a spread of 18 % a mean of 50 cm is half the trees, and 65 % need a mean
/// of about 53.7 cm.
#[test]
fn a_mean_at_the_girth_is_only_half_the_trees() {
    let near = |found: Option<f64>, expected: f64| {
        assert!((found.unwrap() - expected).abs() < 0.05, "{found:?}");
    };
    near(mean_for_share(50.0, 0.5, 0.18), 50.0);
    near(mean_for_share(50.0, 0.65, 0.18), 53.7);
    assert_eq!(mean_for_share(50.0, 1.0, 0.18), None);
    assert_eq!(mean_for_share(50.0, 0.99, 0.9), None);
}

#[test]
fn more_trees_narrow_the_range() {
    let range = |reached| {
        let state = state("2030-01-01", Vec::new(), Some(reached));
        width(&opening(&state, &fao(), &DRY, Beside::default()).unwrap())
    };
    assert!(range((80, 200)) < range((12, 30)));
}

#[test]
fn a_second_census_counts_for_more_than_the_handbook() {
    let mut calendar = fao();
    calendar.opening.minimum_months = 0;
    let mut state = state("2027-01-01", thirty(18.0), None);
    let first = opening(&state, &calendar, &DRY, Beside::default()).unwrap();
    state.girths.push(census("2028-01-01", thirty(25.0), None));
    let second = opening(&state, &calendar, &DRY, Beside::default()).unwrap();
    assert!(width(&second) < width(&first), "{first:?} {second:?}");
    let mut fast = calendar.clone();
    fast.growth.age_years = 4.0;
    let apart = |state: &BlockState| {
        let ours = opening(state, &calendar, &DRY, Beside::default())
            .unwrap()
            .block
            .likely;
        (opening(state, &fast, &DRY, Beside::default())
            .unwrap()
            .block
            .likely
            - ours)
            .num_days()
            .abs()
    };
    let once = BlockState {
        girths: state.girths[..1].to_vec(),
        ..state.clone()
    };
    assert!(apart(&state) < apart(&once));
}

#[test]
fn no_forecast_without_knowledge() {
    let none =
        |on, values, reached| opening(&state(on, values, reached), &fao(), &DRY, Beside::default());
    assert_eq!(none("2030-01-01", Vec::new(), None), None);
    assert_eq!(none("2030-01-01", Vec::new(), Some((0, 30))), None);
    assert_eq!(none("2030-01-01", Vec::new(), Some((30, 30))), None);
    assert_eq!(none("2025-06-01", thirty(9.0), None), None, "too young");
    assert_eq!(none("2030-01-01", Vec::from([f64::NAN]), None), None);
    assert_eq!(none("2030-01-01", Vec::from([-30.0]), None), None);
    assert_eq!(none("2030-01-01", Vec::from([1e300]), None), None);
    assert_eq!(none("2023-01-01", thirty(30.0), None), None);
    assert_eq!(
        opening(&BlockState::default(), &fao(), &DRY, Beside::default()),
        None
    );
    let mut dead = state("2028-01-01", thirty(29.0), None);
    dead.cohorts[0].dead = 500;
    assert_eq!(opening(&dead, &fao(), &DRY, Beside::default()), None);
}

#[test]
fn never_before_the_age_or_the_census() {
    let fast = opening(
        &state("2027-01-01", thirty(45.0), None),
        &fao(),
        &DRY,
        Beside::default(),
    )
    .unwrap();
    assert_eq!(fast.block.earliest, day("2029-01-01"));
    let thick = opening(
        &state("2031-01-01", thirty(70.0), None),
        &fao(),
        &DRY,
        Beside::default(),
    )
    .unwrap();
    assert_eq!(thick.block.likely, day("2031-01-01"));
}

/// The Vietnam Rubber Group's procedure of 2004 opens in April and October.
#[test]
fn days_lie_in_the_months_of_opening() {
    let state = state("2028-01-01", thirty(33.0), None);
    let any = opening(&state, &fao(), &DRY, Beside::default())
        .unwrap()
        .block;
    let mut calendar = fao();
    calendar.opening.months = [4, 10].to_vec();
    let snapped = opening(&state, &calendar, &DRY, Beside::default())
        .unwrap()
        .block;
    for (day, free) in [
        (snapped.earliest, any.earliest),
        (snapped.likely, any.likely),
        (snapped.latest, any.latest),
    ] {
        let month = day.to_string()[5..7].to_string();
        assert!(month == "04" || month == "10", "{day}");
        assert!(day >= free && (day - free).num_days() < 183, "{day} {free}");
    }
}

/// Trees of a later planting come later, and the block between: not before its older trees, not
/// after its younger ones.
#[test]
fn each_planting_has_a_range_of_its_own() {
    let mut state = state("2028-01-01", thirty(33.0), None);
    let alone = opening(&state, &fao(), &DRY, Beside::default()).unwrap();
    assert_eq!(alone.cohorts.len(), 1);
    assert_eq!(alone.cohorts[0].range, Some(alone.block));
    state.cohorts = Vec::from([
        cohort("2024-01-01", 300, false),
        cohort("2025-06-01", 200, false),
    ]);
    let both = opening(&state, &fao(), &DRY, Beside::default()).unwrap();
    let likely: Vec<NaiveDate> = both
        .cohorts
        .iter()
        .map(|cohort| cohort.range.unwrap().likely)
        .collect();
    let apart = (likely[1] - likely[0]).num_days();
    assert!((450..=580).contains(&apart), "516 days apart: {apart}");
    assert!(likely[0] < both.block.likely && both.block.likely < likely[1]);
    assert_eq!(both.cohorts[1].trees, 200);
}

#[test]
fn a_few_backfills_hardly_matter() {
    let alone = state("2028-01-01", thirty(33.0), None);
    let mut filled = alone.clone();
    filled.cohorts.push(cohort("2025-01-01", 10, true));
    let likely = |state| {
        opening(state, &fao(), &DRY, Beside::default())
            .unwrap()
            .block
            .likely
    };
    let apart = (likely(&filled) - likely(&alone)).num_days();
    assert!(apart.abs() <= 31, "{apart}");
}

/// A worked example: 29.5 cm at 48 months, where a made-up standard has 24, 33, 41 and 48 cm at 3
/// to 6 years, is "about 4 months behind": by a straight line between two ages it is 4.7. Here the
/// curve that fits the standard best is the handbook's.
#[test]
fn months_behind_the_standard() {
    let illustrated = [(3.0, 24.0), (4.0, 33.0), (5.0, 41.0), (6.0, 48.0)];
    let seen = illustrated.map(|(age_years, girth_cm)| Seen {
        age_years,
        girth_cm,
    });
    let standard = fit(&seen, 90.0, None).unwrap().curve;
    let ahead = standard.months_ahead(29.5, 4.0).unwrap();
    assert!((-6.0..=-4.0).contains(&ahead), "{ahead}");
    let state = state("2028-01-01", thirty(40.85), None);
    let ahead = |girths: &[Vec<Seen>]| {
        let stands = Stands::of(&fao(), girths.to_vec());
        let beside = Beside {
            stands: Some(&stands),
            ..Beside::default()
        };
        months_ahead(&state, &fao(), &DRY, beside).unwrap()
    };
    assert!(
        ahead(&[]).abs() < 0.2,
        "by hand: 70 % at 50 cm is a mean of 55.2 cm at 6 years, 40.85 cm at 4"
    );
    let slow = Vec::from([Seen {
        age_years: 5.0,
        girth_cm: 40.85,
    }]);
    assert!(
        ahead(&std::vec![slow; 8]) > 10.0,
        "ahead of its neighbours by a year"
    );
    assert_eq!(
        months_ahead(&BlockState::default(), &fao(), &DRY, Beside::default()),
        None
    );
}

/// A clone of the fast class is expected earlier than one of the slow class, with the same girths.
#[test]
fn the_clone_moves_what_is_expected() {
    let with = |clone_name: &str| {
        let mut state = state("2027-01-01", thirty(26.0), None);
        state.cohorts[0].clone_name = Some(clone_name.to_string());
        opening(&state, &fao(), &DRY, Beside::default())
            .unwrap()
            .block
            .likely
    };
    assert!(with("PB 330") < with("PB 260"));
    assert!(with("PB 260") < with("GT 1"));
}

/// The quick question has the answer of the long one, on the day itself and beside it.
#[test]
fn what_is_likely_by_a_day_is_what_the_forecast_calls_likely() {
    for girth_cm in [30.0, 38.0, 44.0, 49.0, 55.0] {
        let state = state("2029-01-01", thirty(girth_cm), None);
        let found = opening(&state, &fao(), &DRY, Beside::default()).unwrap();
        let likely = found.block.likely;
        let by = |day| is_likely_by(&state, &fao(), &DRY, Beside::default(), day);
        assert!(by(likely) && by(likely + Days::new(400)), "{girth_cm}");
        assert!(!by(likely - Days::new(1)), "{girth_cm}");
        assert!(!by(likely - Days::new(400)), "{girth_cm}");
    }
    let never = BlockState::default();
    let far = day("2040-01-01");
    assert!(!is_likely_by(&never, &fao(), &DRY, Beside::default(), far));
}

/// A stand is not held against itself: among others of which it is one it is as beside them alone.
#[test]
fn a_stand_is_not_its_own_neighbour() {
    let state = state("2028-01-01", thirty(29.5), None);
    let own = super::seen(&state, &fao(), &DRY);
    let other = Vec::from([Seen {
        age_years: 5.0,
        girth_cm: 30.0,
    }]);
    let found = |girths: Vec<Vec<Seen>>, own: &[Seen]| {
        let stands = Stands::of(&fao(), girths);
        let beside = Beside {
            stands: Some(&stands),
            own,
            laws: None,
        };
        opening(&state, &fao(), &DRY, beside).unwrap().block
    };
    let beside = found(Vec::from([other.clone()]), &[]);
    assert_eq!(found(Vec::from([other, own.clone()]), &own), beside);
    let alone = opening(&state, &fao(), &DRY, Beside::default()).unwrap();
    assert_eq!(found(Vec::from([own.clone()]), &own), alone.block);
    assert!(beside.likely > alone.block.likely, "a slow neighbour");
}

/// Worked by hand: rains from May to September hold 63 % of a year's growth. Planted as they begin, a
/// stand has lived 2.63 years of growth when they end for the third time, and 3 a year after the second
/// planting season. Its neighbours see it at the same age as its own outlook does.
#[test]
fn a_stand_and_its_neighbours_are_on_one_clock() {
    let rains = Season {
        rains_start: Some((5, 1)),
        rains_end: Some((9, 30)),
        ..Season::default()
    };
    let state = |on: &str, girth_cm: f64| BlockState {
        cohorts: Vec::from([cohort("2026-05-01", 480, false)]),
        girths: Vec::from([census(on, thirty(girth_cm), None)]),
        ..BlockState::default()
    };
    let age = |on: &str| super::seen(&state(on, 25.0), &fao(), &rains)[0].age_years;
    assert!(
        (age("2028-10-01") - 2.63).abs() < 0.01,
        "{}",
        age("2028-10-01")
    );
    assert!(
        (age("2029-05-01") - 3.0).abs() < 0.01,
        "{}",
        age("2029-05-01")
    );
    // As thick at the end of the rains as at the end of the dry months that follow: hardly behind.
    let at_end = state("2028-10-01", 25.0);
    let later = state("2029-05-01", 25.0 * 3.0 / 2.63);
    let ahead = |state| months_ahead(state, &fao(), &rains, Beside::default()).unwrap();
    assert!((ahead(&at_end) - ahead(&later)).abs() < 1.5);
    let calendar_age = super::seen(&at_end, &fao(), &DRY)[0].age_years;
    assert!(calendar_age < 2.45, "by the days alone: {calendar_age}");
}

/// Another place tells of the law, and of nothing else: one without censuses changes nothing; stands
/// whose growth slows say later, those that begin slowly say sooner, however fast they grew themselves.
#[test]
fn another_place_tells_only_of_the_law() {
    let state = state("2028-01-01", thirty(29.5), None);
    let likely = |girth_cm: Option<fn(f64) -> f64>| {
        let stand: Vec<Seen> = (2..9)
            .filter_map(|age| {
                let age_years = f64::from(age);
                let girth_cm = girth_cm?(age_years - 0.5);
                Some(Seen {
                    age_years,
                    girth_cm,
                })
            })
            .collect();
        let place = Stands::of(&fao(), std::vec![stand; 4]);
        let laws = Laws::of(&fao(), &[place]);
        let beside = Beside {
            laws: laws.as_ref(),
            ..Beside::default()
        };
        opening(&state, &fao(), &DRY, beside).unwrap().block.likely
    };
    let alone = opening(&state, &fao(), &DRY, Beside::default()).unwrap();
    assert_eq!(likely(None), alone.block.likely);
    let slowing = likely(Some(|years| 80.0 * (1.0 - libm::exp(-0.25 * years))));
    let sigmoid = likely(Some(|years| {
        95.0 * libm::exp(-4.55 * libm::exp(-0.5 * years))
    }));
    assert!(slowing > alone.block.likely, "{slowing}");
    assert!(sigmoid < alone.block.likely, "{sigmoid}");
}
