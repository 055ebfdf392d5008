//! The interface described by OpenAPI 3.1: the routes by themselves, the messages by the schemas of their own types.

use crate::api::{Health, Lacking, Versions, routes};
use crate::fault::Refusal;
use schemars::generate::SchemaSettings;
use serde_json::{Value, json};
use tautline_survey::sync::{Answer, Ask};

/// The description of the interface.
///
/// # Source
/// OpenAPI Specification 3.1.0
pub fn description() -> Value {
    let (_, api) = routes().split_for_parts();
    // a description has text for keys, so it can be written
    let mut whole = serde_json::to_value(api).unwrap_or_default();
    let mut generator = SchemaSettings::draft2020_12()
        .with(|settings| settings.definitions_path = "/components/schemas".into())
        .into_generator();
    generator.subschema_for::<Ask>();
    generator.subschema_for::<Answer>();
    generator.subschema_for::<Refusal>();
    generator.subschema_for::<Health>();
    generator.subschema_for::<Versions>();
    generator.subschema_for::<Lacking>();
    whole["info"] = json!({
        "title": "tautline",
        "version": env!("CARGO_PKG_VERSION"),
        "license": { "name": "MIT OR Apache-2.0" },
    });
    whole["components"] = json!({ "schemas": generator.take_definitions(true) });
    whole
}
