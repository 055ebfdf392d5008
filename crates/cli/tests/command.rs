//! The command as a person uses it: what it prints, and how it ends.

#![expect(clippy::unwrap_used, reason = "a test that can't call the command has failed")]

mod call;

use call::tautline;
use std::process::Output;

fn text(output: &Output) -> String {
    String::from_utf8(output.stdout.clone()).unwrap().replace('\u{a0}', " ")
}

fn folder(name: &str) -> std::path::PathBuf {
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    let _ = std::fs::remove_dir_all(&folder);
    folder
}

/// Common practice, no source: 29 + 44 = 73 in of a 65-ft line, 780 in, is 9.36 %.
const SHEET: &str = "site,line,line length,length (in)\nInvented,1,65 ft,5\nInvented,1,65 ft,2.5\nInvented,1,65 ft,2.5\n\
    Invented,1,65 ft,5\nInvented,1,65 ft,10.5\nInvented,1,65 ft,3.5\nInvented,1,65 ft,16\nInvented,1,65 ft,17\n\
    Invented,1,65 ft,3.5\nInvented,1,65 ft,2\nInvented,1,65 ft,5.5\n";

#[test]
fn the_work_on_paper_of_the_check_value() {
    let output = tautline(&["cover", "-", "--protocol", "live-canopy-2.5in", "--work"], SHEET);
    assert_eq!(output.status.code(), Some(0));
    let printed = text(&output);
    for row in [
        "5 + 2.5 + 2.5 + 5 + 10.5 + 3.5 = 29",
        "16 + 17 + 3.5 + 2 + 5.5 = 44",
        "together: 29 + 44 = 73 in",
        "line: 65 × 12 = 780 in",
        "73 ÷ 780 = 0.09359, that is 9.36 %, rounded last",
    ] {
        assert!(printed.contains(row), "“{row}” is not in\n{printed}");
    }
}

/// 900 rows with letters for a number: every one of them is counted, few are printed, and the table to sign has all.
#[test]
fn a_slip_in_hundreds_of_rows_is_said_a_few_times_and_counted() {
    let row = |row: usize| format!("Invented,{},65 ft,x{row}\n", row % 9 + 1);
    let rows = (0..900).map(row).collect::<Vec<_>>().concat();
    let sheet = format!("site,line,line length,length (in)\n{rows}");
    let printed = text(&tautline(&["check", "-"], &sheet));
    assert!(printed.lines().count() < 120, "{printed}");
    let printed = printed.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(printed.contains("The same was found 880 times more, in rows 22–901."), "{printed}");
    assert!(printed.contains("909 findings must be settled"), "{printed}");
    let table = text(&tautline(&["check", "-", "--csv"], &sheet));
    assert_eq!(table.matches("\nlength-not-a-number,").count(), 900, "{table}");
    let cover = text(&tautline(&["cover", "-"], &sheet));
    assert!(cover.lines().count() < 160, "{cover}");
}

/// 20 m with canopy at 3 to 4 m and at 10 to 12 m: gaps of 3 m (cut off), 6 m and 8 m (cut off), 17 of 20 m in all.
#[test]
fn gaps_are_listed_and_sorted_into_classes() {
    let sheet =
        "line,line length,slope (%),species,start (m),stop (m)\n1,20 m,75,AAAA,3,4\n1,20 m,75,AAAA,10,12\n";
    let count = ["--count", "AAAA", "--gaps"];
    let printed = text(&tautline(&[&["cover", "-"], &count[..]].concat(), sheet));
    assert!(
        printed.contains("0 m to 3 m (3 m or more, cut off by the line's end), 4 m to 10 m (6 m)"),
        "{printed}"
    );
    let row = |printed: &str| printed.lines().find(|row| row.starts_with("over 200 cm")).unwrap().to_owned();
    let cells: Vec<String> = row(&printed).split_whitespace().skip(3).map(str::to_owned).collect();
    assert_eq!(cells, ["3", "2", "85.0", "%"]);
    // from 4 m to 6.5 m: 2.5 m along the ground, 2 m on the level, which still belongs to the class up to 200 cm
    let two = sheet.replace("10,12", "6.5,20");
    let classes = |more: &[&str]| -> Vec<String> {
        let printed = text(&tautline(&[&["cover", "-"], &count[..], more].concat(), &two));
        let rows = printed.lines().filter(|row| row.contains("200 cm"));
        rows.filter_map(|row| row.split("cm").last()?.split_whitespace().next().map(str::to_owned)).collect()
    };
    assert_eq!(classes(&[]), ["0", "2"]);
    assert_eq!(classes(&["--on-the-level"]), ["1", "1"]);
}

#[test]
fn data_is_json_and_delimited_text() {
    let json = tautline(&["cover", "-", "--json"], SHEET);
    let value: serde_json::Value = serde_json::from_slice(&json.stdout).unwrap();
    assert_eq!(value["format"], "tautline.cover");
    assert_eq!(value["version"], 1);
    assert_eq!(value["lines"][0]["canopy"]["low_nm"], 73 * 25_400_000_i64);
    let csv = text(&tautline(&["cover", "-", "--csv"], SHEET));
    assert!(csv.lines().nth(1).unwrap().contains(",19812,1854.2,1854.2,"), "{csv}");
}

/// A line of 10 m with canopy from 2 to 3 m: a gap of 2 m and one of 7 m, both cut off by the line's ends.
#[test]
fn gap_classes_are_settable() {
    let sheet = "site,line,line length,start (m),stop (m)\nInvented,1,10 m,2,3\n";
    let classes = |arguments: &[&str]| -> serde_json::Value {
        let output = tautline(&[&["cover", "-", "--json"], arguments].concat(), sheet);
        let value: serde_json::Value = serde_json::from_slice(&output.stdout).unwrap();
        value["lines"][0]["gap_classes"].clone()
    };
    assert_eq!(classes(&[]).as_array().unwrap().len(), 4);
    let own = classes(&["--gap-classes", "1, 5 m"]);
    let counts: Vec<u64> =
        own.as_array().unwrap().iter().map(|class| class["cut_off"].as_u64().unwrap()).collect();
    assert_eq!(counts, [1, 1]);
    assert_eq!(tautline(&["cover", "-", "--gap-classes", "5, 1 m"], sheet).status.code(), Some(2));
}

#[test]
fn each_way_of_ending() {
    let status = |arguments: &[&str], input: &str| tautline(arguments, input).status.code();
    assert_eq!(status(&["cover", "-"], SHEET), Some(0));
    let swapped =
        "site,line,line length,start (in),stop (in)\nInvented,1,65 ft,20,10\nInvented,1,65 ft,30,40\n";
    assert_eq!(status(&["cover", "-"], swapped), Some(1));
    assert_eq!(status(&["cover", "-", "--unit", "furlong"], SHEET), Some(2));
    assert_eq!(status(&["cover"], ""), Some(2));
    assert_eq!(status(&["assess", "-", "--goal", "lots"], SHEET), Some(2));
    assert_eq!(status(&["cover", "-"], "hello\n"), Some(3));
    assert_eq!(status(&["cover", "no-such-file.csv"], ""), Some(4));
    assert_eq!(status(&["--help"], ""), Some(0));
}

#[test]
fn one_line_has_no_interval_and_no_verdict() {
    let printed = text(&tautline(&["assess", "-", "--goal", "at least 5 %"], SHEET));
    assert!(printed.contains("one line shows no variation between lines"), "{printed}");
    assert!(printed.contains("don't show yet"), "{printed}");
}

#[test]
fn completions_and_the_man_page_are_made() {
    assert!(text(&tautline(&["completions", "bash"], "")).contains("tautline"));
    assert!(text(&tautline(&["man"], "")).contains(".TH tautline"));
    assert!(text(&tautline(&["protocols"], "")).contains("Boyd, Bates and Miller 2007"));
}

#[test]
fn the_demo_runs_through_and_fits_a_hundred_columns() {
    let folder = folder("demo");
    let place = folder.to_str().unwrap();
    let written = tautline(&["demo", place], "");
    assert_eq!(written.status.code(), Some(0));
    // docs/demo.md: the true cover of 2026 is 17.9 %
    let said = String::from_utf8_lossy(&written.stdout).into_owned();
    let row = said.lines().find(|line| line.starts_with("2026")).unwrap_or_default();
    assert!(row.contains("17.9\u{a0}%") && row.contains("caught"), "{said}");
    let report = folder.join("report.html");
    for arguments in [
        vec!["cover", place, "--by", "species"],
        vec!["assess", place, "--by", "form", "--report", report.to_str().unwrap()],
    ] {
        let output = tautline(&arguments, "");
        assert_eq!(output.status.code(), Some(0), "{}", String::from_utf8_lossy(&output.stderr));
        let printed = text(&output);
        // paths are as long as they are
        let wide: Vec<&str> =
            printed.lines().filter(|line| line.chars().count() > 100 && !line.contains(place)).collect();
        assert!(wide.is_empty(), "{wide:#?}");
        assert!(!printed.contains('\u{1b}'), "no colour where there is no terminal");
    }
    assert!(std::fs::read_to_string(report).unwrap().contains("<svg"));
    let explained = text(&tautline(&["assess", place, "--year", "2026", "--explain"], ""));
    for link in ["Cochran 1977, 5.3–5.4", "docs/intervals.md", "readings-2026.csv row"] {
        assert!(explained.contains(link), "no “{link}” in the chain");
    }
    // what stands there is left alone
    assert_eq!(tautline(&["demo", place], "").status.code(), Some(4));
}

/// A typed sheet is read from standard input, and its slips are shown at the character.
#[test]
fn a_typed_sheet_is_read_and_printed_back() {
    let typed = "Site: Invented\nUnit: in\n\nLine 1, 65 ft\nATCA 12-14, 20-2O\nKRLA 30-31 d\n";
    let output = tautline(&["sheet", "-"], typed);
    assert_eq!(output.status.code(), Some(1));
    assert_eq!(text(&output), "Site: Invented\nUnit: in\n\nLine 1, 65 ft\nATCA 12-14\nKRLA 30-31 d\n");
    let said = String::from_utf8(output.stderr).unwrap();
    assert!(
        said.contains("row 5, character 17")
            && said.contains("    ATCA 12-14, 20-2O\n                    ^\n"),
        "{said}"
    );
    let cover = text(&tautline(&["cover", "-"], &typed.replace('O', "2")));
    // (14 - 12 + 22 - 20) of 780 in
    assert!(cover.contains("0.5 %"), "{cover}");
}

/// The check value once more, one row a site, whatever way it goes: common practice, no source.
#[test]
fn sites_are_one_row_each() {
    let output = tautline(&["sites", "-", "--goal", "at least 15 %", "--csv"], SHEET);
    assert_eq!(output.status.code(), Some(0));
    let printed = text(&output);
    let row: Vec<&str> = printed.lines().nth(1).unwrap().split(',').collect();
    assert_eq!(row[..4], ["Invented", "", "1", "19.812"]);
    assert!((row[4].parse::<f64>().unwrap() - 73.0 / 780.0).abs() < 1e-15);
    assert!(printed.contains("one-line") && printed.contains("not-yet-shown"), "{printed}");
    // 1 m and 3 m of 10 m: 10 % and 30 %, mean 20 %
    let sheet = "site id,line id,line length (m),species,start (m),stop (m),live\n\
        A,1,10,AAAA,1,2,true\nA,1,10,AAAA,5,9,false\nA,2,10,AAAA,1,4,yes\n";
    let printed = text(&tautline(&["sites", "-"], sheet));
    assert!(printed.contains("20.0 %"), "{printed}");
    // two lines that meet two intercepts: 17.4 to 88.7 % of intervals were right (docs/intervals.md)
    assert!(printed.contains("17–89"), "{printed}");
    let json = text(&tautline(&["sites", "-", "--json"], sheet));
    assert!(json.contains("\"measured_coverage\": [\n        0.174,\n        0.887\n      ]"), "{json}");
    assert!(json.contains("\"format\": \"tautline.sites\"") && json.contains("\"lines\": 2"), "{json}");
}

/// Reads cells of delimited text with quotes.
fn cells(row: &str) -> Vec<String> {
    let mut cells = vec![String::new()];
    let mut quoted = false;
    for c in row.chars() {
        match c {
            '"' => quoted = !quoted,
            ',' if !quoted => cells.push(String::new()),
            c => cells.last_mut().unwrap().push(c),
        }
    }
    cells
}

/// What is found is printed as a table, a person signs it, and handed in again it settles what a word can settle.
#[test]
fn a_table_of_findings_is_signed_and_read_back() {
    let folder = folder("signed");
    std::fs::create_dir_all(&folder).unwrap();
    let sheet = folder.join("sheet.csv");
    let text_of = "site,line,line length,date,reader,species,start (m),stop (m)\n\
        Invented,1,30 m,2026-06-09,Reader A,AAAA,1,2\nInvented,1,30 m,2026-06-09,Reader A,AAAA,1.5,3\n\
        Invented,2,30 m,2026-06-09,Reader A,AAAA,5,6\nInvented,2,30 m,2026-06-09,Reader A,AAAA,8,9\n\
        Invented,2,30 m,2026-06-09,Reader A,AAAA,31,32\n";
    std::fs::write(&sheet, text_of).unwrap();
    let sheet = sheet.to_str().unwrap();
    let output = tautline(&["check", sheet], "");
    assert_eq!(output.status.code(), Some(1));
    let printed = text(&output);
    assert!(printed.starts_with("One finding must be settled, one is worth a look."), "{printed}");
    let even = printed.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(even.contains("speak for no site: Invented: 2."), "{printed}");

    let unsigned = text(&tautline(&["check", sheet, "--csv"], ""));
    let mut signed = String::new();
    for (at, row) in unsigned.lines().enumerate() {
        let mut row = cells(row);
        if at > 0 {
            row[10] = "Reader B".into();
            row[12] = "looked at the sheet".into();
        }
        let quoted: Vec<String> = row.iter().map(|cell| format!("\"{cell}\"")).collect();
        signed += &(quoted.join(",") + "\n");
    }
    let settled = folder.join("settled.csv");
    std::fs::write(&settled, signed).unwrap();
    // a table that nobody has signed yet settles nothing
    assert_eq!(tautline(&["check", sheet, "-"], &unsigned).status.code(), Some(1));
    let output = tautline(&["check", sheet, settled.to_str().unwrap()], "");
    let printed = text(&output);
    assert_eq!(output.status.code(), Some(0), "{printed}");
    assert!(
        printed.starts_with("Nothing must be settled, nothing is worth a look, 2 settled by a person."),
        "{printed}"
    );
    let even = printed.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(even.contains("Settled by Reader B: looked at the sheet"), "{printed}");
    let json: serde_json::Value =
        serde_json::from_slice(&tautline(&["check", sheet, settled.to_str().unwrap(), "--json"], "").stdout)
            .unwrap();
    assert_eq!(
        (&json["format"], &json["settled"], &json["must_settle"]),
        (&"tautline.check".into(), &2.into(), &0.into())
    );
    assert_eq!(json["findings"][0]["settled"]["by"], "Reader B");
}

/// `check` ends by the worst it found; `cover` and `assess` say what must be settled and point to the rest.
#[test]
fn checks_end_by_the_worst_and_are_made_wherever_readings_come_in() {
    let sound = "site,line,line length,date,reader,species,start (m),stop (m)\nInvented,1,30 m,2026-06-09,Reader A,AAAA,1,2\n";
    let output = tautline(&["check", "-"], sound);
    assert_eq!(
        (output.status.code(), text(&output).trim()),
        (Some(0), "Nothing must be settled, nothing is worth a look.")
    );
    let overlap = sound.to_owned() + "Invented,1,30 m,2026-06-09,Reader A,AAAA,1.5,3\n";
    assert_eq!(tautline(&["check", "-"], &overlap).status.code(), Some(0));
    for arguments in [["cover", "-"], ["assess", "-"]] {
        let output = tautline(&arguments, &overlap);
        assert_eq!(output.status.code(), Some(0));
        let printed = text(&output);
        assert!(printed.contains("One finding is worth a look; tautline check shows it."), "{printed}");
        assert!(!printed.contains("overlaps"), "{printed}");
        let json = tautline(&[&arguments[..], &["--json"]].concat(), &overlap);
        assert!(text(&json).contains("overlap-within-species"));
    }
    let beyond = sound.to_owned()
        + "Invented,2,30 m,2026-06-09,Reader A,AAAA,1,3\nInvented,2,30 m,2026-06-09,Reader A,AAAA,4,5\n\
        Invented,2,30 m,2026-06-09,Reader A,AAAA,31,32\n";
    let output = tautline(&["assess", "-"], &beyond);
    assert_eq!(output.status.code(), Some(1));
    let printed = text(&output);
    for said in ["lies wholly beyond the tape", "line 2 is left out of the site's figures", "one line"] {
        assert!(printed.contains(said), "{printed}");
    }
    assert_eq!(tautline(&["check", "-"], "").status.code(), Some(3));
    assert_eq!(tautline(&["check", "no-such-file.csv"], "").status.code(), Some(4));
}

#[test]
fn planted_mistakes_fit_a_hundred_columns() {
    let folder = folder("planted");
    assert_eq!(tautline(&["demo", folder.to_str().unwrap()], "").status.code(), Some(0));
    let mistakes = folder.join("mistakes");
    let output = tautline(&["check", mistakes.to_str().unwrap()], "");
    assert_eq!(output.status.code(), Some(1));
    let printed = text(&output);
    let wide: Vec<&str> = printed.lines().filter(|line| line.chars().count() > 100).collect();
    assert!(wide.is_empty(), "{wide:#?}");
}

/// Cells that would steer a screen, run in a spreadsheet or in a browser are shown as what they are.
#[test]
fn hostile_cells_do_nothing() {
    let sheet = "site,line,line length,reader,species,start (cm),stop (cm),note\n\
        \u{1b}[2Jsite\u{202e},=1+1,20 m,<script>alert(1)</script>,\u{1b}]0;x\u{7},3,4,@x\n\
        \u{1b}[2Jsite\u{202e},=1+1,20 m,<script>alert(1)</script>,\u{9b}31m,\u{1b}[31m5,6,@x\n";
    let folder = folder("hostile");
    std::fs::create_dir_all(&folder).unwrap();
    let report = folder.join("report.html");
    for arguments in [
        vec!["cover", "-", "--by", "species", "--explain", "--work"],
        vec!["assess", "-", "--by", "species", "--explain", "--report", report.to_str().unwrap()],
        vec!["check", "-"],
    ] {
        let output = tautline(&arguments, sheet);
        for printed in [&output.stdout, &output.stderr] {
            let printed = String::from_utf8_lossy(printed);
            let steers = |c: char| (c.is_control() && c != '\n') || ('\u{202a}'..='\u{202e}').contains(&c);
            assert!(!printed.contains(steers), "{arguments:?}: {printed:?}");
        }
    }
    let page = std::fs::read_to_string(&report).unwrap();
    assert!(!page.contains("<script>alert") && page.contains("&lt;script&gt;"), "no cell is markup");
    let csv = text(&tautline(&["cover", "-", "--csv"], sheet));
    assert!(csv.contains(",'=1+1,") && !csv.contains(",=1+1"), "{csv}");
    let json = tautline(&["cover", "-", "--json"], sheet);
    assert!(!json.stdout.contains(&0x1b));
    assert!(serde_json::from_slice::<serde_json::Value>(&json.stdout).is_ok());
}
