//! The description of the interface is the one that stands in `docs/`.

#[test]
fn the_description_in_docs_is_the_interface() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../docs/openapi.json");
    let kept: serde_json::Value = serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    let made = tautline_server::description();
    // as a person would mend it
    assert!(kept == made, "mend it: cargo run -p tautline-server --example openapi > docs/openapi.json");
    // every reference leads somewhere
    let text = made.to_string();
    for name in text.split("\"#/components/schemas/").skip(1).filter_map(|rest| rest.split('"').next()) {
        assert!(made["components"]["schemas"][name].is_object(), "{name}");
    }
    assert_eq!(made["openapi"], "3.1.0");
}
