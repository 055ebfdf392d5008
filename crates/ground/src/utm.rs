//! Universal Transverse Mercator coordinates of a position, and the way back.

use crate::datum::{CLARKE_1866, Ellipsoid, GRS_80, WGS_84};
use crate::position::Position;
use tautline_engine::num::math::{atan2, cos, exp, hypot, ln, sin, sqrt};
use tautline_survey::boundary::{Datum, Half};

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
    let grid = Grid::of(WGS_84);
    let e = grid.eccentricity;
    // conformal latitude by its tangent
    let tau = sin(phi) / cos(phi);
    let sigma = sinh(e * atanh(e * sin(phi)));
    let conformal = tau * sqrt(1.0 + sigma * sigma) - sigma * sqrt(1.0 + tau * tau);
    let xi = atan2(conformal, cos(lambda));
    let eta = asinh(sin(lambda) / hypot(conformal, cos(lambda)));
    let (mut x, mut y) = (eta, xi);
    for (alpha, order) in grid.alphas.into_iter().zip(ORDERS) {
        y += alpha * sin(order * xi) * cosh(order * eta);
        x += alpha * cos(order * xi) * sinh(order * eta);
    }
    let north = latitude >= 0.0;
    Some(Utm {
        zone,
        north,
        easting: 500_000.0 + SCALE * grid.radius * x,
        northing: SCALE * grid.radius * y + if north { 0.0 } else { 10_000_000.0 },
    })
}

/// Degrees north and east, on the grid's own datum, of an easting and a northing in metres; none far outside of the zone.
///
/// # Source
/// Krüger's series the other way: Karney 2011, eqs. 14–21, 36
/// # Example
/// The tower of [`utm`], back.
/// ```
/// use tautline_ground::utm::degrees;
/// use tautline_survey::boundary::{Datum, Half};
/// let [latitude, longitude] = degrees(Datum::Wgs84, 17, Half::North, [630_084.0, 4_833_438.0]).unwrap();
/// assert!((latitude - 43.642_57).abs() < 1e-5 && (longitude + 79.387_14).abs() < 1e-5);
/// ```
pub fn degrees(datum: Datum, zone: u8, half: Half, [easting, northing]: [f64; 2]) -> Option<[f64; 2]> {
    let northing = if half == Half::North { northing } else { 10_000_000.0 - northing };
    // a zone is 334 km to each side of its middle at the equator; neighbours are written in it a little beyond
    if !(100_000.0..=900_000.0).contains(&easting)
        || !(0.0..=9_400_000.0).contains(&northing)
        || !(1..=60).contains(&zone)
    {
        return None;
    }
    let grid = Grid::of(match datum {
        Datum::Wgs84 => WGS_84,
        Datum::Nad83 => GRS_80,
        Datum::Nad27 => CLARKE_1866,
    });
    let (x, y) = ((easting - 500_000.0) / (SCALE * grid.radius), northing / (SCALE * grid.radius));
    let (mut eta, mut xi) = (x, y);
    for (beta, order) in grid.betas.into_iter().zip(ORDERS) {
        xi -= beta * sin(order * y) * cosh(order * x);
        eta -= beta * cos(order * y) * sinh(order * x);
    }
    let conformal = sin(xi) / hypot(sinh(eta), cos(xi));
    let lambda = atan2(sinh(eta), cos(xi));
    // Newton's steps from the conformal latitude's tangent to the latitude's
    let e = grid.eccentricity;
    let mut tau = conformal;
    for _ in 0..6 {
        let sigma = sinh(e * atanh(e * tau / sqrt(1.0 + tau * tau)));
        let now = tau * sqrt(1.0 + sigma * sigma) - sigma * sqrt(1.0 + tau * tau);
        let slope =
            sqrt(1.0 + now * now) * sqrt(1.0 + tau * tau) * (1.0 - e * e) / (1.0 + (1.0 - e * e) * tau * tau);
        tau += (conformal - now) / slope;
    }
    let latitude = atan2(tau, 1.0).to_degrees();
    let latitude = if half == Half::North { latitude } else { -latitude };
    Some([latitude, lambda.to_degrees() + f64::from(zone) * 6.0 - 183.0])
}

const SCALE: f64 = 0.9996;
const ORDERS: [f64; 4] = [2.0, 4.0, 6.0, 8.0];

/// What the series needs of an ellipsoid.
struct Grid {
    eccentricity: f64,
    radius: f64,
    alphas: [f64; 4],
    betas: [f64; 4],
}

impl Grid {
    fn of(Ellipsoid { semi_major, flattening }: Ellipsoid) -> Self {
        let n = flattening / (2.0 - flattening);
        let (n2, n3, n4) = (n * n, n * n * n, n * n * n * n);
        Self {
            eccentricity: sqrt(flattening * (2.0 - flattening)),
            radius: semi_major / (1.0 + n) * (1.0 + n2 / 4.0 + n4 / 64.0),
            alphas: [
                n / 2.0 - 2.0 / 3.0 * n2 + 5.0 / 16.0 * n3 + 41.0 / 180.0 * n4,
                13.0 / 48.0 * n2 - 3.0 / 5.0 * n3 + 557.0 / 1440.0 * n4,
                61.0 / 240.0 * n3 - 103.0 / 140.0 * n4,
                49_561.0 / 161_280.0 * n4,
            ],
            betas: [
                n / 2.0 - 2.0 / 3.0 * n2 + 37.0 / 96.0 * n3 - n4 / 360.0,
                n2 / 48.0 + n3 / 15.0 - 437.0 / 1440.0 * n4,
                17.0 / 480.0 * n3 - 37.0 / 840.0 * n4,
                4_397.0 / 161_280.0 * n4,
            ],
        }
    }
}

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

    /// PROJ 9.5.1 (through pyproj 3.7.2), EPSG:326zz and 327zz, both ways.
    #[test]
    fn as_proj_has_it() {
        let rows = [
            (42.3051, -113.6874, 12, Half::North, 278_494.484_435_268_44, 4_687_149.854_217_195),
            (39.5, -117.25, 11, Half::North, 478_505.233_402_341_14, 4_372_294.336_487_016),
            (64.2, -149.9, 6, Half::North, 359_206.796_019_677_3, 7_122_509.886_592_903),
            (-33.45, 149.2, 55, Half::South, 704_485.099_064_925_8, 6_296_659.611_596_799),
            (0.5, -80.99, 17, Half::North, 501_112.707_549_185, 55_265.037_990_017_61),
        ];
        for (latitude, longitude, zone, half, easting, northing) in rows {
            let there = utm(Position::new(latitude, longitude).unwrap()).unwrap();
            assert_eq!((there.zone, there.north), (zone, half == Half::North));
            assert!(
                (there.easting - easting).abs() < 1e-6 && (there.northing - northing).abs() < 1e-6,
                "{there:?}"
            );
            let back = degrees(Datum::Wgs84, zone, half, [easting, northing]).unwrap();
            assert!((back[0] - latitude).abs() < 1e-10 && (back[1] - longitude).abs() < 1e-10, "{back:?}");
        }
        // the same on Clarke's ellipsoid, `+proj=utm +zone=12 +ellps=clrk66`
        let old = degrees(Datum::Nad27, 12, Half::North, [278_500.0, 4_687_000.0]).unwrap();
        assert!(
            (old[0] - 42.305_679_581_602_47).abs() < 1e-10 && (old[1] + 113.687_283_143_701_02).abs() < 1e-10
        );
        assert_eq!(degrees(Datum::Wgs84, 12, Half::North, [42.3, -113.7]), None, "degrees taken for metres");
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
