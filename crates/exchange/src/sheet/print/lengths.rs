//! Intercepts and their lengths, each written so that it reads back.

use super::Printer;
use super::names::{bracketed, species_name};
use crate::sheet::even::even;
use crate::sheet::head::key_row;
use crate::sheet::row::{Row, row};
use crate::sheet::scan::{Piece, Scan};
use tautline_engine::length::{Bare, DecimalMark, write};
use tautline_survey::input::Input;
use tautline_survey::measure::Measure;
use tautline_survey::visit::{Extent, Intercept, Outcome, State, Visit};

impl Printer<'_> {
    pub(super) fn intercept(&self, intercept: &Intercept, unit: Option<Bare>) -> String {
        let text = match &intercept.extent {
            Extent::Edges { start, stop } => {
                let as_typed = (self.length(start, unit), self.length(stop, unit));
                // a unit behind the stop would be the start's as well
                let (start, stop) = if self.has_unit(&as_typed.1, unit) && !self.has_unit(&as_typed.0, unit) {
                    (self.length(start, None), as_typed.1)
                } else {
                    as_typed
                };
                let plain = |text: &str| text.bytes().all(|b| b.is_ascii_digit() || b == b'.' || b == b',');
                if plain(&start) && plain(&stop) {
                    format!("{start}-{stop}")
                } else {
                    format!("{start} to {stop}")
                }
            }
            Extent::Length(length) => self.length(length, unit),
        };
        let mut parts = vec![text];
        parts.extend((intercept.state == State::Dead).then(|| "d".to_owned()));
        parts.extend(intercept.plant.as_ref().map(|plant| format!("#{}", bracketed(plant))));
        parts.extend(intercept.height.as_ref().map(|height| format!("h {}", self.length(height, unit))));
        parts.extend(intercept.width.as_ref().map(|width| format!("w {}", self.length(width, unit))));
        parts.extend((!intercept.note.is_empty()).then(|| format!("({})", intercept.note)));
        parts.join(" ")
    }

    /// The length as it was typed, where that says the same on this sheet; else with its unit.
    pub(super) fn length(&self, measure: &Measure, unit: Option<Bare>) -> String {
        let same = |text: &str| {
            Measure::read(text, unit, self.mark).is_ok_and(|again| {
                again.length() == measure.length() && again.notation() == measure.notation()
            }) && self.is_one(text, unit)
        };
        let with_point = measure.typed().replace(',', ".");
        let candidates = [
            measure.typed().to_owned(),
            with_point.clone(),
            format!("{with_point} {}", measure.notation().unit.symbol()),
            write(measure.length(), measure.notation()),
        ];
        let mut candidates = candidates.into_iter().map(|text| self.marked(text));
        candidates.find(|text| same(text)).unwrap_or_else(|| measure.typed().to_owned())
    }

    /// Whether a length is read without the sheet's unit.
    pub(super) fn has_unit(&self, text: &str, unit: Option<Bare>) -> bool {
        unit.is_some() && Measure::read(text, None, self.mark).is_ok()
    }

    pub(super) fn marked(&self, text: String) -> String {
        if self.mark == DecimalMark::Comma { text.replace('.', ",") } else { text }
    }

    pub(super) fn is_one(&self, text: &str, unit: Option<Bare>) -> bool {
        let chars = even(&text.chars().collect::<Vec<_>>());
        let scan = Scan { chars: &chars, bare: unit, mark: self.mark };
        scan.length(0).is_ok_and(|span| span == (0, chars.len()))
            && matches!(scan.piece(0), Ok((Piece::Length(span), _)) if span == (0, chars.len()))
    }

    /// Whether the text of an intercept, behind its species, is read as that intercept.
    pub(super) fn reads_back(&self, intercept: &Intercept, text: &str, unit: Option<Bare>) -> bool {
        let species = species_name(&intercept.species);
        let chars: Vec<char> = format!("{species} {text}").chars().collect();
        let evened = even(&chars);
        let scan = Scan { chars: &evened, bare: unit, mark: self.mark };
        if key_row(&evened).is_some() || text.contains(['\n', '\r']) || species.contains(['\n', '\r']) {
            return false;
        }
        let Row { species: name, stretches, slips, .. } = row(&scan, false);
        let typed = |span: (usize, usize)| chars[span.0..span.1].iter().collect::<String>();
        let name_is_same = name.is_some_and(|span| typed(span) == intercept.species);
        let [stretch] = stretches.as_slice() else { return false };
        name_is_same
            && slips.is_empty()
            && stretch.plant.map(typed) == intercept.plant
            && stretch.note.map(typed).unwrap_or_default() == intercept.note
            && stretch.dead == (intercept.state == State::Dead)
            && stretch.height.is_some() == intercept.height.is_some()
            && stretch.width.is_some() == intercept.width.is_some()
    }
}

/// A comma where lengths were typed with one and none with a point.
pub(super) fn mark_of(input: &Input) -> DecimalMark {
    let typed = || {
        let visits = input.visits.iter().flat_map(|visit| &visit.intercepts);
        visits.flat_map(measures).chain(input.plan.iter().filter_map(|line| line.length.as_ref()))
    };
    let comma = typed().any(|measure| measure.typed().contains(','));
    if comma && !typed().any(|measure| measure.typed().contains('.')) {
        DecimalMark::Comma
    } else {
        DecimalMark::Point
    }
}

pub(super) fn measures(intercept: &Intercept) -> impl Iterator<Item = &Measure> {
    let edges = match &intercept.extent {
        Extent::Edges { start, stop } => [Some(start), Some(stop)],
        Extent::Length(length) => [Some(length), None],
    };
    edges.into_iter().flatten().chain(&intercept.height).chain(&intercept.width)
}

/// The unit that the first bare number of the visit stood in.
pub(super) fn unit_of(visit: &Visit) -> Option<Bare> {
    let of = |extent: &Extent| match extent {
        Extent::Edges { start, stop } => start.unit().or(stop.unit()),
        Extent::Length(length) => length.unit(),
    };
    let to = match &visit.outcome {
        Outcome::PartlyRead(to) => to.unit(),
        _ => None,
    };
    visit.intercepts.iter().find_map(|intercept| of(&intercept.extent)).or(to)
}

pub(super) fn is_mixed(visit: &Visit) -> bool {
    let lengths = visit.intercepts.iter().filter(|i| matches!(i.extent, Extent::Length(_))).count();
    lengths > 0 && lengths < visit.intercepts.len()
}
