//! The page of trends.

use super::{Followed, answer, chance, ends, findings, followed, noted, points, points_said, section, site};
use crate::document::{Block, Picture, Section, Site, sentences as listed};
use crate::markup::{Column, Table};
use crate::page::{Page, site_id};
use crate::pictures::{drawn, share};
use tautline_figures::meaning::Meaning;
use tautline_figures::trend::{self, Band, Level, Line, Trend, Words as Marks};
use tautline_figures::{Goal, Relation};
use tautline_survey::explain::{confidence_value, goal_words, subject_words};
use tautline_survey::goal::{Relation as Asked, Wanted};
use tautline_survey::input::Input;
use tautline_survey::message::Message;
use tautline_survey::trend::{RegionTrend, SiteTrend, TrendFigure, region_sentences, sentences};
use tautline_words::Words;

/// The trends of sites, and of all sites together.
///
/// # Example
/// ```
/// use tautline_survey::input::Input;
/// let words = tautline_words::Words::english();
/// let told = tautline_report::trends(&Input::default(), &[], None, &words);
/// assert!(told.page().contains("No site was read in two years or more."));
/// ```
pub fn trends(input: &Input, trends: &[SiteTrend], region: Option<&RegionTrend>, words: &Words) -> Followed {
    let codes = ["follow-trend-title", "follow-trend-about", "trend-one-year"];
    let meanings = [Meaning::Cover, Meaning::Interval, Meaning::Trend];
    followed(input, words, codes, &meanings, |page| {
        let sites = trends.iter().filter(|trend| !trend.figures.is_empty()).enumerate();
        (
            sites.map(|(number, trend)| told(number, trend, page)).collect(),
            region.and_then(|region| together(region, page)).into_iter().collect(),
        )
    })
}

fn told(number: usize, trend: &SiteTrend, page: &Page) -> Site {
    let figure = &trend.figures[0]; // the caller keeps those with a figure
    let said = sentences(trend, figure);
    let picture = picture(&site_id(number), trend, figure, page);
    let parts = [
        section("levels", "follow-levels", levels(trend, page), page),
        section("slopes", "follow-slopes", slopes(trend, page), page),
        noted(&trend.noted, trend.noted_years.iter().map(u16::to_string), page),
        findings(&trend.findings, page),
    ];
    let title = page.say(&Message::new("title-site").with("site", trend.site.as_str()));
    site(number, title, answer(&said, Some(picture), page), parts.into_iter().flatten().collect(), page)
}

/// The picture of one figure.
fn picture(id: &str, trend: &SiteTrend, figure: &TrendFigure, page: &Page) -> Picture {
    let data = data(figure, page.words);
    let title = page.say(&Message::new("picture-of-trend").with("what", subject_words(&figure.subject)));
    let told: Vec<String> = sentences(trend, figure).iter().take(2).map(|said| page.say(said)).collect();
    drawn(id, &title, &told.join(" "), page, |frame| trend::draw(&data, frame))
}

/// A figure as a picture takes it.
fn data(figure: &TrendFigure, words: &Words) -> Trend {
    let points = |line: usize| {
        let own = figure.readings.iter().filter(move |one| one.line == line);
        own.map(|one| (one.year, share(one.value))).collect()
    };
    let model = figure.model.as_ref().ok();
    Trend {
        levels: figure
            .years
            .iter()
            .map(|(year, level)| Level { year: i32::from(*year), level: share(level.value), between: None })
            .collect(),
        lines: figure
            .lines
            .iter()
            .enumerate()
            .map(|(number, name)| Line { name: name.clone(), points: points(number) })
            .collect(),
        band: model.map_or_else(Vec::new, |model| {
            let one = |band: &tautline_survey::trend::Band| Band {
                year: band.year,
                level: share(band.level),
                between: (share(band.interval.0), share(band.interval.1)),
            };
            model.band.iter().map(one).collect()
        }),
        goal: figure.forecasts.first().and_then(|forecast| goal(&forecast.goal.wanted, words)),
        words: Marks {
            cover: words.say(&Message::new("trend-axis").with("what", subject_words(&figure.subject))),
            years: words.word("trend-axis-years"),
            line: words.word("trend-mark-line"),
            level: words.word("trend-mark-level"),
            model: words.word("trend-mark-model"),
        },
    }
}

fn goal(wanted: &Wanted, words: &Words) -> Option<Goal> {
    let Wanted::Cover(relation) = wanted else { return None };
    let relation = match relation {
        Asked::AtLeast(value) => Relation::AtLeast(share(value.share())),
        Asked::AtMost(value) => Relation::AtMost(share(value.share())),
        Asked::Between(low, high) => Relation::Between(share(low.share()), share(high.share())),
    };
    Some(Goal { relation, label: words.say(&Message::new("trend-goal").with("goal", goal_words(wanted))) })
}

/// The level of each year.
fn levels(trend: &SiteTrend, page: &Page) -> Vec<Block> {
    let years = trend.figures[0].years.iter().map(|(year, _)| (Column::Figure, year.to_string()));
    let columns = [(Column::Text, page.word("column-what"))].into_iter().chain(years).collect();
    let mut table = Table::new(page.word("follow-levels-table"), columns);
    for figure in &trend.figures {
        let mut cells = vec![page.say(&subject_words(&figure.subject))];
        cells.extend(figure.years.iter().map(|(_, level)| page.words.percent(level.value, 1)));
        table.row(cells);
    }
    table.finished().map(Block::Table).into_iter().collect()
}

/// The slopes, by the model and without one.
fn slopes(trend: &SiteTrend, page: &Page) -> Vec<Block> {
    let interval = Message::new("column-interval").with("confidence", confidence_value(trend.confidence));
    let columns = vec![
        (Column::Text, page.word("column-what")),
        (Column::Text, page.word("column-method")),
        (Column::Figure, page.word("column-slope")),
        (Column::Interval, page.say(&interval)),
        (Column::Figure, page.word("column-p")),
    ];
    let mut table = Table::new(page.word("follow-slopes-table"), columns);
    let both = |ends_of: Option<(f64, f64)>| {
        ends_of.map_or_else(
            || page.word("report-none"),
            |(low, high)| ends(points(low, 2, page), points(high, 2, page), page),
        )
    };
    for figure in &trend.figures {
        let what = page.say(&subject_words(&figure.subject));
        if let Ok(model) = &figure.model {
            let slope = points(model.slope.value, 2, page);
            let p = chance(model.p.ok(), page);
            table.row(vec![what.clone(), page.word("method-model"), slope, both(model.interval), p]);
        }
        let slope = figure.slope.map_or_else(|| page.word("report-none"), |slope| points(slope, 2, page));
        let p = chance(figure.kendall.p.ok(), page);
        table.row(vec![what.clone(), page.word("method-without"), slope, both(figure.interval), p]);
        if (figure.corrected.times - 1.0).abs() > 1e-12 {
            let p = chance(figure.corrected.p.ok(), page);
            table.row(vec![what, page.word("method-hanging"), String::new(), String::new(), p]);
        }
    }
    table.finished().map(Block::Table).into_iter().chain([points_said(page)]).collect()
}

/// All sites together.
fn together(region: &RegionTrend, page: &Page) -> Option<Section> {
    let mut table = Table::new(
        page.word("follow-sites-table"),
        vec![
            (Column::Text, page.word("column-site")),
            (Column::Figure, page.word("trend-column-share")),
            (Column::Figure, page.word("column-own-slope")),
            (Column::Figure, page.word("column-se")),
            (Column::Figure, page.word("column-drawn")),
            (Column::Figure, page.word("column-drawn-se")),
        ],
    );
    for site in &region.sites {
        let drawn = |of: Option<f64>| of.map_or_else(String::new, |value| points(value, 2, page));
        table.row(vec![
            site.site.clone(),
            page.words.percent(site.share, 0),
            points(site.slope, 2, page),
            page.words.number(site.se * 100.0, 2),
            drawn(site.drawn.map(|drawn| drawn.slope)),
            site.drawn.map_or_else(String::new, |drawn| page.words.number(drawn.se * 100.0, 2)),
        ]);
    }
    let said = listed(region_sentences(region).iter().map(|said| page.say(said)));
    let blocks = said.into_iter().chain(table.finished().map(Block::Table)).collect();
    section("together", "title-region", blocks, page)
}
