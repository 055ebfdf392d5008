//! Invented sites that can be worked out by hand.

use tautline_engine::confidence::Method;
use tautline_engine::length::{Bare, DecimalMark, Unit};
use tautline_report::{Bytes, Photograph};
use tautline_survey::assess::{Question, SiteGoal, assess};
use tautline_survey::date::Date;
use tautline_survey::finding::{Excerpt, Finding, Place};
use tautline_survey::goal;
use tautline_survey::input::{Input, SourceFile};
use tautline_survey::measure::Measure;
use tautline_survey::message::Message;
use tautline_survey::photo::{Media, Photo, Shows, Spot};
use tautline_survey::place::{LinePlace, Openness, Position, Site};
use tautline_survey::plan::PlannedLine;
use tautline_survey::plants::{GrowthForm, Plant};
use tautline_survey::protocol::Protocol;
use tautline_survey::visit::{Extent, Intercept, Outcome, State, Visit};
use tautline_words::Words;

pub(crate) fn cm(text: &str) -> Measure {
    Measure::read(text, Some(Bare::Unit(Unit::Centimetre)), DecimalMark::Point).unwrap()
}

pub(crate) fn intercept(id: u32, start: u32, stop: u32, state: State) -> Intercept {
    Intercept {
        id,
        species: "AAAA".into(),
        extent: Extent::Edges { start: cm(&start.to_string()), stop: cm(&stop.to_string()) },
        state,
        plant: None,
        height: None,
        width: None,
        note: String::new(),
        place: None,
    }
}

/// Lines of 10 m, each with the intercepts given (cm).
pub(crate) fn site(name: &str, protocol: Protocol, lines: &[Vec<Intercept>]) -> Input {
    let mut input = Input::default();
    let protocol = input.add_protocol(protocol);
    for (number, intercepts) in lines.iter().enumerate() {
        let line = (number + 1).to_string();
        let (stratum, plot) = (None, None);
        input.plan.push(PlannedLine {
            site: name.into(),
            line: line.clone(),
            length: Some(cm("10 m")),
            stratum,
            plot,
            judgement: None,
            slope: None,
            permission: None,
        });
        input.visits.push(Visit {
            site: name.into(),
            line,
            date: None,
            reader: String::new(),
            recorder: String::new(),
            pass: String::new(),
            protocol: protocol.clone(),
            length: None,
            outcome: Outcome::Read,
            intercepts: intercepts.clone(),
            conditions: Vec::new(),
            set_aside: 0,
            place: None,
        });
    }
    input
}

pub(crate) fn four_lines(name: &str) -> Input {
    let lines: Vec<_> = [100, 200, 300, 400].map(|stop| vec![intercept(1, 0, stop, State::Live)]).to_vec();
    site(name, Protocol::default(), &lines)
}

pub(crate) fn asked(goal: &str) -> Question {
    let goal = goal::read(goal, DecimalMark::Point).unwrap();
    Question {
        goals: vec![SiteGoal { site: None, goal }],
        method: Some(Method::StudentT),
        ..Question::default()
    }
}

pub(crate) fn page(input: &Input, question: &Question) -> String {
    tautline_report::html(input, question, &assess(input, question), &Words::english())
}

/// Two lines of 10 m. AAAA, a shrub: 0 to 100 cm and 104 to 200 cm on the first line (the gap of 4 cm closes), 0 to
/// 200 cm on the second, 60 and 80 cm high. BBBB, a subshrub: 150 to 350 cm on the first line. CCCC, a grass that
/// doesn't count: 600 to 700 cm on the second. AAAA dead at 900 to 940 cm on the second.
///
/// By hand: canopy 350 and 200 cm, so 27.5 %; AAAA 200 and 200, so 20 %; BBBB 200 and 0, so 10 %; sum 30 %, of which
/// AAAA 66.7 % and BBBB 33.3 %; dead 0 and 40 cm, so 2 %. Gaps: 650 cm on the first line; 700 and 60 cm beside the
/// dead wood, which ends no gap: 800 cm on the second. All over 200 cm: 1450 of 2000 cm, 72.5 %.
pub(crate) fn mixed() -> Input {
    let mut protocol = Protocol { name: "invented rules".into(), ..Protocol::default() };
    protocol.gap.limit = Some(cm("5"));
    let of = |species: &str, one: Intercept| Intercept { species: species.into(), ..one };
    let high = |height: &str, one: Intercept| Intercept { height: Some(cm(height)), ..one };
    let first = vec![
        high("60", intercept(1, 0, 100, State::Live)),
        intercept(2, 104, 200, State::Live),
        of("BBBB", intercept(3, 150, 350, State::Live)),
    ];
    let second = vec![
        high("80", intercept(1, 0, 200, State::Live)),
        of("CCCC", intercept(2, 600, 700, State::Live)),
        intercept(3, 900, 940, State::Dead),
    ];
    let mut input = site("Invented wash", protocol, &[first, second]);
    let plant = |code: &str, common: &str, form| Plant { common: common.into(), ..Plant::new(code, form) };
    input.plants.plants = vec![
        plant("AAAA", "first shrub", GrowthForm::Shrub),
        plant("BBBB", "low shrub", GrowthForm::Subshrub),
        plant("CCCC", "a grass", GrowthForm::Grass),
    ];
    for (number, visit) in input.visits.iter_mut().enumerate() {
        let place = |row| Place { file: "invented.csv".into(), row, column: None, character: None };
        visit.place = Some(place(2));
        for intercept in &mut visit.intercepts {
            intercept.place = Some(place(u64::from(intercept.id) + 1 + 10 * number as u64));
        }
    }
    input
}

/// The mixed site as site B 2 in three years, and as site B 10 in one.
pub(crate) fn several_sites() -> Input {
    let mixed = mixed();
    let mut input = Input { plan: Vec::new(), visits: Vec::new(), ..mixed.clone() };
    for (site, years) in [("B 10", vec![2025]), ("B 2", vec![2024, 2026, 2022])] {
        let named = |line: &PlannedLine| PlannedLine { site: site.into(), ..line.clone() };
        input.plan.extend(mixed.plan.iter().map(named));
        for year in years {
            let date = Date::new(year, 6, 9);
            input.visits.extend(mixed.visits.iter().map(|visit| Visit {
                site: site.into(),
                date,
                ..visit.clone()
            }));
        }
    }
    input
}

/// Text that would be markup if it weren't escaped; with all that an attribute, a stylesheet and a title end with.
pub(crate) const HOSTILE: &str =
    "</td></style></title><script>alert(1)</script>\"'&<b onclick='x'>}*/--> \u{1}";

/// The mixed site with hostile text in every place that a person fills.
pub(crate) fn hostile() -> Input {
    let mut input = mixed();
    let text = || HOSTILE.to_owned();
    let protocol =
        Protocol { name: text(), source: text(), ..input.protocols.values().next().unwrap().clone() };
    input.protocols.clear();
    let print = input.add_protocol(protocol);
    for planned in &mut input.plan {
        (planned.site, planned.line) = (text(), format!("{HOSTILE}{}", planned.line));
        planned.stratum = Some(text());
    }
    for visit in &mut input.visits {
        (visit.site, visit.line) = (text(), format!("{HOSTILE}{}", visit.line));
        (visit.reader, visit.recorder, visit.pass) = (text(), text(), text());
        visit.protocol.clone_from(&print);
        visit.conditions = vec![(text(), text())];
        visit.place = Some(Place { file: text(), row: 2, column: Some(text()), character: None });
        for intercept in &mut visit.intercepts {
            (intercept.note, intercept.plant) = (text(), Some(text()));
            if intercept.species == "BBBB" {
                intercept.species = text();
            }
        }
    }
    for plant in &mut input.plants.plants {
        (plant.common, plant.groups) = (text(), vec![text()]);
    }
    input.files.push(SourceFile { name: text(), sha256: text() });
    let message = Message::new("cell-empty").with("column", HOSTILE);
    let place = Place { file: text(), row: 3, column: Some(text()), character: None };
    input.findings.push(Finding::must_settle(message).at(place));
    input
}

/// A PNG of 3 by 2 pixels, all of one green (PNG, third edition: signature, IHDR, IDAT, IEND), written by Python's zlib.
pub(crate) const PNG: &[u8] = b"\x89PNG\x0D\x0A\x1A\x0A\x00\x00\x00\x0DIHDR\x00\x00\x00\x03\x00\x00\x00\x02\x08\x02\x00\x00\x00\x12\x16\xF1M\x00\x00\x00\x10IDATx\xDAc\x88\xAA\xB0\x81\x20\x068\x0B\x00\x40\x10\x06U\xB0\xB1\x1A\x84\x00\x00\x00\x00IEND\xAEB\x60\x82";

/// A photo of an invented view, taken where nobody is told.
pub(crate) fn photo(site: &str, line: &str, shows: Shows, day: (i32, u8, u8), bytes: Bytes) -> Photograph {
    let date = Date::new(u16::try_from(day.0).unwrap(), day.1, day.2);
    let photo = Photo {
        site: site.into(),
        line: line.into(),
        shows,
        date,
        time: String::new(),
        place: Some(Spot { latitude: NORTH, longitude: EAST }),
        bearing: Some(2_120_000),
        caption: format!("by the {HOSTILE} gate, {UTM}"),
        people: vec!["Somebody Seen".into()],
        visit: None,
        width: 3,
        height: 2,
        media: Media::Png,
        bytes: PNG.len() as u64,
        sha256: format!("{:064x}", day.0 * 10_000 + i32::from(day.1) * 100 + i32::from(day.2)),
    };
    Photograph { photo, bytes }
}

/// Where the invented lines begin, in whole 1e-9 degree, and the same as a person would write it down.
pub(crate) const NORTH: i64 = 38_512_345_678;
pub(crate) const EAST: i64 = -113_287_654_321;
pub(crate) const UTM: &str = "12 S 301234 4265432";

/// The mixed site in two years, its lines in their places, told as the setting says; where they are stands in a condition, in a
/// remark and in a row that was typed wrong, too.
pub(crate) fn placed(places: Option<Openness>) -> Input {
    let mixed = mixed();
    let mut input = Input { visits: Vec::new(), ..mixed.clone() };
    for year in [2024, 2026] {
        input
            .visits
            .extend(mixed.visits.iter().map(|visit| Visit { date: Date::new(year, 6, 9), ..visit.clone() }));
    }
    for visit in &mut input.visits {
        visit.conditions = vec![("start UTM".into(), UTM.into()), ("wind".into(), "light".into())];
        visit.intercepts[0].note = format!("from {UTM}");
    }
    let name = "Invented wash";
    input.sites = vec![Site { site: name.into(), places, ..Site::default() }];
    let place = |(number, line): (i64, &str)| LinePlace {
        site: name.into(),
        line: line.into(),
        start: Position { latitude: NORTH + number * 1_000_000, longitude: EAST },
        end: Some(Position { latitude: NORTH + number * 1_000_000 + 90_000, longitude: EAST }),
    };
    input.places = [(0, "1"), (1, "2")].map(place).to_vec();
    let column = Some("start latitude".to_owned());
    let at = Place { file: "lines.csv".into(), row: 2, column, character: None };
    let wrong = Message::new("position-not-understood")
        .with("found", "38.512345678 N")
        .with("column", "start latitude");
    input.findings.push(Finding::have_a_look(wrong).at(at.clone()));
    let typed = Excerpt { text: format!("1 {UTM} 10 m"), before: 2 };
    let row = Finding::must_settle(Message::new("cell-empty").with("column", "line length"));
    input.findings.push(Finding { excerpt: Some(Box::new(typed)), ..row.at(Place { column: None, ..at }) });
    input
}
