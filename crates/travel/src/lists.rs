//! The plant list and the protocols alone, as files that tautline reads.

use crate::{File, Whole};
use std::collections::BTreeSet;
use tautline_exchange::protocol::to_toml;
use tautline_exchange::table::row;
use tautline_survey::message::Message;

pub(crate) fn plants(whole: &Whole) -> Result<Vec<File>, Message> {
    let plants = &whole.input.plants.plants;
    if plants.is_empty() {
        return Err(Message::new("export-no-such-list"));
    }
    let rows = plants.iter().map(|plant| {
        let groups = plant.groups.join(" ");
        row(&[&plant.code, &plant.name, &plant.common, plant.form.word(), &groups, &plant.key_features])
    });
    let heads = row(&["code", "scientific name", "common name", "form", "groups", "key features"]);
    Ok(vec![File::text("plants.csv", heads + &rows.collect::<String>())])
}

pub(crate) fn protocols(whole: &Whole) -> Result<Vec<File>, Message> {
    if whole.input.protocols.is_empty() {
        return Err(Message::new("export-no-such-list"));
    }
    let mut taken = BTreeSet::new();
    let files = whole.input.protocols.iter().map(|(fingerprint, protocol)| {
        let plain = |c: char| if c.is_alphanumeric() { c.to_ascii_lowercase() } else { '-' };
        let name: String = protocol.name.chars().take(60).map(plain).collect();
        let name = name.trim_matches('-').to_owned();
        // two protocols of one name, or none: the fingerprint's beginning tells them apart
        let name = if name.is_empty() || !taken.insert(name.clone()) {
            format!("{name}-{}", fingerprint.chars().take(8).collect::<String>()).trim_matches('-').to_owned()
        } else {
            name
        };
        File::text(&format!("{name}.toml"), to_toml(protocol))
    });
    Ok(files.collect())
}
