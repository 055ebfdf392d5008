use super::*;
use crate::plan::PlannedLine;
use crate::protocol::{Bridge, Dead, Gap as GapWords, Overlap};
use crate::visit::{Intercept, State};
use tautline_engine::length::{Bare, DecimalMark, Unit};

fn inches(text: &str) -> Measure {
    Measure::read(text, Some(Bare::Unit(Unit::Inch)), DecimalMark::Point).unwrap()
}

fn inch(count: i64) -> Length {
    Length::from_units(count, Unit::Inch)
}

fn intercept(id: u32, species: &str, extent: Extent) -> Intercept {
    Intercept {
        id,
        species: species.into(),
        extent,
        state: State::Live,
        plant: None,
        height: None,
        width: None,
        note: String::new(),
        place: None,
    }
}

fn edges(id: u32, species: &str, start: &str, stop: &str) -> Intercept {
    intercept(id, species, Extent::Edges { start: inches(start), stop: inches(stop) })
}

fn input(protocol: Protocol, intercepts: Vec<Intercept>) -> Input {
    let mut input = Input::default();
    let protocol = input.add_protocol(protocol);
    input.plan.push(PlannedLine {
        site: "Invented".into(),
        line: "1".into(),
        length: Some(inches("65 ft")),
        stratum: None,
        plot: None,
        judgement: None,
        slope: None,
        permission: None,
    });
    input.visits.push(Visit {
        site: "Invented".into(),
        line: "1".into(),
        date: None,
        reader: String::new(),
        recorder: String::new(),
        pass: String::new(),
        protocol,
        length: None,
        outcome: Outcome::Read,
        intercepts,
        set_aside: 0,
        conditions: Vec::new(),
        place: None,
    });
    input
}

fn gap(limit: &str) -> GapWords {
    GapWords { limit: Some(inches(limit)), ..GapWords::default() }
}

/// Common practice, no source: a 65-ft line, live woody canopy only, gaps under 2.5 in ignored, lengths only:
/// 29 + 44 = 73 in of 780 in, 9.359 %.
#[test]
fn seventy_three_inches_of_seven_hundred_and_eighty() {
    let protocol = Protocol { dead: Some(Dead::LeftOut), gap: gap("2.5"), ..Protocol::default() };
    let read = ["5", "2.5", "2.5", "5", "10.5", "3.5", "16", "17", "3.5", "2", "5.5"];
    let rows = (1..).zip(read).map(|(id, text)| intercept(id, "", Extent::Length(inches(text)))).collect();
    let result = line_result(&input(protocol, rows), 0, &Choice::default()).unwrap();
    assert_eq!(result.recording, Recording::LengthsOnly);
    assert_eq!(result.canopy, Bounds::known(inch(73)));
    assert_eq!(result.read, inch(780));
    assert_eq!(tautline_engine::work::rounded_ratio(7300, 780, 3), "9.359");
    assert!((result.share(result.canopy.low) * 100.0 - 9.358_974_358_974_36).abs() < 1e-12);
}

#[test]
fn lengths_of_two_species_leave_the_union_open_unless_overlap_is_written_once() {
    let rows = || {
        vec![
            intercept(1, "AAAA", Extent::Length(inches("30"))),
            intercept(2, "BBBB", Extent::Length(inches("20"))),
        ]
    };
    let each = line_result(&input(Protocol::default(), rows()), 0, &Choice::default()).unwrap();
    assert_eq!(each.canopy, Bounds { low: inch(30), high: inch(50) });
    assert_eq!(each.sum, Bounds::known(inch(50)));
    assert_eq!(each.species[0].composition, Some(0.6));
    let protocol = Protocol { overlap: Some(Overlap::Once), ..Protocol::default() };
    let once = line_result(&input(protocol, rows()), 0, &Choice::default()).unwrap();
    assert_eq!(once.canopy, Bounds::known(inch(50)));
}

#[test]
fn a_coarser_rule_is_worked_out_and_a_finer_one_refused() {
    let protocol = Protocol { gap: gap("2.5"), ..Protocol::default() };
    let rows = vec![edges(1, "AAAA", "0", "10"), edges(2, "AAAA", "13", "20")];
    let input = input(protocol, rows);
    let under = |limit| line_result(&input, 0, &Choice { gap_limit: Some(inch(limit)), ..Choice::default() });
    assert_eq!(under(4).unwrap().canopy, Bounds::known(inch(20)));
    assert_eq!(under(2).unwrap_err().message.code, "finer-than-recorded");
}

#[test]
fn lengths_only_can_never_be_re_ruled() {
    let protocol = Protocol { gap: gap("2.5"), ..Protocol::default() };
    let input = input(protocol, vec![intercept(1, "AAAA", Extent::Length(inches("30")))]);
    let asked = Choice { gap_limit: Some(inch(4)), ..Choice::default() };
    let refused = line_result(&input, 0, &asked).unwrap_err().message;
    assert_eq!(refused.code, "lengths-cannot-be-re-ruled");
    // 30 in as written; a gap of at most 4 in before and behind it closed: 38 in. The line is 780 in long.
    let says = |name| refused.values.iter().find(|(own, _)| *own == name).map(|(_, value)| value.clone());
    assert_eq!(says("low"), Some(Value::Share(30.0 / 780.0, 1)));
    assert_eq!(says("high"), Some(Value::Share(38.0 / 780.0, 1)));
}

#[test]
fn without_plant_marks_another_limit_gives_bounds() {
    let mut protocol = Protocol { gap: gap("2"), ..Protocol::default() };
    protocol.gap.two_plants = Some(Bridge::Breaks);
    let rows = vec![edges(1, "AAAA", "0", "10"), edges(2, "AAAA", "13", "20")];
    let input = input(protocol, rows);
    let as_read = line_result(&input, 0, &Choice::default()).unwrap();
    assert_eq!(as_read.canopy, Bounds::known(inch(17)));
    let wider = line_result(&input, 0, &Choice { gap_limit: Some(inch(4)), ..Choice::default() }).unwrap();
    assert_eq!(wider.canopy, Bounds { low: inch(17), high: inch(20) });
    assert_eq!(wider.findings[0].message.code, "plant-marks-missing");
}

#[test]
fn a_line_without_length_is_named_and_a_line_with_nothing_is_a_zero() {
    let mut without = input(Protocol::default(), Vec::new());
    let zero = line_result(&without, 0, &Choice::default()).unwrap();
    assert_eq!((zero.recording, zero.canopy), (Recording::NothingFound, Bounds::default()));
    without.plan.clear();
    assert_eq!(line_result(&without, 0, &Choice::default()).unwrap_err().message.code, "line-length-missing");
}

/// By hand: 10 in live and 20 in dead of 780 in; asked to count, they are 30 in, whatever the protocol says of dead canopy.
#[test]
fn dead_canopy_counts_where_a_person_asks_for_it() {
    let dead = Intercept { state: State::Dead, ..edges(2, "AAAA", "50", "70") };
    let canopy = |protocol: Option<Dead>, asked: Option<bool>| {
        let input = input(
            Protocol { dead: protocol, ..Protocol::default() },
            vec![edges(1, "AAAA", "0", "10"), dead.clone()],
        );
        let result = line_result(&input, 0, &Choice { dead_counts: asked, ..Choice::default() }).unwrap();
        (result.canopy, result.findings.iter().any(|finding| finding.message.code == "dead-was-left-out"))
    };
    assert_eq!(canopy(Some(Dead::Apart), None), (Bounds::known(inch(10)), false));
    assert_eq!(canopy(Some(Dead::Apart), Some(true)), (Bounds::known(inch(30)), false));
    assert_eq!(canopy(Some(Dead::CountsAsLive), Some(false)), (Bounds::known(inch(10)), false));
    assert_eq!(canopy(Some(Dead::LeftOut), Some(true)), (Bounds::known(inch(30)), true));
}
