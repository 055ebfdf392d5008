//! What was found: beside the figure what weighs on it, and in full under the checks, with what persons settled.

use crate::document::{self, Beside, Block, Excerpt, Item, ListOf, heading, paragraph};
use crate::page::Page;
use std::collections::BTreeSet;
use tautline_survey::assess::Assessment;
use tautline_survey::check::KINDS;
use tautline_survey::finding::{Finding, Weight, few};
use tautline_survey::message::Message;
use tautline_words::picture;

/// More than this many to look at would drown the figure they stand beside; then they are counted.
const MOST_BESIDE: usize = 4;

const HEADINGS: [(Weight, &str); 3] = [
    (Weight::MustSettle, "heading-must-settle"),
    (Weight::HaveALook, "heading-have-a-look"),
    (Weight::Note, "heading-note"),
];

/// Some findings, those that stand open apart from those that somebody settled.
pub(crate) struct Found<'a> {
    open: Vec<&'a Finding>,
    settled: Vec<&'a Finding>,
}

/// What was found about a site in a year: on reading, by the checks, and on working it out.
pub(crate) fn of<'a>(assessment: &'a Assessment, page: &Page<'a>) -> Found<'a> {
    let checked = page.input.findings_about(&assessment.site, assessment.year);
    sorted(checked.chain(&assessment.findings))
}

/// What was found about no site and year of the page.
pub(crate) fn of_nothing_here<'a>(assessments: &[&'a Assessment], page: &Page<'a>) -> Found<'a> {
    let sites: BTreeSet<&str> = assessments.iter().map(|one| one.site.as_str()).collect();
    let rounds: BTreeSet<(&str, Option<u16>)> =
        assessments.iter().map(|one| (one.site.as_str(), one.year)).collect();
    let is_here = |finding: &Finding| {
        finding.about.as_ref().is_some_and(|about| {
            let site = about.site.as_str();
            about.date.map_or(sites.contains(site), |day| rounds.contains(&(site, Some(day.year()))))
        })
    };
    sorted(page.input.findings.iter().filter(|finding| !is_here(finding)))
}

fn sorted<'a>(findings: impl Iterator<Item = &'a Finding>) -> Found<'a> {
    let (settled, open) = findings.partition(|finding| finding.settled.is_some());
    Found { open, settled }
}

impl Found<'_> {
    pub(crate) fn is_empty(&self) -> bool {
        self.open.is_empty() && self.settled.is_empty()
    }

    /// How many stand open that must be settled.
    pub(crate) fn to_settle(&self) -> usize {
        count(&self.of_weight(Weight::MustSettle))
    }

    fn of_weight(&self, weight: Weight) -> Vec<&Finding> {
        self.open.iter().filter(|one| one.weight == weight).copied().collect()
    }

    /// What was looked for, how much was found, and each finding under a heading of this level: the heaviest first, what
    /// persons settled last.
    pub(crate) fn in_full(&self, level: u8, page: &Page) -> Vec<Block> {
        let looked = Message::new("report-looked-for").with("kinds", KINDS.len());
        let counts = Message::new("check-counts")
            .with("must", self.to_settle())
            .with("look", count(&self.of_weight(Weight::HaveALook)))
            .with("settled", count(&self.settled));
        let mut blocks = vec![paragraph(format!("{} {}", page.say(&looked), page.say(&counts)))];
        for (weight, kind) in HEADINGS {
            let own = few(self.of_weight(weight)).iter().map(|one| item(one, page)).collect();
            blocks.extend(headed(level, kind, own, page));
        }
        let settled = few(self.settled.iter().copied().filter(|one| page.may_quote(one)));
        let settled = settled.iter().filter_map(|one| one.settled_words());
        let settled = settled.map(|said| Item::said(page.say(&said))).collect();
        blocks.extend(headed(level, "heading-settled", settled, page));
        blocks
    }

    /// What weighs on a figure, for the place right beside it; the rest is said under the checks.
    pub(crate) fn beside_the_figure(&self, checks_id: &str, page: &Page) -> Option<Beside> {
        let mut kinds = Vec::new();
        for (weight, kind) in &HEADINGS[..2] {
            let own = self.of_weight(*weight);
            let items: Vec<Item> = if own.len() <= MOST_BESIDE || *weight == Weight::MustSettle {
                few(own).iter().map(|one| Item::said(said(one, page))).collect()
            } else {
                let count = Message::new("report-more-to-look-at").with("count", count(&own));
                let to = page.reader.reads("checks").then(|| checks_id.to_owned());
                vec![Item { to, ..Item::said(page.say(&count)) }]
            };
            if !items.is_empty() {
                kinds.push(document::Kind { label: label(kind, page), items });
            }
        }
        (!kinds.is_empty()).then(|| Beside { label: page.word("report-beside"), kinds })
    }
}

/// How many findings these stand for.
fn count(findings: &[&Finding]) -> usize {
    findings.iter().map(|one| one.times()).sum()
}

/// A heading without the colon that it has on a screen of letters.
fn label(code: &str, page: &Page) -> String {
    page.word(code).trim_end_matches(':').to_owned()
}

/// A heading and its list; nothing where the list is empty.
fn headed(level: u8, code: &str, items: Vec<Item>, page: &Page) -> Vec<Block> {
    let list = document::list(ListOf::Sentences, items);
    list.map_or_else(Vec::new, |list| vec![heading(level, label(code, page)), list])
}

/// A finding, with the row it stands in where a person typed that by hand.
fn item(finding: &Finding, page: &Page) -> Item {
    // a row that a person typed may say where the line is
    let quoted = !page.keeps_back(finding.about.as_ref().map(|about| about.site.as_str()));
    let excerpt = finding
        .excerpt
        .as_ref()
        .filter(|_| quoted)
        .map(|excerpt| Excerpt { label: page.word("report-excerpt"), rows: picture(excerpt) });
    Item { excerpt, ..Item::said(said(finding, page)) }
}

/// A finding in words, without what was found where that is kept back.
fn said(finding: &Finding, page: &Page) -> String {
    if page.may_quote(finding) { page.say(&finding.words()) } else { page.word("report-finding-kept-back") }
}
