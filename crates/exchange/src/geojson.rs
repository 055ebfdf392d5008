//! A layout as GeoJSON.

use serde_json::{Value, json};
use tautline_survey::layout::{LaidLine, LayoutOutput};

/// A layout as GeoJSON: each line from start to end, the reserve marked.
pub fn layout(layout: &LayoutOutput) -> String {
    let feature = |line: &LaidLine| {
        json!({
            "type": "Feature",
            "properties": {
                "use": "line",
                "site": layout.site,
                "line": line.line,
                "stratum": line.stratum,
                "plot": line.plot,
                "reserve": line.reserve,
                "true_bearing": line.true_bearing,
                "magnetic_bearing": line.magnetic_bearing,
            },
            "geometry": {
                "type": "LineString",
                "coordinates": [
                    [line.start.longitude, line.start.latitude],
                    [line.end.longitude, line.end.latitude],
                ],
            },
        })
    };
    let features: Vec<Value> = layout.lines.iter().map(feature).collect();
    let collection = json!({ "type": "FeatureCollection", "features": features });
    format!("{collection:#}\n")
}
