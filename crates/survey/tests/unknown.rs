//! Sheets of which nobody knows how they were read: whatever the rule was, the figure lies between the two that are shown, and
//! no two years meet on it in silence.
#![expect(clippy::unwrap_used, reason = "a test that can't go on should stop")]

use proptest::prelude::*;
use tautline_engine::length::{Bare, DecimalMark, Length, Unit};
use tautline_survey::assess::{Question, assess};
use tautline_survey::compare::differences;
use tautline_survey::date::Date;
use tautline_survey::follow::{ChangeQuestion, change};
use tautline_survey::goal::Subject;
use tautline_survey::input::Input;
use tautline_survey::line::{Choice, line_result};
use tautline_survey::measure::Measure;
use tautline_survey::protocol::{Bridge, Dead, Gap, Protocol, Unknown, widest_unknown};
use tautline_survey::visit::{Extent, Intercept, Outcome, State, Visit};

fn cm(count: u32) -> Measure {
    Measure::read(&count.to_string(), Some(Bare::Unit(Unit::Centimetre)), DecimalMark::Point).unwrap()
}

fn centimetres(count: i64) -> Length {
    Length::from_units(count, Unit::Centimetre)
}

fn stretch(id: u32, species: &str, (start, stop): (u32, u32), state: State) -> Intercept {
    let extent = Extent::Edges { start: cm(start), stop: cm(stop) };
    let (plant, height, width, note, place) = (Some(id.to_string()), None, None, String::new(), None);
    Intercept { id, species: species.into(), extent, state, plant, height, width, note, place }
}

/// Two lines of 10 m in each year, all alike but for one centimetre, so that there is an error.
fn sheets(protocol: &Protocol, years: &[u16], rows: &[Intercept]) -> Input {
    let mut input = Input::default();
    let print = input.add_protocol(protocol.clone());
    for (&year, line) in years.iter().flat_map(|year| [(year, 1_u32), (year, 2)]) {
        let mut intercepts = rows.to_vec();
        if line == 2
            && let Some(first) = intercepts.first_mut()
        {
            first.extent = match &first.extent {
                Extent::Edges { stop, .. } => Extent::Edges { start: cm(99), stop: stop.clone() },
                Extent::Length(_) => Extent::Length(cm(25)),
            };
        }
        input.visits.push(Visit {
            site: "Hollow Flat (invented)".into(),
            line: line.to_string(),
            date: Date::new(year, 6, 9),
            reader: String::new(),
            recorder: String::new(),
            pass: String::new(),
            protocol: print.clone(),
            length: Some(cm(1000)),
            outcome: Outcome::Read,
            intercepts,
            set_aside: 0,
            conditions: Vec::new(),
            place: None,
        });
    }
    input
}

/// The pieces of `docs/reading-rules.md`: 24, 23, 25 and 22 cm with gaps of 4, 9 and 45 cm between them.
fn pieces() -> Vec<Intercept> {
    let at = [(100, 124), (128, 151), (160, 185), (230, 252)];
    (1..).zip(at).map(|(id, at)| stretch(id, "ATCA", at, State::Live)).collect()
}

fn unknown() -> Protocol {
    Protocol {
        name: "old sheets (invented)".into(),
        gap: Gap { unknown_up_to: Some(widest_unknown()), ..Gap::default() },
        ..Protocol::default()
    }
}

/// By hand: 94 cm as written, 107 cm with the gaps of 4 and 9 cm closed (`docs/reading-rules.md`); the second line is 1 cm longer.
#[test]
fn a_site_s_figure_lies_between_the_narrowest_rule_and_the_widest() {
    let input = sheets(&unknown(), &[1986], &pieces());
    let line = line_result(&input, 0, &Choice::default()).unwrap();
    assert_eq!((line.canopy.low, line.canopy.high), (centimetres(94), centimetres(107)));
    assert!(line.assumed.iter().all(|one| !one.rule.starts_with("gap-")), "{:?}", line.assumed);
    let site = assess(&input, &Question::default()).remove(0);
    let figure = site.figure(&Subject::Canopy).unwrap();
    let [low, high] = figure.ends().map(|end| end.value);
    assert!((low - 0.0945).abs() < 1e-12 && (high - 0.1075).abs() < 1e-12, "{low} to {high}");
    assert!(site.findings.iter().any(|one| one.message.code == "rule-unknown-gap"));
    // somebody who knows that it was no more than 5 cm closes the gap of 4 cm alone
    let narrower = Protocol { gap: Gap { unknown_up_to: Some(cm(5)), ..Gap::default() }, ..unknown() };
    let line = line_result(&sheets(&narrower, &[1986], &pieces()), 0, &Choice::default()).unwrap();
    assert_eq!((line.canopy.low, line.canopy.high), (centimetres(94), centimetres(98)));
}

/// Under a rule at least as wide as any that it may have been read under, the sheet has one figure; a finer one is refused.
#[test]
fn a_rule_as_wide_as_any_settles_it() {
    let input = sheets(&unknown(), &[1986], &pieces());
    let under =
        |limit| line_result(&input, 0, &Choice { gap_limit: Some(centimetres(limit)), ..Choice::default() });
    let [at, wider] = [under(15).unwrap(), under(50).unwrap()];
    assert_eq!((at.canopy.low, at.canopy.high), (centimetres(107), centimetres(107)));
    assert_eq!((wider.canopy.low, wider.canopy.high), (centimetres(152), centimetres(152)));
    assert_eq!(under(10).unwrap_err().message.code, "finer-than-it-may-have-been");
}

/// Three lengths of 24 cm: 72 cm as written, and at most four gaps of 15 cm beside and between them: 132 cm.
#[test]
fn lengths_alone_have_bounds() {
    let rows: Vec<Intercept> = (1..=3)
        .map(|id| Intercept { extent: Extent::Length(cm(24)), ..stretch(id, "ATCA", (0, 1), State::Live) })
        .collect();
    let input = sheets(&unknown(), &[1986], &rows);
    let line = line_result(&input, 0, &Choice::default()).unwrap();
    assert_eq!((line.canopy.low, line.canopy.high), (centimetres(72), centimetres(132)));
    assert_eq!((line.species[0].live.low, line.species[0].live.high), (centimetres(72), centimetres(132)));
    let asked = Choice { gap_limit: Some(centimetres(15)), ..Choice::default() };
    assert_eq!(line_result(&input, 0, &asked).unwrap_err().message.code, "lengths-cannot-be-re-ruled");
}

fn change_of(input: &Input) -> tautline_survey::follow::SiteChange {
    let asked = ChangeQuestion {
        question: Question::default(),
        from: 1986,
        to: 2026,
        matters: None,
        power: 0.8,
        temporary: false,
        untreated: None,
        span: None,
    };
    change(input, &asked).remove(0)
}

/// Two years are brought to the widest rule that either can have been read under: 107 cm in both, and no change.
#[test]
fn years_meet_on_the_widest_rule_or_not_at_all() {
    let changed = change_of(&sheets(&unknown(), &[1986, 2026], &pieces()));
    for line in changed.earlier.iter().chain(&changed.later) {
        assert!(line.canopy.is_known() && line.rule.gap.limit == centimetres(15));
    }
    assert!(changed.findings.iter().any(|one| one.message.code == "brought-to-widest"));
    for rule in [Unknown::Dead, Unknown::Cover] {
        let protocol = Protocol { unknown: vec![rule], ..unknown() };
        let apart = change_of(&sheets(&protocol, &[1986, 2026], &pieces()));
        assert!(apart.figures.is_empty(), "{rule:?}");
        assert!(apart.findings.iter().any(|one| one.message.code == "protocols-apart-unknown"));
        assert!(apart.findings.iter().all(|one| one.message.code != "rule-unknown-gap-closed"));
        // each year stands for itself
        let years = assess(&sheets(&protocol, &[1986, 2026], &pieces()), &Question::default());
        assert!(years.iter().all(|year| year.figure(&Subject::Canopy).is_some()));
    }
}

/// Beside a year whose rule left a gap between two species (4 cm) and one at the line's end (8 cm) open, a reader of whom nobody
/// knows the rule had closed both. Closed in both years, whichever limit is wider, it is the same canopy: 24 and 60 cm.
#[test]
fn what_may_have_been_closed_is_closed_in_both_years() {
    let old = [("ATCA", (100, 124)), ("ATCA", (940, 970)), ("KRLA", (970, 1000))];
    let new = [("ATCA", (100, 124)), ("ATCA", (940, 966)), ("KRLA", (970, 992))];
    let rows = |of: [(&str, (u32, u32)); 3]| {
        (1..).zip(of).map(|(id, (species, at))| stretch(id, species, at, State::Live)).collect::<Vec<_>>()
    };
    for limit in [10, 15, 20] {
        let breaks = Some(Bridge::Breaks);
        let gap = Gap {
            limit: Some(cm(limit)),
            equal: breaks,
            between_species: breaks,
            line_end: breaks,
            ..Gap::default()
        };
        let known = Protocol { name: "known (invented)".into(), gap, ..Protocol::default() };
        let mut input = sheets(&unknown(), &[1986], &rows(old));
        let later = sheets(&known, &[2026], &rows(new));
        let alone = line_result(&later, 0, &Choice::default()).unwrap();
        assert_eq!(alone.canopy.low, centimetres(72));
        input.protocols.extend(later.protocols);
        input.visits.extend(later.visits);
        let changed = change_of(&input);
        for line in changed.earlier.iter().chain(&changed.later).filter(|line| line.line == "1") {
            assert!(line.canopy.is_known(), "{limit} cm");
            assert_eq!(line.canopy.low, centimetres(84), "{limit} cm, {:?}", line.date);
        }
        let said = |code| changed.findings.iter().any(|one| one.message.code == code);
        assert!(said("rule-unknown-gap-closed") && !said("rest-could-matter") && !said("rule-unknown-gap"));
    }
}

#[test]
fn unknown_is_not_silent() {
    let (silent, dead) =
        (Protocol::default(), Protocol { unknown: vec![Unknown::Dead], ..Protocol::default() });
    assert_ne!(silent.fingerprint(), dead.fingerprint());
    assert_ne!(silent.fingerprint(), Protocol { name: String::new(), ..unknown() }.fingerprint());
    let twice = Protocol { unknown: vec![Unknown::Dead, Unknown::Dead], ..Protocol::default() };
    assert_eq!(dead.fingerprint(), twice.fingerprint());
    assert_eq!(differences(&[&silent, &dead]).len(), 1);
}

fn rows() -> impl Strategy<Value = Vec<Intercept>> {
    let row = (0_u32..900, 1_u32..120, 0_u32..3, prop::bool::weighted(0.25));
    prop::collection::vec(row, 0..14).prop_map(|rows| {
        let row = |(id, (start, long, species, dead)): (u32, (u32, u32, u32, bool))| {
            let state = if dead { State::Dead } else { State::Live };
            stretch(id, ["ATCA", "KRLA", "ATCO"][species as usize], (start, (start + long).min(1000)), state)
        };
        (1..).zip(rows).map(row).collect()
    })
}

fn stated() -> impl Strategy<Value = Protocol> {
    let bridge = || prop_oneof![Just(Some(Bridge::Bridged)), Just(Some(Bridge::Breaks))];
    let dead = prop_oneof![
        Just(Dead::LeftOut),
        Just(Dead::Apart),
        Just(Dead::ShortJoinsLive),
        Just(Dead::CountsAsLive)
    ];
    ((0_u32..=15), dead, [bridge(), bridge(), bridge(), bridge(), bridge(), bridge()]).prop_map(
        |(limit, dead, [equal, two_plants, across_species, between_species, across_dead, line_end])| {
            Protocol {
                dead: Some(dead),
                gap: Gap {
                    limit: Some(cm(limit)),
                    unknown_up_to: None,
                    equal,
                    two_plants,
                    across_species,
                    between_species,
                    across_dead,
                    line_end,
                },
                ..Protocol::default()
            }
        },
    )
}

proptest! {
    /// Whatever rule of the list the reader had, canopy and each species lie between what is shown.
    #[test]
    fn whatever_the_rule_was_the_figure_lies_between(rows in rows(), stated in stated()) {
        let open = Protocol { unknown: vec![Unknown::Dead], ..unknown() };
        let line = |protocol: &Protocol| {
            line_result(&sheets(protocol, &[1986], &rows), 0, &Choice::default()).unwrap()
        };
        let (known, between) = (line(&stated), line(&open));
        prop_assert!(between.canopy.low <= known.canopy.low && known.canopy.high <= between.canopy.high);
        prop_assert!(between.sum.low <= known.sum.low && known.sum.high <= between.sum.high);
        for one in &known.species {
            let other = between.species.iter().find(|other| other.code == one.code).unwrap();
            prop_assert!(other.live.low <= one.live.low && one.live.high <= other.live.high, "{}", one.code);
        }
    }
}
