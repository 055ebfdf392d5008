//! `tautline plan lines`: a boundary in, lines laid out.

use super::{boundary, flag, option};
use crate::call::{Done, length_option, not_a_number, unwritable};
use crate::exit::Exit;
use crate::here::Here;
use crate::{notebook, show};
use clap::{ArgAction, ArgMatches, Command};
use std::path::Path;
use tautline_engine::length::DecimalMark;
use tautline_engine::place::baseline::{Sides, Starts};
use tautline_engine::place::layout::{Ask, Bearing, Edge, Shape};
use tautline_engine::place::points::Design;
use tautline_exchange::{geojson, laid};
use tautline_ground::baseline::Walked;
use tautline_ground::lay::{Wanted, lay};
use tautline_ground::position::Position;
use tautline_ground::site::Site;
use tautline_ground::typed;
use tautline_survey::date::Date;
use tautline_survey::layout::{End, LaidLine, LayoutOutput};
use tautline_survey::measure::Measure;
use tautline_survey::message::{Message, Value};
use tautline_words::Words;

pub(super) fn command(words: &Words) -> Command {
    options(Command::new("lines").about(words.word("help-plan-lines")), words).arg(flag(
        words,
        "json",
        "help-json",
    ))
}

/// The command with everything that lays lines out.
pub(super) fn options(command: Command, words: &Words) -> Command {
    let option = |name, value, help| option(words, name, value, help);
    command
        .arg(option("boundary", "FILE", "help-boundary").required(true))
        .arg(option("keep-out", "FILE[, LENGTH][, CROSSED]", "help-keep-out").action(ArgAction::Append))
        .arg(option("there", "FILE", "help-there").action(ArgAction::Append))
        .arg(option("baseline", "PLACE; BEARING; LENGTH", "help-baseline"))
        .arg(option("starts", "HOW", "help-starts").value_parser(["random", "systematic"]))
        .arg(option("sides", "SIDE", "help-sides").value_parser(["either", "left", "right"]))
        .arg(flag(words, "take-in", "help-take-in"))
        .arg(option("judged", "WHY", "help-judged"))
        .arg(option("stratum-from", "FIELD", "help-stratum-from"))
        .arg(option("datum", "DATUM", "help-datum"))
        .arg(option("lines", "NUMBER", "help-lines").required(true))
        .arg(option("length", "LENGTH", "help-length").required(true))
        .arg(option("reserve", "NUMBER", "help-reserve"))
        .arg(option("design", "HOW", "help-design").value_parser(["balanced", "random", "systematic"]))
        .arg(option("bearing", "HOW", "help-bearing"))
        .arg(option("edge", "RULE", "help-edge").value_parser(["turn", "redraw"]))
        .arg(option("apart", "LENGTH", "help-apart"))
        .arg(option("spokes", "NUMBER", "help-spokes"))
        .arg(option("offset", "LENGTH", "help-offset"))
        .arg(option("date", "DATE", "help-date"))
        .arg(option("elevation", "METRES", "help-elevation"))
        .arg(option("batch", "NUMBER", "help-batch"))
        .arg(option("from", "LATITUDE,LONGITUDE", "help-walk-from"))
        .arg(option("seed", "NUMBER", "help-layout-seed"))
        .arg(option("site", "NAME", "help-site-name"))
        .arg(option("unit", "UNIT", "help-unit"))
        .arg(option("decimal", "MARK", "help-decimal").value_parser(["point", "comma"]))
        .arg(option("names", "TEXT", "help-names"))
        .arg(option("into", "DIR", "help-into"))
        .arg(option("notebook", "FILE", "help-layout-notebook"))
        .arg(option("author", "NAME", "help-author"))
        .arg(option("reason", "TEXT", "help-lines-reason"))
}

pub(super) fn run(asked: &ArgMatches, words: &Words, here: &mut Here) -> Done {
    let (site, layout) = laid(asked, words)?;
    notebook::keep_layout(asked, &site, &layout, words, here)?;
    if let Some(folder) = asked.get_one::<String>("into") {
        write(folder, &layout, words)?;
    }
    if asked.get_flag("json") {
        show::json(&layout);
    } else {
        show::layout(&layout, words);
    }
    Ok(status(&layout))
}

/// The site, and the lines laid out on it; what was repaired is said aside.
pub(super) fn laid(asked: &ArgMatches, words: &Words) -> Result<(Site, LayoutOutput), (String, Exit)> {
    let (site, name) = boundary::site(asked, words)?;
    let wanted = wanted(asked, name, words)?;
    let layout = lay(&site, &wanted).map_err(|error| (words.say(&error.message()), Exit::NotUnderstood))?;
    if wanted.batch.is_some() && layout.strata.len() > 1 {
        show::aside(&words.word("layout-batch-strata"));
    }
    for line in layout.lines.iter().filter(|line| line.staked) {
        staked_length(line, &layout, words);
    }
    Ok((site, layout))
}

/// Says where the coordinates of a staked line don't fit the tape: a receiver's error at both ends is some 10 m at most.
fn staked_length(line: &LaidLine, layout: &LayoutOutput, words: &Words) {
    let place = |end: &End| Position::new(end.latitude, end.longitude);
    let Some((start, end)) = place(&line.start).zip(place(&line.end)) else { return };
    let (metres, _) = start.to(end);
    #[expect(clippy::cast_precision_loss, reason = "a tape is far shorter than 2^53 mm")]
    let tape = layout.line_length_mm as f64 / 1000.0;
    if (metres - tape).abs() > 10.0_f64.max(tape / 10.0) {
        let message = Message::new("layout-staked-length").with("line", line.line.as_str());
        let message = message.with("metres", Value::Number(metres, 1));
        show::aside(&words.say(&message.with("length", layout.line_length.as_str())));
    }
}

/// The layout as files; the reserve's table in a folder of its own.
pub(super) fn write(folder: &str, layout: &LayoutOutput, words: &Words) -> Result<(), (String, Exit)> {
    let reserve = Path::new(folder).join("reserve");
    let mut files = vec![
        (Path::new(folder).join("lines.csv"), laid::lines_table(layout, false)),
        (Path::new(folder).join("layout.gpx"), laid::gpx(layout)),
        (Path::new(folder).join("layout.geojson"), geojson::layout(layout)),
    ];
    if layout.lines.iter().any(|line| line.reserve) {
        files.push((reserve.join("lines.csv"), laid::lines_table(layout, true)));
    }
    for (path, text) in files {
        let written = path.parent().map_or(Ok(()), std::fs::create_dir_all);
        written
            .and_then(|()| std::fs::write(&path, text))
            .map_err(|error| unwritable(&path.display().to_string(), &error, words))?;
    }
    show::aside(&words.say(&Message::new("layout-written").with("folder", folder)));
    Ok(())
}

/// How a call ends that laid lines out.
pub(super) fn status(layout: &LayoutOutput) -> Exit {
    let short = layout.strata.iter().any(|stratum| stratum.placed < stratum.wanted);
    if layout.lines.is_empty() {
        Exit::Nothing
    } else if short {
        Exit::MustSettle
    } else {
        Exit::Well
    }
}

fn wanted(asked: &ArgMatches, name: Option<String>, words: &Words) -> Result<Wanted, (String, Exit)> {
    let text = |name: &str| asked.get_one::<String>(name).map(String::as_str);
    let wrong = |found: &str, option: &str| not_a_number(found, option, words);
    let number = |option: &str| -> Result<Option<usize>, (String, Exit)> {
        let read = |found: &str| found.parse().ok().filter(|&n| n <= MOST_LINES);
        text(option).map(|found| read(found).ok_or_else(|| wrong(found, &format!("--{option}")))).transpose()
    };
    let millimetres = |option: &'static str| -> Result<Option<i64>, (String, Exit)> {
        let length = length_option(asked, option, words)?;
        let Some(length) = length else { return Ok(None) };
        let millimetres = (length.length().nanometres() + 500_000) / 1_000_000;
        if millimetres <= LONGEST { Ok(Some(millimetres)) } else { Err(wrong(length.typed(), option)) }
    };
    let length = millimetres("length")?.filter(|&length| length > 0);
    let length = length.ok_or_else(|| wrong(text("length").unwrap_or(""), "--length"))?;
    let shares = text("lines").filter(|found| found.contains(':')).map(shares);
    let shares = shares.map(|found| found.ok_or_else(|| wrong(text("lines").unwrap_or(""), "--lines")));
    let shares = shares.transpose()?.unwrap_or_default();
    let lines = match shares.as_slice() {
        [] => number("lines")?,
        shares => Some(shares.iter().map(|(_, lines)| lines).sum()).filter(|&lines| lines <= MOST_LINES),
    };
    let lines = lines.filter(|&lines| lines > 0);
    let lines = lines.ok_or_else(|| wrong(text("lines").unwrap_or(""), "--lines"))?;
    let shape = match number("spokes")? {
        Some(spokes) => {
            let lines = u16::try_from(spokes).ok().filter(|spokes| (1..=36).contains(spokes));
            let lines = lines.ok_or_else(|| wrong(text("spokes").unwrap_or(""), "--spokes"))?;
            Shape::Spokes { lines, offset: millimetres("offset")?.unwrap_or(5_000) }
        }
        None => Shape::Line,
    };
    let (bearing, bearings) = match text("bearing") {
        None => (Bearing::Random, Vec::new()),
        Some(found) => bearings(found).ok_or_else(|| {
            (words.say(&Message::new("option-bearing").with("found", found)), Exit::NotUnderstood)
        })?,
    };
    let date = text("date")
        .map(|found| {
            Date::read(found).ok_or_else(|| {
                (words.say(&Message::new("option-date").with("found", found)), Exit::NotUnderstood)
            })
        })
        .transpose()?;
    let height = text("elevation")
        .map(|found| found.parse::<f64>().map_err(|_| wrong(found, "--elevation")))
        .transpose()?
        .unwrap_or(0.0);
    let seed = text("seed").map(|found| found.parse().map_err(|_| wrong(found, "--seed"))).transpose()?;
    Ok(Wanted {
        name: text("site").map(str::to_owned).or(name).unwrap_or_default(),
        names: text("names").unwrap_or_default().to_owned(),
        ask: Ask {
            design: match text("design") {
                Some("random") => Design::Random,
                Some("systematic") => Design::Systematic,
                _ => Design::Balanced,
            },
            wanted: lines,
            reserve: number("reserve")?.unwrap_or(lines.div_ceil(2)),
            shape,
            length,
            bearing,
            edge: if text("edge") == Some("redraw") { Edge::Redraw } else { Edge::Turn },
            apart: millimetres("apart")?.unwrap_or(if text("baseline").is_some() { 5_000 } else { length }),
        },
        shares,
        bearings,
        line_length: length_option(asked, "length", words)?
            .map_or(String::new(), |length| written(length.typed(), text("unit"))),
        seed: seed.unwrap_or(1),
        compass: date.map(|date| (date, height)),
        batch: number("batch")?.filter(|&batch| batch > 0),
        from: text("from")
            .map(|found| {
                let reference = boundary::reference(asked, words)?.unwrap_or_default();
                typed::read(found, reference).ok_or_else(|| wrong(found, "--from"))
            })
            .transpose()?,
        baseline: text("baseline").map(|found| baseline(found, asked, words)).transpose()?,
        take_in: asked.get_flag("take-in"),
        judged: text("judged").map(str::to_owned),
    })
}

/// `bench: 12, swale: 8`: lines of each stratum.
fn shares(found: &str) -> Option<Vec<(String, usize)>> {
    let one = |part: &str| {
        let (name, lines) = part.rsplit_once(':')?;
        let lines = lines.trim().parse().ok().filter(|&lines| lines <= MOST_LINES)?;
        Some((name.trim().to_owned(), lines))
    };
    found.split(',').map(one).collect()
}

/// `across 40`, or `random, bench: across 40, swale: across 130`: the bearing of all, and of each stratum that has its own.
fn bearings(found: &str) -> Option<(Bearing, Vec<(String, Bearing)>)> {
    let (own, all): (Vec<&str>, Vec<&str>) = found.split(',').partition(|part| part.contains(':'));
    let own = own.into_iter().map(|part| {
        let (name, bearing) = part.rsplit_once(':')?;
        Some((name.trim().to_owned(), Bearing::read(bearing)?))
    });
    let bearing = match all.as_slice() {
        [] => Bearing::Random,
        [all] => Bearing::read(all)?,
        _ => return None,
    };
    Some((bearing, own.collect::<Option<_>>()?))
}

/// `42.3010,-113.7000; 40; 300 m`: where it starts, its true bearing, its length.
fn baseline(found: &str, asked: &ArgMatches, words: &Words) -> Result<Walked, (String, Exit)> {
    let reference = boundary::reference(asked, words)?.unwrap_or_default();
    let text = |name: &str| asked.get_one::<String>(name).map(String::as_str);
    let read = || {
        let [place, bearing, length]: [&str; 3] = found.split(';').collect::<Vec<_>>().try_into().ok()?;
        let bearing =
            bearing.trim().trim_end_matches('°').parse().ok().filter(|&degrees: &u16| degrees <= 360)?;
        let length = Measure::read(length.trim(), None, DecimalMark::Point).ok()?;
        let length = (length.length().nanometres() + 500_000) / 1_000_000;
        Some(Walked {
            from: typed::read(place.trim(), reference)?,
            bearing: bearing % 360,
            length: Some(length).filter(|length| (1..=LONGEST).contains(length))?,
            starts: if text("starts") == Some("systematic") { Starts::Systematic } else { Starts::Random },
            sides: match text("sides") {
                Some("left") => Sides::Left,
                Some("right") => Sides::Right,
                _ => Sides::Either,
            },
        })
    };
    read().ok_or_else(|| {
        (words.say(&Message::new("option-baseline").with("found", found)), Exit::NotUnderstood)
    })
}

/// The length with its unit, so that the lines' table needs none beside it.
fn written(typed: &str, unit: Option<&str>) -> String {
    match unit {
        Some(unit) if typed.chars().all(|c| c.is_ascii_digit() || c == '.') => format!("{typed} {unit}"),
        _ => typed.to_owned(),
    }
}

/// More lines than anybody reads at one site, and a tape longer than any.
const MOST_LINES: usize = 1000;
const LONGEST: i64 = 10_000_000;
