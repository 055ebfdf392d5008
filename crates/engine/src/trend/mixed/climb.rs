//! The variances at which the restricted likelihood is greatest, to the last digits.
//!
//! Newton's way with the likelihood's own curvature; where that doesn't bend downwards, the expected one. Variances that the
//! likelihood would have below zero are held at zero.

use super::NoFit;
use super::curve::Curve;
use super::likelihood::At;
use super::sums::Sums;
use crate::num::square::{Square, dot};

const MOST_STEPS: usize = 200;
/// What is left falls at most to this share of itself in one step.
const SLOWEST: f64 = 0.1;
/// Below this share of the spread of values nothing is left to be explained.
const NOTHING_LEFT: f64 = 1e-12;

/// The coordinates in which lines' variances keep their range: the level's variance a, the slope's regression r on the level,
/// and the slope's variance c beyond it. The variances are a, a r, a r² + c.
#[derive(Clone)]
struct Place(Vec<f64>);

impl Place {
    fn theta(&self, slope: bool) -> Vec<f64> {
        let mut theta = self.0.clone();
        if slope {
            let (a, r, c) = (self.0[0], self.0[1], self.0[2]);
            (theta[1], theta[2]) = (a * r, a * r * r + c);
        }
        theta
    }

    /// Whether a coordinate may not fall below zero.
    fn has_floor(at: usize, slope: bool) -> bool {
        !(slope && at == 1)
    }
}

/// The slope in the coordinates, and a curvature.
fn turned(place: &Place, slope: bool, curve: &Curve, expected: bool) -> (Vec<f64>, Square) {
    let information = if expected { &curve.expected } else { &curve.observed };
    if !slope {
        return (curve.score.clone(), information.clone());
    }
    let parts = place.0.len();
    let (a, r) = (place.0[0], place.0[1]);
    let mut along = Square::zero(parts);
    for at in 0..parts {
        along.set(at, at, 1.0);
    }
    for (row, column, value) in [(1, 0, r), (2, 0, r * r), (1, 1, a), (2, 1, 2.0 * a * r)] {
        along.set(row, column, value);
    }
    let score: Vec<f64> =
        (0..parts).map(|c| (0..parts).map(|k| along.at(k, c) * curve.score[k]).sum()).collect();
    let half = information.times(&along);
    let mut turned = Square::zero(parts);
    for row in 0..parts {
        for column in 0..parts {
            let cell = (0..parts).map(|k| along.at(k, row) * half.at(k, column)).sum();
            turned.set(row, column, cell);
        }
    }
    if !expected {
        let mixed = curve.score[1] + 2.0 * r * curve.score[2];
        turned.add(0, 1, -mixed);
        turned.add(1, 0, -mixed);
        turned.add(1, 1, -2.0 * a * curve.score[2]);
    }
    (score, turned)
}

/// Rows and columns that are free, the others replaced by the unit.
fn of_free(whole: &Square, free: &[bool]) -> Square {
    let mut part = Square::zero(free.len());
    for row in 0..free.len() {
        for column in 0..free.len() {
            let both = free[row] && free[column];
            let other = if row == column { 1.0 } else { 0.0 };
            part.set(row, column, if both { whole.at(row, column) } else { other });
        }
    }
    part
}

/// Scaled to a diagonal of ones, so that pivots can be judged.
fn solve(information: &Square, score: &[f64]) -> Option<Vec<f64>> {
    let scale: Vec<f64> = (0..score.len()).map(|at| crate::num::math::sqrt(information.at(at, at))).collect();
    if scale.iter().any(|scale| scale.is_nan() || *scale <= 0.0) {
        return None;
    }
    let mut even = Square::zero(score.len());
    for row in 0..score.len() {
        for column in 0..score.len() {
            even.set(row, column, information.at(row, column) / (scale[row] * scale[column]));
        }
    }
    let right: Vec<f64> = score.iter().zip(&scale).map(|(score, scale)| score / scale).collect();
    let steps = even.factor()?.factor_solve(&right);
    Some(steps.iter().zip(&scale).map(|(step, scale)| step / scale).collect())
}

/// The summit, its curvature, and how many steps led there.
pub(super) fn climb(sums: &Sums) -> Result<(At, Curve), NoFit> {
    let slope = sums.slope;
    let mut place = start(sums)?;
    let mut at = At::new(sums, &place.theta(slope)).ok_or(NoFit::NotSeparable)?;
    let mut curve = at.curve(sums);
    // parts that the readings can't tell apart at all can't be told apart anywhere
    solve(&curve.expected, &curve.score).ok_or(NoFit::NotSeparable)?;
    let spread = sums.yy / sums.readings;
    for _ in 0..MOST_STEPS {
        let (score, _) = turned(&place, slope, &curve, true);
        let free: Vec<bool> = (0..score.len())
            .map(|own| {
                let on_floor = Place::has_floor(own, slope) && place.0[own] <= 0.0;
                let turns_nothing = slope && own == 1 && place.0[0] <= 0.0;
                !(turns_nothing || on_floor && score[own] <= 0.0)
            })
            .collect();
        let pull: Vec<f64> =
            score.iter().zip(&free).map(|(score, free)| if *free { *score } else { 0.0 }).collect();
        let way = [false, true].into_iter().find_map(|expected| {
            let (_, information) = turned(&place, slope, &curve, expected);
            solve(&of_free(&information, &free), &pull)
        });
        let way = way.ok_or(NoFit::NotSeparable)?;
        let gain = 0.5 * dot(&pull, &way);
        let Some((next, next_at)) = step(sums, &place, &at, &way) else {
            // no step, however short, goes higher: the summit as far as numbers tell
            return Ok((at, curve));
        };
        (place, at) = (next, next_at);
        curve = at.curve(sums);
        if at.theta[at.theta.len() - 1] < NOTHING_LEFT * spread {
            return Err(NoFit::NothingLeft);
        }
        // Newton's steps double the digits: after one so small the next changes nothing
        if gain < 1e-13 {
            return Ok((at, curve));
        }
    }
    Err(NoFit::NoSummit)
}

/// The longest of the whole step, half of it, a quarter … that doesn't lead downhill.
fn step(sums: &Sums, place: &Place, at: &At, way: &[f64]) -> Option<(Place, At)> {
    const HALVINGS: usize = 40;
    let rounding = 1e-13 * at.ln_likelihood.abs().max(1.0);
    let last = place.0.len() - 1;
    let mut share = 1.0;
    for _ in 0..HALVINGS {
        let mut next: Vec<f64> = place.0.iter().zip(way).map(|(own, way)| own + share * way).collect();
        for (own, value) in next.iter_mut().enumerate() {
            if Place::has_floor(own, sums.slope) {
                *value = value.max(0.0);
            }
        }
        next[last] = next[last].max(SLOWEST * place.0[last]);
        let next = Place(next);
        if let Some(found) = At::new(sums, &next.theta(sums.slope))
            && found.ln_likelihood >= at.ln_likelihood - rounding
        {
            return Some((next, found));
        }
        share *= 0.5;
    }
    None
}

/// Half of what a straight line through all readings leaves, shared out.
fn start(sums: &Sums) -> Result<Place, NoFit> {
    let level = sums.width - 2;
    let cell = |row: usize, column: usize| sums.cc.at(level + row, level + column);
    let determinant = cell(0, 0) * cell(1, 1) - cell(0, 1) * cell(1, 0);
    if determinant <= 1e-12 * cell(0, 0) * cell(1, 1) || sums.readings < 3.0 {
        return Err(NoFit::OneYear);
    }
    let (a, b) = (sums.cy[level], sums.cy[level + 1]);
    let slope = (cell(0, 0) * b - cell(0, 1) * a) / determinant;
    let middle = (cell(1, 1) * a - cell(0, 1) * b) / determinant;
    let left = (sums.yy - middle * a - slope * b) / (sums.readings - 2.0);
    if left.is_nan() || left <= NOTHING_LEFT * (sums.yy / sums.readings).max(f64::MIN_POSITIVE) {
        return Err(NoFit::NothingLeft);
    }
    let mut place = vec![0.5 * left];
    if sums.slope {
        let times = cell(1, 1) / sums.readings;
        place.extend([0.0, 0.1 * left / times]);
    }
    place.extend(sums.outer.iter().map(|_| 0.1 * left));
    place.push(0.4 * left);
    Ok(Place(place))
}
