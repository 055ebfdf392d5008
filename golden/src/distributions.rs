//! The distributions behind every interval: a few values of each function to read, and a digest of many.

use tautline_engine::num::noncentral::{chance_between, noncentral_t_cdf};
use tautline_engine::num::quantile::{
    beta_cdf, beta_quantile, chi_square_cdf, chi_square_quantile, normal_cdf, normal_quantile, t_cdf,
    t_quantile,
};

use crate::inputs::Inputs;
use crate::table::Table;

const SHOWN: usize = 8;
const DIGESTED: usize = 1_500;

/// A function, with the making of its inputs in front of it.
type Drawn = fn(&mut Inputs) -> f64;

const FUNCTIONS: &[(&str, Drawn)] = &[
    ("normal_cdf", |inputs| normal_cdf(inputs.between(-9.0, 9.0))),
    ("normal_quantile", |inputs| normal_quantile(inputs.between(0.0, 1.0))),
    ("t_cdf", |inputs| t_cdf(inputs.between(-12.0, 12.0), inputs.between(1.0, 60.0))),
    ("t_quantile", |inputs| t_quantile(inputs.between(0.0, 1.0), inputs.between(1.0, 60.0))),
    ("chi_square_cdf", |inputs| chi_square_cdf(inputs.between(0.0, 90.0), inputs.between(0.5, 60.0))),
    ("chi_square_quantile", |inputs| {
        chi_square_quantile(inputs.between(0.0, 1.0), inputs.between(0.5, 60.0))
    }),
    ("beta_cdf", |inputs| {
        beta_cdf(inputs.between(0.0, 1.0), inputs.between(0.3, 40.0), inputs.between(0.3, 40.0))
    }),
    ("beta_quantile", |inputs| {
        beta_quantile(inputs.between(0.0, 1.0), inputs.between(0.3, 40.0), inputs.between(0.3, 40.0))
    }),
];

/// Each value of these is an integral, so fewer of them.
const INTEGRALS: &[(&str, Drawn)] = &[
    ("noncentral_t_cdf", |inputs| {
        noncentral_t_cdf(inputs.between(-4.0, 8.0), inputs.between(1.0, 60.0), inputs.between(-2.0, 6.0))
    }),
    ("chance_between", |inputs| {
        chance_between(
            inputs.between(0.5, 3.0),
            inputs.between(1.0, 60.0),
            inputs.between(0.0, 8.0),
            inputs.between(0.0, 8.0),
        )
    }),
];

pub(crate) fn rows(table: &mut Table) {
    let mut inputs = Inputs::new(2);
    for (functions, digested) in [(FUNCTIONS, DIGESTED), (INTEGRALS, DIGESTED / 10)] {
        for &(name, function) in functions {
            for number in 0..SHOWN {
                table.real(format_args!("{name} {number}"), function(&mut inputs));
            }
            table.digest(name, (0..digested).map(|_| function(&mut inputs)));
        }
    }
}
