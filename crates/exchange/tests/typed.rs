//! Printing what was read and reading that again gives the same. All data is invented.

mod says;

use proptest::prelude::*;
use says::says;
use tautline_engine::length::{Bare, DecimalMark, Unit};
use tautline_exchange::{Options, Source, read, sheet};
use tautline_survey::date::Date;
use tautline_survey::finding::Weight;
use tautline_survey::input::Input;
use tautline_survey::measure::Measure;
use tautline_survey::plan::PlannedLine;
use tautline_survey::visit::{Extent, Intercept, Outcome, State, Visit};

fn read_one(text: &str) -> Input {
    read(&[Source { name: "a.sheet".into(), bytes: text.into() }], &Options::default()).input
}

const INCH: Option<Bare> = Some(Bare::Unit(Unit::Inch));

/// A length in eighths of an inch, or centimetres, or feet and inches, as people write them.
fn measure() -> impl Strategy<Value = Measure> {
    let text = prop_oneof![
        (0_u32..700, 1_u32..8).prop_map(|(whole, eighths)| format!("{whole} {eighths}/8")),
        (1_u32..700).prop_map(|whole| whole.to_string()),
        (0_u32..2000, 1_u32..100).prop_map(|(whole, hundredths)| format!("{whole}.{hundredths:02} cm")),
        (1_u32..50, 0_u32..12).prop_map(|(feet, inches)| format!("{feet}'{inches}\"")),
        (1_u32..50, 0_u32..12).prop_map(|(feet, inches)| format!("{feet} ft {inches} in")),
        (1_u32..20, 1_u32..90).prop_map(|(metres, rest)| format!("{metres} m {rest} cm")),
        (1_u32..90).prop_map(|whole| format!("{whole}½")),
    ];
    text.prop_map(|text| {
        Measure::read(&text, INCH, DecimalMark::Point).expect("the generator writes lengths")
    })
}

fn extent(edges: bool) -> impl Strategy<Value = Extent> {
    (measure(), measure()).prop_map(move |(a, b)| match (edges, a.length().cmp(&b.length())) {
        (true, std::cmp::Ordering::Less) => Extent::Edges { start: a, stop: b },
        (true, std::cmp::Ordering::Greater) => Extent::Edges { start: b, stop: a },
        (true, std::cmp::Ordering::Equal) => {
            Extent::Edges { start: Measure::read("0", INCH, DecimalMark::Point).expect("a length"), stop: a }
        }
        (false, _) => Extent::Length(a),
    })
}

/// Names as they come, and, where `odd`, names that look like something else.
fn name(odd: bool) -> BoxedStrategy<String> {
    let decent = prop::sample::select(vec![
        "ATCA",
        "KRLA",
        "big sagebrush",
        "ARTR2",
        "2FORB",
        "coast live oak",
        "Line",
        "d",
        "",
        "12",
        "1-2 in",
        "ATCA 12",
        "nothing",
        "Site",
        "x, y",
        "a;b",
        "h 40 cm",
        "unit in",
        "#2",
        "L'orme",
        "12'",
        "ñandú",
    ]);
    let decent = decent.prop_map(str::to_owned);
    if odd { prop_oneof![decent, "\\PC{0,12}", "[a-z \\[\\](),:#\n\t]{0,8}"].boxed() } else { decent.boxed() }
}

fn intercept(edges: bool, odd: bool) -> impl Strategy<Value = Intercept> {
    let optional = || proptest::option::of(measure());
    let plant = proptest::option::of("[a-z0-9]{1,3}");
    let note = prop_oneof![Just(String::new()), Just("leans (a bit)".to_owned()), name(odd)];
    (name(odd), extent(edges), prop::bool::ANY, plant, optional(), optional(), note).prop_map(
        |(species, extent, dead, plant, height, width, note)| Intercept {
            id: 0,
            species,
            extent,
            state: if dead { State::Dead } else { State::Live },
            plant,
            height,
            width,
            note,
            place: None,
        },
    )
}

fn visit(odd: bool) -> impl Strategy<Value = Visit> {
    let intercepts =
        prop::bool::ANY.prop_flat_map(move |edges| prop::collection::vec(intercept(edges, odd), 0..6));
    let date = prop::sample::select(vec![None, Date::new(2026, 6, 9), Date::new(2025, 6, 10)]);
    let people = prop::sample::select(vec!["", "Reader A", "Reader B"]);
    let condition = ("(wind|grazing|Growth stage)", "[a-z0-9][a-z0-9 %]{0,8}[a-z]");
    let conditions = prop::collection::vec(condition, 0..3);
    (name(odd), date, people, name(odd), intercepts, measure(), conditions, 0..4).prop_map(
        |(site, date, reader, pass, mut intercepts, to, mut conditions, outcome)| {
            for (id, intercept) in (1..).zip(&mut intercepts) {
                intercept.id = id;
            }
            conditions.dedup();
            let outcome = match outcome {
                0 => Outcome::PartlyRead(to),
                1 if intercepts.is_empty() => Outcome::NotRead,
                _ => Outcome::Read,
            };
            Visit {
                site: if site.is_empty() { "A".to_owned() } else { site },
                line: String::new(),
                date,
                reader: reader.to_owned(),
                recorder: String::new(),
                pass,
                protocol: String::new(),
                length: None,
                outcome,
                intercepts,
                set_aside: 0,
                conditions,
                place: None,
            }
        },
    )
}

fn input(odd: bool) -> impl Strategy<Value = Input> {
    let lines = prop::collection::vec(
        (visit(odd), name(odd), proptest::option::of(measure()), prop::bool::ANY),
        0..5,
    );
    lines.prop_map(|lines| {
        let mut input = Input::default();
        for (number, (mut visit, name, length, read)) in (1..).zip(lines) {
            visit.line = format!("{name}{number}");
            input.plan.push(PlannedLine {
                site: visit.site.clone(),
                line: visit.line.clone(),
                length,
                stratum: (!name.is_empty()).then_some(name),
                plot: None,
                judgement: None,
                slope: None,
                permission: None,
            });
            if read {
                input.visits.push(visit);
            }
        }
        input
    })
}

fn worth_a_look(printed: &sheet::Printed) -> bool {
    printed.left_out.iter().any(|finding| finding.weight != Weight::Note)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]
    #[test]
    fn what_is_printed_reads_as_the_same(input in input(false)) {
        let printed = sheet::print(&input);
        prop_assert!(!worth_a_look(&printed), "{:?}\n{}", printed.left_out, printed.text);
        let again = read_one(&printed.text);
        prop_assert_eq!(says(&again), says(&input), "{}", printed.text);
    }

    /// With names that hold anything at all: what can't be said is named, and otherwise it is the same.
    #[test]
    fn what_cannot_be_said_is_named(input in input(true)) {
        let printed = sheet::print(&input);
        let again = read_one(&printed.text);
        if !worth_a_look(&printed) {
            prop_assert_eq!(says(&again), says(&input), "{}", printed.text);
        }
    }
}

/// The demo's own way of writing, tables of readings, comes back from a typed sheet as it went in.
#[test]
fn a_table_as_a_typed_sheet() {
    let table = "site,line,line length,date,reader,species,start (cm),stop (cm),state,height (cm),wind\n\
        Invented Flat,1,20 m,2026-06-09,Reader A,ATCA,120,144,live,40,calm\n\
        Invented Flat,1,20 m,2026-06-09,Reader A,ATCA,150,161.5,dead,,calm\n\
        Invented Flat,2,20 m,2026-06-09,Reader A,KRLA,3 m,3.2 m,live,,calm\n";
    let input = read(&[Source { name: "a.csv".into(), bytes: table.into() }], &Options::default()).input;
    let printed = sheet::print(&input);
    assert_eq!(
        printed.text,
        "Site: Invented Flat\nDate: 2026-06-09\nReader: Reader A\nUnit: cm\nwind: calm\n\n\
         Line 1, 20 m\nATCA 120-144 h 40, 150-161.5 d\n\nLine 2, 20 m\nKRLA 3 m to 3.2 m\n"
    );
    assert_eq!(says(&read_one(&printed.text)), says(&input));
    assert!(printed.left_out.is_empty());
}
