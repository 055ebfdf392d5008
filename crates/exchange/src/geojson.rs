//! A boundary from GeoJSON, and a layout as GeoJSON.
//!
//! What a feature is stands in its property `use`: nothing or `stratum` for ground on which lines may lie, `keep out`
//! with `buffer` in metres, `line` for a line that stays. The names stand in `stratum`, `line` and `site`.

use serde_json::{Value, json};
use tautline_survey::boundary::{Boundary, Degrees, Part, Role, Shape};
use tautline_survey::layout::{LaidLine, LayoutOutput};
use tautline_survey::message::Message;

/// Reads a boundary.
///
/// # Errors
/// what was found, where, and what would do
/// # Source
/// RFC 7946, The GeoJSON Format, §3
pub fn boundary(text: &str) -> Result<Boundary, Message> {
    let value: Value = serde_json::from_str(text).map_err(|error| {
        Message::new("geojson-not-json").with("row", error.line()).with("character", error.column())
    })?;
    let alone;
    let features: &[Value] = match (value["type"].as_str(), value["features"].as_array()) {
        (Some("FeatureCollection"), Some(features)) => features,
        (Some("Feature"), _) => {
            alone = [value];
            &alone
        }
        (Some("Polygon" | "MultiPolygon"), _) => {
            alone = [json!({ "type": "Feature", "properties": {}, "geometry": value })];
            &alone
        }
        (found, _) => {
            return Err(Message::new("geojson-no-features").with("found", found.unwrap_or("")));
        }
    };
    let mut boundary = Boundary::default();
    for (number, feature) in (1..).zip(features) {
        let properties = &feature["properties"];
        let text = |name: &str| match &properties[name] {
            Value::String(text) if !text.trim().is_empty() => Some(text.trim().to_owned()),
            Value::Number(number) => Some(number.to_string()),
            _ => None,
        };
        boundary.site = boundary.site.or_else(|| text("site"));
        let about = |code| Message::new(code).with("part", number);
        let role = match text("use").map(|found| found.to_lowercase()).as_deref() {
            None | Some("stratum" | "site") => Role::Stratum(text("stratum")),
            Some("keep out") => {
                let metres = match &properties["buffer"] {
                    Value::Null => Some(0.0),
                    Value::Number(number) => number.as_f64(),
                    _ => None,
                };
                let metres = metres
                    .filter(|metres| (0.0..=MOST_BUFFER).contains(metres))
                    .ok_or_else(|| about("geojson-buffer"))?;
                #[expect(clippy::cast_possible_truncation, reason = "10 km at most")]
                let buffer = (metres * 1000.0).round() as i64;
                Role::KeepOut { buffer }
            }
            Some("line") => Role::Line(text("line").unwrap_or_else(|| number.to_string())),
            Some(found) => return Err(about("geojson-use").with("found", found)),
        };
        let shape = shape(&feature["geometry"]).ok_or_else(|| {
            about("geojson-shape").with("found", feature["geometry"]["type"].as_str().unwrap_or(""))
        })?;
        boundary.parts.push(Part { number, role, shape });
    }
    Ok(boundary)
}

/// Ten kilometres.
const MOST_BUFFER: f64 = 10_000.0;

fn shape(geometry: &Value) -> Option<Shape> {
    let coordinates = &geometry["coordinates"];
    Some(match geometry["type"].as_str()? {
        "Polygon" => Shape::Areas(vec![rings(coordinates)?]),
        "MultiPolygon" => {
            Shape::Areas(coordinates.as_array()?.iter().map(rings).collect::<Option<Vec<_>>>()?)
        }
        "LineString" => Shape::Way(way(coordinates)?),
        "Point" => Shape::Way(vec![degrees(coordinates)?]),
        _ => return None,
    })
}

fn rings(coordinates: &Value) -> Option<Vec<Vec<Degrees>>> {
    let rings: Vec<_> = coordinates.as_array()?.iter().map(way).collect::<Option<_>>()?;
    (!rings.is_empty()).then_some(rings)
}

fn way(coordinates: &Value) -> Option<Vec<Degrees>> {
    let way: Vec<Degrees> = coordinates.as_array()?.iter().map(degrees).collect::<Option<_>>()?;
    (!way.is_empty()).then_some(way)
}

/// A third number, the height, is left aside.
fn degrees(coordinates: &Value) -> Option<Degrees> {
    let numbers = coordinates.as_array()?;
    Some([numbers.first()?.as_f64()?, numbers.get(1)?.as_f64()?])
}

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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bare_polygon_is_a_site() {
        let text = r#"{"type":"Polygon","coordinates":[[[0,0],[1,0],[1,1,1500],[0,0]]]}"#;
        let read = boundary(text).unwrap();
        assert_eq!(read.parts[0].role, Role::Stratum(None));
        assert_eq!(
            read.parts[0].shape,
            Shape::Areas(vec![vec![vec![[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 0.0]]]])
        );
    }

    #[test]
    fn strata_roads_and_lines_are_told_apart() {
        let text = r#"{"type":"FeatureCollection","features":[
            {"type":"Feature","properties":{"site":"Invented","stratum":"flat"},
             "geometry":{"type":"Polygon","coordinates":[[[0,0],[1,0],[1,1],[0,0]]]}},
            {"type":"Feature","properties":{"use":"keep out","buffer":15.5},
             "geometry":{"type":"LineString","coordinates":[[0,0],[1,1]]}},
            {"type":"Feature","properties":{"use":"line","line":"K1"},
             "geometry":{"type":"LineString","coordinates":[[0,0],[1,1]]}}]}"#;
        let read = boundary(text).unwrap();
        assert_eq!(read.site.as_deref(), Some("Invented"));
        let roles: Vec<Role> = read.parts.into_iter().map(|part| part.role).collect();
        let flat = Role::Stratum(Some("flat".into()));
        assert_eq!(roles, [flat, Role::KeepOut { buffer: 15_500 }, Role::Line("K1".into())]);
    }

    #[test]
    fn what_is_not_understood_is_named() {
        let code = |text: &str| boundary(text).unwrap_err().code;
        assert_eq!(code("{"), "geojson-not-json");
        assert_eq!(code("[]"), "geojson-no-features");
        assert_eq!(code(r#"{"type":"Feature","properties":{"use":"lake"}}"#), "geojson-use");
        assert_eq!(
            code(r#"{"type":"Feature","properties":{"use":"keep out","buffer":"wide"}}"#),
            "geojson-buffer"
        );
        let curve = r#"{"type":"Feature","properties":null,"geometry":{"type":"GeometryCollection"}}"#;
        assert_eq!(code(curve), "geojson-shape");
        let text = r#"{"type":"Feature","geometry":{"type":"Polygon","coordinates":[[["a",0]]]}}"#;
        assert_eq!(code(text), "geojson-shape");
    }
}
