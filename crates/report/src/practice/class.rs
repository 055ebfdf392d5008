//! A class's marks, and sheets beside their keys.

use super::{PracticePage, table};
use crate::markup::{around, text};
use tautline_engine::practice::grade::Found;
use tautline_engine::practice::mistake::Mistake;
use tautline_survey::message::{Message, Value};
use tautline_survey::practice::{Class, Marked, Marking, Protest, protest_words, told};
use tautline_words::Words;

/// A class's marks: places, groups, what cost marks, and every sheet intercept by intercept.
pub fn practice_class(
    class: &Class,
    marked: &[Marked],
    marking: &Marking,
    best: usize,
    words: &Words,
) -> PracticePage {
    let title = words.word("practice-class-title");
    let mut body = text("h1", &title);
    if marking.example {
        body += &text("p class=\"about\"", &words.word("practice-example-marks"));
    }
    let number = |number: f64| words.number(number, 1);
    let place = |place: usize, tied: bool| {
        if tied { format!("{place} ({})", words.word("practice-tied")) } else { place.to_string() }
    };
    let learners = class.learners.iter().map(|one| {
        let lines: Vec<String> =
            one.lines.iter().map(|(line, marks)| format!("{line}: {}", number(*marks))).collect();
        vec![
            place(one.place, one.tied),
            one.name.clone(),
            one.group.clone(),
            lines.join(", "),
            number(one.marks),
        ]
    });
    let columns = ["place", "name", "group", "lines", "marks"]
        .map(|name| words.word(&format!("practice-column-{name}")));
    body += &table(&title, &columns, learners.collect());
    if !class.groups.is_empty() {
        let columns = [
            words.word("practice-column-place"),
            words.word("practice-column-group"),
            words.say(&Message::new("practice-column-best").with("best", best)),
            words.word("practice-column-all"),
        ];
        let groups = class.groups.iter();
        let groups = groups
            .map(|one| vec![place(one.place, one.tied), one.name.clone(), number(one.best), number(one.all)]);
        body += &table(&words.word("practice-groups-title"), &columns, groups.collect());
    }
    if !class.mistakes.is_empty() {
        let columns =
            ["mistake", "sheets", "lost"].map(|name| words.word(&format!("practice-column-{name}")));
        let rows = class
            .mistakes
            .iter()
            .map(|(code, sheets, lost)| vec![words.word(code), sheets.to_string(), number(*lost)]);
        body += &text("p", &words.word("practice-mistakes-about"));
        body += &table(&words.word("practice-mistakes-title"), &columns, rows.collect());
    }
    body += &protests(class, words);
    body += &sheets(marked, marking, words);
    PracticePage { title, body }
}

/// Protests of the day, and what was decided.
fn protests(class: &Class, words: &Words) -> String {
    if class.protests.is_empty() {
        return String::new();
    }
    let columns = PROTEST_COLUMNS.map(|code| words.word(code));
    let rows = class.protests.iter().map(|one| protest_cells(one, words).to_vec());
    let said: String = protest_words(class).iter().map(|said| text("p", &words.say(said))).collect();
    said + &table(&words.word("practice-set-protests"), &columns, rows.collect())
}

/// The headings of a list of protests, by their codes.
pub const PROTEST_COLUMNS: [&str; 7] = [
    "protest-by",
    "protest-line",
    "protest-row",
    "protest-about",
    "protest-decided",
    "protest-why",
    "protest-judge",
];

/// A protest under [`PROTEST_COLUMNS`].
pub fn protest_cells(one: &Protest, words: &Words) -> [String; 7] {
    let decided = words.word(one.decided.code());
    let [by, line, row] = [&one.by, &one.line, &one.row].map(String::clone);
    [by, line, row, one.about.clone(), decided, one.why.clone(), one.judge.clone()]
}

/// Sheets beside their keys, intercept by intercept.
pub fn practice_sheets(marked: &[Marked], marking: &Marking, words: &Words) -> PracticePage {
    let title = words.word("practice-sheets-title");
    let mut body = text("h1", &title);
    if marking.example {
        body += &text("p class=\"about\"", &words.word("practice-example-marks"));
    }
    body += &sheets(marked, marking, words);
    PracticePage { title, body }
}

fn sheets(marked: &[Marked], marking: &Marking, words: &Words) -> String {
    marked.iter().map(|one| around("section", &sheet(one, marking, words))).collect()
}

/// One sheet's marks in words.
fn sheet(one: &Marked, marking: &Marking, words: &Words) -> String {
    let title =
        Message::new("practice-sheet-title").with("name", one.name.as_str()).with("line", one.line.as_str());
    let mut inner = text("h2", &words.say(&title));
    inner +=
        &sheet_sentences(one, marking).iter().map(|said| text("p", &words.say(said))).collect::<String>();
    let rows = one.graded.iter().flat_map(|graded| &graded.marks);
    let rows: String =
        rows.map(|mark| text("li", &words.say(&told(mark, &one.codes, one.notation)))).collect();
    if rows.is_empty() { inner } else { inner + &around("ul", &rows) }
}

/// What is said of a sheet as a whole: cover, arithmetic, marks, and the habit that would explain it.
pub fn sheet_sentences(one: &Marked, marking: &Marking) -> Vec<Message> {
    let share = |share: f64| Value::Share(share, 1);
    let number = |number: f64| Value::Number(number, 1);
    let mut said = vec![
        Message::new("practice-sheet-cover")
            .with("rows", share(one.rows))
            .with("key", share(one.key))
            .with("off", number((one.rows - one.key).abs() * 100.0)),
    ];
    if let Some(stated) = &one.stated {
        let code = if one.sums_up == Some(true) { "practice-sums-up" } else { "practice-sums-up-not" };
        said.push(Message::new(code).with("stated", stated.as_str()).with("rows", share(one.rows)));
    }
    if !one.lengths.is_empty() {
        let right = one.lengths.iter().filter(|mark| mark.right).count();
        said.push(Message::new("practice-lengths-right").with("right", right).with("all", one.lengths.len()));
    }
    if let Some(graded) = &one.graded {
        let right = graded.marks.iter().filter(|mark| mark.found == Found::Right).count();
        let of = graded.marks.len();
        let code = match (right, of) {
            (_, 0) => "practice-rows-none",
            _ if right == of => "practice-rows-all-right",
            _ => "practice-rows-right",
        };
        said.push(Message::new(code).with("right", right).with("all", of));
    }
    if let Some(named) = &one.named {
        said.push(
            Message::new("practice-named")
                .with("explained", named.faults - named.left)
                .with("faults", named.faults)
                .with("mistake", Value::Word(named.mistake.code())),
        );
        if !named.alike.is_empty() {
            let alike = named.alike.iter().map(|one| Value::Word(one.code())).collect();
            said.push(Message::new("practice-alike").with("alike", Value::List(alike)));
        }
        said.push(Message::new(advice(named.mistake)));
    }
    let parts = one.parts;
    said.push(
        Message::new("practice-marks")
            .with("all", number(parts.all()))
            .with("most", number(marking.most()))
            .with("edges", number(parts.edges))
            .with("species", number(parts.species))
            .with("cover", number(parts.cover))
            .with("arithmetic", number(parts.arithmetic)),
    );
    said
}

/// What to do about a habit next time.
const fn advice(mistake: Mistake) -> &'static str {
    match mistake {
        Mistake::ClosesGaps(_) | Mistake::LeavesGapsOpen => "lesson-advice-gaps",
        Mistake::CountsDead => "lesson-advice-dead",
        Mistake::Counts(_) => "lesson-advice-others",
        Mistake::FromFarEnd | Mistake::OtherEdge | Mistake::TapeOff(_) => "lesson-advice-tape",
        Mistake::FromBeside(_) | Mistake::FromBehind(_) | Mistake::Wider(_) => "lesson-advice-sight",
        Mistake::MissesOverlap => "lesson-advice-overlap",
        Mistake::Confuses(..) => "lesson-advice-species",
        Mistake::WholeCrown => "lesson-advice-crown",
        Mistake::DropsLastDigit | Mistake::InchesAsTenths | Mistake::Rounds(_) => "lesson-advice-numbers",
        Mistake::LeavesOutSmall(_) => "lesson-advice-small",
    }
}
