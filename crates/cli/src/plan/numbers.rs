//! Numbers among the options of a plan, and what is said where one isn't a number.

use crate::call::{not_a_number, percent};
use crate::exit::Exit;
use clap::ArgMatches;
use tautline_words::Words;

pub(super) type Refusal = (String, Exit);

pub(super) struct Numbers<'a> {
    pub(super) asked: &'a ArgMatches,
    pub(super) words: &'a Words,
}

impl Numbers<'_> {
    pub(super) fn text(&self, option: &str) -> Option<&str> {
        self.asked.get_one::<String>(option).map(String::as_str)
    }

    fn read<T>(&self, option: &str, read: impl Fn(&str) -> Option<T>) -> Result<Option<T>, Refusal> {
        let wrong = |found: &str| not_a_number(found, &format!("--{option}"), self.words);
        self.text(option).map(|found| read(found).ok_or_else(|| wrong(found))).transpose()
    }

    pub(super) fn share(&self, option: &str) -> Result<Option<f64>, Refusal> {
        self.read(option, |found| percent(found).map(|percent| percent / 100.0))
    }

    pub(super) fn positive(&self, option: &str) -> Result<Option<f64>, Refusal> {
        self.read(option, |found| percent(found).map(|percent| percent / 100.0).filter(|&share| share > 0.0))
    }

    pub(super) fn number(&self, option: &str) -> Result<Option<f64>, Refusal> {
        self.read(option, |found| found.parse().ok().filter(|number: &f64| number.is_finite()))
    }

    pub(super) fn whole(&self, option: &str) -> Result<Option<usize>, Refusal> {
        self.read(option, |found| found.parse().ok())
    }
}
