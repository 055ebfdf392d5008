//! An exercise: a practice line under a protocol, with its name, its species and its key.

use crate::plants::{GrowthForm, Plant};
use crate::protocol::Protocol;
use tautline_engine::cover::line_cover;
use tautline_engine::length::{Division, Length, Notation, Unit};
use tautline_engine::practice::grade::Measure;
use tautline_engine::practice::level::{Level, Wanted, draw};
use tautline_engine::practice::line::PracticeLine;
use tautline_engine::practice::mistake::{Mistake, Row, sheet};

/// The species of practice lines, by their numbers: code and common name.
pub const SPECIES: [(&str, &str, GrowthForm); 4] = [
    ("FOUR", "fourwing saltbush", GrowthForm::Shrub),
    ("SHAD", "shadscale", GrowthForm::Shrub),
    ("WINT", "winterfat", GrowthForm::Subshrub),
    ("GREA", "greasewood", GrowthForm::Shrub),
];

/// How the tape of an exercise is numbered.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum TapeKind {
    /// Feet and inches, to the half inch.
    FeetAndInches,
    /// Feet in tenths and hundredths.
    DecimalFeet,
    /// Metres and centimetres.
    Metric,
}

impl TapeKind {
    /// The word in options and data.
    pub const fn word(self) -> &'static str {
        match self {
            Self::FeetAndInches => "ft-in",
            Self::DecimalFeet => "decimal-ft",
            Self::Metric => "metric",
        }
    }

    /// The kind that a word stands for.
    pub fn from_word(word: &str) -> Option<Self> {
        [Self::FeetAndInches, Self::DecimalFeet, Self::Metric].into_iter().find(|kind| kind.word() == word)
    }

    /// How its lengths are written.
    pub const fn notation(self) -> Notation {
        match self {
            Self::FeetAndInches => {
                Notation { unit: Unit::Inch, feet_and_inches: true, division: Division::Fraction(2) }
            }
            Self::DecimalFeet => Notation::decimals(Unit::Foot, 2),
            Self::Metric => Notation::decimals(Unit::Metre, 2),
        }
    }

    /// How long a line is where nobody says: 50 ft or 15 m.
    pub const fn usual_length(self) -> Length {
        match self {
            Self::FeetAndInches | Self::DecimalFeet => Length::from_units(50, Unit::Foot),
            Self::Metric => Length::from_units(15, Unit::Metre),
        }
    }
}

/// A practice line under a protocol.
#[derive(Clone, Debug)]
pub struct Exercise {
    /// How hard.
    pub level: Level,
    /// Its number.
    pub seed: u64,
    /// How the tape is numbered.
    pub tape: TapeKind,
    /// The rules.
    pub protocol: Protocol,
    /// The line.
    pub line: PracticeLine,
}

impl Exercise {
    /// Draws an exercise; the same level, number, length, tape and gap rule are the same line.
    pub fn draw(level: Level, seed: u64, length: Length, tape: TapeKind, protocol: Protocol) -> Self {
        let gap = protocol.rule().0.gap.limit;
        let mut line = draw(&Wanted { level, length, tape: tape.notation(), gap, seed });
        // what the protocol doesn't count isn't among the shrubs to read
        let counts = protocol.counts_or_woody();
        let counted = |species: u32| {
            usize::try_from(species).ok().and_then(|at| SPECIES.get(at)).is_none_or(
                |&(code, common, form)| {
                    let plant = Plant { common: common.to_owned(), ..Plant::new(code, form) };
                    counts.includes(&plant.code, Some(&plant))
                },
            )
        };
        line.shrubs.retain(|shrub| counted(shrub.species));
        Self { level, seed, tape, protocol, line }
    }

    /// Its name on sheets and in tables: level and number.
    pub fn name(&self) -> String {
        format!("{}-{}", self.level.number(), self.seed)
    }

    /// The level and number that a name stands for.
    ///
    /// # Example
    /// ```
    /// use tautline_survey::practice::Exercise;
    /// assert_eq!(Exercise::level_and_number("3-17").map(|(level, number)| (level.number(), number)), Some((3, 17)));
    /// assert_eq!(Exercise::level_and_number("L4"), None);
    /// ```
    pub fn level_and_number(name: &str) -> Option<(Level, u64)> {
        let (level, number) = name.trim().split_once('-')?;
        Some((Level::from_number(level.trim().parse().ok()?)?, number.trim().parse().ok()?))
    }

    /// The rows of the key, gaps closed by the rule, dead left out, along the tape.
    pub fn key(&self) -> Vec<Row> {
        sheet(&self.line, &self.protocol.rule().0, None)
    }

    /// What somebody with a mistake would write.
    pub fn with_mistake(&self, mistake: Mistake) -> Vec<Row> {
        sheet(&self.line, &self.protocol.rule().0, Some(mistake))
    }

    /// Canopy of the key, overlap counted once, and the sum of species.
    pub fn key_lengths(&self) -> (Length, Length) {
        let cover = line_cover(self.line.length, &self.line.intercepts(), &self.protocol.rule().0);
        (cover.canopy_length(), cover.sum_length())
    }

    /// How rows are measured: edges within a tolerance, gaps by the protocol.
    pub fn measure(&self, tolerance: Length) -> Measure {
        Measure { tolerance, gap: self.protocol.rule().0.gap }
    }

    /// A species' code.
    pub fn code(species: Option<u32>) -> &'static str {
        let at = species.and_then(|species| usize::try_from(species).ok());
        at.and_then(|at| SPECIES.get(at)).map_or("", |(code, ..)| code)
    }

    /// The species that was written, by code or common name; one that isn't on the list gets a number beyond it.
    pub fn species(written: &str) -> u32 {
        let wanted = written.trim();
        let same = |(code, common, _): &(&str, &str, GrowthForm)| {
            code.eq_ignore_ascii_case(wanted) || common.eq_ignore_ascii_case(wanted)
        };
        SPECIES.iter().position(same).and_then(|at| u32::try_from(at).ok()).unwrap_or(u32::MAX)
    }
}
