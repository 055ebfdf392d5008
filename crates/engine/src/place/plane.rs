//! Points and straight stretches in a plane of whole millimetres. Every comparison is exact.

use crate::num::math::{cos, hypot, sin};
use core::f64::consts::PI;

/// A point: millimetres to the east and to the north of the plane's origin.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Point {
    /// To the east.
    pub x: i64,
    /// To the north.
    pub y: i64,
}

/// Farther than this from the origin, 500 km, nothing is placed; below it no product overflows.
pub const FARTHEST: i64 = 500_000_000;

impl Point {
    /// The point at a distance on a bearing in whole degrees, clockwise from north, to the nearest millimetre.
    ///
    /// # Example
    /// ```
    /// use tautline_engine::place::plane::Point;
    /// assert_eq!(Point { x: 0, y: 0 }.on(30, 50_000), Point { x: 25_000, y: 43_301 });
    /// ```
    #[must_use]
    pub fn on(self, bearing: u16, millimetres: i64) -> Self {
        let angle = f64::from(bearing % 360) / 180.0 * PI;
        let part = |share: f64| {
            #[expect(
                clippy::cast_precision_loss,
                clippy::cast_possible_truncation,
                reason = "far below 2^53 mm"
            )]
            let part = (share * millimetres as f64).round() as i64;
            part
        };
        Self { x: self.x + part(sin(angle)), y: self.y + part(cos(angle)) }
    }

    /// Whether it lies where places are kept.
    pub fn in_reach(self) -> bool {
        self.x.abs() <= FARTHEST && self.y.abs() <= FARTHEST
    }
}

/// A straight stretch of ground from one point to another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Segment {
    /// Where it starts.
    pub from: Point,
    /// Where it ends.
    pub to: Point,
}

impl Segment {
    /// Whether the two share a point, be it an end.
    pub fn meets(self, other: Self) -> bool {
        if self.is_far(other, 0) {
            return false;
        }
        let (a, b) = (side(self, other.from), side(self, other.to));
        let (c, d) = (side(other, self.from), side(other, self.to));
        if a.signum() * b.signum() < 0 && c.signum() * d.signum() < 0 {
            return true;
        }
        [(a, self, other.from), (b, self, other.to), (c, other, self.from), (d, other, self.to)]
            .into_iter()
            .any(|(side, segment, point)| side == 0 && segment.spans(point))
    }

    /// Whether they come nearer than so many millimetres.
    pub fn nearer(self, other: Self, millimetres: i64) -> bool {
        millimetres > 0
            && !self.is_far(other, millimetres)
            && (self.meets(other)
                || near(self, other.from, millimetres)
                || near(self, other.to, millimetres)
                || near(other, self.from, millimetres)
                || near(other, self.to, millimetres))
    }

    /// Whether the frames of the two lie farther apart than so much: most stretches do, and that is soon seen.
    fn is_far(self, other: Self, millimetres: i64) -> bool {
        let far = |a: i64, b: i64, c: i64, d: i64| {
            a.max(b) + millimetres < c.min(d) || c.max(d) + millimetres < a.min(b)
        };
        far(self.from.x, self.to.x, other.from.x, other.to.x)
            || far(self.from.y, self.to.y, other.from.y, other.to.y)
    }

    /// Whether a point of its straight line lies between its ends.
    fn spans(self, point: Point) -> bool {
        let within = |at: i64, a: i64, b: i64| a.min(b) <= at && at <= a.max(b);
        within(point.x, self.from.x, self.to.x) && within(point.y, self.from.y, self.to.y)
    }

    /// Whether the point lies on it.
    pub fn holds(self, point: Point) -> bool {
        side(self, point) == 0 && self.spans(point)
    }
}

/// Twice the area of the triangle of a stretch and a point: above zero where the point lies to the left.
pub(super) fn side(segment: Segment, point: Point) -> i128 {
    let Segment { from, to } = segment;
    i128::from(to.x - from.x) * i128::from(point.y - from.y)
        - i128::from(to.y - from.y) * i128::from(point.x - from.x)
}

/// How far two points lie apart, in millimetres.
///
/// # Example
/// ```
/// use tautline_engine::place::plane::{Point, apart};
/// assert_eq!(apart(Point { x: 0, y: 0 }, Point { x: 3_000, y: -4_000 }), 5_000.0);
/// ```
pub fn apart(a: Point, b: Point) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "a site is far smaller than 2^53 mm")]
    let real = |millimetres: i64| millimetres as f64;
    hypot(real(a.x - b.x), real(a.y - b.y))
}

/// Whether a point lies nearer to a stretch than so many millimetres.
fn near(segment: Segment, point: Point, millimetres: i64) -> bool {
    let Segment { from, to } = segment;
    let limit = i128::from(millimetres) * i128::from(millimetres);
    let square = |a: Point, b: Point| {
        let (east, north) = (i128::from(a.x - b.x), i128::from(a.y - b.y));
        east * east + north * north
    };
    let length = square(from, to);
    let ahead = i128::from(to.x - from.x) * i128::from(point.x - from.x)
        + i128::from(to.y - from.y) * i128::from(point.y - from.y);
    if ahead <= 0 {
        square(from, point) < limit
    } else if ahead >= length {
        square(to, point) < limit
    } else {
        // beside it: (twice the triangle / length)² is the squared distance; squares of 64-bit numbers fit
        let aside = side(segment, point);
        match (aside.checked_mul(aside), limit.checked_mul(length)) {
            (Some(aside), Some(limit)) => aside < limit,
            // only a triangle of many thousand square kilometres is so large, and then nothing is near
            (None, _) => false,
            (_, None) => true,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn segment(a: (i64, i64), b: (i64, i64)) -> Segment {
        Segment { from: Point { x: a.0, y: a.1 }, to: Point { x: b.0, y: b.1 } }
    }

    #[test]
    fn meeting_and_not() {
        let one = segment((0, 0), (10, 0));
        assert!(one.meets(segment((5, -5), (5, 5))), "crossing");
        assert!(one.meets(segment((5, 0), (5, 5))), "touching from above");
        assert!(one.meets(segment((10, 0), (20, 0))), "end to end");
        assert!(one.meets(segment((3, 0), (4, 0))), "one inside the other");
        assert!(!one.meets(segment((11, 0), (20, 0))));
        assert!(!one.meets(segment((5, 1), (5, 5))));
    }

    /// By hand: a corner 3 and 4 away is exactly 5 away.
    #[test]
    fn a_distance_that_equals_the_limit_is_not_nearer() {
        let one = segment((0, 0), (10, 0));
        assert!(!one.nearer(segment((13, 4), (20, 4)), 5));
        assert!(one.nearer(segment((13, 4), (20, 4)), 6));
        assert!(!one.nearer(segment((0, 7), (10, 7)), 7));
        assert!(one.nearer(segment((5, -5), (5, 5)), 1));
        assert!(!one.nearer(segment((5, -5), (5, 5)), 0));
    }

    /// Compass quarters, and a bearing past the circle.
    #[test]
    fn bearings_turn_clockwise_from_north() {
        let origin = Point { x: 0, y: 0 };
        assert_eq!(origin.on(0, 100), Point { x: 0, y: 100 });
        assert_eq!(origin.on(90, 100), Point { x: 100, y: 0 });
        assert_eq!(origin.on(180, 100), Point { x: 0, y: -100 });
        assert_eq!(origin.on(270, 100), Point { x: -100, y: 0 });
        assert_eq!(origin.on(450, 100), Point { x: 100, y: 0 });
    }

    #[test]
    fn the_farthest_corners_do_not_overflow() {
        let far = FARTHEST;
        let across = segment((-far, -far), (far, far));
        assert!(across.meets(segment((-far, far), (far, -far))));
        assert!(!across.nearer(segment((-far, far), (-far, far - 1)), 1_000_000));
    }
}
