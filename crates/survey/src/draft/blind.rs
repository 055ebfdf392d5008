//! A second reading without sight of the first: what is taken out of everything that stands for as long as it is open.

use super::Setup;
use crate::date::Date;
use crate::notebook::current::{Conflict, Current, Standing};
use crate::notebook::payload::{Key, Payload};
use crate::photo::{Photo, Shows};
use crate::visit::Visit;
use std::collections::BTreeMap;

/// What is out of sight, to be looked up by its key and to be put back.
///
/// # Example
/// ```
/// use tautline_survey::draft::blind::Withheld;
/// use tautline_survey::notebook::current::Current;
/// // nobody reads blind, so nothing is taken out
/// let mut current = Current::default();
/// let withheld = Withheld::take(&mut current, Vec::new());
/// assert!(withheld.lines().is_empty());
/// ```
#[derive(Clone, Debug, Default)]
pub struct Withheld {
    /// The lines that are being read blind.
    blind: Vec<Setup>,
    standing: BTreeMap<Key, Standing>,
    conflicts: Vec<Conflict>,
}

impl Setup {
    /// Whether a reading of this line and day is one that a second reader must not see: of a day that nobody knows, too.
    fn is_of(&self, site: &str, line: &str, date: Option<Date>) -> bool {
        let years = self.date.zip(date);
        self.site == site && self.line == line && years.is_none_or(|(own, other)| own.year() == other.year())
    }

    fn hides_visit(&self, visit: &Visit) -> bool {
        self.is_of(&visit.site, &visit.line, visit.date)
    }

    /// The sheet of another reading; that of this one stays in sight.
    fn hides_photo(&self, photo: &Photo) -> bool {
        let visit = photo.visit.as_ref();
        let date = visit.and_then(|visit| visit.date).or(photo.date);
        let is_own = visit.is_some_and(|visit| {
            (visit.date, &visit.reader, &visit.recorder) == (self.date, &self.reader, &self.recorder)
        });
        photo.shows == Shows::Sheet && !is_own && self.is_of(&photo.site, &photo.line, date)
    }

    /// Whether a record tells of the first reading.
    fn hides(&self, payload: &Payload) -> bool {
        match payload {
            Payload::Visit(visit) => self.hides_visit(visit),
            Payload::Photo(photo) => self.hides_photo(photo),
            // what somebody said of a finding names the row and the species
            Payload::Settlement(word) => self.is_of(&word.site, &word.line, word.date),
            _ => false,
        }
    }

    /// Whether an unfinished line would show a second reader the first reading.
    pub fn hides_draft(&self, other: &Self) -> bool {
        self.blind && !other.blind && self.is_of(&other.site, &other.line, other.date)
    }
}

impl Withheld {
    /// Takes everything out of what stands that tells of the first reading of a line that one of these reads blind.
    #[must_use]
    pub fn take(current: &mut Current, mut blind: Vec<Setup>) -> Self {
        blind.retain(|setup| setup.blind);
        let hidden = |payload: &Payload| blind.iter().any(|setup| setup.hides(payload));
        let mut withheld = Self::default();
        if !blind.is_empty() {
            let keys: Vec<Key> = current
                .standing
                .iter()
                .filter(|(_, standing)| hidden(&standing.payload))
                .map(|(key, _)| key.clone())
                .collect();
            for key in keys {
                withheld.standing.extend(current.standing.remove_entry(&key));
            }
            let tells = |conflict: &Conflict| {
                conflict.versions.iter().any(|head| Payload::of(head).is_ok_and(|payload| hidden(&payload)))
            };
            let conflicts = core::mem::take(&mut current.conflicts);
            (withheld.conflicts, current.conflicts) = conflicts.into_iter().partition(tells);
        }
        withheld.blind = blind;
        withheld
    }

    /// Puts everything back.
    pub fn give_back(self, current: &mut Current) {
        current.standing.extend(self.standing);
        current.conflicts.extend(self.conflicts);
        current.conflicts.sort_by(|a, b| a.keys.cmp(&b.keys));
    }

    /// A record that is out of sight, for what must know whether it is there.
    pub fn record(&self, key: &Key) -> Option<&Standing> {
        self.standing.get(key)
    }

    /// Who reads blind.
    pub fn blind(&self) -> &[Setup] {
        &self.blind
    }

    /// Site and line of which something is out of sight, in order.
    pub fn lines(&self) -> Vec<(&str, &str)> {
        let visits = self.standing.values().filter_map(|standing| match &standing.payload {
            Payload::Visit(visit) => Some((visit.site.as_str(), visit.line.as_str())),
            _ => None,
        });
        let mut lines: Vec<(&str, &str)> = visits.collect();
        lines.sort_unstable();
        lines.dedup();
        lines
    }

    /// The same for the same things out of sight; empty where there are none.
    pub fn mark(&self) -> String {
        self.standing.values().map(|standing| standing.revision.sha256()).collect::<Vec<_>>().join(" ")
    }
}
