//! Two readings of one staked line: does the tape still lie where it lay, and are these still the same plants?

use super::ranks::median_interval;
use crate::length::Length;
use crate::num::sum::median;
use crate::stretch::{Stretch, total, union};
use crate::trend::robust::{slope_interval, theil_sen};

/// How two readings of a line lie to each other.
#[derive(Clone, Debug, PartialEq)]
pub struct Alignment {
    /// How far the later reading lies beyond the earlier one: the median way of the middles of plants found again.
    pub shift: Length,
    /// The shift is more than the plants' own coming and going would give: its 95 % interval leaves zero out.
    pub shift_shown: bool,
    /// How much longer the later tape reads than the earlier one, as a share: 0.01 is 1 % longer. Zero unless its 95 %
    /// interval leaves zero out.
    pub stretch: f64,
    /// Patches that were found again, by their places in the earlier and in the later reading.
    pub matches: Vec<(usize, usize)>,
    /// Whether these are still the same plants.
    pub pairing: Pairing,
}

/// Whether two readings are of the same line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Pairing {
    /// The canopy lies where it lay, more than any other place along the tape would give by chance.
    Holds {
        /// Chance of an overlap as large somewhere else along the tape.
        p: f64,
    },
    /// It lies no better where it lay than elsewhere: a stake may be lost, or the tape run the other way.
    Doubtful {
        /// Chance of an overlap as large somewhere else along the tape.
        p: f64,
    },
    /// Too little canopy, or too short a line, to tell.
    CantTell,
}

impl Pairing {
    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Holds { .. } => "pairing-holds",
            Self::Doubtful { .. } => "pairing-doubtful",
            Self::CantTell => "pairing-cant-tell",
        }
    }
}

/// Above this chance the pairing is in doubt.
pub const DOUBTFUL_ABOVE: f64 = 0.05;

/// Fewer patches than this in either reading tell nothing about a pairing.
const FEWEST_PATCHES: usize = 3;

/// Up to this many matched patches all are used, beyond it the larger half.
const FEW: usize = 8;

/// How sure a shift or a stretch must be before it is one.
const SURE: f64 = 0.95;

/// Finds how a later reading lies to an earlier one, and whether both are of the same line.
///
/// The later reading is slid along the earlier one, up to `reach` either way, to where their canopies overlap most.
/// Patches that are each other's best partner there are matched, the larger half of them by length; the shift is the
/// median of the way their middles moved (growth moves both edges of a plant apart and leaves its middle), the stretch
/// the Theil–Sen slope of their middles, each with the interval that shows it. The pairing is judged by the same sliding at every other place along the line,
/// the line closed to a ring: p = (1 + places that fit as well) / (1 + places).
///
/// # Units
/// Whole nanometres.
///
/// # Range
/// Fewer than three patches in a reading, or a line too short for nineteen other places, tell nothing.
///
/// # Source
/// Toroidal shifts: Lotwick and Silverman 1982, Journal of the Royal Statistical Society B 44:406–413; slope: Sen 1968,
/// Journal of the American Statistical Association 63:1379–1389; putting them together: our own
///
/// # Example
/// Invented: six shrubs that grew, on a tape that was pulled 12 cm further.
/// ```
/// use tautline_engine::change::align::{Pairing, align};
/// use tautline_engine::length::{Length, Unit};
/// use tautline_engine::stretch::Stretch;
/// let at = |cm| Length::from_units(cm, Unit::Centimetre);
/// let shrub = |from, to| Stretch::new(at(from), at(to)).unwrap();
/// let earlier = [
///     shrub(100, 180), shrub(420, 470), shrub(900, 1050), shrub(1500, 1540), shrub(2300, 2420), shrub(2600, 2650),
/// ];
/// let later = earlier.map(|s| Stretch::new(s.start() + at(12 - 4), s.stop() + at(12 + 4)).unwrap());
/// let found = align(&earlier, &later, at(3000), at(50));
/// assert!(found.shift == at(12) && found.shift_shown);
/// assert!(matches!(found.pairing, Pairing::Holds { .. }));
/// ```
pub fn align(earlier: &[Stretch], later: &[Stretch], line: Length, reach: Length) -> Alignment {
    let (earlier, later) = (union(earlier.iter().copied()), union(later.iter().copied()));
    let (slid, overlap) = best_slide(&earlier, &later, Length::ZERO, reach);
    let matches = matched(&moved(&earlier, slid), &later);
    let big = larger_half(&matches, &earlier);
    let middles: Vec<(f64, f64)> = big.iter().map(|&(a, b)| (middle(earlier[a]), middle(later[b]))).collect();
    let ways: Vec<f64> = middles.iter().map(|(before, after)| after - before).collect();
    let shift = median(&ways).map_or(slid, nanometres);
    let leaves_out = |none: f64| move |(low, high): (f64, f64)| low > none || high < none;
    let shift_shown = median_interval(&ways, SURE).is_some_and(|(low, high, _)| leaves_out(0.0)((low, high)));
    let stretch = slope_interval(&middles, SURE)
        .filter(|&interval| leaves_out(1.0)(interval))
        .and_then(|_| theil_sen(&middles))
        .map_or(0.0, |slope| slope - 1.0);
    let pairing = if earlier.len() < FEWEST_PATCHES || later.len() < FEWEST_PATCHES {
        Pairing::CantTell
    } else {
        judge(&earlier, &later, line, reach, overlap)
    };
    Alignment { shift, shift_shown, stretch, matches, pairing }
}

fn judge(earlier: &[Stretch], later: &[Stretch], line: Length, reach: Length, overlap: Length) -> Pairing {
    let width = 2 * reach.nanometres().max(1);
    // the places next to the true one would meet it again
    let places = (line.nanometres() / width - 1).max(0);
    if places < 19 {
        return Pairing::CantTell;
    }
    let as_good = (1..=places)
        .filter(|place| {
            let turned = turned(earlier, Length::from_nanometres(place * width), line);
            best_slide(&turned, later, Length::ZERO, reach).1 >= overlap
        })
        .count();
    #[expect(clippy::cast_precision_loss, reason = "a line has far fewer than 2^53 places")]
    let p = (1 + as_good) as f64 / (1 + places) as f64;
    if p <= DOUBTFUL_ABOVE { Pairing::Holds { p } } else { Pairing::Doubtful { p } }
}

/// Where, within `reach` of `around`, the earlier reading overlaps the later one most, and by how much.
///
/// The overlap is piecewise linear in the way slid and bends only where two edges meet, so those ways are tried, and the
/// nearest one wins among equals.
fn best_slide(earlier: &[Stretch], later: &[Stretch], around: Length, reach: Length) -> (Length, Length) {
    let edges = |stretches: &[Stretch]| -> Vec<Length> {
        stretches.iter().flat_map(|stretch| [stretch.start(), stretch.stop()]).collect()
    };
    let (before, after) = (edges(earlier), edges(later));
    let away = |way: Length| (way - around).nanometres().abs();
    let mut ways: Vec<Length> = before
        .iter()
        .flat_map(|&b| after.iter().map(move |&a| a - b))
        .filter(|&way| away(way) <= reach.nanometres())
        .chain([around, around - reach, around + reach])
        .collect();
    ways.sort_unstable_by_key(|&way| (away(way), way));
    ways.dedup();
    let mut best = (around, Length::ZERO);
    for (number, way) in ways.into_iter().enumerate() {
        let overlap = overlap(&moved(earlier, way), later);
        if number == 0 || overlap > best.1 {
            best = (way, overlap);
        }
    }
    best
}

/// Length of tape under both.
fn overlap(a: &[Stretch], b: &[Stretch]) -> Length {
    let (mut at_a, mut at_b, mut both) = (0, 0, Length::ZERO);
    while let (Some(one), Some(other)) = (a.get(at_a), b.get(at_b)) {
        both = both + one.within(*other).map_or(Length::ZERO, Stretch::length);
        if one.stop() < other.stop() {
            at_a += 1;
        } else {
            at_b += 1;
        }
    }
    both
}

/// All stretches slid along the tape.
fn moved(stretches: &[Stretch], way: Length) -> Vec<Stretch> {
    stretches.iter().filter_map(|s| Stretch::new(s.start() + way, s.stop() + way)).collect()
}

/// The stretches turned along the line as along a ring.
fn turned(stretches: &[Stretch], way: Length, line: Length) -> Vec<Stretch> {
    let parts = moved(stretches, way).into_iter().flat_map(|s| {
        let (start, stop) = (s.start().min(line), s.stop().min(line));
        let over = |at: Length| (at - line).max(Length::ZERO);
        [Stretch::new(start, stop), Stretch::new(over(s.start()), over(s.stop()))]
    });
    union(parts.flatten())
}

/// Patches that are each other's best partner by overlap.
fn matched(earlier: &[Stretch], later: &[Stretch]) -> Vec<(usize, usize)> {
    let best = |of: Stretch, among: &[Stretch]| {
        let shared = |other: Stretch| of.within(other).map_or(Length::ZERO, Stretch::length);
        let partners = among.iter().enumerate().filter(|(_, other)| of.overlaps(**other));
        partners.max_by_key(|(at, other)| (shared(**other), core::cmp::Reverse(*at))).map(|(at, _)| at)
    };
    earlier
        .iter()
        .enumerate()
        .filter_map(|(at, &patch)| {
            let partner = best(patch, later)?;
            (best(later[partner], earlier) == Some(at)).then_some((at, partner))
        })
        .collect()
}

/// The matched patches that were no shorter than the median one when they were first read.
fn larger_half(matches: &[(usize, usize)], earlier: &[Stretch]) -> Vec<(usize, usize)> {
    let mut lengths: Vec<Length> = matches.iter().map(|&(at, _)| earlier[at].length()).collect();
    lengths.sort_unstable();
    let Some(&least) = lengths.get(lengths.len() / 2) else { return Vec::new() };
    // few are used whole
    if matches.len() <= FEW {
        return matches.to_vec();
    }
    matches.iter().copied().filter(|&(at, _)| earlier[at].length() >= least).collect()
}

/// Middle of a patch in nanometres.
fn middle(patch: Stretch) -> f64 {
    #[expect(
        clippy::cast_precision_loss,
        reason = "lines stay far below 2^53 nanometres, nine thousand kilometres"
    )]
    let middle = (patch.start().nanometres() + patch.stop().nanometres()) as f64 / 2.0;
    middle
}

fn nanometres(length: f64) -> Length {
    #[expect(clippy::cast_possible_truncation, reason = "a difference of two places on a line")]
    let whole = length.round() as i64;
    Length::from_nanometres(whole)
}

/// Share of the earlier canopy that is still under canopy, once the shift is undone.
///
/// # Range
/// 0 to 1; `None` where the earlier reading has no canopy.
pub fn found_again(earlier: &[Stretch], later: &[Stretch], shift: Length) -> Option<f64> {
    let (earlier, later) = (union(earlier.iter().copied()), union(later.iter().copied()));
    let whole = total(&earlier);
    (whole > Length::ZERO).then(|| overlap(&moved(&earlier, shift), &later).share_of(whole))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::length::Unit;
    use crate::seed::Seed;
    use crate::stretch::tests::cm;

    fn at(n: i64) -> Length {
        Length::from_units(n, Unit::Centimetre)
    }

    /// Twelve shrubs strewn over 30 m.
    fn strewn(seed: u64) -> Vec<Stretch> {
        let mut random = Seed::from_purpose("test align", &[seed]).stream();
        let place = |below| i64::try_from(random.below(below)).unwrap();
        let mut place = place;
        let shrubs: Vec<Stretch> =
            (0..12).map(|_| place(2900)).map(|from| cm(from, from + 30 + from % 50)).collect();
        union(shrubs)
    }

    #[test]
    fn a_stretched_tape_is_told_from_a_shifted_one() {
        let earlier = strewn(1);
        let later: Vec<Stretch> = earlier
            .iter()
            .map(|s| {
                let longer = |l: Length| Length::from_nanometres(l.nanometres() + l.nanometres() / 100);
                Stretch::new(longer(s.start()) + at(5), longer(s.stop()) + at(5)).unwrap()
            })
            .collect();
        let found = align(&earlier, &later, at(3000), at(50));
        assert!((found.stretch - 0.01).abs() < 1e-6, "{}", found.stretch);
        // the middles of plants move by 5 cm and by 1 % of where they stand, 0 to 30 cm
        assert!(found.shift > at(5) && found.shift < at(35) && found.shift_shown, "{:?}", found.shift);
    }

    /// Lines that have nothing to do with each other must not pass for each other more often than they may.
    #[test]
    fn strange_lines_seldom_pass_for_each_other() {
        let passes = (0..200)
            .filter(|seed| {
                let found = align(&strewn(*seed), &strewn(1000 + seed), at(3000), at(50));
                matches!(found.pairing, Pairing::Holds { .. })
            })
            .count();
        // 5 % of 200 are 10; ten more are over three standard deviations
        assert!(passes <= 20, "{passes}");
    }

    #[test]
    fn the_same_line_is_known_though_plants_come_and_go() {
        let known = (0..50)
            .filter(|seed| {
                let earlier = strewn(*seed);
                let mut later: Vec<Stretch> = earlier.iter().copied().skip(2).collect();
                later.extend(strewn(2000 + seed).into_iter().take(2));
                let found = align(&earlier, &later, at(3000), at(50));
                matches!(found.pairing, Pairing::Holds { .. })
            })
            .count();
        assert!(known >= 47, "{known}");
    }

    #[test]
    fn too_little_canopy_tells_nothing() {
        let found = align(&[cm(10, 20)], &[cm(10, 20)], at(3000), at(50));
        assert_eq!(found.pairing, Pairing::CantTell);
        assert_eq!(align(&[], &[], at(3000), at(50)).shift, Length::ZERO);
        assert_eq!(found_again(&[cm(10, 20)], &[cm(15, 40)], Length::ZERO), Some(0.5));
    }
}
