//! The change of one subject: which lines stand for it, its estimate, and what else is to be known about it.

use super::{ChangeQuestion, interval};
use crate::assess::{Claim, figure, intercept};
use crate::finding::Finding;
use crate::goal::Subject;
use crate::input::Input;
use crate::limits;
use crate::line::LineResult;
use crate::message::Message;
use tautline_engine::change::{
    Answer, Pair, Reread, answer, combined, largest_hidden, lines_to_see, p_value, paired, ranks, signs,
    smallest_seen, unpaired, worth_of_pairing,
};
use tautline_engine::confidence::{Interval, NoBound, Tail};
use tautline_engine::estimate::{Estimate, Line, SamplingError, Stratum, of_lines, strata};
use tautline_engine::length::Unit;
use tautline_engine::seed::Seed;

/// Which lines a difference comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Design {
    /// The same lines (or plots) twice; those read once are left out of it.
    Paired,
    /// The same lines, and those read once, weighted by what each is worth.
    PairedAndUnpaired,
    /// Other lines at each visit.
    Unpaired,
}

impl Design {
    /// A stable key for data and for the catalogue of words.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Paired => "design-paired",
            Self::PairedAndUnpaired => "design-paired-and-unpaired",
            Self::Unpaired => "design-unpaired",
        }
    }
}

/// The change within one stratum, or of the whole site where there are none.
#[derive(Clone, Debug)]
pub struct ChangePart {
    /// The stratum; empty for the whole.
    pub name: String,
    /// Its share of the site's area.
    pub weight: f64,
    /// Which lines it comes from.
    pub design: Design,
    /// Its own change.
    pub change: Estimate,
    /// Units read at both visits.
    pub pairs: usize,
    /// Units read at the earlier visit only, and at the later one only.
    pub once: (usize, usize),
}

/// Two checks that ask for no bell curve.
#[derive(Clone, Copy, Debug)]
pub struct Checks {
    /// Chance of a change as far from zero when the lines' signs are dealt out anew.
    pub signs: f64,
    /// How that chance was counted.
    pub counted: signs::Counted,
    /// Wilcoxon's signed ranks of the lines, whatever area they stand for; none where no line changed.
    pub ranks: Option<ranks::SignedRank>,
    /// The median change of the lines.
    pub median: Option<f64>,
    /// Its low and high end, and the confidence it really has; none where lines are too few to be that sure.
    pub median_interval: Option<(f64, f64, f64)>,
}

/// What it costs to take lines of one name as new ones.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LostPairing {
    /// The standard error that the change would have if they were the same lines.
    pub se: f64,
    /// How many times as many new lines it takes to be as sure; none where one of the errors isn't known.
    pub times: Option<f64>,
}

/// The change of one subject.
#[derive(Clone, Debug)]
pub struct ChangeFigure {
    /// What it is about.
    pub subject: Subject,
    /// The level at the earlier visit, from all lines read then.
    pub earlier: Estimate,
    /// The level at the later visit, from all lines read then.
    pub later: Estimate,
    /// Later less earlier.
    pub change: Estimate,
    /// Strata, or the whole.
    pub parts: Vec<ChangePart>,
    /// Two-sided, at the confidence asked for.
    pub interval: Result<Interval, NoBound>,
    /// Chance of a difference as far from zero where nothing changed.
    pub p: Result<f64, NoBound>,
    /// What is said about it.
    pub answer: Result<Answer, NoBound>,
    /// No change larger than this, at the confidence.
    pub hidden: Result<f64, NoBound>,
    /// The smallest change that these lines would have shown with the chance asked for.
    pub seen: Option<f64>,
    /// Lines at each visit that would show the change that matters.
    pub lines_to_see: Option<usize>,
    /// How many times as many lines it would take if they weren't the same.
    pub worth: Option<f64>,
    /// What was lost, where lines of one name were taken as new ones.
    pub lost: Option<LostPairing>,
    /// Checks by signs and ranks, where lines were read twice.
    pub checks: Option<Checks>,
}

impl ChangeFigure {
    /// Units read at both visits.
    pub fn pairs(&self) -> usize {
        self.parts.iter().map(|part| part.pairs).sum()
    }

    /// Units read at one visit only: the earlier, the later.
    pub fn once(&self) -> (usize, usize) {
        self.parts.iter().fold((0, 0), |sum, part| (sum.0 + part.once.0, sum.1 + part.once.1))
    }

    /// Which lines the whole difference comes from: unlike strata are both.
    pub fn design(&self) -> Design {
        let first = self.parts.first().map_or(Design::Unpaired, |part| part.design);
        if self.parts.iter().all(|part| part.design == first) { first } else { Design::PairedAndUnpaired }
    }
}

/// The units of one part, by how often they were read.
struct Units {
    pairs: Vec<Pair>,
    earlier: Vec<Line>,
    later: Vec<Line>,
}

pub(super) fn figure(
    input: &Input,
    asked: &ChangeQuestion,
    earlier: &[LineResult],
    later: &[LineResult],
    subject: Subject,
) -> Result<ChangeFigure, Finding> {
    let confidence = asked.question.confidence();
    let open: Vec<String> = earlier
        .iter()
        .chain(later)
        .filter(|line| !intercept(line, &subject).is_known())
        .map(|line| line.line.clone())
        .collect();
    if !open.is_empty() {
        let message = Message::new("change-between-ends")
            .with("what", crate::explain::subject_words(&subject))
            .with("lines", open);
        return Err(Finding::have_a_look(message));
    }
    let level = |lines: &[LineResult]| {
        let values: Vec<Line> = lines.iter().map(|line| engine_line(line, &subject)).collect();
        figure::estimate(input, asked.question.claim, lines, &values)
    };
    let (before, strata_before, _) = level(earlier);
    let (after, strata_after, _) = level(later);
    // strata count where both visits have the same ones
    let alike = strata_before.len() == strata_after.len()
        && strata_before.iter().zip(&strata_after).all(|(a, b)| a.name == b.name);
    let names: Vec<(String, f64)> = if alike {
        strata_before.iter().map(|part| (part.name.clone(), part.weight)).collect()
    } else {
        vec![(String::new(), 1.0)]
    };
    let mut dealt = Vec::new();
    let mut parts = Vec::new();
    for (name, weight) in names {
        let units = units(asked, earlier, later, &subject, &name);
        dealt.extend(contributions(&units.pairs, weight));
        parts.push(part(name, weight, &units));
    }
    let change = whole(&parts);
    let design = if parts.iter().all(|part| part.design == Design::Unpaired) {
        Reread::OtherLines
    } else {
        Reread::SameLines
    };
    let mut figure = ChangeFigure {
        interval: interval(&change, confidence),
        p: p_value(&change),
        answer: answer(&change, confidence, asked.matters),
        hidden: largest_hidden(&change, Tail::of_bound(confidence)),
        seen: smallest_seen(&change, confidence, asked.power).ok().flatten(),
        lines_to_see: asked.matters.and_then(|matters| {
            lines_to_see(&change, design, matters, confidence, asked.power).ok().flatten()
        }),
        worth: (design == Reread::SameLines).then(|| worth_of_pairing(&before, &after, &change)).flatten(),
        lost: None,
        checks: None,
        subject,
        earlier: before,
        later: after,
        change,
        parts,
    };
    figure.lost = lost(input, asked, earlier, later, &figure.subject);
    figure.checks = checks(&dealt, confidence).filter(|_| figure.design() == Design::Paired);
    Ok(figure)
}

/// The same change as if lines of one name were the same lines; nothing where they are taken so anyhow, or share no names.
fn lost(
    input: &Input,
    asked: &ChangeQuestion,
    earlier: &[LineResult],
    later: &[LineResult],
    subject: &Subject,
) -> Option<LostPairing> {
    if !asked.temporary {
        return None;
    }
    let same = ChangeQuestion { temporary: false, ..asked.clone() };
    let figure = figure(input, &same, earlier, later, subject.clone()).ok()?;
    let SamplingError::Known { se, .. } = figure.change.error else { return None };
    (figure.design() != Design::Unpaired).then_some(LostPairing { se, times: figure.worth })
}

/// A line as the estimators take it, in millimetres.
fn engine_line(line: &LineResult, subject: &Subject) -> Line {
    let millimetres = |length: tautline_engine::length::Length| length.in_unit(Unit::Millimetre);
    Line::new(millimetres(intercept(line, subject).low), millimetres(line.read))
}

/// The lines of a part, or the plots that they are bunched in, matched by their names.
fn units(
    asked: &ChangeQuestion,
    earlier: &[LineResult],
    later: &[LineResult],
    subject: &Subject,
    stratum: &str,
) -> Units {
    let by_plot = asked.question.claim == Claim::Site;
    // a plot's name and its lines', so that a plot and a line of one name stay apart
    let name = |line: &LineResult| match &line.plot {
        Some(plot) if by_plot => (true, plot.clone()),
        _ => (false, line.line.clone()),
    };
    let of = |lines: &[LineResult], only: &dyn Fn(&LineResult) -> bool| -> Vec<((bool, String), Line)> {
        let mut units: Vec<((bool, String), Line)> = Vec::new();
        let own = lines.iter().filter(|line| stratum.is_empty() || line.stratum.as_deref() == Some(stratum));
        for line in own.filter(|line| only(line)) {
            let value = engine_line(line, subject);
            let name = name(line);
            match units.iter_mut().find(|(known, _)| *known == name) {
                Some((_, sum)) => {
                    *sum = Line::new(sum.intercept + value.intercept, sum.length + value.length);
                }
                None => units.push((name, value)),
            }
        }
        units
    };
    if asked.temporary {
        let values = |lines| of(lines, &|_| true).into_iter().map(|(_, line)| line).collect();
        return Units { pairs: Vec::new(), earlier: values(earlier), later: values(later) };
    }
    // a plot is the same plot only by its staked lines: those read once would change what it is
    let twice = |line: &LineResult| {
        let among = |lines: &[LineResult]| lines.iter().any(|other| other.line == line.line);
        among(earlier) && among(later)
    };
    let (before, after) = (of(earlier, &twice), of(later, &twice));
    let pairs = before
        .iter()
        .filter_map(|(name, earlier)| {
            let later = after.iter().find(|(other, _)| other == name)?.1;
            Some(Pair { earlier: *earlier, later })
        })
        .collect();
    let once = |lines| of(lines, &|line| !twice(line)).into_iter().map(|(_, line)| line).collect();
    Units { pairs, earlier: once(earlier), later: once(later) }
}

const SOUND: &str = "lines have a length above zero and an intercept of zero or more";

/// The change of a part by the most honest design that its lines allow.
fn part(name: String, weight: f64, units: &Units) -> ChangePart {
    let (pairs, once) = (units.pairs.len(), (units.earlier.len(), units.later.len()));
    let (design, change) = if pairs < 2 {
        let lines = |once: &[Line], of: fn(&Pair) -> Line| {
            let all: Vec<Line> = units.pairs.iter().map(of).chain(once.iter().copied()).collect();
            of_lines(&all, None).expect(SOUND)
        };
        if once.0 == 0 && once.1 == 0 {
            (Design::Paired, paired(&units.pairs).expect(SOUND))
        } else {
            let earlier = lines(&units.earlier, |pair| pair.earlier);
            (Design::Unpaired, unpaired(&earlier, &lines(&units.later, |pair| pair.later)))
        }
    } else {
        let same = paired(&units.pairs).expect(SOUND);
        let others = (once.0 >= 2 && once.1 >= 2)
            .then(|| {
                let of = |lines: &[Line]| of_lines(lines, None).expect(SOUND);
                combined(&same, &unpaired(&of(&units.earlier), &of(&units.later)))
            })
            .flatten();
        match others {
            Some(both) => (Design::PairedAndUnpaired, both),
            None => (Design::Paired, same),
        }
    };
    ChangePart { name, weight, design, change, pairs, once }
}

/// The site's change from its parts.
fn whole(parts: &[ChangePart]) -> Estimate {
    if let [only] = parts {
        return only.change.clone();
    }
    let weighted: Vec<Stratum> =
        parts.iter().map(|part| Stratum { weight: part.weight, estimate: part.change.clone() }).collect();
    strata(&weighted).expect("there are strata and their areas are above zero")
}

/// What each pair adds to the change of the site, and its own difference.
fn contributions(pairs: &[Pair], weight: f64) -> Vec<(f64, f64)> {
    let all: f64 = pairs.iter().map(|pair| pair.later.length).sum();
    pairs
        .iter()
        .map(|pair| (weight * pair.later.length / all * pair.difference(), pair.difference()))
        .collect()
}

fn checks(dealt: &[(f64, f64)], confidence: f64) -> Option<Checks> {
    if dealt.is_empty() {
        return None;
    }
    let (added, own): (Vec<f64>, Vec<f64>) = dealt.iter().copied().unzip();
    let data: Vec<u64> = added.iter().map(|value| value.to_bits()).collect();
    let mut random = Seed::from_purpose("signs of changes", &data).stream();
    let (signs, counted) = signs::p_value(&added, limits::RESAMPLES - 1, &mut random);
    Some(Checks {
        signs,
        counted,
        ranks: ranks::signed_rank(&own),
        median: ranks::median_change(&own),
        median_interval: ranks::median_interval(&own, confidence),
    })
}
