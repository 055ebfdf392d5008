//! The list of checks and the page that describes them are the same list.

use tautline_survey::check::{KINDS, Way};
use tautline_survey::finding::Weight;

const PAGE: &str = include_str!("../../../docs/checks.md");

/// Rows of the page's tables that begin with a code: code, weight, what settles it.
fn rows() -> Vec<(&'static str, Weight, Way)> {
    let (checks, _) =
        PAGE.split_once("## False alarms").expect("the page tells how often checks speak in vain");
    checks
        .lines()
        .filter_map(|line| {
            let (code, rest) = line.strip_prefix("| `")?.split_once("` | ")?;
            let cells: Vec<&str> = rest.trim_end_matches(" |").split(" | ").collect();
            let weight = match cells[1] {
                "must settle" => Weight::MustSettle,
                "have a look" => Weight::HaveALook,
                other => panic!("{code}: {other}"),
            };
            Some((code, weight, if cells[2].contains("a word") { Way::Word } else { Way::Correction }))
        })
        .collect()
}

#[test]
fn the_page_lists_every_check_in_order() {
    let listed: Vec<_> = KINDS.iter().map(|kind| (kind.code, kind.weight, kind.way)).collect();
    assert_eq!(rows(), listed);
}
