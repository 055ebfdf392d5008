//! An eye that leans: how far off it reads an edge above the tape.

use super::exercise::TapeKind;
use crate::measure::Measure;
use crate::message::{Message, Value};
use crate::output::VERSION;
use serde::Serialize;
use tautline_engine::length::{Bare, DecimalMark, Length, Notation, Unit};
use tautline_engine::practice::line::parallax;
use tautline_engine::seed::Seed;

/// One exercise: an edge at a height, and an eye that leans.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SightDrill {
    /// How high the edge stands over the tape.
    pub height: Length,
    /// How far from straight down the eye looks, in degrees.
    pub degrees: u8,
    /// In which unit it is asked and answered.
    pub unit: Unit,
}

impl SightDrill {
    /// Draws one; the same number is the same exercise. Centimetres on a metric tape, inches on the others.
    pub fn draw(tape: TapeKind, number: u64) -> Self {
        let mut random = Seed::from_purpose("practice sight", &[number]).stream();
        let (unit, step) = if tape == TapeKind::Metric { (Unit::Centimetre, 5) } else { (Unit::Inch, 2) };
        let mut of = |least: u64, most: u64| least + random.below(most - least + 1);
        let height = i64::try_from(of(2, 20)).unwrap_or(2) * step;
        let degrees = u8::try_from(5 * of(1, 6)).unwrap_or(5);
        Self { height: Length::from_units(height, unit), degrees, unit }
    }

    /// How far off the edge is read: h · tan α.
    ///
    /// # Units
    /// those of the exercise
    /// # Source
    /// plane trigonometry
    /// # Example
    /// From 45° it is the height itself; tan 20° is 0.364 (any table), so 60 cm are read 21.8 cm off.
    /// ```
    /// use tautline_engine::length::{Length, Unit};
    /// use tautline_survey::practice::SightDrill;
    /// let unit = Unit::Centimetre;
    /// let drill = SightDrill { height: Length::from_units(60, unit), degrees: 20, unit };
    /// assert!((drill.off() - 21.8).abs() < 0.05);
    /// assert_eq!([drill.is_right("22"), drill.is_right("21.8 cm"), drill.is_right("20")], [Some(true), Some(true), Some(false)]);
    /// assert_eq!(drill.is_right("far"), None);
    /// ```
    pub fn off(&self) -> f64 {
        parallax(self.height, f64::from(self.degrees)) / Length::from_units(1, self.unit).in_unit(Unit::Metre)
    }

    /// Whether an answer is right to the whole unit; `None` where it is no length.
    pub fn is_right(&self, answer: &str) -> Option<bool> {
        let read = Measure::read(answer, Some(Bare::Unit(self.unit)), DecimalMark::Point).ok()?;
        Some((read.length().in_unit(self.unit) - self.off()).abs() <= 0.5 + 1e-9)
    }

    /// What is asked, and its solution.
    pub fn words(&self) -> [Message; 2] {
        let notation = Notation::decimals(self.unit, 0);
        ["lesson-sight-asked", "lesson-sight-solved"].map(|code| {
            Message::new(code)
                .with("height", Value::Length(self.height, notation))
                .with("degrees", self.degrees.to_string())
                .with("off", Value::Number(self.off(), 1))
                .with("unit", self.unit.symbol())
        })
    }
}

/// What `tautline practice drill --kind sight --json` prints.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SightOutput {
    /// `tautline.practice-sight`
    pub format: &'static str,
    /// The version of the format.
    pub version: u32,
    /// How high the edge stands over the tape, in nanometres.
    pub height_nm: i64,
    /// How far from straight down the eye looks.
    pub degrees: u8,
    /// The unit of the answer.
    pub unit: &'static str,
    /// How far off the edge is read, in that unit, where the solution was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub off: Option<f64>,
    /// Whether the learner's answer is right, where there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub right: Option<bool>,
}

/// An eye that leans, as data.
pub fn sight_output(drill: &SightDrill, solution: bool, right: Option<bool>) -> SightOutput {
    SightOutput {
        format: "tautline.practice-sight",
        version: VERSION,
        height_nm: drill.height.nanometres(),
        degrees: drill.degrees,
        unit: drill.unit.symbol(),
        off: solution.then(|| drill.off()),
        right,
    }
}
