//! Writes a page with every picture, in light, dark and print, from an invented site.
//!
//! `cargo run -p tautline-figures --example gallery -- gallery.html [width]`

use std::process::ExitCode;
use tautline_engine::length::{DecimalMark, Length, Unit};
use tautline_engine::stretch::{Stretch, union};
use tautline_figures::cover::{self, Bounds, Cover, Estimate, Row};
use tautline_figures::curve::{self, Curve, Recorded, Step};
use tautline_figures::gaps::{self, Class, Gaps};
use tautline_figures::line::{self, Lane, Line, Lines, Reading, Total};
use tautline_figures::{Frame, Goal, Palette, Relation, STYLESHEET, Share, Tone};

fn main() -> ExitCode {
    let mut arguments = std::env::args().skip(1);
    let Some(path) = arguments.next() else {
        eprintln!("usage: gallery PAGE.html [WIDTH]");
        return ExitCode::FAILURE;
    };
    let width = arguments.next().and_then(|width| width.parse().ok()).unwrap_or(360);
    match std::fs::write(&path, page(width)) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("{path}: {error}");
            ExitCode::FAILURE
        }
    }
}

fn page(width: u16) -> String {
    let section = |name: &str, attribute: &str, palette: &Palette| {
        let figures = pictures(name, width, palette).join("\n");
        format!("<section class=\"{name}\"{attribute}>\n<h2>{name}</h2>\n{figures}</section>\n")
    };
    let light = section("light", " data-theme=\"light\"", &Palette::screen());
    let dark = section("dark", " data-theme=\"dark\"", &Palette::screen());
    let print = section("print", "", &Palette::print());
    format!(
        "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <title>Pictures of an invented site</title>\n<style>\n{STYLESHEET}\n\
         body{{margin:0;font-family:sans-serif}} section{{padding:12px;max-width:{width}px;margin:auto}}\n\
         .light{{background:#fbf8f1}} .dark{{background:#1d1a15;color:#efe7d8}} svg{{margin-bottom:16px}}\n\
         </style></head>\n<body>\n{light}{dark}{print}</body></html>\n"
    )
}

fn pictures(theme: &str, width: u16, palette: &Palette) -> Vec<String> {
    let frame = |name: &str, title: &str| Frame {
        title: title.to_owned(),
        description: "An invented site, drawn to show the picture.".to_owned(),
        ..Frame::new(&format!("{theme}-{name}"), width, palette.clone())
    };
    let comma = Frame { mark: DecimalMark::Comma, ..frame("curve", "Cover against the gap rule") };
    vec![
        line::draw(&site(), &frame("lines", "The lines of the site")),
        line::draw(&crowded(), &frame("crowded", "One line with many readings")),
        cover::draw(&against_the_goal(), &frame("cover", "Cover against the goal")),
        curve::draw(&gap_rule(), &comma),
        gaps::draw(&gap_classes(), &frame("gaps", "Gaps by class")),
    ]
}

fn inches(starts_and_stops: &[(i64, i64)]) -> Vec<Stretch> {
    let at = |inches| Length::from_units(inches, Unit::Inch);
    starts_and_stops.iter().filter_map(|&(start, stop)| Stretch::new(at(start), at(stop))).collect()
}

fn share(share: f64) -> Share {
    Share::new(share).expect("the invented shares are finite")
}

fn site() -> Lines {
    let saltbush = Lane {
        name: "fourwing saltbush".to_owned(),
        tone: Tone(0),
        live: inches(&[(31, 64), (68, 90), (240, 271), (500, 533)]),
        closed: inches(&[(64, 68)]),
        dead: inches(&[(90, 104)]),
    };
    let winterfat = Lane {
        name: "winterfat".to_owned(),
        tone: Tone(1),
        live: inches(&[(118, 126), (150, 161), (265, 280), (610, 618), (650, 659)]),
        ..Lane::default()
    };
    let shadscale = Lane {
        name: "shadscale saltbush".to_owned(),
        tone: Tone(2),
        live: inches(&[(300, 322), (330, 338)]),
        closed: inches(&[(322, 330)]),
        dead: inches(&[(700, 731)]),
    };
    let greasewood = Lane {
        name: "black greasewood".to_owned(),
        tone: Tone(3),
        live: inches(&[(12, 60), (210, 236), (330, 400)]),
        dead: inches(&[(60, 75)]),
        ..Lane::default()
    };
    let placed = |name: &str, cover: &str, feet, lanes: Vec<Lane>, unread| {
        let counted = lanes.iter().flat_map(|lane| lane.live.iter().chain(&lane.closed)).copied();
        let canopy = union(counted);
        let length = Length::from_units(feet, Unit::Foot);
        let reading = Reading::Placed { lanes, canopy, unread };
        Line { name: name.to_owned(), cover: cover.to_owned(), length, reading }
    };
    let total = |name: &str, tone, count| Total {
        name: name.to_owned(),
        tone: Tone(tone),
        length: Length::from_units(count, Unit::Inch),
    };
    let unplaced = Line {
        name: "Line 3".to_owned(),
        cover: "14.1 to 18.6 %".to_owned(),
        length: Length::from_units(65, Unit::Foot),
        reading: Reading::Unplaced {
            totals: vec![total("fourwing saltbush", 0, 110), total("winterfat", 1, 35)],
            note: "Only lengths were written down: they have no place on the tape.".to_owned(),
        },
    };
    Lines {
        lines: vec![
            placed("Line 1", "25.1 %", 65, vec![saltbush, winterfat, shadscale], inches(&[(400, 470)])),
            placed("Line 2, cut short at the fence", "36.1 %", 40, vec![greasewood], vec![]),
            unplaced,
        ],
        unit: Unit::Foot,
        words: line::Words {
            live: "live canopy".to_owned(),
            closed: "gap read as canopy".to_owned(),
            dead: "dead canopy".to_owned(),
            canopy: "canopy that counts, overlap once".to_owned(),
            unread: "not read".to_owned(),
            unplaced: "length without a place".to_owned(),
        },
    }
}

fn crowded() -> Lines {
    let cm = |count| Length::from_units(count, Unit::Centimetre);
    let live: Vec<Stretch> =
        (0..300).filter_map(|at| Stretch::new(cm(at * 16 + 3), cm(at * 16 + 6 + at * 7 % 9))).collect();
    let lane = Lane {
        name: "a species with a name far longer than any list of plants has ever carried, subspecies and all"
            .to_owned(),
        tone: Tone(4),
        live: live.clone(),
        ..Lane::default()
    };
    let reading = Reading::Placed { lanes: vec![lane], canopy: live, unread: vec![] };
    let name = "Line 14, from the old corral towards the water tank, read twice".to_owned();
    let line = Line { name, cover: "43.8 %".to_owned(), length: cm(5000), reading };
    Lines { lines: vec![line], unit: Unit::Metre, words: line::Words::default() }
}

fn against_the_goal() -> Cover {
    let goal = Goal { relation: Relation::AtLeast(share(0.15)), label: "goal: at least 15 %".to_owned() };
    let row = |name: &str, figure: &str, tone, lines: &[f64], estimate, bounds| Row {
        name: name.to_owned(),
        figure: figure.to_owned(),
        tone,
        lines: lines.iter().copied().map(share).collect(),
        estimate: Some(estimate),
        bounds,
        goal: None,
    };
    let all = row(
        "All shrubs",
        "19.8 %, at least 16.4 %",
        None,
        &[0.11, 0.15, 0.172, 0.19, 0.2, 0.204, 0.23, 0.32],
        Estimate::Figure(share(0.198)),
        Bounds::AtLeast(share(0.164)),
    );
    let saltbush = row(
        "fourwing saltbush",
        "9.2 % (6.1 to 12.3 %)",
        Some(Tone(0)),
        &[0.02, 0.06, 0.07, 0.1, 0.11, 0.17],
        Estimate::Figure(share(0.092)),
        Bounds::Between(share(0.061), share(0.123)),
    );
    let winterfat = row(
        "winterfat, lengths only",
        "4.5 to 7.5 %, no error: one line",
        Some(Tone(1)),
        &[0.06],
        Estimate::Between(share(0.045), share(0.075)),
        Bounds::Unknown,
    );
    let greasewood = row(
        "black greasewood",
        "3.1 %, at most 5.2 %",
        Some(Tone(3)),
        &[0.0, 0.0, 0.01, 0.05, 0.09],
        Estimate::Figure(share(0.031)),
        Bounds::AtMost(share(0.052)),
    );
    let most = Goal { relation: Relation::AtMost(share(0.08)), label: "goal: at most 8 %".to_owned() };
    let band =
        Goal { relation: Relation::Between(share(0.05), share(0.10)), label: "goal: 5 to 10 %".to_owned() };
    Cover {
        rows: vec![
            Row { goal: Some(goal), ..all },
            Row { goal: Some(band), ..saltbush },
            winterfat,
            Row { goal: Some(most), ..greasewood },
        ],
        words: cover::Words {
            axis: "live canopy, % of the line".to_owned(),
            estimate: "cover of the site".to_owned(),
            between: "known only between".to_owned(),
            lines: "single lines".to_owned(),
            one_sided: "bound on one side".to_owned(),
            two_sided: "bounds on both sides".to_owned(),
            met: "meets the goal".to_owned(),
        },
    }
}

fn gap_rule() -> Curve {
    let cm = |count| Length::from_units(count, Unit::Centimetre);
    let step = |limit, cover| Step { limit: cm(limit), cover: share(cover) };
    Curve {
        steps: vec![step(0, 0.121), step(5, 0.121), step(7, 0.128), step(10, 0.134), step(13, 0.145)],
        recorded: Recorded { limit: cm(5), label: "12,1 % as read".to_owned() },
        longest: cm(20),
        unit: Unit::Centimetre,
        words: curve::Words {
            limit: "gaps shorter than this are read as canopy, cm".to_owned(),
            cover: "live canopy, % of the line".to_owned(),
            recorded: "the rule the lines were read under".to_owned(),
            unknown: "finer than the reading: not known".to_owned(),
        },
    }
}

fn gap_classes() -> Gaps {
    let class = |name: &str, value: f64| Class {
        name: name.to_owned(),
        share: share(value / 100.0),
        figure: format!("{value} %"),
    };
    Gaps {
        classes: vec![
            class("25 to 50 cm", 6.0),
            class("51 to 100 cm", 14.5),
            class("101 to 200 cm", 31.0),
            class("over 200 cm", 0.0),
        ],
        axis: "share of the line in shrub gaps, %".to_owned(),
    }
}
