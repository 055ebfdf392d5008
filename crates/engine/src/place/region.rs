//! The ground on which lines may lie: a site's strata, and what to keep out of.

use super::plane::{Point, Segment, side};

/// A polygon of the plane: an outer ring and holes; a ring closes by itself, its first point isn't repeated.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Polygon {
    /// The outer ring first, then the holes.
    pub rings: Vec<Vec<Point>>,
}

/// What is wrong with a ring.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RingFault {
    /// Fewer than three different points.
    TooFewPoints,
    /// All its points lie on one straight line.
    NoArea,
    /// Two of its sides meet elsewhere than at their common corner.
    MeetsItself {
        /// Position of the corner at which the first side starts.
        side: usize,
        /// Position of the corner at which the second side starts.
        other: usize,
    },
    /// A point farther off than 500 km.
    TooFar {
        /// Position of the point.
        at: usize,
    },
}

/// The first thing that is wrong with a ring, if any.
///
/// # Example
/// ```
/// use tautline_engine::place::{plane::Point, region::{RingFault, fault}};
/// let ring = [(0, 0), (10, 10), (10, 0), (0, 10)].map(|(x, y)| Point { x, y });
/// assert_eq!(fault(&ring), Some(RingFault::MeetsItself { side: 0, other: 2 }));
/// ```
pub fn fault(ring: &[Point]) -> Option<RingFault> {
    if ring.len() < 3 {
        return Some(RingFault::TooFewPoints);
    }
    if let Some(at) = ring.iter().position(|point| !point.in_reach()) {
        return Some(RingFault::TooFar { at });
    }
    let sides: Vec<Segment> = sides(ring).collect();
    // a ring that encloses nothing and isn't flat crosses itself, which says more
    if sides.iter().all(|&one| ring.iter().all(|&point| side(one, point) == 0)) {
        return Some(RingFault::NoArea);
    }
    for (at, &one) in sides.iter().enumerate() {
        for (other, &two) in sides.iter().enumerate().skip(at + 1) {
            let follows = other == at + 1 || (at == 0 && other + 1 == sides.len());
            let wrong = if follows {
                // neighbours share a corner and nothing else
                let (far_of_one, far_of_two) =
                    if other == at + 1 { (one.from, two.to) } else { (one.to, two.from) };
                one.holds(far_of_two) || two.holds(far_of_one)
            } else {
                one.meets(two)
            };
            if wrong {
                return Some(RingFault::MeetsItself { side: at, other });
            }
        }
    }
    None
}

impl Polygon {
    /// Every side of every ring.
    pub fn sides(&self) -> impl Iterator<Item = Segment> {
        self.rings.iter().flat_map(|ring| sides(ring))
    }

    /// Whether a point lies inside or on the boundary.
    pub fn contains(&self, point: Point) -> bool {
        let mut inside = false;
        for one in self.sides() {
            if one.holds(point) {
                return true;
            }
            // the ray to the east crosses a side that spans the point's northing, lower end included
            let rises = one.from.y <= point.y && point.y < one.to.y;
            let falls = one.to.y <= point.y && point.y < one.from.y;
            if rises && side(one, point) > 0 || falls && side(one, point) < 0 {
                inside = !inside;
            }
        }
        inside
    }

    /// Whether a whole stretch lies inside; one that touches the boundary doesn't.
    pub fn contains_all_of(&self, segment: Segment) -> bool {
        self.contains(segment.from) && !self.sides().any(|one| one.meets(segment))
    }

    /// Its area.
    ///
    /// # Units
    /// square millimetres, a half cut away
    pub fn area(&self) -> u128 {
        let mut rings = self.rings.iter().map(|ring| twice_area(ring).unsigned_abs());
        let outer = rings.next().unwrap_or(0);
        outer.saturating_sub(rings.sum()) / 2
    }
}

fn sides(ring: &[Point]) -> impl Iterator<Item = Segment> {
    (0..ring.len()).map(|at| Segment { from: ring[at], to: ring[(at + 1) % ring.len()] })
}

/// Twice the signed area of a ring.
fn twice_area(ring: &[Point]) -> i128 {
    sides(ring)
        .map(|one| {
            i128::from(one.from.x) * i128::from(one.to.y) - i128::from(one.to.x) * i128::from(one.from.y)
        })
        .sum()
}

/// A part of the site that gets lines of its own: one stratum, or all of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Region {
    /// Its polygons, apart from each other.
    pub polygons: Vec<Polygon>,
}

impl Region {
    /// Whether a point lies in it.
    pub fn contains(&self, point: Point) -> bool {
        self.polygons.iter().any(|polygon| polygon.contains(point))
    }

    /// Whether a whole stretch lies in one of its polygons.
    pub fn contains_all_of(&self, segment: Segment) -> bool {
        self.polygons.iter().any(|polygon| polygon.contains_all_of(segment))
    }

    /// Its area in square millimetres.
    pub fn area(&self) -> u128 {
        self.polygons.iter().map(Polygon::area).sum()
    }

    /// The lowest and the highest easting and northing; `None` for a region of nothing.
    pub fn frame(&self) -> Option<(Point, Point)> {
        let points = || self.polygons.iter().flat_map(|polygon| polygon.rings.iter().flatten());
        let low = Point { x: points().map(|p| p.x).min()?, y: points().map(|p| p.y).min()? };
        let high = Point { x: points().map(|p| p.x).max()?, y: points().map(|p| p.y).max()? };
        Some((low, high))
    }
}

/// Something that lines keep away from: a road, water, a fence.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeepOut {
    /// Its shape.
    pub shape: Shape,
    /// How far lines stay away from it, in millimetres.
    pub buffer: i64,
    /// Whether people walk across it between lines, as across a road; else they go round it, and its buffer.
    pub crossed: bool,
}

/// A shape to keep out of.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Shape {
    /// An area.
    Area(Polygon),
    /// A way along points, as a road or a fence; a single point is a place.
    Way(Vec<Point>),
}

impl KeepOut {
    /// Whether a stretch enters it or comes nearer than its buffer.
    pub fn bars(&self, segment: Segment) -> bool {
        let touched = |one: Segment| one.meets(segment) || one.nearer(segment, self.buffer);
        match &self.shape {
            Shape::Area(polygon) => polygon.contains(segment.from) || polygon.sides().any(touched),
            Shape::Way(points) if points.len() == 1 => touched(Segment { from: points[0], to: points[0] }),
            Shape::Way(points) => {
                points.windows(2).any(|pair| touched(Segment { from: pair[0], to: pair[1] }))
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ring(points: &[(i64, i64)]) -> Vec<Point> {
        points.iter().map(|&(x, y)| Point { x, y }).collect()
    }

    fn segment(a: (i64, i64), b: (i64, i64)) -> Segment {
        Segment { from: Point { x: a.0, y: a.1 }, to: Point { x: b.0, y: b.1 } }
    }

    /// A square of 10 with a hole of 4.
    fn holed() -> Polygon {
        Polygon {
            rings: vec![ring(&[(0, 0), (10, 0), (10, 10), (0, 10)]), ring(&[(3, 3), (3, 7), (7, 7), (7, 3)])],
        }
    }

    #[test]
    fn inside_a_square_with_a_hole() {
        let square = holed();
        let at = |x, y| square.contains(Point { x, y });
        assert!(at(1, 1) && at(0, 0) && at(10, 5) && at(3, 3), "inside, a corner, a side, the hole's corner");
        assert!(!at(5, 5) && !at(11, 5) && !at(-1, 0));
        assert_eq!(square.area(), 100 - 16);
        assert!(square.contains_all_of(segment((1, 1), (9, 2))));
        assert!(!square.contains_all_of(segment((1, 5), (9, 5))), "through the hole");
        assert!(!square.contains_all_of(segment((5, 8), (5, 12))), "over the edge");
    }

    #[test]
    fn faults_are_found() {
        assert_eq!(fault(&ring(&[(0, 0), (1, 1)])), Some(RingFault::TooFewPoints));
        assert_eq!(fault(&ring(&[(0, 0), (1, 1), (2, 2)])), Some(RingFault::NoArea));
        assert_eq!(fault(&ring(&[(0, 0), (10, 0), (10, 10), (0, 10)])), None);
        let spike = ring(&[(0, 0), (10, 0), (5, 0), (5, 5)]);
        assert_eq!(fault(&spike), Some(RingFault::MeetsItself { side: 0, other: 1 }));
        let far = ring(&[(0, 0), (600_000_000, 0), (0, 10)]);
        assert_eq!(fault(&far), Some(RingFault::TooFar { at: 1 }));
    }

    #[test]
    fn a_road_keeps_its_buffer() {
        let road = KeepOut { shape: Shape::Way(ring(&[(0, 0), (100, 0)])), buffer: 10, crossed: true };
        assert!(road.bars(segment((5, 9), (5, 30))));
        assert!(!road.bars(segment((5, 10), (5, 30))), "exactly the buffer away is away");
        let pond = KeepOut { shape: Shape::Area(holed()), buffer: 0, crossed: false };
        assert!(pond.bars(segment((1, 1), (2, 2))), "wholly inside");
        assert!(!pond.bars(segment((5, 5), (6, 5))), "on the island");
    }
}
