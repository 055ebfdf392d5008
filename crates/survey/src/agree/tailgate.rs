//! The check at the truck: reader and recorder have swapped at a day's first line, and talk before the second.

use crate::input::Input;
use crate::line::{Choice, LineResult, line_result};
use crate::message::{Message, Value};
use crate::visit::{self, Extent, Outcome, Visit};
use tautline_engine::agreement::apart::{Apart, Written, furthest};
use tautline_engine::cover::{Intercept, Life};
use tautline_engine::length::{Length, Notation};

/// So many stretches are talked about; more than that and nobody listens.
const STRETCHES: usize = 3;

/// Two readings of one line, set side by side.
#[derive(Clone, Debug)]
pub struct Tailgate {
    /// Who read first.
    pub first: LineResult,
    /// Who read after.
    pub second: LineResult,
    /// The stretches where they lie furthest apart, in the order of the tape.
    pub stretches: Vec<Apart>,
    /// How lengths on this tape are written.
    notation: Notation,
}

/// The first reading of the same line on the same day by somebody else, by its place in the input.
pub fn partner(input: &Input, visit: &Visit) -> Option<usize> {
    input.visits.iter().position(|other| {
        let same = (&other.site, &other.line, other.date) == (&visit.site, &visit.line, visit.date);
        same && other.reader != visit.reader && other.outcome != Outcome::NotRead && other.date.is_some()
    })
}

/// Whether this is the only line of its site that was read on its day: time to swap and read it again.
///
/// # Source
/// common practice, no source
pub fn is_first_of_the_day(input: &Input, visit: &Visit) -> bool {
    let day = input.visits.iter().filter(|other| other.site == visit.site && other.date == visit.date);
    visit.date.is_some() && visit.outcome != Outcome::NotRead && day.count() == 1
}

/// Sets two readings side by side, by their places in the input; nothing where one has no positions or can't be worked out.
pub fn tailgate(input: &Input, first: usize, second: usize) -> Option<Tailgate> {
    let result = |index: usize| line_result(input, index, &Choice::default()).ok();
    let (one, other) = (result(first)?, result(second)?);
    let stretches = furthest(&written(&one)?, &written(&other)?, STRETCHES);
    let edges = [first, second].into_iter().flat_map(|index| &input.visits[index].intercepts);
    let notation =
        edges.filter_map(notation).reduce(Notation::finer).unwrap_or_else(|| one.length.notation());
    Some(Tailgate { first: one, second: other, stretches, notation })
}

/// How a row's edges were written.
fn notation(row: &visit::Intercept) -> Option<Notation> {
    match &row.extent {
        Extent::Edges { start, stop } => Some(start.notation().finer(stop.notation())),
        Extent::Length(_) => None,
    }
}

fn written(line: &LineResult) -> Option<Written> {
    let dead = |one: &&Intercept| one.life == Life::Dead;
    Some(Written {
        canopy: line.cover.as_ref()?.canopy.clone(),
        dead: line.counted.iter().filter(dead).map(|one| one.stretch).collect(),
        other: line.others.iter().map(|one| one.stretch).collect(),
    })
}

impl Tailgate {
    /// What is said: how far the covers lie apart, then each stretch with what to agree on.
    pub fn sentences(&self) -> Vec<Message> {
        let share = |line: &LineResult| Value::Share(line.share(line.canopy.low), 1);
        let (first, second) = (self.first.reader.as_str(), self.second.reader.as_str());
        let about = |code| Message::new(code).with("first", first).with("second", second);
        let code = if self.stretches.is_empty() { "tailgate-alike" } else { "tailgate-covers" };
        let covers = about(code).with("cover", share(&self.first)).with("other", share(&self.second));
        let place = |length: Length| Value::Length(length, self.notation);
        let stretches = self.stretches.iter().map(|one| {
            let (has, lacks) = if one.first_has_it { (first, second) } else { (second, first) };
            Message::new("tailgate-stretch")
                .with("start", place(one.stretch.start()))
                .with("stop", place(one.stretch.stop()))
                .with("has", has)
                .with("lacks", lacks)
                .with("rule", Value::Word(one.about.code()))
        });
        core::iter::once(covers).chain(stretches).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::date::Date;
    use crate::draft::{Key, LineDraft, Setup};
    use crate::measure::Measure;
    use crate::protocol::{Gap, Protocol};
    use tautline_engine::agreement::apart::About;
    use tautline_engine::length::{Bare, DecimalMark, Unit};

    fn measure(text: &str) -> Measure {
        Measure::read(text, None, DecimalMark::Point).unwrap()
    }

    /// Two readings of an invented line of 600 in, under a gap rule of 4 in.
    fn input(sheets: [(&str, &[(u32, u32)]); 2]) -> Input {
        let gap = Gap { limit: Some(measure("4 in")), ..Gap::default() };
        let protocol = Protocol { gap, ..Protocol::default() };
        let visits = sheets.map(|(reader, rows)| {
            let setup = Setup {
                site: "Hollow Flat".into(),
                line: "1".into(),
                length: Some(measure("50 ft")),
                unit: Bare::Unit(Unit::Inch),
                comma: false,
                protocol: protocol.fingerprint(),
                reader: reader.into(),
                recorder: String::new(),
                date: Date::read("2026-06-09"),
                pass: String::new(),
                blind: false,
            };
            let mut draft = LineDraft::new(setup);
            for (start, stop) in rows {
                draft.press(Key::Species("ATCA2".into()));
                for edge in [start, stop] {
                    for digit in edge.to_string().bytes() {
                        draft.press(Key::Digit(digit - b'0'));
                    }
                    draft.press(Key::Done);
                }
            }
            draft.visit()
        });
        let mut input = Input { visits: visits.into(), ..Input::default() };
        input.protocols.insert(protocol.fingerprint(), protocol);
        input
    }

    #[test]
    fn the_three_longest_differences_are_named_with_what_to_agree_on() {
        // by hand: A 0-100 with a gap of 3 in closed by the rule, 200-300, 400-410, 500-502; B stops from 50 to 60,
        // reads on to 320, has neither 400-410 nor 500-502: 10 in gap, 20 in edge, 10 in plant, and 2 in that is left
        let a: &[(u32, u32)] = &[(0, 20), (23, 100), (200, 300), (400, 410), (500, 502)];
        let b: &[(u32, u32)] = &[(0, 50), (60, 100), (200, 320)];
        let input = input([("A", a), ("B", b)]);
        let found = tailgate(&input, 0, 1).unwrap();
        let stretches: Vec<_> = found
            .stretches
            .iter()
            .map(|one| {
                let inch = |length: Length| length.nanometres() / 25_400_000;
                (inch(one.stretch.start()), inch(one.stretch.stop()), one.first_has_it, one.about)
            })
            .collect();
        let by_hand =
            [(50, 60, true, About::Gap), (300, 320, false, About::Edge), (400, 410, true, About::Plant)];
        assert_eq!(stretches, by_hand);
        assert_eq!(found.sentences().len(), 4);
        // A: 212 of 600 in, B: 210 of 600 in
        assert_eq!(found.first.canopy.low, measure("212 in").length());
        assert_eq!(found.second.canopy.low, measure("210 in").length());
    }

    #[test]
    fn the_partner_is_another_reader_of_the_same_line_and_day() {
        let mut input = input([("A", &[(0, 5)]), ("B", &[(0, 5)])]);
        assert_eq!(partner(&input, &input.visits[1]), Some(0));
        assert!(!is_first_of_the_day(&input, &input.visits[0]));
        input.visits[1].date = Date::read("2026-06-10");
        assert_eq!(partner(&input, &input.visits[1]), None);
        assert!(is_first_of_the_day(&input, &input.visits[0]));
        input.visits[0].reader = "B".into();
        input.visits[0].date = input.visits[1].date;
        assert_eq!(partner(&input, &input.visits[1]), None);
    }

    #[test]
    fn readings_alike_leave_nothing_to_agree_on() {
        let input = input([("A", &[(0, 5)]), ("B", &[(0, 5)])]);
        let found = tailgate(&input, 0, 1).unwrap();
        assert_eq!(
            found.sentences(),
            [Message::new("tailgate-alike")
                .with("first", "A")
                .with("second", "B")
                .with("cover", Value::Share(5.0 / 600.0, 1))
                .with("other", Value::Share(5.0 / 600.0, 1))]
        );
    }
}
