//! Small square matrices of numbers: what models of several sources need, in a fixed order of additions.

use crate::num::math::{ln, sqrt};

/// A square matrix, row by row.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Square {
    n: usize,
    cells: Vec<f64>,
}

impl Square {
    pub(crate) fn zero(n: usize) -> Self {
        Self { n, cells: vec![0.0; n * n] }
    }

    pub(crate) fn at(&self, row: usize, column: usize) -> f64 {
        self.cells[row * self.n + column]
    }

    pub(crate) fn add(&mut self, row: usize, column: usize, value: f64) {
        self.cells[row * self.n + column] += value;
    }

    pub(crate) fn set(&mut self, row: usize, column: usize, value: f64) {
        self.cells[row * self.n + column] = value;
    }

    pub(crate) fn row(&self, row: usize) -> &[f64] {
        &self.cells[row * self.n..(row + 1) * self.n]
    }

    pub(crate) fn map(&self, of: impl Fn(f64) -> f64) -> Self {
        Self { n: self.n, cells: self.cells.iter().map(|&cell| of(cell)).collect() }
    }

    pub(crate) fn times(&self, other: &Self) -> Self {
        let mut product = Self::zero(self.n);
        for row in 0..self.n {
            for middle in 0..self.n {
                let factor = self.at(row, middle);
                if factor != 0.0 {
                    let cells = &mut product.cells[row * self.n..(row + 1) * self.n];
                    for (cell, other) in cells.iter_mut().zip(other.row(middle)) {
                        *cell += factor * other;
                    }
                }
            }
        }
        product
    }

    pub(crate) fn apply(&self, vector: &[f64]) -> Vec<f64> {
        (0..self.n).map(|row| dot(self.row(row), vector)).collect()
    }

    /// tr(A B) of two matrices.
    pub(crate) fn trace_with(&self, other: &Self) -> f64 {
        (0..self.n)
            .flat_map(|row| (0..self.n).map(move |column| self.at(row, column) * other.at(column, row)))
            .sum()
    }

    /// The lower factor of a positive definite matrix; nothing where a pivot falls to a trifle of its own diagonal.
    pub(crate) fn factor(&self) -> Option<Self> {
        const TRIFLE: f64 = 1e-12;
        let n = self.n;
        let mut lower = Self::zero(n);
        for row in 0..n {
            lower.cells[row * n..=row * n + row].copy_from_slice(&self.row(row)[..=row]);
        }
        // what each column explains is taken off the rows below it at once: along rows, which is what memory likes
        for column in 0..n {
            let left = lower.at(column, column);
            if left.is_nan() || left <= TRIFLE * self.at(column, column).abs() {
                return None;
            }
            let pivot = sqrt(left);
            lower.set(column, column, pivot);
            let below: Vec<f64> = (column + 1..n).map(|row| lower.at(row, column) / pivot).collect();
            for (place, &factor) in below.iter().enumerate() {
                let at = (column + 1 + place) * n + column;
                lower.cells[at] = factor;
                add_scaled(&mut lower.cells[at + 1..=at + 1 + place], -factor, &below);
            }
        }
        Some(lower)
    }

    /// Logarithm of the determinant of the matrix whose lower factor this is.
    pub(crate) fn factor_ln_det(&self) -> f64 {
        2.0 * (0..self.n).map(|at| ln(self.at(at, at))).sum::<f64>()
    }

    /// x with L Lᵀ x = b.
    pub(crate) fn factor_solve(&self, right: &[f64]) -> Vec<f64> {
        let mut x = right.to_vec();
        for row in 0..self.n {
            x[row] = (x[row] - dot(&self.row(row)[..row], &x[..row])) / self.at(row, row);
        }
        for row in (0..self.n).rev() {
            let taken: f64 = (row + 1..self.n).map(|below| self.at(below, row) * x[below]).sum();
            x[row] = (x[row] - taken) / self.at(row, row);
        }
        x
    }

    /// The inverse of the matrix whose lower factor this is: W′W with W = L⁻¹, both filled in along rows, which is what memory likes.
    pub(crate) fn factor_inverse(&self) -> Self {
        let n = self.n;
        let mut w = Self::zero(n);
        for row in 0..n {
            let (above, own) = w.cells.split_at_mut(row * n);
            let own = &mut own[..=row];
            own[row] = 1.0;
            for (middle, &factor) in self.row(row)[..row].iter().enumerate() {
                add_scaled(&mut own[..=middle], -factor, &above[middle * n..=middle * n + middle]);
            }
            let pivot = self.at(row, row);
            for cell in own {
                *cell /= pivot;
            }
        }
        let mut inverse = Self::zero(n);
        for middle in 0..n {
            let from = &w.row(middle)[..=middle];
            for (row, &factor) in from.iter().enumerate() {
                add_scaled(&mut inverse.cells[row * n..=row * n + row], factor, from);
            }
        }
        for row in 0..n {
            for column in row + 1..n {
                inverse.set(row, column, inverse.at(column, row));
            }
        }
        inverse
    }
}

/// Adds a multiple of a row, as far as both reach.
fn add_scaled(to: &mut [f64], factor: f64, from: &[f64]) {
    for (cell, value) in to.iter_mut().zip(from) {
        *cell += factor * value;
    }
}

pub(crate) fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 4·3 − 2·2 = 8, and the inverse is (3, −2; −2, 4) / 8.
    #[test]
    fn two_by_two_by_hand() {
        let mut matrix = Square::zero(2);
        for (row, column, value) in [(0, 0, 4.0), (0, 1, 2.0), (1, 0, 2.0), (1, 1, 3.0)] {
            matrix.set(row, column, value);
        }
        let factor = matrix.factor().unwrap();
        assert!((factor.factor_ln_det() - ln(8.0)).abs() < 1e-15);
        let inverse = factor.factor_inverse();
        for (row, column, value) in [(0, 0, 0.375), (0, 1, -0.25), (1, 0, -0.25), (1, 1, 0.5)] {
            assert!((inverse.at(row, column) - value).abs() < 1e-15);
        }
        assert!((matrix.trace_with(&inverse) - 2.0).abs() < 1e-15);
    }

    #[test]
    fn a_matrix_that_is_not_positive_has_no_factor() {
        let mut matrix = Square::zero(2);
        for at in [(0, 0), (0, 1), (1, 0), (1, 1)] {
            matrix.set(at.0, at.1, 1.0);
        }
        assert_eq!(matrix.factor(), None);
    }
}
