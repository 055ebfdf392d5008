//! Canopy gaps of one line and the share of the line in each class of gap.
//!
//! From a line on which only shrubs were read these are gaps between shrubs, not gaps in all plant cover.

use crate::length::{Length, Unit};
use crate::slope::level;
use crate::stretch::{Stretch, gaps};

/// A stretch of the line without canopy.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Gap {
    /// From where to where along the tape, not corrected for slope.
    pub stretch: Stretch,
    /// It touches an end of the line, so it is at least this long.
    pub cut_off: bool,
}

/// The gaps of a line, given the union of its canopy.
pub fn canopy_gaps(canopy: &[Stretch], length: Length) -> Vec<Gap> {
    let cut_off = |gap: &Stretch| gap.start() == Length::ZERO || gap.stop() == length;
    gaps(canopy, length).into_iter().map(|stretch| Gap { stretch, cut_off: cut_off(&stretch) }).collect()
}

/// The class breaks published for canopy gaps: 25, 50, 100 and 200 cm.
///
/// # Source
/// Herrick et al. 2005, *Monitoring Manual for Grassland, Shrubland and Savanna Ecosystems*, vol. I
/// (from memory: classes 25–50, 51–100, 101–200 and over 200 cm)
pub fn published_breaks() -> Vec<Length> {
    [25, 50, 100, 200].map(|cm| Length::from_units(cm, Unit::Centimetre)).to_vec()
}

/// Gaps of one class.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct GapClass {
    /// Gaps longer than this; in the first class also gaps of exactly this length.
    pub above: Length,
    /// Up to and including this; `None` for the last class.
    pub up_to: Option<Length>,
    /// How many.
    pub count: usize,
    /// How many of them are cut off by the line's end.
    pub cut_off: usize,
    /// Their summed length along the tape.
    pub length: Length,
}

/// Sorts gaps into classes between sorted `breaks`. Gaps shorter than the first break belong to no class.
///
/// `cosine` is 1 for lengths along the tape, or that of the line's slope, and then a gap's class is that of its length
/// on the level ([`crate::slope`]). Summed lengths stay along the tape, as the line's own length does.
///
/// The published classes are written for whole centimetres (25–50, 51–100): a gap of exactly 50 cm belongs to
/// the first, anything longer to the second.
///
/// # Example
/// ```
/// use tautline_engine::{gaps::{canopy_gaps, gap_classes, published_breaks}, length::{Length, Unit}};
/// let line = Length::from_units(20, Unit::Metre);
/// let classes = gap_classes(&canopy_gaps(&[], line), &published_breaks(), 1.0);
/// assert_eq!((classes.len(), classes[3].length), (4, line));
/// ```
pub fn gap_classes(gaps: &[Gap], breaks: &[Length], cosine: f64) -> Vec<GapClass> {
    let mut classes: Vec<GapClass> = breaks
        .iter()
        .enumerate()
        .map(|(i, &above)| GapClass {
            above,
            up_to: breaks.get(i + 1).copied(),
            count: 0,
            cut_off: 0,
            length: Length::ZERO,
        })
        .collect();
    for gap in gaps {
        let length = level(gap.stretch.length(), cosine);
        let in_first = breaks.first() == Some(&length);
        let below = breaks.partition_point(|&limit| limit < length);
        if let Some(class) = classes.get_mut(if in_first { 0 } else { below.wrapping_sub(1) }) {
            class.count += 1;
            class.cut_off += usize::from(gap.cut_off);
            class.length = class.length + gap.stretch.length();
        }
    }
    classes
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::stretch::tests::cm;

    #[test]
    fn class_edges() {
        let of = |lengths: &[i64]| {
            let gaps: Vec<Gap> = lengths.iter().map(|&l| Gap { stretch: cm(0, l), cut_off: false }).collect();
            gap_classes(&gaps, &published_breaks(), 1.0).iter().map(|class| class.count).collect::<Vec<_>>()
        };
        assert_eq!(of(&[24]), [0, 0, 0, 0]);
        assert_eq!(of(&[25, 50]), [2, 0, 0, 0]);
        assert_eq!(of(&[51, 100]), [0, 2, 0, 0]);
        assert_eq!(of(&[101, 200]), [0, 0, 2, 0]);
        assert_eq!(of(&[201]), [0, 0, 0, 1]);
    }

    /// 125 cm along ground that rises three in four are 100 cm on the level: the class below.
    #[test]
    fn on_a_slope_the_class_is_that_of_the_length_on_the_level() {
        let gaps = [Gap { stretch: cm(0, 125), cut_off: false }];
        let count = |cosine| -> Vec<usize> {
            gap_classes(&gaps, &published_breaks(), cosine).iter().map(|class| class.count).collect()
        };
        assert_eq!(count(1.0), [0, 0, 1, 0]);
        assert_eq!(count(crate::slope::cosine_of_grade(0.75)), [0, 1, 0, 0]);
    }

    #[test]
    fn gaps_at_the_ends_are_cut_off() {
        let found = canopy_gaps(&[cm(30, 40), cm(100, 120)], cm(0, 300).length());
        assert_eq!(found.iter().map(|gap| gap.cut_off).collect::<Vec<_>>(), [true, false, true]);
    }
}
