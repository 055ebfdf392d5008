//! What surveys drawn one by one say about a change: from normal lines, from an uneven stand, from the pilot's own lines.

use super::{Ask, Foreseen};
use serde::Serialize;
use tautline_engine::effort::change::{Change, Lines};
use tautline_engine::effort::power::{Groups, Sides, TTest};
use tautline_engine::effort::simulated::{self, DrawLine, Making, NormalLines, Readings, Simulation};
use tautline_engine::num::count;
use tautline_engine::seed::{Random, Seed};

/// Surveys drawn for each answer.
pub const SURVEYS: u64 = 10_000;

/// The chance that staked lines show a change, by simulation.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SimulatedOutput {
    /// `normal`: lines as the closed form takes them; `stand`: lines across an invented uneven stand.
    pub drawn_from: &'static str,
    /// Lines on each visit.
    pub lines: usize,
    /// Share of surveys that show the change.
    pub chance: f64,
    /// Its Monte-Carlo standard error.
    pub error: f64,
    /// Surveys drawn.
    pub surveys: u64,
    /// The closed form for normal lines with the same mean and spread of differences.
    pub closed_form: f64,
    /// The stand, where there is one.
    pub stand: Option<StandOutput>,
}

/// An invented stand, as its lines show it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct StandOutput {
    /// Length of a line in metres.
    pub length_m: f64,
    /// Mean cover on the earlier visit.
    pub cover: f64,
    /// Standard deviation of lines.
    pub deviation: f64,
    /// Mean change.
    pub change: f64,
    /// Standard deviation of the change between lines.
    pub deviation_of_differences: f64,
    /// Share of lines without canopy.
    pub bare: f64,
    /// Mean number of plants in a clump.
    pub clump: f64,
}

/// Simulates a change with so many lines of so many metres; nothing where no change was asked.
///
/// The change is taken as a fall where cover allows one, since that is what a plan is mostly for.
pub fn simulate(foreseen: &Foreseen, ask: &Ask, lines: usize, length_m: f64) -> Vec<SimulatedOutput> {
    let Some(mut simulating) = Simulating::new(foreseen, ask, lines, length_m) else { return Vec::new() };
    while !simulating.is_done() {
        simulating.run(SURVEYS);
    }
    simulating.so_far()
}

/// Surveys that are drawn piece by piece, for whoever can't wait: those of normal lines first, then the uneven stand is made,
/// then its surveys are drawn. The pieces don't change the answer.
pub struct Simulating {
    lines: usize,
    alpha: f64,
    length_m: f64,
    normal: Simulation<NormalLines>,
    normal_closed: f64,
    normal_drawn: u64,
    stand: Stand,
}

/// The uneven stand, as far as it is.
#[expect(clippy::large_enum_variant, reason = "there is one of it, and it is soon drawn")]
enum Stand {
    /// None like that can be made.
    None,
    Making(Making),
    Drawn {
        told: StandOutput,
        simulation: Simulation<OwnLines>,
        closed: f64,
        drawn: u64,
    },
}

/// Lines of a stand that are its simulation's own.
struct OwnLines {
    readings: Vec<(f64, f64)>,
    random: Random,
}

impl DrawLine for OwnLines {
    fn line(&mut self) -> (f64, f64) {
        let at = self.random.below(self.readings.len() as u64);
        usize::try_from(at).ok().and_then(|at| self.readings.get(at)).copied().unwrap_or_default()
    }
}

impl Simulating {
    /// No survey drawn yet; nothing where no change was asked.
    pub fn new(foreseen: &Foreseen, ask: &Ask, lines: usize, length_m: f64) -> Option<Self> {
        let change = ask.change?;
        let change = if foreseen.cover > change { -change } else { change };
        let alpha = 1.0 - ask.confidence;
        let means = (foreseen.cover, foreseen.cover + change);
        let normal =
            NormalLines::new(means, foreseen.deviation, ask.correlation, seed("plan: normal lines", lines));
        let closed = Change {
            lines: Lines::Permanent { correlation: ask.correlation },
            deviation: foreseen.deviation,
            sides: Sides::Two,
            alpha,
            population: None,
        };
        let wanted = simulated::Foreseen {
            cover: foreseen.cover,
            deviation: foreseen.deviation,
            change,
            length: length_m,
        };
        Some(Self {
            lines,
            alpha,
            length_m,
            normal: Simulation::new(normal, lines, Sides::Two, alpha),
            normal_closed: closed.chance(change, lines),
            normal_drawn: 0,
            stand: Making::new(wanted, 1).map_or(Stand::None, Stand::Making),
        })
    }

    /// Draws so many more surveys, or does a step of what the next ones need.
    pub fn run(&mut self, surveys: u64) {
        let left = |drawn: u64| surveys.min(SURVEYS - drawn);
        if self.normal_drawn < SURVEYS {
            let surveys = left(self.normal_drawn);
            self.normal.run(surveys);
            self.normal_drawn += surveys;
            return;
        }
        match &mut self.stand {
            Stand::None => {}
            Stand::Making(making) => {
                if let Some(made) = making.step() {
                    self.stand = self.surveyed(made);
                }
            }
            Stand::Drawn { simulation, drawn, .. } => {
                let surveys = left(*drawn);
                simulation.run(surveys);
                *drawn += surveys;
            }
        }
    }

    /// A stand that was made, before its first survey.
    fn surveyed(&self, made: Readings) -> Stand {
        if made.lines.is_empty() {
            return Stand::None;
        }
        let shape = made.shape();
        let test = TTest { groups: Groups::One, sides: Sides::Two, alpha: self.alpha };
        let told = StandOutput {
            length_m: self.length_m,
            cover: shape.cover,
            deviation: shape.deviation,
            change: shape.change,
            deviation_of_differences: shape.deviation_of_differences,
            bare: shape.bare,
            clump: made.clump,
        };
        let own =
            OwnLines { readings: made.lines, random: seed("plan: lines of a stand", self.lines).stream() };
        Stand::Drawn {
            told,
            simulation: Simulation::new(own, self.lines, Sides::Two, self.alpha),
            closed: test.power(shape.change.abs() / shape.deviation_of_differences, count(self.lines)),
            drawn: 0,
        }
    }

    /// All were drawn.
    pub const fn is_done(&self) -> bool {
        self.normal_drawn == SURVEYS
            && match &self.stand {
                Stand::None => true,
                Stand::Making(_) => false,
                Stand::Drawn { drawn, .. } => *drawn == SURVEYS,
            }
    }

    /// What the surveys drawn so far say; nothing before the first.
    pub fn so_far(&self) -> Vec<SimulatedOutput> {
        let normal = (self.normal_drawn > 0)
            .then(|| answer("normal", self.normal.chance(), self.lines, self.normal_closed));
        let stand = match &self.stand {
            Stand::Drawn { told, simulation, closed, drawn } if *drawn > 0 => Some(SimulatedOutput {
                stand: Some(*told),
                ..answer("stand", simulation.chance(), self.lines, *closed)
            }),
            _ => None,
        };
        [normal, stand].into_iter().flatten().collect()
    }
}

fn seed(purpose: &str, lines: usize) -> Seed {
    Seed::from_purpose(purpose, &[lines as u64])
}

fn answer(
    drawn_from: &'static str,
    share: simulated::Share,
    lines: usize,
    closed_form: f64,
) -> SimulatedOutput {
    SimulatedOutput {
        drawn_from,
        lines,
        chance: share.value,
        error: share.error,
        surveys: share.surveys,
        closed_form,
        stand: None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::goal::Subject;

    /// The closed form and normal draws agree within four Monte-Carlo errors; a sparse stand has bare lines.
    #[test]
    fn normal_lines_agree_and_a_sparse_stand_is_bare_in_places() {
        let foreseen = Foreseen {
            subject: Subject::Canopy,
            cover: 0.03,
            deviation: 0.04,
            pilot: None,
            lines: Vec::new(),
        };
        let ask = Ask { change: Some(0.015), correlation: 0.6, confidence: 0.9, ..Ask::default() };
        let found = simulate(&foreseen, &ask, 12, 30.0);
        let [normal, stand] = found.as_slice() else { panic!("{found:?}") };
        assert!((normal.chance - normal.closed_form).abs() < 4.0 * normal.error, "{normal:?}");
        assert!(stand.stand.is_some_and(|stand| stand.bare > 0.1 && stand.change < 0.0), "{stand:?}");
    }

    /// Drawn in pieces, the surveys are the same.
    #[test]
    fn pieces_change_nothing() {
        let foreseen = Foreseen {
            subject: Subject::Canopy,
            cover: 0.2,
            deviation: 0.08,
            pilot: None,
            lines: Vec::new(),
        };
        let ask = Ask { change: Some(0.04), correlation: 0.5, confidence: 0.9, ..Ask::default() };
        let mut pieces = Simulating::new(&foreseen, &ask, 10, 30.0).unwrap();
        assert!(pieces.so_far().is_empty());
        while !pieces.is_done() {
            pieces.run(700);
        }
        assert_eq!(pieces.so_far(), simulate(&foreseen, &ask, 10, 30.0));
    }
}
