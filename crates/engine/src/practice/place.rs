//! Exercises apart from edges: where lines start along a baseline, and which plants are in or out.

use crate::length::{Length, Notation};
use crate::seed::Seed;

/// A plant beside the tape's edge: does its canopy cover the edge?
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Beside {
    /// Where its middle stands along the tape.
    pub along: Length,
    /// How far its middle stands to the left of the edge; below zero to the right.
    pub aside: Length,
    /// The radius of its canopy.
    pub radius: Length,
}

impl Beside {
    /// In where the canopy reaches over the edge; one that only touches it covers none of it and is out.
    ///
    /// # Example
    /// ```
    /// use tautline_engine::{length::{Length, Unit}, practice::place::Beside};
    /// let cm = |n| Length::from_units(n, Unit::Centimetre);
    /// let plant = |aside, radius| Beside { along: cm(50), aside: cm(aside), radius: cm(radius) };
    /// assert!(plant(-20, 21).is_in());
    /// assert!(!plant(20, 20).is_in());
    /// ```
    pub fn is_in(&self) -> bool {
        self.radius.nanometres() > self.aside.nanometres().abs()
    }
}

/// Plants beside a tape, every other one in, in an order by chance; some only just so.
///
/// # Example
/// ```
/// use tautline_engine::length::{Length, Notation, Unit};
/// let plants = tautline_engine::practice::place::in_or_out(Notation::decimals(Unit::Centimetre, 0), 12, 4);
/// assert_eq!(plants.len(), 12);
/// assert!(plants.iter().any(|plant| plant.is_in()) && plants.iter().any(|plant| !plant.is_in()));
/// ```
pub fn in_or_out(tape: Notation, plants: usize, seed: u64) -> Vec<Beside> {
    let mut random = Seed::from_purpose("practice in or out", &[seed]).stream();
    let of = |metres: f64| super::line::nearest(metres, tape.step());
    let mut inside: Vec<bool> = (0..plants).map(|number| number % 2 == 0).collect();
    for last in (1..plants).rev() {
        let with = usize::try_from(random.below(last as u64 + 1)).unwrap_or(last);
        inside.swap(last, with);
    }
    let mut from = 0.3;
    inside
        .into_iter()
        .map(|inside| {
            let radius = 0.15 + 0.35 * random.uniform();
            let share = if inside { 0.3 + 0.65 * random.uniform() } else { 1.05 + 0.45 * random.uniform() };
            let side = if random.below(2) == 0 { 1.0 } else { -1.0 };
            let along = from + radius;
            from = along + radius + 0.15;
            Beside { along: of(along), aside: of(side * share * radius), radius: of(radius) }
        })
        .collect()
}

/// Lines that start along a baseline at equal steps from a random start.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Starts {
    /// How long the baseline is.
    pub baseline: Length,
    /// How many lines start on it.
    pub lines: u32,
    /// The random start that was drawn, below one step.
    pub first: Length,
}

impl Starts {
    /// Draws one; the same number is the same exercise.
    pub fn draw(tape: Notation, seed: u64) -> Self {
        let mut random = Seed::from_purpose("practice starts", &[seed]).stream();
        let lines = u32::try_from(4 + random.below(5)).unwrap_or(4);
        let whole = Length::from_units(1, tape.unit).nanometres().max(tape.step().nanometres());
        let baseline = Length::from_nanometres(nearest_multiple(
            60.0 + 60.0 * random.uniform(),
            whole,
            i64::from(lines),
        ));
        let step = baseline.nanometres() / i64::from(lines);
        let first = random.below(u64::try_from(step / whole).unwrap_or(1));
        Self { baseline, lines, first: Length::from_nanometres(i64::try_from(first).unwrap_or(0) * whole) }
    }

    /// Where the lines start: the random start, and one step further each.
    ///
    /// # Source
    /// systematic sampling with a random start: Cochran 1977, Sampling Techniques, 8.1
    /// # Example
    /// ```
    /// use tautline_engine::{length::{Length, Unit}, practice::place::Starts};
    /// let m = |n| Length::from_units(n, Unit::Metre);
    /// let starts = Starts { baseline: m(100), lines: 4, first: m(13) };
    /// assert_eq!(starts.key(), [m(13), m(38), m(63), m(88)]);
    /// ```
    pub fn key(&self) -> Vec<Length> {
        let step = self.baseline.nanometres() / i64::from(self.lines.max(1));
        (0..i64::from(self.lines)).map(|line| self.first + Length::from_nanometres(line * step)).collect()
    }

    /// Which of the marks lie where a line starts, within a tolerance.
    pub fn right(&self, marks: &[Length], tolerance: Length) -> Vec<bool> {
        let near = |key: Length, mark: Length| (key - mark).nanometres().abs() <= tolerance.nanometres();
        self.key().iter().map(|&key| marks.iter().any(|&mark| near(key, mark))).collect()
    }
}

/// A length of about so many metres that so many equal steps of whole units make.
fn nearest_multiple(metres: f64, unit: i64, steps: i64) -> i64 {
    let grain = Length::from_nanometres(unit * steps);
    super::line::nearest(metres, grain).nanometres().max(grain.nanometres())
}
