//! Which mistake explains a sheet: each is made on the same lines, and the one whose sheets come nearest is named.

use super::line::PracticeLine;
use super::mistake::{Mistake, Row, sheet};
use crate::length::Length;
use crate::rule::ReadingRule;

/// Every mistake with the sheets that it would give, for lines that many learners read.
#[derive(Clone, Debug)]
pub struct Recogniser {
    step: Length,
    careful: Vec<Vec<Row>>,
    mistakes: Vec<(Mistake, Vec<Vec<Row>>)>,
}

/// A mistake that explains a learner's sheets.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Named {
    /// The mistake that explains most.
    pub mistake: Mistake,
    /// Others that explain as much, one of each kind: the sheets can't tell them apart.
    pub alike: Vec<Mistake>,
    /// Rows that disagree with a careful reading.
    pub faults: usize,
    /// Rows that still disagree once the mistake is allowed for.
    pub left: usize,
}

/// An edge that lies off by more divisions than this is no ordinary edge error.
const ORDINARY: i64 = 2;
/// A mistake is named when it explains so many rows, and half of all that disagree, and so many rows are as it has them.
const FEWEST: usize = 5;
/// Mistakes that leave no more than this many rows more are look-alikes.
const ALIKE: usize = 1;

impl Recogniser {
    /// Prepares the sheets of every mistake on some lines.
    pub fn new(lines: &[PracticeLine], rule: &ReadingRule) -> Self {
        let sheets = |mistake| lines.iter().map(|line| sheet(line, rule, mistake)).collect::<Vec<_>>();
        let careful = sheets(None);
        let mistakes = Mistake::all(lines, rule)
            .into_iter()
            .map(|mistake| (mistake, sheets(Some(mistake))))
            .filter(|(_, sheets)| *sheets != careful)
            .collect();
        Self { step: lines.iter().map(PracticeLine::step).max().unwrap_or_default(), careful, mistakes }
    }

    /// The mistake that explains a learner's sheets of the lines, in the lines' order; `None` where none does.
    ///
    /// Rows of a sheet and of the key agree when species and both edges do, within two divisions. A mistake is named when
    /// it explains five or more of the rows that disagree, and half of them, and five rows or more are as it has them.
    ///
    /// # Source
    /// our own; how often it is right is in `docs/practice.md`
    /// # Example
    /// ```
    /// use tautline_engine::length::{Length, Notation, Unit};
    /// use tautline_engine::practice::{level::{Level, Wanted, draw}, mistake::{Mistake, sheet}, recognise::Recogniser};
    /// use tautline_engine::rule::ReadingRule;
    /// let rule = ReadingRule::AS_WRITTEN.with_limit(Length::from_units(5, Unit::Centimetre));
    /// let tape = Notation::decimals(Unit::Centimetre, 0);
    /// let length = Length::from_units(30, Unit::Metre);
    /// let line = draw(&Wanted { level: Level::Three, length, tape, gap: rule.gap.limit, seed: 3 });
    /// let written = sheet(&line, &rule, Some(Mistake::CountsDead));
    /// let named = Recogniser::new(&[line], &rule).name(&[written]).unwrap();
    /// assert_eq!(named.mistake, Mistake::CountsDead);
    /// ```
    pub fn name(&self, sheets: &[Vec<Row>]) -> Option<Named> {
        let (faults, _) = self.apart(&self.careful, sheets, usize::MAX)?;
        let most = faults.checked_sub(FEWEST)?.min(faults / 2);
        let mut best: Vec<(usize, i64, Mistake)> = self
            .mistakes
            .iter()
            .filter_map(|(mistake, predicted)| {
                let (left, off) = self.apart(predicted, sheets, most)?;
                // a sheet with hardly anything on it is as little explained by what leaves much out
                let alike = (rows(predicted) + rows(sheets)).saturating_sub(left) / 2;
                (alike >= FEWEST).then_some((left, off, *mistake))
            })
            .collect();
        best.sort_unstable();
        let &(left, _, mistake) = best.first()?;
        let mut alike: Vec<Mistake> = Vec::new();
        for &(other, _, candidate) in &best {
            let kind = candidate.code();
            let known = kind == mistake.code() || alike.iter().any(|one| one.code() == kind);
            if !known && other <= left + ALIKE {
                alike.push(candidate);
            }
        }
        Some(Named { mistake, alike, faults, left })
    }

    /// How many rows of either have no like in the other, and how far, in nanometres, the edges of those that have lie
    /// apart in all; `None` where more than `most` have no like.
    fn apart(&self, predicted: &[Vec<Row>], sheets: &[Vec<Row>], most: usize) -> Option<(usize, i64)> {
        let mut faults = 0;
        let mut off = 0;
        for (predicted, read) in predicted.iter().zip(sheets) {
            let mut used = vec![false; read.len()];
            let mut alike = 0;
            for (done, row) in predicted.iter().enumerate() {
                if faults + done - alike > most {
                    return None;
                }
                let first =
                    read.partition_point(|one| one.stretch.start() < row.stretch.start() - self.ordinary());
                let near = (first..read.len())
                    .take_while(|&at| read[at].stretch.start() <= row.stretch.start() + self.ordinary());
                let best = near
                    .filter(|&at| !used[at])
                    .filter_map(|at| Some((self.distance(*row, read[at])?, at)))
                    .min();
                if let Some((distance, at)) = best {
                    used[at] = true;
                    alike += 1;
                    off += distance;
                }
            }
            faults += (predicted.len() - alike).max(read.len() - alike);
        }
        (faults <= most).then_some((faults, off))
    }

    fn ordinary(&self) -> Length {
        Length::from_nanometres(self.step.nanometres() * ORDINARY)
    }

    /// How far the edges of two rows lie apart, where they can be one row.
    fn distance(&self, a: Row, b: Row) -> Option<i64> {
        let same = a.species.is_none() || b.species.is_none() || a.species == b.species;
        let apart = |a: Length, b: Length| (a - b).nanometres().abs();
        let (start, stop) =
            (apart(a.stretch.start(), b.stretch.start()), apart(a.stretch.stop(), b.stretch.stop()));
        let most = self.ordinary().nanometres();
        (same && start <= most && stop <= most).then_some(start + stop)
    }
}

fn rows(sheets: &[Vec<Row>]) -> usize {
    sheets.iter().map(Vec::len).sum()
}
