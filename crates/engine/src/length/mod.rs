//! How long is what was written, exactly: whole nanometres, the units of the trade, text in and out.

mod read;
mod write;

pub use read::{Bare, DecimalMark, LengthError, Problem, read};
pub use write::write;

use core::ops::{Add, Sub};

/// An exact length in whole nanometres.
///
/// An inch is 25 400 000 nm and a foot 304 800 000 nm by definition, so a 64th of an inch (396 875 nm), a
/// hundredth of a foot (3 048 000 nm) and every decimal of a metre that a tape can show are whole.
///
/// # Units
/// nanometres
/// # Range
/// what is read from text stays within 0 and [`Length::LONGEST`]; sums of those cannot overflow
/// # Source
/// International yard and pound agreement 1959: 1 in = 25.4 mm exactly
/// # Example
/// ```
/// use tautline_engine::length::{Length, Unit};
/// let line = Length::from_units(65, Unit::Foot);
/// assert_eq!(line, Length::from_units(780, Unit::Inch));
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Length(i64);

impl Length {
    /// No length at all.
    pub const ZERO: Self = Self(0);
    /// The longest length that is read from text: 100 km, far beyond any tape.
    pub const LONGEST: Self = Self(100_000_000_000_000);

    /// A length from whole nanometres.
    pub const fn from_nanometres(nanometres: i64) -> Self {
        Self(nanometres)
    }

    /// A length from a whole number of a unit.
    pub const fn from_units(count: i64, unit: Unit) -> Self {
        Self(count * unit.nanometres())
    }

    /// The length in whole nanometres.
    pub const fn nanometres(self) -> i64 {
        self.0
    }

    /// The length as a number of `unit`, the nearest that a double can hold.
    ///
    /// The one place where an exact length becomes a floating figure.
    #[expect(
        clippy::cast_precision_loss,
        reason = "lengths within LONGEST are below 2^53 nm and convert exactly"
    )]
    pub fn in_unit(self, unit: Unit) -> f64 {
        self.0 as f64 / unit.nanometres() as f64
    }

    /// The share that this length is of `whole`, as a double.
    ///
    /// # Range
    /// `whole` above zero; otherwise the result is not a number
    pub fn share_of(self, whole: Self) -> f64 {
        self.in_unit(Unit::Millimetre) / whole.in_unit(Unit::Millimetre)
    }
}

impl Add for Length {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

impl Sub for Length {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0 - other.0)
    }
}

impl core::iter::Sum for Length {
    fn sum<I: Iterator<Item = Self>>(lengths: I) -> Self {
        lengths.fold(Self::ZERO, Add::add)
    }
}

/// A unit that a tape or a sheet is written in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Unit {
    /// 1 mm
    Millimetre,
    /// 10 mm
    Centimetre,
    /// 25.4 mm
    Inch,
    /// 100 mm
    Decimetre,
    /// 12 in
    Foot,
    /// 1000 mm
    Metre,
}

impl Unit {
    /// All units, smallest first.
    pub const ALL: [Self; 6] =
        [Self::Millimetre, Self::Centimetre, Self::Inch, Self::Decimetre, Self::Foot, Self::Metre];

    /// How many nanometres make one of this unit.
    pub const fn nanometres(self) -> i64 {
        match self {
            Self::Millimetre => 1_000_000,
            Self::Centimetre => 10_000_000,
            Self::Inch => 25_400_000,
            Self::Decimetre => 100_000_000,
            Self::Foot => 304_800_000,
            Self::Metre => 1_000_000_000,
        }
    }

    /// The unit's symbol, the same in every language.
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Millimetre => "mm",
            Self::Centimetre => "cm",
            Self::Inch => "in",
            Self::Decimetre => "dm",
            Self::Foot => "ft",
            Self::Metre => "m",
        }
    }

    /// The unit that a word, abbreviation or mark stands for.
    pub fn from_word(word: &str) -> Option<Self> {
        Some(match word.trim_end_matches('.').to_lowercase().as_str() {
            "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => Self::Millimetre,
            "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => Self::Centimetre,
            "dm" | "decimetre" | "decimetres" | "decimeter" | "decimeters" => Self::Decimetre,
            "m" | "metre" | "metres" | "meter" | "meters" => Self::Metre,
            "in" | "inch" | "inches" | "\"" | "″" | "''" | "”" => Self::Inch,
            "ft" | "foot" | "feet" | "'" | "′" | "’" => Self::Foot,
            _ => return None,
        })
    }
}

/// The finest division a length was written to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Division {
    /// So many decimals of the unit; 0 is whole units.
    Decimals(u8),
    /// Fractions of the unit with this denominator.
    Fraction(u16),
}

/// How a length was written: the unit, whether feet stood beside inches, and the finest division.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Notation {
    /// The unit; for feet and inches, the inch.
    pub unit: Unit,
    /// Written as feet and inches, such as 5'3".
    pub feet_and_inches: bool,
    /// The finest division written.
    pub division: Division,
}

impl Notation {
    /// Whole or decimal numbers of one unit.
    pub const fn decimals(unit: Unit, places: u8) -> Self {
        Self { unit, feet_and_inches: false, division: Division::Decimals(places) }
    }

    /// The finest division written, as a length: the last decimal place, or one of the denominator.
    ///
    /// # Example
    /// ```
    /// use tautline_engine::length::{Length, Notation, Unit};
    /// assert_eq!(Notation::decimals(Unit::Metre, 2).step(), Length::from_units(1, Unit::Centimetre));
    /// ```
    pub fn step(self) -> Length {
        let parts = match self.division {
            Division::Decimals(places) => 10_i64.pow(u32::from(places).min(18)),
            Division::Fraction(denominator) => i64::from(denominator.max(1)),
        };
        Length(self.unit.nanometres() / parts)
    }

    /// The finer of two notations of the same unit, so that a sum of both can be written without loss.
    /// Different units keep the first.
    #[must_use]
    pub fn finer(self, other: Self) -> Self {
        if self.unit != other.unit {
            return self;
        }
        let division = match (self.division, other.division) {
            (Division::Decimals(a), Division::Decimals(b)) => Division::Decimals(a.max(b)),
            (Division::Fraction(a), Division::Fraction(b)) => Division::Fraction(a.max(b)),
            (fraction @ Division::Fraction(_), Division::Decimals(0))
            | (Division::Decimals(0), fraction @ Division::Fraction(_)) => fraction,
            // halves beside tenths: decimals hold halves, quarters and eighths
            (Division::Fraction(_), Division::Decimals(places))
            | (Division::Decimals(places), Division::Fraction(_)) => Division::Decimals(places.max(3)),
        };
        Self { unit: self.unit, feet_and_inches: self.feet_and_inches && other.feet_and_inches, division }
    }
}

/// A length as it was read from text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Written {
    /// The exact length.
    pub length: Length,
    /// How it was written.
    pub notation: Notation,
    /// The text was not whole in nanometres (a third of an inch) and was rounded once, half away from zero.
    pub rounded: bool,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn divisions_that_a_tape_shows_are_whole_nanometres() {
        assert_eq!(Unit::Inch.nanometres() % 64, 0);
        assert_eq!(Unit::Foot.nanometres() % 100, 0);
        assert_eq!(Unit::Foot.nanometres(), 12 * Unit::Inch.nanometres());
    }

    #[test]
    fn share_is_a_plain_division() {
        let share = Length::from_units(73, Unit::Inch).share_of(Length::from_units(65, Unit::Foot));
        assert!((share - 73.0 / 780.0).abs() < 1e-15);
    }
}
