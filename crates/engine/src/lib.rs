//! Pure computation for line-intercept work: exact lengths, cover of a line, estimates with their error,
//! verdicts. No files, clocks, network, locale or unseeded randomness; the same bits on every target.
//!
//! | step of the job | module | answers |
//! | --- | --- | --- |
//! | read | [`length`] | how long is what was written, exactly |
//! | read | [`stretch`] | half-open stretches of a tape: union, overlap, closing of gaps |
//! | read | [`rule`] | the reading rule as the arithmetic needs it |
//! | work out | [`cover`] | cover of one line: canopy, sum of species, dead, closed gaps |
//! | work out | [`curve`] | cover of one line under every coarser gap rule |
//! | work out | [`gaps`] | canopy gaps of a line and their classes |
//! | work out | [`density`] | plants per area from intercepted widths |
//! | work out | [`work`] | the arithmetic as done on paper |
//! | check | [`evenness`] | do last digits heap beyond chance |
//! | check | [`outlying`] | does a line lie far from the others |
//! | estimate | [`estimate`] | from lines to a site: mean, ratio, strata, two stages |
//! | estimate | [`confidence`] | intervals and one-sided bounds |
//! | judge | [`verdict`] | met, not met, not yet shown |
//! | follow | [`change`] | change between two visits: paired or not, where on the tape, what could hide |
//! | follow | [`trend`] | trend over many visits |
//! | agree | [`agreement`] | readers of the same lines: how far apart, and by which habit |
//! | plan | [`effort`] | how many lines, how long, with what chance |
//! | plan | [`place`] | where they go |
//! | practise | [`practice`] | lines with a key, sheets set beside it, the mistakes that explain them |
//! | practise | [`simulate`] | invented stands with a known cover; [`seed`] |
//! | everywhere | [`num`] | the one door to mathematics, quantiles, sums, rounding for people |
#![forbid(unsafe_code)]

pub mod agreement;
pub mod change;
pub mod confidence;
pub mod cover;
pub mod curve;
pub mod density;
pub mod effort;
pub mod estimate;
pub mod evenness;
pub mod gaps;
pub mod length;
pub mod num;
pub mod outlying;
pub mod place;
pub mod practice;
pub mod rule;
pub mod seed;
pub mod simulate;
pub mod slope;
pub mod stretch;
pub mod trend;
pub mod verdict;
pub mod work;

/// The version of this engine: figures of another one may differ in a printed digit, and the changelog says which.
pub const VERSION: &str = env!("CARGO_PKG_VERSION");
