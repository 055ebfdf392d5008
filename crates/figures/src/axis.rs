//! Axes in per cent: how far they reach, their grid and their numbers.

use crate::palette::Colour;
use crate::scale::{Measure, Scale, Ticks};
use crate::svg::{Anchor, Drawing, Lettering, Look};
use tautline_engine::length::DecimalMark;

/// An axis in per cent from zero to a whole step at or beyond the largest value.
pub(crate) struct PerCent {
    pub(crate) scale: Scale,
    ticks: Ticks,
    mark: DecimalMark,
}

impl PerCent {
    /// An axis between two places that reaches `largest` per cent; 100 where nothing is above zero.
    ///
    /// `spacing` says how many pixels a number needs from one tick to the next.
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_precision_loss,
        reason = "a share is at most 1000 %, a million thousandths"
    )]
    pub(crate) fn reaching(
        largest: f64,
        (start, end): (f64, f64),
        mark: DecimalMark,
        spacing: impl Fn(&str) -> f64,
    ) -> Self {
        let largest = if largest > 0.0 { largest } else { 100.0 };
        let needed = ((largest * 1000.0).ceil() as i64).max(1);
        let room = (end - start).abs();
        let step = Measure::PER_CENT.ticks(needed, room, &spacing).step;
        let full = (needed + step - 1) / step * step;
        let ticks = Measure::PER_CENT.ticks(full, room, &spacing);
        Self { scale: Scale::new(start, end, full as f64 / 1000.0), ticks, mark }
    }

    /// The numbered ticks: place and text.
    #[expect(clippy::cast_precision_loss, reason = "a share is at most 1000 %, a million thousandths")]
    fn numbered(&self) -> Vec<(f64, String)> {
        let tick = |&grains: &i64| {
            (self.scale.at(grains as f64 / 1000.0), Measure::PER_CENT.number(grains, self.mark))
        };
        self.ticks.numbered.iter().map(tick).collect()
    }

    /// Upright grid lines from `top` to `bottom`.
    pub(crate) fn upright_grid(&self, drawing: &mut Drawing<'_>, top: f64, bottom: f64) {
        let lines = self.numbered().into_iter().map(|(x, _)| [(x, top), (x, bottom)]);
        drawing.strokes(lines, Look::line(Colour::Rule, 0.8));
    }

    /// The numbers under `top` and the caption under them; gives back where they end.
    pub(crate) fn below(&self, drawing: &mut Drawing<'_>, top: f64, caption: &str) -> f64 {
        below(drawing, self.scale, top, &self.numbered(), caption)
    }

    /// Level grid lines with their numbers to the left.
    pub(crate) fn level_grid(&self, drawing: &mut Drawing<'_>, left: f64, right: f64) {
        let lines = self.numbered().into_iter().map(|(y, _)| [(left, y), (right, y)]);
        drawing.strokes(lines, Look::line(Colour::Rule, 0.8));
        for (y, number) in self.numbered() {
            drawing.text((left - 6.0, y + 4.0), Anchor::End, Lettering::NUMBER, &number);
        }
    }

    /// The room that the widest number takes.
    pub(crate) fn number_width(&self) -> f64 {
        self.numbered().iter().map(|(_, number)| Lettering::NUMBER.width(number)).fold(0.0, f64::max)
    }
}

/// How many pixels a number under an axis needs from one tick to the next.
pub(crate) fn spacing(number: &str) -> f64 {
    (Lettering::NUMBER.width(number) + 16.0).max(36.0)
}

/// Tick marks and numbers under `top` and a caption under them; gives back where they end.
pub(crate) fn below(
    drawing: &mut Drawing<'_>,
    scale: Scale,
    top: f64,
    numbered: &[(f64, String)],
    caption: &str,
) -> f64 {
    let marks = numbered.iter().map(|&(x, _)| [(x, top), (x, top + 4.0)]);
    drawing.strokes(marks, Look::line(Colour::Quiet, 1.0));
    drawing.through(&[(scale.start(), top), (scale.end(), top)], Look::line(Colour::Quiet, 1.0));
    let (left, right) = (drawing.left(), drawing.right());
    for (x, number) in numbered {
        let half = Lettering::NUMBER.width(number) / 2.0;
        let x = x.clamp(left + half, (right - half).max(left + half));
        drawing.text((x, top + 16.0), Anchor::Middle, Lettering::NUMBER, number);
    }
    drawing.paragraph((left, top + 21.0), Anchor::Start, Lettering::CAPTION, caption, right - left)
}
