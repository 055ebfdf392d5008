//! Under which rule the lines are read, and which species count.

use crate::delimited::{ONE_SITE, Options, unnamed_protocol};
use tautline_engine::length::Length;
use tautline_engine::rule::{Bridging, ReadingRule};
use tautline_survey::assess::{Question, asks_canopy_alone};
use tautline_survey::input::Input;
use tautline_survey::plants::PlantList;
use tautline_survey::protocol::{Counts, Protocol};

/// What is the same for every line that the quick reader works out.
pub(super) struct Terms<'a> {
    pub(super) rule: ReadingRule,
    pub(super) plants: &'a PlantList,
    counts: Counts,
    /// The length of lines that state none.
    pub(super) line_length: Option<Length>,
    /// The site of rows that name none.
    site: Option<&'a str>,
}

impl<'a> Terms<'a> {
    /// The terms of a question; `None` where the files or the question ask for more than canopy under one rule.
    pub(super) fn of(input: &'a mut Input, options: &'a Options, question: &Question) -> Option<Self> {
        let fingerprint = unnamed_protocol(options, input);
        // a table of lines, strata, or what was settled may say something about any line
        let more_is_said = !input.visits.is_empty()
            || !input.plan.is_empty()
            || !input.strata.is_empty()
            || !input.settlements.is_empty();
        if more_is_said || !asks_canopy_alone(question) {
            return None;
        }
        let input: &Input = input;
        let silent = Protocol::default();
        let protocol = input.protocols.get(&fingerprint).unwrap_or(&silent);
        let recorded = protocol.rule().0;
        let rule = question.choice.gap_limit.map_or(recorded, |limit| recorded.with_limit(limit));
        // a finer rule is refused line by line; a coarser one that stops at the plant gives two ends
        let re_ruled = rule.gap.limit != recorded.gap.limit;
        if protocol.lies_between()
            || rule.gap.limit < recorded.gap.limit
            || (re_ruled && protocol.stops_at_the_plant())
        {
            return None;
        }
        Some(Self {
            rule,
            plants: &input.plants,
            counts: question.choice.counts.clone().unwrap_or_else(|| protocol.counts_or_woody()),
            line_length: options.line_length.as_ref().map(tautline_survey::measure::Measure::length),
            site: options.site.as_deref(),
        })
    }

    /// The site of a row, by its cell where there is that column; empty where nothing names it.
    pub(super) fn site<'b>(&'b self, cell: Option<&'b str>) -> &'b str {
        match (cell, self.site) {
            (Some(""), None) => "",
            (Some("") | None, Some(given)) => given,
            (None, None) => ONE_SITE,
            (Some(own), _) => own,
        }
    }

    /// Whether a plant's mark changes what is read as canopy.
    pub(super) fn marks_matter(&self) -> bool {
        self.rule.gap.two_plants == Bridging::Breaks
    }

    /// The list's code for a species as written, and whether it counts.
    pub(super) fn species(&self, written: &str) -> (String, bool) {
        let plant = self.plants.find(written);
        let code = plant.map_or_else(|| written.trim().to_uppercase(), |plant| plant.code.clone());
        let counts = self.counts.includes(&code, self.plants.find(&code));
        (code, counts)
    }
}
