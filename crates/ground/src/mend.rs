//! Outlines that cross themselves, cut apart where they do; outlines that overlap, put together.

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay::{IntOverlayOptions, Overlay, ShapeType};
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::core::solver::Solver;
use i_overlay::i_float::int::point::IntPoint;
use tautline_engine::place::plane::Point;
use tautline_engine::place::region::Polygon;

/// The polygons of what lies inside an odd number of rings, however these cross, nest or wind.
///
/// # Range
/// points within reach of the plane; corners made where sides cross are rounded to the millimetre
/// # Example
/// A bow tie is two triangles.
/// ```
/// use tautline_engine::place::plane::Point;
/// let bow = [(0, 0), (100, 100), (100, 0), (0, 100)].map(|(x, y)| Point { x, y });
/// let polygons = tautline_ground::mend::inside_of_odd(&[bow.to_vec()]);
/// assert_eq!(polygons.iter().map(|polygon| polygon.area()).collect::<Vec<_>>(), [2500, 2500]);
/// ```
pub fn inside_of_odd(rings: &[Vec<Point>]) -> Vec<Polygon> {
    filled(rings.iter().map(Vec::as_slice), FillRule::EvenOdd)
}

/// The ground of several polygons, each place of it once, however often they cover it.
///
/// # Range
/// as above
/// # Example
/// Two squares of 100 by 100 that share a strip of 100 by 20.
/// ```
/// use tautline_engine::place::{plane::Point, region::Polygon};
/// let square = |west: i64| {
///     let ring = [(west, 0), (west + 100, 0), (west + 100, 100), (west, 100)].map(|(x, y)| Point { x, y });
///     Polygon { rings: vec![ring.to_vec()] }
/// };
/// let once = tautline_ground::mend::put_together(&[square(0), square(80)]);
/// assert_eq!(once.iter().map(|polygon| polygon.area()).collect::<Vec<_>>(), [18_000]);
/// ```
pub fn put_together(polygons: &[Polygon]) -> Vec<Polygon> {
    // outer rings wind one way and holes the other, so that a hole takes away from its own polygon alone
    let rings: Vec<Vec<Point>> = polygons
        .iter()
        .flat_map(|polygon| polygon.rings.iter().enumerate())
        .map(|(at, ring)| wound(ring, at == 0))
        .collect();
    filled(rings.iter().map(Vec::as_slice), FillRule::Positive)
}

/// A ring that winds against the clock, or with it.
fn wound(ring: &[Point], against: bool) -> Vec<Point> {
    let twice: i128 = (0..ring.len())
        .map(|at| (ring[at], ring[(at + 1) % ring.len()]))
        .map(|(from, to)| i128::from(from.x) * i128::from(to.y) - i128::from(to.x) * i128::from(from.y))
        .sum();
    let mut ring = ring.to_vec();
    if (twice > 0) != against {
        ring.reverse();
    }
    ring
}

fn filled<'a>(rings: impl Iterator<Item = &'a [Point]> + Clone, rule: FillRule) -> Vec<Polygon> {
    let corners = rings.clone().map(<[Point]>::len).sum();
    let mut overlay = Overlay::new_custom(corners, IntOverlayOptions::ogc(), Solver::default());
    for ring in rings {
        let ring: Option<Vec<IntPoint<i32>>> = ring.iter().map(onto).collect();
        // what is out of reach was refused before
        overlay.add_contour(&ring.unwrap_or_default(), ShapeType::Subject);
    }
    let back =
        |ring: &Vec<IntPoint<i32>>| ring.iter().map(|at| Point { x: at.x.into(), y: at.y.into() }).collect();
    let shapes = overlay.overlay(OverlayRule::Subject, rule);
    shapes.iter().map(|shape| Polygon { rings: shape.iter().map(back).collect() }).collect()
}

fn onto(point: &Point) -> Option<IntPoint<i32>> {
    Some(IntPoint { x: i32::try_from(point.x).ok()?, y: i32::try_from(point.y).ok()? })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ring(points: &[(i64, i64)]) -> Vec<Point> {
        points.iter().map(|&(x, y)| Point { x, y }).collect()
    }

    fn areas(rings: &[Vec<Point>]) -> Vec<u128> {
        let mut areas: Vec<u128> = inside_of_odd(rings).iter().map(Polygon::area).collect();
        areas.sort_unstable();
        areas
    }

    /// By hand: a square with a hole and an island in it, rings in any order and winding; a loop within an outline is
    /// inside twice, so a hole.
    #[test]
    fn nesting_by_hand() {
        let square = |low: i64, high: i64, turned: bool| {
            let mut ring = ring(&[(low, low), (high, low), (high, high), (low, high)]);
            if turned {
                ring.reverse();
            }
            ring
        };
        for turned in [false, true] {
            let rings = [square(40, 60, turned), square(0, 100, false), square(20, 80, false)];
            assert_eq!(areas(&rings), [400, 10_000 - 3_600]);
        }
        let looped = ring(&[
            (0, 0),
            (100, 0),
            (100, 100),
            (50, 100),
            (50, 40),
            (70, 40),
            (70, 60),
            (30, 60),
            (30, 100),
            (0, 100),
        ]);
        // the loop 50..70 by 40..60 lies inside once more; the rest is the square less the notch 30..50 by 60..100
        assert_eq!(areas(&[looped]), [10_000 - 400 - 800]);
    }
}
