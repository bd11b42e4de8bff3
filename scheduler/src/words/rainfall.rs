//! Rain as one person tells of one day.

use budwood_parser::Wetness;
use chrono::NaiveDate;

/// A day with so much rain soaks (Stern, Dennett and Garbutt 1981; the usual figure, from memory).
pub(crate) const SOAKING_MM: f64 = 20.0;

/// What one person told of one day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rain {
    /// The day.
    pub on: NaiveDate,
    /// Soaked or none; none when only millimetres were told.
    pub wetness: Option<Wetness>,
    /// Millimetres, if measured.
    pub mm: Option<f64>,
}

impl Rain {
    /// Whether it soaked the ground.
    #[must_use]
    pub fn is_soaking(&self) -> bool {
        match (self.mm, self.wetness) {
            (Some(mm), _) => mm >= SOAKING_MM,
            (None, wetness) => wetness == Some(Wetness::Soaked),
        }
    }

    /// Whether it was told to be dry.
    #[must_use]
    pub fn is_dry(&self) -> bool {
        self.wetness == Some(Wetness::None) || self.mm == Some(0.0)
    }
}
