//! Every legal range once: for the check, the message and the test generators.

/// Confidence of intervals and verdicts, in per mille: from 50 % to 99.9 %.
pub const CONFIDENCE_PER_MILLE: core::ops::RangeInclusive<u16> = 500..=999;

/// The confidence used where none is given: 90 %.
pub const DEFAULT_CONFIDENCE_PER_MILLE: u16 = 900;

/// The chance with which more lines should settle a verdict, in per mille: 80 %.
pub const CHANCE_TO_SETTLE_PER_MILLE: u16 = 800;

/// More lines in all than this are not called practical.
pub const MOST_PRACTICAL_LINES: usize = 200;

/// Area of a stratum in whole square millimetres; the largest whole number that every JSON reader keeps.
pub const LARGEST_AREA: u64 = 9_007_199_254_740_991;

/// Resamples of a bootstrap interval.
pub const RESAMPLES: usize = 10_000;
