//! What was found: beside the figure what weighs on it, and in full under the checks, with what persons settled.

use crate::markup::{around, escape, link, text};
use crate::page::Page;
use std::collections::BTreeSet;
use tautline_survey::assess::Assessment;
use tautline_survey::check::KINDS;
use tautline_survey::finding::{Finding, Weight};
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
        self.of_weight(Weight::MustSettle).len()
    }

    fn of_weight(&self, weight: Weight) -> Vec<&Finding> {
        self.open.iter().filter(|one| one.weight == weight).copied().collect()
    }

    /// What was looked for, how much was found, and each finding: the heaviest first, what persons settled last.
    pub(crate) fn in_full(&self, heading: &str, page: &Page) -> String {
        let looked = Message::new("report-looked-for").with("kinds", KINDS.len());
        let counts = Message::new("check-counts")
            .with("must", self.to_settle())
            .with("look", self.of_weight(Weight::HaveALook).len())
            .with("settled", self.settled.len());
        let mut markup = text("p", &format!("{} {}", page.say(&looked), page.say(&counts)));
        for (weight, kind) in HEADINGS {
            let own: String = self.of_weight(weight).into_iter().map(|one| item(one, page)).collect();
            markup += &headed(heading, kind, &own, page);
        }
        let settled = self.settled.iter().filter_map(|one| one.settled_words());
        let settled: String = settled.map(|said| text("li", &page.say(&said))).collect();
        markup + &headed(heading, "heading-settled", &settled, page)
    }

    /// What weighs on a figure, for the place right beside it; the rest is said under the checks.
    pub(crate) fn beside_the_figure(&self, checks_id: &str, page: &Page) -> String {
        let mut markup = String::new();
        for (weight, kind) in &HEADINGS[..2] {
            let own = self.of_weight(*weight);
            let shown = if own.len() <= MOST_BESIDE || *weight == Weight::MustSettle {
                own.into_iter().map(|one| text("li", &page.say(&one.words()))).collect()
            } else {
                let count = Message::new("report-more-to-look-at").with("count", own.len());
                around("li", &link(checks_id, &page.say(&count)))
            };
            markup += &headed("p class=\"label\"", kind, &shown, page);
        }
        if markup.is_empty() {
            return markup;
        }
        let label = escape(&page.word("report-beside"));
        around(&format!("div class=\"cautions\" role=\"note\" aria-label=\"{label}\""), &markup)
    }
}

/// A heading and its list; nothing where the list is empty.
fn headed(heading: &str, code: &str, items: &str, page: &Page) -> String {
    if items.is_empty() {
        return String::new();
    }
    text(heading, page.word(code).trim_end_matches(':')) + &around("ul", items)
}

/// A finding, with the row it stands in where a person typed that by hand.
fn item(finding: &Finding, page: &Page) -> String {
    let said = escape(&page.say(&finding.words()));
    let row = finding.excerpt.as_ref().map(|excerpt| {
        let label = escape(&page.word("report-excerpt"));
        text(
            &format!("pre tabindex=\"0\" role=\"group\" aria-label=\"{label}\""),
            &picture(excerpt).join("\n"),
        )
    });
    around("li", &(said + &row.unwrap_or_default()))
}
