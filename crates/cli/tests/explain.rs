//! The method handbook as the command prints it.

#![expect(clippy::unwrap_used, reason = "a test that can't call the command has failed")]

mod call;

use call::tautline;

#[test]
fn a_page_is_printed_by_its_name_and_found_by_its_words() {
    let said = |arguments: &[&str]| {
        let output = tautline(arguments, "");
        assert!(output.status.success(), "{output:?}");
        String::from_utf8(output.stdout).unwrap()
    };
    let page = said(&["explain", "verdict"]);
    assert!(page.starts_with("The verdict\n===========\n"), "{page}");
    assert!(page.contains("  goal: at least 15 %\n"), "{page}");
    assert!(page.lines().all(|row| row.chars().count() <= 100), "{page}");
    assert_eq!(said(&["explain", "Standard", "error"]), said(&["explain", "standard-error"]));
    let found = said(&["explain", "stakes"]);
    assert!(found.lines().any(|row| row.trim_start().starts_with("change ")), "{found}");
    let all = said(&["explain"]);
    assert!(all.contains("\nThe line\n  gap-rule") && all.contains("bearings"), "{all}");
}

#[test]
fn what_no_page_has_is_said_with_the_way_out() {
    let output = tautline(&["explain", "xylophone"], "");
    assert_eq!(output.status.code(), Some(3));
    assert!(String::from_utf8_lossy(&output.stderr).contains("tautline explain"));
}

#[test]
fn who_reads_spanish_is_told_that_the_pages_are_english() {
    let output = tautline(&["explain", "gaps", "--language", "es"], "");
    assert!(String::from_utf8_lossy(&output.stderr).contains("en inglés"), "{output:?}");
    assert!(String::from_utf8_lossy(&output.stdout).starts_with("Gaps between shrubs"));
}

/// What a report says of its own words names pages that there are.
#[test]
fn the_pages_that_a_report_names_are_there() {
    let folder = tempfile::tempdir().unwrap();
    let (demo, page) = (folder.path().join("demo"), folder.path().join("page.html"));
    let (demo, page) = (demo.to_str().unwrap(), page.to_str().unwrap());
    assert!(tautline(&["demo", demo], "").status.success());
    tautline(&["assess", demo, "--goal", "at least 15 %", "--report", page], "");
    let page = std::fs::read_to_string(page).unwrap();
    let named: Vec<&str> =
        page.split("data-page=\"").skip(1).filter_map(|rest| rest.split('"').next()).collect();
    assert!(named.len() > 4, "{named:?}");
    for name in named {
        let said = tautline(&["explain", name], "");
        assert!(said.status.success() && !said.stdout.is_empty(), "{name}");
    }
}
