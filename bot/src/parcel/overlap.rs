//! How much of a piece of land lies under another.
//!
//! A polygon is the sum of the triangles between one corner and each side, those that run with the
//! clock taken away. So what two polygons share is a sum over pairs of triangles, and what two
//! triangles share is one of them cut by the sides of the other (the cutting of I. Sutherland and
//! G. Hodgman, 1974). No library for it: those that are kept bring a dozen others for this one sum.
//! `tests/peers/parcels.rs` compares it with a library that is not ours.

use super::places::Degrees;

type Spot = (f64, f64);

/// The box around a piece of land: lowest and highest latitude and longitude.
type Bounds = (Spot, Spot);

/// What two pieces of land share, in per cent of the smaller one.
#[must_use]
pub fn shared_pct(one: &[Degrees], other: &[Degrees]) -> f64 {
    if !touch(bounds(one), bounds(other)) {
        return 0.0;
    }
    let Some(origin) = one.first() else {
        return 0.0;
    };
    let (one, other) = (level(one, *origin), level(other, *origin));
    let smaller = area(&one).abs().min(area(&other).abs());
    if smaller <= 0.0 {
        return 0.0;
    }
    shared(&one, &other) / smaller * 100.0
}

fn bounds(corners: &[Degrees]) -> Bounds {
    let all = (
        (f64::INFINITY, f64::NEG_INFINITY),
        (f64::INFINITY, f64::NEG_INFINITY),
    );
    corners.iter().fold(all, |(lat, lon), corner| {
        (
            (lat.0.min(corner.0), lat.1.max(corner.0)),
            (lon.0.min(corner.1), lon.1.max(corner.1)),
        )
    })
}

fn touch(one: Bounds, other: Bounds) -> bool {
    let meet = |one: Spot, other: Spot| one.0 <= other.1 && other.0 <= one.1;
    meet(one.0, other.0) && meet(one.1, other.1)
}

/// Around one place a degree of longitude is shorter than one of latitude, and all is level.
fn level(corners: &[Degrees], origin: Degrees) -> Vec<Spot> {
    let narrow = origin.0.to_radians().cos();
    let spot = |corner: &Degrees| ((corner.1 - origin.1) * narrow, corner.0 - origin.0);
    corners.iter().map(spot).collect()
}

fn turn(a: Spot, b: Spot, c: Spot) -> f64 {
    (b.0 - a.0) * (c.1 - a.1) - (b.1 - a.1) * (c.0 - a.0)
}

fn area(corners: &[Spot]) -> f64 {
    triangles(corners)
        .map(|(a, b, c)| turn(a, b, c) / 2.0)
        .sum()
}

fn triangles(corners: &[Spot]) -> impl Iterator<Item = (Spot, Spot, Spot)> + '_ {
    let first = corners.first().copied().unwrap_or_default();
    let sides = corners.iter().copied().skip(1);
    sides
        .zip(corners.iter().copied().skip(2))
        .map(move |(from, to)| (first, from, to))
}

fn shared(one: &[Spot], other: &[Spot]) -> f64 {
    let mut sum = 0.0;
    for (a, b, c) in triangles(one) {
        for (d, e, f) in triangles(other) {
            let sign = turn(a, b, c).signum() * turn(d, e, f).signum();
            let part = cut(forward(a, b, c), forward(d, e, f));
            sum += sign * area(&part).abs();
        }
    }
    // Either may be given with the clock or against it.
    let way = area(one).signum() * area(other).signum();
    (sum * way).max(0.0)
}

/// The corners against the clock.
fn forward(a: Spot, b: Spot, c: Spot) -> [Spot; 3] {
    if turn(a, b, c) < 0.0 {
        [a, c, b]
    } else {
        [a, b, c]
    }
}

/// What of a triangle lies within another.
fn cut(one: [Spot; 3], [d, e, f]: [Spot; 3]) -> Vec<Spot> {
    let mut kept = one.to_vec();
    for (from, to) in [(d, e), (e, f), (f, d)] {
        let next: Vec<Spot> = kept
            .iter()
            .cycle()
            .skip(1)
            .take(kept.len())
            .copied()
            .collect();
        let mut inside = Vec::with_capacity(kept.len() + 1);
        for (here, there) in kept.into_iter().zip(next) {
            let (here_side, there_side) = (turn(from, to, here), turn(from, to, there));
            if here_side >= 0.0 {
                inside.push(here);
            }
            if (here_side >= 0.0) != (there_side >= 0.0) {
                let along = here_side / (here_side - there_side);
                let on = |a: f64, b: f64| (b - a).mul_add(along, a);
                inside.push((on(here.0, there.0), on(here.1, there.1)));
            }
        }
        kept = inside;
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::shared_pct;

    fn square(latitude: f64, longitude: f64, side: f64) -> Vec<(f64, f64)> {
        vec![
            (latitude, longitude),
            (latitude, longitude + side),
            (latitude + side, longitude + side),
            (latitude + side, longitude),
        ]
    }

    #[track_caller]
    fn check(one: &[(f64, f64)], other: &[(f64, f64)], pct: f64) {
        let turned: Vec<_> = other.iter().rev().copied().collect();
        for other in [other, &turned] {
            let found = shared_pct(one, other);
            assert!((found - pct).abs() < 1e-6, "{found} for {pct}");
        }
    }

    /// By hand: squares that share a quarter, a half, nothing and all; an L whose notch holds the
    /// other, which triangles alone would count.
    #[test]
    fn shares_are_those_of_the_drawing() {
        let one = square(0.0, 100.0, 0.002);
        check(&one, &square(0.001, 100.001, 0.002), 25.0);
        check(&one, &square(0.0, 100.001, 0.002), 50.0);
        check(&one, &square(0.0, 100.003, 0.002), 0.0);
        check(&one, &square(0.0005, 100.0005, 0.001), 100.0);
        let notched = [
            (0.0, 100.0),
            (0.0, 100.002),
            (0.001, 100.002),
            (0.001, 100.001),
            (0.002, 100.001),
            (0.002, 100.0),
        ];
        check(&notched, &square(0.0012, 100.0012, 0.0006), 0.0);
        check(&notched, &square(0.0, 100.0, 0.001), 100.0);
        check(&one, &[], 0.0);
    }
}
