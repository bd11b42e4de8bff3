//! How many trees a block holds.
//!
//! Deliberately absent: the shape of the block. A narrow strip holds fewer trees than its area
//! says, or more; the count of pegs or holes overrides all of this.

use crate::{calendar::Calendar, directory::Block, number};

const SQUARE_METRES_A_HECTARE: f64 = 10_000.0;

/// Trees that fit on the block: area over (row distance times distance in the row), rounded down.
/// The block's own spacing comes first, then the calendar's. None without an area.
///
/// Spacing is meant level. An area from a map or from positions is level too, so a slope changes
/// nothing; an area taped along the ground is larger than its level share by [`slope_factor`].
#[must_use]
pub fn points(block: &Block, calendar: &Calendar) -> Option<u32> {
    let (row_m, in_row_m) = block
        .spacing_m
        .unwrap_or((calendar.spacing.row_m, calendar.spacing.in_row_m));
    let each_m2 = row_m * in_row_m;
    if !(each_m2.is_finite() && each_m2 > 0.0) {
        return None;
    }
    let area_m2 = block.hectares()? * SQUARE_METRES_A_HECTARE;
    let level_m2 = match (block.area_source.as_str(), block.slope_pct) {
        ("tape", Some(slope_pct)) => area_m2 / slope_factor(slope_pct),
        _ => area_m2,
    };
    number::floor(level_m2 / each_m2)
}

/// A length along a slope over its level length: 1 / cos(angle). At 30 % it is 1.04, at 50 % 1.12.
#[must_use]
pub fn slope_factor(slope_pct: f64) -> f64 {
    let rise = slope_pct / 100.0;
    libm::sqrt(1.0 + rise * rise)
}

/// Trees on a hectare at this spacing, not rounded.
#[must_use]
pub fn trees_per_hectare(row_m: f64, in_row_m: f64) -> f64 {
    SQUARE_METRES_A_HECTARE / (row_m * in_row_m)
}
