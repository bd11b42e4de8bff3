//! The outline of a block as a walk with a positioning device gives it.
//!
//! Reads corners as lines of "latitude longitude" or as a polygon of RFC 7946 (longitude
//! first), and gives the area on the WGS84 ellipsoid and the corners in metres. Sums on the plane
//! are the scheduler's ([`budwood_scheduler::plan::outline`]).

use budwood_scheduler::plan::{
    HECTARES_MAX, PlanError,
    outline::{CORNERS_MAX, Outline},
};
use geographiclib_rs::{Geodesic, InverseGeodesic, PolygonArea, Winding};
use serde_json::Value;

/// Rubber grows between about 30 degrees north and south (common practice); with room for trials.
pub(crate) const LATITUDE_MAX: f64 = 36.0;
/// Corners further apart than this do not belong to one block.
const ACROSS_M_MAX: f64 = 20_000.0;
const SQUARE_METRES_A_HECTARE: f64 = 10_000.0;

/// A block's ground.
#[derive(Clone, Debug, PartialEq)]
pub struct Ground {
    /// Area on the ellipsoid.
    pub hectares: f64,
    /// Length of the boundary in metres.
    pub boundary_m: f64,
    /// The corners in metres around the first one.
    pub outline: Outline,
}

/// Why an outline cannot be used.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum GroundError {
    /// Neither lines of two numbers nor a polygon.
    #[error("line {line}: expected \"latitude longitude\" in degrees, found {found:?}")]
    Line {
        /// Which, from 1.
        line: usize,
        /// What stands there.
        found: String,
    },
    /// JSON without a polygon that can be read.
    #[error("expected a GeoJSON Polygon with one ring of [longitude, latitude], found {0}")]
    Json(String),
    /// No place on the globe, or none where rubber grows.
    #[error("corner {corner}: latitude {latitude} is {why}. Are latitude and longitude swapped?")]
    Latitude {
        /// Which, from 1.
        corner: usize,
        /// As read.
        latitude: f64,
        /// What is wrong.
        why: &'static str,
    },
    /// No longitude.
    #[error("corner {corner}: longitude {longitude} is not between -180 and 180")]
    Longitude {
        /// Which, from 1.
        corner: usize,
        /// As read.
        longitude: f64,
    },
    /// Corners that cannot belong to one block.
    #[error("corner {corner} lies {km:.0} km from the first: expected at most 20 km")]
    Far {
        /// Which, from 1.
        corner: usize,
        /// How far.
        km: f64,
    },
    /// The outline is none.
    #[error(transparent)]
    Outline(#[from] PlanError),
}

impl Ground {
    /// Reads an outline.
    ///
    /// # Errors
    ///
    /// When a corner is no place, latitude and longitude are swapped as far as that can be told,
    /// or the outline crosses itself.
    pub fn read(text: &str) -> Result<Self, GroundError> {
        Self::of(&Self::corners(text)?)
    }

    /// Reads the corners alone: latitude and longitude of each.
    ///
    /// # Errors
    ///
    /// When it is neither lines of two numbers nor a polygon.
    pub fn corners(text: &str) -> Result<Vec<(f64, f64)>, GroundError> {
        let mut places = if text.trim_start().starts_with('{') {
            from_json(text)?
        } else {
            from_lines(text)?
        };
        if places.len() > 1 && places.first() == places.last() {
            places.pop();
        }
        Ok(places)
    }

    /// The ground within these corners.
    ///
    /// # Errors
    ///
    /// When a corner is no place, latitude and longitude are swapped as far as that can be told,
    /// or the outline crosses itself.
    pub fn of(places: &[(f64, f64)]) -> Result<Self, GroundError> {
        if places.len() > CORNERS_MAX + 1 {
            return Err(PlanError::ManyCorners(places.len()).into());
        }
        for (corner, place) in (1..).zip(places) {
            check(corner, *place)?;
        }
        let globe = Geodesic::wgs84();
        let mut area = PolygonArea::new(&globe, Winding::CounterClockwise);
        let mut corners = Vec::new();
        let Some(first) = places.first() else {
            return Err(PlanError::FewCorners(0).into());
        };
        let is_closed = places.len() > 1 && places.last() == Some(first);
        let open = places.len() - usize::from(is_closed);
        for (corner, (latitude, longitude)) in (1..).zip(places.iter().take(open)) {
            area.add_point(*latitude, *longitude);
            let (away_m, azimuth, _, _): (f64, f64, f64, f64) =
                globe.inverse(first.0, first.1, *latitude, *longitude);
            if away_m > ACROSS_M_MAX {
                let km = away_m / 1_000.0;
                return Err(GroundError::Far { corner, km });
            }
            let azimuth = azimuth.to_radians();
            corners.push((away_m * azimuth.sin(), away_m * azimuth.cos()));
        }
        let outline = Outline::new(corners)?;
        let (boundary_m, area_m2, _) = area.compute(true);
        let hectares = area_m2.abs() / SQUARE_METRES_A_HECTARE;
        if hectares > HECTARES_MAX {
            return Err(PlanError::TooLarge(hectares).into());
        }
        Ok(Self {
            hectares,
            boundary_m,
            outline,
        })
    }
}

fn check(corner: usize, (latitude, longitude): (f64, f64)) -> Result<(), GroundError> {
    let wrong = |why| GroundError::Latitude {
        corner,
        latitude,
        why,
    };
    if !(-90.0..=90.0).contains(&latitude) {
        return Err(wrong("not between -90 and 90"));
    }
    if latitude.abs() > LATITUDE_MAX {
        return Err(wrong("far from where rubber grows"));
    }
    if !(-180.0..=180.0).contains(&longitude) {
        return Err(GroundError::Longitude { corner, longitude });
    }
    Ok(())
}

fn from_lines(text: &str) -> Result<Vec<(f64, f64)>, GroundError> {
    (1..)
        .zip(text.lines())
        .filter(|(_, line)| !line.trim().is_empty() && !line.trim().starts_with('#'))
        .map(|(line, found)| {
            let split = |sign: char| sign == ',' || sign == ';' || sign.is_whitespace();
            let mut numbers = found.split(split).filter(|part| !part.is_empty());
            let mut next = || numbers.next()?.parse::<f64>().ok();
            let place = next().zip(next());
            let wrong = || GroundError::Line {
                line,
                found: found.trim().chars().take(40).collect(),
            };
            match numbers.next() {
                None => place.ok_or_else(wrong),
                Some(_) => Err(wrong()),
            }
        })
        .collect()
}

fn from_json(text: &str) -> Result<Vec<(f64, f64)>, GroundError> {
    let json: Value = serde_json::from_str(text)
        .map_err(|error| GroundError::Json(format!("no JSON ({error})")))?;
    let features = json.pointer("/features");
    if features
        .and_then(Value::as_array)
        .is_some_and(|list| list.len() > 1)
    {
        return Err(GroundError::Json("several features".to_owned()));
    }
    let shape = ["/features/0/geometry", "/geometry", ""]
        .into_iter()
        .find_map(|place| json.pointer(place))
        .unwrap_or(&json);
    let kind = shape
        .get("type")
        .and_then(Value::as_str)
        .unwrap_or("no type");
    let rings = shape.get("coordinates").and_then(Value::as_array);
    match rings.map(Vec::as_slice) {
        Some([ring]) if kind == "Polygon" => ring
            .as_array()
            .into_iter()
            .flatten()
            .map(|place| {
                let at = |index: usize| place.get(index).and_then(Value::as_f64);
                let wrong = || GroundError::Json(format!("the place {place}"));
                Ok((at(1).ok_or_else(wrong)?, at(0).ok_or_else(wrong)?))
            })
            .collect(),
        Some(rings) if kind == "Polygon" => {
            Err(GroundError::Json(format!("{} rings", rings.len())))
        }
        Some(_) | None => Err(GroundError::Json(kind.to_owned())),
    }
}

#[cfg(test)]
mod tests {
    use budwood_scheduler::plan::outline::count;

    use super::Ground;

    /// Worked by hand from the radii of WGS84; `tests/peers/ground.rs` has the rest of the globe.
    #[test]
    fn a_small_square_at_the_equator() {
        let square = "0 0\n0 0.001\n0.001 0.001\n0.001 0\n0 0\n";
        let ground = Ground::read(square).unwrap();
        // One degree along the equator is 2 pi a / 360 = 111,319.490 8 m, along the meridian there
        // 110,574.275 8 m (WGS84: a = 6,378,137 m, f = 1 / 298.257 223 563).
        let by_hand = 111.319_490_8 * 110.574_275_8 / 10_000.0;
        assert!(
            (ground.hectares - by_hand).abs() < 1e-6 * by_hand,
            "{}",
            ground.hectares
        );
        let plane = ground.outline.area_m2() / 10_000.0;
        assert!((plane - ground.hectares).abs() < 1e-6 * plane, "{plane}");
        // 110.574 m hold 15 rows of 7 m inside 2 m, 111.319 m 36 trees of 3 m.
        assert_eq!(count(&ground.outline, 90.0, (7.0, 3.0), 2.0), Ok(16 * 36));
    }

    #[test]
    fn geojson_has_longitude_first() {
        let ring = "[[101.5,3.1],[101.501,3.1],[101.501,3.101],[101.5,3.101],[101.5,3.1]]";
        let polygon = format!(r#"{{"type":"Polygon","coordinates":[{ring}]}}"#);
        let feature = format!(r#"{{"type":"Feature","geometry":{polygon},"properties":{{}}}}"#);
        let lines = "3.1, 101.5\n3.1, 101.501\n3.101, 101.501\n3.101, 101.5\n";
        let ground = Ground::read(lines).unwrap();
        assert_eq!(Ground::read(&polygon), Ok(ground.clone()));
        assert_eq!(Ground::read(&feature), Ok(ground));
    }

    #[track_caller]
    fn refused(text: &str, error: &str) {
        assert_eq!(Ground::read(text).unwrap_err().to_string(), error);
    }

    #[test]
    fn what_is_no_outline_is_refused() {
        refused(
            "101.5 3.1\n101.501 3.1\n101.501 3.101",
            "corner 1: latitude 101.5 is not between -90 and 90. Are latitude and longitude swapped?",
        );
        refused(
            "80.2 7.1\n80.2 7.2\n80.3 7.2",
            "corner 1: latitude 80.2 is far from where rubber grows. Are latitude and longitude \
             swapped?",
        );
        refused(
            "0 0\n0.001 0.001\n0 0.001\n0.001 0",
            "the sides that begin at corners 1 and 3 cross: were corners walked in turn?",
        );
        refused(
            "0 0\n0 0.001",
            "the outline has 2 corners, expected at least 3",
        );
        refused("", "the outline has 0 corners, expected at least 3");
        refused(
            "0 0\n0 nine",
            "line 2: expected \"latitude longitude\" in degrees, found \"0 nine\"",
        );
        refused(
            "0 0\n0 1\n1 1",
            "corner 2 lies 111 km from the first: expected at most 20 km",
        );
        refused(
            r#"{"type":"Point","coordinates":[1,2]}"#,
            "expected a GeoJSON Polygon with one ring of [longitude, latitude], found Point",
        );
        refused(
            "0 200\n0 1\n1 1",
            "corner 1: longitude 200 is not between -180 and 180",
        );
        assert!(Ground::read("{").is_err());
    }
}
