//! Change between two visits of a site: what changed, how sure it is, where on the tape, and what is unlike.

mod figure;
mod logged;
pub(crate) mod noted;
mod output;
mod readers;
mod readers_words;
mod sentences;
mod tape;
mod unlike;

pub use figure::{ChangeFigure, ChangePart, Checks, Design, LostPairing};
pub use logged::{NotTaken, Taken, Visit};
pub use noted::Noted;
pub use output::{ChangeOutput, NotedOutput, output};
pub use readers::{ReaderBias, Readers};
pub use readers_words::readers_words;
pub use sentences::{chain, sentences, untreated_words};
pub use tape::{LineChange, TapeChange};

use crate::assess::{Question, dedupe, round, subjects, usable_lines};
use crate::compare::common_ground;
use crate::finding::Finding;
use crate::goal::Subject;
use crate::input::Input;
use crate::line::LineResult;
use crate::message::Message;
use crate::protocol::Assumption;
use tautline_engine::change::{Answer, answer, unpaired};
use tautline_engine::confidence::{Interval, Method, NoBound, Tail, ends};
use tautline_engine::estimate::Estimate;

/// What is asked about a change.
#[derive(Clone, Debug)]
pub struct ChangeQuestion {
    /// Rules, subjects, confidence, as for an assessment; its goals and year are not used.
    pub question: Question,
    /// The earlier year.
    pub from: u16,
    /// The later year.
    pub to: u16,
    /// The change that matters, as a share of the line.
    pub matters: Option<f64>,
    /// The chance with which a change should be seen, as a share.
    pub power: f64,
    /// Lines of the same name are not the same lines.
    pub temporary: bool,
    /// A neighbour that was left untreated, for the difference of differences.
    pub untreated: Option<String>,
    /// Days that a calibration of readers lasts in the office; none where none was given.
    pub span: Option<u32>,
}

/// The change of one site.
#[derive(Clone, Debug)]
pub struct SiteChange {
    /// The site.
    pub site: String,
    /// The earlier year.
    pub from: u16,
    /// The later year.
    pub to: u16,
    /// Confidence as a share.
    pub confidence: f64,
    /// The chance with which a change should be seen.
    pub power: f64,
    /// The change that matters.
    pub matters: Option<f64>,
    /// The lines of the earlier year.
    pub earlier: Vec<LineResult>,
    /// The lines of the later year.
    pub later: Vec<LineResult>,
    /// Lines that were read at both, where they are staked.
    pub lines: Vec<LineChange>,
    /// What was taken one way because the protocol is silent.
    pub assumed: Vec<Assumption>,
    /// The figures: canopy, sum and dead first, then those asked for.
    pub figures: Vec<ChangeFigure>,
    /// The change of canopy beyond that of the untreated neighbour.
    pub beyond: Option<Beyond>,
    /// What unlike readers do to the change of canopy.
    pub readers: Option<Readers>,
    /// What was noted beside the readings, at the earlier and at the later visit.
    pub noted: Vec<Noted>,
    /// What should be said.
    pub findings: Vec<Finding>,
}

/// What a site did beyond what its untreated neighbour did in the same years.
#[derive(Clone, Debug)]
pub struct Beyond {
    /// The neighbour.
    pub untreated: String,
    /// Change of the site less change of the neighbour.
    pub difference: Estimate,
    /// Its interval, or why there is none.
    pub interval: Result<Interval, NoBound>,
    /// Whether they changed differently.
    pub answer: Result<Answer, NoBound>,
}

/// The change of every site that was read in both years.
pub fn change(input: &Input, asked: &ChangeQuestion) -> Vec<SiteChange> {
    let mut changes: Vec<SiteChange> = each(input, asked, |_| true).collect();
    if let Some(untreated) = &asked.untreated {
        beyond(&mut changes, untreated, asked.question.confidence());
    }
    changes
}

/// The change of one site, beside its untreated neighbour where one is asked for; nothing where it wasn't read in both
/// years. Readings of other sites still say how unlike its readers are.
pub fn change_of(input: &Input, asked: &ChangeQuestion, site: &str) -> Option<SiteChange> {
    let untreated = asked.untreated.as_deref();
    let mut changes: Vec<SiteChange> =
        each(input, asked, |own| own == site || Some(own) == untreated).collect();
    if let Some(untreated) = untreated {
        beyond(&mut changes, untreated, asked.question.confidence());
    }
    changes.into_iter().find(|change| change.site == site)
}

/// The change of one wanted site after the other, for whoever can't wait until all are worked out. None is set beside an
/// untreated neighbour.
pub fn each(
    input: &Input,
    asked: &ChangeQuestion,
    wanted: impl Fn(&str) -> bool,
) -> impl Iterator<Item = SiteChange> {
    let mut rounds = round::rounds(input, None);
    rounds.retain(|round| wanted(&round.site));
    round::by_site(rounds).into_iter().filter_map(move |own| {
        let of_year = |year| own.iter().find(|round| round.year == Some(year));
        Some(site_change(input, asked, of_year(asked.from)?, of_year(asked.to)?))
    })
}

fn site_change(
    input: &Input,
    asked: &ChangeQuestion,
    earlier: &round::Round,
    later: &round::Round,
) -> SiteChange {
    let mut findings: Vec<Finding> =
        [earlier, later].iter().flat_map(|round| round.findings(input)).collect();
    let both: Vec<usize> = earlier.visits.iter().chain(&later.visits).copied().collect();
    let ground = common_ground(input, &both, &asked.question.choice);
    findings.extend(ground.findings);
    let mut lines_of = |round: &round::Round| {
        if ground.apart {
            return Vec::new();
        }
        usable_lines(input, &asked.question, &round.visits, &ground.choice, &mut findings)
    };
    let (earlier, later) = (lines_of(earlier), lines_of(later));
    let mut change = SiteChange {
        site: input.visits[both[0]].site.clone(),
        from: asked.from,
        to: asked.to,
        confidence: asked.question.confidence(),
        power: asked.power,
        matters: asked.matters,
        lines: if asked.temporary { Vec::new() } else { tape::lines(input, &earlier, &later) },
        earlier,
        later,
        assumed: ground.assumed,
        figures: Vec::new(),
        beyond: None,
        readers: None,
        noted: Vec::new(),
        findings,
    };
    if change.earlier.is_empty() || change.later.is_empty() {
        return change;
    }
    let all: Vec<LineResult> = change.earlier.iter().chain(&change.later).cloned().collect();
    for subject in subjects(&all, asked.question.by, &[]) {
        match figure::figure(input, asked, &change.earlier, &change.later, subject) {
            Ok(figure) => change.figures.push(figure),
            Err(finding) => change.findings.push(finding),
        }
    }
    change.noted = noted::noted(input, &[&change.earlier, &change.later]);
    change.readers = readers::readers(input, &change, asked);
    change.findings.extend(unlike::findings(input, &change, asked));
    dedupe(&mut change.findings);
    change
}

/// Sets each site's change beside that of the untreated one.
fn beyond(changes: &mut [SiteChange], untreated: &str, confidence: f64) {
    let canopy = |change: &SiteChange| {
        change.figures.iter().find(|figure| figure.subject == Subject::Canopy).map(|one| one.change.clone())
    };
    let Some(neighbour) = changes.iter().find(|change| change.site == untreated).and_then(canopy) else {
        for change in changes {
            let message = Message::new("untreated-not-read").with("untreated", untreated);
            change.findings.push(Finding::have_a_look(message));
        }
        return;
    };
    for change in changes.iter_mut().filter(|change| change.site != untreated) {
        let Some(own) = canopy(change) else { continue };
        let difference = unpaired(&neighbour, &own);
        change.beyond = Some(Beyond {
            untreated: untreated.to_owned(),
            interval: interval(&difference, confidence),
            answer: answer(&difference, confidence, None),
            difference,
        });
    }
}

/// The two-sided t interval of a difference.
fn interval(change: &Estimate, confidence: f64) -> Result<Interval, NoBound> {
    let (low, high) = ends(change, Method::StudentT, Tail::of_interval(confidence))?;
    Ok(Interval { low, high })
}
