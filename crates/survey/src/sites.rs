//! Many sites, one row each: canopy cover, how sure, and the verdicts.

mod output;

pub use output::{SiteOutput, SiteVerdict, SitesOutput, output};

use crate::assess::{Assessment, Few, Question, assess, intercepts_met, is_caution};
use crate::check::check;
use crate::finding::{Finding, Weight};
use crate::goal::Subject;
use crate::input::Input;
use crate::place::LinePlace;
use crate::plan::PlannedLine;
use crate::visit::Visit;
use std::collections::{BTreeMap, BTreeSet};
use tautline_engine::confidence::{Interval, Method, NoBound};
use tautline_engine::estimate::{self, Estimate, SamplingError};
use tautline_engine::length::Length;
use tautline_engine::verdict::Verdict;

/// What a site's lines come to in one year.
#[derive(Clone, Debug, PartialEq)]
pub struct SiteRow {
    /// The site.
    pub site: String,
    /// The year, where the visits are dated.
    pub year: Option<u16>,
    /// Lines behind the figures.
    pub lines: usize,
    /// Length of tape that was read on them.
    pub length: Length,
    /// Canopy cover; `None` where no line could be worked out.
    pub cover: Option<SiteCover>,
    /// The verdicts, each with the place of its goal in the question.
    pub verdicts: Vec<(usize, Verdict)>,
    /// Findings that must be settled.
    pub must_settle: usize,
    /// Findings that want a look; cautions about few lines or intercepts aside, which stand with the site itself.
    pub have_a_look: usize,
}

/// Canopy cover of a site.
#[derive(Clone, Debug, PartialEq)]
pub struct SiteCover {
    /// The estimate, a share; the low end where it is known only between two.
    pub low: f64,
    /// The high end; the same where the estimate is known.
    pub high: f64,
    /// The error of the low end.
    pub error: SamplingError,
    /// How it was estimated.
    pub estimator: estimate::Method,
    /// The interval method.
    pub method: Method,
    /// The interval, or why there is none.
    pub interval: Result<Interval, NoBound>,
    /// What it stands on where that is little, and how often such an interval was right in simulated surveys.
    pub few: Option<Few>,
}

/// What was read on a site's lines.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OnTheLines {
    /// The lines.
    pub lines: usize,
    /// Length of tape.
    pub length: Length,
    /// Stretches of canopy that they meet, where that is known of each.
    pub intercepts: Option<usize>,
}

impl SiteRow {
    /// The row of an assessment whose lines are known one by one.
    pub fn of(assessment: &Assessment, question: &Question) -> Self {
        let of = assessment.lines.as_slice();
        let read = OnTheLines {
            lines: of.len(),
            length: of.iter().map(|line| line.read).sum(),
            intercepts: intercepts_met(of, &Subject::Canopy),
        };
        Self::with_lines(assessment, &read, question)
    }

    /// The row of an assessment, with what is known of its lines.
    pub fn with_lines(assessment: &Assessment, read: &OnTheLines, question: &Question) -> Self {
        let counted = |finding: &&Finding| !is_caution(finding);
        let findings = || assessment.findings.iter().filter(counted);
        let count = |weight| findings().filter(|finding| finding.weight == weight).count();
        let cover = assessment.figure(&Subject::Canopy).map(|figure| {
            let [low, high] = figure.ends();
            let Estimate { value, error, method: estimator, .. } = low.clone();
            SiteCover {
                low: value,
                high: high.value,
                error,
                estimator,
                method: figure.method,
                interval: figure.interval,
                few: figure.few(read.intercepts),
            }
        });
        let site = assessment.site.as_str();
        let own = |goal: &crate::assess::SiteGoal| goal.site.as_deref().is_none_or(|named| named == site);
        let goals = question.goals.iter().enumerate().filter(|(_, goal)| own(goal)).map(|(place, _)| place);
        Self {
            site: site.to_owned(),
            year: assessment.year,
            lines: read.lines,
            length: read.length,
            cover,
            verdicts: goals.zip(assessment.judgements.iter().map(|judgement| judgement.verdict)).collect(),
            must_settle: count(Weight::MustSettle),
            have_a_look: count(Weight::HaveALook),
        }
    }
}

/// What of the input is about one site alone.
#[derive(Default)]
struct Own {
    visits: Vec<Visit>,
    plan: Vec<PlannedLine>,
    held: BTreeSet<usize>,
}

/// Runs the checks and keeps what they hold readings back for, beside what was found on reading. What is only worth a
/// look is for [`check`] itself to say: over thousands of sites it would be heard by nobody.
pub fn hold_back(input: &mut Input) {
    let (settle, others): (Vec<Finding>, Vec<Finding>) =
        input.findings.drain(..).partition(|finding| finding.weight == Weight::MustSettle);
    input.findings = settle;
    check(input);
    input.findings.retain(|finding| finding.weight == Weight::MustSettle);
    input.findings.extend(others);
    for about in input.findings.iter_mut().filter_map(|finding| finding.about.as_mut()) {
        // places among the visits, which the sites part
        about.visits.clear();
    }
}

/// What of the input is about one site, for a screen that shows that one alone.
///
/// # Example
/// ```
/// use tautline_survey::{input::Input, sites::of_site};
/// assert!(of_site(&Input::default(), "Hollow Flat").visits.is_empty());
/// ```
pub fn of_site(input: &Input, site: &str) -> Input {
    BySite::of(input).site(site)
}

/// Where in an input each site's own stands, so that one site after another can be taken out of thousands.
pub struct BySite<'a> {
    input: &'a Input,
    visits: BTreeMap<&'a str, Vec<usize>>,
    plan: BTreeMap<&'a str, Vec<&'a PlannedLine>>,
    places: BTreeMap<&'a str, Vec<&'a LinePlace>>,
    findings: BTreeMap<&'a str, Vec<usize>>,
}

impl<'a> BySite<'a> {
    /// Looks through an input once.
    pub fn of(input: &'a Input) -> Self {
        let mut own = Self {
            input,
            visits: BTreeMap::new(),
            plan: BTreeMap::new(),
            places: BTreeMap::new(),
            findings: BTreeMap::new(),
        };
        for (index, visit) in input.visits.iter().enumerate() {
            own.visits.entry(&visit.site).or_default().push(index);
        }
        for line in &input.plan {
            own.plan.entry(&line.site).or_default().push(line);
        }
        for place in &input.places {
            own.places.entry(&place.site).or_default().push(place);
        }
        for (index, finding) in input.findings.iter().enumerate() {
            // under no name stand those of no one site
            let site = finding.about.as_deref().map_or("", |about| about.site.as_str());
            own.findings.entry(site).or_default().push(index);
        }
        own
    }

    /// The sites of which something was read, in the order of their names.
    pub fn names(&self) -> impl Iterator<Item = &'a str> {
        self.visits.keys().copied()
    }

    /// What of the input is about one site, and what is about none or about all.
    pub fn site(&self, site: &str) -> Input {
        let input = self.input;
        let visits = self.visits.get(site).map_or(&[][..], Vec::as_slice);
        let places: BTreeMap<usize, usize> = visits.iter().copied().zip(0..).collect();
        let mut findings: Vec<usize> =
            ["", site].into_iter().filter_map(|name| self.findings.get(name)).flatten().copied().collect();
        findings.sort_unstable();
        findings.dedup();
        let is_own = |named: &str| named == site;
        let readers: BTreeSet<&str> =
            visits.iter().map(|&index| input.visits[index].reader.as_str()).collect();
        Input {
            files: input.files.clone(),
            headings: input.headings.clone(),
            // whatever shows a site must know how much of its places may be told
            sites: input.sites.iter().filter(|known| is_own(&known.site)).cloned().collect(),
            places: self.places.get(site).into_iter().flatten().copied().cloned().collect(),
            triggers: input
                .triggers
                .iter()
                .filter(|trigger| trigger.site.is_empty() || is_own(&trigger.site))
                .cloned()
                .collect(),
            // its readers were set beside others wherever that was
            calibrations: input
                .calibrations
                .iter()
                .filter(|one| {
                    [one.reader.as_str(), one.against.as_str()].iter().any(|name| readers.contains(name))
                })
                .cloned()
                .collect(),
            plan: self.plan.get(site).into_iter().flatten().copied().cloned().collect(),
            strata: input.strata.iter().filter(|stratum| is_own(&stratum.site)).cloned().collect(),
            replaced: input.replaced.iter().filter(|word| is_own(&word.site)).cloned().collect(),
            plants: input.plants.clone(),
            protocols: input.protocols.clone(),
            settlements: input
                .settlements
                .iter()
                .filter(|word| word.site.is_empty() || is_own(&word.site))
                .cloned()
                .collect(),
            held: places
                .iter()
                .filter(|(whole, _)| input.held.contains(whole))
                .map(|(_, own)| *own)
                .collect(),
            visits: visits.iter().map(|&index| input.visits[index].clone()).collect(),
            findings: findings.iter().filter_map(|&index| among(&input.findings[index], &places)).collect(),
        }
    }
}

/// A finding with the places of the site's visits; none where it names visits and none of these.
fn among(finding: &Finding, places: &BTreeMap<usize, usize>) -> Option<Finding> {
    let mut finding = finding.clone();
    if let Some(about) = finding.about.as_mut().filter(|about| !about.visits.is_empty()) {
        about.visits = about.visits.iter().filter_map(|visit| places.get(visit).copied()).collect();
        if about.visits.is_empty() {
            return None;
        }
    }
    Some(finding)
}

/// Assesses every site and year of the input, one site after another, so that thousands cost no more each than one.
///
/// # Example
/// ```
/// use tautline_survey::{assess::Question, input::Input, sites::rows};
/// assert!(rows(Input::default(), &Question::default()).is_empty());
/// ```
pub fn rows(mut input: Input, question: &Question) -> Vec<SiteRow> {
    let mut sites: BTreeMap<String, Own> = BTreeMap::new();
    let held = std::mem::take(&mut input.held);
    for (index, visit) in input.visits.drain(..).enumerate() {
        let own = sites.entry(visit.site.clone()).or_default();
        if held.contains(&index) {
            own.held.insert(own.visits.len());
        }
        own.visits.push(visit);
    }
    for line in input.plan.drain(..) {
        sites.entry(line.site.clone()).or_default().plan.push(line);
    }
    let mut rows = Vec::new();
    for own in sites.into_values() {
        (input.visits, input.plan, input.held) = (own.visits, own.plan, own.held);
        rows.extend(assess(&input, question).iter().map(|assessment| SiteRow::of(assessment, question)));
    }
    rows
}
