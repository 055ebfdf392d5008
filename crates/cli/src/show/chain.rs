//! `--explain`: the chain from a figure down to the readings.

use super::{title, wrapped};
use tautline_survey::assess::Assessment;
use tautline_survey::explain::{self, Step};
use tautline_survey::goal::Subject;
use tautline_survey::input::Input;
use tautline_survey::line::LineResult;
use tautline_words::Words;

fn steps(steps: &[Step], words: &Words) {
    for step in steps {
        wrapped(&words.say(&step.message), 2 * step.depth);
    }
}

/// The chain of a line's canopy cover.
pub(super) fn line(input: &Input, result: &LineResult, words: &Words) {
    title(&super::site_title(&result.site, result.date.map(tautline_survey::date::Date::year), None, words));
    steps(&explain::line(input, result, &Subject::Canopy), words);
}

/// The chain of each verdict, and of each figure that no verdict rests on.
pub(super) fn site(input: &Input, assessment: &Assessment, words: &Words) {
    for judgement in &assessment.judgements {
        super::line("");
        steps(&explain::verdict(input, assessment, judgement), words);
    }
    let judged: Vec<usize> = assessment.judgements.iter().filter_map(|judgement| judgement.figure).collect();
    for (at, figure) in assessment.figures.iter().enumerate() {
        if !judged.contains(&at) {
            super::line("");
            steps(&explain::figure(input, assessment, figure), words);
        }
    }
}
