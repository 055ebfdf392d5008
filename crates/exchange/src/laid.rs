//! A layout for a GPS receiver (GPX 1.1) and as a lines table.

use crate::table::row;
use tautline_engine::num::decimal::shortest;
use tautline_survey::layout::{LaidLine, LayoutOutput};

/// A line as a receiver takes it.
#[derive(Clone, Debug, PartialEq)]
pub struct Way {
    /// Its name.
    pub name: String,
    /// What stands beside its ends.
    pub note: String,
    /// Latitude and longitude of the tape's zero.
    pub start: [f64; 2],
    /// Those of the tape's end, if it was noted.
    pub end: Option<[f64; 2]>,
}

/// Start and end of each line as waypoints, and each line as a route.
///
/// # Source
/// GPX 1.1 schema, topografix.com/GPX/1/1
pub fn ways(title: &str, ways: &[Way]) -> String {
    let point = |element: &str, [latitude, longitude]: [f64; 2], name: &str, note: &str| {
        let (latitude, longitude) = (shortest(latitude), shortest(longitude));
        format!(
            "<{element} lat=\"{latitude}\" lon=\"{longitude}\"><name>{}</name><desc>{}</desc></{element}>\n",
            escaped(name),
            escaped(note)
        )
    };
    let ends = |way: &Way, element: &str| {
        let start = point(element, way.start, &format!("{} 0", way.name), &way.note);
        let end = way.end.map(|end| point(element, end, &format!("{} end", way.name), &way.note));
        start + &end.unwrap_or_default()
    };
    let waypoints: String = ways.iter().map(|way| ends(way, "wpt")).collect();
    let routes = ways.iter().filter(|way| way.end.is_some());
    let routes: Vec<String> = routes
        .map(|way| format!("<rte><name>{}</name>\n{}</rte>\n", escaped(&way.name), ends(way, "rtept")))
        .collect();
    format!(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n\
         <gpx version=\"1.1\" creator=\"tautline\" xmlns=\"http://www.topografix.com/GPX/1/1\">\n\
         <metadata><name>{}</name></metadata>\n{waypoints}{}</gpx>\n",
        escaped(title),
        routes.concat()
    )
}

/// A layout for a receiver.
pub fn gpx(layout: &LayoutOutput) -> String {
    let way = |line: &LaidLine| Way {
        name: line.line.clone(),
        note: bearings(line),
        start: [line.start.latitude, line.start.longitude],
        end: Some([line.end.latitude, line.end.longitude]),
    };
    ways(&layout.site, &layout.lines.iter().map(way).collect::<Vec<_>>())
}

/// `true 137°, magnetic 124.5°`, so that neither is taken for the other.
fn bearings(line: &LaidLine) -> String {
    match line.magnetic_bearing {
        Some(magnetic) => format!("true {}°, magnetic {magnetic:.1}°", line.true_bearing),
        None => format!("true {}°", line.true_bearing),
    }
}

fn escaped(text: &str) -> String {
    let allowed = |c: &char| !c.is_control();
    text.chars()
        .filter(allowed)
        .collect::<String>()
        .replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
}

/// The lines as a table that is read back as the plan (docs/files.md): those in reserve, or those not.
pub fn lines_table(layout: &LayoutOutput, reserve: bool) -> String {
    let mut text = row(&[
        "site",
        "line",
        "line length",
        "stratum",
        "plot",
        "chosen by judgement",
        "start latitude",
        "start longitude",
        "end latitude",
        "end longitude",
        "start UTM",
        "true bearing",
        "magnetic bearing",
    ]);
    for line in layout.lines.iter().filter(|line| line.reserve == reserve) {
        let magnetic = line.magnetic_bearing.map_or(String::new(), |degrees| format!("{degrees:.1}"));
        text += &row(&[
            layout.site.as_str(),
            &line.line,
            &layout.line_length,
            line.stratum.as_deref().unwrap_or(""),
            line.plot.as_deref().unwrap_or(""),
            layout.judged.as_deref().unwrap_or(""),
            &shortest(line.start.latitude),
            &shortest(line.start.longitude),
            &shortest(line.end.latitude),
            &shortest(line.end.longitude),
            &line.start.utm,
            &line.true_bearing.to_string(),
            &magnetic,
        ]);
    }
    text
}
