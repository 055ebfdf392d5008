//! What was found: beside the figure what weighs on it, and in full under the checks.

use crate::markup::{around, link, list, text};
use crate::page::Page;
use tautline_survey::assess::Assessment;
use tautline_survey::finding::{Finding, Weight};
use tautline_survey::message::Message;

/// More than this many to look at would drown the figure they stand beside; then they are counted.
const MOST_BESIDE: usize = 4;

/// What was found about a site in a year: by the checks, as far as nobody settled it, and on working it out.
pub(crate) fn of(assessment: &Assessment, page: &Page) -> Vec<Finding> {
    let checked = page.input.findings_about(&assessment.site, assessment.year);
    checked.filter(|one| one.settled.is_none()).chain(&assessment.findings).cloned().collect()
}

/// Findings by weight, the heaviest first, or that there are none.
pub(crate) fn in_full(heading: &str, findings: &[Finding], page: &Page) -> String {
    if findings.is_empty() {
        return text("p", &page.word("report-no-findings"));
    }
    let kinds = [
        (Weight::MustSettle, "heading-must-settle"),
        (Weight::HaveALook, "heading-have-a-look"),
        (Weight::Note, "heading-note"),
    ];
    let mut markup = String::new();
    for (weight, kind) in kinds {
        let own = of_weight(weight, findings, page);
        if !own.is_empty() {
            markup += &text(heading, page.word(kind).trim_end_matches(':'));
            markup += &list(&own);
        }
    }
    markup
}

/// What weighs on a figure, for the place right beside it; the rest is said under the checks.
pub(crate) fn beside_the_figure(checks_id: &str, findings: &[Finding], page: &Page) -> String {
    let settle = of_weight(Weight::MustSettle, findings, page);
    let look = of_weight(Weight::HaveALook, findings, page);
    if settle.is_empty() && look.is_empty() {
        return String::new();
    }
    let mut markup = String::new();
    if !settle.is_empty() {
        markup += &text("p class=\"label\"", &page.word("heading-must-settle"));
        markup += &list(&settle);
    }
    if !look.is_empty() {
        markup += &text("p class=\"label\"", &page.word("heading-have-a-look"));
    }
    if look.len() <= MOST_BESIDE {
        markup += &list(&look);
    } else {
        let count = Message::new("report-more-to-look-at").with("count", look.len());
        markup += &around("p", &link(checks_id, &page.say(&count)));
    }
    let label = crate::markup::escape(&page.word("report-beside"));
    around(&format!("div class=\"cautions\" role=\"note\" aria-label=\"{label}\""), &markup)
}

fn of_weight(weight: Weight, findings: &[Finding], page: &Page) -> Vec<String> {
    findings.iter().filter(|one| one.weight == weight).map(|one| page.say(&one.words())).collect()
}
