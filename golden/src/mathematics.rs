//! The one door to mathematics: a few values of each function to read, and a digest of thousands.

use tautline_engine::num::math;

use crate::inputs::Inputs;
use crate::table::Table;

const SHOWN: usize = 12;
const DIGESTED: usize = 20_000;

/// A function of one number, and the range from which its inputs come.
type Function = (&'static str, fn(f64) -> f64, f64, f64);

const FUNCTIONS: &[Function] = &[
    ("exp", math::exp, -30.0, 30.0),
    ("exp_m1", math::exp_m1, -2.0, 2.0),
    ("ln", math::ln, 1e-9, 1e3),
    ("ln_1p", math::ln_1p, -0.999, 10.0),
    ("sqrt", math::sqrt, 0.0, 1e6),
    ("sin", math::sin, -400.0, 400.0),
    ("cos", math::cos, -400.0, 400.0),
    ("erfc", math::erfc, -6.0, 25.0),
    ("ln_gamma", math::ln_gamma, 1e-3, 400.0),
    ("logit", math::logit, 1e-6, 1.0 - 1e-6),
    ("expit", math::expit, -40.0, 40.0),
];

/// A function of two numbers, and the ranges of both.
type Function2 = (&'static str, fn(f64, f64) -> f64, [f64; 2], [f64; 2]);

const FUNCTIONS_OF_TWO: &[Function2] = &[
    ("powf", math::powf, [1e-3, 50.0], [-8.0, 8.0]),
    ("hypot", math::hypot, [-1e4, 1e4], [-1e4, 1e4]),
    ("atan2", math::atan2, [-10.0, 10.0], [-10.0, 10.0]),
];

pub(crate) fn rows(table: &mut Table) {
    let mut inputs = Inputs::new(1);
    for &(name, function, low, high) in FUNCTIONS {
        for number in 0..SHOWN {
            table.real(format_args!("{name} {number}"), function(inputs.between(low, high)));
        }
        table.digest(name, (0..DIGESTED).map(|_| function(inputs.between(low, high))));
    }
    for &(name, function, x, y) in FUNCTIONS_OF_TWO {
        let mut value = || function(inputs.between(x[0], x[1]), inputs.between(y[0], y[1]));
        for number in 0..SHOWN {
            table.real(format_args!("{name} {number}"), value());
        }
        table.digest(name, (0..DIGESTED).map(|_| value()));
    }
}
