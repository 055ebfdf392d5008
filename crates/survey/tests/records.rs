//! Records survive JSON, keep no floats, and are checked on reading.

use proptest::prelude::*;
use tautline_engine::length::{Bare, DecimalMark, Unit};
use tautline_survey::canonical;
use tautline_survey::date::Date;
use tautline_survey::goal::{self, Goal};
use tautline_survey::measure::Measure;
use tautline_survey::protocol::{Bridge, Counts, CoverMeaning, Dead, Gap, Overlap, Protocol, Side, Unknown};
use tautline_survey::visit::{Extent, Intercept, Outcome, State, Visit};

fn measure() -> impl Strategy<Value = Measure> {
    let inch = Some(Bare::Unit(Unit::Inch));
    prop_oneof![
        (0_u32..2000, 0_u32..8).prop_map(|(whole, eighths)| format!("{whole} {eighths}/8")),
        (0_u32..2000, 0_u32..100).prop_map(|(whole, hundredths)| format!("{whole}.{hundredths:02} cm")),
        (0_u32..200, 0_u32..12).prop_map(|(feet, inches)| format!("{feet}'{inches}\"")),
    ]
    .prop_map(move |text| {
        Measure::read(&text, inch, DecimalMark::Point).expect("the generator writes lengths")
    })
}

fn bridge() -> impl Strategy<Value = Option<Bridge>> {
    prop_oneof![Just(None), Just(Some(Bridge::Bridged)), Just(Some(Bridge::Breaks))]
}

fn protocol() -> impl Strategy<Value = Protocol> {
    let limits = (proptest::option::of(measure()), proptest::option::of(measure()));
    let gap = (limits, bridge(), bridge(), bridge(), bridge()).prop_map(
        |((limit, unknown_up_to), equal, two_plants, across_dead, line_end)| Gap {
            limit,
            unknown_up_to,
            equal,
            two_plants,
            across_dead,
            line_end,
            ..Gap::default()
        },
    );
    let dead = prop_oneof![Just(None), Just(Some(Dead::Apart)), Just(Some(Dead::ShortJoinsLive))];
    let counts = prop_oneof![
        Just(None),
        Just(Some(Counts::woody())),
        Just(Some(Counts { also: vec!["CACT".into()], ..Counts::woody() }))
    ];
    (".{0,12}", gap, dead, counts, prop::bool::ANY).prop_map(|(name, gap, dead, counts, more)| Protocol {
        name,
        gap,
        dead,
        counts,
        cover: more.then_some(CoverMeaning::Foliar),
        unknown: if more { Vec::new() } else { vec![Unknown::Cover, Unknown::Dead] },
        overlap: more.then_some(Overlap::Once),
        side: more.then_some(Side::Left),
        ..Protocol::default()
    })
}

fn visit() -> impl Strategy<Value = Visit> {
    let extent = prop_oneof![
        measure().prop_map(Extent::Length),
        (measure(), measure()).prop_map(|(start, stop)| Extent::Edges { start, stop })
    ];
    let intercept = (extent, ".{0,6}", prop::bool::ANY, proptest::option::of(measure())).prop_map(
        |(extent, species, dead, height)| Intercept {
            id: 1,
            species,
            extent,
            state: if dead { State::Dead } else { State::Live },
            plant: dead.then(|| "7".to_owned()),
            height,
            width: None,
            note: String::new(),
            place: None,
        },
    );
    let outcome =
        prop_oneof![Just(Outcome::Read), Just(Outcome::NotRead), measure().prop_map(Outcome::PartlyRead)];
    let day = (1_u16..=9999, 1_u8..=12, 1_u8..=28).prop_map(|(year, month, day)| Date::new(year, month, day));
    (".{1,10}", day, outcome, prop::collection::vec(intercept, 0..5)).prop_map(
        |(site, date, outcome, intercepts)| Visit {
            site,
            line: "1".into(),
            date,
            reader: "invented".into(),
            recorder: String::new(),
            pass: String::new(),
            protocol: String::new(),
            length: None,
            outcome,
            intercepts,
            set_aside: 0,
            conditions: vec![("wind".into(), "light".into())],
            place: None,
        },
    )
}

proptest! {
    #[test]
    fn visits_survive_json(visit in visit()) {
        let json = serde_json::to_value(&visit).unwrap();
        prop_assert!(canonical::bytes(&json).is_some(), "a record holds no floats");
        prop_assert_eq!(serde_json::from_value::<Visit>(json).unwrap(), visit);
    }

    #[test]
    fn protocols_survive_json_with_their_fingerprint(protocol in protocol()) {
        let json = serde_json::to_string(&protocol).unwrap();
        let back: Protocol = serde_json::from_str(&json).unwrap();
        prop_assert_eq!(back.fingerprint(), protocol.fingerprint());
        prop_assert_eq!(back, protocol);
    }

    #[test]
    fn goals_survive_json(whole in 0_u32..100, tenths in 0_u32..10) {
        let goal = goal::read(&format!("shrub: at least {whole}.{tenths} %"), DecimalMark::Point).unwrap();
        let json = serde_json::to_string(&goal).unwrap();
        prop_assert_eq!(serde_json::from_str::<Goal>(&json).unwrap(), goal);
    }
}
