//! Length against number, and how sure the cheapest length is.

use super::{Ask, Foreseen, so_far, width};
use crate::assess::threshold;
use crate::goal::Wanted;
use serde::Serialize;
use tautline_engine::effort::chance_to_settle;
use tautline_engine::effort::length::{Cost, Design, Law, Redrawing, cheapest, designs};
use tautline_engine::seed::Seed;
use tautline_engine::verdict::Goal;

/// Length against number.
#[derive(Clone, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct LengthsOutput {
    /// Length of the pilot's lines in metres.
    pub pilot_length_m: f64,
    /// How fast longer lines become alike: variance falls with length to this power.
    pub fall: f64,
    /// The fewest lines of each length that meet what is asked, and their cost.
    pub designs: Vec<DesignOutput>,
    /// The cheapest.
    pub cheapest: Option<DesignOutput>,
    /// A tenth of redrawn pilots had their cheapest length below the first, a tenth above the second, in metres.
    pub likely_m: Option<(f64, f64)>,
    /// Share of redrawn pilots in which this length costs at most a tenth more than the cheapest.
    pub nearly_cheapest: Option<f64>,
}

/// One design.
#[derive(Clone, Copy, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct DesignOutput {
    /// Length of each line in metres.
    pub length_m: f64,
    /// Lines.
    pub lines: usize,
    /// Minutes of all of them.
    pub minutes: f64,
    /// Longer than the pilot's lines, so beyond what was seen.
    pub beyond_pilot: bool,
}

/// A fifth of the pilot's length to twice it, in tenths of it and in metres; none without a pilot whose positions are known.
pub fn lengths_to_try(foreseen: &Foreseen) -> Vec<f64> {
    let Some(pilot) = foreseen.lines.first() else { return Vec::new() };
    let metres = pilot.length.in_unit(tautline_engine::length::Unit::Metre);
    (2..=20).map(|tenths| metres * f64::from(tenths) / 10.0).collect()
}

/// More lines than this are no plan.
const MOST_IN_A_BUDGET: f64 = 10_000.0;

/// The lines of so many metres that a budget of minutes pays for; none where these are fewer than two, or too many to be a plan.
///
/// # Example
/// Twelve minutes to walk, eight to lay and 0.6 a metre are 38 for a line of 30 m; eight hours pay for 12 of them.
/// ```
/// use tautline_engine::effort::length::Cost;
/// use tautline_survey::effort::paid_for;
/// let cost = Cost { walk: 12.0, lay: 8.0, per_metre: 0.6 };
/// assert_eq!(paid_for(480.0, cost, 30.0), Some(12));
/// assert_eq!(paid_for(60.0, cost, 30.0), None);
/// ```
pub fn paid_for(minutes: f64, cost: Cost, length_m: f64) -> Option<usize> {
    let paid = minutes / (cost.walk + cost.lay + cost.per_metre * length_m);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "between 2 and 10 000")]
    (2.0..=MOST_IN_A_BUDGET).contains(&paid).then_some(paid as usize)
}

/// Which length meets the first goal, or else the wanted half-width, at the least cost.
///
/// # Range
/// `None` where nothing to meet was asked, or the pilot's positions don't say how spread falls with length
pub fn lengths(foreseen: &Foreseen, ask: &Ask, lengths: &[f64], cost: Cost) -> Option<LengthsOutput> {
    let mut comparing = Comparing::new(foreseen.clone(), ask.clone(), lengths.to_vec(), cost)?;
    comparing.run(usize::MAX);
    Some(comparing.so_far())
}

/// Lengths that are compared piece by piece, for whoever can't wait: first the cheapest, then how sure that is.
pub struct Comparing {
    foreseen: Foreseen,
    ask: Ask,
    lengths: Vec<f64>,
    cost: Cost,
    law: Law,
    times: f64,
    found: Vec<Design>,
    redrawing: Redrawing,
}

impl Comparing {
    /// The designs, and no pilot redrawn yet; see [`lengths`].
    pub fn new(foreseen: Foreseen, ask: Ask, lengths: Vec<f64>, cost: Cost) -> Option<Self> {
        if goal(&ask).is_none() && ask.half_width.is_none() {
            return None;
        }
        let law = Law::of_pilot(&foreseen.lines)?;
        // at the pilot's own length the deviation is the one foreseen, so that both tables say the same
        let times = foreseen.deviation / law.deviation(pilot_length(&foreseen)?);
        let times = times * times;
        let found = designs(law.times(times), &lengths, cost, |deviation, units| {
            does(&foreseen, &ask, deviation, units)
        });
        let seed = Seed::from_purpose("length against number", &[foreseen.lines.len() as u64]);
        let redrawing = Redrawing::new(seed);
        Some(Self { foreseen, ask, lengths, cost, law, times, found, redrawing })
    }

    /// Redraws so many more pilots.
    pub fn run(&mut self, redraws: usize) {
        let Some(best) = cheapest(&self.found) else { return };
        let (foreseen, ask) = (&self.foreseen, &self.ask);
        let does = |deviation, units| does(foreseen, ask, deviation, units);
        self.redrawing.run(redraws, &foreseen.lines, self.times, &self.lengths, self.cost, best.length, does);
    }

    /// Nothing is left to be redrawn.
    pub fn is_done(&self) -> bool {
        self.redrawing.is_done() || self.found.is_empty()
    }

    /// What is known so far; how sure the cheapest length is, once all were redrawn.
    pub fn so_far(&self) -> LengthsOutput {
        let pilot_length_m = pilot_length(&self.foreseen).unwrap_or_default();
        let output = |design: Design| DesignOutput {
            length_m: design.length,
            lines: design.units,
            minutes: design.minutes,
            beyond_pilot: design.length > pilot_length_m,
        };
        let sure = if self.redrawing.is_done() { self.redrawing.sureness() } else { None };
        LengthsOutput {
            pilot_length_m,
            fall: self.law.fall,
            designs: self.found.iter().copied().map(output).collect(),
            cheapest: cheapest(&self.found).map(output),
            likely_m: sure.map(|sure| (sure.low, sure.high)),
            nearly_cheapest: sure.map(|sure| sure.nearly_cheapest),
        }
    }
}

fn goal(ask: &Ask) -> Option<Goal> {
    ask.goals.iter().find(|goal| matches!(goal, Wanted::Cover(_))).map(threshold)
}

fn pilot_length(foreseen: &Foreseen) -> Option<f64> {
    Some(foreseen.lines.first()?.length.in_unit(tautline_engine::length::Unit::Metre))
}

/// Whether so many lines with such a standard deviation meet what is asked.
fn does(foreseen: &Foreseen, ask: &Ask, deviation: f64, units: usize) -> bool {
    match (goal(ask), ask.half_width) {
        (Some(goal), _) => {
            let so_far = so_far(foreseen.cover, deviation);
            chance_to_settle(&so_far, goal, ask.confidence, units) >= ask.power
        }
        (None, Some(wanted)) => width(ask, deviation).chance(wanted, units) >= ask.power,
        (None, None) => false,
    }
}
