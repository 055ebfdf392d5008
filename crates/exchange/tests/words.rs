//! Every code that this room sends has words in the catalogue.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

fn sources(folder: &Path, found: &mut Vec<(String, String)>) {
    for entry in fs::read_dir(folder).expect("the folder can be read") {
        let path = entry.expect("the folder can be read").path();
        if path.is_dir() {
            sources(&path, found);
        } else if path.extension().is_some_and(|ending| ending == "rs") && !path.ends_with("tests.rs") {
            found.push((path.display().to_string(), fs::read_to_string(&path).expect("source is UTF-8")));
        }
    }
}

/// Texts in double quotes outside of comments and embedded tests.
fn literals(text: &str) -> BTreeSet<String> {
    let code = text.split("#[cfg(test)]").next().unwrap_or("");
    code.lines()
        .filter(|line| !line.trim_start().starts_with("//"))
        .flat_map(|line| line.split('"').skip(1).step_by(2).map(str::to_owned).collect::<Vec<_>>())
        .collect()
}

/// Codes are two words or more in small letters with hyphens between them.
fn is_code(text: &str) -> bool {
    text.contains('-')
        && text.split('-').all(|word| !word.is_empty() && word.bytes().all(|b| b.is_ascii_lowercase()))
}

#[test]
fn every_code_has_words() {
    let room = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut files = Vec::new();
    sources(&room.join("src"), &mut files);
    let of = |name: &str| {
        let (_, text) =
            files.iter().find(|(file, _)| file.ends_with(name)).expect("the file is in this room");
        literals(text)
    };
    let not_codes: BTreeSet<String> = of("keys.rs").into_iter().chain(of("shipped.rs")).collect();
    let codes: BTreeSet<String> = files
        .iter()
        .flat_map(|(_, text)| literals(text))
        .filter(|text| is_code(text) && !not_codes.contains(text))
        .collect();

    let catalogue = room.join("../words/messages/en");
    let mut keys = BTreeSet::new();
    for name in
        ["aim.ftl", "exchange.ftl", "lesson.ftl", "notebook.ftl", "plan.ftl", "practice.ftl", "survey.ftl"]
    {
        let text = fs::read_to_string(catalogue.join(name)).unwrap();
        keys.extend(text.lines().filter_map(|line| line.split_once(" =")).map(|(key, _)| key.to_owned()));
    }
    let silent: Vec<&String> = codes.difference(&keys).collect();
    assert!(silent.is_empty(), "without words: {silent:?}");
    // the scan itself sees what it should: one code of each kind of place
    for code in ["row-too-long", "length-no-unit", "protocol-rule-misspelt", "goal-no-relation", "cell-empty"]
    {
        assert!(codes.contains(code), "{code} was not seen");
    }
}
