//! The coach's paper: practice lines to read, their keys apart, sheets, tally, protests, placards, and a class's marks.

mod class;
mod place;
mod progress;

pub use class::{PROTEST_COLUMNS, practice_class, practice_sheets, protest_cells, sheet_sentences};
pub use place::starts_words;
pub use progress::{practice_progress, progress_sentences};

use crate::html;
use crate::markup::{around, escape, text};
use core::ops::Range;
use place::Places;
use tautline_engine::length::{Length, Unit, write};
use tautline_engine::practice::line::{Other, parallax};
use tautline_engine::practice::mistake::Mistake;
use tautline_engine::work::{self, rounded_ratio};
use tautline_figures::practice::{Sight, Strips, Words as Marks, draw_line, draw_sight};
use tautline_figures::{Frame, Palette};
use tautline_survey::message::{Message, Value};
use tautline_survey::practice::{Exercise, Marking, SPECIES, TapeKind, cost_of_mistakes};
use tautline_words::Words;

const STYLE: &str = include_str!("practice.css");

/// A page of practice: what it is called, and its body, which the app shows within its own frame.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PracticePage {
    /// Its title.
    pub title: String,
    /// Its body, without what stands around it in a file.
    pub body: String,
}

impl PracticePage {
    /// The page as a file, with its rules in it.
    pub fn page(&self, words: &Words) -> String {
        page(&self.title, &self.body, words)
    }

    /// The rules of such a page.
    pub fn style() -> String {
        style()
    }
}

/// One line to look at; with its key, and what mistakes would cost, where marks are handed in.
pub fn practice_line(exercise: &Exercise, with_key: Option<&Marking>, words: &Words) -> PracticePage {
    let title = words.say(&Message::new("practice-title").with("line", exercise.name()));
    let mut body = text("h1", &title) + &about(exercise, words) + &drawing(exercise, words);
    if let Some(marking) = with_key {
        body += &key(exercise, marking, words);
    }
    PracticePage { title, body }
}

/// A set of lines for a class: each with its sheet, the tally, protests and placards, and the keys on sheets of their own.
///
/// # Example
/// ```
/// use tautline_engine::{length::{Length, Unit}, practice::level::Level};
/// use tautline_survey::{practice::{Exercise, Marking, TapeKind}, protocol::Protocol};
/// let ten = Length::from_units(10, Unit::Metre);
/// let line = Exercise::draw(Level::Two, 3, ten, TapeKind::Metric, Protocol::default());
/// let page = tautline_report::practice_set(&[line], &Marking::example(), &tautline_words::Words::english());
/// assert!(page.body.contains("Keys: keep apart"));
/// ```
pub fn practice_set(exercises: &[Exercise], marking: &Marking, words: &Words) -> PracticePage {
    let mut set = PracticeSet::default();
    for exercise in exercises {
        set.add(exercise, marking, words);
    }
    set.finish(words)
}

/// A set in the making, line by line, for whoever does something else between two lines.
#[derive(Clone, Debug, Default)]
pub struct PracticeSet {
    lines: String,
    keys: String,
    names: Vec<String>,
    /// Tape and number of the first line, by which the other exercises are drawn.
    first: Option<(TapeKind, u64)>,
}

impl PracticeSet {
    /// How many lines are in it.
    pub fn lines(&self) -> usize {
        self.names.len()
    }

    /// One more line, with its sheet and its key.
    pub fn add(&mut self, exercise: &Exercise, marking: &Marking, words: &Words) {
        let heading = words.say(&Message::new("practice-title").with("line", exercise.name()));
        self.lines += &around(
            "section class=\"own\"",
            &(text("h2", &heading) + &about(exercise, words) + &drawing(exercise, words)),
        );
        self.lines += &around("section class=\"own\"", &blank_sheet(exercise, words));
        self.keys += &around("section class=\"key\"", &key(exercise, marking, words));
        self.names.push(exercise.name());
        self.first.get_or_insert((exercise.tape, exercise.seed));
    }

    /// The page, the keys last.
    pub fn finish(self, words: &Words) -> PracticePage {
        let title = words.word("practice-set-title");
        let mut body = text("h1", &title) + &text("p", &words.word("practice-set-about"));
        body += &text("p", &words.word("practice-set-cautions"));
        body += &self.lines;
        body += &sight(words);
        let places = self.first.map(|(tape, number)| Places::of(tape, number));
        body += &places.as_ref().map_or(String::new(), |places| places.asked(words));
        body += &tally(&self.names, words);
        for name in &self.names {
            body += &placard(name, words);
        }
        let mut keys = text("h2", &words.word("practice-set-keys")) + &self.keys;
        keys += &places.map_or(String::new(), |places| places.key(words));
        body += &around("section class=\"own\"", &keys);
        PracticePage { title, body }
    }
}

/// The rules of the paper.
pub(crate) fn style() -> String {
    html::style() + STYLE
}

pub(crate) fn page(title: &str, body: &str, words: &Words) -> String {
    let head = format!(
        "<meta charset=\"utf-8\"/>\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n{}{}",
        text("title", title),
        around("style", &style()),
    );
    format!(
        "<!DOCTYPE html>\n<html lang=\"{}\">\n{}{}</html>\n",
        escape(words.language()),
        around("head", &head),
        around("body", &around("main id=\"main\"", body))
    )
}

fn about(exercise: &Exercise, words: &Words) -> String {
    let rules = if exercise.protocol.name.is_empty() { "–" } else { exercise.protocol.name.as_str() };
    let said = Message::new("practice-line-about")
        .with("length", length(exercise))
        .with("level", exercise.level.number().to_string())
        .with("protocol", rules);
    let mut about = text("p", &words.say(&said));
    if exercise.line.slope > 0 {
        let slope = Message::new("practice-line-slope").with("slope", exercise.line.slope.to_string());
        about += &text("p", &words.say(&slope));
    }
    about + &text("p class=\"quiet\"", &words.word("practice-made-up"))
}

/// The line's length without needless decimals.
fn length(exercise: &Exercise) -> String {
    let unit = if exercise.tape == TapeKind::Metric { Unit::Metre } else { Unit::Foot };
    let number = work::exact_decimal(exercise.line.length, unit);
    format!("{number}\u{a0}{}", unit.symbol())
}

/// The drawing, wide and narrow, in pieces that fit a sheet of paper.
fn drawing(exercise: &Exercise, words: &Words) -> String {
    let each = match exercise.tape {
        TapeKind::Metric => Length::from_units(150, Unit::Centimetre),
        TapeKind::FeetAndInches | TapeKind::DecimalFeet => Length::from_units(60, Unit::Inch),
    };
    let times = |number: usize| -> Length { core::iter::repeat_n(each, number).sum() };
    let whole = (exercise.line.length.nanometres() - 1).max(0) / each.nanometres() + 1;
    let whole = usize::try_from(whole).unwrap_or(1);
    let mut drawn = String::new();
    for strips in sheets(whole) {
        let (from, to) = (times(strips.start), times(strips.end).min(exercise.line.length));
        let part = Part { from, to, each };
        let third = Length::from_nanometres(each.nanometres() / 3);
        let narrow = piece(exercise, &Part { each: third, ..part }, (360, "narrow"), words);
        drawn +=
            &around("figure class=\"strips\"", &(piece(exercise, &part, (720, "wide"), words) + &narrow));
    }
    drawn
}

/// Strips of a drawing by the sheets of paper that hold them: two under a heading, then three on each sheet.
fn sheets(strips: usize) -> Vec<Range<usize>> {
    let first = strips.min(2);
    let more = (first..strips).step_by(3).map(|from| from..(from + 3).min(strips));
    core::iter::once(0..first).chain(more).collect()
}

/// From where to where of a line is drawn, and how much of it in one strip.
#[derive(Clone, Copy)]
struct Part {
    from: Length,
    to: Length,
    each: Length,
}

fn piece(exercise: &Exercise, part: &Part, (width, name): (u16, &str), words: &Words) -> String {
    let marks = Marks {
        species: SPECIES.iter().map(|(code, common, _)| format!("{code} {common}")).collect(),
        dead: words.word("practice-dead"),
        others: Other::ALL.map(|other| words.word(other.code())),
        edge: words.word("practice-edge"),
    };
    let Part { from, to, each } = *part;
    let strips = Strips { line: &exercise.line, from, to, each, words: marks };
    let start = work::exact_decimal(from, Unit::Millimetre);
    let frame = Frame {
        title: words.say(&Message::new("practice-drawing-title").with("line", exercise.name())),
        description: words.say(
            &Message::new("practice-drawing-about")
                .with("length", length(exercise))
                .with("species", exercise.line.species.to_string()),
        ),
        ..Frame::new(&format!("line-{}-{start}-{name}", exercise.name()), width, Palette::screen())
    };
    around(&format!("div class=\"{name}\""), &draw_line(&strips, &frame))
}

/// The key: its rows, its cover, the arithmetic's ends, and what each habit would cost.
fn key(exercise: &Exercise, marking: &Marking, words: &Words) -> String {
    let notation = exercise.tape.notation();
    let show = |length: Length| words.value(&Value::Length(length, notation));
    let rows = exercise.key().into_iter().map(|row| {
        vec![
            Exercise::code(row.species).to_owned(),
            show(row.stretch.start()),
            show(row.stretch.stop()),
            show(row.stretch.length()),
        ]
    });
    let columns =
        ["species", "start", "stop", "length"].map(|name| words.word(&format!("practice-column-{name}")));
    let title = words.say(&Message::new("practice-key-title").with("line", exercise.name()));
    let (canopy, sum) = exercise.key_lengths();
    let percent = |length: Length| {
        rounded_ratio(length.nanometres().saturating_mul(100), exercise.line.length.nanometres(), 1)
            + "\u{a0}%"
    };
    let cover = Message::new("practice-key-cover").with("canopy", percent(canopy)).with("sum", percent(sum));
    let costs = costs(exercise, marking, words);
    table(&title, &columns, rows.collect()) + &text("p", &words.say(&cover)) + &costs
}

fn costs(exercise: &Exercise, marking: &Marking, words: &Words) -> String {
    let rule = exercise.protocol.rule().0;
    let mut kinds: Vec<Mistake> = Vec::new();
    let ten = |step: i64| Length::from_nanometres(exercise.line.step().nanometres() * step);
    kinds.extend([Mistake::LeavesGapsOpen, Mistake::CountsDead, Mistake::MissesOverlap, Mistake::WholeCrown]);
    kinds.extend([
        Mistake::FromBeside(20),
        Mistake::FromBehind(20),
        Mistake::TapeOff(ten(6)),
        Mistake::Rounds(ten(12)),
    ]);
    kinds.extend([
        Mistake::ClosesGaps(rule.gap.limit + rule.gap.limit),
        Mistake::LeavesOutSmall(Length::from_units(30, Unit::Centimetre)),
    ]);
    kinds.extend(Other::ALL.map(Mistake::Counts));
    let rows: Vec<Vec<String>> = cost_of_mistakes(exercise, marking, &kinds)
        .into_iter()
        .map(|(mistake, lost)| {
            let shown = |length| words.value(&Value::Figures(write(length, exercise.tape.notation())));
            let with = mistake.length().map(|length| format!(" ({})", shown(length)));
            let with = with
                .or_else(|| mistake.degrees().map(|degrees| format!(" ({degrees}°)")))
                .unwrap_or_default();
            vec![words.word(mistake.code()) + &with, words.number(lost, 1)]
        })
        .collect();
    if rows.is_empty() {
        return String::new();
    }
    let columns = ["mistake", "lost"].map(|name| words.word(&format!("practice-column-{name}")));
    let costs = table(&words.word("practice-cost-title"), &columns, rows);
    let example = text("p class=\"quiet\"", &words.word("practice-example-marks"));
    if marking.example { costs + &example } else { costs }
}

/// An empty sheet to write on.
fn blank_sheet(exercise: &Exercise, words: &Words) -> String {
    const ROWS: usize = 22;
    let title = words.say(&Message::new("practice-set-sheet").with("line", exercise.name()));
    let columns =
        ["species", "start", "stop", "length"].map(|name| words.word(&format!("practice-column-{name}")));
    let name = text("p class=\"write\"", &words.word("practice-set-name"));
    let last = text("p class=\"write\"", &words.word("practice-set-total"))
        + &text("p class=\"write\"", &words.word("practice-set-percent"));
    name + &blank(&title, &columns, ROWS) + &last
}

/// Tally and protests.
fn tally(lines: &[String], words: &Words) -> String {
    let mut columns = vec![words.word("practice-column-group"), words.word("practice-column-name")];
    columns.extend(lines.iter().cloned());
    columns.push(words.word("practice-column-marks"));
    let protests: Vec<String> =
        words.word("practice-set-protest-columns").split(", ").map(str::to_owned).collect();
    let tally = blank(&words.word("practice-set-tally"), &columns, 20);
    let protests = blank(&words.word("practice-set-protests"), &protests, 10);
    around("section class=\"own\"", &tally) + &around("section class=\"own\"", &protests)
}

fn placard(line: &str, words: &Words) -> String {
    let title = words.say(&Message::new("practice-set-placard").with("line", line));
    around(
        "section class=\"own placard\"",
        &(text("h2", &title) + &text("p", &words.word("practice-set-placard-about"))),
    )
}

/// Why the reading depends on where you stand.
fn sight(words: &Words) -> String {
    let height = Length::from_units(60, Unit::Centimetre);
    let degrees = 20.0;
    let off = parallax(height, degrees) * 100.0;
    let shown = |code: &'static str| {
        Message::new(code)
            .with("height", "60\u{a0}cm")
            .with("degrees", "20")
            .with("off", format!("{}\u{a0}cm", words.number(off, 0)))
    };
    let sight = Sight {
        height,
        degrees,
        height_words: words.say(&shown("practice-sight-height")),
        angle_words: words.say(&shown("practice-sight-angle")),
        off_words: words.say(&shown("practice-sight-off")),
        right_words: words.word("practice-sight-right"),
    };
    let frame = Frame {
        title: words.word("practice-sight-title"),
        description: words.word("practice-sight-about"),
        ..Frame::new("sight", 480, Palette::screen())
    };
    let heading = text("h2", &words.word("practice-sight-title"));
    around(
        "section class=\"own\"",
        &(heading + &around("figure class=\"sight\"", &draw_sight(&sight, &frame))),
    )
}

pub(crate) fn table(title: &str, columns: &[String], rows: Vec<Vec<String>>) -> String {
    let head: String = columns.iter().map(|column| text("th scope=\"col\"", column)).collect();
    let body = rows.into_iter().map(|row| {
        let cells = row
            .iter()
            .enumerate()
            .map(|(at, cell)| text(if at == 0 { "th scope=\"row\"" } else { "td" }, cell));
        around("tr", &cells.collect::<String>())
    });
    let inner = around("caption", &text("span", title))
        + &around("thead", &around("tr", &head))
        + &around("tbody", &body.collect::<String>());
    let tag = format!("div class=\"table\" tabindex=\"0\" role=\"group\" aria-label=\"{}\"", escape(title));
    around(&tag, &around("table", &inner))
}

/// A table to write in by hand.
fn blank(title: &str, columns: &[String], rows: usize) -> String {
    let head: String = columns.iter().map(|column| text("th scope=\"col\"", column)).collect();
    let row = around("tr", &"<td></td>".repeat(columns.len()));
    let inner = around("caption", &text("span", title))
        + &around("thead", &around("tr", &head))
        + &around("tbody", &row.repeat(rows));
    around("div class=\"table blank\"", &around("table", &inner))
}
