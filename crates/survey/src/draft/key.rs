//! What a person can do to an unfinished line. Each is one event; a draft is nothing but its set-up and its keys.

use crate::plants::GrowthForm;
use serde::{Deserialize, Serialize};

/// One event.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Key {
    /// A digit of the number being typed; where a species is expected, the last one goes on.
    Digit(u8),
    /// The decimal mark.
    Mark,
    /// The sign between feet and inches.
    FeetAndInches,
    /// A fraction behind a whole number: so many of so many parts.
    Fraction(u8, u16),
    /// A letter of the species looked for.
    Letter(char),
    /// Takes back the last digit, fraction or letter typed.
    Erase,
    /// The number typed is finished.
    Done,
    /// A species, by its code or by whatever it is called.
    Species(String),
    /// A plant that nobody could name yet, under a working name; it is named later.
    NewPlant(String, Option<GrowthForm>),
    /// Another name for whatever was written under the first.
    Rename(String, String),
    /// Dead becomes live and live dead: of a row, or of the intercept under way.
    Dead(Option<u32>),
    /// The intercept under way, or a row, is part of the plant of the row before it.
    SamePlant(Option<u32>),
    /// A plant's mark, of the intercept under way.
    Plant(String),
    /// Start and stop of a row change places.
    Swap(u32),
    /// Types a figure of a row anew.
    Correct(u32, Figure),
    /// Another species for a row.
    CorrectSpecies(u32, String),
    /// The next intercept goes in front of this row.
    Insert(u32),
    /// A row becomes two: where the first stops and where the second starts is typed next.
    Split(u32),
    /// Two rows become one, from the lesser start to the greater stop.
    Join(u32, u32),
    /// A row is marked as taken out, or put back.
    Remove(u32),
    /// A remark on a row.
    Note(u32, String),
    /// What is being typed is left as it was.
    Leave,
    /// Lengths without positions, or positions again; only before the first row.
    LengthsOnly(bool),
    /// Nothing stood on this line, or that is taken back.
    Nothing,
    /// The line was read up to a mark that is typed next.
    ReadTo,
    /// The line was not read, and why.
    NotRead(String),
    /// The line was read from end to end after all.
    Whole,
    /// Growth stage, wind or whatever else is noted, by heading; empty takes it back.
    Condition(String, String),
    /// A person looked at what was said of a row and leaves it so.
    LeaveSo(u32, String),
}

/// A figure of a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Figure {
    /// Where it starts.
    Start,
    /// Where it stops.
    Stop,
    /// How long it is, where only lengths are written.
    Length,
    /// Height of the plant.
    Height,
    /// Greatest width of the plant at right angles to the line.
    Width,
}
