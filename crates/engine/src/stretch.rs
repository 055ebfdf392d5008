//! Half-open stretches of a tape, and the set arithmetic that cover is made of.

use crate::length::Length;

/// A half-open stretch of tape, from `start` up to but not including `stop`.
///
/// # Semantics
/// `start` lies before `stop`; a stretch always has a length.
/// # Example
/// ```
/// use tautline_engine::{length::{Length, Unit}, stretch::Stretch};
/// let at = |inches| Length::from_units(inches, Unit::Inch);
/// let shrub = Stretch::new(at(12), at(17)).unwrap();
/// assert_eq!(shrub.length(), at(5));
/// assert!(Stretch::new(at(17), at(12)).is_none());
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Stretch {
    start: Length,
    stop: Length,
}

impl Stretch {
    /// A stretch; `None` where stop doesn't lie beyond start.
    pub fn new(start: Length, stop: Length) -> Option<Self> {
        (start < stop).then_some(Self { start, stop })
    }

    /// Where it begins.
    pub const fn start(self) -> Length {
        self.start
    }

    /// Where it ends.
    pub const fn stop(self) -> Length {
        self.stop
    }

    /// How long it is.
    pub fn length(self) -> Length {
        self.stop - self.start
    }

    /// The part of it inside `other`.
    pub fn within(self, other: Self) -> Option<Self> {
        Self::new(self.start.max(other.start), self.stop.min(other.stop))
    }

    /// Whether they share some tape.
    pub fn overlaps(self, other: Self) -> bool {
        self.start < other.stop && other.start < self.stop
    }

    /// Whether they share some tape or meet end to end.
    pub fn touches(self, other: Self) -> bool {
        self.start <= other.stop && other.start <= self.stop
    }
}

/// The tape under at least one of the stretches: sorted, apart from each other, touching ones joined.
pub fn union(stretches: impl IntoIterator<Item = Stretch>) -> Vec<Stretch> {
    let mut sorted: Vec<Stretch> = stretches.into_iter().collect();
    sorted.sort_unstable();
    let mut joined: Vec<Stretch> = Vec::with_capacity(sorted.len());
    for next in sorted {
        match joined.last_mut() {
            Some(last) if next.start <= last.stop => last.stop = last.stop.max(next.stop),
            _ => joined.push(next),
        }
    }
    joined
}

/// What of `from` is left when the tape under `taken` is cut away. Both must be unions.
pub fn without(from: &[Stretch], taken: &[Stretch]) -> Vec<Stretch> {
    let mut left = Vec::new();
    let mut first = 0;
    for &piece in from {
        while first < taken.len() && taken[first].stop <= piece.start {
            first += 1;
        }
        let mut start = piece.start;
        for cut in taken[first..].iter().take_while(|cut| cut.start < piece.stop) {
            left.extend(Stretch::new(start, cut.start));
            start = start.max(cut.stop);
        }
        left.extend(Stretch::new(start, piece.stop));
    }
    left
}

/// The tape between the stretches of a union, from zero to `length`.
pub fn gaps(union: &[Stretch], length: Length) -> Vec<Stretch> {
    let line: Vec<Stretch> = Stretch::new(Length::ZERO, length).into_iter().collect();
    without(&line, union)
}

/// The summed length of stretches that lie apart.
pub fn total(union: &[Stretch]) -> Length {
    union.iter().map(|stretch| stretch.length()).sum()
}

/// Whether any stretch of a union shares tape with `with`.
pub fn any_overlaps(union: &[Stretch], with: Stretch) -> bool {
    let first = union.partition_point(|stretch| stretch.stop <= with.start);
    union.get(first).is_some_and(|stretch| stretch.overlaps(with))
}

#[cfg(test)]
pub(crate) mod tests {
    use super::*;

    pub(crate) fn cm(start: i64, stop: i64) -> Stretch {
        let at = |n| Length::from_units(n, crate::length::Unit::Centimetre);
        Stretch::new(at(start), at(stop)).unwrap()
    }

    #[test]
    fn union_joins_what_overlaps_or_touches() {
        assert_eq!(union([cm(20, 30), cm(0, 5), cm(5, 9), cm(25, 28)]), [cm(0, 9), cm(20, 30)]);
    }

    #[test]
    fn without_cuts_away() {
        let from = [cm(0, 10), cm(20, 30)];
        assert_eq!(without(&from, &[cm(3, 4), cm(8, 22), cm(29, 40)]), [cm(0, 3), cm(4, 8), cm(22, 29)]);
        assert_eq!(without(&from, &[]), from);
    }

    #[test]
    fn gaps_are_what_is_left_of_the_line() {
        let length = cm(0, 50).length();
        assert_eq!(gaps(&[cm(0, 10), cm(20, 30)], length), [cm(10, 20), cm(30, 50)]);
        assert_eq!(gaps(&[], length), [cm(0, 50)]);
    }

    #[test]
    fn meeting_is_touching_but_not_overlapping() {
        assert!(cm(0, 5).touches(cm(5, 6)));
        assert!(!cm(0, 5).overlaps(cm(5, 6)));
        assert!(any_overlaps(&[cm(0, 5), cm(7, 9)], cm(8, 20)));
        assert!(!any_overlaps(&[cm(0, 5), cm(7, 9)], cm(5, 7)));
    }
}
