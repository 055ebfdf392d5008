//! Outlines of what stands along a tape, in metres: along it, and to its left.

use tautline_engine::length::Unit;
use tautline_engine::num::math::{atan2, cos, sin};
use tautline_engine::practice::line::Round;

/// A round outline and a number of its own, from which its shape is made.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Place {
    pub(super) along: f64,
    pub(super) aside: f64,
    pub(super) radius: f64,
    /// Half of what it cuts off the tape's edge.
    pub(super) half: f64,
    pub(super) number: u32,
}

impl Place {
    pub(super) fn of(round: &Round, number: u32) -> Self {
        let half = round.cut.length().in_unit(Unit::Metre) / 2.0;
        let aside = round.aside.in_unit(Unit::Metre);
        Self { along: round.middle(), aside, radius: round.radius(), half, number }
    }

    pub(super) fn smaller(self) -> Self {
        Self { radius: self.radius * 0.35, ..self }
    }

    fn at(&self, angle: f64, radius: f64) -> (f64, f64) {
        (self.along + radius * cos(angle), self.aside + radius * sin(angle))
    }

    /// The radius in a direction: round where the outline crosses the tape's edge, uneven elsewhere.
    fn uneven(&self, angle: f64, most: f64, lobes: f64) -> f64 {
        let crossing = [atan2(-self.aside, self.half), atan2(-self.aside, -self.half)];
        let away: f64 = crossing.iter().map(|at| (1.0 - cos(angle - at)) / 2.0).product();
        let turn = f64::from(self.number);
        let wave = sin(lobes * angle + turn) + 0.6 * sin((2.0 * lobes - 1.0) * angle + 1.7 * turn);
        self.radius * (1.0 + most * away * wave)
    }
}

/// Angles all round, beginning and ending where the outline crosses the tape's edge so that it does so exactly.
fn round(place: &Place, corners: u32) -> Vec<f64> {
    let turn = 2.0 * core::f64::consts::PI / f64::from(corners);
    let mut angles: Vec<f64> =
        (0..corners).map(|corner| f64::from(corner) * turn - core::f64::consts::PI).collect();
    angles.extend([atan2(-place.aside, place.half), atan2(-place.aside, -place.half)]);
    angles.sort_by(f64::total_cmp);
    angles
}

/// A crown, or an opening in one.
pub(super) fn blob(place: &Place) -> Vec<(f64, f64)> {
    round(place, 48).into_iter().map(|angle| place.at(angle, place.uneven(angle, 0.09, 5.0))).collect()
}

/// A flower head.
pub(super) fn petals(place: &Place) -> Vec<(f64, f64)> {
    round(place, 60).into_iter().map(|angle| place.at(angle, place.uneven(angle, 0.16, 7.0))).collect()
}

/// A rock, with corners.
pub(super) fn rock(place: &Place) -> Vec<(f64, f64)> {
    round(place, 7).into_iter().map(|angle| place.at(angle, place.uneven(angle, 0.08, 2.0))).collect()
}

/// Blades from the middle out.
pub(super) fn tuft(place: &Place) -> Vec<[(f64, f64); 2]> {
    round(place, 22)
        .into_iter()
        .map(|angle| [place.at(angle, place.radius * 0.15), place.at(angle, place.radius)])
        .collect()
}

/// Stems about the middle of a crown.
pub(super) fn stems(place: &Place) -> Vec<[(f64, f64); 2]> {
    let stem = |number: u32| {
        let angle = f64::from(number) * 1.26 + f64::from(place.number);
        [place.at(angle, place.radius * 0.03), place.at(angle, place.radius * 0.17)]
    };
    (0..5).map(stem).collect()
}

/// Sticks lying about, the outermost on the outline.
pub(super) fn sticks(place: &Place) -> Vec<[(f64, f64); 2]> {
    let stick = |(number, angle): (u32, f64)| {
        let inner = if number.is_multiple_of(2) { 0.25 } else { 0.6 };
        [place.at(angle, place.radius), place.at(angle + 0.9, place.radius * inner)]
    };
    (0..).zip(round(place, 11)).map(stick).collect()
}

/// Stalks along the tape, out of a crown that ends where they begin; each with a head.
pub(super) fn stalks(place: &Place) -> Vec<[(f64, f64); 2]> {
    let (from, to) = (place.along - place.half, place.along + place.half);
    let mut lines = Vec::new();
    for stalk in -2_i32..=2 {
        let aside = f64::from(stalk) * place.half * 0.22;
        // the middle one reaches as far as the stalks do
        let end = to - f64::from(stalk.abs()) * place.half * 0.2;
        lines.push([(from, aside * 0.4), (end, aside)]);
        for notch in 0..3 {
            let at = end - f64::from(notch) * place.half * 0.16;
            let spread = place.half * 0.1;
            lines.push([(at - spread, aside - spread), (at, aside)]);
            lines.push([(at - spread, aside + spread), (at, aside)]);
        }
    }
    lines
}
