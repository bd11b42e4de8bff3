//! Whole numbers of trees out of a calculation.

/// Sums of decimals miss a whole number by far less than this.
const ROUNDING: f64 = 1e-6;

/// The whole part of a number of trees; none when it is not a number of trees at all.
pub(crate) fn floor(trees: f64) -> Option<u32> {
    whole(libm::floor(trees + ROUNDING))
}

/// The next whole number of trees.
pub(crate) fn ceil(trees: f64) -> Option<u32> {
    whole(libm::ceil(trees - ROUNDING))
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "the range is checked in the line above"
)]
fn whole(number: f64) -> Option<u32> {
    let fits = (0.0..=f64::from(u32::MAX)).contains(&number);
    fits.then_some(number as u32)
}
