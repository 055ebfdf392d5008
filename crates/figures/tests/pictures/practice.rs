//! A practice line as drawn: sound, to scale, and silent about its key.

use super::reader::{Element, read, sound};
use tautline_engine::length::{Division, Length, Notation, Unit};
use tautline_engine::practice::level::{Level, Wanted, draw};
use tautline_engine::practice::line::{PracticeLine, Round, Shrub};
use tautline_engine::stretch::Stretch;
use tautline_figures::practice::{Sight, Strips, Words, draw_line, draw_piece, draw_sight};
use tautline_figures::{Frame, Palette};

fn line(level: Level, seed: u64, tape: Notation) -> PracticeLine {
    let gap = Length::from_units(5, Unit::Centimetre);
    draw(&Wanted { level, length: Length::from_units(50, Unit::Foot), tape, gap, seed })
}

const CENTIMETRES: Notation = Notation::decimals(Unit::Centimetre, 0);

fn drawn(line: &PracticeLine, each: Length, width: u16, palette: Palette) -> String {
    let words = |text: &str| text.to_owned();
    let words = Words {
        species: ["one", "two", "three", "four"].map(words).to_vec(),
        dead: words("dead"),
        others: ["grass", "flower", "stalks", "litter", "rock"].map(words),
        edge: words("read here"),
    };
    let strips = Strips { line, from: Length::ZERO, to: line.length, each, words };
    draw_line(&strips, &Frame::new("practice", width, palette))
}

#[test]
fn every_level_is_drawn_soundly_at_every_width() {
    let inches = Notation { unit: Unit::Inch, feet_and_inches: true, division: Division::Fraction(2) };
    for level in Level::ALL {
        for seed in 0..6 {
            for (width, tape) in
                [(360, inches), (720, CENTIMETRES), (1400, Notation::decimals(Unit::Foot, 2))]
            {
                let line = line(level, seed, tape);
                for palette in [Palette::screen(), Palette::print()] {
                    sound(&drawn(&line, Length::from_units(5, Unit::Foot), width, palette));
                }
            }
        }
    }
}

/// The corners of a closed path.
fn corners(element: &Element) -> Option<Vec<(f64, f64)>> {
    let drawn = element.attribute("d")?.strip_prefix('M')?.strip_suffix('Z')?;
    let point = |text: &str| {
        let (x, y) = text.split_once(' ')?;
        Some((x.parse().ok()?, y.parse().ok()?))
    };
    drawn.split('L').map(point).collect()
}

/// A crown over the joint of two pieces runs on beyond it in both, so that no outline stands where none is; and where it ends, by the
/// drawing, is where the line has it: 600 px are 150 cm, so 1.4 m is at 560 px of the first piece and 1.7 m at 80 px of the second.
#[test]
fn pieces_go_on_where_the_one_before_ends() {
    let cm = |n| Length::from_units(n, Unit::Centimetre);
    let crown = Round { cut: Stretch::new(cm(140), cm(170)).unwrap(), aside: Length::ZERO };
    let shrub =
        Shrub { species: 0, crown, openings: Vec::new(), dead: Vec::new(), alive: true, height: cm(40) };
    let line = PracticeLine {
        length: cm(300),
        tape: CENTIMETRES,
        width: Length::ZERO,
        slope: 0,
        species: 1,
        shrubs: vec![shrub],
        others: Vec::new(),
    };
    let crown = |from, to| {
        let svg = draw_piece(&line, (cm(from), cm(to)), &Frame::new("piece", 600, Palette::print()));
        // read as it stands: that it runs out of the frame is what is wanted here
        let corners: Vec<(f64, f64)> = read(&svg).iter().filter_map(corners).flatten().collect();
        let ends = |points: &mut dyn Iterator<Item = &(f64, f64)>| {
            points.fold((f64::MAX, f64::MIN), |(low, high), (x, _)| (low.min(*x), high.max(*x)))
        };
        let at_the_tape = ends(&mut corners.iter().filter(|(_, y)| (119.0..=121.0).contains(y)));
        (at_the_tape, ends(&mut corners.iter()))
    };
    let (first, second) = (crown(0, 150), crown(150, 300));
    assert!((first.0.0 - 560.0).abs() < 0.2 && first.1.1 > 603.0, "{first:?}");
    assert!((second.0.1 - 80.0).abs() < 0.2 && second.1.0 < -3.0, "{second:?}");
}

/// Where every crown crosses the tape's edge, by the drawing, is where the line has it: to a tenth of a pixel, far below a division.
#[test]
fn crowns_cross_the_edge_where_the_key_says() {
    for seed in 0..8 {
        let line = line(Level::One, seed, CENTIMETRES);
        // the whole line in one strip, so that none is cut off along the tape
        let svg = drawn(&line, line.length, 2000, Palette::print());
        let elements = sound(&svg);
        let edge = elements
            .iter()
            .find(|one| one.attribute("stroke-width") == Some("1.6"))
            .map(|one| one.extents()[0])
            .unwrap();
        let scale = (edge[2] - edge[0]) / line.length.in_unit(Unit::Metre);
        let outlines: Vec<Vec<(f64, f64)>> = elements
            .iter()
            .filter(|one| {
                one.attribute("stroke-width") == Some("1.4") && one.attribute("fill") == Some("none")
            })
            .filter_map(corners)
            .collect();
        assert_eq!(outlines.len(), line.shrubs.len());
        for (outline, shrub) in outlines.iter().zip(sorted_by_height(&line)) {
            let crossing = |at: usize| {
                let (a, b) = (outline[at], outline[(at + 1) % outline.len()]);
                ((a.1 < edge[1]) != (b.1 < edge[1]))
                    .then(|| a.0 + (b.0 - a.0) * (edge[1] - a.1) / (b.1 - a.1))
            };
            let found: Vec<f64> = (0..outline.len()).filter_map(crossing).collect();
            let (low, high) =
                (found.iter().copied().fold(f64::MAX, f64::min), found.iter().copied().fold(0.0, f64::max));
            for (place, length) in [(low, shrub.start()), (high, shrub.stop())] {
                let wanted = edge[0] + length.in_unit(Unit::Metre) * scale;
                assert!((place - wanted).abs() < 0.1, "{place} for {wanted}");
            }
        }
    }
}

fn sorted_by_height(line: &PracticeLine) -> Vec<tautline_engine::stretch::Stretch> {
    let mut shrubs: Vec<_> = line.shrubs.iter().enumerate().collect();
    shrubs.sort_by_key(|(number, shrub)| (shrub.height, *number));
    shrubs.into_iter().map(|(_, shrub)| shrub.crown.cut).collect()
}

/// Texts are numbers of the tape and the words handed in: nothing says where canopy starts or stops.
#[test]
fn no_text_gives_the_key_away() {
    let line = line(Level::Five, 3, CENTIMETRES);
    let svg = drawn(&line, Length::from_units(150, Unit::Centimetre), 720, Palette::screen());
    let known =
        ["one", "two", "three", "four", "dead", "grass", "flower", "stalks", "litter", "rock", "read here"];
    for element in sound(&svg).iter().filter(|one| one.name == "text") {
        let number = element.text.split('\u{a0}').next().unwrap_or_default().parse::<i64>();
        let on_tape = number.is_ok_and(|number| number % 10 == 0);
        assert!(on_tape || known.contains(&element.text.as_str()), "{}", element.text);
    }
}

#[test]
fn sights_are_sound() {
    for degrees in [5.0, 20.0, 45.0] {
        let sight = Sight {
            height: Length::from_units(60, Unit::Centimetre),
            degrees,
            height_words: "60 cm high".to_owned(),
            angle_words: "leaning".to_owned(),
            off_words: "off by so much".to_owned(),
            right_words: "straight above".to_owned(),
        };
        sound(&draw_sight(&sight, &Frame::new("sight", 480, Palette::print())));
    }
}

/// Through an opening in an upper crown one sees the shrub below: nothing paints the opening over, and what is left out of the upper
/// crown crosses the tape's edge where the opening does.
#[test]
fn an_opening_shows_what_grows_below_it() {
    let cm = |number| Length::from_units(number, Unit::Centimetre);
    let round =
        |start, stop, aside| Round { cut: Stretch::new(cm(start), cm(stop)).unwrap(), aside: cm(aside) };
    let shrub = |crown, openings, height| Shrub {
        species: 0,
        crown,
        openings,
        dead: Vec::new(),
        alive: true,
        height: cm(height),
    };
    let line = PracticeLine {
        length: cm(200),
        tape: CENTIMETRES,
        width: cm(1),
        slope: 0,
        species: 1,
        shrubs: vec![
            shrub(round(40, 160, 0), vec![round(80, 120, 2)], 100),
            shrub(round(70, 130, 0), Vec::new(), 30),
        ],
        others: Vec::new(),
    };
    let svg = drawn(&line, line.length, 1000, Palette::print());
    let elements = sound(&svg);
    let ground =
        elements.iter().find(|one| one.name == "rect").and_then(|one| one.attribute("fill")).unwrap();
    let painted = elements.iter().filter(|one| one.name == "path" && one.attribute("fill") == Some(ground));
    assert_eq!(painted.count(), 0, "nothing is painted over in the colour of the ground");
    let edge = elements.iter().find(|one| one.attribute("stroke-width") == Some("1.6")).unwrap().extents()[0];
    let scale = (edge[2] - edge[0]) / 2.0;
    let hole = elements.iter().find(|one| one.attribute("fill") == Some("#000")).and_then(corners).unwrap();
    let crossings: Vec<f64> = (0..hole.len())
        .filter_map(|at| {
            let (a, b) = (hole[at], hole[(at + 1) % hole.len()]);
            ((a.1 < edge[1]) != (b.1 < edge[1])).then(|| a.0 + (b.0 - a.0) * (edge[1] - a.1) / (b.1 - a.1))
        })
        .collect();
    let ends =
        [f64::min, f64::max].map(|of: fn(f64, f64) -> f64| crossings.iter().copied().reduce(of).unwrap());
    for (found, metres) in ends.into_iter().zip([0.8, 1.2]) {
        assert!((found - edge[0] - metres * scale).abs() < 0.1, "{found}");
    }
}
