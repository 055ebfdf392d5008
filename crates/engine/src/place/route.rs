//! The order in which lines are walked, so that little is walked between them.

/// A walk over all lines that ends at the last line.
///
/// `apart` says how far it is from the end of a line, or from where the walk begins (`None`), to the zero of another.
/// Nearest neighbour first, then pieces of the walk are turned round as long as that shortens it (2-opt). Each line is walked
/// from its zero to its end: a crew lays and reads it that way. The order is good, not proved shortest.
///
/// # Source
/// nearest neighbour and 2-opt: Croes 1958, Operations Research 6:791; Johnson and McGeoch 1997, in Local Search in
/// Combinatorial Optimization
/// # Units
/// `apart` in millimetres
/// # Example
/// ```
/// use tautline_engine::place::route::route;
/// let zeros = [50.0_f64, 10.0, 90.0];
/// let apart = |from: Option<usize>, to: usize| (from.map_or(0.0, |from| zeros[from]) - zeros[to]).abs();
/// assert_eq!(route(3, apart), [1, 0, 2]);
/// ```
pub fn route(lines: usize, apart: impl Fn(Option<usize>, usize) -> f64) -> Vec<usize> {
    let mut walk = nearest(lines, &apart);
    while turn_pieces(&apart, &mut walk) {}
    walk
}

fn nearest(lines: usize, apart: &impl Fn(Option<usize>, usize) -> f64) -> Vec<usize> {
    let mut left: Vec<usize> = (0..lines).collect();
    let mut walk = Vec::with_capacity(lines);
    let mut at = None;
    while !left.is_empty() {
        let mut best = 0;
        for next in 1..left.len() {
            if apart(at, left[next]) < apart(at, left[best]) {
                best = next;
            }
        }
        let line = left.remove(best);
        at = Some(line);
        walk.push(line);
    }
    walk
}

/// Turns round every piece whose turning shortens the walk by more than a millimetre; whether there was one.
fn turn_pieces(apart: &impl Fn(Option<usize>, usize) -> f64, walk: &mut [usize]) -> bool {
    let mut turned = false;
    for from in 0..walk.len() {
        let before = from.checked_sub(1).map(|before| walk[before]);
        // the piece's own way, as it is and turned round, grows line by line
        let (mut as_it_is, mut round) = (0.0, 0.0);
        for to in (from + 1)..walk.len() {
            let (first, last, previous) = (walk[from], walk[to], walk[to - 1]);
            as_it_is += apart(Some(previous), last);
            round += apart(Some(last), previous);
            let (mut now, mut then) = (apart(before, first) + as_it_is, apart(before, last) + round);
            if let Some(&next) = walk.get(to + 1) {
                now += apart(Some(last), next);
                then += apart(Some(first), next);
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::place::plane::{self, Point, Segment};
    use crate::seed::Seed;

    const START: Point = Point { x: 0, y: 0 };

    fn straight(lines: &[Segment]) -> impl Fn(Option<usize>, usize) -> f64 + '_ {
        |from, to| plane::apart(from.map_or(START, |from| lines[from].to), lines[to].from)
    }

    fn long(walk: &[usize], apart: impl Fn(Option<usize>, usize) -> f64) -> f64 {
        let befores = [None].into_iter().chain(walk.iter().copied().map(Some));
        befores.zip(walk).map(|(before, &line)| apart(before, line)).sum()
    }

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
        let mut over = 0.0;
        for seed in 0..12 {
            let lines = lines(7, seed);
            let mut shortest = f64::INFINITY;
            every(&mut (0..7).collect(), 0, &mut |walk| {
                shortest = shortest.min(long(walk, straight(&lines)));
            });
            let ratio = long(&route(7, straight(&lines)), straight(&lines)) / shortest;
            assert!((1.0 - 1e-12..1.25).contains(&ratio), "{ratio}");
            over += (ratio - 1.0) / 12.0;
        }
        assert!(over < 0.05, "{over}");
    }

    #[test]
    fn every_line_once_and_never_longer_than_the_nearest_neighbour_s() {
        for number in [0, 1, 2, 30] {
            let lines = lines(number, 99);
            let walk = route(number, straight(&lines));
            assert!(!turn_pieces(&straight(&lines), &mut walk.clone()), "nothing is left to turn");
            let mut sorted = walk.clone();
            sorted.sort_unstable();
            assert_eq!(sorted, (0..number).collect::<Vec<_>>());
            let first = nearest(number, &straight(&lines));
            assert!(long(&walk, straight(&lines)) <= long(&first, straight(&lines)) + 1e-6);
        }
    }
}
