//! Where two readings of one line lie furthest apart, and which rule such a difference speaks of.

use crate::length::Length;
use crate::stretch::{Stretch, any_overlaps, total, union, without};

/// One reading: live canopy as the rule closes it, and what was written that is none.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Written {
    /// Live canopy.
    pub canopy: Vec<Stretch>,
    /// Dead wood.
    pub dead: Vec<Stretch>,
    /// Plants that don't count, such as grass.
    pub other: Vec<Stretch>,
}

/// What a difference is mostly about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum About {
    /// One reads on where the other wrote a gap.
    Gap,
    /// What one wrote as dead is live to the other.
    Dead,
    /// What one wrote of a plant that doesn't count is canopy to the other.
    Counts,
    /// Both have the plant; its edge lies elsewhere.
    Edge,
    /// Only one has the plant.
    Plant,
}

impl About {
    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Gap => "apart-gap",
            Self::Dead => "apart-dead",
            Self::Counts => "apart-counts",
            Self::Edge => "apart-edge",
            Self::Plant => "apart-plant",
        }
    }
}

/// A stretch that only one of the two has as live canopy.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Apart {
    /// From where to where.
    pub stretch: Stretch,
    /// The first reader has it; else the second.
    pub first_has_it: bool,
    /// What it is about.
    pub about: About,
}

/// The longest stretches that only one of two readings has as live canopy, at most so many, in the order of the tape.
///
/// # Units
/// Whole nanometres.
///
/// # Source
/// Our own: the symmetric difference of two unions. What it is about: half or more of it written as dead or as a plant that doesn't
/// count; else by whether the other's canopy meets both its ends, one of them, or neither.
///
/// # Example
/// Invented: the second reader stops at a gap of 6 cm, begins a plant 10 cm later and misses one of 20 cm.
/// ```
/// use tautline_engine::agreement::apart::{About, Written, furthest};
/// use tautline_engine::length::{Length, Unit};
/// use tautline_engine::stretch::Stretch;
/// let at = |cm| Length::from_units(cm, Unit::Centimetre);
/// let plant = |from, to| Stretch::new(at(from), at(to)).unwrap();
/// let first = Written { canopy: vec![plant(0, 100), plant(200, 300), plant(400, 420)], ..Written::default() };
/// let second = Written { canopy: vec![plant(0, 40), plant(46, 100), plant(210, 300)], ..Written::default() };
/// let found: Vec<_> = furthest(&first, &second, 3).into_iter().map(|one| (one.stretch, one.about)).collect();
/// assert_eq!(found, [(plant(40, 46), About::Gap), (plant(200, 210), About::Edge), (plant(400, 420), About::Plant)]);
/// ```
pub fn furthest(first: &Written, second: &Written, most: usize) -> Vec<Apart> {
    let mut found = only(first, second, true);
    found.extend(only(second, first, false));
    // the longest first, among alike the one nearer to zero
    found.sort_by_key(|one| (core::cmp::Reverse(one.stretch.length()), one.stretch.start()));
    found.truncate(most);
    found.sort_by_key(|one| one.stretch.start());
    found
}

/// What only one has.
fn only(one: &Written, other: &Written, first_has_it: bool) -> Vec<Apart> {
    let [own, others] = [one, other].map(|written| union(written.canopy.iter().copied()));
    without(&own, &others)
        .into_iter()
        .map(|stretch| Apart { stretch, first_has_it, about: about(stretch, &others, other) })
        .collect()
}

fn about(stretch: Stretch, canopy: &[Stretch], other: &Written) -> About {
    let half_of_it = |written: &[Stretch]| {
        let written = union(written.iter().copied());
        let left = without(&[stretch], &written);
        any_overlaps(&written, stretch) && double(total(&left)) <= stretch.length()
    };
    let ends = canopy.iter().any(|patch| patch.stop() == stretch.start());
    let begins = canopy.iter().any(|patch| patch.start() == stretch.stop());
    match (ends, begins) {
        _ if half_of_it(&other.dead) => About::Dead,
        _ if half_of_it(&other.other) => About::Counts,
        (true, true) => About::Gap,
        (false, false) => About::Plant,
        _ => About::Edge,
    }
}

fn double(length: Length) -> Length {
    length + length
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::stretch::tests::cm;
    use proptest::prelude::*;

    #[test]
    fn what_the_other_wrote_otherwise_is_what_it_is_about() {
        let first = Written { canopy: vec![cm(0, 100), cm(200, 250)], ..Written::default() };
        let second = Written { canopy: vec![cm(0, 60)], dead: vec![cm(60, 90)], other: vec![cm(200, 225)] };
        let found = furthest(&first, &second, 3);
        assert_eq!(found.iter().map(|one| one.about).collect::<Vec<_>>(), [About::Dead, About::Counts]);
        assert!(found.iter().all(|one| one.first_has_it));
    }

    #[test]
    fn only_so_many_are_given_and_they_are_the_longest() {
        let first =
            Written { canopy: vec![cm(0, 5), cm(10, 30), cm(40, 42), cm(50, 60)], ..Written::default() };
        let found = furthest(&first, &Written::default(), 2);
        assert_eq!(found.iter().map(|one| one.stretch).collect::<Vec<_>>(), [cm(10, 30), cm(50, 60)]);
    }

    prop_compose! {
        fn written()(edges in proptest::collection::vec((0_i64..400, 1_i64..40), 0..8)) -> Written {
            Written { canopy: edges.iter().map(|&(start, length)| cm(start, start + length)).collect(), ..Written::default() }
        }
    }

    proptest! {
        /// All that is apart, taken from both, leaves what both have: the union's length is what they share and what each has alone.
        #[test]
        fn shared_and_apart_make_the_union(first in written(), second in written()) {
            let apart = furthest(&first, &second, usize::MAX);
            let both = first.canopy.iter().chain(&second.canopy).copied();
            let all = union(both);
            let alone: Vec<Stretch> = apart.iter().map(|one| one.stretch).collect();
            let shared = without(&all, &union(alone.iter().copied()));
            prop_assert_eq!(total(&all), total(&shared) + alone.iter().map(|one| one.length()).fold(Length::ZERO, |sum, one| sum + one));
            let one_has = |written: &Written| without(&shared, &union(written.canopy.iter().copied())).is_empty();
            prop_assert!(one_has(&first) && one_has(&second));
        }

        /// Readers swapped say the same of the same stretches.
        #[test]
        fn swapped_readers_swap_who_has_it(first in written(), second in written()) {
            let (there, back) = (furthest(&first, &second, 3), furthest(&second, &first, 3));
            prop_assert_eq!(there.len(), back.len());
            for (one, other) in there.iter().zip(&back) {
                prop_assert_eq!((one.stretch, one.about), (other.stretch, other.about));
                prop_assert_ne!(one.first_has_it, other.first_has_it);
            }
        }
    }
}
