//! What a census tells of the whole stand: its mean, how trees spread, and how sure both are.

use alloc::vec::Vec;

use chrono::NaiveDate;

use super::{chance, years};
use crate::{
    handbook::calendar::Opening,
    land::block::{BlockState, Census},
    outlook::{census::USUAL_SPREAD, growth::LEAST_AGE_YEARS, readiness::tally},
    sums::wilson,
};

/// How sure the usual spread of girths is (from memory).
const USUAL_SPREAD_ERROR: f64 = 0.04;
/// No stand is more even or less even than this; beyond it a sample was chosen or mixed.
const SPREAD_RANGE: (f64, f64) = (0.05, 0.35);
/// However many trees are measured, a tape and the place on the stem leave this much of the mean
/// open (an assumption).
const TAPE_ERROR: f64 = 0.01;

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
    let (spread, spread_error) = match census.spread() {
        // By the usual spread: ten trees that are all alike do not make an even stand.
        Some(own) => weighted(own, own.max(USUAL_SPREAD) / libm::sqrt(2.0 * (n - 1.0))),
        None => (USUAL_SPREAD, USUAL_SPREAD_ERROR),
    };
    // Where every tree was measured, no sample stands for others.
    let left = (1.0 - n / f64::from(alive.max(of))).max(0.0);
    let drawn = spread * libm::sqrt(left / n);
    Some(Sample {
        on: census.on,
        of,
        mean_cm,
        error_cm: mean_cm * libm::sqrt(drawn * drawn + TAPE_ERROR * TAPE_ERROR),
        spread,
        spread_error,
    })
}

/// A sample's own spread and the usual one, each by how sure it is.
fn weighted(own: f64, own_error: f64) -> (f64, f64) {
    let (least, most) = SPREAD_RANGE;
    let own_weight = 1.0 / (own_error * own_error).max(1e-12);
    let usual_weight = 1.0 / (USUAL_SPREAD_ERROR * USUAL_SPREAD_ERROR);
    let all = own_weight + usual_weight;
    let spread = (own * own_weight + USUAL_SPREAD * usual_weight) / all;
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
    })
}

/// The mean girth at which this share of the trees has reached `girth_cm`, when single trees
/// spread about the mean by `spread` (standard deviation over mean).
#[must_use]
pub(crate) fn mean_for_share(girth_cm: f64, share: f64, spread: f64) -> Option<f64> {
    let below = 1.0 - chance::quantile(share)? * spread;
    (below > 0.0).then(|| girth_cm / below)
}
