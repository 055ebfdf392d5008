//! Last digits that heap: some are written more often than chance gives, as by a tired or guessing reader.

use super::records::{Reading, Records};
use crate::finding::{About, Finding};
use crate::measure::Measure;
use crate::message::{Message, Value};
use std::collections::BTreeMap;
use tautline_engine::evenness::{Evenness, evenness, holm};
use tautline_engine::length::{Division, Length, Notation, Unit};

/// A reader is looked at from so many edges.
const ENOUGH_EDGES: usize = 50;
/// The chance that any reader is named though all read evenly.
const FALSE_ALARM: f64 = 0.01;
/// Beyond one chance in so many nobody asks for more.
const MOST_ODDS: f64 = 1e6;
/// Digits that come round only after a longer stretch than this follow the plants and not the pencil.
const LONGEST_ROUND: i64 = Unit::Foot.nanometres();

/// Readers whose last digits heap, by a chi-square test on the sheet's own finest division, over all their edges,
/// with Holm's correction for how many are looked at.
///
/// # Source
/// Pearson 1900, Philosophical Magazine 50:157; Holm 1979, Scandinavian Journal of Statistics 6:65
pub(super) fn heaped(records: &Records) -> Vec<Finding> {
    let divisions = divisions(records);
    let mut readers: BTreeMap<(&str, usize), (&Reading, Vec<u64>)> = BTreeMap::new();
    for reading in records.readings.iter().filter(|reading| !reading.visit.reader.is_empty()) {
        for (sheet, edges) in edges(reading) {
            let Some(Some(division)) = divisions.get(&sheet) else { continue };
            let counts = readers
                .entry((&reading.visit.reader, division.places))
                .or_insert_with(|| (reading, vec![0; division.places]));
            // whatever the order of the sheets, a reader is named at the first site by name
            if reading.visit.site < counts.0.visit.site {
                counts.0 = reading;
            }
            for edge in edges {
                counts.1[division.digit(edge)] += 1;
            }
        }
    }
    let looked_at: Vec<(&str, &Reading, Vec<u64>, Evenness)> = readers
        .into_iter()
        .filter(|(_, (_, counts))| counts.iter().sum::<u64>() >= ENOUGH_EDGES as u64)
        .filter_map(|((reader, _), (first, counts))| {
            let even = evenness(&counts)?;
            Some((reader, first, counts, even))
        })
        .collect();
    let adjusted = holm(&looked_at.iter().map(|(_, _, _, even)| even.p).collect::<Vec<f64>>());
    looked_at
        .into_iter()
        .zip(adjusted)
        .filter(|(_, p)| *p < FALSE_ALARM)
        .map(|((reader, first, counts, even), p)| {
            let edges: u64 = counts.iter().sum();
            let most = counts.iter().copied().max().unwrap_or(0);
            let digit = counts.iter().position(|&count| count == most).unwrap_or(0);
            let message = Message::new("digits-heap")
                .with("reader", reader)
                .with("edges", edges)
                .with("places", counts.len())
                .with("digit", digit.to_string())
                .with("most", most)
                .with("even", Value::Number(shared(edges, counts.len()), 0))
                .with("statistic", Value::Number(even.statistic, 1))
                .with("df", Value::Number(even.df, 0))
                .with("p", Value::Number(p, 6))
                .with("odds", Value::Number((1.0 / p).min(MOST_ODDS), 0));
            // about the reader, and so about no single line
            let about = About { site: first.visit.site.clone(), ..About::default() };
            Finding::have_a_look(message).at_place(first.visit.place.as_ref()).about(about)
        })
        .collect()
}

#[expect(clippy::cast_precision_loss, reason = "edges are far fewer than 2^53")]
fn shared(edges: u64, places: usize) -> f64 {
    edges as f64 / tautline_engine::num::count(places)
}

/// A sheet as far as its division goes: the file, the unit, and whether feet stood beside inches.
type SheetKey<'a> = (&'a str, Unit, bool);

/// The finest division of a sheet, and how many of it make the next coarser one.
#[derive(Clone, Copy)]
struct Finest {
    step: i64,
    places: usize,
}

impl Finest {
    fn digit(self, edge: Length) -> usize {
        let places = i64::try_from(self.places).expect("a division has a handful of places");
        usize::try_from(edge.nanometres() / self.step % places).unwrap_or(0)
    }

    fn comes_round_soon(self) -> bool {
        i64::try_from(self.places).is_ok_and(|places| places * self.step <= LONGEST_ROUND)
    }
}

/// The edges of a reading by sheet: each place on the line once, the line's ends apart.
fn edges<'a>(reading: &Reading<'a>) -> BTreeMap<SheetKey<'a>, Vec<Length>> {
    let file: &'a str = reading.visit.place.as_ref().map_or("", |place| &place.file);
    let end = reading.tape.map(Measure::length);
    let mut sheets: BTreeMap<SheetKey, Vec<Length>> = BTreeMap::new();
    for edge in reading.rows.iter().flat_map(|row| [row.start, row.stop]) {
        if edge.length() != Length::ZERO && Some(edge.length()) != end {
            let Notation { unit, feet_and_inches, .. } = edge.notation();
            sheets.entry((file, unit, feet_and_inches)).or_default().push(edge.length());
        }
    }
    for edges in sheets.values_mut() {
        edges.sort_unstable();
        edges.dedup();
    }
    sheets
}

/// The finest division of every sheet; `None` where decimals and fractions mix or the digits come round too rarely.
fn divisions<'a>(records: &Records<'a>) -> BTreeMap<SheetKey<'a>, Option<Finest>> {
    let mut written: BTreeMap<SheetKey, (Vec<Notation>, Vec<i64>)> = BTreeMap::new();
    for reading in &records.readings {
        let file: &'a str = reading.visit.place.as_ref().map_or("", |place| &place.file);
        for edge in reading.rows.iter().flat_map(|row| [row.start, row.stop]) {
            let Notation { unit, feet_and_inches, .. } = edge.notation();
            let sheet = written.entry((file, unit, feet_and_inches)).or_default();
            if !sheet.0.contains(&edge.notation()) {
                sheet.0.push(edge.notation());
            }
            sheet.1.push(edge.length().nanometres());
        }
    }
    written
        .into_iter()
        .map(|(key, (notations, edges))| {
            let finest = finest(key.1, key.2, &notations, &edges).filter(|finest| finest.comes_round_soon());
            (key, finest)
        })
        .collect()
}

/// Decimals: the last place in which anything but noughts stands, or its fives, or its twos; fractions: the largest
/// denominator; feet and inches: inches.
fn finest(unit: Unit, feet_and_inches: bool, notations: &[Notation], edges: &[i64]) -> Option<Finest> {
    let fraction = |notation: &Notation| match notation.division {
        Division::Fraction(denominator) => Some(denominator),
        Division::Decimals(_) => None,
    };
    let decimals = |notation: &Notation| match notation.division {
        Division::Decimals(places) => places,
        Division::Fraction(_) => 0,
    };
    let places = notations.iter().map(decimals).max()?;
    if let Some(denominator) = notations.iter().filter_map(fraction).max() {
        let step = unit.nanometres() / i64::from(denominator);
        let whole = edges.iter().all(|edge| edge % step == 0);
        return (places == 0 && whole).then_some(Finest { step, places: usize::from(denominator) });
    }
    if feet_and_inches && places == 0 {
        return Some(Finest { step: unit.nanometres(), places: 12 });
    }
    let mut step = Notation::decimals(unit, places).step().nanometres();
    let all_in = |step: i64| step > 0 && edges.iter().all(|edge| edge % step == 0);
    while step < LONGEST_ROUND && all_in(10 * step) {
        step *= 10;
    }
    if step == 0 {
        return None;
    }
    Some(if all_in(10 * step) || !(all_in(5 * step) || all_in(2 * step)) {
        Finest { step, places: 10 }
    } else if all_in(5 * step) {
        Finest { step: 5 * step, places: 2 }
    } else {
        Finest { step: 2 * step, places: 5 }
    })
}
