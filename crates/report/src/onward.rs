//! What changed since the visit before, and what to do at or before the next.

use crate::checks;
use crate::document::Said;
use crate::page::Page;
use std::collections::{BTreeMap, BTreeSet};
use tautline_engine::effort::MoreUnits;
use tautline_survey::assess::{Assessment, Question};
use tautline_survey::date::Date;
use tautline_survey::follow::{ChangeQuestion, SiteChange, change, sentences};
use tautline_survey::goal::Subject;
use tautline_survey::input::Input;
use tautline_survey::limits::CHANCE_TO_SETTLE_PER_MILLE;
use tautline_survey::message::Message;
use tautline_survey::protocol::Protocol;

/// What is said about a change to somebody who reads no statistics.
const PLAIN: [&str; 8] = [
    "change-rose",
    "change-fell",
    "change-not-shown",
    "change-none-that-matters",
    "change-untold",
    "change-from-to",
    "change-hidden",
    "untreated-not-read",
];

/// The change of each site up to a year, from the year it was read in before.
#[derive(Default)]
pub(crate) struct Changes(BTreeMap<(String, u16), SiteChange>);

impl Changes {
    /// The changes that lead up to the years of the assessments.
    pub(crate) fn up_to(input: &Input, question: &Question, assessments: &[Assessment]) -> Self {
        let mut years: BTreeMap<&str, BTreeSet<u16>> = BTreeMap::new();
        for visit in &input.visits {
            years.entry(&visit.site).or_default().extend(visit.date.map(Date::year));
        }
        let steps = assessments.iter().filter(|one| one.plot.is_none()).filter_map(|one| {
            let to = one.year?;
            let from = years.get(one.site.as_str())?.range(..to).next_back()?;
            Some((*from, to))
        });
        let steps: BTreeSet<(u16, u16)> = steps.collect();
        let found = steps.into_iter().flat_map(|(from, to)| {
            let asked = ChangeQuestion {
                question: question.clone(),
                from,
                to,
                matters: None,
                power: f64::from(CHANCE_TO_SETTLE_PER_MILLE) / 1000.0,
                temporary: false,
                untreated: None,
                span: None,
            };
            change(input, &asked)
        });
        // of two steps that end in one year the shorter is the site's own
        let mut changes: BTreeMap<(String, u16), SiteChange> = BTreeMap::new();
        for one in found {
            let key = (one.site.clone(), one.to);
            if changes.get(&key).is_none_or(|other| other.from < one.from) {
                changes.insert(key, one);
            }
        }
        Self(changes)
    }

    /// Whether no site was read in an earlier year.
    pub(crate) fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
}

/// What changed since the visit before; nothing for a plot by itself.
pub(crate) fn changed(assessment: &Assessment, page: &Page) -> Option<Said> {
    if assessment.plot.is_some() {
        return None;
    }
    let key = (assessment.site.clone(), assessment.year?);
    let sentences = match page.changes.0.get(&key) {
        Some(change) => of_canopy(change, page),
        None => vec![page.word("report-first-visit")],
    };
    (!sentences.is_empty()).then(|| Said { heading: page.word("report-changed"), sentences })
}

fn of_canopy(change: &SiteChange, page: &Page) -> Vec<String> {
    let figure = change.figures.iter().find(|figure| figure.subject == Subject::Canopy);
    let Some(figure) = figure else { return Vec::new() };
    let said = sentences(change, figure);
    let for_reader = |one: &&Message| page.reader.reads_statistics() || PLAIN.contains(&one.code);
    let unlike = change.findings.iter().map(|finding| &finding.message);
    let unlike = unlike.filter(|one| one.code.starts_with("unlike-"));
    said.iter().filter(for_reader).chain(unlike).map(|one| capital(&page.say(one))).collect()
}

/// A sentence that begins with what it is about begins with a capital letter.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or(String::new(), |first| first.to_uppercase().chain(letters).collect())
}

/// What to settle, what to read, and when to come again.
pub(crate) fn next(assessment: &Assessment, page: &Page) -> Option<Said> {
    let mut sentences = Vec::new();
    let to_settle = checks::of(assessment, page).to_settle();
    if to_settle > 0 {
        sentences.push(page.say(&Message::new("report-next-settle").with("count", to_settle)));
    }
    let more = assessment.judgements.iter().filter_map(|judgement| match judgement.more {
        Some(MoreUnits::More(more)) => Some((more, judgement.figure?)),
        _ => None,
    });
    if let Some((more, figure)) = more.max() {
        let plots = assessment.figures[figure].estimate.method.counts_plots();
        let code = if plots { "report-next-plots" } else { "report-next-lines" };
        // each code is one of the two just above
        sentences.push(page.say(&Message { code, values: Vec::new() }.with("more", more)));
    }
    let days = assessment.lines.iter().filter_map(|line| line.date);
    let mut protocols = assessment.lines.iter().filter_map(|line| page.input.protocols.get(&line.protocol));
    let unknown = protocols.any(Protocol::has_unknown);
    let (dated, undated) = if unknown {
        ("report-next-visit-agree", "report-next-visit-agree-undated")
    } else {
        ("report-next-visit", "report-next-visit-undated")
    };
    sentences.push(match days.max() {
        Some(day) => page.say(&Message::new(dated).with("day", day.to_string())),
        None => page.word(undated),
    });
    (!assessment.lines.is_empty()).then(|| Said { heading: page.word("report-next"), sentences })
}
