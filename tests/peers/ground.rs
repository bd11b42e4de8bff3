//! Areas of outlines against PyPI geographiclib (Karney's own) and pyproj.
//!
//! The rule: the same area to a square centimetre, the same length to a millimetre, and a plane
//! that is off by less than a thousandth of a per cent on a block.

use std::fmt::Write;

use budwood::words::outline_area::Ground;
use serde_json::{Value, json};

use crate::peer::ask;

/// Blocks in places where rubber grows, and on the lines where sums go wrong: the equator, the
/// prime meridian, the change of date.
const CENTRES: [(f64, f64); 7] = [
    (3.1, 101.5),
    (-2.9, 104.7),
    (9.5, 76.6),
    (5.3, -4.0),
    (0.0, 0.0),
    (22.0, 100.8),
    (-21.2, 179.999_9),
];

/// Corners of a crooked block of some hectares, in degrees from its centre.
const SHAPE: [(f64, f64); 6] = [
    (0.0, 0.0),
    (0.000_2, 0.001_7),
    (0.000_9, 0.001_3),
    (0.001_8, 0.001_9),
    (0.002_1, 0.000_1),
    (0.001_0, 0.000_4),
];

#[test]
fn areas_are_as_the_peers_have_them() {
    let blocks: Vec<Vec<(f64, f64)>> = CENTRES
        .iter()
        .map(|(latitude, longitude)| {
            let wrapped = |east: f64| if east > 180.0 { east - 360.0 } else { east };
            let corner = |(north, east): &(f64, f64)| (latitude + north, wrapped(longitude + east));
            SHAPE.iter().map(corner).collect()
        })
        .collect();
    let questions: Vec<Value> = blocks
        .iter()
        .map(|places| json!({ "places": places }))
        .collect();
    let answers = ask("ground.py", &questions);
    assert_eq!(answers.len(), blocks.len());
    for (places, answer) in blocks.iter().zip(answers) {
        let mut walk = String::new();
        for (latitude, longitude) in places {
            writeln!(walk, "{latitude} {longitude}").unwrap();
        }
        let ground = Ground::read(&walk).unwrap();
        let number = |key: &str| answer.get(key).and_then(Value::as_f64).unwrap();
        let ours = ground.hectares * 10_000.0;
        for peer in ["geographiclib", "pyproj"] {
            assert!(
                (ours - number(peer)).abs() < 1e-4,
                "{places:?}: {ours}, {peer} {}",
                number(peer)
            );
        }
        assert!(
            (ground.boundary_m - number("round")).abs() < 1e-3,
            "{places:?}"
        );
        let plane = ground.outline.area_m2();
        assert!(
            (plane - ours).abs() < 1e-5 * ours,
            "{places:?}: {plane} on the plane, {ours}"
        );
    }
}
