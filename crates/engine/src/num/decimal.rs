//! Rounding for people: the only place where a figure becomes text.
//!
//! Half away from zero, decided on the exact decimal value of the binary number: 0.125 becomes 0.13, while
//! 0.145 (whose binary value is a little below) becomes 0.14. Never a minus sign on nothing.

/// A figure with a fixed number of decimal places.
///
/// # Range
/// Any finite number; "NaN" and "inf" are spelled as std does.
///
/// # Example
/// ```
/// use tautline_engine::num::decimal::decimal;
/// assert_eq!(decimal(0.125, 2), "0.13");
/// assert_eq!(decimal(-2.5, 0), "-3");
/// assert_eq!(decimal(-0.001, 2), "0.00");
/// ```
#[expect(clippy::missing_panics_doc, reason = "a text with places has a point")]
pub fn decimal(x: f64, places: u32) -> String {
    if !x.is_finite() {
        return x.to_string();
    }
    let places = places as usize;
    // The exact decimal expansion of a double ends within 1074 places, so this text is exact.
    let exact = format!("{:.*}", EXACT_PLACES.max(places), x.abs());
    let (whole, fraction) = exact.split_once('.').expect("a fixed-point text with places has a point");
    let mut digits = format!("{whole}{}", &fraction[..places]).into_bytes();
    if fraction.as_bytes().get(places).is_some_and(|&next| next >= b'5') {
        add_one(&mut digits);
    }
    let point = digits.len() - places;
    let mut text = String::with_capacity(digits.len() + 2);
    if x < 0.0 && digits.iter().any(|&d| d != b'0') {
        text.push('-');
    }
    for (at, digit) in digits.into_iter().enumerate() {
        if at == point {
            text.push('.');
        }
        text.push(char::from(digit));
    }
    text
}

/// A share as percent, without the sign: 0.2346 → "23.5".
///
/// The share is multiplied by 100 in decimal, not in binary, so 0.145 with no places is decided on its own
/// exact value.
///
/// # Example
/// ```
/// use tautline_engine::num::decimal::percent;
/// assert_eq!(percent(0.2346, 1), "23.5");
/// assert_eq!(percent(1.0, 0), "100");
/// assert_eq!(percent(-0.00004, 1), "0.0");
/// ```
#[expect(clippy::missing_panics_doc, reason = "a text with places has a point")]
pub fn percent(share: f64, places: u32) -> String {
    if !share.is_finite() {
        return share.to_string();
    }
    let places = places as usize;
    let rounded = decimal(share, u32::try_from(places + 2).unwrap_or(u32::MAX));
    let (sign, rest) = rounded.strip_prefix('-').map_or(("", rounded.as_str()), |rest| ("-", rest));
    let (whole, fraction) = rest.split_once('.').expect("two places or more were asked for");
    let shifted = format!("{whole}{}", &fraction[..2]);
    let whole = shifted.trim_start_matches('0');
    let whole = if whole.is_empty() { "0" } else { whole };
    if places == 0 { format!("{sign}{whole}") } else { format!("{sign}{whole}.{}", &fraction[2..]) }
}

/// The shortest text that reads back as the same number; for data, not for people.
///
/// # Example
/// ```
/// use tautline_engine::num::decimal::shortest;
/// assert_eq!(shortest(0.1), "0.1");
/// assert_eq!(shortest(-0.0), "0");
/// ```
pub fn shortest(x: f64) -> String {
    if x == 0.0 { "0".to_owned() } else { x.to_string() }
}

const EXACT_PLACES: usize = 1074;

/// Adds one to the last digit of a row of decimal digits, carrying leftwards.
fn add_one(digits: &mut Vec<u8>) {
    for digit in digits.iter_mut().rev() {
        if *digit < b'9' {
            *digit += 1;
            return;
        }
        *digit = b'0';
    }
    digits.insert(0, b'1');
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_goes_away_from_zero_on_the_exact_value() {
        // 0.145 is 0.14499999999999999… in binary; 2.5, 0.375 and 1e15 + 0.5 are exact.
        for (x, places, text) in [
            (0.145, 2, "0.14"),
            (2.675, 2, "2.67"),
            (0.375, 2, "0.38"),
            (-0.375, 2, "-0.38"),
            (2.5, 0, "3"),
            (0.5, 0, "1"),
            (-0.5, 0, "-1"),
            (0.49, 0, "0"),
            (1e15 + 0.5, 0, "1000000000000001"),
        ] {
            assert_eq!(decimal(x, places), text, "{x} to {places}");
        }
    }

    #[test]
    fn carries_through_nines() {
        assert_eq!(decimal(99.96, 1), "100.0");
        assert_eq!(percent(0.999_96, 1), "100.0");
    }

    #[test]
    fn nothing_has_no_sign() {
        for x in [0.0, -0.0, -0.04, -1e-300] {
            assert_eq!(decimal(x, 1), "0.0", "{x}");
        }
        assert_eq!(decimal(-0.05, 1), "-0.1"); // a little more than a twentieth in binary
    }

    #[test]
    fn percent_keeps_leading_and_trailing_digits() {
        for (share, places, text) in [
            (0.0, 0, "0"),
            (0.05, 0, "5"),
            (0.005, 1, "0.5"),
            (0.2, 2, "20.00"),
            (1.234, 1, "123.4"),
            (-0.031, 1, "-3.1"),
        ] {
            assert_eq!(percent(share, places), text, "{share}");
        }
    }

    #[test]
    fn many_places_are_the_exact_expansion() {
        assert_eq!(decimal(0.1, 30), "0.100000000000000005551115123126");
    }

    #[test]
    fn what_is_no_number_is_spelled_out() {
        assert_eq!(decimal(f64::NAN, 2), "NaN");
        assert_eq!(percent(f64::INFINITY, 2), "inf");
    }
}
