//! The methods paragraph, written from what was actually done, so that it can stand in somebody's own report.

use crate::page::Page;
use crate::shown;
use tautline_engine::estimate::Estimate;
use tautline_engine::rule::{Bridging, DeadRule};
use tautline_survey::assess::{Assessment, Claim, Figure, Part, PartKind};
use tautline_survey::explain::{confidence_value, figure_words};
use tautline_survey::goal::Subject;
use tautline_survey::line::{LineResult, Recording};
use tautline_survey::measure::{Measure, short};
use tautline_survey::message::{Message, Value};
use tautline_survey::output::estimator;
use tautline_survey::protocol::{Counts, Protocol};

/// The version of this software, of which every room has the same.
const VERSION: &str = env!("CARGO_PKG_VERSION");

/// The paragraphs: how it was read, how a line was worked out, how the site was, and with what.
pub(crate) fn paragraphs(assessment: &Assessment, page: &Page) -> Vec<String> {
    let parts = [
        reading(assessment, page),
        of_a_line(assessment, page),
        of_the_site(assessment, page),
        vec![software(page)],
    ];
    parts.iter().filter(|part| !part.is_empty()).map(|part| part.join(" ")).collect()
}

fn reading(assessment: &Assessment, page: &Page) -> Vec<String> {
    let lines = &assessment.lines;
    let mut said = vec![
        page.say(
            &Message::new("methods-read")
                .with("lines", lines.len())
                .with("site", assessment.site.as_str())
                .with("when", when(lines)),
        ),
    ];
    let mut prints: Vec<&str> = lines.iter().map(|line| line.protocol.as_str()).collect();
    prints.sort_unstable();
    prints.dedup();
    said.extend(prints.into_iter().map(|print| match page.input.protocols.get(print) {
        Some(protocol) => of_protocol(protocol, print, page),
        None => page.word("methods-no-protocol"),
    }));
    let made_common = assessment.findings.iter().map(|finding| &finding.message);
    said.extend(made_common.filter(|one| one.code == "brought-to-common-ground").map(|one| page.say(one)));
    let taken: Vec<String> = assessment.assumed.iter().map(|one| page.words.assumption(one)).collect();
    if !taken.is_empty() {
        said.push(page.say(&Message::new("methods-silence").with("taken", taken.join("; "))));
    }
    said
}

/// The first and the last day of reading.
fn when(lines: &[LineResult]) -> Message {
    let days = || lines.iter().filter_map(|line| line.date);
    match (days().min(), days().max()) {
        (Some(first), Some(last)) if first == last => {
            Message::new("methods-on").with("day", first.to_string())
        }
        (Some(first), Some(last)) => {
            Message::new("methods-between").with("first", first.to_string()).with("last", last.to_string())
        }
        _ => Message::new("methods-undated"),
    }
}

fn of_protocol(protocol: &Protocol, print: &str, page: &Page) -> String {
    let source = match (protocol.source.as_str(), protocol.from_memory) {
        ("", _) => Message::new("methods-source-none"),
        (source, true) => Message::new("methods-source-memory").with("source", source),
        (source, false) => Message::new("methods-source").with("source", source),
    };
    page.say(
        &Message::new("methods-protocol")
            .with("name", protocol.name.as_str())
            .with("fingerprint", print.chars().take(12).collect::<String>())
            .with("source", source),
    )
}

fn of_a_line(assessment: &Assessment, page: &Page) -> Vec<String> {
    let Some(first) = assessment.lines.first() else { return Vec::new() };
    let mut said = vec![page.say(&Message::new("methods-counts").with("what", counts(first, page)))];
    said.extend(gap_rule(first, page));
    let dead_between = first.ends.is_some_and(|[least, most]| least.dead != most.dead);
    said.push(page.word(match first.rule.dead {
        _ if dead_between => "methods-dead-unknown",
        DeadRule::LeftOut => "methods-dead-left-out",
        DeadRule::Apart => "methods-dead-apart",
        DeadRule::ShortJoinsLive => "methods-dead-joins",
        DeadRule::CountsAsLive => "methods-dead-counts",
    }));
    said.push(page.word("methods-line"));
    let count = |is: fn(&LineResult) -> bool| assessment.lines.iter().filter(|line| is(line)).count();
    let told = [
        ("methods-lengths-only", count(|line| line.recording == Recording::LengthsOnly)),
        ("methods-nothing-found", count(|line| line.recording == Recording::NothingFound)),
        ("methods-partly", count(LineResult::is_partly_read)),
    ];
    said.extend(
        told.into_iter()
            .filter(|(_, lines)| *lines > 0)
            .map(|(code, lines)| page.say(&Message::new(code).with("lines", lines))),
    );
    said
}

/// Which plants count: growth forms, then the codes named one by one.
fn counts(line: &LineResult, page: &Page) -> String {
    let silent = Protocol::default();
    let protocol = page.input.protocols.get(&line.protocol).unwrap_or(&silent);
    let counts: Counts = page.question.choice.counts.clone().unwrap_or_else(|| protocol.counts_or_woody());
    let forms = counts.forms.iter().map(|form| page.word(form.word()));
    let mut said = shown::once_each(forms.chain(counts.also.iter().cloned()));
    if !counts.except.is_empty() {
        said = page.say(&Message::new("methods-except").with("what", said).with("except", counts.except));
    }
    said
}

/// The gap limit, and what a gap does in every case that handbooks leave open.
fn gap_rule(line: &LineResult, page: &Page) -> Vec<String> {
    let gap = line.rule.gap;
    let protocol = page.input.protocols.get(&line.protocol);
    // where one rule was asked for or shared, that rule is said
    if let (_, Some(most)) = line.gap_limits() {
        let written = protocol.and_then(|protocol| protocol.gap.unknown()).map(Measure::notation);
        let most = Value::Length(most, written.unwrap_or(line.length.notation()));
        return vec![page.say(&Message::new("methods-gap-unknown").with("most", most))];
    }
    if gap.limit == tautline_engine::length::Length::ZERO {
        return vec![page.word("methods-no-gap")];
    }
    let stated = protocol.and_then(|protocol| protocol.gap.limit.as_ref().or(protocol.gap.unknown()));
    let notation = stated
        .filter(|stated| stated.length() == gap.limit)
        .map_or_else(|| short(line.length.notation(), 2), Measure::notation);
    let cases = [
        ("rule-gap-equal", gap.equal),
        ("rule-gap-two-plants", gap.two_plants),
        ("rule-gap-across-species", gap.across_species),
        ("rule-gap-between-species", gap.between_species),
        ("rule-gap-across-dead", gap.across_dead),
        ("rule-gap-line-end", gap.line_end),
    ];
    let those = |wanted: Bridging| -> Vec<String> {
        cases.iter().filter(|(_, does)| *does == wanted).map(|(rule, _)| page.word(rule)).collect()
    };
    let limit = Message::new("methods-gap").with("limit", Value::Length(gap.limit, notation));
    let mut said = vec![page.say(&limit)];
    for (code, wanted) in
        [("methods-gap-bridged", Bridging::Bridged), ("methods-gap-breaks", Bridging::Breaks)]
    {
        let cases = those(wanted);
        if !cases.is_empty() {
            said.push(page.say(&Message::new(code).with("cases", cases)));
        }
    }
    if page.question.choice.gap_limit.is_some() {
        said.push(page.word("methods-gap-asked"));
    }
    said
}

fn of_the_site(assessment: &Assessment, page: &Page) -> Vec<String> {
    let Some(canopy) = assessment.figure(&Subject::Canopy) else { return Vec::new() };
    let estimate = &canopy.estimate;
    let plots = estimate.method.counts_plots();
    let unit = match (plots, page.question.claim) {
        (true, _) => Message::new("methods-unit-plots"),
        (false, Claim::Plot) => Message::new("methods-unit-lines-of-plot"),
        (false, Claim::Site) => Message::new("methods-unit-lines"),
    };
    let mut said = vec![page.say(&unit.with("lines", estimate.lines).with("units", estimate.units))];
    let strata: Vec<&Part> = canopy.parts.iter().filter(|part| part.kind == PartKind::Stratum).collect();
    if strata.is_empty() {
        said.push(page.say(&by_estimator("methods-estimator", estimate)));
    } else {
        let named = strata.iter().map(|part| {
            let message = Message::new("methods-stratum").with("stratum", part.name.as_str());
            page.say(&message.with("weight", Value::Share(part.weight, 2)))
        });
        let named: Vec<String> = named.collect();
        let message = by_estimator("methods-strata", estimate);
        said.push(page.say(&message.with("strata", named)));
        let within = strata.iter().map(|part| page.say(&by_estimator("methods-by", &part.estimate)));
        said.push(page.say(&Message::new("methods-within").with("estimators", shown::once_each(within))));
    }
    if assessment.lines.iter().any(|line| line.slope_cosine.is_some()) {
        said.push(page.word("methods-on-the-level"));
    }
    said.extend(intervals(assessment, page));
    let sure = assessment.judgements.iter().map(|one| page.words.value(&confidence_value(one.confidence)));
    let sure = shown::once_each(sure);
    if !sure.is_empty() {
        said.push(page.say(&Message::new("methods-bounds").with("confidence", sure)));
    }
    if assessment.judgements.iter().any(|judgement| judgement.more.is_some()) {
        said.push(page.word("methods-more"));
    }
    said
}

fn by_estimator(code: &'static str, estimate: &Estimate) -> Message {
    Message::new(code)
        .with("estimator", Value::Word(estimator(&estimate.method)))
        .with("source", Value::Word(estimate.method.source().code()))
}

/// Which interval method was used for which figures.
fn intervals(assessment: &Assessment, page: &Page) -> Vec<String> {
    let mut by_method: Vec<(&'static str, Vec<&Figure>)> = Vec::new();
    for figure in &assessment.figures {
        match by_method.iter_mut().find(|(method, _)| *method == figure.method.code()) {
            Some((_, figures)) => figures.push(figure),
            None => by_method.push((figure.method.code(), vec![figure])),
        }
    }
    let confidence = shown::confidence(assessment);
    let what = |figure: &Figure| page.say(&figure_words(&figure.subject, figure.attribute));
    by_method
        .into_iter()
        .map(|(method, figures)| {
            page.say(
                &Message::new("methods-interval")
                    .with("confidence", confidence.clone())
                    .with("what", shown::once_each(figures.into_iter().map(what)))
                    .with("method", page.word(&format!("interval-by-{method}"))),
            )
        })
        .collect()
}

fn software(page: &Page) -> String {
    let message = match page.input.fingerprint() {
        Some(print) => Message::new("methods-software").with("fingerprint", print),
        None => Message::new("methods-software-no-files"),
    };
    page.say(&message.with("version", VERSION))
}
