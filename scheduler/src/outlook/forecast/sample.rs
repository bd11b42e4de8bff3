//! What a census tells of the whole stand: its mean, how trees spread, and how sure both are.

use alloc::vec::Vec;

use chrono::NaiveDate;

use super::{chance, years};
use crate::{
    handbook::calendar::Opening,
    land::block::{BlockState, Census},
    outlook::{
        census::{USUAL_SPREAD, mean_for_share},
        growth::LEAST_AGE_YEARS,
        readiness::tally,
    },
    sums::wilson,
};

/// How sure the usual spread of girths is (from memory).
const USUAL_SPREAD_ERROR: f64 = 0.04;
/// Thin trees are further below the mean than thick ones above it. How far, and how sure that is:
/// assumptions.
const USUAL_SKEW: f64 = -0.3;
const USUAL_SKEW_ERROR: f64 = 0.3;
/// Neighbours are alike, so that trees along a row tell less than as many from everywhere: so many
/// measured trees stand for one. An assumption.
const TREES_FOR_ONE: f64 = 1.4;
/// No stand is more even or less even than this; beyond it a sample was chosen or mixed.
const SPREAD_RANGE: (f64, f64) = (0.05, 0.45);
/// However many trees are measured, a tape and the place on the stem leave this much of the mean
/// open (an assumption).
const TAPE_ERROR: f64 = 0.01;

/// Trees grow alike as they grow thick: the spread falls with this power of the mean girth. Of three
/// plots whose diameters were measured at 4 and at 12 years it fell from 36, 25 and 23 % to 14.5,
/// 12.6 and 13.1 % (extract of a Vietnamese thesis), while such stands about double their girth.
pub(super) const EVENING: f64 = 0.6;

/// What one census tells.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sample {
    /// When it was taken.
    pub on: NaiveDate,
    /// Trees measured.
    pub of: u32,
    /// Mean girth in centimetres.
    pub mean_cm: f64,
    /// Standard error of the mean of the whole stand.
    pub error_cm: f64,
    /// How single trees spread: standard deviation over mean.
    pub spread: f64,
    /// Standard error of the spread.
    pub spread_error: f64,
    /// How far the trees lean to the thick side (the third standardised moment), and the standard
    /// error of that.
    pub skew: f64,
    /// Standard error of the lean.
    pub skew_error: f64,
}

impl Sample {
    /// What is taken for the spread of a stand of which nothing was measured until this day.
    pub(super) const fn unmeasured(on: NaiveDate, rule: &Opening) -> Self {
        Self {
            on,
            of: 0,
            mean_cm: rule.girth_cm,
            error_cm: 0.0,
            spread: USUAL_SPREAD,
            spread_error: USUAL_SPREAD_ERROR,
            skew: USUAL_SKEW,
            skew_error: USUAL_SKEW_ERROR,
        }
    }
}

/// The censuses that tell how thick the trees are, oldest first; of one day the last one told.
pub(super) fn all(state: &BlockState, rule: &Opening, planted_on: NaiveDate) -> Vec<Sample> {
    let old_enough =
        |sample: &Sample| years(planted_on, sample.on).is_some_and(|age| age >= LEAST_AGE_YEARS);
    let mut samples: Vec<Sample> = state
        .girths
        .iter()
        .rev()
        .filter_map(|census| sample(census, rule, state.alive()))
        .filter(old_enough)
        .collect();
    samples.sort_by_key(|sample| sample.on);
    samples.dedup_by_key(|sample| sample.on);
    samples
}

/// Reads one census, by girths or by a string of the length of the rule. None when it tells no
/// mean: no girths, or no tree or every tree at the string.
#[must_use]
pub fn sample(census: &Census, rule: &Opening, alive: u32) -> Option<Sample> {
    match census.mean_cm() {
        Some(mean_cm) => measured(census, mean_cm, alive),
        None => counted(census, rule),
    }
}

fn measured(census: &Census, mean_cm: f64, alive: u32) -> Option<Sample> {
    if !(mean_cm > 0.0 && mean_cm.is_finite()) {
        return None;
    }
    let of = u32::try_from(census.values_cm.len()).ok()?;
    let n = f64::from(of);
    let usual = usual_spread(mean_cm);
    let (spread, spread_error) = match census.spread() {
        // By the usual spread: ten trees that are all alike do not make an even stand.
        Some(own) => weighted(
            own,
            own.max(usual) * libm::sqrt(TREES_FOR_ONE / (2.0 * (n - 1.0))),
            usual,
        ),
        None => (usual, USUAL_SPREAD_ERROR),
    };
    // Where every tree was measured, no sample stands for others.
    let left = (1.0 - n / f64::from(alive.max(of))).max(0.0);
    let drawn = spread * libm::sqrt(left * TREES_FOR_ONE / n);
    Some(Sample {
        on: census.on,
        of,
        mean_cm,
        error_cm: mean_cm * libm::sqrt(drawn * drawn + TAPE_ERROR * TAPE_ERROR),
        spread,
        spread_error,
        skew: USUAL_SKEW,
        skew_error: USUAL_SKEW_ERROR,
    })
}

/// A sample's own spread and the usual one, each by how sure it is.
fn weighted(own: f64, own_error: f64, usual: f64) -> (f64, f64) {
    let (least, most) = SPREAD_RANGE;
    let own_weight = 1.0 / (own_error * own_error).max(1e-12);
    let usual_weight = 1.0 / (USUAL_SPREAD_ERROR * USUAL_SPREAD_ERROR);
    let all = own_weight + usual_weight;
    let spread = (own * own_weight + usual * usual_weight) / all;
    (spread.clamp(least, most), libm::sqrt(1.0 / all))
}

/// "12 of 30 reach the string" tells the mean through the usual spread.
fn counted(census: &Census, rule: &Opening) -> Option<Sample> {
    let (reached, of) = tally(census, rule)?;
    let (low, high) = wilson::interval(reached, of)?;
    let mean = |share| mean_for_share(rule.girth_cm, share, USUAL_SPREAD);
    let share = f64::from(reached) / f64::from(of);
    let mean_cm = mean(share)?;
    let drawn = (mean(high)? - mean(low)?) / (2.0 * chance::NINETEEN_OF_TWENTY);
    // The string is one place of the distribution; where its middle is hangs on the spread.
    let by_spread =
        mean_cm * mean_cm / rule.girth_cm * chance::quantile(share)? * USUAL_SPREAD_ERROR;
    Some(Sample {
        on: census.on,
        of,
        mean_cm,
        error_cm: libm::sqrt(drawn * drawn + by_spread * by_spread),
        spread: USUAL_SPREAD,
        spread_error: USUAL_SPREAD_ERROR,
        skew: USUAL_SKEW,
        skew_error: USUAL_SKEW_ERROR,
    })
}

/// How single trees usually spread about a mean girth, when nothing was measured.
fn usual_spread(mean_cm: f64) -> f64 {
    /// The girth at which the usual spread is told, in centimetres.
    const TOLD_AT_CM: f64 = 50.0;
    USUAL_SPREAD * libm::pow(TOLD_AT_CM / mean_cm, EVENING)
}
