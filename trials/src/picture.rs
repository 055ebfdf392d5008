//! The picture: coverage against the intercepts that a survey meets, a panel for each of three methods.

use crate::bar::{DEFAULT, FEWEST_INTERCEPTS, HIGHEST, LOWEST};
use crate::table::Row;
use std::fmt::Write;
use tautline_engine::num::math::ln;

/// Panels: method and heading.
const PANELS: [(&str, &str); 3] =
    [("student-t", "Student t"), ("logit-t", "logit-t"), (DEFAULT, "logit-t, effective df (the default)")];

/// Numbers of lines shown, each with its colour: readable without colour by their lightness, too.
const LINES: [(u32, &str); 3] = [(3, "#8fb8de"), (8, "#d9822b"), (30, "#1d3f72")];

const WIDTH: f64 = 300.0;
const HEIGHT: f64 = 260.0;
const LEFT: f64 = 52.0;
const TOP: f64 = 64.0;
const GAP: f64 = 16.0;

/// Intercepts on a logarithmic scale from 1 to 3,000.
fn x(intercepts: f64) -> f64 {
    WIDTH * ln(intercepts.max(1.0)) / ln(3_000.0)
}

/// Coverage from 60 to 100 %; what is lower stands at the foot.
fn y(coverage: f64) -> f64 {
    HEIGHT * (1.0 - (coverage.max(0.6) - 0.6) / 0.4)
}

/// The picture as SVG, from the table alone.
pub fn picture(rows: &[Row]) -> String {
    let full = LEFT + 3.0 * (WIDTH + GAP);
    let tall = TOP + HEIGHT + 62.0;
    let mut svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {full} {tall}\" width=\"{full}\" height=\"{tall}\" \
         font-family=\"sans-serif\" font-size=\"13\" role=\"img\" aria-label=\"How often 90 % intervals hold the true \
         cover, against the number of intercepts a survey meets, for three methods\">\n\
         <rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n"
    );
    text(
        &mut svg,
        LEFT,
        22.0,
        "start",
        "How often a 90 % interval holds the true cover, in simulated stands",
    );
    legend(&mut svg);
    for (at, (method, heading)) in (0_u8..).zip(PANELS) {
        let left = LEFT + f64::from(at) * (WIDTH + GAP);
        let _ = writeln!(svg, "<g transform=\"translate({left} {TOP})\">");
        panel(&mut svg, rows, method, at == 0);
        text(&mut svg, 4.0, -8.0, "start", heading);
        svg.push_str("</g>\n");
    }
    let middle = LEFT + 1.5 * WIDTH + GAP;
    text(&mut svg, middle, TOP + HEIGHT + 46.0, "middle", "intercepts that a survey meets on average");
    svg.push_str("</svg>\n");
    svg
}

fn legend(svg: &mut String) {
    let mut at = LEFT + 560.0;
    for (lines, colour) in LINES {
        let _ = writeln!(svg, "<circle cx=\"{at}\" cy=\"17.5\" r=\"4\" fill=\"{colour}\"/>");
        text(svg, at + 9.0, 22.0, "start", &format!("{lines} lines"));
        at += 90.0;
    }
}

fn panel(svg: &mut String, rows: &[Row], method: &str, labelled: bool) {
    let (top, foot) = (y(HIGHEST), y(LOWEST));
    let from = x(FEWEST_INTERCEPTS);
    let _ = writeln!(
        svg,
        "<rect x=\"{from:.1}\" y=\"{top:.1}\" width=\"{:.1}\" height=\"{:.1}\" fill=\"#d7ead2\"/>",
        WIDTH - from,
        foot - top
    );
    for per_cent in [60, 70, 80, 90, 100] {
        let at = y(f64::from(per_cent) / 100.0);
        let stroke = if per_cent == 90 { "#555" } else { "#ddd" };
        let _ = writeln!(svg, "<path d=\"M0 {at:.1}H{WIDTH}\" stroke=\"{stroke}\"/>");
        if labelled {
            text(svg, -8.0, at + 4.5, "end", &format!("{per_cent} %"));
        }
    }
    for intercepts in [1, 10, 100, 1_000] {
        let at = x(f64::from(intercepts));
        let _ = writeln!(svg, "<path d=\"M{at:.1} {HEIGHT}v5\" stroke=\"#555\"/>");
        text(
            svg,
            at,
            HEIGHT + 20.0,
            if intercepts == 1 { "start" } else { "middle" },
            &intercepts.to_string(),
        );
    }
    for (lines, colour) in LINES {
        let shown =
            rows.iter().filter(|row| row.figure == "canopy" && row.method == method && row.lines == lines);
        let mut dots = String::new();
        for row in shown {
            let _ = write!(dots, "M{:.1} {:.1}h0", x(row.intercepts), y(row.coverage()));
        }
        let _ = writeln!(
            svg,
            "<path d=\"{dots}\" stroke=\"{colour}\" stroke-width=\"4\" stroke-linecap=\"round\" fill=\"none\"/>"
        );
    }
}

fn text(svg: &mut String, x: f64, y: f64, anchor: &str, words: &str) {
    let _ = writeln!(
        svg,
        "<text x=\"{x:.1}\" y=\"{y:.1}\" text-anchor=\"{anchor}\" fill=\"#222\">{words}</text>"
    );
}
