//! Universal Transverse Mercator coordinates of a position.

use crate::position::Position;
use tautline_engine::num::math::{atan2, cos, exp, hypot, ln, sin, sqrt};

/// A place in the UTM grid on WGS 84.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Utm {
    /// Zone, 1 to 60.
    pub zone: u8,
    /// North of the equator.
    pub north: bool,
    /// Easting in metres.
    pub easting: f64,
    /// Northing in metres.
    pub northing: f64,
}

/// The UTM coordinates of a position between 80° south and 84° north; zones by longitude alone, without the exceptions
/// about Norway and Svalbard.
///
/// # Source
/// Krüger's series in the third flattening to its fourth power: Karney, C.F.F. 2011. Transverse Mercator with an accuracy
/// of a few nanometers. Journal of Geodesy 85:475–485, eqs. 7–11, 35
/// # Example
/// A tower at 43° 38′ 33.24″ N, 79° 23′ 13.7″ W, widely printed as zone 17, 630 084 m E, 4 833 438 m N (from memory).
/// ```
/// use tautline_ground::{position::Position, utm::utm};
/// let tower = utm(Position::new(43.642_566_7, -79.387_138_9).unwrap()).unwrap();
/// assert_eq!((tower.zone, tower.north), (17, true));
/// assert!((tower.easting - 630_084.0).abs() < 1.0 && (tower.northing - 4_833_438.0).abs() < 1.0);
/// ```
pub fn utm(position: Position) -> Option<Utm> {
    let (latitude, longitude) = (position.latitude(), position.longitude());
    if !(-80.0..=84.0).contains(&latitude) {
        return None;
    }
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to 60")]
    let zone = (((longitude + 180.0) / 6.0).floor() as u8 % 60) + 1;
    let middle = f64::from(zone) * 6.0 - 183.0;
    let (phi, lambda) = (latitude.to_radians(), (longitude - middle).to_radians());
    let e = sqrt(FLATTENING * (2.0 - FLATTENING));
    // conformal latitude by its tangent
    let tau = sin(phi) / cos(phi);
    let sigma = sinh(e * atanh(e * sin(phi)));
    let conformal = tau * sqrt(1.0 + sigma * sigma) - sigma * sqrt(1.0 + tau * tau);
    let xi = atan2(conformal, cos(lambda));
    let eta = asinh(sin(lambda) / hypot(conformal, cos(lambda)));
    let n = FLATTENING / (2.0 - FLATTENING);
    let (n2, n3, n4) = (n * n, n * n * n, n * n * n * n);
    let alphas = [
        n / 2.0 - 2.0 / 3.0 * n2 + 5.0 / 16.0 * n3 + 41.0 / 180.0 * n4,
        13.0 / 48.0 * n2 - 3.0 / 5.0 * n3 + 557.0 / 1440.0 * n4,
        61.0 / 240.0 * n3 - 103.0 / 140.0 * n4,
        49_561.0 / 161_280.0 * n4,
    ];
    let (mut x, mut y) = (eta, xi);
    for (alpha, order) in alphas.into_iter().zip([2.0, 4.0, 6.0, 8.0]) {
        y += alpha * sin(order * xi) * cosh(order * eta);
        x += alpha * cos(order * xi) * sinh(order * eta);
    }
    let radius = SEMI_MAJOR / (1.0 + n) * (1.0 + n2 / 4.0 + n4 / 64.0);
    let north = latitude >= 0.0;
    Some(Utm {
        zone,
        north,
        easting: 500_000.0 + SCALE * radius * x,
        northing: SCALE * radius * y + if north { 0.0 } else { 10_000_000.0 },
    })
}

const SEMI_MAJOR: f64 = 6_378_137.0;
const FLATTENING: f64 = 1.0 / 298.257_223_563;
const SCALE: f64 = 0.9996;

fn sinh(x: f64) -> f64 {
    (exp(x) - exp(-x)) / 2.0
}

fn cosh(x: f64) -> f64 {
    f64::midpoint(exp(x), exp(-x))
}

fn asinh(x: f64) -> f64 {
    let size = x.abs();
    ln(size + sqrt(size * size + 1.0)).copysign(x)
}

fn atanh(x: f64) -> f64 {
    0.5 * ln((1.0 + x) / (1.0 - x))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// On a zone's middle the northing is 0.9996 times the length of the meridian from the equator, by geodesics.
    #[test]
    fn the_meridian_is_as_long_as_geodesics_have_it() {
        for latitude in [10.0, 42.5, 71.0, -33.0] {
            let place = utm(Position::new(latitude, -117.0).unwrap()).unwrap();
            let (metres, _) =
                Position::new(0.0, -117.0).unwrap().to(Position::new(latitude, -117.0).unwrap());
            let northing = if latitude > 0.0 { place.northing } else { 10_000_000.0 - place.northing };
            assert!((northing - 0.9996 * metres).abs() < 1e-3, "{place:?} {metres}");
            assert!((place.easting - 500_000.0).abs() < 1e-6);
        }
    }

    /// Off the middle a short stretch is longer by the grid's scale, k ≈ 0.9996 (1 + x²/2R²) (Snyder 1987, eq. 8-11, first
    /// terms), whichever way it runs.
    #[test]
    fn scale_off_the_middle() {
        let start = Position::new(40.0, -115.0).unwrap();
        let from = utm(start).unwrap();
        let x = from.easting - 500_000.0;
        let expected = 0.9996 * (1.0 + x * x / (2.0 * 6_380_000.0 * 6_380_000.0));
        for bearing in [0.0, 60.0, 135.0] {
            let to = utm(start.on(bearing, 100.0)).unwrap();
            let grid = hypot(to.easting - from.easting, to.northing - from.northing);
            assert!((grid / 100.0 - expected).abs() < 2e-6, "{grid} {expected}");
        }
    }

    #[test]
    fn zones() {
        let zone = |longitude| utm(Position::new(40.0, longitude).unwrap()).unwrap().zone;
        assert_eq!(
            [zone(-180.0), zone(-174.1), zone(-0.1), zone(0.0), zone(179.9), zone(180.0)],
            [1, 1, 30, 31, 60, 1]
        );
        assert_eq!(utm(Position::new(85.0, 0.0).unwrap()), None);
    }
}
