//! A sheet beside the key: each intercept right, off, missed or invented, and what explains it.

use super::line::{Facts, Other};
use super::mistake::Row;
use crate::length::Length;
use crate::rule::GapRule;
use crate::stretch::{Stretch, total, union, without};

/// How an intercept was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Found {
    /// Both edges within the tolerance.
    Right,
    /// The start is off.
    StartOff,
    /// The stop is off.
    StopOff,
    /// Both edges are off.
    BothOff,
    /// Written as another species.
    OtherSpecies,
    /// One intercept of the key written as several.
    InParts,
    /// Several intercepts of the key written as one.
    AsOne,
    /// Not on the sheet.
    Missed,
    /// On the sheet and not in the key.
    Invented,
}

impl Found {
    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Right => "practice-right",
            Self::StartOff => "practice-start-off",
            Self::StopOff => "practice-stop-off",
            Self::BothOff => "practice-both-off",
            Self::OtherSpecies => "practice-other-species",
            Self::InParts => "practice-in-parts",
            Self::AsOne => "practice-as-one",
            Self::Missed => "practice-missed",
            Self::Invented => "practice-invented",
        }
    }
}

/// What explains a slip, by the rules and by what stands there.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Because {
    /// Dead canopy was read.
    Dead,
    /// Something was read that is no canopy of a shrub.
    Other(Other),
    /// A gap of this length, which the rule leaves open, was closed.
    GapClosed(Length),
    /// A gap of this length, which the rule closes, was left open.
    GapLeftOpen(Length),
    /// It stands over or under another species.
    Overlap,
    /// It lies as a whole further on, or back, by this much.
    Along(Length),
}

impl Because {
    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Dead => "practice-because-dead",
            Self::Other(_) => "practice-because-other",
            Self::GapClosed(_) => "practice-because-gap-closed",
            Self::GapLeftOpen(_) => "practice-because-gap-left-open",
            Self::Overlap => "practice-because-overlap",
            Self::Along(_) => "practice-because-along",
        }
    }
}

/// One or a few intercepts of the key with what was written for them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mark {
    /// Of the key.
    pub key: Vec<Row>,
    /// Of the sheet.
    pub read: Vec<Row>,
    /// How they compare.
    pub found: Found,
    /// What explains it, where something does.
    pub because: Option<Because>,
    /// How many edges of the key are right: two for each of its intercepts at most.
    pub edges: usize,
}

impl Mark {
    /// Edges that could be right: two for each intercept of the key, and two for one that isn't there.
    pub fn edges_of(&self) -> usize {
        2 * self.key.len().max(1)
    }
}

/// What a sheet comes to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Graded {
    /// Intercept by intercept, along the tape.
    pub marks: Vec<Mark>,
    /// Edges that are right.
    pub edges: usize,
    /// Edges that could be right.
    pub edges_of: usize,
    /// Intercepts of the key that were written as the right species.
    pub species: usize,
    /// Intercepts of the key.
    pub species_of: usize,
}

/// What rows are graded by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Measure {
    /// How far an edge may lie off and still be right.
    pub tolerance: Length,
    /// The gap rule.
    pub gap: GapRule,
}

/// Sets a sheet beside the key.
///
/// Rows of one species that share tape belong together. What is left is paired with rows of another species that share
/// most of their tape; whatever still has no partner was missed or invented.
///
/// # Example
/// ```
/// use tautline_engine::length::{Length, Unit};
/// use tautline_engine::practice::{grade::{Found, Measure, grade}, line::Facts, mistake::Row};
/// use tautline_engine::{rule::ReadingRule, stretch::Stretch};
/// let cm = |n| Length::from_units(n, Unit::Centimetre);
/// let row = |from, to| Row { species: Some(0), stretch: Stretch::new(cm(from), cm(to)).unwrap() };
/// let by = Measure { tolerance: cm(1), gap: ReadingRule::AS_WRITTEN.gap };
/// let graded = grade(&[row(10, 40), row(90, 120)], &[row(11, 46)], &Facts::default(), &by);
/// assert_eq!(graded.marks[0].found, Found::StopOff);
/// assert_eq!(graded.marks[1].found, Found::Missed);
/// assert_eq!((graded.edges, graded.edges_of), (1, 4));
/// ```
pub fn grade(key: &[Row], sheet: &[Row], facts: &Facts, by: &Measure) -> Graded {
    let mut marks = Vec::new();
    let mut missed = Vec::new();
    let mut extra = Vec::new();
    for (own_key, own_read) in groups(key, sheet) {
        match (own_key.as_slice(), own_read.as_slice()) {
            ([one], [read]) => marks.push(pair(*one, *read, facts, by)),
            ([one], [_, _, ..]) if within(&own_read, *one, by) => marks.push(in_parts(*one, own_read, by)),
            ([_, _, ..], [read]) => marks.push(as_one(own_key, *read, facts, by)),
            _ => apart(&own_key, &own_read, &mut marks, (&mut missed, &mut extra), (facts, by)),
        }
    }
    for one in missed {
        let other = extra.iter().position(|read: &Row| mostly_same(one.stretch, read.stretch));
        if let Some(read) = other.map(|at| extra.remove(at)) {
            let mark = pair(one, read, facts, by);
            marks.push(Mark { found: Found::OtherSpecies, because: None, ..mark });
        } else {
            let others = key.iter().filter(|row| row.species != one.species).map(|row| row.stretch);
            let because = half_of(one.stretch, &union(others)).then_some(Because::Overlap);
            marks.push(Mark { key: vec![one], read: Vec::new(), found: Found::Missed, because, edges: 0 });
        }
    }
    marks.extend(extra.into_iter().map(|read| {
        let because = stands_there(read.stretch, facts);
        Mark { key: Vec::new(), read: vec![read], found: Found::Invented, because, edges: 0 }
    }));
    marks.sort_by_key(|mark| mark.key.iter().chain(&mark.read).map(|row| row.stretch.start()).min());
    let same = |mark: &&Mark| !mark.read.is_empty() && mark.found != Found::OtherSpecies;
    Graded {
        edges: marks.iter().map(|mark| mark.edges).sum(),
        edges_of: marks.iter().map(Mark::edges_of).sum(),
        species: marks.iter().filter(same).map(|mark| mark.key.len()).sum(),
        species_of: key.len(),
        marks,
    }
}

/// Rows of one species that share tape, directly or through others.
fn groups(key: &[Row], sheet: &[Row]) -> Vec<(Vec<Row>, Vec<Row>)> {
    let of_key = key.iter().map(|&row| (row, true));
    let mut all: Vec<(Row, bool)> = of_key.chain(sheet.iter().map(|&row| (row, false))).collect();
    all.sort_by_key(|(row, _)| (row.species, row.stretch));
    let mut groups: Vec<(Vec<Row>, Vec<Row>)> = Vec::new();
    let mut last: Option<(Option<u32>, Length)> = None;
    for (row, in_key) in all {
        let on = last.is_some_and(|(species, stop)| species == row.species && row.stretch.start() < stop);
        if !on {
            groups.push((Vec::new(), Vec::new()));
        }
        let stop = last.filter(|_| on).map_or(row.stretch.stop(), |(_, stop)| stop.max(row.stretch.stop()));
        last = Some((row.species, stop));
        if let Some((own_key, own_read)) = groups.last_mut() {
            if in_key { own_key.push(row) } else { own_read.push(row) }
        }
    }
    groups
}

fn near(a: Length, b: Length, by: &Measure) -> bool {
    (a - b).nanometres().abs() <= by.tolerance.nanometres()
}

/// One intercept read as one.
fn pair(key: Row, read: Row, facts: &Facts, by: &Measure) -> Mark {
    let (start, stop) = (
        near(key.stretch.start(), read.stretch.start(), by),
        near(key.stretch.stop(), read.stretch.stop(), by),
    );
    let found = match (start, stop) {
        (true, true) => Found::Right,
        (false, true) => Found::StartOff,
        (true, false) => Found::StopOff,
        (false, false) => Found::BothOff,
    };
    let along = read.stretch.start() - key.stretch.start();
    let as_a_whole = near(key.stretch.length(), read.stretch.length(), by);
    let because = match found {
        Found::Right => None,
        Found::BothOff if as_a_whole => Some(Because::Along(along)),
        _ => {
            // what was read beyond the key
            let beyond = without(&[read.stretch], &[key.stretch]);
            let far = beyond.into_iter().max_by_key(|stretch| stretch.length());
            far.and_then(|stretch| stands_there(stretch, facts))
        }
    };
    Mark { key: vec![key], read: vec![read], found, because, edges: usize::from(start) + usize::from(stop) }
}

/// Whether rows lie within one intercept of the key, with gaps between them.
fn within(rows: &[Row], key: Row, by: &Measure) -> bool {
    let apart = union(rows.iter().map(|row| row.stretch)).len() == rows.len();
    let inside = |row: &Row| {
        let (start, stop) = (row.stretch.start(), row.stretch.stop());
        (start >= key.stretch.start() || near(start, key.stretch.start(), by))
            && (stop <= key.stretch.stop() || near(stop, key.stretch.stop(), by))
    };
    apart && rows.iter().all(inside)
}

fn longest_gap(rows: &[Row]) -> Length {
    let gaps = rows.windows(2).map(|pair| pair[1].stretch.start() - pair[0].stretch.stop());
    gaps.max().unwrap_or_default()
}

fn outer_edges(key: &[Row], read: &[Row], by: &Measure) -> usize {
    let (Some(first_key), Some(last_key)) = (key.first(), key.last()) else { return 0 };
    let (Some(first), Some(last)) = (read.first(), read.last()) else { return 0 };
    usize::from(near(first_key.stretch.start(), first.stretch.start(), by))
        + usize::from(near(last_key.stretch.stop(), last.stretch.stop(), by))
}

/// One intercept of the key written as several: half the edges where they are right.
fn in_parts(key: Row, read: Vec<Row>, by: &Measure) -> Mark {
    let gap = longest_gap(&read);
    let because = by.gap.closes(gap).then_some(Because::GapLeftOpen(gap));
    Mark { edges: outer_edges(&[key], &read, by) / 2, key: vec![key], read, found: Found::InParts, because }
}

/// Several intercepts of the key written as one.
fn as_one(key: Vec<Row>, read: Row, facts: &Facts, by: &Measure) -> Mark {
    let gap = longest_gap(&key);
    let between: Vec<Stretch> = key
        .windows(2)
        .filter_map(|pair| Stretch::new(pair[0].stretch.stop(), pair[1].stretch.start()))
        .collect();
    let there = between.iter().find_map(|&stretch| stands_there(stretch, facts));
    let because = Some(there.unwrap_or(Because::GapClosed(gap)));
    Mark { edges: outer_edges(&key, &[read], by), key, read: vec![read], found: Found::AsOne, because }
}

/// Rows that overlap each other crosswise: each of the key takes the one that it shares most tape with.
fn apart(
    key: &[Row],
    read: &[Row],
    marks: &mut Vec<Mark>,
    (missed, extra): (&mut Vec<Row>, &mut Vec<Row>),
    (facts, by): (&Facts, &Measure),
) {
    let mut left = read.to_vec();
    for &one in key {
        let shared = |row: &Row| row.stretch.within(one.stretch).map_or(Length::ZERO, Stretch::length);
        let best = (0..left.len())
            .max_by_key(|&at| shared(&left[at]))
            .filter(|&at| shared(&left[at]) > Length::ZERO);
        match best {
            Some(at) => marks.push(pair(one, left.remove(at), facts, by)),
            None => missed.push(one),
        }
    }
    extra.append(&mut left);
}

fn half_of(stretch: Stretch, under: &[Stretch]) -> bool {
    let left = total(&without(&[stretch], under));
    left.nanometres() * 2 <= stretch.length().nanometres()
}

fn mostly_same(a: Stretch, b: Stretch) -> bool {
    let shared = a.within(b).map_or(Length::ZERO, Stretch::length);
    shared.nanometres() * 2 >= a.length().max(b.length()).nanometres()
}

/// What stands where something was read: dead wood, or what doesn't count.
fn stands_there(stretch: Stretch, facts: &Facts) -> Option<Because> {
    if half_of(stretch, &facts.dead) {
        return Some(Because::Dead);
    }
    facts
        .others
        .iter()
        .find(|(_, there)| half_of(stretch, &[*there]))
        .map(|(other, _)| Because::Other(*other))
}
