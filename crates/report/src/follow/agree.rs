//! Readers side by side.

use super::{Followed, answer, findings, followed, points, points_said, section, site};
use crate::document::{Block, Picture, Section, Site, heading, sentences as listed};
use crate::markup::{Column, Table};
use crate::page::{Page, site_id};
use crate::pictures::drawn;
use tautline_engine::length::{Length, Unit};
use tautline_engine::stretch::{Stretch, union, without};
use tautline_figures::change::{self, Line, Lines, Words as Marks};
use tautline_figures::control::{self, Control, Point};
use tautline_survey::agree::{
    Agreement, LinePair, Season, season_sentences, seasons, sentences, standing_sentences,
};
use tautline_survey::input::Input;
use tautline_survey::message::Message;
use tautline_words::Words;

/// Readers of the same lines.
///
/// # Example
/// ```
/// use tautline_survey::input::Input;
/// let words = tautline_words::Words::english();
/// let told = tautline_report::agreement(&Input::default(), &[], None, &words);
/// assert!(told.page().contains("No line was read by two readers in one year."));
/// ```
pub fn agreement(input: &Input, agreements: &[Agreement], tolerance: Option<f64>, words: &Words) -> Followed {
    followed(input, words, ["follow-agree-title", "follow-agree-about", "agree-nobody"], &[], |page| {
        let pairs = agreements.iter().enumerate();
        (
            pairs.map(|(number, one)| told(number, one, tolerance, page)).collect(),
            over_the_season(agreements, page).into_iter().collect(),
        )
    })
}

fn told(number: usize, one: &Agreement, tolerance: Option<f64>, page: &Page) -> Site {
    let year = one.year.map_or_else(|| page.word("report-undated"), |year| year.to_string());
    let title = Message::new("follow-agree-pair")
        .with("site", one.site.as_str())
        .with("year", year)
        .with("first", one.first.as_str())
        .with("second", one.second.as_str());
    let standing = tolerance
        .and_then(|tolerance| listed(standing_sentences(one, tolerance).iter().map(|said| page.say(said))));
    let parts = [
        section("standing", "follow-agree-certificate", standing.into_iter().collect(), page),
        section("lines", "follow-agree-lines", lines(number, one, page), page),
        section("species", "follow-agree-species", species(one, page), page),
        findings(&one.findings, page),
    ];
    let said = answer(&sentences(one), None, page);
    site(number, page.say(&title), said, parts.into_iter().flatten().collect(), page)
}

/// Where both have canopy, and where one has it alone.
fn picture(id: &str, one: &Agreement, page: &Page) -> Option<Picture> {
    let lines: Vec<Line> = one.lines.iter().filter_map(|pair| line(one, pair)).collect();
    if lines.is_empty() {
        return None;
    }
    let unit = one.lines.first().map_or(Unit::Metre, |pair| pair.first.length.notation().unit);
    let only = |who: &str| page.say(&Message::new("follow-agree-only").with("reader", who));
    let words =
        Marks { kept: page.word("column-both-have"), lost: only(&one.first), gained: only(&one.second) };
    let data = Lines { lines, unit, words };
    let told = Message::new("follow-agree-told")
        .with("first", one.first.as_str())
        .with("second", one.second.as_str());
    Some(drawn(id, &page.word("follow-agree-picture"), &page.say(&told), page, |frame| {
        change::draw(&data, frame)
    }))
}

fn line(one: &Agreement, pair: &LinePair) -> Option<Line> {
    let (first, second) = (pair.first.cover.as_ref()?, pair.second.cover.as_ref()?);
    let of = |canopy: &[Stretch]| union(canopy.iter().copied());
    let (first, second) = (of(&first.canopy), of(&second.canopy));
    let lost = without(&first, &second);
    Some(Line {
        name: pair.first.line.clone(),
        told: String::new(),
        length: pair.first.read.min(pair.second.read),
        years: [one.first.clone(), one.second.clone()],
        kept: without(&first, &lost),
        gained: without(&second, &first),
        lost,
    })
}

fn lines(number: usize, one: &Agreement, page: &Page) -> Vec<Block> {
    let mut table = Table::new(
        page.word("follow-agree-lines"),
        vec![
            (Column::Name, page.word("column-line")),
            (Column::Figure, one.first.clone()),
            (Column::Figure, one.second.clone()),
            (Column::Figure, page.word("column-difference")),
            (Column::Figure, page.word("column-both-have")),
            (Column::Figure, page.word("column-missed")),
            (Column::Figure, page.word("column-added")),
        ],
    );
    for pair in &one.lines {
        let cover = |length: Length, read: Length| page.words.percent(length.share_of(read), 1);
        let known = |line: &tautline_survey::line::LineResult| {
            if line.canopy.is_known() { cover(line.canopy.low, line.read) } else { page.word("report-none") }
        };
        let count = |of: fn(&tautline_engine::agreement::patches::Matched) -> usize| {
            pair.patches.as_ref().map_or_else(String::new, |found| of(found).to_string())
        };
        table.row(vec![
            pair.first.line.clone(),
            known(&pair.first),
            known(&pair.second),
            pair.difference.map_or_else(String::new, |difference| points(difference, 1, page)),
            count(|found| found.both.len()),
            count(|found| found.missed.len()),
            count(|found| found.added.len()),
        ]);
    }
    let picture = picture(&site_id(number), one, page).map(Block::Picture);
    picture.into_iter().chain(table.finished().map(Block::Table)).chain([points_said(page)]).collect()
}

fn species(one: &Agreement, page: &Page) -> Vec<Block> {
    let columns =
        vec![(Column::Text, page.word("column-what")), (Column::Figure, page.word("column-mean-difference"))];
    let mut table = Table::new(page.word("follow-agree-species"), columns);
    for (code, difference) in &one.species {
        let what = page.say(&Message::new("cover-of").with("what", code.as_str()));
        table.row(vec![what, points(*difference, 1, page)]);
    }
    table.finished().map(Block::Table).into_iter().collect()
}

/// Each reader's differences over a season, from all sites.
fn over_the_season(agreements: &[Agreement], page: &Page) -> Option<Section> {
    let seasons = seasons(agreements);
    let blocks = seasons.iter().enumerate().flat_map(|(number, season)| {
        let title = Message::new("follow-agree-season")
            .with("first", season.first.as_str())
            .with("second", season.second.as_str())
            .with("year", season.year.to_string());
        let said = listed(season_sentences(season).iter().map(|said| page.say(said)));
        let picture = chart(number, season, page).map(Block::Picture);
        [heading(3, page.say(&title))].into_iter().chain(picture).chain(said).collect::<Vec<_>>()
    });
    section("season", "title-season", blocks.collect(), page)
}

fn chart(number: usize, season: &Season, page: &Page) -> Option<Picture> {
    let found = season.chart.as_ref()?;
    let points = season.points.iter().enumerate().map(|(at, point)| Point {
        when: point.day.to_string(),
        value: point.difference * 100.0,
        flagged: found.broken.iter().any(|(broken, _)| *broken == at),
    });
    let data = Control {
        points: points.collect(),
        middle: found.middle * 100.0,
        warning: 200.0 * found.sd,
        action: 300.0 * found.sd,
        words: control::Words {
            difference: page.word("control-axis"),
            when: String::new(),
            warning: page.word("control-warning"),
            action: page.word("control-action"),
            flagged: page.word("control-flagged"),
        },
    };
    let told: Vec<String> = season_sentences(season).iter().map(|said| page.say(said)).collect();
    let id = format!("season-{}", number + 1);
    Some(drawn(&id, &page.word("follow-agree-control"), &told.join(" "), page, |frame| {
        control::draw(&data, frame)
    }))
}
