//! What must be said beside the figures: findings, rules taken, where a figure came from, cautions.

use crate::markup::{around, list, text};
use tautline_survey::assess::{Assessment, Judgement};
use tautline_survey::explain::{self, Step};
use tautline_survey::finding::{Finding, Weight};
use tautline_survey::goal::Subject;
use tautline_survey::input::Input;
use tautline_survey::message::Message;
use tautline_words::Words;

/// Findings by weight, the heaviest first; nothing where there are none.
pub(crate) fn findings(heading: &str, findings: &[Finding], words: &Words) -> String {
    if findings.is_empty() {
        return String::new();
    }
    let kinds = [
        (Weight::MustSettle, "heading-must-settle"),
        (Weight::HaveALook, "heading-have-a-look"),
        (Weight::Note, "heading-note"),
    ];
    let mut markup = text(heading, &words.word("report-findings"));
    for (weight, kind) in kinds {
        let own: Vec<String> =
            findings.iter().filter(|one| one.weight == weight).map(|one| words.say(&one.words())).collect();
        if !own.is_empty() {
            markup += &text("p", &words.word(kind));
            markup += &list(&own);
        }
    }
    markup
}

/// The protocols that the lines were read under, and what was taken where they are silent.
pub(crate) fn rules(input: &Input, assessment: &Assessment, words: &Words) -> String {
    let mut prints: Vec<&str> = assessment.lines.iter().map(|line| line.protocol.as_str()).collect();
    prints.sort_unstable();
    prints.dedup();
    let mut markup = text("h3", &words.word("report-rules"));
    for print in prints {
        markup += &text("p", &words.say(&explain::protocol_words(input, print)));
    }
    let taken: Vec<String> = assessment.assumed.iter().map(|one| words.assumption(one)).collect();
    if !taken.is_empty() {
        markup += &text("p", &words.word("title-assumed"));
        markup += &list(&taken);
    }
    markup
}

/// How a verdict came about, or the canopy cover where there is none, folded away.
pub(crate) fn chain(
    input: &Input,
    assessment: &Assessment,
    judgement: Option<&Judgement>,
    words: &Words,
) -> String {
    let steps = match judgement {
        Some(judgement) => explain::verdict(input, assessment, judgement),
        None => assessment
            .figure(&Subject::Canopy)
            .map(|figure| explain::figure(input, assessment, figure))
            .unwrap_or_default(),
    };
    if steps.is_empty() {
        return String::new();
    }
    let item =
        |step: &Step| text(&format!("li class=\"depth-{}\"", step.depth.min(3)), &words.say(&step.message));
    let summary = text("summary", &words.word("report-chain"));
    let items: String = steps.iter().map(item).collect();
    around("details", &(summary + &around("ol class=\"chain\"", &items)))
}

/// The end of the page: findings on reading, cautions, files.
pub(crate) fn foot(input: &Input, words: &Words) -> String {
    let mut markup = String::new();
    if !input.findings.is_empty() {
        markup += &text("h2", &words.word("report-reading-findings"));
        markup += &findings("h3", &input.findings, words);
    }
    markup += &text("h2", &words.word("report-cautions"));
    markup += &list(
        &["report-caution-advice", "report-caution-rule", "report-caution-local"]
            .map(|code| words.word(code)),
    );
    if !input.files.is_empty() {
        markup += &text("h2", &words.word("report-files"));
        let files: Vec<String> = input
            .files
            .iter()
            .map(|file| {
                let sha: String = file.sha256.chars().take(12).collect();
                words.say(&Message::new("report-file").with("name", file.name.as_str()).with("sha", sha))
            })
            .collect();
        markup += &around("div class=\"files\"", &list(&files));
    }
    markup
}
