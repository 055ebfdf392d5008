//! What was measured of the plants beside their cover: heights and widths.

use super::{MeanHeight, Work};
use crate::visit::{Intercept, State};
use std::collections::BTreeMap;
use tautline_engine::density::plants_per_square_metre;
use tautline_engine::length::{Length, Unit};
use tautline_engine::slope::level;

/// Mean height of a species on the line; live plants only.
pub(super) fn mean_height(work: &Work, code: &str) -> Option<MeanHeight> {
    let heights: Vec<f64> = live_of(work, code)
        .filter_map(|intercept| intercept.height.as_ref())
        .map(|height| height.length().in_unit(Unit::Metre))
        .collect();
    let count = heights.len();
    #[expect(clippy::cast_precision_loss, reason = "heights on one line are few")]
    let mean_m = heights.iter().sum::<f64>() / count as f64;
    (count > 0).then_some(MeanHeight { mean_m, count })
}

/// Plants per square metre, where the width of every live plant of the species was read; a marked plant once.
pub(super) fn density(work: &Work, code: &str) -> Option<f64> {
    let mut widths: BTreeMap<String, Length> = BTreeMap::new();
    for intercept in live_of(work, code) {
        let plant = intercept.plant.clone().unwrap_or_else(|| format!("\u{0}{}", intercept.id));
        widths.insert(plant, intercept.width.as_ref()?.length());
    }
    let widths: Vec<Length> = widths.into_values().collect();
    if widths.is_empty() {
        None
    } else {
        plants_per_square_metre(
            &widths,
            work.slope_cosine.map_or(work.read, |cosine| level(work.read, cosine)),
        )
    }
}

fn live_of<'a>(work: &'a Work, code: &'a str) -> impl Iterator<Item = &'a Intercept> {
    work.visit
        .intercepts
        .iter()
        .filter(move |intercept| intercept.state == State::Live && work.code(&intercept.species) == code)
}
