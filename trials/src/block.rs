//! All cases of one set, clumping and cover: the unit of work.

use crate::rivals::{BOOTSTRAP_EVERY, Figure, Sample};
use crate::stands::{Clumping, Known, Set};
use crate::survey::{Length, Reading, read};
use crate::table::Row;
use crate::tally::{Tally, tails};
use tautline_engine::estimate::Line;
use tautline_engine::num::count;
use tautline_engine::seed::{Random, Seed};

/// Numbers of lines that are tried. A smaller survey is the first lines of a larger one.
pub const LINES: [usize; 7] = [2, 3, 5, 8, 12, 20, 30];

/// How many surveys of how many stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Plan {
    /// Stands of each case, drawn anew.
    pub stands: usize,
    /// Surveys of each stand.
    pub surveys: usize,
}

impl Plan {
    /// 500 surveys of each of 20 stands: 10,000 a case.
    pub const FULL: Self = Self { stands: 20, surveys: 500 };
}

/// One set, clumping and cover.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Block {
    /// Set of stands.
    pub set: Set,
    /// Degree of clumping.
    pub clumping: Clumping,
    /// Wanted cover in per cent.
    pub cover: u64,
}

/// The figures tried with lines of a length: the sum of plants on two of the lengths alone.
fn figures(length: Length) -> &'static [Figure] {
    match length {
        Length::Equal(30) | Length::Mixed => &[Figure::Canopy, Figure::Sum],
        Length::Equal(_) => &[Figure::Canopy],
    }
}

/// The tallies of one length: for each number of lines, figure and rival.
type Tallies = Vec<Vec<Vec<Tally>>>;

/// What is counted for one length over all stands.
struct Counted {
    length: Length,
    tallies: Tallies,
    lines: usize,
    intercepts: usize,
}

impl Counted {
    fn none(length: Length) -> Self {
        let empty = figures(length).iter().map(|figure| vec![Tally::default(); figure.rivals().len()]);
        let empty: Vec<Vec<Tally>> = empty.collect();
        Self { length, tallies: vec![empty; LINES.len()], lines: 0, intercepts: 0 }
    }

    /// Surveys one stand again and again.
    fn survey(&mut self, set: Set, known: &Known, surveys: usize, lines: &mut Random, draws: &mut Random) {
        let most = LINES.into_iter().max().unwrap_or(0);
        let mut readings = Vec::new();
        for survey in 0..surveys {
            read(known, self.length, most, lines, &mut readings);
            self.lines += most;
            self.intercepts += readings.iter().map(|reading| reading.intercepts).sum::<usize>();
            for (at, figure) in figures(self.length).iter().enumerate() {
                let (truth, top, line): (f64, f64, fn(&Reading) -> Line) = match figure {
                    Figure::Canopy => (known.canopy, 1.0, Reading::canopy_line),
                    Figure::Sum => (known.sum, f64::INFINITY, Reading::sum_line),
                };
                let all: Vec<Line> = readings.iter().map(line).collect();
                for (tallies, n) in self.tallies.iter_mut().zip(LINES) {
                    let sample = Sample::of(&all[..n], &readings[..n]);
                    for (tally, rival) in tallies[at].iter_mut().zip(figure.rivals()) {
                        let its_turn = !rival.is_slow() || survey.is_multiple_of(BOOTSTRAP_EVERY);
                        if its_turn && rival.is_tried(set, n) {
                            tally.add(truth, top, rival.ends(&sample, tails(), draws));
                        }
                    }
                }
            }
        }
    }
}

impl Block {
    /// All of them, in the order of the table.
    pub fn all() -> Vec<Self> {
        let mut blocks = Vec::new();
        for set in Set::ALL {
            for clumping in set.clumpings() {
                blocks.extend(set.covers().iter().map(|&cover| Self { set, clumping, cover }));
            }
        }
        blocks
    }

    /// Its name.
    pub fn name(&self) -> String {
        format!("{}-{}-{}", self.set.name(), self.clumping.name, self.cover)
    }

    /// Draws its stands, surveys them and counts; the same rows every time.
    pub fn rows(&self, plan: Plan) -> Vec<Row> {
        let area = self.set.area_of_clump(self.clumping);
        let mut counted = Length::ALL.map(Counted::none);
        let mut truths = (0.0, 0.0);
        for stand in 0..plan.stands {
            let number = stand as u64;
            let known = self.set.stand(self.clumping, self.cover, area, number);
            truths.0 += known.canopy / count(plan.stands);
            truths.1 += known.sum / count(plan.stands);
            for counted in &mut counted {
                let stream = |what: &str| {
                    let purpose = format!("trial {what} {} {}", self.name(), counted.length.name());
                    Seed::from_purpose(&purpose, &[number]).stream()
                };
                let (mut lines, mut draws) = (stream("lines"), stream("draws"));
                counted.survey(self.set, &known, plan.surveys, &mut lines, &mut draws);
            }
        }
        counted.iter().flat_map(|counted| self.rows_of(counted, truths)).collect()
    }

    fn rows_of(&self, counted: &Counted, truths: (f64, f64)) -> Vec<Row> {
        let mut rows = Vec::new();
        for (tallies, n) in counted.tallies.iter().zip(LINES) {
            for (tallies, figure) in tallies.iter().zip(figures(counted.length)) {
                let tried = tallies.iter().zip(figure.rivals()).filter(|(tally, _)| tally.surveys > 0);
                for (tally, rival) in tried {
                    rows.push(Row {
                        set: self.set.name().to_owned(),
                        clumping: self.clumping.name.to_owned(),
                        cover: u32::try_from(self.cover).expect("per cent"),
                        length: counted.length.name(),
                        lines: u32::try_from(n).expect("a few lines"),
                        figure: figure.name().to_owned(),
                        method: rival.name().to_owned(),
                        truth: if *figure == Figure::Canopy { truths.0 } else { truths.1 },
                        intercepts: count(n) * count(counted.intercepts) / count(counted.lines),
                        width: tally.width(),
                        tally: *tally,
                    });
                }
            }
        }
        rows
    }
}
