//! Each slip, alone on an otherwise sound sheet, is found where it stands by the check that is named for it.

use super::{codes, looked_through, of, sheet};
use std::fmt::Write;
use tautline_survey::input::Input;
use tautline_survey::message::Value;

const HEAD: &str = "site,line,line length,date,reader,species,start (m),stop (m)\n";

/// Line 1 of 30 m, read by Reader A in 2026, with rows of `species,start,stop`.
fn line(rows: &[&str]) -> Input {
    sheet(&lines(&[("1", "2026-06-09", "Reader A", rows)]))
}

fn lines(lines: &[(&str, &str, &str, &[&str])]) -> String {
    let mut text = HEAD.to_owned();
    for (line, date, reader, rows) in lines {
        for row in *rows {
            writeln!(text, "Invented,{line},30 m,{date},{reader},{row}").unwrap();
        }
    }
    text
}

fn value<'a>(input: &'a Input, code: &str, name: &str) -> &'a Value {
    let finding = of(input, code)[0];
    finding.message.values.iter().find(|(known, _)| *known == name).map(|(_, value)| value).unwrap()
}

#[test]
fn a_sound_line_has_nothing_to_say() {
    assert_eq!(codes(&line(&["AAAA,1.00,2.00", "BBBB,1.50,3.00", "AAAA,4.00,5.00"])), []);
}

#[test]
fn overlap_counts_once_and_is_worth_a_look() {
    let input = line(&["AAAA,1.00,2.00", "AAAA,1.80,3.00", "AAAA,4.00,5.00", "AAAA,4.00,5.00"]);
    assert_eq!(codes(&input), [("overlap-within-species", 3), ("row-written-twice", 5)]);
    assert!(input.held.is_empty());
    // dead wood under live canopy of its species is no overlap, and neither are plants read with their widths
    let dead = "site,line,line length,date,reader,species,start (m),stop (m),state,width (m)\n\
        Invented,1,30 m,2026-06-09,Reader A,AAAA,1,3,live,\nInvented,1,30 m,2026-06-09,Reader A,AAAA,2,4,dead,\n\
        Invented,1,30 m,2026-06-09,Reader A,BBBB,6,8,live,2\nInvented,1,30 m,2026-06-09,Reader A,BBBB,7,9,live,2\n";
    assert_eq!(codes(&sheet(dead)), []);
}

#[test]
fn beyond_the_tape_in_part_wholly_or_in_another_unit() {
    let input = line(&["AAAA,1.00,2.00", "AAAA,29.00,31.00"]);
    assert_eq!(codes(&input), [("beyond-the-tape", 3)]);
    // 0.5 in the same unit as 31: no smaller unit than a metre holds 31 on 30 m but a foot does, 31 ft = 9.45 m
    let input = line(&["AAAA,0.50,2.00", "AAAA,31.00,33.00"]);
    assert_eq!(codes(&input), [("fits-another-unit", 3)]);
    assert!(matches!(value(&input, "fits-another-unit", "fits"), Value::Text(unit) if unit == "ft"));
    assert_eq!(input.held.len(), 1);
    // one row past the stake among sound ones is no unit
    let input = line(&["AAAA,0.50,2.00", "AAAA,8.00,9.00", "AAAA,31.00,33.00"]);
    assert_eq!(codes(&input), [("wholly-beyond-the-tape", 4)]);
    // feet and inches name both of their units, so that no other can be meant
    let text = "site,line,line length,date,reader,species,start (ft-in),stop (ft-in)\n\
        Invented,1,65 ft,2026-06-09,Reader A,AAAA,70-0,71-2\n";
    assert_eq!(codes(&sheet(text)), [("wholly-beyond-the-tape", 2)]);
}

#[test]
fn past_the_mark_of_a_line_read_in_part() {
    let lines = "site,line,line length,date,reader,outcome,read to\nInvented,1,30 m,2026-06-09,Reader A,partly read,10 m\n\
        Invented,2,30 m,2026-06-09,Reader A,partly read,31 m\n";
    let rows = lines_of(&["AAAA,1.00,2.00", "AAAA,9.50,10.50", "AAAA,12.00,13.00"]);
    let input = looked_through(&[("lines.csv", lines), ("sheet.csv", &rows)]);
    assert_eq!(
        codes(&input),
        [("mark-beyond-the-tape", 3), ("past-the-mark", 3), ("wholly-past-the-mark", 4)]
    );
}

fn lines_of(rows: &[&str]) -> String {
    lines(&[("1", "2026-06-09", "Reader A", rows)])
}

#[test]
fn lengths_that_pass_the_line_and_lengths_that_disagree_with_the_edges() {
    let text = "site,line,line length,date,reader,species,length (m)\n\
        Invented,1,10 m,2026-06-09,Reader A,AAAA,6\nInvented,1,10 m,2026-06-09,Reader A,AAAA,5\n\
        Invented,1,10 m,2026-06-09,Reader A,BBBB,9\nInvented,1,10 m,2026-06-09,Reader A,BBBB,0\n";
    assert_eq!(codes(&sheet(text)), [("lengths-pass-the-line", 2), ("length-zero", 5)]);
    // 2.35 may be written 2.4, and 2.3 only by a slip
    let text = "site,line,line length,date,reader,species,start (m),stop (m),length (m)\n\
        Invented,1,30 m,2026-06-09,Reader A,AAAA,1.00,3.35,2.4\nInvented,1,30 m,2026-06-09,Reader A,AAAA,4.00,6.36,2.3\n\
        Invented,1,30 m,2026-06-09,Reader A,AAAA,8.00,9.00,\n";
    let input = sheet(text);
    assert_eq!(codes(&input), [("start-stop-length-disagree", 3)]);
    assert_eq!((input.held.len(), input.visits[0].intercepts.len()), (1, 3));
}

#[test]
fn a_tape_read_backwards_is_one_thing_and_not_as_many_as_it_has_rows() {
    let input = line(&["AAAA,29.00,28.00", "BBBB,20.00,18.50", "AAAA,9.00,8.00"]);
    assert_eq!(codes(&input), [("tape-read-backwards", 2)]);
    assert_eq!(input.held.len(), 1);
    // one slip among sound rows stays a slip
    let input = line(&["AAAA,1.00,2.00", "BBBB,5.00,4.50", "AAAA,8.00,9.00"]);
    assert_eq!(codes(&input), [("stop-before-start", 3)]);
}

#[test]
fn a_line_walked_from_its_far_end_and_a_row_out_of_order() {
    let input = line(&["AAAA,20.00,21.00", "BBBB,15.00,16.00", "AAAA,9.00,9.50", "AAAA,2.00,3.00"]);
    assert_eq!(codes(&input), [("positions-fall", 2)]);
    // species by species is in order; the last row isn't
    let rows = ["AAAA,1.00,2.00", "AAAA,9.00,9.50", "BBBB,3.00,4.00", "BBBB,7.00,8.00", "BBBB,5.00,6.00"];
    assert_eq!(codes(&line(&rows)), [("positions-out-of-order", 6)]);
}

/// The second visit is the first turned end for end: 1–2, 5–8 and 20–21 m of 30 become 9–10, 22–25 and 28–29 m.
#[test]
fn a_tape_laid_the_other_way_round() {
    let (before, mirrored) =
        (["AAAA,1,2", "AAAA,5,8", "AAAA,20,21"], ["AAAA,9,10.1", "AAAA,22,25", "AAAA,28,29"]);
    let visits = |second: &[&str]| {
        lines(&[("1", "2024-06-09", "Reader A", &before), ("1", "2026-06-09", "Reader A", second)])
    };
    assert_eq!(codes(&sheet(&visits(&mirrored))), [("tape-laid-the-other-way", 5)]);
    let again = ["AAAA,1,2.1", "AAAA,5,8", "AAAA,20,21"];
    assert_eq!(codes(&sheet(&visits(&again))), []);
}

#[test]
fn the_same_line_twice_and_the_same_reading_under_two_names() {
    let (one, other) = (["AAAA,1,2", "AAAA,5,8", "BBBB,20,21"], ["AAAA,1,2.5", "AAAA,5,8.2", "BBBB,20,21.1"]);
    let day = "2026-06-09";
    let input = sheet(&lines(&[("1", day, "Reader A", &one), ("1", day, "Reader B", &other)]));
    assert_eq!(codes(&input), [("line-read-twice", 5)]);
    assert_eq!(input.held.len(), 2);
    let input = sheet(&lines(&[("1", day, "Reader A", &one), ("2", day, "Reader A", &one)]));
    assert_eq!(codes(&input), [("reading-written-twice", 5)]);
    assert_eq!(input.held.len(), 2);
    // passes tell two readings of a line apart
    let text = "site,line,line length,date,reader,pass,species,start (m),stop (m)\n\
        Invented,1,30 m,2026-06-09,Reader A,1,AAAA,1,2\nInvented,1,30 m,2026-06-09,Reader B,2,AAAA,1.1,2\n";
    assert_eq!(codes(&sheet(text)), []);
}

#[test]
fn gaps_under_the_rule_are_a_habit_said_once() {
    let protocol = "name = \"invented\"\n[gap]\nlimit = \"5 cm\"\n";
    let one = ["AAAA,1.00,2.00", "AAAA,2.04,3.00", "AAAA,3.05,4.00", "BBBB,4.02,5.00"];
    let other = ["AAAA,1.00,2.00", "AAAA,2.03,3.00"];
    let text = lines(&[("1", "2026-06-09", "Reader A", &one), ("2", "2026-06-09", "Reader A", &other)]);
    let input = looked_through(&[("p.toml", protocol), ("sheet.csv", &text)]);
    assert_eq!(codes(&input), [("gaps-under-the-rule", 2)]);
    // 4 cm and 3 cm, not the 5 cm that equals the rule, nor the gap between two species
    assert_eq!(value(&input, "gaps-under-the-rule", "count"), &Value::Count(2));
}

#[test]
fn species_that_the_list_or_the_site_does_not_know() {
    let plants = "code,form\nFOUR,shrub\nSHAD,shrub\nGREA,shrub\n";
    let text = lines(&[
        ("1", "2024-06-09", "Reader A", &["FOUR,1,2", "SHAD,3,4"]),
        ("1", "2026-06-09", "Reader A", &["FUOR,1,2", "SHAD,3,4.5", "GREA,8,9", "QQQQ,12,13"]),
    ]);
    let input = looked_through(&[("plants.csv", plants), ("sheet.csv", &text)]);
    assert_eq!(
        codes(&input),
        [("species-misspelt", 4), ("species-new-to-site", 6), ("species-not-listed", 7)]
    );
    assert_eq!(value(&input, "species-misspelt", "near"), &Value::List(vec![Value::Text("FOUR".into())]));
}

#[test]
fn what_is_missing_is_said_once_for_each_file() {
    let text = "site,line,line length,species,start (m),stop (m)\nInvented,1,30 m,AAAA,1,2\nInvented,2,30 m,AAAA,3,4\n\
        Invented,3,,AAAA,3,4\n";
    let input = sheet(text);
    assert_eq!(codes(&input), [("date-missing", 2), ("observer-missing", 2), ("line-length-missing", 4)]);
    assert_eq!(value(&input, "date-missing", "count"), &Value::Count(3));
    let plan = "site,line,line length\nInvented,1,30 m\nInvented,9,30 m\n";
    let rows = lines_of(&["AAAA,1,2"]);
    let input = looked_through(&[("plan.csv", plan), ("sheet.csv", &rows)]);
    assert_eq!(codes(&input), [("line-planned-without-record", 0)]);
}

/// Line 2 was read in 2022 and missed in 2024; line 9 may have been planned after 2022.
#[test]
fn a_line_never_read_is_asked_about_in_the_newest_year_alone() {
    let plan = "site,line,line length\nInvented,1,30 m\nInvented,2,30 m\nInvented,9,30 m\n";
    let rows = lines(&[
        ("1", "2022-06-10", "Reader A", &["AAAA,1,2"]),
        ("2", "2022-06-10", "Reader A", &["AAAA,3,4"]),
        ("1", "2024-06-10", "Reader A", &["AAAA,1,2"]),
    ]);
    let input = looked_through(&[("plan.csv", plan), ("sheet.csv", &rows)]);
    let asked = of(&input, "line-planned-without-record");
    let asked: Vec<_> = asked.iter().map(|one| one.message.values[1..].to_vec()).collect();
    let about =
        |line: &str, year: &str| vec![("line", Value::Text(line.into())), ("year", Value::Text(year.into()))];
    assert_eq!(asked, [about("2", "2024"), about("9", "2024")]);
}

#[test]
fn readings_outside_the_window_of_their_protocol() {
    let protocol = "name = \"invented\"\nreading-window = \"15 June to 31 July\"\n";
    let text = lines(&[
        ("1", "2026-06-09", "Reader A", &["AAAA,1,2"]),
        ("2", "2026-06-10", "Reader A", &["AAAA,3,4"]),
        ("3", "2026-07-31", "Reader A", &["AAAA,5,6"]),
    ]);
    let input = looked_through(&[("p.toml", protocol), ("sheet.csv", &text)]);
    assert_eq!(codes(&input), [("outside-the-reading-window", 2)]);
    let lines = value(&input, "outside-the-reading-window", "lines");
    assert_eq!(lines, &Value::List(vec![Value::Text("1".into()), Value::Text("2".into())]));
}

/// Nothing is said where nobody keeps permissions; at a site that does, once for each round, and nothing is held back.
#[test]
fn readings_without_permission_are_reminded_of_where_permissions_are_kept() {
    let text = lines(&[
        ("1", "2026-06-09", "Reader A", &["AAAA,1,2"]),
        ("2", "2026-06-09", "Reader A", &["AAAA,3,4"]),
        ("3", "2026-06-10", "Reader A", &["AAAA,5,6"]),
    ]);
    assert_eq!(codes(&looked_through(&[("sheet.csv", &text)])), []);
    let with = |rows: &str| {
        let plan = format!("site,line,permission from,permission until\n{rows}");
        looked_through(&[("permissions.csv", &plan), ("sheet.csv", &text)])
    };
    // the last day itself still holds; without a day it holds on
    let held =
        with("Invented,1,the owner,2026-06-09\nInvented,2,the owner,\nInvented,3,the owner,2030-01-01\n");
    assert_eq!(codes(&held), []);
    let input = with("Invented,1,the owner,2026-06-08\nInvented,2,needed,\n");
    assert_eq!(codes(&input), [("permission-ended", 2), ("permission-missing", 3)]);
    let lines = value(&input, "permission-missing", "lines");
    assert_eq!(lines, &Value::List(vec![Value::Text("2".into()), Value::Text("3".into())]));
    assert!(input.held.is_empty());
    // another site's permissions are its own
    assert_eq!(codes(&with("Elsewhere,1,the owner,2020-01-01\n")), []);
    // a cell that isn't a day, or a day of nobody's, is named and kept out, and the row stays
    let input = with("Invented,1,the owner,June\nInvented,2,,2027-01-01\n");
    assert_eq!(codes(&input), [("permission-until-not-understood", 2), ("permission-from-missing", 3)]);
}

/// Six lines of 5 to 10 % and one of 90 %. By hand: arcsine roots of .05 … .10 and .90 in radians are .2255, .2475,
/// .2678, .2868, .3047, .3218, 1.2490; median .2868, deviations .0613, .0393, .0190, 0, .0179, .0350, .9622; their
/// median .0350; the last lies 27.5 of it away, past 15.9 for seven lines.
#[test]
fn a_line_far_from_its_sites_others() {
    let covers = |last: &str| {
        let mut text = "site,line,line length,date,reader,species,start (m),stop (m)\n".to_owned();
        let stops = ["1.50", "1.80", "2.10", "2.40", "2.70", "3.00", last];
        for (line, stop) in stops.iter().enumerate() {
            writeln!(text, "Invented,{},30 m,2026-06-09,Reader A,AAAA,0,{stop}", line + 1).unwrap();
        }
        text
    };
    let input = sheet(&covers("27"));
    assert_eq!(codes(&input), [("line-far-from-others", 8)]);
    let Value::Number(distance, _) = value(&input, "line-far-from-others", "distance") else { panic!() };
    assert!((distance - 27.5).abs() < 0.1, "{distance}");
    assert_eq!(codes(&sheet(&covers("6"))), []);
}

/// Edges with the given hundredths of a foot, one whole foot after another.
fn feet(hundredths: &[u32]) -> String {
    let mut text =
        "site,line,line length,date,reader,species,start (decimal ft),stop (decimal ft)\n".to_owned();
    for (pair, edges) in hundredths.chunks_exact(2).enumerate() {
        let (start, stop) = (2 * pair + 1, 2 * pair + 2);
        let (from, to) = (edges[0], edges[1]);
        writeln!(text, "Invented,1,100 ft,2026-06-09,Reader A,AAAA,{start}.{from:02},{stop}.{to:02}")
            .unwrap();
    }
    text
}

/// Four edges by chance: 0.12^4 = 0.000 207, one in 4 823; three: 0.001 73, which is not below 0.001.
#[test]
fn feet_and_inches_under_decimal_feet() {
    let input = sheet(&feet(&[6, 11, 4, 9]));
    assert_eq!(codes(&input), [("feet-and-inches-suspected", 2)]);
    let Value::Number(odds, _) = value(&input, "feet-and-inches-suspected", "odds") else { panic!() };
    assert!((odds - 4822.53).abs() < 0.01, "{odds}");
    assert_eq!(input.held.len(), 1);
    assert_eq!(codes(&sheet(&feet(&[6, 11, 4, 12]))), []);
    // whole feet and tenths of feet aren't inches
    assert_eq!(codes(&sheet(&feet(&[0, 0, 0, 0, 0, 0]))), []);
    assert_eq!(codes(&sheet(&feet(&[10, 0, 10, 0, 10, 0]))), []);
}

/// Fifty edges of which half end in 0: against five each, (20² + 9 · k …) is far past 33.7, the 0.01 % point of
/// chi-square with 9 degrees of freedom (any table); fifty with five of each digit give nothing.
#[test]
fn digits_that_heap_and_a_reader_who_reads_evenly() {
    let even: Vec<u32> = (0..50).map(|edge| 10 * (edge % 7) + edge % 10).collect();
    assert_eq!(of(&sheet(&feet(&even)), "digits-heap").len(), 0);
    let heaped: Vec<u32> =
        (0..50).map(|edge| 10 * (edge % 7 + 2) + if edge % 2 == 0 { 0 } else { edge % 10 }).collect();
    let input = sheet(&feet(&heaped));
    assert_eq!(codes(&input), [("digits-heap", 2)]);
    assert_eq!(value(&input, "digits-heap", "most"), &Value::Count(25));
    // 25 noughts and five each of 1, 3, 5, 7 and 9: (20² + 4 · 5²) / 5 = 100
    let Value::Number(statistic, _) = value(&input, "digits-heap", "statistic") else { panic!() };
    assert!((statistic - 100.0).abs() < 1e-9, "{statistic}");
    // a sheet read to tenths alone is tested on its tenths
    let tenths: Vec<u32> = (0..50).map(|edge| 10 * (edge % 10)).collect();
    assert_eq!(of(&sheet(&feet(&tenths)), "digits-heap").len(), 0);
    // forty-eight edges are too few
    assert_eq!(of(&sheet(&feet(&heaped[..48])), "digits-heap").len(), 0);
}
