//! The page of changes between two visits.

use super::{
    Followed, answer, capital, chance, checks, ends, findings, followed, noted, points, points_said, section,
    site,
};
use crate::document::{Block, Picture, Site};
use crate::markup::{Column, Table};
use crate::page::{Page, site_id};
use crate::pictures::drawn;
use tautline_engine::estimate::SamplingError;
use tautline_engine::length::{Length, Unit};
use tautline_engine::stretch::{Stretch, total};
use tautline_figures::change::{self, Line, Lines, Words as Marks};
use tautline_figures::meaning::Meaning;
use tautline_survey::explain::{confidence_value, subject_words};
use tautline_survey::follow::{
    ChangeFigure, SiteChange, TapeChange, readers_words, sentences, untreated_words,
};
use tautline_survey::input::Input;
use tautline_survey::message::{Message, Value};
use tautline_words::Words;

/// The changes of sites between two years.
///
/// # Example
/// ```
/// use tautline_survey::input::Input;
/// let words = tautline_words::Words::english();
/// let told = tautline_report::changes(&Input::default(), &[], &words);
/// assert!(told.page().starts_with("<!DOCTYPE html>"));
/// assert!(told.body().starts_with("<main"));
/// ```
pub fn changes(input: &Input, changes: &[SiteChange], words: &Words) -> Followed {
    let codes = ["follow-change-title", "follow-change-about", "follow-change-nothing"];
    let meanings = [Meaning::Cover, Meaning::Interval, Meaning::SmallestChange];
    followed(input, words, codes, &meanings, |page| {
        let sites = changes.iter().filter(|change| !change.figures.is_empty()).enumerate();
        (sites.map(|(number, change)| told(number, change, page)).collect(), Vec::new())
    })
}

fn told(number: usize, one: &SiteChange, page: &Page) -> Site {
    let figure = &one.figures[0]; // the caller keeps those with a figure
    let mut said = sentences(one, figure);
    said.extend(readers_words(one));
    said.extend(one.beyond.iter().flat_map(|beyond| untreated_words(one, beyond)));
    let parts = [
        section("figures", "follow-figures", figures(one, page), page),
        section("strata", "title-strata-change", strata(figure, page), page),
        section("tape", "title-on-the-tape", on_the_tape(number, one, page), page),
        section("checks", "follow-checks", checks::blocks(one, page), page),
        noted(&one.noted, [one.from, one.to].into_iter().map(|year| year.to_string()), page),
        findings(&one.findings, page),
    ];
    let title = page.say(
        &Message::new("title-change")
            .with("site", one.site.as_str())
            .with("from", one.from.to_string())
            .with("to", one.to.to_string()),
    );
    site(number, title, answer(&said, None, page), parts.into_iter().flatten().collect(), page)
}

/// The lines of both years above each other; nothing without positions.
fn picture(id: &str, one: &SiteChange, page: &Page) -> Option<Picture> {
    let mut unit = Unit::Metre;
    let mut lines = Vec::new();
    for line in &one.lines {
        let Some(tape) = &line.tape else { continue };
        unit = one.later[line.later].length.notation().unit;
        let share = |stretches: &[Stretch]| page.words.percent(total(stretches).share_of(tape.read), 1);
        let told = [
            format!("{} {}", page.word("column-lost"), share(&tape.turnover.lost)),
            format!("{} {}", page.word("column-gained"), share(&tape.turnover.gained)),
        ];
        lines.push(Line {
            name: line.line.clone(),
            told: told.join(" · "),
            length: tape.read,
            years: [one.from.to_string(), one.to.to_string()],
            kept: tape.turnover.kept.clone(),
            lost: tape.turnover.lost.clone(),
            gained: tape.turnover.gained.clone(),
        });
    }
    if lines.is_empty() {
        return None;
    }
    let words = Marks {
        kept: page.word("column-kept"),
        lost: page.word("column-lost"),
        gained: page.word("column-gained"),
    };
    let data = Lines { lines, unit, words };
    let told = Message::new("picture-of-change-told")
        .with("site", one.site.as_str())
        .with("from", one.from.to_string())
        .with("to", one.to.to_string());
    Some(drawn(id, &page.word("picture-of-change"), &page.say(&told), page, |frame| {
        change::draw(&data, frame)
    }))
}

fn figures(one: &SiteChange, page: &Page) -> Vec<Block> {
    let interval = Message::new("column-interval").with("confidence", confidence_value(one.confidence));
    let columns = vec![
        (Column::Text, page.word("column-what")),
        (Column::Figure, one.from.to_string()),
        (Column::Figure, one.to.to_string()),
        (Column::Figure, capital(&page.word("column-change"))),
        (Column::Figure, page.word("column-se")),
        (Column::Interval, page.say(&interval)),
        (Column::Figure, page.word("column-p")),
    ];
    let mut table = Table::new(page.word("follow-figures-table"), columns);
    for figure in &one.figures {
        table.row(row(figure, page));
    }
    table.finished().map(Block::Table).into_iter().chain([points_said(page)]).collect()
}

fn row(figure: &ChangeFigure, page: &Page) -> Vec<String> {
    let se = match figure.change.error {
        SamplingError::Known { se, .. } => page.words.number(se * 100.0, 1),
        SamplingError::Unknown(_) => page.word("report-none"),
    };
    let interval = match figure.interval {
        Ok(both) => ends(points(both.low, 1, page), points(both.high, 1, page), page),
        Err(reason) => page.word(reason.code()),
    };
    vec![
        page.say(&subject_words(&figure.subject)),
        page.words.percent(figure.earlier.value, 1),
        page.words.percent(figure.later.value, 1),
        points(figure.change.value, 1, page),
        se,
        interval,
        chance(figure.p.ok(), page),
    ]
}

/// The change of each stratum, where there are several.
fn strata(figure: &ChangeFigure, page: &Page) -> Vec<Block> {
    if figure.parts.len() < 2 {
        return Vec::new();
    }
    let columns = ["stratum", "of-area", "change", "se", "n"].iter().enumerate().map(|(at, name)| {
        let holds = if at == 0 { Column::Text } else { Column::Figure };
        (holds, page.word(&format!("column-{name}")))
    });
    let mut table = Table::new(page.word("title-strata-change"), columns.collect());
    for part in &figure.parts {
        table.row(vec![
            part.name.clone(),
            page.words.percent(part.weight, 0),
            points(part.change.value, 1, page),
            match part.change.error {
                SamplingError::Known { se, .. } => page.words.number(se * 100.0, 1),
                SamplingError::Unknown(_) => page.word("report-none"),
            },
            part.change.lines.to_string(),
        ]);
    }
    table.finished().map(Block::Table).into_iter().collect()
}

/// Gained, lost and kept of each staked line: drawn, and as figures.
fn on_the_tape(number: usize, one: &SiteChange, page: &Page) -> Vec<Block> {
    let names = ["line", "kept", "lost", "gained", "change", "found-again", "tape-shift", "same-line"];
    let columns = names.iter().enumerate().map(|(at, name)| {
        let holds = if at == 0 { Column::Name } else { Column::Figure };
        (holds, page.word(&format!("column-{name}")))
    });
    let mut table = Table::new(page.word("title-on-the-tape"), columns.collect());
    for line in &one.lines {
        if let Some(tape) = &line.tape {
            table.row(tape_row(&line.line, tape, page));
        }
    }
    if let Some(together) = together(one) {
        let of = |length: Length| page.words.percent(length.share_of(together.read), 1);
        let net = points((together.gained - together.lost).share_of(together.read), 1, page);
        let own = [of(together.kept), of(together.lost), of(together.gained), net];
        let none = [String::new(), String::new(), String::new()];
        table.row([page.word("all-lines-together")].into_iter().chain(own).chain(none).collect());
    }
    let picture = picture(&site_id(number), one, page).map(Block::Picture);
    picture.into_iter().chain(table.finished().map(Block::Table)).collect()
}

/// All staked lines laid end to end.
struct Together {
    read: Length,
    kept: Length,
    lost: Length,
    gained: Length,
}

/// Nothing for fewer than two lines: one alone says it itself.
fn together(one: &SiteChange) -> Option<Together> {
    let tapes: Vec<&TapeChange> = one.lines.iter().filter_map(|line| line.tape.as_ref()).collect();
    let all = |of: fn(&TapeChange) -> Length| tapes.iter().map(|tape| of(tape)).sum();
    (tapes.len() > 1).then(|| Together {
        read: all(|tape| tape.read),
        kept: all(|tape| total(&tape.turnover.kept)),
        lost: all(|tape| total(&tape.turnover.lost)),
        gained: all(|tape| total(&tape.turnover.gained)),
    })
}

fn tape_row(name: &str, tape: &TapeChange, page: &Page) -> Vec<String> {
    let share = |length: Length| page.words.percent(length.share_of(tape.read), 1);
    let shift = if tape.alignment.shift_shown {
        page.words.value(&Value::Length(tape.alignment.shift, tape.notation))
    } else {
        page.word("report-none")
    };
    vec![
        name.to_owned(),
        share(total(&tape.turnover.kept)),
        share(total(&tape.turnover.lost)),
        share(total(&tape.turnover.gained)),
        points(tape.turnover.net().share_of(tape.read), 1, page),
        tape.found_again.map_or_else(String::new, |again| page.words.percent(again, 0)),
        shift,
        page.word(tape.alignment.pairing.code()),
    ]
}
