//! What readers came to, entered into the log of a notebook.

use super::{Agreement, Calibration, calibrations};
use crate::finding::Finding;
use crate::input::Input;
use crate::message::Message;
use crate::notebook::current::Current;
use crate::notebook::gather::gather;
use crate::notebook::hand::Draft;
use std::collections::BTreeSet;

/// What is to be written into a notebook's log.
#[derive(Clone, Debug, Default)]
pub struct Entered {
    /// The revisions to make; none where everything stood there already.
    pub drafts: Vec<Draft>,
    /// Calibrations that are new, or follow another outcome of the same day.
    pub calibrations: usize,
    /// What was left out, and why.
    pub findings: Vec<Finding>,
}

/// Holds what readers came to against the log that stands: what it knows adds nothing, another outcome of the same day follows the
/// first. The protocols that the lines were read under go along, so that the log can be read by itself.
pub fn enter(
    current: &Current,
    input: &Input,
    agreements: &[Agreement],
    tolerance: f64,
    judge: &str,
) -> Entered {
    let calibrations = calibrations(input, agreements, tolerance, judge);
    let mut findings: Vec<Finding> = agreements
        .iter()
        .filter(|one| !calibrations.iter().any(|done| is_of(done, one)))
        .map(left_out)
        .collect();
    let named: BTreeSet<&String> = calibrations.iter().flat_map(|one| &one.protocols).collect();
    let protocols = input.protocols.iter().filter(|(print, _)| named.contains(print));
    let logged = Input {
        protocols: protocols.map(|(print, own)| (print.clone(), own.clone())).collect(),
        calibrations: calibrations.clone(),
        ..Input::default()
    };
    let gathered = gather(current, &logged, &[]);
    findings.extend(gathered.findings);
    Entered {
        calibrations: gathered.tally.get("calibration").map_or(0, |tally| tally.new + tally.changed),
        drafts: gathered.drafts,
        findings,
    }
}

fn is_of(done: &Calibration, one: &Agreement) -> bool {
    done.site == one.site
        && done.reader == one.second
        && done.against == one.first
        && Some(done.date.year()) == one.year
}

fn left_out(one: &Agreement) -> Finding {
    Finding::have_a_look(
        Message::new("log-left-out")
            .with("second", one.second.as_str())
            .with("first", one.first.as_str())
            .with("site", one.site.as_str()),
    )
}
