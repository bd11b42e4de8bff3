//! How far the share in a sample may be from the share in the whole stand.

/// 97.5th percentile of the normal distribution, for an interval of 95 %.
const Z: f64 = 1.959_963_985;

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
