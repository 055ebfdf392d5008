//! Layouts in a notebook: kept with the lines that they put into the plan, and lines that can't be read replaced.

use super::current::{Current, Standing};
use super::gather::{gather, stand};
use super::hand::Draft;
use super::payload::{Key, Payload, VERSION};
use crate::drawn::{DrawnLayout, DrawnLine, Replaced};
use crate::message::Message;
use crate::revision::{RecordId, RevisionId};
use crate::visit::Outcome;
use std::collections::{BTreeMap, BTreeSet};

/// What replacing a line comes to.
#[derive(Clone, Debug)]
pub struct Replacement {
    /// The revisions to make.
    pub drafts: Vec<Draft>,
    /// The word with the reserve that takes the place.
    pub word: Replaced,
}

/// The layouts that stand.
pub fn layouts(current: &Current) -> impl Iterator<Item = &DrawnLayout> {
    current.standing.values().filter_map(|one| match &one.payload {
        Payload::Layout(layout) => Some(&**layout),
        _ => None,
    })
}

/// Every word on a line that was replaced.
pub fn replaced(current: &Current) -> Vec<Replaced> {
    let words = current.standing.values().filter_map(|one| match &one.payload {
        Payload::Replaced(word) => Some((**word).clone()),
        _ => None,
    });
    words.collect()
}

/// Keeps a layout: its lines, places and strata come into the plan; lines of an earlier drawing under the same names, which it
/// hasn't any more and nobody read, leave it.
///
/// # Errors
/// names under which other ground was read already, so that two places would be taken for one line
pub fn keep(current: &Current, layout: &DrawnLayout) -> Result<Vec<Draft>, Message> {
    let taken = names_taken(current, layout);
    if !taken.is_empty() {
        let message = Message::new("layout-names-taken").with("site", layout.site.as_str());
        return Err(message.with("lines", taken));
    }
    let payload = Payload::Layout(Box::new(layout.clone()));
    let before = layouts(current).find(|one| one.site == layout.site && one.names == layout.names);
    let gone = before.into_iter().flat_map(|before| &before.lines).filter(|line| {
        !line.staked
            && !is_read(current, &layout.site, &line.line)
            && layout.lines.iter().all(|own| own.line != line.line || own.reserve)
    });
    let mut drafts = stand(current, &payload);
    drafts.extend(gather(current, &layout.input(), &[]).drafts);
    for line in gone {
        drafts.extend(out_of_the_plan(current, &layout.site, &line.line));
    }
    Ok(drafts)
}

/// Takes a line out of the plan for a reason, and the next reserve into it.
///
/// # Errors
/// what is in the way: no layout of the site holds the line, it isn't to be read, or it was read already
pub fn replace(current: &Current, mut word: Replaced) -> Result<Replacement, Message> {
    let refuse =
        |code| Err(Message::new(code).with("site", word.site.as_str()).with("line", word.line.as_str()));
    let holds = |layout: &&DrawnLayout| {
        layout.site == word.site && layout.lines.iter().any(|line| line.line == word.line)
    };
    let Some(layout) = layouts(current).find(holds) else { return refuse("replace-not-drawn") };
    let out = out_of_the_plan(current, &word.site, &word.line);
    if out.is_empty() {
        return refuse("replace-not-planned");
    }
    if is_read(current, &word.site, &word.line) {
        return refuse("replace-read");
    }
    let next: Option<&DrawnLine> = layout.next_in_place_of(&word.line, &replaced(current));
    word.by = next.map(|line| line.line.clone());
    let mut drafts = stand(current, &Payload::Replaced(Box::new(word.clone())));
    drafts.extend(out);
    if let Some(line) = next {
        drafts.extend(stand(current, &Payload::Line(layout.planned(line))));
        drafts.extend(stand(current, &Payload::Place(layout.place(line))));
    }
    Ok(Replacement { drafts, word })
}

/// The lines of a layout under whose names other ground of the site was read.
fn names_taken(current: &Current, layout: &DrawnLayout) -> Vec<String> {
    let same_place = |line: &DrawnLine| {
        let place = current.standing.get(&key("place", &layout.site, &line.line));
        matches!(place.map(|one| &one.payload), Some(Payload::Place(place)) if place.start == line.start)
    };
    let taken = layout
        .lines
        .iter()
        .filter(|line| !line.staked && is_read(current, &layout.site, &line.line) && !same_place(line));
    taken.map(|line| line.line.clone()).collect()
}

fn is_read(current: &Current, site: &str, line: &str) -> bool {
    current.standing.values().any(|one| match &one.payload {
        Payload::Visit(visit) => {
            visit.site == site && visit.line == line && visit.outcome != Outcome::NotRead
        }
        _ => false,
    })
}

fn key(kind: &'static str, site: &str, line: &str) -> Key {
    Key { kind, parts: vec![site.to_owned(), line.to_owned()] }
}

/// Plan and place of a line taken back; both stay in the history.
fn out_of_the_plan(current: &Current, site: &str, line: &str) -> Vec<Draft> {
    let own = ["line", "place"].into_iter().filter_map(|kind| current.standing.get(&key(kind, site, line)));
    own.flat_map(taken_back).collect()
}

fn taken_back(standing: &Standing) -> Vec<Draft> {
    let mut heads: BTreeMap<RecordId, BTreeSet<RevisionId>> = BTreeMap::new();
    for head in &standing.heads {
        heads.entry(head.record).or_default().insert(head.revision);
    }
    let draft = |(record, parents)| Draft {
        record: Some(record),
        parents,
        kind: standing.payload.kind_word(),
        version: VERSION,
        payload: None,
    };
    heads.into_iter().map(draft).collect()
}

#[cfg(test)]
mod tests;
