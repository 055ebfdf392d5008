//! Who wrote what, when and why.

use super::{Notebook, text};
use crate::call::Done;
use crate::exit::Exit;
use crate::show;
use clap::ArgMatches;
use std::collections::BTreeMap;
use tautline_survey::notebook::payload::Payload;
use tautline_survey::place::Openness;
use tautline_survey::record::history as ordered;
use tautline_survey::revision::{ActionId, RecordId, Revision};
use tautline_words::Words;

pub(super) fn history(asked: &ArgMatches, words: &Words) -> Done {
    let notebook = Notebook::of(asked, words)?;
    let (site, line) = (text(asked, "site"), text(asked, "line"));
    let all = notebook.all()?;
    let blanked = asked.get_flag("blanked");
    if !blanked && site.is_none() && line.is_none() {
        show::actions(&actions(&all), words);
        return Ok(if all.is_empty() { Exit::Nothing } else { Exit::Well });
    }
    let mut records: BTreeMap<RecordId, Vec<&Revision>> = BTreeMap::new();
    for revision in &all {
        records.entry(revision.record()).or_default().push(revision);
    }
    // of a record that is blank from end to end nobody can tell any more which site it was of
    let wanted =
        |revision: &Revision| if blanked { revision.is_erased() } else { is_about(revision, site, line) };
    records.retain(|_, own| own.iter().any(|revision| wanted(revision)));
    let mut told: Vec<Vec<&Revision>> = records.values().map(|own| ordered(own)).collect();
    // plans before visits, visits by date
    told.sort_by_key(|own| own.iter().find_map(|revision| Some(Payload::of(revision).ok()?.key())));
    let (standing, _) = notebook.current()?.into_input();
    let full = asked.get_flag("full");
    let openness = |site: &str| if full { Openness::Exact } else { standing.openness(site) };
    for own in &told {
        show::record_history(own, &openness, words);
    }
    if full {
        show::aside(&words.word("export-full-said"));
    }
    if told.is_empty() {
        show::line(&words.word("history-nothing"));
    }
    Ok(if told.is_empty() { Exit::Nothing } else { Exit::Well })
}

/// The revisions of each action, in the order of their counters.
fn actions(all: &[Revision]) -> Vec<Vec<&Revision>> {
    let mut by_action: BTreeMap<ActionId, Vec<&Revision>> = BTreeMap::new();
    for revision in all {
        by_action.entry(revision.head().action.id).or_default().push(revision);
    }
    let mut actions: Vec<Vec<&Revision>> = by_action.into_values().collect();
    actions.sort_by_key(|own| own.iter().map(|one| (one.head().counter, one.head().device, one.id())).min());
    actions
}

fn is_about(revision: &Revision, site: Option<&str>, line: Option<&str>) -> bool {
    let Ok(payload) = Payload::of(revision) else { return false };
    let own_line = match &payload {
        Payload::Visit(visit) => Some(&visit.line),
        Payload::Line(planned) => Some(&planned.line),
        Payload::Place(place) => Some(&place.line),
        Payload::Replaced(word) => Some(&word.line),
        Payload::Photo(photo) if !photo.line.is_empty() => Some(&photo.line),
        _ => None,
    };
    let Some(own_site) = payload.site() else { return false };
    site.is_none_or(|site| site == own_site)
        && line.is_none_or(|line| own_line.is_some_and(|own| own == line))
}
