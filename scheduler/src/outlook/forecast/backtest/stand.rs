//! A made-up stand whose truth is known: a few hundred trees on a law of growth.
//!
//! No code of the forecast is used, but what it assumes is assumed here too: how far good and bad years
//! and stands of one place differ. So it shows whether the sums are right and what another law of
//! growth costs, not whether stands are so. Of its own are: trees that spread about the mean by a fixed
//! part and a part that grows with the girth, so that the spread falls with age; trees that lag far
//! behind; neighbours along a row that are alike; dry years; growth by season; a tape that is read to
//! the centimetre and held a little higher or lower each time.

use std::vec::Vec;

use super::laws::Law;
use crate::sums::{draws::Draws, rounding};

pub(super) const TREES: u32 = 400;
const MEASURED: u32 = 30;
/// How alike two neighbours in a row are (a correlation).
const ALIKE: f64 = 0.4;

pub(super) fn whole(value: f64) -> u32 {
    rounding::floor(value).unwrap()
}

pub(super) struct Stand {
    law: Law,
    /// How much faster than the handbook's stand it grows.
    pace: f64,
    /// Each tree's place among all, in standard deviations.
    places: Vec<f64>,
    spread: f64,
    years: Vec<f64>,
    /// Of each year's growth so much falls in its first five months.
    in_rains: f64,
}

impl Stand {
    pub(super) fn new(law: Law, place: f64, draws: &mut Draws) -> Self {
        let lean = draws.between(-0.9, 0.1);
        let mut alike = draws.normal();
        let mut places: Vec<f64> = (0..TREES)
            .map(|_| {
                alike = ALIKE * alike + libm::sqrt(1.0 - ALIKE * ALIKE) * draws.normal();
                alike + lean / 6.0 * (alike * alike - 1.0)
            })
            .collect();
        let mean = places.iter().sum::<f64>() / f64::from(TREES);
        places.iter_mut().for_each(|place| *place -= mean);
        let years = (0..40)
            .map(|_| {
                let dry = if draws.share() < 0.1 { 0.75 } else { 1.02 };
                (dry * (1.0 + 0.13 * draws.normal())).max(0.1)
            })
            .collect();
        Self {
            law,
            pace: place * libm::exp(0.1 * draws.normal()),
            places,
            spread: draws.between(0.8, 1.25),
            years,
            in_rains: draws.between(0.55, 0.7),
        }
    }

    /// The mean girth so many years after planting at the begin of
    /// the rains.
    pub(super) fn mean_cm(&self, age_years: f64) -> f64 {
        let mut left = age_years;
        let mut lived = 0.0;
        for year in &self.years {
            let part = left.clamp(0.0, 1.0);
            let rains = 5.0 / 12.0;
            let season = if part < rains {
                part / rains * self.in_rains
            } else {
                self.in_rains + (part - rains) / (1.0 - rains) * (1.0 - self.in_rains)
            };
            lived += season * year;
            left -= 1.0;
        }
        self.law.girth_cm(lived * self.pace)
    }

    fn girth_cm(&self, mean_cm: f64, place: f64) -> f64 {
        (mean_cm + place * self.spread * (2.5 + 0.11 * mean_cm)).max(1.0)
    }

    /// Every so many-th tree along the rows, from a drawn start.
    pub(super) fn measured_cm(&self, age_years: f64, draws: &mut Draws) -> Vec<f64> {
        let mean_cm = self.mean_cm(age_years);
        let every = TREES / MEASURED;
        let from = whole(draws.between(0.0, f64::from(every)));
        let held = 1.0 + 0.01 * draws.normal();
        (0..MEASURED)
            .filter_map(|n| self.places.get((from + n * every) as usize))
            .map(|place| {
                let girth_cm = self.girth_cm(mean_cm, *place) * held;
                libm::round(girth_cm + draws.normal()).max(1.0)
            })
            .collect()
    }

    /// The age at which the share has reached the girth, in years.
    pub(super) fn ready_at(&self, girth_cm: f64, share: f64) -> f64 {
        let needed = whole(share * f64::from(TREES)) as usize;
        let is_ready = |age_years: f64| {
            let mean_cm = self.mean_cm(age_years);
            let thick = |place: &&f64| self.girth_cm(mean_cm, **place) >= girth_cm;
            self.places.iter().filter(thick).count() >= needed
        };
        let (mut low, mut high) = (0.0, 30.0);
        if !is_ready(high) {
            return f64::INFINITY;
        }
        while high - low > 0.001 {
            let middle = f64::midpoint(low, high);
            if is_ready(middle) {
                high = middle;
            } else {
                low = middle;
            }
        }
        high
    }
}
