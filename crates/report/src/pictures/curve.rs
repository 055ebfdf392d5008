//! Canopy cover of the site against the gap rule: the picture, and what it says in words.

use super::drawn;
use crate::document::{Block, paragraph};
use crate::page::Page;
use tautline_engine::length::{Length, Notation, Unit, write};
use tautline_figures::Share;
use tautline_figures::curve::{self, Curve, Recorded, Step};
use tautline_survey::assess::{Assessment, curve};
use tautline_survey::message::{Message, Value};

/// How far beyond the rule that was read the curve reaches.
const WIDEST: Length = Length::from_units(50, Unit::Centimetre);

/// The curve, or why there is none.
pub(crate) fn section(id: &str, assessment: &Assessment, page: &Page) -> Vec<Block> {
    // dead canopy that may have been counted or not would need two curves
    if assessment.lines.iter().any(|line| line.ends.is_some_and(|[least, most]| least.dead != most.dead)) {
        return vec![paragraph(page.word("report-curve-dead-unknown"))];
    }
    let steps = curve(page.input, assessment, WIDEST).unwrap_or_default();
    let (Some(first), Some(last)) = (steps.first().copied(), steps.last().copied()) else {
        return vec![paragraph(page.word("report-curve-none"))];
    };
    let unit = assessment.lines.first().map_or(Unit::Centimetre, |line| match line.length.notation().unit {
        Unit::Inch | Unit::Foot => Unit::Inch,
        _ => Unit::Centimetre,
    });
    let shown = |length: Length| Value::Figures(write(length, Notation::decimals(unit, 1)));
    let data = Curve {
        steps: steps
            .iter()
            .filter_map(|step| Share::new(step.cover).map(|cover| Step { limit: step.limit, cover }))
            .collect(),
        recorded: Recorded { limit: first.limit, label: page.words.percent(first.cover, 1) },
        longest: WIDEST,
        unit,
        words: curve::Words {
            limit: page.say(&Message::new("report-curve-limit").with("unit", unit.symbol())),
            cover: page.word("report-curve-cover"),
            recorded: page.word("report-curve-recorded"),
            unknown: page.word("report-curve-unknown"),
        },
    };
    let unknown = assessment.lines.iter().any(|line| line.gap_limits().1.is_some());
    let said = Message::new(if unknown { "report-curve-said-unknown" } else { "report-curve-said" })
        .with("recorded", shown(first.limit))
        .with("cover", Value::Share(first.cover, 1))
        .with("widest", shown(WIDEST))
        .with("most", Value::Share(last.cover, 1));
    let said = page.say(&said);
    // heading and picture stay on one sheet, so the words come after
    let picture = drawn(id, &page.word("report-curve"), &said, page, |frame| curve::draw(&data, frame));
    vec![Block::Picture(picture), paragraph(said)]
}
