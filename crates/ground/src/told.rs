//! What is said of a boundary or a layout: why it is refused, and what was mended.

use crate::baseline::BaselineError;
use crate::drawn::NoLayout;
use crate::lay::LayError;
use crate::magnetic::NoDeclination;
use crate::position::Position;
use crate::site::{BoundaryError, Repair};
use tautline_engine::place::region::RingFault;
use tautline_survey::message::{Message, Value};

impl BoundaryError {
    /// What is wrong, and where.
    pub fn message(self) -> Message {
        match self {
            Self::NoArea => Message::new("boundary-no-area"),
            Self::NotOnEarth { part, found } => Message::new("boundary-not-on-earth")
                .with("part", part)
                .with("longitude", Value::Number(found[0], 6))
                .with("latitude", Value::Number(found[1], 6)),
            Self::OldDatum { part } => Message::new("boundary-old-datum").with("part", part),
            Self::Ring { part, fault, at } => {
                let code = match fault {
                    RingFault::TooFewPoints => "boundary-too-few-points",
                    RingFault::NoArea => "boundary-ring-no-area",
                    RingFault::MeetsItself { .. } => "boundary-meets-itself",
                    RingFault::TooFar { .. } => "boundary-too-far",
                };
                beside(Message::new(code).with("part", part), at)
            }
            Self::LineNotAWay { part } => Message::new("boundary-line").with("part", part),
            Self::StratumNotAnArea { part } => Message::new("boundary-stratum").with("part", part),
        }
    }
}

impl Repair {
    /// What was mended in a file, and where.
    pub fn message(&self, file: &str) -> Message {
        let about = |code, part: usize| Message::new(code).with("file", file).with("part", part);
        match *self {
            Self::Closed { part, metres } => {
                about("boundary-closed", part).with("metres", Value::Number(metres, 1))
            }
            Self::CutApart { part, at, polygons } => {
                beside(about("boundary-cut-apart", part), at).with("polygons", polygons)
            }
            Self::TakenOnce { part, points } => about("boundary-taken-once", part).with("points", points),
            Self::Overlap { ref stratum, square_metres } => {
                let code = if stratum.is_some() { "boundary-overlap-stratum" } else { "boundary-overlap" };
                Message::new(code)
                    .with("file", file)
                    .with("stratum", stratum.as_deref().unwrap_or_default())
                    .with("metres", Value::Number(square_metres, 0))
            }
            Self::InTwoStrata { square_metres } => Message::new("boundary-in-two-strata")
                .with("file", file)
                .with("metres", Value::Number(square_metres, 0)),
        }
    }
}

impl LayError {
    /// What is in the way.
    pub fn message(&self) -> Message {
        match self {
            Self::TooFewForStrata(least) => Message::new("layout-too-few").with("least", *least),
            Self::Shares(strata) => Message::new("layout-shares").with("strata", strata.clone()),
            Self::Bearings(strata) => Message::new("layout-bearings").with("strata", strata.clone()),
            Self::Baseline(BaselineError::TooShort) => Message::new("baseline-too-short"),
            Self::Baseline(BaselineError::NoRoom) => Message::new("baseline-no-room"),
            Self::NameTaken(line) => Message::new("layout-name-taken").with("line", line.as_str()),
            Self::NoDeclination(NoDeclination::OutsideTheModel) => Message::new("declination-date"),
            Self::NoDeclination(NoDeclination::HeightOutsideTheModel) => Message::new("declination-height"),
        }
    }
}

impl NoLayout {
    /// What is in the way.
    pub fn message(&self) -> Message {
        match self {
            Self::Boundary(error) => error.message(),
            Self::NoDeclination(why) => LayError::NoDeclination(*why).message(),
        }
    }
}

fn beside(message: Message, at: Position) -> Message {
    message
        .with("longitude", Value::Number(at.longitude(), 6))
        .with("latitude", Value::Number(at.latitude(), 6))
}
