//! What persons looked at and found to be fine.

use super::kinds::{Way, kind};
use crate::date::Date;
use crate::finding::{Finding, Place, Settled};
use crate::input::Input;
use crate::message::Message;
use serde::{Deserialize, Serialize};

/// A person's word that a finding was looked at and is fine. It speaks of every finding of its code that agrees
/// with all that is filled in.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Settlement {
    /// The finding's code.
    pub code: String,
    /// The site, where the finding names one.
    pub site: String,
    /// The line, where the finding names one.
    pub line: String,
    /// The day of the reading.
    pub date: Option<Date>,
    /// The species.
    pub species: String,
    /// The file in which the finding stands.
    pub file: String,
    /// Its row there.
    pub row: Option<u64>,
    /// Who looked, when, and why it is fine.
    pub settled: Settled,
    /// Where the word itself stands.
    pub place: Place,
}

impl Settlement {
    fn speaks_of(&self, finding: &Finding) -> bool {
        let about = finding.about.as_deref();
        let agrees = |ours: &str, theirs: Option<&str>| ours.is_empty() || theirs == Some(ours);
        let place = finding.place.as_ref();
        self.code == finding.message.code
            && agrees(&self.site, about.map(|about| about.site.as_str()))
            && agrees(&self.line, about.map(|about| about.line.as_str()))
            && agrees(&self.species, about.map(|about| about.species.as_str()))
            && (self.date.is_none() || about.is_some_and(|about| about.date == self.date))
            && (self.file.is_empty() || place.is_some_and(|place| same_file(&place.file, &self.file)))
            && (self.row.is_none() || place.is_some_and(|place| Some(place.row) == self.row))
    }
}

/// Files are told apart by their names; folders move.
fn same_file(a: &str, b: &str) -> bool {
    let name = |path: &str| path.rsplit(['/', '\\']).next().map(str::to_owned);
    name(a) == name(b)
}

/// Marks what was settled.
pub(super) fn mark(input: &mut Input) {
    for settlement in input.settlements.iter().filter(|one| can_be_settled(&one.code)) {
        for finding in input.findings.iter_mut().filter(|finding| settlement.speaks_of(finding)) {
            finding.settled = Some(Box::new(settlement.settled.clone()));
        }
    }
}

/// Names words that agree with no finding, or that stand against what only a correction settles.
pub(super) fn name_what_settles_nothing(input: &mut Input) {
    let mut said = Vec::new();
    for settlement in &input.settlements {
        let speaks = input.findings.iter().any(|finding| settlement.speaks_of(finding));
        let code = match (speaks, can_be_settled(&settlement.code)) {
            (true, true) => continue,
            (true, false) => "needs-correction",
            (false, _) => "settles-nothing",
        };
        let message = Message::new(code)
            .with("code", settlement.code.as_str())
            .with("site", settlement.site.as_str())
            .with("line", settlement.line.as_str());
        said.push(Finding::have_a_look(message).at(settlement.place.clone()));
    }
    super::add(input, &said);
}

fn can_be_settled(code: &str) -> bool {
    kind(code).is_some_and(|kind| kind.way == Way::Word)
}
