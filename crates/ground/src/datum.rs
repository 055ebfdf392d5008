//! Old datums brought to WGS 84, and how far off the result may be.

use crate::position::Position;
use crate::utm::degrees;
use tautline_engine::num::math::{atan2, cos, hypot, sin, sqrt};
use tautline_survey::boundary::{Datum, Pair, Reference};

/// A position on WGS 84, and how many metres it may be off for its datum's sake.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moved {
    /// The position.
    pub position: Position,
    /// How far off it may be, in metres.
    pub error: u32,
}

/// Degrees on a datum, as a position on WGS 84; none where they are none on earth, or where the datum's mean values don't hold.
///
/// NAD 83 is taken as WGS 84: by now they differ by a metre or two in North America. NAD 27 is moved by the mean values of the
/// contiguous United States, each known to ± 5 or 6 m there, and refused elsewhere.
///
/// # Source
/// NIMA TR 8350.2, third edition, appendix B: NAD 27, mean for the contiguous United States, ΔX −8 ± 5, ΔY 160 ± 5, ΔZ 176 ± 6 m, on
/// Clarke's ellipsoid of 1866 (from memory)
/// # Example
/// ```
/// use tautline_ground::datum::to_wgs84;
/// use tautline_survey::boundary::Datum;
/// let moved = to_wgs84(Datum::Nad27, 42.3, -113.7).unwrap();
/// assert_eq!(moved.error, 10);
/// assert!((moved.position.longitude() + 113.700_868_745).abs() < 1e-8);
/// assert_eq!(to_wgs84(Datum::Nad27, 64.0, -150.0), None);
/// ```
pub fn to_wgs84(datum: Datum, latitude: f64, longitude: f64) -> Option<Moved> {
    let position = Position::new(latitude, longitude)?;
    match datum {
        Datum::Wgs84 => Some(Moved { position, error: 0 }),
        Datum::Nad83 => Some(Moved { position, error: 2 }),
        Datum::Nad27 if holds_nad27(latitude, longitude) => {
            let [x, y, z] = CLARKE_1866.at(latitude, longitude);
            let (latitude, longitude) = WGS_84.of([x - 8.0, y + 160.0, z + 176.0]);
            Some(Moved { position: Position::new(latitude, longitude)?, error: 10 })
        }
        Datum::Nad27 => None,
    }
}

/// A pair as a map has it, longitude or easting first, as one of degrees on WGS 84 and how many metres it may be off; none where
/// [`to_wgs84`] gives none.
///
/// # Example
/// ```
/// use tautline_ground::datum::pair_on_wgs84;
/// use tautline_survey::boundary::Reference;
/// // 42.3051° N, 113.6874° W is 278 494.484 m E, 4 687 149.854 m N in zone 12 (PROJ 9.5.1); NAD 83 is taken as WGS 84
/// let grid = Reference::read("NAD83 UTM 12 N").unwrap();
/// let ([longitude, latitude], error) = pair_on_wgs84(grid, [278_494.484, 4_687_149.854]).unwrap();
/// assert!((latitude - 42.3051).abs() < 1e-7 && (longitude + 113.6874).abs() < 1e-7 && error == 2);
/// ```
pub fn pair_on_wgs84(reference: Reference, [across, up]: Pair) -> Option<(Pair, u32)> {
    let [latitude, longitude] = match reference.utm {
        None => [up, across],
        Some((zone, half)) => degrees(reference.datum, zone, half, [across, up])?,
    };
    let Moved { position, error } = to_wgs84(reference.datum, latitude, longitude)?;
    Some(([position.longitude(), position.latitude()], error))
}

/// A position on WGS 84 in degrees on a datum, longitude first: the way back of [`to_wgs84`]; none where that gives none.
///
/// # Example
/// ```
/// use tautline_ground::{datum::{from_wgs84, pair_on_wgs84}, position::Position};
/// use tautline_survey::boundary::{Datum, Reference};
/// let here = Position::new(42.3, -113.7).unwrap();
/// let old = from_wgs84(Datum::Nad27, here).unwrap();
/// let ([longitude, latitude], _) = pair_on_wgs84(Reference::read("NAD27").unwrap(), old).unwrap();
/// assert!(here.to(Position::new(latitude, longitude).unwrap()).0 < 0.01); // metres
/// assert_eq!(from_wgs84(Datum::Nad27, Position::new(64.0, -150.0).unwrap()), None);
/// ```
pub fn from_wgs84(datum: Datum, position: Position) -> Option<Pair> {
    let (latitude, longitude) = (position.latitude(), position.longitude());
    match datum {
        Datum::Wgs84 | Datum::Nad83 => Some([longitude, latitude]),
        Datum::Nad27 => {
            let [x, y, z] = WGS_84.at(latitude, longitude);
            let (latitude, longitude) = CLARKE_1866.of([x + 8.0, y - 160.0, z - 176.0]);
            holds_nad27(latitude, longitude).then_some([longitude, latitude])
        }
    }
}

/// A frame about the contiguous United States.
fn holds_nad27(latitude: f64, longitude: f64) -> bool {
    (24.0..=50.0).contains(&latitude) && (-125.5..=-66.0).contains(&longitude)
}

/// An ellipsoid: its longer half axis in metres, and its flattening.
#[derive(Clone, Copy)]
pub(crate) struct Ellipsoid {
    pub(crate) semi_major: f64,
    pub(crate) flattening: f64,
}

pub(crate) const WGS_84: Ellipsoid = Ellipsoid { semi_major: 6_378_137.0, flattening: 1.0 / 298.257_223_563 };
pub(crate) const CLARKE_1866: Ellipsoid =
    Ellipsoid { semi_major: 6_378_206.4, flattening: 1.0 - 6_356_583.8 / 6_378_206.4 };
/// NAD 83's own.
pub(crate) const GRS_80: Ellipsoid = Ellipsoid { semi_major: 6_378_137.0, flattening: 1.0 / 298.257_222_101 };

impl Ellipsoid {
    fn eccentricity_squared(self) -> f64 {
        self.flattening * (2.0 - self.flattening)
    }

    /// Metres from the earth's middle, of degrees on the ellipsoid's surface.
    fn at(self, latitude: f64, longitude: f64) -> [f64; 3] {
        let (phi, lambda) = (latitude.to_radians(), longitude.to_radians());
        let e2 = self.eccentricity_squared();
        let across = self.semi_major / sqrt(1.0 - e2 * sin(phi) * sin(phi));
        [across * cos(phi) * cos(lambda), across * cos(phi) * sin(lambda), across * (1.0 - e2) * sin(phi)]
    }

    /// The degrees of a place near the surface, its height left aside: Bowring's formula, a few times over.
    fn of(self, [x, y, z]: [f64; 3]) -> (f64, f64) {
        let e2 = self.eccentricity_squared();
        let from_axis = hypot(x, y);
        let mut phi = atan2(z, from_axis * (1.0 - e2));
        for _ in 0..6 {
            let across = self.semi_major / sqrt(1.0 - e2 * sin(phi) * sin(phi));
            phi = atan2(z + e2 * across * sin(phi), from_axis);
        }
        (phi.to_degrees(), atan2(y, x).to_degrees())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// PROJ 9.5.1 (through pyproj 3.7.2), `+proj=cart +ellps=clrk66`, `+proj=helmert +x=-8 +y=160 +z=176`, back on WGS 84.
    #[test]
    fn as_proj_moves_it() {
        let rows = [
            (42.3, -113.7, 42.299_908_433_162_26, -113.700_868_745_104_09),
            (35.0, -120.0, 34.999_982_385_126_78, -120.000_952_242_000_48),
            (30.0, -80.0, 30.000_236_425_119_557, -79.999_793_696_917_46),
        ];
        for (latitude, longitude, wanted_latitude, wanted_longitude) in rows {
            let moved = to_wgs84(Datum::Nad27, latitude, longitude).unwrap().position;
            assert!((moved.latitude() - wanted_latitude).abs() < 2e-9, "{moved:?}");
            assert!((moved.longitude() - wanted_longitude).abs() < 2e-9, "{moved:?}");
        }
    }

    /// Meades Ranch, Kansas, where NAD 27 has its origin: 39° 13′ 26.686″ N, 98° 32′ 30.506″ W there, 39° 13′ 26.71220″ N,
    /// 98° 32′ 31.74604″ W on NAD 83 (National Geodetic Survey's sheet of the mark, from memory). Within the error that is said.
    #[test]
    fn the_origin_of_nad_27() {
        let degrees = |d: f64, m: f64, s: f64| d + m / 60.0 + s / 3600.0;
        let moved =
            to_wgs84(Datum::Nad27, degrees(39.0, 13.0, 26.686), -degrees(98.0, 32.0, 30.506)).unwrap();
        let known = Position::new(degrees(39.0, 13.0, 26.7122), -degrees(98.0, 32.0, 31.746_04)).unwrap();
        let (metres, _) = moved.position.to(known);
        assert!(metres < f64::from(moved.error) && metres < 3.0, "{metres}");
    }
}
