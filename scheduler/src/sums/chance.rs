//! The few things that we need of probability: the normal and the binomial distribution.
//!
//! The distributions are those of `statrs`; here their arguments are checked first, since a share
//! from a text or a file may be anything and the library panics on some of it.

use statrs::distribution::{Binomial, Continuous, ContinuousCDF, DiscreteCDF, Normal};

/// Nineteen times out of twenty.
pub const NINETEEN_OF_TWENTY: f64 = 1.959_963_984_540_054;

/// Shares that are computed miss an exact one by far less than this.
const ROUNDING: f64 = 1e-12;

/// The value below which this share of a standard normal distribution lies.
#[must_use]
pub fn quantile(share: f64) -> Option<f64> {
    is_inside(share).then(|| Normal::standard().inverse_cdf(share))
}

/// The share of a standard normal distribution that lies below this value.
#[must_use]
pub fn below(value: f64) -> f64 {
    if value.is_nan() {
        return 0.0;
    }
    Normal::standard().cdf(value)
}

/// How dense a standard normal distribution is at this value.
#[must_use]
pub fn density(value: f64) -> f64 {
    Normal::standard().pdf(value)
}

/// The fewest hits in `of` draws of which this share of all samples has no more, when each draw
/// hits with the given chance.
#[must_use]
pub fn hits(share: f64, of: u32, chance: f64) -> Option<u32> {
    if !(is_inside(share) && is_inside(chance)) {
        return None;
    }
    let binomial = Binomial::new(chance, u64::from(of)).ok()?;
    let found = binomial.inverse_cdf(share);
    // Where fewer hits have just this share, the library (0.19.1) misses it by its rounding.
    let has_share = |hits: &u64| binomial.cdf(*hits) >= share - ROUNDING;
    let found = found.checked_sub(1).filter(has_share).unwrap_or(found);
    u32::try_from(found).ok()
}

fn is_inside(share: f64) -> bool {
    share > 0.0 && share < 1.0
}

#[cfg(test)]
mod tests {
    use super::{NINETEEN_OF_TWENTY, below, density, hits, quantile};

    #[track_caller]
    fn near(found: Option<f64>, expected: f64, by: f64) {
        let found = found.unwrap();
        assert!((found - expected).abs() <= by, "{found}, not {expected}");
    }

    /// `scipy` 1.17.1, `norm.ppf`; `tests/peers/statistics.rs` asks the library itself.
    #[test]
    fn normal_quantiles_are_as_a_reference_library_has_them() {
        near(quantile(0.5), 0.0, 1e-9);
        near(quantile(0.65), 0.385_320_466, 1e-8);
        near(quantile(0.7), 0.524_400_513, 1e-8);
        near(quantile(0.9), 1.281_551_566, 1e-8);
        near(quantile(0.975), NINETEEN_OF_TWENTY, 1e-8);
        near(quantile(0.02), -2.053_748_911, 1e-8);
        assert!((below(1.0) - 0.841_344_746).abs() < 1e-8);
        assert!((density(1.0) - 0.241_970_725).abs() < 1e-8);
    }

    #[test]
    fn no_quantile_of_nonsense() {
        for share in [0.0, 1.0, -0.1, 1.1, f64::NAN, f64::INFINITY] {
            assert_eq!(quantile(share), None);
            assert_eq!(hits(share, 30, 0.5), None);
            assert_eq!(hits(0.5, 30, share), None);
        }
        assert_eq!(below(f64::NAN), 0.0);
        assert_eq!(below(f64::INFINITY), 1.0);
        assert_eq!(hits(0.5, 0, 0.5), Some(0));
    }

    /// `scipy` 1.17.1, `binom.ppf`; of one draw at even chances half of all samples have no hit.
    #[test]
    fn binomial_quantiles_are_as_a_reference_library_has_them() {
        for (share, of, chance, expected) in [
            (0.5, 1, 0.5, 0),
            (0.975, 30, 0.7, 26),
            (0.025, 30, 0.7, 16),
            (0.9, 100, 0.65, 71),
        ] {
            assert_eq!(hits(share, of, chance), Some(expected), "{share} of {of}");
        }
    }
}
