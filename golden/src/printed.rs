//! What people read: figures rounded for them, and lengths in the notation they were written in.

use tautline_engine::length::{Division, Length, Notation, Unit, write};
use tautline_engine::num::decimal::{decimal, percent, shortest};

use crate::inputs::Inputs;
use crate::table::Table;

const SHOWN: u32 = 40;

pub(crate) fn rows(table: &mut Table) {
    let mut inputs = Inputs::new(6);
    for number in 0..SHOWN {
        let figure = inputs.between(-50.0, 50.0);
        let share = inputs.between(0.0, 1.0);
        let places = inputs.below(5);
        table.row(format_args!("decimal {number}"), decimal(figure, places));
        table.row(format_args!("percent {number}"), percent(share, places));
        table.row(format_args!("shortest {number}"), shortest(figure));
    }
    // Halves: the double decides, never its binary neighbour.
    for (number, half) in [0.5, 1.5, 2.5, 0.125, 0.145, 1.005, -0.5, 1e15 + 0.5].into_iter().enumerate() {
        table.row(format_args!("half {number}"), format_args!("{} {}", decimal(half, 0), decimal(half, 2)));
    }
    let notations = [
        Notation { unit: Unit::Inch, feet_and_inches: true, division: Division::Fraction(16) },
        Notation::decimals(Unit::Foot, 2),
        Notation::decimals(Unit::Metre, 3),
        Notation::decimals(Unit::Centimetre, 0),
    ];
    for number in 0..SHOWN {
        let length = Length::from_units(i64::from(inputs.below(60_000)), Unit::Millimetre);
        for notation in notations {
            table.row(format_args!("length {number} {:?}", notation.unit), write(length, notation));
        }
    }
}
