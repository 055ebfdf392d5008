//! Cover of one line: what a visit's intercepts come to under its protocol, or under a coarser rule.

mod lengths;
mod positions;
mod traits;

use crate::check::line_length_missing;
use crate::date::Date;
use crate::finding::{Finding, Weight};
use crate::input::Input;
use crate::measure::{Measure, short};
use crate::message::{Message, Value};
use crate::plan::{PlannedLine, Slope};
use crate::plants::{GrowthForm, PlantList};
use crate::protocol::{Assumption, Counts, Protocol};
use crate::visit::{Extent, Outcome, Visit};
use serde::{Serialize, Serializer, ser::SerializeStruct};
use tautline_engine::cover::{Intercept, LineCover};
use tautline_engine::gaps::{Gap, GapClass};
use tautline_engine::length::{Length, Notation};
use tautline_engine::rule::{DeadRule, ReadingRule};
use tautline_engine::slope::level;

/// A length that is known, or known to lie between two.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Bounds {
    /// At least this.
    pub low: Length,
    /// At most this.
    pub high: Length,
}

impl Bounds {
    /// A known length.
    pub const fn known(length: Length) -> Self {
        Self { low: length, high: length }
    }

    /// Whether both ends are the same.
    pub fn is_known(self) -> bool {
        self.low == self.high
    }
}

impl Serialize for Bounds {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut fields = serializer.serialize_struct("Bounds", 2)?;
        fields.serialize_field("low_nm", &self.low.nanometres())?;
        fields.serialize_field("high_nm", &self.high.nanometres())?;
        fields.end()
    }
}

/// How a line was written down.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Recording {
    /// Starts and stops.
    Positions,
    /// Lengths without positions: overlap, gaps and places can't be known from them.
    LengthsOnly,
    /// Read from end to end, and nothing was on it.
    NothingFound,
}

/// What the person asks for beyond the protocol.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Choice {
    /// Another, coarser gap limit.
    pub gap_limit: Option<Length>,
    /// The rule that unlike protocols were brought to; its limit may not be finer than the recorded one either.
    pub rule: Option<ReadingRule>,
    /// Other plants that count.
    pub counts: Option<Counts>,
    /// Whether dead canopy counts like live, whatever the protocol says.
    pub dead_counts: Option<bool>,
    /// Breaks of gap classes; the published ones where none are given.
    pub gap_breaks: Option<Vec<Length>>,
    /// Gap classes and plants per area on the level, by the lines' slopes, instead of along the ground.
    pub on_the_level: bool,
}

impl Choice {
    /// Whether a rule on which the protocol is silent is still open once the person has chosen.
    pub fn leaves_open(&self, assumption: &Assumption) -> bool {
        match assumption.rule {
            "counts" => self.counts.is_none(),
            "gap-limit" => self.gap_limit.is_none(),
            "dead" => self.dead_counts.is_none(),
            _ => true,
        }
    }

    /// A rule with what the person chose beyond it.
    fn over(&self, mut rule: ReadingRule) -> ReadingRule {
        rule.dead = match self.dead_counts {
            None => rule.dead,
            Some(true) => DeadRule::CountsAsLive,
            Some(false) => DeadRule::Apart,
        };
        self.gap_limit.map_or(rule, |limit| rule.with_limit(limit))
    }
}

/// Cover of one species on one line.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SpeciesResult {
    /// The code as written; empty where the reader named none.
    pub code: String,
    /// The growth form, where a list knows the code.
    pub form: Option<GrowthForm>,
    /// Whether it counts under the protocol.
    pub counted: bool,
    /// Length under live canopy.
    pub live: Bounds,
    /// Length under dead canopy and no live canopy of the species.
    pub dead: Bounds,
    /// Share of the counted species' summed live cover, from unrounded lengths.
    pub composition: Option<f64>,
    /// Mean height in metres and how many were read.
    pub height: Option<MeanHeight>,
    /// Plants per square metre, where every plant's width was read.
    pub density: Option<f64>,
    /// Ids of the intercepts it came from.
    pub intercepts: Vec<u32>,
}

/// Mean of the heights read on one line.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct MeanHeight {
    /// Mean in metres.
    pub mean_m: f64,
    /// How many heights.
    pub count: usize,
}

/// Cover of one line.
#[derive(Clone, Debug)]
pub struct LineResult {
    /// The site.
    pub site: String,
    /// The line.
    pub line: String,
    /// Its stratum, if planned in one.
    pub stratum: Option<String>,
    /// Its plot, if bunched in one.
    pub plot: Option<String>,
    /// The day it was read.
    pub date: Option<Date>,
    /// Who read.
    pub reader: String,
    /// The pass.
    pub pass: String,
    /// The fingerprint of the protocol it was read under.
    pub protocol: String,
    /// The rule that was applied.
    pub rule: ReadingRule,
    /// The rules that make least and most of it, where nobody knows the one it was read under.
    pub ends: Option<[ReadingRule; 2]>,
    /// What the rule had to take one way because the protocol is silent.
    pub assumed: Vec<Assumption>,
    /// How it was written down.
    pub recording: Recording,
    /// Length of the tape.
    pub length: Measure,
    /// Length that was read; shorter than the tape where the line was read in part.
    pub read: Length,
    /// Live canopy of what counts, overlap once.
    pub canopy: Bounds,
    /// The counted species' live cover added up.
    pub sum: Bounds,
    /// Dead canopy apart from live.
    pub dead: Bounds,
    /// Each species, counted ones first.
    pub species: Vec<SpeciesResult>,
    /// Union within each growth form.
    pub forms: Vec<(GrowthForm, Bounds)>,
    /// Union within each group of the plant list.
    pub groups: Vec<(String, Bounds)>,
    /// Counted canopy as stretches, where positions were read.
    pub cover: Option<LineCover>,
    /// The counted intercepts as the engine takes them, where positions were read.
    pub counted: Vec<Intercept>,
    /// The intercepts of plants that don't count, where positions were read.
    pub others: Vec<Intercept>,
    /// Codes of the species in [`LineResult::cover`], by number.
    pub codes: Vec<String>,
    /// Gaps between the counted plants, where positions were read.
    pub gaps: Vec<Gap>,
    /// The gaps by class.
    pub gap_classes: Vec<GapClass>,
    /// Cosine of the line's slope, where gap classes and plants per area are those on the level.
    pub slope_cosine: Option<f64>,
    /// What should be said about this line.
    pub findings: Vec<Finding>,
    /// The visit it came from, by its place in the input.
    pub visit: usize,
    /// Part of the reading must be settled first, so the line is shown and speaks for no site.
    pub unsettled: bool,
}

impl LineResult {
    /// The gap limit that was applied, and the widest that it may have been where nobody knows it; the first is then the least.
    pub fn gap_limits(&self) -> (Length, Option<Length>) {
        match self.ends.map(|ends| ends.map(|rule| rule.gap.limit)) {
            Some([least, most]) if least < most => (least, Some(most)),
            _ => (self.rule.gap.limit, None),
        }
    }

    /// A length as a share of what was read.
    pub fn share(&self, length: Length) -> f64 {
        length.share_of(self.read)
    }

    /// What was read of the line, on the level where that was asked for and the slope is known.
    pub fn ground(&self) -> Length {
        self.slope_cosine.map_or(self.read, |cosine| level(self.read, cosine))
    }

    /// Whether the line was read only in part.
    pub fn is_partly_read(&self) -> bool {
        self.read < self.length.length()
    }

    /// How many stretches the rule closed, and how long they are together.
    pub fn closed(&self) -> (usize, Length) {
        let Some(cover) = &self.cover else { return (0, Length::ZERO) };
        let closed = cover.species.iter().flat_map(|one| &one.closed).chain(&cover.between);
        closed.fold((0, Length::ZERO), |(count, sum), one| (count + 1, sum + one.stretch.length()))
    }

    /// How this line's lengths were written.
    pub fn notation(&self, input: &Input) -> Notation {
        let measures = input.visits[self.visit].intercepts.iter().map(|intercept| match &intercept.extent {
            Extent::Edges { stop, .. } => stop.notation(),
            Extent::Length(length) => length.notation(),
        });
        measures.reduce(Notation::finer).unwrap_or_else(|| self.length.notation())
    }
}

/// Works out one visit, the `index`th of the input, or says why it can't be.
///
/// # Errors
/// a finding: the line was not read, its length is missing, or the choice asks for a finer rule than was read
pub fn line_result(input: &Input, index: usize, choice: &Choice) -> Result<LineResult, Finding> {
    let visit = &input.visits[index];
    let about = |code| Message::new(code).with("site", visit.site.as_str()).with("line", visit.line.as_str());
    let placed = |finding: Finding| visit.place.clone().map_or(finding.clone(), |place| finding.at(place));
    if visit.outcome == Outcome::NotRead {
        return Err(placed(Finding::note(about("line-not-read"))));
    }
    let planned = input.planned(&visit.site, &visit.line);
    let length = visit.length.clone().or_else(|| planned.and_then(|line| line.length.clone()));
    let Some(length) = length.filter(|length| length.length() > Length::ZERO) else {
        return Err(line_length_missing(visit, index));
    };
    let silent = Protocol::default();
    let protocol = input.protocols.get(&visit.protocol).unwrap_or(&silent);
    let read = match &visit.outcome {
        Outcome::PartlyRead(to) => to.length().min(length.length()),
        _ => length.length(),
    };
    if read == Length::ZERO {
        return Err(placed(Finding::note(about("line-not-read"))));
    }
    let (recorded_rule, mut assumed) = protocol.rule();
    assumed.retain(|one| choice.leaves_open(one));
    let rule = choice.over(choice.rule.unwrap_or(recorded_rule));
    let lengths_only = visit.intercepts.iter().any(|i| matches!(i.extent, Extent::Length(_)));
    let gap_unknown = protocol.gap.unknown().is_some();
    let re_ruled = gap_unknown || rule.gap.limit != recorded_rule.gap.limit;
    // a rule that several protocols were brought to is one rule
    let ends = if choice.rule.is_some() { None } else { protocol.ends(choice.gap_limit) };
    if ends.is_some() && choice.gap_limit.is_none() && gap_unknown {
        assumed.retain(|one| !one.rule.starts_with("gap-"));
    }
    let written = protocol.gap.limit.as_ref().map_or_else(|| length.notation(), Measure::notation);
    let in_limit = |limit| Value::Length(limit, short(written, 2));
    if rule.gap.limit < recorded_rule.gap.limit {
        let message = match protocol.gap.unknown() {
            Some(most) => {
                let as_written = |length| Value::Length(length, most.notation());
                about("finer-than-it-may-have-been")
                    .with("asked", as_written(rule.gap.limit))
                    .with("most", as_written(most.length()))
            }
            None => about("finer-than-recorded")
                .with("asked", in_limit(rule.gap.limit))
                .with("recorded", in_limit(recorded_rule.gap.limit)),
        };
        return Err(placed(Finding::must_settle(message)));
    }
    let counts = choice.counts.clone().unwrap_or_else(|| protocol.counts_or_woody());
    let slope_cosine = planned.and_then(|line| line.slope).filter(|_| choice.on_the_level).map(Slope::cosine);
    let work = Work {
        slope_cosine,
        visit,
        plants: &input.plants,
        counts: &counts,
        protocol,
        rule,
        ends,
        read,
        re_ruled,
    };
    let settled = choice.rule.is_some() || choice.gap_limit.is_some();
    if lengths_only && re_ruled && (settled || !gap_unknown) {
        let (low, high) = lengths::under_a_wider_rule(&work);
        return Err(placed(Finding::must_settle(
            about("lengths-cannot-be-re-ruled")
                .with("asked", in_limit(rule.gap.limit))
                .with("low", Value::Share(low.share_of(read), 1))
                .with("high", Value::Share(high.share_of(read), 1)),
        )));
    }
    let mut result = blank(&work, planned, (index, length), assumed, lengths_only);
    if lengths_only {
        lengths::work_out(&work, &mut result);
    } else {
        positions::work_out(&work, &mut result, choice.gap_breaks.as_deref());
    }
    if choice.on_the_level && slope_cosine.is_none() {
        result.findings.push(placed(Finding::have_a_look(about("slope-missing"))));
    }
    if choice.dead_counts.is_some() && recorded_rule.dead == DeadRule::LeftOut {
        result.findings.push(placed(Finding::have_a_look(about("dead-was-left-out"))));
    }
    if visit.set_aside > 0 {
        let message = about("rows-set-aside").with("rows", u64::from(visit.set_aside));
        result.findings.push(placed(Finding::must_settle(message)));
    }
    result.unsettled = input.held.contains(&index)
        || result.findings.iter().any(|finding| finding.weight == Weight::MustSettle);
    compose(&mut result);
    Ok(result)
}

/// A line of which nothing is worked out yet.
fn blank(
    work: &Work,
    planned: Option<&PlannedLine>,
    (index, length): (usize, Measure),
    assumed: Vec<Assumption>,
    lengths_only: bool,
) -> LineResult {
    let visit = work.visit;
    LineResult {
        site: visit.site.clone(),
        line: visit.line.clone(),
        stratum: planned.and_then(|line| line.stratum.clone()),
        plot: planned.and_then(|line| line.plot.clone()),
        date: visit.date,
        reader: visit.reader.clone(),
        pass: visit.pass.clone(),
        protocol: visit.protocol.clone(),
        rule: work.rule,
        ends: work.ends,
        assumed,
        recording: match (visit.intercepts.is_empty(), lengths_only) {
            (true, _) => Recording::NothingFound,
            (false, true) => Recording::LengthsOnly,
            (false, false) => Recording::Positions,
        },
        length,
        read: work.read,
        canopy: Bounds::default(),
        sum: Bounds::default(),
        dead: Bounds::default(),
        species: Vec::new(),
        forms: Vec::new(),
        groups: Vec::new(),
        cover: None,
        counted: Vec::new(),
        others: Vec::new(),
        codes: Vec::new(),
        gaps: Vec::new(),
        gap_classes: Vec::new(),
        slope_cosine: work.slope_cosine,
        findings: Vec::new(),
        visit: index,
        unsettled: false,
    }
}

/// Growth forms or groups, each with the numbers of its species.
type Members<T> = Vec<(T, Vec<usize>)>;

/// What both ways of recording need.
struct Work<'a> {
    visit: &'a Visit,
    plants: &'a PlantList,
    counts: &'a Counts,
    protocol: &'a Protocol,
    rule: ReadingRule,
    /// The rules that make least and most canopy, where a rule is unknown.
    ends: Option<[ReadingRule; 2]>,
    read: Length,
    re_ruled: bool,
    slope_cosine: Option<f64>,
}

impl Work<'_> {
    /// The species written on the line, in the order they first appear; letter case aside.
    fn codes(&self) -> Vec<String> {
        let mut codes: Vec<String> = Vec::new();
        for intercept in &self.visit.intercepts {
            let code = self.code(&intercept.species);
            if !codes.contains(&code) {
                codes.push(code);
            }
        }
        codes
    }

    /// The list's code for what was written, or what was written.
    fn code(&self, written: &str) -> String {
        self.plants.code(written)
    }

    fn is_counted(&self, code: &str) -> bool {
        self.counts.includes(code, self.plants.find(code))
    }

    fn form(&self, code: &str) -> Option<GrowthForm> {
        self.plants.find(code).map(|plant| plant.form)
    }

    /// The growth forms and groups that the line's species belong to, each with its species' numbers.
    fn unions(&self, codes: &[String]) -> (Members<GrowthForm>, Members<String>) {
        let members = |is: &dyn Fn(&str) -> bool| -> Vec<usize> {
            codes.iter().enumerate().filter(|(_, code)| is(code)).map(|(number, _)| number).collect()
        };
        let forms = GrowthForm::ALL
            .into_iter()
            .map(|form| (form, members(&|code| self.form(code) == Some(form))))
            .filter(|(_, numbers)| !numbers.is_empty());
        let groups = self.plants.groups().into_iter().map(|group| {
            let is_in = |code: &str| {
                self.plants.find(code).is_some_and(|plant| plant.groups.iter().any(|g| g == group))
            };
            (group.to_owned(), members(&is_in))
        });
        (forms.collect(), groups.collect())
    }
}

/// Composition by cover, from unrounded lengths; unknown where lengths are known only between bounds.
fn compose(result: &mut LineResult) {
    let sum = result.sum;
    for species in &mut result.species {
        let known = sum.is_known() && species.live.is_known() && sum.low > Length::ZERO && species.counted;
        species.composition = known.then(|| species.live.low.share_of(sum.low));
    }
    result.species.sort_by(|a, b| b.counted.cmp(&a.counted).then_with(|| a.code.cmp(&b.code)));
}

#[cfg(test)]
mod tests;
