//! The pages under `docs/` name everything that can be written in a file, and what they show is read.

use tautline_exchange::headings::HEADINGS;
use tautline_exchange::protocol::{read, shipped, to_toml};
use tautline_exchange::{Options, Source};

const FILES: &str = include_str!("../../../docs/files.md");
const SHEET: &str = include_str!("../../../docs/typed-sheet.md");
const RULES: &str = include_str!("../../../docs/reading-rules.md");

/// The fenced examples of a page in one language.
fn examples(page: &str, language: &str) -> Vec<String> {
    let fence = format!("```{language}\n");
    page.split(&fence).skip(1).filter_map(|rest| rest.split("```").next()).map(str::to_owned).collect()
}

#[test]
fn every_plain_heading_stands_on_the_page() {
    for (_, headings) in HEADINGS {
        let plain = headings[0];
        assert!(FILES.contains(plain), "docs/files.md doesn't name “{plain}”");
    }
}

#[test]
fn every_example_is_read_and_nothing_in_it_is_wrong() {
    let examples = examples(FILES, "csv");
    assert_eq!(examples.len(), 8);
    for example in examples {
        let source = Source { name: "example.csv".into(), bytes: example.clone().into() };
        let read = tautline_exchange::read(&[source], &Options::default());
        assert_eq!(read.input.findings, [], "{example}");
        let things = read.input.visits.len()
            + read.input.plan.len()
            + read.input.plants.plants.len()
            + read.input.strata.len()
            + read.input.sites.len()
            + read.input.settlements.len()
            + read.goals.len();
        assert!(things > 0, "{example}");
    }
    for example in self::examples(RULES, "toml") {
        assert_eq!(read("example.toml", &example).1, [], "{example}");
    }
}

#[test]
fn every_shipped_protocol_and_every_rule_in_it_stands_on_the_page() {
    for (key, protocol) in shipped() {
        assert!(RULES.contains(&format!("`{key}`")), "docs/reading-rules.md doesn't name {key}");
        for rule in to_toml(&protocol).lines().filter_map(|line| line.split_once(" = ")) {
            assert!(
                RULES.contains(&format!("`{}`", rule.0)),
                "docs/reading-rules.md doesn't name {}",
                rule.0
            );
        }
    }
}

#[test]
fn every_typed_sheet_on_its_page_is_read_and_printed_back() {
    let examples = examples(SHEET, "sheet");
    assert_eq!(examples.len(), 8);
    for example in examples {
        let read = |text: &str| {
            let source = Source { name: "-".into(), bytes: text.into() };
            tautline_exchange::read(&[source], &Options::default())
        };
        let found = read(&example);
        assert_eq!(found.input.findings, [], "{example}");
        assert!(!found.input.visits.is_empty(), "{example}");
        let printed = tautline_exchange::sheet::print(&found.input).text;
        let again = tautline_exchange::sheet::print(&read(&printed).input).text;
        assert_eq!(again, printed, "{example}");
    }
}

/// Each mark and each word that the page explains is read as it says.
#[test]
fn every_mark_on_the_page_is_understood() {
    let rows: Vec<&str> =
        SHEET.lines().filter(|row| row.starts_with("| `") && row.contains("12-14")).collect();
    assert_eq!(rows.len(), 6);
    for row in rows {
        let example = row.rsplit('`').nth(1).expect("the last column is an example");
        let text = format!("Unit: in\nLine 1, 65 ft\nATCA {example}\n");
        let found =
            tautline_exchange::read(&[Source { name: "-".into(), bytes: text.into() }], &Options::default());
        assert_eq!(found.input.findings, [], "{row}");
    }
}
