//! Lines at right angles to a baseline that is walked, on a site.

use crate::position::Position;
use crate::site::Site;
use tautline_engine::place::baseline::{Baseline, Sides, Starts};
use tautline_engine::place::layout::{Ask, Placed};
use tautline_engine::seed::Seed;

/// A baseline on the ground.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Walked {
    /// Where it starts.
    pub from: Position,
    /// Which way it runs, in whole degrees from true north.
    pub bearing: u16,
    /// Its length in millimetres.
    pub length: i64,
    /// Where along it lines start.
    pub starts: Starts,
    /// To which sides they run.
    pub sides: Sides,
}

/// Why no lines could be drawn from a baseline.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BaselineError {
    /// It is too short for so many lines so far apart.
    TooShort,
    /// In none of many drawings all lines lay inside of the site and away from what is kept out of.
    NoRoom,
}

/// Lines in the order in which they are met, each with the number of its stratum, and how many drawings were given up whole.
///
/// A drawing with a line that doesn't fit is given up whole: to mend single lines would favour one stretch of the baseline.
pub(crate) fn placed(
    site: &Site,
    walked: Walked,
    ask: &Ask,
    seed: u64,
) -> Result<(Vec<(usize, Placed)>, usize), BaselineError> {
    let baseline = Baseline {
        from: site.local.onto(walked.from),
        bearing: walked.bearing,
        length: walked.length,
        lines: u16::try_from(ask.wanted).map_err(|_| BaselineError::TooShort)?,
        line_length: ask.length,
        apart: ask.apart,
        starts: walked.starts,
        sides: walked.sides,
    };
    for drawing in 0..DRAWINGS {
        let seed = Seed::from_purpose("plan baseline", &[seed, drawing as u64]);
        let drawn = baseline.lines(seed).ok_or(BaselineError::TooShort)?;
        let fit: Option<Vec<(usize, Placed)>> = (1..)
            .zip(drawn)
            .map(|(draw, (_, line, bearing))| {
                let (at, _) =
                    site.strata.iter().enumerate().find(|(_, (_, region))| region.contains_all_of(line))?;
                let barred = site.keep_out.iter().any(|place| place.bars(line))
                    || site.there.iter().any(|there| there.segment.nearer(line, ask.apart.max(1)));
                let placed = Placed { point: line.from, draw, lines: vec![(line, bearing)], turned: false };
                (!barred).then_some((at, placed))
            })
            .collect();
        if let Some(lines) = fit {
            return Ok((lines, drawing));
        }
    }
    Err(BaselineError::NoRoom)
}

/// So many drawings are tried.
const DRAWINGS: usize = 1000;
