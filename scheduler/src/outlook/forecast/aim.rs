//! How far a stand must be on its way so that enough of its trees are thick enough.

use super::{
    chance,
    sample::{EVENING, Sample},
};
use crate::{handbook::calendar::Opening, outlook::growth::Course};

/// Thicker than this no stand is reckoned with, in centimetres.
const GIRTH_MAX_CM: f64 = 140.0;
/// No share that a handbook asks for is so many spreads from the mean.
const SPREADS_MAX: f64 = 8.0;
/// Until that is known to a millionth of a spread.
const HALVINGS: u32 = 24;
/// Of Newton's steps so few are enough for a millionth of a centimetre.
const STEPS: u32 = 5;
/// Until the time between the oldest and the youngest trees is known to a thousandth.
const HALVINGS_OF_AGES: u32 = 10;
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

    /// The share of trees that reach a girth.
    fn share(self, mean_cm: f64, girth_cm: f64) -> f64 {
        if mean_cm <= 0.0 {
            return 0.0;
        }
        share_above(
            (mean_cm - girth_cm) / (self.at(mean_cm) * mean_cm),
            self.skew,
        )
    }

    /// The mean girth at which the wanted share of trees of one age reaches the girth: so many
    /// spreads above it, where the spread falls with the mean.
    fn mean_needed(self, rule: &Opening) -> Option<f64> {
        let enough = |above| share_above(above, self.skew) * 100.0 >= rule.share_pct;
        let above = halved(-SPREADS_MAX, SPREADS_MAX, HALVINGS, enough);
        let mut mean_cm = rule.girth_cm;
        for _ in 0..STEPS {
            let spread = above * self.at(mean_cm);
            let miss = mean_cm - rule.girth_cm - spread * mean_cm;
            mean_cm -= miss / (1.0 - (1.0 - self.evening) * spread);
        }
        (mean_cm > 0.0 && mean_cm <= GIRTH_MAX_CM).then_some(mean_cm)
    }
}

/// The share of trees above a girth that lies so many spreads below the mean, by the first term of
/// the series of Edgeworth.
fn share_above(above: f64, skew: f64) -> f64 {
    let lean = skew / 6.0 * (above * above - 1.0) * chance::density(above);
    (chance::below(above) + lean).clamp(0.0, 1.0)
}

/// What enough trees of a stand must reach, along whichever shape they grow: what does not hang on
/// the shape is worked out once for all of them.
#[derive(Clone, Debug)]
pub(super) struct Wanted<'a> {
    parts: &'a [Part],
    rule: &'a Opening,
    trees: f64,
    older_years: f64,
    spread: Spread,
    /// Mean girths at which enough trees of one age are thick enough: as the sample tells, and were
    /// each figure of its spread as far off as its error.
    mean_cm: f64,
    means_cm: [Option<f64>; 3],
}

impl<'a> Wanted<'a> {
    /// None when not enough of these trees ever get there.
    pub(super) fn new(parts: &'a [Part], rule: &'a Opening, sample: &Sample) -> Option<Self> {
        let spread = Spread {
            seen: sample.spread,
            seen_cm: sample.mean_cm,
            evening: EVENING,
            skew: sample.skew,
        };
        let wide = Spread {
            seen: sample.spread - sample.spread_error,
            ..spread
        };
        let slow = Spread {
            evening: EVENING - EVENING_ERROR,
            ..spread
        };
        let leaning = Spread {
            skew: sample.skew - sample.skew_error,
            ..spread
        };
        let trees: f64 = parts.iter().map(|part| part.trees).sum();
        let older = |part: &Part| part.trees * part.older_years;
        Some(Self {
            parts,
            rule,
            trees,
            older_years: parts.iter().map(older).sum::<f64>() / trees,
            spread,
            mean_cm: spread.mean_needed(rule)?,
            means_cm: [wide, slow, leaning].map(|other| other.mean_needed(rule)),
        })
    }

    /// The aim of the middle tree on this way. None when the way does not lead there.
    pub(super) fn on(&self, way: Course) -> Option<Aim> {
        let of_one_age = way.shape.grown(self.mean_cm)?;
        let apart = |other: &Option<f64>| {
            let other = other.and_then(|mean_cm| way.shape.grown(mean_cm));
            other.map_or(0.0, |other| other - of_one_age)
        };
        let squares = self.means_cm.iter().map(apart).map(|apart| apart * apart);
        Some(Aim {
            grown: self.of_all_ages(way, of_one_age),
            error: libm::sqrt(squares.sum()),
            older_years: self.older_years,
        })
    }

    /// How far the middle tree is when enough trees of all ages are thick enough. The oldest are
    /// there before it, the youngest after it.
    fn of_all_ages(&self, way: Course, of_one_age: f64) -> f64 {
        let when = |part: &Part| of_one_age - way.rate * part.older_years;
        let first = self.parts.iter().map(when).fold(f64::INFINITY, f64::min);
        let last = self.parts.iter().map(when).fold(0.0, f64::max);
        if first >= last {
            return last;
        }
        let enough = |grown: f64| {
            let thick = |part: &Part| {
                let mean_cm = way.shape.girth_cm(grown + way.rate * part.older_years);
                part.trees * self.spread.share(mean_cm, self.rule.girth_cm)
            };
            let thick: f64 = self.parts.iter().map(thick).sum();
            thick * 100.0 >= self.trees * self.rule.share_pct
        };
        halved(first.max(0.0), last, HALVINGS_OF_AGES, enough)
    }
}

/// Where between two figures, of which the high one is enough, enough begins.
fn halved(mut low: f64, mut high: f64, times: u32, enough: impl Fn(f64) -> bool) -> f64 {
    for _ in 0..times {
        let middle = f64::midpoint(low, high);
        if enough(middle) {
            high = middle;
        } else {
            low = middle;
        }
    }
    high
}

#[cfg(test)]
mod tests {
    use super::{EVENING, Spread};
    use crate::handbook::calendar::{Calendar, Opening, profiles};

    /// The mean girth at which enough trees are thick, against `scipy.optimize.brentq` 1.17.1 on the
    /// same share of trees (`stats.norm` and the first term of Edgeworth's series).
    #[test]
    fn the_mean_that_is_needed_is_that_of_scipy() {
        let fao = Calendar::parse(profiles::FAO).unwrap();
        for ([girth_cm, share_pct, seen, seen_cm, skew], theirs) in [
            ([50.0, 70.0, 0.18, 40.0, -0.3], 53.942_471_01),
            ([45.0, 60.0, 0.25, 33.0, 0.2], 47.714_071_45),
            ([50.0, 50.0, 0.12, 48.0, 0.0], 50.0),
        ] {
            let rule = Opening {
                girth_cm,
                share_pct,
                ..fao.opening.clone()
            };
            let spread = Spread {
                seen,
                seen_cm,
                evening: EVENING,
                skew,
            };
            let found = spread.mean_needed(&rule).unwrap();
            assert!((found - theirs).abs() < 1e-5, "{found}, but {theirs}");
        }
    }
}
