//! Lengths that were worked out, said in the units that a person likes. What somebody wrote down stays as they wrote it:
//! only values of messages pass through here.

use tautline_engine::length::{Notation, Unit};

/// The units in which lengths are said.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Lengths {
    /// Those that each was written in.
    #[default]
    AsWritten,
    /// Metres, centimetres and millimetres.
    Metric,
    /// Feet and inches, with decimals.
    FeetAndInches,
}

impl Lengths {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::AsWritten, Self::Metric, Self::FeetAndInches];

    /// A short name for what keeps it.
    pub const fn code(self) -> &'static str {
        match self {
            Self::AsWritten => "as-written",
            Self::Metric => "metric",
            Self::FeetAndInches => "feet-and-inches",
        }
    }

    /// The one of that name.
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|one| one.code() == code)
    }

    /// How a length is said that was written in a notation: in the nearest unit of the other system, with decimals enough
    /// that steps of the tape stay apart.
    ///
    /// # Example
    /// ```
    /// use tautline_engine::length::{Length, Notation, Unit, write};
    /// use tautline_words::Lengths;
    /// let tape = Notation::decimals(Unit::Foot, 1);
    /// let said = |lengths: Lengths| write(Length::from_units(100, Unit::Foot), lengths.notation(tape));
    /// assert_eq!(said(Lengths::AsWritten), "100.0 ft");
    /// assert_eq!(said(Lengths::Metric), "30.48 m"); // 1 ft is 0.3048 m exactly
    /// ```
    ///
    /// # Source
    /// the foot of 0.3048 m and the inch of 2.54 cm: the international yard and pound agreement of 1959, as in NIST Special
    /// Publication 811 (Thompson, Taylor 2008), appendix B
    #[must_use]
    pub fn notation(self, written: Notation) -> Notation {
        let metric = !matches!(written.unit, Unit::Inch | Unit::Foot);
        // feet and inches have the inch for their unit, but are as long as feet
        let unit = if written.feet_and_inches { Unit::Foot } else { written.unit };
        let said = match (self, metric) {
            (Self::Metric, false) if unit == Unit::Foot => Unit::Metre,
            (Self::Metric, false) => Unit::Centimetre,
            (Self::FeetAndInches, true) if matches!(unit, Unit::Metre | Unit::Decimetre) => Unit::Foot,
            (Self::FeetAndInches, true) => Unit::Inch,
            _ => return written,
        };
        Notation::decimals(said, places(written, said))
    }
}

/// The fewest decimals whose step is no longer than one and a half of the steps that were written.
fn places(written: Notation, said: Unit) -> u8 {
    let step = written.step().nanometres();
    let fine = |&places: &u8| Notation::decimals(said, places).step().nanometres() * 2 <= step * 3;
    (0..=6).find(fine).unwrap_or(6)
}

#[cfg(test)]
mod tests {
    use super::*;
    use tautline_engine::length::{Bare, DecimalMark, read, write};

    fn said(text: &str, lengths: Lengths) -> String {
        let read = read(text, Some(Bare::Unit(Unit::Inch)), DecimalMark::Point).expect("a length");
        write(read.length, lengths.notation(read.notation))
    }

    /// NIST Special Publication 811, appendix B: 1 in is 2.54 cm, 1 ft is 0.3048 m.
    #[test]
    fn units_that_a_person_likes() {
        assert_eq!(said("12 in", Lengths::Metric), "30 cm");
        assert_eq!(said("10 1/8 in", Lengths::Metric), "25.7 cm");
        assert_eq!(said("5'3 1/2\"", Lengths::Metric), "1.61 m");
        assert_eq!(said("33.7 ft", Lengths::Metric), "10.27 m");
        assert_eq!(said("54 cm", Lengths::FeetAndInches), "21.3 in");
        assert_eq!(said("30 m", Lengths::FeetAndInches), "98 ft");
        assert_eq!(said("3.27 m", Lengths::FeetAndInches), "10.73 ft");
        assert_eq!(said("8 mm", Lengths::FeetAndInches), "0.31 in");
    }

    #[test]
    fn own_units_stay_as_they_were_written() {
        for (text, lengths) in [("5'3 1/2\"", Lengths::FeetAndInches), ("3.20 m", Lengths::Metric)] {
            assert_eq!(said(text, lengths), text);
        }
        assert_eq!(said("10 1/8 in", Lengths::AsWritten), "10 1/8 in");
        for one in Lengths::ALL {
            assert_eq!(Lengths::from_code(one.code()), Some(one));
        }
    }
}
