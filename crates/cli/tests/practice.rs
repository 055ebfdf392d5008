//! `tautline practice` as learners and coaches use it.

#![expect(clippy::unwrap_used, reason = "a test that can't call the command has failed")]

mod call;

use call::tautline;
use serde_json::Value;
use std::process::Output;

fn text(output: &Output) -> String {
    let plain = String::from_utf8([&output.stdout[..], &output.stderr[..]].concat()).unwrap();
    plain.replace('\u{a0}', " ").split_whitespace().collect::<Vec<_>>().join(" ")
}

fn data(arguments: &[&str]) -> Value {
    serde_json::from_slice(&tautline(&[arguments, &["--json"]].concat(), "").stdout).unwrap()
}

/// The sheet that a learner who reads as the key would hand in, each stop so many half inches further.
fn sheet(line: &str, name: &str, group: &str, further: i64) -> String {
    let (level, number) = line.split_once('-').unwrap();
    let key = data(&["practice", "line", "--level", level, "--number", number, "--key"]);
    let half_inch = 12_700_000;
    let inches = |nanometres: i64| nanometres / half_inch;
    let rows = key["key"].as_array().unwrap().iter().map(|row| {
        let place = |field: &str| row[field].as_i64().unwrap();
        let half = |halves: i64| format!("{}.{}", halves / 2, 5 * (halves % 2));
        let (start, stop) = (inches(place("start_nm")), inches(place("stop_nm")) + further);
        format!("{name},{group},{line},{},{},{}\n", row["species"].as_str().unwrap(), half(start), half(stop))
    });
    rows.collect()
}

const HEADING: &str = "name,group,line,species,start (in),stop (in)\n";

struct Desk(tempfile::TempDir);

impl Desk {
    fn new() -> Self {
        Self(tempfile::tempdir().unwrap())
    }

    fn file(&self, name: &str, text: &str) -> String {
        let path = self.0.path().join(name).display().to_string();
        std::fs::write(&path, text).unwrap();
        path
    }
}

/// Whoever writes the key gets every mark but that for arithmetic, which was not handed in: 20 + 10 + 10 of 50.
#[test]
fn the_key_itself_is_all_right() {
    let desk = Desk::new();
    let file = desk.file("ada.csv", &(HEADING.to_owned() + &sheet("2-4", "Ada", "Rim", 0)));
    let printed = text(&tautline(&["practice", "grade", &file], ""));
    for said in ["Ada", "2-4", "40.0", "50.0"] {
        assert!(printed.contains(said), "“{said}” is not in\n{printed}");
    }
}

/// Stops that lie six half inches off are wrong by the example's two divisions and right by three inches: half of the marks for edges is
/// lost, and none. The year's marks are the ones that are typed.
#[test]
fn the_years_own_marks_are_used() {
    let desk = Desk::new();
    let file = desk.file("bea.csv", &(HEADING.to_owned() + &sheet("1-3", "Bea", "Rim", 6)));
    let edges = |options: &[&str]| {
        let found = data(&[&["practice", "grade", file.as_str()], options].concat());
        found["sheets"][0]["edges"].as_f64().unwrap()
    };
    assert!((edges(&[]) - 10.0).abs() < 1e-9, "{}", edges(&[]));
    assert!((edges(&["--tolerance", "3 in"]) - 20.0).abs() < 1e-9);
    assert!((edges(&["--tolerance", "3 in", "--marks", "60,10,10", "--bands", "1=20"]) - 60.0).abs() < 1e-9);
}

/// A class in order, a group by its best, and the list gone by one action; a list with a row that wasn't read stays.
#[test]
fn a_class_is_put_in_order_and_forgotten() {
    let desk = Desk::new();
    let all = [("Ada", "Rim", 0), ("Bea", "Rim", 6), ("Cal", "Flat", 0)]
        .map(|(name, group, further)| sheet("1-3", name, group, further))
        .concat();
    let file = desk.file("class.csv", &(HEADING.to_owned() + &all));
    let page = desk.file("class.html", "");
    let raised = "raised by,line,row,about,decided,why,decided by\nBea,1-3,2,the branch had moved,turned down,it lay still,Coach\nCal,9-9,1,too windy,,,\n";
    let protests = desk.file("protests.csv", raised);
    let asked =
        ["practice", "class", &file, "--best", "1", "--page", &page, "--protests", &protests, "--forget"];
    let printed = text(&tautline(&asked, ""));
    for said in [
        "1 (shared) Ada Rim",
        "1 (shared) Cal Flat",
        "3 Bea Rim",
        "One protest is open: places may still change.",
        "Nobody handed in the lines that these protests name: 9-9.",
        "Bea 1-3 2 the branch had moved turned down it lay still Coach",
    ] {
        assert!(printed.contains(said), "“{said}” is not in\n{printed}");
    }
    assert!(!std::path::Path::new(&file).exists(), "the list is gone");
    assert!(!std::path::Path::new(&protests).exists(), "and so is who protested");
    assert!(std::fs::read_to_string(&page).unwrap().contains("the branch had moved"));
    assert!(std::fs::read_to_string(&page).unwrap().contains("Bea"));
    let odd = desk.file("odd.csv", &(HEADING.to_owned() + &all + "Dan,Flat,somewhere else,FOUR,1,2\n"));
    tautline(&["practice", "class", &odd, "--forget"], "");
    assert!(std::path::Path::new(&odd).exists(), "what wasn't read stands on this sheet alone");
}

/// Two experts half a point apart at most; the same line at midday covers 60 in more of 50 ft, 10 points: it moved.
#[test]
fn an_official_line_that_moved_is_said() {
    let desk = Desk::new();
    let heading = "name,line,species,start (in),stop (in)\n";
    let read = |stop: u32| format!("{heading}Expert,L1,FOUR,60,{stop}\nOther,L1,FOUR,60,{}\n", stop + 1);
    let morning = desk.file("experts.csv", &read(120));
    let midday = desk.file("midday.csv", &read(180));
    let learner = desk.file("ada.csv", &format!("{heading}Ada,L1,FOUR,60,120\n"));
    let asked = ["practice", "grade", &learner, "--experts", &morning];
    let moved = text(&tautline(&[&asked[..], &["--again", &midday]].concat(), ""));
    assert!(moved.contains("10.0"), "{moved}");
    let still = text(&tautline(&[&asked[..], &["--again", &morning]].concat(), ""));
    assert!(moved.len() > still.len(), "{still}");
}

/// Where lines start: one of them moved by a foot is wrong; the solution is all right by itself.
#[test]
fn line_starts_and_plants_are_checked() {
    let drill = ["practice", "drill", "--number", "5", "--tape", "metric"];
    let asked = |more: &[&str]| data(&[&drill[..], more].concat());
    let key = asked(&["--kind", "line-starts", "--solution"]);
    let (baseline, lines, first) =
        (&key["baseline_nm"], key["lines"].as_i64().unwrap(), key["first_nm"].as_i64().unwrap());
    // systematic with a random start: first + k · baseline / lines (Cochran 1977, 8.1)
    let step = baseline.as_i64().unwrap() / lines;
    let metres = |nanometres: i64| {
        format!("{}.{:02} m", nanometres / 1_000_000_000, nanometres % 1_000_000_000 / 10_000_000)
    };
    let starts: Vec<String> = (0..lines).map(|line| metres(first + line * step)).collect();
    let answer = starts.join(", ");
    let right = asked(&["--kind", "line-starts", "--answer", &answer]);
    assert!(right["right"].as_array().unwrap().iter().all(|one| one == true), "{right}");
    assert!(first < step);
    let wrong = asked(&["--kind", "line-starts", "--answer", &answer.replacen(&starts[1], "0.01 m", 1)]);
    assert_eq!(wrong["right"][1], false);
    let plants = asked(&["--kind", "in-or-out", "--solution"]);
    for (plant, answer) in
        plants["plants_nm"].as_array().unwrap().iter().zip(plants["answers"].as_array().unwrap())
    {
        let inside = plant[2].as_i64().unwrap() > plant[1].as_i64().unwrap().abs();
        assert_eq!(answer == "in", inside, "{plant}");
    }
    let refused = tautline(&[&drill[..], &["--kind", "in-or-out", "--answer", "in, maybe"]].concat(), "");
    assert_eq!(refused.status.code(), Some(2));
}

/// Numbers of one level, number and kind are the same every time, and the sum of the intercepts is what the answer says.
#[test]
fn arithmetic_is_right_when_it_is() {
    let drill = data(&["practice", "drill", "--kind", "add", "--number", "4", "--solution"]);
    let halves = |text: &str| {
        let text = text.trim_end_matches(" in").trim_end_matches('"').replace('\u{a0}', " ");
        let mut parts = text.split_whitespace();
        let whole: f64 = parts.next().unwrap().parse().unwrap_or(0.5);
        whole + if parts.next() == Some("1/2") { 0.5 } else { 0.0 }
    };
    let sum: f64 = drill["given"].as_array().unwrap().iter().map(|one| halves(one.as_str().unwrap())).sum();
    let answer: f64 = drill["answer"].as_str().unwrap().parse().unwrap();
    assert!((answer - sum).abs() < 1e-9, "{drill}");
}

/// The paper for a class: lines, sheets, protests, placards, where lines start and what is in, the keys apart with the year's marks.
#[test]
fn the_paper_holds_all_that_a_coach_prints() {
    let desk = Desk::new();
    let page = desk.file("set.html", "");
    let asked = ["practice", "set", "--level", "3", "--lines", "2", "--page", &page];
    let print = |more: &[&str]| {
        tautline(&[&asked[..], more].concat(), "");
        std::fs::read_to_string(&page).unwrap()
    };
    let example = print(&[]);
    for part in
        ["Sheet for line 3-1", "Tally", "Protests", "Where lines start", "In or out", "Keys: keep apart"]
    {
        assert!(example.contains(part), "{part}");
    }
    let about_example = "an example";
    let marks = print(&["--bands", "1=30", "--marks", "60,20,10", "--tolerance", "1 in"]);
    assert_ne!(example, marks);
    assert!(example.contains(about_example) || !marks.contains(about_example));
}

/// Graded results of two days are one learner's progress: stops six half inches off add what the key says they add, and the day after
/// there is nothing off. What is no result is named, and the others are kept.
#[test]
fn progress_is_read_from_graded_results() {
    let desk = Desk::new();
    let heading = "name,group,line,species,start (in),stop (in),date\n";
    let dated = |date: &str, further: i64| {
        let rows = sheet("1-3", "Ada", "Rim", further);
        heading.to_owned() + &rows.replace('\n', &format!(",{date}\n"))
    };
    let results = desk.0.path().join("results");
    std::fs::create_dir(&results).unwrap();
    let key = data(&["practice", "line", "--level", "1", "--number", "3", "--key"]);
    let rows = key["key"].as_array().unwrap().len();
    for (name, date, further) in [("b.json", "2026-06-01", 6), ("a.json", "2026-06-08", 0)] {
        let table = desk.file("sheets.csv", &dated(date, further));
        let graded = tautline(&["practice", "grade", &table, "--json"], "").stdout;
        std::fs::write(results.join(name), graded).unwrap();
    }
    std::fs::write(results.join("odd.json"), "{}").unwrap();
    let folder = results.display().to_string();
    let progress = data(&["practice", "progress", &folder]);
    let lessons = progress["learners"][0]["lessons"].as_array().unwrap();
    let of = |at: usize, field: &str| lessons[at][field].clone();
    assert_eq!(
        (of(0, "date"), of(1, "date"), of(0, "level")),
        ("2026-06-01".into(), "2026-06-08".into(), 1.into())
    );
    // level 1 has whole shrubs apart, so each stop adds its three inches of the 600
    let first = lessons[0]["error_points"].as_f64().unwrap();
    #[expect(clippy::cast_precision_loss, reason = "a handful of rows")]
    let by_hand = 100.0 * 3.0 * rows as f64 / 600.0;
    assert!((first - by_hand).abs() < 1e-9, "{first} {by_hand}");
    assert!(lessons[1]["error_points"].as_f64().unwrap().abs() < 1e-9);
    assert_eq!((of(0, "right"), of(1, "right")), (0.into(), rows.into()));
    let page = desk.file("progress.html", "");
    let output = tautline(&["practice", "progress", &folder, "--page", &page], "");
    let printed = text(&output);
    for said in ["Ada", "2 lessons, from 2026-06-01 to 2026-06-08.", "0.0 in the last", "odd.json"] {
        assert!(printed.contains(said), "“{said}” is not in\n{printed}");
    }
    assert_eq!(output.status.code(), Some(1), "what is no result must be settled");
    assert!(std::fs::read_to_string(&page).unwrap().contains("Lessons of Ada"));
}
