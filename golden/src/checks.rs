//! Tests of readings: digits that heap, several tests at once, values far from the others.

use tautline_engine::evenness::{evenness, holm};
use tautline_engine::outlying::{distances, far_from};

use crate::inputs::Inputs;
use crate::table::Table;

pub(crate) fn rows(table: &mut Table) {
    let mut inputs = Inputs::new(20);
    for number in 0..8 {
        let counts: Vec<u64> = (0..10).map(|_| u64::from(inputs.below(20))).collect();
        let Some(test) = evenness(&counts) else { continue };
        table.real(format_args!("evenness {number} statistic"), test.statistic);
        table.real(format_args!("evenness {number} p"), test.p);
    }
    let probabilities: Vec<f64> = (0..12).map(|_| inputs.between(0.0, 0.2)).collect();
    table.digest("holm", holm(&probabilities));
    for n in [5, 8, 12, 40, 150, 1000] {
        table.real(format_args!("far from {n}"), far_from(n).unwrap_or(f64::NAN));
        let values: Vec<f64> = (0..n).map(|_| inputs.between(0.0, 1.0)).collect();
        table.digest(format_args!("distances {n}"), distances(&values).into_iter().flatten());
    }
}
