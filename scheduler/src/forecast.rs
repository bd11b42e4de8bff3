//! When a stand will likely be ready for opening: always a range, never one date alone.
//!
//! The last census is carried forward on the curve of [`crate::growth`]. The range is meant to
//! hold four times out of five: it adds up the error of the sample and the unknown limit of
//! growth. It knows nothing of droughts, wind and neglect to come.

use chrono::NaiveDate;

use crate::{
    block::{BlockState, Census},
    calendar::{Calendar, Opening},
    days,
    growth::{LIMITS_CM, age_at, mean_for_share},
    number,
    task::tally,
    wilson,
};

const DAYS_A_YEAR: f64 = 365.25;
/// How single girths spread about the mean when too few were measured to tell, as standard
/// deviation over mean (from memory).
const USUAL_SPREAD: f64 = 0.18;
/// From this many girths on a stand's own spread is believed.
const SPREAD_TREES: f64 = 15.0;
/// No stand is more even or less even than this; beyond it a sample was chosen or mixed.
const SPREAD_RANGE: (f64, f64) = (0.05, 0.35);
/// Four times out of five a normal value lies within so many standard deviations.
const FOUR_OF_FIVE: f64 = 1.281_551_566;
/// Nineteen times out of twenty.
const NINETEEN_OF_TWENTY: f64 = 1.959_963_985;

/// When a stand will likely be ready.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Forecast {
    /// Not likely before this day.
    pub earliest: NaiveDate,
    /// The likely day.
    pub likely: NaiveDate,
    /// Not likely after this day.
    pub latest: NaiveDate,
    /// The census that it rests on.
    pub census_on: NaiveDate,
    /// Trees measured in it.
    pub of: u32,
}

/// Looks ahead to the day on which the handbook's share of the trees reaches the girth. None
/// before the second year, and without a census that tells how thick the trees are.
#[must_use]
pub fn opening(state: &BlockState, calendar: &Calendar) -> Option<Forecast> {
    let rule = &calendar.opening;
    let planted_on = state.planted_on()?;
    let census = state.girths.iter().max_by_key(|census| census.on)?;
    let sample = sample(census, rule)?;
    let age_years = exact(census.on.signed_duration_since(planted_on).num_days())? / DAYS_A_YEAR;
    let wanted_cm = mean_for_share(rule.girth_cm, rule.share_pct / 100.0, sample.spread)?;
    let age = |mean_cm: f64, limit_cm: f64| age_at(wanted_cm, mean_cm, age_years, limit_cm);
    let error_cm = sample.error_cm * FOUR_OF_FIVE;
    let likely = age(sample.mean_cm, LIMITS_CM.likely)?;
    let sooner = apart(
        likely - age(sample.mean_cm + error_cm, LIMITS_CM.likely)?,
        likely - age(sample.mean_cm, LIMITS_CM.high)?,
    );
    let later = apart(
        age(sample.mean_cm - error_cm, LIMITS_CM.likely)? - likely,
        age(sample.mean_cm, LIMITS_CM.low)? - likely,
    );
    let old_enough = days::months_after(planted_on, rule.minimum_months)?.max(census.on);
    let day = |years: f64| {
        let days = number::floor(years.max(0.0) * DAYS_A_YEAR)?;
        Some(days::after(planted_on, days)?.max(old_enough))
    };
    Some(Forecast {
        earliest: day(likely - sooner)?,
        likely: day(likely)?,
        latest: day(likely + later)?,
        census_on: census.on,
        of: sample.of,
    })
}

/// Two errors that know nothing of each other, together.
fn apart(one: f64, other: f64) -> f64 {
    libm::sqrt(one * one + other * other)
}

/// What a census tells of the whole stand.
struct Sample {
    of: u32,
    mean_cm: f64,
    /// Standard error of the mean.
    error_cm: f64,
    /// Standard deviation of single trees over their mean.
    spread: f64,
}

fn sample(census: &Census, rule: &Opening) -> Option<Sample> {
    match census.mean_cm() {
        Some(mean_cm) => measured(census, mean_cm),
        None => counted(census, rule),
    }
}

fn measured(census: &Census, mean_cm: f64) -> Option<Sample> {
    let of = u32::try_from(census.values_cm.len()).ok()?;
    let n = f64::from(of);
    let squares: f64 = census
        .values_cm
        .iter()
        .map(|cm| (cm - mean_cm) * (cm - mean_cm))
        .sum();
    let spread = if n < SPREAD_TREES {
        USUAL_SPREAD
    } else {
        let (least, most) = SPREAD_RANGE;
        (libm::sqrt(squares / (n - 1.0)) / mean_cm).clamp(least, most)
    };
    Some(Sample {
        of,
        mean_cm,
        error_cm: spread * mean_cm / libm::sqrt(n),
        spread,
    })
}

/// "12 of 30 reach the string" tells the mean through the usual spread, unless none or all do.
fn counted(census: &Census, rule: &Opening) -> Option<Sample> {
    let (reached, of) = tally(census, rule)?;
    let (low, high) = wilson::interval(reached, of)?;
    let mean = |share| mean_for_share(rule.girth_cm, share, USUAL_SPREAD);
    Some(Sample {
        of,
        mean_cm: mean(f64::from(reached) / f64::from(of))?,
        error_cm: (mean(high)? - mean(low)?) / (2.0 * NINETEEN_OF_TWENTY),
        spread: USUAL_SPREAD,
    })
}

fn exact(days: i64) -> Option<f64> {
    i32::try_from(days).ok().map(f64::from)
}

#[cfg(test)]
mod tests {
    use std::vec::Vec;

    use chrono::NaiveDate;

    use super::{DAYS_A_YEAR, FOUR_OF_FIVE, Forecast, opening};
    use crate::{
        block::{BlockState, Census, Cohort},
        calendar::{Calendar, profiles},
        growth::{LIMITS_CM, age_at, mean_for_share, quantile},
    };

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    fn fao() -> Calendar {
        Calendar::parse(profiles::FAO).unwrap()
    }

    fn state(on: &str, values_cm: Vec<f64>, reached: Option<(u32, u32)>) -> BlockState {
        BlockState {
            cohorts: Vec::from([Cohort {
                planted_on: day("2024-01-01"),
                clone_name: None,
                planted: 500,
                dead: 0,
                backfill: false,
            }]),
            girths: Vec::from([Census {
                on: day(on),
                values_cm,
                reached,
            }]),
            ..BlockState::default()
        }
    }

    /// Thirty girths with this mean and a spread of 18 %, at even shares of the distribution.
    fn thirty(mean_cm: f64) -> Vec<f64> {
        (0..30)
            .map(|n| mean_cm * (1.0 + 0.184 * quantile((f64::from(n) + 0.5) / 30.0).unwrap()))
            .collect()
    }

    fn months(day_in: NaiveDate) -> f64 {
        (day_in - day("2024-01-01")).num_days() as f64 / DAYS_A_YEAR * 12.0
    }

    /// A worked example by another curve: 30 trees of 29.5 cm at 48 months, spread 18 %; 65 % of
    /// the trees at 50 cm in month 100, four times out of five in months 92 to 111.
    #[test]
    fn a_worked_example() {
        let mut calendar = fao();
        calendar.opening.share_pct = 65.0;
        let state = state("2028-01-01", thirty(29.5), None);
        let found = opening(&state, &calendar).unwrap();
        assert!((months(found.likely) - 100.0).abs() < 3.0, "{found:?}");
        assert!((months(found.earliest) - 92.0).abs() < 3.0, "{found:?}");
        assert!((months(found.latest) - 111.0).abs() < 3.0, "{found:?}");
        assert_eq!(found.of, 30);
    }

    #[test]
    fn more_trees_narrow_the_range() {
        let range = |reached: (u32, u32)| {
            let found = opening(&state("2030-01-01", Vec::new(), Some(reached)), &fao()).unwrap();
            (found.latest - found.earliest).num_days()
        };
        assert!(range((80, 200)) < range((12, 30)));
    }

    #[test]
    fn no_forecast_without_knowledge() {
        let none = |on, values, reached| opening(&state(on, values, reached), &fao());
        assert_eq!(none("2030-01-01", Vec::new(), None), None);
        assert_eq!(none("2030-01-01", Vec::new(), Some((0, 30))), None);
        assert_eq!(none("2030-01-01", Vec::new(), Some((30, 30))), None);
        assert_eq!(none("2025-06-01", thirty(9.0), None), None, "too young");
        assert_eq!(none("2030-01-01", Vec::from([f64::NAN]), None), None);
        assert_eq!(none("2023-01-01", thirty(30.0), None), None);
        assert_eq!(opening(&BlockState::default(), &fao()), None);
    }

    #[test]
    fn never_before_the_age_or_the_census() {
        let fast = opening(&state("2027-01-01", thirty(45.0), None), &fao()).unwrap();
        assert_eq!(fast.earliest, day("2029-01-01"));
        let thick = opening(&state("2031-01-01", thirty(70.0), None), &fao()).unwrap();
        assert_eq!(thick.likely, day("2031-01-01"));
    }

    /// Made-up stands whose growth follows the curve with a limit drawn as the range assumes:
    /// about four ranges of five hold the day on which the share is reached.
    #[test]
    fn the_range_holds_four_times_out_of_five() {
        let calendar = fao();
        let wanted_cm = mean_for_share(50.0, 0.7, 0.18).unwrap();
        let mut draws = Draws(7);
        let mut held = 0;
        for _ in 0..400 {
            let off = draws.normal();
            let side = if off < 0.0 {
                LIMITS_CM.likely - LIMITS_CM.low
            } else {
                LIMITS_CM.high - LIMITS_CM.likely
            };
            let limit_cm = LIMITS_CM.likely + off * side / FOUR_OF_FIVE;
            let mean_cm = 24.0 + 12.0 * draws.share();
            let girths = (0..30)
                .map(|_| mean_cm * (1.0 + 0.18 * draws.normal()))
                .collect();
            let truth = age_at(wanted_cm, mean_cm, 4.0, limit_cm);
            let Some(Forecast {
                earliest, latest, ..
            }) = opening(&state("2028-01-01", girths, None), &calendar)
            else {
                continue;
            };
            let months_true = truth.map_or(f64::INFINITY, |years| years * 12.0);
            held += i32::from(months(earliest) <= months_true && months_true <= months(latest));
        }
        assert!((300..=340).contains(&held), "{held} of 400");
    }

    /// Repeatable draws (a linear congruential generator with the constants of Knuth's MMIX).
    struct Draws(u64);

    impl Draws {
        fn share(&mut self) -> f64 {
            self.0 = self
                .0
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            ((self.0 >> 12) as f64 + 0.5) / (1_u64 << 52) as f64
        }

        fn normal(&mut self) -> f64 {
            quantile(self.share()).unwrap()
        }
    }
}
