//! Length against number as a picture.

use tautline_engine::length::{Length, Unit};
use tautline_figures::costs::{self, Costs};
use tautline_figures::{Frame, Palette};
use tautline_survey::effort::{DesignOutput, LengthsOutput};
use tautline_survey::message::{Message, Value};
use tautline_words::Words;

/// The picture, in the colours of print; nothing where no length does.
pub(super) fn lengths(found: &LengthsOutput, words: &Words) -> Option<String> {
    let metres = |metres: f64| {
        #[expect(clippy::cast_possible_truncation, reason = "lengths of tapes in whole millimetres")]
        let millimetres = (metres * 1000.0) as i64;
        Length::from_units(millimetres, Unit::Millimetre)
    };
    let label = |best: DesignOutput| {
        Message::new("costs-cheapest")
            .with("length", Value::Number(best.length_m, 1))
            .with("lines", best.lines)
            .with("minutes", Value::Number(best.minutes, 0))
    };
    let best = found.cheapest?;
    let said = words.say(&label(best));
    let likely = found.likely_m.map(|(low, high)| {
        let message = Message::new("costs-likely");
        words.say(&message.with("low", Value::Number(low, 1)).with("high", Value::Number(high, 1)))
    });
    let frame = Frame {
        title: words.word("title-lengths"),
        description: [Some(said.clone()), likely.clone()].into_iter().flatten().collect::<Vec<_>>().join(" "),
        mark: words.mark(),
        ..Frame::new("lengths", 720, Palette::print().with_font("sans-serif"))
    };
    let costs = Costs {
        designs: found.designs.iter().map(|design| (metres(design.length_m), design.minutes)).collect(),
        cheapest: Some((metres(best.length_m), said)),
        likely: found.likely_m.map(|(low, high)| (metres(low), metres(high))),
        seen: metres(found.pilot_length_m),
        unit: Unit::Metre,
        words: costs::Words {
            length: words.word("column-length-m"),
            cost: words.word("column-minutes"),
            likely: likely.unwrap_or_default(),
            beyond: words.word("beyond-pilot"),
        },
    };
    Some(costs::draw(&costs, &frame))
}
