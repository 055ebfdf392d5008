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
