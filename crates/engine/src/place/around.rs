//! Ways round ground that nobody walks over: the shortest, from corner to corner.

use super::hull::hull;
use super::plane::{Point, Segment, apart, side};
use super::region::{KeepOut, Polygon, Region, Shape};
use crate::num::math::{atan2, cos, sin};
use core::f64::consts::PI;

/// Ground to walk on: everything that isn't kept out of, or only what of it lies within a region.
///
/// A shortest way between two points bends only where it goes round a corner, so it is looked for among the corners of
/// what is in the way, each moved off by the buffer (Lozano-Pérez and Wesley 1979). Round a corner with a buffer the way
/// is cut from the circle's tangents and some per cent longer there than along the circle.
///
/// # Source
/// Lozano-Pérez and Wesley 1979, Communications of the ACM 22:560; shortest ways between all corners: Floyd 1962,
/// Communications of the ACM 5:345
/// # Range
/// [`MOST_CORNERS`] corners at most: where there are more, areas are gone round by their hulls, then the region's corners
/// are left out, then all are, and a way that isn't straight is then not found
/// # Example
/// A pond of 60 by 60 m lies between two places; the way round two of its corners is 50 + 60 + 50 m (3² + 4² = 5²).
/// ```
/// use tautline_engine::place::{around::Walkable, plane::Point, region::{KeepOut, Polygon, Shape}};
/// let at = |(x, y): (i64, i64)| Point { x: x * 1000, y: y * 1000 };
/// let ring = [(0, 0), (60, 0), (60, 60), (0, 60)].map(at).to_vec();
/// let pond = KeepOut { shape: Shape::Area(Polygon { rings: vec![ring] }), buffer: 0, crossed: false };
/// let walkable = Walkable::new(&[pond], None);
/// let [from, to] = [(-40, 30), (100, 30)].map(|place| walkable.stand(at(place)));
/// let way = walkable.way(&from, &to).unwrap();
/// assert_eq!(way.points.len(), 4);
/// assert!((way.length - 160_000.0).abs() < 20.0);
/// ```
#[derive(Clone, Debug)]
pub struct Walkable {
    barriers: Vec<KeepOut>,
    within: Option<Region>,
    corners: Vec<Point>,
    /// From corner to corner: how far, and to which corner first.
    ways: Vec<Vec<(f64, usize)>>,
}

/// So many corners are looked at; the work grows with their cube.
pub const MOST_CORNERS: usize = 160;

/// Ground of another kind that is narrower than this is stepped over: strata drawn by hand don't meet to the millimetre.
const STEP: f64 = 1000.0;

/// Corners stand so much farther off than they must, since they are rounded to the millimetre.
const AIR: i64 = 2;

/// A place with the corners that are seen from it.
#[derive(Clone, Debug)]
pub struct Stand {
    point: Point,
    seen: Vec<(usize, f64)>,
}

/// A way from point to point.
#[derive(Clone, Debug, PartialEq)]
pub struct Way {
    /// Where it begins, the corners that it goes round, where it ends.
    pub points: Vec<Point>,
    /// Its length in millimetres.
    pub length: f64,
}

impl Walkable {
    /// The ground that is left by what is kept out of and not crossed, within a region where one is given.
    pub fn new(keep_out: &[KeepOut], within: Option<&Region>) -> Self {
        let barriers = keep_out.iter().filter(|kept| !kept.crossed).cloned().collect();
        let mut walkable = Self { barriers, within: within.cloned(), corners: Vec::new(), ways: Vec::new() };
        walkable.corners = walkable.found();
        walkable.ways = walkable.between_corners();
        walkable
    }

    /// Whether a straight stretch can be walked.
    pub fn is_free(&self, stretch: Segment) -> bool {
        self.barriers.iter().all(|barrier| !barrier.bars(stretch))
            && self.within.as_ref().is_none_or(|region| outside(region, stretch) <= STEP)
    }

    /// A place to walk from or to.
    pub fn stand(&self, point: Point) -> Stand {
        let seen = self
            .corners
            .iter()
            .enumerate()
            .filter(|(_, corner)| self.is_free(Segment { from: point, to: **corner }));
        Stand { point, seen: seen.map(|(at, &corner)| (at, apart(point, corner))).collect() }
    }

    /// The shortest way between two places; none where no way was found.
    pub fn way(&self, from: &Stand, to: &Stand) -> Option<Way> {
        let straight = Segment { from: from.point, to: to.point };
        if self.is_free(straight) {
            let length = apart(from.point, to.point);
            return Some(Way { points: vec![from.point, to.point], length });
        }
        let mut best: Option<(f64, usize, usize)> = None;
        for &(first, before) in &from.seen {
            for &(last, after) in &to.seen {
                let length = before + self.ways[first][last].0 + after;
                if length < best.map_or(f64::INFINITY, |best| best.0) {
                    best = Some((length, first, last));
                }
            }
        }
        let (length, first, last) = best?;
        let mut points = vec![from.point, self.corners[first]];
        let mut at = first;
        while at != last {
            at = self.ways[at][last].1;
            points.push(self.corners[at]);
        }
        points.push(to.point);
        Some(Way { points, length })
    }

    /// The corners that ways may go round: as many as can be looked at.
    fn found(&self) -> Vec<Point> {
        let areas = |hulls: bool| -> Vec<Point> {
            self.barriers.iter().flat_map(|barrier| around(barrier, hulls)).collect()
        };
        let edge: Vec<Point> = self.within.as_ref().map(reflex).unwrap_or_default();
        let (all, hulls) = (areas(false), areas(true));
        let chosen = [[all, edge.clone()].concat(), [hulls.clone(), edge].concat(), hulls];
        let chosen = chosen.into_iter().find(|corners| corners.len() <= MOST_CORNERS).unwrap_or_default();
        // a corner that lies in something else that is in the way is none
        chosen.into_iter().filter(|&at| self.is_free(Segment { from: at, to: at })).collect()
    }

    /// Floyd's: each corner in turn may stand between any two others.
    fn between_corners(&self) -> Vec<Vec<(f64, usize)>> {
        let corners = &self.corners;
        let mut ways = vec![vec![(f64::INFINITY, usize::MAX); corners.len()]; corners.len()];
        for (one, &from) in corners.iter().enumerate() {
            ways[one][one] = (0.0, one);
            for (two, &to) in corners.iter().enumerate().take(one) {
                if self.is_free(Segment { from, to }) {
                    let length = apart(from, to);
                    ways[one][two] = (length, two);
                    ways[two][one] = (length, one);
                }
            }
        }
        for through in 0..corners.len() {
            let after = ways[through].clone();
            for own in &mut ways {
                let (before, next) = own[through];
                for (known, rest) in own.iter_mut().zip(&after) {
                    let length = before + rest.0;
                    if length < known.0 {
                        *known = (length, next);
                    }
                }
            }
        }
        ways
    }
}

/// How much of a stretch lies outside of a region, in millimetres.
fn outside(region: &Region, stretch: Segment) -> f64 {
    let met = |one: &Segment| one.meets(stretch);
    let mut cuts: Vec<f64> = region
        .polygons
        .iter()
        .flat_map(Polygon::sides)
        .filter(met)
        .flat_map(|one| shares(stretch, one))
        .chain([0.0, 1.0])
        .collect();
    cuts.sort_by(f64::total_cmp);
    let length = apart(stretch.from, stretch.to);
    let on = |share: f64| {
        #[expect(clippy::cast_precision_loss, clippy::cast_possible_truncation, reason = "far below 2^53 mm")]
        let along = |from: i64, to: i64| from + ((to - from) as f64 * share).round() as i64;
        Point { x: along(stretch.from.x, stretch.to.x), y: along(stretch.from.y, stretch.to.y) }
    };
    let pieces = cuts.windows(2).filter(|pair| pair[1] > pair[0]);
    let out = pieces.filter(|pair| !within(region, on(f64::midpoint(pair[0], pair[1]))));
    let out: f64 = out.map(|pair| pair[1] - pair[0]).sum::<f64>() * length;
    // a stretch of no length has no pieces
    if length == 0.0 && !within(region, stretch.from) { f64::INFINITY } else { out }
}

/// Whether a point that was rounded to the millimetre lies in a region or on its edge.
fn within(region: &Region, point: Point) -> bool {
    let here = Segment { from: point, to: point };
    region.contains(point) || region.polygons.iter().flat_map(Polygon::sides).any(|one| one.nearer(here, AIR))
}

/// Where along a stretch a side that meets it cuts it, as shares of its length: both ends of one that lies along it.
fn shares(stretch: Segment, other: Segment) -> Vec<f64> {
    #[expect(
        clippy::cast_precision_loss,
        reason = "a share for the middle of a piece, to a millimetre or so"
    )]
    let real = |whole: i128| whole as f64;
    let (a, b) = (side(other, stretch.from), side(other, stretch.to));
    if a == b {
        let along = |point: Point| {
            let Segment { from, to } = stretch;
            let ahead = i128::from(to.x - from.x) * i128::from(point.x - from.x)
                + i128::from(to.y - from.y) * i128::from(point.y - from.y);
            let whole = i128::from(to.x - from.x).pow(2) + i128::from(to.y - from.y).pow(2);
            if whole == 0 { 0.0 } else { (real(ahead) / real(whole)).clamp(0.0, 1.0) }
        };
        return vec![along(other.from), along(other.to)];
    }
    vec![(real(a) / real(a - b)).clamp(0.0, 1.0)]
}

/// The corners round which ways pass what is kept out of, its buffer away.
fn around(kept: &KeepOut, hulls: bool) -> Vec<Point> {
    let off = kept.buffer.max(0) + AIR;
    match &kept.shape {
        // nobody comes from within a hole
        Shape::Area(polygon) => {
            let outer = polygon.rings.first().map(Vec::as_slice).unwrap_or_default();
            let outer = if hulls { hull(outer) } else { outer.to_vec() };
            let against = winds_against(&outer);
            corners(&outer)
                .filter(|corner| corner.turns(against))
                .flat_map(|corner| corner.off(off))
                .collect()
        }
        Shape::Way(points) => {
            // there and back again: a ring without width, and at either end a turn right round
            let back = points.iter().rev().skip(1).take(points.len().saturating_sub(2));
            let ring: Vec<Point> = points.iter().chain(back).copied().collect();
            if hulls && points.len() > 2 {
                let outer = hull(&ring);
                return corners(&outer).flat_map(|corner| corner.off(off)).collect();
            }
            corners(&ring).filter(|corner| corner.turns(true)).flat_map(|corner| corner.off(off)).collect()
        }
    }
}

/// The corners round which ways within a region pass its edge: those that stand into it.
fn reflex(region: &Region) -> Vec<Point> {
    let ring = |(at, ring): (usize, &Vec<Point>)| -> Vec<Point> {
        let against = winds_against(ring);
        // into the ground: of a hole the corners that stand out, of an outline those that stand in
        let wanted = if at == 0 { !against } else { against };
        let corners = corners(ring).filter(|corner| corner.turns(wanted) && !corner.turns(!wanted));
        corners.map(|corner| corner.at).collect()
    };
    let rings = region.polygons.iter().flat_map(|polygon| polygon.rings.iter().enumerate());
    rings.filter(|(at, ring)| *at == 0 || !is_crack(ring)).flat_map(ring).collect()
}

/// A hole that is stepped over.
fn is_crack(ring: &[Point]) -> bool {
    let polygon = Polygon { rings: vec![ring.to_vec()] };
    let edge: f64 = polygon.sides().map(|one| apart(one.from, one.to)).sum();
    #[expect(clippy::cast_precision_loss, reason = "a width, to a millimetre or so")]
    let area = polygon.area() as f64;
    area * 2.0 < STEP * edge
}

fn winds_against(ring: &[Point]) -> bool {
    let twice: i128 = corners(ring)
        .map(|Corner { before, at, .. }| {
            i128::from(before.x) * i128::from(at.y) - i128::from(before.y) * i128::from(at.x)
        })
        .sum();
    twice > 0
}

/// A corner of a ring with its neighbours.
#[derive(Clone, Copy)]
struct Corner {
    before: Point,
    at: Point,
    after: Point,
}

fn corners(ring: &[Point]) -> impl Iterator<Item = Corner> {
    let number = ring.len();
    (0..number).map(move |at| Corner {
        before: ring[(at + number - 1) % number],
        at: ring[at],
        after: ring[(at + 1) % number],
    })
}

impl Corner {
    /// Whether it turns to the left, where `left`, or else to the right; one that turns right round does both.
    fn turns(self, left: bool) -> bool {
        let bend = side(Segment { from: self.before, to: self.at }, self.after);
        if bend == 0 { self.is_end() } else { (bend > 0) == left }
    }

    /// Whether the ring turns right round here.
    fn is_end(self) -> bool {
        let ahead = i128::from(self.at.x - self.before.x) * i128::from(self.after.x - self.at.x)
            + i128::from(self.at.y - self.before.y) * i128::from(self.after.y - self.at.y);
        ahead <= 0
    }

    /// The points where tangents to the circle about it meet, on its outer side: one to a quarter turn.
    fn off(self, millimetres: i64) -> Vec<Point> {
        let to = |from: Point, to: Point| {
            #[expect(clippy::cast_precision_loss, reason = "a site is far smaller than 2^53 mm")]
            let real = |whole: i64| whole as f64;
            atan2(real(to.y - from.y), real(to.x - from.x))
        };
        let (coming, going) = (to(self.before, self.at), to(self.at, self.after));
        let mut turn = going - coming;
        if turn > PI {
            turn -= 2.0 * PI;
        } else if turn <= -PI {
            turn += 2.0 * PI;
        }
        if self.before == self.at && self.after == self.at {
            // a place by itself is gone round altogether
            turn = 2.0 * PI;
        }
        // to the outer side: the right hand of somebody who turns left
        let first = if turn >= 0.0 { coming - PI / 2.0 } else { coming + PI / 2.0 };
        let pieces = (turn.abs() / (PI / 2.0) - 1e-9).ceil().max(1.0);
        let half = turn / pieces / 2.0;
        #[expect(clippy::cast_precision_loss, reason = "ten kilometres at most")]
        let far = millimetres as f64 / cos(half);
        let mut points = Vec::new();
        let mut piece = 0.0;
        while piece < pieces {
            let angle = first + half * (2.0 * piece + 1.0);
            #[expect(clippy::cast_possible_truncation, reason = "ten kilometres at most")]
            let whole = |share: f64| (far * share).round() as i64;
            points.push(Point { x: self.at.x + whole(cos(angle)), y: self.at.y + whole(sin(angle)) });
            piece += 1.0;
        }
        points
    }
}

#[cfg(test)]
mod tests;
