//! What the readings come to: each line, and each figure of a site with its error and how many lines it stands on.

use super::plan::{SUBJECT, TO_SITE, subject};
use super::{metres, visit_number};
use crate::Whole;
use crate::table::{Cell, Column, Holds, Link, Table};
use tautline_engine::confidence::NoBound;
use tautline_engine::estimate::{Estimate, SamplingError};
use tautline_survey::assess::{Assessment, Figure};
use tautline_survey::goal::Subject;
use tautline_survey::line::Bounds;
use tautline_survey::output::estimator;

/// A share of one.
const SHARE: &str = "1";

/// The lines of every assessment that speak for its site, those of one stratum together.
pub(super) fn line_cover(whole: &Whole) -> Table {
    let rows = whole.assessments.iter().flat_map(|assessment| {
        order(assessment).into_iter().map(|at| {
            let line = &assessment.lines[at];
            let mut row = vec![
                visit_number(line.visit),
                Cell::text(&line.site),
                Cell::text(&line.line),
                assessment.year.map_or(Cell::Empty, |year| Cell::Whole(i64::from(year))),
                Cell::text(line.stratum.as_deref().unwrap_or("")),
                Cell::text(line.plot.as_deref().unwrap_or("")),
                Cell::Number(metres(line.read)),
            ];
            let (limit, most) = line.gap_limits();
            row.extend([
                Cell::Number(metres(limit)),
                most.map_or(Cell::Empty, |most| Cell::Number(metres(most))),
            ]);
            for bounds in [line.canopy, line.sum, line.dead] {
                row.extend(ends(bounds, metres));
                row.extend(ends(bounds, |length| line.share(length)));
            }
            row
        })
    });
    Table {
        name: "line_cover",
        columns: vec![
            Column::new("visit", Holds::Whole).needed(),
            Column::new("site", Holds::Text).needed(),
            Column::new("line", Holds::Text).needed(),
            Column::new("year", Holds::Whole),
            Column::new("stratum", Holds::Text),
            Column::new("plot", Holds::Text),
            Column::of("read_m", "m").needed(),
            Column::of("gap_limit_m", "m").needed(),
            Column::of("gap_limit_high_m", "m"),
            Column::of("canopy_m", "m").needed(),
            Column::of("canopy_high_m", "m"),
            Column::of("canopy_cover", SHARE).needed(),
            Column::of("canopy_cover_high", SHARE),
            Column::of("sum_m", "m").needed(),
            Column::of("sum_high_m", "m"),
            Column::of("sum_cover", SHARE).needed(),
            Column::of("sum_cover_high", SHARE),
            Column::of("dead_m", "m").needed(),
            Column::of("dead_high_m", "m"),
            Column::of("dead_cover", SHARE).needed(),
            Column::of("dead_cover_high", SHARE),
        ],
        key: &["visit"],
        links: &[Link { columns: &["visit"], table: "visits", there: &["visit"] }, TO_SITE],
        rows: rows.collect(),
    }
}

/// The lines of an assessment in the order in which they are written: part by part of its canopy.
fn order(assessment: &Assessment) -> Vec<usize> {
    let parts = assessment.figure(&Subject::Canopy).map_or(&[][..], |figure| &figure.parts);
    let mut order: Vec<usize> = parts.iter().flat_map(|part| &part.lines).copied().collect();
    let others =
        (0..assessment.lines.len()).filter(|at| !order.contains(at) && !assessment.lines[*at].unsettled);
    let others: Vec<usize> = others.collect();
    order.extend(others);
    order
}

/// Canopy of each line after the gap rule: together they are its canopy.
pub(super) fn stretches(whole: &Whole) -> Table {
    let mut rows = Vec::new();
    for assessment in whole.assessments {
        for line in order(assessment).into_iter().map(|at| &assessment.lines[at]) {
            let canopy = line.cover.as_ref().map_or(&[][..], |cover| &cover.canopy);
            for (number, stretch) in (1..).zip(canopy) {
                let mut row = vec![visit_number(line.visit), Cell::Whole(number)];
                row.extend(
                    [stretch.start(), stretch.stop(), stretch.length()].map(|at| Cell::Number(metres(at))),
                );
                rows.push(row);
            }
        }
    }
    Table {
        name: "stretches",
        columns: vec![
            Column::new("visit", Holds::Whole).needed(),
            Column::new("stretch", Holds::Whole).needed(),
            Column::of("start_m", "m").needed(),
            Column::of("stop_m", "m").needed(),
            Column::of("length_m", "m").needed(),
        ],
        key: &["visit", "stretch"],
        links: &[Link { columns: &["visit"], table: "visits", there: &["visit"] }],
        rows,
    }
}

/// The canopy of each site in the parts that it is put together from: its strata, or all lines.
pub(super) fn parts(whole: &Whole) -> Table {
    let mut rows: Vec<Vec<Cell>> = Vec::new();
    for (result, figure) in numbered(whole).filter(|(_, figure)| is_canopy(figure)) {
        for part in &figure.parts {
            rows.push(vec![
                Cell::count(rows.len() + 1),
                Cell::count(result),
                Cell::text(&part.name),
                Cell::Number(part.weight),
                Cell::count(part.lines.len()),
                Cell::Number(part.estimate.value),
                Cell::number(error(&part.estimate).0),
                Cell::text(estimator(&part.estimate.method)),
            ]);
        }
    }
    Table {
        name: "parts",
        columns: vec![
            Column::new("part", Holds::Whole).needed(),
            Column::new("result", Holds::Whole).needed(),
            Column::new("stratum", Holds::Text),
            Column::of("weight", "1").needed(),
            Column::new("lines", Holds::Whole).needed(),
            Column::of("estimate", "1").needed(),
            Column::new("standard_error", Holds::Amount),
            Column::new("estimator", Holds::Text).needed(),
        ],
        key: &["part"],
        links: &[Link { columns: &["result"], table: "results", there: &["result"] }],
        rows,
    }
}

/// Every figure with its number in the tables, from 1.
pub(crate) fn numbered<'a>(whole: &Whole<'a>) -> impl Iterator<Item = (usize, &'a Figure)> {
    (1..).zip(whole.assessments.iter().flat_map(|assessment| &assessment.figures))
}

/// Whether a figure is the canopy cover of its site.
pub(crate) fn is_canopy(figure: &Figure) -> bool {
    figure.subject == Subject::Canopy && figure.is_cover()
}

/// Standard error and degrees of freedom, where there are any.
pub(crate) fn error(estimate: &Estimate) -> (Option<f64>, Option<f64>) {
    match estimate.error {
        SamplingError::Known { se, df } => (Some(se), Some(df)),
        SamplingError::Unknown(_) => (None, None),
    }
}

/// The low end, and the high end where it differs.
fn ends(bounds: Bounds, of: impl Fn(tautline_engine::length::Length) -> f64) -> [Cell; 2] {
    [
        Cell::Number(of(bounds.low)),
        if bounds.is_known() { Cell::Empty } else { Cell::Number(of(bounds.high)) },
    ]
}

pub(super) fn results(whole: &Whole) -> Table {
    let mut rows: Vec<Vec<Cell>> = Vec::new();
    for assessment in whole.assessments {
        for figure in &assessment.figures {
            let (se, df) = error(&figure.estimate);
            let high = figure.high.as_ref();
            let interval = figure.interval.ok();
            rows.push(vec![
                Cell::count(rows.len() + 1),
                Cell::text(&assessment.site),
                assessment.year.map_or(Cell::Empty, |year| Cell::Whole(i64::from(year))),
                Cell::text(assessment.plot.as_deref().unwrap_or("")),
                Cell::text(&subject(&figure.subject)),
                Cell::text(figure.attribute.code()),
                Cell::text(match figure.attribute.code() {
                    "height" => "m",
                    "density" => "1/m2",
                    _ => "1",
                }),
                Cell::Number(figure.estimate.value),
                Cell::number(se),
                Cell::number(df),
                Cell::number(interval.map(|interval| interval.low)),
                Cell::number(interval.map(|interval| interval.high)),
                Cell::Number(assessment.confidence * 100.0),
                Cell::count(figure.estimate.lines),
                Cell::count(figure.estimate.units),
                Cell::text(estimator(&figure.estimate.method)),
                Cell::text(figure.method.code()),
                Cell::text(figure.interval.err().map_or("", NoBound::code)),
                Cell::number(high.map(|estimate| estimate.value)),
                Cell::number(high.and_then(|estimate| error(estimate).0)),
            ]);
        }
    }
    Table {
        name: "results",
        columns: vec![
            Column::new("result", Holds::Whole).needed(),
            Column::new("site", Holds::Text).needed(),
            Column::new("year", Holds::Whole),
            Column::new("plot", Holds::Text),
            SUBJECT,
            Column::new("attribute", Holds::OneOf(&["cover", "height", "density"])).needed(),
            Column::new("unit", Holds::OneOf(&["1", "m", "1/m2"])).needed(),
            Column::new("estimate", Holds::Amount).needed(),
            Column::new("standard_error", Holds::Amount),
            Column::new("degrees_of_freedom", Holds::Amount),
            Column::new("interval_low", Holds::Number),
            Column::new("interval_high", Holds::Number),
            Column::of("confidence_percent", "%").needed(),
            Column::new("lines", Holds::Whole).needed(),
            Column::new("units", Holds::Whole).needed(),
            Column::new("estimator", Holds::Text).needed(),
            Column::new("interval_method", Holds::Text).needed(),
            Column::new("why_no_interval", Holds::Text),
            Column::new("estimate_high_end", Holds::Amount),
            Column::new("standard_error_high_end", Holds::Amount),
        ],
        key: &["result"],
        links: &[TO_SITE],
        rows,
    }
}
