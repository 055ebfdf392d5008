//! A practice line that is being read on its picture: one place on the tape, edges set there, moved, and taken back.
//!
//! Places are whole divisions of the tape, as every edge of a practice line is.

use super::exercise::Exercise;
use super::sheet::{LearnerRow, LearnerSheet};
use crate::measure::Measure;
use serde::{Deserialize, Serialize};
use tautline_engine::length::{DecimalMark, Length, Notation, write};

/// One intercept as it was set.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Placed {
    /// The species' number on the line.
    pub species: u32,
    /// Its start, in divisions.
    pub start: i64,
    /// Its stop, in divisions.
    pub stop: i64,
}

/// Which edge of an intercept.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Edge {
    /// Where it starts.
    Start,
    /// Where it stops.
    Stop,
}

/// What came of setting an edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Came {
    /// An intercept was begun.
    Started,
    /// It was ended, and stands.
    Stopped,
    /// An edge that was taken up was put down.
    Moved,
    /// Nothing: an intercept needs a length.
    NoLength,
}

/// A reading in the making.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Reading {
    /// How long the tape is, in divisions.
    end: i64,
    /// The place that is looked at.
    at: i64,
    /// Where the intercept that is open began.
    since: Option<i64>,
    /// The species that is written next.
    species: u32,
    /// What was set, along the tape.
    rows: Vec<Placed>,
    /// The edge that was taken up to be moved: of which row.
    held: Option<(usize, Edge)>,
    /// What stood before each step, the last one last.
    before: Vec<(Vec<Placed>, Option<i64>)>,
}

impl Reading {
    /// Nothing set yet on the tape of an exercise.
    pub fn of(exercise: &Exercise) -> Self {
        let end = exercise.line.length.nanometres() / exercise.line.step().nanometres().max(1);
        Self { end, ..Self::default() }
    }

    /// How long the tape is, in divisions.
    pub const fn end(&self) -> i64 {
        self.end
    }

    /// The place that is looked at, in divisions.
    pub const fn at(&self) -> i64 {
        self.at
    }

    /// Where the intercept that is open began.
    pub const fn since(&self) -> Option<i64> {
        self.since
    }

    /// The species that is written next.
    pub const fn species(&self) -> u32 {
        self.species
    }

    /// What was set, along the tape.
    pub fn rows(&self) -> &[Placed] {
        &self.rows
    }

    /// The edge that was taken up to be moved.
    pub const fn held(&self) -> Option<(usize, Edge)> {
        self.held
    }

    /// Whether a step can be taken back.
    pub fn can_undo(&self) -> bool {
        !self.before.is_empty()
    }

    /// Looks at another place; the tape's ends hold.
    pub fn go(&mut self, at: i64) {
        self.at = at.clamp(0, self.end);
    }

    /// Looks so many divisions further on, or back.
    pub fn step(&mut self, by: i64) {
        self.go(self.at.saturating_add(by));
    }

    /// The species that is written next; where an edge is taken up, its intercept becomes one of it.
    pub fn choose(&mut self, species: u32) {
        self.species = species;
        if let Some((row, _)) = self.held {
            self.keep();
            if let Some(row) = self.rows.get_mut(row) {
                row.species = species;
            }
        }
    }

    /// Sets an edge where one looks: a start, then its stop; or puts down the edge that was taken up.
    ///
    /// # Example
    /// A stop that lies before its start changes places with it.
    /// ```
    /// use tautline_survey::practice::{Came, Exercise, Reading, TapeKind};
    /// use tautline_survey::protocol::Protocol;
    /// let tape = TapeKind::Metric;
    /// let level = Exercise::level_and_number("1-1").unwrap().0;
    /// let line = Exercise::draw(level, 1, tape.usual_length(), tape, Protocol::default());
    /// let mut reading = Reading::of(&line);
    /// reading.go(40);
    /// assert_eq!((reading.set(), reading.set()), (Came::Started, Came::NoLength));
    /// reading.step(-10);
    /// assert_eq!(reading.set(), Came::Stopped);
    /// assert_eq!((reading.rows()[0].start, reading.rows()[0].stop), (30, 40));
    /// ```
    pub fn set(&mut self) -> Came {
        if let Some((row, edge)) = self.held {
            return self.put_down(row, edge);
        }
        let Some(since) = self.since else {
            self.keep();
            self.since = Some(self.at);
            return Came::Started;
        };
        if since == self.at {
            return Came::NoLength;
        }
        self.keep();
        let (start, stop) = (since.min(self.at), since.max(self.at));
        self.rows.push(Placed { species: self.species, start, stop });
        self.since = None;
        self.sort();
        Came::Stopped
    }

    fn put_down(&mut self, row: usize, edge: Edge) -> Came {
        let Some(&own) = self.rows.get(row) else {
            self.held = None;
            return Came::NoLength;
        };
        let moved = match edge {
            Edge::Start => Placed { start: self.at, ..own },
            Edge::Stop => Placed { stop: self.at, ..own },
        };
        if moved.start >= moved.stop {
            return Came::NoLength;
        }
        self.keep();
        self.rows[row] = moved;
        self.held = None;
        self.sort();
        Came::Moved
    }

    /// Takes an edge up to be moved, and looks at it.
    pub fn take_up(&mut self, row: usize, edge: Edge) {
        let Some(&own) = self.rows.get(row) else { return };
        self.since = None;
        self.species = own.species;
        self.held = Some((row, edge));
        self.go(match edge {
            Edge::Start => own.start,
            Edge::Stop => own.stop,
        });
    }

    /// Leaves what is open or taken up as it was.
    pub fn leave(&mut self) {
        self.held = None;
        self.since = None;
    }

    /// Takes an intercept away.
    pub fn remove(&mut self, row: usize) {
        if row < self.rows.len() {
            self.keep();
            self.rows.remove(row);
            self.held = None;
        }
    }

    /// Takes the last step back.
    pub fn undo(&mut self) {
        if let Some((rows, since)) = self.before.pop() {
            (self.rows, self.since, self.held) = (rows, since, None);
        }
    }

    fn keep(&mut self) {
        self.before.push((self.rows.clone(), self.since));
    }

    fn sort(&mut self) {
        self.rows.sort_unstable_by_key(|row| (row.start, row.stop, row.species));
    }

    /// What was set, as a learner's sheet of the exercise.
    pub fn sheet(&self, exercise: &Exercise) -> LearnerSheet {
        let notation = exercise.tape.notation();
        let measure = |place: i64| {
            Measure::read(&write(length(place, notation), notation), None, DecimalMark::Point).ok()
        };
        let row = |row: &Placed| {
            let species = Exercise::code(Some(row.species)).to_owned();
            Some(LearnerRow { species, edges: Some((measure(row.start)?, measure(row.stop)?)), length: None })
        };
        LearnerSheet {
            line: exercise.name(),
            rows: self.rows.iter().filter_map(row).collect(),
            ..LearnerSheet::default()
        }
    }
}

/// The length of so many divisions of a tape.
pub fn length(divisions: i64, tape: Notation) -> Length {
    Length::from_nanometres(divisions.saturating_mul(tape.step().nanometres()))
}
