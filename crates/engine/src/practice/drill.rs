//! Arithmetic by hand, drawn by number: add, turn feet into inches, divide, round; with the worked solution.

use crate::length::{Division, Length, Notation, Unit};
use crate::seed::Seed;
use crate::work::{Term, Worked, rounded_ratio, worked};

/// What is practised.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Kind {
    /// Add up intercepts in one unit.
    Add,
    /// Turn feet and inches into inches, and add.
    FeetToInches,
    /// Take intercepts from their edges, and add.
    Subtract,
    /// Add, turn the line into the intercepts' unit, divide, round to a per cent with one decimal.
    Whole,
}

impl Kind {
    /// Every kind, easiest first.
    pub const ALL: [Self; 4] = [Self::Add, Self::FeetToInches, Self::Subtract, Self::Whole];

    /// A stable key for data, options and the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Add => "add",
            Self::FeetToInches => "feet-to-inches",
            Self::Subtract => "subtract",
            Self::Whole => "whole",
        }
    }

    /// The kind with this key.
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.code() == code)
    }
}

/// One drill.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Drill {
    /// What is practised.
    pub kind: Kind,
    /// The intercepts as given.
    pub terms: Vec<Term>,
    /// The line.
    pub line: Length,
    /// How the line is given.
    pub line_notation: Notation,
}

/// Decimals that a per cent is rounded to.
pub const PLACES: u32 = 1;

impl Drill {
    /// Draws a drill; the same number is the same drill.
    ///
    /// # Example
    /// ```
    /// use tautline_engine::practice::drill::{Drill, Kind};
    /// let drill = Drill::draw(Kind::Whole, 5);
    /// assert!(drill.is_right(&drill.answer()));
    /// assert!(!drill.is_right("0"));
    /// ```
    pub fn draw(kind: Kind, seed: u64) -> Self {
        let mut random = Seed::from_purpose("practice drill", &[kind as u64, seed]).stream();
        let halves = Notation { unit: Unit::Inch, feet_and_inches: false, division: Division::Fraction(2) };
        let notation = Notation { feet_and_inches: kind == Kind::FeetToInches, ..halves };
        let half = notation.step().nanometres();
        let mut of = |least: u64, most: u64| {
            let halves = least + random.below(most - least);
            Length::from_nanometres(i64::try_from(halves).unwrap_or(0) * half)
        };
        let feet = [50, 65, 100][usize::try_from(of(0, 3).nanometres() / half).unwrap_or(0)];
        let mut from = Length::ZERO;
        let terms = (0..7 + of(0, 5).nanometres() / half)
            .map(|_| {
                let length = if kind == Kind::FeetToInches { of(10, 150) } else { of(3, 80) };
                from = from + of(6, 60);
                let edges = (kind == Kind::Subtract).then(|| (from, from + length));
                from = from + length;
                Term { edges, length, notation }
            })
            .collect();
        let line = Length::from_units(feet, Unit::Foot);
        Self { kind, terms, line, line_notation: Notation::decimals(Unit::Foot, 0) }
    }

    /// The solution, line by line.
    pub fn worked(&self) -> Worked {
        worked(&self.terms, self.line, self.line_notation, PLACES)
    }

    /// The right answer: inches, or per cent for the whole arithmetic.
    pub fn answer(&self) -> String {
        let worked = self.worked();
        if self.kind == Kind::Whole { worked.percent } else { worked.total }
    }

    /// Whether an answer is right: the number itself, or for a per cent one that rounds to it.
    pub fn is_right(&self, answer: &str) -> bool {
        let typed = answer.trim().trim_end_matches(['%', '"']).trim_end_matches("in").trim();
        let (Ok(typed), Ok(right)) = (typed.parse::<f64>(), self.answer().parse::<f64>()) else {
            return false;
        };
        let slack = if self.kind == Kind::Whole { 0.05 } else { 0.0 };
        (typed - right).abs() <= slack + 1e-9
    }
}

/// Whether a per cent is what rows and line come to, rounded to a whole, one or two decimals: right arithmetic, whatever the rows.
///
/// # Example
/// 73 in of 780 in is 9.359 %.
/// ```
/// use tautline_engine::{length::{Length, Unit}, practice::drill::sums_up};
/// let (total, line) = (Length::from_units(73, Unit::Inch), Length::from_units(65, Unit::Foot));
/// assert!(sums_up("9.4", total, line) && sums_up("9", total, line) && sums_up("9.36", total, line));
/// assert!(!sums_up("9.3", total, line));
/// ```
pub fn sums_up(percent: &str, total: Length, line: Length) -> bool {
    let typed = percent.trim().trim_end_matches('%').trim();
    let places = typed.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    let Ok(places) = u32::try_from(places.min(4)) else { return false };
    rounded_ratio(total.nanometres().saturating_mul(100), line.nanometres(), places) == typed
}
