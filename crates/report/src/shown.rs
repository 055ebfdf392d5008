//! Figures as the page shows them: rounded once, with their unit.

use tautline_survey::assess::{Assessment, Attribute, Figure};
use tautline_survey::explain::{confidence_value, figure_value};
use tautline_survey::line::{Bounds, LineResult};
use tautline_survey::message::{Message, Value};
use tautline_words::Words;

/// A figure with its unit.
pub(crate) fn value(value: f64, attribute: Attribute, words: &Words) -> String {
    words.value(&figure_value(value, attribute))
}

/// A site's heading: its name, the year and the plot, where there are any.
pub(crate) fn title(assessment: &Assessment, words: &Words) -> String {
    let site = assessment.site.as_str();
    let site = match assessment.year {
        Some(year) => Message::new("title-site-year").with("site", site).with("year", year.to_string()),
        None => Message::new("title-site").with("site", site),
    };
    match &assessment.plot {
        Some(plot) => {
            words.say(&Message::new("title-site-plot").with("site", site).with("plot", plot.as_str()))
        }
        None => words.say(&site),
    }
}

/// The confidence as a value inside a message.
pub(crate) fn confidence(assessment: &Assessment) -> Value {
    confidence_value(assessment.confidence)
}

/// One figure, or the two that it lies between.
pub(crate) fn estimate(figure: &Figure, words: &Words) -> String {
    let [low, high] = figure.ends().map(|end| value(end.value, figure.attribute, words));
    if figure.high.is_none() { low } else { between(low, high, words) }
}

/// A cover of a line, or the two that it lies between.
pub(crate) fn of_line(line: &LineResult, bounds: Bounds, words: &Words) -> String {
    let [low, high] = [bounds.low, bounds.high].map(|end| words.percent(line.share(end), 1));
    if bounds.is_known() { low } else { between(low, high, words) }
}

/// From one figure to another.
pub(crate) fn between(low: String, high: String, words: &Words) -> String {
    words.say(&Message::new("report-from-to").with("low", low).with("high", high))
}
