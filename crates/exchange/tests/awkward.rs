//! Files as they come in: what would turn into a wrong number in silence is refused and placed. All data is invented.

use proptest::prelude::*;
use tautline_exchange::{Options, Read, Source, read};
use tautline_survey::finding::Weight;
use tautline_survey::goal::Percent;
use tautline_survey::plan::Slope;
use tautline_survey::visit::{Extent, Outcome, State};

fn files(files: &[(&str, &str)]) -> Read {
    let source = |(name, text): &(&str, &str)| Source { name: (*name).into(), bytes: (*text).into() };
    read(&files.iter().map(source).collect::<Vec<_>>(), &Options::default())
}

fn one(text: &str) -> Read {
    files(&[("sheet.csv", text)])
}

/// Code, row and weight of every finding.
fn found(read: &Read) -> Vec<(&'static str, u64, Weight)> {
    let of = |finding: &tautline_survey::finding::Finding| {
        (finding.message.code, finding.place.as_ref().map_or(0, |place| place.row), finding.weight)
    };
    read.input.findings.iter().map(of).collect()
}

const HEAD: &str = "site,line,line length,species,start (cm),stop (cm)\n";

/// 1,5 to 2,25 between commas would be read as 1 to 5, with two cells too many.
#[test]
fn a_decimal_comma_between_commas_is_no_number() {
    let read = one(&format!("{HEAD}A,1,20 m,SHAD,1,5,2,25\nA,1,20 m,SHAD,3,4\n"));
    assert_eq!(found(&read), [("row-too-long", 2, Weight::MustSettle)]);
    assert_eq!(read.input.visits[0].intercepts.len(), 1);
}

/// 1,250 cm is 1250 cm to one person and 1.25 cm to another.
#[test]
fn commas_of_thousands_are_not_taken_for_decimals() {
    let head = HEAD.replace(',', "\t");
    let read = one(&format!("{head}A\t1\t20 m\tSHAD\t1,250\t1,300\nA\t1\t20 m\tSHAD\t3\t4\n"));
    assert_eq!(found(&read), [("length-other-decimal-mark", 2, Weight::MustSettle)]);
    let read = one(&format!("{head}A\t1\t20 m\tSHAD\t1,250\t1,5\n"));
    assert_eq!(found(&read), []);
}

/// Only the office knows which part of 6/12 is the month; its heading says it.
#[test]
fn days_are_read_in_the_order_that_the_heading_names() {
    let dated = |heading: &str, day: &str| {
        let head = HEAD.replace("species", &format!("{heading},species"));
        let read = one(&format!("{head}A,1,20 m,{day},SHAD,3,4\n"));
        let date = read.input.visits.first().and_then(|visit| visit.date);
        (date.map_or_else(String::new, |date| date.to_string()), found(&read).len())
    };
    for (heading, day, wanted) in [
        ("date (m/d/y)", "6/12/2024", "2024-06-12"),
        ("Date (MM/DD/YYYY)", "06/12/2024", "2024-06-12"),
        ("date (d.m.y)", "6.12.2024", "2024-12-06"),
        ("date (d/m/y)", "2024-12-06", "2024-12-06"),
    ] {
        assert_eq!(dated(heading, day), (wanted.to_owned(), 0), "{heading}: {day}");
    }
    for (heading, day) in [
        ("date", "6/12/2024"),
        ("date (m/d/y)", "13/12/2024"),
        ("date (m/d/y)", "6/12/24"),
        ("date (month)", "6/12/2024"),
    ] {
        assert!(dated(heading, day).1 > 0, "{heading}: {day}");
    }
}

/// A total under the readings would be a line of its own, or count every plant twice.
#[test]
fn totals_are_no_readings() {
    let lengths = HEAD.replace("start (cm),stop (cm)", "length (cm)");
    let rows = "A,1,20 m,SHAD,30\nA,1,20 m,ATCA,50\nA,1,20 m,TOTAL,80\nA,Total:,,,80\nAverage cover,,,,4\n";
    let read = one(&format!("{lengths}{rows}"));
    assert_eq!(
        found(&read).iter().map(|(code, row, _)| (*code, *row)).collect::<Vec<_>>(),
        [("row-of-totals", 4), ("row-of-totals", 5), ("row-of-totals", 6)]
    );
    assert_eq!((read.input.visits.len(), read.input.plan.len()), (1, 1));
    assert_eq!(read.input.visits[0].intercepts.len(), 2);
}

/// A column that says which plants are dead is no remark beside the readings, whatever an office calls it.
#[test]
fn dead_is_dead_under_any_of_the_usual_headings() {
    for (heading, dead) in [("state", "dead"), ("Status", "D"), ("Live?", "no"), ("Alive", "no")] {
        let head = HEAD.replace("species", &format!("{heading},species"));
        let read = one(&format!("{head}A,1,20 m,{dead},SHAD,3,4\n"));
        assert_eq!(found(&read), [], "{heading}");
        assert_eq!(read.input.visits[0].intercepts[0].state, State::Dead, "{heading}");
    }
}

#[test]
fn empty_cells_behind_the_last_heading_do_no_harm() {
    assert_eq!(found(&one(&format!("{HEAD}A,1,20 m,SHAD,3,4,,,\n"))), []);
}

#[test]
fn a_quote_that_never_closes_swallows_rows_and_says_so() {
    let read = one(&format!("{HEAD}A,1,20 m,SHAD,3,4\nA,1,20 m,\"SHAD,5,6\nA,1,20 m,SHAD,7,8\n"));
    assert_eq!(found(&read), [("cell-over-several-rows", 3, Weight::MustSettle)]);
    assert_eq!(read.input.visits[0].intercepts.len(), 1);
}

#[test]
fn a_unit_that_is_none_is_not_replaced_by_another() {
    let options = Options { unit: tautline_engine::length::Bare::from_words("cm"), ..Options::default() };
    let text = "site,line,line length,species,start,stop,unit\nA,1,20 m,SHAD,3,4,yards\n";
    let read = read(&[Source { name: "a.csv".into(), bytes: text.into() }], &options);
    assert_eq!(found(&read)[0], ("unit-not-known", 2, Weight::MustSettle));
}

#[test]
fn one_column_under_two_headings() {
    let read = one("site,line,line length,species,start (cm),stop (cm),Start (in)\nA,1,20 m,SHAD,3,4,9\n");
    assert_eq!(found(&read), [("heading-twice", 1, Weight::MustSettle)]);
}

/// An area of 1,000 acres is not one acre.
#[test]
fn a_mark_of_thousands_in_an_area_is_refused() {
    let read = one("site,stratum,area\nA,flat,\"1,000 acres\"\nA,wash,10 ha\nA,wash,12 ha\n");
    assert_eq!(
        found(&read),
        [("area-not-a-number", 2, Weight::MustSettle), ("stratum-listed-twice", 4, Weight::MustSettle)]
    );
    // 10 ha = 100 000 m², of a million mm² each
    assert_eq!(read.input.strata[0].area, 100_000_000_000);
}

#[test]
fn a_length_of_zero_is_named_and_is_no_reading() {
    let read = one(&format!("{HEAD}A,1,20 m,SHAD,3,3\nA,1,20 m,SHAD,5,6\n"));
    assert_eq!(found(&read), [("zero-length", 2, Weight::HaveALook)]);
    assert_eq!(read.input.visits[0].intercepts.len(), 1);
}

/// A line whose only row was set aside, or whose readings were not handed in, is no line with nothing on it.
#[test]
fn a_zero_is_only_what_somebody_wrote_down_as_one() {
    let read = one(&format!("{HEAD}A,1,20 m,SHAD,9,3\n"));
    assert_eq!(
        found(&read),
        [("stop-before-start", 2, Weight::MustSettle), ("read-but-no-readings", 2, Weight::MustSettle)]
    );
    assert_eq!(read.input.visits[0].outcome, Outcome::NotRead);
    let read = one(&format!("{LINES}read\n"));
    assert_eq!(found(&read), [("read-but-no-readings", 2, Weight::MustSettle)]);
    let read = one(&format!("{LINES}nothing found\n"));
    assert_eq!((found(&read), &read.input.visits[0].outcome), (vec![], &Outcome::Read));
}

#[test]
fn two_outcomes_of_one_reading_are_settled_by_a_person() {
    let read = one(&format!("{LINES}not read\nA,1,20 m,2026-06-09,Reader A,nothing found\n"));
    assert_eq!(found(&read), [("outcomes-differ", 3, Weight::MustSettle)]);
    assert_eq!(read.input.visits[0].outcome, Outcome::NotRead);
}

/// 20 m could be the line's length or an intercept's.
#[test]
fn a_bare_length_beside_a_line_is_not_guessed() {
    let read = one("line,length\n1,20 m\n");
    assert_eq!(found(&read), [("length-of-what", 1, Weight::MustSettle)]);
    assert!(read.input.visits.is_empty());
}

#[test]
fn a_file_without_sites_is_one_site_and_an_empty_site_is_none() {
    let read = one("line,line length,species,start (cm),stop (cm)\n1,20 m,SHAD,3,4\n");
    assert_eq!((found(&read), read.input.visits[0].site.as_str()), (vec![], "site"));
    assert_eq!(found(&one(&format!("{HEAD},1,20 m,SHAD,3,4\n"))), [("site-missing", 2, Weight::MustSettle)]);
}

/// A line is never read too low in silence: a row that doesn't say its site or line may belong to a neighbour.
#[test]
fn a_row_without_site_or_line_holds_back_the_lines_it_may_belong_to() {
    let short_of = |rows: &str| -> Vec<(String, u32)> {
        let visits = one(&format!("{HEAD}{rows}")).input.visits;
        visits.into_iter().map(|visit| (visit.line, visit.set_aside)).collect()
    };
    let lines =
        |of: &[(&str, u32)]| of.iter().map(|&(line, rows)| (line.to_owned(), rows)).collect::<Vec<_>>();
    // in the middle of a line, at its end, before its first row
    assert_eq!(short_of("A,1,20 m,S,3,4\n,1,20 m,S,5,6\nA,1,20 m,S,7,8\n"), lines(&[("1", 1)]));
    assert_eq!(short_of("A,1,20 m,S,3,4\n,1,20 m,S,5,6\n,1,20 m,S,7,8\n"), lines(&[("1", 2)]));
    assert_eq!(short_of("A,1,20 m,S,3,4\n,2,20 m,S,5,6\nA,2,20 m,S,7,8\n"), lines(&[("1", 0), ("2", 1)]));
    // between two lines it may belong to either
    assert_eq!(short_of("A,1,20 m,S,3,4\nA,,20 m,S,5,6\nA,2,20 m,S,7,8\n"), lines(&[("1", 1), ("2", 1)]));
    // nor can cells that can't be told apart say where they belong: a decimal comma, a quote that never closes
    assert_eq!(short_of("A,1,20 m,S,3,4\nA,1,20 m,S,5,5,6\nA,2,20 m,S,7,8\n"), lines(&[("1", 1), ("2", 1)]));
    assert_eq!(short_of("A,1,20 m,S,3,4\nA,1,20 m,\"S,5,6\nA,2,20 m,S,7,8\n"), lines(&[("1", 1)]));
    // a remark below the table belongs to none
    assert_eq!(short_of("A,1,20 m,S,3,4\nread on a dry day,,,,,\n"), lines(&[("1", 0)]));
}

#[test]
fn columns_that_nothing_is_done_with_are_named() {
    let read = one("site,goal,priority\nA,at least 15 %,high\n");
    assert_eq!(found(&read), [("columns-not-used", 1, Weight::Note)]);
}

#[test]
fn a_goal_says_how_sure_it_must_be() {
    let read = one("site,goal,confidence\nA,at least 15 %,97.5 %\nA,at least 20 %,0.9\n");
    assert_eq!(found(&read), [("goal-confidence", 3, Weight::MustSettle)]);
    let sure: Vec<_> = read.goals.iter().map(|goal| goal.goal.confidence_per_mille).collect();
    assert_eq!(sure, [Some(975)]);
}

#[test]
fn a_slope_needs_its_unit() {
    let read = one("line,line length,slope (deg)\n1,20 m,7\n2,20 m,12 %\n3,20 m,steep\n4,20 m,\n");
    assert_eq!(found(&read), [("slope-not-understood", 4, Weight::MustSettle)]);
    let slopes: Vec<_> = read.input.plan.iter().map(|line| line.slope).collect();
    assert_eq!(slopes, [Some(Slope::Degrees(70_000)), Some(Slope::Grade(Percent(120_000))), None, None]);
}

const LINES: &str = "site,line,line length,date,reader,outcome\nA,1,20 m,2026-06-09,Reader A,";

#[test]
fn readings_fill_the_visit_that_a_lines_table_announced() {
    let readings = "site,line,date,species,start (cm),stop (cm)\nA,1,2026-06-09,SHAD,3,4\n";
    let read = files(&[("readings.csv", readings), ("lines.csv", &format!("{LINES}read\n"))]);
    assert_eq!(found(&read), []);
    assert_eq!(read.input.visits.len(), 1);
    assert_eq!(read.input.visits[0].reader, "Reader A");
    assert_eq!(read.input.visits[0].intercepts.len(), 1);
}

/// A lines table without dates still speaks of the line that was read.
#[test]
fn an_announcement_without_date_is_filled_too() {
    let lines = "site,line,line length,outcome\nA,1,20 m,read\n";
    let readings = "site,line,date,species,start (cm),stop (cm)\nA,1,2026-06-09,SHAD,3,4\n";
    let read = files(&[("lines.csv", lines), ("readings.csv", readings)]);
    assert_eq!((found(&read), read.input.visits.len()), (vec![], 1));
    assert_eq!(read.input.visits[0].date.unwrap().to_string(), "2026-06-09");
}

#[test]
fn readings_of_a_line_that_was_not_read_or_empty_are_settled_by_a_person() {
    let readings = "site,line,date,species,start (cm),stop (cm)\nA,1,2026-06-09,SHAD,3,4\n";
    for (outcome, code) in
        [("not read", "not-read-but-readings"), ("nothing found", "nothing-found-but-readings")]
    {
        let read = files(&[("lines.csv", &format!("{LINES}{outcome}\n")), ("readings.csv", readings)]);
        assert_eq!(found(&read), [(code, 2, Weight::MustSettle)]);
        assert_eq!(read.input.visits[0].outcome, Outcome::NotRead);
    }
}

/// The sheet exported again with one row more: other bytes, the same visit.
#[test]
fn a_visit_in_two_files_is_not_added_up() {
    let first = format!("{HEAD}A,1,20 m,SHAD,3,4\n");
    let again = format!("{first}A,1,20 m,SHAD,5,6\n");
    let read = files(&[("first.csv", &first), ("again.csv", &again)]);
    assert_eq!(found(&read), [("visit-in-two-files", 2, Weight::MustSettle)]);
    assert_eq!(read.input.visits[0].intercepts.len(), 1);
}

#[test]
fn rows_that_disagree_about_the_plan() {
    let read = one("site,line,line length,stratum,plot\nA,1,20 m,flat,P1\nA,1,25 m,wash,P1\n");
    assert_eq!(
        found(&read),
        [("plan-differs", 3, Weight::MustSettle), ("line-length-differs", 3, Weight::MustSettle)]
    );
}

#[test]
fn conditions_of_every_row_are_kept_once_each() {
    let text = "site,line,line length,species,start (cm),stop (cm),wind\nA,1,20 m,SHAD,3,4,calm\nA,1,20 m,SHAD,5,6,calm\nA,1,20 m,SHAD,7,8,gusts\n";
    let conditions = one(text).input.visits.remove(0).conditions;
    let wind = |value: &str| ("wind".to_owned(), value.to_owned());
    assert_eq!(conditions, [wind("calm"), wind("gusts")]);
}

#[test]
fn a_protocol_with_anything_wrong_is_not_used() {
    let read = files(&[("ours.toml", "name = \"ours\"\n[gap]\nlimt = \"2 in\"\n")]);
    assert!(read.input.protocols.is_empty());
    assert_eq!(read.input.findings.len(), 1);
}

/// Each line is a visit of its own and none is lost.
#[test]
fn many_lines() {
    let rows: Vec<String> = (0..20_000).map(|line| format!("A,{line},20 m,SHAD,3,4\n")).collect();
    let text = HEAD.to_owned() + &rows.concat();
    let read = one(&text);
    assert_eq!((read.input.visits.len(), read.input.plan.len()), (20_000, 20_000));
    assert_eq!(found(&read), []);
}

/// Text that looks enough like a table to reach every branch.
fn nearly_a_table() -> impl Strategy<Value = String> {
    let word = prop::sample::select(vec![
        "site",
        "line",
        "start (in)",
        "stop",
        "length",
        "species",
        "outcome",
        "unit",
        "area (ha)",
        "stratum",
        "code",
        "form",
        "goal",
        "read to",
        "not read",
        "partly read",
        "1,5",
        "5'3\"",
        "2026-06-09",
        "-1",
        "9999999999999",
        "\"",
        "",
        "shrub",
        "1/3 in",
        "at least 15 %",
        "½",
        "protocol",
        "line length",
    ]);
    let cell = prop_oneof![word.prop_map(str::to_owned), "\\PC{0,6}"];
    let row = prop::collection::vec(cell, 0..8);
    (prop::sample::select(vec![",", ";", "\t"]), prop::collection::vec(row, 0..12)).prop_map(
        |(delimiter, rows)| rows.iter().map(|row| row.join(delimiter)).collect::<Vec<_>>().join("\r\n"),
    )
}

proptest! {
    #[test]
    fn arbitrary_bytes_never_stop_it(bytes in prop::collection::vec(any::<u8>(), 0..400), name in "(a\\.csv|a\\.toml)") {
        let rows = bytes.len() as u64 + 1;
        let read = read(&[Source { name, bytes }], &Options::default());
        let count = read.input.visits.len() + read.input.findings.len();
        // nothing comes out that some row, key or cell didn't put in
        prop_assert!(count as u64 <= 2 * rows + 30);
    }

    #[test]
    fn what_comes_out_is_bounded_and_every_intercept_has_room(text in nearly_a_table()) {
        let rows = text.lines().count();
        let read = one(&text);
        prop_assert!(read.input.visits.len() <= rows);
        for finding in &read.input.findings {
            if let Some(place) = &finding.place {
                prop_assert!(place.row <= rows.max(1) as u64);
            }
        }
        for intercept in read.input.visits.iter().flat_map(|visit| &visit.intercepts) {
            if let Extent::Edges { start, stop } = &intercept.extent {
                prop_assert!(start.length() < stop.length());
            }
        }
    }
}

/// Under rules that nobody knows no line speaks for the site: all that name them wait, and it is said once.
#[test]
fn every_line_under_a_protocol_that_nobody_knows_waits() {
    let head = "site,line,line length,protocol,species,start (cm),stop (cm)\n";
    let rows = "A,1,20 m,lost rules,SHAD,1,5\nA,2,20 m,lost rules,SHAD,1,5\nA,2,20 m,lost rules,SHAD,7,9\nA,3,20 m,,SHAD,1,5\nB,1,20 m,lost rules,SHAD,1,5\n";
    let mut input = one(&format!("{head}{rows}")).input;
    let unknown = |finding: &&tautline_survey::finding::Finding| finding.message.code == "protocol-not-known";
    let rows: Vec<u64> = input
        .findings
        .iter()
        .filter(unknown)
        .filter_map(|one| one.place.as_ref())
        .map(|place| place.row)
        .collect();
    assert_eq!(rows, [2, 6], "once at each site");
    tautline_survey::check::check(&mut input);
    let held: Vec<(&str, &str)> =
        input.held.iter().map(|&at| (&*input.visits[at].site, &*input.visits[at].line)).collect();
    assert_eq!(held, [("A", "1"), ("A", "2"), ("B", "1")]);
}

/// Titles and remarks as spreadsheets write them out, padded with delimiters or not: they are named, and rows keep their numbers.
#[test]
fn titles_stand_above_the_headings() {
    for above in ["Hollow Flat; read in June;;;;\n;;;;;\n", "Invented office, June\n\n"] {
        let table =
            "site;line;line length;species;start (cm);stop (cm)\nA;1;20 m;SHAD;3;x\nA;1;20 m;SHAD;3;4\n";
        let read = one(&format!("{above}{table}"));
        let expected =
            [("rows-above-headings", 1, Weight::Note), ("length-not-a-number", 4, Weight::MustSettle)];
        assert_eq!(found(&read), expected);
        assert_eq!(read.input.visits[0].intercepts.len(), 1);
    }
    // what is no table stays none
    assert_eq!(found(&one("a\nb\nc,d\n")), [("headings-not-understood", 0, Weight::MustSettle)]);
}
