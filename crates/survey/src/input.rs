//! Everything that was handed in: the plan, the plants, the protocols, the visits, and what was found on reading.

use crate::finding::Finding;
use crate::plan::{PlannedLine, Stratum};
use crate::plants::PlantList;
use crate::protocol::Protocol;
use crate::visit::Visit;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

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
    /// Strata with their areas.
    pub strata: Vec<Stratum>,
    /// The plant list; empty where none was handed in.
    pub plants: PlantList,
    /// The protocols that visits were read under, by fingerprint.
    pub protocols: BTreeMap<String, Protocol>,
    /// The visits.
    pub visits: Vec<Visit>,
    /// What was found on reading.
    pub findings: Vec<Finding>,
}

impl Input {
    /// The plan of a line, if there is one.
    pub fn planned(&self, site: &str, line: &str) -> Option<&PlannedLine> {
        self.plan.iter().find(|planned| planned.site == site && planned.line == line)
    }

    /// Adds a protocol and gives back its fingerprint.
    pub fn add_protocol(&mut self, protocol: Protocol) -> String {
        let fingerprint = protocol.fingerprint();
        self.protocols.entry(fingerprint.clone()).or_insert(protocol);
        fingerprint
    }
}
