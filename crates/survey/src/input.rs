//! Everything that was handed in: the plan, the plants, the protocols, the visits, and what was found on reading.

use crate::agree::Calibration;
use crate::canonical;
use crate::check::Settlement;
use crate::drawn::Replaced;
use crate::finding::Finding;
use crate::place::{LinePlace, Site};
use crate::plan::{PlannedLine, Stratum};
use crate::plants::PlantList;
use crate::promise::Trigger;
use crate::protocol::Protocol;
use crate::visit::Visit;
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};

/// A file that was read, known by its bytes, so that the same file twice adds nothing.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct SourceFile {
    /// The name as given.
    pub name: String,
    /// SHA-256 of its bytes.
    pub sha256: String,
}

/// What was handed in, from all files together.
#[derive(Clone, Debug, Default)]
pub struct Input {
    /// The files that were read.
    pub files: Vec<SourceFile>,
    /// Planned lines.
    pub plan: Vec<PlannedLine>,
    /// What an office writes over its columns, and the heading that it stands for, as far as a person said so.
    pub headings: Vec<(String, String)>,
    /// What is known of sites as a whole.
    pub sites: Vec<Site>,
    /// Where lines lie.
    pub places: Vec<LinePlace>,
    /// Strata with their areas.
    pub strata: Vec<Stratum>,
    /// The plant list; empty where none was handed in.
    pub plants: PlantList,
    /// The protocols that visits were read under, by fingerprint.
    pub protocols: BTreeMap<String, Protocol>,
    /// The visits.
    pub visits: Vec<Visit>,
    /// What was found on reading, and by the [checks](mod@crate::check) once they have run.
    pub findings: Vec<Finding>,
    /// What was promised beforehand at which number.
    pub triggers: Vec<Trigger>,
    /// What persons looked at and found to be fine.
    pub settlements: Vec<Settlement>,
    /// The log of readers set beside each other.
    pub calibrations: Vec<Calibration>,
    /// Drawn lines that can't be read, and why.
    pub replaced: Vec<Replaced>,
    /// The visits that must be settled before they speak for a site; the [checks](mod@crate::check) fill it.
    pub held: BTreeSet<usize>,
}

impl Input {
    /// The plan of a line, if there is one.
    pub fn planned(&self, site: &str, line: &str) -> Option<&PlannedLine> {
        self.plan.iter().find(|planned| planned.site == site && planned.line == line)
    }

    /// The fingerprint of the data: SHA-256 of the files' own SHA-256s, sorted, one a line; `None` without files.
    ///
    /// Anybody can make it again: `sha256sum FILES | cut -d' ' -f1 | sort | sha256sum`.
    ///
    /// # Example
    /// The SHA-256 of no bytes at all, twice hashed with its line end as above (GNU coreutils 9.1).
    /// ```
    /// use tautline_survey::input::{Input, SourceFile};
    /// let sha256 = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855".to_owned();
    /// let input = Input { files: vec![SourceFile { name: "empty".into(), sha256 }], ..Input::default() };
    /// let print = input.fingerprint().unwrap();
    /// assert_eq!(print, "38acb15d02d5ac0f2a2789602e9df950c380d2799b4bdb59394e4eeabdd3a662");
    /// ```
    pub fn fingerprint(&self) -> Option<String> {
        let mut prints: Vec<&str> = self.files.iter().map(|file| file.sha256.as_str()).collect();
        prints.sort_unstable();
        let lines: String = prints.iter().flat_map(|print| [print, "\n"]).collect();
        (!prints.is_empty()).then(|| canonical::sha256_hex(lines.as_bytes()))
    }

    /// What was found on reading and by the checks about a site in a year, settled or not.
    pub fn findings_about<'a>(
        &'a self,
        site: &'a str,
        year: Option<u16>,
    ) -> impl Iterator<Item = &'a Finding> {
        self.findings.iter().filter(move |finding| {
            finding
                .about
                .as_ref()
                .is_some_and(|about| about.site == site && (about.date.is_none() || finding.year() == year))
        })
    }

    /// Adds a protocol and gives back its fingerprint.
    pub fn add_protocol(&mut self, protocol: Protocol) -> String {
        let fingerprint = protocol.fingerprint();
        self.protocols.entry(fingerprint.clone()).or_insert(protocol);
        fingerprint
    }
}
