//! Marks: what a sheet earns for its edges, its species, its cover and its arithmetic.

use super::exercise::{Exercise, SPECIES};
use super::sheet::LearnerSheet;
use crate::date::Date;
use crate::message::{Message, Value};
use tautline_engine::length::{Length, Notation};
use tautline_engine::practice::drill::sums_up;
use tautline_engine::practice::grade::{Because, Found, Graded, Mark, Measure, grade};
use tautline_engine::practice::lengths::{LengthMark, grade_lengths};
use tautline_engine::practice::line::Facts;
use tautline_engine::practice::mistake::Row;
use tautline_engine::practice::recognise::{Named, Recogniser};
use tautline_engine::stretch::{total, union};

/// A band about the key's cover, and the part of the marks that it earns.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// Within so many percentage points of the key, as a share of the line.
    pub within: f64,
    /// The marks it earns.
    pub marks: f64,
}

/// How a sheet is marked. The numbers come from the year's rules; those of [`Marking::example`] are an example.
#[derive(Clone, Debug, PartialEq)]
pub struct Marking {
    /// How far an edge or a length may lie off and still be right; two divisions of the tape where nobody says.
    pub tolerance: Option<Length>,
    /// Marks for edges, all right.
    pub edges: f64,
    /// Marks for species, all right.
    pub species: f64,
    /// Marks for cover, by bands; the narrowest that holds counts.
    pub bands: Vec<Band>,
    /// Marks for right arithmetic, whatever the rows.
    pub arithmetic: f64,
    /// Whether these are the example and not anybody's rules.
    pub example: bool,
}

impl Marking {
    /// An example of a marking: no contest's and no agency's.
    pub fn example() -> Self {
        let band = |points: f64, marks| Band { within: points / 100.0, marks };
        Self {
            tolerance: None,
            edges: 20.0,
            species: 10.0,
            bands: vec![band(1.0, 10.0), band(2.0, 7.0), band(4.0, 4.0)],
            arithmetic: 10.0,
            example: true,
        }
    }

    /// Bands as a person types them: `1=10, 2=7, 4=4` is ten marks within one percentage point, and so on.
    ///
    /// # Example
    /// ```
    /// use tautline_survey::practice::Marking;
    /// let bands = Marking::read_bands("1=10, 2.5=5").unwrap();
    /// assert_eq!((bands[1].within, bands[1].marks), (0.025, 5.0));
    /// assert!(Marking::read_bands("2=5, 1=10").is_none());
    /// ```
    pub fn read_bands(text: &str) -> Option<Vec<Band>> {
        let number = |text: &str| text.trim().parse::<f64>().ok().filter(|n| (0.0..=1000.0).contains(n));
        let band = |part: &str| {
            let (within, marks) = part.split_once('=')?;
            Some(Band { within: number(within)? / 100.0, marks: number(marks)? })
        };
        let bands: Option<Vec<Band>> = text.split([',', ';']).map(band).collect();
        bands.filter(|bands| {
            bands.windows(2).all(|pair| pair[0].within < pair[1].within && pair[0].marks >= pair[1].marks)
        })
    }

    /// Marks for edges, species and arithmetic as a person types them: `20, 10, 10`.
    ///
    /// # Example
    /// ```
    /// use tautline_survey::practice::Marking;
    /// assert_eq!(Marking::read_marks("20, 10, 5"), Some([20.0, 10.0, 5.0]));
    /// assert_eq!(Marking::read_marks("20, 10"), None);
    /// ```
    pub fn read_marks(text: &str) -> Option<[f64; 3]> {
        let number = |part: &str| part.trim().parse().ok().filter(|n| (0.0..=1000.0).contains(n));
        let numbers: Option<Vec<f64>> = text.split([',', ';']).map(number).collect();
        numbers?.try_into().ok()
    }

    /// The narrowest band, as a share of the line.
    pub fn narrowest(&self) -> f64 {
        self.bands.first().map_or(0.0, |band| band.within)
    }

    /// What there is for each part.
    pub fn parts(&self) -> Parts {
        Parts {
            edges: self.edges,
            species: self.species,
            cover: self.bands.first().map_or(0.0, |band| band.marks),
            arithmetic: self.arithmetic,
        }
    }

    /// The marks for a cover that lies so far from the key's.
    pub fn for_cover(&self, off: f64) -> f64 {
        // a band typed as one point holds a difference of exactly one point, whatever the last bit of the division says
        self.bands.iter().find(|band| off.abs() <= band.within + 1e-12).map_or(0.0, |band| band.marks)
    }

    /// All marks there are.
    pub fn most(&self) -> f64 {
        self.parts().all()
    }
}

/// The marks of a sheet, part by part.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Parts {
    /// For edges, or for lengths where only those were written.
    pub edges: f64,
    /// For species.
    pub species: f64,
    /// For cover.
    pub cover: f64,
    /// For arithmetic; zero where no per cent was handed in.
    pub arithmetic: f64,
}

impl Parts {
    /// All together.
    pub fn all(&self) -> f64 {
        self.edges + self.species + self.cover + self.arithmetic
    }
}

/// A sheet that was marked.
#[derive(Clone, Debug)]
pub struct Marked {
    /// Who.
    pub name: String,
    /// Of which group.
    pub group: String,
    /// The line.
    pub line: String,
    /// The day, where it was written.
    pub date: Option<Date>,
    /// The codes of the line's species, by their numbers.
    pub codes: Vec<String>,
    /// How the tape is numbered, for showing lengths.
    pub notation: Notation,
    /// Intercept by intercept, where places were written.
    pub graded: Option<Graded>,
    /// Length by length, where only lengths were.
    pub lengths: Vec<LengthMark>,
    /// The key's cover of the line.
    pub key: f64,
    /// The sheet's cover by its own rows.
    pub rows: f64,
    /// The cover that the learner worked out, as typed.
    pub stated: Option<String>,
    /// Whether that is what the rows come to.
    pub sums_up: Option<bool>,
    /// The marks.
    pub parts: Parts,
    /// The mistake that explains the sheet, where one does.
    pub named: Option<Named>,
}

/// What a sheet is set beside.
struct Against<'a> {
    key: &'a [Row],
    canopy: Length,
    sum: Length,
    length: Length,
    facts: Facts,
    measure: Measure,
    notation: Notation,
    codes: Vec<String>,
}

/// Marks a sheet of an exercise. `recogniser` is the exercise's own, made once for all its learners.
pub fn mark(sheet: &LearnerSheet, exercise: &Exercise, marking: &Marking, recogniser: &Recogniser) -> Marked {
    let (canopy, sum) = exercise.key_lengths();
    let tolerance = marking.tolerance.unwrap_or_else(|| double(exercise.line.step()));
    let key = exercise.key();
    let against = Against {
        key: &key,
        canopy,
        sum,
        length: exercise.line.length,
        facts: exercise.line.facts(),
        measure: exercise.measure(tolerance),
        notation: exercise.tape.notation(),
        codes: SPECIES.iter().map(|(code, ..)| (*code).to_owned()).collect(),
    };
    let mut marked = of(sheet, &against, marking, Exercise::species);
    if sheet.has_edges() {
        marked.named = recogniser.name(&[sheet.placed(Exercise::species)]);
    }
    marked
}

/// Marks a sheet of a real line whose key experts agreed on.
pub fn mark_real(
    sheet: &LearnerSheet,
    key: &super::ExpertKey,
    marking: &Marking,
    measure: Measure,
) -> Marked {
    let against = Against {
        key: &key.rows,
        canopy: key.canopy,
        sum: key.sum,
        length: key.length,
        facts: Facts::default(),
        measure,
        notation: key.notation,
        codes: key.codes.clone(),
    };
    of(sheet, &against, marking, |code| key.species(code))
}

fn double(length: Length) -> Length {
    length + length
}

fn of(
    sheet: &LearnerSheet,
    against: &Against<'_>,
    marking: &Marking,
    species: impl Fn(&str) -> u32,
) -> Marked {
    let share = |length: Length| length.share_of(against.length);
    let placed = sheet.placed(&species);
    let has_edges = sheet.has_edges();
    let canopy = total(&union(placed.iter().map(|row| row.stretch)));
    // lengths only can't say what overlaps, so they are set beside the sum of species
    let (key, rows) = if has_edges {
        (share(against.canopy), share(canopy))
    } else {
        (share(against.sum), share(sheet.sum()))
    };
    let graded = has_edges.then(|| grade(against.key, &placed, &against.facts, &against.measure));
    let of_key: Vec<(Option<u32>, Length)> =
        against.key.iter().map(|row| (row.species, row.stretch.length())).collect();
    let lengths = if has_edges {
        Vec::new()
    } else {
        grade_lengths(&of_key, &sheet.lengths(&species), double(against.measure.tolerance))
    };
    let stated = sheet
        .percent
        .as_deref()
        .and_then(|text| text.trim().trim_end_matches('%').trim().parse::<f64>().ok());
    let sums_up = sheet.percent.as_deref().map(|text| {
        sums_up(text, sheet.sum(), against.length) || (has_edges && sums_up(text, canopy, against.length))
    });
    let part =
        |right: usize, of: usize, marks: f64| if of == 0 { 0.0 } else { marks * count(right) / count(of) };
    let (edges, kinds) = if let Some(graded) = &graded {
        (
            part(graded.edges, graded.edges_of, marking.edges),
            part(graded.species, graded.species_of, marking.species),
        )
    } else {
        let right = lengths.iter().filter(|mark| mark.right).count();
        let paired = lengths.iter().filter(|mark| mark.key.is_some() && mark.read.is_some()).count();
        (part(right, lengths.len(), marking.edges), part(paired, against.key.len(), marking.species))
    };
    let parts = Parts {
        edges,
        species: kinds,
        cover: marking.for_cover(stated.map_or(rows, |stated| stated / 100.0) - key),
        arithmetic: if sums_up == Some(true) { marking.arithmetic } else { 0.0 },
    };
    Marked {
        name: sheet.name.clone(),
        group: sheet.group.clone(),
        line: sheet.line.clone(),
        date: sheet.date,
        codes: against.codes.clone(),
        notation: against.notation,
        graded,
        lengths,
        key,
        rows,
        stated: sheet.percent.clone(),
        sums_up,
        parts,
        named: None,
    }
}

fn count(number: usize) -> f64 {
    f64::from(u32::try_from(number).unwrap_or(u32::MAX))
}

/// A mark in words: which intercept, how it was read, and which rule explains it.
pub fn told(mark: &Mark, codes: &[String], notation: Notation) -> Message {
    let rows = if mark.key.is_empty() { &mark.read } else { &mark.key };
    let start = rows.iter().map(|row| row.stretch.start()).min().unwrap_or_default();
    let stop = rows.iter().map(|row| row.stretch.stop()).max().unwrap_or_default();
    let read_start = mark.read.iter().map(|row| row.stretch.start()).min().unwrap_or_default();
    let read_stop = mark.read.iter().map(|row| row.stretch.stop()).max().unwrap_or_default();
    let because = mark.because.map_or(Value::from(""), |because| Value::from(reason(because, notation)));
    let species = rows.first().and_then(|row| row.species).and_then(|species| usize::try_from(species).ok());
    let code = species.and_then(|species| codes.get(species));
    Message::new(match mark.found {
        Found::Right => "practice-row-right",
        Found::StartOff => "practice-row-start-off",
        Found::StopOff => "practice-row-stop-off",
        Found::BothOff => "practice-row-both-off",
        Found::OtherSpecies => "practice-row-other-species",
        Found::InParts => "practice-row-in-parts",
        Found::AsOne => "practice-row-as-one",
        Found::Missed => "practice-row-missed",
        Found::Invented => "practice-row-invented",
    })
    .with("species", code.map_or("", String::as_str))
    .with("start", Value::Length(start, notation))
    .with("stop", Value::Length(stop, notation))
    .with("read-start", Value::Length(read_start, notation))
    .with("read-stop", Value::Length(read_stop, notation))
    .with("because", because)
}

fn reason(because: Because, notation: Notation) -> Message {
    match because {
        Because::Dead => Message::new("practice-because-dead"),
        Because::Other(other) => {
            Message::new("practice-because-other").with("what", Value::Word(other.code()))
        }
        Because::GapClosed(gap) => {
            Message::new("practice-because-gap-closed").with("gap", Value::Length(gap, notation))
        }
        Because::GapLeftOpen(gap) => {
            Message::new("practice-because-gap-left-open").with("gap", Value::Length(gap, notation))
        }
        Because::Overlap => Message::new("practice-because-overlap"),
        Because::Along(by) => Message::new("practice-because-along").with("by", Value::Length(by, notation)),
    }
}
