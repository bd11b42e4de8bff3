//! The shapes in which stands may grow, and how far a girth is along each.
//!
//! Published work does not agree on one. The monomolecular curve fitted monthly girths of 2 to 12
//! years best (Chandrasekhar 2012, Journal of Forestry Research 23(3), abstract); over the four
//! years before tapping the yearly girths of ten clones at two sites grew mainly in a straight line
//! (Margret, Abeyasekera and Jayasekera 1988, abstract); in the first year rates rise with age
//! (Nugawela and Aluthhewage 1986, abstract). So every shape is kept, and the girths decide.

use super::standard::anchor;
use crate::handbook::calendar::Calendar;

/// The girth at which a sigmoid curve begins, in centimetres. An assumption.
const BEGIN_CM: f64 = 1.0;
/// What is left of the pace beyond the bend, where crowns have closed. An assumption.
const BENT_PACE: f64 = 0.5;

/// A shape of growth. Along each, a scale is laid on which a stand moves evenly with time: 0 at the
/// begin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Shape {
    /// Fastest at the begin, then slower and slower (monomolecular).
    Slowing {
        /// The girth that it tends to, in centimetres.
        limit_cm: f64,
    },
    /// The same each year.
    Straight,
    /// The same each year up to a girth, then the same at a slower pace.
    Bent {
        /// Where it bends, in centimetres.
        knee_cm: f64,
    },
    /// Slow, fast, slow (the curve of Gompertz).
    Sigmoid {
        /// The girth that it tends to, in centimetres.
        limit_cm: f64,
    },
}

impl Shape {
    /// How far this girth is. None at or beyond the limit, and before the begin.
    pub(crate) fn grown(self, girth_cm: f64) -> Option<f64> {
        if !(girth_cm > 0.0 && girth_cm.is_finite()) {
            return None;
        }
        match self {
            Self::Slowing { limit_cm } => super::grown(girth_cm, limit_cm),
            Self::Straight => Some(girth_cm),
            Self::Bent { knee_cm } => {
                Some(girth_cm + (girth_cm - knee_cm).max(0.0) * (1.0 / BENT_PACE - 1.0))
            }
            Self::Sigmoid { limit_cm } => (girth_cm > BEGIN_CM && girth_cm < limit_cm).then(|| {
                let log = |girth: f64| libm::log(limit_cm / girth);
                libm::log(log(BEGIN_CM) / log(girth_cm))
            }),
        }
    }

    /// The girth that is so far; the reverse of [`Shape::grown`].
    pub(crate) fn girth_cm(self, grown: f64) -> f64 {
        match self {
            Self::Slowing { limit_cm } => super::girth_of(grown, limit_cm),
            Self::Straight => grown,
            Self::Bent { knee_cm } => grown.min(knee_cm) + (grown - knee_cm).max(0.0) * BENT_PACE,
            Self::Sigmoid { limit_cm } => {
                let log = libm::log(limit_cm / BEGIN_CM);
                limit_cm * libm::exp(-log * libm::exp(-grown))
            }
        }
    }

    /// How much the scale grows for each centimetre at this girth.
    pub(crate) fn steepness(self, girth_cm: f64) -> f64 {
        match self {
            Self::Slowing { limit_cm } => 1.0 / (limit_cm - girth_cm),
            Self::Straight => 1.0,
            Self::Bent { knee_cm } if girth_cm <= knee_cm => 1.0,
            Self::Bent { .. } => 1.0 / BENT_PACE,
            Self::Sigmoid { limit_cm } => 1.0 / (girth_cm * libm::log(limit_cm / girth_cm)),
        }
    }
}

/// A way along a shape: from when, and how fast.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Course {
    pub(crate) shape: Shape,
    /// How far a stand goes in a year.
    pub(crate) rate: f64,
    /// The age at which it begins, in years.
    pub(crate) start_years: f64,
}

impl Course {
    /// What the handbook leads to expect, if growth has this shape and begins then.
    pub(crate) fn usual(calendar: &Calendar, shape: Shape, start_years: f64) -> Option<Self> {
        let expected = anchor(calendar)?;
        let years = expected.age_years - start_years;
        let rate = shape.grown(expected.girth_cm)? / years;
        (years > 0.0 && rate.is_finite()).then_some(Self {
            shape,
            rate,
            start_years,
        })
    }

    /// The same, so many times as fast.
    pub(crate) fn faster(self, times: f64) -> Self {
        Self {
            rate: self.rate * times,
            ..self
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Shape;

    pub(super) const SHAPES: [Shape; 4] = [
        Shape::Slowing { limit_cm: 90.0 },
        Shape::Straight,
        Shape::Bent { knee_cm: 45.0 },
        Shape::Sigmoid { limit_cm: 90.0 },
    ];

    #[test]
    fn scale_and_girth_are_the_reverse_of_each_other() {
        for shape in SHAPES {
            for girth_cm in [2.0, 10.0, 44.9, 45.1, 60.0, 89.0] {
                let grown = shape.grown(girth_cm).unwrap();
                assert!((shape.girth_cm(grown) - girth_cm).abs() < 1e-9, "{shape:?}");
                let more = shape.grown(girth_cm + 1e-6).unwrap();
                let steepness = (more - grown) / 1e-6;
                let told = shape.steepness(girth_cm);
                assert!(
                    (steepness / told - 1.0).abs() < 1e-4,
                    "{shape:?} {girth_cm}"
                );
            }
        }
    }

    /// Worked by hand: half of 90 cm is ln 2 on the way; 55 cm beyond a bend at 45 cm counts 65;
    /// a Gompertz curve from 1 to 90 cm is at its steepest where ln(90 / girth) is 1.
    #[test]
    fn worked_by_hand() {
        let near = |found: Option<f64>, expected: f64| {
            assert!((found.unwrap() - expected).abs() < 1e-6, "{found:?}");
        };
        near(
            Shape::Slowing { limit_cm: 90.0 }.grown(45.0),
            core::f64::consts::LN_2,
        );
        near(Shape::Bent { knee_cm: 45.0 }.grown(55.0), 65.0);
        // ln(ln 90) with ln 90 = 4.499810: 90 / e = 33.109149 cm.
        near(
            Shape::Sigmoid { limit_cm: 90.0 }.grown(33.109_149_708),
            1.504_035_148,
        );
    }

    #[test]
    fn no_place_on_the_scale_for_nonsense() {
        for shape in SHAPES {
            for girth_cm in [0.0, -3.0, f64::NAN, f64::INFINITY] {
                assert_eq!(shape.grown(girth_cm), None, "{shape:?}");
            }
        }
        assert_eq!(Shape::Slowing { limit_cm: 90.0 }.grown(90.0), None);
        assert_eq!(Shape::Sigmoid { limit_cm: 90.0 }.grown(95.0), None);
        assert_eq!(Shape::Sigmoid { limit_cm: 90.0 }.grown(0.5), None);
    }
}
