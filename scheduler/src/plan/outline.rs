//! An outline on level ground: is it one, how large is it, and how many trees stand inside.
//!
//! Corners are metres east and north of any place near by. Where they lie on the globe is not
//! known here.

use alloc::vec::Vec;

use super::{PlanError, check_margin, check_spacing};
use crate::sums::rounding;

/// The most corners of an outline: a walk round a block gives a few dozen; each pair of sides is
/// looked at, so that thousands would take seconds.
pub const CORNERS_MAX: usize = 1_000;
/// The most rows: 1,000 ha in rows of 1 m.
const ROWS_MAX: u32 = 100_000;
/// Trees that stand nearer to the margin than this stand on it.
const NEAR_M: f64 = 1e-6;

/// A place: metres east, metres north.
pub type Place = (f64, f64);

/// A closed line that does not cross itself.
#[derive(Clone, Debug, PartialEq)]
pub struct Outline {
    corners: Vec<Place>,
}

impl Outline {
    /// Takes corners in the order in which they were walked. The first may be told again at the
    /// end, and a corner may be told twice in a row.
    ///
    /// # Errors
    ///
    /// When they are too few or too many, no places, or the sides cross.
    pub fn new(mut corners: Vec<Place>) -> Result<Self, PlanError> {
        let is_place = |place: &Place| place.0.is_finite() && place.1.is_finite();
        if let Some(wrong) = corners.iter().position(|place| !is_place(place)) {
            return Err(PlanError::NoPlace(wrong + 1));
        }
        corners.dedup();
        if corners.len() > 1 && corners.first() == corners.last() {
            corners.pop();
        }
        if corners.len() < 3 {
            return Err(PlanError::FewCorners(corners.len()));
        }
        if corners.len() > CORNERS_MAX {
            return Err(PlanError::ManyCorners(corners.len()));
        }
        let outline = Self { corners };
        match outline.crossing() {
            Some((one, other)) => Err(PlanError::Crossing(one + 1, other + 1)),
            None if outline.area_m2() <= 0.0 => Err(PlanError::NoArea(0.0)),
            None => Ok(outline),
        }
    }

    /// The area on the plane.
    #[must_use]
    pub fn area_m2(&self) -> f64 {
        let twice: f64 = self.sides().map(|(from, to)| cross(from, to)).sum();
        libm::fabs(twice) / 2.0
    }

    fn sides(&self) -> impl Iterator<Item = (Place, Place)> + '_ {
        let next = self.corners.iter().cycle().skip(1);
        self.corners.iter().copied().zip(next.copied())
    }

    /// The first two sides that meet elsewhere than at the corner that they share.
    fn crossing(&self) -> Option<(usize, usize)> {
        let last = self.corners.len() - 1;
        for (i, one) in self.sides().enumerate() {
            for (j, other) in self.sides().enumerate().skip(i + 1) {
                let follow = j == i + 1 || (i == 0 && j == last);
                // Sides that follow each other share a corner; they are wrong only when they
                // run back over each other.
                let wrong = if follow {
                    runs_back(one, other)
                } else {
                    meet(one, other)
                };
                if wrong {
                    return Some((i, j));
                }
            }
        }
        None
    }
}

/// Trees inside an outline: rows along a bearing (degrees from north), a tree at the beginning of
/// each stretch of row, all of them the margin inside the boundary.
///
/// # Errors
///
/// When spacing or margin are none, or the outline is too large.
pub fn count(
    outline: &Outline,
    bearing_deg: f64,
    (row_m, in_row_m): (f64, f64),
    margin_m: f64,
) -> Result<u32, PlanError> {
    check_spacing(row_m, in_row_m)?;
    check_margin(margin_m)?;
    let bearing = bearing_deg.to_radians();
    let (sin, cos) = (libm::sin(bearing), libm::cos(bearing));
    // Along the row, and across it.
    let turned: Vec<Place> = outline
        .corners
        .iter()
        .map(|(east, north)| (east * sin + north * cos, north * sin - east * cos))
        .collect();
    let turned = Outline { corners: turned };
    let across = turned.corners.iter().map(|place| place.1);
    let (low, high) = across.fold((f64::MAX, f64::MIN), |(low, high), at| {
        (low.min(at), high.max(at))
    });
    let too_large = || PlanError::TooLarge(outline.area_m2() / 10_000.0);
    let spaces = (high - low - 2.0 * margin_m) / row_m;
    if spaces < 0.0 {
        return Ok(0);
    }
    let rows = rounding::floor(spaces).filter(|rows| *rows < ROWS_MAX);
    let mut trees = 0_u32;
    for row in 0..=rows.ok_or_else(too_large)? {
        let at = low + margin_m + f64::from(row) * row_m;
        for (from, to) in stretches(&turned, at, margin_m) {
            let here = rounding::floor((to - from) / in_row_m).ok_or_else(too_large)?;
            trees = trees.saturating_add(here).saturating_add(1);
        }
    }
    Ok(trees)
}

/// The stretches of a row that lie inside and far enough from every side.
fn stretches(outline: &Outline, at: f64, margin_m: f64) -> Vec<(f64, f64)> {
    let mut free = inside(outline, at);
    for side in outline.sides() {
        if let Some((from, to)) = too_near(side, at, margin_m - NEAR_M) {
            free = free
                .into_iter()
                .flat_map(|(start, end)| [(start, end.min(from)), (start.max(to), end)])
                .filter(|(start, end)| start <= end)
                .collect();
        }
    }
    free
}

fn inside(outline: &Outline, at: f64) -> Vec<(f64, f64)> {
    let mut cuts: Vec<f64> = outline
        .sides()
        // A corner on the row belongs to the side above it only, so that it is cut once.
        .filter(|(from, to)| (from.1 > at) != (to.1 > at))
        .map(|(from, to)| from.0 + (at - from.1) / (to.1 - from.1) * (to.0 - from.0))
        .collect();
    cuts.sort_by(f64::total_cmp);
    let mut cuts = cuts.into_iter();
    core::iter::from_fn(|| cuts.next().zip(cuts.next())).collect()
}

/// The stretch of a row that is nearer to a side than the margin.
fn too_near((from, to): (Place, Place), at: f64, margin_m: f64) -> Option<(f64, f64)> {
    if margin_m <= 0.0 {
        return None;
    }
    // The places near a side are a band with a round end at each corner; a row cuts it once.
    let ends = [from, to].into_iter().filter_map(|(along, across)| {
        let half = margin_m * margin_m - (at - across) * (at - across);
        (half > 0.0).then(|| (along - libm::sqrt(half), along + libm::sqrt(half)))
    });
    let parts: Vec<(f64, f64)> = ends.chain(band((from, to), at, margin_m)).collect();
    let low = parts.iter().map(|part| part.0).min_by(f64::total_cmp)?;
    let high = parts.iter().map(|part| part.1).max_by(f64::total_cmp)?;
    Some((low, high))
}

fn band((from, to): (Place, Place), at: f64, margin_m: f64) -> Option<(f64, f64)> {
    let (along, across) = (to.0 - from.0, to.1 - from.1);
    let length = libm::hypot(along, across);
    let (along, across) = (along / length, across / length);
    let rise = at - from.1;
    // Within the side's length, and within the margin on either hand.
    let on_side = between(along, rise * across, 0.0, length)?;
    let beside = between(across, -rise * along, -margin_m, margin_m)?;
    let part = (on_side.0.max(beside.0), on_side.1.min(beside.1));
    (part.0 < part.1).then_some((from.0 + part.0, from.0 + part.1))
}

/// Where `slope * x + rest` lies between two values.
fn between(slope: f64, rest: f64, low: f64, high: f64) -> Option<(f64, f64)> {
    if libm::fabs(slope) < 1e-12 {
        return (low..=high).contains(&rest).then_some((f64::MIN, f64::MAX));
    }
    let (one, other) = ((low - rest) / slope, (high - rest) / slope);
    Some((one.min(other), one.max(other)))
}

fn cross(one: Place, other: Place) -> f64 {
    one.0 * other.1 - one.1 * other.0
}

fn minus(one: Place, other: Place) -> Place {
    (one.0 - other.0, one.1 - other.1)
}

/// On which hand of a line a place lies.
fn hand((from, to): (Place, Place), place: Place) -> f64 {
    cross(minus(to, from), minus(place, from))
}

fn runs_back((from, to): (Place, Place), (next_from, next_to): (Place, Place)) -> bool {
    let (one, other) = (minus(to, from), minus(next_to, next_from));
    cross(one, other) == 0.0 && one.0 * other.0 + one.1 * other.1 < 0.0
}

fn meet(one: (Place, Place), other: (Place, Place)) -> bool {
    let (a, b) = (hand(one, other.0), hand(one, other.1));
    let (c, d) = (hand(other, one.0), hand(other, one.1));
    if a == 0.0 && b == 0.0 {
        return overlap(one, other);
    }
    a * b <= 0.0 && c * d <= 0.0
}

/// Whether two sides on one line share a place.
fn overlap(one: (Place, Place), other: (Place, Place)) -> bool {
    let share = |axis: fn(&Place) -> f64| {
        let (a, b) = (axis(&one.0), axis(&one.1));
        let (c, d) = (axis(&other.0), axis(&other.1));
        a.min(b) <= c.max(d) && c.min(d) <= a.max(b)
    };
    share(|place| place.0) && share(|place| place.1)
}
