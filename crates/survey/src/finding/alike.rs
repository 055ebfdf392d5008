//! Findings that differ in their row alone: a few are shown, the rest is counted and named by its rows.

use super::{Finding, Place};
use crate::message::Message;
use serde::Serialize;
use std::borrow::Cow;
use std::collections::{BTreeMap, HashMap};

/// How many findings of one kind in one file are shown each by itself, the one that speaks for the rest among them.
pub const MOST_ALIKE: usize = 20;

/// How many stretches of rows are named in a sentence. The data names all of them.
const MOST_STRETCHES: usize = 12;

/// Further places of which a finding speaks beside its own.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct More {
    /// How many findings like it there are beside it.
    pub count: usize,
    /// The rows in which they stand, as first and last row of each stretch, in rising order.
    pub rows: Vec<(u64, u64)>,
}

impl More {
    /// Counts one more, in this row.
    ///
    /// # Example
    /// ```
    /// use tautline_survey::finding::More;
    /// let mut more = More::default();
    /// for row in [7, 8, 9, 12, 9] {
    ///     more.add(row);
    /// }
    /// assert_eq!((more.count, more.rows), (5, vec![(7, 9), (12, 12)]));
    /// ```
    pub fn add(&mut self, row: u64) {
        self.count += 1;
        self.stretch((row, row));
    }

    /// Takes in the rows of others.
    fn join<'a>(&mut self, others: impl IntoIterator<Item = &'a Self>) {
        let mut rows = core::mem::take(&mut self.rows);
        for other in others {
            self.count += other.count;
            rows.extend_from_slice(&other.rows);
        }
        rows.sort_unstable();
        for stretch in rows {
            self.stretch(stretch);
        }
    }

    /// Brings a stretch to its place. Rows mostly come in their order, so that it is looked for from the end.
    fn stretch(&mut self, (mut first, mut last): (u64, u64)) {
        let behind = self.rows.iter().rev().take_while(|&&(begin, _)| begin > last.saturating_add(1)).count();
        let end = self.rows.len() - behind;
        let touching = |&&(_, stop): &&(u64, u64)| stop.saturating_add(1) >= first;
        let begin = end - self.rows[..end].iter().rev().take_while(touching).count();
        if begin < end {
            first = first.min(self.rows[begin].0);
            last = last.max(self.rows[end - 1].1);
        }
        self.rows.splice(begin..end, [(first, last)]);
    }

    /// The words of a finding with how many more there are and where.
    pub(super) fn words(&self, text: Message) -> Message {
        let stretch = |&(first, last): &(u64, u64)| {
            if first == last { first.to_string() } else { format!("{first}–{last}") }
        };
        let rows: Vec<String> = self.rows.iter().take(MOST_STRETCHES).map(stretch).collect();
        Message::new("finding-and-more")
            .with("text", text)
            .with("count", self.count)
            .with("rows", rows)
            .with("further", self.rows.len().saturating_sub(MOST_STRETCHES))
    }
}

impl Finding {
    /// How many findings it stands for: itself, and those like it.
    pub fn times(&self) -> usize {
        1 + self.more.as_ref().map_or(0, |more| more.count)
    }

    /// What is said of it by one that speaks for it.
    fn as_more(&self) -> More {
        let mut more = self.more.as_deref().cloned().unwrap_or_default();
        if let Some(Place { row, .. }) = self.place {
            more.add(row);
        }
        more
    }
}

/// Findings for people to read, in their order: of each kind in a file the first ones, the last of them speaking for the rest.
///
/// # Example
/// ```
/// use tautline_survey::{finding::{Finding, MOST_ALIKE, Place, few}, message::Message};
/// let found: Vec<Finding> = (2..1002)
///     .map(|row| Place { file: "sheet.csv".into(), row, column: None, character: None })
///     .map(|place| Finding::must_settle(Message::new("cell-empty")).at(place))
///     .collect();
/// let told = few(&found);
/// assert_eq!((told.len(), told.iter().map(|one| one.times()).sum::<usize>()), (MOST_ALIKE, 1000));
/// assert_eq!(told[19].more.as_ref().map(|more| more.rows.clone()), Some(vec![(22, 1001)]));
/// ```
pub fn few<'a>(findings: impl IntoIterator<Item = &'a Finding>) -> Vec<Cow<'a, Finding>> {
    let mut told: Vec<Cow<'a, Finding>> = Vec::new();
    let mut of_kind: HashMap<_, Alike> = HashMap::new();
    for finding in findings {
        if let Some(Place { file, .. }) = &finding.place {
            let kind = (finding.message.code, finding.weight, finding.settled.is_some(), file.as_str());
            let alike = of_kind.entry(kind).or_default();
            alike.count += 1;
            match alike.speaks {
                Some(_) => {
                    alike.others.push(finding);
                    continue;
                }
                // one that speaks for others already speaks for all that come behind it
                None if alike.count == MOST_ALIKE || finding.more.is_some() => {
                    alike.speaks = Some(told.len());
                }
                None => {}
            }
        }
        told.push(Cow::Borrowed(finding));
    }
    for Alike { speaks, others, .. } in of_kind.into_values() {
        if let (Some(at), false) = (speaks, others.is_empty()) {
            let others: Vec<More> = others.into_iter().map(Finding::as_more).collect();
            told[at].to_mut().more.get_or_insert_default().join(&others);
        }
    }
    told
}

/// Findings of one kind in one file.
#[derive(Default)]
struct Alike<'a> {
    count: usize,
    /// Which of those that are told speaks for the others.
    speaks: Option<usize>,
    others: Vec<&'a Finding>,
}

/// Takes findings in while there are few of a kind in a file, and of the rest keeps the first about each reading, with
/// the rows of the others: what is held back for them is the same.
#[derive(Debug, Default)]
pub struct Keeper {
    few: HashMap<(&'static str, String), usize>,
    /// Where among the findings stands the one that speaks for others about the same.
    speaks: BTreeMap<Same, usize>,
}

/// What findings have in common that differ in their row alone.
type Same = (&'static str, super::Weight, String, Option<Box<super::About>>);

impl Keeper {
    /// Takes in one more.
    pub fn keep(&mut self, findings: &mut Vec<Finding>, finding: Finding) {
        let Some(Place { file, row, .. }) = &finding.place else { return findings.push(finding) };
        let count = self.few.entry((finding.message.code, file.clone())).or_default();
        *count += 1;
        if *count < MOST_ALIKE {
            return findings.push(finding);
        }
        let alike = (finding.message.code, finding.weight, file.clone(), finding.about.clone());
        if let Some(first) = self.speaks.get(&alike).and_then(|&at| findings.get_mut(at)) {
            first.more.get_or_insert_default().add(*row);
        } else {
            self.speaks.insert(alike, findings.len());
            findings.push(finding);
        }
    }

    /// That findings may stand in another order from here on; those to come are about other rows.
    pub fn end_of_sheet(&mut self) {
        self.speaks.clear();
    }
}

#[cfg(test)]
mod tests {
    use super::More;
    use proptest::prelude::*;
    use std::collections::BTreeSet;

    proptest! {
        #[test]
        fn the_stretches_are_the_rows(rows in prop::collection::vec(0_u64..60, 0..80), cut in 0_usize..80) {
            let (before, after) = rows.split_at(cut.min(rows.len()));
            let of = |rows: &[u64]| {
                let mut more = More::default();
                for &row in rows {
                    more.add(row);
                }
                more
            };
            let mut joined = of(before);
            joined.join([&of(after)]);
            let named: Vec<u64> = joined.rows.iter().flat_map(|&(first, last)| first..=last).collect();
            prop_assert_eq!(&named, &rows.iter().copied().collect::<BTreeSet<u64>>().into_iter().collect::<Vec<_>>());
            prop_assert_eq!(joined.count, rows.len());
            // between two stretches lies a row of neither
            prop_assert!(joined.rows.windows(2).all(|pair| pair[0].1 + 1 < pair[1].0));
        }
    }
}
