//! What `tautline agree sources --json` prints.

use super::buy::Bought;
use super::sources::{Doubt, Told};
use crate::finding::Finding;
use crate::input::{Input, SourceFile};
use crate::message::Message;
use crate::output::{FindingOutput, ProtocolOutput, VERSION, findings, protocols};
use serde::Serialize;

/// What `tautline agree sources --json` prints.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct AgreeSourcesOutput {
    /// `tautline.agree-sources`
    pub format: &'static str,
    /// The version of the format.
    pub version: u32,
    /// The files that were read.
    pub files: Vec<SourceFile>,
    /// The protocols the lines were read under.
    pub protocols: Vec<ProtocolOutput>,
    /// Readings that were taken apart.
    pub readings: usize,
    /// Sites that they are of.
    pub sites: usize,
    /// Sites that were handed in; more where some had to be left out at random.
    pub sites_in_all: usize,
    /// The parts.
    pub parts: Vec<PartOutput>,
    /// The year whose mean `se` is of.
    pub year: Option<u16>,
    /// Standard error of the mean, as a share of the line.
    pub se: Option<f64>,
    /// What would make it surer, the best first.
    pub buys: Vec<BuyOutput>,
    /// Why nothing was taken apart.
    pub no_sources: Option<&'static str>,
    /// What was found.
    pub findings: Vec<FindingOutput>,
}

/// One part.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PartOutput {
    /// `part-site`, `part-year`, `part-stratum`, `part-plot`, `part-line`, `part-reader`, `part-site-year` or `part-left`.
    pub part: &'static str,
    /// How many groups: sites, years …; readings for what is left.
    pub groups: usize,
    /// Standard deviation from one to another, as a share of the line; absent where it can't be told.
    pub sd: Option<f64>,
    /// Share of all variance.
    pub share: Option<f64>,
    /// There is one group alone.
    pub one_group: bool,
    /// The parts that it can't be told apart from.
    pub mixed_with: Vec<&'static str>,
}

/// Something that would make the mean surer.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct BuyOutput {
    /// `buy-line`, `buy-site` or `buy-day`.
    pub what: &'static str,
    /// Lines of the site, or that each reader reads on the day.
    pub lines: Option<usize>,
    /// The standard error with it.
    pub se: f64,
    /// Minutes of a crew.
    pub minutes: Option<f64>,
}

/// Where the doubt comes from, as data.
pub fn sources_output(
    input: &Input,
    doubt: Result<&Doubt, &'static str>,
    found: &[Finding],
    say: &dyn Fn(&Message) -> String,
) -> AgreeSourcesOutput {
    let known = doubt.ok();
    let all: Vec<Finding> = input.findings.iter().chain(found).cloned().collect();
    AgreeSourcesOutput {
        format: "tautline.agree-sources",
        version: VERSION,
        files: input.files.clone(),
        protocols: protocols(input),
        readings: known.map_or(0, |doubt| doubt.readings),
        sites: known.map_or(0, |doubt| doubt.sites.0),
        sites_in_all: known.map_or(0, |doubt| doubt.sites.1),
        parts: known.into_iter().flat_map(|doubt| &doubt.parts).map(part).collect(),
        year: known.and_then(|doubt| doubt.year),
        se: known.map(|doubt| doubt.se),
        buys: known
            .into_iter()
            .flat_map(|doubt| &doubt.buys)
            .map(|buy| BuyOutput {
                what: buy.what.code(),
                lines: match buy.what {
                    Bought::Line => None,
                    Bought::Site { lines } | Bought::Day { lines } => Some(lines),
                },
                se: buy.se,
                minutes: buy.minutes,
            })
            .collect(),
        no_sources: doubt.err(),
        findings: findings(&all, say),
    }
}

fn part(one: &super::sources::PartShare) -> PartOutput {
    let (sd, share) = match one.told {
        Told::Spread { sd, share } => (Some(sd), Some(share)),
        _ => (None, None),
    };
    PartOutput {
        part: one.part.code(),
        groups: one.groups,
        sd,
        share,
        one_group: one.told == Told::OneGroup,
        mixed_with: match &one.told {
            Told::Mixed(with) => with.iter().map(|part| part.code()).collect(),
            _ => Vec::new(),
        },
    }
}
