//! A line on which only lengths were written down: sums are known, overlap and gaps are not.

use super::{Bounds, LineResult, SpeciesResult, Work, traits};
use crate::finding::Finding;
use crate::message::Message;
use crate::protocol::{Dead, Overlap};
use crate::visit::{Extent, Intercept, State};
use tautline_engine::length::Length;
use tautline_engine::rule::{DeadRule, ReadingRule};

pub(super) fn work_out(work: &Work, result: &mut LineResult) {
    let codes = work.codes();
    if let Some(ends) = work.ends {
        return between(work, result, &codes, ends);
    }
    let dead_rule = work.protocol.dead.unwrap_or(Dead::Apart);
    let sums: Vec<(Length, Length)> = codes
        .iter()
        .map(|code| {
            let (live, dead) = (summed(work, code, State::Live), summed(work, code, State::Dead));
            match dead_rule {
                Dead::CountsAsLive => (live + dead, Length::ZERO),
                Dead::LeftOut => (live, Length::ZERO),
                Dead::Apart | Dead::ShortJoinsLive => (live, dead),
            }
        })
        .collect();
    result.species =
        species(work, &codes, sums.iter().map(|&(live, dead)| (Bounds::known(live), Bounds::known(dead))));

    let once = work.protocol.overlap == Some(Overlap::Once);
    let live_of =
        |members: &[usize]| -> Vec<Length> { members.iter().map(|&number| sums[number].0).collect() };
    let counted: Vec<usize> = (0..codes.len()).filter(|&number| work.is_counted(&codes[number])).collect();
    let live = live_of(&counted);
    result.canopy = union_bounds(&live, work.read, once);
    result.sum = Bounds::known(live.iter().copied().sum());
    let dead: Vec<Length> = counted.iter().map(|&number| sums[number].1).collect();
    let dead_sum: Length = dead.iter().copied().sum();
    let room = work.read - result.canopy.low.min(work.read);
    result.dead =
        if once { Bounds::known(dead_sum) } else { Bounds { low: Length::ZERO, high: dead_sum.min(room) } };
    if dead_sum == Length::ZERO {
        result.dead = Bounds::default();
    }
    let (forms, groups) = work.unions(&codes);
    let within = |members: &[usize]| union_bounds(&live_of(members), work.read, once);
    result.forms = forms.iter().map(|(form, members)| (*form, within(members))).collect();
    result.groups = groups.iter().map(|(group, members)| (group.clone(), within(members))).collect();
    result.codes = codes;

    let about =
        |code| Message::new(code).with("site", result.site.as_str()).with("line", result.line.as_str());
    if !result.canopy.is_known() {
        result.findings.push(Finding::note(about("lengths-only-overlap-unknown")));
    }
}

/// A line under a rule that nobody knows any more: no less than what was written down, and no more than if every gap had been
/// as wide as the rule may have closed, and all dead canopy live.
fn between(work: &Work, result: &mut LineResult, codes: &[String], [_, most]: [ReadingRule; 2]) {
    let dead_counts = most.dead == DeadRule::CountsAsLive;
    let dead_rule = work.protocol.dead.unwrap_or(Dead::Apart);
    let bounds: Vec<(Bounds, Bounds)> = codes
        .iter()
        .map(|code| {
            let [live, dead] = [State::Live, State::Dead].map(|state| summed(work, code, state));
            let stands = |i: &&Intercept| work.code(&i.species) == *code;
            let pieces = work.visit.intercepts.iter().filter(stands).count();
            let gaps: Length = if work.protocol.gap.unknown().is_some() && pieces > 0 {
                core::iter::repeat_n(most.gap.limit, pieces + 1).sum()
            } else {
                Length::ZERO
            };
            let (least, more) = match dead_rule {
                _ if dead_counts => (live, dead),
                Dead::CountsAsLive => (live + dead, Length::ZERO),
                _ => (live, Length::ZERO),
            };
            let high = (least + more + gaps).min(work.read.max(least));
            let dead = if dead_rule == Dead::LeftOut || dead_rule == Dead::CountsAsLive {
                Length::ZERO
            } else {
                dead
            };
            (Bounds { low: least, high }, Bounds { low: Length::ZERO, high: dead })
        })
        .collect();
    let once = work.protocol.overlap == Some(Overlap::Once);
    let union = |members: &[usize]| {
        let ends =
            |end: fn(Bounds) -> Length| members.iter().map(|&one| end(bounds[one].0)).collect::<Vec<_>>();
        Bounds {
            low: union_bounds(&ends(|bounds| bounds.low), work.read, once).low,
            high: union_bounds(&ends(|bounds| bounds.high), work.read, once).high,
        }
    };
    let counted: Vec<usize> = (0..codes.len()).filter(|&number| work.is_counted(&codes[number])).collect();
    result.canopy = union(&counted);
    let sum = |end: fn(&(Bounds, Bounds)) -> Length| counted.iter().map(|&one| end(&bounds[one])).sum();
    result.sum = Bounds { low: sum(|one| one.0.low), high: sum(|one| one.0.high) };
    result.dead = Bounds { low: Length::ZERO, high: sum(|one| one.1.high).min(work.read) };
    result.species = species(work, codes, bounds.iter().copied());
    let (forms, groups) = work.unions(codes);
    result.forms = forms.iter().map(|(form, members)| (*form, union(members))).collect();
    result.groups = groups.iter().map(|(group, members)| (group.clone(), union(members))).collect();
    result.codes = codes.to_vec();
}

/// What each species comes to, with its live and its dead canopy, in the order of the codes.
fn species(
    work: &Work,
    codes: &[String],
    canopy: impl Iterator<Item = (Bounds, Bounds)>,
) -> Vec<SpeciesResult> {
    let intercepts = |code: &str| {
        let own = work.visit.intercepts.iter().filter(|i| work.code(&i.species) == *code);
        own.map(|i| i.id).collect()
    };
    codes
        .iter()
        .zip(canopy)
        .map(|(code, (live, dead))| SpeciesResult {
            code: code.clone(),
            form: work.form(code),
            counted: work.is_counted(code),
            live,
            dead,
            composition: None,
            height: traits::mean_height(work, code),
            density: traits::density(work, code),
            intercepts: intercepts(code),
        })
        .collect()
}

/// How little and how much canopy there may be under a wider gap limit than the recorded one, unknowable as it is.
///
/// Canopy never falls as the limit grows, so there is what was written down; and of n lengths there are at most n + 1
/// gaps (one before the first, one behind the last), each shorter than the limit where it is closed.
pub(super) fn under_a_wider_rule(work: &Work) -> (Length, Length) {
    let counted: Vec<String> = work.codes().into_iter().filter(|code| work.is_counted(code)).collect();
    let live: Vec<Length> = counted.iter().map(|code| summed(work, code, State::Live)).collect();
    let least = union_bounds(&live, work.read, work.protocol.overlap == Some(Overlap::Once)).low;
    let written = work.visit.intercepts.iter();
    let lengths =
        written.filter(|i| i.state == State::Live && counted.contains(&work.code(&i.species))).count();
    let gaps: Length = core::iter::repeat_n(work.rule.gap.limit, lengths + 1).sum();
    let most = live.into_iter().sum::<Length>() + gaps;
    (least, if lengths == 0 { least } else { most.min(work.read) })
}

fn summed(work: &Work, code: &str, state: State) -> Length {
    work.visit
        .intercepts
        .iter()
        .filter(|intercept| intercept.state == state && work.code(&intercept.species) == code)
        .map(|intercept| match &intercept.extent {
            Extent::Length(length) => length.length(),
            Extent::Edges { start, stop } => stop.length() - start.length(),
        })
        .sum()
}

/// The union of species of which only the summed lengths are known: known if overlap was written once or there is
/// a single species; else no less than the longest, no more than the sum or the line.
fn union_bounds(lengths: &[Length], line: Length, once: bool) -> Bounds {
    let sum: Length = lengths.iter().copied().sum();
    if once || lengths.len() <= 1 {
        return Bounds::known(sum.min(line));
    }
    let longest = lengths.iter().copied().max().unwrap_or(Length::ZERO);
    Bounds { low: longest.min(line), high: sum.min(line) }
}
