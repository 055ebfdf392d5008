//! GeoJSON.
//!
//! # Source
//! RFC 7946, The GeoJSON Format, §3

use super::feature::Feature;
use crate::limits::MOST_NODES;
use serde_json::{Value, json};
use tautline_survey::boundary::{Pair, Shape};
use tautline_survey::message::Message;

pub(super) fn features(text: &str) -> Result<Vec<Feature>, Message> {
    // each value takes sixteen times the byte that it may be written with
    let values = text.bytes().filter(|byte| matches!(byte, b',' | b'[' | b'{')).count();
    if values > MOST_NODES as usize {
        return Err(Message::new("boundary-too-large"));
    }
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
    let one = |(number, feature): (usize, &Value)| {
        let geometry = &feature["geometry"];
        // a feature without a place is one all the same (§3.2)
        let shapes = if geometry.is_null() { Some(Vec::new()) } else { shapes(geometry) };
        let shapes = shapes.ok_or_else(|| {
            let found = geometry["type"].as_str().unwrap_or("");
            Message::new("geojson-shape").with("part", number).with("found", found)
        })?;
        Ok(Feature { number, fields: fields(&feature["properties"]), shapes, ..Feature::default() })
    };
    (1..).zip(features).map(one).collect()
}

fn fields(properties: &Value) -> Vec<(String, String)> {
    let text = |value: &Value| match value {
        Value::Null => None,
        Value::String(text) => Some(text.clone()),
        other => Some(other.to_string()),
    };
    let fields = properties.as_object().into_iter().flatten();
    fields.filter_map(|(name, value)| Some((name.clone(), text(value)?))).collect()
}

fn shapes(geometry: &Value) -> Option<Vec<Shape>> {
    let coordinates = &geometry["coordinates"];
    let each = |one: fn(&Value) -> Option<Shape>| coordinates.as_array()?.iter().map(one).collect();
    Some(match geometry["type"].as_str()? {
        "Polygon" => vec![Shape::Areas(vec![rings(coordinates)?])],
        "MultiPolygon" => {
            vec![Shape::Areas(coordinates.as_array()?.iter().map(rings).collect::<Option<Vec<_>>>()?)]
        }
        "LineString" => vec![Shape::Way(way(coordinates)?)],
        "MultiLineString" => return each(|one| way(one).map(Shape::Way)),
        "Point" => vec![Shape::Way(vec![pair(coordinates)?])],
        "MultiPoint" => return each(|one| Some(Shape::Way(vec![pair(one)?]))),
        _ => return None,
    })
}

fn rings(coordinates: &Value) -> Option<Vec<Vec<Pair>>> {
    let rings: Vec<_> = coordinates.as_array()?.iter().map(way).collect::<Option<_>>()?;
    (!rings.is_empty()).then_some(rings)
}

fn way(coordinates: &Value) -> Option<Vec<Pair>> {
    let way: Vec<Pair> = coordinates.as_array()?.iter().map(pair).collect::<Option<_>>()?;
    (!way.is_empty()).then_some(way)
}

/// A third number, the height, is left aside.
fn pair(coordinates: &Value) -> Option<Pair> {
    let numbers = coordinates.as_array()?;
    Some([numbers.first()?.as_f64()?, numbers.get(1)?.as_f64()?])
}

#[cfg(test)]
mod tests {
    use super::super::{Asked, Purpose, read};
    use crate::source::Source;
    use tautline_survey::boundary::{Boundary, Role, Shape};
    use tautline_survey::message::Message;

    fn boundary(text: &str) -> Result<Boundary, Message> {
        let source = Source { name: "a.geojson".into(), bytes: text.into() };
        read(&source, &[], &Asked::of(Purpose::Ground)).map(|found| found.boundary)
    }

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
            {"type":"Feature","properties":{"use":"keep out","buffer":15.5,"crossed":false},
             "geometry":{"type":"LineString","coordinates":[[0,0],[1,1]]}},
            {"type":"Feature","properties":{"use":"line","line":"K1"},
             "geometry":{"type":"LineString","coordinates":[[0,0],[1,1]]}},
            {"type":"Feature","properties":{"name":"gate"},"geometry":{"type":"Point","coordinates":[0,0]}}]}"#;
        let read = boundary(text).unwrap();
        assert_eq!((read.site.as_deref(), read.left_out), (Some("Invented"), vec![4]));
        let roles: Vec<Role> = read.parts.into_iter().map(|part| part.role).collect();
        let flat = Role::Stratum(Some("flat".into()));
        assert_eq!(
            roles,
            [flat, Role::KeepOut { buffer: 15_500, crossed: Some(false) }, Role::Line("K1".into())]
        );
    }

    #[test]
    fn what_is_not_understood_is_named() {
        let code = |text: &str| boundary(text).unwrap_err().code;
        assert_eq!(code("{"), "geojson-not-json");
        assert_eq!(code("[]"), "geojson-no-features");
        let place = r#""geometry":{"type":"Point","coordinates":[0,0]}"#;
        let with =
            |properties: &str| format!(r#"{{"type":"Feature","properties":{{{properties}}},{place}}}"#);
        assert_eq!(code(&with(r#""use":"lake""#)), "geojson-use");
        assert_eq!(code(&with(r#""use":"keep out","buffer":"wide""#)), "geojson-buffer");
        assert_eq!(code(&with(r#""use":"keep out","crossed":"perhaps""#)), "boundary-crossed");
        let curve = r#"{"type":"Feature","properties":null,"geometry":{"type":"GeometryCollection"}}"#;
        assert_eq!(code(curve), "geojson-shape");
        let text = r#"{"type":"Feature","geometry":{"type":"Polygon","coordinates":[[["a",0]]]}}"#;
        assert_eq!(code(text), "geojson-shape");
    }
}
