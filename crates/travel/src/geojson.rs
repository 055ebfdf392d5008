//! Lines on a map, as GeoJSON.
//!
//! # Source
//! RFC 7946, The GeoJSON Format: §3.2 (a feature without a place has a null geometry), §4 (WGS 84, longitude first)

use crate::placed::{Placed, drawable};
use crate::{File, Whole};
use serde_json::{Value, json};
use tautline_survey::message::Message;
use tautline_survey::place::{Position, Told};

pub(crate) fn files(whole: &Whole) -> Result<Vec<File>, Message> {
    let lines = drawable(whole, |told| *told != Told::Withheld)?;
    let features: Vec<Value> = lines.iter().map(feature).collect();
    let collection = json!({ "type": "FeatureCollection", "features": features });
    Ok(vec![File::text("lines.geojson", format!("{collection:#}\n"))])
}

fn feature(line: &Placed) -> Value {
    let point = |position: Position| {
        let [latitude, longitude] = position.degrees();
        json!([longitude, latitude])
    };
    let (geometry, what, uncertainty) = match line.told {
        Told::Exact(start, Some(end)) => {
            (json!({ "type": "LineString", "coordinates": [point(start), point(end)] }), "exact", None)
        }
        Told::Exact(start, None) => (json!({ "type": "Point", "coordinates": point(start) }), "exact", None),
        Told::Blurred(middle, metres) => {
            (json!({ "type": "Point", "coordinates": point(middle) }), "blurred", Some(metres))
        }
        Told::Withheld => (Value::Null, "withheld", None),
    };
    json!({
        "type": "Feature",
        "properties": {
            "use": "line",
            "site": line.site,
            "line": line.line,
            "stratum": line.stratum,
            "plot": line.plot,
            "date": line.date.map(|date| date.to_string()),
            "canopy_cover": line.cover,
            "place": what,
            "place_uncertainty_m": uncertainty,
        },
        "geometry": geometry,
    })
}
