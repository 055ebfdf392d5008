//! Cover over the years: each line, the level of each year, the model with its band, the goal.

use crate::axis::{self, PerCent};
use crate::frame::Frame;
use crate::goal::{Goal, Relation};
use crate::legend::{self, SWATCH, SWATCH_HEIGHT, Swatch};
use crate::palette::Colour;
use crate::scale::Scale;
use crate::share::Share;
use crate::svg::{Anchor, Area, Drawing, Lettering, Look, MARGIN};

/// Cover over the years.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Trend {
    /// The level of each year, its own readings alone.
    pub levels: Vec<Level>,
    /// The permanent lines.
    pub lines: Vec<Line>,
    /// The model, year by year; empty where there is none.
    pub band: Vec<Band>,
    /// The goal.
    pub goal: Option<Goal>,
    /// The words around the picture.
    pub words: Words,
}

/// The level of a year.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Level {
    /// The year.
    pub year: i32,
    /// The level.
    pub level: Share,
    /// Its interval.
    pub between: Option<(Share, Share)>,
}

/// One line over the years.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// Its name.
    pub name: String,
    /// Its cover in each year that it was read.
    pub points: Vec<(i32, Share)>,
}

/// The model in a year.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// The year.
    pub year: i32,
    /// The level.
    pub level: Share,
    /// Its interval.
    pub between: (Share, Share),
}

/// The words around the picture; an empty one is left out.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Words {
    /// What the axis of cover counts, with its unit.
    pub cover: String,
    /// What the axis of years counts.
    pub years: String,
    /// The mark of a line.
    pub line: String,
    /// The mark of a year's level and its interval.
    pub level: String,
    /// The mark of the model and its band.
    pub model: String,
}

const HEIGHT: f64 = 220.0;

/// Draws the picture.
///
/// # Example
/// ```
/// use tautline_figures::trend::{self, Level, Trend, Words};
/// use tautline_figures::{Frame, Palette, Share};
/// let level = |year, share| Level { year, level: Share::new(share).unwrap(), between: None };
/// let picture = Trend {
///     levels: vec![level(2022, 0.16), level(2024, 0.18), level(2026, 0.20)],
///     words: Words { cover: "cover, %".to_owned(), ..Words::default() },
///     ..Trend::default()
/// };
/// assert!(trend::draw(&picture, &Frame::new("trend", 360, Palette::screen())).contains("cover, %"));
/// ```
pub fn draw(trend: &Trend, frame: &Frame) -> String {
    let mut drawing = Drawing::new(frame);
    let (left, right) = (drawing.left(), drawing.right());
    let top = drawing.paragraph(
        (left, MARGIN),
        Anchor::Start,
        Lettering::CAPTION,
        &trend.words.cover,
        right - left,
    ) + 8.0;
    let bottom = top + HEIGHT;
    let cover = PerCent::reaching(trend.largest() * 1.06, (bottom, top), frame.mark, |_| 30.0);
    let start = left + cover.number_width() + 8.0;
    let (first, last) = trend.reach();
    // half a year of air at either end, so that marks don't stand on the edge
    let span = f64::from(last) - f64::from(first) + 1.0;
    let years = Scale::new(start, right - 4.0, span);
    let at_year = |year: i32| years.at(f64::from(year) - f64::from(first) + 0.5);
    let at = |share: Share| cover.scale.at(share.per_cent());

    if let Some(goal) = &trend.goal {
        shade(&mut drawing, goal.relation, cover.scale, start, years.end());
    }
    cover.level_grid(&mut drawing, start, years.end());
    let band: Vec<(f64, f64)> = trend
        .band
        .iter()
        .map(|one| (at_year(one.year), at(one.between.0)))
        .chain(trend.band.iter().rev().map(|one| (at_year(one.year), at(one.between.1))))
        .collect();
    if trend.band.len() > 1 {
        drawing.corners(&band, Look::fill(Colour::Rule));
    }
    for line in &trend.lines {
        let points: Vec<(f64, f64)> =
            line.points.iter().map(|(year, share)| (at_year(*year), at(*share))).collect();
        drawing.through(&points, Look::line(Colour::Quiet, 0.9));
    }
    let model: Vec<(f64, f64)> = trend.band.iter().map(|one| (at_year(one.year), at(one.level))).collect();
    drawing.through(&model, Look::line(Colour::Canopy, 2.6));
    if let Some(goal) = &trend.goal {
        thresholds(&mut drawing, goal.relation, cover.scale, start, years.end());
        drawing.paragraph(
            (start + 6.0, top + 2.0),
            Anchor::Start,
            Lettering::LABEL,
            &goal.label,
            right - start - 10.0,
        );
    }
    for level in &trend.levels {
        let x = at_year(level.year);
        if let Some((low, high)) = level.between {
            drawing.strokes([[(x, at(low)), (x, at(high))]], Look::line(Colour::Ink, 1.4));
        }
        mark(&mut drawing, (x, at(level.level)));
    }
    let numbered = numbers(first, last, years.end() - years.start());
    let numbered: Vec<(f64, String)> =
        numbered.into_iter().map(|year| (at_year(year), year.to_string())).collect();
    let below = axis::below(&mut drawing, years, bottom, &numbered, &trend.words.years) + 8.0;
    let has = |some: bool, words: &str| if some { words.to_owned() } else { String::new() };
    let words = [
        has(!trend.levels.is_empty(), &trend.words.level),
        has(!trend.lines.is_empty(), &trend.words.line),
        has(!trend.band.is_empty(), &trend.words.model),
    ];
    let entries = [
        (Swatch::Marks(level_swatch), words[0].as_str()),
        (Swatch::Marks(line_swatch), words[1].as_str()),
        (Swatch::Marks(model_swatch), words[2].as_str()),
    ];
    let below = legend::draw(&mut drawing, below, &entries);
    drawing.finish(below + MARGIN)
}

impl Trend {
    fn reach(&self) -> (i32, i32) {
        let years = self.levels.iter().map(|one| one.year).chain(self.band.iter().map(|one| one.year));
        let years = years.chain(self.lines.iter().flat_map(|line| line.points.iter().map(|(year, _)| *year)));
        let all: Vec<i32> = years.collect();
        let (first, last) = (all.iter().min().copied(), all.iter().max().copied());
        (first.unwrap_or_default(), last.unwrap_or_default())
    }

    fn largest(&self) -> f64 {
        let levels =
            self.levels.iter().flat_map(|one| [Some(one.level), one.between.map(|both| both.1)]).flatten();
        let lines = self.lines.iter().flat_map(|line| line.points.iter().map(|(_, share)| *share));
        let band = self.band.iter().map(|one| one.between.1);
        let shares = levels.chain(lines).chain(band).map(Share::per_cent);
        shares.chain(self.goal.iter().map(|goal| goal.relation.largest())).fold(0.0, f64::max)
    }
}

/// Years that carry a number: every one, or every second, fifth, tenth, as many as fit.
fn numbers(first: i32, last: i32, room: f64) -> Vec<i32> {
    let pixels = room / (f64::from(last) - f64::from(first) + 1.0);
    let needed = axis::spacing("2026");
    let step = [1, 2, 5, 10, 20, 50, 100, 1000].into_iter().find(|step| pixels * f64::from(*step) >= needed);
    let step = step.unwrap_or(10_000);
    let begins = first.div_euclid(step) * step + if first.rem_euclid(step) == 0 { 0 } else { step };
    std::iter::successors(Some(begins), |year| year.checked_add(step))
        .take_while(|year| *year <= last)
        .collect()
}

/// Shades the side that meets the goal.
fn shade(drawing: &mut Drawing<'_>, relation: Relation, scale: Scale, left: f64, right: f64) {
    let (from, to) = relation.met(scale);
    let (top, height) = (from.min(to), (from - to).abs());
    if height > 0.0 {
        drawing.area(Area { x: left, y: top, width: right - left, height }, Look::fill(Colour::Met));
    }
}

fn thresholds(drawing: &mut Drawing<'_>, relation: Relation, scale: Scale, left: f64, right: f64) {
    let ends = match relation {
        Relation::AtLeast(share) | Relation::AtMost(share) => vec![share],
        Relation::Between(low, high) => vec![low, high],
    };
    let lines = ends.into_iter().map(|share| {
        let y = scale.at(share.per_cent());
        [(left, y), (right, y)]
    });
    drawing.strokes(lines, Look::line(Colour::Goal, 1.6).dashed());
}

fn mark(drawing: &mut Drawing<'_>, (x, y): (f64, f64)) {
    let side = 8.0;
    let area = Area { x: x - side / 2.0, y: y - side / 2.0, width: side, height: side };
    drawing.area(area, Look::fill(Colour::Ink).outlined(Colour::Ground, 1.5));
}

fn level_swatch(drawing: &mut Drawing<'_>, (x, y): (f64, f64)) {
    let middle = x + SWATCH / 2.0;
    drawing.strokes([[(middle, y), (middle, y + SWATCH_HEIGHT)]], Look::line(Colour::Ink, 1.4));
    mark(drawing, (middle, y + SWATCH_HEIGHT / 2.0));
}

fn line_swatch(drawing: &mut Drawing<'_>, (x, y): (f64, f64)) {
    let middle = y + SWATCH_HEIGHT / 2.0;
    drawing.through(&[(x, middle + 3.0), (x + SWATCH, middle - 3.0)], Look::line(Colour::Quiet, 0.9));
}

fn model_swatch(drawing: &mut Drawing<'_>, (x, y): (f64, f64)) {
    drawing
        .area(Area { x, y: y + 1.0, width: SWATCH, height: SWATCH_HEIGHT - 2.0 }, Look::fill(Colour::Rule));
    let middle = y + SWATCH_HEIGHT / 2.0;
    drawing.through(&[(x, middle), (x + SWATCH, middle)], Look::line(Colour::Canopy, 2.6));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn years_are_numbered_as_far_apart_as_they_need() {
        assert_eq!(numbers(2018, 2022, 500.0), [2018, 2019, 2020, 2021, 2022]);
        assert_eq!(numbers(2001, 2026, 300.0), [2005, 2010, 2015, 2020, 2025]);
        assert_eq!(numbers(2020, 2020, 300.0), [2020]);
    }
}
