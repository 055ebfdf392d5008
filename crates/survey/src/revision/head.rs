//! Head matter read from JSON. Every head of a notebook is read when it is opened, and a derived reader that keeps unknown
//! fields holds everything back until it has seen all of it, which takes several times as long.

use super::{Action, HeadMatter};
use core::fmt;
use serde::de::{Deserialize, Deserializer, Error, MapAccess, Visitor};
use serde_json::{Map, Value};

/// The fields that this version knows, and any other by its name.
#[derive(serde::Deserialize)]
#[serde(field_identifier, rename_all = "snake_case")]
enum Field {
    Id,
    Record,
    Kind,
    Version,
    Parents,
    Action,
    Device,
    Counter,
    Time,
    ContentSha256,
    Other(String),
}

struct Fields;

impl<'de> Visitor<'de> for Fields {
    type Value = HeadMatter;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("head-matter")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<HeadMatter, A::Error> {
        let (mut id, mut record, mut kind, mut version, mut parents) = (None, None, None, None, None);
        let (mut action, mut device, mut counter, mut time, mut content) =
            (None::<Action>, None, None, None, None);
        let mut more = Map::new();
        while let Some(field) = map.next_key()? {
            match field {
                Field::Id => once(&mut id, "id", &mut map)?,
                Field::Record => once(&mut record, "record", &mut map)?,
                Field::Kind => once(&mut kind, "kind", &mut map)?,
                Field::Version => once(&mut version, "version", &mut map)?,
                Field::Parents => once(&mut parents, "parents", &mut map)?,
                Field::Action => once(&mut action, "action", &mut map)?,
                Field::Device => once(&mut device, "device", &mut map)?,
                Field::Counter => once(&mut counter, "counter", &mut map)?,
                Field::Time => once(&mut time, "time", &mut map)?,
                Field::ContentSha256 => once(&mut content, "content_sha256", &mut map)?,
                Field::Other(name) => {
                    more.insert(name, map.next_value::<Value>()?);
                }
            }
        }
        Ok(HeadMatter {
            id: id.ok_or_else(|| A::Error::missing_field("id"))?,
            record: record.ok_or_else(|| A::Error::missing_field("record"))?,
            kind: kind.ok_or_else(|| A::Error::missing_field("kind"))?,
            version: version.ok_or_else(|| A::Error::missing_field("version"))?,
            parents: parents.ok_or_else(|| A::Error::missing_field("parents"))?,
            action: action.ok_or_else(|| A::Error::missing_field("action"))?,
            device: device.ok_or_else(|| A::Error::missing_field("device"))?,
            counter: counter.ok_or_else(|| A::Error::missing_field("counter"))?,
            time: time.ok_or_else(|| A::Error::missing_field("time"))?,
            content_sha256: content.ok_or_else(|| A::Error::missing_field("content_sha256"))?,
            more,
        })
    }
}

/// Reads a field that stands once.
fn once<'de, T: Deserialize<'de>, A: MapAccess<'de>>(
    field: &mut Option<T>,
    name: &'static str,
    map: &mut A,
) -> Result<(), A::Error> {
    if field.is_some() {
        return Err(A::Error::duplicate_field(name));
    }
    *field = Some(map.next_value()?);
    Ok(())
}

impl<'de> Deserialize<'de> for HeadMatter {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_map(Fields)
    }
}
