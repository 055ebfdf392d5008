//! Line starts and plants in or out, on paper.

use super::{blank, sheets, table};
use crate::markup::{around, text};
use tautline_engine::length::{Length, Notation, Unit, write};
use tautline_engine::practice::place::{Beside, Starts, in_or_out};
use tautline_figures::practice::{BesideTape, draw_beside_part};
use tautline_figures::{Frame, Palette};
use tautline_survey::message::{Message, Value};
use tautline_survey::practice::TapeKind;
use tautline_words::Words;

/// Plants of one exercise.
const PLANTS: usize = 12;

/// Where lines start: what is asked, and its solution.
pub fn starts_words(starts: &Starts, tape: Notation) -> [Message; 2] {
    let step = Length::from_nanometres(starts.baseline.nanometres() / i64::from(starts.lines.max(1)));
    let shown = |length| Value::Figures(write(length, tape));
    let key: Vec<Value> = starts.key().into_iter().map(shown).collect();
    ["practice-starts-asked", "practice-starts-solved"].map(|code| {
        Message::new(code)
            .with("baseline", shown(starts.baseline))
            .with("lines", u64::from(starts.lines))
            .with("first", shown(starts.first))
            .with("step", shown(step))
            .with("starts", Value::List(key.clone()))
    })
}

/// One exercise of each kind.
pub(super) struct Places {
    tape: TapeKind,
    starts: Starts,
    plants: Vec<Beside>,
}

impl Places {
    pub(super) fn of(tape: TapeKind, number: u64) -> Self {
        let notation = tape.notation();
        Self { tape, starts: Starts::draw(notation, number), plants: in_or_out(notation, PLANTS, number) }
    }

    /// The exercises, with room to write.
    pub(super) fn asked(&self, words: &Words) -> String {
        let [asked, _] = starts_words(&self.starts, self.tape.notation());
        let columns = ["line", "start"].map(|name| words.word(&format!("practice-column-{name}")));
        let rows = usize::try_from(self.starts.lines).unwrap_or_default();
        let starts = text("h2", &words.word("practice-starts-title"))
            + &text("p", &words.say(&asked))
            + &blank(&words.word("practice-starts-title"), &columns, rows);
        let metric = self.tape == TapeKind::Metric;
        let each = if metric {
            Length::from_units(150, Unit::Centimetre)
        } else {
            Length::from_units(5, Unit::Foot)
        };
        let beside = BesideTape { plants: &self.plants, tape: self.tape.notation(), each };
        let drawn: String = sheets(beside.strips())
            .into_iter()
            .map(|strips| {
                let frame = Frame {
                    title: words.word("practice-in-or-out-title"),
                    description: words.word("practice-in-or-out-asked"),
                    ..Frame::new(&format!("in-or-out-{}", strips.start), 720, Palette::screen())
                };
                around("figure class=\"strips\"", &draw_beside_part(&beside, strips, &frame))
            })
            .collect();
        let columns = ["plant", "in-or-out"].map(|name| words.word(&format!("practice-column-{name}")));
        let plants = text("h2", &words.word("practice-in-or-out-title"))
            + &text("p", &words.word("practice-in-or-out-drawn"))
            + &drawn
            + &blank(&words.word("practice-in-or-out-title"), &columns, PLANTS);
        around("section class=\"own\"", &starts) + &around("section class=\"own\"", &plants)
    }

    pub(super) fn key(&self, words: &Words) -> String {
        let [_, solved] = starts_words(&self.starts, self.tape.notation());
        let word = |plant: &Beside| words.word(if plant.is_in() { "practice-in" } else { "practice-out" });
        let rows =
            (1..).zip(&self.plants).map(|(number, plant): (usize, _)| vec![number.to_string(), word(plant)]);
        let columns = ["plant", "in-or-out"].map(|name| words.word(&format!("practice-column-{name}")));
        let title = words.word("practice-in-or-out-title");
        let inner = text("h3", &words.word("practice-starts-title"))
            + &text("p", &words.say(&solved))
            + &table(&title, &columns, rows.collect());
        around("section class=\"key\"", &inner)
    }
}
