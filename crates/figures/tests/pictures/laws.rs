//! What holds for every picture, whatever it is given.

use crate::reader::sound;
use proptest::prelude::*;
use tautline_engine::length::{DecimalMark, Length, Unit};
use tautline_engine::stretch::Stretch;
use tautline_figures::change;
use tautline_figures::costs::{self, Costs};
use tautline_figures::cover::{self, Bounds, Cover, Estimate, Row};
use tautline_figures::curve::{self, Curve, Recorded, Step};
use tautline_figures::gaps::{self, Class, Gaps};
use tautline_figures::line::{self, Lane, Line, Lines, Reading, Total};
use tautline_figures::{Frame, Goal, Palette, Relation, STYLESHEET, Share, Tone};

/// Words as people and mischief write them: empty, long, with what XML reserves or forbids.
fn words() -> impl Strategy<Value = String> {
    prop_oneof![
        Just(String::new()),
        "[a-zéß ]{1,30}",
        "[<>&\"' a]{1,20}",
        "[a-z]{200}",
        "\\PC{0,60}",
        Just("a\u{0}b\u{b}c\u{fffe}]]>&amp;<script>".to_owned()),
    ]
}

/// Any length, also none, below zero, and beyond every tape.
fn length() -> impl Strategy<Value = Length> {
    prop_oneof![
        4 => (0_i64..50_000_000_000).prop_map(Length::from_nanometres),
        1 => Just(Length::ZERO),
        1 => (-1_000_000_000_i64..1_000_000_000_000_000).prop_map(Length::from_nanometres),
    ]
}

fn stretches() -> impl Strategy<Value = Vec<Stretch>> {
    let stretch = (length(), length()).prop_filter_map("a stretch has a length", |(one, other)| {
        Stretch::new(one.min(other), one.max(other))
    });
    prop::collection::vec(stretch, 0..8)
}

fn unit() -> impl Strategy<Value = Unit> {
    prop::sample::select(Unit::ALL.to_vec())
}

fn share() -> impl Strategy<Value = Share> {
    prop_oneof![0.0..1.0, Just(0.0), Just(1.0), -1e300..1e300]
        .prop_map(|value| Share::new(value).expect("the strategy gives finite numbers"))
}

fn tone() -> impl Strategy<Value = Tone> {
    any::<u8>().prop_map(Tone)
}

fn frame() -> impl Strategy<Value = Frame> {
    let palette = prop_oneof![Just(Palette::screen()), Just(Palette::print())];
    let mark = prop_oneof![Just(DecimalMark::Point), Just(DecimalMark::Comma)];
    (words(), words(), words(), prop_oneof![Just(360), Just(720), any::<u16>()], palette, mark).prop_map(
        |(id, title, description, width, palette, mark)| Frame {
            id,
            title,
            description,
            width,
            palette,
            mark,
        },
    )
}

fn lane() -> impl Strategy<Value = Lane> {
    (words(), tone(), stretches(), stretches(), stretches())
        .prop_map(|(name, tone, live, closed, dead)| Lane { name, tone, live, closed, dead })
}

fn reading() -> impl Strategy<Value = Reading> {
    let total = (words(), tone(), length()).prop_map(|(name, tone, length)| Total { name, tone, length });
    let placed = (prop::collection::vec(lane(), 0..4), stretches(), stretches())
        .prop_map(|(lanes, canopy, unread)| Reading::Placed { lanes, canopy, unread });
    let unplaced = (prop::collection::vec(total, 0..4), words())
        .prop_map(|(totals, note)| Reading::Unplaced { totals, note });
    prop_oneof![placed, unplaced]
}

fn lines() -> impl Strategy<Value = Lines> {
    let line = (words(), words(), length(), reading()).prop_map(|(name, cover, length, reading)| Line {
        name,
        cover,
        length,
        reading,
    });
    let marks = [words(), words(), words(), words(), words(), words()];
    (prop::collection::vec(line, 0..4), unit(), marks).prop_map(
        |(lines, unit, [live, closed, dead, canopy, unread, unplaced])| Lines {
            lines,
            unit,
            words: line::Words { live, closed, dead, canopy, unread, unplaced },
        },
    )
}

fn changed_lines() -> impl Strategy<Value = change::Lines> {
    let line = (words(), words(), length(), (words(), words()), stretches(), stretches(), stretches())
        .prop_map(|(name, told, length, (earlier, later), kept, lost, gained)| change::Line {
            name,
            told,
            length,
            years: [earlier, later],
            kept,
            lost,
            gained,
        });
    let marks =
        (words(), words(), words()).prop_map(|(kept, lost, gained)| change::Words { kept, lost, gained });
    (prop::collection::vec(line, 0..5), unit(), marks).prop_map(|(lines, unit, words)| change::Lines {
        lines,
        unit,
        words,
    })
}

fn row() -> impl Strategy<Value = Row> {
    let estimate = prop_oneof![
        share().prop_map(Estimate::Figure),
        (share(), share()).prop_map(|(low, high)| Estimate::Between(low, high)),
    ];
    let bounds = prop_oneof![
        Just(Bounds::Unknown),
        share().prop_map(Bounds::AtLeast),
        share().prop_map(Bounds::AtMost),
        (share(), share()).prop_map(|(low, high)| Bounds::Between(low, high)),
    ];
    let relation = prop_oneof![
        share().prop_map(Relation::AtLeast),
        share().prop_map(Relation::AtMost),
        (share(), share()).prop_map(|(low, high)| Relation::Between(low, high)),
    ];
    let goal = (relation, words()).prop_map(|(relation, label)| Goal { relation, label });
    let lines = prop::collection::vec(share(), 0..10);
    let (estimate, goal) = (prop::option::of(estimate), prop::option::of(goal));
    (words(), words(), prop::option::of(tone()), lines, estimate, bounds, goal).prop_map(
        |(name, figure, tone, lines, estimate, bounds, goal)| Row {
            name,
            figure,
            tone,
            lines,
            estimate,
            bounds,
            goal,
        },
    )
}

fn cover_chart() -> impl Strategy<Value = Cover> {
    let marks = [words(), words(), words(), words(), words(), words(), words()];
    (prop::collection::vec(row(), 0..5), marks).prop_map(
        |(rows, [axis, estimate, between, lines, one_sided, two_sided, met])| Cover {
            rows,
            words: cover::Words { axis, estimate, between, lines, one_sided, two_sided, met },
        },
    )
}

fn curve_chart() -> impl Strategy<Value = Curve> {
    let step = (length(), share()).prop_map(|(limit, cover)| Step { limit, cover });
    let recorded = (length(), words()).prop_map(|(limit, label)| Recorded { limit, label });
    let around = [words(), words(), words(), words()];
    (prop::collection::vec(step, 0..8), recorded, length(), unit(), around).prop_map(
        |(steps, recorded, longest, unit, [limit, cover, recorded_rule, unknown])| Curve {
            steps,
            recorded,
            longest,
            unit,
            words: curve::Words { limit, cover, recorded: recorded_rule, unknown },
        },
    )
}

fn gap_chart() -> impl Strategy<Value = Gaps> {
    let class = (words(), share(), words()).prop_map(|(name, share, figure)| Class { name, share, figure });
    (prop::collection::vec(class, 0..6), words()).prop_map(|(classes, axis)| Gaps { classes, axis })
}

proptest! {
    #[test]
    fn lines_are_sound(lines in lines(), frame in frame()) {
        sound(&line::draw(&lines, &frame));
    }

    #[test]
    fn changes_are_sound(lines in changed_lines(), frame in frame()) {
        sound(&change::draw(&lines, &frame));
    }

    #[test]
    fn cover_is_sound(chart in cover_chart(), frame in frame()) {
        sound(&cover::draw(&chart, &frame));
    }

    #[test]
    fn curves_are_sound(curve in curve_chart(), frame in frame()) {
        sound(&curve::draw(&curve, &frame));
    }

    #[test]
    fn gaps_are_sound(chart in gap_chart(), frame in frame()) {
        sound(&gaps::draw(&chart, &frame));
    }

    /// Nothing that a person wrote is lost: the rows of a picture hold the words of every name.
    #[test]
    fn names_are_drawn_in_full(name in "[a-z<&]{1,12}( [a-z<&]{1,12}){0,12}", frame in frame()) {
        let class = Class { name: name.clone(), share: Share::new(0.5).unwrap(), figure: String::new() };
        let elements = sound(&gaps::draw(&Gaps { classes: vec![class], axis: String::new() }, &frame));
        let bold = elements.iter().filter(|element| element.attribute("font-weight").is_some());
        let rows: Vec<&str> = bold.map(|element| element.text.as_str()).collect();
        prop_assert_eq!(rows.join(" "), name);
    }

    /// Paper needs no stylesheet, the screen no colour of its own, and every class has its rule.
    #[test]
    fn the_screen_has_classes_and_paper_has_colours(chart in cover_chart(), lines in lines()) {
        for palette in [Palette::screen(), Palette::print()] {
            let printed = palette == Palette::print();
            let frame = Frame::new("site", 360, palette);
            for svg in [cover::draw(&chart, &frame), line::draw(&lines, &frame)] {
                let elements = sound(&svg);
                for element in &elements[1..] {
                    let colour = |name| element.attribute(name).filter(|value| value.starts_with('#'));
                    let coloured = colour("fill").or(colour("stroke")).is_some();
                    let classes = element.attribute("class");
                    prop_assert!(if printed { classes.is_none() } else { !coloured }, "{:?}", element);
                    for class in classes.into_iter().flat_map(|classes| classes.split(' ')) {
                        let rule = format!(".{class}{{");
                        prop_assert!(STYLESHEET.contains(&rule), "{}", class);
                    }
                }
            }
        }
    }
}

#[test]
fn ids_of_two_pictures_on_one_page_are_apart() {
    let lane = Lane {
        closed: vec![Stretch::new(Length::ZERO, Length::from_units(1, Unit::Foot)).unwrap()],
        ..Lane::default()
    };
    let reading = Reading::Placed { lanes: vec![lane], canopy: vec![], unread: vec![] };
    let length = Length::from_units(10, Unit::Foot);
    let line = Line { name: String::new(), cover: String::new(), length, reading };
    let lines = Lines { lines: vec![line], unit: Unit::Foot, words: line::Words::default() };
    let ids = |id: &str| -> Vec<String> {
        let elements = sound(&line::draw(&lines, &Frame::new(id, 360, Palette::screen())));
        elements.iter().filter_map(|element| element.attribute("id")).map(str::to_owned).collect()
    };
    let (first, second) = (ids("first"), ids("second"));
    assert_eq!(first.len(), 3, "title, description, pattern");
    assert!(first.iter().all(|id| id.starts_with("first-") && !second.contains(id)));
}

#[test]
fn nothing_at_all_is_still_a_picture() {
    let frame = Frame { title: "No lines yet".to_owned(), ..Frame::new("none", 360, Palette::screen()) };
    let lines = Lines { lines: vec![], unit: Unit::Metre, words: line::Words::default() };
    let elements = sound(&line::draw(&lines, &frame));
    assert!(elements.iter().any(|element| element.name == "title" && element.text == "No lines yet"));
    sound(&cover::draw(&Cover::default(), &frame));
    sound(&gaps::draw(&Gaps::default(), &frame));
    let nothing = Costs {
        designs: vec![],
        cheapest: None,
        likely: None,
        seen: Length::ZERO,
        unit: Unit::Metre,
        words: costs::Words::default(),
    };
    sound(&costs::draw(&nothing, &frame));
}

/// 10 m stands a third of the way from nothing to 30 m, and the cheapest has its mark there; what was not seen is dashed.
#[test]
fn the_cheapest_length_is_marked_where_it_lies() {
    let metres = |count| Length::from_units(count, Unit::Metre);
    let costs = Costs {
        designs: vec![(metres(30), 240.0), (metres(10), 120.0), (metres(20), 200.0)],
        cheapest: Some((metres(10), "ten".to_owned())),
        likely: Some((metres(10), metres(20))),
        seen: metres(20),
        unit: Unit::Metre,
        words: costs::Words { beyond: "beyond".to_owned(), ..costs::Words::default() },
    };
    let elements = sound(&costs::draw(&costs, &Frame::new("costs", 720, Palette::print())));
    let areas: Vec<_> = elements.iter().filter(|element| element.name == "rect").skip(1).collect();
    let (band, mark) = (areas[0], areas[1]);
    let (x, width) = (band.number("x"), band.number("width"));
    // the band from 10 to 20 m is a third of the axis, so the axis begins one band to the left of it
    assert!((mark.number("x") + 4.5 - x).abs() < 0.02);
    let path = |dashed: bool| {
        elements
            .iter()
            .filter(|one| one.name == "path" && one.attribute("stroke-dasharray").is_some() == dashed)
            .count()
    };
    assert!(path(true) >= 2 && width > 150.0, "the curve's end and its swatch");
}

#[test]
fn sixty_lines_of_three_hundred_intercepts() {
    let cm = |count| Length::from_units(count, Unit::Centimetre);
    let live: Vec<Stretch> = (0..300).map(|at| Stretch::new(cm(at * 16), cm(at * 16 + 5)).unwrap()).collect();
    let lane = Lane { name: "winterfat".to_owned(), live: live.clone(), ..Lane::default() };
    let reading = Reading::Placed { lanes: vec![lane], canopy: live, unread: vec![] };
    let line = Line { name: "Line".to_owned(), cover: "31 %".to_owned(), length: cm(5000), reading };
    let lines = Lines { lines: vec![line; 60], unit: Unit::Metre, words: line::Words::default() };
    let elements = sound(&line::draw(&lines, &Frame::new("many", 720, Palette::print())));
    let bars =
        elements.iter().filter(|element| element.name == "path").map(|path| path.extents().len()).max();
    assert_eq!(bars, Some(300));
}
