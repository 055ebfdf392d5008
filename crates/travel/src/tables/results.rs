//! What the readings come to: each line, and each figure of a site with its error and how many lines it stands on.

use super::plan::{SUBJECT, TO_SITE, subject};
use super::{metres, visit_number};
use crate::Whole;
use crate::table::{Cell, Column, Holds, Link, Table};
use tautline_engine::confidence::NoBound;
use tautline_engine::estimate::{Estimate, SamplingError};
use tautline_survey::line::Bounds;
use tautline_survey::output::estimator;

/// A share of one.
const SHARE: &str = "1";

/// The lines of every assessment, those of one site, year, plot and stratum in one block.
pub(super) fn line_cover(whole: &Whole) -> Table {
    let rows = whole.assessments.iter().flat_map(|assessment| {
        assessment.lines.iter().map(|line| {
            let mut row = vec![
                visit_number(line.visit),
                Cell::text(&line.site),
                Cell::text(&line.line),
                assessment.year.map_or(Cell::Empty, |year| Cell::Whole(i64::from(year))),
                Cell::text(line.stratum.as_deref().unwrap_or("")),
                Cell::text(line.plot.as_deref().unwrap_or("")),
                Cell::Number(metres(line.read)),
                Cell::Number(metres(line.rule.gap.limit)),
            ];
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
            let error = |estimate: &Estimate| match estimate.error {
                SamplingError::Known { se, df } => (Some(se), Some(df)),
                SamplingError::Unknown(_) => (None, None),
            };
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
