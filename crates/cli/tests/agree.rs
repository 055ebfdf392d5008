//! `tautline agree` and `tautline trend` as a person uses them, on readings small enough to be worked out by hand.

#![expect(clippy::unwrap_used, reason = "a test that can't call the command has failed")]

mod call;

use call::tautline;
use std::fmt::Write;
use std::process::Output;

fn text(output: &Output) -> String {
    let plain = String::from_utf8(output.stdout.clone()).unwrap().replace('\u{a0}', " ");
    plain.split_whitespace().collect::<Vec<_>>().join(" ")
}

const HEADING: &str = "site,line,line length,date,reader,pass,species,start (m),stop (m)\n";

/// Six plants on each of two lines of 20 m; the second reader sees each edge 5 cm further out: 6 × 0.1 m of 20 m are
/// 3 points more on both lines.
#[test]
fn a_reader_who_sees_wider_is_told_so() {
    let mut sheet = HEADING.to_owned();
    for (line, from) in [("1", 0.0), ("2", 0.7)] {
        for plant in 1..=6 {
            for (reader, pass, wider) in [("reader A", "1", 0.0), ("reader B", "2", 0.05)] {
                let at = from + 3.0 * f64::from(plant);
                let (start, stop) = (at - wider, at + 0.4 + wider);
                let row =
                    format!("Invented,{line},20 m,2026-06-01,{reader},{pass},SHRB,{start:.2},{stop:.2}\n");
                sheet.push_str(&row);
            }
        }
    }
    let printed = text(&tautline(&["agree", "-", "--count", "SHRB"], &sheet));
    for said in [
        "On the 2 lines that both read, reader B has 3.0 points more canopy than reader A on average.",
        "reader B sees each edge about 5.0 cm further out.",
        "1 12.0 % 15.0 % +3.0 6 0 0",
    ] {
        assert!(printed.contains(said), "“{said}” is not in\n{printed}");
    }
    let other_way = text(&tautline(&["agree", "-", "--count", "SHRB", "--against", "reader B"], &sheet));
    assert!(other_way.contains("reader A has 3.0 points less canopy than reader B"), "{other_way}");
    assert!(other_way.contains("reader A sees each edge about 5.0 cm further in."), "{other_way}");
}

/// The same on a tape in feet: two inches further out are said in inches, as the tape is marked.
#[test]
fn a_tape_in_feet_is_spoken_of_in_inches() {
    let mut sheet = HEADING.replace("(m)", "(in)");
    for (line, from) in [("1", 0), ("2", 17)] {
        for plant in 1..=6 {
            for (reader, pass, wider) in [("reader A", "1", 0), ("reader B", "2", 2)] {
                let (start, stop) = (from + 100 * plant - wider, from + 100 * plant + 20 + wider);
                let row = format!("Invented,{line},65 ft,2026-06-01,{reader},{pass},SHRB,{start},{stop}\n");
                sheet.push_str(&row);
            }
        }
    }
    let printed = text(&tautline(&["agree", "-", "--count", "SHRB"], &sheet));
    assert!(printed.contains("reader B sees each edge about 2.0 in further out."), "{printed}");
}

#[test]
fn lines_read_by_one_are_no_agreement() {
    let sheet = HEADING.to_owned() + "Invented,1,20 m,2026-06-01,reader A,1,SHRB,1,2\n";
    let output = tautline(&["agree", "-", "--count", "SHRB"], &sheet);
    assert_eq!(output.status.code(), Some(3));
    assert!(text(&output).contains("No line was read by two readers in one year."));
}

/// One line read in so many years, with 10 % more of it under canopy each time.
fn years(number: u32) -> String {
    let rows = (0..number).map(|year| {
        let stop = f64::from(year + 2);
        format!("Invented,1,10 m,{}-06-01,reader A,,SHRB,1,{stop}\n", 2018 + 2 * year)
    });
    HEADING.to_owned() + &rows.collect::<String>()
}

/// Three visits give no p. Six steady ones rise by 10 points in two years, and all of 720 orders but two rise or fall
/// less steadily: p = 2/720 = 0.003. By hand.
#[test]
fn a_trend_needs_four_visits() {
    let printed = text(&tautline(&["trend", "-", "--count", "SHRB"], &years(3)));
    assert!(printed.contains("3 visits are too few to tell a trend from chance"), "{printed}");
    let printed = text(&tautline(&["trend", "-", "--count", "SHRB"], &years(6)));
    assert!(printed.contains("Canopy cover rises by about 5.00 points a year over 6 visits"), "{printed}");
    assert!(printed.contains("0.003"), "{printed}");
}

/// Four lines of 10 m: reader B has 1, 1, 1 and 4 points more. Within 2 points lie three of four, and nine of ten are wanted; within 4
/// points all four. By hand.
#[test]
fn ready_by_the_offices_own_tolerance() {
    let mut sheet = HEADING.to_owned();
    for (line, more) in [1.0, 1.0, 1.0, 4.0].iter().enumerate() {
        for (reader, pass, stop) in [("reader A", 1, 2.0), ("reader B", 2, 2.0 + more / 10.0)] {
            writeln!(sheet, "Invented,{line},10 m,2026-06-01,{reader},{pass},SHRB,1,{stop}").unwrap();
        }
    }
    let asked =
        |tolerance| text(&tautline(&["agree", "-", "--count", "SHRB", "--tolerance", tolerance], &sheet));
    let strict = asked("2 %");
    assert!(
        strict.contains("To practise, by your tolerance of 2.0 points: 3 of 4 lines lie within it"),
        "{strict}"
    );
    let wide = asked("4 %");
    assert!(wide.contains("Ready by your tolerance of 4.0 points: 4 of 4 lines lie within it."), "{wide}");
}

/// Six lines by four readers as printed in Shrout and Fleiss 1979, table 2, a unit a per cent of a line of 10 m. Their mean squares
/// (table 3: 11.24 between lines, 32.49 between readers, 1.02 left) are variances of (11.24 − 1.02)/4 = 2.56 of lines and
/// (32.49 − 1.02)/6 = 5.24 of readers: deviations of 1.6, 2.3 and 1.0 points; shares 29, 59 and 12 %. The mean's variance is
/// 5.24/4 + 3.58/6 = 1.907, so its error 1.38; with a seventh line 1.35; with three lines read by all 1.02/3/4 + 3.58/6 = 0.681, so 0.83.
/// By hand from the printed figures.
#[test]
fn where_the_doubt_comes_from() {
    let table = [[9, 2, 5, 8], [6, 1, 3, 2], [8, 4, 6, 8], [7, 1, 2, 6], [10, 5, 6, 9], [6, 2, 4, 7]];
    let mut sheet = HEADING.to_owned();
    for (line, row) in (1..).zip(table) {
        for (pass, tenths) in (1..).zip(row) {
            let stop = 1.0 + f64::from(tenths) / 10.0;
            writeln!(sheet, "Invented,{line},10 m,2026-06-01,reader {pass},{pass},SHRB,1,{stop}").unwrap();
        }
    }
    let asked = ["agree", "sources", "-", "--count", "SHRB"];
    let printed = text(&tautline(&asked, &sheet));
    for said in [
        "Most of what varies lies in readers: from one to another about 2.3 points (a standard deviation; 59 % of all variance).",
        "Of years there is one alone",
        "lines 6 1.6 29 %",
        "readers 4 2.3 59 %",
        "what is left 24 1.0 12 %",
        "The mean of 2026 has a standard error of 1.4 points",
        "What takes most of it away at once: a day of calibration, 3 lines read by every reader.",
        "One more line 1.35 –",
        "A day of calibration, 3 lines read by every reader 0.83 –",
    ] {
        assert!(printed.contains(said), "“{said}” is not in\n{printed}");
    }
    // a line of 20 min takes away 0.03 points, so 0.09 an hour; a day of four readers 0.55 in 32 hours
    let priced =
        text(&tautline(&[&asked[..], &["--walk", "10", "--lay", "5", "--read", "0.5"]].concat(), &sheet));
    assert!(priced.contains("What takes most of it away for its hours: one more line."), "{priced}");
    assert!(priced.contains("A day of calibration, 24 lines read by every reader 0.78 1920"), "{priced}");
    // the page says the same figures as the screen
    let page = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("sources.html");
    tautline(&[&asked[..], &["--report", page.to_str().unwrap()]].concat(), &sheet);
    let page = std::fs::read_to_string(page).unwrap().replace('\u{a0}', " ");
    for said in ["59 % of all variance", "<td class=\"number\">1.35</td>", "<td class=\"number\">0.83</td>"] {
        assert!(page.contains(said), "“{said}” is not on the page:\n{page}");
    }
    let data = tautline(&[&asked[..], &["--json"]].concat(), &sheet);
    let data = String::from_utf8(data.stdout).unwrap();
    assert!(
        data.contains("\"format\": \"tautline.agree-sources\"") && data.contains("part-reader"),
        "{data}"
    );
}

/// One reader in each year: what years do and what readers do is one.
#[test]
fn what_cannot_be_told_apart_is_said() {
    let mut sheet = HEADING.to_owned();
    for (year, reader, more) in [(2022, "Ada", 0), (2024, "Bea", 10), (2026, "Cal", 5)] {
        for line in 1..=4 {
            let stop = 200 + more + 13 * line + (line * year) % 7;
            writeln!(sheet, "Invented,{line},10 m,{year}-06-01,{reader},,SHRB,1,{}", f64::from(stop) / 100.0)
                .unwrap();
        }
    }
    let printed = text(&tautline(&["agree", "sources", "-", "--count", "SHRB"], &sheet));
    assert!(
        printed.contains("What readers do can't be told apart from years: wherever the one is another"),
        "{printed}"
    );
}

/// Lines of two strata lie 40 points apart, those of one stratum 1 or 2: what the strata are is no doubt of the mean, for both are read.
#[test]
fn strata_are_no_doubt() {
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("doubt-by-stratum");
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).unwrap();
    let mut plan = "site,line,line length,stratum\n".to_owned();
    let mut readings = HEADING.to_owned();
    for line in 1..=6 {
        let (stratum, from) = if line % 2 == 0 { ("swale", 50) } else { ("bench", 10) };
        writeln!(plan, "Invented,{line},10 m,{stratum}").unwrap();
        for (year, more) in [(2024, line % 3), (2026, (line + 1) % 3)] {
            let stop = 1.0 + f64::from(from + line + more) / 10.0;
            writeln!(readings, "Invented,{line},10 m,{year}-06-01,Ada,,SHRB,1,{stop:.1}").unwrap();
        }
    }
    std::fs::write(folder.join("lines.csv"), plan).unwrap();
    std::fs::write(folder.join("readings.csv"), readings).unwrap();
    let output = tautline(&["agree", "sources", folder.to_str().unwrap(), "--count", "SHRB", "--json"], "");
    let found: serde_json::Value = serde_json::from_slice(&output.stdout).unwrap();
    let of = |part: &str| {
        let parts = found["parts"].as_array().unwrap();
        parts.iter().find(|one| one["part"] == part).and_then(|one| one["sd"].as_f64()).unwrap_or(0.0)
    };
    let (strata, lines, left) = (of("part-stratum"), of("part-line"), of("part-left"));
    assert!(strata > 0.2 && lines < 0.05, "{found}");
    // by the formula of the page: six lines, one reader, nothing else
    let se = ((lines * lines + left * left) / 6.0).sqrt();
    assert!((found["se"].as_f64().unwrap() - se).abs() < 1e-12, "{found}");
}
