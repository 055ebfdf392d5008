//! Where the lines lie: drawn to scale where that may be told, else said as far as it may be.

use crate::document::{Block, paragraph};
use crate::markup::{Column, Table};
use crate::page::Page;
use crate::pictures::drawn;
use crate::tables::columns;
use tautline_figures::map::{self, Degree, Map};
use tautline_survey::assess::Assessment;
use tautline_survey::layout::MapOutput;
use tautline_survey::message::{Message, Value};
use tautline_survey::place::{LinePlace, Openness, Position, Told};
use tautline_words::Words;

/// The map of a site with the places of its lines; nothing where no place was written down.
pub(crate) fn section(id: &str, assessment: &Assessment, page: &Page) -> Vec<Block> {
    let site = assessment.site.as_str();
    let of_plot =
        |line: &str| assessment.plot.is_none() || assessment.lines.iter().any(|one| one.line == line);
    let own = page.input.places.iter().filter(|place| place.site == site && of_plot(&place.line));
    let places: Vec<&LinePlace> = own.collect();
    if places.is_empty() {
        return Vec::new();
    }
    match page.openness(site) {
        Openness::Withheld => vec![paragraph(page.word("report-map-withheld"))],
        Openness::Blurred(width) => blurred(&places, width, page),
        Openness::Exact => {
            let mut blocks: Vec<Block> = exact(id, site, &places, page).into_iter().collect();
            blocks.extend(table(&places, page));
            blocks
        }
    }
}

/// Lines to scale, north up.
fn exact(id: &str, site: &str, places: &[&LinePlace], page: &Page) -> Option<Block> {
    let mut map = page.map(site)?.clone();
    map.lines.retain(|line| places.iter().any(|place| place.line == line.line));
    if map.lines.is_empty() {
        return None;
    }
    let lines: Vec<String> = map.lines.iter().map(|line| line.line.clone()).collect();
    let said = page.say(&Message::new("report-map-said").with("site", site).with("lines", lines));
    let picture = drawing(&map, page.words);
    let name = format!("{id}-map");
    let picture = drawn(&name, &page.word("report-map"), &said, page, |frame| map::draw(&picture, frame));
    Some(Block::Picture(picture))
}

/// Where each line begins and ends.
fn table(places: &[&LinePlace], page: &Page) -> Option<Block> {
    let headings = [
        (Column::Name, "column-line"),
        (Column::Figure, "column-start"),
        (Column::Figure, "report-column-end"),
    ];
    let mut table = Table::new(page.word("report-map-table"), columns(page, &headings));
    for place in places {
        let end = place.end.map_or_else(String::new, |end| degrees(end, 6, page));
        table.row(vec![place.line.clone(), degrees(place.start, 6, page), end]);
    }
    table.finished().map(Block::Table)
}

fn degrees(position: Position, decimals: u32, page: &Page) -> String {
    position.degrees().map(|degrees| page.words.number(degrees, decimals)).join(" ")
}

/// The square in which the lines lie, as wide as somebody decided.
fn blurred(places: &[&LinePlace], width: u16, page: &Page) -> Vec<Block> {
    let told = places.iter().filter_map(|place| match page.input.told_of(place, Openness::Blurred(width)) {
        Told::Blurred(middle, metres) => Some((degrees(middle, 3, page), metres)),
        _ => None,
    });
    let said = |(middle, metres): (String, u32)| {
        let said = Message::new("report-map-blurred").with("width", u64::from(width)).with("middle", middle);
        paragraph(page.say(&said.with("metres", Value::Number(f64::from(metres), 0))))
    };
    told.max_by_key(|(_, metres)| *metres).map(said).into_iter().collect()
}

/// A map as a picture takes it.
pub(crate) fn drawing(map: &MapOutput, words: &Words) -> Map {
    let place = |[east, north]: [f64; 2]| (east, north);
    let ring = |places: &[[f64; 2]]| -> Vec<map::Place> { places.iter().map(|&at| place(at)).collect() };
    let strata = map.strata.iter();
    Map {
        strata: strata
            .map(|one| (one.name.clone(), one.rings.iter().map(|places| ring(places)).collect()))
            .collect(),
        keep_out: map
            .keep_out
            .iter()
            .map(|one| {
                #[expect(clippy::cast_precision_loss, reason = "ten kilometres at most")]
                let metres = one.buffer_mm as f64 / 1000.0;
                (ring(&one.places), one.closed, metres)
            })
            .collect(),
        lines: map
            .lines
            .iter()
            .map(|one| map::Line {
                name: one.line.clone(),
                from: place(one.from),
                to: place(one.to),
                reserve: one.reserve,
            })
            .collect(),
        way: map.way.iter().map(|way| ring(way)).collect(),
        degrees: map
            .degrees
            .iter()
            .map(|one| Degree {
                label: format!("{}°", words.number(one.degree, 4)),
                way: one.way.map(place),
                latitude: one.latitude,
            })
            .collect(),
        words: map::Words {
            north: words.word("map-north"),
            line: words.word("map-line"),
            reserve: words.word("map-reserve"),
            keep_out: words.word("map-keep-out"),
            way: words.word("map-way"),
        },
    }
}
