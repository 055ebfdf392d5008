//! Every text in the sources that is a code of the catalogue has words there.

use std::fs;
use std::path::Path;
use tautline_words::Words;

const FAMILIES: [&str; 10] = [
    "report-", "column-", "title-", "verdict-", "heading-", "units-", "explain-", "finding-", "methods-",
    "rule-",
];

#[test]
fn every_code_has_words() {
    let words = Words::english();
    let mut checked = 0;
    let mut folders = vec![Path::new(env!("CARGO_MANIFEST_DIR")).join("src")];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
                continue;
            }
            if path.extension().is_none_or(|extension| extension != "rs") {
                continue;
            }
            let text = fs::read_to_string(&path).unwrap();
            for literal in text.split('"').skip(1) {
                let is_code = FAMILIES.iter().any(|family| literal.starts_with(family) && literal != *family)
                    && literal.bytes().all(|b| b.is_ascii_lowercase() || b == b'-');
                if is_code {
                    checked += 1;
                    assert!(words.has(literal), "{}: no words for “{literal}”", path.display());
                }
            }
        }
    }
    assert!(checked > 150, "only {checked} codes were found");
}
