//! A packet of three lines, invented, for the tests of its page and of its sheets.

use tautline_engine::length::Unit;
use tautline_report::packet::{Packet, Paper};
use tautline_survey::date::Date;
use tautline_survey::layout::{End, LaidLine, LayoutOutput, Leg, MapLine, MapOutput, MapStratum, Over};
use tautline_survey::place::Openness;
use tautline_survey::plan::{Permission, PlannedLine};
use tautline_survey::plants::{GrowthForm, Plant};
use tautline_survey::protocol::Protocol;

fn line(name: &str, reserve: bool) -> LaidLine {
    let end = |latitude| End { latitude, longitude: -113.7, utm: "12 N 277000 4686000".to_owned() };
    LaidLine {
        line: name.to_owned(),
        stratum: Some("flat".to_owned()),
        plot: None,
        reserve,
        start: end(42.3),
        end: end(42.300_45),
        true_bearing: 350,
        magnetic_bearing: Some(338.6),
        draw: 1,
        turned: false,
        staked: false,
    }
}

fn layout() -> LayoutOutput {
    LayoutOutput {
        format: "tautline.plan-lines",
        version: 1,
        site: "Hollow Flat <invented>".to_owned(),
        seed: 1,
        design: "balanced".to_owned(),
        edge: "turn".to_owned(),
        judged: None,
        line_length: "50 m".to_owned(),
        line_length_mm: 50_000,
        apart_mm: 50_000,
        strata: Vec::new(),
        position_error_m: 0,
        declination: None,
        lines: vec![line("1", false), line("2", false), line("R1", true)],
        walk: vec!["2".to_owned(), "1".to_owned()],
        legs: vec![Leg {
            from: Some("2".to_owned()),
            to: "1".to_owned(),
            metres: 111.8,
            points: Vec::new(),
            over: Some(Over::KeptOut),
        }],
        given_up_at_the_edge: 0,
        given_up_kept_out: 0,
        given_up_too_near: 0,
    }
}

fn map() -> MapOutput {
    let square = vec![[0.0, 0.0], [300.0, 0.0], [300.0, 300.0], [0.0, 300.0]];
    let line = |name: &str, east, reserve| MapLine {
        line: name.to_owned(),
        from: [east, 50.0],
        to: [east, 100.0],
        reserve,
    };
    MapOutput {
        strata: vec![MapStratum { name: "flat".to_owned(), rings: vec![square] }],
        keep_out: Vec::new(),
        lines: vec![line("1", 50.0, false), line("2", 150.0, false), line("R1", 250.0, true)],
        way: vec![vec![[150.0, 100.0], [50.0, 50.0]]],
        degrees: Vec::new(),
    }
}

/// Shows a packet in which the site's places are told so far.
pub(crate) fn packed<T>(
    (cautions, calls): (&[String], &[String]),
    paper: Paper,
    openness: Openness,
    show: impl FnOnce(&Packet) -> T,
) -> T {
    let plant = Plant {
        name: "Atriplex canescens".to_owned(),
        common: "fourwing saltbush".to_owned(),
        key_features: "bracts with four <wings>".to_owned(),
        ..Plant::new("ATCA", GrowthForm::Shrub)
    };
    let known = PlannedLine {
        site: layout().site,
        line: "2".to_owned(),
        length: None,
        stratum: None,
        plot: None,
        judgement: None,
        slope: None,
        permission: Some(Permission { from: "the <owner>".to_owned(), until: Date::read("2027-03-31") }),
    };
    show(&Packet {
        layout: &layout(),
        map: &map(),
        protocol: Some(&Protocol { name: "Own rules".to_owned(), ..Protocol::default() }),
        plants: &[plant],
        known: &[known],
        unit: Unit::Inch,
        paper,
        openness,
        kept_back: openness != Openness::Exact,
        cautions,
        calls,
    })
}
