//! The curve that fits measured girths best, by least squares.
//!
//! No library does this for us here: `levenberg-marquardt` and `argmin` need `nalgebra` and the
//! standard library, which the core goes without. With the limit given there are two unknowns at
//! most, so that each step is two lines of algebra. A peer test holds it against
//! `scipy.optimize.curve_fit`.

use super::{Curve, LAG_YEARS, grown};

/// More steps than this are never needed: each one about squares the error.
const STEPS_MAX: u32 = 60;
/// Halvings of a step that would make the fit worse.
const HALVINGS_MAX: u32 = 40;
/// A step that changes the rate and the start by less than this share ends the search.
const SMALL: f64 = 1e-12;
/// Below this a pair of girths does not tell rate and start apart.
const TOO_ALIKE: f64 = 1e-14;

/// A mean girth at an age.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seen {
    /// Years after planting.
    pub age_years: f64,
    /// Mean girth in centimetres.
    pub girth_cm: f64,
}

/// A curve through measured girths.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fit {
    /// The curve.
    pub curve: Curve,
    /// Squares of what it misses the girths by, added up, in square centimetres.
    pub squares: f64,
}

/// Which figures of the curve are looked for.
#[derive(Clone, Copy)]
enum Unknown {
    Rate,
    RateAndStart,
}

/// Finds the rate, and the start when none is given, of the curve with this limit that misses the
/// girths least. None when the girths do not tell: too few, not below the limit, not rising.
#[must_use]
pub fn fit(seen: &[Seen], limit_cm: f64, start_years: Option<f64>) -> Option<Fit> {
    let unknown = match start_years {
        Some(_) => Unknown::Rate,
        None => Unknown::RateAndStart,
    };
    let mut curve = first_guess(seen, limit_cm, start_years)?;
    let mut squares = missed(seen, &curve);
    for _ in 0..STEPS_MAX {
        let (rate, start) = step(seen, &curve, unknown)?;
        let better = (0..HALVINGS_MAX).find_map(|halvings| {
            let part = libm::ldexp(1.0, -i32::try_from(halvings).ok()?);
            let next = Curve {
                rate: curve.rate + part * rate,
                start_years: curve.start_years + part * start,
                ..curve
            };
            let squares_next = missed(seen, &next);
            (next.rate > 0.0 && squares_next <= squares).then_some((next, squares_next))
        });
        // No part of the step helps any more: this is the bottom.
        let Some((next, squares_next)) = better else {
            break;
        };
        let moved = (next.rate - curve.rate).abs() / curve.rate
            + (next.start_years - curve.start_years).abs();
        (curve, squares) = (next, squares_next);
        if moved < SMALL {
            break;
        }
    }
    (curve.rate.is_finite() && squares.is_finite()).then_some(Fit { curve, squares })
}

/// On the scale on which the curve is straight, the straight line through the girths.
fn first_guess(seen: &[Seen], limit_cm: f64, start_years: Option<f64>) -> Option<Curve> {
    let mut sums = Sums::default();
    for one in seen {
        sums.add(one.age_years, grown(one.girth_cm, limit_cm)?);
    }
    let (rate, start_years) = match start_years {
        Some(start) => (
            (sums.xy - start * sums.y) / (sums.xx - 2.0 * start * sums.x + start * start * sums.n),
            start,
        ),
        None => {
            let rate = (sums.n * sums.xy - sums.x * sums.y) / (sums.n * sums.xx - sums.x * sums.x);
            (rate, (sums.x - sums.y / rate) / sums.n)
        }
    };
    (rate > 0.0 && rate.is_finite() && start_years.is_finite()).then_some(Curve {
        limit_cm,
        rate,
        start_years,
    })
}

/// The curve without a floor at its start, so that its slope is known everywhere.
fn girth(curve: &Curve, age_years: f64) -> f64 {
    -curve.limit_cm * libm::expm1(-curve.rate * (age_years - curve.start_years))
}

fn missed(seen: &[Seen], curve: &Curve) -> f64 {
    let miss = |one: &Seen| one.girth_cm - girth(curve, one.age_years);
    seen.iter().map(|one| miss(one) * miss(one)).sum()
}

/// One step of Gauss and Newton: by how much to change the rate and the start.
fn step(seen: &[Seen], curve: &Curve, unknown: Unknown) -> Option<(f64, f64)> {
    let (mut rr, mut rs, mut ss, mut r, mut s) = (0.0, 0.0, 0.0, 0.0, 0.0);
    for one in seen {
        let years = one.age_years - curve.start_years;
        let left_cm = curve.limit_cm * libm::exp(-curve.rate * years);
        let (by_rate, by_start) = (left_cm * years, -left_cm * curve.rate);
        let miss = one.girth_cm - girth(curve, one.age_years);
        rr += by_rate * by_rate;
        rs += by_rate * by_start;
        ss += by_start * by_start;
        r += by_rate * miss;
        s += by_start * miss;
    }
    match unknown {
        Unknown::Rate => (rr > 0.0).then(|| (r / rr, 0.0)),
        Unknown::RateAndStart => {
            let apart = rr * ss - rs * rs;
            (apart > TOO_ALIKE * rr * ss)
                .then(|| ((ss * r - rs * s) / apart, (rr * s - rs * r) / apart))
        }
    }
}

#[derive(Default)]
struct Sums {
    n: f64,
    x: f64,
    y: f64,
    xx: f64,
    xy: f64,
}

impl Sums {
    fn add(&mut self, x: f64, y: f64) {
        self.n += 1.0;
        self.x += x;
        self.y += y;
        self.xx += x * x;
        self.xy += x * y;
    }
}

/// The curve with the usual start through the girths of many stands, and how much they say of its
/// rate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Many {
    pub(super) curve: Curve,
    /// How much the squares that are missed by grow with the rate: the sum of `by_rate` squared.
    weight: f64,
}

impl Many {
    /// Fits them once.
    pub(super) fn of(seen: &[Seen], limit_cm: f64) -> Option<Self> {
        let curve = fit(seen, limit_cm, Some(LAG_YEARS))?.curve;
        let rates = seen.iter().map(|one| by_rate(one, &curve));
        let weight = rates.map(|rate| rate * rate).sum();
        Some(Self { curve, weight })
    }

    /// The curve without one of them, by one step of Gauss and Newton from the curve of all: it
    /// leaves nothing to speak of, since one of many moves the curve little.
    pub(super) fn without(&self, one: &Seen) -> Curve {
        let pull = by_rate(one, &self.curve);
        let miss = one.girth_cm - girth(&self.curve, one.age_years);
        let moved = self.curve.rate - pull * miss / (self.weight - pull * pull);
        let is_rate = moved > 0.0 && moved.is_finite();
        Curve {
            rate: if is_rate { moved } else { self.curve.rate },
            ..self.curve
        }
    }
}

/// How much thicker a tree of this age is for each unit of the rate.
fn by_rate(one: &Seen, curve: &Curve) -> f64 {
    let years = one.age_years - curve.start_years;
    curve.limit_cm * libm::exp(-curve.rate * years) * years
}

#[cfg(test)]
mod tests {
    use std::vec::Vec;

    use super::{Curve, Seen, fit};

    fn on(curve: &Curve, ages: &[f64]) -> Vec<Seen> {
        ages.iter()
            .map(|age| Seen {
                age_years: *age,
                girth_cm: curve.girth_cm(*age),
            })
            .collect()
    }

    #[test]
    fn a_curve_is_found_again() {
        let made = Curve {
            limit_cm: 90.0,
            rate: 0.147,
            start_years: 0.62,
        };
        let seen = on(&made, &[2.0, 3.0, 4.0, 5.5]);
        let found = fit(&seen, 90.0, None).unwrap();
        assert!((found.curve.rate - made.rate).abs() < 1e-9, "{found:?}");
        assert!((found.curve.start_years - 0.62).abs() < 1e-8);
        assert!(found.squares < 1e-12);
        let fixed = fit(&seen, 90.0, Some(0.62)).unwrap();
        assert!((fixed.curve.rate - made.rate).abs() < 1e-12);
    }

    #[test]
    fn girths_that_do_not_tell_give_nothing() {
        let seen = |girths: &[(f64, f64)]| {
            let seen: Vec<Seen> = girths
                .iter()
                .map(|(age_years, girth_cm)| Seen {
                    age_years: *age_years,
                    girth_cm: *girth_cm,
                })
                .collect();
            fit(&seen, 90.0, None)
        };
        assert_eq!(seen(&[]), None);
        assert_eq!(seen(&[(3.0, 30.0)]), None, "one girth");
        assert_eq!(seen(&[(3.0, 30.0), (3.0, 31.0)]), None, "one age");
        assert_eq!(seen(&[(3.0, 30.0), (4.0, 20.0)]), None, "falling");
        assert_eq!(seen(&[(3.0, 30.0), (4.0, 95.0)]), None, "over the limit");
        assert_eq!(seen(&[(3.0, f64::NAN), (4.0, 40.0)]), None);
        assert_eq!(seen(&[(f64::INFINITY, 30.0), (4.0, 40.0)]), None);
    }
}
