//! What `tautline agree log --json` prints.

use super::{Calibration, Reminder};
use crate::date::Date;
use crate::input::Input;
use crate::output::{ProtocolOutput, VERSION, protocols};
use serde::Serialize;

/// What `tautline agree log --json` prints.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct AgreeLogOutput {
    /// `tautline.agree-log`
    pub format: &'static str,
    /// The version of the format.
    pub version: u32,
    /// The day that the reminders speak of.
    pub on: Date,
    /// The protocols of the notebook.
    pub protocols: Vec<ProtocolOutput>,
    /// The calibrations, in the order of time.
    pub calibrations: Vec<CalibrationOutput>,
    /// Where each reader stands.
    pub readers: Vec<ReminderOutput>,
}

/// One calibration; differences are shares of the line, the reader's less the other's.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CalibrationOutput {
    /// The last day on which the reader read one of the lines.
    pub date: Date,
    /// The site.
    pub site: String,
    /// The reader.
    pub reader: String,
    /// Beside whom.
    pub against: String,
    /// The fingerprints of the protocols the lines were read under.
    pub protocols: Vec<String>,
    /// The office's tolerance.
    pub tolerance: f64,
    /// Lines within it.
    pub within: usize,
    /// Line, difference.
    pub lines: Vec<(String, f64)>,
    /// Their mean.
    pub bias: f64,
    /// `calibration-passed` or `calibration-repeat`.
    pub outcome: &'static str,
    /// Who judged it.
    pub judge: String,
}

/// Where one reader stands.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ReminderOutput {
    /// The reader.
    pub reader: String,
    /// The day of the latest calibration that was passed; absent where none was.
    pub passed: Option<Date>,
    /// How many days ago that was.
    pub days: Option<u32>,
    /// Days that a calibration lasts in this office, where they were given.
    pub span: Option<u32>,
    /// Whether a calibration is due.
    pub due: bool,
    /// Lines read within a year, calibrations aside.
    pub lines: usize,
    /// Those of them that no calibration covers.
    pub uncovered: usize,
}

/// The log as data.
pub fn log_output(input: &Input, on: Date, reminders: &[Reminder]) -> AgreeLogOutput {
    AgreeLogOutput {
        format: "tautline.agree-log",
        version: VERSION,
        on,
        protocols: protocols(input),
        calibrations: input.calibrations.iter().map(calibration).collect(),
        readers: reminders.iter().map(reminder).collect(),
    }
}

fn calibration(one: &Calibration) -> CalibrationOutput {
    CalibrationOutput {
        date: one.date,
        site: one.site.clone(),
        reader: one.reader.clone(),
        against: one.against.clone(),
        protocols: one.protocols.clone(),
        tolerance: one.tolerance.share(),
        within: one.within(),
        lines: one.lines.iter().map(|line| (line.line.clone(), line.share())).collect(),
        bias: one.bias(),
        outcome: one.outcome.code(),
        judge: one.judge.clone(),
    }
}

fn reminder(one: &Reminder) -> ReminderOutput {
    ReminderOutput {
        reader: one.reader.clone(),
        passed: one.passed.map(|(passed, _)| passed.date),
        days: one.passed.map(|(_, days)| days),
        span: one.span,
        due: one.is_due(),
        lines: one.lines,
        uncovered: one.uncovered,
    }
}
