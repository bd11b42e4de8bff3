//! How far a stand must be on its way so that enough of its trees are thick enough.

use super::{
    chance,
    sample::{EVENING, Sample},
};
use crate::{handbook::calendar::Opening, outlook::growth::Course};

/// Thicker than this no stand is reckoned with, in centimetres.
const GIRTH_MAX_CM: f64 = 140.0;
const HALVINGS: u32 = 30;
/// How sure the power is with which the spread falls. An assumption.
const EVENING_ERROR: f64 = 0.3;

/// Trees of one age.
#[derive(Clone, Copy, Debug)]
pub(super) struct Part {
    pub(super) trees: f64,
    /// Years by which they are older than the middle tree of the stand.
    pub(super) older_years: f64,
}

/// What the middle tree must reach.
#[derive(Clone, Copy, Debug)]
pub(super) struct Aim {
    pub(super) grown: f64,
    /// Its standard error: how single trees spread is not known for sure.
    pub(super) error: f64,
    /// Years by which the trees meant are older than the middle tree, on average.
    pub(super) older_years: f64,
}

/// How single trees spread about their mean, when that has grown to so much.
#[derive(Clone, Copy, Debug)]
struct Spread {
    /// When it was measured, and at which mean.
    seen: f64,
    seen_cm: f64,
    /// With which power it falls.
    evening: f64,
    skew: f64,
}

impl Spread {
    fn at(self, mean_cm: f64) -> f64 {
        self.seen * libm::pow(self.seen_cm / mean_cm, self.evening)
    }

    /// The share of trees that reach a girth, by the first term of the series of Edgeworth.
    fn share(self, mean_cm: f64, girth_cm: f64) -> f64 {
        if mean_cm <= 0.0 {
            return 0.0;
        }
        let above = (mean_cm - girth_cm) / (self.at(mean_cm) * mean_cm);
        let lean = self.skew / 6.0 * (above * above - 1.0) * chance::density(above);
        (chance::below(above) + lean).clamp(0.0, 1.0)
    }
}

impl Aim {
    /// None when not enough of these trees ever get there.
    pub(super) fn new(
        way: Course,
        parts: &[Part],
        rule: &Opening,
        sample: &Sample,
    ) -> Option<Self> {
        let likely = Spread {
            seen: sample.spread,
            seen_cm: sample.mean_cm,
            evening: EVENING,
            skew: sample.skew,
        };
        let needed = |spread| needed(way, parts, rule, spread);
        let grown = needed(likely)?;
        let apart = |other: Spread| needed(other).map_or(0.0, |other| (other - grown).abs());
        let wide = apart(Spread {
            seen: sample.spread - sample.spread_error,
            ..likely
        });
        let slow = apart(Spread {
            evening: EVENING - EVENING_ERROR,
            ..likely
        });
        let leaning = apart(Spread {
            skew: sample.skew - sample.skew_error,
            ..likely
        });
        let trees: f64 = parts.iter().map(|part| part.trees).sum();
        let older = |part: &Part| part.trees * part.older_years;
        Some(Self {
            grown,
            error: libm::sqrt(wide * wide + slow * slow + leaning * leaning),
            older_years: parts.iter().map(older).sum::<f64>() / trees,
        })
    }
}

/// The way of the middle tree at which the wanted share of all trees reaches the girth.
fn needed(way: Course, parts: &[Part], rule: &Opening, spread: Spread) -> Option<f64> {
    let shape = way.shape;
    let trees: f64 = parts.iter().map(|part| part.trees).sum();
    let enough = |grown: f64| {
        let thick = |part: &Part| {
            let mean_cm = shape.girth_cm(grown + way.rate * part.older_years);
            part.trees * spread.share(mean_cm, rule.girth_cm)
        };
        parts.iter().map(thick).sum::<f64>() >= trees * rule.share_pct / 100.0
    };
    let most = shape.grown_within(GIRTH_MAX_CM)?;
    if !enough(most) {
        return None;
    }
    let (mut low, mut high) = (0.0, most);
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(low, high);
        if enough(middle) {
            high = middle;
        } else {
            low = middle;
        }
    }
    Some(high)
}
