//! What every site comes to, kept from one day to the next, so that a screen with thousands of sites need not work
//! everything out again: a site is worked out anew where something in it has changed, or the engine is another one.
//!
//! A summary is no record: it can be thrown away at any time, and is made again from the records.

use crate::assess::{Assessment, Question};
use crate::canonical::sha256_hex;
use crate::date::Date;
use crate::goal::Goal;
use crate::input::Input;
use crate::notebook::current::Current;
use crate::notebook::payload::Payload;
use crate::sites::{BySite, SiteRow, output, rows};
use crate::sync::Place;
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet, btree_map};

/// The version of what is kept; another one is made anew.
const VERSION: u32 = 1;

/// Every site's summary.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Summaries {
    version: u32,
    /// The engine that worked them out.
    engine: String,
    /// The place in the notebook's log up to which they hold.
    upto: Option<Place>,
    sites: BTreeMap<String, Summary>,
}

/// What a site comes to.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Summary {
    /// The same for the same records under the same question.
    print: String,
    /// The day of the last visit.
    pub last: Option<Date>,
    /// Planned lines that the newest year lacks, by name.
    pub not_read: Vec<String>,
    /// Year by year, the oldest first.
    pub years: Vec<YearSummary>,
}

/// What a site came to in one year.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct YearSummary {
    /// The year, where the visits are dated.
    pub year: Option<u16>,
    /// Lines behind the figure.
    pub lines: usize,
    /// Canopy cover, a share: the low and the high end, the same where it is known.
    pub cover: Option<(f64, f64)>,
    /// The interval.
    pub interval: Option<(f64, f64)>,
    /// The least and the greatest share of 90 % intervals that held the truth in simulated surveys with as few lines or
    /// intercepts; none where there are enough.
    pub measured_coverage: Option<(f64, f64)>,
    /// The site's goals, each with the code of its verdict.
    pub verdicts: Vec<(Goal, String)>,
    /// Findings that must be settled.
    pub must_settle: usize,
    /// Findings worth a look.
    pub have_a_look: usize,
}

impl YearSummary {
    /// What an assessment comes to.
    pub fn of(assessment: &Assessment, question: &Question) -> Self {
        year(&SiteRow::of(assessment, question), question)
    }
}

impl Default for Summaries {
    fn default() -> Self {
        Self {
            version: VERSION,
            engine: tautline_engine::VERSION.to_owned(),
            upto: None,
            sites: BTreeMap::new(),
        }
    }
}

impl Summaries {
    /// Reads what was kept; nothing of it where another engine or another version made it, or it isn't whole.
    pub fn read(text: &str) -> Self {
        let kept: Option<Self> = serde_json::from_str(text).ok();
        kept.filter(|kept| kept.version == VERSION && kept.engine == tautline_engine::VERSION)
            .unwrap_or_default()
    }

    /// What is to be kept.
    pub fn text(&self) -> String {
        // a map with names for keys is JSON; numbers without end, which no summary has, become null
        serde_json::to_string(self).unwrap_or_default()
    }

    /// The sites in order.
    pub fn sites(&self) -> &BTreeMap<String, Summary> {
        &self.sites
    }

    /// Whether they hold for a log that ends here.
    pub fn hold_for(&self, end: Option<&Place>) -> bool {
        end.is_some() && self.upto.as_ref() == end
    }

    /// Works out anew what has changed, and says how many sites that were. `input` is what stands in `current`, looked
    /// through by the [checks](mod@crate::check); `end` is where the notebook's log ends.
    pub fn renew(
        &mut self,
        current: &Current,
        input: &Input,
        question: &Question,
        end: Option<Place>,
    ) -> usize {
        self.renewal(current, input, question, end).count()
    }

    /// The same, one changed site at each step, for whoever has others wait between two.
    pub fn renewal<'a>(
        &'a mut self,
        current: &Current,
        input: &'a Input,
        question: &'a Question,
        end: Option<Place>,
    ) -> Renewal<'a> {
        let prints = prints(current, input, question);
        self.sites.retain(|site, _| prints.contains_key(site));
        Renewal { summaries: self, waiting: prints.into_iter(), sites: BySite::of(input), question, end }
    }
}

/// Summaries on their way to hold again; they do once there is no further step.
pub struct Renewal<'a> {
    summaries: &'a mut Summaries,
    waiting: btree_map::IntoIter<String, String>,
    sites: BySite<'a>,
    question: &'a Question,
    end: Option<Place>,
}

impl Iterator for Renewal<'_> {
    type Item = ();

    fn next(&mut self) -> Option<()> {
        let known = &mut self.summaries.sites;
        let changed =
            self.waiting.find(|(site, print)| known.get(site).is_none_or(|known| known.print != *print));
        let Some((site, print)) = changed else {
            self.summaries.upto = self.end.take();
            return None;
        };
        let own = self.sites.site(&site);
        known.insert(site, summary(&own, self.question, print));
        Some(())
    }
}

/// A print of all that speaks of each site: its own records, those of no one site, and what is asked.
fn prints(current: &Current, input: &Input, question: &Question) -> BTreeMap<String, String> {
    let mut own: BTreeMap<String, Vec<&str>> = BTreeMap::new();
    let mut shared: Vec<&str> = Vec::new();
    for standing in current.standing.values() {
        let site = match &standing.payload {
            Payload::Line(line) => Some(line.site.as_str()),
            Payload::Stratum(stratum) => Some(stratum.site.as_str()),
            Payload::Visit(visit) => Some(visit.site.as_str()),
            Payload::Settlement(word) => Some(word.site.as_str()).filter(|site| !site.is_empty()),
            Payload::Goal(goal) => goal.site.as_deref(),
            Payload::Replaced(word) => Some(word.site.as_str()),
            Payload::Plants(_) | Payload::Protocol(_) => None,
            Payload::Trigger(trigger) => Some(trigger.site.as_str()).filter(|site| !site.is_empty()),
            Payload::Objective(objective) => Some(objective.site.as_str()).filter(|site| !site.is_empty()),
            // the files of an import move no figure, nor do photos, places, layouts and the log of readers, nor what was decided
            Payload::Import(_)
            | Payload::Calibration(_)
            | Payload::Headings(_)
            | Payload::Photo(_)
            | Payload::Layout(_)
            | Payload::Site(_)
            | Payload::Place(_)
            | Payload::Decision(_) => continue,
        };
        match site {
            Some(site) => own.entry(site.to_owned()).or_default().push(standing.revision.sha256()),
            None => shared.push(standing.revision.sha256()),
        }
    }
    let mut held: BTreeMap<&str, BTreeSet<String>> = BTreeMap::new();
    for visit in input.held.iter().map(|&visit| &input.visits[visit]) {
        held.entry(&visit.site).or_default().insert(format!("{:?}", visit.identity()));
    }
    let shared = format!("{question:?} {}", shared.join(" "));
    let print = |(site, mut records): (String, Vec<&str>)| {
        records.sort_unstable();
        let held: Vec<&str> = held.get(site.as_str()).into_iter().flatten().map(String::as_str).collect();
        let text = format!("{shared}\n{}\n{}", records.join(" "), held.join(" "));
        (site, sha256_hex(text.as_bytes()))
    };
    own.into_iter().map(print).collect()
}

fn summary(input: &Input, question: &Question, print: String) -> Summary {
    let last = input.visits.iter().filter_map(|visit| visit.date).max();
    let rows = rows(input.clone(), question);
    let newest = rows.iter().map(|row| row.year).max().flatten();
    let read: BTreeSet<&str> = input
        .visits
        .iter()
        .filter(|visit| visit.date.map(Date::year) == newest)
        .map(|visit| visit.line.as_str())
        .collect();
    let not_read = input.plan.iter().filter(|line| !read.contains(line.line.as_str()));
    Summary {
        print,
        last,
        not_read: not_read.map(|line| line.line.clone()).collect(),
        years: rows.iter().map(|row| year(row, question)).collect(),
    }
}

fn year(row: &SiteRow, question: &Question) -> YearSummary {
    let said = output(row, question);
    YearSummary {
        year: row.year,
        lines: row.lines,
        cover: said.low.zip(said.high),
        interval: said.interval,
        measured_coverage: said.measured_coverage,
        verdicts: said.verdicts.into_iter().map(|one| (one.goal, one.verdict.to_owned())).collect(),
        must_settle: row.must_settle,
        have_a_look: row.have_a_look,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::tests::site;
    use crate::check::check;
    use crate::notebook::gather::gather;
    use crate::notebook::hand::Hand;
    use crate::record::Records;
    use crate::revision::{DeviceId, Stamp};

    /// What stands once this was handed in too.
    fn hand_in(records: &mut Records, input: &Input) -> (Current, Input) {
        let stands = |records: &Records| Current::of(records.heads().into_iter().cloned().collect());
        let drafts = gather(&stands(records), input, &[]).drafts;
        let mut drawn = 1000 * records.revisions().count() as u64;
        let mut random = |bytes: &mut [u8]| {
            drawn += 1;
            bytes.iter_mut().zip(drawn.to_be_bytes().iter().cycle()).for_each(|(byte, own)| *byte = *own);
        };
        let mut hand = Hand {
            author: "invented".to_owned(),
            reason: String::new(),
            device: DeviceId::made(0, [1; 10]),
            device_name: "invented".to_owned(),
            time: Stamp::new("2026-06-09T20:03:07Z", 0).unwrap(),
            milliseconds: 0,
            counter: 0,
            random: &mut random,
        };
        for revision in hand.write("import", drafts).unwrap() {
            records.add(revision);
        }
        let current = stands(records);
        let (mut input, _) = current.input();
        check(&mut input);
        (current, input)
    }

    fn named(name: &str, lines: &[(&str, &str, u32)]) -> Input {
        let mut input = site(lines);
        input.visits.iter_mut().for_each(|visit| visit.site = name.to_owned());
        input.plan.iter_mut().for_each(|line| line.site = name.to_owned());
        input
    }

    /// By hand: 1 m and 3 m on lines of 10 m are 20 %, and 2 m and 4 m are 30 %.
    #[test]
    fn only_what_changed_is_worked_out_anew() {
        let question = Question::default();
        let mut records = Records::default();
        hand_in(&mut records, &named("one", &[("10", "", 100), ("10", "", 300)]));
        let (current, input) = hand_in(&mut records, &named("other", &[("10", "", 200), ("10", "", 400)]));
        let mut summaries = Summaries::default();
        let end = Some(Place { at: 4, mark: "invented".to_owned() });
        assert_eq!(summaries.renew(&current, &input, &question, end.clone()), 2);
        assert!(summaries.hold_for(end.as_ref()) && !summaries.hold_for(None));
        let cover = |summaries: &Summaries, site: &str| {
            summaries.sites()[site].years[0].cover.map(|(low, _)| (low * 1e6).round() / 1e6)
        };
        assert_eq!((cover(&summaries, "one"), cover(&summaries, "other")), (Some(0.2), Some(0.3)));
        // kept and read again they are the same, and nothing is to do
        let mut again = Summaries::read(&summaries.text());
        assert_eq!(again, summaries);
        assert_eq!(again.renew(&current, &input, &question, end.clone()), 0);
        // one line more on one site, by hand (1 + 3 + 5) / 30 = 30 %
        let more = named("one", &[("10", "", 100), ("10", "", 300), ("10", "", 500)]);
        let (current, input) = hand_in(&mut records, &more);
        assert_eq!(again.renew(&current, &input, &question, end.clone()), 1);
        assert_eq!((cover(&again, "one"), cover(&again, "other")), (Some(0.3), Some(0.3)));
        // another question is another figure for every site
        let surer = Question { confidence_per_mille: 950, ..Question::default() };
        assert_eq!(again.renew(&current, &input, &surer, end), 2);
    }

    #[test]
    fn what_another_engine_kept_is_thrown_away() {
        let text = Summaries::default().text().replace(tautline_engine::VERSION, "0.0.0");
        assert_eq!(Summaries::read(&text), Summaries::default());
        assert_eq!(Summaries::read("{"), Summaries::default());
    }
}
