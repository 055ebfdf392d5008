//! The hull of points: the least outline without a dent that holds them all.

use super::plane::{Point, Segment, side};

/// The corners of the hull, against the clock; points on its sides are left out.
///
/// # Source
/// Andrew 1979, Information Processing Letters 9:216
/// # Example
/// ```
/// use tautline_engine::place::{hull::hull, plane::Point};
/// let points = [(0, 0), (4, 0), (2, 1), (4, 4), (2, 4), (0, 4)].map(|(x, y)| Point { x, y });
/// let corners = [(0, 0), (4, 0), (4, 4), (0, 4)].map(|(x, y)| Point { x, y });
/// assert_eq!(hull(&points), corners);
/// ```
pub fn hull(points: &[Point]) -> Vec<Point> {
    let mut sorted = points.to_vec();
    sorted.sort_unstable();
    sorted.dedup();
    if sorted.len() < 3 {
        return sorted;
    }
    let mut below = half(sorted.iter());
    let mut above = half(sorted.iter().rev());
    // each half ends where the other begins
    below.pop();
    above.pop();
    below.append(&mut above);
    below
}

/// The chain that turns to the left from the first point to the last.
fn half<'a>(points: impl Iterator<Item = &'a Point>) -> Vec<Point> {
    let mut chain: Vec<Point> = Vec::new();
    for &point in points {
        while let [.., before, last] = chain[..] {
            if side(Segment { from: before, to: last }, point) > 0 {
                break;
            }
            chain.pop();
        }
        chain.push(point);
    }
    chain
}
