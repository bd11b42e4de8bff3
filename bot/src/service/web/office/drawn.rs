//! Pictures as numbers: where a block lies on the map, where a range lies on the years.
//!
//! What the picture is made of stands in `bot/pages`. A picture never tells alone what it tells: the
//! same stands in a table beside it.

use budwood_scheduler::group::health::Family;
use chrono::{Datelike, NaiveDate};

use crate::engine::looks::{Range, Spot};

/// Width of every picture, in the units of its own.
const WIDTH: f64 = 720.0;
/// Room around a map.
const MARGIN: f64 = 40.0;
/// Metres of a degree of latitude: those of the mean meridian of WGS84.
const METRES_A_DEGREE: f64 = 111_132.95;
/// Lengths of a scale, in metres.
const SCALES: [f64; 12] = [
    50.0, 100.0, 200.0, 500.0, 1_000.0, 2_000.0, 5_000.0, 10_000.0, 20_000.0, 50_000.0, 100_000.0,
    200_000.0,
];

/// A map.
pub(super) struct Map {
    pub(super) width: String,
    pub(super) height: String,
    pub(super) dots: Vec<Dot>,
    /// The scale: how long it is drawn, and what that is.
    pub(super) scale: String,
    pub(super) scale_y: String,
    pub(super) scale_label: String,
}

/// A block on it.
pub(super) struct Dot {
    pub(super) x: String,
    pub(super) y: String,
    pub(super) label_x: String,
    pub(super) number: usize,
    pub(super) shape: Shape,
    pub(super) is_seen: bool,
    pub(super) points: String,
}

/// What stands for what spreads.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Shape {
    /// Nothing was told.
    Cross,
    /// Roots.
    Triangle,
    /// Leaves.
    Circle,
    /// Shoots.
    Square,
    /// Termites.
    Diamond,
    /// What does not spread.
    Star,
}

/// Where spots lie on a plain grid: north is up, and as much a metre either way. Over a valley the
/// earth is flat: a degree of longitude is as long as in its middle.
pub(super) fn map(spots: &[Spot]) -> Map {
    let bounds = |of: fn(&Spot) -> f64| {
        let all = spots.iter().map(of);
        let (low, high) = all.fold((f64::MAX, f64::MIN), |(low, high), one| {
            (low.min(one), high.max(one))
        });
        (low, high)
    };
    let (south, north) = bounds(|spot| spot.latitude);
    let (west, east) = bounds(|spot| spot.longitude);
    let middle = f64::midpoint(south, north).to_radians();
    let metres_east = |longitude: f64| (longitude - west) * METRES_A_DEGREE * middle.cos();
    let metres_south = |latitude: f64| (north - latitude) * METRES_A_DEGREE;
    let wide = metres_east(east).max(1.0);
    let high = metres_south(south).max(1.0);
    // A place alone has a kilometre about it.
    let unit = (WIDTH - 2.0 * MARGIN) / wide.max(high).max(1_000.0);
    let dots = spots.iter().map(|spot| {
        let x = MARGIN + metres_east(spot.longitude) * unit;
        let y = MARGIN + metres_south(spot.latitude) * unit;
        let shape = shape(spot);
        Dot {
            x: at(x),
            y: at(y),
            label_x: at(x + 10.0),
            number: spot.number,
            shape,
            is_seen: spot.is_seen,
            points: points(shape, x, y),
        }
    });
    let scale = SCALES
        .iter()
        .rev()
        .find(|metres| **metres * unit <= WIDTH / 3.0);
    let scale = scale.copied().unwrap_or(50.0);
    let height = MARGIN * 2.0 + high * unit + 30.0;
    Map {
        width: at(WIDTH),
        height: at(height),
        dots: dots.collect(),
        scale: at(MARGIN + scale * unit),
        scale_y: at(height - 16.0),
        scale_label: if scale >= 1_000.0 {
            format!("{} km", scale / 1_000.0)
        } else {
            format!("{scale} m")
        },
    }
}

fn shape(spot: &Spot) -> Shape {
    match spot.family {
        _ if spot.number == 0 => Shape::Cross,
        Some(Family::Root) => Shape::Triangle,
        Some(Family::Leaf) => Shape::Circle,
        Some(Family::Shoot) => Shape::Square,
        Some(Family::Termites) => Shape::Diamond,
        None => Shape::Star,
    }
}

/// The corners of a shape about its middle.
fn points(shape: Shape, x: f64, y: f64) -> String {
    let corners: &[(f64, f64)] = match shape {
        Shape::Triangle => &[(0.0, -8.0), (8.0, 6.0), (-8.0, 6.0)],
        Shape::Square => &[(-6.5, -6.5), (6.5, -6.5), (6.5, 6.5), (-6.5, 6.5)],
        Shape::Diamond => &[(0.0, -9.0), (9.0, 0.0), (0.0, 9.0), (-9.0, 0.0)],
        Shape::Star => &[
            (0.0, -9.0),
            (3.0, -3.0),
            (9.0, 0.0),
            (3.0, 3.0),
            (0.0, 9.0),
            (-3.0, 3.0),
            (-9.0, 0.0),
            (-3.0, -3.0),
        ],
        Shape::Circle | Shape::Cross => &[],
    };
    let corners = corners
        .iter()
        .map(|(dx, dy)| format!("{},{}", at(x + dx), at(y + dy)));
    corners.collect::<Vec<String>>().join(" ")
}

/// Ranges of years, one below the other.
pub(super) struct Years {
    pub(super) height: String,
    pub(super) base: String,
    /// The first of January of each year.
    pub(super) years: Vec<(String, i32)>,
    pub(super) bars: Vec<Bar>,
}

/// A range: a bar with a mark at the likely day.
pub(super) struct Bar {
    pub(super) x: String,
    pub(super) y: String,
    pub(super) width: String,
    pub(super) likely: String,
    pub(super) mark_top: String,
    pub(super) mark_end: String,
    pub(super) text_y: String,
    pub(super) block: String,
}

/// Height of one range.
const ROW: f64 = 44.0;
/// Room for the names of blocks.
const LEFT: f64 = 90.0;

/// Where ranges lie on the years that they need.
pub(super) fn years(ranges: &[Range]) -> Years {
    let first = ranges.iter().map(|range| range.earliest.year()).min();
    let last = ranges.iter().map(|range| range.latest.year()).max();
    let (first, last) = (first.unwrap_or_default(), last.unwrap_or_default());
    let of_years = f64::from(last.saturating_sub(first).saturating_add(1));
    let x = |day: NaiveDate| {
        let year = f64::from(day.year().saturating_sub(first));
        let of_year = f64::from(day.ordinal0()) / 366.0;
        LEFT + (WIDTH - LEFT - 20.0) * (year + of_year) / of_years
    };
    let bars = ranges.iter().zip(0_u32..).map(|(range, row)| {
        let top = f64::from(row) * ROW + 10.0;
        let (from, to) = (x(range.earliest), x(range.latest));
        Bar {
            x: at(from),
            y: at(top + 6.0),
            width: at((to - from).max(2.0)),
            likely: at(x(range.likely)),
            mark_top: at(top),
            mark_end: at(top + 28.0),
            text_y: at(top + 20.0),
            block: range.block.clone(),
        }
    });
    let bars: Vec<Bar> = bars.collect();
    let end = f64::from(u32::try_from(bars.len()).unwrap_or(u32::MAX)) * ROW + 10.0;
    let years = (first..=last.min(first.saturating_add(60))).filter_map(|year| {
        let day = NaiveDate::from_ymd_opt(year, 1, 1)?;
        Some((at(x(day)), year))
    });
    Years {
        height: at(end + 30.0),
        base: at(end),
        years: years.collect(),
        bars,
    }
}

fn at(value: f64) -> String {
    format!("{value:.1}")
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Two places 500 m apart by the geodesic of WGS84 (PROJ's `geod` gives 0.004522 degrees of
    /// latitude at 1.25 S, and 0.004493 of longitude) are as far apart as the scale says.
    #[test]
    fn five_hundred_metres_are_five_hundred_on_the_scale() {
        let spot = |latitude, longitude| Spot {
            number: 1,
            latitude,
            longitude,
            family: None,
            is_seen: false,
        };
        let spots = [
            spot(-1.25, 101.5),
            spot(-1.25 + 0.004_522, 101.5),
            spot(-1.25, 101.5 + 0.004_493),
            spot(-1.30, 101.5),
        ];
        let map = map(&spots);
        let number = |text: &str| text.parse::<f64>().unwrap();
        let scale: f64 = number(&map.scale) - MARGIN;
        assert_eq!(map.scale_label, "2 km");
        let unit = scale / 2_000.0;
        let north = number(&map.dots[0].y) - number(&map.dots[1].y);
        let east = number(&map.dots[2].x) - number(&map.dots[0].x);
        for drawn in [north, east] {
            assert!((drawn / unit - 500.0).abs() < 8.0, "{}", drawn / unit);
        }
    }
}
