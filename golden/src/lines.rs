//! Cover of invented lines under several rules, exact to the nanometre, with the gaps and the work on paper.

use tautline_engine::cover::{Intercept, Life, LineCover, line_cover};
use tautline_engine::curve::curve;
use tautline_engine::density::plants_per_square_metre;
use tautline_engine::gaps::{canopy_gaps, gap_classes, published_breaks};
use tautline_engine::length::{Length, Notation, Unit};
use tautline_engine::rule::{Bridging, DeadRule, ReadingRule};
use tautline_engine::stretch::Stretch;
use tautline_engine::work::{Term, worked};

use crate::inputs::Inputs;
use crate::table::Table;

const LINES: usize = 12;

pub(crate) fn rows(table: &mut Table) {
    let mut inputs = Inputs::new(3);
    let length = cm(3_000);
    for line in 0..LINES {
        let intercepts = intercepts(&mut inputs);
        for (name, rule) in rules() {
            let cover = line_cover(length, &intercepts, &rule);
            cover_rows(table, &format!("line {line} {name}"), &cover);
        }
        let steps = curve(length, &intercepts, &ReadingRule::AS_WRITTEN, cm(30));
        table.row(format_args!("line {line} curve steps"), steps.len());
        table.digest(
            format_args!("line {line} curve"),
            steps.iter().flat_map(|step| {
                [step.limit, step.canopy, step.sum, step.dead].map(|length| length.in_unit(Unit::Inch))
            }),
        );
        let widths: Vec<Length> = intercepts.iter().map(|intercept| intercept.stretch.length()).collect();
        if let Some(density) = plants_per_square_metre(&widths, length) {
            table.real(format_args!("line {line} density"), density);
        }
        paper_rows(table, line, &intercepts, length);
    }
}

fn cover_rows(table: &mut Table, label: &str, cover: &LineCover) {
    table.row(format_args!("{label} canopy nm"), cover.canopy_length().nanometres());
    table.row(format_args!("{label} sum nm"), cover.sum_length().nanometres());
    table.row(format_args!("{label} dead nm"), cover.dead_length().nanometres());
    table.row(format_args!("{label} between nm"), cover.between_length().nanometres());
    table.real(format_args!("{label} canopy share"), cover.canopy_length().share_of(cover.length));
    let classes = gap_classes(&canopy_gaps(&cover.canopy, cover.length), &published_breaks(), 1.0);
    let counts: Vec<String> = classes.iter().map(|class| class.count.to_string()).collect();
    table.row(format_args!("{label} gaps"), counts.join("/"));
}

fn paper_rows(table: &mut Table, line: usize, intercepts: &[Intercept], length: Length) {
    let terms: Vec<Term> = intercepts
        .iter()
        .map(|intercept| Term {
            edges: None,
            length: intercept.stretch.length(),
            notation: Notation::decimals(Unit::Centimetre, 0),
        })
        .collect();
    let work = worked(&terms, length, Notation::decimals(Unit::Metre, 0), 2);
    table.row(format_args!("line {line} on paper"), format_args!("{} {}", work.total, work.percent));
}

/// Plants of three species in pieces with small gaps between, on whole centimetres; some pieces are dead, plants
/// overlap, and some reach over the line's end.
fn intercepts(inputs: &mut Inputs) -> Vec<Intercept> {
    let mut found = Vec::new();
    for _ in 0..10 + inputs.below(15) {
        let species = inputs.below(3);
        let mut at = i64::from(inputs.below(3_000));
        for _ in 0..=inputs.below(4) {
            let stop = at + 1 + i64::from(inputs.below(50));
            found.push(Intercept {
                stretch: Stretch::new(cm(at), cm(stop)).expect("at least 1 cm long"),
                species,
                plant: None,
                life: if inputs.below(6) == 0 { Life::Dead } else { Life::Live },
            });
            at = stop + i64::from(inputs.below(15));
        }
    }
    found
}

/// Every edge as written; a common gap rule; and one that bridges whatever may be bridged.
fn rules() -> [(&'static str, ReadingRule); 3] {
    let mut widest = ReadingRule::AS_WRITTEN.with_limit(cm(10));
    widest.gap.equal = Bridging::Bridged;
    widest.gap.between_species = Bridging::Bridged;
    widest.gap.line_end = Bridging::Bridged;
    widest.dead = DeadRule::ShortJoinsLive;
    widest.shortest = cm(3);
    [
        ("as written", ReadingRule::AS_WRITTEN),
        ("5 cm", ReadingRule::AS_WRITTEN.with_limit(cm(5))),
        ("widest", widest),
    ]
}

fn cm(count: i64) -> Length {
    Length::from_units(count, Unit::Centimetre)
}
