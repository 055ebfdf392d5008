//! The share of the lines that lies in gaps of each class.

use super::{drawn, share};
use crate::document::Picture;
use crate::page::Page;
use tautline_figures::gaps::{self, Class, Gaps};

/// A class of gaps: its name, the share of the lines in it, and that share in words.
pub(crate) type ClassShare = (String, f64, String);

/// One bar for each class.
pub(crate) fn draw(id: &str, classes: &[ClassShare], page: &Page) -> Picture {
    let chart = Gaps {
        classes: classes
            .iter()
            .map(|(name, value, figure)| Class {
                name: name.clone(),
                share: share(*value),
                figure: figure.clone(),
            })
            .collect(),
        axis: page.word("report-gaps-axis"),
    };
    let said: Vec<String> = classes.iter().map(|(name, _, figure)| format!("{name}: {figure}")).collect();
    drawn(id, &page.word("report-gaps"), &said.join("; "), page, |frame| gaps::draw(&chart, frame))
}
