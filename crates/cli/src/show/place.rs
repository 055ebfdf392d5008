//! Line starts, plants in or out, and an eye that leans.

use super::table::Table;
use super::{title, wrapped};
use tautline_engine::length::{Length, Notation, write};
use tautline_engine::practice::place::{Beside, Starts};
use tautline_report::starts_words;
use tautline_survey::message::Message;
use tautline_survey::practice::SightDrill;
use tautline_words::Words;

/// How many answers are right, and which aren't.
fn right(right: &[bool], words: &Words) {
    let some = right.iter().filter(|right| **right).count();
    let message = Message::new("practice-place-right").with("some", some).with("all", right.len());
    wrapped(&words.say(&message), 0);
    let wrong: Vec<String> = (1..)
        .zip(right)
        .filter(|(_, right)| !**right)
        .map(|(number, _): (usize, _)| number.to_string())
        .collect();
    if !wrong.is_empty() {
        wrapped(&words.say(&Message::new("practice-place-wrong").with("numbers", wrong)), 0);
    }
}

/// Where lines start along a baseline.
pub(crate) fn practice_starts(
    starts: &Starts,
    tape: Notation,
    answers: Option<&[bool]>,
    solution: bool,
    words: &Words,
) {
    let [asked, solved] = starts_words(starts, tape);
    wrapped(&words.say(&asked), 0);
    if let Some(answers) = answers {
        right(answers, words);
    }
    if solution {
        title(&words.word("practice-solution"));
        wrapped(&words.say(&solved), 2);
    }
}

/// Plants beside the tape, with what is needed to say whether they are in.
pub(crate) fn practice_plants(
    plants: &[Beside],
    tape: Notation,
    answers: Option<&[bool]>,
    solution: bool,
    words: &Words,
) {
    wrapped(&words.word("practice-in-or-out-asked"), 0);
    let mut names = vec!["plant", "along", "aside", "radius"];
    if solution {
        names.push("in-or-out");
    }
    let headings: Vec<String> =
        names.iter().map(|name| words.word(&format!("practice-column-{name}"))).collect();
    let mut table = Table::new(&headings);
    for (number, plant) in (1..).zip(plants) {
        let aside = Length::from_nanometres(plant.aside.nanometres().abs());
        let side = if plant.aside < Length::ZERO { "practice-to-the-right" } else { "practice-to-the-left" };
        let number: usize = number;
        let mut row = vec![
            number.to_string(),
            write(plant.along, tape),
            words.say(&Message::new(side).with("length", write(aside, tape))),
            write(plant.radius, tape),
        ];
        if solution {
            row.push(words.word(if plant.is_in() { "practice-in" } else { "practice-out" }));
        }
        table.row(row);
    }
    table.print();
    if let Some(answers) = answers {
        right(answers, words);
    }
}

/// An eye that leans over a canopy's edge.
pub(crate) fn practice_sight(drill: &SightDrill, right: Option<bool>, solution: bool, words: &Words) {
    let [asked, solved] = drill.words();
    wrapped(&words.say(&asked), 0);
    if let Some(right) = right {
        wrapped(&words.word(if right { "practice-drill-right" } else { "practice-drill-wrong" }), 0);
    }
    if solution {
        title(&words.word("practice-solution"));
        wrapped(&words.say(&solved), 2);
    }
}
