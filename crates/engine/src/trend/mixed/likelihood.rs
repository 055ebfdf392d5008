//! The restricted likelihood at one set of variances.
//!
//! V = Σ θₖ Vₖ is linear in the variances. With V₀ the part of lines and of what is left, block by block, and C the columns of
//! years and of the fixed part, P = V₀⁻¹ − V₀⁻¹ C M Cᵀ V₀⁻¹; so nothing larger than the columns is ever solved.

use super::sums::{FIXED, LineSums, Sums, Two};
use crate::num::math::{ln, sqrt};
use crate::num::square::{Square, dot};
use std::f64::consts::PI;

/// One line at these variances.
#[derive(Clone, Debug)]
pub(super) struct LineAt {
    /// Zᵀ V₀⁻¹ Z
    pub(super) inner: Two,
    /// Zᵀ V₀⁻¹ C, for the line's own columns
    pub(super) columns: Vec<(usize, [f64; 2])>,
    /// Zᵀ V₀⁻¹ y
    pub(super) value: [f64; 2],
}

/// The likelihood and all that its slope and curvature are made of.
#[derive(Clone, Debug)]
pub(super) struct At {
    pub(super) theta: Vec<f64>,
    pub(super) ln_likelihood: f64,
    pub(super) lines: Vec<LineAt>,
    /// Cᵀ V₀⁻¹ C
    pub(super) outer: Square,
    /// M: its fixed corner is the covariance of level and slope
    pub(super) middle: Square,
    /// M Cᵀ V₀⁻¹ y: predicted years, then level and slope
    pub(super) effects: Vec<f64>,
    /// I − Cᵀ V₀⁻¹ C M
    pub(super) left: Square,
    /// Cᵀ P C
    pub(super) projected: Square,
    pub(super) right: Vec<f64>,
    pub(super) quadratic: f64,
}

/// A vector of readings, by what its part in each Vₖ needs: Zᵀv of each line, and Fᵀv.
pub(super) struct Probe {
    pub(super) lines: Vec<[f64; 2]>,
    pub(super) outer: Vec<f64>,
}

impl Probe {
    /// vᵀ Vₖ v of each variance but what is left.
    pub(super) fn squares(&self, sums: &Sums) -> Vec<f64> {
        let of_lines = (0..sums.line_parts())
            .map(|pattern| self.lines.iter().map(|v| sandwich(*v, PATTERNS[pattern], *v)).sum());
        let of_outer =
            sums.outer.iter().map(|range| dot(&self.outer[range.clone()], &self.outer[range.clone()]));
        of_lines.chain(of_outer).collect()
    }
}

fn sandwich(a: [f64; 2], of: Two, b: [f64; 2]) -> f64 {
    a[0] * (of[0][0] * b[0] + of[0][1] * b[1]) + a[1] * (of[1][0] * b[0] + of[1][1] * b[1])
}

pub(super) fn product(a: Two, b: Two) -> Two {
    let cell = |row: usize, column: usize| a[row][0] * b[0][column] + a[row][1] * b[1][column];
    [[cell(0, 0), cell(0, 1)], [cell(1, 0), cell(1, 1)]]
}

/// E₁, E₂, E₃: what the level's variance, the covariance and the slope's variance are multiplied with.
pub(super) const PATTERNS: [Two; 3] =
    [[[1.0, 0.0], [0.0, 0.0]], [[0.0, 1.0], [1.0, 0.0]], [[0.0, 0.0], [0.0, 1.0]]];

fn pattern_times(pattern: usize, v: [f64; 2]) -> [f64; 2] {
    match pattern {
        0 => [v[0], 0.0],
        1 => [v[1], v[0]],
        _ => [0.0, v[1]],
    }
}

impl LineAt {
    /// The line, and the logarithm of the determinant of its block.
    fn new(line: &LineSums, spread: Two, left: f64) -> (Self, Two, f64) {
        let taken = product(line.zz, spread);
        let k = [[left + taken[0][0], taken[0][1]], [taken[1][0], left + taken[1][1]]];
        let determinant = k[0][0] * k[1][1] - k[0][1] * k[1][0];
        let k_inverse = [
            [k[1][1] / determinant, -k[0][1] / determinant],
            [-k[1][0] / determinant, k[0][0] / determinant],
        ];
        // N = D (σ² I + ZᵀZ D)⁻¹, sound where D has no inverse
        let n = product(spread, k_inverse);
        let nz = product(n, line.zz);
        let h = [[(1.0 - nz[0][0]) / left, -nz[0][1] / left], [-nz[1][0] / left, (1.0 - nz[1][1]) / left]];
        let through = |v: [f64; 2]| [v[0] * h[0][0] + v[1] * h[1][0], v[0] * h[0][1] + v[1] * h[1][1]];
        let at = Self {
            inner: product(line.zz, h),
            columns: line.columns.iter().map(|(column, v)| (*column, through(*v))).collect(),
            value: through(line.zy),
        };
        (at, n, (line.readings - 2.0) * ln(left) + ln(determinant))
    }

    fn zip_outer(&self, of: &[f64]) -> [f64; 2] {
        let mut sum = [0.0; 2];
        for (column, v) in &self.columns {
            sum[0] += v[0] * of[*column];
            sum[1] += v[1] * of[*column];
        }
        sum
    }

    /// Bᵀ M B
    pub(super) fn through(&self, middle: &Square) -> Two {
        let mut sum = [[0.0; 2]; 2];
        for (column, a) in &self.columns {
            let row = middle.row(*column);
            let mut to = [0.0; 2];
            for (other, b) in &self.columns {
                to[0] += row[*other] * b[0];
                to[1] += row[*other] * b[1];
            }
            for (cells, a) in sum.iter_mut().zip(a) {
                cells[0] += a * to[0];
                cells[1] += a * to[1];
            }
        }
        sum
    }
}

impl At {
    /// Nothing where the columns can't be told apart or a variance left its range.
    pub(super) fn new(sums: &Sums, theta: &[f64]) -> Option<Self> {
        let (of_lines, rest) = theta.split_at(sums.line_parts());
        let spread = match *of_lines {
            [level, both, slope] => [[level, both], [both, slope]],
            _ => [[of_lines[0], 0.0], [0.0, 0.0]],
        };
        let (of_outer, left) = (&rest[..sums.outer.len()], rest[sums.outer.len()]);
        let mut outer = sums.cc.map(|cell| cell / left);
        let mut right: Vec<f64> = sums.cy.iter().map(|cell| cell / left).collect();
        let mut yy = sums.yy / left;
        let mut ln_determinant = 0.0;
        let mut lines = Vec::with_capacity(sums.lines.len());
        for line in &sums.lines {
            let (at, n, own) = LineAt::new(line, spread, left);
            for (column, a) in &line.columns {
                let to = [(a[0] * n[0][0] + a[1] * n[1][0]) / left, (a[0] * n[0][1] + a[1] * n[1][1]) / left];
                for (other, b) in &line.columns {
                    outer.add(*column, *other, -(to[0] * b[0] + to[1] * b[1]));
                }
                right[*column] -= to[0] * line.zy[0] + to[1] * line.zy[1];
            }
            yy -= sandwich(line.zy, n, line.zy) / left;
            ln_determinant += own;
            lines.push(at);
        }
        let mut scale = vec![1.0; sums.width];
        for (range, variance) in sums.outer.iter().zip(of_outer) {
            scale[range.clone()].fill(sqrt(*variance));
        }
        let mut scaled = Square::zero(sums.width);
        for row in 0..sums.width {
            for column in 0..sums.width {
                scaled.set(row, column, scale[row] * outer.at(row, column) * scale[column]);
            }
        }
        for row in 0..sums.width - FIXED {
            scaled.add(row, row, 1.0);
        }
        let factor = scaled.factor()?;
        ln_determinant += factor.factor_ln_det();
        let mut middle = factor.factor_inverse();
        for row in 0..sums.width {
            for column in 0..sums.width {
                let cell = scale[row] * middle.at(row, column) * scale[column];
                middle.set(row, column, cell);
            }
        }
        let effects = middle.apply(&right);
        let quadratic = yy - dot(&right, &effects);
        let degrees = sums.readings - 2.0;
        let ln_likelihood = -0.5 * (degrees * ln(2.0 * PI) + ln_determinant + quadratic);
        if !ln_likelihood.is_finite() {
            return None;
        }
        let mut left = outer.times(&middle).map(|cell| -cell);
        for row in 0..sums.width {
            left.add(row, row, 1.0);
        }
        let projected = left.times(&outer);
        Some(Self {
            theta: theta.to_vec(),
            ln_likelihood,
            lines,
            outer,
            middle,
            effects,
            left,
            projected,
            right,
            quadratic,
        })
    }

    /// The readings less what is known of them: P y.
    pub(super) fn residual(&self) -> Probe {
        let lines = self.lines.iter().map(|line| {
            let taken = line.zip_outer(&self.effects);
            [line.value[0] - taken[0], line.value[1] - taken[1]]
        });
        let taken = self.outer.apply(&self.effects);
        Probe {
            lines: lines.collect(),
            outer: self.right.iter().zip(taken).map(|(right, taken)| right - taken).collect(),
        }
    }

    /// V⁻¹ X Φ l, the weights of a combination of level and slope.
    pub(super) fn weights(&self, l: [f64; 2]) -> Probe {
        let level = self.effects.len() - FIXED;
        let to: Vec<f64> = (0..self.effects.len())
            .map(|row| self.middle.at(row, level) * l[0] + self.middle.at(row, level + 1) * l[1])
            .collect();
        Probe {
            lines: self.lines.iter().map(|line| line.zip_outer(&to)).collect(),
            outer: self.outer.apply(&to),
        }
    }

    /// vᵀ Vₖ P Vₗ v of each two variances but what is left.
    pub(super) fn crossed(&self, sums: &Sums, probe: &Probe) -> Square {
        let of_lines = sums.line_parts();
        let parts = of_lines + sums.outer.len();
        let mut crossed = Square::zero(parts);
        let mut gathered = vec![vec![0.0; sums.width]; of_lines];
        for (line, v) in self.lines.iter().zip(&probe.lines) {
            for (k, gathered) in gathered.iter_mut().enumerate() {
                let a = pattern_times(k, *v);
                for (column, b) in &line.columns {
                    gathered[*column] += b[0] * a[0] + b[1] * a[1];
                }
                for l in 0..of_lines {
                    crossed.add(k, l, sandwich(a, line.inner, pattern_times(l, *v)));
                }
            }
        }
        let masked: Vec<Vec<f64>> = sums
            .outer
            .iter()
            .map(|range| {
                let mut masked = vec![0.0; sums.width];
                masked[range.clone()].copy_from_slice(&probe.outer[range.clone()]);
                masked
            })
            .collect();
        for (k, own) in gathered.iter().enumerate() {
            let (through, to_outer) = (self.middle.apply(own), self.left.apply(own));
            for (l, other) in gathered.iter().enumerate() {
                crossed.add(k, l, -dot(&through, other));
            }
            for (l, other) in masked.iter().enumerate() {
                let cell = dot(&to_outer, other);
                crossed.set(k, of_lines + l, cell);
                crossed.set(of_lines + l, k, cell);
            }
        }
        for (k, own) in masked.iter().enumerate() {
            let through = self.projected.apply(own);
            for (l, other) in masked.iter().enumerate() {
                crossed.set(of_lines + k, of_lines + l, dot(&through, other));
            }
        }
        crossed
    }
}
