//! The arithmetic of one line as a person would do it on paper with a plain calculator: sums in groups, feet to
//! inches, one division, rounding last.

use crate::length::{Length, Notation, Unit, write};

/// One number of the sheet on its way into the sum.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Term {
    /// Start and stop, where positions were read.
    pub edges: Option<(Length, Length)>,
    /// The length.
    pub length: Length,
    /// How it was written.
    pub notation: Notation,
}

/// A term as shown: `17 − 12 = 5`, or `5'3" = 63`, or `5`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ShownTerm {
    /// What stood on the sheet, where that isn't the number itself: edges, or feet and inches.
    pub given: Option<String>,
    /// The number in the working unit.
    pub number: String,
}

/// Some terms and their sum.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Group {
    /// The terms.
    pub terms: Vec<ShownTerm>,
    /// Their sum in the working unit.
    pub sum: String,
}

/// The whole working of one figure of one line. Every number is in [`Worked::unit`] unless it says otherwise.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Worked {
    /// The unit that everything is worked in.
    pub unit: Unit,
    /// Sums in groups.
    pub groups: Vec<Group>,
    /// All groups together.
    pub total: String,
    /// The line as given, with its unit.
    pub line_given: String,
    /// Line number, factor and product, where the line stands in another unit: 65 × 12 = 780.
    pub conversion: Option<(String, String, String)>,
    /// The line in the working unit.
    pub line: String,
    /// Total divided by line, to five decimals.
    pub quotient: String,
    /// Per cent, rounded last and from the exact figure.
    pub percent: String,
}

/// How many terms are added before a sum is written down.
const GROUP: usize = 6;
/// No exact decimal of a tape's division is longer (a 64th of an inch).
const MOST_PLACES: u32 = 6;

/// Works a figure out on paper: the terms, the line, and the decimals of the percentage.
///
/// # Example
/// Common practice, no source: a 65-ft line, lengths only, in inches; 73 in of 780 in.
/// ```
/// use tautline_engine::{length::{Length, Notation, Unit}, work::{Term, worked}};
/// let halves = [10, 5, 5, 10, 21, 7, 32, 34, 7, 4, 11];
/// let terms: Vec<Term> = halves.iter().map(|&half| Term {
///     edges: None,
///     length: Length::from_nanometres(half * 12_700_000),
///     notation: Notation::decimals(Unit::Inch, 1),
/// }).collect();
/// let line = Length::from_units(65, Unit::Foot);
/// let work = worked(&terms, line, Notation::decimals(Unit::Foot, 0), 3);
/// assert_eq!((work.groups[0].sum.as_str(), work.groups[1].sum.as_str()), ("29", "44"));
/// assert_eq!((work.total.as_str(), work.line.as_str()), ("73", "780"));
/// assert_eq!((work.quotient.as_str(), work.percent.as_str()), ("0.09359", "9.359"));
/// ```
pub fn worked(terms: &[Term], line: Length, line_notation: Notation, places: u32) -> Worked {
    let unit = terms.first().map_or(line_notation.unit, |term| term.notation.unit);
    let number = |length: Length| exact_decimal(length, unit);
    let groups = terms
        .chunks(GROUP)
        .map(|chunk| Group {
            terms: chunk.iter().map(|term| shown(term, unit)).collect(),
            sum: number(chunk.iter().map(|term| term.length).sum()),
        })
        .collect();
    let total: Length = terms.iter().map(|term| term.length).sum();
    let conversion = (line_notation.unit != unit).then(|| {
        let factor = rounded_ratio(line_notation.unit.nanometres(), unit.nanometres(), MOST_PLACES);
        (exact_decimal(line, line_notation.unit), trimmed(factor), number(line))
    });
    Worked {
        unit,
        groups,
        total: number(total),
        line_given: write(line, line_notation),
        conversion,
        line: number(line),
        quotient: rounded_ratio(total.nanometres(), line.nanometres(), 5),
        percent: rounded_ratio(total.nanometres().saturating_mul(100), line.nanometres(), places),
    }
}

fn shown(term: &Term, unit: Unit) -> ShownTerm {
    let given = match term.edges {
        Some((start, stop)) => {
            Some(format!("{} − {}", exact_decimal(stop, unit), exact_decimal(start, unit)))
        }
        None if term.notation.feet_and_inches || term.notation.unit != unit => {
            Some(write(term.length, term.notation))
        }
        None => None,
    };
    ShownTerm { given, number: exact_decimal(term.length, unit) }
}

/// A length as a plain number of `unit`, without trailing zeros, to at most six decimals.
pub fn exact_decimal(length: Length, unit: Unit) -> String {
    trimmed(rounded_ratio(length.nanometres(), unit.nanometres(), MOST_PLACES))
}

fn trimmed(number: String) -> String {
    if number.contains('.') { number.trim_end_matches('0').trim_end_matches('.').to_owned() } else { number }
}

/// The quotient of two whole numbers to so many decimals, half away from zero, exactly.
///
/// # Range
/// a denominator of zero gives an en dash, since there is no quotient
pub fn rounded_ratio(numerator: i64, denominator: i64, places: u32) -> String {
    if denominator == 0 {
        return "–".to_owned();
    }
    let scale = 10_u128.pow(places);
    let (n, d) = (u128::from(numerator.unsigned_abs()), u128::from(denominator.unsigned_abs()));
    let steps = (n * scale * 2 + d) / (d * 2);
    let sign = if (numerator < 0) != (denominator < 0) && steps > 0 { "-" } else { "" };
    if places == 0 {
        return format!("{sign}{steps}");
    }
    format!("{sign}{}.{:0width$}", steps / scale, steps % scale, width = places as usize)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ratios_round_half_away_from_zero() {
        assert_eq!(rounded_ratio(1, 8, 2), "0.13");
        assert_eq!(rounded_ratio(-1, 8, 2), "-0.13");
        assert_eq!(rounded_ratio(2, 3, 0), "1");
        assert_eq!(rounded_ratio(0, 3, 1), "0.0");
        assert_eq!(rounded_ratio(1, 0, 1), "–");
    }

    /// Coulloudon et al. 1999, Technical Reference 1734-4, V.E.9.a(2): tape in tenths and hundredths of a foot,
    /// 100-ft line: the summed feet are the percentage.
    #[test]
    fn on_a_hundred_foot_line_the_sum_is_the_percentage() {
        let hundredth = Unit::Foot.nanometres() / 100;
        let terms = [1200, 945, 200].map(|n| Term {
            edges: None,
            length: Length::from_nanometres(n * hundredth),
            notation: Notation::decimals(Unit::Foot, 2),
        });
        let line = Length::from_units(100, Unit::Foot);
        let work = worked(&terms, line, Notation::decimals(Unit::Foot, 0), 2);
        assert_eq!((work.total.as_str(), work.percent.as_str()), ("23.45", "23.45"));
        assert_eq!(work.conversion, None);
    }

    #[test]
    fn edges_and_feet_and_inches_are_shown() {
        let inch = |n| Length::from_units(n, Unit::Inch);
        let edges = Term {
            edges: Some((inch(12), inch(17))),
            length: inch(5),
            notation: Notation::decimals(Unit::Inch, 0),
        };
        let mixed = Term {
            edges: None,
            length: inch(63),
            notation: Notation { feet_and_inches: true, ..Notation::decimals(Unit::Inch, 0) },
        };
        let work = worked(&[edges, mixed], inch(780), Notation::decimals(Unit::Foot, 0), 1);
        assert_eq!(work.groups[0].terms[0].given.as_deref(), Some("17 − 12"));
        assert_eq!(work.groups[0].terms[1].given.as_deref(), Some("5'3\""));
        assert_eq!(work.conversion, Some(("65".into(), "12".into(), "780".into())));
    }
}
