//! Which visits speak for a site in a year: one reading for each line, and what is missing.

use super::natural_order;
use crate::drawn::Why;
use crate::finding::Finding;
use crate::input::Input;
use crate::message::Message;
use std::collections::BTreeMap;

/// The visits of one site in one calendar year.
pub(crate) struct Round {
    pub(crate) site: String,
    pub(crate) year: Option<u16>,
    /// The reading that is used for each line.
    pub(crate) visits: Vec<usize>,
    /// Readings of lines that were read again; kept for comparison.
    again: Vec<(usize, usize)>,
}

/// Visits by line.
type ByLine<'a> = BTreeMap<&'a str, Vec<usize>>;

/// Sites and years in order; a line that was read more than once goes in with its first pass.
pub(crate) fn rounds(input: &Input, only: Option<u16>) -> Vec<Round> {
    let mut by_round: BTreeMap<(&str, Option<u16>), ByLine> = BTreeMap::new();
    for (index, visit) in input.visits.iter().enumerate() {
        let year = visit.date.map(crate::date::Date::year);
        if only.is_none() || year == only {
            by_round.entry((&visit.site, year)).or_default().entry(&visit.line).or_default().push(index);
        }
    }
    by_round
        .into_iter()
        .map(|((site, year), lines)| {
            let mut round = Round { site: site.to_owned(), year, visits: Vec::new(), again: Vec::new() };
            for mut readings in lines.into_values() {
                // first pass first, then first date; the order of the files breaks what is left
                readings.sort_by(|&a, &b| {
                    let (a, b) = (&input.visits[a], &input.visits[b]);
                    natural_order(&a.pass, &b.pass).then_with(|| a.date.cmp(&b.date))
                });
                round.visits.push(readings[0]);
                round.again.extend(readings[1..].iter().map(|&again| (readings[0], again)));
            }
            round
        })
        .collect()
}

/// The same, site by site.
pub(crate) fn by_site(rounds: Vec<Round>) -> Vec<Vec<Round>> {
    let mut sites: Vec<Vec<Round>> = Vec::new();
    for round in rounds {
        match sites.last_mut().filter(|own| own[0].site == round.site) {
            Some(own) => own.push(round),
            None => sites.push(vec![round]),
        }
    }
    sites
}

pub(super) fn plot_of(input: &Input, visit: usize) -> Option<String> {
    let visit = &input.visits[visit];
    input.planned(&visit.site, &visit.line).and_then(|line| line.plot.clone())
}

impl Round {
    /// Every reading of the round, those of lines read again too.
    pub(crate) fn readings(&self) -> Vec<usize> {
        self.visits.iter().copied().chain(self.again.iter().map(|&(_, again)| again)).collect()
    }

    /// The plots that were read, in order.
    pub(super) fn plots(&self, input: &Input) -> Vec<Option<String>> {
        let mut plots: Vec<Option<String>> = self.visits.iter().map(|&visit| plot_of(input, visit)).collect();
        plots.sort_unstable();
        plots.dedup();
        plots
    }

    /// Lines that were read again, and an area that nobody drew by chance.
    pub(crate) fn findings(&self, input: &Input) -> Vec<Finding> {
        let year = self.year.map_or(String::new(), |year| year.to_string());
        let again = self.again.iter().map(|&(used, again)| {
            let visit = &input.visits[used];
            Finding::note(
                Message::new("line-read-again")
                    .with("site", self.site.as_str())
                    .with("line", visit.line.as_str())
                    .with("year", year.as_str())
                    .with("used", who(input, used))
                    .with("other", who(input, again)),
            )
        });
        again.chain(self.judged(input)).chain(self.replaced(input)).collect()
    }

    /// Drawn lines that couldn't be entered leave ground out, and such as were in the shrubs' own way make it look barer.
    fn replaced<'a>(&'a self, input: &'a Input) -> impl Iterator<Item = Finding> + 'a {
        [Why::NoPermission, Why::Shrubs].into_iter().filter_map(|kind| {
            let own = input
                .replaced
                .iter()
                .filter(|word| word.site == self.site && word.why.follows() == kind.follows());
            let lines: Vec<String> = own.map(|word| word.line.clone()).collect();
            let message = Message::new(kind.follows()).with("site", self.site.as_str());
            let message = message.with("lines", lines.clone());
            (!lines.is_empty()).then(|| match kind {
                Why::Shrubs => Finding::have_a_look(message),
                _ => Finding::note(message),
            })
        })
    }

    /// That the area of some of its lines was chosen by judgement: no arithmetic makes them speak for other ground.
    fn judged(&self, input: &Input) -> Option<Finding> {
        let why = self.visits.iter().find_map(|&visit| {
            let visit = &input.visits[visit];
            input.planned(&visit.site, &visit.line)?.judgement.clone()
        })?;
        let message = Message::new("area-chosen-by-judgement").with("site", self.site.as_str());
        Some(Finding::have_a_look(message.with("why", why)))
    }
}

/// Reader and pass, as far as they were written.
fn who(input: &Input, visit: usize) -> String {
    let visit = &input.visits[visit];
    let parts = [visit.reader.as_str(), visit.pass.as_str()];
    let known: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
    if known.is_empty() { "?".to_owned() } else { known.join(", ") }
}
