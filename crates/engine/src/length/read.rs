//! Reading what people write: `5`, `10 1/2`, `10½`, `5'3 1/2"`, `5 ft 3.5 in`, `5-3`, `12 cm`, `3,2 m`.

use super::{Division, Length, Notation, Unit, Written};

/// What a bare number on this sheet means. It comes from the column, the sheet or the plan, never from a guess.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bare {
    /// So many of this unit. For feet, whole numbers and fractions only: `5.11` could be 5.11 ft or 5 ft 11 in.
    Unit(Unit),
    /// Feet in tenths and hundredths: `5.11` is 5.11 ft.
    DecimalFeet,
    /// Feet and inches: `5-3` is 5 ft 3 in.
    FeetAndInches,
}

impl Bare {
    /// What the words of a heading, a unit column or an option say: `in`, `cm`, `decimal ft`, `ft-in`.
    pub fn from_words(words: &str) -> Option<Self> {
        let plain: String = words.to_lowercase().chars().filter(|c| c.is_alphanumeric()).collect();
        match plain.as_str() {
            "decimalft" | "decimalfeet" | "fttenths" | "feettenths" | "fthundredths" | "feethundredths"
            | "ftdecimal" | "feetdecimal" => Some(Self::DecimalFeet),
            "ftin" | "feetinches" | "feetandinches" | "footinch" => Some(Self::FeetAndInches),
            _ => Unit::from_word(words.trim()).map(Self::Unit),
        }
    }
}

/// The sign between whole and decimals in this file.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum DecimalMark {
    /// `3.5`
    #[default]
    Point,
    /// `3,5`
    Comma,
}

/// Why a text was not read as a length.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Problem {
    /// Nothing was written.
    Empty,
    /// A number was expected here.
    NotANumber,
    /// A unit was expected here and this isn't one.
    UnknownUnit,
    /// A bare number, and neither column, sheet nor plan says its unit.
    NoUnit,
    /// A length below zero.
    Negative,
    /// A decimal in a feet column that doesn't say decimal feet: tenths of a foot, or inches?
    FeetOrInches,
    /// A bare number on a sheet of feet and inches: `5-0` or `0-5`?
    WhichOfFeetAndInches,
    /// Parts must run from the larger unit to the smaller, both metric or both feet and inches.
    UnitsOutOfOrder,
    /// A part as large as one of the unit before it: 5 ft 14 in.
    PartTooLarge,
    /// A fraction that isn't one: 3/0, or 5/4 behind a whole number.
    BadFraction,
    /// The other decimal mark than this file's.
    OtherDecimalMark,
    /// Beyond [`Length::LONGEST`], or more digits than a length can have.
    TooLong,
}

/// A text that could not be read as a length: what is wrong, at which character, and what stood there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LengthError {
    /// What is wrong.
    pub problem: Problem,
    /// The character at which reading stopped, counted from 1.
    pub at: usize,
    /// What was found there.
    pub found: String,
}

/// Reads one length.
///
/// `bare` says what a number without unit means here; `mark` is the file's decimal mark.
///
/// # Errors
/// [`LengthError`] with the character and what was found
/// # Example
/// ```
/// use tautline_engine::length::{Bare, DecimalMark, Length, Unit, read};
/// let tape = read("5'3 1/2\"", None, DecimalMark::Point).unwrap();
/// assert_eq!(tape.length, Length::from_nanometres(127 * 25_400_000 / 2)); // 63.5 in
/// assert!(read("5.11", Some(Bare::Unit(Unit::Foot)), DecimalMark::Point).is_err());
/// ```
pub fn read(text: &str, bare: Option<Bare>, mark: DecimalMark) -> Result<Written, LengthError> {
    let chars: Vec<char> = text.chars().collect();
    let mut scan = Scan { chars: &chars, at: 0, mark };
    scan.skip_space();
    if scan.peek().is_none() {
        return Err(scan.fail(Problem::Empty));
    }
    if bare == Some(Bare::FeetAndInches)
        && let Some(written) = scan.dashed_feet_and_inches()?
    {
        return Ok(written);
    }

    let mut parts: Vec<Part> = Vec::new();
    while scan.peek().is_some() {
        let number_at = scan.at;
        let number = scan.number()?;
        scan.skip_space();
        let unit_at = scan.at;
        let unit = match scan.unit()? {
            Some(unit) => unit,
            None => match parts.last() {
                Some(feet) if feet.unit == Unit::Foot => Unit::Inch,
                Some(_) => return Err(scan.fail_at(unit_at, Problem::NoUnit)),
                None => scan.bare_unit(number, bare, number_at)?,
            },
        };
        if let Some(before) = parts.last() {
            let imperial = |unit| matches!(unit, Unit::Foot | Unit::Inch);
            // 12 12 cm in a feet column is two numbers, not 12 ft and 12 cm
            if before.unit <= unit || imperial(before.unit) != imperial(unit) {
                return Err(scan.fail_at(unit_at, Problem::UnitsOutOfOrder));
            }
            if before.number.division != Division::Decimals(0) {
                return Err(scan.fail_at(number_at, Problem::UnitsOutOfOrder));
            }
            let whole = i128::from(before.unit.nanometres()).checked_mul(number.denominator);
            let part = number.numerator.checked_mul(i128::from(unit.nanometres()));
            let (Some(whole), Some(part)) = (whole, part) else {
                return Err(scan.fail_at(number_at, Problem::TooLong));
            };
            if whole <= part {
                return Err(scan.fail_at(number_at, Problem::PartTooLarge));
            }
        }
        parts.push(Part { number, unit });
        scan.skip_space();
    }
    total(&parts).ok_or_else(|| scan.fail_at(0, Problem::TooLong))
}

#[derive(Clone, Copy)]
struct Number {
    numerator: i128,
    denominator: i128,
    division: Division,
}

struct Part {
    number: Number,
    unit: Unit,
}

/// The sum of the parts in whole nanometres, rounded once if it must be; `None` past the longest length.
fn total(parts: &[Part]) -> Option<Written> {
    let mut sum = 0_i128;
    let mut rounded = false;
    for part in parts {
        let exact = part.number.numerator.checked_mul(i128::from(part.unit.nanometres()))?;
        let denominator = part.number.denominator;
        rounded |= exact % denominator != 0;
        // half away from zero; lengths are never negative
        sum =
            sum.checked_add(exact.checked_mul(2)?.checked_add(denominator)? / denominator.checked_mul(2)?)?;
    }
    let nanometres = i64::try_from(sum).ok()?;
    if nanometres > Length::LONGEST.nanometres() {
        return None;
    }
    let last = parts.last()?;
    Some(Written {
        length: Length::from_nanometres(nanometres),
        notation: Notation {
            unit: last.unit,
            feet_and_inches: parts.len() > 1 && parts[0].unit == Unit::Foot && last.unit == Unit::Inch,
            division: last.number.division,
        },
        rounded,
    })
}

struct Scan<'a> {
    chars: &'a [char],
    at: usize,
    mark: DecimalMark,
}

/// More digits than this can't be a length within [`Length::LONGEST`] in whole nanometres.
const MOST_DIGITS: usize = 18;

impl Scan<'_> {
    fn peek(&self) -> Option<char> {
        self.chars.get(self.at).copied()
    }

    fn skip_space(&mut self) {
        while self.peek().is_some_and(char::is_whitespace) {
            self.at += 1;
        }
    }

    fn fail(&self, problem: Problem) -> LengthError {
        self.fail_at(self.at, problem)
    }

    fn fail_at(&self, at: usize, problem: Problem) -> LengthError {
        let found = self.chars.iter().skip(at).take(24).collect::<String>().trim_end().to_owned();
        LengthError { problem, at: at + 1, found }
    }

    /// `5-3`, `5-3 1/2`, `5-3.5` on a sheet of feet and inches; `None` if there is no dash.
    fn dashed_feet_and_inches(&mut self) -> Result<Option<Written>, LengthError> {
        let begin = self.at;
        let Some(feet) = self.digits()? else { return Ok(None) };
        self.skip_space();
        if !matches!(self.peek(), Some('-' | '–')) {
            self.at = begin;
            return Ok(None);
        }
        self.at += 1;
        self.skip_space();
        let inches_at = self.at;
        let inches = self.number()?;
        self.skip_space();
        if self.peek().is_some() {
            return Err(self.fail(Problem::UnknownUnit));
        }
        if inches.numerator >= 12 * inches.denominator {
            return Err(self.fail_at(inches_at, Problem::PartTooLarge));
        }
        let feet = Number { numerator: feet, denominator: 1, division: Division::Decimals(0) };
        let parts = [Part { number: feet, unit: Unit::Foot }, Part { number: inches, unit: Unit::Inch }];
        total(&parts).map(Some).ok_or_else(|| self.fail_at(begin, Problem::TooLong))
    }

    /// The unit of a bare number, as the sheet says.
    fn bare_unit(&self, number: Number, bare: Option<Bare>, at: usize) -> Result<Unit, LengthError> {
        match bare {
            None => Err(self.fail_at(at, Problem::NoUnit)),
            Some(Bare::DecimalFeet) => Ok(Unit::Foot),
            Some(Bare::FeetAndInches) if number.numerator == 0 => Ok(Unit::Inch),
            Some(Bare::FeetAndInches) => Err(self.fail_at(at, Problem::WhichOfFeetAndInches)),
            Some(Bare::Unit(Unit::Foot)) if matches!(number.division, Division::Decimals(1..)) => {
                Err(self.fail_at(at, Problem::FeetOrInches))
            }
            Some(Bare::Unit(unit)) => Ok(unit),
        }
    }

    /// A whole number, a decimal, a fraction, or a whole number with a fraction.
    fn number(&mut self) -> Result<Number, LengthError> {
        let begin = self.at;
        if matches!(self.peek(), Some('-' | '−')) {
            return Err(self.fail(Problem::Negative));
        }
        let whole = self.digits()?;
        if let Some(whole) = whole {
            let mark = self.peek();
            let next_is_digit = self.chars.get(self.at + 1).is_some_and(char::is_ascii_digit);
            match (mark, self.mark) {
                (Some('.'), DecimalMark::Point) | (Some(','), DecimalMark::Comma) => {
                    return self.decimals(whole);
                }
                (Some('.' | ','), _) if next_is_digit => return Err(self.fail(Problem::OtherDecimalMark)),
                (Some('/'), _) => {
                    let denominator = self.denominator()?;
                    return Self::fraction(0, whole, denominator)
                        .ok_or_else(|| self.fail_at(begin, Problem::BadFraction));
                }
                _ => {}
            }
            return self.mixed(whole);
        }
        if matches!(
            (self.peek(), self.mark),
            (Some('.'), DecimalMark::Point) | (Some(','), DecimalMark::Comma)
        ) {
            return self.decimals(0);
        }
        if let Some((numerator, denominator)) = self.peek().and_then(vulgar_fraction) {
            self.at += 1;
            return Self::fraction(0, numerator, denominator)
                .ok_or_else(|| self.fail_at(begin, Problem::BadFraction));
        }
        Err(self.fail(Problem::NotANumber))
    }

    /// The decimals behind a whole number; the mark is the next character.
    fn decimals(&mut self, whole: i128) -> Result<Number, LengthError> {
        self.at += 1;
        let begin = self.at;
        let decimals = self.digits()?.ok_or_else(|| self.fail(Problem::NotANumber))?;
        let places = self.at - begin;
        let denominator = 10_i128.pow(u32::try_from(places).expect("at most MOST_DIGITS digits"));
        Ok(Number {
            numerator: whole * denominator + decimals,
            denominator,
            division: Division::Decimals(u8::try_from(places).expect("at most MOST_DIGITS digits")),
        })
    }

    /// What may follow a whole number: `½`, ` 1/2`, `-1/2`, or nothing.
    fn mixed(&mut self, whole: i128) -> Result<Number, LengthError> {
        let plain = Number { numerator: whole, denominator: 1, division: Division::Decimals(0) };
        let before = self.at;
        self.skip_space();
        if let Some((numerator, denominator)) = self.peek().and_then(vulgar_fraction) {
            self.at += 1;
            return Self::fraction(whole, numerator, denominator)
                .ok_or_else(|| self.fail_at(before, Problem::BadFraction));
        }
        if self.at == before && self.peek() == Some('-') {
            self.at += 1;
        }
        let fraction_at = self.at;
        if let Some(numerator) = self.digits()?
            && self.peek() == Some('/')
            && fraction_at > before
        {
            let denominator = self.denominator()?;
            if numerator >= denominator {
                return Err(self.fail_at(fraction_at, Problem::BadFraction));
            }
            return Self::fraction(whole, numerator, denominator)
                .ok_or_else(|| self.fail_at(fraction_at, Problem::BadFraction));
        }
        self.at = before;
        Ok(plain)
    }

    /// The denominator of a fraction; the slash is the next character.
    fn denominator(&mut self) -> Result<i128, LengthError> {
        self.at += 1;
        self.digits()?.ok_or_else(|| self.fail(Problem::NotANumber))
    }

    fn fraction(whole: i128, numerator: i128, denominator: i128) -> Option<Number> {
        let division = u16::try_from(denominator).ok().filter(|&d| d > 0)?;
        Some(Number {
            numerator: whole * denominator + numerator,
            denominator,
            division: Division::Fraction(division),
        })
    }

    fn digits(&mut self) -> Result<Option<i128>, LengthError> {
        let begin = self.at;
        let mut value = 0_i128;
        while let Some(digit) = self.peek().and_then(|c| c.to_digit(10)) {
            if self.at - begin == MOST_DIGITS {
                return Err(self.fail_at(begin, Problem::TooLong));
            }
            value = value * 10 + i128::from(digit);
            self.at += 1;
        }
        Ok((self.at > begin).then_some(value))
    }

    /// A unit's word or mark, if one stands here.
    fn unit(&mut self) -> Result<Option<Unit>, LengthError> {
        let begin = self.at;
        let Some(first) = self.peek() else { return Ok(None) };
        if first.is_alphabetic() {
            while self.peek().is_some_and(|c| c.is_alphabetic() || c == '.') {
                self.at += 1;
            }
        } else if matches!(first, '\'' | '′' | '’' | '"' | '″' | '”') {
            self.at += 1;
            if first == '\'' && self.peek() == Some('\'') {
                self.at += 1;
            }
        } else if first.is_ascii_digit() {
            return Ok(None);
        }
        let word: String = self.chars[begin..self.at].iter().collect();
        match Unit::from_word(&word) {
            Some(unit) => Ok(Some(unit)),
            None => Err(self.fail_at(begin, Problem::UnknownUnit)),
        }
    }
}

fn vulgar_fraction(c: char) -> Option<(i128, i128)> {
    Some(match c {
        '½' => (1, 2),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    const INCH: i64 = 25_400_000;

    fn inches(text: &str) -> i64 {
        read(text, Some(Bare::Unit(Unit::Inch)), DecimalMark::Point).unwrap().length.nanometres()
    }

    fn problem(text: &str, bare: Option<Bare>) -> (Problem, usize) {
        let error = read(text, bare, DecimalMark::Point).unwrap_err();
        (error.problem, error.at)
    }

    #[test]
    fn what_people_write() {
        // each worked out by hand from 1 in = 25.4 mm
        assert_eq!(inches("5"), 5 * INCH);
        assert_eq!(inches("10.5"), 21 * INCH / 2);
        assert_eq!(inches(".5"), INCH / 2);
        assert_eq!(inches("10 1/2"), 21 * INCH / 2);
        assert_eq!(inches("10-1/2"), 21 * INCH / 2);
        assert_eq!(inches("3/8"), 3 * INCH / 8);
        assert_eq!(inches("10½"), 21 * INCH / 2);
        assert_eq!(inches("10 ½"), 21 * INCH / 2);
        assert_eq!(inches("5'3 1/2\""), 127 * INCH / 2);
        assert_eq!(inches("5′ 3½″"), 127 * INCH / 2);
        assert_eq!(inches("5'3"), 63 * INCH);
        assert_eq!(inches("5 ft 3.5 in"), 127 * INCH / 2);
        assert_eq!(inches("65 ft"), 780 * INCH);
        assert_eq!(inches("12 cm"), 120_000_000);
        assert_eq!(inches("3.2 m"), 3_200_000_000);
        assert_eq!(inches("0.35 ft"), 106_680_000);
        assert_eq!(inches(" 7 in. "), 7 * INCH);
    }

    #[test]
    fn feet_and_inches_sheets() {
        let sheet = Some(Bare::FeetAndInches);
        let length = |text: &str| read(text, sheet, DecimalMark::Point).unwrap().length.nanometres();
        assert_eq!(length("5-3"), 63 * INCH);
        assert_eq!(length("5-3 1/2"), 127 * INCH / 2);
        assert_eq!(length("0"), 0);
        assert_eq!(problem("5", sheet), (Problem::WhichOfFeetAndInches, 1));
        assert_eq!(problem("5-14", sheet), (Problem::PartTooLarge, 3));
    }

    #[test]
    fn decimals_of_a_foot_only_where_the_sheet_says_so() {
        assert_eq!(problem("5.11", Some(Bare::Unit(Unit::Foot))), (Problem::FeetOrInches, 1));
        let decimal = read("5.11", Some(Bare::DecimalFeet), DecimalMark::Point).unwrap();
        assert_eq!(decimal.length.nanometres(), 511 * 3_048_000);
        assert_eq!(Bare::from_words("decimal ft"), Some(Bare::DecimalFeet));
        assert_eq!(Bare::from_words("ft-in"), Some(Bare::FeetAndInches));
    }

    #[test]
    fn a_decimal_comma_where_the_file_has_one() {
        let metres = read("3,25 m", None, DecimalMark::Comma).unwrap();
        assert_eq!(metres.length.nanometres(), 3_250_000_000);
        assert_eq!(problem("3,25 m", None), (Problem::OtherDecimalMark, 2));
    }

    #[test]
    fn bad_text_is_placed() {
        let inch = Some(Bare::Unit(Unit::Inch));
        assert_eq!(problem("", inch), (Problem::Empty, 1));
        assert_eq!(problem("12", None), (Problem::NoUnit, 1));
        assert_eq!(problem("12 furlongs", inch), (Problem::UnknownUnit, 4));
        assert_eq!(problem("abc", inch), (Problem::NotANumber, 1));
        assert_eq!(problem("-3", inch), (Problem::Negative, 1));
        assert_eq!(problem("3/0", inch), (Problem::BadFraction, 1));
        assert_eq!(problem("3 in 2 ft", inch), (Problem::UnitsOutOfOrder, 8));
        assert_eq!(problem("5 ft 14 in", inch), (Problem::PartTooLarge, 6));
        assert_eq!(problem("12 12 cm", Some(Bare::Unit(Unit::Foot))), (Problem::UnitsOutOfOrder, 7));
        assert_eq!(problem("1 m 1/2 in", None), (Problem::UnitsOutOfOrder, 9));
        assert_eq!(problem("99999999999999999999", inch), (Problem::TooLong, 1));
        assert_eq!(problem("999999999999", inch), (Problem::TooLong, 1));
    }

    #[test]
    fn a_third_is_rounded_once_and_says_so() {
        let third = read("1/3 in", None, DecimalMark::Point).unwrap();
        assert!(third.rounded);
        assert_eq!(third.length.nanometres(), 8_466_667);
        assert!(!read("1/64 in", None, DecimalMark::Point).unwrap().rounded);
    }
}
