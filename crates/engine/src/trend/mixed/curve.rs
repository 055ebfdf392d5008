//! Slope and curvature of the restricted likelihood.

use super::likelihood::{At, PATTERNS, product};
use super::sums::{Sums, Two};
use crate::num::square::{Square, dot};

/// Slope of the log likelihood in each variance, and its curvature as expected and as observed.
pub(super) struct Curve {
    pub(super) score: Vec<f64>,
    pub(super) expected: Square,
    pub(super) observed: Square,
}

fn trace_of(pattern: usize, of: Two) -> f64 {
    match pattern {
        0 => of[0][0],
        1 => of[0][1] + of[1][0],
        _ => of[1][1],
    }
}

impl At {
    /// tr(P Vₖ) and tr(P Vₖ P Vₗ) of each variance but what is left.
    fn traces(&self, sums: &Sums) -> (Vec<f64>, Square) {
        let of_lines = sums.line_parts();
        let parts = of_lines + sums.outer.len();
        let mut single = vec![0.0; parts];
        let mut double = Square::zero(parts);
        let mut gathered = vec![Square::zero(sums.width); of_lines];
        for line in &self.lines {
            let through = line.through(&self.middle);
            // A less twice BᵀMB stands for both mixed terms
            let net =
                [0, 1].map(|row| [0, 1].map(|column| line.inner[row][column] - 2.0 * through[row][column]));
            for k in 0..of_lines {
                single[k] += trace_of(k, line.inner) - trace_of(k, through);
                let first = product(PATTERNS[k], line.inner);
                for (l, pattern) in PATTERNS.iter().enumerate().take(k + 1) {
                    let both = product(first, product(*pattern, net));
                    double.add(k, l, both[0][0] + both[1][1]);
                }
            }
            for (column, a) in &line.columns {
                for (other, b) in &line.columns {
                    gathered[0].add(*column, *other, a[0] * b[0]);
                    if of_lines > 1 {
                        gathered[1].add(*column, *other, a[0] * b[1] + a[1] * b[0]);
                        gathered[2].add(*column, *other, a[1] * b[1]);
                    }
                }
            }
        }
        let through: Vec<Square> = gathered.iter().map(|own| self.middle.times(own)).collect();
        for k in 0..of_lines {
            for l in 0..=k {
                double.add(k, l, through[k].trace_with(&through[l]));
            }
        }
        for (l, range) in sums.outer.iter().enumerate() {
            let l = of_lines + l;
            single[l] = range.clone().map(|at| self.projected.at(at, at)).sum();
            for (k, own) in gathered.iter().enumerate() {
                let to = self.left.times(own);
                let cell = range.clone().map(|at| dot(to.row(at), self.left.row(at))).sum();
                double.set(l, k, cell);
            }
            for (k, other) in sums.outer.iter().enumerate().take(l + 1 - of_lines) {
                let cells = range.clone().flat_map(|row| other.clone().map(move |column| (row, column)));
                double.set(
                    l,
                    of_lines + k,
                    cells.map(|(r, c)| self.projected.at(r, c) * self.projected.at(c, r)).sum(),
                );
            }
        }
        for k in 0..parts {
            for l in k + 1..parts {
                let cell = double.at(l, k);
                double.set(k, l, cell);
            }
        }
        (single, double)
    }

    /// Slope and curvature. What belongs to what is left follows from P V P = P.
    pub(super) fn curve(&self, sums: &Sums) -> Curve {
        let (traces, double) = self.traces(sums);
        let probe = self.residual();
        let squares = probe.squares(sums);
        let crossed = self.crossed(sums, &probe);
        let trace = with_rest(&traces, &self.theta, sums.readings - 2.0);
        let square = with_rest(&squares, &self.theta, self.quadratic);
        let score = trace.iter().zip(&square).map(|(trace, square)| 0.5 * (square - trace)).collect();
        let double = with_rests(&double, &self.theta, &trace);
        let crossed = with_rests(&crossed, &self.theta, &square);
        let parts = trace.len();
        let mut observed = Square::zero(parts);
        for k in 0..parts {
            for l in 0..parts {
                observed.set(k, l, crossed.at(k, l) - 0.5 * double.at(k, l));
            }
        }
        Curve { score, expected: double.map(|cell| 0.5 * cell), observed }
    }
}

/// Adds the figure of what is left to those of the other variances, so that all, weighted by their variances, give the whole.
pub(super) fn with_rest(of: &[f64], theta: &[f64], whole: f64) -> Vec<f64> {
    let mut all = of.to_vec();
    all.push((whole - dot(of, theta)) / theta[of.len()]);
    all
}

/// The same for a matrix whose rows, weighted by the variances, give `whole`.
pub(super) fn with_rests(of: &Square, theta: &[f64], whole: &[f64]) -> Square {
    let parts = theta.len();
    let mut all = Square::zero(parts);
    for (k, whole) in whole.iter().enumerate().take(parts - 1) {
        for l in 0..parts - 1 {
            all.set(k, l, of.at(k, l));
        }
        let rest = (whole - dot(of.row(k), theta)) / theta[parts - 1];
        all.set(k, parts - 1, rest);
        all.set(parts - 1, k, rest);
    }
    let last: f64 = (0..parts - 1).map(|l| all.at(parts - 1, l) * theta[l]).sum();
    all.set(parts - 1, parts - 1, (whole[parts - 1] - last) / theta[parts - 1]);
    all
}
