//! A baseline with lines at right angles from positions along it.

use super::plane::{Point, Segment};
use crate::seed::Seed;

/// A baseline to be walked, and the lines wanted from it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Baseline {
    /// Where it starts.
    pub from: Point,
    /// Which way it runs, in whole degrees from north.
    pub bearing: u16,
    /// Its length in millimetres.
    pub length: i64,
    /// Lines wanted.
    pub lines: u16,
    /// Length of each line in millimetres.
    pub line_length: i64,
    /// How far apart starts stay, in millimetres.
    pub apart: i64,
    /// Where along it lines start.
    pub starts: Starts,
    /// To which sides they run.
    pub sides: Sides,
}

/// Where along a baseline lines start.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Starts {
    /// Anywhere, in whole millimetres.
    Random,
    /// Evenly, with one random start.
    Systematic,
}

/// To which sides of a baseline lines run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sides {
    /// To either, by chance.
    Either,
    /// All to the left as one walks it.
    Left,
    /// All to the right.
    Right,
}

/// A line of a baseline: how far along it starts, the line, its bearing.
pub type FromBaseline = (i64, Segment, u16);

impl Baseline {
    /// Draws the lines, in the order in which they are met.
    ///
    /// Random starts with a least distance d: n numbers anywhere on L − (n − 1) d in order, the i-th moved on by i d,
    /// so that every such arrangement is as likely as any other.
    ///
    /// # Range
    /// `None` where the baseline is too short for so many lines so far apart
    pub fn lines(&self, seed: Seed) -> Option<Vec<FromBaseline>> {
        let mut random = seed.stream();
        let lines = i64::from(self.lines);
        let apart = self.apart.max(0);
        let free = self.length - (lines - 1).max(0) * apart;
        if free < 0 || self.length < 0 {
            return None;
        }
        let mut below = |limit: i64| i64::try_from(random.below(limit.max(1).unsigned_abs())).unwrap_or(0);
        let starts: Vec<i64> = match self.starts {
            Starts::Random => {
                let mut drawn: Vec<i64> = (0..lines).map(|_| below(free + 1)).collect();
                drawn.sort_unstable();
                drawn.iter().zip(0..).map(|(start, before)| start + before * apart).collect()
            }
            Starts::Systematic => {
                let step = self.length / lines.max(1);
                if step < apart {
                    return None;
                }
                let first = below(step);
                (0..lines).map(|before| first + before * step).collect()
            }
        };
        let placed = starts.into_iter().map(|along| {
            let right = match self.sides {
                Sides::Either => below(2) == 0,
                Sides::Left => false,
                Sides::Right => true,
            };
            let bearing = (self.bearing + if right { 90 } else { 270 }) % 360;
            let from = self.from.on(self.bearing, along);
            (along, Segment { from, to: from.on(bearing, self.line_length) }, bearing)
        });
        Some(placed.collect())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const WALK: Baseline = Baseline {
        from: Point { x: 0, y: 0 },
        bearing: 90,
        length: 100_000,
        lines: 8,
        line_length: 30_000,
        apart: 10_000,
        starts: Starts::Random,
        sides: Sides::Either,
    };

    #[test]
    fn starts_stay_apart_and_lines_at_right_angles() {
        let mut sides = [0, 0];
        for seed in 0..200 {
            for starts in [Starts::Random, Starts::Systematic] {
                let baseline = Baseline { starts, ..WALK };
                let lines = baseline.lines(Seed::from_purpose("test baseline", &[seed])).unwrap();
                assert_eq!(lines.len(), 8);
                assert!(lines.windows(2).all(|pair| pair[1].0 - pair[0].0 >= 10_000));
                for (along, line, bearing) in lines {
                    assert!((0..=100_000).contains(&along));
                    assert_eq!(line.from, Point { x: along, y: 0 });
                    assert_eq!(line.to, Point { x: along, y: if bearing == 0 { 30_000 } else { -30_000 } });
                    sides[usize::from(bearing != 0)] += 1;
                }
            }
        }
        assert!(sides.iter().all(|&side| side > 1400), "3200 lines, half to each side: {sides:?}");
    }

    #[test]
    fn too_short_is_refused() {
        let lines = |baseline: Baseline| baseline.lines(Seed::from_purpose("test baseline", &[]));
        assert_eq!(lines(Baseline { apart: 15_000, ..WALK }), None);
        assert_eq!(lines(Baseline { apart: 13_000, starts: Starts::Systematic, ..WALK }), None);
        assert!(lines(Baseline { apart: 14_000, ..WALK }).is_some());
    }
}
