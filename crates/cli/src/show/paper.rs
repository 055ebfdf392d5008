//! `--work`: the arithmetic of a line as a person would do it on paper.

use super::{title, wrapped};
use tautline_survey::explain::subject_words;
use tautline_survey::input::Input;
use tautline_survey::line::LineResult;
use tautline_survey::message::Message;
use tautline_survey::paper;
use tautline_words::Words;

/// The cover of a line on paper.
pub(super) fn work(input: &Input, result: &LineResult, words: &Words) {
    let message = Message::new("work-title").with("line", result.line.as_str());
    title(&words.say(&message.with("what", subject_words(&paper::subject(result)))));
    for said in paper::arithmetic(input, result) {
        wrapped(&words.say(&said), 2);
    }
}
