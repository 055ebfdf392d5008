//! Where a value stands in the picture, and which values deserve a tick.

use tautline_engine::length::{DecimalMark, Length, Unit};

/// A straight scale from zero to a full value, between two places of the picture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Scale {
    start: f64,
    end: f64,
    full: f64,
}

impl Scale {
    /// A scale; zero stands at `start` and `full` at `end`.
    pub(crate) const fn new(start: f64, end: f64, full: f64) -> Self {
        Self { start, end, full }
    }

    /// A scale of lengths.
    pub(crate) fn of_lengths(start: f64, end: f64, full: Length) -> Self {
        Self::new(start, end, full.in_unit(Unit::Millimetre))
    }

    /// The place of a value; beyond the scale, its nearer end.
    pub(crate) fn at(self, value: f64) -> f64 {
        if self.full <= 0.0 {
            return self.start;
        }
        self.start + (self.end - self.start) * (value / self.full).clamp(0.0, 1.0)
    }

    /// The place of a length.
    pub(crate) fn at_length(self, length: Length) -> f64 {
        self.at(length.in_unit(Unit::Millimetre))
    }

    pub(crate) const fn start(self) -> f64 {
        self.start
    }

    pub(crate) const fn end(self) -> f64 {
        self.end
    }
}

/// What a scale counts in: whole grains, so that ticks are exact.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Measure {
    /// Grains in one of the unit that the numbers are written in.
    unit: i64,
    by_the_dozen: bool,
}

impl Measure {
    /// Per cent, in thousandths.
    pub(crate) const PER_CENT: Self = Self { unit: 1000, by_the_dozen: false };

    /// A unit of length, in nanometres.
    pub(crate) const fn of(unit: Unit) -> Self {
        Self { unit: unit.nanometres(), by_the_dozen: matches!(unit, Unit::Inch) }
    }

    /// Steps that a reader can count in, finest first: ones, twos and fives; for inches also their eighths
    /// and dozens.
    fn steps(self) -> Vec<i64> {
        const FINEST_OF_TEN: [i64; 3] = [1, 2, 5];
        let tens = |grain: i64, below: i64| {
            (0..16_u32)
                .flat_map(move |power| FINEST_OF_TEN.map(|digit| (digit, power)))
                .map_while(move |(digit, power)| grain.checked_mul(digit * 10_i64.pow(power)))
                .take_while(move |&step| step <= below)
        };
        let longest = Length::LONGEST.nanometres() * 10;
        if !self.by_the_dozen {
            return tens(self.unit / 1000, longest).collect();
        }
        let eighths = [self.unit / 8, self.unit / 4, self.unit / 2];
        let inches = [1, 2, 3, 6].map(|inches| inches * self.unit);
        eighths.into_iter().chain(inches).chain(tens(12 * self.unit, longest)).collect()
    }

    /// A tick's value as text: at most three decimals, none that are zero.
    pub(crate) fn number(self, grains: i64, mark: DecimalMark) -> String {
        let thousandths = i128::from(grains) * 1000 / i128::from(self.unit);
        let (whole, rest) = (thousandths / 1000, thousandths % 1000);
        if rest == 0 {
            return whole.to_string();
        }
        let mark = match mark {
            DecimalMark::Point => '.',
            DecimalMark::Comma => ',',
        };
        format!("{whole}{mark}{rest:03}").trim_end_matches('0').to_owned()
    }

    /// The ticks from zero to `full` grains on `room` pixels, when a number needs `spacing(number)` of them.
    #[expect(clippy::cast_precision_loss, reason = "only decides how many ticks fit")]
    pub(crate) fn ticks(self, full: i64, room: f64, spacing: impl Fn(&str) -> f64) -> Ticks {
        let steps = self.steps();
        let pixels = |step: i64| room * (step as f64 / full as f64);
        let fits = |step: &i64| {
            // the numbers on the way are at most as long as the last one and the step itself
            let last = self.number(full / step * step, DecimalMark::Point);
            let first = self.number(*step, DecimalMark::Point);
            pixels(*step) >= spacing(&last).max(spacing(&first))
        };
        let coarsest = steps[steps.len() - 1];
        if full <= 0 || room <= 0.0 {
            return Ticks { step: coarsest, numbered: vec![0], between: Vec::new() };
        }
        let step = steps.iter().copied().find(fits).unwrap_or(coarsest);
        let fine = steps.iter().copied().find(|&fine| fine < step && step % fine == 0 && pixels(fine) >= 4.5);
        let count = |step: i64| (0..=full / step).map(move |at| at * step);
        let between = fine.into_iter().flat_map(count).filter(|grains| grains % step != 0).collect();
        Ticks { step, numbered: count(step).collect(), between }
    }
}

/// The ticks of a scale, in grains.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Ticks {
    pub(crate) step: i64,
    /// Those that carry a number.
    pub(crate) numbered: Vec<i64>,
    /// Those between them.
    pub(crate) between: Vec<i64>,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_value_stands_in_proportion_and_never_outside() {
        let scale = Scale::new(10.0, 110.0, 50.0);
        assert!((scale.at(25.0) - 60.0).abs() < 1e-12);
        assert!((scale.at(-3.0) - 10.0).abs() < 1e-12);
        assert!((scale.at(80.0) - 110.0).abs() < 1e-12);
        assert!((Scale::new(10.0, 110.0, 0.0).at(3.0) - 10.0).abs() < 1e-12);
    }

    #[test]
    fn feet_are_counted_in_ones_twos_and_fives() {
        // 65 ft on 650 pixels, 30 for a number: 3 ft would do, 5 ft is the next countable step
        let foot = Unit::Foot.nanometres();
        let ticks = Measure::of(Unit::Foot).ticks(65 * foot, 650.0, |_| 30.0);
        assert_eq!(ticks.step, 5 * foot);
        assert_eq!(ticks.numbered.len(), 14);
        assert_eq!(ticks.between.len(), 65 * 2 - 13, "half feet, without the numbered ones");
    }

    #[test]
    fn inches_are_counted_by_the_dozen() {
        let inch = Unit::Inch.nanometres();
        let ticks = Measure::of(Unit::Inch).ticks(780 * inch, 650.0, |_| 30.0);
        assert_eq!(ticks.step, 60 * inch);
        let short = Measure::of(Unit::Inch).ticks(inch, 300.0, |_| 60.0);
        assert_eq!(short.step, inch / 4);
    }

    #[test]
    fn numbers_are_written_without_needless_zeros() {
        let foot = Unit::Foot.nanometres();
        let feet = Measure::of(Unit::Foot);
        assert_eq!(feet.number(foot / 2, DecimalMark::Point), "0.5");
        assert_eq!(feet.number(foot / 2, DecimalMark::Comma), "0,5");
        assert_eq!(feet.number(120 * foot, DecimalMark::Point), "120");
        assert_eq!(Measure::of(Unit::Inch).number(Unit::Inch.nanometres() / 8, DecimalMark::Point), "0.125");
    }

    #[test]
    fn nothing_to_show_still_has_a_zero() {
        assert_eq!(Measure::PER_CENT.ticks(0, 300.0, |_| 30.0).numbered, [0]);
        assert_eq!(Measure::PER_CENT.ticks(100, 0.0, |_| 30.0).numbered, [0]);
    }
}
