//! A plane about a place: millimetres to the east and north, true to distance and bearing from its origin.

use crate::position::Position;
use tautline_engine::num::math::{atan2, cos, hypot, sin};
use tautline_engine::place::plane::Point;

/// An azimuthal equidistant plane about an origin.
///
/// A stretch of the plane is as long as on the ellipsoid but for r²/6R², 4 mm in a kilometre at 30 km from the origin;
/// the plane's north turns from true north by the difference of longitude times the sine of the latitude, 0.08 degree at
/// 10 km east in middle latitudes.
///
/// # Source
/// Snyder, J.P. 1987. Map projections: a working manual. USGS Professional Paper 1395, ch. 25; with geodesics of the
/// ellipsoid in place of the sphere: Karney 2011, GeographicLib
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Local {
    origin: Position,
}

impl Local {
    /// The plane about a position.
    pub const fn about(origin: Position) -> Self {
        Self { origin }
    }

    /// A position on the plane, to the nearest millimetre.
    pub fn onto(self, position: Position) -> Point {
        let (metres, bearing) = self.origin.to(position);
        let angle = bearing.to_radians();
        let millimetres = |share: f64| {
            #[expect(clippy::cast_possible_truncation, reason = "nothing on earth is 2^63 mm away")]
            let millimetres = (share * metres * 1000.0).round() as i64;
            millimetres
        };
        Point { x: millimetres(sin(angle)), y: millimetres(cos(angle)) }
    }

    /// The position of a point of the plane.
    pub fn back(self, point: Point) -> Position {
        #[expect(clippy::cast_precision_loss, reason = "a plane is far smaller than 2^53 mm")]
        let (x, y) = (point.x as f64 / 1000.0, point.y as f64 / 1000.0);
        self.origin.on(atan2(x, y).to_degrees(), hypot(x, y))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn there_and_back_within_a_millimetre() {
        let local = Local::about(Position::new(42.3, -113.7).unwrap());
        for (x, y) in [(0, 0), (12_345_678, -7_654_321), (-30_000_000, 20_000_000), (1, 0)] {
            let again = local.onto(local.back(Point { x, y }));
            assert!((again.x - x).abs() <= 1 && (again.y - y).abs() <= 1, "{x} {y} {again:?}");
        }
    }

    /// A line of 50 m placed in the plane 10 km from its origin ends within 10 cm of the one laid by length and true
    /// bearing, which is what is written out.
    #[test]
    fn the_plane_and_the_ellipsoid_agree_on_a_line() {
        let local = Local::about(Position::new(42.3, -113.7).unwrap());
        let start = Point { x: 10_000_000, y: 3_000_000 };
        let laid = local.back(start).on(37.0, 50.0);
        let (apart, _) = laid.to(local.back(start.on(37, 50_000)));
        assert!(apart < 0.1, "{apart}");
        assert!(apart > 0.01, "the two norths do differ there: {apart}");
    }
}
