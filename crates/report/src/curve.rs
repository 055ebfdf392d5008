//! Canopy cover of the site against the gap rule: the picture, and what it says in words.

use crate::markup::{around, text};
use crate::pictures::twice;
use tautline_engine::length::{Length, Notation, Unit, write};
use tautline_figures::Share;
use tautline_figures::curve::{self, Curve, Recorded, Step};
use tautline_survey::assess::{Assessment, curve};
use tautline_survey::input::Input;
use tautline_survey::message::{Message, Value};
use tautline_words::Words;

/// How far beyond the rule that was read the curve reaches.
const WIDEST: Length = Length::from_units(50, Unit::Centimetre);

/// The curve, or why there is none.
pub(crate) fn section(id: &str, input: &Input, assessment: &Assessment, words: &Words) -> String {
    let heading = text("h3", &words.word("report-curve"));
    let Some(steps) = curve(input, assessment, WIDEST) else {
        return heading + &text("p", &words.word("report-curve-none"));
    };
    let (Some(first), Some(last)) = (steps.first().copied(), steps.last().copied()) else {
        return String::new();
    };
    let unit = assessment.lines.first().map_or(Unit::Centimetre, |line| match line.length.notation().unit {
        Unit::Inch | Unit::Foot => Unit::Inch,
        _ => Unit::Centimetre,
    });
    let shown = |length: Length| write(length, Notation::decimals(unit, 1));
    let data = Curve {
        steps: steps
            .iter()
            .filter_map(|step| Share::new(step.cover).map(|cover| Step { limit: step.limit, cover }))
            .collect(),
        recorded: Recorded { limit: first.limit, label: words.percent(first.cover, 1) },
        longest: WIDEST,
        unit,
        words: curve::Words {
            limit: words.say(&Message::new("report-curve-limit").with("unit", unit.symbol())),
            cover: words.word("report-curve-cover"),
            recorded: words.word("report-curve-recorded"),
            unknown: words.word("report-curve-unknown"),
        },
    };
    let said = Message::new("report-curve-said")
        .with("recorded", shown(first.limit))
        .with("cover", Value::Share(first.cover, 1))
        .with("widest", shown(WIDEST))
        .with("most", Value::Share(last.cover, 1));
    let said = words.say(&said);
    let picture = twice(id, &words.word("report-curve"), &said, |frame| curve::draw(&data, frame));
    heading + &text("p", &said) + &around("figure", &picture)
}
