//! Lines of all pieces gathered by site, and each site's row.

use super::lines::{LineRun, Lines, SiteRun};
use std::collections::BTreeSet;
use std::num::NonZero;
use tautline_engine::estimate::Line;
use tautline_engine::length::{Length, Unit};
use tautline_survey::assess::{Question, natural_order, of_canopies};
use tautline_survey::check::ENOUGH_POSITIONS;
use tautline_survey::sites::{OnTheLines, SiteRow};

/// What the quick reader knows of all sites.
pub(super) struct Gathered {
    /// The rows of those it could work out, in the order of the sites.
    pub(super) rows: Vec<SiteRow>,
    /// The sites that it couldn't.
    pub(super) odd: BTreeSet<String>,
}

/// A run of lines with its site's name.
type Named<'a> = (&'a str, &'a Lines, &'a SiteRun);

/// Gathers the lines by site and works the sites out on so many threads, each its own part of them.
pub(super) fn sites(pieces: &[Lines], question: &Question, threads: NonZero<usize>) -> Gathered {
    let mut runs: Vec<Named> = pieces
        .iter()
        .flat_map(|lines| lines.sites.iter().map(move |site| (lines.site(site), lines, site)))
        .collect();
    runs.sort_by_key(|(name, _, _)| *name);
    let twice = written_twice(&runs);
    let sites: Vec<&[Named]> = runs.chunk_by(|a, b| a.0 == b.0).collect();
    let share = sites.len().div_ceil(threads.get()).max(1);
    let parts: Vec<Gathered> = std::thread::scope(|scope| {
        let twice = &twice;
        let work = move |part: &[&[Named]]| {
            let mut gathered = Gathered { rows: Vec::new(), odd: BTreeSet::new() };
            for runs in part {
                match rows(runs, twice, question) {
                    Some(rows) => gathered.rows.extend(rows),
                    None => _ = gathered.odd.insert(runs[0].0.to_owned()),
                }
            }
            gathered
        };
        let threads: Vec<_> = sites.chunks(share).map(|part| scope.spawn(move || work(part))).collect();
        threads.into_iter().map(|thread| thread.join().expect("working out a site never panics")).collect()
    });
    let mut all = Gathered { rows: Vec::new(), odd: BTreeSet::new() };
    for part in parts {
        all.rows.extend(part.rows);
        all.odd.extend(part.odd);
    }
    all
}

/// What stands for readings that may agree in every row with another one: a tape is never read alike, so those are
/// held back. Only readings with enough rows are looked at.
fn written_twice(runs: &[Named]) -> BTreeSet<u64> {
    let lines = runs.iter().flat_map(|(_, lines, site)| lines.of_site(site).map(|(_, line)| line));
    let mut prints: Vec<u64> =
        lines.filter(|line| line.rows as usize >= ENOUGH_POSITIONS).map(|line| line.print).collect();
    prints.sort_unstable();
    prints.windows(2).filter(|pair| pair[0] == pair[1]).map(|pair| pair[0]).collect()
}

/// The rows of one site, one a year; `None` where the general reader must say more about it.
fn rows(runs: &[Named], twice: &BTreeSet<u64>, question: &Question) -> Option<Vec<SiteRow>> {
    if runs.iter().any(|(_, _, site)| site.odd) {
        return None;
    }
    let site = runs[0].0;
    let mut lines: Vec<(&str, &LineRun)> =
        runs.iter().flat_map(|(_, lines, site)| lines.of_site(site)).collect();
    lines.sort_by(|(a, one), (b, other)| one.year.cmp(&other.year).then_with(|| natural_order(a, b)));
    let years: Vec<&[(&str, &LineRun)]> = lines.chunk_by(|a, b| a.1.year == b.1.year).collect();
    let again = |lines: &&[(&str, &LineRun)]| lines.windows(2).any(|pair| pair[0].0 == pair[1].0);
    // the same lines, equally long, in every year; else there is something to be said
    let unlike = |lines: &&[(&str, &LineRun)]| {
        lines.len() != years[0].len()
            || lines.iter().zip(years[0]).any(|(a, b)| (a.0, a.1.length) != (b.0, b.1.length))
    };
    let held = lines.iter().any(|(_, line)| twice.contains(&line.print));
    if held || years.iter().any(again) || years.iter().any(unlike) {
        return None;
    }
    let asked = years.into_iter().filter(|lines| question.year.is_none() || lines[0].1.year == question.year);
    asked
        .map(|lines| {
            let length: Length = lines.iter().map(|(_, line)| line.length).sum();
            let values = lines.iter().map(|(_, line)| {
                Line::new(line.canopy.length.in_unit(Unit::Millimetre), line.length.in_unit(Unit::Millimetre))
            });
            let assessment = of_canopies(site, lines[0].1.year, values.collect(), question)?;
            let intercepts = lines.iter().map(|(_, line)| line.canopy.stretches).sum();
            let read = OnTheLines { lines: lines.len(), length, intercepts: Some(intercepts) };
            Some(SiteRow::with_lines(&assessment, &read, question))
        })
        .collect()
}
