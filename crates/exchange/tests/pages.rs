//! The pages under `docs/` name everything that can be written in a file, and what they show is read.

use tautline_exchange::headings::HEADINGS;
use tautline_exchange::protocol::{read, shipped, to_toml};
use tautline_exchange::{Options, Source};

const FILES: &str = include_str!("../../../docs/files.md");
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
    assert_eq!(examples.len(), 6);
    for example in examples {
        let source = Source { name: "example.csv".into(), bytes: example.clone().into() };
        let read = tautline_exchange::read(&[source], &Options::default());
        assert_eq!(read.input.findings, [], "{example}");
        let things = read.input.visits.len()
            + read.input.plan.len()
            + read.input.plants.plants.len()
            + read.input.strata.len()
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
