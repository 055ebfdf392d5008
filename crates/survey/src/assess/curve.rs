//! A site's canopy cover as a curve against the gap rule.

use super::{Assessment, Claim, figure};
use crate::input::Input;
use crate::line::Recording;
use tautline_engine::curve::{Step, curve as line_curve};
use tautline_engine::estimate::Line;
use tautline_engine::length::{Length, Unit};

/// The site's cover from one gap limit up to the next step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CurveStep {
    /// From this gap limit on.
    pub limit: Length,
    /// Canopy cover as a share, estimated from the lines as the site's figure is.
    pub cover: f64,
}

/// Canopy cover under every gap limit from the one applied up to `widest`.
///
/// `None` where a line can't be re-ruled: lengths without positions, or a rule that stops at plants nobody marked.
pub fn curve(input: &Input, assessment: &Assessment, widest: Length) -> Option<Vec<CurveStep>> {
    let re_ruled = |line: &crate::line::LineResult| {
        line.recording != Recording::LengthsOnly
            && (line.rule.gap.two_plants == tautline_engine::rule::Bridging::Bridged
                || line.counted.iter().all(|intercept| intercept.plant.is_some()))
    };
    if assessment.lines.is_empty() || !assessment.lines.iter().all(re_ruled) {
        return None;
    }
    let curves: Vec<Vec<Step>> = assessment
        .lines
        .iter()
        .map(|line| line_curve(line.read, &line.counted, &line.rule, widest))
        .collect();
    let mut limits: Vec<Length> = curves.iter().flatten().map(|step| step.limit).collect();
    limits.sort_unstable();
    limits.dedup();
    let claim = if assessment.plot.is_some() { Claim::Plot } else { Claim::Site };
    let cover_at = |limit: Length| {
        let values: Vec<Line> = assessment
            .lines
            .iter()
            .zip(&curves)
            .map(|(line, steps)| {
                // the first step is the rule's own limit, so there is always one at or before
                let step = steps.iter().rev().find(|step| step.limit <= limit).unwrap_or(&steps[0]);
                Line::new(step.canopy.in_unit(Unit::Millimetre), line.read.in_unit(Unit::Millimetre))
            })
            .collect();
        figure::estimate(input, claim, &assessment.lines, &values).0.value
    };
    Some(limits.into_iter().map(|limit| CurveStep { limit, cover: cover_at(limit) }).collect())
}
