//! Where a stand is on its way along a shape of growth, and how fast it goes, with the doubt of
//! both: a Kalman filter of two figures (R. E. Kalman, Journal of Basic Engineering 82, 1960).
//!
//! On the scale of its shape a stand moves by its rate each year, give or take a good or a bad one.

use super::{aim::Aim, chance};
use crate::outlook::growth::Course;

/// How far the growth of one year is from the stand's own rate, as standard deviation over the
/// rate. An assumption.
const YEAR_SPREAD: f64 = 0.13;
/// The rains of one year come sooner or later than usual: so many years of growth more or less at a
/// census are no news of the rate. An assumption.
const SEASON_YEARS: f64 = 0.04;

/// A stand on its way, at some age.
#[derive(Clone, Copy, Debug)]
pub(super) struct Path {
    pub(super) course: Course,
    age_years: f64,
    /// How far it is.
    grown: f64,
    /// How far it goes in a year.
    pub(super) rate: f64,
    /// Variances of both, and what they have in common.
    grown_var: f64,
    pub(super) rate_var: f64,
    both_var: f64,
    /// Logarithm of how likely its censuses were, each foretold from those before.
    pub(super) evidence: f64,
}

impl Path {
    /// At the begin of a course whose rate is known so well.
    pub(super) const fn start(course: Course, rate_var: f64) -> Self {
        Self {
            course,
            age_years: course.start_years,
            grown: 0.0,
            rate: course.rate,
            grown_var: 0.0,
            rate_var,
            both_var: 0.0,
            evidence: 0.0,
        }
    }

    /// Its course, as fast as it goes now.
    pub(super) fn way(&self) -> Course {
        Course {
            rate: self.rate,
            ..self.course
        }
    }

    /// Takes a mean girth and its standard error in. None when its girth is beyond the limit of the shape.
    pub(super) fn seen(self, age_years: f64, mean_cm: f64, error_cm: f64) -> Option<Self> {
        let mut path = self.later(age_years);
        let shape = path.course.shape;
        let seen = shape.grown(mean_cm)?;
        let steepness = shape.steepness(mean_cm);
        let (drawn, season) = (error_cm * steepness, SEASON_YEARS * path.rate);
        let all = path.grown_var + drawn * drawn + season * season;
        let (to_grown, to_rate) = (path.grown_var / all, path.both_var / all);
        let miss = seen - path.grown;
        // Per centimetre, so that scales of different shapes can be compared.
        path.evidence += libm::log(steepness) - (libm::log(all) + miss * miss / all) / 2.0;
        path.grown += to_grown * miss;
        path.rate += to_rate * miss;
        path.rate_var -= to_rate * path.both_var;
        path.both_var -= to_grown * path.both_var;
        path.grown_var -= to_grown * path.grown_var;
        (path.rate > 0.0 && path.grown.is_finite() && path.evidence.is_finite()).then_some(path)
    }

    /// The same at a later age; the begin where that is still to come.
    pub(super) fn later(mut self, age_years: f64) -> Self {
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

#[cfg(test)]
mod tests {
    use super::Path;
    use crate::outlook::growth::{Course, Shape};

    /// Ages, mean girths and their standard errors of a made-up stand.
    const SEEN: [(f64, f64, f64); 4] = [
        (2.1, 16.2, 0.5),
        (3.0, 25.1, 0.45),
        (4.2, 36.0, 0.4),
        (5.4, 46.3, 0.4),
    ];

    /// The rate, its variance and the evidence after all four girths against scipy 1.17.1, which has
    /// neither steps nor a filter: the girths on the scale of the shape are one draw of a normal
    /// distribution of four figures; its density is `stats.multivariate_normal.logpdf`, and the rate
    /// given the girths is `linalg.solve` on their covariances. That a good year and an early season
    /// count over the rate as known until then is the same there.
    #[test]
    fn each_shape_is_fitted_as_scipy_has_it() {
        let slowing = |limit_cm| Shape::Slowing { limit_cm };
        let sigmoid = |limit_cm| Shape::Sigmoid { limit_cm };
        let bent = Shape::Bent { knee_cm: 45.0 };
        for (shape, start_years, rate, theirs) in [
            (
                slowing(90.0),
                0.5,
                0.17,
                [0.149_691_939_872, 7.415_862_509_44e-5, -4.891_108_371_2],
            ),
            (
                slowing(150.0),
                1.0,
                0.09,
                [0.084_856_978_548_4, 3.063_756_462_57e-5, -5.035_645_376_89],
            ),
            (
                Shape::Straight,
                0.5,
                9.0,
                [9.463_138_91, 0.294_370_059_198, -3.577_337_162_14],
            ),
            (
                Shape::Straight,
                1.0,
                11.0,
                [10.788_750_780_8, 0.516_194_022_841, -8.776_568_528_97],
            ),
            (
                bent,
                0.5,
                9.0,
                [9.675_702_244_03, 0.305_280_789_998, -2.643_871_080_12],
            ),
            (
                sigmoid(80.0),
                0.5,
                0.55,
                [0.431_817_791_37, 9.569_677_624_02e-4, -14.433_512_907_4],
            ),
            (
                sigmoid(110.0),
                1.0,
                0.5,
                [0.428_268_126_29, 1.140_893_242_69e-3, -32.285_250_220_3],
            ),
        ] {
            let course = Course {
                shape,
                rate,
                start_years,
            };
            let start = Path::start(course, 0.04 * rate * rate);
            let path = SEEN.iter().try_fold(start, |path, (age, mean, error)| {
                path.seen(*age, *mean, *error)
            });
            let path = path.unwrap();
            for (found, theirs) in [path.rate, path.rate_var, path.evidence].iter().zip(theirs) {
                let off = (found - theirs).abs() / theirs.abs();
                assert!(off < 1e-9, "{shape:?}: {found}, but {theirs}");
            }
        }
    }
}
