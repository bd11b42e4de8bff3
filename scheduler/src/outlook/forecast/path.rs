//! Where a stand is on its way to the limit of growth, and how fast it goes, with the doubt of
//! both: a Kalman filter of two figures (R. E. Kalman, Journal of Basic Engineering 82, 1960).
//!
//! On the scale of `growth::grown` a stand moves by its rate each year, give or take a good or a
//! bad one.

use super::{
    Sample,
    aim::{Aim, Way},
    chance,
};
use crate::outlook::growth::{Curve, grown};

/// How far a stand's rate is from what is expected before it was measured, as standard deviation
/// over the rate. An assumption: published rates differ by a factor of three between countries.
const RATE_SPREAD: f64 = 0.25;
/// How far the growth of one year is from the stand's own rate, in the same way. An assumption.
const YEAR_SPREAD: f64 = 0.15;

/// A stand on its way, at some age.
#[derive(Clone, Copy, Debug)]
pub(super) struct Path {
    limit_cm: f64,
    age_years: f64,
    /// How far it is.
    grown: f64,
    /// How far it goes in a year.
    rate: f64,
    /// Variances of both, and what they have in common.
    grown_var: f64,
    rate_var: f64,
    both_var: f64,
}

impl Path {
    /// At the start of the curve that is expected.
    pub(super) fn start(curve: &Curve) -> Self {
        let rate_error = RATE_SPREAD * curve.rate;
        Self {
            limit_cm: curve.limit_cm,
            age_years: curve.start_years,
            grown: 0.0,
            rate: curve.rate,
            grown_var: 0.0,
            rate_var: rate_error * rate_error,
            both_var: 0.0,
        }
    }

    /// Where it leads, and how fast.
    pub(super) const fn way(&self) -> Way {
        Way {
            limit_cm: self.limit_cm,
            rate: self.rate,
        }
    }

    /// Takes a census in. None when its girth is beyond this limit of growth.
    pub(super) fn seen(self, age_years: f64, sample: &Sample) -> Option<Self> {
        let mut path = self.later(age_years);
        let seen = grown(sample.mean_cm, path.limit_cm)?;
        let error = sample.error_cm / (path.limit_cm - sample.mean_cm);
        let all = path.grown_var + error * error;
        let (to_grown, to_rate) = (path.grown_var / all, path.both_var / all);
        let miss = seen - path.grown;
        path.grown += to_grown * miss;
        path.rate += to_rate * miss;
        path.rate_var -= to_rate * path.both_var;
        path.both_var -= to_grown * path.both_var;
        path.grown_var -= to_grown * path.grown_var;
        (path.rate > 0.0 && path.grown.is_finite()).then_some(path)
    }

    fn later(mut self, age_years: f64) -> Self {
        let years = (age_years - self.age_years).max(0.0);
        self.grown += self.rate * years;
        self.grown_var = self.variance(years, 0.0);
        self.both_var += self.rate_var * years;
        self.age_years = age_years;
        self
    }

    /// The variance of how far trees that are so much older will be in so many years.
    fn variance(&self, years: f64, older_years: f64) -> f64 {
        let known = years + older_years;
        let bad_years = YEAR_SPREAD * self.rate;
        self.grown_var
            + 2.0 * known * self.both_var
            + known * known * self.rate_var
            + bad_years * bad_years * years
    }

    /// How likely the aim is reached in so many years.
    pub(super) fn chance(&self, aim: &Aim, years: f64) -> f64 {
        let ahead = self.grown + self.rate * years - aim.grown;
        let variance = self.variance(years, aim.older_years) + aim.error * aim.error;
        chance::below(ahead / libm::sqrt(variance.max(f64::MIN_POSITIVE)))
    }
}
