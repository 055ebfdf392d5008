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
    let unit = if notation.feet_and_inches { Unit::Inch } else { notation.unit };
    let steps = steps(length, unit, notation.division);
    if notation.feet_and_inches {
        // whole steps are parted into feet and the rest, so that 11.99 in never prints as 12 in
        let (feet, rest) =
            (steps / (12 * a_unit(notation.division)), steps % (12 * a_unit(notation.division)));
        return format!("{sign}{feet}'{}\"", number(rest, notation.division));
    }
    format!("{sign}{} {}", number(steps, notation.division), unit.symbol())
}

/// How many steps of the division make one unit.
fn a_unit(division: Division) -> u128 {
    match division {
        Division::Decimals(places) => 10_u128.pow(u32::from(places)),
        Division::Fraction(denominator) => u128::from(denominator),
    }
}

/// How many steps of the division a length is, half a step rounded away from zero.
fn steps(length: Length, unit: Unit, division: Division) -> u128 {
    let size = u128::from(length.nanometres().unsigned_abs()) * a_unit(division);
    let unit = u128::from(unit.nanometres().unsigned_abs());
    (size * 2 + unit) / (unit * 2)
}

fn number(steps: u128, division: Division) -> String {
    let (whole, part) = (steps / a_unit(division), steps % a_unit(division));
    match division {
        Division::Decimals(0) => whole.to_string(),
        Division::Decimals(places) => format!("{whole}.{part:0width$}", width = usize::from(places)),
        Division::Fraction(denominator) => {
            let common = greatest_common_divisor(part, u128::from(denominator));
            match (whole, part) {
                (_, 0) => whole.to_string(),
                (0, _) => format!("{}/{}", part / common, u128::from(denominator) / common),
                _ => format!("{whole} {}/{}", part / common, u128::from(denominator) / common),
            }
        }
    }
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
        for text in [
            "10.5 in",
            "10 1/2 in",
            "5'3 1/2\"",
            "3.20 m",
            "12 cm",
            "65 ft",
            "0.35 ft",
            "3/8 in",
            "0 in",
            "0'0.099899606\"",
        ] {
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
