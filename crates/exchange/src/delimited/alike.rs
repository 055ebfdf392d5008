//! A file in which a kind of finding stands in thousands of rows: the first ones are kept whole, of the others their rows.

use super::Options;
use std::collections::HashSet;
use tautline_survey::check::Settlement;
use tautline_survey::finding::{Finding, Keeper};

/// Takes in what is found on reading.
pub(super) struct Alike {
    keeper: Keeper,
    every: bool,
    /// Kinds of which persons signed single rows, so that each must be found by itself.
    signed: HashSet<String>,
}

impl Alike {
    pub(super) fn new(options: &Options) -> Self {
        Self { keeper: Keeper::default(), every: options.every_finding, signed: HashSet::new() }
    }

    /// Minds what persons signed. Tables of that are read before readings are.
    pub(super) fn mind(&mut self, settlements: &[Settlement]) {
        if self.signed.is_empty() {
            let by_row = settlements.iter().filter(|one| one.row.is_some());
            self.signed = by_row.map(|one| one.code.clone()).collect();
        }
    }

    /// Takes in one finding.
    pub(super) fn keep(&mut self, finding: Finding, findings: &mut Vec<Finding>) {
        if self.every || self.signed.contains(finding.message.code) {
            findings.push(finding);
        } else {
            self.keeper.keep(findings, finding);
        }
    }

    /// Looks through the findings from one on, those of one row.
    pub(super) fn look_through(&mut self, from: usize, findings: &mut Vec<Finding>) {
        if findings.len() > from {
            for finding in findings.split_off(from) {
                self.keep(finding, findings);
            }
        }
    }

    /// The next rows are those of another sheet.
    pub(super) fn end_of_sheet(&mut self) {
        self.keeper.end_of_sheet();
    }
}
