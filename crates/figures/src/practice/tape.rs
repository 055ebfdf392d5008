//! The tape's edge over a strip: divisions on one side of it, numbers on the other.

use super::Window;
use crate::palette::Colour;
use crate::scale::Measure;
use crate::svg::{Anchor, Area, Drawing, Lettering, Look};
use tautline_engine::length::{DecimalMark, Length, Unit};
use tautline_engine::practice::line::PracticeLine;

/// Divisions that stand closer than this, in pixels, are left out.
const CLOSEST: f64 = 2.2;

/// Tick steps with their heights, the longest first, and the unit that the numbers are written in.
fn steps(line: &PracticeLine) -> (Vec<(i64, f64)>, Unit) {
    let step = line.step().nanometres();
    let of = |unit: Unit| unit.nanometres();
    match line.tape.unit {
        Unit::Inch if line.tape.feet_and_inches => (
            vec![(of(Unit::Foot), 13.0), (of(Unit::Inch) * 3, 10.0), (of(Unit::Inch), 7.0), (step, 4.0)],
            Unit::Foot,
        ),
        Unit::Inch => (vec![(of(Unit::Inch) * 6, 13.0), (of(Unit::Inch), 8.0), (step, 4.0)], Unit::Inch),
        Unit::Foot => (
            vec![(of(Unit::Foot), 13.0), (of(Unit::Foot) / 2, 10.0), (of(Unit::Foot) / 10, 7.0), (step, 4.0)],
            Unit::Foot,
        ),
        unit => {
            let centimetre = of(Unit::Centimetre);
            (vec![(centimetre * 10, 13.0), (centimetre * 5, 9.0), (centimetre, 6.0), (step, 4.0)], unit)
        }
    }
}

/// Draws the edge and its divisions between two places, and its numbers up to a third.
pub(super) fn draw(
    drawing: &mut Drawing<'_>,
    line: &PracticeLine,
    window: &Window,
    (from, to, numbered): (Length, Length, Length),
    mark: DecimalMark,
) {
    let edge = window.area.y + window.area.height / 2.0;
    let place = |nanometres: i64| {
        let metres = Length::from_nanometres(nanometres).in_unit(Unit::Metre);
        window.at((metres, 0.0)).0
    };
    let (start, stop) = (place(from.nanometres()), place(to.nanometres()));
    let (steps, unit) = steps(line);
    // a pale strip to the right of the edge carries the divisions wherever canopy lies
    drawing.area(Area { x: start, y: edge, width: stop - start, height: 15.0 }, Look::fill(Colour::Tape));
    let mut drawn: Vec<i64> = Vec::new();
    for &(step, height) in &steps {
        let pixels = Length::from_nanometres(step).in_unit(Unit::Metre) * window.scale;
        if pixels < CLOSEST {
            continue;
        }
        let first = from.nanometres().div_euclid(step);
        let ticks: Vec<i64> = (first..=to.nanometres().div_euclid(step))
            .map(|number| number * step)
            .filter(|&at| at >= from.nanometres() && at <= to.nanometres() && !drawn.contains(&at))
            .collect();
        let stroke = |&at: &i64| [(place(at), edge), (place(at), edge + height)];
        let width = if height > 12.0 { 1.2 } else { 0.7 };
        drawing.strokes(ticks.iter().map(stroke), Look::line(Colour::Ink, width));
        drawn.extend(ticks);
    }
    drawing.strokes([[(start, edge), (stop, edge)]], Look::line(Colour::Ink, 1.6));
    numbers(drawing, (steps[0].0, unit), (from, numbered), (edge, mark), &place);
}

/// The numbers of the longest divisions, each on a ground of its own.
fn numbers(
    drawing: &mut Drawing<'_>,
    (step, unit): (i64, Unit),
    (from, to): (Length, Length),
    (edge, mark): (f64, DecimalMark),
    place: &impl Fn(i64) -> f64,
) {
    let lettering = Lettering::ON_TAPE;
    let mut free = place(from.nanometres());
    let last = place(to.nanometres());
    let first = (from.nanometres() + step - 1).div_euclid(step);
    for number in first..=to.nanometres().div_euclid(step) {
        let mut text = Measure::of(unit).number(number * step, mark);
        if number == first {
            text = format!("{text}\u{a0}{}", unit.symbol());
        }
        let width = lettering.width(&text) + 4.0;
        let left = (place(number * step) - width / 2.0).max(free).min(last - width);
        if left < free {
            continue;
        }
        drawing.area(Area { x: left, y: edge + 16.0, width, height: 15.0 }, Look::fill(Colour::Tape));
        drawing.text((left + width / 2.0, edge + 27.0), Anchor::Middle, lettering, &text);
        free = left + width + 3.0;
    }
}
