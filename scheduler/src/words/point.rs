//! A place on the map, and how far it is from another.

/// Mean radius of the earth in kilometres (International Union of Geodesy and Geophysics).
const EARTH_KM: f64 = 6_371.008_8;

/// A place in degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// Latitude, north is positive.
    pub latitude: f64,
    /// Longitude, east is positive.
    pub longitude: f64,
}

impl Point {
    /// The distance over a round earth (the haversine formula; R. W. Sinnott, Sky and Telescope
    /// 68, 1984). It is within 0.6 % of that over the real one.
    #[must_use]
    pub fn kilometres_to(self, other: Self) -> f64 {
        let half = |from: f64, to: f64| libm::sin((to - from).to_radians() / 2.0);
        let north = half(self.latitude, other.latitude);
        let east = half(self.longitude, other.longitude);
        let along = libm::cos(self.latitude.to_radians()) * libm::cos(other.latitude.to_radians());
        let part = north * north + along * east * east;
        2.0 * EARTH_KM * libm::asin(libm::sqrt(part.clamp(0.0, 1.0)))
    }
}

#[cfg(test)]
mod tests {
    use super::Point;

    fn at(latitude: f64, longitude: f64) -> Point {
        Point {
            latitude,
            longitude,
        }
    }

    /// A nautical mile of 1.852 km (International Hydrographic Conference, Monaco 1929) is a minute
    /// of latitude; a degree of longitude at 60 degrees is half of one at the equator.
    #[test]
    fn distances_are_those_of_the_map() {
        let mile = at(0.0, 101.0).kilometres_to(at(1.0 / 60.0, 101.0));
        assert!((mile - 1.852).abs() < 0.005, "{mile}");
        let narrow = at(60.0, 0.0).kilometres_to(at(60.0, 0.1));
        let wide = at(0.0, 0.0).kilometres_to(at(0.0, 0.1));
        assert!((wide / narrow - 2.0).abs() < 1e-3, "{wide} {narrow}");
        let around = at(0.0, 179.95).kilometres_to(at(0.0, -179.95));
        assert!((around - wide).abs() < 1e-6, "over the date line: {around}");
    }

    #[test]
    fn nonsense_is_near_to_nothing() {
        let lost = at(f64::NAN, 0.0);
        assert!(lost.kilometres_to(at(0.0, 0.0)).is_nan());
    }
}
