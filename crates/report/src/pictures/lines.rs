//! The lines of a site as tapes, drawn to one scale.

use super::frames;
use crate::document::Picture;
use crate::page::Page;
use crate::shown;
use tautline_engine::cover::{Closed, SpeciesCover};
use tautline_engine::stretch::{Stretch, without};
use tautline_figures::Frame;
use tautline_figures::line::{self, Lane, Line, Lines, Reading, Total};
use tautline_survey::assess::Assessment;
use tautline_survey::line::{LineResult, Recording, SpeciesResult};
use tautline_survey::message::{Message, Value};

/// Each line in a picture of its own, so that none is torn by the end of a sheet; then what the marks mean.
pub(crate) fn draw(id: &str, assessment: &Assessment, page: &Page) -> Vec<Picture> {
    let Some(first) = assessment.lines.first() else { return Vec::new() };
    let tape = |result: &LineResult| Line {
        name: page.say(&Message::new("report-line-name").with("line", result.line.as_str())),
        cover: shown::of_line(result, result.canopy, page),
        length: result.length.length(),
        reading: reading(result, page),
    };
    let lines = Lines {
        lines: assessment.lines.iter().map(tape).collect(),
        unit: first.length.notation().unit,
        words: marks(page),
    };
    let told = assessment.lines.iter().map(|result| {
        let title = Message::new("report-picture-line").with("line", result.line.as_str());
        (page.say(&title), description(result, page))
    });
    let marks = (page.word("report-picture-marks"), page.word("report-marks-said"));
    let told: Vec<(String, String)> = told.chain([marks]).collect();
    let framed = |(number, (title, said)): (usize, &(String, String))| {
        frames(&format!("{id}-{}", number + 1), title, said, page)
    };
    let framed: Vec<Vec<Frame>> = told.iter().enumerate().map(framed).collect();
    let widths = 0..framed[0].len(); // as many for each picture
    let drawn: Vec<Vec<String>> =
        widths.map(|at| line::draw_each(&lines, |number| framed[number][at].clone())).collect();
    told.into_iter()
        .enumerate()
        .map(|(number, (title, description))| Picture {
            title,
            description,
            drawings: drawn.iter().map(|all| all[number].clone()).collect(),
        })
        .collect()
}

/// What a line's picture shows: the tape, its cover, where canopy stands on it, what the rule closed.
fn description(result: &LineResult, page: &Page) -> String {
    let notation = result.notation(page.input);
    let show = |stretch: &Stretch| {
        let [from, to] =
            [stretch.start(), stretch.stop()].map(|length| shown::length(length, notation, page));
        shown::between(from, to, page)
    };
    let mut said = vec![
        page.say(
            &Message::new("report-picture-line-said")
                .with("line", result.line.as_str())
                .with("length", Value::Length(result.length.length(), result.length.notation()))
                .with("cover", shown::of_line(result, result.canopy, page)),
        ),
    ];
    if let Some(cover) = result.cover.as_ref().filter(|cover| !cover.canopy.is_empty()) {
        let stretches: Vec<String> = cover.canopy.iter().map(show).collect();
        said.push(page.say(&Message::new("report-picture-line-canopy").with("stretches", stretches)));
    }
    let (count, closed) = result.closed();
    if count > 0 {
        let closed = Value::Length(closed, notation);
        said.push(
            page.say(&Message::new("report-picture-line-closed").with("count", count).with("length", closed)),
        );
    }
    said.join(" ")
}

fn marks(page: &Page) -> line::Words {
    line::Words {
        live: page.word("report-mark-live"),
        closed: page.word("report-mark-closed"),
        dead: page.word("report-mark-dead"),
        canopy: page.word("report-mark-canopy"),
        unread: page.word("report-mark-unread"),
        unplaced: page.word("report-mark-unplaced"),
    }
}

fn reading(result: &LineResult, page: &Page) -> Reading {
    let Some(taken) = result.cover.as_ref().filter(|_| result.recording != Recording::LengthsOnly) else {
        let total = |species: &SpeciesResult| Total {
            name: shown::plant_name(&species.code, page),
            tone: page.tones.tone(&species.code),
            length: species.live.low,
        };
        return Reading::Unplaced {
            totals: result.species.iter().filter(|species| species.counted).map(total).collect(),
            note: page.word("report-lengths-only"),
        };
    };
    let stretches = |closed: &[Closed]| -> Vec<Stretch> { closed.iter().map(|one| one.stretch).collect() };
    // in the order of the codes, so that a species has the same place on every line
    let mut species: Vec<(&str, &SpeciesCover)> = taken
        .species
        .iter()
        .map(|species| (result.codes.get(species.species as usize).map_or("", String::as_str), species))
        .collect();
    species.sort_unstable_by_key(|(code, _)| *code);
    let mut lanes: Vec<Lane> = species
        .into_iter()
        .map(|(code, species)| {
            let closed = stretches(&species.closed);
            let live: Vec<Stretch> = species.live.iter().map(|piece| piece.stretch).collect();
            Lane {
                name: shown::plant_name(code, page),
                tone: page.tones.tone(code),
                live: without(&live, &closed),
                dead: species.dead.iter().map(|piece| piece.stretch).collect(),
                closed,
            }
        })
        .collect();
    if !taken.between.is_empty() {
        let name = page.word("report-between-species");
        lanes.push(Lane { name, closed: stretches(&taken.between), ..Lane::default() });
    }
    let unread = Stretch::new(result.read, result.length.length()).into_iter().collect();
    Reading::Placed { lanes, canopy: taken.canopy.clone(), unread }
}
