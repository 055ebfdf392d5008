//! Positions on the WGS 84 ellipsoid, and the geodesics between them.

use geographiclib_rs::{DirectGeodesic, Geodesic, InverseGeodesic};

/// A position in degrees on WGS 84, rounded to 1e-9 degree (a tenth of a millimetre).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Position {
    latitude: f64,
    longitude: f64,
}

impl Position {
    /// A position; `None` where it is none on earth.
    ///
    /// # Example
    /// ```
    /// use tautline_ground::position::Position;
    /// assert!(Position::new(43.5, -116.2).is_some());
    /// assert!(Position::new(-116.2, 43.5).is_none());
    /// ```
    pub fn new(latitude: f64, longitude: f64) -> Option<Self> {
        let on_earth = (-90.0..=90.0).contains(&latitude) && (-180.0..=180.0).contains(&longitude);
        on_earth.then(|| Self { latitude: rounded(latitude), longitude: rounded(longitude) })
    }

    /// Degrees north.
    pub const fn latitude(self) -> f64 {
        self.latitude
    }

    /// Degrees east.
    pub const fn longitude(self) -> f64 {
        self.longitude
    }

    /// The position at a distance in metres, setting out on a true bearing in degrees from north.
    ///
    /// # Source
    /// Karney, C.F.F. 2013. Algorithms for geodesics. Journal of Geodesy 87:43–55
    #[must_use]
    pub fn on(self, bearing: f64, metres: f64) -> Self {
        let (latitude, longitude): (f64, f64) =
            Geodesic::wgs84().direct(self.latitude, self.longitude, bearing, metres);
        Self { latitude: rounded(latitude), longitude: rounded(longitude) }
    }

    /// Distance in metres to another position, and the true bearing on which one sets out, 0 to 360 degrees.
    ///
    /// # Source
    /// Karney 2013, as above
    /// # Example
    /// GeographicLib, `tests/geodtest.cpp`: 8 935 244.560 481 83 m on 111.098 748 429 560 326°.
    /// ```
    /// use tautline_ground::position::Position;
    /// let from = Position::new(35.60777, -139.44815).unwrap();
    /// let (metres, bearing) = from.to(Position::new(-11.17491, -69.95921).unwrap());
    /// assert!((metres - 8_935_244.560_481_83).abs() < 1e-6);
    /// assert!((bearing - 111.098_748_429_560_326).abs() < 1e-9);
    /// ```
    pub fn to(self, other: Self) -> (f64, f64) {
        let (metres, bearing, _, _): (f64, f64, f64, f64) =
            Geodesic::wgs84().inverse(self.latitude, self.longitude, other.latitude, other.longitude);
        (metres, bearing.rem_euclid(360.0))
    }
}

/// To 1e-9 degree.
fn rounded(degrees: f64) -> f64 {
    (degrees * 1e9).round() / 1e9
}

#[cfg(test)]
mod tests {
    use super::*;

    /// GeographicLib, `tests/geodtest.cpp` (Karney; commit of 7 November 2025), all four rows that were at hand.
    #[test]
    fn published_geodesics_both_ways() {
        let rows = [
            (35.60777, -139.44815, 111.098_748_429_560_33, -11.17491, -69.95921, 8_935_244.560_481_83),
            (55.52454, 106.05087, 22.020_059_880_982_8, 77.03196, 197.18234 - 360.0, 4_105_086.171_392_44),
            (-21.97856, 142.59065, -32.444_568_764_331_89, 41.84138, 98.56635, 8_394_328.894_657_67),
            (-41.22777, 122.32875, 14.285_113_402_275_739, -7.57291, 130.37946, 3_812_686.035_106_02),
        ];
        for (lat1, lon1, azimuth, lat2, lon2, length) in rows {
            let azimuth: f64 = azimuth;
            let (from, to) = (Position::new(lat1, lon1).unwrap(), Position::new(lat2, lon2).unwrap());
            let (metres, bearing) = from.to(to);
            assert!((metres - length).abs() < 1e-6, "{metres} {length}");
            assert!((bearing - azimuth.rem_euclid(360.0)).abs() < 1e-9, "{bearing} {azimuth}");
            let there = from.on(azimuth, length);
            assert!(
                (there.latitude - lat2).abs() < 3e-9 && (there.longitude - lon2).abs() < 3e-9,
                "{there:?}"
            );
        }
    }
}
