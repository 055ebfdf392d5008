//! A line read with starts and stops.

use super::{Bounds, LineResult, SpeciesResult, Work, traits};
use crate::finding::Finding;
use crate::message::Message;
use crate::visit::{Extent, State};
use tautline_engine::cover::{Intercept, Life, LineCover, line_cover};
use tautline_engine::gaps::{canopy_gaps, gap_classes, published_breaks};
use tautline_engine::length::Length;
use tautline_engine::rule::{Bridging, ReadingRule};
use tautline_engine::stretch::{Stretch, total, union};

pub(super) fn work_out(work: &Work, result: &mut LineResult, breaks: Option<&[Length]>) {
    let codes = work.codes();
    let (intercepts, ids) = intercepts(work, &codes);
    let (counted, counted_ids) = only(&intercepts, &ids, &|number| work.is_counted(&codes[number as usize]));
    let (others, other_ids) = only(&intercepts, &ids, &|number| !work.is_counted(&codes[number as usize]));

    // Where the rule stops at the plant and the plants weren't marked, another limit than the one the reader used
    // may close every gap or none of them.
    let marks_missing = work.protocol.stops_at_the_plant() && counted.iter().any(|i| i.plant.is_none());
    let open = work.re_ruled && marks_missing;
    let [narrowest, mut widest]: [ReadingRule; 2] = work.ends.unwrap_or([work.rule; 2]);
    if open {
        widest.gap.two_plants = Bridging::Bridged;
        result.findings.push(Finding::have_a_look(
            Message::new("plant-marks-missing")
                .with("site", result.site.as_str())
                .with("line", result.line.as_str()),
        ));
    }
    let low = line_cover(work.read, &counted, &narrowest);
    let high = line_cover(work.read, &counted, &widest);
    let [uncounted, uncounted_high] = [narrowest, widest].map(|rule| line_cover(work.read, &others, &rule));

    result.canopy = Bounds { low: low.canopy_length(), high: high.canopy_length() };
    result.sum = Bounds { low: low.sum_length(), high: high.sum_length() };
    result.dead = Bounds {
        low: low.dead_length().min(high.dead_length()),
        high: low.dead_length().max(high.dead_length()),
    };
    let species = |low: &LineCover, high: &LineCover, ids: &[u32], counted: bool| -> Vec<SpeciesResult> {
        let pairs = low.species.iter().zip(&high.species);
        pairs
            .map(|(low, high)| {
                let code = &codes[low.species as usize];
                let from = low.live.iter().chain(&low.dead).flat_map(|piece| &piece.from);
                let mut intercepts: Vec<u32> = from.map(|&index| ids[index]).collect();
                intercepts.sort_unstable();
                intercepts.dedup();
                SpeciesResult {
                    code: code.clone(),
                    form: work.form(code),
                    counted,
                    live: Bounds { low: low.live_length(), high: high.live_length() },
                    dead: Bounds {
                        low: low.dead_length().min(high.dead_length()),
                        high: low.dead_length().max(high.dead_length()),
                    },
                    composition: None,
                    height: traits::mean_height(work, code),
                    density: traits::density(work, code),
                    intercepts,
                }
            })
            .collect()
    };
    result.species = species(&low, &high, &counted_ids, true);
    result.species.extend(species(&uncounted, &uncounted_high, &other_ids, false));

    let (forms, groups) = work.unions(&codes);
    let within = |members: &[usize]| Bounds {
        low: union_length(&[&low, &uncounted], members),
        high: union_length(&[&high, &uncounted_high], members),
    };
    result.forms = forms.iter().map(|(form, members)| (*form, within(members))).collect();
    result.groups = groups.iter().map(|(group, members)| (group.clone(), within(members))).collect();

    result.gaps = canopy_gaps(&low.canopy, work.read);
    result.gap_classes =
        gap_classes(&result.gaps, breaks.unwrap_or(&published_breaks()), work.slope_cosine.unwrap_or(1.0));
    result.codes = codes;
    result.counted = counted;
    result.others = others;
    result.cover = Some(low);
}

/// The visit's intercepts as the engine takes them, and their ids.
pub(super) fn intercepts(work: &Work, codes: &[String]) -> (Vec<Intercept>, Vec<u32>) {
    let mut marks: Vec<&str> = work.visit.intercepts.iter().filter_map(|i| i.plant.as_deref()).collect();
    marks.sort_unstable();
    marks.dedup();
    work.visit
        .intercepts
        .iter()
        .filter_map(|intercept| {
            let Extent::Edges { start, stop } = &intercept.extent else { return None };
            let stretch = Stretch::new(start.length(), stop.length())?;
            let code = work.code(&intercept.species);
            let mark = intercept.plant.as_deref().and_then(|mark| marks.binary_search(&mark).ok());
            let number = |at: usize| u32::try_from(at).expect("a line holds fewer than 2^32 intercepts");
            let engine = Intercept {
                stretch,
                species: number(codes.iter().position(|known| *known == code)?),
                plant: mark.map(number),
                life: if intercept.state == State::Live { Life::Live } else { Life::Dead },
            };
            Some((engine, intercept.id))
        })
        .unzip()
}

fn only(intercepts: &[Intercept], ids: &[u32], wanted: &dyn Fn(u32) -> bool) -> (Vec<Intercept>, Vec<u32>) {
    intercepts.iter().zip(ids).filter(|(intercept, _)| wanted(intercept.species)).unzip()
}

fn union_length(covers: &[&LineCover], members: &[usize]) -> Length {
    let live = covers
        .iter()
        .flat_map(|cover| &cover.species)
        .filter(|species| members.contains(&(species.species as usize)))
        .flat_map(|species| species.live.iter().map(|piece| piece.stretch));
    total(&union(live))
}
