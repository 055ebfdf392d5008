//! Every worked example of the handbook, worked out: what stands `by hand` by a small calculator that knows nothing of the
//! engine, what an `example` gives by the engine and the survey, both to the digits that are printed.

mod by_hand;
mod example;
mod printed;
mod works;

use example::{Example, blocks};
use std::collections::BTreeSet;
use std::path::Path;

/// A page's own file, for a message.
fn place(page: &str, row: usize) -> String {
    format!("docs/handbook/{page}.md:{row}")
}

#[test]
fn every_example_gives_what_its_page_prints() {
    let (mut figures, mut wrong) = (0, Vec::new());
    for page in tautline_handbook::pages() {
        let source = tautline_handbook::source(&page.name).expect("a page has a source");
        let examples: Vec<_> =
            blocks(source).into_iter().filter(|block| block.kind.starts_with("example ")).collect();
        assert!(!examples.is_empty(), "{} has no example", page.name);
        for block in examples {
            let example =
                Example::read(&block).unwrap_or_else(|why| panic!("{}: {why}", place(&page.name, block.row)));
            assert!(!example.gives.is_empty(), "{}: gives nothing", place(&page.name, block.row));
            let answer = works::out(&example);
            for (row, key, value) in &example.gives {
                let found = answer(key).map_or_else(|why| why, |found| found.like(value));
                if found != *value {
                    wrong.push(format!("{}: {key}: {value}, worked out: {found}", place(&page.name, *row)));
                }
                figures += 1;
            }
            let unread = example.unread();
            assert!(unread.is_empty(), "{}: nothing uses {unread:?}", place(&page.name, block.row));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(figures > 100, "{figures} figures");
}

#[test]
fn what_is_done_by_hand_comes_out() {
    let (mut sums, mut wrong) = (0, Vec::new());
    for page in tautline_handbook::pages() {
        let source = tautline_handbook::source(&page.name).expect("a page has a source");
        let by_hand: Vec<_> = blocks(source).into_iter().filter(|block| block.kind == "by hand").collect();
        assert!(!by_hand.is_empty(), "{} does nothing by hand", page.name);
        for block in by_hand {
            for (row, line) in &block.rows {
                wrong.extend(
                    by_hand::check(line)
                        .err()
                        .map(|why| format!("{}: {line}: {why}", place(&page.name, *row))),
                );
                sums += 1;
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(sums > 80, "{sums} sums");
}

/// What a reader needs to find on each page, under the same headings.
#[test]
fn every_page_says_what_it_must() {
    for page in tautline_handbook::pages() {
        assert!(!page.title.is_empty() && !page.part.is_empty() && !page.about.is_empty(), "{}", page.name);
        for heading in ["The formula", "Source", "Worked example", "When not to trust it"] {
            assert!(page.text.contains(&format!("\n{heading}\n---")), "{} lacks “{heading}”", page.name);
        }
        let markup = format!("<page>{}</page>", page.html.replace("&nbsp;", " "));
        let parsed = roxmltree::Document::parse(&markup).unwrap_or_else(|why| panic!("{}: {why}", page.name));
        for link in parsed.descendants().filter_map(|node| node.attribute("href")) {
            let known =
                link.strip_prefix("#/handbook/").is_none_or(|to| tautline_handbook::named(to).is_some());
            assert!(known, "{} leads to {link}", page.name);
        }
    }
}

#[test]
fn the_contents_name_every_page_in_its_order() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs/handbook");
    let contents = std::fs::read_to_string(folder.join("README.md")).expect("there are contents");
    let at = |name: &str| {
        contents.find(&format!("({name}.md)")).unwrap_or_else(|| panic!("{name} isn't in the contents"))
    };
    let places: Vec<usize> = tautline_handbook::pages().iter().map(|page| at(&page.name)).collect();
    assert!(places.is_sorted(), "the contents and the command name pages in one order");
    let files: BTreeSet<String> = std::fs::read_dir(folder)
        .expect("the handbook is there")
        .map(|entry| entry.expect("a file").file_name().to_string_lossy().into_owned())
        .filter(|name| name != "README.md")
        .collect();
    let pages: BTreeSet<String> =
        tautline_handbook::pages().iter().map(|page| format!("{}.md", page.name)).collect();
    assert_eq!(files, pages);
}

#[test]
fn a_wrong_digit_is_found() {
    assert!(by_hand::check("mean: (20 + 30 + 40) / 3 = 30").is_ok());
    assert!(by_hand::check("mean: (20 + 30 + 40) / 3 = 30.1").is_err());
    assert!(by_hand::check("root: √(2² + 12) = 4.00").is_ok());
    assert!(by_hand::check("odds: ln(0.2 / 0.8) = −1.3863").is_ok());
    assert!(by_hand::check("back: 1 / (1 + e^(−(−1.386294))) = 20.0 %").is_ok());
    assert!(by_hand::check("no answer: 3 + 4").is_err());
}
