//! What changed between two revisions of a record, for people.

use super::payload::Payload;
use crate::message::{Message, Value as Said};
use crate::visit::{Extent, Intercept, State, Visit};
use serde::Serialize;
use serde_json::{Map, Value};
use std::collections::BTreeMap;

/// What a revision did to what stood before it: begun, taken back, or changed in these places.
pub fn changes(before: Option<&Payload>, after: Option<&Payload>) -> Vec<Message> {
    match (before, after) {
        (None, None) => Vec::new(),
        (None, Some(Payload::Visit(visit))) => {
            vec![Message::new("change-begun-visit").with("readings", visit.intercepts.len())]
        }
        (None, Some(_)) => vec![Message::new("change-begun")],
        (Some(_), None) => vec![Message::new("change-taken-back")],
        (Some(before), Some(after)) => between(&before.without_places(), &after.without_places()),
    }
}

fn between(before: &Payload, after: &Payload) -> Vec<Message> {
    let mut found = match (before, after) {
        (Payload::Visit(before), Payload::Visit(after)) => {
            let mut found = fields(&heading(before), &heading(after));
            found.extend(readings(&before.intercepts, &after.intercepts));
            found
        }
        (Payload::Plants(before), Payload::Plants(after)) => {
            let by_code = |list: &[crate::plants::Plant]| -> Map<String, Value> {
                list.iter()
                    .filter_map(|plant| Some((plant.code.clone(), serde_json::to_value(plant).ok()?)))
                    .collect()
            };
            fields(&Value::Object(by_code(&before.plants)), &Value::Object(by_code(&after.plants)))
        }
        (before, after) => fields(&before.to_json(), &after.to_json()),
    };
    if found.is_empty() {
        found.push(Message::new("change-nothing"));
    }
    found
}

/// A visit without its readings.
fn heading(visit: &Visit) -> Value {
    Payload::Visit(Box::new(Visit { intercepts: Vec::new(), ..visit.clone() })).to_json()
}

/// Readings that are alike are the same wherever they stand. Of what is left, one reading became another where they
/// share an edge and the species, or else their id and one of the two.
fn readings(before: &[Intercept], after: &[Intercept]) -> Vec<Message> {
    let alike =
        |a: &Intercept, b: &Intercept| Intercept { id: 0, ..a.clone() } == Intercept { id: 0, ..b.clone() };
    let mut added: Vec<&Intercept> = after.iter().collect();
    let mut removed: Vec<&Intercept> = Vec::new();
    for reading in before {
        match added.iter().position(|other| alike(reading, other)) {
            Some(at) => {
                added.remove(at);
            }
            None => removed.push(reading),
        }
    }
    let mut found = Vec::new();
    for reading in removed {
        let by_edge =
            added.iter().position(|other| other.species == reading.species && share_an_edge(reading, other));
        let by_id = || {
            let same =
                |other: &&Intercept| other.species == reading.species || other.extent == reading.extent;
            added.iter().position(|other| other.id == reading.id && same(other))
        };
        if let Some(at) = by_edge.or_else(by_id) {
            let changed = added.remove(at);
            let places = fields(&spread(reading), &spread(changed)).into_iter().map(Said::from).collect();
            let message = Message::new("change-reading").with("reading", called(reading));
            found.push(message.with("changes", Said::List(places)));
        } else {
            found.push(Message::new("change-reading-removed").with("reading", called(reading)));
        }
    }
    found.extend(
        added.into_iter().map(|one| Message::new("change-reading-added").with("reading", called(one))),
    );
    found
}

fn share_an_edge(one: &Intercept, other: &Intercept) -> bool {
    match (&one.extent, &other.extent) {
        (Extent::Edges { start, stop }, Extent::Edges { start: from, stop: to }) => {
            start.length() == from.length() || stop.length() == to.length()
        }
        _ => false,
    }
}

/// A reading with its edges as fields of their own.
fn spread(reading: &Intercept) -> Value {
    let mut fields = json(reading);
    if let Value::Object(map) = &mut fields {
        map.remove("extent");
        match &reading.extent {
            Extent::Edges { start, stop } => {
                map.insert("start".to_owned(), json(start));
                map.insert("stop".to_owned(), json(stop));
            }
            Extent::Length(length) => {
                map.insert("length".to_owned(), json(length));
            }
        }
    }
    fields
}

/// A reading in a few words.
fn called(reading: &Intercept) -> Message {
    let state = Said::Word(if reading.state == State::Live { "live" } else { "dead" });
    let species: Said = if reading.species.is_empty() {
        Said::Word("unnamed-plants")
    } else {
        reading.species.as_str().into()
    };
    let message = match &reading.extent {
        Extent::Edges { start, stop } => Message::new("reading-edges")
            .with("start", shown("", &json(start)))
            .with("stop", shown("", &json(stop))),
        Extent::Length(length) => Message::new("reading-length").with("length", shown("", &json(length))),
    };
    message.with("species", species).with("state", state)
}

/// The fields in which two records differ.
fn fields(before: &Value, after: &Value) -> Vec<Message> {
    let (mut old, mut new) = (BTreeMap::new(), BTreeMap::new());
    flat("", before, &mut old);
    flat("", after, &mut new);
    let names: std::collections::BTreeSet<&String> = old.keys().chain(new.keys()).collect();
    names
        .into_iter()
        .filter(|&name| name != "id" && old.get(name) != new.get(name))
        .map(|name| {
            let said = |side: &BTreeMap<String, String>| {
                side.get(name).map_or(Said::Word("change-none"), |text| Said::Text(text.clone()))
            };
            Message::new("change-field")
                .with("field", name.replace(['_', '-'], " "))
                .with("before", said(&old))
                .with("after", said(&new))
        })
        .collect()
}

/// A record's fields as text, those of nested parts with their path.
fn flat(path: &str, value: &Value, into: &mut BTreeMap<String, String>) {
    match value {
        Value::Object(map) if !map.contains_key("nm") && (map.len() > 1 || path.is_empty()) => {
            for (key, value) in map {
                flat(&format!("{path}{}{key}", if path.is_empty() { "" } else { " " }), value, into);
            }
        }
        value => {
            into.insert(path.to_owned(), shown(path, value));
        }
    }
}

/// A value as a person wrote it or would write it.
fn shown(key: &str, value: &Value) -> String {
    match value {
        Value::Null => String::new(),
        Value::Bool(yes) => yes.to_string(),
        Value::String(text) => text.clone(),
        Value::Number(number) => {
            let sign = if number.as_i64().is_some_and(|number| number < 0) { "−" } else { "" };
            let whole = number.as_u64().or_else(|| Some(number.as_i64()?.unsigned_abs()));
            whole.map_or_else(|| number.to_string(), |whole| format!("{sign}{}", scaled(key, whole)))
        }
        Value::Array(items) => items.iter().map(|item| shown(key, item)).collect::<Vec<_>>().join(", "),
        Value::Object(map) => {
            match (map.get("typed").and_then(Value::as_str), map.get("unit").and_then(Value::as_str)) {
                (Some(typed), Some(unit)) if typed.ends_with(|c: char| c.is_ascii_digit()) => {
                    format!("{typed} {unit}")
                }
                (Some(typed), _) => typed.to_owned(),
                _ => map
                    .iter()
                    .map(|(key, item)| format!("{key} {}", shown(key, item)))
                    .collect::<Vec<_>>()
                    .join(", "),
            }
        }
    }
}

/// Records hold whole numbers of small units; people write larger ones.
fn scaled(key: &str, number: u64) -> String {
    let (decimals, unit) = match key.rsplit(' ').next().unwrap_or(key) {
        "grade" | "at-least" | "at-most" | "between" => (4, " %"),
        "degrees" => (4, "°"),
        "latitude" | "longitude" => (9, "°"),
        "confidence_per_mille" => (1, " %"),
        "area" => (10, " ha"),
        _ => (0, ""),
    };
    let divisor = 10_u64.pow(decimals);
    let part = format!("{:0width$}", number % divisor, width = decimals as usize);
    let part = part.trim_end_matches('0');
    let whole = number / divisor;
    if part.is_empty() || decimals == 0 { format!("{whole}{unit}") } else { format!("{whole}.{part}{unit}") }
}

fn json(value: &impl Serialize) -> Value {
    serde_json::to_value(value).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::{PlannedLine, Slope, Stratum};

    #[test]
    fn numbers_are_shown_as_people_write_them() {
        assert_eq!(scaled("at-least", 152_500), "15.25 %");
        assert_eq!(scaled("area", 32_000_000_000), "3.2 ha");
        assert_eq!(shown("start longitude", &(-113_250_000_001_i64).into()), "−113.250000001°");
        assert_eq!(scaled("confidence_per_mille", 975), "97.5 %");
        assert_eq!(scaled("set_aside", 10), "10");
    }

    /// A row taken out moves the ids of those below it; they are still the same readings.
    #[test]
    fn a_row_taken_out_and_an_edge_moved_are_told_apart() {
        use crate::measure::Measure;
        use tautline_engine::length::Unit;
        let inch = |count| Measure::whole(count, Unit::Inch);
        let reading = |id, species: &str, start, stop| Intercept {
            id,
            species: species.to_owned(),
            extent: Extent::Edges { start: inch(start), stop: inch(stop) },
            state: State::Live,
            plant: None,
            height: None,
            width: None,
            note: String::new(),
            place: None,
        };
        let before = [reading(1, "ATCA", 1, 4), reading(2, "KRLA", 9, 12), reading(3, "KRLA", 20, 25)];
        let after = [reading(1, "KRLA", 9, 13), reading(2, "KRLA", 20, 25)];
        let found = readings(&before, &after);
        let codes: Vec<&str> = found.iter().map(|change| change.code).collect();
        assert_eq!(codes, ["change-reading-removed", "change-reading"]);
        let Said::List(fields) = &found[1].values[1].1 else { panic!("a list of fields") };
        assert_eq!(fields.len(), 1);
    }

    #[test]
    fn a_field_that_differs_is_named() {
        let line = |slope| {
            Payload::Line(PlannedLine {
                site: "Invented Flat".into(),
                line: "1".into(),
                length: None,
                stratum: None,
                plot: None,
                judgement: None,
                slope,
                permission: None,
            })
        };
        let found = changes(Some(&line(None)), Some(&line(Some(Slope::Degrees(70_000)))));
        assert_eq!(found.len(), 1);
        assert_eq!(found[0].values[2], ("after", Said::Text("degrees 7°".into())));
        assert_eq!(changes(Some(&line(None)), Some(&line(None)))[0].code, "change-nothing");
        let stratum =
            |area| Payload::Stratum(Stratum { site: "Invented Flat".into(), name: "flat".into(), area });
        let found = changes(Some(&stratum(10_000_000_000)), Some(&stratum(25_000_000_000)));
        assert_eq!(found[0].values[2], ("after", Said::Text("2.5 ha".into())));
    }
}
