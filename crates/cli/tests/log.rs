//! The log of calibrations as a person uses it, on readings small enough to be worked out by hand.

#![expect(clippy::unwrap_used, reason = "a test that can't call the command has failed")]

mod call;

use call::tautline;
use std::fmt::Write;
use std::process::Output;

fn text(output: &Output) -> String {
    let plain = String::from_utf8([&output.stdout[..], &output.stderr[..]].concat()).unwrap();
    plain.replace('\u{a0}', " ").split_whitespace().collect::<Vec<_>>().join(" ")
}

const HEADING: &str = "site,line,line length,date,reader,pass,species,start (cm),stop (cm)\n";
const RULES: &str = "name = \"invented rules\"\ncover = \"canopy-outline\"\n[counts]\nalso = [\"SHRB\"]\n[gap]\nlimit = \"5 cm\"\n";

struct Desk {
    folder: tempfile::TempDir,
}

impl Desk {
    fn new() -> Self {
        let desk = Self { folder: tempfile::tempdir().unwrap() };
        std::fs::write(desk.path("rules.toml"), RULES).unwrap();
        desk
    }

    fn path(&self, name: &str) -> String {
        self.folder.path().join(name).display().to_string()
    }

    fn call(&self, arguments: &[&str], sheet: &str) -> Output {
        let rules = self.path("rules.toml");
        let mut all = arguments.to_vec();
        if arguments.contains(&"-") {
            all.extend(["--protocol", rules.as_str()]);
        }
        tautline(&all, sheet)
    }

    /// Three lines that Ada read in 2022 and Bea on a day of 2026, each with 10 points more; taken into the notebook of the log.
    fn hollow_flat(&self, later: &str) {
        let mut visits = HEADING.to_owned();
        for (day, reader, stop) in [("2022-06-01", "Ada", 200), (later, "Bea", 300)] {
            for line in 1..=3 {
                writeln!(visits, "Hollow Flat,{line},10 m,{day},{reader},,SHRB,100,{}", stop + line).unwrap();
            }
        }
        let sheet = self.path("visits.csv");
        std::fs::write(&sheet, visits).unwrap();
        let [notebook, rules] = [self.path("log.tautline"), self.path("rules.toml")];
        tautline(&["import", "--notebook", &notebook, &sheet, "--protocol", &rules], "");
    }

    /// What is said of the change from 2022 to 2026.
    fn change(&self, more: &[&str]) -> String {
        let notebook = self.path("log.tautline");
        let asked = ["change", "--notebook", &notebook, "--from", "2022", "--to", "2026"];
        text(&tautline(&[&asked[..], more].concat(), ""))
    }

    fn log(&self, sheet: &str) -> Output {
        let notebook = self.path("log.tautline");
        let asked = [
            "agree",
            "-",
            "--tolerance",
            "3 %",
            "--log",
            &notebook,
            "--judge",
            "Coach",
            "--author",
            "Office",
        ];
        self.call(&asked, sheet)
    }
}

/// Three lines of 10 m; the second has so many centimetres more, each of them a tenth of a point.
fn calibration(day: &str, readers: [&str; 2], more: [i32; 3]) -> String {
    let mut sheet = HEADING.to_owned();
    for (line, more) in (1..).zip(more) {
        for (reader, pass, stop) in [(readers[0], 1, 200), (readers[1], 2, 200 + more)] {
            writeln!(sheet, "Rim Draw,C{line},10 m,{day},{reader},{pass},SHRB,100,{stop}").unwrap();
        }
    }
    sheet
}

/// Bea has 1, 2 and 3 points more than the coach: all within 3, on average 2.0. From 1 June to 1 August are 61 days. By hand.
#[test]
fn a_calibration_is_logged_listed_and_runs_out() {
    let desk = Desk::new();
    let notebook = desk.path("log.tautline");
    let first = desk.log(&calibration("2026-06-01", ["Coach", "Bea"], [10, 20, 30]));
    assert!(text(&first).contains("One calibration written into"), "{}", text(&first));
    let again = desk.log(&calibration("2026-06-01", ["Coach", "Bea"], [10, 20, 30]));
    assert!(text(&again).contains("Nothing new for the log"), "{}", text(&again));
    desk.log(&calibration("2026-06-02", ["Coach", "Cal"], [40, 50, -60]));
    let listed =
        desk.call(&["agree", "log", "--notebook", &notebook, "--span", "30", "--on", "2026-08-01"], "");
    assert_eq!(listed.status.code(), Some(0));
    let listed = text(&listed);
    for said in [
        "2026-06-01 Bea Coach Rim Draw 3 of 3 3.0 +2.0 passed Coach",
        "2026-06-02 Cal Coach Rim Draw 0 of 3 3.0 +1.0 to be repeated Coach",
        "Bea was last calibrated 61 days ago (2026-06-01, beside Coach); the office's span is 30 days. Read three lines",
        "Cal has passed no calibration.",
        "The calibration of 2026-06-02 is to be repeated.",
    ] {
        assert!(listed.contains(said), "“{said}” is not in\n{listed}");
    }
    let table = text(&desk.call(&["agree", "log", "--notebook", &notebook, "--csv", "--reader", "Bea"], ""));
    assert!(
        table.contains("2026-06-01,Rim Draw,Bea,Coach,C2,0.02,0.03,calibration-passed,Coach,"),
        "{table}"
    );
    assert!(!table.contains("Cal,"), "{table}");
    let page = desk.path("page.html");
    desk.call(&["agree", "log", "--notebook", &notebook, "--certificate", &page, "--reader", "Bea"], "");
    let page = std::fs::read_to_string(page).unwrap().replace('\u{a0}', " ");
    for said in [
        "invented rules",
        "Passed on 2026-06-01: on 3 of 3 lines",
        "Bea has 2.0 points more canopy than Coach",
        "Judged by Coach",
    ] {
        assert!(page.contains(said), "“{said}” is not in\n{page}");
    }
}

/// What can't be judged is not written, and is said.
#[test]
fn two_lines_are_no_calibration() {
    let desk = Desk::new();
    let sheet = calibration("2026-06-01", ["Coach", "Bea"], [1, 2, 3]);
    let two: String = sheet.lines().filter(|row| !row.contains("C3")).flat_map(|row| [row, "\n"]).collect();
    assert!(text(&desk.log(&two)).contains("Not written into the log: Bea beside Coach at Rim Draw."));
    let notebook = desk.path("log.tautline");
    let listed = desk.call(&["agree", "log", "--notebook", &notebook], "");
    assert_eq!(listed.status.code(), Some(3));
    assert!(text(&listed).contains("The log of this notebook is empty"), "{}", text(&listed));
    let no_tolerance = desk.call(&["agree", "-", "--log", &notebook], &sheet);
    assert_eq!(no_tolerance.status.code(), Some(2));
}

/// Ada read Hollow Flat earlier, Bea later; the log has both beside the coach on the same lines: Bea 2 points more on average (1, 2,
/// 3), Ada 1 less on each. Bea reads 3 points more than Ada, and the raw change of 10 points on each line is 7. By hand.
#[test]
fn what_the_log_holds_of_readers_is_taken_off_a_change() {
    let desk = Desk::new();
    desk.log(&calibration("2026-06-01", ["Coach", "Bea"], [10, 20, 30]));
    desk.log(&calibration("2026-06-01", ["Coach", "Ada"], [-10, -10, -10]));
    desk.hollow_flat("2026-06-01");
    let printed = desk.change(&[]);
    for said in [
        "Bea reads 3.0 points more than Ada on the 3 lines that both read.",
        "the change is +7.0 points",
        "Ada beside Coach on 2026-06-01 (on the last day of the later visit)",
    ] {
        assert!(printed.contains(said), "“{said}” is not in\n{printed}");
    }
    // under another gap rule the log doesn't speak of what was read
    let printed = desk.change(&["--gap-rule", "8 cm"]);
    for said in ["Read by Ada earlier and by Bea later", "under another protocol"] {
        assert!(printed.contains(said), "“{said}” is not in\n{printed}");
    }
}

/// Beside the coach Ada had 1 point less twelve days before the visit of 2022 (1 June), and 9 points more a year before that; Bea had 2
/// more (1, 2, 3) seventeen days before that of 2026 (18 June), and 8 more after it. Taken is what was nearest before: Bea reads 3 points
/// more. A span of 15 days leaves Bea's out. By hand, with the calendar.
#[test]
fn the_nearest_calibration_before_each_visit_is_taken() {
    let desk = Desk::new();
    desk.log(&calibration("2021-05-20", ["Coach", "Ada"], [90, 90, 90]));
    desk.log(&calibration("2022-05-20", ["Coach", "Ada"], [-10, -10, -10]));
    desk.hollow_flat("2026-06-18");
    assert!(!desk.change(&[]).contains("The log has both"), "nobody has set Bea beside the coach yet");
    desk.log(&calibration("2026-07-01", ["Coach", "Bea"], [80, 80, 80]));
    assert!(desk.change(&[]).contains("nothing that came before these visits"), "{}", desk.change(&[]));
    desk.log(&calibration("2026-06-01", ["Coach", "Bea"], [10, 20, 30]));
    let printed = desk.change(&[]);
    for said in [
        "set beside a third reader (6 lines in all), Bea reads 3.0 points more than Ada.",
        "the change is +7.0 points",
        "Ada beside Coach on 2022-05-20 (12 days before the earlier visit), Bea beside Coach on 2026-06-01 (17 days before the later visit).",
    ] {
        assert!(printed.contains(said), "“{said}” is not in\n{printed}");
    }
    assert!(desk.change(&["--span", "17"]).contains("Bea reads 3.0 points more"));
    let printed = desk.change(&["--span", "15"]);
    assert!(printed.contains("the nearest calibration was 17 days old"), "{printed}");
}
