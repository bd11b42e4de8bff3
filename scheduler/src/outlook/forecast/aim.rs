//! How far a stand must be on its way so that enough of its trees are thick enough.

use super::{Sample, chance, sample::mean_for_share};
use crate::{
    handbook::calendar::Opening,
    outlook::growth::{girth_of, grown},
};

/// Beyond this every tree is as thick as it will ever be.
const GROWN_MAX: f64 = 12.0;
const HALVINGS: u32 = 30;

/// How far trees grow in the end, and how fast they get there.
#[derive(Clone, Copy, Debug)]
pub(super) struct Way {
    pub(super) limit_cm: f64,
    /// How far they go in a year, on the scale of `growth::grown`.
    pub(super) rate: f64,
}

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

impl Aim {
    /// None when not enough of these trees ever get there.
    pub(super) fn new(way: Way, parts: &[Part], rule: &Opening, sample: &Sample) -> Option<Self> {
        let needed = |spread: f64| needed(way, parts, rule, spread);
        let grown = needed(sample.spread)?;
        let even = needed(sample.spread - sample.spread_error).unwrap_or(grown);
        let uneven = needed(sample.spread + sample.spread_error);
        let error = uneven.map_or(grown - even, |uneven| (uneven - even) / 2.0);
        let trees: f64 = parts.iter().map(|part| part.trees).sum();
        let older = |part: &Part| part.trees * part.older_years;
        Some(Self {
            grown,
            error,
            older_years: parts.iter().map(older).sum::<f64>() / trees,
        })
    }
}

/// The way of the middle tree at which the wanted share of all trees reaches the girth.
fn needed(way: Way, parts: &[Part], rule: &Opening, spread: f64) -> Option<f64> {
    if let [part] = parts {
        let mean_cm = mean_for_share(rule.girth_cm, rule.share_pct / 100.0, spread)?;
        return Some(grown(mean_cm, way.limit_cm)? - way.rate * part.older_years);
    }
    let trees: f64 = parts.iter().map(|part| part.trees).sum();
    let enough = |grown: f64| {
        let thick = |part: &Part| {
            let mean_cm = girth_of(grown + way.rate * part.older_years, way.limit_cm);
            if mean_cm <= 0.0 {
                return 0.0;
            }
            part.trees * chance::below((mean_cm - rule.girth_cm) / (spread * mean_cm))
        };
        parts.iter().map(thick).sum::<f64>() >= trees * rule.share_pct / 100.0
    };
    if !enough(GROWN_MAX) {
        return None;
    }
    let (mut low, mut high) = (0.0, GROWN_MAX);
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
