//! How the girth of a stand grows with its age, and how it spreads about its mean.
//!
//! The shape is published: the monomolecular curve fitted girths of trees of 2 to 12 years better
//! than two others (Chandrasekhar 2012, Journal of Forestry Research 23(3)): fastest at the start,
//! then slower. Its upper limit is an assumption of this project, since early girths cannot tell
//! it. Deliberately absent: clones, soils, rain; a stand's own girth stands for all of them.

/// Years after planting that a budded plant needs to begin. An assumption.
const LAG_YEARS: f64 = 0.5;

/// The girth that the curve tends to, in centimetres: likely, and a low and a high one between
/// which it lies four times out of five. Assumptions.
pub const LIMITS_CM: Limits = Limits {
    low: 80.0,
    likely: 90.0,
    high: 110.0,
};

/// Three guesses of one figure.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// The low one.
    pub low: f64,
    /// The likely one.
    pub likely: f64,
    /// The high one.
    pub high: f64,
}

/// Ages under this are not judged by the curve, in years: it starts too slowly against what was
/// measured in the first months.
pub const LEAST_AGE_YEARS: f64 = 1.5;

/// Years after planting at which the mean girth reaches `wanted_cm`, on the curve that passes
/// through `girth_cm` at `age_years`. None when it never does.
#[must_use]
pub fn age_at(wanted_cm: f64, girth_cm: f64, age_years: f64, limit_cm: f64) -> Option<f64> {
    let sane = age_years >= LEAST_AGE_YEARS
        && girth_cm > 0.0
        && girth_cm < limit_cm
        && wanted_cm > 0.0
        && wanted_cm < limit_cm;
    if !sane {
        return None;
    }
    let grown = |cm: f64| -libm::log(1.0 - cm / limit_cm);
    Some(LAG_YEARS + (age_years - LAG_YEARS) * grown(wanted_cm) / grown(girth_cm))
}

/// The mean girth at which this share of the trees has reached `girth_cm`, when single trees
/// spread about the mean by `spread` (standard deviation over mean).
#[must_use]
pub fn mean_for_share(girth_cm: f64, share: f64, spread: f64) -> Option<f64> {
    let below = 1.0 - quantile(share)? * spread;
    (below > 0.0).then(|| girth_cm / below)
}

/// The value below which this share of a standard normal distribution lies.
#[must_use]
pub fn quantile(share: f64) -> Option<f64> {
    if !(share > 0.0 && share < 1.0) {
        return None;
    }
    // Halving an interval is slow and plain; forecasts are made one at a time.
    let (mut low, mut high) = (-40.0, 40.0);
    for _ in 0..64 {
        let middle = f64::midpoint(low, high);
        let below = 0.5 * libm::erfc(-middle / core::f64::consts::SQRT_2);
        if below < share {
            low = middle;
        } else {
            high = middle;
        }
    }
    Some(f64::midpoint(low, high))
}

#[cfg(test)]
mod tests {
    use super::{LIMITS_CM, age_at, mean_for_share, quantile};

    #[track_caller]
    fn near(found: Option<f64>, expected: f64, by: f64) {
        let found = found.unwrap();
        assert!((found - expected).abs() <= by, "{found}, not {expected}");
    }

    /// `scipy` 1.17.1, `norm.ppf`.
    #[test]
    fn quantiles_are_as_a_reference_library_has_them() {
        near(quantile(0.5), 0.0, 1e-9);
        near(quantile(0.65), 0.385_320_466, 1e-8);
        near(quantile(0.7), 0.524_400_513, 1e-8);
        near(quantile(0.9), 1.281_551_566, 1e-8);
        near(quantile(0.02), -2.053_748_911, 1e-8);
        assert_eq!(quantile(0.0), None);
        assert_eq!(quantile(1.0), None);
        assert_eq!(quantile(f64::NAN), None);
    }

    /// Girths published for one age, and the ages at which the curve through them reaches 45 and
    /// 50 cm, worked by hand with limits of 80, 90 and 110 cm. The paper of the dry site (Rouf et
    /// al. 2017: 30.14 cm in the third year) says itself that opening came at about 5 years.
    #[test]
    fn curves_through_published_girths() {
        let dry = |wanted, limit| age_at(wanted, 30.14, 3.0, limit);
        near(dry(45.0, LIMITS_CM.likely), 4.75, 0.005);
        near(dry(50.0, LIMITS_CM.likely), 5.47, 0.005);
        near(dry(45.0, LIMITS_CM.low), 4.87, 0.005);
        near(dry(45.0, LIMITS_CM.high), 4.61, 0.005);
        // Nhean, north-east Thailand: 29 cm at 4.5 years.
        near(age_at(50.0, 29.0, 4.5, LIMITS_CM.likely), 8.84, 0.005);
        near(age_at(50.0, 29.0, 4.5, LIMITS_CM.low), 9.21, 0.005);
        near(age_at(50.0, 29.0, 4.5, LIMITS_CM.high), 8.42, 0.005);
        // Goncalves et al., Sao Paulo: 35.26 cm at 6 years.
        near(age_at(45.0, 35.26, 6.0, LIMITS_CM.likely), 8.17, 0.005);
    }

    /// Worked by hand: with a spread of 18 % a mean of 50 cm is half the trees, and 65 % need a
    /// mean of about 53.7 cm.
    #[test]
    fn a_mean_at_the_girth_is_only_half_the_trees() {
        near(mean_for_share(50.0, 0.5, 0.18), 50.0, 1e-6);
        near(mean_for_share(50.0, 0.65, 0.18), 53.7, 0.05);
        assert_eq!(mean_for_share(50.0, 1.0, 0.18), None);
        assert_eq!(mean_for_share(50.0, 0.99, 0.9), None);
    }

    #[test]
    fn no_age_out_of_nonsense() {
        assert_eq!(age_at(50.0, 0.0, 3.0, 90.0), None);
        assert_eq!(age_at(50.0, 30.0, 1.4, 90.0), None);
        assert_eq!(age_at(90.0, 30.0, 3.0, 90.0), None);
        assert_eq!(age_at(50.0, f64::NAN, 3.0, 90.0), None);
        assert_eq!(age_at(50.0, 95.0, 3.0, 90.0), None);
    }
}
