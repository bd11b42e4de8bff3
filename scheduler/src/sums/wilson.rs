//! How far the share in a sample may be from the share in the whole stand.

use crate::sums::chance::NINETEEN_OF_TWENTY as Z;

/// The Wilson score interval of 95 % (E. B. Wilson, Journal of the American Statistical
/// Association 22, 1927) for `hits` of `of`, as shares from 0 to 1. None for an empty sample or
/// more hits than trees.
#[must_use]
pub fn interval(hits: u32, of: u32) -> Option<(f64, f64)> {
    if of == 0 || hits > of {
        return None;
    }
    let n = f64::from(of);
    let share = f64::from(hits) / n;
    let scale = 1.0 + Z * Z / n;
    let middle = (share + Z * Z / (2.0 * n)) / scale;
    let half = Z / scale * libm::sqrt(share * (1.0 - share) / n + Z * Z / (4.0 * n * n));
    Some(((middle - half).max(0.0), (middle + half).min(1.0)))
}

#[cfg(test)]
mod tests {
    use super::interval;

    /// `scipy` 1.17.1, `binomtest(hits, of).proportion_ci(method="wilson")`.
    #[test]
    fn intervals_are_as_a_reference_library_has_them() {
        let table = [
            (18, 30, 0.423_204, 0.754_094),
            (30, 50, 0.461_814, 0.723_916),
            (60, 100, 0.502_003, 0.690_599),
            (24, 30, 0.626_943, 0.904_949),
            (35, 50, 0.562_496, 0.808_964),
            (70, 100, 0.604_151, 0.781_051),
            (210, 300, 0.645_882, 0.749_060),
            (0, 10, 0.0, 0.277_533),
            (10, 10, 0.722_467, 1.0),
            (1, 3, 0.061_492, 0.792_340),
        ];
        for (hits, of, low, high) in table {
            let found = interval(hits, of).unwrap();
            assert!((found.0 - low).abs() < 1e-6, "{hits} of {of}: {found:?}");
            assert!((found.1 - high).abs() < 1e-6, "{hits} of {of}: {found:?}");
        }
    }

    #[test]
    fn the_ends_stay_shares() {
        assert_eq!(interval(0, 0), None);
        assert_eq!(interval(2, 1), None);
        assert_eq!(interval(0, 10).unwrap().0, 0.0);
        assert!(interval(u32::MAX, u32::MAX).unwrap().1 <= 1.0);
    }
}
