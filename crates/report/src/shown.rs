//! Figures as the page shows them: rounded once, with their unit.

use crate::page::Page;
use tautline_engine::confidence::{Interval, NoBound};
use tautline_engine::estimate::{Estimate, SamplingError};
use tautline_engine::length::{Length, Notation};
use tautline_survey::assess::{Assessment, Attribute, Figure};
use tautline_survey::explain::{confidence_value, figure_value, figure_words};
use tautline_survey::goal::Subject;
use tautline_survey::line::{Bounds, LineResult};
use tautline_survey::message::{Message, Value};

/// A figure with its unit.
pub(crate) fn value(value: f64, attribute: Attribute, page: &Page) -> String {
    page.words.value(&figure_value(value, attribute))
}

/// A site's heading: its name, the year and the plot, where there are any.
pub(crate) fn title(assessment: &Assessment, page: &Page) -> String {
    let site = assessment.site.as_str();
    let site = match assessment.year {
        Some(year) => Message::new("title-site-year").with("site", site).with("year", year.to_string()),
        None => Message::new("title-site").with("site", site),
    };
    match &assessment.plot {
        Some(plot) => {
            page.say(&Message::new("title-site-plot").with("site", site).with("plot", plot.as_str()))
        }
        None => page.say(&site),
    }
}

/// The confidence as a value inside a message.
pub(crate) fn confidence(assessment: &Assessment) -> Value {
    confidence_value(assessment.confidence)
}

/// What a figure is about; a species by its plant's name.
pub(crate) fn name(figure: &Figure, page: &Page) -> String {
    match &figure.subject {
        Subject::Species(code) if !code.is_empty() => {
            let plant = plant_name(code, page);
            match figure.attribute {
                Attribute::Cover => plant,
                Attribute::Height => page.say(&Message::new("height-of").with("what", plant)),
                Attribute::Density => page.say(&Message::new("density-of").with("what", plant)),
            }
        }
        subject => page.say(&figure_words(subject, figure.attribute)),
    }
}

/// What a figure is about, where the heading says already that it is cover or height.
pub(crate) fn bare_name(figure: &Figure, page: &Page) -> String {
    match &figure.subject {
        Subject::Species(code) => plant_name(code, page),
        Subject::Form(form) => page.word(form.word()),
        Subject::Group(group) => group.clone(),
        subject => page.say(&figure_words(subject, figure.attribute)),
    }
}

/// A plant's common name where the list has one, then its botanical name, else its code.
pub(crate) fn plant_name(code: &str, page: &Page) -> String {
    if code.is_empty() {
        return page.word("unnamed-plants");
    }
    let plant = page.input.plants.find(code);
    let names = plant.into_iter().flat_map(|plant| [&plant.common, &plant.name]);
    names.into_iter().find(|name| !name.is_empty()).map_or_else(|| code.to_owned(), Clone::clone)
}

/// One figure, or the two that it lies between.
pub(crate) fn estimate(figure: &Figure, page: &Page) -> String {
    let [low, high] = figure.ends().map(|end| value(end.value, figure.attribute, page));
    if figure.high.is_none() { low } else { between(low, high, page) }
}

/// The standard error and its degrees of freedom, or a dash for each.
pub(crate) fn error(estimate: &Estimate, attribute: Attribute, page: &Page) -> [String; 2] {
    match estimate.error {
        SamplingError::Known { se, df } => [value(se, attribute, page), page.words.number(df, 1)],
        SamplingError::Unknown(_) => [page.word("report-none"), page.word("report-none")],
    }
}

/// A two-sided interval, or why there is none.
pub(crate) fn interval(interval: &Result<Interval, NoBound>, attribute: Attribute, page: &Page) -> String {
    match interval {
        Ok(interval) => {
            between(value(interval.low, attribute, page), value(interval.high, attribute, page), page)
        }
        Err(reason) => page.word(reason.code()),
    }
}

/// How many lines, or lines in plots, stand behind an estimate.
pub(crate) fn units(estimate: &Estimate, page: &Page) -> String {
    let plots = estimate.method.counts_plots();
    let message = if plots { Message::new("units-plots") } else { Message::new("units-lines") };
    page.say(&message.with("lines", estimate.lines).with("units", estimate.units))
}

/// A cover of a line, or the two that it lies between.
pub(crate) fn of_line(line: &LineResult, bounds: Bounds, page: &Page) -> String {
    let [low, high] = [bounds.low, bounds.high].map(|end| page.words.percent(line.share(end), 1));
    if bounds.is_known() { low } else { between(low, high, page) }
}

/// From one figure to another.
pub(crate) fn between(low: String, high: String, page: &Page) -> String {
    page.say(&Message::new("report-from-to").with("low", low).with("high", high))
}

/// A length in a notation.
pub(crate) fn length(length: Length, notation: Notation, page: &Page) -> String {
    page.say(&Message::new("explain-length").with("length", Value::Length(length, notation)))
}

/// The words of some values once each, in their order, with commas.
pub(crate) fn once_each(values: impl IntoIterator<Item = String>) -> String {
    let mut seen: Vec<String> = Vec::new();
    for value in values {
        if !value.is_empty() && !seen.contains(&value) {
            seen.push(value);
        }
    }
    seen.join(", ")
}
