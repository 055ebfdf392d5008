//! Printing a length back in the unit and the finest division it was entered in.

use super::{Division, Length, Notation, Unit};

/// The length in a notation, unit included: `10.5 in`, `10 1/2 in`, `5'3 1/2"`, `3.20 m`.
///
/// What the division can't hold is rounded half away from zero.
///
/// # Example
/// ```
/// use tautline_engine::length::{DecimalMark, read, write};
/// let tape = read("5'3 1/2\"", None, DecimalMark::Point).unwrap();
/// assert_eq!(write(tape.length, tape.notation), "5'3 1/2\"");
/// ```
pub fn write(length: Length, notation: Notation) -> String {
    let sign = if length < Length::ZERO { "-" } else { "" };
    let size = length.nanometres().unsigned_abs();
    let unit = notation.unit.nanometres().unsigned_abs();
    if notation.feet_and_inches {
        let (feet, rest) = feet_and_rest(size, notation.division);
        return format!(
            "{sign}{feet}'{}\"",
            number(rest, Unit::Inch.nanometres().unsigned_abs(), notation.division)
        );
    }
    format!("{sign}{} {}", number(size, unit, notation.division), notation.unit.symbol())
}

/// Whole feet, and what is left after rounding to the division, so that 11.99 in never prints as 12 in.
fn feet_and_rest(size: u64, division: Division) -> (u64, u64) {
    let foot = Unit::Foot.nanometres().unsigned_abs();
    let step = step_of(Unit::Inch.nanometres().unsigned_abs(), division);
    let rounded = rounded_quotient(size, step) * step;
    (rounded / foot, rounded % foot)
}

fn number(size: u64, unit: u64, division: Division) -> String {
    match division {
        Division::Decimals(0) => rounded_quotient(size, unit).to_string(),
        Division::Decimals(places) => {
            let scale = 10_u128.pow(u32::from(places));
            let steps = (u128::from(size) * scale * 2 + u128::from(unit)) / (u128::from(unit) * 2);
            format!("{}.{:0width$}", steps / scale, steps % scale, width = usize::from(places))
        }
        Division::Fraction(denominator) => {
            let denominator = u128::from(denominator);
            let steps = (u128::from(size) * denominator * 2 + u128::from(unit)) / (u128::from(unit) * 2);
            let (whole, part) = (steps / denominator, steps % denominator);
            let common = greatest_common_divisor(part, denominator);
            match (whole, part) {
                (_, 0) => whole.to_string(),
                (0, _) => format!("{}/{}", part / common, denominator / common),
                _ => format!("{whole} {}/{}", part / common, denominator / common),
            }
        }
    }
}

fn step_of(unit: u64, division: Division) -> u64 {
    match division {
        Division::Decimals(places) => (unit / 10_u64.pow(u32::from(places.min(6)))).max(1),
        Division::Fraction(denominator) => (unit / u64::from(denominator)).max(1),
    }
}

fn rounded_quotient(size: u64, unit: u64) -> u64 {
    (size + unit / 2) / unit
}

fn greatest_common_divisor(a: u128, b: u128) -> u128 {
    if b == 0 { a } else { greatest_common_divisor(b, a % b) }
}

#[cfg(test)]
mod tests {
    use super::super::{DecimalMark, read};
    use super::*;

    #[test]
    fn what_was_entered_comes_back() {
        for text in
            ["10.5 in", "10 1/2 in", "5'3 1/2\"", "3.20 m", "12 cm", "65 ft", "0.35 ft", "3/8 in", "0 in"]
        {
            let written = read(text, None, DecimalMark::Point).unwrap();
            assert_eq!(write(written.length, written.notation), text);
        }
    }

    #[test]
    fn inches_never_reach_twelve_beside_feet() {
        let notation = Notation { unit: Unit::Inch, feet_and_inches: true, division: Division::Fraction(2) };
        let almost = Length::from_units(12, Unit::Inch) - Length::from_nanometres(10);
        assert_eq!(write(almost, notation), "1'0\"");
    }

    #[test]
    fn a_sum_prints_in_the_finer_division() {
        let halves = read("2 1/2 in", None, DecimalMark::Point).unwrap();
        let eighths = read("3/8 in", None, DecimalMark::Point).unwrap();
        let sum = halves.length + eighths.length;
        assert_eq!(write(sum, halves.notation.finer(eighths.notation)), "2 7/8 in");
    }
}
