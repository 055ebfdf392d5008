//! What an input says, as texts that can be compared: places and the order of conditions aside, lengths by their nanometres and notation.

use tautline_survey::input::Input;
use tautline_survey::measure::Measure;
use tautline_survey::plan::PlannedLine;
use tautline_survey::visit::{Extent, Intercept, Outcome, Visit};

/// A length for people and machines: whole nanometres and how it was written.
fn plain(measure: Option<&Measure>) -> String {
    measure.map_or_else(String::new, |m| format!("{} {:?}", m.length().nanometres(), m.notation()))
}

/// What the input says, without the places where it stood.
pub(crate) fn says(input: &Input) -> Vec<String> {
    let intercept = |i: &Intercept| {
        let extent = match &i.extent {
            Extent::Edges { start, stop } => format!("{} to {}", plain(Some(start)), plain(Some(stop))),
            Extent::Length(length) => plain(Some(length)),
        };
        let (height, width) = (plain(i.height.as_ref()), plain(i.width.as_ref()));
        format!("{} {:?} {extent} {:?} {:?} {height} {width} {:?}", i.id, i.species, i.state, i.plant, i.note)
    };
    let visit = |v: &Visit| {
        let outcome = match &v.outcome {
            Outcome::PartlyRead(to) => plain(Some(to)),
            other => format!("{other:?}"),
        };
        let intercepts: Vec<String> = v.intercepts.iter().map(intercept).collect();
        let mut conditions = v.conditions.clone();
        conditions.sort();
        format!("{:?} {outcome} {conditions:?} {intercepts:?}", v.identity())
    };
    let plan = |p: &PlannedLine| {
        format!(
            "{:?} {:?} {} {:?} {:?} {:?}",
            p.site,
            p.line,
            plain(p.length.as_ref()),
            p.stratum,
            p.plot,
            p.slope
        )
    };
    let mut planned: Vec<String> = input.plan.iter().map(plan).collect();
    planned.sort();
    input.visits.iter().map(visit).chain(planned).collect()
}
