//! A line on which only lengths were written down: sums are known, overlap and gaps are not.

use super::{Bounds, LineResult, SpeciesResult, Work, traits};
use crate::finding::Finding;
use crate::message::Message;
use crate::protocol::{Dead, Overlap};
use crate::visit::{Extent, State};
use tautline_engine::length::Length;

pub(super) fn work_out(work: &Work, result: &mut LineResult) {
    let codes = work.codes();
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
    result.species = codes
        .iter()
        .zip(&sums)
        .map(|(code, &(live, dead))| SpeciesResult {
            code: code.clone(),
            form: work.form(code),
            counted: work.is_counted(code),
            live: Bounds::known(live),
            dead: Bounds::known(dead),
            composition: None,
            height: traits::mean_height(work, code),
            density: traits::density(work, code),
            intercepts: work
                .visit
                .intercepts
                .iter()
                .filter(|i| work.code(&i.species) == *code)
                .map(|i| i.id)
                .collect(),
        })
        .collect();

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
