//! Reports of a site: for now one self-contained page.

use tautline_survey::assess::Assessment;
use tautline_survey::input::Input;
use tautline_words::Words;

/// The page.
pub fn html(_input: &Input, _assessments: &[Assessment], _words: &Words) -> String {
    String::new()
}
