//! What must not matter to the checks: the order of rows and the unit.

use super::sheet;
use proptest::prelude::*;
use std::fmt::Write;
use tautline_survey::input::Input;

/// A row in whole centimetres on a line of 30 m.
#[derive(Clone, Debug)]
struct Row {
    line: u8,
    year: u16,
    species: u8,
    start: u32,
    length: u32,
    dead: bool,
}

fn row(longest: u32) -> impl Strategy<Value = Row> {
    (1_u8..4, 2025_u16..2027, 0_u8..3, 0_u32..longest, 0_u32..200, prop::bool::weighted(0.2)).prop_map(
        |(line, year, species, start, length, dead)| Row { line, year, species, start, length, dead },
    )
}

fn text(rows: &[Row], unit: &str, write: fn(u32) -> String) -> String {
    let mut text = format!("site,line,line length,date,reader,species,start ({unit}),stop ({unit}),state\n");
    for Row { line, year, species, start, length, dead } in rows {
        let (from, to, code) =
            (write(*start), write(start + length), ["AAAA", "BBBB", "CCCC"][usize::from(*species)]);
        let state = if *dead { "dead" } else { "live" };
        writeln!(text, "Invented,{line},30 m,{year}-06-09,Reader A,{code},{from},{to},{state}").unwrap();
    }
    text
}

fn metres(centimetres: u32) -> String {
    format!("{}.{:02}", centimetres / 100, centimetres % 100)
}

/// Code, line, day and species of every finding, but of the checks that are about order itself.
fn said(input: &Input) -> Vec<String> {
    let about_order = ["positions-fall", "positions-out-of-order"];
    let mut said: Vec<String> = input
        .findings
        .iter()
        .filter(|one| !about_order.contains(&one.message.code))
        .map(|one| {
            let about = one.about.as_deref().cloned().unwrap_or_default();
            format!(
                "{} {} {:?} {}",
                one.message.code,
                about.line,
                about.date.map(tautline_survey::date::Date::year),
                about.species
            )
        })
        .collect();
    said.sort();
    said
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn the_order_of_rows_does_not_matter(
        (rows, shuffled) in prop::collection::vec(row(3200), 1..40)
            .prop_flat_map(|rows| (Just(rows.clone()), Just(rows).prop_shuffle())),
    ) {
        let (one, other) = (sheet(&text(&rows, "m", metres)), sheet(&text(&shuffled, "m", metres)));
        prop_assert_eq!(said(&one), said(&other));
        prop_assert_eq!(one.held.len(), other.held.len());
    }

    /// Rows wholly beyond the tape are left out: which smaller unit they may have been meant in depends on theirs.
    #[test]
    fn the_unit_does_not_matter(rows in prop::collection::vec(row(3000), 1..40)) {
        let in_metres = said(&sheet(&text(&rows, "m", metres)));
        prop_assert_eq!(&in_metres, &said(&sheet(&text(&rows, "cm", |at| at.to_string()))));
        prop_assert_eq!(&in_metres, &said(&sheet(&text(&rows, "mm", |at| format!("{at}0")))));
    }
}
