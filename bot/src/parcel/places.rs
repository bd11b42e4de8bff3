//! Places on a map as GeoJSON (RFC 7946): longitude first, six decimals, closed rings that run
//! against the clock.

use serde::Serialize;
use serde_json::{Map, Value, value::RawValue};

/// Degrees: latitude, longitude.
pub type Degrees = (f64, f64);

/// Where it is.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// A point.
    Point(Degrees),
    /// Corners in the order in which they were walked, the first not told again.
    Polygon(Vec<Degrees>),
}

/// A place, and what is told of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    /// Its id.
    pub id: String,
    /// Where it is.
    pub shape: Shape,
    /// What is told of it.
    pub properties: Map<String, Value>,
}

#[derive(Serialize)]
struct Collection<'a> {
    #[serde(rename = "type")]
    kind: &'static str,
    features: Vec<Feature<'a>>,
}

#[derive(Serialize)]
struct Feature<'a> {
    #[serde(rename = "type")]
    kind: &'static str,
    id: &'a str,
    geometry: Geometry,
    properties: &'a Map<String, Value>,
}

#[derive(Serialize)]
struct Geometry {
    #[serde(rename = "type")]
    kind: &'static str,
    coordinates: Box<RawValue>,
}

/// The file.
///
/// # Errors
///
/// When a place is none: a coordinate that is no number.
pub fn geojson(places: &[Place]) -> serde_json::Result<Vec<u8>> {
    let features = places.iter().map(|place| {
        Ok(Feature {
            kind: "Feature",
            id: &place.id,
            geometry: geometry(&place.shape)?,
            properties: &place.properties,
        })
    });
    serde_json::to_vec_pretty(&Collection {
        kind: "FeatureCollection",
        features: features.collect::<serde_json::Result<_>>()?,
    })
}

fn geometry(shape: &Shape) -> serde_json::Result<Geometry> {
    let (kind, coordinates) = match shape {
        Shape::Point(place) => ("Point", position(*place)),
        Shape::Polygon(corners) => ("Polygon", format!("[[{}]]", ring(corners))),
    };
    Ok(Geometry {
        kind,
        coordinates: RawValue::from_string(coordinates)?,
    })
}

/// Always six decimals, also where the last ones are noughts: who reads it counts them.
fn position((latitude, longitude): Degrees) -> String {
    format!("[{longitude:.6},{latitude:.6}]")
}

fn ring(corners: &[Degrees]) -> String {
    let mut written: Vec<String> = corners.iter().copied().map(position).collect();
    if twice_area(corners) < 0.0 {
        written.reverse();
    }
    written.dedup();
    if written.len() > 1 && written.first() == written.last() {
        written.pop();
    }
    written.extend(written.first().cloned());
    written.join(",")
}

/// Above nought where the corners run against the clock.
fn twice_area(corners: &[Degrees]) -> f64 {
    let next = corners.iter().cycle().skip(1);
    let sides = corners.iter().zip(next);
    let parts = sides.map(|((y, x), (next_y, next_x))| x * next_y - next_x * y);
    parts.sum()
}

#[cfg(test)]
mod tests {
    use super::{Place, Shape, geojson};

    #[track_caller]
    fn written(shape: Shape) -> serde_json::Value {
        let place = Place {
            id: "7".to_owned(),
            shape,
            properties: serde_json::Map::new(),
        };
        let file = geojson(&[place]).unwrap();
        let file: serde_json::Value = serde_json::from_slice(&file).unwrap();
        file["features"][0]["geometry"]["coordinates"].clone()
    }

    /// RFC 7946, 3.1.6: a ring is closed and an outer one runs against the clock.
    #[test]
    fn rings_are_closed_and_run_against_the_clock() {
        let against = vec![(0.0, 0.0), (0.0, 1.0), (1.0, 1.0), (1.0, 0.0)];
        let with: Vec<_> = against.iter().copied().rev().collect();
        for corners in [against, with] {
            let ring = written(Shape::Polygon(corners));
            let ring: Vec<(f64, f64)> = serde_json::from_value(ring[0].clone()).unwrap();
            assert_eq!(ring.len(), 5);
            assert_eq!(ring[0], ring[4]);
            let sides = ring.iter().zip(&ring[1..]);
            let area: f64 = sides.map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum();
            assert!((area - 2.0).abs() < 1e-9, "{area}");
        }
    }

    #[test]
    fn six_decimals_are_written() {
        let place = Place {
            id: "7".to_owned(),
            shape: Shape::Point((3.1, 101.123_456_7)),
            properties: serde_json::Map::new(),
        };
        let file = String::from_utf8(geojson(&[place]).unwrap()).unwrap();
        assert!(file.contains("[101.123457,3.100000]"), "{file}");
    }
}
