//! The order in which points of a region are tried.

use super::plane::Point;
use super::region::Region;
use crate::num::count;
use crate::num::math::sqrt;
use crate::seed::Random;

/// How points are drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Design {
    /// Spread evenly over the region, by balanced acceptance sampling; any first so many are spread evenly too, so that a
    /// reserve keeps the balance.
    ///
    /// # Source
    /// Robertson, B.L., J.A. Brown, T. McDonald and P. Jaksons 2013. BAS: balanced acceptance sampling of natural
    /// resources. Biometrics 69:776–784; a first point inside: Robertson, McDonald, Price and Brown 2017, Statistics and
    /// Probability Letters 129:107–112
    Balanced,
    /// Each point anywhere, by itself.
    Random,
    /// The corners of a square grid with a random start.
    Systematic,
}

/// The points to try, in order.
pub(super) fn candidates<'a>(
    design: Design,
    region: &'a Region,
    wanted: usize,
    random: &'a mut Random,
) -> Box<dyn Iterator<Item = Point> + 'a> {
    let Some(frame) = region.frame() else { return Box::new(core::iter::empty()) };
    match design {
        Design::Balanced => Box::new(balanced(region, frame, random).take(tries(wanted))),
        Design::Random => {
            let draws = (0..MOST_DRAWS).map(move |_| anywhere(frame, random));
            Box::new(draws.filter(|&point| region.contains(point)).take(tries(wanted)))
        }
        Design::Systematic => Box::new(grid(region, frame, wanted, random).into_iter()),
    }
}

/// Points tried for each one wanted, before it is said that there is no room.
fn tries(wanted: usize) -> usize {
    200 * wanted + 1000
}

const MOST_DRAWS: usize = 4_000_000;

fn anywhere((low, high): (Point, Point), random: &mut Random) -> Point {
    let mut along = |from: i64, to: i64| {
        let offset = random.below((to - from).unsigned_abs() + 1);
        from + i64::try_from(offset).unwrap_or(0)
    };
    Point { x: along(low.x, high.x), y: along(low.y, high.y) }
}

/// Halton's points with a start drawn at random for each axis, those outside left out; starts are drawn until the first
/// point lies inside.
fn balanced<'a>(
    region: &'a Region,
    frame: (Point, Point),
    random: &mut Random,
) -> impl Iterator<Item = Point> + 'a {
    let starts = (0..MOST_DRAWS)
        .map(|_| [random.below(STARTS), random.below(STARTS)])
        .find(|&starts| region.contains(halton(frame, starts, 0)));
    starts.into_iter().flat_map(move |starts| {
        (0..MOST_DRAWS as u64)
            .map(move |at| halton(frame, starts, at))
            .filter(|&point| region.contains(point))
    })
}

/// Starts are drawn below this, as in the paper.
const STARTS: u64 = 10_000_000;

/// Point number `at` after the starts: the digits of the number reversed, in base 2 to the east and base 3 to the north.
fn halton((low, high): (Point, Point), starts: [u64; 2], at: u64) -> Point {
    let along = |from: i64, to: i64, base: u64, number: u64| {
        let (reversed, whole) = reversed(number, base);
        let extent = u128::from((to - from).unsigned_abs()) + 1;
        let offset = extent * u128::from(reversed) / u128::from(whole);
        from + i64::try_from(offset).unwrap_or(0)
    };
    Point { x: along(low.x, high.x, 2, starts[0] + at), y: along(low.y, high.y, 3, starts[1] + at) }
}

/// The radical inverse of a number as a fraction: its digits behind the point in reversed order.
fn reversed(mut number: u64, base: u64) -> (u64, u64) {
    let (mut reversed, mut whole) = (0, 1);
    // every number below 2^30 has fewer digits than this, in either base
    for _ in 0..30 {
        reversed = reversed * base + number % base;
        whole *= base;
        number /= base;
    }
    (reversed, whole)
}

/// A square grid with a random start, as wide as leaves enough corners inside, its corners in random order.
///
/// The grid is made finer by a hundredth until it has as many corners as are wanted, so each point of the region is as
/// likely as any other.
fn grid(region: &Region, (low, high): (Point, Point), wanted: usize, random: &mut Random) -> Vec<Point> {
    let shares = [random.uniform(), random.uniform()];
    #[expect(clippy::cast_precision_loss, reason = "the grid's width need not be exact")]
    let area = region.area() as f64;
    let mut width = sqrt(area / count(wanted.max(1)));
    loop {
        let mut found = Vec::new();
        for x in steps(low.x, high.x, width, shares[0]) {
            for y in steps(low.y, high.y, width, shares[1]) {
                found.extend(Some(Point { x, y }).filter(|&point| region.contains(point)));
            }
        }
        if found.len() >= wanted || width < 2.0 {
            shuffle(&mut found, random);
            return found;
        }
        width *= 0.99;
    }
}

fn steps(low: i64, high: i64, width: f64, share: f64) -> impl Iterator<Item = i64> {
    (0_u32..)
        .map(move |at| {
            #[expect(clippy::cast_possible_truncation, reason = "a plane is far smaller than 2^63 mm")]
            let step = ((f64::from(at) + share) * width).floor() as i64;
            low + step
        })
        .take_while(move |&at| at <= high)
}

/// Every order as likely (Fisher and Yates 1938, in Durstenfeld's form of 1964).
fn shuffle(points: &mut [Point], random: &mut Random) {
    for at in (1..points.len()).rev() {
        let other = usize::try_from(random.below(at as u64 + 1)).unwrap_or(at);
        points.swap(at, other);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Van der Corput's sequence as printed everywhere: 1/2 1/4 3/4 1/8 …, and 1/3 2/3 1/9 4/9 … in base 3.
    #[test]
    fn digits_are_reversed() {
        let share = |number, base| {
            let (reversed, whole) = reversed(number, base);
            #[expect(clippy::cast_precision_loss, reason = "a test")]
            let share = reversed as f64 / whole as f64;
            share
        };
        for (number, half) in [(1, 0.5), (2, 0.25), (3, 0.75), (4, 0.125), (5, 0.625)] {
            assert!((share(number, 2) - half).abs() < 1e-12);
        }
        for (number, third) in [(1, 3.0), (2, 6.0), (3, 1.0), (4, 4.0), (5, 7.0), (6, 2.0)] {
            assert!((share(number, 3) - third / 9.0).abs() < 1e-12);
        }
    }
}
