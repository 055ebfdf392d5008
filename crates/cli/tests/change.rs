//! `tautline change` as a person uses it, on readings small enough to be worked out by hand.

#![expect(clippy::unwrap_used, reason = "a test that can't call the command has failed")]

mod call;

use call::tautline;
use std::fmt::Write;
use std::process::Output;

fn text(output: &Output) -> String {
    let plain = String::from_utf8(output.stdout.clone()).unwrap().replace('\u{a0}', " ");
    plain.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Lines of 10 m with one patch each: name, date, reader, from, to.
fn sheet(rows: &[(&str, &str, &str, &str, &str)]) -> String {
    let heading = "site,line,line length,date,reader,species,start (m),stop (m)\n".to_owned();
    let rows = rows.iter().map(|(line, date, reader, start, stop)| {
        format!("Invented,{line},10 m,{date},{reader},SHRB,{start},{stop}\n")
    });
    heading + &rows.collect::<String>()
}

const BETWEEN: [&str; 8] = ["change", "-", "--count", "SHRB", "--from", "2022", "--to", "2026"];

/// Three lines go from 10, 20, 30 % to 20, 35, 40 %: differences of 10, 15, 10 points, mean 11.667, s = 2.887, SE 1.667,
/// t = 7 on 2 degrees of freedom. With 2 degrees of freedom p = 1 − t/√(t² + 2) = 0.0198, and t(0.95) = 2.9200, so the
/// 90 % interval runs from 6.8 to 16.5 points. Worked out by hand.
#[test]
fn the_same_lines_twice() {
    let sheet = sheet(&[
        ("1", "2022-06-01", "reader A", "1", "2"),
        ("2", "2022-06-01", "reader A", "3", "5"),
        ("3", "2022-06-02", "reader A", "4", "7"),
        ("1", "2026-06-01", "reader A", "1", "3"),
        ("2", "2026-06-03", "reader A", "3", "6.5"),
        ("3", "2026-06-02", "reader A", "3", "7"),
    ]);
    let printed = text(&tautline(&BETWEEN, &sheet));
    for said in [
        "Canopy cover rose by 11.7 points between 2022 and 2026.",
        "lies between +6.8 and +16.5, with 90 % confidence",
        "SE 1.7 points, 2.0 df, p = 0.020",
        "1 10.0 % 0.0 % 10.0 % +10.0",
    ] {
        assert!(printed.contains(said), "“{said}” is not in\n{printed}");
    }
    assert!(!printed.contains("Read by"), "one reader is not unlike:\n{printed}");
    let smaller = [&BETWEEN[..], &["--matters", "5 %"]].concat();
    assert!(text(&tautline(&smaller, &sheet)).contains("It is 5.0 points or more, as much as matters."));
    let larger = [&BETWEEN[..], &["--matters", "20 %"]].concat();
    assert!(text(&tautline(&larger, &sheet)).contains("It is less than the 20.0 points that matter."));
}

/// The same numbers as unlike lines: SE² = (s₁² + s₂²)/3 with s₁ = 10 and s₂ = 10.41 points, so SE = 8.33 points, and
/// nothing is shown. As the same lines SE = 1.667 points, and 69.44/2.778 = 25.0 times as many new ones would be as sure. By hand.
#[test]
fn other_lines_show_less_and_say_what_could_hide() {
    let sheet = sheet(&[
        ("1", "2022-06-01", "reader A", "1", "2"),
        ("2", "2022-06-01", "reader A", "3", "5"),
        ("3", "2022-06-02", "reader A", "4", "7"),
        ("1", "2026-08-01", "reader B", "1", "3"),
        ("2", "2026-08-03", "reader B", "3", "6.5"),
        ("3", "2026-08-02", "reader B", "3", "7"),
    ]);
    let printed = text(&tautline(&[&BETWEEN[..], &["--temporary"]].concat(), &sheet));
    for said in [
        "The readings show no change of canopy cover between 2022 and 2026.",
        "That is not the same as no change",
        "SE 8.3 points",
        "Lines of one name were taken as new ones: a standard error of 8.3 points. As the same lines they would have one of 1.7 \
         points; to be as sure, new ones take 25.0 times as many.",
        "Read by reader A in 2022 and by reader B in 2026.",
        "Lines were read about 62 days apart in the season",
    ] {
        assert!(printed.contains(said), "“{said}” is not in\n{printed}");
    }
}

/// A line whose stake is lost has no partner: it is named, and the others carry the change.
#[test]
fn a_line_read_once_is_named() {
    let sheet = sheet(&[
        ("1", "2022-06-01", "reader A", "1", "2"),
        ("2", "2022-06-01", "reader A", "3", "5"),
        ("9", "2022-06-02", "reader A", "4", "7"),
        ("1", "2026-06-01", "reader A", "1", "3"),
        ("2", "2026-06-03", "reader A", "3", "6.5"),
    ]);
    let printed = text(&tautline(&BETWEEN, &sheet));
    assert!(printed.contains("left out of the change: 9."), "{printed}");
    assert!(printed.contains("2 read twice"), "{printed}");
}

/// The treated site changes by 10, 15, 10 points, its neighbour by 5, 5, 8: 11.667 − 6 = 5.667 points, SE² = 1.667² + 1² so
/// SE = 1.944, 3.3 degrees of freedom, t(0.95) = 2.27, so the interval runs from 1.2 to 10.1. By hand.
#[test]
fn a_neighbour_left_alone_is_set_beside() {
    let treated = sheet(&[
        ("1", "2022-06-01", "reader A", "1", "2"),
        ("2", "2022-06-01", "reader A", "3", "5"),
        ("3", "2022-06-02", "reader A", "4", "7"),
        ("1", "2026-06-01", "reader A", "1", "3"),
        ("2", "2026-06-03", "reader A", "3", "6.5"),
        ("3", "2026-06-02", "reader A", "3", "7"),
    ]);
    let neighbour = sheet(&[
        ("1", "2022-06-01", "reader A", "2", "3"),
        ("2", "2022-06-01", "reader A", "4", "6"),
        ("3", "2022-06-02", "reader A", "5", "8"),
        ("1", "2026-06-01", "reader A", "2", "3.5"),
        ("2", "2026-06-03", "reader A", "4", "6.5"),
        ("3", "2026-06-02", "reader A", "4.2", "8"),
    ]);
    let neighbour = neighbour.lines().skip(1).map(|row| row.replace("Invented", "Neighbour") + "\n");
    let both = treated + &neighbour.collect::<String>();
    let printed = text(&tautline(&[&BETWEEN[..], &["--untreated", "Neighbour"]].concat(), &both));
    for said in [
        "Invented gained 5.7 points more, or lost that much less, than Neighbour.",
        "With one area of each, this says at most that they changed differently",
    ] {
        assert!(printed.contains(said), "“{said}” is not in\n{printed}");
    }
    let nobody = text(&tautline(&[&BETWEEN[..], &["--untreated", "Nowhere"]].concat(), &both));
    assert!(nobody.contains("Nowhere was not read in both years"), "{nobody}");
}

/// Lines bunched in plots speak for their plot: changes of 10 and 20 points in one, 5 and 7 in the other are two units,
/// 15 and 6: mean 10.5, SE 4.5, one degree of freedom. By hand.
#[test]
fn the_plot_is_the_unit_where_lines_are_bunched() {
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("change-in-plots");
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).unwrap();
    let plan = "site,line,line length,plot\nInvented,1,10 m,P\nInvented,2,10 m,P\nInvented,3,10 m,Q\nInvented,4,10 m,Q\n";
    std::fs::write(folder.join("lines.csv"), plan).unwrap();
    let readings = sheet(&[
        ("1", "2022-06-01", "reader A", "1", "2"),
        ("2", "2022-06-01", "reader A", "3", "5"),
        ("3", "2022-06-02", "reader A", "4", "7"),
        ("4", "2022-06-02", "reader A", "2", "3"),
        ("1", "2026-06-01", "reader A", "1", "3"),
        ("2", "2026-06-03", "reader A", "3", "7"),
        ("3", "2026-06-02", "reader A", "3.5", "7"),
        ("4", "2026-06-02", "reader A", "2", "3.7"),
    ]);
    std::fs::write(folder.join("readings.csv"), readings).unwrap();
    let mut call = BETWEEN;
    call[1] = folder.to_str().unwrap();
    let printed = text(&tautline(&call, ""));
    for said in ["+10.5 4.5", "4 lines in 2 plots", "SE 4.5 points, 1.0 df"] {
        assert!(printed.contains(said), "“{said}” is not in\n{printed}");
    }
}

/// Two lines read once in each year, beside two read twice, lend what they are worth.
#[test]
fn lines_read_once_in_both_years_are_used() {
    let sheet = sheet(&[
        ("1", "2022-06-01", "reader A", "1", "2"),
        ("2", "2022-06-01", "reader A", "3", "5"),
        ("3", "2022-06-02", "reader A", "4", "7"),
        ("4", "2022-06-02", "reader A", "4", "6.4"),
        ("1", "2026-06-01", "reader A", "1", "3"),
        ("2", "2026-06-03", "reader A", "3", "6.5"),
        ("5", "2026-06-02", "reader A", "3", "7"),
        ("6", "2026-06-02", "reader A", "2", "5.5"),
    ]);
    let printed = text(&tautline(&BETWEEN, &sheet));
    assert!(printed.contains("Read in only one of 2022 and 2026: 3, 4, 5, 6."), "{printed}");
    assert!(printed.contains("same lines and others, 2 read twice"), "{printed}");
}

/// Kept, lost and gained as shares of the line, drawn and told.
#[test]
fn a_picture_is_drawn() {
    let sheet = sheet(&[
        ("1", "2022-06-01", "reader A", "1", "2"),
        ("2", "2022-06-01", "reader A", "3", "5"),
        ("1", "2026-06-01", "reader A", "1", "3"),
        ("2", "2026-06-03", "reader A", "4", "6.5"),
    ]);
    let file = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("change.svg");
    let output = tautline(&[&BETWEEN[..], &["--picture", file.to_str().unwrap()]].concat(), &sheet);
    assert!(text(&output).contains("2 10.0 % 10.0 % 15.0 % +5.0"), "{}", text(&output));
    let drawn = std::fs::read_to_string(file).unwrap().replace('\u{a0}', " ");
    assert!(drawn.starts_with("<svg") && drawn.contains("lost 10.0 % · gained 15.0 % · change +5.0"));
}

#[test]
fn what_makes_no_sense_is_refused() {
    let refused = |options: &[&str]| {
        let output = tautline(&[&["change", "-"], options].concat(), "");
        assert_eq!(output.status.code(), Some(2), "{options:?}");
        String::from_utf8(output.stderr).unwrap()
    };
    assert!(refused(&["--from", "2026", "--to", "2022"]).contains("the earlier first"));
    assert!(
        refused(&["--from", "2022", "--to", "2026", "--year", "2026"]).contains("--year has no meaning here")
    );
    refused(&["--from", "2022"]);
    let nothing = tautline(&BETWEEN, &sheet(&[("1", "2022-06-01", "reader A", "1", "2")]));
    assert_eq!(nothing.status.code(), Some(3));
    assert!(text(&nothing).contains("No site was read in both 2022 and 2026."));
}

/// Reader B reads 1, 2 and 3 points more than reader A on the three lines that both read in 2026: 2 points, s = 1, SE = 1/√3 = 0.577 with
/// 2 degrees of freedom. The change of 11.667 points with SE 1.667 and 2 degrees of freedom becomes 9.667; SE = √(1.667² + 0.577²) = 1.764,
/// degrees of freedom (by Welch) 3.1111²/(2.7778²/2 + 0.3333²/2) = 2.473, so t(0.95) lies between those of 2 and 3 degrees, 2.920 and 2.353:
/// the reach is between 4.15 and 5.15 points. By hand.
#[test]
fn unlike_readers_are_taken_off_where_both_read_the_same_lines() {
    let mut sheet = sheet(&[
        ("1", "2022-06-01", "reader A", "1", "2"),
        ("2", "2022-06-01", "reader A", "3", "5"),
        ("3", "2022-06-02", "reader A", "4", "7"),
        ("1", "2026-06-01", "reader B", "1", "3"),
        ("2", "2026-06-03", "reader B", "3", "6.5"),
        ("3", "2026-06-02", "reader B", "3", "7"),
    ]);
    let not_measured = text(&tautline(&BETWEEN, &sheet));
    assert!(not_measured.contains("who have not read two lines in common"), "{not_measured}");
    for (line, more) in [("7", 1.0), ("8", 2.0), ("9", 3.0)] {
        for (day, reader, stop) in [(5, "reader A", 2.0), (6, "reader B", 2.0 + more / 10.0)] {
            writeln!(sheet, "Elsewhere,{line},10 m,2026-06-0{day},{reader},SHRB,1,{stop}").unwrap();
        }
    }
    let printed = text(&tautline(&BETWEEN, &sheet));
    let said = "reader B reads 2.0 points more than reader A on the 3 lines that both read. With that taken off, and its own doubt put in, \
                the change is +9.7 points, between ";
    assert!(printed.contains(said), "{printed}");
    let believed: f64 =
        printed.split("A change of less than ").nth(1).unwrap().split(' ').next().unwrap().parse().unwrap();
    assert!((4.15..5.15).contains(&believed), "{believed}");
}

/// What was noted at both visits stands beside the change; a stage of growth that differs, and lines read outside the window of their
/// protocol, make visits unlike. 20 June lies outside of May to 15 June.
#[test]
fn unlike_visits_are_called_unlike() {
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("unlike-visits");
    std::fs::create_dir_all(&folder).unwrap();
    let rules = "name = \"invented rules\"\ncover = \"canopy-outline\"\nreading-window = \"May to 15 June\"\n[counts]\nalso = [\"SHRB\"]\n";
    let file = folder.join("rules.toml");
    std::fs::write(&file, rules).unwrap();
    let mut sheet =
        "site,line,line length,date,reader,growth stage,grazing,rain,species,start (m),stop (m)\n".to_owned();
    for (date, stage, grazing, rain, stop) in
        [("2022-06-01", "full leaf", "none", "180 mm", 2.0), ("2026-06-20", "seed", "light", "95 mm", 2.5)]
    {
        for line in 1..=3 {
            let stop = stop + f64::from(line) / 10.0;
            writeln!(sheet, "Invented,{line},10 m,{date},reader A,{stage},{grazing},{rain},SHRB,1,{stop}")
                .unwrap();
        }
    }
    let protocol = ["--protocol", file.to_str().unwrap()];
    let asked = ["change", "-", "--from", "2022", "--to", "2026"];
    let page = folder.join("page.html");
    let report = ["--report", page.to_str().unwrap()];
    let printed = text(&tautline(&[&asked[..], &protocol, &report].concat(), &sheet));
    for said in [
        "noted 2022 2026",
        "grazing none light",
        "rain 180 mm 95 mm",
        "The stage of growth was not the same: full leaf in 2022, seed in 2026.",
        "Lines 1, 2, 3 were read in 2026 outside the reading window of their protocol (May to 15 June).",
    ] {
        assert!(printed.contains(said), "“{said}” is not in\n{printed}");
    }
    let page = std::fs::read_to_string(page).unwrap();
    for said in ["What was noted beside the readings", "95 mm", "The stage of growth was not the same"] {
        assert!(page.contains(said), "“{said}” is not on the page");
    }
    let trend = text(&tautline(&[&["trend", "-"], &protocol[..]].concat(), &sheet));
    for said in [
        "grazing none light",
        "The stage of growth was not the same in all years: full leaf in 2022, seed in 2026.",
        "Lines 1, 2, 3 were read in 2026 outside the reading window",
    ] {
        assert!(trend.contains(said), "“{said}” is not in\n{trend}");
    }
}

/// Two strata of 3 and 1 ha whose lines change by 10 and 12, and by 20 and 24 points: 11 and 22, and 11 · 3/4 + 22 · 1/4 = 13.75
/// together. By hand.
#[test]
fn each_stratum_has_its_own_change() {
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("change-by-stratum");
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).unwrap();
    let plan = "site,line,line length,stratum\nInvented,1,10 m,flat\nInvented,2,10 m,flat\nInvented,3,10 m,slope\nInvented,4,10 m,slope\n";
    std::fs::write(folder.join("lines.csv"), plan).unwrap();
    std::fs::write(folder.join("strata.csv"), "site,stratum,area\nInvented,flat,3 ha\nInvented,slope,1 ha\n")
        .unwrap();
    let readings = sheet(&[
        ("1", "2022-06-01", "reader A", "1", "2"),
        ("2", "2022-06-01", "reader A", "3", "5"),
        ("3", "2022-06-01", "reader A", "4", "7"),
        ("4", "2022-06-01", "reader A", "2", "3"),
        ("1", "2026-06-01", "reader A", "1", "3"),
        ("2", "2026-06-01", "reader A", "3", "6.2"),
        ("3", "2026-06-01", "reader A", "2", "7"),
        ("4", "2026-06-01", "reader A", "2", "5.4"),
    ]);
    std::fs::write(folder.join("readings.csv"), readings).unwrap();
    let mut call = BETWEEN;
    call[1] = folder.to_str().unwrap();
    let printed = text(&tautline(&call, ""));
    for said in ["flat 75 % +11.0 1.0 2", "slope 25 % +22.0 2.0 2", "rose by 13.8 points"] {
        assert!(printed.contains(said), "“{said}” is not in\n{printed}");
    }
}
