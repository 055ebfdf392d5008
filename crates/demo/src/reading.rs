//! What a crew writes down when it reads a line across an invented stand.

use tautline_engine::length::{Length, Unit};
use tautline_engine::seed::Random;
use tautline_engine::simulate::Chord;

/// How a reader sees edges and gaps.
pub(super) struct Eye {
    /// How far outside the true edge this reader sees it on average, in metres.
    pub(super) outward: f64,
    /// Standard deviation of an edge, in metres.
    pub(super) unsteady: f64,
    /// Gaps within one species that are no longer than this aren't seen, in metres.
    pub(super) misses: f64,
}

/// Sees what is there.
pub(super) const SHARP: Eye = Eye { outward: 0.0, unsteady: 0.0, misses: 0.0 };

/// Sees crowns a little wide and overlooks small gaps.
pub(super) const WIDE: Eye = Eye { outward: 0.008, unsteady: 0.01, misses: 0.05 };

/// A row of the sheet.
pub(super) struct Row {
    /// What was under the tape; its edges are the true ones.
    pub(super) chord: Chord,
    /// The edges as written, in hundredths of the tape's unit.
    pub(super) written: [i64; 2],
    /// The plant's number on this line, in the order of the tape.
    pub(super) plant: usize,
    /// Whether it is the plant's first row.
    pub(super) first: bool,
}

/// Reads a line: what is too short for the tape's division isn't written, and no species is written twice over one
/// stretch.
pub(super) fn read(chords: &[Chord], length: f64, unit: Unit, eye: &Eye, random: &mut Random) -> Vec<Row> {
    let mut plants: Vec<usize> = Vec::new();
    let mut rows: Vec<Row> = Vec::new();
    for chord in seen(chords, eye.misses) {
        let mut edge = |at: f64, out: f64| {
            let shake = if eye.unsteady > 0.0 { eye.unsteady * random.normal() } else { 0.0 };
            hundredths((at + out + shake).clamp(0.0, length), unit)
        };
        let (start, stop) = (edge(chord.start, -eye.outward), edge(chord.stop, eye.outward));
        let same = rows.iter().filter(|row| row.chord.species == chord.species);
        let start = same.map(|row| row.written[1]).fold(start, i64::max);
        if start < stop {
            let known = plants.iter().position(|&plant| plant == chord.plant);
            let plant = known.unwrap_or_else(|| {
                plants.push(chord.plant);
                plants.len() - 1
            });
            rows.push(Row { chord, written: [start, stop], plant: plant + 1, first: known.is_none() });
        }
    }
    rows
}

/// The canopy of each species as a reader sees it: plants that touch are one canopy, small gaps may be overlooked,
/// and dead wood shows where no live canopy of its species is over it.
fn seen(chords: &[Chord], misses: f64) -> Vec<Chord> {
    let mut seen: Vec<Chord> = Vec::new();
    for chord in chords.iter().filter(|chord| chord.live) {
        join(&mut seen, chord, misses);
    }
    let live = seen.clone();
    for chord in chords.iter().filter(|chord| !chord.live) {
        for bare in beside(chord, &live) {
            join(&mut seen, &bare, misses);
        }
    }
    seen.sort_by(|a, b| a.start.total_cmp(&b.start));
    seen
}

/// Lengthens the canopy of this species that reaches up to here, or starts a new one.
fn join(seen: &mut Vec<Chord>, chord: &Chord, misses: f64) {
    let alike = |before: &&mut Chord| before.species == chord.species && before.live == chord.live;
    match seen.iter_mut().rev().find(alike) {
        Some(before) if chord.start - before.stop <= misses => before.stop = before.stop.max(chord.stop),
        _ => seen.push(*chord),
    }
}

/// The parts of a chord that no live canopy of its species covers.
fn beside(chord: &Chord, live: &[Chord]) -> Vec<Chord> {
    let mut parts = Vec::new();
    let mut from = chord.start;
    for over in live.iter().filter(|over| over.species == chord.species) {
        if from < over.start.min(chord.stop) {
            parts.push(Chord { start: from, stop: over.start.min(chord.stop), ..*chord });
        }
        from = from.max(over.stop);
    }
    if from < chord.stop {
        parts.push(Chord { start: from, ..*chord });
    }
    parts
}

/// Metres in whole hundredths of a unit.
pub(super) fn hundredths(metres: f64, unit: Unit) -> i64 {
    let hundredth = unit.nanometres() / 100;
    (nanometres(metres).nanometres() + hundredth / 2).div_euclid(hundredth)
}

/// Metres as an exact length.
pub(super) fn nanometres(metres: f64) -> Length {
    #[expect(clippy::cast_possible_truncation, reason = "a stand is some hundred metres wide")]
    let nanometres = (metres * 1e9).round() as i64;
    Length::from_nanometres(nanometres)
}

/// Hundredths as they stand on the sheet: `12.40`.
pub(super) fn written(hundredths: i64) -> String {
    format!("{}.{:02}", hundredths / 100, hundredths % 100)
}
