//! The page of a plan: how many lines each question takes, how long they should be, how strata share them.

use crate::document::{Answer as Told, Block, paragraph};
use crate::follow::{Followed, answer, followed, section, site};
use crate::markup::{Column, Table};
use crate::page::Page;
use crate::pictures::drawn;
use tautline_engine::length::{Length, Unit};
use tautline_figures::costs::{self, Costs};
use tautline_figures::{Frame, Palette};
use tautline_survey::effort::shares::SharesOutput;
use tautline_survey::effort::simulated::SimulatedOutput;
use tautline_survey::effort::{Answer, DesignOutput, EffortOutput, LengthsOutput};
use tautline_survey::explain::{confidence_value, goal_words, subject_words};
use tautline_survey::goal::Wanted;
use tautline_survey::input::Input;
use tautline_survey::message::{Message, Value};
use tautline_words::Words;

/// A plan as a page.
///
/// # Example
/// ```
/// use tautline_report::{EffortTold, effort_page};
/// use tautline_survey::effort::{Ask, EffortOutput, Foreseen, answers};
/// use tautline_survey::goal::Subject;
/// let foreseen = Foreseen { subject: Subject::Canopy, cover: 0.25, deviation: 0.07, pilot: None, lines: Vec::new() };
/// let ask = Ask { half_width: Some(0.05), confidence: 0.95, power: 0.9, ..Ask::default() };
/// let output = EffortOutput::of(None, &foreseen, &ask, answers(&foreseen, &ask));
/// let words = tautline_words::Words::english();
/// let page = effort_page(&EffortTold { output: &output, goals: &[], visits: 5, cost: false }, &words);
/// assert!(page.contains(">14</td>"));
/// ```
pub fn effort_page(told: &EffortTold, words: &Words) -> String {
    report(told, words).page()
}

/// What stands on that page, for a screen that shows it among other things.
pub fn effort_body(told: &EffortTold, words: &Words) -> String {
    report(told, words).body()
}

/// What is told of a plan.
#[derive(Clone, Copy, Debug)]
pub struct EffortTold<'a> {
    /// The answers.
    pub output: &'a EffortOutput,
    /// The goals that were asked, in their order.
    pub goals: &'a [Wanted],
    /// Yearly visits of a trend.
    pub visits: usize,
    /// What lines cost was said, so that length against number was asked.
    pub cost: bool,
}

impl EffortTold<'_> {
    /// What an answer is an answer to.
    pub fn question(&self, answer: &Answer) -> Message {
        let wanted = answer.wanted.map_or(Value::Text(String::new()), |share| Value::Share(share, 1));
        let alike = Value::Number(self.output.correlation, 2);
        match (answer.question, answer.goal.and_then(|at| self.goals.get(at))) {
            ("verdict", Some(goal)) => Message::new("question-verdict").with("goal", goal_words(goal)),
            ("half-width", _) if answer.wanted.is_none() => Message::new("question-width-alone"),
            ("half-width", _) => Message::new("question-half-width").with("wanted", wanted),
            ("change-permanent", _) if answer.wanted.is_none() => {
                Message::new("question-permanent-alone").with("correlation", alike)
            }
            ("change-permanent", _) => {
                Message::new("question-permanent").with("wanted", wanted).with("correlation", alike)
            }
            ("change-temporary", _) if answer.wanted.is_none() => Message::new("question-temporary-alone"),
            ("change-temporary", _) => Message::new("question-temporary").with("wanted", wanted),
            _ => Message::new("question-trend").with("wanted", wanted).with("visits", self.visits),
        }
    }

    /// What is foreseen, and how sure the plan is to be.
    pub fn foreseen(&self) -> [Message; 2] {
        let output = self.output;
        let code = if output.pilot_lines.is_some() { "effort-from-pilot" } else { "effort-foreseen" };
        [
            Message::new(code)
                .with("site", output.site.clone().unwrap_or_default())
                .with("lines", output.pilot_lines.unwrap_or(0))
                .with("what", subject_words(&output.subject))
                .with("cover", Value::Share(output.cover, 1))
                .with("spread", Value::Share(output.deviation, 1)),
            Message::new("effort-sure")
                .with("confidence", confidence_value(output.confidence))
                .with("power", Value::Share(output.power, 0)),
        ]
    }

    /// What to know beside the numbers.
    pub fn cautions(&self) -> Vec<&'static str> {
        let pilot = self.output.pilot_lines.is_some().then_some("effort-pilot-unsure");
        let trend =
            self.output.answers.iter().any(|answer| answer.question == "trend").then_some("effort-trend");
        ["effort-normal"].into_iter().chain(pilot).chain(trend).collect()
    }
}

fn report(told: &EffortTold, words: &Words) -> Followed {
    let input = Input::default();
    followed(&input, words, ["title-effort", "effort-about", "effort-nothing-asked"], &[], |page| {
        let parts = [
            section("strata", "title-strata", strata(told, page), page),
            section("lengths", "title-lengths", lengths(told, page), page),
            section("simulated", "title-simulated", simulated(&told.output.simulated, page), page),
        ];
        let title = page.word("heading-answers");
        let mut one = site(0, title, said(told, page), Vec::new(), page);
        one.parts.extend(section("answers", "effort-answers", answers(told, page), page));
        one.parts.extend(parts.into_iter().flatten());
        (vec![one], Vec::new())
    })
}

/// The first answer as a sentence, and what it rests on.
fn said(told: &EffortTold, page: &Page) -> Told {
    let first = told.output.answers.iter().find(|answer| answer.wanted.is_some() || answer.goal.is_some());
    let lines = first.map(|answer| {
        let message = match answer.lines {
            Some(lines) => Message::new("effort-takes").with("lines", lines),
            None => Message::new("effort-takes-too-many"),
        };
        message.with("question", told.question(answer))
    });
    let sentences: Vec<Message> = lines.into_iter().chain(told.foreseen()).collect();
    answer(&sentences, None, page)
}

fn answers(told: &EffortTold, page: &Page) -> Vec<Block> {
    let columns = [
        (Column::Text, "column-question"),
        (Column::Figure, "column-lines-needed"),
        (Column::Figure, "column-shows"),
        (Column::Figure, "column-chance"),
    ];
    let columns = columns.into_iter().map(|(holds, code)| (holds, page.word(code))).collect();
    let mut table = Table::new(page.word("effort-answers-table"), columns);
    let share = |share: Option<f64>, places| {
        share.map_or_else(|| page.word("report-none"), |share| page.words.percent(share, places))
    };
    for one in &told.output.answers {
        let asked = one.wanted.is_some() || one.goal.is_some();
        let lines = match one.lines {
            Some(lines) => lines.to_string(),
            None if asked => page.word("no-practical-number"),
            None => page.word("report-none"),
        };
        table.row(vec![page.say(&told.question(one)), lines, share(one.shows, 1), share(one.chance, 0)]);
    }
    let cautions = told.cautions().into_iter().map(|code| paragraph(page.word(code)));
    table.finished().map(Block::Table).into_iter().chain(cautions).collect()
}

fn strata(told: &EffortTold, page: &Page) -> Vec<Block> {
    let Some(SharesOutput { names, shares }) = &told.output.strata else { return Vec::new() };
    let [area, spread] = shares.as_slice() else { return Vec::new() };
    let columns = [
        (Column::Text, "column-stratum-name"),
        (Column::Figure, "column-by-area"),
        (Column::Figure, "column-by-spread"),
    ];
    let columns = columns.into_iter().map(|(holds, code)| (holds, page.word(code))).collect();
    let mut table = Table::new(page.word("strata-table"), columns);
    for (at, name) in names.iter().enumerate() {
        table.row(vec![name.clone(), area.lines[at].to_string(), spread.lines[at].to_string()]);
    }
    let error = Message::new("strata-error")
        .with("area", Value::Share(area.error, 2))
        .with("spread", Value::Share(spread.error, 2));
    table.finished().map(Block::Table).into_iter().chain([paragraph(page.say(&error))]).collect()
}

fn lengths(told: &EffortTold, page: &Page) -> Vec<Block> {
    let Some(lengths) = &told.output.lengths else {
        return if told.cost { vec![paragraph(page.word("lengths-unknown"))] } else { Vec::new() };
    };
    let columns = [
        (Column::Figure, "column-length-m"),
        (Column::Figure, "column-lines-needed"),
        (Column::Figure, "column-minutes"),
        (Column::Text, "column-remark"),
    ];
    let columns = columns.into_iter().map(|(holds, code)| (holds, page.word(code))).collect();
    let mut table = Table::new(page.word("lengths-table"), columns);
    for design in &lengths.designs {
        table.row(vec![
            page.words.number(design.length_m, 1),
            design.lines.to_string(),
            page.words.number(design.minutes, 0),
            remark(lengths, design).map_or_else(String::new, |code| page.word(code)),
        ]);
    }
    let picture = costs_of(lengths, page.words).map(|(costs, description)| {
        Block::Picture(drawn("lengths", &page.word("title-lengths"), &description, page, |frame| {
            costs::draw(&costs, frame)
        }))
    });
    let sentences = lengths_said(lengths).into_iter().map(|message| paragraph(page.say(&message)));
    picture.into_iter().chain(table.finished().map(Block::Table)).chain(sentences).collect()
}

/// What stands beside a length, by its code.
pub fn remark(lengths: &LengthsOutput, design: &DesignOutput) -> Option<&'static str> {
    let cheapest = lengths.cheapest.is_some_and(|best| best.length_m.to_bits() == design.length_m.to_bits());
    match (cheapest, design.beyond_pilot) {
        (true, false) => Some("cheapest"),
        (true, true) => Some("cheapest-beyond-pilot"),
        (false, true) => Some("beyond-pilot"),
        (false, false) => None,
    }
}

/// How sure the cheapest length is, and how fast spread falls with length.
pub fn lengths_said(lengths: &LengthsOutput) -> Vec<Message> {
    let sure = lengths.likely_m.zip(lengths.nearly_cheapest).map(|((low, high), nearly)| {
        Message::new("lengths-sure")
            .with("low", Value::Number(low, 1))
            .with("high", Value::Number(high, 1))
            .with("nearly", Value::Share(nearly, 0))
    });
    let fall = Message::new("lengths-fall").with("fall", Value::Number(lengths.fall, 2));
    sure.into_iter().chain([fall]).collect()
}

/// Length against number as a picture in the colours of print; nothing where no length does.
pub fn lengths_picture(lengths: &LengthsOutput, words: &Words) -> Option<String> {
    let (costs, description) = costs_of(lengths, words)?;
    let frame = Frame {
        title: words.word("title-lengths"),
        description,
        mark: words.mark(),
        ..Frame::new("lengths", 720, Palette::print().with_font("sans-serif"))
    };
    Some(costs::draw(&costs, &frame))
}

fn costs_of(found: &LengthsOutput, words: &Words) -> Option<(Costs, String)> {
    let metres = |metres: f64| {
        #[expect(clippy::cast_possible_truncation, reason = "lengths of tapes in whole millimetres")]
        let millimetres = (metres * 1000.0) as i64;
        Length::from_units(millimetres, Unit::Millimetre)
    };
    let best = found.cheapest?;
    let said = words.say(
        &Message::new("costs-cheapest")
            .with("length", Value::Number(best.length_m, 1))
            .with("lines", best.lines)
            .with("minutes", Value::Number(best.minutes, 0)),
    );
    let likely = found.likely_m.map(|(low, high)| {
        let message = Message::new("costs-likely");
        words.say(&message.with("low", Value::Number(low, 1)).with("high", Value::Number(high, 1)))
    });
    let description =
        [Some(said.clone()), likely.clone()].into_iter().flatten().collect::<Vec<_>>().join(" ");
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
    Some((costs, description))
}

fn simulated(found: &[SimulatedOutput], page: &Page) -> Vec<Block> {
    found.iter().map(|one| paragraph(page.say(&simulated_said(one)))).collect()
}

/// What surveys drawn one by one say.
pub fn simulated_said(one: &SimulatedOutput) -> Message {
    let message = Message::new(if one.stand.is_some() { "simulated-stand" } else { "simulated-normal" })
        .with("surveys", usize::try_from(one.surveys).unwrap_or(usize::MAX))
        .with("lines", one.lines)
        .with("chance", Value::Share(one.chance, 1))
        .with("error", Value::Share(one.error, 1))
        .with("closed", Value::Share(one.closed_form, 1));
    match one.stand {
        Some(stand) => message
            .with("clump", Value::Number(stand.clump, 0))
            .with("length", Value::Number(stand.length_m, 1))
            .with("cover", Value::Share(stand.cover, 1))
            .with("deviation", Value::Share(stand.deviation, 1))
            .with("bare", Value::Share(stand.bare, 0))
            .with("change", Value::Share(stand.change, 1))
            .with("differences", Value::Share(stand.deviation_of_differences, 1)),
        None => message,
    }
}
