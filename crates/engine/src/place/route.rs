//! The order in which lines are walked, so that little is walked between them.

use super::plane::{Point, Segment};
use crate::num::math::hypot;

/// A walk over all lines that begins at `start` and ends at the last line.
///
/// Nearest neighbour first, then pieces of the walk are turned round as long as that shortens it (2-opt). Each line is walked
/// from its zero to its end: a crew lays and reads it that way. The order is good, not proved shortest.
///
/// # Source
/// nearest neighbour and 2-opt: Croes 1958, Operations Research 6:791; Johnson and McGeoch 1997, in Local Search in
/// Combinatorial Optimization
/// # Example
/// ```
/// use tautline_engine::place::{plane::{Point, Segment}, route::route};
/// let line = |x: i64| Segment { from: Point { x, y: 0 }, to: Point { x, y: 10 } };
/// let walk = route(Point { x: 0, y: 0 }, &[line(50), line(10), line(90)]);
/// assert_eq!(walk, [1, 0, 2]);
/// ```
pub fn route(start: Point, lines: &[Segment]) -> Vec<usize> {
    let mut walk = nearest(start, lines);
    while turn_pieces(start, lines, &mut walk) {}
    walk
}

/// Length of the way between lines: from `start` to the first one's zero, and from each one's end to the next one's zero.
///
/// # Units
/// millimetres
pub fn between(start: Point, lines: &[Segment], walk: &[usize]) -> f64 {
    let mut at = start;
    let mut way = 0.0;
    for &line in walk {
        way += apart(at, lines[line].from);
        at = lines[line].to;
    }
    way
}

fn nearest(start: Point, lines: &[Segment]) -> Vec<usize> {
    let mut left: Vec<usize> = (0..lines.len()).collect();
    let mut walk = Vec::with_capacity(lines.len());
    let mut at = start;
    while !left.is_empty() {
        let mut best = 0;
        for next in 1..left.len() {
            if apart(at, lines[left[next]].from) < apart(at, lines[left[best]].from) {
                best = next;
            }
        }
        let line = left.remove(best);
        at = lines[line].to;
        walk.push(line);
    }
    walk
}

/// Turns round every piece whose turning shortens the walk by more than a millimetre; whether there was one.
fn turn_pieces(start: Point, lines: &[Segment], walk: &mut [usize]) -> bool {
    let mut turned = false;
    for from in 0..walk.len() {
        let before = if from == 0 { start } else { lines[walk[from - 1]].to };
        // the piece's own way, as it is and turned round, grows line by line
        let (mut as_it_is, mut round) = (0.0, 0.0);
        for to in (from + 1)..walk.len() {
            let (last, previous) = (lines[walk[to]], lines[walk[to - 1]]);
            as_it_is += apart(previous.to, last.from);
            round += apart(last.to, previous.from);
            let first = lines[walk[from]];
            let (mut now, mut then) =
                (apart(before, first.from) + as_it_is, apart(before, last.from) + round);
            if let Some(&next) = walk.get(to + 1) {
                now += apart(last.to, lines[next].from);
                then += apart(first.to, lines[next].from);
            }
            if then < now - 1.0 {
                walk[from..=to].reverse();
                core::mem::swap(&mut as_it_is, &mut round);
                turned = true;
            }
        }
    }
    turned
}

fn apart(a: Point, b: Point) -> f64 {
    let real = |millimetres: i64| {
        #[expect(clippy::cast_precision_loss, reason = "a site is far smaller than 2^53 mm")]
        let real = millimetres as f64;
        real
    };
    hypot(real(a.x - b.x), real(a.y - b.y))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::seed::Seed;

    fn lines(number: usize, seed: u64) -> Vec<Segment> {
        let mut random = Seed::from_purpose("test route", &[seed]).stream();
        let mut place = || i64::try_from(random.below(1_000_000)).unwrap();
        (0..number)
            .map(|_| {
                let from = Point { x: place(), y: place() };
                Segment { from, to: Point { x: from.x + 20_000, y: from.y } }
            })
            .collect()
    }

    fn every(walk: &mut Vec<usize>, from: usize, see: &mut impl FnMut(&[usize])) {
        if from == walk.len() {
            return see(walk);
        }
        for at in from..walk.len() {
            walk.swap(from, at);
            every(walk, from + 1, see);
            walk.swap(from, at);
        }
    }

    /// Against every order of seven lines: never more than a quarter longer than the shortest, on average by under 5 %.
    #[test]
    fn near_the_shortest() {
        let start = Point { x: 0, y: 0 };
        let mut over = 0.0;
        for seed in 0..12 {
            let lines = lines(7, seed);
            let mut shortest = f64::INFINITY;
            every(&mut (0..7).collect(), 0, &mut |walk| {
                shortest = shortest.min(between(start, &lines, walk));
            });
            let ratio = between(start, &lines, &route(start, &lines)) / shortest;
            assert!((1.0 - 1e-12..1.25).contains(&ratio), "{ratio}");
            over += (ratio - 1.0) / 12.0;
        }
        assert!(over < 0.05, "{over}");
    }

    #[test]
    fn every_line_once_and_never_longer_than_the_nearest_neighbour_s() {
        let start = Point { x: 0, y: 0 };
        for number in [0, 1, 2, 30] {
            let lines = lines(number, 99);
            let walk = route(start, &lines);
            assert!(!turn_pieces(start, &lines, &mut walk.clone()), "nothing is left to turn");
            let mut sorted = walk.clone();
            sorted.sort_unstable();
            assert_eq!(sorted, (0..number).collect::<Vec<_>>());
            assert!(between(start, &lines, &walk) <= between(start, &lines, &nearest(start, &lines)) + 1e-6);
        }
    }
}
