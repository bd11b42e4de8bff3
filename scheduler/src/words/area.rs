//! Measures of land.

use budwood_parser::{Measure, Unit};

/// Land in hectares. Units that do not measure land give none.
#[must_use]
pub fn hectares(area: Measure) -> Option<f64> {
    let factor = match area.unit {
        Unit::Hectare => 1.0,
        // International acre, exactly 4,046.8564224 square metres.
        Unit::Acre => 0.404_685_642_24,
        // One rai is 1,600 square metres.
        Unit::Rai => 0.16,
        Unit::SquareMetre => 0.000_1,
        Unit::Kilogram
        | Unit::Gram
        | Unit::Bag
        | Unit::Tin
        | Unit::Cup
        | Unit::Litre
        | Unit::Metre
        | Unit::Centimetre
        | Unit::Millimetre
        | Unit::Inch
        | Unit::Foot => return None,
    };
    Some(area.value * factor)
}
